"""Typed getters: each takes what stands behind a key and returns it understood.

A getter raises ``Refused`` or ``AmountError``; ``read_table`` turns either into a fault at the
key's place and goes on with the next key.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import lru_cache
from typing import Any

from tarebook.figures.foods import Food, food
from tarebook.findings import AmountError, FoodUnknown, nearest
from tarebook.quantities.amount import Amount, parse_amount, parse_length_mm, parse_mass
from tarebook.quantities.forms import parse_form
from tarebook.quantities.number import parse_range
from tarebook.recipe import keys
from tarebook.recipe.key_faults import (
    HUGE,
    missing_keys,
    not_a_table,
    number_text,
    unknown_key,
    wrong_type,
)
from tarebook.recipe.keys import Key, Takes
from tarebook.recipe.model import FinishBy, Panel
from tarebook.recipe.spans import Span, read_hours, read_percent, read_temperature_f
from tarebook.toml.fault import Faults, Refused, did_you_mean, shown
from tarebook.toml.locate import KeyPath
from tarebook.tuples import NamedTuple

LONGEST_LINE = 200
LONGEST_TEXT = 4_000
MOST_TEXTS = 200
MOST_HOURS = 2_000
DEAREST = 1_000_000
WETTEST_PERCENT = 75
"""Working value of ours: raw meat holds about as much water, so nothing dried holds more."""

ACTIVITIES = (Fraction("0.55"), Fraction("0.95"))
"""Between these a water activity can be aimed at: below and above, nothing is held of it."""

SOAKS_F = (Fraction(28), Fraction(100))
"""Working values of ours [degF]: colder the meat is frozen, and warmer it is no soak but a pot."""


class Reading:
    """What the getters share while one file is read.

    Attributes:
        faults: what is wrong with it so far.
        cup: which cup its amounts mean.
        whole: False if lines were left out, so that a missing key may well have been written.
        shelf: folder of the cook's own bottles; empty if there is none, None until it is asked.
    """

    __slots__ = ("cup", "faults", "shelf", "whole")

    def __init__(self, faults: Faults, *, whole: bool = True) -> None:
        self.faults = faults
        self.cup = "us"
        self.whole = whole
        self.shelf: str | None = None


class Written(NamedTuple):
    """A number or a range understood, beside the words it was written in."""

    text: str
    low: Fraction
    high: Fraction


def read_table(
    table: object, known: Mapping[str, Key], path: KeyPath, reading: Reading
) -> dict[str, Any]:
    """Return every understood value of a table with fixed keys.

    Args:
        table: what stands behind the table's name.
        known: the rows of ``keys`` that it follows.
        path: where it stands.
        reading: the file being read.

    Returns:
        A value for each key that is there and right; what it is follows from ``Key.takes``.
    """
    if not isinstance(table, dict):
        not_a_table(table, path, reading.faults)
        return {}
    values: dict[str, Any] = {}
    for name, value in table.items():
        key = known.get(name)
        if key is None:
            unknown_key(name, known, path, reading.faults)
            continue
        try:
            values[name] = _GETTERS[key.takes](value, key, (*path, name), reading)
        except (Refused, AmountError) as refused:
            reading.faults.refuse(refused, (*path, name))
    if reading.whole:
        missing_keys(table, known, path, reading.faults)
    return values


def value_of(value: object, key: Key) -> Any:
    """Return one value understood.

    Args:
        value: what stands behind the key.
        key: its row of ``keys``.

    Raises:
        Refused: it is not what the key takes.
        AmountError: it is an amount that cannot be read.
    """
    return _GETTERS[key.takes](value, key, (), Reading(Faults()))


def named_food(name: str, *, otherwise: str = "", dried: bool = False) -> Food:
    """Return the food that goes by a name.

    Args:
        name: its key, or any other name it goes by.
        otherwise: the hint where no name is near.
        dried: whether to offer only what can be dried, where the name is unknown.

    Raises:
        Refused: no food goes by it.
    """
    try:
        return food(name)
    except FoodUnknown as unknown:
        near = tuple(key for key in unknown.near if not dried or food(key).species_group)
        raise Refused(
            "unknown-food",
            f'no food is called "{shown(name)}"',
            hint=did_you_mean(near) or otherwise,
        ) from None


def refuse_steering(text: str, what: str) -> None:
    """Refuse characters that could steer a terminal or turn a line around; let line ends pass.

    Raises:
        Refused: there is one in the text.
    """
    for letter in text:
        if letter not in "\n\t" and (letter < " " or letter in _STEERING):
            raise Refused(
                "hidden-character",
                f"{what} holds the hidden character {shown(letter)}",
                hint="leave it out",
            )


def _words(value: object, key: Key, most: int = LONGEST_TEXT) -> str:
    if not isinstance(value, str):
        raise wrong_type(value, key)
    if not value.strip():
        raise Refused("empty", f"{key.name} is empty")
    if len(value) > most:
        raise Refused("too-long", f"{key.name} has {len(value):,} letters, more than {most:,}")
    if not value.isprintable():
        refuse_steering(value, key.name)
    return value


_STEERING = frozenset(
    [chr(code) for code in range(0x7F, 0xA0)]  # delete and the second set of controls
    + list("\u200e\u200f\u2028\u2029\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\ufeff")
)


def _line(value: object, key: Key, path: KeyPath, reading: Reading) -> str:
    words = _words(value, key, LONGEST_LINE)
    if "\n" in words or "\t" in words:
        raise Refused("wrong-type", f"{key.name} must be one line, without tabs")
    return words


def _text(value: object, key: Key, path: KeyPath, reading: Reading) -> str:
    return _words(value, key)


def _texts(value: object, key: Key, path: KeyPath, reading: Reading) -> tuple[str, ...]:
    if not isinstance(value, list):
        raise wrong_type(value, key)
    if len(value) > MOST_TEXTS:
        raise Refused("too-many", f"{len(value):,} {key.name}, more than {MOST_TEXTS}")
    texts = []
    one = key._replace(takes=Takes.TEXT)
    for place, part in enumerate(value):
        try:
            texts.append(_words(part, one))
        except Refused as refused:  # go on, so that every faulty one is named
            reading.faults.refuse(refused, (*path, place))
    return tuple(texts)


def _choice(value: object, key: Key, path: KeyPath, reading: Reading) -> str:
    if not isinstance(value, str):
        raise wrong_type(value, key)
    if value in key.words:
        return value
    choices = ", ".join(f'"{word}"' for word in key.words)
    raise Refused(
        "unknown-word",
        f'{key.name} cannot be "{shown(value)}"',
        hint=did_you_mean(nearest(value, key.words, most=1)) or f"choose one of {choices}",
    )


def _flag(value: object, key: Key, path: KeyPath, reading: Reading) -> bool:
    if not isinstance(value, bool):
        raise wrong_type(value, key)
    return value


# The rule is ``game-unknown`` of ``reference/rules.csv``, which stands above this room.
_OF_GAME = (
    'for game that is not held write "bear": its rule of heat is the most cautious, and the '
    "figures are then bear's"
)


def _dried(value: object, key: Key, path: KeyPath, reading: Reading) -> Food:
    found = named_food(_words(value, key, LONGEST_LINE), otherwise=_OF_GAME, dried=True)
    if not found.species_group:
        raise Refused(
            "not-dried",
            f"{found.key} is no meat, fish or mushroom",
            hint="[meat] says what is dried; the rest goes under [marinade], [rub] or [mixed-in]",
        )
    return found


def _with_unit(value: object, key: Key) -> str:
    """Return a text; a bare number is refused with the unit it lacks."""
    if isinstance(value, str):
        return value
    if isinstance(value, bool) or not isinstance(value, (int, Fraction)):
        raise wrong_type(value, key)
    raise Refused(
        "no-unit",
        f"{key.name} {number_text(value)} has no unit",
        hint=f"write it in quotes with its unit, as in {key.name} = {key.example}",
    )


def _number_or_text(value: object, key: Key) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, bool) or not isinstance(value, (int, Fraction)):
        raise wrong_type(value, key)
    if not -HUGE < value < HUGE:
        raise Refused("out-of-range", f"{key.name} {number_text(value)} is absurdly large")
    return number_text(value)


def _written(text: str, read: Callable[[str], Span], key: Key, most: int, unit: str) -> Written:
    low, high = read(text)
    if not 0 < low <= high <= most:
        raise Refused(
            "out-of-range", f"{key.name} {shown(text)} is not above 0 and at most {most:,}{unit}"
        )
    return Written(text, low, high)


def _hours(value: object, key: Key, path: KeyPath, reading: Reading) -> Written:
    return _written(_number_or_text(value, key), read_hours, key, MOST_HOURS, " hours")


def _ratio(value: object, key: Key, path: KeyPath, reading: Reading) -> Written:
    return _written(_number_or_text(value, key), parse_range, key, 5, "")


def _activity(value: object, key: Key, path: KeyPath, reading: Reading) -> Written:
    found = _written(_number_or_text(value, key), parse_range, key, 1, "")
    return _within(found, ACTIVITIES, key, "", "elsewhere it cannot be estimated")


def _within(
    found: Written, ends: tuple[Fraction, Fraction], key: Key, unit: str, hint: str
) -> Written:
    least, most = ends
    if not least <= found.low <= found.high <= most:
        raise Refused(
            "out-of-range",
            f"{key.name} {shown(found.text)} is outside {float(least):g} to {float(most):g}{unit}",
            hint=hint,
        )
    return found


def _percent(value: object, key: Key, path: KeyPath, reading: Reading) -> Written:
    most = WETTEST_PERCENT if key.name == FinishBy.MOISTURE else 100
    return _written(_with_unit(value, key), read_percent, key, most, " %")


def _temperature(value: object, key: Key, path: KeyPath, reading: Reading) -> Written:
    return _written(_with_unit(value, key), read_temperature_f, key, 500, " °F")


def _cold(value: object, key: Key, path: KeyPath, reading: Reading) -> Written:
    found = _temperature(value, key, path, reading)
    return _within(found, SOAKS_F, key, " °F", "it is that of the soak; heat goes under [heat]")


def _strength(value: object, key: Key, path: KeyPath, reading: Reading) -> Fraction:
    found = _percent(value, key, path, reading)
    if found.low != found.high:
        raise Refused(
            "cure-strength",
            "the strength of a curing salt is one percentage, not a range",
            hint="read it off the pack",
        )
    return found.low


def _length(
    value: object, key: Key, path: KeyPath, reading: Reading
) -> tuple[str, tuple[float, float, float]]:
    text = _with_unit(value, key)
    return text, _cached_length_mm(text)


def _form(value: object, key: Key, path: KeyPath, reading: Reading) -> tuple[str, ...]:
    if not isinstance(value, str):
        raise wrong_type(value, key)
    return parse_form(value)


def _weight(value: object, key: Key, path: KeyPath, reading: Reading) -> tuple[Amount, Fraction]:
    text = _with_unit(value, key)
    mass_g = _cached_mass_g(text)  # refuses what is no single weight
    return parse_amount(text), mass_g


def _amount(value: object, key: Key, path: KeyPath, reading: Reading) -> Amount:
    return parse_amount(_with_unit(value, key), cup=reading.cup)


def _serving(
    value: object, key: Key, path: KeyPath, reading: Reading
) -> tuple[Fraction | None, Fraction | None]:
    from tarebook.recipe.panel import read_serving  # few recipes print a panel

    return read_serving(_with_unit(value, key))


class Under(NamedTuple):
    """A figure of a panel that is printed as less than so much."""

    most: Fraction


def _printed(unit: str) -> Callable[[object, Key, KeyPath, Reading], Fraction | Under]:
    def getter(value: object, key: Key, path: KeyPath, reading: Reading) -> Fraction | Under:
        from tarebook.recipe.panel import PANEL_FIELDS, printed_figure, printed_under

        text = _with_unit(value, key)
        under = printed_under(text, PANEL_FIELDS.get(key.name, ""), unit)
        return printed_figure(text, unit) if under is None else Under(under)

    return getter


# Many recipes write the same few weights and lengths; checking thousands must not reread them.
_cached_mass_g = lru_cache(maxsize=1024)(parse_mass)
_cached_length_mm = lru_cache(maxsize=1024)(parse_length_mm)


def read_panel(
    value: object, key: Key, path: KeyPath, reading: Reading, *, bare: bool = False
) -> Panel | None:
    """Return a panel understood, or None where its serving was refused.

    Args:
        value: what stands behind the key.
        key: its row, for messages.
        path: where it stands.
        reading: the file being read.
        bare: whether a serving without any figure will do: it tells a density.

    Raises:
        Refused: it is no table, has no figures, or its parts outweigh the whole.
    """
    from tarebook.recipe.panel import PANEL_FIELDS, refuse_impossible

    if not isinstance(value, dict):
        raise wrong_type(value, key)
    found = read_table(value, keys.PANEL, path, reading)
    if "serving" not in found:
        return None
    serving_ml, serving_g = found.pop("serving")
    if not found and not bare:
        if len(value) > 1:  # there were some, and each was refused
            return None
        raise Refused("missing-key", "the panel has no figures", hint='as in sodium = "580 mg"')
    figures = {PANEL_FIELDS[name]: figure for name, figure in found.items()}
    under = tuple(sorted(name for name, one in figures.items() if isinstance(one, Under)))
    figures |= {name: figures[name].most for name in under}
    panel = Panel(serving_ml=serving_ml, serving_g=serving_g, **figures, under=under)
    refuse_impossible(panel)
    return panel


def _price(value: object, key: Key, path: KeyPath, reading: Reading) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, (int, Fraction)):
        raise wrong_type(value, key)
    if not 0 <= value <= DEAREST:
        raise Refused("out-of-range", f"a price lies between 0 and {DEAREST:,}")
    return Fraction(value)


_GETTERS: Mapping[Takes, Callable[[object, Key, KeyPath, Reading], Any]] = {
    Takes.LINE: _line,
    Takes.TEXT: _text,
    Takes.TEXTS: _texts,
    Takes.CHOICE: _choice,
    Takes.FLAG: _flag,
    Takes.FOOD: _line,  # whose food it is, ``ingredients`` finds: the cook's own may be meant
    Takes.DRIED: _dried,
    Takes.WEIGHT: _weight,
    Takes.LENGTH: _length,
    Takes.AMOUNT: _amount,
    Takes.FORM: _form,
    Takes.STRENGTH: _strength,
    Takes.PERCENT: _percent,
    Takes.RATIO: _ratio,
    Takes.ACTIVITY: _activity,
    Takes.HOURS: _hours,
    Takes.TEMPERATURE: _temperature,
    Takes.COLD: _cold,
    Takes.SERVING: _serving,
    Takes.MICROGRAMS: _printed("mcg"),
    Takes.MILLIGRAMS: _printed("mg"),
    Takes.GRAMS: _printed("g"),
    Takes.KILOCALORIES: _printed("kcal"),
    Takes.PANEL: read_panel,
    Takes.PRICE: _price,
}
