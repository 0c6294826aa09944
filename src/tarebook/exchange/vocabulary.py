"""Words of ingredient lines, sorted by what they do there; read from ``reference/line-words.txt``.

A word of *kind* is part of what to buy (``low-sodium``, ``smoked``); a word of *state* says what
hands did to it (``minced``, ``boneless``) and goes to the note. A *portion* noun is how it is
counted (``clove``), and no part of the name.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from tarebook.where import folder

__all__ = ["EXACT_UNITS", "NUMBER_WORDS", "PARTS", "heads", "known", "singular"]

_NUMBERS = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen"
    " sixteen seventeen eighteen nineteen twenty"
)
NUMBER_WORDS = {word: number for number, word in enumerate(_NUMBERS.split(" "), start=1)} | {
    "thirty": 30,
    "forty": 40,
    "fifty": 50,
    "sixty": 60,
    "hundred": 100,
}

PARTS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4,
    "fourths": 4, "fifth": 5, "fifths": 5, "sixth": 6, "sixths": 6, "eighth": 8, "eighths": 8,
    "eigth": 8, "sixteenth": 16,
}  # fmt: skip
"""Words for a part of one, and how many of it make one."""

EXACT_UNITS = {
    "dl": ("mL", 100), "deciliter": ("mL", 100), "deciliters": ("mL", 100),
    "decilitre": ("mL", 100), "decilitres": ("mL", 100), "cl": ("mL", 10),
    "centiliter": ("mL", 10), "centiliters": ("mL", 10), "centilitre": ("mL", 10),
    "centilitres": ("mL", 10), "hg": ("g", 100), "hectogram": ("g", 100),
    "hectograms": ("g", 100), "hecto": ("g", 100), "dag": ("g", 10), "dkg": ("g", 10),
    "deka": ("g", 10), "decagram": ("g", 10), "decagrams": ("g", 10), "dekagram": ("g", 10),
    "dekagrams": ("g", 10), "gr": ("g", 1), "grs": ("g", 1), "gms": ("g", 1), "grm": ("g", 1),
    "grms": ("g", 1), "gram.": ("g", 1), "kilogramme": ("kg", 1), "kilogrammes": ("kg", 1),
    "lt": ("L", 1), "lts": ("L", 1), "lit": ("L", 1), "mil": ("mL", 1), "mils": ("mL", 1),
    "el": ("metric Tbsp", 1), "esslöffel": ("metric Tbsp", 1), "msk": ("metric Tbsp", 1),
    "rkl": ("metric Tbsp", 1), "tl": ("metric tsp", 1), "teelöffel": ("metric tsp", 1),
    "tsk": ("metric tsp", 1), "krm": ("mL", 1), "cupful": ("cup", 1), "cupfuls": ("cup", 1),
    "cupsful": ("cup", 1), "ozs": ("oz", 1), "onces": ("oz", 1), "pd": ("lb", 1),
    "qrt": ("quart", 1), "qrts": ("quart", 1), "pnt": ("pint", 1), "pnts": ("pint", 1),
    "pnd": ("lb", 1), "pinchful": ("pinch", 1), "leafs": ("leaf", 1), "pieces": ("piece", 1),
    "pkt": ("packet", 1), "pkts": ("packet", 1), "pack": ("package", 1), "packs": ("package", 1),
    "handsful": ("handful", 1), "bunchs": ("bunch", 1), "chunk": ("piece", 1),
    "chunks": ("piece", 1), "rasher": ("slice", 1), "rashers": ("slice", 1),
    "sprigs": ("sprig", 1), "pkge": ("package", 1), "tablespoonsful": ("Tbsp", 1),
    "teaspoonsful": ("tsp", 1), "tbspful": ("Tbsp", 1), "cu": ("cup", 1), "galons": ("gallon", 1),
}  # fmt: skip
"""Units and spellings the units file lacks: the unit of ours, and how many of it one is."""


def known(name: str) -> frozenset[str]:
    """Return a set of words by its name in the file.

    Example:
        >>> sorted(known("sizes"))
        ['large', 'medium', 'small']
    """
    return _read()[0][name]


def heads() -> Mapping[str, frozenset[str]]:
    """Return last words of names (``powder``), each with words that are no name without it."""
    return _read()[1]


def singular(word: str) -> str:
    """Return a word in the singular, as far as kitchens need it (``leaves``, ``berries``).

    Example:
        >>> singular("leaves"), singular("berries"), singular("radishes"), singular("cloves")
        ('leaf', 'berry', 'radish', 'clove')
    """
    word = word.rstrip(".")
    irregular = {"leaves": "leaf", "halves": "half", "geese": "goose", "loaves": "loaf",
                 "knives": "knife", "molasses": "molasses", "swiss": "swiss"}  # fmt: skip
    if word in irregular:
        return irregular[word]
    if len(word) < 4 or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "oes", "xes", "sses")):
        return word[:-2]
    return word[:-1]


@cache
def _read() -> tuple[dict[str, frozenset[str]], dict[str, frozenset[str]]]:
    text = (folder("reference") / "line-words.txt").read_text(encoding="utf-8")
    lines = (line for line in text.splitlines() if line and line[0] != "#")
    named: dict[str, str] = {}
    name = ""
    for line in lines:
        if line[0] != " ":
            name, _, line = line.partition(":")
        named[name] = named.get(name, "") + " " + line
    sets = {name: frozenset(_words(listed)) for name, listed in named.items()}
    parted = [(name.removeprefix("of "), found) for name, found in sets.items() if " " in name]
    return sets, {head: found for told, found in parted for head in told.split()}


def _words(text: str) -> list[str]:
    return [word.replace("_", " ") for word in text.split()]
