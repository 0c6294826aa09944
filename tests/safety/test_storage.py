"""How long it keeps: the cautious times where they hold, and no date where they do not."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from tarebook.findings import Severity
from tarebook.recipe.model import Finish, FinishBy, HeatStep, Recipe, Soak
from tarebook.safety.case import Case
from tarebook.safety.storage import KeepBy, keep_by, storage, vacuum

Cases = Callable[..., Case]


def test_the_cautious_times(case: Cases) -> None:
    """A batch with a heat step gets the shortest published time of each place and no other."""
    found = keep_by(case())

    assert [one.words for one in found.limits] == [
        "14 days at room temperature",
        "3 months in the refrigerator",
        "6 months frozen",
    ]
    assert found.text == (
        "Sealed, dry by the bend test and heated to 160 °F (71 °C) inside, 14 days at room "
        "temperature, 3 months in the refrigerator, 6 months frozen: the shortest published times."
    )
    assert found.citation == (
        "own working, lowest of Wyoming, Michigan State, NCHFP, FSIS and Minnesota"
    )


@pytest.mark.parametrize(
    ("packed", "until"),
    [
        (date(2026, 11, 25), (date(2026, 12, 9), date(2027, 2, 25), date(2027, 5, 25))),
        # Months too short for the day end on their last.
        (date(2027, 8, 31), (date(2027, 9, 14), date(2027, 11, 30), date(2028, 2, 29))),
        (date(2026, 12, 31), (date(2027, 1, 14), date(2027, 3, 31), date(2027, 6, 30))),
    ],
)
def test_last_days(case: Cases, packed: date, until: tuple[date, ...]) -> None:
    """With the day it was packed, each place has its last day."""
    assert until == tuple(one.until for one in keep_by(case(), packed_on=packed).limits)


@pytest.mark.parametrize("air_f", [(None, 131.0), (None, 140.0), (170.0, 500.0)])
def test_an_oven_step_that_the_air_rules_out_is_no_heat_step(
    air_f: tuple[float | None, float], case: Cases
) -> None:
    """Strips whose oven step the card refuses for the dryer's air are never called cooked food."""
    low_f, top_f = air_f
    batch = case(heat=HeatStep.OVEN_AFTER, drying_hours=(7.0, 8.0))
    found = keep_by(batch._replace(dryer_low_f=low_f, dryer_top_f=top_f))

    assert () == found.limits and not found.to_eat
    assert found.label.startswith("Not heated as published: not to be eaten unless every piece")
    assert "as cooked food" not in found.text
    assert keep_by(batch).limits


@pytest.mark.parametrize(
    ("step", "says"),
    [
        (
            "Thaw the meat on the counter overnight.",
            "By its own steps it lay out of the cold: throw it away if that was over 2 hours. No "
            "date: a step thaws, soaks or rests it out of the cold.",
        ),
        (
            "No need to heat it.",
            "Its own steps take heat for needless: not to be eaten unless every piece has been "
            "160 °F (71 °C) inside, in wet heat. No date.",
        ),
        (
            "Marinate at room temperature 12 h; it may be eaten raw.",
            "By its own steps it lay out of the cold: throw it away if that was over 2 hours. Its "
            "own steps take heat for needless: not to be eaten unless every piece has been 160 °F "
            "(71 °C) inside, in wet heat. No date.",
        ),
        (
            "Roast until a strip reads 140 °F inside.",
            "Its own steps heat it too little, or put raw marinade on it: not to be eaten unless "
            "every piece has been 160 °F (71 °C) inside, in wet heat. No date.",
        ),
        (
            "Baste it with the used marinade as it dries.",
            "Its own steps heat it too little, or put raw marinade on it: not to be eaten unless "
            "every piece has been 160 °F (71 °C) inside, in wet heat. No date.",
        ),
        (
            "Dry in the sun.",
            "Its own steps dry it cooler than anybody publishes: throw it away if that was done. "
            "No date: a step dries it cooler than anybody publishes.",
        ),
        (
            "Dry at 140 °F.",
            "Keep cold and eat within 3 days, as cooked food (from memory), or freeze it. No date: "
            "a step dries it cooler than published.",
        ),
    ],
)
def test_a_dangerous_step_leaves_no_date(
    batch: Callable[..., Recipe], step: str, says: str
) -> None:
    """Where a step of the recipe's own thaws it warm or does without heat, no day is given."""
    assert says == keep_by(Case.of(batch()._replace(steps=(step,)))).label


@pytest.mark.parametrize(
    ("food", "step"),
    [
        ("deer", "Thaw in the refrigerator, never on the counter."),
        ("deer", "Dry at 150 °F, never in the sun."),
        ("deer", "Taste a strip raw."),
        ("deer", "Keep it in the pantry for a year."),
        ("mushroom-shiitake", "Soak on the counter."),
    ],
)
def test_a_good_step_changes_nothing(batch: Callable[..., Recipe], food: str, step: str) -> None:
    """Steps that keep it cold, and those of what is no flesh, leave the label as it is."""
    plain = batch(food)

    assert keep_by(Case.of(plain)) == keep_by(Case.of(plain._replace(steps=(step,))))


