"""What would narrow a figure: true, worth doing, and not what is known already."""

from __future__ import annotations

from fractions import Fraction

from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.nutrition.narrowing import narrowings
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import HeatStep
from tarebook.scaling import scale_by_factor


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def test_each_narrows() -> None:
    """Whatever is offered leaves a narrower range than there is now."""
    for name in shipped_recipes():
        now = estimate(facts(name)).per_ounce["sodium_mg"]
        assert now is not None
        for one in narrowings(facts(name)):
            after = one.after
            assert (after.high - after.low) / after.likely < (now.high - now.low) / now.likely


def test_what_is_weighed_is_not_asked_again() -> None:
    """With both weights known, no weight is asked for."""
    known = facts("juniper-venison")._replace(finished_g=488.0, soaked_g=1240.0)

    assert narrowings(known) == ()


def test_an_unstated_heat_step_is_asked_for() -> None:
    """A recipe that does not say how it is heated is asked to."""
    found = narrowings(facts("juniper-venison")._replace(heat=HeatStep.UNSTATED))

    assert "say in the recipe how it is heated" in {one.words for one in found}
