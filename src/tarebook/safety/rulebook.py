"""The published rules as data: one line of ``reference/rules.csv`` each, with who says so.

The figures of a rule stand in ``reference/rule-figures.csv``, temperatures in both scales; what
foods a rule is about, in ``reference/rule-foods.csv``. A check compares with these figures and with
no others, and a rule's line is taken apart only when somebody asks for it.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from tarebook.figures.table import Row, cells, keys, number, rows_of
from tarebook.findings import AskedWrongly
from tarebook.tuples import NamedTuple


class RuleFigure(NamedTuple):
    """One figure of a rule.

    Attributes:
        quantity: what is limited (``meat-inside``, ``soak``).
        relation: ``at least``, ``at most``, ``equal`` or ``between``.
        low: the figure, or the lower one of two; None where only an upper limit is given.
        high: the upper limit, or None.
        unit: of low and high; temperatures stand in ``degF``.
        low_c, high_c: the same temperatures [degC]; None for other quantities.
    """

    quantity: str
    relation: str
    low: float | None
    high: float | None
    unit: str
    low_c: float | None
    high_c: float | None

    @property
    def limit(self) -> float:
        """The figure a batch is held against: the upper of ``at most``, else the lower."""
        found = self.high if self.relation == "at most" else self.low
        if found is None:
            raise AskedWrongly(f"{self.quantity} has no such limit")
        return found


class Rule(NamedTuple):
    """One published rule, in our own words.

    Attributes:
        id: what findings cite.
        topic: heat, dryer, soak, nitrite ...
        applies_to: the meats, batches or people it is about.
        body: who says so.
        document: where, by its own title or by our description of it.
        section: place in the document.
        year: of the document, ``undated`` where it bears none.
        source: id in ``sources.toml`` or ``sources-safety.toml``.
        status: S its own text was read, S2 a copy or quotation, M from memory, D worked out here.
        statement: what it says.
        figures: its figures by quantity.
    """

    id: str
    topic: str
    applies_to: str
    body: str
    document: str
    section: str
    year: str
    source: str
    status: str
    statement: str
    figures: Mapping[str, RuleFigure]

    @property
    def citation(self) -> str:
        """Who says so, on one line: body, document, and the year where it bears one."""
        year = "" if self.year == "undated" else f", {self.year}"
        memory = ", from memory" if self.status == "M" and self.source != "from-memory" else ""
        return f"{self.body}, {self.document}{year}{memory}"


@cache
def rule(id: str) -> Rule:
    """Return one rule by its id.

    Args:
        id: as findings cite it: the first column of ``rules.csv``.

    Raises:
        AskedWrongly: there is no such rule.
    """
    rows = rows_of("rules.csv", id)
    if not rows:
        raise AskedWrongly(f'no rule has the id "{id}"')
    figures = (_figure(row) for row in rows_of("rule-figures.csv", id))
    return Rule(**cells("rules.csv", rows[0]), figures={one.quantity: one for one in figures})


def citations(ids: str) -> str:
    """Return who says so, for one rule or for several joined by ``; ``, each body once.

    Example:
        >>> citations("marinade-discarded; marinade-boiled")
        'National Center for Home Food Preservation, pages on handling raw meat and game; USDA, consumer pages on marinating'
    """  # noqa: E501 (an example is printed on one line)
    return "; ".join(dict.fromkeys(rule(one).citation for one in ids.split("; ")))


def rule_ids() -> tuple[str, ...]:
    """Return the id of every rule, in table order."""
    return keys("rules.csv")


@cache
def limit(id: str, quantity: str) -> float:
    """Return the figure that a batch is held against, in the unit of the table.

    Args:
        id: of the rule.
        quantity: which of its figures; the lower end where two are given.
    """
    return _of(id, quantity).limit


@cache
def span(id: str, quantity: str) -> tuple[float, float]:
    """Return both ends of a figure that is given as two, in the unit of the table.

    Example:
        >>> span("oven-after", "dryer-air")
        (145.0, 155.0)
    """
    found = _of(id, quantity)
    if found.low is None or found.high is None:
        raise AskedWrongly(f'the rule "{id}" gives no two figures for "{quantity}"')
    return found.low, found.high


@cache
def degrees(id: str, quantity: str) -> str:
    """Return a temperature of a rule in both scales.

    Example:
        >>> degrees("dryer-after-heat", "dryer-air")
        '130 to 140 °F (54 to 60 °C)'
    """
    found = _of(id, quantity)
    return f"{_ends(found.low, found.high)} °F ({_ends(found.low_c, found.high_c)} °C)"


def both_scales(fahrenheit: float) -> str:
    """Return a cook's own temperature [degF] in both scales, whole degrees.

    Example:
        >>> both_scales(130)
        '130 °F (54 °C)'
    """
    return f"{fahrenheit:.0f} °F ({(fahrenheit - 32) / 1.8:.0f} °C)"


def air_words(air_f: tuple[float, float]) -> str:
    """Return the air of a dryer in both scales: one figure, or from the coolest to the hottest.

    Example:
        >>> air_words((150, 155)), air_words((155, 155))
        ('150-155 °F (66-68 °C)', '155 °F (68 °C)')
    """
    low, high = (f"{end:.0f}" for end in air_f)
    cool, hot = (f"{(end - 32) / 1.8:.0f}" for end in air_f)
    if low == high:
        return both_scales(air_f[0])
    return f"{low}-{high} °F ({cool}-{hot} °C)"


@cache
def foods_of(id: str) -> frozenset[str]:
    """Return the keys of the foods that a rule is about by name."""
    return frozenset(row[1] for row in rows_of("rule-foods.csv", id))


def _of(id: str, quantity: str) -> RuleFigure:
    figures = rule(id).figures
    if quantity not in figures:
        raise AskedWrongly(f'the rule "{id}" has no figure "{quantity}"')
    return figures[quantity]


def _figure(row: Row) -> RuleFigure:
    _, quantity, relation, low, high, unit, low_c, high_c = row
    return RuleFigure(
        quantity=quantity,
        relation=relation,
        low=number(low),
        high=number(high),
        unit=unit,
        low_c=number(low_c),
        high_c=number(high_c),
    )


def _ends(low: float | None, high: float | None) -> str:
    return " to ".join(f"{end:.0f}" for end in (low, high) if end is not None)
