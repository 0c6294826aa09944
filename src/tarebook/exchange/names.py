"""The food's name in a part of an ingredient line, freed from hands, praise and purpose."""

from __future__ import annotations

from collections.abc import Sequence

from tarebook.exchange.tokens import Token, said
from tarebook.exchange.vocabulary import heads, known, singular
from tarebook.quantities import Dimension, dimension, read_unit
from tarebook.tuples import NamedTuple

__all__ = ["Name", "is_kind", "is_state", "read_name", "turned_round", "unit_of_count"]

_JOINERS = ("and", "&", "+", "n'", "plus")
_ORS = ("or", "/", "and/or")
_FILLERS = (
    "of",
    "the",
    "a",
    "an",
    "each",
    "both",
    "some",
    "our",
    "your",
    "my",
    "x",
    ".",
    "'s",
    "and",
)
_WHOLE_KINDS = ("grain", "wheat", "milk", "meal", "allspice-berry")
_KEPT_BEFORE = {
    "whole": _WHOLE_KINDS, "cold": ("brew", "smoked"), "flat": ("iron",), "split": ("peas", "pea"),
    "rolled": ("oats",), "cracked": ("wheat",), "fat": ("free",), "well": ("water",),
    "raw": ("sugar-cane",), "thin": ("soy",), "thick": ("soy",), "rough": ("cut",),
    "additional": (), "big": ("game",), "young": ("ginger",), "fine": ("herbs",),
    "young's": (), "hot": (),
}  # fmt: skip
_WHOLE_NAMES = (
    "half and half",
    "sweet and sour",
    "bread and butter",
    "surf and turf",
    "oil and vinegar dressing",
)
_NOT_TURNED = ("ed", "ly", "ing", "ted")


class Name(NamedTuple):
    """What a part of a line names.

    Attributes:
        foods: the foods, in small letters; several share one amount.
        notes: what was said besides.
        counted: the noun that counts it and is no part of the name (``cloves``), or nothing.
        whole: the first name with that noun, for the unit of a bare count.
    """

    foods: tuple[str, ...]
    notes: tuple[str, ...]
    counted: str = ""
    whole: str = ""


def read_name(tokens: Sequence[Token], *, listed: bool = False) -> Name:
    """Return the food or foods that a part of a line names.

    Args:
        tokens: words and marks without amounts and brackets.
        listed: commas part foods that share one amount, as behind ``each``.
    """
    words = [token for token in tokens if token.kind != "bracket"]
    while words and words[0].low in _FILLERS:
        words = words[1:]
    words, state = _without_state(words)
    if state and words and words[0].low in _ORS:  # "fresh or dried thyme"
        state, words = [f"{state[0]} or"], words[1:]
        while len(words) > 1 and words[0].low in known("kind"):
            words = words[1:]
    words, tail = _cut(words)
    notes = [*state, *([said(tail)] if tail else [])]
    words = [word for word in words if word.text not in "\"'"]
    parts, joined = _alternatives(words, notes)
    foods, counted, whole = _foods(parts, notes, joined=joined, listed=listed)
    return Name(
        foods=foods, notes=tuple(note for note in notes if note), counted=counted, whole=whole
    )


def is_state(words: Sequence[str]) -> bool:
    """Return whether words tell only what was done to a food (``firmly packed``)."""
    return bool(words) and all(
        _state_word(word) or word.endswith("ly") or word in ("and", "or", "ground")
        for word in words
    )


def is_kind(words: Sequence[str]) -> bool:
    """Return whether words tell only which kind of a food is meant (``low sodium``)."""
    if not words or not all(
        word in known("kind") or word in known("kind-company") for word in words
    ):
        return False
    about = {"sodium", "salt", "sugar", "fat", "gluten", "wheat", "virgin"} & set(words)
    if about:
        return bool(
            {"low", "lower", "less", "reduced", "no", "free", "extra", "added"} & set(words)
        )
    return any(word in known("kind") for word in words)


def turned_round(name: str, words: Sequence[str]) -> str | None:
    """Return the name with words of a further part where they belong, or None.

    ``pepper`` and ``black`` make ``black pepper``, ``soy sauce`` and ``low sodium`` make
    ``low sodium soy sauce``; ``soy sauce`` and ``divided`` make nothing.
    """
    plain = [word for word in words if word]
    if not plain or not name or "ground" in plain:
        return None
    if singular(plain[-1]) in heads().get(singular(name), ()):
        return f"{' '.join(plain)} {name}"
    if len(plain) > 1 and plain[-1] in known("generic"):
        return None
    if plain[0] == "hot" and name.split()[-1] in known("liquids"):
        return None
    if len(plain) == 1 and plain[0] in known("after"):
        return f"{name} {plain[0]}" if name not in known("generic") else f"{plain[0]} {name}"
    if is_kind(plain):
        return f"{' '.join(plain)} {name}"
    if (
        name in known("generic")
        and len(plain) <= 2
        and plain[-1] not in known("generic")
        and all(_turns(word) for word in plain)
    ):
        return f"{' '.join(plain)} {name}"
    return None


