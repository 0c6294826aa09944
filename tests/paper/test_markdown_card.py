"""The recipe card as Markdown, read back by a parser of the standard."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from tarebook.cards.content import content
from tarebook.cards.lines import clean
from tarebook.cards.worksheet import Worksheet
from tarebook.paper.markdown_card import escaped, markdown_card
from tarebook.paper.who_says_so import who_says_so
from tarebook.recipe.load import shipped_recipes

Shipped = Callable[..., Worksheet]

STANDARD = MarkdownIt("commonmark").enable("table")
# As code forges read it: addresses become links without being asked, tildes strike out.
EAGER = MarkdownIt("gfm-like")

OURS = {
    "heading_open", "heading_close", "paragraph_open", "paragraph_close", "inline", "text",
    "strong_open", "strong_close", "code_inline", "softbreak",
    "bullet_list_open", "bullet_list_close", "ordered_list_open", "ordered_list_close",
    "list_item_open", "list_item_close", "table_open", "table_close", "thead_open", "thead_close",
    "tbody_open", "tbody_close", "tr_open", "tr_close", "th_open", "th_close", "td_open",
    "td_close",
}  # fmt: skip


def flat(tokens: Iterable[Token]) -> Iterator[Token]:
    """Yield every token, those inside a line too."""
    for one in tokens:
        yield one
        yield from flat(one.children or ())


def shown(reader: MarkdownIt, text: str) -> str:
    """Return the words that a reader sees, blocks apart by single spaces."""
    pieces = (_line(one) for one in reader.parse(text) if one.type == "inline")
    return " ".join(" ".join(pieces).split())


def _line(inline: Token) -> str:
    return "".join(one.content for one in inline.children or () if one.type != "softbreak")


def expected(sheet: Worksheet) -> str:
    """Return the words of a card in the order in which Markdown shows them."""
    card = content(sheet)
    noted, notes = who_says_so(card.cautions)
    said = [card.title, card.size, card.about]
    for group in card.groups:
        said += [group.heading, "measure ingredient weighs"]
        said += [f"{one.measure} {one.name} {one.weighs}" for one in group.items]
        said += [f"{one.name}: {one.note}" for one in group.items if one.note]
    said += [*card.cure, "Method", *card.conditions, *card.steps]
    said += [f"Note: {one}" for one in card.notes]
    said += ["Home estimate for one finished ounce", f"({card.figures_foot})"]
    said += ["figure likely of a day low to high"]
    said += [" ".join(row[1:]) for row in card.figures]
    said += [*card.beneath, *card.allergens, "Mind"]
    for one in noted:
        numbers = ", ".join(map(str, one.numbers))
        said.append(f"{one.caution.title}. {one.caution.text} ({numbers})")
    said += ["Who says so", *notes, card.foot]
    return " ".join(clean(" ".join(said)).split())


@pytest.mark.parametrize("reader", [STANDARD, EAGER], ids=["standard", "eager"])
@pytest.mark.parametrize("name", [*shipped_recipes(), "hostile"])
def test_a_reader_sees_every_word_and_nothing_else(
    name: str, reader: MarkdownIt, sheets: dict[str, Worksheet]
) -> None:
    """Parsed again, the card says exactly its words, in their order."""
    assert expected(sheets[name]) == shown(reader, markdown_card(sheets[name]))


@pytest.mark.parametrize("reader", [STANDARD, EAGER], ids=["standard", "eager"])
@pytest.mark.parametrize("name", [*shipped_recipes(), "hostile"])
def test_a_recipe_makes_no_link_tag_picture_or_heading(
    name: str, reader: MarkdownIt, sheets: dict[str, Worksheet]
) -> None:
    """Whatever a recipe says, the parts of the page are those of a card."""
    sheet = sheets[name]
    card = content(sheet)
    tokens = list(flat(reader.parse(markdown_card(sheet))))
    kinds = [one.type for one in tokens]

    assert set() == set(kinds) - OURS
    assert len(card.groups) + 5 == kinds.count("heading_open")
    assert len(card.groups) + 1 == kinds.count("table_open")
    items = len(card.conditions) + len(card.steps) + len(card.cautions)
    assert items + len(who_says_so(card.cautions)[1]) == kinds.count("list_item_open")
    assert 2 + len(card.cautions) == kinds.count("strong_open")


@pytest.mark.parametrize("reader", [STANDARD, EAGER], ids=["standard", "eager"])
@given(
    st.one_of(
        st.text(),
        st.text("\\`*_[]<>&|~$^=#-+:.!()1ah@/\" '\n\tw"),
        st.lists(
            st.sampled_from(
                ["www.", "http://", "mailto:", "a@b.c", "|", "`", "``", "\\", "- ", "1. ", "[x]"]
            )
        ).map("".join),
    )
)
@example("\\|")
@example("http://a\\|b|c")
@example("`www.a.b`|")
@example("a.b.c:d")
@example("&amp; &#35;")
def test_any_text_reads_back_as_itself(reader: MarkdownIt, text: str) -> None:
    """In a paragraph, in a list and in a table, escaped text is shown as it was."""
    words = " ".join(clean(text).replace("\ufffe", " ").split())
    pages = {
        f"{escaped(text)}\n": words,
        f"- {escaped(text)}\n": words,
        f"| a |\n| --- |\n| {escaped(text, in_table=True)} |\n": f"a {words}".strip(),
    }
    for page, told in pages.items():
        assert told == shown(reader, page)
        assert set() == {one.type for one in flat(reader.parse(page))} - OURS


def test_plain_words_stay_as_they_are() -> None:
    """The file itself can be read: nothing is escaped that needs no escaping."""
    plain = "Dry: 150-155 °F (66-68 °C), 5-7 h. Use 1/4 cup (-17%: better weighed), 1.5 g."

    assert plain == escaped(plain)


def test_the_same_sheet_makes_the_same_text(shipped: Shipped) -> None:
    """Twice the same, ending in one line feed."""
    text = markdown_card(shipped())

    assert text == markdown_card(shipped())
    assert text.endswith("label.**\n")
    assert all(line == line.rstrip() for line in text.splitlines())
