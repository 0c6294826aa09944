"""One food: every figure with its source, and every measure with its grams."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from fractions import Fraction
from typing import Any

from tarebook.cards.lines import Line, Style, row, table, wrap
from tarebook.figures.foods import Food, food
from tarebook.figures.measures import density, measures
from tarebook.figures.nutrients import FIGURES, Figure, citation, nutrients
from tarebook.figures.sources import sources
from tarebook.figures.sugars import split

COLUMNS = 80


def food_page(name: str) -> Iterator[Line]:
    """Yield everything held about a food of the tables.

    Args:
        name: its key or any alias.

    Raises:
        FoodUnknown: no food goes by that name.
    """
    item = food(name)
    for text in wrap(f"{item.key}: {item.name}", COLUMNS):
        yield Line(text, Style.TITLE)
    if item.aliases:
        yield from say(f"also {', '.join(item.aliases)}")
    if item.advice:
        yield from say(item.advice[0].upper() + item.advice[1:] + ".")
    yield from _figures(item)
    yield from _sugars(item)
    yield from _measures(item)
    yield from _allergens(item)
    yield from _sources(item)


def food_data(name: str) -> dict[str, Any]:
    """Return the same as plain data."""
    item = food(name)
    known = density(item.key)
    return {
        "food": item.key,
        "name": item.name,
        "kind": item.kind,
        "aliases": list(item.aliases),
        "per_100_g": {key: _figure_data(one) for key, one in nutrients(item.key).items()},
        "density_g_per_ml": None if known is None else float(known.g_per_ml),
        "measures": [
            {
                "measure": one.measure,
                "form": one.form,
                "mass_g": float(one.grams),
                "volume_ml": None if one.volume_ml is None else float(one.volume_ml),
                "preferred": one.preferred,
                "source": one.source,
                "confidence": one.confidence,
                "note": one.note,
            }
            for one in measures(item.key)
        ],
        "allergens": list(item.allergens),
        "check_the_pack_for": list(item.check_for),
        "advice": item.advice,
    }


def say(text: str, lead: str = "") -> Iterator[Line]:
    """Yield a paragraph in lines that fit; one behind a lead is quiet."""
    return (Line(one, Style.QUIET if lead else Style.PLAIN) for one in
            wrap(text, COLUMNS, first=lead, rest=lead))  # fmt: skip


def file_lines(said: str, file: str) -> Iterator[Line]:
    """Yield what is said of a file, and the file on a line of its own."""
    yield from say(said)
    yield from say(file, lead="  ")


def figure_name(figure: str) -> str:
    """Return a figure in words: ``vitamin_d_ug`` is vitamin d."""
    return figure.rsplit("_", 1)[0].replace("_", " ")


def three(amount: float) -> str:
    """Return about three digits of a figure that is reckoned, never fewer than its units."""
    return f"{amount:,.0f}" if amount >= 100 else f"{amount:.3g}"


def number(amount: Fraction | None) -> float | None:
    """Return an exact amount as plain data."""
    return None if amount is None else float(amount)


def _figure_data(one: Figure) -> dict[str, Any]:
    return {
        "value": one.value,
        "unit": one.unit,
        "source": one.source,
        "confidence": one.confidence,
        "note": one.note,
        "low": one.low,
        "high": one.high,
    }


def _figures(item: Food) -> Iterator[Line]:
    yield Line()
    source, place, description = citation(item.key)
    yield Line(f"Per 100 g ({' '.join(part for part in (source, place) if part)})", Style.HEAD)
    yield from (Line(text, Style.QUIET) for text in wrap(description, COLUMNS))
    found = nutrients(item.key)
    common = _common_note(found.values())
    yield from say(common)
    for key in FIGURES:
        one = found[key]
        value = "not known" if one.value is None else f"{one.value:,g} {one.unit}"
        tail = "" if one.source == source else one.source
        yield Line(row((figure_name(key), value, tail), (16, 14, 20), right=(1,)))
        for text in (one.note, _spread(one)):
            if text and text != common:
                yield from say(text, lead=" " * 4)


def _common_note(found: Collection[Figure]) -> str:
    """Return the note that most figures share, which is said once; empty if there is none."""
    notes = [one.note for one in found]
    return next((note for note in notes if note and 2 * notes.count(note) > len(notes)), "")


def _spread(one: Figure) -> str:
    if one.low is None and one.high is None:
        return ""
    if one.low is None:
        return f"at most {one.high:,g} {one.unit}"
    return f"products run from {one.low:,g} to {one.high:,g} {one.unit}"


def _sugars(item: Food) -> Iterator[Line]:
    if not (nutrients(item.key)["sugars_g"].value or 0):
        return
    found = split(item.key)
    if found.sucrose is None or found.hexose is None:
        shares = "split not known"
    else:
        parts = (
            ("sucrose", found.sucrose),
            ("glucose and fructose", found.hexose),
            ("other", found.other or 0),
        )
        shares = ", ".join(f"{name} {part:.0%}" for name, part in parts if part)
    yield from say(f"sugars: {shares}; added: {found.added} [{found.source}, {found.confidence}]")


def _measures(item: Food) -> Iterator[Line]:
    found = measures(item.key)
    yield Line()
    yield Line("Measures", Style.HEAD)
    if not found:
        yield from say("none held: weigh it")
    for one in found:
        mark = "*" if one.preferred else " "
        grams = f"{float(one.grams):g} g"
        # A recollection has no source beside itself: it is told once.
        by = dict.fromkeys((one.source.replace("from-memory", "from memory"), one.confidence))
        cells = (mark, one.measure, grams, ", ".join(by))
        yield from (Line(text) for text in table([cells], (1, 29, 9, 35), right=(2,)))
        if one.note:
            yield from say(one.note, lead=" " * 5)
    if any(one.preferred for one in found):
        yield Line("* used to convert", Style.QUIET)


def _allergens(item: Food) -> Iterator[Line]:
    if not (item.allergens or item.other_allergens or item.check_for):
        return
    yield Line()
    if item.allergens:
        yield from say(f"Allergens by kind: {', '.join(item.allergens)}")
    if item.other_allergens:
        yield from say(f"Listed in other countries: {', '.join(item.other_allergens)}")
    if item.check_for:
        yield from say(f"Check the pack for: {', '.join(item.check_for)}")


def _sources(item: Food) -> Iterator[Line]:
    used = {one.source for one in nutrients(item.key).values()}
    used |= {one.source for one in measures(item.key)}
    known = sources()
    yield Line()
    yield Line("Sources", Style.HEAD)
    for source in sorted(used):
        yield from say(f"{source}: {known[source]}", lead="  ")
