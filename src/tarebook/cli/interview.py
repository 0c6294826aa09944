"""Asking at the terminal, on standard error, so that output stays clean."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import TypeVar

from tarebook.findings import AskedWrongly

_Taken = TypeVar("_Taken")
_COLUMNS = 80
ENDED = "the answers ended before the questions; nothing was written"


class AnswersEnded(AskedWrongly):
    """Nobody answers any more."""


def until_understood(ask: str, take: Callable[[str], _Taken], *, ended: str = ENDED) -> _Taken:
    """Ask until an answer will do, and return what was made of it.

    Args:
        ask: the question.
        take: makes something of an answer, without blanks around it; raises ``AskedWrongly`` if
            it is none, which is told, and the question is put again.
        ended: what to say where there are no more answers.

    Raises:
        AnswersEnded: there are no more.
    """
    from tarebook.cli.talk import complain

    while True:
        if sys.stderr is not None:
            sys.stderr.write(f"{_on_screen(ask)}\n> ")
            sys.stderr.flush()
        line = "" if sys.stdin is None or sys.stdin.closed else sys.stdin.readline()
        if not line:
            raise AnswersEnded(ended)
        try:
            return take(line.strip())
        except AskedWrongly as fault:
            for text in _on_screen(str(fault), lead="  ").split("\n"):
                complain(text)


def _on_screen(text: str, *, lead: str = "") -> str:
    """Return a text broken between words where somebody reads it, and in one piece elsewhere."""
    if sys.stderr is None or not sys.stderr.isatty():
        return lead + text
    from tarebook.cards.lines import wrap

    return "\n".join(wrap(text, _COLUMNS, first=lead, rest=lead))


def at_terminal() -> bool:
    """Whether somebody may be there to answer."""
    return sys.stdin is not None and not sys.stdin.closed and sys.stdin.isatty()
