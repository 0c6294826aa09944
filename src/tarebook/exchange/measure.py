"""The amount at a place of an ingredient line, with containers, sums and second measures.

What comes out is written the way a recipe of ours writes it: ``2 x 400 g tins`` is ``800 g``.
"""

from __future__ import annotations

from fractions import Fraction

from tarebook.exchange.found import BARE, DECIMAL, NOTHING, RATE, Measure
from tarebook.exchange.numbers import Quantity, low_at, quantity_at
from tarebook.exchange.tokens import OPENS, Token, said, tokens_of
from tarebook.exchange.unit_words import LENGTH, TIME, UNSIZED_KIND, UnitWord, unit_at
from tarebook.exchange.vocabulary import NUMBER_WORDS, known
from tarebook.findings import UnitError
from tarebook.quantities import dimension, factor

__all__ = ["measure_at", "whole_measure"]

_MOST_TERMS, _MOST_BRACKETS = 4, 3
_VAGUELY = ("more", "of", "good", "small", "large", "fresh", "big", "the")


def measure_at(tokens: list[Token], at: int = 0, *, named: bool = False) -> Measure | None:
    """Return the amount that starts at a place, or None.

    Args:
        tokens: the tokens of a line, or of a part of it.
        at: where to look.
        named: the food's name was told already.
    """
    found = _one_measure(tokens, at, named=named)
    if found is None or found.kind in (NOTHING, RATE, LENGTH, TIME):
        return found
    return _followed(tokens, found, named=named)


def whole_measure(text: str, *, named: bool = True) -> Measure | None:
    """Return the amount that a text is, if it is nothing else (``about 15 oz each``)."""
    if sum(text.count(mark) for mark in OPENS) > _MOST_BRACKETS:
        return None  # each is looked into more than once: the work would double with every one
    tokens = tokens_of(text)
    while tokens and tokens[0].low in (
        "or",
        "ca",
        "c",
        "=",
        "from",
        "net",
        "drained",
        "each",
        "i.e",
    ):
        tokens = tokens[1:]
    found = measure_at(tokens, 0, named=named)
    if found is None:
        return None
    rest = [token.low for token in tokens[found.at :]]
    return (
        found if all(word in known("about") or word in known("behind") for word in rest) else None
    )


# --- one measure


def _one_measure(tokens: list[Token], at: int, *, named: bool) -> Measure | None:
    quantity = quantity_at(tokens, at)
    if quantity:
        return _counted(tokens, quantity, named=named)
    return (
        _vague(tokens, at)
        or _with_article(tokens, at, named=named)
        or _bare_unit(tokens, at, named=named)
    )


def _counted(tokens: list[Token], quantity: Quantity, *, named: bool) -> Measure | None:
    """Read on behind a number: a size of a container, a unit, or nothing."""
    at = quantity.at
    if low_at(tokens, at) in ("%", "percent", "pct", "part", "parts", "‰", "g/kg"):
        return Measure((), RATE, at + 1, quantity.about)
    if low_at(tokens, at) == "x":
        at += 1
    behind, size, notes = _past_adjectives(tokens, at)
    inner = _size_of_one(tokens, behind)
    if inner:
        return _times(tokens, quantity, inner, named=named, notes=notes)
    unit = unit_at(tokens, behind, named=named)
    if unit and unit.name not in known("sizes"):
        return _with_unit(tokens, quantity, unit, notes, named=named)
    whole = (*quantity.about, *notes)
    if size:
        low, high = quantity.low, quantity.high
        return Measure(((low, high, size),), BARE, _past_size(tokens, at, behind), whole, size=size)
    return Measure(((quantity.low, quantity.high, ""),), BARE, at, quantity.about)


def _past_size(tokens: list[Token], at: int, behind: int) -> int:
    """Return the place behind the last word of size: what follows may be of the name."""
    while behind > at and not tokens[behind - 1].low.startswith(tuple(known("sizes"))):
        behind -= 1
    return behind


def _past_adjectives(tokens: list[Token], at: int) -> tuple[int, str, tuple[str, ...]]:
    """Return the place behind words such as ``heaping`` or ``small``, the size, and the words."""
    size, notes = "", []
    while at < len(tokens):
        token = tokens[at]
        low = token.low.removesuffix("-sized").removesuffix("-size")
        if low in known("sizes"):
            size = low
        elif token.kind == "bracket" and _all_about(token.text):
            notes.append(token.text)
        elif (
            token.low in known("between")
            or token.text == "."
            or (low in ("-", "to", "or") and size)
        ):
            notes += [token.text] if token.low != "of" else []
        else:
            break
        at += 1
    return at, size, tuple(notes)


