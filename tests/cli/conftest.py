"""The program as a cook runs it: in this process where that is enough, else as its own."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from tarebook.cli.main import run


class Done(NamedTuple):
    """How a command ended."""

    status: int
    out: str
    err: str


Tarebook = Callable[..., Done]


@pytest.fixture
def tarebook(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Tarebook:
    """Run a command in this process; ``typed`` is its standard input."""

    def ask(*args: str, typed: str | bytes = "") -> Done:
        data = typed if isinstance(typed, bytes) else typed.encode()
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(data), encoding="utf-8"))
        capsys.readouterr()
        try:
            run(list(args))
            status = 0
        except SystemExit as ended:
            status = int(ended.code or 0)
        found = capsys.readouterr()
        return Done(status, found.out, found.err)

    return ask


@pytest.fixture
def process() -> Callable[..., subprocess.CompletedProcess[bytes]]:
    """Run a command as a process of its own, with further environment variables."""

    def ask(
        *args: str, typed: bytes = b"", cwd: Path | None = None, **env: str
    ) -> subprocess.CompletedProcess[bytes]:
        return subprocess.run(
            [sys.executable, "-m", "tarebook", *args],
            input=typed,
            capture_output=True,
            cwd=cwd,
            env={**os.environ, **env},
            timeout=30,
        )

    return ask


@pytest.fixture
def written(tmp_path: Path, recipe_text: Callable[..., str]) -> Callable[..., str]:
    """Write a recipe file and return its path."""

    def write(name: str = "lake.toml", **parts: object) -> str:
        path = tmp_path / name
        path.write_text(recipe_text(**parts), encoding="utf-8")
        return str(path)

    return write
