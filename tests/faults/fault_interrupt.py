"""Ctrl-C at a chosen instant: on the way through our code, or beside something that is written."""

from __future__ import annotations

import sys
from pathlib import Path
from types import FrameType
from typing import Any

import tarebook

_OURS = str(Path(tarebook.__file__).parent)
_WRITING = frozenset(
    ("open", "write", "fsync", "replace", "rename", "unlink", "mkdir", "execute", "chmod", "backup")
)


class Watch:
    """Counts what a program does, and stops it at one count."""

    def __init__(self, kind: str, at: int | None = None) -> None:
        """Set what counts, ``call`` of a function of ours or ``file`` touched; when to stop."""
        self._kind, self._at, self.count = kind, at, 0

    def __call__(self, frame: FrameType, event: str, arg: Any) -> None:
        if not self._counts(frame, event, arg):
            return
        self.count += 1
        if self.count == self._at:
            sys.setprofile(None)
            raise KeyboardInterrupt

    def _counts(self, frame: FrameType, event: str, arg: Any) -> bool:
        if self._kind == "call":
            return event == "call" and frame.f_code.co_filename.startswith(_OURS)
        # Before and after each thing that touches a file.
        return event in ("c_call", "c_return") and getattr(arg, "__name__", "") in _WRITING
