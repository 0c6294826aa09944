"""A recipe that was taken from a page, as a TOML file of ours for the cook to finish.

What was not read stands there as it stood, in a remark that begins with ``not read``; what a
recipe needs and the page does not tell is a place that begins with ``to fill in``. No weight of
meat, no density and no part of a recipe is made up.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import cache, lru_cache

from tarebook.exchange.formed import formed
from tarebook.exchange.line import IngredientLine, read_line
from tarebook.exchange.taken import Taken
from tarebook.exchange.vocabulary import heads, known
from tarebook.figures.foods import Food, food, food_keys, normalised
from tarebook.findings import FoodUnknown
from tarebook.quantities import Dimension, dimension, factor
from tarebook.recipe import keys
from tarebook.recipe.bottles import own_foods
from tarebook.recipe.fields import LONGEST_LINE
from tarebook.toml.layout import list_text
from tarebook.toml.locate import key_text, quoted
from tarebook.tuples import NamedTuple

__all__ = ["Brought", "bring"]

NOT_READ, TO_FILL_IN = "not read", "to fill in"
_MOST_NEAR = 30
_DRIED_KINDS = ("meat", "fish")
_PARTS = {"rub": "rub", "mixed-in": "mixed-in", "mixed": "mixed-in", "marinade": "marinade",
          "brine": "marinade"}  # fmt: skip
_ASKED = {
    "soak": ("hours", "surface", "poured-away"),
    "heat": ("step",),
    "drying": ("temperature", "hours"),
}
"""What a recipe of ours is the better for, and no page tells apart."""
_PURPOSES = r"(?i)for the (?:rub|marinade|brine)|mixed into the meat"
_STRENGTH = r"(\d{1,2}(?:\.\d{1,4})?) ?%(?: sodium)? nitrite"


class Brought(NamedTuple):
    """The file that was made, and what to tell of it.

    Attributes:
        text: the TOML file.
        read: how many lines were read into ingredients and meat.
        not_read: lines that were not, as they stood; headings are no such lines.
        unknown: names that no food goes by, each with near ones.
        to_fill_in: what the cook has to fill in.
    """

    text: str
    read: int
    not_read: tuple[str, ...]
    unknown: tuple[tuple[str, tuple[str, ...]], ...]
    to_fill_in: tuple[str, ...]


class _Entry(NamedTuple):
    """One line of the page, read or not."""

    line: IngredientLine
    found: Food | None
    name: str
    part: str
    why: str = ""
    near: tuple[str, ...] = ()

    @property
    def unknown(self) -> bool:
        """Whether no food, and no bottle of the cook's own, goes by its name."""
        named = self.found is not None or normalised(self.name) in own_foods()
        return not (named or self.why)


def bring(taken: Taken, source: str, *, schema: str = "") -> Brought:
    """Return the file of ours that a taken recipe makes.

    Args:
        taken: what the page says.
        source: name of the page's file.
        schema: path of the JSON Schema for editors, or nothing.
    """
    entries = list(_with_near(_entries(taken.lines)))
    meat = _meat_of(entries)
    others = [entry for entry in entries if entry is not meat]
    told = [("meat", *_meat(meat)), *_parts(others)]
    fill_in = [what for _, _, asked in told for what in asked]
    if not taken.title:
        fill_in.insert(0, "its title")
    blocks = [_top(taken, source, schema), *(text for _, text, _ in told), *_rest(taken)]
    unknown = [entry for entry in others if entry.unknown]
    return Brought(
        text="\n".join(block for block in blocks if block),
        read=sum(not entry.why for entry in entries),
        not_read=tuple(
            entry.line.text for entry in entries if entry.why and not _is_heading(entry)
        ),
        unknown=tuple((entry.name, entry.near) for entry in unknown),
        to_fill_in=tuple(dict.fromkeys(fill_in)),
    )


# --- lines


def _entries(lines: Iterable[str]) -> Iterable[_Entry]:
    part = ""
    for text in lines:
        line = read_line(text)
        if not line.foods:
            part = _part_in(text) or part
            yield _Entry(line, None, "", part, "names no ingredient")
        elif line.amount is None:
            yield _entry(line, line.foods[0], part)
        elif len(line.foods) > 1 and not _shared(line):
            yield _Entry(line, None, "", part, "one amount for several foods")
        else:
            for name in line.foods:
                yield _entry(line, name, part)


def _entry(line: IngredientLine, name: str, part: str) -> _Entry:
    part = _purpose_in(line.note) or part
    why = "" if line.amount else "tells no amount"
    return _Entry(line, _food_of(name), name, part, why)


def _shared(line: IngredientLine) -> bool:
    """Return whether several foods have an amount each, and not one together."""
    each = re.search(r"\beach\b", line.text, re.IGNORECASE)
    return bool(each) or (line.amount is not None and line.amount.low is None)


