"""Where a rule turns: the last batch that it accepts and the first that it refuses."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from fractions import Fraction

import pytest

from tarebook.findings import QuantityError, Severity
from tarebook.quantities.amount import parse_amount
from tarebook.recipe.model import Finish, FinishBy, HeatStep, ScaleBy
from tarebook.safety import check
from tarebook.safety.case import Case
from tarebook.safety.cure import check_cure_little, own_scale
from tarebook.safety.curing import Cure, CureRefused, grams_of, guard, immersion_two_ppm
from tarebook.safety.dryer import cannot_hold, check_dryer, own_dryer, too_cool
from tarebook.safety.eaters import scaling
from tarebook.safety.heat import check_oven_after, no_rule
from tarebook.safety.method import dryer_mark
from tarebook.safety.rulebook import air_words
from tarebook.safety.soak import cold_hold, over_every_limit, soaks_warm
from tarebook.safety.storage import KeepLimit, keep_by

Cases = Callable[..., Case]
AFTER = HeatStep.OVEN_AFTER


def in_air(found: Case, low_f: float, high_f: float) -> Case:
    """Return a case that dries in air between two temperatures."""
    drying = found.recipe.drying._replace(temperature_f=(low_f, high_f))
    return found._replace(recipe=found.recipe._replace(drying=drying))


def test_a_case_is_taken_as_written_unless_told(case: Cases) -> None:
    """Without more said, a batch is the recipe's own size and not packed without air."""
    recipe = case().recipe
    plain = Case(
        recipe=recipe, food=case().food, animal=case().animal, foods=case().foods, ground=False
    )

    assert Case.of(recipe) == plain
    assert 1 == plain.factor
    assert plain.vacuum_packed is False


# 62.75 degC is 144.95 degF: what a dial in Celsius may be short of 145.
@pytest.mark.parametrize(("low_f", "cool"), [(144.95, False), (144.94, True), (145.0, False)])
def test_air_is_as_hot_as_asked_within_what_celsius_takes_off(
    case: Cases, low_f: float, cool: bool
) -> None:
    """The coolest end of the air is held to 145 degF, with half a tenth off for Celsius."""
    found = in_air(case(heat=AFTER), low_f, 150.0)

    assert cool is bool(check_dryer(found))
    assert cool is too_cool(found)
    assert cool is bool(dryer_mark(found))
    assert cool is bool(found.air_not_for_oven_after)


@pytest.mark.parametrize(("high_f", "hot"), [(155.05, False), (155.06, True)])
def test_air_for_the_oven_after_is_no_hotter_than_published(
    case: Cases, high_f: float, hot: bool
) -> None:
    """The oven after drying is published with air of 145 to 155 degF."""
    assert hot is bool(in_air(case(heat=AFTER), 150.0, high_f).air_not_for_oven_after)


@pytest.mark.parametrize(("top_f", "weak"), [(144.95, False), (144.94, True), (145.0, False)])
def test_a_dryer_in_the_house_must_reach_what_is_asked(
    case: Cases, top_f: float, weak: bool
) -> None:
    """One that goes just as hot is a dryer for meat; one that falls short is not."""
    found = case()._replace(dryer_top_f=top_f)

    assert weak is cannot_hold(found)
    assert ("dryer-weak",) * weak == tuple(one.code for one in own_dryer(found))


def test_a_house_dryer_as_cool_as_in_the_outbreak_is_told_of_it(case: Cases) -> None:
    """Only where the dryer goes no hotter than the one that made people ill is that told."""
    (as_cool,) = own_dryer(case()._replace(dryer_top_f=125.0))
    (warmer,) = own_dryer(case()._replace(dryer_top_f=144.0))
    (fish,) = own_dryer(case("salmon-sockeye")._replace(dryer_top_f=125.0))

    assert "fell ill" in as_cool.message
    assert "fixed-dryer; outbreak-venison" == as_cool.cites
    for other in (warmer, fish):
        assert "fell ill" not in other.message
        assert "fixed-dryer" == other.cites


