"""Ingoing nitrite by each published method, and the guard that refuses."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import CureRefused, QuantityError
from tarebook.quantities.drawer import DRAWERS
from tarebook.recipe.model import Recipe, ScaleBy
from tarebook.safety.curing import (
    LIMIT_PPM,
    Cure,
    CureReport,
    all_absorbed_ppm,
    guard,
    guard_scaled,
    immersion_one_ppm,
    immersion_two_ppm,
    most_cure_g,
    nitrite_g,
    round_down_cure_g,
)
from tarebook.safety.rulebook import limit
from tarebook.scaling import scale_by_factor

F = Fraction


def cure(mass_g: str, percent: str | None = "6.25", nitrate: str | None = "0") -> Cure:
    """Return a curing salt."""
    return Cure(
        name="pink salt",
        mass_g=F(mass_g),
        nitrite_percent=F(percent) if percent else None,
        nitrate_percent=F(nitrate) if nitrate else None,
    )


PUBLISHED = [  # ppm as printed or derived, exact here, source id, place
    (
        "156",
        all_absorbed_ppm(nitrite_g=F("0.25") * F("0.0625"), meat_mass_g=F(100)),
        "cfr-9-424.21",
        "1/4 oz nitrite per 100 lb ground, as 4 oz of 6.25 % cure; handbook p. 15",
    ),
    (
        "625",
        all_absorbed_ppm(nitrite_g=F(1, 16), meat_mass_g=F(100)),
        "cfr-9-424.21",
        "1 oz per 100 lb dry cured; handbook p. 24",
    ),
    (
        "156",
        all_absorbed_ppm(nitrite_g=F("2.5") * F("0.0625"), meat_mass_g=F(1000)),
        "fsis-handbook-1995",
        "p. 15, 2.5 g of 6.25 % cure per kg",
    ),
    (
        "200",
        all_absorbed_ppm(nitrite_g=F("3.2") * F("0.0625"), meat_mass_g=F(1000)),
        "fsis-handbook-1995",
        "p. 15, 3.2 g of 6.25 % cure per kg",
    ),
    (
        "120",
        all_absorbed_ppm(nitrite_g=F("1.92") * F("0.0625"), meat_mass_g=F(1000)),
        "fsis-handbook-1995",
        "p. 15, 1.92 g of 6.25 % cure per kg",
    ),
    (
        "140",
        immersion_two_ppm(nitrite_g=F("2.8") * F("0.0625"), pickle_g=F(250), meat_mass_g=F(1000)),
        "fsis-handbook-1995",
        "p. 22, method two: 1,000 g meat, 250 g marinade with 2.8 g cure",
    ),
    (
        "175",
        all_absorbed_ppm(nitrite_g=F("2.8") * F("0.0625"), meat_mass_g=F(1000)),
        "fsis-handbook-1995",
        "p. 24, the same with all of it absorbed",
    ),
    (
        "70",
        immersion_one_ppm(
            nitrite_g=F("2.8") * F("0.0625"), pickle_g=F(250), pick_up_fraction=F("0.10")
        ),
        "fsis-handbook-1995",
        "before p. 22, method one: the same at 10 % pick-up",
    ),
    (
        "390",
        all_absorbed_ppm(nitrite_g=F("0.000156"), meat_mass_g=F("0.40")),
        "fsis-handbook-1995",
        "156 ppm ingoing at 40 % yield, before losses",
    ),
]


@pytest.mark.published
@pytest.mark.parametrize(("printed", "reckoned", "source", "place"), PUBLISHED)
def test_worked_figures(printed: str, reckoned: Fraction, source: str, place: str) -> None:
    """Each method gives the figure that its formula was published for, to its last digit."""
    assert abs(reckoned - F(printed)) <= F(1, 2), f"{source}, {place}"


@pytest.mark.published
def test_a_quarter_ounce_to_a_hundred_pounds_is_156_and_a_quarter() -> None:
    """The regulation's own form is 156.25 ppm exactly, and is over the 156 printed from it."""
    assert F("156.25") == all_absorbed_ppm(nitrite_g=F(1, 64), meat_mass_g=F(100))


