"""A cook's sentences, taken apart into clauses: what a "no" in one of them is about."""

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
_OPENERS = words_of("but and then until till before while")


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
        stops = ends or token.endswith(",") or (("(" in token or ")" in token) and not figure)
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