@pytest.mark.parametrize(
    ("stated_f", "top_f", "low_f", "says"),
    [
        ((145.0, 155.0), None, None, ""),
        ((140.0, 150.0), None, None, " (145 °F (63 °C) or more is the cautious figure)"),
        # The dryer tops out under what is asked, though the recipe asks enough.
        (
            (145.0, 155.0),
            144.0,
            None,
            " (the dryer here reaches 144 °F (62 °C) only; 145 °F (63 °C) or more is asked)",
        ),
        ((144.95, 155.0), 144.95, None, ""),
        ((145.0, 155.0), 145.0, None, ""),
        # An oven that goes no lower than 170 degF.
        (
            (145.0, 155.0),
            None,
            170.0,
            " (the oven here: 170 °F (77 °C) at its lowest, so its door is propped, by a "
            "thermometer on the rack; with a gas oven, or children near, it stays shut, and dries "
            "sooner)",
        ),
        # A dryer that goes no lower has no door to prop.
        ((145.0, 155.0), 165.0, 160.0, " (the dryer here: 160 °F (71 °C) at its lowest)"),
        ((145.0, 155.0), None, 155.0, ""),
        ((145.0, 155.0), None, 150.0, ""),
    ],
)
def test_the_front_of_a_card_says_what_the_air_here_is(
    case: Cases,
    stated_f: tuple[float, float],
    top_f: float | None,
    low_f: float | None,
    says: str,
) -> None:
    """The air as written is marked where the house, or the recipe, falls short of what is asked."""
    found = in_air(case(), *stated_f)._replace(dryer_top_f=top_f, dryer_low_f=low_f)

    assert says == dryer_mark(found)


# A refrigerator holds 40 degF; 4.4 degC, as people write it, is 39.9.
@pytest.mark.parametrize(("degf", "warm"), [(40.05, False), (40.06, True), (39.9, False)])
def test_a_soak_is_warm_over_a_refrigerator(case: Cases, degf: float, warm: bool) -> None:
    """The warmer end of the soak is held to 40 degF."""
    found = case()
    soak = found.recipe.soak._replace(temperature_f=(34.0, degf))

    assert warm is soaks_warm(found._replace(recipe=found.recipe._replace(soak=soak)))


@pytest.mark.parametrize(
    ("changes", "over"),
    [
        ({"hours": 24}, False),
        ({"hours": 25}, True),
        ({"hours": None}, False),
        ({"hours": 100, "food": "mushroom-shiitake"}, False),
        ({"hours": 100, "marinade": {}, "rub": {"salt-table": "10 g"}}, False),
        # Cubes of raised meat, and poultry: two days.
        ({"hours": 48, "food": "turkey-breast"}, False),
        ({"hours": 49, "food": "turkey-breast"}, True),
    ],
)
def test_a_soak_over_every_limit(case: Cases, changes: dict[str, object], over: bool) -> None:
    """A stated soak of flesh in a marinade is held to the longest limit for such food."""
    assert over is over_every_limit(case(**changes))


@pytest.mark.parametrize(
    ("by", "likely", "moist"),
    [
        (FinishBy.WATER_ACTIVITY, 0.85, False),
        (FinishBy.WATER_ACTIVITY, 0.851, True),
    ],
)
def test_a_finish_by_water_activity(case: Cases, by: FinishBy, likely: float, moist: bool) -> None:
    """A finish by water activity may be at most the 0.85 of dried meat packed in air."""
    assert moist is case(finish=Finish(by=by, value=(0.8, likely, 0.9))).too_moist


@pytest.mark.parametrize(
    ("weighed", "moist"),
    [
        ({"moisture_to_protein": 0.75}, False),
        ({"moisture_to_protein": 0.7501}, True),
        ({"yield_fraction": 0.45}, False),
        ({"yield_fraction": 0.4501}, True),
        # What is known of its protein goes before its weight alone.
        ({"moisture_to_protein": 0.70, "yield_fraction": 0.60}, False),
        ({"moisture_to_protein": 0.80, "yield_fraction": 0.30}, True),
        ({}, False),
    ],
)
def test_a_weighed_batch_that_is_too_moist(
    case: Cases, weighed: dict[str, float], moist: bool
) -> None:
    """A weighed batch is held to 0.75 of water to protein, else to 45 % of its raw weight."""
    assert moist is case(**weighed).weighed_too_moist