def _part_in(heading: str) -> str:
    """Return the part of a recipe that a heading names, or nothing."""
    purpose = _purpose_in(heading)
    if purpose or len(heading.split()) > 4 or any(letter.isdigit() for letter in heading):
        return purpose
    words = re.findall(r"[a-z-]+", heading.lower())
    return next((_PARTS[word] for word in words if word in _PARTS), "")


def _purpose_in(text: str) -> str:
    """Return the part that a note says a line is for, or nothing."""
    match = re.search(r"(?i)\bfor (?:the |a )?(rub|marinade|brine)\b|\b(mixed) into the meat", text)
    return _PARTS[(match.group(1) or match.group(2)).lower()] if match else ""


def _is_heading(entry: _Entry) -> bool:
    text = entry.line.text.strip()
    return not entry.line.foods and (text.endswith(":") or bool(_part_in(text)))


@lru_cache(maxsize=1024)
def _food_of(name: str) -> Food | None:
    """Return the food a name stands for: by any name the table has, or a cut of a meat it has."""
    return _food_called(name) or _cut_of(name)


def _food_called(name: str) -> Food | None:
    """Return the food of that name; whether there is one is looked up before near ones are."""
    plain = normalised(name)
    if not any(one in _every_name() for one in (plain, plain[:-1], plain[:-2], f"{plain[:-3]}y")):
        return None
    try:
        return food(name)
    except FoodUnknown:
        return None


@cache
def _every_name() -> frozenset[str]:
    foods = (food(key) for key in food_keys())
    return frozenset(
        normalised(name) for one in foods for name in (one.key, one.name, *one.aliases)
    )


def _cut_of(name: str) -> Food | None:
    """Return the meat of ``elk top round``: a meat of the table with only words of cuts besides."""
    words = name.replace("-", " ").split()
    for size in range(len(words) - 1, 0, -1):
        for start in range(len(words) - size + 1):
            rest = words[:start] + words[start + size :]
            if not all(_is_cut(word) for word in rest):
                continue
            found = _food_called(" ".join(words[start : start + size]))
            if found and found.kind in _DRIED_KINDS:
                return found
    return None


def _is_cut(word: str) -> bool:
    bare = word.removesuffix("s")
    of_meat = {head for head, names in heads().items() if "venison" in names}
    poured = {head for head, names in heads().items() if "vegetable" in names}  # stock, broth
    return bare in of_meat - poured or word in known("cuts") or bare in known("cuts")


def _with_near(entries: Iterable[_Entry]) -> Iterable[_Entry]:
    """Yield entries with names like theirs where unknown; of very many, only for the first."""
    left = _MOST_NEAR
    for entry in entries:
        if left and entry.unknown:
            left -= 1
            entry = entry._replace(near=_near(entry.name))
        yield entry


@lru_cache(maxsize=256)
def _near(name: str) -> tuple[str, ...]:
    try:
        food(name)
    except FoodUnknown as fault:
        return fault.near
    return ()


# --- meat


def _meat_of(entries: Sequence[_Entry]) -> _Entry | None:
    """Return the line of what is dried: the most meat or fish by weight, or else mushrooms."""
    for kinds in (_is_meat, _is_mushroom):
        weighed = [one for one in entries if one.found and kinds(one.found)]
        if weighed:
            return max(weighed, key=_mass_g)
    return None


def _is_meat(one: Food) -> bool:
    return one.kind in _DRIED_KINDS and one.key not in ("bacon", "anchovy-canned")


def _is_mushroom(one: Food) -> bool:
    return one.species_group == "mushroom"


def _mass_g(entry: _Entry) -> Fraction:
    amount = entry.line.amount
    if amount is None or amount.high is None or dimension(amount.unit) is not Dimension.MASS:
        return Fraction(0)
    return amount.high * factor(amount.unit, "gram")


def _meat(entry: _Entry | None) -> tuple[str, list[str]]:
    """Return the table of the meat, and what to fill in there."""
    rows: list[str] = []
    asked: list[str] = []
    if entry is None or entry.found is None:
        rows.append(f"# {TO_FILL_IN}: the file names no meat, fish or mushrooms that I know")
        asked.append("what is dried")
    else:
        rows.append(f"# as it stood: {_remark(entry.line.text)}")
        rows.append(f"food = {quoted(entry.found.key)}")
    amount = entry.line.amount if entry else None
    if amount and not amount.is_range and entry and _mass_g(entry):
        rows.append(f"amount = {quoted(str(amount))}")
    else:
        rows.append(f"# {TO_FILL_IN}: the trimmed raw weight that the amounts are for")
        asked.append("the weight of the meat")
    rows += [f"# {TO_FILL_IN} if it is known: {key}" for key in _hints(keys.MEAT, ("thickness",))]
    return f"# {keys.SAYS_OF_SECTION['meat']}\n[meat]\n" + "\n".join(rows) + "\n", asked


