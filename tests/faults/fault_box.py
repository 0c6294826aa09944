"""A house of its own for each cell: files to read, a folder of the cook's, and a way to look after.

Commands run in this process, with streams of ours in place of a terminal's; what the whole
process must show is run as one.
"""

from __future__ import annotations

import hashlib
import io
import os
import shutil
import sqlite3
import subprocess
import sys
import traceback
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from tarebook.cli.main import run

FINE, FAULT, ASKED_WRONGLY, INTERRUPTED = 0, 1, 2, 130
BOOK = "home/book.sqlite3"
CACHE = "home/cache"
NOBODY = 65534


class Done(NamedTuple):
    """How a command ended; ``fault`` is the traceback of one that came to the surface."""

    status: int
    out: bytes
    err: str
    fault: str = ""

    @property
    def said(self) -> str:
        """All that was said, on either stream."""
        return self.out.decode("utf-8", "replace") + self.err


class Usual(NamedTuple):
    """What a command does when nothing is wrong.

    Attributes:
        done: how it ended.
        opened: which files of the house it opened, relative to it.
        changed: what it wrote, and what that holds.
        calls: how many functions of ours it called.
    """

    done: Done
    opened: tuple[str, ...]
    changed: dict[str, str]
    calls: int

    @property
    def writes_home(self) -> bool:
        """Whether it writes in the cook's own folder; what can be worked out again aside."""
        return any(name.startswith("home/") and CACHE not in name for name in self.changed)


class Box:
    """A folder with ``home`` (the cook's own) and ``work`` (where the command is called)."""

    def __init__(self, top: Path) -> None:
        self.top, self.home, self.work = top, top / "home", top / "work"
        self.before: dict[str, str] = {}
        self._times: dict[str, tuple[int, int]] = {}

    def run(self, words: list[str], **how: Any) -> Done:
        """Run a command in this process; see :func:`run_here`."""
        return run_here(words, **how)

    def process(self, words: list[str], **how: Any) -> subprocess.CompletedProcess[bytes]:
        """Run a command as a process of its own."""
        env = {**os.environ, **how.pop("env", {})}
        how.setdefault("stdout", subprocess.PIPE)
        how.setdefault("input", b"")
        return subprocess.run(
            how.pop("program", [sys.executable, "-m", "tarebook"]) + words,
            stderr=subprocess.PIPE,
            cwd=self.work,
            env=env,
            timeout=60,
            **how,
        )

    def listed(self) -> dict[str, str]:
        """Return every file and folder below, with what it holds."""
        return {str(one.relative_to(self.top)): _state(one) for one in self.top.rglob("*")}

    def settle(self) -> None:
        """Take the box as it stands now for what it was."""
        self.before = self.listed()
        self._times = self._written()

    def changed(self) -> dict[str, str]:
        """Return what is not as it was; nothing where nobody touched anything."""
        now = self.listed()
        return {
            name: now.get(name, "gone")
            for name in {*now, *self.before}
            if now.get(name) != self.before.get(name) and not name.startswith(CACHE)
        }

    def restore(self, template: Path) -> None:
        """Be a fresh copy of a furnished house again."""
        os.chdir("/")
        for one in self.top.rglob("*"):
            if one.is_dir():
                one.chmod(0o777)
        shutil.rmtree(self.top)
        copied(template, self.top)
        os.chdir(self.work)

    def touched(self) -> dict[str, str]:
        """Return what was written, though it may hold what it held before."""
        now, times = self.listed(), self._written()
        same = {name: now[name] for name, at in times.items() if at != self._times.get(name)}
        return {**{n: s for n, s in same.items() if not n.startswith(CACHE)}, **self.changed()}

    def _written(self) -> dict[str, tuple[int, int]]:
        found = ((one, one.stat()) for one in self.top.rglob("*") if one.is_file())
        return {str(one.relative_to(self.top)): (at.st_ino, at.st_mtime_ns) for one, at in found}

    def scraps(self) -> list[str]:
        """Return what somebody began to write and left behind."""
        return [
            name
            for name in self.listed()
            if name not in self.before
            and name.endswith((".new", "-journal", "-wal", ".tmp", ".restored"))
        ]

    def book_faults(self) -> list[str]:
        """Return what is wrong with the batch book; nothing where there is none."""
        file = self.top / BOOK
        if not file.is_file() or not file.stat().st_size:
            return []
        if self.before.get(BOOK) == _state(file):
            return []
        with closing(sqlite3.connect(file)) as db:
            found = [row[0] for row in db.execute("PRAGMA integrity_check")]
        told = self.run(["batch", "check"])
        return [*(one for one in found if one != "ok"), *([told.said] if told.status else [])]


