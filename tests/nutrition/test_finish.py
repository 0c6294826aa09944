"""What a batch weighs when it is dry enough, above all by a water activity."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.findings import QuantityError
from tarebook.nutrition import Estimate, Facts, estimate, facts_of
from tarebook.nutrition.activity import activity_band
from tarebook.nutrition.estimate import MANY
from tarebook.nutrition.model import batch
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import Finish, FinishBy, Recipe
from tarebook.scaling import scale_by_factor
from tarebook.uptake.maths import COLUMNS, PLAIN, Column

FactsOf = Callable[..., Facts]
Middle = Callable[..., dict[str, float]]

FLESH = [name for name in shipped_recipes() if "mushroom" not in name]


def facts_named(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def aiming(facts: Facts, low: float, likely: float, high: float) -> Facts:
    """Return the same batch, finished at a water activity."""
    return facts._replace(finish=Finish(FinishBy.WATER_ACTIVITY, (low, likely, high)))


def test_there_are_shipped_recipes_of_flesh() -> None:
    """The tests below run over several of them."""
    assert len(FLESH) >= 5


@pytest.mark.parametrize("name", FLESH)
@pytest.mark.parametrize("draws", [256, 4096])
def test_a_water_activity_can_be_the_finish(name: str, draws: int) -> None:
    """A drier target weighs less and holds more sodium an ounce; columns and arrays alike."""
    wet, dry = (
        estimate(aiming(facts_named(name), a - 0.02, a, a + 0.02), draws=draws)
        for a in (0.85, 0.70)
    )
    more, less = dry.per_ounce["sodium_mg"], wet.per_ounce["sodium_mg"]

    assert more is not None and less is not None
    assert dry.finished_g.likely < wet.finished_g.likely
    assert less.likely < more.likely
    assert 0 < dry.moisture_fraction.likely < wet.moisture_fraction.likely < 0.6


def test_columns_and_arrays_agree() -> None:
    """A few draws in plain Python and thousands in arrays tell the same weight."""
    aimed = aiming(facts_named("juniper-venison"), 0.75, 0.80, 0.85)
    few, many = estimate(aimed).finished_g, estimate(aimed, draws=2 * MANY).finished_g

    assert many.low == pytest.approx(few.low, rel=0.02)
    assert many.likely == pytest.approx(few.likely, rel=0.01)
    assert many.high == pytest.approx(few.high, rel=0.02)


def test_a_column_says_what_each_setting_says(known: FactsOf, middle: Middle) -> None:
    """One setting in plain floats is one entry of the column."""
    facts = aiming(known(marinade={"soy-sauce": "1/2 cup", "honey": "2 Tbsp"}), 0.7, 0.8, 0.9)
    aims = [0.70, 0.80, 0.90]
    x = middle(facts)
    one_by_one = [batch(facts, {**x, "finish": a}, PLAIN).finished_g for a in aims]
    columns = {name: Column([number] * 3) for name, number in x.items()}
    at_once = batch(facts, {**columns, "finish": Column(aims)}, COLUMNS).finished_g

    assert one_by_one == pytest.approx(list(at_once), rel=1e-5)  # a column reads a table
    assert one_by_one == sorted(one_by_one)


def test_the_activity_aimed_at_is_the_activity_estimated() -> None:
    """There and back: the batch finished at 0.80 is told about 0.80."""
    found = activity_band(aiming(facts_named("juniper-venison"), 0.80, 0.80, 0.80))

    assert found is not None
    assert found.likely == pytest.approx(0.80, abs=0.002)


def test_the_equations_have_a_doubt_of_their_own() -> None:
    """However closely the cook hits the target, the weight stays unsure by their 0.03."""
    facts = aiming(facts_named("juniper-venison"), 0.80, 0.80, 0.80)
    sure = estimate(facts, pinned={"activity-error": 0.0}).finished_g
    unsure = estimate(facts).finished_g

    assert unsure.high - unsure.low > sure.high - sure.low
    assert unsure.likely == pytest.approx(sure.likely, rel=0.01)


@pytest.mark.parametrize("ends", [(0.517, 0.55, 0.572), (0.893, 0.95, 0.975)])
def test_draws_past_the_reach_of_the_equations_stand_at_their_end(
    ends: tuple[float, float, float],
) -> None:
    """The driest and the wettest target that a recipe may state, with all their doubt."""
    found: Estimate = estimate(aiming(facts_named("juniper-venison"), *ends))

    assert 0 < found.finished_g.low < found.finished_g.likely < found.finished_g.high


def test_err_a_batch_that_is_there_before_it_is_dried(known: FactsOf) -> None:
    """As much sugar as meat holds more water at 0.95 than goes in: named, with what to do."""
    sweet = known(mixed_in={"brown-sugar": "1 kg"}, amount="1 kg")

    with pytest.raises(QuantityError, match="it is there before it is dried; aim lower"):
        estimate(aiming(sweet, 0.95, 0.95, 0.95))


def test_err_what_a_swap_has_made_mushrooms_of(recipe_of: Callable[..., Recipe]) -> None:
    """How they hold water is not held; a recipe file is refused sooner."""
    venison = recipe_of(drying="water-activity = 0.8")
    mushrooms = venison._replace(meat=venison.meat._replace(food="mushroom-shiitake"))
    scaled = scale_by_factor(mushrooms, Fraction(1), choose_drawer("basic"))

    with pytest.raises(QuantityError, match="how mushroom-shiitake holds water is not known"):
        facts_of(scaled)
