"""The file of a kitchen: written with our remarks, or one line of it changed and the rest left."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tarebook.findings import AmountError, AskedWrongly, UnitError, nearest
from tarebook.kitchen.keys import BOWLS, BY_PATH, KEYS, TABLES, Key
from tarebook.kitchen.read import read_value
from tarebook.kitchen.values import read_volume_ml
from tarebook.toml.fault import Refused, did_you_mean, shown
from tarebook.toml.locate import Lines, key_text, quoted

Written = Mapping[str, Mapping[str, Any]]
"""What stands in the file: table, key, value as written."""

_HEAD = """\
# The kitchen, for tarebook. What is left out is not known, and never guessed.
# Edit it by hand, or:  tarebook kitchen set dryer.trays 5
"""
_BOWLS_SAY = "bowls and bags by your own names, filled to the brim"


def with_value(text: str, table: str, name: str, value: Any) -> str:
    """Return the text of a kitchen file with one key set, or taken out.

    The cook's own remarks stay. Where the line cannot be changed by itself (a list over several
    lines, a table in braces), the whole file is written anew.

    Args:
        text: as it stands; may be empty.
        table, name: which key.
        value: what is to stand there (words, a whole number, true or false), or None to take
            the key out.

    Example:
        >>> print(with_value("[dryer]\\ntrays = 4  # two are lost", "dryer", "trays", 5))
        [dryer]
        trays = 5  # two are lost
    """
    import tomllib

    before = tomllib.loads(text)
    if not before:
        return to_toml(_wanted(before, table, name, value)) if value is not None else text
    wanted = _wanted(before, table, name, value)
    changed = _changed(text, table, name, value)
    try:
        if tomllib.loads(changed) == wanted:
            return changed
    except tomllib.TOMLDecodeError:
        pass
    return to_toml(wanted)


def to_toml(written: Written) -> str:
    """Return a whole file: every key that has a value, each with a remark; the rest as examples."""
    parts = [_HEAD]
    for table in TABLES[:-1]:
        rows = written.get(table, {})
        lines = [_line(key, rows.get(key.name)) for key in KEYS if key.table == table]
        parts.append("\n".join([f"[{table}]", *lines]) + "\n")
    bowls = written.get(BOWLS, {})
    lines = [f"{key_text(name)} = {_value(value)}" for name, value in bowls.items()]
    lines = lines or ['# "big bowl" = "4 qt"']
    parts.append("\n".join([f"[{BOWLS}]  # {_BOWLS_SAY}", *lines]) + "\n")
    return "\n".join(parts)


def with_answer(text: str, path: str, answer: str) -> str:
    """Return the text of a kitchen file with one key answered as a cook types it.

    Args:
        text: as it stands; may be empty.
        path: which key, as ``dryer.trays`` or ``bowls.big bowl``.
        answer: as typed; nothing takes the key out.

    Raises:
        AskedWrongly: there is no such key, or the answer is none for it.

    Example:
        >>> print(with_answer("[dryer]", "dryer.trays", "5"))
        [dryer]
        trays = 5
    """
    table, name, key = _key(path)
    if not answer:
        return with_value(text, table, name, None)
    try:
        value = read_volume_ml(answer) if key is None else read_value(key, answer)
    except (Refused, AmountError, UnitError) as fault:
        hint = fault.hint or (f"as in {key.example}" if key else "as in 4 qt, 3 L")
        raise AskedWrongly(f"{path}: {fault}; {hint}") from None
    return with_value(text, table, name, value if key and key.bare else answer)


def _key(path: str) -> tuple[str, str, Key | None]:
    """Return table and name of a key, and its row; none for a bowl, which the cook names."""
    table, _, name = (part.strip().strip('"') for part in path.partition("."))
    if table == BOWLS and name:
        return table, name, None
    key = BY_PATH.get(f"{table}.{name}")
    if key is None:
        also = [one.path for one in KEYS if name in one.also and table in (one.table, "")]
        near = also or [one.path for one in KEYS if one.name == path or path in one.also]
        hint = did_you_mean(tuple(near) or nearest(path, BY_PATH))
        hint = hint or f"the keys are {', '.join(BY_PATH)}, and {BOWLS}.NAME"
        raise AskedWrongly(f'"{shown(path)}" is no key of a kitchen; {hint}')
    return key.table, key.name, key


def _wanted(before: Mapping[str, Any], table: str, name: str, value: Any) -> dict[str, Any]:
    rows = {key: one for key, one in before.get(table, {}).items() if key != name}
    if value is not None:
        rows = {**before.get(table, {}), name: value}
    wanted = {**before, table: rows}
    return wanted if rows or table in before else {k: v for k, v in wanted.items() if k != table}


def _changed(text: str, table: str, name: str, value: Any) -> str:
    import tomllib

    lines = text.split("\n")
    at = Lines(text).nearest_line((table, name))
    is_there = name in tomllib.loads(text).get(table, {})
    pair = f"{key_text(name)} = {_value(value)}"
    if is_there and at is not None:
        remark = _remark(lines[at - 1])
        new = [] if value is None else [pair + remark]
        return "\n".join([*lines[: at - 1], *new, *lines[at:]])
    if value is None:
        return text
    if at is not None:
        return "\n".join(_in_table(lines, at, name, pair))
    lead = text.rstrip("\n")
    return (f"{lead}\n\n" if lead else _HEAD + "\n") + f"[{table}]\n{pair}\n"


def _in_table(lines: list[str], at: int, name: str, pair: str) -> list[str]:
    """Return the lines with a pair put in place of our example of it, or last in its table."""
    last = at
    for below in range(at, len(lines)):
        if lines[below].startswith("["):
            break
        if lines[below].startswith(f"# {name} = "):
            return [*lines[:below], pair + _remark(lines[below][2:]), *lines[below + 1 :]]
        if lines[below].strip():
            last = below + 1
    return [*lines[:last], pair, *lines[last:]]


def _remark(line: str) -> str:
    """Return the remark at the end of a line with its spaces, or nothing."""
    for at, letter in enumerate(line):
        if letter == "#" and line.count('"', 0, at) % 2 == 0 and line.count("'", 0, at) % 2 == 0:
            lead = line[:at]
            return line[len(lead.rstrip()) :]
    return ""


def _line(key: Key, value: Any) -> str:
    shown = (
        f"# {key.name} = {_value(BY_PATH[key.path].read(key.example) if key.bare else key.example)}"
    )
    pair = shown if value is None else f"{key.name} = {_value(value)}"
    return f"{pair}  # {key.says}"


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value) if isinstance(value, (int, float)) else quoted(str(value))