def unit_of_count(whole: str) -> str:
    """Return our name of the unit of a bare count, by the last word of what is counted."""
    head = whole.partition(" in ")[0].split()
    last = head[-1] if head else ""
    unit = read_unit(last) if last else None
    if unit and unit not in ("small", "medium", "large") and dimension(unit) is Dimension.COUNT:
        return unit
    return "fruit" if singular(last) in known("whole-fruit") else "piece"


def _turns(word: str) -> bool:
    kept = word in ("curing", "pickling", "canning", "red")
    plain = (
        word.replace("-", "").isalpha() and not _state_word(word) and word not in known("cut-off")
    )
    small = word in ("in", "or", "and", "of", "if", "a", "the", "see", "half", "all")
    return kept or (plain and not small and not word.endswith(_NOT_TURNED))


def _state_word(word: str) -> bool:
    if word in known("state"):
        return True
    parts = word.split("-")
    return (
        len(parts) > 1
        and all(part in known("state") or part in known("hyphened") for part in parts)
        and any(part in known("state") for part in parts)
    )


def _without_state(words: list[Token]) -> tuple[list[Token], list[str]]:
    """Return the words without those of state in front, and those."""
    gone: list[Token] = []
    while words:
        low = words[0].low
        following = words[1].low if len(words) > 1 else ""
        state = (
            (_state_word(low) and following not in _KEPT_BEFORE.get(low, ()))
            or (low.endswith("ly") and low not in ("jelly", "belly", "lily", "curly") and following)
            or (low == "hot" and _liquid(words[1:]))
            or (low.endswith("ed") and bool(gone) and gone[-1].low.endswith("ly"))
            or (low == "ground" and bool(gone) and _grinding(gone[-1].low))
            or (gone and low in ("and", "or", "&", ",", "/", "to", "-") and _state_word(following))
            or low == "."
        )
        if low in ("very", "extra") and following and _state_word(following):
            state = True
        if (
            words[0].kind == "number"
            and following == "%"
            and len(words) > 2
            and words[2].low == "lean"
        ):
            gone, words = [*gone, *words[:3]], words[3:]
            continue
        if not state:
            break
        gone, words = [*gone, words[0]], words[1:]
    return words, [said(gone)] if gone else []


def _liquid(words: Sequence[Token]) -> bool:
    """Return whether what is named is something poured: ``strong coffee``, ``beef stock``."""
    named = [w.low for w in words if not _state_word(w.low) and w.low not in ("black", "brewed")]
    return bool({*named[:1], *named[-1:]} & known("liquids"))


def _grinding(word: str) -> bool:
    return word.endswith("ly") or word in ("fresh", "coarse", "fine", "medium", "extra-coarse")


def _cut(words: list[Token]) -> tuple[list[Token], list[Token]]:
    """Return the name, and the remark that begins behind it."""
    words = _without_state_amid(words)
    for at in range(1, len(words)):
        if _ends_name(words, at):
            return words[:at], words[at:]
    return words, []


def _without_state_amid(words: list[Token]) -> list[Token]:
    """Return ``dried onion`` for ``dried minced onion``: no remark begins before a noun."""
    kind = next((i for i, word in enumerate(words) if not _kindly(word.low)), len(words))
    behind = words[kind:]
    while 0 < kind and len(behind) > 1 and _state_word(behind[0].low):
        behind = behind[1:]
    return [*words[:kind], *behind]


def _ends_name(words: list[Token], at: int) -> bool:
    """Return whether a remark begins at a place."""
    low, before = words[at].low, words[at - 1].low
    following = words[at + 1].low if at + 1 < len(words) else ""
    number = at + 1 < len(words) and words[at + 1].kind == "number"
    if low in known("cut-off") or (low == "in" and following not in known("kept-in")):
        return True
    if (low == "skin" and following in ("on", "off", "removed")) or (low in _JOINERS and number):
        return True
    if words[at].kind == "number" and _length(following):
        return True
    if before in _JOINERS or before in _ORS or before in (",", "of"):
        return False
    cutting = _state_word(low) and low not in known("only-in-front")
    if cutting and following not in _KEPT_BEFORE.get(low, ()):
        return True
    return low.endswith("ly") and (_state_word(following) or following in ("ground", "smoked"))


def _length(word: str) -> bool:
    return word in ('"', "inch", "inches", "in", "cm", "mm")


