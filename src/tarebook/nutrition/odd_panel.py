"""What looks like a slip in a panel that somebody copied; each as a sentence that asks.

Nothing here is wrong for certain: what cannot be at all, ``recipe.panel`` refuses. The limits are
working values of ours, wide enough that the rows of the tables themselves raise no question.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tarebook.figures.measures import density
from tarebook.figures.nutrients import values
from tarebook.findings import Finding, Severity
from tarebook.nutrition.printed import PRINTED, serving_g, span
from tarebook.nutrition.rounding import printable
from tarebook.recipe.model import Panel, Recipe

_DENSITY_APART = 1.4
"""Times the food's own density, or one part in: a spoon of honey weighs 1.4 spoons of water."""

_SODIUM_APART, _SODIUM_LEAST_MG = 3.0, 500.0
"""Times the sodium of the food it is like, and what it must differ by [mg in 100 g]."""

_SUGARS_APART, _SUGARS_LEAST_G = 4.0, 20.0
_KCAL_APART, _KCAL_LEAST = 0.2, 5.0
"""A fifth, as far as a label may be off (21 CFR 101.9(g)(5)), and a rounding step."""

_KCAL_PER_G = {"carbohydrate_g": 4, "protein_g": 4, "fat_g": 9}
_PARTS_OF = (
    ("sugars_g", "carbohydrate_g"),
    ("fiber_g", "carbohydrate_g"),
    ("saturated_g", "fat_g"),
)


def odd_figures(panel: Panel, food_key: str) -> tuple[str, ...]:
    """Return what looks like a slip, in the order of a panel.

    Args:
        panel: as copied.
        food_key: key of the food that it is like.

    Returns:
        Sentences, each naming the figure; none where all of it is likely.

    Example:
        >>> salty = Panel(serving_g=Fraction(17), sodium_mg=Fraction(5750))
        >>> print(*odd_figures(salty, "soy-sauce"))
        sodium 5,750 mg in 17 g; soy-sauce has 934 mg: is it 575 mg?
    """
    found = [*_weight(panel, food_key), *_energy(panel, food_key)]
    grams = serving_g(panel, food_key)
    if grams:
        found += [*_sodium(panel, food_key, grams), *_sugars(panel, food_key, grams)]
    return (*found, *_parts(panel))


def off_label(panel: Panel) -> tuple[str, ...]:
    """Return a remark on each figure that no US label prints; nothing is asked of them.

    Args:
        panel: as copied.

    Example:
        >>> print(*off_label(Panel(serving_g=Fraction(17), sodium_mg=Fraction(575))))
        sodium 575 mg is none that US labels round to; taken as 570 to 580 mg
    """
    found = []
    for name in PRINTED if panel.rounded else ():
        printed: Fraction | None = getattr(panel, name)
        if printed is None or name in panel.under or printable(name, printed):
            continue
        low, high = (f"{end:,.10g}" for end in span(panel, name))
        unit = {"ug": "mcg"}.get(name.rpartition("_")[2], name.rpartition("_")[2])
        found.append(
            f"{_named(name)} {_said(printed)} {unit} is none that US labels round to; "
            f"taken as {low} to {high} {unit}"
        )
    return tuple(found)


def odd_panels(recipe: Recipe) -> Iterator[Finding]:
    """Yield what looks like a slip in the panels that stand in a recipe itself.

    Those of the cook's own bottles were asked about when they were added.

    Args:
        recipe: as read from its file.

    Yields:
        Warnings, each at the line of its panel; a figure that no label prints is a note.
    """
    for one in recipe.ingredients:
        if one.own_panel is None:
            continue
        place = recipe.place(f"{one.path}.panel")
        for asks in odd_figures(one.own_panel, one.food):
            yield Finding(place=place, severity=Severity.WARNING, code="odd-panel", message=asks)
        for told in off_label(one.own_panel):
            yield Finding(place=place, severity=Severity.NOTE, code="off-label", message=told)


