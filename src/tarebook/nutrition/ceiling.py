"""The most sodium there could be in an ounce, with each number that it comes from."""

from __future__ import annotations

from tarebook.drying import finished_at_moisture_to_protein
from tarebook.figures.working import value
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.range import Range
from tarebook.recipe.model import FinishBy, Part
from tarebook.tuples import NamedTuple

_PURE_SALT_CV = 0.02


class Ceiling(NamedTuple):
    """Sodium of an ounce if everything measured were kept, as it is worked out.

    Attributes:
        per_ounce_mg: the ceiling [mg].
        counted_mg: the same by counting alone [mg].
        labelled_mg: sodium of sauces and the like, by their figures [mg].
        allowance: what those are multiplied by, as a label may be off by so much [-].
        pure_mg: sodium of weighed salts, taken at its word [mg].
        own_mg: the meat's own, by the table [mg].
        own_factor: what that is multiplied by, the most that is drawn [-].
        weight_g: what it is shared among: the weighed batch, or the least that it could weigh [g].
        solids_g: dry matter in that least weight; None where the batch was weighed [g].
        protein_g: protein that holds water in it; None where the rest is by solids alone [g].
        ratio: water to each gram of that protein [-].
        ounce_g: the ounce [g].
        by_range: whether all this is below the high estimate, which then is the ceiling.
    """

    per_ounce_mg: float
    counted_mg: float
    labelled_mg: float
    allowance: float
    pure_mg: float
    own_mg: float
    own_factor: float
    weight_g: float
    solids_g: float | None
    protein_g: float | None
    ratio: float
    ounce_g: float
    by_range: bool


def ceiling_of(
    facts: Facts, sodium: Range | None, *, ounce_g: float, own_factor: float, protein_g: float
) -> Ceiling | None:
    """Return sodium per ounce with everything counted; None where it would say nothing.

    All sodium measured, sauces at 120 % of their figure, the meat's own at its highest, over
    the weighed batch or else over the least that an unweighed one could weigh.

    Args:
        facts: what is known of the batch.
        sodium: its range in an ounce, or None without a total.
        ounce_g: the ounce [g].
        own_factor: the most that the meat's own sodium may be over the table's [-].
        protein_g: likely protein in the finished batch [g].
    """
    if sodium is None or sodium.missing or _borrowed(facts) or outweighed(facts):
        return None
    own = (facts.meat.get("sodium_mg") or 0.0) / 100 * facts.meat_mass_g
    pure = _sodium_mg(facts, pure=True)
    labelled = _sodium_mg(facts, pure=False)
    allowance = value("label-allowance").likely
    weight, solids, protein, ratio = _weight(facts, protein_g)
    counted = (own * own_factor + pure + labelled * allowance) / weight * ounce_g
    return Ceiling(
        per_ounce_mg=max(counted, sodium.high),
        counted_mg=counted,
        labelled_mg=labelled,
        allowance=allowance,
        pure_mg=pure,
        own_mg=own,
        own_factor=own_factor,
        weight_g=weight,
        solids_g=solids,
        protein_g=protein,
        ratio=ratio,
        ounce_g=ounce_g,
        by_range=counted < sodium.high,
    )


def _sodium_mg(facts: Facts, *, pure: bool) -> float:
    """Return sodium that is measured [mg]: of salts themselves, or of all else."""
    return sum(
        line.mass_g * line.makeup.sodium_mg
        for line in facts.lines
        if (line.makeup.sodium_cv <= _PURE_SALT_CV) is pure
    )


def _borrowed(facts: Facts) -> bool:
    """Whether some sodium is another food's, as its own pack prints none: nothing tops that."""
    return any(line.makeup.sodium_borrowed for line in facts.lines)


def outweighed(facts: Facts) -> bool:
    """Whether the marinade outweighs the meat; most of its sodium is then poured away."""
    liquid = sum(line.mass_g for line in facts.lines if line.part is Part.MARINADE)
    return liquid > facts.meat_mass_g


def _weight(facts: Facts, protein_g: float) -> tuple[float, float | None, float | None, float]:
    """Return what the batch weighs [g]; its solids, its protein and water to that, if reckoned."""
    if facts.finished_g is not None:
        return facts.finished_g, None, None, 0.0
    raw = facts.meat_mass_g * (1 - (facts.meat.get("water_g") or 0.0) / 100)
    solids = raw + sum(line.mass_g * (1 - line.makeup.water) for line in facts.lines)
    if facts.finish_by() is FinishBy.MOISTURE:
        return solids, solids, None, 0.0
    ratio = value("ceiling-moisture-to-protein").likely
    least = finished_at_moisture_to_protein(solids_g=solids, protein_g=protein_g, ratio=ratio)
    return float(least), solids, protein_g, ratio
