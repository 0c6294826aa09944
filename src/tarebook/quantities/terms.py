"""A cook's amount as terms: each a number or range, and a unit.

``6 lb 4 oz`` is two terms, ``1 cup + 2 Tbsp`` too. What the terms add up to is for ``amount``;
here words are only told apart. Every fault is an ``AmountError`` that says what to write instead.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from tarebook.findings import AmountError, nearest
from tarebook.quantities.forms import (
    FILLERS,
    FORMS,
    LOOSE,
    NUMBERS,
    SIZES,
    THEIR_OWN_NAME,
    VAGUE,
    place_of,
)
from tarebook.quantities.number import format_fraction, read_span, split
from tarebook.quantities.plain import plain, quoted, refuse_comma
from tarebook.quantities.units import (
    TRADITIONS,
    Dimension,
    dimension,
    near_units,
    read_unit,
    unit_text,
)

__all__ = ["MEASURES", "Reader", "Term"]

_NEEDS_UNIT = {
    "amount": 'an amount needs a unit, such as "{n} cloves", "1 medium" or "{n} tsp"',
    "weight": "write {n} lb or {n} kg",
    "length": "write {n} in or {n} mm",
}

_FINER = {"pound": "oz", "kilogram": "g"}

MEASURES = {
    "amount": frozenset({Dimension.MASS, Dimension.VOLUME, Dimension.COUNT}),
    "weight": frozenset({Dimension.MASS}),
    "length": frozenset({Dimension.LENGTH}),
}
"""What each kind of text may measure."""

_DIGITS = frozenset("0123456789.")
_JOINED_BEFORE = frozenset({"fl", "fluid", "us", "metric", "label", "cubic", "cu"})
_PLUS = frozenset({"+", "&", "plus", "and"})
_RANGE = frozenset({"-", "–", "to", "or"})
_ABOUT = frozenset({"about", "approximately", "approx", "around", "~"})
_NOT_NUMBERS = frozenset({"nan", "inf", "infinity", "infinite"})
_WITHOUT_NUMBER = frozenset({"pinch", "dash"})


class Term:
    """One number or range with its unit; ``joined`` tells how it hangs on the one before."""

    __slots__ = ("high", "joined", "low", "unit")

    def __init__(self, low: Fraction, high: Fraction, joined: str) -> None:
        self.low = low
        self.high = high
        self.unit = ""
        self.joined = joined


class Reader:
    """Reads one text, word by word.

    Attributes:
        terms: what was found, in order; each has a unit.
        forms: form words in order, sizes first, each once.
        readings: how doubtful words were read.
        to_taste: whether the text says "to taste".
    """

    def __init__(self, text: str, *, what: str = "amount", cup: str = "us") -> None:
        self.text = text
        self.what = what
        self.terms: list[Term] = []
        self.forms: list[str] = []
        self.readings: list[str] = []
        self.to_taste = False
        self._means = TRADITIONS[cup]
        self._tokens = split(plain(text, what))
        self._at = 0
        self._joined = ""
        self._loosely = False
        self._unknown: list[str] = []
        self._read()

    def error(self, message: str, hint: str = "") -> AmountError:
        """Return an error about this text."""
        return AmountError(f"{self.what} {quoted(self.text)} {message}", text=self.text, hint=hint)

    def _read(self) -> None:
        tokens = self._tokens
        while self._at < len(tokens):
            token = tokens[self._at]
            if token[0] in _DIGITS and token != ".":
                self._number(tokens)
            elif token[0].isalpha() or token in '#"″”':
                self._word(token)
            else:
                self._mark(token)
        self._finish()

    # --- numbers

    def _number(self, tokens: list[str]) -> None:
        if self.terms and not self.terms[-1].unit:
            raise self._about_unknown() if self._unknown else self._two("numbers in a row")
        joined, self._joined = self._joined, ""
        low, high, self._at = read_span(tokens, self._at, self.what, self.text)
        self.terms.append(Term(low, low if high is None else high, joined))

    def _number_word(self, word: str) -> None:
        """Read ``a``, ``one`` or ``half`` as its digits."""
        self._tokens[self._at] = NUMBERS[word]
        if word == "half" and self._next() in ("a", "an"):
            del self._tokens[self._at + 1]
        if self._next() in _RANGE and self._next(2) in NUMBERS:
            self._tokens[self._at + 2] = NUMBERS[self._next(2)]
        self._number(self._tokens)

    def _awaits_number(self) -> bool:
        return not self.terms or bool(self._joined)

    # --- words

    def _word(self, token: str) -> None:
        word = token.rstrip(".").lower()
        if word in NUMBERS and self._awaits_number():
            return self._number_word(word)
        if word in _JOINED_BEFORE:
            return self._joined_word(word)
        unit = read_unit(token)
        if unit is not None:
            return self._unit(unit, word, token)
        self._at += 1
        if word in FORMS:
            return self._form(FORMS[word])
        return self._small_word(word)

    def _joined_word(self, word: str) -> None:
        """Read a unit of several words: ``fl oz``, ``metric cup``, ``US cup``."""
        words = [word]
        while words[-1] in _JOINED_BEFORE and self._next(len(words)):
            words.append(self._next(len(words)).rstrip("."))
        ours = words[1:] if word == "us" else words
        unit = read_unit(" ".join(ours))
        self._at += len(words) - 1
        if unit is None:
            self._unknown.append(" ".join(words))
            self._at += 1
            return
        self._unit(unit, words[-1], "", exact=word == "us")

    def _unit(self, unit: str, word: str, token: str, *, exact: bool = False) -> None:
        self._at += 1
        if not exact:
            unit = self._means.get(unit, unit)
        self._note(unit, word, token)
        if not self.terms and unit in _WITHOUT_NUMBER:
            self.terms.append(Term(Fraction(1), Fraction(1), ""))
        if not self.terms:
            hint = f'write it as in "1 {unit_text(unit, 1)}"'
            raise self._about_unknown() if self._unknown else self.error("has no number", hint)
        term = self.terms[-1]
        if not term.unit:
            term.unit = unit
        else:
            self._second_unit(term, unit, word)

    def _second_unit(self, term: Term, unit: str, word: str) -> None:
        """Read what follows a unit: a size, the food's own name, or a form spelled like a unit."""
        sizes = (term.unit in SIZES) + (unit in SIZES)
        size, thing = (unit, term.unit) if unit in SIZES else (term.unit, unit)
        if sizes == 1 and dimension(thing) is Dimension.COUNT:
            if thing in THEIR_OWN_NAME and thing != "fruit":
                term.unit = size
            else:
                term.unit = thing
                self._form(size)
        elif word in FORMS:
            self._form(FORMS[word])
        else:
            raise self._two("units")

    def _note(self, unit: str, word: str, token: str) -> None:
        """Say how a letter or mark with more than one meaning was read."""
        bare = token.rstrip(".")
        if bare in ("t", "T", "#"):
            self.readings.append(f"{bare} read as {unit.replace('_', ' ')}")
        elif unit == "ounce" and word in ("oz", "ounce", "ounces") and not self._behind_pounds():
            self.readings.append("oz read as weight")

    def _behind_pounds(self) -> bool:
        return len(self.terms) > 1 and self.terms[-2].unit == "pound"

    def _form(self, form: str) -> None:
        if form == "packed" and self._loosely:
            form = "unpacked"
        self._loosely = False
        if form not in self.forms:
            self.forms.append(form)

    def _small_word(self, word: str) -> None:
        if word in LOOSE:
            self._loosely = True
        elif word in _PLUS:
            self._joined = "+"
        elif word in _RANGE:
            self._to(word)
        elif word in _ABOUT:
            self.readings.append(f"{word} read as exactly")
        elif word == "as" and self._here() == "needed":
            self._taste()
        elif word not in FILLERS:
            self._unknown.append(word)

    def _to(self, word: str) -> None:
        """Read ``to taste``, or the ``to`` of ``2 tsp to 1 Tbsp``."""
        if self._here() == "taste":
            self._taste()
        elif word == "or" and (self._here(), self._next()) in (("to", "taste"), ("as", "needed")):
            pass
        elif self.terms and self.terms[-1].unit:
            self._joined = "to"
        else:
            self._unknown.append(word)

    def _taste(self) -> None:
        self._at += 1
        self.to_taste = True

    # --- marks

    def _mark(self, token: str) -> None:
        self._at += 1
        if token == ",":
            self._comma()
        elif token in _PLUS:
            self._joined = "+"
        elif token in "-–":
            self._dash()
        elif token == "(" and self._here()[:1] in _DIGITS and self._here():
            raise self.error(
                "has a second amount in brackets", "write one amount, and the other in a note"
            )
        elif token in _ABOUT:
            self.readings.append("~ read as exactly")
        elif token not in "()":
            raise self.error(
                f"has a mark that cannot be read: {token}", "write an amount such as 1 1/2 cups"
            )

    def _comma(self) -> None:
        before = self._tokens[self._at - 2] if self._at > 1 else ""
        if before[-1:].isdigit() and self._here().isdigit():
            raise refuse_comma(before, self._here(), self.what, self.text)

    def _dash(self) -> None:
        """Read a dash that is no range of bare numbers: a sign, a range, or a hyphen."""
        if self._here()[:1] not in _DIGITS or not self._here():
            return
        if self._awaits_number():
            raise self.error("is negative", "write an amount above zero")
        self._joined = "to"

    def _here(self) -> str:
        return self._next(0)

    def _next(self, ahead: int = 1) -> str:
        """Return the token so far ahead in small letters, or an empty string behind the last."""
        at = self._at + ahead
        return self._tokens[at].lower() if at < len(self._tokens) else ""

    # --- the end

    def _finish(self) -> None:
        if self._unknown:
            raise self._about_unknown()
        if self._joined:
            raise self.error("ends in the middle of a sum or range")
        for term in self.terms:
            if not term.unit:
                raise self.error("has no unit", self._needs_unit())
        if not self.terms and not self.to_taste:
            raise self.error("has no number", "write an amount such as 1 1/2 cups, or to taste")
        if len(self.forms) > 1:
            self.forms.sort(key=place_of)

    def _about_unknown(self) -> AmountError:
        word = self._unknown[0]
        if word in _NOT_NUMBERS:
            return self.error("is not a number", "write an amount such as 1 1/2 cups")
        if word in VAGUE:
            return self.error(
                f"says {quoted(word)}, which cannot be scaled",
                'write how much, such as "1 tsp", or "to taste"',
            )
        if self.terms and not self.terms[-1].unit:
            if word == "e":
                return self.error("has an exponent", "write the number out")
            return self.error(
                "has no unit I know", _near_unit(word, self.what) or self._needs_unit()
            )
        hint = _near_form(word) or "put remarks in a note"
        return self.error(f"has a word I do not know: {quoted(word)}", hint)

    def _two(self, things: str) -> AmountError:
        return self.error(f"has two {things}", "write one amount, and the rest in a note")

    def _needs_unit(self) -> str:
        finer = self._finer()
        if finer:
            return f"write {finer} if you mean that"
        return _NEEDS_UNIT[self.what].format(n=format_fraction(self.terms[-1].low))

    def _finer(self) -> str:
        """Return ``4 lb 6 oz`` for ``4 lb 6``: nobody guesses it, and most will mean it."""
        first, *others = self.terms
        unit = _FINER.get(first.unit)
        if unit is None or len(others) != 1 or first.low != first.high or others[0].joined == "to":
            return ""
        whole, part = format_fraction(first.low), format_fraction(others[0].low)
        return f"{whole} {unit_text(first.unit, first.low)} {part} {unit}"


@lru_cache(maxsize=256)
def _near_unit(word: str, what: str) -> str:
    return _did_you_mean(near_units(word, MEASURES[what]))


@lru_cache(maxsize=256)
def _near_form(word: str) -> str:
    return _did_you_mean(nearest(word, FORMS))


def _did_you_mean(near: tuple[str, ...]) -> str:
    """Return a hint with the likeliest two words, or an empty string where there are none."""
    return f"did you mean {' or '.join(quoted(one) for one in near[:2])}?" if near else ""