def test_the_limit_is_the_rule_in_the_table() -> None:
    """The guard's limit is the figure of its rule, and the lowest of all limits for meat."""
    assert limit("cure-guard", "nitrite") == LIMIT_PPM
    assert limit("nitrite-ground", "nitrite") == LIMIT_PPM
    assert limit("nitrite-pickle", "nitrite") > LIMIT_PPM
    assert limit("nitrite-dry", "nitrite") > LIMIT_PPM


def test_the_boundary_itself_passes() -> None:
    """156 ppm to the last digit is let through, with no float between."""
    assert F(156) == guard([cure("2.496")], F(1000))


@pytest.mark.parametrize("mass_g", ["2.4960000000000001", "2.5", "25"])
def test_over_the_boundary_is_refused(mass_g: str) -> None:
    """Anything over 156 ppm is refused, however little."""
    with pytest.raises(CureRefused):
        guard([cure(mass_g)], F(1000))


def test_several_curing_salts_count_together() -> None:
    """Two doses that would pass alone are refused together."""
    half = cure("1.5")

    assert F("93.75") == guard([half], F(1000))
    with pytest.raises(CureRefused) as refused:
        guard([half, half], F(1000))
    assert refused.value.nitrite_ppm == 187.5


def test_unknown_strength_is_refused() -> None:
    """No strength is assumed: packs differ twelvefold."""
    with pytest.raises(CureRefused, match="strength is not stated"):
        guard([cure("0.1", None)], F(1000))


@pytest.mark.parametrize("percent", ["-1", "101"])
def test_absurd_strength_is_refused(percent: str) -> None:
    """A strength that no salt can have is refused."""
    with pytest.raises(CureRefused, match="is no curing salt"):
        guard([cure("0.1", percent)], F(1000))


def test_any_nitrate_is_refused() -> None:
    """Nitrate is for cures of many weeks; the smallest trace is refused."""
    with pytest.raises(CureRefused, match="holds nitrate"):
        guard([cure("0.1", "6.25", "0.001")], F(1000))


def test_the_refusal_says_why_and_what_to_do() -> None:
    """A refused cook reads dose, limit, whose limit, a dose that passes, and why."""
    with pytest.raises(CureRefused) as refused:
        guard([cure("2.5")], F(1000))

    assert str(refused.value) == (
        "2.5 g of pink salt (6.25 % nitrite) in 1,000 g of meat is 156.25 ppm of sodium nitrite "
        "if all of it is absorbed, and nothing is printed over 156 ppm: the lowest US limit that "
        "could apply to strips (9 CFR 424.21(c), ground meat, on raw weight); take at most 2.4 g. "
        "A brine meant to leave part of its curing salt in the liquid is refused too: how much "
        "stays there hangs on hours, cut and weights that nobody has measured yet"
    )


def test_a_refused_figure_never_reads_as_the_limit() -> None:
    """A hair over 156 is shown rounded up, so that the message does not contradict itself."""
    with pytest.raises(CureRefused, match=r"is 156\.01 ppm"):
        guard([cure("2.49600001")], F(1000))


def test_no_meat_is_no_dose() -> None:
    """Meat that weighs nothing has no ppm."""
    with pytest.raises(QuantityError):
        guard([cure("1")], F(0))


def test_negative_weights_are_refused() -> None:
    """A curing salt below zero would hide another above the limit."""
    with pytest.raises(QuantityError):
        guard([cure("3"), cure("-1")], F(1000))
    with pytest.raises(QuantityError):
        round_down_cure_g(F("-0.1"))
    with pytest.raises(QuantityError):
        immersion_two_ppm(nitrite_g=F(1), pickle_g=F(-500), meat_mass_g=F(1000))
    with pytest.raises(QuantityError):
        immersion_one_ppm(nitrite_g=F(1), pickle_g=F(500), pick_up_fraction=F(-1))


@pytest.mark.parametrize(
    ("given", "weighed"),
    [("2.79", "2.7"), ("2.7", "2.7"), ("2.7999999", "2.7"), ("0.09", "0"), ("0", "0")],
)
def test_curing_salt_is_rounded_down(given: str, weighed: str) -> None:
    """Rounding goes down to a tenth of a gram and never up."""
    assert F(weighed) == round_down_cure_g(F(given))


