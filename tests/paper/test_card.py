"""The recipe card on paper: every word on every size, and within its margins."""

from __future__ import annotations

import io
import re
import zlib
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import cache

import pypdf
import pytest

from tarebook.cards.content import Content, content
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.figures.table import table
from tarebook.findings import Severity
from tarebook.paper.card import card_data, card_pages
from tarebook.paper.html_card import html_card
from tarebook.paper.kitchen_fractions import kitchen_fractions
from tarebook.paper.reach import LEGEND
from tarebook.paper.sizes import CardSize, card_size, size_names
from tarebook.paper.who_says_so import who_says_so
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import Recipe
from tarebook.recipe.read import read_recipe

Shipped = Callable[..., Worksheet]

SMALLEST = "69x69mm"
SIZES = (*size_names(), "4x6in upright", "letter sideways", SMALLEST, "450x450mm")
WORD = "Wintergreenw" * 16
STEPS = ", ".join(f'"{one} Turn, taste. {"Ääkkösiä älä ½ 160 °F " * 30}"' for one in range(9))

WORST = f"""
title = "{"The long winter's strips with juniper, maple & crème fraîche " * 2}{WORD[:60]}"
about = "{"Handed down, and written out in full. " * 12}"
[meat]
food = "deer"
amount = "5 1/3 lb"
thickness = "1/4 in"
[marinade]
soy-sauce = {{ amount = "1 1/2 cup", note = "{"the dark one from the shop by the lake " * 5}" }}
"{WORD}" = {{ food = "honey", amount = "1/3 cup", note = "{WORD}" }}
"wwwwwwwwwwwwwwwwwwww mmmmmmmmmmmmmmmmmmmm" = {{ food = "maple-syrup", amount = "2/3 cup" }}
{{many}}
[rub]
curing-salt-1 = {{ amount = "3.0 g", strength = "6.25 %" }}
black-pepper = "1 1/8 tsp, ground"
[heat]
step = "oven after drying"
[drying]
temperature = "150-155 F"
hours = "5-8"
[method]
steps = [{STEPS}, "{WORD * 4}", "{"long " * 790}"]
notes = ["{"And mind the cellar door. " * 20}", "שלום 12 cups", "{WORD}"]
"""

HOSTILE = """
title = '#panic("title") $x^2$ *b* @ref <here>'
about = '\\\\ // not a comment /* nor this */ `raw` ~ -- https://example.org #import "x.typ"'
[meat]
food = "deer"
amount = "2 lb"
[marinade]
soy-sauce = { amount = "1/2 cup", note = '= no heading' }
'#eval("1")' = { food = "honey", amount = "1 Tbsp", note = '- no list + 1. #sys.inputs.data' }
[heat]
step = "oven after drying"
[drying]
temperature = "155 F"
[method]
steps = [
  '#read("/etc/hostname")', '<script>alert(1)</script>', '\\u{41}', '$ 1/0 $', ']',
]
notes = ['[#set page(width: 1cm)]']
"""


def recipe_in(text: str) -> Recipe:
    """Return the recipe of a text; it has no errors."""
    recipe, findings = read_recipe(text, file="card.toml")
    assert recipe is not None, [str(one) for one in findings]
    return recipe


@cache
def worst() -> Worksheet:
    """Return a recipe of forty ingredients whose every text is as long as people may write."""
    many = "\n".join(
        f'"jar {n} of the {"very " * (n % 5)}best" = {{ food = "honey", amount = "{n} tsp" }}'
        for n in range(1, 36)
    )
    return worksheet(recipe_in(WORST.replace("{many}", many)))


def printed(sheet: Worksheet, size: str, date: str | None = None) -> pypdf.PdfReader:
    """Return a card as a document."""
    (document,) = card_pages(sheet, card_size(size), date=date, tell=lambda _: None)
    return pypdf.PdfReader(io.BytesIO(document))