# A tenth of the dose: 1 g on a scale of 0.1 g is the least that may be weighed on it.
@pytest.mark.parametrize(
    ("dose", "factor", "step", "coarse"),
    [
        ("1 g", "1", None, False),
        ("0.999 g", "1", None, True),
        ("0.5 g", "2", None, False),
        ("0.5 g", "1.99", None, True),
        ("2.4 g", "1", "1", True),
        ("10 g", "1", "1", False),
        ("9.95 g", "1", "1", True),
    ],
)
def test_a_scale_too_coarse_for_a_dose(
    case: Cases, dose: str, factor: str, step: str | None, coarse: bool
) -> None:
    """One step of the scale may be a tenth of today's curing salt, and no more."""
    found = case(rub={"curing-salt-1": dose}, factor=factor, scale=ScaleBy.MEAT)
    found = found._replace(scale_g=None if step is None else Fraction(step))

    assert coarse is bool(own_scale(found))


def test_a_finer_scale_is_asked_for_only_where_there_is_one(case: Cases) -> None:
    """Of a scale that shows a tenth of a gram already, more meat is asked and no finer scale."""
    small = case(rub={"curing-salt-1": "0.5 g"})
    (at_finest,) = own_scale(small._replace(scale_g=Fraction(1, 10)))
    (coarser,) = own_scale(small._replace(scale_g=Fraction(1)))

    assert "make more at once, or leave the curing salt out" == at_finest.hint
    assert "use one that shows 0.1 g, or leave the curing salt out" == coarser.hint


def test_of_curing_salt_of_unknown_strength_no_sum_is_made(case: Cases) -> None:
    """Where one of two curing salts has no strength, nothing is said of their nitrite together."""
    found = case(rub={"curing-salt-1": "0.1 g", "curing-salt": "0.1 g"})
    first, second = found.recipe.ingredients[-2:]
    others = found.recipe.ingredients[:-2]
    half_known = found.recipe._replace(
        ingredients=(*others, first, second._replace(strength_percent=None))
    )

    assert 1 == len(check_cure_little(found))
    assert () == check_cure_little(found._replace(recipe=half_known))


def test_curing_salt_is_weighed_in_ounces_too() -> None:
    """A tenth of an ounce is 2.8349523125 g."""
    assert Fraction("2.8349523125") == grams_of("cure", parse_amount("0.1 oz"))


def test_a_pickle_of_no_weight_is_dry_cure() -> None:
    """With no liquid all the nitrite is the meat's: 0.15 g to the kilogram is 150 ppm."""
    found = immersion_two_ppm(
        nitrite_g=Fraction("0.15"), pickle_g=Fraction(0), meat_mass_g=Fraction(1000)
    )

    assert 150 == found
    with pytest.raises(QuantityError):
        immersion_two_ppm(
            nitrite_g=Fraction("0.15"), pickle_g=Fraction("-0.001"), meat_mass_g=Fraction(1000)
        )


def test_of_two_curing_salts_no_single_most_is_named() -> None:
    """What to weigh at most is said of one curing salt, and of two together it is not."""
    one = Cure(
        name="curing-salt-1",
        mass_g=Fraction(3),
        nitrite_percent=Fraction("6.25"),
        nitrate_percent=Fraction(0),
    )
    with pytest.raises(CureRefused, match=r"take at most 2\.4 g"):
        guard([one], Fraction(1000))
    with pytest.raises(CureRefused) as refused:
        guard([one, one._replace(name="curing-salt")], Fraction(1000))
    assert "take at most" not in str(refused.value)


def test_no_food_of_its_own_rule_is_called_by_its_kind(case: Cases) -> None:
    """Mushrooms, other plants and fish each cite that no rule of theirs is held."""
    cites = {
        key: no_rule(case(key))[0].cites for key in ("mushroom-shiitake", "apple", "whitefish")
    }

    assert "mushroom-none-held" == cites["mushroom-shiitake"]
    assert "other-none-held" == cites["apple"]
    assert "fish-none-held; fish-smoked; fish-smoked-michigan" == cites["whitefish"]


def test_only_meat_is_gone_by_until_it_bends(case: Cases) -> None:
    """The test by bending is of strips of meat; mushrooms have none."""
    (meat,) = scaling(case(factor="2"))
    (mushrooms,) = scaling(case("mushroom-shiitake", factor="2"))

    assert "bends" in meat.hint
    assert "bends" not in mushrooms.hint


def test_air_of_one_temperature_is_said_once() -> None:
    """Two ends that print alike are one figure; else both are said, in both scales."""
    assert "155 °F (68 °C)" == air_words((155.0, 155.0))
    assert "150-155 °F (66-68 °C)" == air_words((150.0, 155.0))


