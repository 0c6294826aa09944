"""Where a rule of the estimate turns: the last value on one side and the first on the other."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import exp, log
from statistics import NormalDist

import pytest

from tarebook.figures.nutrients import values
from tarebook.figures.working import value
from tarebook.findings import QuantityError
from tarebook.nutrition import FIGURES, Estimate, Facts, Range, assumptions, estimate
from tarebook.nutrition.a_day import of_a_day
from tarebook.nutrition.agreement import check_soak_weights, marinade_g
from tarebook.nutrition.draws import (
    Even,
    Fixed,
    LogNormal,
    LogPert,
    Pert,
    Uniform,
    mode_place,
    percentile,
    strata,
)
from tarebook.nutrition.estimate import Ounce
from tarebook.nutrition.facts import OwnYield
from tarebook.nutrition.finish import dry_matter
from tarebook.nutrition.model import batch
from tarebook.nutrition.narrowing import narrowings
from tarebook.nutrition.odd_panel import odd_figures
from tarebook.nutrition.range import points_by_moments
from tarebook.nutrition.soaking import HOURS, soaking_times, toward_balance
from tarebook.nutrition.swings import at, swings
from tarebook.nutrition.weighings import Weighing, told
from tarebook.recipe.model import HeatStep, Panel, Part
from tarebook.uptake import PLAIN
from tarebook.uptake.crank import uptake_fraction

FactsOf = Callable[..., Facts]

# A kilogram of meat, and a marinade whose mass is written: 200 g, its doubt 2 x 3 % of that.
PLAIN_SOAK: dict[str, object] = {"marinade": {"soy-sauce": "150 g", "honey": "50 g"}}


def refused(facts: Facts) -> str:
    """Return why weights are refused; empty where they are taken."""
    try:
        check_soak_weights(facts)
    except QuantityError as fault:
        return str(fault)
    return ""


@pytest.fixture
def soak(known: FactsOf) -> Callable[..., Facts]:
    """Return a maker of a kilogram in 200 g of marinade, with weights around its soak."""

    def make(**weights: float) -> Facts:
        return known(**PLAIN_SOAK, weights=weights)

    return make


def test_the_marinade_weighs_what_goes_into_it(known: FactsOf) -> None:
    """A rub beside it is none of it."""
    assert 200 == pytest.approx(marinade_g(known(**PLAIN_SOAK)))
    assert 200 == pytest.approx(marinade_g(known(**PLAIN_SOAK, rub={"black-pepper": "9 g"})))


@pytest.mark.parametrize(
    ("soaked_g", "taken"),
    [(800, True), (799, False), (1200, True), (1212, True), (1213, False), (1000, True)],
)
def test_soaked_meat_weighs_between_loss_and_all_of_the_bowl(
    soak: Callable[..., Facts], soaked_g: float, taken: bool
) -> None:
    """From 80 % of the raw meat to meat and marinade together, with 6 % of the bowl for spoons."""
    assert taken is (refused(soak(soaked_g=soaked_g)) == "")


@pytest.mark.parametrize(("soaked_g", "taken"), [(1400, True), (1401, False)])
def test_soaked_meat_weighs_at_most_four_tenths_more(
    known: FactsOf, soaked_g: float, taken: bool
) -> None:
    """However much marinade there is, 140 % of the raw meat is the most."""
    deep = known(marinade={"soy-sauce": "900 g"}, weights={"soaked_g": soaked_g})

    assert taken is (refused(deep) == "")


@pytest.mark.parametrize(("leftover_g", "taken"), [(0, True), (212, True), (213, False)])
def test_no_more_is_left_than_was_made(
    soak: Callable[..., Facts], leftover_g: float, taken: bool
) -> None:
    """The marinade left is from nothing to all of it, with 6 % for how it was measured."""
    assert taken is (refused(soak(leftover_g=leftover_g)) == "")


@pytest.mark.parametrize(
    ("leftover_g", "taken"),
    # 1000 + 200 - 1050 = 150: 12 more at the most (spoons), 10 + 12 less (bowl and spoons).
    [(162, True), (163, False), (128, True), (127, False), (150, True)],
)
def test_meat_and_leftover_weigh_what_went_in(
    soak: Callable[..., Facts], leftover_g: float, taken: bool
) -> None:
    """Nothing comes from nowhere, and no more than 5 % of the marinade goes missing."""
    assert taken is (refused(soak(soaked_g=1050, leftover_g=leftover_g)) == "")


@pytest.mark.parametrize(
    ("weights", "slip"),
    [
        ({"soaked_g": 1050 / 28.349523125}, "--soaked written in grams for ounces"),
        ({"soaked_g": 1050 / 453.59237}, "--soaked written in grams for pounds"),
        ({"soaked_g": 1.05}, "--soaked written in grams for kilograms"),
        ({"soaked_g": 1050 * 28.349523125}, "--soaked written in ounces for grams"),
        ({"soaked_g": 1050 * 16}, "--soaked written in pounds for ounces"),
        ({"soaked_g": 1050 / 16}, "--soaked written in ounces for pounds"),
        ({"soaked_g": 1501}, "--soaked 1,051 g, two digits swapped"),
        ({"soaked_g": 1050, "leftover_g": 150 * 16}, "--leftover written in pounds for ounces"),
        ({"soaked_g": 1050, "leftover_g": 510}, "--leftover 150 g, two digits swapped"),
        ({"soaked_g": 1050, "leftover_g": 900}, "was a bowl's weight left in"),
    ],
)
def test_a_slip_is_named(soak: Callable[..., Facts], weights: dict[str, float], slip: str) -> None:
    """The first change that makes all weights agree is asked about: a unit, or two digits."""
    assert slip in refused(soak(**weights))


def test_what_went_missing_is_told_to_the_gram(soak: Callable[..., Facts]) -> None:
    """Meat and marinade as they were, as they are, and the difference with its sign."""
    lost = refused(soak(soaked_g=1050, leftover_g=27))
    won = refused(soak(soaked_g=1050, leftover_g=199))

    assert "1,000 g of meat and about 200 g of marinade became 1,050 and 27 g" in lost
    assert "so 123 g went missing" in lost
    assert "so 49 g came from nowhere" in won


SPOON = Panel(serving_ml=Fraction(15), serving_g=Fraction(17))


def asked(figures: dict[str, str], food_key: str = "soy-sauce") -> str:
    """Return all that is asked of a panel that prints its figures as they were measured."""
    given = {name: Fraction(amount) for name, amount in figures.items()}
    return "\n".join(odd_figures(SPOON._replace(**given, rounded=False), food_key))


@pytest.mark.parametrize(
    ("sodium_mg", "odd"),
    # The table's 5,493 mg in 100 g are 933.81 mg in 17 g: three times, and a third.
    [("2801", False), ("2802", True), ("311.3", False), ("311.2", True), ("933", False)],
)
def test_sodium_three_times_off_is_asked(sodium_mg: str, odd: bool) -> None:
    """From over three times, and from under a third, of the food it is like."""
    assert odd is ("sodium" in asked({"sodium_mg": sodium_mg}))


def test_little_sodium_is_never_odd() -> None:
    """Of a food with hardly any, a difference under 500 mg in 100 g is no slip."""
    row = values("honey")["sodium_mg"]
    assert row is not None
    limit = (row + 500) * 17 / 100
    assert "" == asked({"sodium_mg": f"{limit - 0.01:.2f}"}, "honey")
    assert "sodium" in asked({"sodium_mg": f"{limit + 0.01:.2f}"}, "honey")


@pytest.mark.parametrize(
    ("sodium_mg", "meant"),
    [
        ("9338", "is it 933.8 mg?"), ("93.38", "is it 933.8 mg?"),
        # A tenth, or ten times, must come within a factor of two of the food's own.
        ("4700", "is it 470 mg?"), ("4600", "is it copied right?"),
        ("18600", "is it 1,860 mg?"), ("18700", "is it copied right?"),
        ("46", "is it copied right?"), ("47", "is it 470 mg?"),
    ],
)  # fmt: skip
def test_a_lost_or_added_digit_is_guessed(sodium_mg: str, meant: str) -> None:
    """Where moving the point makes it likely, the likely figure is named."""
    assert meant in asked({"sodium_mg": sodium_mg})


def test_sugars_four_times_off_are_asked() -> None:
    """Over four times the food's own, and by 20 g in 100 g more: syrups are not sauces."""
    own = values("soy-sauce")["sugars_g"]
    assert own is not None
    most = own * 17 / 100 + 20 * 17 / 100
    assert "" == asked({"sugars_g": f"{most - 0.01:.3f}"})
    assert "another food" in asked({"sugars_g": f"{most + 0.01:.3f}"})
    honey = values("honey")["sugars_g"]
    assert honey is not None
    quarter = honey * 17 / 100 / 4
    assert "" == asked({"sugars_g": f"{quarter + 0.01:.3f}"}, "honey")
    assert "another food" in asked({"sugars_g": f"{quarter - 0.01:.3f}"}, "honey")