def _weight(panel: Panel, food_key: str) -> Iterator[str]:
    """Ask where a spoon weighs what no such food does, or nobody knows what it weighs."""
    known = density(food_key)
    if panel.serving_ml and panel.serving_g is None and known is None:
        yield (
            f"no weight is known for a spoon of {food_key}: without the grams of its serving "
            "none of its figures can be used"
        )
    own = panel.g_per_ml
    if own is None or panel.serving_ml is None or known is None:
        return
    if not 1 / _DENSITY_APART <= own / known.g_per_ml <= _DENSITY_APART:
        usual = panel.serving_ml * known.g_per_ml
        yield (
            f"{_said(panel.serving_ml)} mL at {_said(panel.serving_g)} g is {float(own):.2g} g a "
            f"mL; {food_key} would weigh {float(usual):.3g} g: is the serving copied right?"
        )


def _energy(panel: Panel, food_key: str) -> Iterator[str]:
    """Ask where the calories are far from what carbohydrate, protein and fat bring."""
    if panel.energy_kcal is None or any(getattr(panel, name) is None for name in _KCAL_PER_G):
        return
    least = sum(_low(panel, name) * kcal for name, kcal in _KCAL_PER_G.items())
    least -= 4 * (_high(panel, "fiber_g") if panel.fiber_g is not None else 0)
    most = sum(_high(panel, name) * kcal for name, kcal in _KCAL_PER_G.items())
    low, high = span(panel, "energy_kcal")
    under = high < least * (1 - _KCAL_APART) - _KCAL_LEAST
    over = low > most * (1 + _KCAL_APART) + _KCAL_LEAST
    if under or (over and not _burns_more(food_key)):
        told = sum(float(getattr(panel, name)) * kcal for name, kcal in _KCAL_PER_G.items())
        yield (
            f"{_said(panel.energy_kcal)} kcal is far from {told:.0f}: carbohydrate and protein "
            "bring 4 a gram, fat 9. Is one of them copied wrongly?"
        )


def _burns_more(food_key: str) -> bool:
    """Whether a food has calories that these three do not bring: alcohol, or acid."""
    row = values(food_key)
    brought = sum((row[name] or 0.0) * kcal for name, kcal in _KCAL_PER_G.items())
    return (row["energy_kcal"] or 0.0) > brought * (1 + _KCAL_APART) + _KCAL_LEAST


def _sodium(panel: Panel, food_key: str, grams: float) -> Iterator[str]:
    """Ask where the sodium is many times, or a small part, of what the food it is like has."""
    row = values(food_key)["sodium_mg"]
    if panel.sodium_mg is None or row is None:
        return
    usual = row * grams / 100
    own = float(panel.sodium_mg)
    if not _apart(own, usual, _SODIUM_APART, _SODIUM_LEAST_MG * grams / 100):
        return
    meant = own / 10 if own > usual else own * 10
    tail = f": is it {meant:,g} mg?" if usual / 2 < meant < usual * 2 else "; is it copied right?"
    yield f"sodium {own:,g} mg in {grams:.3g} g; {food_key} has {_about(usual)} mg{tail}"


def _sugars(panel: Panel, food_key: str, grams: float) -> Iterator[str]:
    row = values(food_key)["sugars_g"]
    if panel.sugars_g is None or row is None:
        return
    usual, own = row * grams / 100, float(panel.sugars_g)
    if _apart(own, usual, _SUGARS_APART, _SUGARS_LEAST_G * grams / 100):
        yield (
            f"sugars {own:,g} g in {grams:.3g} g; {food_key} has {_about(usual)} g: "
            "is it like another food?"
        )


def _apart(own: float, usual: float, times: float, least: float) -> bool:
    return abs(own - usual) > least and not usual / times <= own <= usual * times


def _about(figure: float) -> str:
    return f"{float(f'{figure:.3g}'):,g}"


def _parts(panel: Panel) -> Iterator[str]:
    """Ask where a part is more than its whole, whatever rounding left open."""
    for part, whole in _PARTS_OF:
        if getattr(panel, part) is None or getattr(panel, whole) is None:
            continue
        if _low(panel, part) >= _high(panel, whole):
            yield (
                f"{_named(part)} {_said(getattr(panel, part))} g are more than "
                f"{_named(whole)} {_said(getattr(panel, whole))} g, which they are part of"
            )


def _low(panel: Panel, name: str) -> float:
    return span(panel, name)[0]


def _high(panel: Panel, name: str) -> float:
    return span(panel, name)[1]


def _named(figure: str) -> str:
    short = figure.rpartition("_")[0].replace("_", " ")
    return {"saturated": "saturated fat", "energy": "calories"}.get(short, short)


def _said(figure: Fraction | None) -> str:
    return f"{float(figure or 0):,g}"
