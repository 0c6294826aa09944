"""From bowl to scale: one batch, for one setting or for a whole column of draws.

The road: what was measured -> what the marinade holds -> what the meat takes up -> what heat
presses out -> what drips in the dryer -> what a finished batch holds and weighs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tarebook.drying import solids
from tarebook.figures.working import value
from tarebook.nutrition.bowl import Carried, Contents, carried_by, contents, sugars_put_in
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.finish import finished_weight
from tarebook.nutrition.strip import strip_in_bath, strip_without_bath, water_fraction
from tarebook.recipe.model import HeatStep, Part
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import Maths, Number
from tarebook.uptake.soak import (
    Bath,
    Kept,
    Lost,
    Soaked,
    Strip,
    heated_in_marinade,
    heated_with_drip_lost,
    rubbed,
    soak,
)

FIGURES = (
    "energy_kcal",
    "fat_g",
    "saturated_g",
    "cholesterol_mg",
    "sodium_mg",
    "carbohydrate_g",
    "fiber_g",
    "sugars_g",
    "added_sugars_g",
    "protein_g",
    "vitamin_d_ug",
    "calcium_mg",
    "iron_mg",
    "potassium_mg",
)
"""Figures of a finished batch, in the order of a food label."""

ROUGH = frozenset(FIGURES) - {"sodium_mg", "sugars_g", "added_sugars_g", "protein_g"}
"""Figures that rest on rougher rules than salt, sugars and protein do."""

_ALL = Kept(1.0, 1.0, 1.0, 1.0)
_ENERGY = {"protein_g": 4, "carbohydrate_g": 4, "fat_g": 9}  # 21 CFR 101.9(c)(1)(i)(B)
_DROPLET_G = 1e-6


class Fate(NamedTuple):
    """Shares of a part that end on the tray [-]."""

    kept: Kept
    suspended: Number
    oil: Number


class Batch(NamedTuple):
    """A finished batch.

    Attributes:
        figures: whole-batch figures by name, in the unit of the name.
        finished_g: what it weighs [g].
        solids_g: solids in it [g].
        protein_g: protein in it [g].
        marinade_kept: shares of the marinade's solutes kept [-].
        soaked_g: meat after the soak, before any heat, with what clings to it [g].
        leftover_g: marinade that is not on the meat then, pulp and oil included [g].
        sodium_put_in_mg: sodium of everything that was measured [mg].
    """

    figures: Mapping[str, Number]
    finished_g: Number
    solids_g: Number
    protein_g: Number
    marinade_kept: Kept
    soaked_g: Number
    leftover_g: Number
    sodium_put_in_mg: Number


class Unheated(NamedTuple):
    """A batch before its heat step.

    Attributes:
        parts: what marinade, rub and mix hold.
        carried: what the ingredients of each bring beside salt and sugars.
        bath: the dissolved part of the marinade; None where there is none.
        strip: the meat as it met the bath.
        meat: what the soak, or the rub, left.
    """

    parts: Mapping[Part, Contents]
    carried: Mapping[Part, Sequence[Carried]]
    bath: Bath | None
    strip: Strip
    meat: Soaked


def unheated(facts: Facts, x: Mapping[str, Number], maths: Maths) -> Unheated:
    """Return a batch up to its heat step, whatever that will be; arguments as of :func:`batch`."""
    parts = {part: contents(facts, part, x) for part in Part if facts.has(part)}
    carried = {part: carried_by(held) for part, held in parts.items()}
    water = facts.meat_mass_g * water_fraction(facts, x)
    marinade = parts.get(Part.MARINADE)
    if marinade is None:
        strip = strip_without_bath(facts, water, x)
        runs_off = facts.has(Part.RUB) and facts.poured_away
        purge = x["purge"] * facts.meat_mass_g if runs_off else 0.0 * water
        return Unheated(parts, carried, None, strip, rubbed(strip, purge, maths))
    # Oil or pepper alone is no liquid to soak in; a droplet keeps the shares of nothing defined.
    wet = maths.larger(marinade.water, _DROPLET_G)
    bath = Bath(wet, marinade.salt, marinade.sucrose, marinade.hexose, marinade.other)
    strip = strip_in_bath(facts, bath, water, x, maths)
    return Unheated(parts, carried, bath, strip, soak(bath, strip, maths))


def batch(
    facts: Facts, x: Mapping[str, Number], maths: Maths, raw: Unheated | None = None
) -> Batch:
    """Return the finished batch for one setting of the inputs.

    Args:
        facts: what is known of the batch.
        x: a value, or a column of draws, for each input named by ``assumptions``.
        maths: operations for that kind of number.
        raw: the same batch before its heat step, where it is at hand already.

    Returns:
        The batch; every figure a number of the same kind as the inputs.
    """
    raw = raw or unheated(facts, x, maths)
    parts = raw.parts
    soaked = _heated(facts, raw, x, maths)
    fates = {part: _fate(facts, part, soaked, x, maths) for part in parts}
    taken = sum((_matter(parts[part], fates[part]) for part in parts), 0.0)
    fat = (facts.meat.get("fat_g") or 0.0) / 100 * facts.meat_mass_g
    left = solids(
        raw_mass_g=facts.meat_mass_g,
        water_fraction=water_fraction(facts, x),
        solubles_lost_g=_solubles_lost(facts, soaked, x),
        fat_drip_g=fat * x["fat-drip"],
        taken_g=taken,
        drip_fraction=x["drip"],
    )
    figures = _figures(facts, raw, fates, soaked, x)
    leaked = _solubles_lost(facts, raw.meat, x)
    loose, clinging = _undissolved(parts.get(Part.MARINADE), raw.meat, x, maths)
    finished = finished_weight(facts, figures, left.total_g, sugars_put_in(parts), x, maths)
    return Batch(
        figures=figures,
        finished_g=finished,
        solids_g=left.total_g,
        protein_g=figures["protein_g"],
        marinade_kept=fates[Part.MARINADE].kept if Part.MARINADE in fates else _ALL,
        soaked_g=raw.meat.meat_g + clinging - leaked,
        leftover_g=raw.meat.leftover_g + loose - clinging + leaked,
        sodium_put_in_mg=sum((part.sodium_mg for part in parts.values()), 0.0),
    )


def _undissolved(
    marinade: Contents | None, soaked: Soaked, x: Mapping[str, Number], maths: Maths
) -> tuple[Number, Number]:
    """Return pulp, spice and oil of a marinade, and what of them clings to the meat [g]."""
    if marinade is None:
        return 0.0, 0.0
    oil = maths.smaller(soaked.film_share * x["oil-factor"], 1.0)
    loose = marinade.suspended + marinade.oil
    return loose, x["suspended-kept"] * marinade.suspended + oil * marinade.oil


def _heated(facts: Facts, raw: Unheated, x: Mapping[str, Number], maths: Maths) -> Soaked:
    """Return the meat as it goes into the dryer."""
    match facts.heat:
        case HeatStep.OVEN_AFTER | HeatStep.BOILED_DOWN:
            return raw.meat
        case HeatStep.SIMMERED:
            return _simmered(facts, raw, x, maths)
        case HeatStep.STEAMED:
            return _steamed(facts, raw, x, maths)
        case _:
            to_simmer, to_steam = heat_edges()
            steamed = _steamed(facts, raw, x, maths)
            later = _choose(x["heat-case"], to_steam, steamed, raw.meat, maths)
            simmered = _simmered(facts, raw, x, maths)
            return _choose(x["heat-case"], to_simmer, simmered, later, maths)


def heat_edges() -> tuple[float, float]:
    """Return where the draw of an unstated heat step parts simmered, steamed and oven after."""
    simmered = value("heat-unstated-simmered").likely
    return simmered, simmered + value("heat-unstated-steamed").likely


def _steamed(facts: Facts, raw: Unheated, x: Mapping[str, Number], maths: Maths) -> Soaked:
    return heated_with_drip_lost(raw.meat, x["juice"] * facts.meat_mass_g, maths)


def _simmered(facts: Facts, raw: Unheated, x: Mapping[str, Number], maths: Maths) -> Soaked:
    if raw.bath is None:
        return _steamed(facts, raw, x, maths)
    lost = Lost(x["juice"] * facts.meat_mass_g, x["boiled-off"] * raw.bath.water_g)
    return heated_in_marinade(raw.bath, raw.strip, lost, maths)


def _choose(at: Number, edge: float, below: Soaked, above: Soaked, maths: Maths) -> Soaked:
    kept = Kept(
        *(maths.choose(at, edge, a, b) for a, b in zip(below.kept, above.kept, strict=True))
    )
    rest = (maths.choose(at, edge, a, b) for a, b in zip(below[1:], above[1:], strict=True))
    return Soaked(kept, *rest)


def _fate(facts: Facts, part: Part, soaked: Soaked, x: Mapping[str, Number], maths: Maths) -> Fate:
    """Return what becomes of a part: only what is poured away or runs off is lost."""
    if part is Part.MARINADE:
        if not facts.poured_away or facts.heat is HeatStep.BOILED_DOWN:
            return Fate(_ALL, 1.0, 1.0)
        kept = Kept(*(maths.smaller(share * x["model"], 1.0) for share in soaked.kept))
        oil = maths.smaller(soaked.film_share * x["oil-factor"], 1.0)
        return Fate(kept, x["suspended-kept"], oil)
    if facts.has(Part.MARINADE):
        return Fate(_ALL, 1.0, 1.0)
    # What is rubbed on or mixed in can only lose: the doubt lies on the loss.
    kept = Kept(*(maths.larger(1 - (1 - share) / x["model"], 0.0) for share in soaked.kept))
    return Fate(kept, 1.0, 1.0)


def _matter(part: Contents, fate: Fate) -> Number:
    return (
        fate.kept.salt * part.salt
        + fate.kept.sucrose * part.sucrose
        + fate.kept.hexose * part.hexose
        + fate.kept.other * part.other
        + fate.suspended * part.suspended
        + fate.oil * part.oil
    )


def _solubles_lost(facts: Facts, soaked: Soaked, x: Mapping[str, Number]) -> Number:
    if not facts.has(Part.MARINADE):
        return 0.0
    return x["solubles"] * facts.meat_mass_g * (1 - soaked.own_solubles_kept)


def _figures(
    facts: Facts,
    raw: Unheated,
    fates: Mapping[Part, Fate],
    soaked: Soaked,
    x: Mapping[str, Number],
) -> dict[str, Number]:
    stays = 1 - x["drip"]
    found = _own(facts, soaked, x)
    for part, held in raw.parts.items():
        kept = fates[part].kept
        found["sodium_mg"] += kept.salt * held.sodium_mg * stays
        found["sugars_g"] += (kept.sucrose * held.sucrose + kept.hexose * held.hexose) * stays
        found["added_sugars_g"] += (
            kept.sucrose * held.added_sucrose + kept.hexose * held.added_hexose
        ) * stays
        _add_carried(found, raw.carried[part], fates[part], stays)
    found["carbohydrate_g"] = found["sugars_g"] + found.pop("starch_g")
    found["energy_kcal"] = sum(found[name] * each for name, each in _ENERGY.items())
    return {name: found[name] for name in FIGURES}


def _own(facts: Facts, soaked: Soaked, x: Mapping[str, Number]) -> dict[str, Number]:
    """Return what the meat itself brings to the finished batch."""
    hundreds = facts.meat_mass_g / 100
    meat = {name: (amount or 0.0) * hundreds for name, amount in facts.meat.items()}
    own_kept = soaked.own_kept if not _all_kept(facts) else 1.0
    fat_stays = 1 - x["fat-drip"]
    starch = max(meat["carbohydrate_g"] - meat["sugars_g"], 0.0)
    return {
        "sodium_mg": meat["sodium_mg"] * x["own-sodium"] * own_kept,
        "potassium_mg": meat["potassium_mg"] * own_kept,
        "protein_g": meat["protein_g"] * x["raw-protein"],
        "fat_g": meat["fat_g"] * fat_stays,
        "saturated_g": meat["saturated_g"] * fat_stays,
        "sugars_g": meat["sugars_g"],
        "added_sugars_g": 0.0,
        "starch_g": starch,
        "fiber_g": meat["fiber_g"],
        "cholesterol_mg": meat["cholesterol_mg"],
        "calcium_mg": meat["calcium_mg"],
        "iron_mg": meat["iron_mg"],
        "vitamin_d_ug": meat["vitamin_d_ug"],
    }


def _all_kept(facts: Facts) -> bool:
    return facts.heat is HeatStep.BOILED_DOWN or (
        facts.has(Part.MARINADE) and not facts.poured_away
    )


def _add_carried(
    found: dict[str, Number], carried: Sequence[Carried], fate: Fate, stays: Number
) -> None:
    """Add what the ingredients of a part bring beside salt and sugars, each class by its fate."""
    dissolved = fate.kept.other * stays
    shares = {
        "fat_g": fate.oil,
        "saturated_g": fate.oil,
        "fiber_g": fate.suspended,
        "potassium_mg": fate.kept.salt * stays,
    }
    for one in carried:
        share = shares.get(one.figure, dissolved if one.dissolved else fate.suspended)
        found[one.figure] += share * one.brought