@pytest.mark.parametrize(
    ("top_f", "lost"), [(125.0, True), (129.0, True), (130.0, False), (None, False)]
)
@pytest.mark.parametrize("food", ["deer", "turkey-breast", "bear", "whitefish"])
def test_meat_dried_cooler_than_anybody_publishes(
    food: str, top_f: float | None, lost: bool, case: Cases
) -> None:
    """Heated or not, what lay under 130 degF for hours is not called cooked food to be kept."""
    found = keep_by(case(food)._replace(dryer_top_f=top_f))

    assert lost is found.lost and lost is not found.to_eat
    assert lost is ("cooler than anybody publishes even for heated meat: not to be" in found.label)
    assert not (lost and ("Keep cold" in found.label or "wrapped" in found.label))
    (told,) = storage(case(food)._replace(dryer_top_f=top_f))
    assert lost is (told.hint == "dry it where the air holds 145 °F (63 °C) or more")


def test_mushrooms_may_dry_as_cool_as_they_like(case: Cases) -> None:
    """The least air is one for flesh."""
    assert not keep_by(case("mushroom-shiitake", temperature_f=115)).lost


MOIST = Finish(by=FinishBy.MOISTURE_TO_PROTEIN, value=(0.8, 1.0, 1.2))


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"heat": HeatStep.UNSTATED}, "no heat step is recorded"),
        (
            {"food": "turkey-breast", "heat": HeatStep.OVEN_AFTER},
            "its heat step is not published for such meat",
        ),
        (
            {"thickness_mm": None, "heat": HeatStep.OVEN_AFTER},
            "its heat step is not published for such meat",
        ),
        ({"finish": MOIST}, "it stops drying while too moist"),
        ({"temperature_f": None}, "no dryer temperature is recorded"),
        ({"temperature_f": 129}, "its dryer is cooler than published"),
        (
            {"temperature_f": 144, "heat": HeatStep.OVEN_AFTER},
            "its dryer is cooler than published",
        ),
        (
            {"drying_hours": (5.5, 6.0), "heat": HeatStep.OVEN_AFTER},
            "it dries too short a time before the oven",
        ),
        ({"hours": 25}, "it soaks longer than the limit held for it"),
        (
            {"food": "beef-top-round", "hours": 49},
            "it soaks longer than the limit held for it",
        ),
        ({"food": "beef-ground-95"}, "ground meat was put in a marinade"),
        (
            {"food": "deer-ground", "marinade": {}},
            "its ground meat is fatter than published",
        ),
        ({"thickness_mm": 6.4}, "it is cut thicker than published"),
        ({"food": "bacon"}, "meat so fat turns rancid"),
        ({"food": "pork-belly"}, "meat so fat turns rancid"),
        ({"moisture_to_protein": 0.76}, "the weighed batch is too moist"),
        ({"yield_fraction": 0.51}, "the weighed batch is too moist"),
        ({"food": "whitefish"}, "no published rule for drying fish at home is held"),
        ({"food": "mushroom-shiitake"}, "no published rule for drying mushrooms at home is held"),
        ({"food": "apple"}, "no published rule for drying this food at home is held"),
    ],
)
def test_no_date_where_none_holds(case: Cases, changes: dict[str, object], reason: str) -> None:
    """No time and no date at all, at no place, and the reason said; keep it cold."""
    found = keep_by(case(**changes), packed_on=date(2026, 11, 25))

    assert found.limits == ()
    assert reason == found.reason
    assert found.text == f"{found.instead} No date is given: {reason}."
    assert found.label.startswith(f"{found.instead} No date")
    assert found.to_eat is (f"No date: {reason}." in found.label)
    assert found.citation


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"heat": HeatStep.UNSTATED}, "No heat step is recorded: not to be eaten unless"),
        (
            {"food": "bear", "heat": HeatStep.OVEN_AFTER},
            "Not heated as published: not to be eaten unless every piece has been 165 °F (74 °C) "
            "inside, in wet heat.",
        ),
        (
            {"food": "whitefish", "heat": HeatStep.OVEN_AFTER},
            "Not heated as published: not to be eaten unless every piece has been 160 °F (71 °C) "
            "inside for 30 minutes, in wet heat.",
        ),
        ({"food": "whitefish"}, "Keep cold, below 36 °F (2 °C), 2 weeks at most, as"),
        ({"food": "mushroom-shiitake"}, "Keep cold and eat within 3 days, as cooked food (from"),
        ({"thickness_mm": 9.0}, "Keep cold and eat within 3 days, as cooked food (from memory)"),
    ],
)
def test_without_a_date_there_is_an_end(case: Cases, changes: dict[str, object], says: str) -> None:
    """Unheated meat is not called food to be kept; what is kept cold is told how long."""
    assert keep_by(case(**changes)).label.startswith(says)