@pytest.mark.parametrize(
    ("kcal", "odd"),
    # 3 g of carbohydrate, 2 of protein, 1 of fat: 12 + 8 + 9 = 29. A fifth and 5 either way.
    [("39.8", False), ("39.9", True), ("18.3", False), ("18.1", True), ("29", False)],
)
def test_calories_follow_what_brings_them(kcal: str, odd: bool) -> None:
    """4 a gram of carbohydrate and protein, 9 of fat; a fifth and 5 kcal are left open."""
    told_ = asked({"carbohydrate_g": "3", "protein_g": "2", "fat_g": "1", "energy_kcal": kcal})

    assert odd is ("kcal" in told_)
    if odd:
        assert "kcal is far from 29:" in told_


@pytest.mark.parametrize(("kcal", "odd"), [("11.8", False), ("11.7", True)])
def test_fibre_may_bring_no_calories(kcal: str, odd: bool) -> None:
    """Of 3 g of carbohydrate, 2 of them fibre, 4 kcal may be all: (29 - 8) less a fifth, less 5."""
    figures = {"carbohydrate_g": "3", "protein_g": "2", "fat_g": "1", "fiber_g": "2"}

    assert odd is ("kcal" in asked({**figures, "energy_kcal": kcal}))


def test_a_spoon_weighs_within_a_factor_of_its_food() -> None:
    """A spoon may weigh 1.4 times that of the food it is like, or as much less."""
    from tarebook.figures.measures import density

    known = density("soy-sauce")
    assert known is not None
    usual = float(known.g_per_ml) * 15
    for grams, odd in (
        (usual * 1.399, False), (usual * 1.401, True), (usual / 1.399, False), (usual / 1.401, True)
    ):  # fmt: skip
        panel = SPOON._replace(serving_g=Fraction(grams), rounded=False)
        assert odd is any("serving copied right" in one for one in odd_figures(panel, "soy-sauce"))


@pytest.mark.parametrize(
    ("part", "whole"),
    [("sugars_g", "carbohydrate_g"), ("fiber_g", "carbohydrate_g"), ("saturated_g", "fat_g")],
)
def test_a_part_is_not_more_than_its_whole(part: str, whole: str) -> None:
    """Printed as measured, a part that is less raises no question, and one that is more does."""
    assert "which they are part of" not in asked({part: "2.9", whole: "3"})
    assert "which they are part of" in asked({part: "3.1", whole: "3"})
    assert "which they are part of" not in asked({part: "3.1"})


@pytest.mark.parametrize(
    ("parts", "hard"),
    [
        ({"soak": "hours = 4"}, False),
        ({"soak": "hours = 3.9"}, True),
        ({"thickness": "8 mm"}, False),
        ({"thickness": "8.1 mm"}, True),
        ({"marinade": {"soy-sauce": "500 g"}}, False),
        ({"marinade": {"soy-sauce": "501 g"}}, True),
        ({"marinade": {"soy-sauce": "400 g"}, "rub": {"brown-sugar": "200 g"}}, False),
    ],
)
def test_where_a_case_is_hard(known: FactsOf, parts: dict[str, object], hard: bool) -> None:
    """Under 4 h, over 8 mm, or in more marinade than half the meat's weight."""
    key = "model-doubt-hard-case" if hard else "model-doubt-recipe-only"

    assert LogNormal(value(key).likely) == assumptions(known(**parts))["model"].distribution


def test_a_batch_weighed_twice_is_surest(known: FactsOf) -> None:
    """Both strips and batch on the scale narrow the model's doubt; one of them does not."""
    facts = known(**PLAIN_SOAK)
    for weights, key in (
        ({"soaked_g": 1050.0, "finished_g": 480.0}, "model-doubt-weighed"),
        ({"soaked_g": 1050.0}, "model-doubt-recipe-only"),
        ({"finished_g": 480.0}, "model-doubt-recipe-only"),
    ):
        found = assumptions(facts._replace(**weights))["model"].distribution
        assert LogNormal(value(key).likely) == found


@pytest.mark.parametrize(("fat_g", "key"), [(10.0, "fat-drip-fatty"), (9.99, "fat-drip-lean")])
def test_fatty_meat_begins_at_a_tenth(known: FactsOf, fat_g: float, key: str) -> None:
    """From 10 g of fat in 100 g the fatty drip is taken."""
    facts = known()._replace(meat={**known().meat, "fat_g": fat_g})

    assert tuple(value(key).range) == tuple(assumptions(facts)["fat-drip"].distribution)


