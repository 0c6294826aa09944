"""A cook's sentences by their clauses: what a "no" in one is about, how hot, how long."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tarebook.tuples import NamedTuple


class Clause(NamedTuple):
    """Some words of a sentence.

    Attributes:
        words: in small letters, without their stops.
        text: the same, with a blank between them and at either end.
        opens: the word before them that began a new clause, as ``until``; empty for a comma.
    """

    words: tuple[str, ...]
    text: str
    opens: str = ""

    @classmethod
    def of(cls, words: Sequence[str], opens: str = "") -> Clause:
        """Return the clause of some words."""
        return cls(tuple(words), f" {' '.join(words)} ", opens)

    def has(self, *any_of: frozenset[str]) -> bool:
        """Return whether one of some words is in it."""
        return any(not several.isdisjoint(self.words) for several in any_of)

    def asks(self, phrase: str) -> bool:
        """Return whether it holds some words with no "no" before them."""
        if phrase not in self.text:
            return False
        before, found, _ = self.text.partition(f" {phrase}")
        return bool(found) and NO.isdisjoint(before.split())


Sentence = tuple[Clause, ...]


def words_of(words: str) -> frozenset[str]:
    """Return a set of words from a line of them."""
    return frozenset(words.split())


NO = words_of("not never don't no without cannot can't mustn't nor avoid instead isn't")
_BARE = (80.0, 160.0)  # [degF] a number without a scale that can only be a dryer's or a piece's
_OPENERS = words_of("but and then until till before while")


DAYS = {"day": 1.0, "week": 7.0, "month": 30.5, "year": 365.0}
"""How long each is [day]."""
_COUNTS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8,
    "nine": 9, "ten": 10, "twelve": 12, "several": 3, "many": 6, "for": 2, "whole": 1, "full": 1,
}  # fmt: skip


def sentences(text: str) -> Iterator[Sentence]:
    """Yield the sentences of a text, each as its clauses."""
    clauses: list[Clause] = []
    words: list[str] = []
    opens, figure = "", False
    tokens = text.lower().replace("’", "'").replace("°", " ").replace("º", " ").split()
    for at, token in enumerate(tokens):
        if token.startswith("("):
            figure = token[1:2].isdigit()
        bare = token.strip("()[]\"'“”.,;:!?—–-")
        ends = token.endswith((".", ";", "!", "?", ":", ".)"))
        stops = ends or token.endswith(",") or (")" in token and not figure)
        if bare in _OPENERS or (token.startswith("(") and not figure):
            if words:
                clauses.append(Clause.of(words, opens))
            words, opens = ([], bare) if bare in _OPENERS else ([bare], "")
        elif bare:
            words.append(bare)
        following = tokens[at + 1] if at + 1 < len(tokens) else ""
        if stops and words and not (token.endswith(",") and following in ("or", "nor")):
            clauses.append(Clause.of(words, opens))
            words, opens = [], ""
        if ends and clauses:
            yield tuple(clauses)
            clauses = []
    if words:
        clauses.append(Clause.of(words, opens))
    if clauses:
        yield tuple(clauses)


def degrees_in(clause: Clause, *, bare: bool) -> Iterator[float]:
    """Yield the temperatures of a clause, the lower end of a range [degF].

    Args:
        clause: as taken apart.
        bare: whether a number without a scale may be one too.
    """
    words = (*clause.words, "")
    for at, word in enumerate(words[:-1]):
        following = words[at + 1]
        number = number_of(word.rstrip("fc"))
        if number is None:
            continue
        scale = word[-1] if word[-1] in "fc" else following[:1] if _is_scale(following) else ""
        if following in ("degrees", "degree"):
            scale = words[at + 2][:1] if _is_scale(words[at + 2]) else "f"
        if scale == "c":
            yield number * 1.8 + 32
        elif scale == "f" or (
            bare and _is_bare(number, words[at - 1] if at else clause.opens, following)
        ):
            yield number


def _is_scale(word: str) -> bool:
    return word in ("f", "c", "fahrenheit", "celsius")


def _is_bare(number: float, before: str, following: str) -> bool:
    """Return whether a number without a scale is a temperature."""
    ends = ("", "inside", "for", "all", "in", "on", "with", "overnight", "internal", "internally")
    leads = ("at", "to", "reads", "reaches", "about", "is", "until", "till")
    return _BARE[0] <= number <= _BARE[1] and before in leads and following in ends


def number_of(word: str) -> float | None:
    """Return the number of a word, of a range the lower end; None for what is none."""
    low = word.replace("–", "-").partition("-")[0]
    return float(low) if low.replace(".", "", 1).isdigit() else None


def days_in(clause: Clause) -> float:
    """Return the longest time that a clause speaks of [day]; 0 where of none."""
    found = 0.0
    for at, word in enumerate(clause.words[1:]):
        before = clause.words[at]
        unit = DAYS.get(word.rstrip("s"))
        if unit is not None:
            plural = before != "for" or word.endswith("s")
            count = _COUNTS.get(before, number_of(before) or 0.0) if plural else 0.0
            found = max(found, unit * count)
    return found
