"""One ingredient line, as people write them, read into amount, food and note.

Nothing is invented: where a line tells no amount there is none, and a line that names no food is
given back as one that was not read.
"""

from __future__ import annotations

from fractions import Fraction

from tarebook.exchange.asides import squeezed, without_asides
from tarebook.exchange.found import BARE, NOTHING, RATE, Measure, written
from tarebook.exchange.measure import measure_at, whole_measure
from tarebook.exchange.names import Name, is_kind, is_state, read_name, turned_round, unit_of_count
from tarebook.exchange.plain_line import plain_line
from tarebook.exchange.remarks import is_remark
from tarebook.exchange.tokens import Token, said, tokens_of
from tarebook.exchange.unit_words import LENGTH, TIME
from tarebook.exchange.vocabulary import NUMBER_WORDS, known, singular
from tarebook.findings import TarebookError
from tarebook.quantities import Amount, parse_amount
from tarebook.tuples import NamedTuple

__all__ = ["LONGEST", "IngredientLine", "read_line"]

LONGEST = 500
"""A longer text is no ingredient line [characters]."""

_SEPARATORS = (",", ";", ":", "=", "|")


class IngredientLine(NamedTuple):
    """What an ingredient line says.

    Attributes:
        text: the line as it was given.
        amount: how much, or None where the line tells none that could be scaled.
        foods: names in small letters; several share the amount; none where it is no ingredient.
        note: what else was said.
        optional: whether the line says that it may be left out.
    """

    text: str
    amount: Amount | None
    foods: tuple[str, ...]
    note: str = ""
    optional: bool = False


def read_line(text: str) -> IngredientLine:
    """Return what an ingredient line says.

    Args:
        text: one line, as pasted; more than :data:`LONGEST` characters are not read.

    Returns:
        Amount, foods and note; without foods where the line is a heading, a step or a remark, or
        could not be read.

    Example:
        >>> line = read_line("2 x 400 g tins coconut milk, shaken")
        >>> str(line.amount), line.foods, line.note
        ('800 g', ('coconut milk',), 'shaken')
    """
    if len(text) > LONGEST:
        return IngredientLine(text, None, ())
    plain = plain_line(text)
    asked = _Line(plain.text, ends_in_colon=plain.ends_in_colon)
    amount = asked.amount() if asked.foods else None
    notes = [note for note in (*asked.notes, *plain.asides) if note]
    return IngredientLine(text, amount, tuple(asked.foods), "; ".join(notes), asked.optional)


