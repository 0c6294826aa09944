"""Soak, heat and dryer on a card's front: what a rule stands against is said there."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.recipe.model import HeatStep, MeatForm, Recipe, Soak
from tarebook.safety.case import Case
from tarebook.safety.method import dryer_mark, heat_line, hours_mark, soak_mark, until_words

Cases = Callable[..., Case]
AFTER = HeatStep.OVEN_AFTER


@pytest.mark.parametrize(
    ("changes", "line"),
    [
        (
            {},
            "Heat: simmered in its marinade, 5 minutes at the boil, to 160 °F (71 °C) inside.",
        ),
        (
            {"food": "turkey-breast", "heat": HeatStep.STEAMED},
            "Heat: steamed or roasted first, to 165 °F (74 °C) inside.",
        ),
        (
            {"heat": AFTER},
            "Heat: oven after drying, 10 minutes at 275 °F (135 °C), to 160 °F (71 °C) inside; raw "
            "till then: not tasted.",
        ),
        (
            {"food": "whitefish", "heat": HeatStep.STEAMED},
            "Heat: steamed or roasted first, to 160 °F (71 °C) inside for 30 minutes.",
        ),
        (
            {"heat": HeatStep.UNSTATED},
            "Heat: none stated. Before it dries, in wet heat, to 160 °F (71 °C) inside.",
        ),
        ({"food": "mushroom-shiitake", "heat": AFTER}, "Heat: oven after drying."),
        ({"food": "mushroom-shiitake", "heat": HeatStep.UNSTATED}, ""),
    ],
)
def test_the_heat_step_says_what_it_must_reach(
    case: Cases, changes: dict[str, object], line: str
) -> None:
    """A published step stands, with its temperature in both scales; none where none is asked."""
    assert line == heat_line(case(**changes))


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"food": "bear"}, "bear"),
        ({"food": "wild-boar"}, "wild pork"),
        ({"food": "pork-loin", "wild": True}, "wild pork"),
        ({"food": "goose"}, "poultry"),
        ({"food": "chum-salmon"}, "fish"),
        ({"thickness_mm": 9.5}, "thicker strips"),
        ({"thickness_mm": None}, "strips of unstated thickness"),
        ({"form": MeatForm.PIECES}, "pieces that are not strips"),
        ({"temperature_f": 140}, "air of 140 °F (60 °C)"),
        ({"temperature_f": 165}, "air of 165 °F (74 °C)"),
    ],
)
def test_a_refused_oven_step_is_never_the_one_to_take(
    case: Cases, changes: dict[str, object], why: str
) -> None:
    """The card says to heat first, to what, and why not as the recipe says."""
    line = heat_line(case(heat=AFTER, **changes))

    assert line.startswith("Heat: before it dries, in wet heat, to 16")
    assert line.endswith(f"which is not published for {why}.")


@pytest.mark.parametrize(
    ("changes", "house", "says"),
    [
        ({"temperature_f": 155}, {}, ""),
        ({"temperature_f": 130}, {}, "145 °F (63 °C) or more is the cautious figure"),
        ({"temperature_f": 155}, {"dryer_top_f": 125.0}, "the dryer here reaches 125 °F (52 °C)"),
        ({"temperature_f": 150}, {"dryer_low_f": 200.0}, "200 °F (93 °C) at its lowest"),
        ({"temperature_f": 150}, {"dryer_low_f": 200.0}, "it stays shut, and dries sooner"),
        ({"temperature_f": 155}, {"dryer_low_f": 95.0, "dryer_top_f": 160.0}, ""),
        ({"food": "mushroom-shiitake", "temperature_f": 125}, {}, ""),
    ],
)
def test_the_air_is_marked(
    case: Cases, changes: dict[str, object], house: dict[str, float], says: str
) -> None:
    """Air that is too cool, or that the house cannot make, is said beside the recipe's."""
    mark = dryer_mark(case(**changes)._replace(**house))

    assert bool(says) is bool(mark) and says in mark


def test_the_soak_is_marked(case: Cases, batch: Callable[..., Recipe]) -> None:
    """Too long, too warm, used before, ground: each is said in the line; a good soak is not."""

    def of(soak: Soak) -> str:
        return soak_mark(Case.of(batch()._replace(soak=soak)))

    assert " (too long: 24 h at most)" == soak_mark(case(hours=120))
    assert "too warm: in the refrigerator" in of(Soak(temperature_f=(60.0, 60.0)))
    assert "in a fresh marinade" in of(Soak(used_before=True))
    assert "mix it in" in soak_mark(case(form=MeatForm.GROUND))
    assert "" == soak_mark(case(hours=24)) == soak_mark(case("mushroom-shiitake", hours=48))


def test_hours_and_the_end_are_marked(case: Cases) -> None:
    """Six hours before the oven; strips of meat by the bend test, mushrooms by no rule."""
    assert " (6 h at least)" == hours_mark(case(heat=AFTER, drying_hours=(4.0, 6.0)))
    assert "" == hours_mark(case(heat=AFTER, drying_hours=(6.0, 8.0)))
    assert "bends and cracks, and does not break" in until_words(case())
    assert "" == until_words(case("mushroom-shiitake"))
