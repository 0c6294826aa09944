"""What a marinade, a rub or a mix holds, each ingredient as far off as its draws say."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from tarebook.nutrition.facts import Facts, Line
from tarebook.nutrition.makeup import CARRIED, Makeup, dissolves
from tarebook.recipe.model import Part
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import Number, weighed_sum

_Weighed = Sequence[tuple[Line, Number]]


class Contents(NamedTuple):
    """What one part (marinade, rub, mix) holds [g, sodium mg].

    ``lines`` has each ingredient with how much of it is there for each gram that should be;
    ``unsweet`` those whose sugars nobody states, with how much of what was taken for sugar is none.
    """

    water: Number
    salt: Number
    sucrose: Number
    hexose: Number
    other: Number
    suspended: Number
    oil: Number
    sodium_mg: Number
    added_sucrose: Number
    added_hexose: Number
    lines: _Weighed
    unsweet: _Weighed = ()


class Carried(NamedTuple):
    """One figure that ingredients bring, of those that dissolve or of those that do not."""

    figure: str
    dissolved: bool
    brought: Number


def contents(facts: Facts, part: Part, x: Mapping[str, Number]) -> Contents:
    """Return what one part holds, each ingredient as far off as its draws say.

    Args:
        facts: what is known of the batch.
        part: marinade, rub or mix.
        x: the inputs; ``mass:<name>``, ``sodium:<food>`` and, where a panel prints them,
            ``sugars:<food>`` are read here.

    Returns:
        Sums over the ingredients of that part [g; sodium mg].
    """
    held = [(line, _measured(line, x)) for line in facts.lines if line.part is part]
    labelled = [
        (line, mass * x[f"sodium:{line.figures_of}"])
        for line, mass in held
        if line.makeup.sodium_mg
    ]

    sweet = [(line, _as_sweet(line, mass, x)) for line, mass in held]
    unsweet = [
        (line, mass - sugar)
        for (line, mass), (_, sugar) in zip(held, sweet, strict=True)
        if line.makeup.sugars_bounded
    ]

    def total(per_gram: Callable[[Makeup], float], of: _Weighed = held) -> Number:
        return weighed_sum((line.mass_g * per_gram(line.makeup), mass) for line, mass in of)

    return Contents(
        water=total(lambda one: one.water),
        salt=_salt(held, labelled),
        sucrose=total(lambda one: one.sucrose, sweet),
        hexose=total(lambda one: one.hexose, sweet),
        other=total(lambda one: one.other) + _not_sugar(unsweet, dissolved=True),
        suspended=total(lambda one: one.suspended) + _not_sugar(unsweet, dissolved=False),
        oil=total(lambda one: one.oil),
        sodium_mg=weighed_sum((line.mass_g * line.makeup.sodium_mg, m) for line, m in labelled),
        added_sucrose=total(lambda one: one.sucrose * one.added, sweet),
        added_hexose=total(lambda one: one.hexose * one.added, sweet),
        lines=held,
        unsweet=unsweet,
    )


def sugars_put_in(parts: Mapping[Part, Contents]) -> tuple[Number, Number]:
    """Return the sucrose and the hexoses of all parts [g]."""
    sucrose = sum((part.sucrose for part in parts.values()), 0.0)
    return sucrose, sum((part.hexose for part in parts.values()), 0.0)


def carried_by(part: Contents) -> list[Carried]:
    """Return what the ingredients of a part bring beside salt and sugars."""
    found = []
    for dissolved in (True, False):
        lines = [one for one in part.lines if dissolves(one[0].food) is dissolved]
        for name in CARRIED:
            brought = weighed_sum(
                (line.mass_g * (line.makeup.figures.get(name) or 0.0), mass) for line, mass in lines
            )
            if name == "starch_g":
                brought = brought + _not_sugar(part.unsweet, dissolved=dissolved)
            if not isinstance(brought, float) or brought:
                found.append(Carried(name, dissolved, brought))
    return found


def _measured(line: Line, x: Mapping[str, Number]) -> Number:
    """Return how much is in the bowl for each gram that should be [g per g]."""
    return x["measure"] * x[f"mass:{line.name}"]


def _not_sugar(unsweet: _Weighed, *, dissolved: bool) -> Number:
    """Return what was taken for sugars and is other carbohydrate [g]; below zero, the other way."""
    return weighed_sum(
        (line.mass_g * (line.makeup.sucrose + line.makeup.hexose), mass)
        for line, mass in unsweet
        if dissolves(line.food) is dissolved
    )


def _as_sweet(line: Line, mass: Number, x: Mapping[str, Number]) -> Number:
    """Return the mass that a line's sugars go by: as far off as a panel or nobody says."""
    return mass if line.makeup.sugars_off is None else mass * x[f"sugars:{line.figures_of}"]


def _salt(held: _Weighed, labelled: _Weighed) -> Number:
    """Return the salts of a part [g]; a food without a sodium figure has no label's doubt."""
    of_label = {id(line) for line, _ in labelled}
    plain = [(line, mass) for line, mass in held if id(line) not in of_label]
    return weighed_sum((line.mass_g * line.makeup.salt, m) for line, m in (*labelled, *plain))
