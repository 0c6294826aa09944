"""Units, their words and their exact factors, read from ``reference/units.txt``.

The file is in the definition syntax of pint, so that ``convert`` builds its registry from the same
lines. Here they are read without pint, since importing it would double the start of a command.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from enum import StrEnum
from fractions import Fraction
from functools import cache, lru_cache
from types import MappingProxyType

from tarebook.findings import UnitError, nearest
from tarebook.tuples import NamedTuple
from tarebook.where import folder

__all__ = [
    "TRADITIONS",
    "Dimension",
    "Unit",
    "dimension",
    "factor",
    "near_units",
    "no_road",
    "read_unit",
    "unit",
    "unit_text",
    "units",
    "units_file",
]


class Dimension(StrEnum):
    """What a unit measures."""

    MASS = "mass"
    VOLUME = "volume"
    COUNT = "count"
    LENGTH = "length"
    TEMPERATURE = "temperature"
    TIME = "time"


class Unit(NamedTuple):
    """One line of the units file.

    Attributes:
        name: our name, in the singular (``fluid_ounce``).
        dimension: what it measures.
        base: the unit its factor leads to; a count is its own base.
        to_base: how many of the base it holds, exact.
        zero: for temperatures, what it calls zero, in the base; otherwise 0.
        one: how one of it is printed (``tsp``, ``clove``).
        many: how several are printed (``tsp``, ``cloves``).
        words: every spelling that is read for it, in small letters, the name first.
        source: source id of the line.
        note: what the source says.
    """

    name: str
    dimension: Dimension
    base: str
    to_base: Fraction
    zero: Fraction
    one: str
    many: str
    words: tuple[str, ...]
    source: str
    note: str


_BASES = {
    "mass": Dimension.MASS,
    "length": Dimension.LENGTH,
    "temperature": Dimension.TEMPERATURE,
    "time": Dimension.TIME,
}

TRADITIONS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "us": MappingProxyType({}),
        "metric": MappingProxyType(
            {name: f"metric_{name}" for name in ("teaspoon", "tablespoon", "cup")}
        ),
        "label": MappingProxyType(
            {name: f"label_{name}" for name in ("teaspoon", "tablespoon", "fluid_ounce", "cup")}
        ),
    }
)
"""What the bare words ``cup``, ``tsp``, ``Tbsp`` and ``fl oz`` mean, by the recipe's ``cup``."""

_ONE = Fraction(1)
_NOTHING = Fraction(0)

# Hand-written letters, told apart by their case alone, and a mark the units file cannot hold.
_EXACT = {"t": "teaspoon", "T": "tablespoon", "#": "pound", '"': "inch", "″": "inch", "”": "inch"}


def dimension(name: str) -> Dimension:
    """Return what a unit measures.

    Args:
        name: our name of the unit (``fluid_ounce``).

    Raises:
        UnitError: no unit goes by that name.

    Example:
        >>> dimension("dash")
        <Dimension.VOLUME: 'volume'>
    """
    return unit(name).dimension


@lru_cache(maxsize=1024)
def factor(given: str, to: str) -> Fraction:
    """Return how many of one unit make up another, exactly.

    Args:
        given: our name of the unit there is (``cup``).
        to: our name of the unit wanted (``milliliter``).

    Returns:
        Factor to multiply an amount in ``given`` by [``to`` per ``given``].

    Raises:
        UnitError: a unit is not known, or the two measure different things. A count turns into
            no other count, and a temperature is turned by scale and zero, never by a factor.

    Source:
        ``reference/units.txt``, line by line.

    Example:
        >>> factor("cup", "tablespoon")
        Fraction(16, 1)
        >>> factor("teaspoon", "milliliter")
        Fraction(157725491, 32000000)
    """
    have, want = unit(given), unit(to)
    if have.base != want.base:
        raise no_road(have, want)
    if have.dimension is Dimension.TEMPERATURE:
        raise UnitError("a temperature is not turned by a factor", given=given, wanted=to)
    return have.to_base / want.to_base


def unit(name: str) -> Unit:
    """Return the unit of that name; ``UnitError`` with near names where there is none."""
    try:
        return _read(name)
    except KeyError:
        pass
    near = nearest(name, units())
    hint = f"did you mean {' or '.join(near)}?" if near else ""
    raise UnitError(f'no unit is called "{name[:40]}"', given=name, hint=hint)


