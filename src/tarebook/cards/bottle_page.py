"""A bottle of the cook's own: what each printed figure is taken to mean, and what is borrowed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from tarebook.cards.figures import NOT_KNOWN
from tarebook.cards.food_page import COLUMNS, figure_name, food_data, number, say, three
from tarebook.cards.lines import Line, Style, clean, table, wrap
from tarebook.figures.foods import food
from tarebook.figures.measures import density
from tarebook.figures.nutrients import nutrients
from tarebook.figures.sources import sources
from tarebook.nutrition.draws import Pert
from tarebook.nutrition.makeup import added_known, composed
from tarebook.nutrition.printed import PRINTED, Printed, read_panel, serving_g, span
from tarebook.quantities.number import format_fraction
from tarebook.recipe.bottle import OWN
from tarebook.recipe.model import Bottle, Pack, Panel

_UNITS = {"g": "g", "mg": "mg", "ug": "µg", "kcal": "kcal"}
_WIDTHS = (16, 12, 48)
_HUNDRED_G = 100
_CHANGED = 0.005
_NOT_PRINTED = "not printed, and not as the food that it is like"
_HANGS_ON = {
    "water_g": "what the rest leaves room for",
    "carbohydrate_g": "as much as its sugars",
    "ash_g": "by its own salt",
}
"""Figures that are taken from the tables as far as what is printed allows, and why."""

_NO_FIGURE = {
    "value": None,
    "unit": "g",
    "source": "",
    "confidence": "",
    "note": _NOT_PRINTED,
    "low": None,
    "high": None,
}


def bottle_page(bottle: Bottle) -> Iterator[Line]:
    """Yield everything known of a bottle, 80 columns."""
    yield from _paragraph(clean(f"{bottle.key}: {bottle.name}"), Style.TITLE)
    yield from say(clean(f"{_origin(bottle)}, like {bottle.like}: what it does not print is taken "
                         "from there."))  # fmt: skip
    yield from _weight(bottle)
    yield from _figures(bottle)
    yield from _pack(bottle.pack)
    yield from _allergens(bottle)
    yield from _sources(bottle)


def bottle_data(bottle: Bottle) -> dict[str, Any]:
    """Return what ``food_data`` returns of a food, with the bottle's own in its place."""
    like = food_data(bottle.like)
    read = _read(bottle)
    panel = bottle.panel
    own = None if panel is None or panel.g_per_ml is None else float(panel.g_per_ml)
    contains = bottle.contains is not None
    return {
        **like,
        "food": bottle.key,
        "name": bottle.name,
        "aliases": [],
        "per_100_g": {
            name: _figure_data(bottle, name, read.get(name), like["per_100_g"].get(name))
            for name in PRINTED
            if name in read or name in like["per_100_g"] or _added_unknown(bottle, name)
        },
        "density_g_per_ml": like["density_g_per_ml"] if own is None else own,
        "allergens": list(bottle.contains or ()) if contains else like["allergens"],
        "check_the_pack_for": list(bottle.check) if contains else like["check_the_pack_for"],
        "bottle": {
            "like": bottle.like,
            "serving_ml": None if panel is None else number(panel.serving_ml),
            "serving_g": None if panel is None else number(panel.serving_g),
            "pack": None if bottle.pack is None else str(bottle.pack.size),
            "price": None if bottle.pack is None else number(bottle.pack.price),
            "from": bottle.origin,
            "id": bottle.origin_id,
            "date": bottle.origin_date,
        },
    }


def printed_words(panel: Panel, figure: str) -> str:
    """Return a printed figure and what it may stand for: ``printed 580 mg: 575 to 585``.

    Args:
        panel: as printed.
        figure: its name, as in ``PRINTED``; the panel must print it.
    """
    printed: Fraction = getattr(panel, figure)
    less = figure in panel.under
    said = f"printed {'<' if less else ''}{_short(printed)} {_unit(figure)}"
    if not panel.rounded:
        return said
    low, high = span(panel, figure)
    return f"{said}: {low:,.10g} to {'under ' if less or not printed else ''}{high:,.10g}"


def _origin(bottle: Bottle) -> str:
    place = f" {bottle.origin_id}" if bottle.origin_id else ""
    day = f", {bottle.origin_date}" if bottle.origin_date else ""
    origin = "Your own bottle" if bottle.origin == OWN else bottle.origin
    return f"{origin}{place}{day}"


def _read(bottle: Bottle) -> dict[str, Printed]:
    return {} if bottle.panel is None else dict(read_panel(bottle.panel, bottle.like))


def _weight(bottle: Bottle) -> Iterator[Line]:
    """Yield the serving, and what turns a spoon of it into grams."""
    panel, known = bottle.panel, density(bottle.like)
    if panel is not None and panel.g_per_ml is not None:
        own = f"{float(panel.g_per_ml):.4g} g/mL from its panel"
        other = "" if known is None else f" ({bottle.like}: {float(known.g_per_ml):.4g})"
        yield from say(f"Serving {serving_words(panel)}; {own}{other}.")
        return
    serving = "" if panel is None else f"Serving {serving_words(panel)}; "
    if known is None:
        tail = f"a spoon of {bottle.like} has no weight here: weigh it"
    else:
        tail = f"{float(known.g_per_ml):.4g} g/mL taken from {bottle.like}"
    yield from say(f"{serving}{tail}.")