class _Line:
    """A line while it is read: each method adds what it finds."""

    def __init__(self, text: str, *, ends_in_colon: bool = False, may_squeeze: bool = True) -> None:
        self.foods: list[str] = []
        self.notes: list[str] = []
        self.measure: Measure | None = None
        self.name = Name((), ())
        self._kind_so_far: list[Token] = []
        asides = without_asides(text)
        self.notes += asides.notes
        self.optional, self.taste, self.rate = asides.optional, asides.taste, asides.rate
        text = asides.text
        tokens = tokens_of(text)
        found = measure_at(tokens)
        amount = found is not None and found.kind not in (TIME, LENGTH) and bool(found.terms)
        if is_remark(text, tokens, ends_in_colon=ends_in_colon, amount=amount or self.taste):
            return
        taken = squeezed(text) if may_squeeze else None
        if taken:
            self._squeezed(*taken)
            return
        self._read(tokens, found)

    def amount(self) -> Amount | None:
        """Return the amount, understood; None where none that counts was told."""
        text = self._written()
        if not text and self.taste and not self.rate and self.measure is None:
            text = "to taste"
        if not text or self.rate:
            return None
        try:
            return parse_amount(text)
        except TarebookError:
            self.notes.insert(0, text)
            return None

    def _written(self) -> str:
        found = self.measure
        if found is None or found.kind in (NOTHING, RATE, LENGTH, TIME):
            return ""
        if found.kind == BARE and (self.name.counted or not found.size):
            low, high, _ = found.terms[0]
            unit = unit_of_count(self.name.whole or (self.foods[0] if self.foods else ""))
            found = found._replace(terms=((low, high, unit),))
        return written(found)

    # --- the parts

    def _squeezed(self, parts: tuple[str, ...], rest: str) -> None:
        """Read ``juice of 1 lemon``: so many fruits, and what comes out of them."""
        inner = _Line(rest, may_squeeze=False)  # nobody takes the juice of a juice
        self.measure, self.name = inner.measure, inner.name
        self.notes += inner.notes
        for fruit in inner.foods[:1]:
            stem = " ".join((*fruit.split()[:-1], singular(fruit.split()[-1])))
            self.foods = [f"{stem} {part}" for part in parts]

    def _read(self, tokens: list[Token], found: Measure | None) -> None:
        self.measure = found
        rest = tokens[found.at :] if found else tokens
        if found:
            self.notes += found.notes
        if found and found.kind == RATE:
            self.rate = True
        each = _each(rest)
        if each is not None:
            self._take(read_name(_brackets_out(each, self), listed=True))
            return
        segments = _segments(rest)
        shared = found is None and len(segments) > 2 and _is_each(segments[-1])
        if shared and self._amount_in(said(segments[-1])[: -len("each")]):
            self._take(read_name(_joined(segments[:-1]), listed=True))
            return
        if found is None and len(segments) > 1 and _is_label(segments[0]):
            behind = _joined(segments[1:])
            amount = measure_at(behind)
            if amount is None or any(token.kind == "word" for token in behind[amount.at :]):
                self._read(behind, amount)
                return
        for at, segment in enumerate(segments):
            self._segment(segment, first=at == 0)
        self._finish()

    def _segment(self, segment: list[Token], *, first: bool) -> None:
        brackets = [token for token in segment if token.kind == "bracket"]
        words = [token for token in segment if token.kind != "bracket"]
        if not self.foods or self._only_kind():
            if words and self.measure is None:
                words, brackets = self._amount_behind(segment)
            self._name(words)
        elif words:
            self._further(words)
        for bracket in brackets:
            self._bracket(bracket)

    def _only_kind(self) -> bool:
        """Return whether the name so far says only which kind: "hot", "dark"."""
        words = self.foods[0].split() if len(self.foods) == 1 else []
        return is_kind(words) and words[-1] not in known("kind-nouns")

    def _name(self, words: list[Token]) -> None:
        lows = [word.low for word in words]
        if not words:
            return
        if is_state(lows) or all(low in known("about") or low == "or" for low in lows):
            self.notes.append(said(words))
            return
        # kind words may stand before a comma: "hot, strong coffee", "cold, unsalted butter"
        self._kind_so_far += [words[0]._replace(blank=True), *words[1:]]
        self._take(read_name(_squeezed_name(self._kind_so_far)))

    def _take(self, name: Name) -> None:
        self.name = name
        self.foods = list(name.foods)
        self.notes += name.notes

    def _amount_behind(self, segment: list[Token]) -> tuple[list[Token], list[Token]]:
        """Find the amount behind a name: ``Soy sauce 1 cup``, ``salt 36 g (2 Tbsp)``."""
        for at in range(1, len(segment)):
            token = segment[at]
            starts = (
                token.kind == "number"
                or token.low in NUMBER_WORDS
                or token.low in ("a", "x", "about")
            )
            if not starts or segment[at - 1].low in (
                "no",
                "#",
                "number",
                "nr",
                "type",
                "or",
                "and",
                "to",
            ):
                continue
            start = at + 1 if token.low == "x" else at
            found = measure_at(segment, start, named=True)
            if found is None or not found.terms or not _ends(segment, found):
                continue
            if found.kind == BARE and (token.low == "a" or _numbered(segment[:at])):
                continue
            self.measure = found
            self.notes += found.notes
            tail = segment[found.at :]
            if tail:
                self.notes.append(said([one for one in tail if one.kind != "bracket"]))
            before = segment[:at]
            if before and before[-1].low in ("about", "approx", "ca", "circa", "-", "–"):
                before = before[:-1]
            return (
                [one for one in before if one.kind != "bracket"],
                [one for one in (*before, *tail) if one.kind == "bracket"],
            )
        return (
            [one for one in segment if one.kind != "bracket"],
            [one for one in segment if one.kind == "bracket"],
        )

    def _further(self, words: list[Token]) -> None:
        """Read a part behind the name: an amount, a word of kind, or a note."""
        text = said(words)
        if self.measure is None and (self._amount_in(text) or self._juice_in(words)):
            return
        if self.measure is None:  # "soy sauce, dark 2 Tbsp"
            words, _ = self._amount_behind(words)
            text = said(words)
        if self.measure and self.measure.container and self._size_in(text):
            return
        lows = [word.low for word in words if word.low not in ("and", "&")]
        turned = turned_round(self.foods[0], lows) if len(self.foods) == 1 else None
        if turned:
            self.foods = [turned]
            self.name = self.name._replace(whole=self.name.whole or turned)
        else:
            self.notes.append(text)

    def _juice_in(self, words: list[Token]) -> bool:
        """Take the part of ``Lemon, juice of 1``."""
        lows = [word.low for word in words[:2]]
        if lows[:1] not in (["juice"], ["zest"]) or lows[1:] not in (["of"], ["from"]):
            return False
        if not self._amount_in(said(words[2:])):
            return False
        self.foods = [f"{singular(self.foods[0])} {lows[0]}"]
        return True

    def _amount_in(self, text: str) -> bool:
        """Take a part that begins with an amount and goes on with nothing that names a food."""
        tokens = tokens_of(text)
        found = measure_at(tokens, named=True)
        if found is None or found.kind in (LENGTH, TIME):
            return False
        rest = tokens[found.at :]
        if rest and not _ends(tokens, found):
            return False
        if not found.terms and found.kind != RATE:
            return False
        self.measure = found
        self.rate = self.rate or found.kind == RATE
        self.notes += found.notes
        lows = [token.low for token in rest if token.low != "each"]
        turned = turned_round(self.foods[0], lows) if len(self.foods) == 1 and lows else None
        if turned:  # "thyme, 1 tsp dried"
            self.foods = [turned]
        elif lows:
            self.notes.append(said(rest))
        return True

    def _size_in(self, text: str) -> bool:
        """Take the size of the container that was counted before: ``1 can tomatoes (15 oz)``."""
        inner = whole_measure(text)
        if not inner or inner.kind not in ("mass", "volume") or self.measure is None:
            return False
        low, high = self.measure.terms[0][:2] if self.measure.terms else (Fraction(1), Fraction(1))
        if "total" in text.lower():
            low = high = Fraction(1)
        terms = tuple((one * low, other * high, unit) for one, other, unit in inner.terms)
        self.measure = self.measure._replace(terms=terms, kind=inner.kind, container=False)
        return True

    def _bracket(self, bracket: Token) -> None:
        text = bracket.text.strip(" ,;:")
        if not text:
            return
        if self.measure is None and self._amount_in(text):
            return
        if self.measure and self.measure.container and self._size_in(text):
            return
        words = [token.low for token in tokens_of(text) if token.kind == "word"]
        kind = is_kind(words) and len(words) == len(tokens_of(text)) and "ground" not in words
        turned = turned_round(self.foods[0], words) if kind and len(self.foods) == 1 else None
        if turned:
            self.foods = [turned]
        else:
            self.notes.append(text)

    def _finish(self) -> None:
        if not self.foods and self.measure and self.measure.kind == "count":
            self.foods = []
        if self.foods and self.name.counted and self.measure and self.measure.kind == BARE:
            self.name = self.name._replace(whole=self.name.whole or self.name.counted)