def test_what_has_no_line_is_told_before_the_first(case: Cases) -> None:
    """Findings go in the order of the file, and what belongs to no line comes ahead of them."""
    recipe = case(thickness_mm=None, temperature_f=120, heat=AFTER).recipe
    assert {"meat.thickness", "drying.temperature"} <= {one.place.path for one in check(recipe)}
    first = recipe._replace(lines={"drying.temperature": 1})

    lines = [one.place.line or 0 for one in check(first)]

    assert 1 == lines[-1]
    assert sorted(lines) == lines
    assert 0 == lines[0]


@pytest.mark.parametrize(("food", "keeps"), [("beef-ground-90", False), ("beef-ground-93", True)])
def test_meat_of_a_tenth_fat_turns_rancid(case: Cases, food: str, keeps: bool) -> None:
    """At 10 g of fat in 100 g no keeping time is given; under it one is."""
    batch = case(food, marinade={}, mixed_in={"salt-table": "10 g"}, hours=None)

    assert keeps is bool(keep_by(batch).limits)


@pytest.mark.parametrize(
    ("packed", "cold", "frozen"),
    [
        # Three months and six; a month too short for the day ends on its last.
        ((2026, 1, 15), (2026, 4, 15), (2026, 7, 15)),
        ((2026, 11, 30), (2027, 2, 28), (2027, 5, 30)),
        ((2027, 11, 30), (2028, 2, 29), (2028, 5, 30)),
        ((2026, 8, 31), (2026, 11, 30), (2027, 2, 28)),
        ((2026, 9, 30), (2026, 12, 30), (2027, 3, 30)),
        ((2026, 10, 31), (2027, 1, 31), (2027, 4, 30)),
        ((2026, 6, 30), (2026, 9, 30), (2026, 12, 30)),
        ((2026, 12, 1), (2027, 3, 1), (2027, 6, 1)),
    ],
)
def test_months_are_counted_by_the_calendar(
    case: Cases,
    packed: tuple[int, int, int],
    cold: tuple[int, int, int],
    frozen: tuple[int, int, int],
) -> None:
    """A batch packed on a day keeps three months cold and six frozen, to the same day if it is."""
    until = {one.place: one.until for one in keep_by(case(), packed_on=date(*packed)).limits}

    assert date(*cold) == until["refrigerator"]
    assert date(*frozen) == until["freezer"]


def test_one_is_not_many() -> None:
    """One day is a day and one month a month; two are days."""
    assert "1 day at room temperature" == KeepLimit(place="room", most=1, unit="day").words
    assert "2 days at room temperature" == KeepLimit(place="room", most=2, unit="day").words


def test_cool_air_of_heated_meat_is_a_note(case: Cases) -> None:
    """Of meat heated first the coolest end decides: 130 degF is a note, cooler is a warning."""
    (mild,) = check_dryer(in_air(case(), 130.0, 150.0))
    (grave,) = check_dryer(in_air(case(), 129.9, 150.0))

    assert Severity.NOTE is mild.severity
    assert "130 °F" in mild.message
    assert Severity.WARNING is grave.severity


def test_what_is_rubbed_rests_and_what_is_mixed_in_does_not(case: Cases) -> None:
    """One line of a rub is enough; what is mixed in draws nothing that runs off."""
    both = case(marinade={"soy-sauce": "50 g"}, rub={"black-pepper": "5 g"})
    assert both.rubbed and both.soaked
    (rub,) = cold_hold(case(marinade={}, rub={"salt-table": "15 g"}))
    (mix,) = cold_hold(case(marinade={}, mixed_in={"salt-table": "15 g"}))

    assert "while the rub works" in rub.message
    assert "throw away liquid that runs off" == rub.hint
    assert "marinade-discarded" in rub.cites.split("; ")
    assert "rub" not in mix.message
    assert "take out only what you work on" == mix.hint
    assert "marinade-discarded" not in mix.cites.split("; ")


def test_who_says_so_goes_with_the_reason(case: Cases) -> None:
    """Meat that the oven after drying is not for cites who publishes it; air, who tells of air."""
    (meat,) = check_oven_after(case("turkey-breast", heat=AFTER))
    (air,) = check_oven_after(in_air(case(heat=AFTER), 130.0, 150.0))

    said_of_air = {"oven-after-minnesota", "boil-or-oven-nchfp"}
    assert "oven-after" in meat.cites.split("; ") and "oven-after" in air.cites.split("; ")
    assert not said_of_air & set(meat.cites.split("; "))
    assert said_of_air <= set(air.cites.split("; "))