def test_what_is_asked_of_heat_hangs_on_the_step(known: FactsOf) -> None:
    """Juice is asked where meat cooks before it dries; which step, only where none is stated."""
    for heat, asked_for in (
        (HeatStep.OVEN_AFTER, set()),
        (HeatStep.BOILED_DOWN, set()),
        (HeatStep.STEAMED, {"juice", "boiled-off"}),
        (HeatStep.SIMMERED, {"juice", "boiled-off"}),
        (HeatStep.UNSTATED, {"juice", "boiled-off", "heat-case"}),
    ):
        found = assumptions(known(**PLAIN_SOAK)._replace(heat=heat))
        assert asked_for == {"juice", "boiled-off", "heat-case"} & found.keys()


def test_scales_are_asked_for_what_they_weighed(known: FactsOf) -> None:
    """Each weight brings its own scale's doubt, the leftover its bowl's film as well."""
    for weights, names in (
        ({}, set()),
        ({"soaked_g": 1050.0}, {"soaked"}),
        ({"leftover_g": 150.0}, {"leftover", "bowl-film"}),
        ({"finished_g": 480.0}, {"finished"}),
    ):
        found = assumptions(known(**PLAIN_SOAK, weights=weights))
        assert names == {"soaked", "leftover", "bowl-film", "finished"} & found.keys()


def test_a_kitchens_own_yield_is_asked_until_the_batch_is_weighed(known: FactsOf) -> None:
    """Own batches foretell the next; once it lies on the scale they are not asked."""
    own = OwnYield(middle=0.42, doubt=0.05, chance=0.07, batches=1)
    facts = known(**PLAIN_SOAK)._replace(own_yield=own)
    found = assumptions(facts)

    assert LogNormal(0.05, 0.42) == found["own-batches"].distribution
    assert LogNormal(0.07) == found["batch-chance"].distribution
    assert "by batch" in found["own-batches"].reason
    several = assumptions(facts._replace(own_yield=own._replace(batches=3)))
    assert "by 3 batches" in several["own-batches"].reason
    assert "own-batches" not in assumptions(facts._replace(finished_g=480.0))


def test_quantiles_meet_their_laws() -> None:
    """The middles of equal slices of each law, by the law's own formula."""
    n = 40
    points = [(i + 0.5) / n for i in range(n)]

    assert list(strata(Uniform(), n)) == pytest.approx(points)
    assert list(strata(Even(2.0, 5.0), n)) == pytest.approx([2 + 3 * one for one in points])
    assert [7.0] * n == list(strata(Fixed(7.0), n))
    spread = log(1 + 0.2**2) ** 0.5
    normal = [2 * exp(spread * NormalDist().inv_cdf(one)) for one in points]
    assert list(strata(LogNormal(0.2, 2.0), n)) == pytest.approx(normal, rel=2e-3)
    even = strata(Pert(1.0, 2.0, 3.0), n)
    assert [a + b for a, b in zip(even, reversed(even), strict=True)] == pytest.approx([4.0] * n)
    logs = strata(LogPert(1.0, 10.0, 100.0), n)
    both = [a * b for a, b in zip(logs, reversed(logs), strict=True)]
    assert both == pytest.approx([100.0] * n)


def test_where_the_likeliest_value_stands() -> None:
    """From 0 at the low end to 1 at the high one; in the middle where there is no room."""
    assert 0.25 == mode_place(0.0, 1.0, 4.0)
    assert (0.0, 1.0, 0.5) == (mode_place(1, 1, 2), mode_place(1, 2, 2), mode_place(3, 3, 3))


def test_a_percentile_is_read_between_the_middles_of_slices() -> None:
    """Ten values stand at 5 %, 15 %, ... 95 %; beyond the last there is nothing to read."""
    ten = [float(one) for one in range(1, 11)]

    assert [1.0, 1.0, 1.5, 2.0] == [percentile(ten, one) for one in (0.0, 0.05, 0.10, 0.15)]
    assert [10.0, 10.0, 9.5] == [percentile(ten, one) for one in (1.0, 0.95, 0.90)]
    assert 5.5 == percentile(ten, 0.5)
    assert 3.0 == percentile([3.0], 0.7)


def test_the_share_of_a_day_is_an_ounce_over_the_day(known: FactsOf) -> None:
    """Low, likely and high of an ounce, each over what was set for a day."""
    found = estimate(known(**PLAIN_SOAK))
    sodium = found.per_ounce["sodium_mg"]
    assert sodium is not None

    (told_,) = of_a_day(found, {"sodium_mg": 1500.0})

    expected = (sodium.low / 1500, sodium.likely / 1500, sodium.high / 1500)
    assert expected == told_.share


def test_two_weights_at_once_by_normal_equations() -> None:
    """The step along each weight is the least-squares one, solved here by Cramer's rule."""
    a = [900.0, 1000.0, 1100.0, 1040.0, 980.0, 1010.0]
    b = [450.0, 440.0, 500.0, 520.0, 430.0, 470.0]
    figure = [10.0, 11.0, 12.5, 12.0, 10.4, 11.1]
    reads = {"a": [1050.0] * 6, "b": [455.0] * 6}
    la, lb, lf = ([log(one) for one in row] for row in (a, b, figure))

    def product(left: list[float], right: list[float]) -> float:
        x, y = sum(left) / 6, sum(right) / 6
        return sum((p - x) * (q - y) for p, q in zip(left, right, strict=True))

    aa, bb, ab = product(la, la), product(lb, lb), product(la, lb)
    fa, fb = product(lf, la), product(lf, lb)
    whole = aa * bb - ab * ab
    on_a, on_b = (fa * bb - fb * ab) / whole, (aa * fb - ab * fa) / whole
    expected = [
        f * exp(on_a * (log(1050) - p) + on_b * (log(455) - q))
        for f, p, q in zip(figure, la, lb, strict=True)
    ]

    found = told({"x": figure}, [Weighing("a", reads["a"], a), Weighing("b", reads["b"], b)])

    assert expected == pytest.approx(found["x"])
    turned = told({"x": figure}, [Weighing("b", reads["b"], b), Weighing("a", reads["a"], a)])
    assert expected == pytest.approx(turned["x"])


