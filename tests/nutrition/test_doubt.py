"""Doubt of the inputs and of the model are told apart, and pinning leaves the model's alone."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.doubt import MODEL, doubt
from tarebook.nutrition.draws import LogNormal, percentile, strata
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.scaling import scale_by_factor


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def middles(known: Facts) -> dict[str, float]:
    """Return every input at its middle."""
    return {
        name: percentile(list(strata(one.distribution, 256)), 0.5)
        for name, one in assumptions(known).items()
    }


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("figure", ["sodium_mg", "sugars_g", "protein_g"])
def test_pinning_every_input_leaves_nothing_in_doubt(name: str, figure: str) -> None:
    """With the model pinned as well, low, likely and high are one value."""
    known = facts(name)
    found = estimate(known, pinned=middles(known)).per_ounce[figure]

    assert found is not None
    assert found.low == pytest.approx(found.high)


@pytest.mark.parametrize("name", ["juniper-venison", "orchard-turkey", "maple-dill-salmon"])
def test_pinning_all_inputs_leaves_only_the_models_doubt(name: str) -> None:
    """Added sodium is then as unsure as the model's own factor, no more and no less.

    Share kept times a factor, so added sodium over the batch follows that factor but for the
    solids that it brings along: within a tenth of the factor's own spread.
    """
    known = facts(name)
    pinned = {one: middle for one, middle in middles(known).items() if one != MODEL}
    found = estimate(known, pinned=pinned)
    factor = assumptions(known)[MODEL].distribution
    assert isinstance(factor, LogNormal)
    ends = [percentile(list(strata(factor, 256)), point) for point in (0.05, 0.5, 0.95)]
    own = estimate(known._replace(lines=())).per_batch["sodium_mg"]
    batch = found.per_batch["sodium_mg"]
    assert own is not None and batch is not None
    meat = known.meat["sodium_mg"] or 0.0
    kept = [value - meat / 100 * known.meat_mass_g * _own_kept(known) for value in batch[:3]]

    assert kept[2] / kept[0] == pytest.approx(ends[2] / ends[0], rel=0.1)


def _own_kept(known: Facts) -> float:
    """Return the part of the meat's own sodium that stays, every input at its middle."""
    with_own = estimate(known, pinned=middles(known)).per_batch["sodium_mg"]
    meat = dict(known.meat)
    own_mg = (meat["sodium_mg"] or 0.0) / 100 * known.meat_mass_g
    meat["sodium_mg"] = 0.0
    without = estimate(known._replace(meat=meat), pinned=middles(known)).per_batch["sodium_mg"]
    assert with_own is not None and without is not None
    return (with_own.likely - without.likely) / own_mg


@pytest.mark.parametrize("name", shipped_recipes())
def test_each_kind_alone_is_narrower_than_both(name: str) -> None:
    """Neither is the whole, and squares of the widths add up, near enough."""
    known = facts(name)
    both, apart = estimate(known).per_ounce["sodium_mg"], doubt(known)
    assert both is not None and apart is not None
    whole, inputs, model = (
        (one.high - one.low) / one.likely for one in (both, apart.inputs, apart.model)
    )

    assert inputs < whole * 1.02 and model < whole
    assert (inputs**2 + model**2) ** 0.5 == pytest.approx(whole, rel=0.15)


def test_without_a_total_there_is_no_doubt_to_tell() -> None:
    """Salt of unknown weight has neither."""
    known = facts("juniper-venison")._replace(no_sodium_total=("salt",))

    assert doubt(known) is None
