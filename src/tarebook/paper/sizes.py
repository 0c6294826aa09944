"""Card sizes: those of ``reference/card-sizes.csv`` by name, and any width by height.

A named card lies with its longer side across, as it stands in a box; a page stands upright.
``upright`` and ``sideways`` after a size turn it.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tarebook.figures.table import cells, table, words
from tarebook.findings import AmountError, AskedWrongly, nearest
from tarebook.tuples import NamedTuple

__all__ = ["HIGHEST_MM", "LOWEST_MM", "CardSize", "card_size", "size_names"]

LOWEST_MM, HIGHEST_MM = 69, 450
"""Below, measures do not fit beside names; above, it is a poster and no card."""
_LARGEST_CARD_MM = 180
_UNITS = {
    "in": Fraction(127, 5), "inch": Fraction(127, 5), "inches": Fraction(127, 5),
    '"': Fraction(127, 5), "″": Fraction(127, 5), "mm": Fraction(1), "cm": Fraction(10),
}  # fmt: skip
"""Millimeters in each unit of length that a size may be given in."""
_TURNS = ("upright", "sideways")


class CardSize(NamedTuple):
    """A card or a page.

    Attributes:
        name: as the table or the asker names it.
        width_mm, height_mm: its sides [mm].
        called: ``card``, printed front and back, or ``page``.
    """

    name: str
    width_mm: float
    height_mm: float
    called: str


def card_size(text: str) -> CardSize:
    """Return the size that somebody asks for.

    Args:
        text: ``4x6in``, ``A6``, ``letter sideways``, ``100x150 mm``, ``5 1/2 x 8 1/2 in``; the
            first of two numbers is the width, where the size is none of the table's.

    Returns:
        The size.

    Raises:
        AskedWrongly: it is no size, has no unit, or is too small or too large for a card.

    Example:
        >>> card_size("4x6 in").width_mm, card_size("4x6in upright").width_mm
        (152.4, 101.6)
    """
    plain = " ".join(text.casefold().replace("×", "x").split())
    turn = next((one for one in _TURNS if plain.endswith(f" {one}")), "")
    body = plain.removesuffix(turn).strip()
    found = _named().get(_key(body)) or _measured(body, text)
    return _turned(found, turn)


def size_names() -> tuple[str, ...]:
    """Return the names of the sizes in the table."""
    return tuple(cells(_FILE, row)["name"] for row in table(_FILE))


_FILE = "card-sizes.csv"


@cache
def _named() -> dict[str, CardSize]:
    found: dict[str, CardSize] = {}
    for row in table(_FILE):
        cell = cells(_FILE, row)
        width, height = (
            float(Fraction(cell[side]) * _UNITS[cell["unit"]]) for side in ("width", "height")
        )
        size = CardSize(cell["name"], width, height, cell["called"])
        found |= {_key(name): size for name in (cell["name"], *words(cell["also"]))}
    return found


def _key(name: str) -> str:
    """Return a name as it is looked up: ``4 x 6 inches`` and ``4x6in`` are one."""
    key = name[:1] + "".join(c for c in name[1:] if c not in " -_")
    for ending in ("inches", "inch", '"', "″"):
        if key.endswith(ending):
            return key.removesuffix(ending) + "in"
    return key


def _turned(size: CardSize, turn: str) -> CardSize:
    across, up = size.width_mm, size.height_mm
    if (turn == "upright" and across > up) or (turn == "sideways" and across < up):
        across, up = up, across
    return size._replace(width_mm=across, height_mm=up)


def _measured(body: str, text: str) -> CardSize:
    """Return a size given as width by height."""
    parts = [_number_and_unit(part) for part in body.split("x")]
    if len(parts) != 2 or not all(number for number, _ in parts):
        near = nearest(_key(body), size_names())
        hint = f"did you mean {near[0]}?" if near else f"say one of {', '.join(size_names())}"
        raise AskedWrongly(f'--size: "{text[:40]}" is no size; {hint}; or give one as 100x150mm')
    (width, first), (height, second) = parts
    if not (first or second):
        raise AskedWrongly(f'--size: "{text[:40]}" has no unit; write {text.strip()[:40]}in')
    width_mm = _side_mm(width, first or second, text)
    height_mm = _side_mm(height, second or first, text)
    called = "card" if max(width_mm, height_mm) <= _LARGEST_CARD_MM else "page"
    return CardSize(text, width_mm, height_mm, called)


def _number_and_unit(part: str) -> tuple[str, str]:
    """Return what stands up to the last digit of a part, and what stands after it."""
    ends = [place for place, c in enumerate(part, 1) if c.isnumeric()]
    last = ends[-1] if ends else 0
    return part[:last].strip(), part[last:].strip()


def _side_mm(number: str, unit: str, text: str) -> float:
    """Return one side [mm], if it is one that a card can have."""
    from tarebook.quantities.number import parse_number

    if unit not in _UNITS:
        raise AskedWrongly(f'--size: "{unit[:20]}" is no unit of a size; write in, mm or cm')
    try:
        side = parse_number(number) * _UNITS[unit]
    except AmountError as fault:
        raise AskedWrongly(f"--size: {fault}") from None
    if not LOWEST_MM <= side <= HIGHEST_MM:
        raise AskedWrongly(
            f'--size: "{text[:40]}" is no size for a card: each side is {LOWEST_MM} mm (2 3/4 in) '
            f"to {HIGHEST_MM} mm (17 3/4 in)"
        )
    return float(side)