def test_a_noisy_scale_counts_for_less() -> None:
    """The scale's own spread stands beside that of the draws: slope over both."""
    weight, figure = [900.0, 1000.0, 1100.0, 1000.0], [9.0, 10.0, 11.0, 10.0]
    noisy = [1000.0, 1100.0, 1000.0, 900.0]
    lw, lf, ln = ([log(one) for one in row] for row in (weight, figure, noisy))

    def spread(row: list[float], other: list[float]) -> float:
        x, y = sum(row) / 4, sum(other) / 4
        return sum((p - x) * (q - y) for p, q in zip(row, other, strict=True))

    slope = spread(lf, lw) / (spread(lw, lw) + spread(ln, ln))
    expected = [f * exp(slope * (r - w)) for f, r, w in zip(figure, ln, lw, strict=True)]

    assert expected == pytest.approx(told({"x": figure}, [Weighing("w", noisy, weight)])["x"])


def test_few_draws_and_flat_laws_keep_their_own_points() -> None:
    """Under fifty draws, with a zero among them, or in two heaps, no moments are read."""
    bell = [exp(NormalDist().inv_cdf((i + 0.5) / 50) / 10) for i in range(50)]

    assert points_by_moments(bell) is not None
    assert points_by_moments(bell[:49]) is None
    assert points_by_moments([0.0, *bell]) is None
    assert points_by_moments([1.0] * 30 + [9.0] * 30) is None
    # All alike is a law too: of no spread.
    assert (2.0, 2.0, 2.0) == pytest.approx(points_by_moments([2.0] * 60))


@pytest.mark.parametrize("hours", HOURS)
def test_one_strip_takes_up_what_cranks_sheet_does(hours: int) -> None:
    """Free strips follow D t over the square of half their thickness; stuck ones, a quarter."""
    tau = 1.9e-10 * hours * 3600 / 0.003**2
    expected = 0.8 * uptake_fraction(tau, 0.3) + 0.2 * uptake_fraction(tau / 4, 0.3)

    found = toward_balance(
        hours=hours,
        thickness_mm=6.0,
        diffusivity_m2_per_s=1.9e-10,
        alpha=0.3,
        free_share=0.8,
        maths=PLAIN,
    )

    assert expected == pytest.approx(found)


def test_enough_hours_are_the_first_that_are_enough(known: FactsOf) -> None:
    """From there twelve more bring under 2 % of all there is, and an hour sooner they do not."""
    from tarebook.nutrition.soaking import salt_toward_balance

    facts = known(**PLAIN_SOAK)
    found = soaking_times(facts)
    assert found is not None and found.enough_hours > 1

    def further(hours: int) -> float:
        after, before = (salt_toward_balance(facts, one) for one in (hours + 12, hours))
        return after.likely - before.likely

    assert further(found.enough_hours) < 0.02 <= further(found.enough_hours - 1)


def test_swings_are_between_a_tenth_and_nine_tenths(known: FactsOf) -> None:
    """One input at its 10 and its 90 % point, all others at their middle, over the batch then."""
    facts = known(**PLAIN_SOAK)
    inputs = assumptions(facts)
    middle = {name: at(one, 0.5) for name, one in inputs.items()}
    found = {one.input.name: one for one in swings(facts, ounce=Ounce.LABEL)}

    for name in ("film", "finish", "mass:honey"):
        low, high = (
            batch(facts, {**middle, name: at(inputs[name], point)}, PLAIN) for point in (0.1, 0.9)
        )
        ends = [one.figures["sodium_mg"] / one.finished_g * 28 for one in (low, high)]
        assert ends == pytest.approx([found[name].at_low, found[name].at_high])
        assert found[name].size == pytest.approx(abs(ends[1] - ends[0]))
    assert "hours" not in found  # stated, and so no swing


def test_swings_of_a_weighed_batch_are_over_its_weight(known: FactsOf) -> None:
    """With the batch on the scale, no input moves what it weighs."""
    facts = known(**PLAIN_SOAK)._replace(finished_g=500.0)
    middle = {name: at(one, 0.5) for name, one in assumptions(facts).items()}
    low = batch(facts, {**middle, "film": at(assumptions(facts)["film"], 0.1)}, PLAIN)
    found = {one.input.name: one for one in swings(facts)}

    expected = low.figures["sodium_mg"] / 500 * 28.349523125
    assert expected == pytest.approx(found["film"].at_low)


@pytest.mark.parametrize(
    ("weights", "heat", "words"),
    [
        (
            {},
            HeatStep.STEAMED,
            {"weigh the finished batch", "weigh the strips after soaking, and the finished batch"},
        ),
        ({"soaked_g": 1050.0}, HeatStep.STEAMED, {"weigh the finished batch"}),
        ({"finished_g": 480.0}, HeatStep.STEAMED, {"weigh the strips after soaking"}),
        ({"finished_g": 480.0, "soaked_g": 1050.0}, HeatStep.STEAMED, set()),
    ],
)
def test_only_what_is_not_known_is_asked_for(
    known: FactsOf, weights: dict[str, float], heat: HeatStep, words: set[str]
) -> None:
    """Each weight not yet taken is offered, alone or both, narrowest first; no other."""
    found = narrowings(known(**PLAIN_SOAK)._replace(heat=heat, **weights))
    widths = [(one.after.high - one.after.low) / one.after.likely for one in found]

    assert {one.words for one in found} <= words
    assert bool(found) is bool(words)
    assert sorted(widths) == widths


def test_of_a_rub_no_strips_are_weighed(known: FactsOf) -> None:
    """Nothing is soaked where there is no marinade, and nothing asked of its soak."""
    found = narrowings(known(marinade={}, rub={"salt-table": "20 g"}))

    assert not any("soaking" in one.words for one in found)


def test_without_a_total_nothing_narrows(known: FactsOf) -> None:
    """Salt of unknown weight leaves nothing to narrow."""
    assert () == narrowings(known(marinade={"salt": "1 Tbsp", "water": "200 g"}))


def test_dry_matter_is_all_that_is_not_water(known: FactsOf) -> None:
    """Salt but for the meat's own, sugars by kind, the rest without its fat: they add up."""
    facts = known(**PLAIN_SOAK)
    own_mg = (facts.meat["sodium_mg"] or 0.0) * 10
    figures = {"sodium_mg": own_mg + 3000.0, "sugars_g": 24.0, "fat_g": 20.0}

    dry = dry_matter(facts, figures, 300.0, (10.0, 30.0), PLAIN)

    salt = 3.0 / (22.98977 / 58.443)
    assert dry == pytest.approx((salt, 6.0, 9.0, 9.0, 300 - 20 - salt - 24))
    bare = dry_matter(facts, {**figures, "sodium_mg": own_mg / 2}, 10.0, (0.0, 0.0), PLAIN)
    assert (0.0, 0.0, 12.0, 12.0, 0.0) == pytest.approx(tuple(bare))