@lru_cache(maxsize=1024)
def read_unit(word: str) -> str | None:
    """Return our name of the unit a cook's word stands for, or None if it stands for none.

    Args:
        word: one word or two, as written (``Tbsp``, ``fl. oz.``, ``cloves``). Case matters for a
            bare ``t`` (teaspoon) and ``T`` (tablespoon) only.

    Example:
        >>> read_unit("T"), read_unit("t"), read_unit("fl. oz."), read_unit("cpu")
        ('tablespoon', 'teaspoon', 'fluid_ounce', None)
    """
    bare = word.replace(".", " ").strip()
    if bare in _EXACT:
        return _EXACT[bare]
    return _words().get(" ".join(bare.lower().replace("_", " ").split()))


def no_road(have: Unit, want: Unit) -> UnitError:
    """Return the error of two units that measure different things, with what would bridge them."""
    kinds = have.dimension, want.dimension
    hint = ""
    if set(kinds) == {Dimension.MASS, Dimension.VOLUME}:
        hint = "volume becomes mass only through the density of a food"
    elif Dimension.COUNT in kinds:
        hint = "a count becomes mass only through the weight of one, food by food"
    given, wanted = (one.name.replace("_", " ") for one in (have, want))
    return UnitError(
        f"{given} ({kinds[0].value}) does not turn into {wanted} ({kinds[1].value})",
        given=have.name,
        wanted=want.name,
        hint=hint,
    )


def unit_text(name: str, value: Fraction | int) -> str:
    """Return the word to print behind a number (``1 cup``, ``1/2 cup``, ``2 cups``)."""
    one = unit(name)
    return one.many if value > 1 else one.one


def near_units(word: str, kinds: Collection[Dimension]) -> tuple[str, ...]:
    """Return the unit words of some dimensions that look most like a misspelled one, best first."""
    wanted = (one for one in units().values() if one.dimension in kinds)
    return nearest(word, (spelling for one in wanted for spelling in one.words))


@cache
def units() -> Mapping[str, Unit]:
    """Return every unit of the file by name, in file order."""
    return MappingProxyType({name: unit(name) for name in _lines()})


def units_file() -> str:
    """Return the text of ``reference/units.txt``."""
    return (folder("reference") / "units.txt").read_text(encoding="utf-8")


@cache
def _lines() -> dict[str, str]:
    """Return the line of each unit; one is read whole only when somebody asks for it."""
    lines = (line for line in units_file().splitlines() if line and line[0] != "#")
    return {line.partition("=")[0].rstrip(): line for line in lines}


@cache
def _words() -> dict[str, str]:
    return {word.lower(): name for name, line in _lines().items() for word in _spellings(line)}


def _spellings(line: str) -> list[str]:
    """Return name, symbol and further spellings of ``name = value = symbol = spelling …  # …``."""
    name, _, *others = line.partition("#")[0].split("=")
    plain = (word.strip().replace("_", " ") for word in (name, *others))
    return [word for word in plain if word.strip()]


@cache
def _read(name: str) -> Unit:
    definition, _, told = _lines()[name].partition("#")
    source, _, note = told.partition(":")
    value, *symbol = (part.strip() for part in definition.split("=")[1:3])
    plain = _spellings(definition)
    kind, base, to_base, zero = _read_value(name, value)
    return Unit(
        name=name,
        dimension=kind,
        base=base,
        to_base=to_base,
        zero=zero,
        one=plain[0] if symbol in ([], ["_"]) else plain[1],
        many=plain[1] if len(plain) > 1 else plain[0],
        words=tuple(dict.fromkeys(word.lower() for word in plain)),
        source=source.strip(),
        note=note.strip(),
    )


def _read_value(name: str, value: str) -> tuple[Dimension, str, Fraction, Fraction]:
    """Return dimension, base, factor and zero of ``[mass]``, ``231 inch ** 3`` and the like."""
    if value[0] == "[":
        return _BASES.get(value[1:-1], Dimension.COUNT), name, _ONE, _NOTHING
    scale, _, offset = value.partition(";")
    number, of, *power = scale.split()
    root = _read(of)
    zero = Fraction(offset.partition(":")[2].strip()) if offset else _NOTHING
    if power:  # only "** 3" is written, and only of a length
        return Dimension.VOLUME, f"{root.base} ** 3", _fraction(number) * root.to_base**3, zero
    return root.dimension, root.base, _fraction(number) * root.to_base, zero


def _fraction(text: str) -> Fraction:
    """Return ``1``, ``1/16`` or ``2.54`` exactly; whole numbers go the short way."""
    return Fraction(int(text)) if text.isdigit() else Fraction(text)