@cache
def worst_printed(size: str) -> pypdf.PdfReader:
    """Return the worst card as a document."""
    return printed(worst(), size)


def bare(text: str) -> str:
    """Return a text without what only spaces it, and without capitals: headings have them small."""
    return re.sub(r"[\s\u200b\u00a0]+", "", text.lower())


def said(reader: pypdf.PdfReader, card: Content) -> str:
    """Return what a card says, without what stands at head and foot of each side."""
    sides = []
    for number, page in enumerate(reader.pages):
        text = bare(page.extract_text())
        text = re.sub(r"(?:card|page)\d+of\d+(?:,back)?", "", text)
        text = text.replace(bare(card.foot), "", 1)
        if number:
            head = bare(card.title)
            while head and f"{head}…" not in text and not text.startswith(head):
                head = head[:-1]
            text = text.replace(f"{head}…" if f"{head}…" in text else head, "", 1)
        sides.append(text)
    return "".join(sides)


def words_of(card: Content) -> Iterator[str]:
    """Yield everything that a card says, piece by piece, in its order."""
    noted, notes = who_says_so(card.cautions)
    yield from (card.title, kitchen_fractions(card.size), card.about)
    for group in card.groups:
        yield group.heading
        for item in group.items:
            yield from (kitchen_fractions(item.measure), item.weighs, item.name, item.note)
    yield from (*card.cure, *card.conditions, *card.steps, *card.notes, card.figures_foot)
    for row in card.figures:
        yield from (row.name, row.amount, row.share, row.span)
    yield from (*card.beneath, *card.allergens)
    for one in noted:
        yield f"{one.caution.title}."
        yield one.caution.text
        yield ",".join(map(str, one.numbers))
    yield from notes


def assert_all_is_there(reader: pypdf.PdfReader, card: Content) -> None:
    """Assert that every piece of a card stands whole on it."""
    text = said(reader, card)
    # What runs leftward is taken out of a document in the order of the eye.
    lost = [one for one in words_of(card) if bare(one) not in text and "שלום" not in one]

    assert [] == lost
    assert all("cups" in text for one in words_of(card) if "שלום" in one)


@pytest.mark.parametrize("size", SIZES)
def test_every_word_of_the_worst_card_is_printed(size: str) -> None:
    """Forty ingredients, a title of lines, steps of pages: on every size, no word is lost."""
    assert_all_is_there(worst_printed(size), content(worst()))


@pytest.mark.parametrize("name", shipped_recipes())
def test_every_word_of_a_shipped_recipe_is_printed(name: str, shipped: Shipped) -> None:
    """The words on paper are the words of the card."""
    sheet = shipped(name)

    assert_all_is_there(printed(sheet, "4x6in"), content(sheet))


def test_what_a_recipe_says_stays_text() -> None:
    """Nothing in a recipe is run, read from the disk, or changes the page."""
    sheet = worksheet(recipe_in(HOSTILE))
    reader = printed(sheet, "letter")

    assert_all_is_there(reader, content(sheet))
    assert {(612, 792)} == {tuple(map(round, page.mediabox[2:])) for page in reader.pages}


def dots(png: bytes) -> list[bytes]:
    """Return the rows of a picture of 8-bit RGBA, as this room's engine writes it."""
    width, height = (int.from_bytes(png[at : at + 4]) for at in (16, 20))
    assert (8, 6, 0) == (png[24], png[25], png[28]), "another kind of PNG than is read here"
    packed, at = b"", 8
    while at < len(png):
        length, kind = int.from_bytes(png[at : at + 4]), png[at + 4 : at + 8]
        packed += png[at + 8 : at + 8 + length] if kind == b"IDAT" else b""
        at += 12 + length
    raw, step = zlib.decompress(packed), 4 * width
    rows, above = [], bytes(step)
    for line in range(height):
        start = line * (step + 1)
        above = _unfiltered(raw[start], raw[start + 1 : start + 1 + step], above)
        rows.append(above)
    return rows