def test_the_ceiling_by_hand(known: FactsOf) -> None:
    """Sauces at 120 %, salt as it is, the meat's own at its highest, over the least weight."""
    facts = known(marinade={"soy-sauce": "100 g", "salt-table": "10 g"})
    inputs = assumptions(facts)
    found: Estimate = estimate(facts)
    own = (
        (facts.meat["sodium_mg"] or 0.0) * 10 * max(strata(inputs["own-sodium"].distribution, 256))
    )
    added = {line.name: line.mass_g * line.makeup.sodium_mg for line in facts.lines}
    raw = 1000 * (1 - (facts.meat["water_g"] or 0.0) / 100)
    dry = sum(line.mass_g * (1 - line.makeup.water) for line in facts.lines)
    protein = found.per_batch["protein_g"]
    assert protein is not None

    least = raw + dry + 0.30 * protein.likely
    expected = (own + 1.2 * added["soy-sauce"] + added["salt-table"]) / least * 28.349523125
    assert expected == pytest.approx(found.ceiling_sodium_mg_per_oz, rel=2e-3)
    weighed = estimate(facts._replace(finished_g=500.0)).ceiling_sodium_mg_per_oz
    assert weighed == pytest.approx(expected * least / 500)


@pytest.mark.parametrize(("liquid", "told_"), [("999 g", True), ("1001 g", False)])
def test_the_ceiling_says_nothing_where_liquid_outweighs_meat(
    known: FactsOf, liquid: str, told_: bool
) -> None:
    """As much marinade as meat is the most that it is told for; a rub is no liquid."""
    facts = known(marinade={"soy-sauce": liquid}, rub={"brown-sugar": "100 g"})

    assert told_ is (estimate(facts).ceiling_sodium_mg_per_oz is not None)


def test_a_finished_weight_is_between_solids_and_all_that_went_in(known: FactsOf) -> None:
    """More than meat and ingredients together is refused, and so is less than its solids."""
    facts = known(**PLAIN_SOAK)
    assert estimate(facts._replace(finished_g=1200.0)).weighed
    with pytest.raises(QuantityError, match=r"more than went into it \(1,200 g\)"):
        estimate(facts._replace(finished_g=1200.5))
    least = min(batch(facts, x, PLAIN).solids_g for x in _columns(facts).values())
    assert estimate(facts._replace(finished_g=0.98 * least)).weighed
    with pytest.raises(QuantityError, match="below its own dry solids"):
        estimate(facts._replace(finished_g=0.96 * least))


def _columns(facts: Facts) -> dict[int, dict[str, float]]:
    """Return the settings of all draws, one by one."""
    from tarebook.nutrition.draws import column

    drawn = {name: column(name, one.distribution, 256) for name, one in assumptions(facts).items()}
    return {place: {name: row[place] for name, row in drawn.items()} for place in range(256)}


def test_an_ounce_is_the_batch_over_its_weight(known: FactsOf) -> None:
    """Draw by draw: figures of the batch over what it weighs, times the ounce."""
    facts = known(**PLAIN_SOAK, heat="steamed or roasted first")
    found = estimate(facts, ounce=Ounce.LABEL)

    for place in (0, 77, 255):
        done = batch(facts, _columns(facts)[place], PLAIN)
        each = done.figures["sodium_mg"] / done.finished_g * 28
        assert each == pytest.approx(found.draws["sodium_mg"][place], rel=1e-3)
        assert done.figures["sugars_g"] == pytest.approx(
            found.batch_draws["sugars_g"][place], rel=1e-3
        )


def test_yield_and_moisture_are_those_of_the_draws(known: FactsOf) -> None:
    """Finished over raw weight, and the water in it: middles of all the draws."""
    facts = known(**PLAIN_SOAK, heat="steamed or roasted first")
    done = [batch(facts, x, PLAIN) for x in _columns(facts).values()]
    found = estimate(facts)

    finished = sorted(one.finished_g for one in done)
    water = sorted(1 - one.solids_g / one.finished_g for one in done)
    assert percentile(finished, 0.5) == pytest.approx(found.finished_g.likely, rel=0.01)
    assert percentile(finished, 0.5) / 1000 == pytest.approx(found.yield_fraction.likely, rel=0.01)
    assert percentile(water, 0.5) == pytest.approx(found.moisture_fraction.likely, rel=0.02)


def test_nothing_else_is_of_the_marinade(known: FactsOf) -> None:
    """A rub alone has no share of a marinade to keep."""
    assert estimate(known(marinade={}, rub={"salt-table": "9 g"})).salt_kept_fraction is None
    assert known(**PLAIN_SOAK).has(Part.MARINADE)


def test_two_lines_of_one_name_are_told_apart(known: FactsOf) -> None:
    """The second of a name is numbered, so that each spoon is off by its own."""
    facts = known(marinade={"soy-sauce": "50 g"}, rub={"soy-sauce": "20 g"})

    assert ["soy-sauce", "soy-sauce (2)"] == [one.name for one in facts.lines]
    assert {"mass:soy-sauce", "mass:soy-sauce (2)"} <= assumptions(facts).keys()


def test_the_soak_is_in_celsius(known: FactsOf) -> None:
    """34 to 41 degF: 1.1 to 5 degC, and likely in the middle."""
    facts = known(**PLAIN_SOAK, soak='hours = 12\ntemperature = "34-41 F"')

    assert facts.soak_c is not None
    assert facts.soak_c == pytest.approx((2 / 1.8, (2 / 1.8 + 5) / 2, 5.0))
    assert known(**PLAIN_SOAK).soak_c is None


def test_to_taste_leaves_open_what_a_food_has(known: FactsOf) -> None:
    """Honey has sugars and no sodium to speak of; water and ash are no figures of a label."""
    facts = known(marinade={"soy-sauce": "100 g", "honey": "to taste"})
    row = values("honey")
    has = {name for name, amount in row.items() if amount is None or amount > 0}

    expected = (has - {"water_g", "ash_g"}) | {"added_sugars_g"}
    assert expected == {name for name, who in facts.missing.items() if "honey" in who}


def test_bare_salt_is_salt_that_holds_sodium(known: FactsOf) -> None:
    """Salt by the spoon leaves no sodium total; potassium chloride to taste, and sauces, do not."""
    for salt, bare in (("salt", True), ("salt-table", True), ("soy-sauce", False)):
        facts = known(marinade={"water": "100 g"}, rub={salt: "to taste"})
        assert ((salt,) if bare else ()) == facts.no_sodium_total
    assert () == known(marinade={"salt-table": "9 g"}).no_sodium_total


def test_a_written_range_is_its_90_percent(known: FactsOf) -> None:
    """80 to 120 g: half the width is 1.645 deviations of the middle."""
    once, between = (
        known(marinade={"soy-sauce": amount}).lines[0] for amount in ("100 g", "80-120 g")
    )
    written = (between.doubt**2 - once.doubt**2) ** 0.5

    assert 20 / 1.645 / 100 == pytest.approx(written)