def _alternatives(words: list[Token], notes: list[str]) -> tuple[list[Token], bool]:
    """Return the first of several names, completed by a last word that serves both."""
    at = next((i for i, word in enumerate(words) if word.low in _ORS and i), None)
    if at is None:
        return words, False
    first, second = words[:at], words[at + 1 :]
    notes.append(f"or {said(second)}")
    end = next((i for i, word in enumerate(second) if word.low in _ORS), len(second))
    if any(word.kind == "number" for word in second[:end]):
        return first, False
    if any(word.low in _JOINERS for word in first):
        return first, False
    return _completed(first, _served(second), _served(second[:end])), False


def _served(words: list[Token]) -> list[Token]:
    return [word for word in words if word.kind == "word" and word.low not in _ORS]


def _completed(first: list[Token], all_second: list[Token], second: list[Token]) -> list[Token]:
    """Return a first name with what it shares with the second: ``white (or black) pepper``."""
    second, _ = _without_state(second)
    if len(second) < 2 and len(all_second) > len(second):
        second = all_second
    mine = [word.low for word in first]
    theirs = [word.low for word in second]
    if not theirs or not mine:
        return first
    if is_state(mine):
        return [
            word
            for i, word in enumerate(second)
            if word.low not in known("kind") or i == len(second) - 1
        ]
    if len(theirs) < 2:
        return first
    shared = heads().get(singular(theirs[-1]), frozenset())
    if singular(mine[-1]) in shared or mine[-1] in shared:
        at = next((i for i, word in enumerate(theirs[:-1]) if singular(word) in shared), None)
        return [*first, *(second[at + 1 :] if at is not None else second[-1:])]
    if is_kind(mine):
        skip = 0
        while skip < len(theirs) - 1 and skip < len(mine) and _kindly(theirs[skip]):
            skip += 1
        return [*first, *(second[skip:] if skip else second[-1:])]
    return first


def _kindly(word: str) -> bool:
    return word in known("kind") or word in known("kind-company")


def _foods(
    words: list[Token], notes: list[str], *, joined: bool, listed: bool
) -> tuple[tuple[str, ...], str, str]:
    """Return the names that ``and`` (and commas of a list) join, each cleaned."""
    told = said(words).lower()
    if any(name in told for name in _WHOLE_NAMES):
        return (told,), "", told
    groups: list[list[Token]] = [[]]
    for word in words:
        if word.low in _JOINERS or (listed and word.text in (",", ";")):
            groups.append([])
        else:
            groups[-1].append(word)
    groups = [group for group in groups if group]
    last = groups[-1] if groups else []
    done = []
    for group in groups:
        whole = _completed(group, last, last) if group is not last and len(groups) > 1 else group
        if whole is group or not is_state([word.low for word in group]):
            bare, state = _without_state(whole)
            notes += state
            bare, tail = _cut(bare)
            notes += [said(tail)] if tail else []
            done.append(bare)
    cleaned = [_one_name(group) for group in done]
    grindings = zip(done, cleaned, strict=True)
    if any(_lost_grinding(group, name[0]) for group, name in grindings):
        notes.append("ground")
    found = [one for one in cleaned if any(letter.isalpha() for letter in one[0])]
    first = found[0] if found else ("", "", "")
    return tuple(dict.fromkeys(name for name, _, _ in found)), first[1], first[2]


def _lost_grinding(words: list[Token], name: str) -> bool:
    """Return whether ``ground`` went from before a pepper; which density it has hangs on that."""
    return bool(name) and said(words).lower().startswith("ground ") and name[:7] != "ground "


def _one_name(words: list[Token]) -> tuple[str, str, str]:
    """Return one name, the portion noun it had, and the name with that noun."""
    lows = [word for word in said(words).lower().replace(",", " ").split() if word]
    lows = [word.rstrip(".") if word != "no." else word for word in lows]
    lows = [word if word.endswith("s'") else word.strip("'") for word in lows]
    lows = [word for word in lows if word]
    while lows and lows[-1] in ("and", "or", "of", "the", "a", "-", "–", "/"):
        lows = lows[:-1]
    if len(lows) > 1 and lows[0] == "ground" and singular(lows[-1]) in ("pepper", "peppercorn"):
        lows = lows[1:]
    if len(lows) > 2 and singular(lows[0]) in known("portions") and lows[1] == "of":
        return " ".join(lows[2:]), lows[0], lows[0]
    if len(lows) > 1 and lows[0] in ("cloves", "sprigs", "stalks", "slices", "pieces", "clove"):
        return " ".join(lows[1:]), lows[0], lows[0]
    whole = " ".join(lows)
    if len(lows) > 1 and _portion(lows):
        return " ".join(lows[:-1]), lows[-1], whole
    return whole, "", whole


def _portion(lows: list[str]) -> bool:
    last = singular(lows[-1])
    if last not in known("portions") or all(_kindly(word) for word in lows[:-1]):
        return False
    if last == "rib":
        return bool({"celery", "chard", "rhubarb"} & set(lows))
    return not (last == "head" and lows[0] in ("fish", "salmon", "sheep"))
