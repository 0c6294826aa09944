"""Printing, painting, and reading what was asked."""

from __future__ import annotations

import io
import json
from fractions import Fraction

import pytest

from tarebook.cards.lines import Line, Style
from tarebook.cli.talk import listed_data, paints, read_share, show, write
from tarebook.findings import AskedWrongly


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        """Say so."""
        return True


@pytest.mark.parametrize(
    ("env", "painted"),
    [
        ({"TERM": "xterm"}, True),
        ({"TERM": "xterm", "NO_COLOR": ""}, True),
        ({"TERM": "xterm", "NO_COLOR": "1"}, False),
        ({"TERM": "xterm", "NO_COLOR": "0"}, False),
        ({"TERM": "dumb"}, False),
    ],
)
def test_who_is_painted(
    env: dict[str, str], painted: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A terminal is, unless NO_COLOR holds anything or it is a dumb one; a pipe never is."""
    monkeypatch.delenv("NO_COLOR", raising=False)
    for name, value in env.items():
        monkeypatch.setenv(name, value)

    assert painted is paints(Terminal())
    assert paints(io.StringIO()) is False
    assert paints(None) is False


def test_each_line_ends_its_own_paint(monkeypatch: pytest.MonkeyPatch) -> None:
    """Paint never runs on into the next line; empty and plain lines have none."""
    screen = Terminal()
    monkeypatch.setattr("sys.stdout", screen)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    show([Line("Head", Style.HEAD), Line("", Style.WARN), Line("row  ")])

    assert "\x1b[1mHead\x1b[0m\n\nrow\n" == screen.getvalue()


@pytest.mark.parametrize(
    ("encoding", "written"),
    [("utf-8", "≥ ½ ×"), ("ascii", ">= 1/2 x"), ("latin-1", ">= 1/2 x")],
)
def test_letters_a_terminal_lacks(
    encoding: str, written: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What a terminal cannot show is told in letters that it can."""
    raw = io.BytesIO()
    monkeypatch.setattr("sys.stdout", io.TextIOWrapper(raw, encoding=encoding))
    write("≥ ½ ×")

    assert written == raw.getvalue().decode(encoding)


@pytest.mark.parametrize(
    ("text", "share"),
    [("12%", "3/25"), ("12 %", "3/25"), ("12", "3/25"), ("0.12", "3/25"), ("0.5%", "1/200")],
)
def test_a_share(text: str, share: str) -> None:
    """Per cent with or without its sign, or as a fraction."""
    assert Fraction(share) == read_share(text, "--trim")


def test_a_share_that_is_none() -> None:
    """Words are no share, and the option is named."""
    with pytest.raises(AskedWrongly, match="--trim"):
        read_share("some", "--trim")


@pytest.mark.parametrize(
    "data", [[], [{}], [{"réno": [1, {"a": None}]}, 2.5, "x\ny"], [[], [[]]]], ids=repr
)
def test_a_list_item_by_item(data: list[object]) -> None:
    """Item by item it is to the letter what the whole list is."""
    whole = json.dumps(data, ensure_ascii=False, indent=2) + "\n"

    assert whole == "".join(listed_data(iter(data)))