def _segments(tokens: list[Token]) -> list[list[Token]]:
    """Return the parts of a line between commas, colons and lone dashes."""
    parts: list[list[Token]] = [[]]
    for at, token in enumerate(tokens):
        spaced = token.text in ("-", "–") and (token.blank or at == 0)
        followed = at + 1 < len(tokens) and (tokens[at + 1].blank or token.text == "–")
        between = (
            0 < at < len(tokens) - 1
            and tokens[at - 1].kind == "number"
            and tokens[at + 1].kind == "number"
        )
        if (token.text in _SEPARATORS and token.kind == "mark") or (
            spaced and followed and not between
        ):
            parts.append([])
        else:
            parts[-1].append(token)
    return [part for part in parts if part]


def _joined(parts: list[list[Token]]) -> list[Token]:
    """Return parts as one line again, with commas between them."""
    joined: list[Token] = []
    for part in parts:
        joined += [Token(",", "mark", False)] * bool(joined) + part
    return joined


def _is_label(segment: list[Token]) -> bool:
    """Return whether a part is a heading before an ingredient: ``Rub: 2 tsp salt``."""
    words = [token.low for token in segment if token.kind == "word"]
    return (
        bool(words)
        and all(word in known("sections") for word in words)
        and words[-1] not in ("mild", "spice")
    )


def _is_each(segment: list[Token]) -> bool:
    """Return whether a part is ``1 tsp each`` of all that stands before it."""
    return segment[-1].low == "each" and segment[0].kind in ("number", "word")


def _each(tokens: list[Token]) -> list[Token] | None:
    """Return the foods of ``1 tsp each salt, sugar and paprika``, or None."""
    if not tokens or tokens[0].low != "each":
        return None
    rest = tokens[1:]
    while rest and rest[0].low in (":", "of", "the", ",", "-", "–"):
        rest = rest[1:]
    return rest


def _brackets_out(tokens: list[Token], line: _Line) -> list[Token]:
    line.notes += [token.text for token in tokens if token.kind == "bracket" and token.text]
    return [token for token in tokens if token.kind != "bracket"]


def _ends(segment: list[Token], found: Measure) -> bool:
    """Return whether an amount behind a name is over where it ends: nothing or a remark follows."""
    rest = [token for token in segment[found.at :] if token.kind != "bracket"]
    if not rest:
        return True
    first = rest[0].low
    if all(token.low in known("kind") for token in rest):
        return True
    return (
        first in known("cut-off")
        or first in known("state")
        or first in (",", "each", "or", "and", "+", "in")
    )


def _numbered(tokens: list[Token]) -> bool:
    """Return whether a name goes on with a number of its own: ``curing salt 1``."""
    return bool(
        {"cure", "curing", "no", "number", "type", "pink"} & {token.low for token in tokens}
    )


def _squeezed_name(words: list[Token]) -> list[Token]:
    """Return ``juice from a lemon`` as ``lemon juice``."""
    lows = [word.low for word in words]
    if len(lows) < 3 or lows[0] not in ("juice", "zest") or lows[1] not in ("of", "from"):
        return words
    rest = words[2:]
    while rest and (
        rest[0].kind == "number" or rest[0].low in NUMBER_WORDS or rest[0].low in ("a", "an")
    ):
        rest = rest[1:]
    if not rest:
        return words
    fruit = Token(singular(rest[-1].low), "word", True)
    return [*rest[:-1], fruit, words[0]._replace(blank=True)]