def serving_words(panel: Panel) -> str:
    """Return a serving by measure and weight: ``15 mL, 17 g``."""
    parts = ((panel.serving_ml, "mL"), (panel.serving_g, "g"))
    return ", ".join(f"{_short(amount)} {unit}" for amount, unit in parts if amount is not None)


def _figures(bottle: Bottle) -> Iterator[Line]:
    yield Line()
    yield Line("Per 100 g", Style.HEAD)
    like, read, unused = nutrients(bottle.like), _read(bottle), []
    for name in PRINTED:
        if name in read and bottle.panel is not None:
            cells = _own_cells(bottle, bottle.panel, name, read[name])
        elif name in like:
            if bottle.panel is not None and getattr(bottle.panel, name) is not None:
                unused.append(figure_name(name))
            cells = _taken_cells(bottle, name)
        elif _added_unknown(bottle, name):
            cells = figure_name(name), NOT_KNOWN, _NOT_PRINTED
        else:
            continue
        yield from (Line(text) for text in table([cells], _WIDTHS, right=(1,)))
    if unused:
        yield from say(
            f"Not used: {', '.join(unused)}. Its serving has no weight; print the grams of it too."
        )


def _own_cells(bottle: Bottle, panel: Panel, name: str, one: Printed) -> tuple[str, str, str]:
    words = printed_words(panel, name)
    if not panel.rounded:
        words = f"{bottle.origin} {bottle.origin_id}".strip()
    if isinstance(one.rounding, Pert):
        words += f"; leans to {bottle.like}"
    amount = three(one.amount) if panel.rounded else f"{one.amount:,.10g}"
    return figure_name(name), f"{amount} {_unit(name)}", words


def _taken_cells(bottle: Bottle, name: str) -> tuple[str, str, str]:
    one = nutrients(bottle.like)[name]
    words = f"taken from {bottle.like} ({one.source})"
    if one.value is None:
        return figure_name(name), "not known", f"nor by {bottle.like}"
    held = _composed(bottle)[name]
    if held is not None and abs(held - one.value) >= _CHANGED:
        return figure_name(name), f"{three(held)} {one.unit}", _HANGS_ON[name]
    if name == "sodium_mg" and one.value:
        words = f"borrowed from {bottle.like} ({one.source}): its own may lie far from it"
    return figure_name(name), f"{one.value:,g} {one.unit}", words


def _composed(bottle: Bottle) -> Mapping[str, float | None]:
    return composed(bottle.like, {name: one.amount for name, one in _read(bottle).items()})


def _added_unknown(bottle: Bottle, name: str) -> bool:
    """Whether this is its added sugars, of which neither its panel nor the tables tell."""
    read = _read(bottle)
    return name == "added_sugars_g" and "sugars_g" in read and not added_known(bottle.like, read)


def _figure_data(
    bottle: Bottle, name: str, one: Printed | None, like: dict[str, Any] | None
) -> dict[str, Any]:
    if one is None or bottle.panel is None:
        if like is None:
            return _NO_FIGURE
        taken = {**like, "note": f"taken from {bottle.like}"}
        held = _composed(bottle)[name]
        if held is not None and like["value"] is not None and abs(held - like["value"]) >= _CHANGED:
            return taken | {"value": held, "note": _HANGS_ON[name], "low": None, "high": None}
        return taken
    low, high = span(bottle.panel, name)
    by = _HUNDRED_G / (serving_g(bottle.panel, bottle.like) or _HUNDRED_G)
    return {
        "value": one.amount,
        "unit": _unit(name),
        "source": bottle.origin,
        "confidence": "printed" if bottle.panel.rounded else "measured",
        "note": printed_words(bottle.panel, name),
        "low": low * by,
        "high": high * by,
    }


def _pack(pack: Pack | None) -> Iterator[Line]:
    if pack is None:
        return
    yield Line()
    price = "" if pack.price is None else f", {float(pack.price):,.2f} a pack"
    yield from say(f"Pack: {clean(str(pack.size))}{price}")


def _allergens(bottle: Bottle) -> Iterator[Line]:
    yield Line()
    if bottle.contains is None:
        item = food(bottle.like)
        said = ", ".join(item.allergens) or "none"
        yield from say(f"Allergens: {said}, as {bottle.like} by its kind. Nobody copied the pack's "
                       "own list.")  # fmt: skip
        return
    yield from say(f"Allergens on the pack: {clean(', '.join(bottle.contains)) or 'none'}")
    if bottle.check:
        yield from say(f"May hold: {clean(', '.join(bottle.check))}")


def _sources(bottle: Bottle) -> Iterator[Line]:
    read = _read(bottle)
    used = {one.source for name, one in nutrients(bottle.like).items() if name not in read}
    known = sources()
    yield Line()
    yield Line("Sources", Style.HEAD)
    yield from say(clean(_origin(bottle)), lead="  ")
    for source in sorted(used):
        yield from say(f"{source}: {known[source]}", lead="  ")


def _unit(figure: str) -> str:
    return _UNITS[figure.rpartition("_")[2]]


def _short(amount: Fraction) -> str:
    """Return a printed amount as it was printed: digits where they end, otherwise a fraction."""
    text = f"{float(amount):,.10g}"
    exact = Fraction(text.replace(",", "")) == amount
    return text if exact else format_fraction(amount)


def _paragraph(text: str, style: Style) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