@pytest.mark.parametrize(
    ("house", "reason"),
    [
        ({"dryer_top_f": 125.0}, "its dryer is not one for meat"),
        ({"dryer_settable": False}, "its dryer is not one for meat"),
        ({"dryer_top_f": 160.0, "dryer_settable": True}, ""),
        ({"dryer_low_f": 200.0}, ""),
    ],
)
def test_the_kitchen_counts(case: Cases, house: dict[str, object], reason: str) -> None:
    """A dryer that advice keeps meat out of leaves its batches without a date."""
    assert reason == keep_by(case()._replace(**house)).reason


def test_a_warm_soak_and_used_marinade_leave_no_date(batch: Callable[..., Recipe]) -> None:
    """What lay warm is thrown away; what lay in used marinade is given no time."""

    def of(soak: Soak) -> KeepBy:
        return keep_by(Case.of(batch()._replace(soak=soak)))

    assert "throw it away" in of(Soak(temperature_f=(60.0, 60.0))).label
    assert "its marinade was used before" == of(Soak(used_before=True)).reason
    assert "" == of(Soak(temperature_f=(38.0, 40.0))).reason


@pytest.mark.parametrize(
    "changes",
    [
        {"temperature_f": 130},
        {"temperature_f": 145, "heat": HeatStep.OVEN_AFTER},
        {"drying_hours": (6.0, 8.0), "heat": HeatStep.OVEN_AFTER},
        {"drying_hours": (3.0, 6.0)},
        {"hours": 24},
        {"food": "beef-top-round", "hours": 48},
        {"food": "beef-ground-93", "marinade": {}},
        {"moisture_to_protein": 0.75},
        {"moisture_to_protein": 0.6, "yield_fraction": 0.51},
        {"yield_fraction": 0.45},
    ],
)
def test_at_the_boundary_a_time_is_given(case: Cases, changes: dict[str, object]) -> None:
    """What is just within the published figures has its times."""
    assert 3 == len(keep_by(case(**changes)).limits)


def test_the_card_says_the_times(case: Cases) -> None:
    """The caution on keeping says the times, the date on the pack, and mould."""
    (found,) = storage(case())

    assert found.severity is Severity.NOTE
    assert found.message == (
        "sealed, dry by the bend test and heated to 160 °F (71 °C) inside, the shortest published "
        "times are 14 days at room temperature, 3 months in the refrigerator, 6 months frozen"
    )
    assert found.hint == (
        "cool it, seal it with the least air, date every pack, and throw all of it away if mould "
        "shows"
    )


@pytest.mark.parametrize(
    ("key", "says"),
    [("deer", "no heat step is recorded"), ("whitefish", "no heat"), ("apple", "keep cold")],
)
def test_without_times_the_card_says_so(case: Cases, key: str, says: str) -> None:
    """Where no time holds the caution is a warning and gives no use-by date."""
    (found,) = storage(case(key, heat=HeatStep.UNSTATED))

    assert found.severity is Severity.WARNING
    assert found.message.startswith(says) and "there is no use-by date" in found.message
    assert "month" not in found.message


@pytest.mark.parametrize(
    ("food", "wild", "heated"),
    [
        ("bear", True, "if every piece was 165 °F (74 °C) inside in wet heat"),
        ("pork-loin", True, "if every piece was 165 °F (74 °C) inside in wet heat"),
        ("pork-loin", False, "heated to 160 °F (71 °C) inside"),
        ("turkey-breast", False, "heated to 165 °F (74 °C) inside"),
        ("deer", True, "heated to 160 °F (71 °C) inside"),
    ],
)
def test_days_rest_on_a_heat_that_is_named(food: str, wild: bool, heated: str, case: Cases) -> None:
    """Whoever is given a bag reads how hot it was; of bear and wild pork, every piece of it."""
    found = keep_by(case(food=food, wild=wild))

    assert found.limits and heated == found.heated
    assert f"dry by the bend test and {heated}, 14 days" in found.text


def test_fish_is_not_packed_without_air(case: Cases) -> None:
    """Fish alone hears that it is packed without air only frozen, and who says so."""
    (found,) = storage(case("whitefish"))

    assert "without air only frozen" in found.hint and "fish-no-air" in found.cites
    assert "only frozen" not in storage(case())[0].hint


def test_vacuum_packs_hear_of_what_they_do_not_do(case: Cases) -> None:
    """Only a batch packed without air is told what that does not replace."""
    assert vacuum(case(vacuum_packed=True)) != ()
    assert vacuum(case()) == ()


def test_fish_is_never_told_to_be_sealed_in_the_cold(case: Cases) -> None:
    """Label and caution of fish say how cold, and that it is sealed for the freezer alone."""
    found = keep_by(case(food="whitefish"))
    (told,) = storage(case(food="whitefish"))

    assert (
        "sealed or without air only frozen" in found.label and "below 36 °F (2 °C)" in found.label
    )
    assert "sealed or without air only frozen" in told.hint and "below 36 °F (2 °C)" in told.message
    assert "(Alaska: or below 38 °F (3 °C) for 5 days)" in told.hint
    assert "sealed" not in keep_by(case(food="mushroom-shiitake")).label
