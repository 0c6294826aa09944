"""tarebook kitchen: what the kitchen has, told once."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tarebook.cli import asking
from tarebook.cli.interview import AnswersEnded, until_understood
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from pathlib import Path

    from tarebook.kitchen.keys import Key

_FORGET = "-"
_KEPT = "the answers ended before the questions; those given are kept, and asking again goes on"
_HOW = "say tarebook kitchen, tarebook kitchen ask, or tarebook kitchen set KEY VALUE"


def kitchen(
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[ask | set KEY VALUE]",
            help="Nothing to show it; ask to be asked; set to say one thing.",
            show_default=False,
        ),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Tell what the kitchen has: trays, oven, bowls, measuring set, scale, height.

    It is kept as kitchen.toml in your own folder, to be edited by hand as well.

    Example: tarebook kitchen set dryer.trays 5
    """
    action, *rest = words or ["show"]
    if action == "ask" and not rest:
        _ask_all()
    elif action == "set" and rest:
        _set(rest)
    elif action != "show" or rest:
        raise AskedWrongly(f'"{action[:40]}": {_HOW}')
    _show(as_json)


def _show(as_json: bool) -> None:
    from tarebook.cards.kitchen_page import kitchen_data, kitchen_page
    from tarebook.cli.talk import complain_findings, show, show_data
    from tarebook.kitchen import kitchen_file, load_kitchen

    found, findings = load_kitchen()
    complain_findings(findings)
    file = kitchen_file()
    if as_json:
        show_data(kitchen_data(found, file=str(file)))
    else:
        show(kitchen_page(found, file=str(file), there=file.exists()))


def _set(rest: list[str]) -> None:
    """Set one key, or several written KEY=VALUE."""
    from tarebook.files import write_whole
    from tarebook.kitchen import kitchen_file

    pairs = [one.split("=", 1) for one in rest] if "=" in rest[0] else [rest[:1] + rest[1:2]]
    if any(len(pair) != 2 for pair in pairs) or ("=" not in rest[0] and len(rest) != 2):
        raise AskedWrongly("set takes a key and a value, as in  set dryer.trays 5")
    file = kitchen_file()
    text = _text(file)
    for path, value in pairs:
        text = _with(text, path.strip(), value.strip())
    write_whole(file, text.encode("utf-8"))


def _ask_all() -> None:
    """Ask for everything; where the answers end too soon, those given are kept."""
    from tarebook.files import write_whole
    from tarebook.kitchen import kitchen_file

    file = kitchen_file()
    after_each = [_text(file)]
    try:
        after_each.extend(_interview(after_each[0]))
    except AnswersEnded:
        if after_each[-1] == after_each[0]:
            raise
        write_whole(file, after_each[-1].encode("utf-8"))
        raise AskedWrongly(_KEPT) from None
    write_whole(file, after_each[-1].encode("utf-8"))


def _interview(text: str) -> Iterator[str]:
    """Yield the file after each answer."""
    from tarebook.cli.talk import complain
    from tarebook.kitchen.keys import BOWLS, KEYS

    complain(f"Enter alone keeps what stands in [brackets]; {_FORGET} makes it unknown.")
    for key in KEYS:
        if key.table == "dryer" and key.name != "trays" and _held(text, "dryer", "trays") == 0:
            continue
        if key.name in ("racks", "rack") and _held(text, "dryer", "trays") != 0:
            continue
        text = _asked(text, key)
        yield text
    for name, value in _bowls(text):
        text = _with(text, f"{BOWLS}.{name}", value)
        yield text


def _asked(text: str, key: Key) -> str:
    """Return the text with one question answered."""
    held = _held(text, key.table, key.name)
    choices = f" ({', '.join(key.words)})" if key.words else f" As in {key.example}"
    shown = "unknown" if held is None else _plain(held)
    return until_understood(
        f"{key.ask}{choices} [{shown}]",
        lambda answer: _with(text, key.path, answer) if answer else text,
    )


def _bowls(text: str) -> Iterator[tuple[str, str]]:
    """Yield bowls and bags as they are typed."""
    from tarebook.kitchen.keys import BOWLS

    held = _held_table(text, BOWLS)
    shown = "; ".join(f"{name} = {value}" for name, value in held.items()) or "unknown"
    ask = f"Which bowls and bags, one a line, as in  big bowl = 4 qt [{shown}]; Enter alone ends"

    def read(answer: str) -> tuple[str, str] | None:
        name, equals, value = answer.partition("=")
        if not answer:
            return None
        if not equals or not name.strip():
            raise AskedWrongly("write a name and what it holds, as in  big bowl = 4 qt")
        _with("", f"{BOWLS}.{name.strip()}", value.strip())
        return name.strip(), value.strip()

    while (found := until_understood(ask, read)) is not None:
        yield found
        ask = "And"


def _text(file: Path) -> str:
    """Return the file as it stands; it must at least be TOML to be changed."""
    from tarebook.files import holds, read_bytes
    from tarebook.findings import RecordFaulty, Severity
    from tarebook.kitchen.read import syntax_findings
    from tarebook.toml.text import MOST_BYTES

    if not holds(file.exists):
        return ""
    data = read_bytes(file, most=MOST_BYTES, what="kitchen")
    if not data.strip():
        return ""
    findings = syntax_findings(data, file=str(file))
    if any(one.severity is Severity.ERROR for one in findings):
        raise RecordFaulty(findings)
    return data.decode("utf-8-sig").replace("\r\n", "\n")


def _with(text: str, path: str, answer: str) -> str:
    """Return the file with one key answered; ``-`` or nothing makes it unknown."""
    from tarebook.kitchen.write import with_answer

    return with_answer(text, path, "" if answer == _FORGET else answer)


def _held(text: str, table: str, name: str) -> Any:
    return _held_table(text, table).get(name)


def _held_table(text: str, table: str) -> dict[str, Any]:
    import tomllib

    found = tomllib.loads(text).get(table, {})
    return found if isinstance(found, dict) else {}


def _plain(held: object) -> str:
    return {True: "yes", False: "no"}[held] if isinstance(held, bool) else str(held)