def _all_about(text: str) -> bool:
    words = text.lower().replace(",", " ").split()
    return bool(words) and all(
        word in known("about") or word in known("between") or word in known("sizes")
        for word in words
    )


def _size_of_one(tokens: list[Token], at: int) -> Measure | None:
    """Return the size of one container that stands here, in brackets or bare."""
    if at >= len(tokens):
        return None
    if tokens[at].kind == "bracket":
        inner = whole_measure(tokens[at].text)
        sized = inner and inner.kind in ("mass", "volume", LENGTH)
        return inner._replace(at=at + 1) if inner and sized else None
    if tokens[at].kind != "number" and tokens[at].low not in NUMBER_WORDS:
        return None
    quantity = quantity_at(tokens, at)
    unit = unit_at(tokens, quantity.at) if quantity else None
    if not quantity or not unit or unit.kind not in ("mass", "volume", LENGTH):
        return None
    term = (quantity.low * unit.times, quantity.high * unit.times, unit.name)
    return Measure((term,), unit.kind, unit.at)


def _times(
    tokens: list[Token],
    quantity: Quantity,
    inner: Measure,
    *,
    named: bool,
    notes: tuple[str, ...],
) -> Measure | None:
    """Return so many of a size: ``2 (10-ounce) bottles``; a length is only a note."""
    if inner.kind == LENGTH:
        at = inner.at
        while low_at(tokens, at) in ("long", "thick", "wide", "cube", "by"):
            at += 1
        rest = _counted(tokens, quantity._replace(at=at), named=named)
        return rest and rest._replace(notes=(*rest.notes, said(tokens[quantity.at : inner.at])))
    terms = tuple(
        (low * quantity.low, high * quantity.high, unit) for low, high, unit in inner.terms
    )
    at = _past_container(tokens, inner.at, spoons=inner.terms[0][2] == "milliliter")
    counted = unit_at(tokens, at, named=False) if at == inner.at else None
    if counted and counted.kind == "count" and _goes_on(tokens, counted.at):
        at = counted.at
    return Measure(terms, inner.kind, at, (*quantity.about, *notes, *inner.notes))


