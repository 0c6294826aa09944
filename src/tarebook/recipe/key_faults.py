"""What is said of a key that is unknown or missing, and of a value of the wrong kind."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from tarebook.findings import nearest
from tarebook.recipe import keys
from tarebook.recipe.keys import Key
from tarebook.toml.fault import Faults, Refused, did_you_mean, shown
from tarebook.toml.locate import KeyPath
from tarebook.toml.syntax import OddNumber

HUGE = 10**15
"""From here on a number is not shown digit by digit."""


def missing_keys(
    table: Mapping[str, object], known: Mapping[str, Key], path: KeyPath, faults: Faults
) -> None:
    """Add an error for every needed key that a table does not have."""
    for key in known.values():
        if key.needed and key.name not in table:
            faults.error(
                "missing-key",
                f"{key.name} is missing",
                hint=f"as in {key.name} = {key.example}",
                path=(*path, key.name),
            )


def unknown_key(name: str, known: Mapping[str, Key], path: KeyPath, faults: Faults) -> None:
    """Add an error for a key nobody knows, and say what was probably meant."""
    faults.error(
        "unknown-key",
        f'"{shown(name)}" is no key of {_where(path)}',
        hint=_hint_for(name, known, path),
        path=(*path, name),
    )


def not_a_table(value: object, path: KeyPath, faults: Faults) -> None:
    """Add an error for a section that was written as something else."""
    name = path[-1]
    faults.error(
        "wrong-type",
        f"{name} is a table, not {kind_of(value)}",
        hint=f"begin it with [{name}] on a line of its own",
        path=path,
    )


def wrong_type(value: object, key: Key) -> Refused:
    """Return the refusal of a value that is not what its key takes."""
    return Refused(
        "wrong-type",
        f"{key.name} takes {key.takes.value}, not {kind_of(value)}",
        hint=f"as in {key.name} = {key.example}",
    )


def kind_of(value: object) -> str:
    """Return what a TOML value is, in a cook's words."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, OddNumber):
        return shown(value.text)
    for kind, words in _KINDS:
        if isinstance(value, kind):
            return words
    return "a date or a time"


def number_text(value: int | Fraction) -> str:
    """Return a TOML number as a cook would write it."""
    if not -HUGE < value < HUGE:
        return "of more than 15 digits"
    if isinstance(value, int):
        return str(value)
    text = repr(float(value))
    if "e" not in text:
        return text
    from decimal import Decimal

    return f"{Decimal(text):f}"  # an exponent would read like a range: 1e-05


_KINDS: tuple[tuple[type | tuple[type, ...], str], ...] = (
    (str, "words"),
    ((int, Fraction), "a number"),
    (list, "a list"),
    (dict, "a table"),
)


def _where(path: KeyPath) -> str:
    if not path:
        return "a recipe"
    if path[0] in keys.PARTS:
        return "a panel" if "panel" in path[1:] else "an ingredient"
    return f"[{path[0]}]"


def _hint_for(name: str, known: Mapping[str, Key], path: KeyPath) -> str:
    folded = name.strip().lower().replace("_", "-").replace(" ", "-")
    for key in known.values():
        if folded == key.name or folded in key.also:
            return did_you_mean((key.name,))
    tables = [] if path else [*keys.SECTIONS, *keys.PARTS]
    near = nearest(name, [*known, *tables])
    return did_you_mean(near) or _elsewhere(name, path)


def _elsewhere(name: str, path: KeyPath) -> str:
    homes = [f"[{section}]" for section, table in keys.SECTIONS.items() if name in table]
    if homes:
        return f"it belongs in {' or '.join(homes)}"
    if name in keys.TOP and path:
        return f"it belongs at the top of the file, before [{path[0]}]"
    return "" if path else "ingredients go under [marinade], [rub] or [mixed-in]"
