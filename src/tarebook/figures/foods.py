"""The foods: their names, what they are, and what to watch for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from csv import reader
from fractions import Fraction
from functools import cache, lru_cache

from tarebook.figures.table import cells, columns, keys, lines, rows_of, words
from tarebook.findings import FoodUnknown, nearest
from tarebook.tuples import NamedTuple

_FILE = "foods.csv"
_PLAIN = str.maketrans({"-": " ", "_": " ", ",": " ", ".": " ", "'": None, "’": None, "ñ": "n"})
_JOINED = {mark: letter for mark, letter in _PLAIN.items() if letter != " "}
_POURED_KINDS = frozenset({"liquid", "sauce", "acid", "dairy"})
_DRY = ("citric-acid", "tomato-powder")
_YES_NO: Mapping[str, bool | None] = {"yes": True, "no": False, "": None}


class Food(NamedTuple):
    """One food of ``reference/foods.csv``.

    Attributes:
        key: its name in the tables.
        name: what a card prints.
        kind: meat, fish, sauce, acid, sweetener, salt, spice, herb, fresh, liquid, fat, dairy,
            starch or other.
        aliases: other names it goes by.
        allergens: major allergens it holds by its kind, fish and crustaceans with the species
            where it is known; the pack always wins.
        other_allergens: what other countries list: mollusc, barley, mustard, celery, sulphites.
        check_for: allergens to look for on the pack.
        allergen_source: id of the source of the three, or an empty string.
        allergen_status: how that was confirmed: S its own text, S2 a copy, M from memory.
        species_group: of a meat: beef, bison, venison (deer and its kin), pork, wild-boar, bear,
            poultry, fish, other, or mushroom; empty for the rest.
        wild: whether it is usually hunted or caught wild; None where both are common.
        curing: a curing salt, which is weighed, never measured by the spoon.
        nitrite_percent: sodium nitrite in it [g per 100 g], or None where not known.
        nitrate_percent: sodium nitrate in it [g per 100 g], or None where not known.
        crystal_unknown: salt whose crystal was not said, so that a spoon of it has no weight.
        advice: one sentence for the cook, or an empty string.
    """

    key: str
    name: str
    kind: str
    aliases: tuple[str, ...]
    allergens: tuple[str, ...]
    other_allergens: tuple[str, ...]
    check_for: tuple[str, ...]
    allergen_source: str
    allergen_status: str
    species_group: str
    wild: bool | None
    curing: bool
    nitrite_percent: Fraction | None
    nitrate_percent: Fraction | None
    crystal_unknown: bool
    advice: str

    @property
    def poured(self) -> bool:
        """Whether it is a liquid that kitchens and shops tell by volume."""
        if self.key.startswith("oil-"):
            return True
        return self.kind in _POURED_KINDS and not self.key.startswith(_DRY)


def normalised(name: str) -> str:
    """Return a name as the tables compare it: lower case, hyphens for blanks, no commas."""
    return "-".join(name.lower().translate(_PLAIN).split())


@lru_cache(maxsize=1024)
def food(name: str) -> Food:
    """Return the food that goes by a name: its key, printed name or any alias, one or many of it.

    Args:
        name: as a cook writes it; case, blanks, hyphens and underscores do not matter.

    Raises:
        FoodUnknown: no food, or more than one, goes by that name; carries near names.
    """
    for spelling in _spellings(name):
        if rows_of(_FILE, spelling):
            return _food(spelling)
        key = _called(spelling)
        if key:
            return _food(key)
    raise FoodUnknown(name, lambda: _near(name))


def food_keys() -> tuple[str, ...]:
    """Return the key of every food, in table order."""
    return keys(_FILE)


def salt_kinds() -> tuple[str, ...]:
    """Return the keys of the plain salts whose crystal is known, for a cook to choose from."""
    return tuple(key for key in food_keys() if key.startswith("salt-"))


def find_foods(sought: str) -> tuple[Food, ...]:
    """Return the foods that some words could mean, the likeliest first.

    Args:
        sought: one or more words, in any order; parts of words will do.

    Returns:
        Foods whose names hold all the words; where there are none, the few that hold a rare one
        of them, and those with names like it.
    """
    asked = _plain_words(sought)
    if not asked:
        return ()
    hits = _holding(asked)
    if hits:
        return tuple(map(_food, hits))
    rare = [found for word in asked if 0 < len(found := _holding((word,))) <= _FEW]
    keys = (*min(rare, key=len, default=()), *_like(sought, most=8))
    return tuple(map(_food, dict.fromkeys(keys)))


def _holding(asked: tuple[str, ...]) -> list[str]:
    """Return the keys of foods with all these words in one of their names, the likeliest first."""
    ranked = [(_rank(asked, key), key) for key in food_keys()]
    return [key for (rank, _), key in sorted(ranked, key=_by_rank) if rank < _NO_MATCH]


_WHOLE_WORDS, _NO_MATCH = 2, 9
_FEW = 3


def _by_rank(entry: tuple[tuple[int, int], str]) -> tuple[int, int]:
    return entry[0]


def _rank(asked: tuple[str, ...], key: str) -> tuple[int, int]:
    return min((_match(asked, name), len(name)) for name in _spoken(key))


def _match(asked: tuple[str, ...], name: tuple[str, ...]) -> int:
    tests: tuple[Callable[[], bool], ...] = (
        lambda: asked == name,
        lambda: asked == name[: len(asked)],
        lambda: all(word in name for word in asked),
        lambda: all(any(part.startswith(word) for part in name) for word in asked),
        lambda: all(any(word in part for part in name) for word in asked),
    )
    return next((rank for rank, holds in enumerate(tests) if holds()), _NO_MATCH)


@cache
def _spoken(key: str) -> tuple[tuple[str, ...], ...]:
    found = _food(key)
    return tuple(_plain_words(name) for name in (found.key, found.name, *found.aliases))


def _plain_words(text: str) -> tuple[str, ...]:
    bare = normalised(text).replace("(", "").replace(")", "")
    return tuple(word for word in bare.split("-") if word)


def _near(name: str) -> tuple[str, ...]:
    asked = _plain_words(name)
    holding = [key for key in food_keys() if asked and _rank(asked, key)[0] <= _WHOLE_WORDS]
    return tuple(holding[:4]) or _like(name, most=3)


def _like(name: str, *, most: int) -> tuple[str, ...]:
    names = {key: key for key in food_keys()} | _aliases()
    found = nearest(normalised(name), names, most=most)
    return tuple(dict.fromkeys(names[spelling] for spelling in found))


def _spellings(name: str) -> Iterator[str]:
    plain = normalised(name)
    yield plain
    for end, start in _PLURALS:
        if plain.endswith(end):
            yield plain[: -len(end)] + start


_PLURALS = (("s", ""), ("es", ""), ("ies", "y"))


def _called(spelling: str) -> str:
    """Return the key of the food that goes by a spelling, or nothing.

    Only lines that hold all of its words are taken apart: taking all apart costs a hundred times as
    much, and a recipe asks for a dozen names.
    """
    asked = spelling.split("-")
    for plain, line in zip(_plain_lines(), lines(_FILE), strict=True):
        if all(word in plain for word in asked) and spelling in (names := _names_on(line)):
            return names[spelling]
    return ""


@cache
def _plain_lines() -> list[str]:
    return "\n".join(lines(_FILE)).lower().translate(_JOINED).split("\n")


def _names_on(line: str) -> dict[str, str]:
    """Return the key of a food by each name that its line tells."""
    name, aliases = (columns(_FILE)[column] for column in ("name", "aliases"))
    (row,) = reader([line])
    told = f"{row[name]};{row[aliases]}".lower().translate(_PLAIN).split(";")
    return {"-".join(spoken.split()): row[0] for spoken in told if spoken}


@cache
def _aliases() -> dict[str, str]:
    return {name: key for line in lines(_FILE) for name, key in _names_on(line).items()}


@cache
def _food(key: str) -> Food:
    text = cells(_FILE, rows_of(_FILE, key)[0])
    return Food(
        key=key,
        name=text["name"],
        kind=text["kind"],
        aliases=words(text["aliases"]),
        allergens=words(text["allergens"]),
        other_allergens=words(text["other_allergens"]),
        check_for=words(text["check_for"]),
        allergen_source=text["allergen_source"],
        allergen_status=text["allergen_status"],
        species_group=text["species_group"],
        wild=_YES_NO[text["wild"]],
        curing=text["curing"] == "yes",
        nitrite_percent=_percent(text["nitrite_percent"]),
        nitrate_percent=_percent(text["nitrate_percent"]),
        crystal_unknown=text["crystal_unknown"] == "yes",
        advice=text["advice"],
    )


def _percent(text: str) -> Fraction | None:
    return Fraction(text) if text else None