def run_here(
    words: list[str],
    *,
    typed: bytes | None = b"",
    out: Any = None,
    closed: bool = False,
    encoding: str = "utf-8",
    watch: Any = None,
) -> Done:
    """Run a command in this process, with streams of its own.

    Args:
        words: after the program's name.
        typed: what comes down standard input; None where that is closed.
        out: where standard output goes, as raw bytes; kept and returned where not given.
        closed: whether standard output is closed.
        encoding: what standard output and standard error can say.
        watch: what is told of every call.
    """
    before = sys.stdin, sys.stdout, sys.stderr
    held_out, held_err = io.BytesIO(), io.BytesIO()
    said = io.TextIOWrapper(out or held_out, encoding=encoding, write_through=out is None)
    told = io.TextIOWrapper(held_err, encoding=encoding, write_through=True)
    asked = None if typed is None else io.TextIOWrapper(io.BytesIO(typed), encoding="utf-8")
    sys.stdin, sys.stdout, sys.stderr = asked, None if closed else said, told  # type: ignore
    status, fault = 0, ""
    try:
        if watch is not None:
            sys.setprofile(watch)
        run(words)
    except SystemExit as ended:
        status = int(ended.code or 0)
    except BaseException:
        status, fault = FAULT, traceback.format_exc()
    finally:
        if watch is not None:
            sys.setprofile(None)
        sys.stdin, sys.stdout, sys.stderr = before
    if out is None:
        return Done(status, held_out.getvalue(), held_err.getvalue().decode(), fault)
    with suppress(OSError, ValueError):
        said.detach()
    return Done(status, b"", held_err.getvalue().decode(), fault)


@contextmanager
def as_nobody(box: Box) -> Iterator[None]:
    """Be a user to whom nothing belongs, where we may be any; else stay who we are."""
    if os.geteuid() != 0:
        yield
        return
    _load_everything()
    os.setegid(NOBODY)
    os.seteuid(NOBODY)
    try:
        yield
    finally:
        os.seteuid(0)
        os.setegid(0)


@contextmanager
def disk_of(size: int) -> Iterator[None]:
    """Let no file grow beyond a size, as if the disk were full there."""
    import resource

    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


class Opened:
    """Notes which files of a box are opened, as the interpreter tells it."""

    def __init__(self) -> None:
        self._top: str | None = None
        self._found: dict[str, None] = {}
        sys.addaudithook(self._hear)

    @contextmanager
    def below(self, top: Path) -> Iterator[dict[str, None]]:
        """Collect the names, relative to a folder, of what is opened in it."""
        self._top, self._found = f"{top}{os.sep}", {}
        try:
            yield self._found
        finally:
            self._top = None

    def _hear(self, event: str, args: tuple[Any, ...]) -> None:
        if self._top is None or event not in ("open", "sqlite3.connect") or not args:
            return
        name = args[0]
        if isinstance(name, os.PathLike):
            name = os.fspath(name)
        if isinstance(name, str):
            name = name.removeprefix("file://").partition("?")[0]
            if name.startswith(self._top):
                self._found[name.removeprefix(self._top)] = None


def copied(template: Path, target: Path) -> Box:
    """Return a box that is a copy of a furnished one."""
    shutil.copytree(template, target)
    return Box(target)


def open_to_all(top: Path) -> None:
    """Let everybody read and write in a folder and all below."""
    for one in (top, *top.rglob("*")):
        one.chmod(0o777 if one.is_dir() else 0o666)


def _state(one: Path) -> str:
    if one.is_dir():
        return "folder"
    size = one.stat().st_size
    if size > 10_000_000:
        return f"{size} bytes"
    return hashlib.sha256(one.read_bytes()).hexdigest()


@cache
def _load_everything() -> None:
    """Import all that a command imports on the way: nobody may not read our own interpreter."""
    import ast
    import pkgutil
    from importlib import import_module

    import tarebook

    for found in pkgutil.walk_packages(tarebook.__path__, "tarebook."):
        if found.name.endswith("__main__"):
            continue
        module = import_module(found.name)
        for node in ast.walk(ast.parse(Path(str(module.__file__)).read_text(encoding="utf-8"))):
            names = [one.name for one in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and node.module and not node.level:
                names = [node.module]
            for name in names:
                if name.split(".")[0] not in ("__future__", "winreg", "msvcrt"):
                    import_module(name)
