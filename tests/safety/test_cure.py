"""Curing salt in a recipe: each rule with a batch it accepts and one it refuses."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import ScaleBy
from tarebook.safety.case import Case
from tarebook.safety.cure import (
    check_cure_dose,
    check_cure_food,
    check_cure_nitrate,
    check_cure_scale,
    check_cure_words,
    cure_handling,
    cure_is_no_heat,
    own_scale,
)

Cases = Callable[..., Case]


def test_a_dose_within_the_guard_is_accepted(case: Cases) -> None:
    """2.4 g of the 6.25 % kind to the kilogram is 150 ppm."""
    assert check_cure_dose(case(rub={"curing-salt-1": "2.4 g"})) == ()
    assert check_cure_dose(case()) == ()


@pytest.mark.parametrize(
    ("rub", "strength", "says"),
    [
        ({"curing-salt-1": "2.5 g"}, "6.25", "156.25 ppm"),
        ({"curing-salt-1": "1.5 g", "curing-salt": "1.5 g"}, "6.25", "187.5 ppm"),
        ({"curing-salt-1": "0.1 g"}, None, "strength is not stated"),
        ({"curing-salt-2": "0.1 g"}, "6.25", "holds nitrate"),
        ({"curing-salt-1": "1/2 tsp"}, "6.25", "given by weight, and only by weight"),
    ],
)
def test_a_dose_beyond_it_is_an_error(
    case: Cases, rub: dict[str, str], strength: str | None, says: str
) -> None:
    """Too much, unknown strength, nitrate or a spoon: the recipe cannot be used as it stands."""
    (found,) = check_cure_dose(case(rub=rub, strength=strength))

    assert found.severity is Severity.ERROR
    assert says in found.message
    assert found.place.path == f"rub.{next(iter(rub))}"


def test_the_method_makes_no_difference(case: Cases) -> None:
    """A dose over the guard is an error in a marinade, in a rub and mixed in."""
    dose = {"curing-salt-1": "2.8 g"}

    for where in ("marinade", "rub", "mixed_in"):
        assert check_cure_dose(case(**{where: dose})) != ()


def test_a_dose_that_grows_with_the_meat_is_accepted(case: Cases) -> None:
    """The only way for curing salt to grow."""
    assert check_cure_scale(case(rub={"curing-salt-1": "2 g"})) == ()


@pytest.mark.parametrize("scale", [ScaleBy.FIXED, ScaleBy.WHOLE])
def test_any_other_growth_is_an_error(case: Cases, scale: ScaleBy) -> None:
    """A fixed or whole dose would be wrong at every other size."""
    (found,) = check_cure_scale(case(rub={"curing-salt-1": "2 g"}, scale=scale))

    assert found.severity is Severity.ERROR


def test_known_nitrate_is_accepted(case: Cases) -> None:
    """A curing salt known to hold no nitrate raises no question."""
    assert check_cure_nitrate(case(rub={"curing-salt-1": "2 g"})) == ()


def test_unknown_nitrate_is_a_warning(case: Cases) -> None:
    """Not stated is not none: the cook is sent to the pack."""
    (found,) = check_cure_nitrate(case(rub={"curing-salt": "2 g"}, strength="0.5"))

    assert found.severity is Severity.WARNING
    assert found.message == "whether curing-salt holds nitrate as well is not known here"


def test_curing_salt_on_fish_is_a_warning(case: Cases) -> None:
    """The limits held are for meat and poultry, and fish is told so."""
    (found,) = check_cure_food(case("salmon-sockeye", rub={"curing-salt-1": "2 g"}))

    assert found.severity is Severity.WARNING
    assert found.message == (
        "the limits held here for curing salt are for meat and poultry, not for fish"
    )
    assert check_cure_food(case("turkey-breast", rub={"curing-salt-1": "2 g"})) == ()
    assert check_cure_food(case("salmon-sockeye")) == ()


def test_handling_is_said_where_there_is_any(case: Cases) -> None:
    """Any curing salt brings its handling along; none brings nothing."""
    (found,) = cure_handling(case(rub={"curing-salt-1": "2 g"}))

    assert found.severity is Severity.WARNING
    assert found.hint == "keep it from children and apart from table salt"
    assert cure_handling(case()) == ()


NAMED = [
    "Add 2 teaspoons of pink curing salt to the bag.",
    "Stir in cure #1.",
    "Add a teaspoon of cure no. 1.",
    "Two spoons of pink salt keep it red.",
    "Add a little sodium nitrite.",
    "A pinch of saltpetre for the colour.",
]


@pytest.mark.parametrize("words", NAMED)
@pytest.mark.parametrize("kind", ["step", "note"])
def test_curing_salt_in_a_step_alone_is_an_error(case: Cases, words: str, kind: str) -> None:
    """It is not weighed, not counted and not held to any limit; no card denies it either."""
    plain = case()
    texts = {f"{kind}s": ("Slice it.", words)}
    batch = plain._replace(recipe=plain.recipe._replace(**texts))
    (found,) = check_cure_words(batch)
    (heat,) = cure_is_no_heat(batch)

    assert (found.severity, found.code) == (Severity.ERROR, "cure-unlisted")
    assert found.message.startswith(f"{kind} 2 speaks of curing salt, and no ingredient is one")
    assert "a spoon is never right" in found.hint
    assert heat.message == "curing salt does not replace the heat step"


@pytest.mark.parametrize(
    "words",
    [
        "There is no curing salt in it.",
        "Made without nitrite; nitrite-free and none the worse.",
        "Curing salt does not replace heat.",
        "Never add saltpetre.",
        "A pinch of pink Himalayan salt.",
        "Cure 2 hours in the refrigerator.",
        "Rub the salt and sugar in.",
    ],
)
def test_other_words_of_salt_are_accepted(case: Cases, words: str) -> None:
    """Who says that there is none, or salts it otherwise, is not refused."""
    plain = case()

    assert check_cure_words(plain._replace(recipe=plain.recipe._replace(steps=(words,)))) == ()


def test_listed_curing_salt_is_named_in_a_step_but_not_by_the_spoon(case: Cases) -> None:
    """Where it is listed by weight a step may speak of it; a spoon of it is refused there too."""
    plain = case(rub={"curing-salt-1": "2 g"})
    weighed, spooned = (
        plain._replace(recipe=plain.recipe._replace(steps=(step,)))
        for step in ("Weigh the curing salt apart.", NAMED[0])
    )

    assert check_cure_words(weighed) == ()
    assert [one.code for one in check_cure_words(spooned)] == ["cure-by-spoon"]


def test_heat_is_needed_with_cure_and_without(case: Cases) -> None:
    """Present or absent, curing salt changes nothing about heat."""
    (with_cure,) = cure_is_no_heat(case(rub={"curing-salt-1": "2 g"}))
    (without,) = cure_is_no_heat(case())

    assert with_cure.message == "curing salt does not replace the heat step"
    assert without.message == (
        "there is no curing salt in this recipe, and adding some would not replace heat"
    )
    assert (
        with_cure.hint
        == without.hint
        == ("bring the meat to 160 °F (71 °C) inside with it or without")
    )
    assert cure_is_no_heat(case("mushroom-shiitake")) == ()


@pytest.mark.parametrize(
    ("dose", "scale_g", "factor", "says"),
    [
        ("2.4 g", None, "1", ""),
        ("2.4 g", "0.1", "1", ""),
        ("2.4 g", "1", "1", "one step is 62 ppm of nitrite"),
        ("2.4 g", "5", "1", "a scale that shows 5 g cannot weigh 2.4 g"),
        ("2.4 g", "0.1", "1/4", "a scale that shows 0.1 g cannot weigh 0.6 g"),
        ("2.4 g", None, "1/4", "one step is 25 ppm of nitrite"),
    ],
)
def test_a_scale_too_coarse_for_the_dose(
    case: Cases, dose: str, scale_g: str | None, factor: str, says: str
) -> None:
    """A step over a tenth of the dose is warned of, with its ppm; a fine enough one is not."""
    made = case(factor=factor, rub={"curing-salt-1": dose})
    found = own_scale(made._replace(scale_g=None if scale_g is None else Fraction(scale_g)))

    assert bool(says) is bool(found)
    assert says in "".join(one.message for one in found)
    assert all("leave the curing salt out" in one.hint for one in found)
