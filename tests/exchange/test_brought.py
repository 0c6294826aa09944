"""A taken recipe as a file of ours: everything kept, nothing made up."""

from __future__ import annotations

import time
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.exchange.brought import Brought, bring
from tarebook.exchange.taken import Taken
from tarebook.recipe.read import read_recipe


def brought(*lines: str, **parts: Any) -> Brought:
    """Return the file that a recipe of these lines makes."""
    empty = Taken(title="Lake strips", about="", lines=lines, steps=(), notes=())
    return bring(empty._replace(**parts), "page.json")


def table(made: Brought) -> dict[str, Any]:
    """Return what the file says."""
    return tomllib.loads(made.text)


def test_a_page_that_tells_all_makes_a_recipe_without_errors() -> None:
    """Meat, a sauce and forms come out as a recipe that reads without an error."""
    made = brought("2 lb venison, sliced", "1/2 cup soy sauce", "1/4 cup brown sugar, packed")
    recipe, _ = read_recipe(made.text, file="x.toml")

    assert recipe is not None
    assert ("deer", "2 lb") == (recipe.meat.food, str(recipe.meat.amount))
    assert [("soy-sauce", "1/2 cup"), ("brown-sugar", "1/4 cup packed")] == [
        (one.food, str(one.amount)) for one in recipe.ingredients
    ]


def test_no_weight_of_meat_is_made_up() -> None:
    """A roast without a weight is food without an amount, a place to fill in, and a finding."""
    made = brought("1 venison roast", "1/2 cup soy sauce")
    recipe, findings = read_recipe(made.text, file="x.toml")

    assert {"food": "deer"} == table(made)["meat"]
    assert ("the weight of the meat",) == made.to_fill_in
    assert recipe is None
    assert any("amount" in str(one) for one in findings)


def test_a_page_without_meat_asks_for_it() -> None:
    """A page of a marinade alone asks what is dried, and how much."""
    made = brought("1/2 cup soy sauce")

    assert {} == table(made)["meat"]
    assert ("what is dried", "the weight of the meat") == made.to_fill_in


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("3 lb elk top round", "elk"),
        ("2 lb sockeye fillets", "salmon-sockeye"),
        ("1 lb portabella mushrooms", "mushroom-portabella"),
    ],
)
def test_what_is_dried_is_recognised(line: str, key: str) -> None:
    """A cut of a meat, a fish, and mushrooms where there is neither, are what is dried."""
    assert key == table(brought(line, "1/2 cup soy sauce"))["meat"]["food"]


def test_stock_is_no_meat() -> None:
    """Stock of a meat is poured over it, and is no weight of it."""
    assert {} == table(brought("2 lb venison stock", "1 cup chicken broth"))["meat"]


def test_lines_not_read_are_kept_as_they_stood() -> None:
    """What tells no amount, or one amount for two foods, stays in the file word by word."""
    lines = ("a splash of gin", "1 Tbsp salt and pepper", "½ moon, sliced")
    made = brought("2 lb venison", *lines)

    assert lines[:2] == made.not_read
    assert all(line in made.text for line in lines)


def test_unknown_foods_keep_the_cooks_words_and_near_names() -> None:
    """A food that the table lacks is an entry under its own words, and check says so."""
    made = brought("2 lb venison", "1/2 cup dark beer")
    _, findings = read_recipe(made.text, file="x.toml")

    assert "1/2 cup" == table(made)["rub"]["dark beer"]
    assert ["dark beer"] == [name for name, _ in made.unknown]
    assert any('no food is called "dark beer"' in str(one) for one in findings)


def test_a_bottle_of_the_cooks_own_is_known(own_home: Path) -> None:
    """A line that names a bottle of the cook's own is no unknown food."""
    foods = own_home / "foods"
    foods.mkdir(parents=True)
    (foods / "lakeside-soy.toml").write_text(
        'like = "soy-sauce"\n[panel]\nserving = "1 Tbsp (17 g)"\nsodium = "575 mg"\n', "utf-8"
    )

    made = brought("2 lb venison", "1/2 cup lakeside soy")
    recipe, _ = read_recipe(made.text, file="x.toml")

    assert () == made.unknown
    assert recipe is not None and recipe.ingredients[0].bottle is not None


def test_a_line_of_two_foods_without_an_amount_is_kept_once() -> None:
    """Salt and pepper of no amount is one line kept, not two."""
    assert ("salt and pepper",) == brought("2 lb venison", "salt and pepper").not_read


def test_headings_say_which_part() -> None:
    """Lines behind a heading of a rub are a rub, and the heading is no line lost."""
    made = brought("2 lb venison", "For the marinade:", "1 cup water", "Rub", "2 tsp paprika")

    assert {"water": "1 cup"} == table(made)["marinade"]
    assert {"paprika": "2 tsp"} == table(made)["rub"]
    assert () == made.not_read


def test_the_same_food_twice_is_kept_twice() -> None:
    """Two lines of one food make two entries, each with its amount."""
    made = table(brought("1 cup water", "2 Tbsp water"))["marinade"]

    assert {"water": "1 cup", "water 2": {"food": "water", "amount": "2 Tbsp"}} == made


def test_strength_of_a_curing_salt_is_taken_where_it_is_told() -> None:
    """A stated share of nitrite is taken along; an unstated one is not made up."""
    told = brought("2 lb deer", "3 g curing salt no. 1 (6.25 % sodium nitrite)")
    untold = brought("2 lb deer", "3 g curing salt no. 1")

    assert "6.25 %" == table(told)["rub"]["curing-salt-1"]["strength"]
    assert "3 g" == table(untold)["rub"]["curing-salt-1"]


def test_hundreds_of_unknown_foods_take_no_time() -> None:
    """500 foods that no table has are all kept; near names are looked for only for the first."""
    start = time.perf_counter()
    made = brought(*(f"1 cup sap number {number}" for number in range(500)))

    assert time.perf_counter() - start < 5
    assert 500 == len(made.unknown) == len(table(made)["rub"])


TEXTS = st.text(max_size=80)


@given(TEXTS, st.lists(TEXTS, max_size=6), st.lists(TEXTS, max_size=3), TEXTS)
def test_any_texts_make_a_file_that_toml_reads(
    title: str, lines: list[str], steps: list[str], source: str
) -> None:
    """Quotes, line ends and marks that steer a terminal break out of no value and no remark."""
    empty = Taken(title=title, about=title, lines=tuple(lines), steps=tuple(steps), notes=())

    made = tomllib.loads(bring(empty, source).text)

    assert title == made.get("title", "")
    assert steps == made.get("method", {}).get("steps", [])
    assert {"title", "about", "meat", "marinade", "rub", "mixed-in", "soak", "heat", "drying",
            "method"} >= set(made)  # fmt: skip
