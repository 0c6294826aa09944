"""Whether the cook's weights agree with each other, and the likeliest slip where they do not.

Meat and marinade together weigh after the soak what they weighed before, less what sticks to the
bowl and what evaporates: conservation of mass, which no assumption about uptake can change.
"""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.figures.working import value
from tarebook.findings import QuantityError
from tarebook.nutrition.facts import Facts
from tarebook.recipe.model import Part

_UNITS = {
    "grams for ounces": 28.349523125,
    "grams for pounds": 453.59237,
    "grams for kilograms": 1000.0,
    "ounces for grams": 1 / 28.349523125,
    "pounds for ounces": 1 / 16,
    "ounces for pounds": 16.0,
}


def check_soak_weights(facts: Facts) -> None:
    """Do nothing if the weights around the soak can all be true.

    Args:
        facts: what is known of the batch, weights included.

    Raises:
        QuantityError: they cannot; says by how much, and the likeliest slip.
    """
    if facts.soaked_g is None and facts.leftover_g is None:
        return
    if not facts.has(Part.MARINADE):
        raise QuantityError("--soaked and --leftover are for a marinade, and this recipe has none")
    if not _agree(facts, facts.soaked_g, facts.leftover_g):
        raise QuantityError(_contradiction(facts) + _slip(facts))


def marinade_g(facts: Facts) -> float:
    """Return the marinade as it was made [g]."""
    return sum(line.mass_g for line in facts.lines if line.part is Part.MARINADE)


def _agree(facts: Facts, soaked_g: float | None, leftover_g: float | None) -> bool:
    made, doubt = marinade_g(facts), _measuring_doubt(facts)
    if soaked_g is not None:
        share = value("soaked-over-raw")
        most = min(facts.meat_mass_g * share.high, facts.meat_mass_g + made + doubt)
        if not facts.meat_mass_g * share.low <= soaked_g <= most:
            return False
    if leftover_g is not None and not 0 <= leftover_g <= made + doubt:
        return False
    if soaked_g is None or leftover_g is None:
        return True
    gone = facts.meat_mass_g + made - soaked_g - leftover_g
    return -doubt <= gone <= value("weights-disagree").likely * made + doubt


def _measuring_doubt(facts: Facts) -> float:
    """Return how far the marinade as made may be off from its spoons and cups [g], twice over."""
    return 2 * value("marinade-measured-cv").likely * marinade_g(facts)


def _contradiction(facts: Facts) -> str:
    made = marinade_g(facts)
    if facts.soaked_g is not None and facts.leftover_g is not None:
        gone = facts.meat_mass_g + made - facts.soaked_g - facts.leftover_g
        what = f"{gone:,.0f} g went missing" if gone > 0 else f"{-gone:,.0f} g came from nowhere"
        return (
            f"the weights do not agree: {facts.meat_mass_g:,.0f} g of meat and about "
            f"{made:,.0f} g of marinade became {facts.soaked_g:,.0f} and "
            f"{facts.leftover_g:,.0f} g, so {what}"
        )
    if facts.soaked_g is not None:
        return (
            f"{facts.soaked_g:,.0f} g after soaking cannot come of {facts.meat_mass_g:,.0f} g of "
            f"meat in about {made:,.0f} g of marinade"
        )
    return f"a leftover of {facts.leftover_g:,.0f} g is more than the {made:,.0f} g of marinade"


def _slip(facts: Facts) -> str:
    """Return the likeliest slip: a unit, two digits, or a bowl that was weighed as well."""
    for name, changed in _changes(facts.soaked_g):
        if _agree(facts, changed, facts.leftover_g):
            return f"; was --soaked {name}?"
    for name, changed in _changes(facts.leftover_g):
        if _agree(facts, facts.soaked_g, changed):
            return f"; was --leftover {name}?"
    return "; was a bowl's weight left in, or taken off twice?"


def _changes(weight_g: float | None) -> Iterator[tuple[str, float]]:
    if weight_g is None:
        return
    for name, by in _UNITS.items():
        yield f"written in {name}", weight_g * by
    digits = f"{weight_g:.0f}"
    for place in range(len(digits) - 1):
        swapped = digits[:place] + digits[place + 1] + digits[place] + digits[place + 2 :]
        yield f"{int(swapped):,} g, two digits swapped", float(swapped)
