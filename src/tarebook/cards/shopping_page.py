"""What ``shop`` prints: what to buy, and what the batch costs by the cook's own prices."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from tarebook.cards.lines import Line, Style, clean, row, table, wrap
from tarebook.quantities.words import format_mass_g
from tarebook.safety.case import Case
from tarebook.safety.game import freezing_rule
from tarebook.safety.rulebook import citations, degrees, limit
from tarebook.safety.soak import raw_days
from tarebook.shopping import Cost, Need

COLUMNS = 80
_WIDTHS = (24, 24, 28)
NO_PRICES = (
    "No price is known. Write what packs cost in {file}, under [packs], "
    'as in soy-sauce = {{ size = "15 fl oz", price = 3.49 }}.'
)


def shopping_page(
    needs: Sequence[Need],
    cost: Cost,
    each: Sequence[tuple[str, Cost]],
    *,
    currency: str,
    file: str,
    raw: Sequence[str] = (),
) -> Iterator[Line]:
    """Yield the page, 80 columns.

    Args:
        needs: food by food, of all recipes together.
        cost: of all of them.
        each: title of a recipe, and what its batch costs by itself.
        currency: the cook's sign for money, or empty.
        file: where the cook's list is kept, for what to do next.
        raw: how raw meat is bought, of each kind.
    """
    for title, _ in each:
        yield from (Line(text, Style.TITLE) for text in wrap(title, COLUMNS))
    buy = [one for one in needs if one.buy]
    yield from _rows("Buy", "needs", "ask for", [(one, one.buy) for one in buy])
    for words in raw:
        yield Line()
        yield from _say(words)
    house = [one for one in needs if not one.buy]
    yield from _rows("In the house", "needs", "has", [(one, _held(one)) for one in house])
    yield Line()
    yield from _cost(cost, each, currency, file)


def raw_words(case: Case) -> tuple[str, ...]:
    """Return how raw meat or fish is bought: when, how lean, frozen first; nothing of others.

    Source:
        Rules ``raw-holding``, ``pork-freezing``, ``fish-freezing`` and ``ground-meat``.
    """
    if not case.is_flesh:
        return ()
    plain = case.ground and "ground" not in case.food.name
    name = f"ground {case.food.name}" if plain else case.food.name
    days = f"{raw_days(case):g} days at most"
    before = f"in the refrigerator before it is heated [{citations('raw-holding')}]"
    rule = freezing_rule(case)
    if rule:
        cold, time = degrees(rule, "freezer"), f"{limit(rule, 'time'):g} days"
        told = [
            f"{_big(name)} is frozen first, {time} at {cold} or below [{citations(rule)}]: buy it "
            f"that long before, or frozen so. Thawed, it lies {days} {before}."
        ]
    else:
        told = [f"Raw, {name} lies {days} {before}: buy it that late, or frozen."]
    if case.ground and case.is_meat:
        told.append(
            f"It is at least {limit('ground-meat', 'lean'):g} % lean "
            f"[{citations('ground-meat')}]: what is fatter is not bought for this."
        )
    return tuple(told)


def shopping_data(
    needs: Sequence[Need],
    cost: Cost,
    each: Sequence[tuple[str, Cost]],
    *,
    currency: str,
    raw: Sequence[str] = (),
) -> dict[str, Any]:
    """Return the same as plain data; of several recipes, an ounce has a cost in each alone."""
    return {
        "needs": [
            {
                "food": one.food.key,
                "names": list(one.names),
                "needed_g": _number(one.mass_g),
                "measures": list(one.measures),
                "have_g": _number(one.have_g),
                "buy_g": _number(one.buy_g),
                "packs": one.packs,
                "buy": one.buy or None,
                "note": one.note or None,
            }
            for one in needs
        ],
        "raw_meat": list(raw),
        "currency": currency or None,
        "used": float(cost.used),
        "to_pay": float(cost.to_pay),
        "per_finished_ounce": _three(cost.per_ounce),
        "per_finished_pound": _three(cost.per_pound),
        "without_price": list(cost.without_price),
        "recipes": [
            {
                "title": title,
                "used": float(its.used),
                "per_finished_ounce": _three(its.per_ounce),
                "per_finished_pound": _three(its.per_pound),
            }
            for title, its in each
        ],
    }


def _big(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}"


def _rows(heading: str, needs: str, last: str, rows: Sequence[tuple[Need, str]]) -> Iterator[Line]:
    if not rows:
        return
    yield Line()
    yield Line(row((heading, needs, last), _WIDTHS), Style.HEAD)
    for one, words in rows:
        cells = (clean(one.food.name), _needed(one), words)
        yield from (Line(text) for text in table([cells], _WIDTHS))
        if one.note and one.note != "in the house":
            yield from (Line(t, Style.QUIET) for t in wrap(one.note, COLUMNS, first="    "))


def _needed(one: Need) -> str:
    weight = "" if one.mass_g is None else format_mass_g(one.mass_g)
    measures = " + ".join(one.measures)
    told = not weight or weight == measures or measures.endswith(", weighed")
    return measures if told else f"{measures} ({weight})"


def _held(one: Need) -> str:
    return "" if one.have_g is None else format_mass_g(one.have_g)


def _cost(cost: Cost, each: Sequence[tuple[str, Cost]], currency: str, file: str) -> Iterator[Line]:
    if not cost.used:
        yield from _say(NO_PRICES.format(file=file), Style.QUIET)
        return
    lead = "at least " if cost.without_price else ""
    yield from _say(
        f"Worth of what goes in: {lead}{_money(float(cost.used), currency)}. "
        f"To pay today: {lead}{_money(float(cost.to_pay), currency)}."
    )
    for title, its in each:
        if its.per_ounce is None or its.per_pound is None:
            continue
        least = "at least " if its.without_price else ""
        ounce, pound = (
            f"{least}{_money(one[1], currency)} ({_money(one[0], currency)} to "
            f"{_money(one[2], currency)})"
            for one in (its.per_ounce, its.per_pound)
        )
        of = f"{clean(title)}: a" if len(each) > 1 else "A"
        yield from _say(f"{of} finished ounce of 28.35 g: {ounce}. A finished pound: {pound}.")
    if cost.without_price:
        yield from _say(f"No price is known of: {'; '.join(cost.without_price)}.", Style.QUIET)


def _money(amount: float, currency: str) -> str:
    sign = f"{clean(currency)} " if currency[-1:].isalpha() else clean(currency)
    return f"{sign}{amount:,.2f}"


def _number(value: Any) -> float | None:
    return None if value is None else float(value)


def _three(found: tuple[float, float, float] | None) -> dict[str, float] | None:
    return None if found is None else dict(zip(("low", "likely", "high"), found, strict=True))


def _say(text: str, style: Style = Style.PLAIN) -> Iterator[Line]:
    return (Line(one, style) for one in wrap(text, COLUMNS))
