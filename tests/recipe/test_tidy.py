"""Recipes set down tidily: the same recipe, every remark by its own line, once and for all."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from tarebook.findings import RecordFaulty, TarebookError
from tarebook.quantities.plain import plain
from tarebook.recipe.bottle_questions import bottle_from
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.read import read_recipe
from tarebook.recipe.tidy import tidied
from tarebook.recipe.write import to_toml
from tarebook.recipe.write_bottle import bottle_toml
from tarebook.toml import anew
from tarebook.toml.pieces import Table, pieces
from tarebook.where import folder

README = Path(__file__).resolve().parents[2] / "README.md"


def of(text: str) -> str:
    """Return a text as it would be tidy."""
    return tidied(text.encode(), file="lake.toml").decode()


@pytest.mark.parametrize("name", shipped_recipes())
def test_shipped_recipes_are_tidy(name: str) -> None:
    """What we give out is set down as we would set it down."""
    data = (folder("recipes") / f"{name}.toml").read_bytes()

    assert data == tidied(data, file=name)


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("hints", [False, True])
def test_what_we_write_is_tidy(name: str, hints: bool) -> None:
    """A recipe that the questions write needs no tidying."""
    text = to_toml(load_recipe(name)[0], hints=hints)

    assert text == of(text)


@pytest.mark.skipif(not README.exists(), reason="needs the checkout")
def test_the_recipe_in_readme_is_tidy() -> None:
    """Nor does the one that README shows."""
    text = README.read_text("utf-8").split("```toml\n")[1].split("```")[0]

    assert text == of(text)


def test_a_bottle_that_we_write_is_tidy() -> None:
    """Nor does a bottle that the questions make."""
    answers = {
        "like": "soy-sauce", "name": "Lakeside", "serving": "1 Tbsp (17 g)", "sodium": "575 mg",
        "sugars": "1 g", "energy": "10", "size": "15 fl oz", "price": "3.49",
        "contains": "soybeans, wheat", "check": "sesame",
    }  # fmt: skip
    text = bottle_toml(bottle_from(answers, key="lakeside", date="2026-11-25"))

    assert text == of(text)


MESSY = """\
# From grandmother's book, page 12.

about   =  'Dark and a little sweet.'
title="Lake strips"   # ours
[drying]
hours="5-7"
# not above this
temperature = "155 F"
[ marinade ]
'garlic' = "3  cloves, minced"   # crushed, she says
soy-sauce="½ cup"
# for colour
"dark soy" = {amount="1½ Tbsp",food='soy-sauce'}
# honey = "1 Tbsp"

[meat]
amount="2½ lb"
food="deer"
[method]
steps = ["Slice.", 'Soak.', # overnight
  # then
  "Dry."]
# the end
"""
TIDY = """\
# From grandmother's book, page 12.

title = "Lake strips"  # ours
about = "Dark and a little sweet."

[meat]
food = "deer"
amount = "2 1/2 lb"

[marinade]
garlic = "3 cloves, minced"  # crushed, she says
soy-sauce = "1/2 cup"
# for colour
"dark soy" = { food = "soy-sauce", amount = "1 1/2 Tbsp" }
# honey = "1 Tbsp"

[drying]
# not above this
temperature = "155 F"
hours = "5-7"

[method]
steps = [
    "Slice.",
    "Soak.",  # overnight
    # then
    "Dry.",
]
# the end
"""


def test_a_messy_recipe() -> None:
    """Tables and keys in order, ingredients in the cook's own, remarks by their lines."""
    assert TIDY == of(MESSY)
    assert TIDY == of(TIDY)


def test_line_ends_and_mark() -> None:
    """Lines end as the first one does; a byte order mark and a missing last line end are mended."""
    messy = b"\xef\xbb\xbf" + MESSY.rstrip().encode().replace(b"\n", b"\r\n")

    assert TIDY.replace("\n", "\r\n").encode() == tidied(messy, file="lake.toml")
    assert TIDY.encode() == tidied(MESSY.replace("\n", "\r\n").replace("\r\n", "\n", 1).encode(),
                                   file="lake.toml")  # fmt: skip