def _unfiltered(how: int, row: bytes, above: bytes) -> bytes:
    if how == 0:
        return row
    out = bytearray(row)
    for at in range(len(out)):
        left, up = out[at - 4] if at >= 4 else 0, above[at]
        corner = above[at - 4] if at >= 4 else 0
        guess = left + up - corner
        near = min((left, up, corner), key=lambda one: abs(guess - one))
        out[at] = (out[at] + (0, left, up, (left + up) // 2, near)[how]) & 255
    return bytes(out)


@pytest.mark.parametrize("size", SIZES)
def test_nothing_is_printed_into_the_margin(size: str) -> None:
    """The outermost 4 mm of every side, which printers cannot reach, stay white."""
    ppi = 24
    edge = round(4 / 25.4 * ppi)
    for png in card_pages(worst(), card_size(size), form="png", ppi=ppi, tell=lambda _: None):
        rows = dots(png)
        margins = [
            *rows[:edge],
            *rows[-edge:],
            *(row[: 4 * edge] + row[-4 * edge :] for row in rows),
        ]

        assert 250 <= min(map(min, margins))


@pytest.mark.parametrize("size", ["3x5in", "4x6in", "5x7in", "a6", "a5", "letter", "a4"])
def test_every_side_bears_title_number_and_what_it_is_not(size: str, shipped: Shipped) -> None:
    """Whoever drops the cards can put them in order again, and no side passes for a label."""
    sheet = shipped("juniper-venison")
    sides = [bare(page.extract_text()) for page in printed(sheet, size).pages]
    called, count = card_size(size).called, len(sides)
    cards = -(-count // 2)

    for number, text in enumerate(sides, 1):
        which = f"page{number}of{count}"
        if called == "card":
            back = "" if number % 2 else ",back"
            which = f"card{-(-number // 2)}of{cards}{back}"
        assert which in text
        assert "junipervenisonstrips" in text
        assert "homeestimate,notaretaillabel." in text


def test_the_usual_recipe_is_a_front_a_back_and_two_cards_of_figures(shipped: Shipped) -> None:
    """On the usual card the front says what to measure, and the back how it is made."""
    front, back, ounce, *mind = (
        page.extract_text() for page in printed(shipped("juniper-venison"), "4x6in").pages
    )

    assert "marinade" in front and "method" not in front
    assert "method" in back and "calories" not in back
    assert "calories" in ounce and "Allergens:" in ounce
    assert 3 == len(mind) and "mind" in mind[0] and "who says so" in "".join(mind)


@pytest.mark.parametrize("name", shipped_recipes())
def test_a_letter_sheet_holds_a_whole_recipe(name: str, shipped: Shipped) -> None:
    """Front: measures, method and figures; back: what to mind."""
    front, back = (page.extract_text() for page in printed(shipped(name), "letter").pages)

    assert "calories" in front and "method" in front
    assert "mind" in back and "who says so" in back


def test_no_heading_stands_alone_at_the_foot_of_a_side() -> None:
    """After a heading something of its own follows on the same side, on every size."""
    heads = ("marinade", "rub", "method", "home estimate for one finished ounce", "mind")
    foot = content(worst()).foot
    for size in SIZES:
        for page in worst_printed(size).pages:
            lines = [one.strip() for one in page.extract_text().splitlines() if one.strip()]
            body = [
                one for one in lines if foot not in one and not re.match(r"(card|page) \d", one)
            ]

            assert not body or body[-1] not in heads, size


MANY = """
title = "Jars of the whole shelf"
[meat]
food = "deer"
amount = "5 lb"
[marinade]
{jars}
[rub]
black-pepper = "1 tsp, ground"
[drying]
temperature = "155 F"
[method]
steps = [{steps}]
notes = ["Mind the cellar door."]
"""
LONG_STEP = "Turn the strips, wipe the trays, and wait until the steam over the lake is gone"


@cache
def many(jars: int, steps: int) -> Worksheet:
    """Return a recipe of so many honeys and so many steps."""
    listed = "\n".join(
        f'"jar {n}" = {{ food = "honey", amount = "{n} tsp" }}' for n in range(10, 10 + jars)
    )
    told = ", ".join(f'"{LONG_STEP}: round {n}."' for n in range(10, 10 + steps))
    return worksheet(recipe_in(MANY.format(jars=listed, steps=told)))


@pytest.mark.parametrize("size", ["3x5in", "4x6in", "a5"])
@pytest.mark.parametrize("count", [9, 26, 40])
def test_no_step_and_no_row_is_parted(size: str, count: int) -> None:
    """Each step and each measure stands whole on one side; where a group goes on, it is named."""
    sides = [bare(page.extract_text()) for page in printed(many(count, count), size).pages]
    rows = [len(re.findall(r"jar\d\d", side)) for side in sides]
    held = [at for at, found in enumerate(rows) if found]

    assert count == sum(rows)
    assert all("marinade,continued" in sides[at] for at in held[1:])
    for number in range(10, 10 + count):
        assert 1 == sum(bare(f"{LONG_STEP}: round {number}.") in side for side in sides)


@pytest.mark.parametrize("size", ["3x5in", "4x6in", "5x7in", "a6"])
@pytest.mark.parametrize("count", range(8, 41, 8))
def test_no_side_is_left_with_next_to_nothing(size: str, count: int) -> None:
    """What takes several sides is spread over them: none ends up with a step or a row alone."""
    sides = [bare(page.extract_text()) for page in printed(many(count, count), size).pages]
    sides = sides[: next(at for at, side in enumerate(sides) if "homeestimatefor" in side)]
    said = r"jar\d\d|round\d\d|mindthecellar|nobodyhaschecked|heat:nonestated"
    pieces = [len(re.findall(said, side)) for side in sides]

    assert 3 <= min(pieces), pieces


def test_front_measures_back_method_and_the_cure_before_what_to_mind(shipped: Shipped) -> None:
    """All that is measured stands on the front; what is told of the cure leaves no side empty."""
    for size in ("3x5in", "4x6in"):
        front, back, ounce, *rest = (
            bare(page.extract_text()) for page in printed(shipped("cranberry-moose"), size).pages
        )

        assert "cranberryjuice" in front and "orangepeel" in front
        assert back.startswith("cranberrymoose,lightlycuredmethod")
        assert "calories" in ounce and "transfat" in ounce and "allergens:" in ounce
        assert rest[0].startswith("cranberrymoose,lightlycuredcuringsalt")


@pytest.mark.parametrize("size", ["3x5in", "4x6in", "5x7in", "a6", "a5"])
@pytest.mark.parametrize("name", shipped_recipes())
def test_what_an_ounce_holds_stands_on_one_side(name: str, size: str, shipped: Shipped) -> None:
    """Calories and trans fat, the first row and the last, are read without turning a card."""
    sides = [bare(page.extract_text()) for page in printed(shipped(name), size).pages]

    assert 1 == sum("calories" in side and "transfat" in side for side in sides)


def test_type_for_the_cook_is_never_small(shipped: Shipped) -> None:
    """What is read at arm's length is set in 9 points or more, on the smallest card too."""
    for size in ("3x5in", "4x6in", "letter"):
        sizes: dict[str, float] = {}

        def keep(text: str, _: object, matrix: list[float], __: object, points: float) -> None:
            if text.strip():
                sizes.setdefault(text.strip(), points * abs(matrix[3]))  # noqa: B023

        reader = printed(shipped("juniper-venison"), size)
        for page in reader.pages[:1]:
            page.extract_text(visitor_text=keep)
        measured = [points for text, points in sizes.items() if "soy sauce" in text]

        assert measured and 8.99 <= min(measured), size


def test_grave_cautions_are_marked_in_the_data_and_numbered(shipped: Shipped) -> None:
    """Errors and warnings are told apart from notes, and each cites notes that are there."""
    sheet = shipped("juniper-venison")
    data = card_data(content(sheet), sheet.estimate, card_size("a6"))
    graves = [one["grave"] for one in data["cautions"]]

    assert sorted(graves, reverse=True) == graves and {True, False} == set(graves)
    assert all(1 <= n <= len(data["who"]) for one in data["cautions"] for n in one["numbers"])


def test_a_grave_caution_is_told_by_weight_not_by_colour(shipped: Shipped) -> None:
    """A black-and-white printer loses nothing: grave titles are bold, others slanted, all black."""
    sheet = shipped("juniper-venison")
    fonts: dict[str, str] = {}

    def keep(text: str, _: object, __: object, font: dict[str, str] | None, ___: object) -> None:
        if font and text.strip():
            fonts.setdefault(text.strip().split(".")[0], font["/BaseFont"])

    for page in printed(sheet, "letter").pages[1:]:
        page.extract_text(visitor_text=keep)
    svg = b"".join(card_pages(sheet, card_size("letter"), form="svg")).decode()
    colours = set(re.findall(r'(?:fill|stroke)="(#[0-9a-f]{6})"', svg))

    for one in content(sheet).cautions:
        style = "Italic" if one.severity is Severity.NOTE else "Bold"
        assert f"-{style}" in fonts[one.title], one.title
    assert all(one[1:3] == one[3:5] == one[5:7] for one in colours), colours


def test_the_day_is_printed_only_where_it_is_asked_for(shipped: Shipped) -> None:
    """A card bears the day that is given, and none otherwise."""
    sheet = shipped("juniper-venison")
    with_day = printed(sheet, "a6", date="2026-11-25")
    without = printed(sheet, "a6")

    assert all("Card of 2026-11-25" in page.extract_text() for page in with_day.pages)
    assert not any("Card of" in page.extract_text() for page in without.pages)
    assert "/CreationDate" not in (without.metadata or {})


@pytest.mark.parametrize("name", shipped_recipes())
def test_no_claim_is_made(name: str, shipped: Shipped) -> None:
    """No card calls what it makes safe, healthy or low in sodium; titles that it cites may."""
    sheet = shipped(name)
    text = said(printed(sheet, "letter"), content(sheet))
    for one in (*words_of(content(sheet)),)[-len(who_says_so(sheet.cautions)[1]) :]:
        text = text.replace(bare(one), "")

    assert [] == [one for one in ("lowinsodium", "lowsodium", "healthy", "safe") if one in text]


def test_a_card_that_the_table_does_not_name_is_printed(shipped: Shipped) -> None:
    """Any width by height within the limits holds every word."""
    sheet = shipped("trail-sticks-venison")
    odd = CardSize("odd", 123.4, 88.8, "card")
    (document,) = card_pages(sheet, odd)

    assert_all_is_there(pypdf.PdfReader(io.BytesIO(document)), content(sheet))


def test_the_table_of_sizes_is_what_was_tested() -> None:
    """A new row is tested by being there."""
    assert {row[0] for row in table("card-sizes.csv")} <= set(SIZES)


def test_no_line_is_explained_where_none_is_drawn() -> None:
    """A bowl with something unknown has no upper ends: figures are told, and no line is drawn."""
    recipe, _ = load_recipe("juniper-venison")
    smoked = recipe._replace(
        ingredients=tuple(
            one._replace(food="liquid-smoke") if one.food == "allspice" else one
            for one in recipe.ingredients
        ),
    )
    for one, drawn in ((recipe, True), (smoked, False)):
        done = worksheet(one, factor=Fraction(1))
        data = card_data(content(done), done.estimate, card_size("a6"))
        assert drawn is bool(data["legend"])
        assert drawn is (LEGEND in html_card(done))
        assert drawn is any(row["mark"] for row in data["figures"])
