"""Every uncertain input says why, and on whose word."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.figures.sources import sources
from tarebook.figures.table import keys
from tarebook.figures.working import Working, value
from tarebook.nutrition import Assumption, Facts, assumptions
from tarebook.nutrition.draws import Distribution, Fixed, LogNormal, LogPert, Pert, Uniform
from tarebook.recipe.model import HeatStep

FactsOf = Callable[..., Facts]
RECIPES: dict[str, dict[str, object]] = {
    "soaked": {},
    "unstated": {"soak": 'surface = "lifted out"'},
    "patted": {"soak": 'hours = "2-4"\nsurface = "patted"', "heat": "simmered in its marinade"},
    "nothing poured": {"soak": "hours = 8\npoured-away = false"},
    "rub": {"marinade": {}, "rub": {"salt-table": "20 g"}, "heat": "steamed or roasted first"},
    "fatty": {"meat": "salmon-atlantic-farmed", "form": "pieces"},
    "mushrooms": {"meat": "mushroom-portabella", "form": "pieces"},
    "stated": {"drying": 'moisture-to-protein = "0.5-0.7"'},
}
# Inputs that belong to one ingredient, whose doubt is that of its own amount.
_OF_A_LINE = ("mass:", "sodium:", "sugars:")


@pytest.fixture(params=sorted(RECIPES))
def inputs(request: pytest.FixtureRequest, known: FactsOf) -> dict[str, Assumption]:
    """Return the inputs of each kind of batch in turn."""
    facts = known(**RECIPES[request.param])
    if request.param == "unstated":
        facts = facts._replace(heat=HeatStep.UNSTATED, thickness_mm=None)
    return assumptions(facts)


def test_each_has_a_reason_and_a_code(inputs: dict[str, Assumption]) -> None:
    """No input is without a reason in words, a code of five, and its own name."""
    assert len(inputs) >= 8
    for name, one in inputs.items():
        assert name == one.name
        assert len(one.reason.split()) >= 2, name
        assert one.code in "PCWMF", name


def test_each_coded_value_is_in_the_table(inputs: dict[str, Assumption]) -> None:
    """An input coded P, C, W or M stands in the table of working values, source and all."""
    table = [value(key) for key in keys("working-values.csv")]

    for name, one in inputs.items():
        if one.code == "F" or name == "heat-case" or name.startswith(_OF_A_LINE):
            continue
        rows = [row for row in table if _same(row, one)]
        assert rows, name
        assert one.source in sources(), name


def test_a_fact_of_the_recipe_claims_no_source(inputs: dict[str, Assumption]) -> None:
    """What the recipe itself states rests on nobody else's word."""
    for one in inputs.values():
        if one.code == "F":
            assert one.source == ""


def test_sodium_of_an_ingredient_is_a_working_value(inputs: dict[str, Assumption]) -> None:
    """The doubt of a sodium figure is that of a sauce or of pure salt."""
    allowed = {value(key).likely for key in ("sauce-sodium-cv", "pure-salt-sodium-cv")}

    found = {one.distribution for name, one in inputs.items() if name.startswith("sodium:")}

    assert found <= {LogNormal(cv) for cv in allowed}
    assert found


def _same(row: Working, one: Assumption) -> bool:
    return (row.code, row.source, row.unit) == (one.code, one.source, one.unit) and _ends(
        one.distribution
    ) == pytest.approx(row.range if not isinstance(one.distribution, LogNormal) else (row.likely,))


def _ends(distribution: Distribution) -> tuple[float, ...]:
    match distribution:
        case Pert() | LogPert():
            return tuple(distribution)
        case LogNormal(cv, _):
            return (cv,)
        case Fixed(amount):
            return (amount,) * 3
        case Uniform():
            return ()


def test_the_surface_chooses_the_film(known: FactsOf) -> None:
    """Lifted out, drained and patted meat carry less and less liquid."""
    likely = []
    for surface in ("lifted out", "drained", "patted"):
        film = assumptions(known(soak=f'hours = 12\nsurface = "{surface}"'))["film"].distribution
        assert isinstance(film, Pert)
        likely.append(film.likely)

    assert likely == [0.07, 0.035, 0.008]


@pytest.mark.parametrize(
    ("parts", "key"),
    [
        ({}, "model-doubt-recipe-only"),
        ({"soak": "hours = 2"}, "model-doubt-hard-case"),
        ({"thickness": "9 mm"}, "model-doubt-hard-case"),
        ({"marinade": {"soy-sauce": "600 g"}}, "model-doubt-hard-case"),
        ({"soak": "hours = 12\npoured-away = false"}, "model-doubt-nothing-poured"),
        ({"marinade": {}, "rub": {"salt-table": "20 g"}}, "model-doubt-nothing-poured"),
    ],
)
def test_a_hard_case_is_less_sure(known: FactsOf, parts: dict[str, object], key: str) -> None:
    """A short soak, thick strips or much marinade widen the doubt; nothing poured narrows it."""
    found = assumptions(known(**parts))["model"].distribution

    assert found == LogNormal(value(key).likely)


def test_fatty_meat_drips_more(known: FactsOf) -> None:
    """Above 10 % fat the fatty drip is taken."""
    lean = assumptions(known())["fat-drip"].distribution
    fatty = known()._replace(meat={**known().meat, "fat_g": 12.0})

    assert lean == Pert(0.0, 0.05, 0.10)
    assert assumptions(fatty)["fat-drip"].distribution == Pert(0.0, 0.15, 0.30)


def test_a_stated_finish_is_a_fact(known: FactsOf) -> None:
    """What the cook says of dryness stands; what is not said is a working value."""
    stated = assumptions(known(drying='moisture-to-protein = "0.5-0.7"'))["finish"]
    usual = assumptions(known())["finish"]

    assert (stated.code, usual.code) == ("F", "W")
    assert usual.distribution == Pert(0.35, 0.58, 0.80)


def test_a_rub_is_asked_nothing_of_a_soak(known: FactsOf) -> None:
    """Without a marinade there is no film, no soak and no diffusion, but there is a purge."""
    found = assumptions(known(marinade={}, rub={"salt-table": "20 g"}))

    assert "purge" in found
    assert not {"film", "hours", "salt-diffusivity"} & found.keys()