def _hints(table: object, names: Sequence[str]) -> list[str]:
    assert isinstance(table, dict) or hasattr(table, "__getitem__")
    return [f"{name} = {table[name].example}" for name in names]


# --- ingredients


def _parts(entries: Sequence[_Entry]) -> list[tuple[str, str, list[str]]]:
    """Return a block for each part; lines of no stated part go to the likeliest one."""
    poured = any(entry.found and entry.found.poured for entry in entries)
    usual = "marinade" if poured or not entries else "rub"
    blocks: dict[str, list[str]] = {}
    taken: set[str] = set()
    unsaid = False
    for entry in entries:
        part = entry.part or usual
        unsaid = unsaid or (not entry.part and not entry.why)
        blocks.setdefault(part, []).append(_row(entry, taken))
    told: list[tuple[str, str, list[str]]] = []
    for part, rows in blocks.items():
        lead = f"# {keys.PARTS[part]}\n"
        if unsaid and part == usual:
            lead += (
                "# The file does not say which are for a marinade and which for a rub: see to it.\n"
            )
        told.append((part, f"{lead}[{part}]\n" + "".join(f"{row}\n" for row in rows), []))
    return told


def _row(entry: _Entry, taken: set[str]) -> str:
    """Return the line of an ingredient, or the remark that keeps it as it stood."""
    text = _remark(entry.line.text)
    if entry.why:
        return f"# {text}" if _is_heading(entry) else f"# {NOT_READ} ({entry.why}): {text}"
    assert entry.line.amount is not None
    amount, told = formed(entry.line.amount, entry.line.note)
    note = "; ".join(one for one in told if not re.fullmatch(_PURPOSES, one))
    if entry.line.optional:
        note = f"optional; {note}" if note else "optional"
    key = entry.found.key if entry.found else _short(entry.name)
    rows = {"amount": quoted(str(amount))}
    name, number = key, 2
    while name in taken:
        name, number = f"{key} {number}", number + 1
    taken.add(name)
    if name != key:
        rows = {"food": quoted(key), **rows}
    strength = re.search(_STRENGTH, entry.line.note) if entry.found and entry.found.curing else None
    if strength:
        rows["strength"] = quoted(f"{strength.group(1)} %")
        note = note.replace(strength.group(), "").strip(" ;,")
    if note:
        rows["note"] = quoted(_short(note))
    value = rows["amount"] if len(rows) == 1 else _inline(rows)
    row = f"{key_text(name)} = {value}"
    if entry.unknown:
        near = ", ".join(entry.near)
        hint = f"; near: {near}" if near else ""
        return f"# {TO_FILL_IN}: no food goes by this name{hint}; as it stood: {text}\n{row}"
    return row


def _inline(rows: dict[str, str]) -> str:
    return "{ " + ", ".join(f"{name} = {value}" for name, value in rows.items()) + " }"


# --- the rest


def _top(taken: Taken, source: str, schema: str) -> str:
    rows = [
        *([f"#:schema {schema}"] if schema else []),
        f"# Taken from {_remark(source)}.",
        f'# "{NOT_READ}" stands before lines of it that were not read, "{TO_FILL_IN}"',
        "# where it does not tell what a recipe needs. Nothing was made up.",
        f"title = {quoted(taken.title)}" if taken.title else f'# {TO_FILL_IN}: title = "..."',
    ]
    if taken.about:
        rows.append(f"about = {quoted(taken.about)}")
    rows += [f"# {NOT_READ}: {_remark(one)}" for one in taken.passed_over]
    return "\n".join(rows) + "\n"


def _rest(taken: Taken) -> Iterable[str]:
    """Yield the tables that no page tells, as places to fill in, and the method."""
    for name, asked in _ASKED.items():
        known_keys = (keys.SECTIONS[name][key] for key in asked)
        lines = [f"# {key.name} = {key.example}  # {key.says}" for key in known_keys]
        yield "\n".join((f"# {TO_FILL_IN} if it is known", f"[{name}]", *lines)) + "\n"
    rows = []
    if taken.steps:
        rows.append(f"steps = {list_text(taken.steps, 'steps = ')}\n")
    if taken.notes:
        rows.append(f"notes = {list_text(taken.notes, 'notes = ')}\n")
    if rows:
        yield "[method]\n" + "".join(rows)


def _short(text: str) -> str:
    return text if len(text) <= LONGEST_LINE else text[: LONGEST_LINE - 3].rstrip() + "..."


def _remark(text: str) -> str:
    """Return a text that may stand in a remark: on one line, and printable."""
    plain = "".join(letter if letter.isprintable() else " " for letter in text)
    return " ".join(plain.split())[:1000]