def test_an_own_yield_is_dropped_for_a_weight(known: FactsOf) -> None:
    """What the kitchen's batches say is kept only while this one is not weighed."""
    own = OwnYield(middle=0.42, doubt=0.05, chance=0.07, batches=2)

    assert own == known(**PLAIN_SOAK, weights={"own_yield": own}).own_yield
    weighed = known(**PLAIN_SOAK, weights={"own_yield": own, "finished_g": 450.0})
    assert weighed.own_yield is None


def test_whose_share_is_missing_goes_with_the_parts(known: FactsOf) -> None:
    """Calories lack what protein, carbohydrate or fat lack; carbohydrate lacks what sugars do."""
    from tarebook.nutrition.ranges import missing_of, unit_of

    gaps = {"sugars_g": ("a",), "fat_g": ("b", "a"), "carbohydrate_g": ("c",)}
    facts = known(**PLAIN_SOAK)._replace(missing=gaps)

    found = {name: missing_of(facts, name) for name in FIGURES}
    assert ("c", "b", "a") == found["energy_kcal"]
    assert ("c", "a") == found["carbohydrate_g"]
    assert ("a",) == found["added_sugars_g"] == found["sugars_g"]
    assert ("b", "a") == found["fat_g"]
    assert () == found["sodium_mg"]
    assert ("kcal", "g", "mg", "µg") == tuple(
        map(unit_of, ("energy_kcal", "fat_g", "iron_mg", "vitamin_d_ug"))
    )


def test_figures_are_counted_and_told_in_the_order_of_a_label(known: FactsOf) -> None:
    """Ranges and draws have the label's figures, each once, in its order."""
    found = estimate(known(**PLAIN_SOAK))

    for each in (found.per_ounce, found.per_batch, found.draws, found.batch_draws):
        assert FIGURES == tuple(each)
        assert len(FIGURES) == len(each)


def test_sodium_alone_has_no_total_with_bare_salt(known: FactsOf) -> None:
    """The other figures keep theirs."""
    found = estimate(known(marinade={"salt": "1 Tbsp", "water": "100 g"}))

    assert found.per_ounce["sodium_mg"] is None
    assert all(found.per_ounce[name] is not None for name in FIGURES if name != "sodium_mg")


def test_a_batch_beside_the_kitchens_own_mean(known: FactsOf) -> None:
    """Own yields pull the weight to their mean, and one batch is never lighter than its solids."""
    facts = known(**PLAIN_SOAK, heat="steamed or roasted first")
    own = OwnYield(middle=0.36, doubt=0.001, chance=0.001, batches=9)
    sure = estimate(facts._replace(own_yield=own))
    unsure = estimate(facts._replace(own_yield=own._replace(chance=0.10)))

    assert sure.yield_fraction.likely == pytest.approx(0.36, rel=0.02)
    assert width(unsure.finished_g) > 2 * width(sure.finished_g)
    assert all(one >= 0 for one in unsure.draws["sodium_mg"])
    assert unsure.moisture_fraction.low >= 0


def width(one: Range) -> float:
    """Return how wide a range is against its middle."""
    return (one.high - one.low) / one.likely


def test_a_leftover_and_what_stuck_to_the_bowl(known: FactsOf) -> None:
    """Less marinade left means that more of its salt went along; the same the other way."""
    facts = known(**PLAIN_SOAK, heat="steamed or roasted first")
    little, much = (estimate(facts._replace(leftover_g=one)) for one in (120.0, 185.0))
    kept = [one.salt_kept_fraction for one in (little, much)]

    assert kept[0] is not None and kept[1] is not None
    assert kept[0].likely > kept[1].likely


def test_ways_are_as_likely_as_the_table_says(known: FactsOf) -> None:
    """Simmered in four draws of ten, steamed in two, oven after in the rest; each as if stated."""
    from tarebook.nutrition.ways import picker, ways_of
    from tarebook.nutrition.ways import values as drawn

    facts = known(**PLAIN_SOAK)._replace(heat=HeatStep.UNSTATED)
    x = _columns(facts)[5]
    found = ways_of(facts, assumptions(facts), x, PLAIN)

    assert [0.4, 0.2, 0.4] == pytest.approx([how_likely for how_likely, _ in found])
    for (_, done), step in zip(
        found, (HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.OVEN_AFTER), strict=True
    ):
        stated = batch(facts._replace(heat=step), x, PLAIN)
        assert stated.figures == done.figures
    pick = picker(found, {"heat-case": [0.0, 0.39, 0.41, 0.59, 0.61, 1.0]})
    each = [[float(way)] * 6 for way in range(3)]
    assert [0, 0, 1, 1, 2, 2] == pick(each)
    assert [2.0, 2.0, 2.0] == drawn(2.0, 3)


def test_of_pinned_heat_there_is_one_way(known: FactsOf) -> None:
    """A draw that is pinned says which step it was."""
    facts = known(**PLAIN_SOAK)._replace(heat=HeatStep.UNSTATED)
    pinned = {name: at(one, 0.5) for name, one in assumptions(facts).items()}
    steamed = estimate(facts, pinned={**pinned, "heat-case": 0.5}).per_batch["sodium_mg"]
    after = estimate(facts, pinned={**pinned, "heat-case": 0.9}).per_batch["sodium_mg"]

    assert steamed is not None and after is not None
    assert steamed.low == pytest.approx(steamed.high)
    assert steamed.likely < after.likely


def test_water_activity_is_told_over_the_likely_finishes(known: FactsOf) -> None:
    """Low and high from the finish's 10 and 90 % points, likely from its middle, all else as is."""
    from tarebook.drying.water_activity import band
    from tarebook.nutrition.activity import activity_band
    from tarebook.nutrition.bowl import contents, sugars_put_in
    from tarebook.nutrition.finish import meat_solids

    facts = known(**PLAIN_SOAK)
    inputs = assumptions(facts)
    middle = {name: at(one, 0.5) for name, one in inputs.items()}
    ends = meat_solids("low"), meat_solids("likely"), meat_solids("high")

    def at_finish(x: dict[str, float], finished_g: float | None = None) -> tuple[float, ...]:
        done = batch(facts, x, PLAIN)
        sugars = sugars_put_in({Part.MARINADE: contents(facts, Part.MARINADE, x)})
        dry = dry_matter(facts, done.figures, done.solids_g, sugars, PLAIN)
        water = (done.finished_g if finished_g is None else finished_g) - done.solids_g
        half = value("water-activity-band").likely
        found = band(dry, water_g=max(water, 0.0), gab=ends, half_width=half)
        return found.low, found.likely, found.high

    low, likely, high = (
        at_finish({**middle, "finish": at(inputs["finish"], point)}) for point in (0.1, 0.5, 0.9)
    )
    found = activity_band(facts)
    assert found is not None
    assert (low[0], likely[1], high[2]) == pytest.approx((found.low, found.likely, found.high))
    assert low[0] < likely[0] and likely[2] < high[2]
    weighed = activity_band(facts._replace(finished_g=450.0))
    assert weighed is not None
    expected = at_finish(middle, 450.0)
    assert expected == pytest.approx((weighed.low, weighed.likely, weighed.high))
    dry_as_bone = activity_band(facts._replace(finished_g=10.0))
    assert dry_as_bone is not None and dry_as_bone.low == pytest.approx(at_finish(middle, 10.0)[0])


