"""What one gram of an ingredient brings, sorted by what becomes of it in a soak.

Each gram is parted into water, and six classes of matter that travel differently:

- ``salt``: sodium and potassium salts, dissolved;
- ``sucrose`` and ``hexose``: sugars, dissolved, each at its own pace;
- ``other``: dissolved matter of sauces, juices and dairy;
- ``suspended``: pulp, fibre and spice grains, which never enter the meat;
- ``oil``: fat, which stays with the film.

Alcohol and acetic acid count as water: they dissolve, and leave in drying.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import TYPE_CHECKING

from tarebook.figures.foods import Food, food
from tarebook.figures.nutrients import values
from tarebook.figures.sugars import SugarSplit, split
from tarebook.figures.working import value
from tarebook.nutrition.draws import Even, Pert
from tarebook.recipe.model import Panel
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from tarebook.nutrition.printed import Printed

SODIUM_IN_SALT = 22.98977 / 58.443
"""Sodium in sodium chloride [g per g], from atomic weights."""

POTASSIUM_IN_CHLORIDE = 39.0983 / 74.5513
"""Potassium in potassium chloride [g per g], from atomic weights."""

_DISSOLVING = frozenset({"sauce", "acid", "liquid", "sweetener", "salt", "dairy"})
_NO_CHOLESTEROL = frozenset({"acid", "spice", "herb", "fresh", "sweetener", "starch", "salt"})
_VOLATILE_GAP_G = 1.5

# Figures carried through besides sodium and the sugars, and the class each goes with.
_WITH_REST = ("protein_g", "cholesterol_mg", "calcium_mg", "iron_mg", "vitamin_d_ug")
_WITH_OIL = ("fat_g", "saturated_g")
CARRIED = (*_WITH_REST, *_WITH_OIL, "fiber_g", "starch_g", "potassium_mg")
"""Figures of a makeup; ``starch_g`` is carbohydrate other than sugars."""


class Makeup(NamedTuple):
    """What one gram of an ingredient brings [g per g, or the unit of the name per g].

    Attributes:
        water, salt, sucrose, hexose, other, suspended, oil: parts of the gram [g].
        sodium_mg: sodium [mg]; its salt is in ``salt``.
        added: part of its sugars that counts as added [-].
        figures: the rest of the label's figures.
        missing: figures that nobody has stated for it.
        sodium_cv: relative standard deviation of its sodium figure [-], the rounding of a panel
            included; wider where its own bottle prints none, and a food's was borrowed.
        rough: whether its composition is a stand-in.
        sugars_off: true sugars over those here [-], as far as a panel's rounding leaves it open,
            or all that can be where nobody states them; None where the tables do.
        sugars_bounded: whether nobody states its sugars, but only the most they can be: half of
            that stands here, and what is not sugar is other carbohydrate.
        sodium_borrowed: whether its own bottle prints no sodium, so that it is a food's.
    """

    water: float
    salt: float
    sucrose: float
    hexose: float
    other: float
    suspended: float
    oil: float
    sodium_mg: float
    added: float
    figures: Mapping[str, float]
    missing: frozenset[str]
    sodium_cv: float
    rough: bool
    sugars_off: Even | Pert | None = None
    sugars_bounded: bool = False
    sodium_borrowed: bool = False


@lru_cache(maxsize=1024)
def makeup(food_key: str, panel: Panel | None = None) -> Makeup:
    """Return what one gram of a food brings; its own bottle's panel wins over the table.

    Args:
        food_key: key of the food.
        panel: figures printed on its bottle, or None where it is no bottle of the cook's own.

    Returns:
        Its makeup. What is not stated is left out of the sums and named in ``missing``.
    """
    item = food(food_key)
    read = {} if panel is None else _read(panel, food_key)
    printed = {name: one.amount for name, one in read.items()}
    per_100 = dict(composed(food_key, printed))
    bounded = _bounded_sugars(per_100)
    if bounded is not None:
        per_100["sugars_g"] = bounded.amount
    sugars = split(food_key)
    total_sugars = per_100["sugars_g"]
    water, rest, oil, salt = _parts(per_100, item)
    sucrose, hexose = _sugar_shares(sugars)
    sugar_g = total_sugars or 0.0
    fiber = min(per_100["fiber_g"] or 0.0, rest)
    dissolves = item.kind in _DISSOLVING
    return Makeup(
        water=water / 100,
        salt=salt / 100,
        sucrose=sugar_g * sucrose / 100,
        hexose=sugar_g * hexose / 100,
        other=(rest - fiber) / 100 if dissolves else 0.0,
        suspended=(fiber if dissolves else rest) / 100,
        oil=oil / 100,
        sodium_mg=(per_100["sodium_mg"] or 0.0) / 100,
        added=_added_share(sugars, printed, total_sugars),
        figures=_figures(per_100, item),
        missing=_missing(per_100, item, sugars, read),
        sodium_cv=_sodium_cv(item, read.get("sodium_mg"), borrowed=panel is not None),
        rough=per_100["water_g"] is None and item.kind != "salt",
        sugars_off=read["sugars_g"].rounding if "sugars_g" in read else bounded and bounded.off,
        sugars_bounded=bounded is not None,
        sodium_borrowed=panel is not None
        and bool(per_100["sodium_mg"])
        and "sodium_mg" not in read,
    )


def composed(food_key: str, printed: Mapping[str, float]) -> Mapping[str, float | None]:
    """Return the row of a food with a bottle's own figures in it, and what hangs on them.

    Its carbohydrate is at least its sugars, its ash goes up and down with its salt, and water
    takes up what they leave, so that 100 g stay 100 g.

    Args:
        food_key: key of the food that the bottle is like.
        printed: what its panel comes to, by figure, per 100 g; empty where there is none.

    Returns:
        Figures per 100 g, None where not known.
    """
    row = values(food_key)
    if not printed:
        return row
    found = {**row, **printed}
    carbohydrate, ash = found["carbohydrate_g"], row["ash_g"]
    if "sugars_g" in printed and carbohydrate is not None:
        found["carbohydrate_g"] = max(carbohydrate, printed["sugars_g"])
    if "sodium_mg" in printed and "ash_g" not in printed and ash is not None:
        salt = _salt_g(found)
        found["ash_g"] = max(ash - _salt_g(row) + salt, salt)
    if "water_g" not in printed:
        found["water_g"] = _room_for_water(row, found)
    return found


class _Bounded(NamedTuple):
    """Sugars that nobody states: the middle of what they can be [g], and how far off it may be."""

    amount: float
    off: Even | None


def _bounded_sugars(per_100: Mapping[str, float | None]) -> _Bounded | None:
    """Return unknown sugars as anything from none to all carbohydrate that is no fiber.

    None where they are stated, or where the carbohydrate is not known either.
    """
    carbohydrate = per_100["carbohydrate_g"]
    if per_100["sugars_g"] is not None or carbohydrate is None:
        return None
    most = max(carbohydrate - (per_100["fiber_g"] or 0.0), 0.0)
    return _Bounded(most / 2, Even(0.0, 2.0) if most else None)


def _salt_g(per_100: Mapping[str, float | None]) -> float:
    """Return sodium as its chloride [g per 100 g]."""
    return (per_100["sodium_mg"] or 0.0) / 1000 / SODIUM_IN_SALT


def dissolves(food_key: str) -> bool:
    """Whether the solids of a food dissolve in a marinade rather than hang in it."""
    return food(food_key).kind in _DISSOLVING


def _parts(per_100: Mapping[str, float | None], item: Food) -> tuple[float, float, float, float]:
    """Return water with volatiles, rest of the dry matter, oil and salts [g per 100 g]."""
    oil = per_100["fat_g"] or 0.0
    salts = _salt_g(per_100)
    salts += (per_100["potassium_mg"] or 0.0) / 1000 / POTASSIUM_IN_CHLORIDE
    water = per_100["water_g"]
    if water is None:
        water = 0.0 if item.kind == "salt" else 100 * _stand_in_water(item)
    dry = 100 - water
    stated = [per_100[name] for name in ("protein_g", "fat_g", "carbohydrate_g", "ash_g")]
    if item.kind in _DISSOLVING and None not in stated:
        found = sum(part or 0.0 for part in stated)
        if dry - found > _VOLATILE_GAP_G and found > 0:
            water, dry = 100 - found, found
    salts = min(salts, max(dry - oil, 0.0))
    rest = max(dry - oil - salts - (per_100["sugars_g"] or 0.0), 0.0)
    return water, rest, oil, salts


def _room_for_water(
    row: Mapping[str, float | None], per_100: Mapping[str, float | None]
) -> float | None:
    """Return the water of the food it is like, more or less of it as its own parts leave room.

    What the row does not make up to 100 g, as acid and alcohol, is left as it is there.
    """
    water = row["water_g"]
    if water is None:
        return None
    return min(max(water + _dry_g(row) - _dry_g(per_100), 0.0), 100.0)


def _dry_g(per_100: Mapping[str, float | None]) -> float:
    """Return the parts that are no water, as far as they are stated [g]."""
    parts = sum(per_100[name] or 0.0 for name in ("carbohydrate_g", "protein_g", "fat_g"))
    return parts + max(per_100["ash_g"] or 0.0, _salt_g(per_100))


def _stand_in_water(item: Food) -> float:
    key = "stand-in-water-thin" if item.kind in ("liquid", "acid") else "stand-in-water-sauce"
    return value(key if item.kind in _DISSOLVING else "stand-in-water-solid").likely


def _sugar_shares(sugars: SugarSplit) -> tuple[float, float]:
    """Return how a food's sugars part between the two paces; other double sugars go as sucrose.

    Where nobody says, half and half: it touches the pace only, never the total.
    """
    if sugars.sucrose is None or sugars.hexose is None:
        return 0.5, 0.5
    double = sugars.sucrose + (sugars.other or 0.0)
    both = double + sugars.hexose
    return (double / both, sugars.hexose / both) if both > 0 else (0.5, 0.5)


def _added_share(sugars: SugarSplit, printed: Mapping[str, float], sugars_g: float | None) -> float:
    """Return the part of the sugars that is added for certain."""
    if "added_sugars_g" in printed and sugars_g:
        return min(printed["added_sugars_g"] / sugars_g, 1.0)
    return sugars.added_low


def _figures(per_100: Mapping[str, float | None], item: Food) -> dict[str, float]:
    starch = (per_100["carbohydrate_g"] or 0.0) - (per_100["sugars_g"] or 0.0)
    found = {name: (per_100[name] or 0.0) / 100 for name in CARRIED if name in per_100}
    found["starch_g"] = max(starch, 0.0) / 100
    return {name: amount for name, amount in found.items() if amount}


def _missing(
    per_100: Mapping[str, float | None],
    item: Food,
    sugars: SugarSplit,
    read: Mapping[str, Printed],
) -> frozenset[str]:
    gone = {name for name, amount in per_100.items() if amount is None}
    if item.kind in _NO_CHOLESTEROL:
        gone.discard("cholesterol_mg")
    if item.kind == "salt" and not per_100["carbohydrate_g"]:
        gone -= {"calcium_mg", "iron_mg", "vitamin_d_ug"}
    unsure = not added_known(item.key, read)
    if "sugars_g" in gone or (unsure and per_100["sugars_g"]):
        gone.add("added_sugars_g")
    return frozenset(gone)


def added_known(food_key: str, read: Mapping[str, Printed]) -> bool:
    """Whether it is known how much of the sugars of a food, or of a bottle like it, is added.

    A food that holds no added sugars says so of its own sugars only: a bottle that prints more
    of them than a label may understate has got the rest from somewhere.

    Args:
        food_key: key of the food.
        read: what its bottle's panel comes to in 100 g; empty where there is none.
    """
    sugars, printed = split(food_key), read.get("sugars_g")
    if "added_sugars_g" in read or sugars.added == "all":
        return True
    if printed is None:
        return sugars.added_high <= sugars.added_low
    own = values(food_key)["sugars_g"]
    if sugars.added != "none":
        return False
    return own is None or printed.least <= own * value("label-allowance").likely


def _read(panel: Panel, food_key: str) -> Mapping[str, Printed]:
    from tarebook.nutrition.printed import read_panel  # few recipes print a panel

    return read_panel(panel, food_key)


def _sodium_cv(item: Food, printed: Printed | None, *, borrowed: bool) -> float:
    """Return how far a sodium figure may be off: a label's, a blend's, or a pure salt's."""
    if printed is not None:
        return float((value("sauce-sodium-cv").likely ** 2 + printed.cv**2) ** 0.5)
    if item.kind == "salt" and (values(item.key)["sodium_mg"] or 0) > 30_000:
        return value("pure-salt-sodium-cv").likely
    return value("borrowed-sodium-cv" if borrowed else "sauce-sodium-cv").likely