@given(
    st.fractions(min_value=F(1, 10), max_value=100_000),
    st.fractions(min_value=F(1, 10), max_value=10),
)
def test_the_most_offered_passes_the_guard(meat_mass_g: Fraction, percent: Fraction) -> None:
    """What a refusal offers instead is let through, and a tenth of a gram more is not."""
    most = most_cure_g(meat_mass_g=meat_mass_g, nitrite_percent=percent)
    salt = Cure(name="salt", mass_g=most, nitrite_percent=percent)
    more = Cure(name="salt", mass_g=most + F(1, 10), nitrite_percent=percent)

    assert guard([salt], meat_mass_g) <= LIMIT_PPM
    with pytest.raises(CureRefused):
        guard([more], meat_mass_g)


@given(st.fractions(min_value=0, max_value=100), st.fractions(min_value=1, max_value=100))
def test_all_absorbed_is_never_below_another_method(dose: Fraction, pickle_g: Fraction) -> None:
    """The guard's figure is the highest of the three that a soak can have."""
    worst = all_absorbed_ppm(nitrite_g=dose, meat_mass_g=F(1000))

    assert immersion_two_ppm(nitrite_g=dose, pickle_g=pickle_g, meat_mass_g=F(1000)) <= worst
    # All of the liquid picked up is the most that method one can mean.
    pick_up = pickle_g / 1000
    assert immersion_one_ppm(nitrite_g=dose, pickle_g=pickle_g, pick_up_fraction=pick_up) <= worst


def test_most_of_nothing_is_no_question() -> None:
    """No meat or no strength has no largest dose."""
    with pytest.raises(QuantityError):
        most_cure_g(meat_mass_g=F(0), nitrite_percent=F(1))
    with pytest.raises(QuantityError):
        most_cure_g(meat_mass_g=F(1), nitrite_percent=F(0))


def test_nitrite_of_several() -> None:
    """The nitrite of several curing salts is their sum, each by its own strength."""
    assert F("0.18") == nitrite_g([cure("2.8"), cure("1", "0.5")])


Batch = Callable[..., Recipe]


def test_a_scaled_recipe_reports_its_dose(batch: Batch) -> None:
    """A scaled recipe within the guard says what to weigh and what goes in, rounded up."""
    scaled = scale_by_factor(batch(rub={"curing-salt-1": "2.33 g"}), F(2), DRAWERS["basic"])

    report = guard_scaled(scaled)

    assert isinstance(report, CureReport)
    assert F("4.6") == report.cures[0].mass_g
    assert F("143.75") == report.guard_ppm
    assert report.lines() == (
        "Curing salt, weighed and rounded down: 4.6 g of curing salt 1 (6.25 % nitrite).",
        "Sodium nitrite going in, all counted as absorbed: 144 ppm of the raw meat; "
        "nothing is printed over 156 ppm.",
        "Sodium nitrate going in: none.",
    )


def test_a_scaled_recipe_without_curing_salt_has_no_report(batch: Batch) -> None:
    """No curing salt, nothing to say."""
    assert guard_scaled(scale_by_factor(batch(), F(2), DRAWERS["basic"])) is None


@pytest.mark.parametrize("factor", ["1/3", "1/2", "1", "3"])
def test_a_recipe_over_the_limit_is_refused_at_every_size(batch: Batch, factor: str) -> None:
    """Rounding down does not let through at one size what is refused at another."""
    scaled = scale_by_factor(batch(rub={"curing-salt-1": "2.5 g"}), F(factor), DRAWERS["basic"])

    with pytest.raises(CureRefused):
        guard_scaled(scaled)


def test_a_dose_that_does_not_grow_is_refused_where_it_is_too_much(batch: Batch) -> None:
    """A fixed dose, were one read, would be refused on less meat."""
    recipe = batch(rub={"curing-salt-1": "2 g"}, scale=ScaleBy.FIXED)

    with pytest.raises(CureRefused):
        guard_scaled(scale_by_factor(recipe, F(1, 2), DRAWERS["basic"]))