def _goes_on(tokens: list[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind == "word"


def _past_container(tokens: list[Token], at: int, *, spoons: bool) -> int:
    behind, _, _ = _past_adjectives(tokens, at)
    word = low_at(tokens, behind)
    if word in known("containers") or (spoons and word in known("spoons")):
        return behind + 1
    if word in known("pieces") and behind + 1 < len(tokens) and tokens[behind + 1].kind == "word":
        return behind + 1
    return at


def _with_unit(
    tokens: list[Token],
    quantity: Quantity,
    unit: UnitWord,
    notes: tuple[str, ...],
    *,
    named: bool,
) -> Measure | None:
    about = (*quantity.about, *notes)
    if unit.kind == TIME:
        return Measure((), TIME, unit.at, about)
    if unit.kind == LENGTH:
        return _long(tokens, quantity, unit, named=named)
    if unit.kind == UNSIZED_KIND:
        is_container = low_at(tokens, unit.at - 1) in known("containers")
        sized = _sized_behind(tokens, quantity, unit, about) if is_container else None
        told = said(tokens[max(0, quantity.at - 1) : unit.at])
        return sized or Measure((), NOTHING, unit.at, (*about, told), container=is_container)
    container = low_at(tokens, unit.at - 1) in known("containers") and unit.kind == "count"
    sized = _sized_behind(tokens, quantity, unit, about) if container else None
    if sized:
        return sized
    at = unit.at
    if unit.kind in ("mass", "volume"):
        at = _past_container(tokens, at, spoons=unit.name == "milliliter")
    term = (quantity.low * unit.times, quantity.high * unit.times, unit.name)
    return Measure((term,), unit.kind, at, about, container=container)


def _sized_behind(
    tokens: list[Token], quantity: Quantity, unit: UnitWord, about: tuple[str, ...]
) -> Measure | None:
    """Return the whole of ``1 can (15 oz)``."""
    at = unit.at
    if at >= len(tokens) or tokens[at].kind != "bracket":
        return None
    inner = whole_measure(tokens[at].text)
    if not inner or inner.kind not in ("mass", "volume"):
        return None
    by = Quantity(Fraction(1), Fraction(1), 0) if "total" in tokens[at].text else quantity
    terms = tuple((low * by.low, high * by.high, name) for low, high, name in inner.terms)
    return Measure(terms, inner.kind, at + 1, about)


def _long(
    tokens: list[Token], quantity: Quantity, unit: UnitWord, *, named: bool
) -> Measure | None:
    """Read ``2-inch piece of ginger``: one piece; a length of nothing counted says no amount."""
    at = unit.at
    while low_at(tokens, at) in ("long", "thick", "wide", "fresh", "peeled"):
        at += 1
    counted = unit_at(tokens, at, named=named)
    told = said(tokens[: unit.at])
    if counted and counted.kind == "count":
        one = Fraction(1)
        return Measure(((one, one, counted.name),), "count", counted.at, (told,))
    return Measure((), LENGTH, counted.at if counted else unit.at, (told,))


def _vague(tokens: list[Token], at: int) -> Measure | None:
    """Read ``a splash of``, ``a few sprigs of``, which say no amount."""
    start = at
    while low_at(tokens, at) in ("a", "an", "just", "very", "good", "generous", "big", "small",
                                 "healthy", "the", "large", "hefty"):  # fmt: skip
        at += 1
    word = low_at(tokens, at)
    unsized = unit_at(tokens, at)
    article = at > start
    if word not in known("vague") and not (article and unsized and unsized.kind == UNSIZED_KIND):
        return None
    at += 1
    while low_at(tokens, at) in known("vague") or low_at(tokens, at) in _VAGUELY:
        at += 1
    unit = unit_at(tokens, at)
    if unit and unit.kind in ("count", UNSIZED_KIND, "volume", "mass"):
        at = unit.at
    return Measure((), NOTHING, at, (said(tokens[start:at]),))


def _with_article(tokens: list[Token], at: int, *, named: bool) -> Measure | None:
    """Read ``a cup of`` and ``an onion``: one."""
    notes = []
    while low_at(tokens, at) in known("about") and low_at(tokens, at) not in ("a", "an"):
        notes.append(low_at(tokens, at))
        at += 1
    if low_at(tokens, at) not in ("a", "an"):
        return None
    one = Quantity(Fraction(1), Fraction(1), at + 1, tuple(notes))
    return _counted(tokens, one, named=named)


def _bare_unit(tokens: list[Token], at: int, *, named: bool) -> Measure | None:
    """Read ``pinch of salt``: one; ``sprigs of thyme`` says no amount."""
    behind, _, notes = _past_adjectives(tokens, at)
    word = low_at(tokens, behind)
    unit = unit_at(tokens, behind, named=named)
    if not unit or unit.kind not in ("count", "volume", UNSIZED_KIND):
        return None
    has_of = low_at(tokens, unit.at) == "of"
    if (
        unit.name in known("handfuls")
        and word == unit.name
        and (has_of or word in ("pinch", "dash"))
    ):
        one = Fraction(1)
        return Measure(((one, one, unit.name),), unit.kind, unit.at, notes)
    if has_of and (unit.name not in known("sizes")):
        return Measure((), NOTHING, unit.at, (said(tokens[at : unit.at]),))
    return None


# --- what follows a measure


def _followed(tokens: list[Token], found: Measure, *, named: bool) -> Measure:
    """Add what goes on: a sum, the other end of a range, the same in another unit."""
    while len(found.terms) < _MOST_TERMS:
        further = (
            _and_a_half(tokens, found)
            or _second(tokens, found)
            or _sum(tokens, found, named=named)
            or _to_another(tokens, found)
            or _trailing(tokens, found)
        )
        if further is None:
            break
        found = further
    return found


def _and_a_half(tokens: list[Token], found: Measure) -> Measure | None:
    """Read ``a pound and a half``."""
    at = found.at
    if low_at(tokens, at) not in ("and", "&") or found.kind == BARE or not found.terms:
        return None
    quantity = quantity_at(tokens, at + 1)
    if not quantity or quantity.low >= 1 or quantity.low != quantity.high:
        return None
    if unit_at(tokens, quantity.at) and low_at(tokens, quantity.at) != "of":
        return None
    low, high, unit = found.terms[-1]
    more = (low + quantity.low, high + quantity.low, unit)
    return found._replace(terms=(*found.terms[:-1], more), at=quantity.at)


def _second(tokens: list[Token], found: Measure) -> Measure | None:
    """Pass over the same amount in another unit: in brackets, or behind ``/``, ``or``, ``=``."""
    at = found.at
    if at >= len(tokens):
        return None
    if tokens[at].kind == "bracket":
        inner = whole_measure(tokens[at].text)
        passed = inner is not None or _all_about(tokens[at].text)
        note = (*found.notes, tokens[at].text)
        return found._replace(at=at + 1, notes=note) if passed and found.kind != BARE else None
    if tokens[at].text not in ("/", "=", "or", "|", ":", "–", "-", ","):
        return None
    other = _real_measure(tokens, at + 1)
    if other is None or found.kind == BARE or not _same_again(tokens, found, other):
        return None
    return found._replace(at=other.at, notes=(*found.notes, said(tokens[at + 1 : other.at])))


def _same_again(tokens: list[Token], found: Measure, other: Measure) -> bool:
    """Return whether a further measure tells the same amount, and no range, sum or alternative."""
    mark = tokens[found.at].text
    if mark in ("/", "=", "|", ":"):
        return True
    if mark == "or":
        return found.terms[0][2] != other.terms[0][2]
    one, two = found.terms[0][2], other.terms[0][2]
    metric = {unit for unit in (one, two) if unit in DECIMAL}
    return len(metric) == 1 and found.kind == other.kind


def _real_measure(tokens: list[Token], at: int) -> Measure | None:
    found = _one_measure(tokens, at, named=False)
    return found if found and found.kind in ("mass", "volume") and found.terms else None


_JOINERS = ("+", "plus", "and", "&", ",", "minus", "less")


def _sum(tokens: list[Token], found: Measure, *, named: bool) -> Measure | None:
    """Read on in ``1 cup plus 2 Tbsp``, ``6 lb 4 oz``, ``3 pounds, 6 ounces``."""
    if found.kind not in ("mass", "volume"):
        return None
    at = found.at
    joined = low_at(tokens, at) if low_at(tokens, at) in _JOINERS else ""
    if joined == "," and low_at(tokens, at + 1) in ("plus", "and", "+"):
        at, joined = at + 1, "plus"
    other = _real_measure(tokens, at + bool(joined))
    if other is None or other.kind != found.kind:
        return None
    here, there = found.terms[-1], other.terms[0]
    try:
        by = factor(there[2], here[2])
    except UnitError:
        return None
    if joined in ("minus", "less"):
        less = there[0] * by
        if less >= here[0]:
            return None
        terms = (*found.terms[:-1], (here[0] - less, here[1] - less, here[2]))
    else:
        smaller = by < 1 and there[1] * by < 1 and here[0].denominator == 1
        if joined in ("", ",") and not smaller:
            return None
        terms = (*found.terms, *other.terms)
    return found._replace(terms=terms, at=other.at, notes=(*found.notes, *other.notes))


def _to_another(tokens: list[Token], found: Measure) -> Measure | None:
    """Read the other end of ``2 tsp to 1 Tbsp``."""
    if low_at(tokens, found.at) not in ("to", "-", "–") or len(found.terms) != 1:
        return None
    other = _real_measure(tokens, found.at + 1)
    if other is None or other.kind != found.kind or len(other.terms) != 1:
        return None
    (low, high, unit), (top, _, far) = found.terms[0], other.terms[0]
    if low != high or dimension(unit) != dimension(far) or top * factor(far, unit) <= low:
        return None
    if far == unit:
        return found._replace(terms=((low, top, unit),), at=other.at)
    return found._replace(terms=(*found.terms, *other.terms), at=other.at, to=True)


def _trailing(tokens: list[Token], found: Measure) -> Measure | None:
    """Pass over ``or so``, ``or more``, ``approx.`` behind a measure."""
    at = found.at
    pair = low_at(tokens, at), low_at(tokens, at + 1)
    if pair in (("or", "so"), ("or", "more"), ("or", "less"), ("at", "least"), ("at", "most")):
        return found._replace(at=at + 2, notes=(*found.notes, " ".join(pair)))
    if pair[0] in ("approx", "approximately", "heaping", "heaped", "scant", "generous", "rounded",
                   "level", "max", "maximum", "min", "minimum", "+", "about", "total"):  # fmt: skip
        return found._replace(at=at + 1, notes=(*found.notes, pair[0]))
    return None