@pytest.mark.parametrize(
    ("written", "tidy_one"),
    [
        ('"½ cup"', '"1/2 cup"'),
        ('"1½ cups"', '"1 1/2 cups"'),
        ('"2⁄3 cup"', '"2/3 cup"'),
        ('" 1  cup "', '"1 cup"'),
        ('"1\u00a0cup"', '"1 cup"'),
        ('"1–2 cups"', '"1–2 cups"'),  # "1–1/2" and "1-1/2" are two amounts
        ('"1 cup + 2 Tbsp"', '"1 cup + 2 Tbsp"'),
        ('"to taste"', '"to taste"'),
    ],
)
def test_how_amounts_are_spelled(written: str, tidy_one: str) -> None:
    """Fractions in plain digits, single spaces; units and words stay the cook's own."""
    text = (
        f'title = "½"\n\n[meat]\nfood = "deer"\namount = "1 kg"\n\n[marinade]\nwater = {written}\n'
    )

    assert text.replace(written, tidy_one) == of(text)


def test_dotted_and_nested_tables_stay_as_they_are_built() -> None:
    """A cook's own way of nesting stays; only order and spacing change."""
    text = (
        'soak.hours = 12\nmeat.amount = "1 kg"\nmeat.food = "deer"\ntitle = "x"\n'
        '[marinade.soy]\nnote = "n"\nfood = "soy-sauce"\namount = "1 cup"\n'
        '[marinade.soy.panel]\nsodium = "575 mg"\nserving = "1 Tbsp (17 g)"\n'
        '[rub]\nblack-pepper = "1 tsp"\n'
    )

    assert [
        'title = "x"', 'meat.food = "deer"', 'meat.amount = "1 kg"', "soak.hours = 12", "",
        "[marinade.soy]", 'food = "soy-sauce"', 'amount = "1 cup"', 'note = "n"', "",
        "[marinade.soy.panel]", 'serving = "1 Tbsp (17 g)"', 'sodium = "575 mg"', "",
        "[rub]", 'black-pepper = "1 tsp"',
    ] == of(text).splitlines()  # fmt: skip


def test_a_bottle() -> None:
    """The file of a bottle of the cook's own is tidied by the same command."""
    text = (
        "[pack]\nprice=3.49\nsize='15 fl oz'\n# as printed\n[panel]\nsodium='575 mg'\n"
        "serving='1 Tbsp (17 g)'\n"
    )
    tidy_one = (
        'name = "Lakeside"\nlike = "soy-sauce"\n\n# as printed\n[panel]\n'
        'serving = "1 Tbsp (17 g)"\nsodium = "575 mg"\n\n[pack]\nsize = "15 fl oz"\nprice = 3.49\n'
    )

    assert tidy_one == of(f"like='soy-sauce'\nname='Lakeside'\n{text}")
    assert tidy_one == of(tidy_one)


@pytest.mark.parametrize(
    "text",
    [
        "", "title = 3", "[meat", 'name = "x"\n[meat]\nfood = "deer"\namount = "1 kg"\n',
        'like = "nothing"', "# like\n", "\x00", "[dryer]\ntrays = 5\n",
    ],
)  # fmt: skip
def test_err_a_faulty_file(text: str) -> None:
    """It comes back with its findings, and nothing is made of it."""
    with pytest.raises(RecordFaulty) as caught:
        of(text)

    assert caught.value.findings


