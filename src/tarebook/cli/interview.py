"""Asking at the terminal, on standard error, so that output stays clean."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import TypeVar

from tarebook.findings import AskedWrongly

_Taken = TypeVar("_Taken")
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
            sys.stderr.write(f"{ask}\n> ")
            sys.stderr.flush()
        line = "" if sys.stdin is None or sys.stdin.closed else sys.stdin.readline()
        if not line:
            raise AnswersEnded(ended)
        try:
            return take(line.strip())
        except AskedWrongly as fault:
            complain(f"  {fault}")


def at_terminal() -> bool:
    """Whether somebody may be there to answer."""
    return sys.stdin is not None and not sys.stdin.closed and sys.stdin.isatty()
