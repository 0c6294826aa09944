"""A cook's amount as grams: through a named density, or not known."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.figures.foods import food, salt_kinds
from tarebook.figures.measures import density
from tarebook.quantities.amount import parse_amount
from tarebook.scaling.volume_and_mass import mass_of

CUP_ML = Fraction("236.5882365")


@pytest.mark.published
@pytest.mark.parametrize(
    ("amount", "name", "printed_g"),
    [
        # SR26, grams of one household measure as printed.
        ("1 cup packed", "brown-sugar", 220),
        ("1 cup", "honey", 339),
        ("1 tsp ground", "black-pepper", Fraction("2.3")),
        ("1 cup", "salt-table", 292),
        ("1 cup", "water", 237),
        ("1 clove", "garlic", 3),
        ("1 dash", "salt-table", Fraction("0.4")),
        ("1 dash", "black-pepper", Fraction("0.1")),
    ],
)
def test_a_published_measure_weighs_what_is_printed(
    amount: str, name: str, printed_g: int | Fraction
) -> None:
    """A measure that the table prints comes back as the grams it prints."""
    found = mass_of(parse_amount(amount), food(name))

    assert found is not None
    assert (printed_g, printed_g) == (found.low_g, found.high_g)
    assert "sr26" == found.source


def test_a_weight_is_itself() -> None:
    """Grams and pounds need no density, and only the scale's doubt is in them."""
    found = mass_of(parse_amount("6 lb 4 oz"), food("salt"))

    assert found is not None
    assert Fraction("2834.952312500") == found.low_g == found.high_g
    assert ("weighed", "", None) == (found.how, found.source, found.g_per_ml)
    assert found.doubt < 0.01


def test_a_volume_carries_its_density() -> None:
    """Volume becomes mass through one density, and the density and its source travel along."""
    found, known = mass_of(parse_amount("1/2 cup"), food("soy-sauce")), density("soy-sauce")

    assert found is not None and known is not None
    assert CUP_ML / 2 * known.g_per_ml == found.middle_g
    assert (known.g_per_ml, known.source) == (found.g_per_ml, found.source)
    assert found.doubt > known.spread


def test_a_range_keeps_both_ends() -> None:
    """A written range weighs a range, its middle half way."""
    found = mass_of(parse_amount("2-3 tsp ground"), food("black-pepper"))

    assert found is not None
    assert (Fraction("4.6"), Fraction("6.9")) == (found.low_g, found.high_g)
    assert Fraction("5.75") == found.middle_g


@pytest.mark.parametrize(
    ("amount", "name"),
    [
        ("1 Tbsp", "salt"),
        ("1 dash", "salt"),
        ("to taste", "salt-table"),
        ("1 tsp", "curing-salt-1"),
        ("3 cloves", "honey"),
    ],
)
def test_what_nobody_stated_is_not_known(amount: str, name: str) -> None:
    """Without a stated density or piece weight a mass is not known, and never zero."""
    assert mass_of(parse_amount(amount), food(name)) is None


@pytest.mark.parametrize("kind", salt_kinds())
def test_every_named_salt_has_a_weight(kind: str) -> None:
    """Each kind of salt that a cook is told to choose from weighs something by the spoon."""
    found = mass_of(parse_amount("1 tsp"), food(kind))

    assert found is not None
    assert 2 < found.middle_g < 8


def test_a_dash_without_its_own_weight_is_a_sixteenth_of_a_teaspoon() -> None:
    """A dash is 1/16 tsp, with half and twice as much well within its doubt."""
    dash = mass_of(parse_amount("1 dash"), food("soy-sauce"))
    spoon = mass_of(parse_amount("1 tsp"), food("soy-sauce"))

    assert dash is not None and spoon is not None
    assert spoon.middle_g / 16 == dash.middle_g
    assert dash.doubt > 0.4 > spoon.doubt


def test_the_form_decides_the_density() -> None:
    """Whole pepper is not ground pepper; the form written beside the food counts as well."""
    ground = mass_of(parse_amount("1 Tbsp ground"), food("black-pepper"))
    whole = mass_of(parse_amount("1 Tbsp whole"), food("black-pepper"))
    apart = mass_of(parse_amount("1 Tbsp"), food("black-pepper"), ("whole",))

    assert ground is not None and whole is not None and apart is not None
    assert ground.middle_g < whole.middle_g
    assert whole.middle_g == apart.middle_g


def test_the_bottle_wins() -> None:
    """A density printed on the cook's own bottle stands over the table, and says so."""
    found = mass_of(parse_amount("15 mL"), food("soy-sauce"), g_per_ml=Fraction(17, 15))

    assert found is not None
    assert 17 == found.middle_g
    assert "own-panel" == found.source


def test_times_multiplies_the_mass_and_nothing_else() -> None:
    """So many times as much is no surer and comes from the same source."""
    one = mass_of(parse_amount("1-2 Tbsp"), food("honey"))

    assert one is not None
    three = one.times(Fraction(3))
    assert (3 * one.low_g, 3 * one.high_g) == (three.low_g, three.high_g)
    assert (one.doubt, one.source, one.g_per_ml) == (three.doubt, three.source, three.g_per_ml)