@pytest.mark.parametrize(
    ("good", "bad"),
    [("1/2 cup", "1/3 cup"), ("  # ours", ""), ("Soak.", "Soap."), ("[meat]", "[m")],
)
def test_err_what_would_not_read_the_same(
    good: str, bad: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another amount, a lost remark, another step, a broken file: nothing is given out."""
    true = anew.text_of_page
    monkeypatch.setattr(anew, "text_of_page", lambda page: true(page).replace(good, bad))

    with pytest.raises(TarebookError, match=r"lake\.toml is left as it is"):
        of(MESSY)


SPACES = some.sampled_from(["", " ", "   ", "\t"])
PARTS = {
    "top": ["title = 'Strips ½'", 'about = """Two\nlines."""', "cup = 'us'"],
    "meat": ["food='deer'", "amount = '2½ lb'", 'thickness = "1/4 in"', "wild=true"],
    "marinade": [
        "soy-sauce = '½ cup'",
        '"dark soy" = { scale = "fixed", amount="1 Tbsp", food="soy-sauce" }',
        "'garlic'='3 cloves, minced'",
        "own = {panel={sodium='575 mg',serving='1 Tbsp (17 g)'},amount='1 cup',food='soy-sauce'}",
        "water.amount = '1  cup'",
    ],
    "rub": ["black-pepper = '1 tsp'", "paprika='⅔ tsp'"],
    "soak": ["hours = '8-12'", "surface='patted'"],
    "heat": ["step='oven after drying'"],
    "drying": ["temperature = '155 F'", "hours=6", "moisture='25 %'"],
    "method": ["steps=[ # R\n'One.', # R\n # R\n \"Two.\" # R\n]", "notes = ['Keep cold']"],
}


@some.composite
def recipes(draw: some.DrawFn) -> str:
    """Draw a recipe with tables and keys in any order, and remarks anywhere."""
    blocks = []
    sections = [name for name in draw(some.permutations(list(PARTS))) if name != "top"]
    for name in ["top", *sections]:
        rows = draw(some.permutations(PARTS[name]))
        lines = [] if name == "top" else [f"[{draw(SPACES)}{name}{draw(SPACES)}]"]
        for row in [*lines, *rows]:
            blocks += ["#:R" if not blocks and draw(some.booleans()) else "# R"] * draw(
                some.integers(0, 1)
            )
            blocks += [""] * draw(some.integers(0, 1))
            blocks += ["#R  "] * draw(some.integers(0, 1))
            beside = draw(some.sampled_from(["", "", "# R"]))
            blocks.append(f"{draw(SPACES)}{row}{draw(SPACES)}{beside}")
    blocks += draw(some.lists(some.sampled_from(["", "# R"]), max_size=3))
    text, *others = "\n".join(blocks).split("R")
    for number, other in enumerate(others):
        text += f"r{number} ends{other}" if text.endswith(("#", "# ", "#:")) else f"R{other}"
    ends = draw(some.sampled_from(["\n", "\r\n"]))
    return text.replace("\n", ends) + draw(some.sampled_from(["", ends]))


def remarks(text: str) -> list[str]:
    """Return the numbers of the remarks, in order."""
    words = text.replace("#:", "# ").replace("#r", "# r").split()
    return [one for one, after in pairwise(words) if after == "ends"]


def beside(text: str) -> dict[tuple[str, ...], str]:
    """Return the remark behind each key and each header."""
    return dict(_beside(pieces(text.replace("\r\n", "\n")).tables))


def _beside(tables: tuple[Table, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
    for table in tables:
        yield table.keys, table.beside
        yield from (((*table.keys, *row.keys), row.beside) for row in table.rows)


def spelled(value: Any, *, amounts: bool) -> Any:
    """Return a document with its amounts in plain characters, and its words as they are."""
    if isinstance(value, dict):
        words = ("title", "about", "note", "method")
        return {k: spelled(v, amounts=amounts and k not in words) for k, v in value.items()}
    return " ".join(plain(value).split()) if isinstance(value, str) and amounts else value


@settings(max_examples=300, deadline=None)
@given(recipes())
def test_any_recipe_keeps_its_remarks_and_reads_the_same(text: str) -> None:
    """However it is written: nothing lost, nothing doubled, each by its line, once and for all."""
    found = of(text)
    before, after = tomllib.loads(text), tomllib.loads(found)

    assert spelled(before, amounts=True) == after
    assert sorted(remarks(text)) == sorted(remarks(found))
    assert beside(text) == beside(found)
    assert found == of(found)
    assert ["title", "about", "cup", "meat"] == list(after)[:4]
    assert list(before["marinade"]) == list(after["marinade"])


@settings(max_examples=100, deadline=None)
@given(some.sampled_from(shipped_recipes()), some.data())
def test_remarks_between_the_lines_of_a_tidy_recipe_stay_in_order(
    name: str, data: some.DataObject
) -> None:
    """Where nothing has to change its place, every remark comes again, in order."""
    lines = (folder("recipes") / f"{name}.toml").read_text("utf-8").splitlines()
    for number in range(data.draw(some.integers(1, 6))):
        at = data.draw(some.integers(0, len(lines)))
        blank = [""] * data.draw(some.integers(0, 2))
        lines[at:at] = [*blank[:1], f"  # r{number} ends", *blank[1:]]
    text = "\n".join(lines)

    assert remarks(text) == remarks(of(text))
    assert of(text) == of(of(text))


@settings(max_examples=200, deadline=None)
@given(some.sampled_from(shipped_recipes()), some.data())
def test_a_damaged_recipe_is_refused_or_tidied(name: str, data: some.DataObject) -> None:
    """Whatever a slip of the pen makes of a file: findings or a tidy recipe, never a traceback."""
    text = (folder("recipes") / f"{name}.toml").read_text("utf-8")
    at = data.draw(some.integers(0, len(text)))
    put = data.draw(
        some.sampled_from(["", '"', "'", "#", "[", "]", "{", "}", "=", "\n", ",", '"""'])
    )
    cut = data.draw(some.integers(0, 3))
    damaged = text[:at] + put + text[at + cut :]
    try:
        found = of(damaged)
    except RecordFaulty as faulty:
        assert faulty.findings
    else:
        assert read_recipe(found, file="x")[0] is not None
        assert found == of(found)