@pytest.mark.parametrize(
    ("parts", "hard"),
    [
        ({"soak": 'hours = "3-5"'}, False),
        ({"soak": 'hours = "2-5"'}, True),
        ({"thickness": "6-9 mm"}, False),
        ({"thickness": "7-10 mm"}, True),
    ],
)
def test_a_case_is_hard_by_what_is_likely(
    known: FactsOf, parts: dict[str, object], hard: bool
) -> None:
    """Of stated hours and thickness from one to another, the middle decides."""
    key = "model-doubt-hard-case" if hard else "model-doubt-recipe-only"

    assert LogNormal(value(key).likely) == assumptions(known(**parts))["model"].distribution


def test_reasons_name_what_they_stand_on(known: FactsOf) -> None:
    """Sugars nobody states: the most they can be; borrowed sodium: that it was borrowed."""
    spice = assumptions(known(marinade={"allspice": "5 g"}))["sugars:allspice"].reason
    row = values("allspice")
    most = (row["carbohydrate_g"] or 0) - (row["fiber_g"] or 0)
    assert f"{most:.3g} g in 100 g" in spice
    panel = '{ serving = "1 Tbsp (17 g)", sugars = "1 g" }'
    soy = f'{{ food = "soy-sauce", amount = "2 Tbsp", panel = {panel} }}'
    borrowed = assumptions(known(marinade={"bottle": soy}))["sodium:bottle"].reason
    own = assumptions(known(marinade={"soy-sauce": "30 g"}))["sodium:soy-sauce"].reason
    assert "since its panel prints none" in borrowed
    assert "since its panel prints none" not in own


def test_all_sugars_put_in_are_counted(known: FactsOf) -> None:
    """Over all parts, sucrose and hexoses apart: 10 g of honey and 20 g of sugar."""
    from tarebook.nutrition.bowl import contents, sugars_put_in

    facts = known(marinade={"honey": "10 g"}, rub={"white-sugar": "20 g"})
    x = dict.fromkeys(assumptions(facts), 1.0)
    parts = {part: contents(facts, part, x) for part in (Part.MARINADE, Part.RUB)}

    made = [line.makeup for line in facts.lines]
    expected = (
        10 * made[0].sucrose + 20 * made[1].sucrose,
        10 * made[0].hexose + 20 * made[1].hexose,
    )
    assert expected == pytest.approx(sugars_put_in(parts))
    assert sum(expected) == pytest.approx(10 * 0.8212 + 20, rel=0.01)


def test_an_aim_is_not_held_against_a_batch_that_was_weighed(known: FactsOf) -> None:
    """Too sweet to be aimed at a water activity; once it lies on the scale, it is what it is."""
    sweet = known(mixed_in={"brown-sugar": "1 kg"}, drying="water-activity = 0.95")
    with pytest.raises(QuantityError, match="there before it is dried"):
        estimate(sweet)
    assert estimate(sweet._replace(finished_g=1600.0)).weighed
    # By another finish no aim is looked at.
    assert not estimate(known(mixed_in={"brown-sugar": "1 kg"})).weighed


def test_draws_fill_their_design() -> None:
    """So many draws as the orders are kept for: a power of two."""
    from tarebook.nutrition.draws import KEPT
    from tarebook.nutrition.estimate import DRAWS

    assert DRAWS == KEPT
    assert 0 == DRAWS & (DRAWS - 1)


def test_the_ceiling_of_mushrooms_is_over_their_solids(known: FactsOf) -> None:
    """What is dry by its moisture may end with none: all solids, its own and what was added."""
    facts = known(meat="mushroom-portabella", form="pieces", marinade={"salt-table": "20 g"})
    inputs = assumptions(facts)
    most = max(strata(inputs["own-sodium"].distribution, 256))
    own = (facts.meat["sodium_mg"] or 0.0) * 10 * most
    (line,) = facts.lines
    solids = 1000 * (1 - (facts.meat["water_g"] or 0.0) / 100) + 20 * (1 - line.makeup.water)

    expected = (own + 20 * line.makeup.sodium_mg) / solids * 28.349523125
    assert expected == pytest.approx(estimate(facts).ceiling_sodium_mg_per_oz)


def test_no_more_salt_is_kept_than_there_was(known: FactsOf) -> None:
    """However heavy the strips came out of their bowl, they took at most all of its salt."""
    facts = known(marinade={"soy-sauce": "60 g"}, heat="oven after drying", thickness="2 mm")
    kept = estimate(facts._replace(soaked_g=1060.0)).salt_kept_fraction

    assert kept is not None
    assert kept.high <= 1.0


def test_a_weighed_batch_scatters_as_its_scale_does(known: FactsOf) -> None:
    """Finished weight as read, half a per cent of the scale's own doubt about it."""
    found = estimate(known(**PLAIN_SOAK)._replace(finished_g=480.0)).finished_g

    assert 480.0 == pytest.approx(found.likely, rel=1e-3)
    assert found.high / found.low == pytest.approx(exp(2 * 1.645 * 0.005), rel=2e-3)


def test_a_light_draw_is_never_below_its_solids(known: FactsOf) -> None:
    """Beside the kitchen's own mean, one batch may be light, but it holds its solids."""
    own = OwnYield(middle=0.29, doubt=0.05, chance=0.30, batches=2)
    found = estimate(known(**PLAIN_SOAK, heat="oven after drying")._replace(own_yield=own))

    assert 0.0 <= found.moisture_fraction.low < found.moisture_fraction.high


def test_a_leftover_of_nothing_is_taken(known: FactsOf) -> None:
    """A bowl that is empty after the soak: all that was in it is on the meat."""
    facts = known(**PLAIN_SOAK, heat="oven after drying")
    found = estimate(facts._replace(leftover_g=0.0)).salt_kept_fraction
    usual = estimate(facts).salt_kept_fraction

    assert found is not None and usual is not None
    assert found.likely > usual.likely


