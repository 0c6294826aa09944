"""What the list tells of a recipe, how it sorts, and what it leaves out."""

from __future__ import annotations

import pytest

from tarebook.nutrition import estimate, facts_of
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, recipe_bytes, shipped_recipes
from tarebook.scaling import scale_to_meat
from tarebook.shelf import SORTS, Row, row_of, sort_rows, under

TEXT = 'title = "Lake strips"\n[meat]\nfood = "deer"\namount = "1 kg"\n[marinade]\n'


def row(name: str, sodium: float | None, *, floor: bool = False) -> Row:
    """Return a row with a sodium figure."""
    three = None if sodium is None else (sodium / 2, sodium, sodium * 2)
    return Row(name, name, "deer", three, three, ("sodium_mg",) if floor else ())


@pytest.mark.parametrize("name", shipped_recipes())
def test_a_row_tells_what_scale_tells(name: str) -> None:
    """Low, likely and high are those of the estimate at the recipe's own size."""
    recipe, _ = load_recipe(name)
    found = estimate(facts_of(scale_to_meat(recipe, recipe.meat.mass_g, choose_drawer("basic"))))
    sodium = found.per_ounce["sodium_mg"]
    told = row_of(name, recipe_bytes(name)[0], file=name)

    assert sodium is not None
    assert (sodium.low, sodium.likely, sodium.high) == told.sodium_mg
    assert (recipe.title, recipe.meat.food, "") == (told.title, told.meat, told.fault)


def test_salt_by_the_spoon_has_no_total() -> None:
    """No figure stands in for what is not known."""
    told = row_of("x", f'{TEXT}salt = "1 Tbsp"\nwater = "1 cup"\n'.encode(), file="x.toml")

    assert told.sodium_mg is None and told.fault == ""


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("title = 3", "its file has"),
        (f'{TEXT}soy-sauce = "1 cpu"\n', "its file has a fault: see tarebook check"),
        (f'{TEXT}curing-salt-1 = {{ amount = "9 g", strength = "6.25 %" }}\n', "its file has"),
    ],
)
def test_a_faulty_recipe_is_on_the_list_with_its_fault(text: str, says: str) -> None:
    """One bad file hides none of the others, and has no figures."""
    told = row_of("x", text.encode(), file="x.toml")

    assert told.sodium_mg is None
    assert told.fault.startswith(says) or "ppm" in told.fault


@pytest.mark.parametrize("by", SORTS)
@pytest.mark.parametrize("backwards", [False, True])
def test_what_is_not_known_comes_last(by: str, backwards: bool) -> None:
    """Either way round."""
    rows = [row("c", None), row("b", 200), row("a", 300)]
    found = [one.name for one in sort_rows(rows, by, backwards=backwards)]

    if by in ("sodium", "sugars"):
        assert (["a", "b", "c"] if backwards else ["b", "a", "c"]) == found
    else:
        assert set("abc") == set(found)


def test_under_is_held_against_the_high_estimate() -> None:
    """Likely under is not enough; what is not known in full is counted apart."""
    rows = [row("low", 100), row("likely", 290), row("none", None), row("floor", 100, floor=True)]
    found, not_told = under(rows, "sodium_mg", 300.0)

    assert (["low"], 2) == ([one.name for one in found], not_told)