def test_the_doubt_of_a_spoon_stands_beside_that_of_a_written_range(known: FactsOf) -> None:
    """Root of the sum of squares: of a cup as it is measured, and of one cup to one and a half."""
    one, between = (
        known(marinade={"soy-sauce": amount}).lines[0] for amount in ("1 1/4 cups", "1-1 1/2 cups")
    )
    written = 0.5 / 1.25 / (2 * 1.645)

    assert one.doubt > 0.01
    assert one.mass_g == pytest.approx(between.mass_g)
    assert (one.doubt**2 + written**2) ** 0.5 == pytest.approx(between.doubt, rel=1e-3)


def test_a_printed_zero_of_added_sugars_leans_on_what_can_be_added() -> None:
    """Brewed soy has none added at all; in a sweetened sauce it is anything under half a gram."""
    from tarebook.figures.foods import food_keys
    from tarebook.figures.sugars import split
    from tarebook.nutrition.printed import read_panel

    panel = Panel(serving_g=Fraction(20), added_sugars_g=Fraction(0))
    none = [key for key in food_keys() if split(key).added_high == 0]
    some = [key for key in food_keys() if split(key).added_high > 0]
    assert "soy-sauce" in none and "honey" in some
    for key in none:
        assert 0.0 == read_panel(panel, key)["added_sugars_g"].amount
    for key in some:
        assert 1.25 == pytest.approx(read_panel(panel, key)["added_sugars_g"].amount)


def test_a_soak_is_told_of_from_two_hours_to_two_days() -> None:
    """The lengths that recipes have: each about twice the one before, half a day and whole ones."""
    assert (2, 4, 8, 12, 24, 48) == HOURS


def test_less_than_is_a_number_too() -> None:
    """Printed as "less than 5" or "less than 1", and reckoned on as that."""
    from tarebook.nutrition.rounding import round_label

    assert (5, "less than 5") == tuple(round_label("cholesterol_mg", 3.0))
    assert (1, "less than 1") == tuple(round_label("sugars_g", 0.7))


def test_water_and_ash_are_printed_as_finely_as_it_looks() -> None:
    """No US label rounds them: 63.4 g is anything from 63.35, and a thousandth is the finest."""
    from tarebook.nutrition.rounding import unrounded

    assert (Fraction("63.35"), Fraction("63.45")) == unrounded("water_g", Fraction("63.4"))
    assert (Fraction("0.1225"), Fraction("0.1235")) == unrounded("ash_g", Fraction("0.123"))


def test_a_leftover_as_foretold_moves_nothing(known: FactsOf) -> None:
    """What is left, less what sticks to the bowl, is what the scale should read."""
    facts = known(**PLAIN_SOAK, heat="oven after drying")
    probe = facts._replace(leftover_g=150.0)
    left = sorted(
        batch(probe, x, PLAIN).leftover_g - x["bowl-film"] * marinade_g(facts)
        for x in _columns(probe).values()
    )
    as_foretold = estimate(facts._replace(leftover_g=percentile(left, 0.5)))
    usual = estimate(facts).salt_kept_fraction

    assert as_foretold.salt_kept_fraction is not None and usual is not None
    assert as_foretold.salt_kept_fraction.likely == pytest.approx(usual.likely, rel=0.01)
    assert width(as_foretold.salt_kept_fraction) < width(usual)


def test_either_side_without_a_total_leaves_no_difference(known: FactsOf) -> None:
    """Salt of unknown weight on the first side, or on the second: nothing is subtracted."""
    from tarebook.nutrition.compare import difference

    sure = estimate(known(**PLAIN_SOAK))
    bare = estimate(known(marinade={"salt": "1 Tbsp", "water": "200 g"}))
    for first, second in ((sure, bare), (bare, sure)):
        found = difference(first, second, "sodium_mg", per="ounce")
        assert (None, None) == (found.change, found.percent)
        assert (found.first is None, found.second is None) == (first is bare, second is bare)
    assert difference(sure, sure, "sodium_mg", per="ounce").change is not None


def test_salt_takes_its_room_whatever_ash_is_printed() -> None:
    """A panel of little ash and much sodium: the salt itself leaves no room for water."""
    from tarebook.nutrition.makeup import composed

    found = composed("soy-sauce", {"sodium_mg": 5000.0, "ash_g": 1.0, "carbohydrate_g": 60.0})
    parts = sum(found[one] or 0.0 for one in ("carbohydrate_g", "protein_g", "fat_g"))

    assert found["water_g"] == pytest.approx(100 - parts - 5 * 58.443 / 22.98977)


def skewed(bend: float, count: int = 200) -> list[float]:
    """Return draws whose logarithms are bent away from a normal law, more on one side."""
    bell = [NormalDist().inv_cdf((i + 0.5) / count) for i in range(count)]
    return [exp((z + bend * z * z) / 10) for z in bell]


def moments(values_: list[float]) -> tuple[float, float, float, float]:
    """Return mean, deviation, skewness and excess of the logarithms, by their definitions."""
    logs = [log(one) for one in values_]
    mean = sum(logs) / len(logs)
    second, third, fourth = (
        sum((one - mean) ** power for one in logs) / len(logs) for power in (2, 3, 4)
    )
    return mean, second**0.5, third / second**1.5, fourth / second**2 - 3


@pytest.mark.parametrize("bend", [0.0, 0.05, -0.08, 0.12])
def test_points_by_moments_are_the_printed_expansion(bend: float) -> None:
    """Cornish and Fisher's expansion as it is printed, of the moments by their definitions."""
    draws = skewed(bend)
    mean, spread, skew, excess = moments(draws)
    expected = [
        exp(
            mean
            + spread
            * (
                z
                + (z * z - 1) * skew / 6
                + (z**3 - 3 * z) * excess / 24
                - (2 * z**3 - 5 * z) * skew * skew / 36
            )
        )
        for z in (NormalDist().inv_cdf(point) for point in (0.05, 0.5, 0.95))
    ]

    assert expected == pytest.approx(points_by_moments(draws), rel=1e-6)


def test_a_law_too_lopsided_keeps_its_own_points() -> None:
    """Up to a skewness of 0.8, to either side, moments are read; beyond it they are not."""
    for side in (1, -1):
        for bend in (one / 400 for one in range(1, 120)):
            skew = abs(moments(skewed(side * bend))[2])
            if abs(skew - 0.8) > 1e-3 and moments(skewed(side * bend))[3] < 1.99:
                assert (skew < 0.8) is (points_by_moments(skewed(side * bend)) is not None)
        assert abs(moments(skewed(side * 0.13))[2]) < 0.8 < abs(moments(skewed(side * 0.2))[2])
