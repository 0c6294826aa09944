"""Cuts the power while entries are written, on a disk of our own, and looks what is missing.

A writer runs once under ``strace``, which notes every call that changes the book's folder, and
every line by which an entry was told as kept. From that a disk is played: what a ``fsync`` asked
for is on it, and whatever was written since may be there, or not, or in part, sector by sector,
or be noise where the file grew. The power is cut between any two calls, again and again; each
time the folder as the disk has it is opened, SQLite's own check is run over the book, and every
entry that was told before the cut is looked for.

It takes a disk at its word that says "on the disk", and holds of the system calls of Linux. Names
in a folder become durable in the order they were made and unmade, as a journal keeps them.

    python tests/records/power.py [--cuts 2000] [--entries 20] [--seed 1]
"""

from __future__ import annotations

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from tarebook.findings import TarebookError
from tarebook.records.backup import check
from tarebook.records.entry import Draft, Kind
from tarebook.records.keep import start_batch
from tarebook.records.moment import Moment
from tarebook.records.store import reading, writing

WRITER = """
import sys
from tarebook.records.entry import Draft, Kind
from tarebook.records.keep import add_entry, start_batch
from tarebook.records.moment import Moment
from tarebook.records.store import writing

now = Moment(1_795_000_000, -360)
def draft(kind, note):
    return Draft(kind=kind, happened=now, recorded=now, what="", note=note)
def tell(entry):
    sys.stdout.write(f"{entry.uid} {entry.note}\\n")
    sys.stdout.flush()
with writing() as db:
    entry = start_batch(db, recipe="r", title="T", recipe_text="t", draft=draft(Kind.START, "0"))
tell(entry)
for count in range(1, int(sys.argv[1])):
    with writing() as db:
        note = f"{count} " + "x" * (count * 97 % 2000)
        entry = add_entry(db, entry.batch, draft(Kind.NOTE, note))
    tell(entry)
"""
CALLS = "openat,pwrite64,write,fsync,fdatasync,unlink,ftruncate,mkdir"
SECTOR = 512
_CALL = re.compile(r"(?:\d+ +)?(\w+)\((.*)\) += (-?\d+)")
_HEX = re.compile(r"\\x([0-9a-f]{2})")
_QUOTED = re.compile(r'"((?:\\x[0-9a-f]{2})*)"(\.\.\.)?')
_OPENED = re.compile(r"(\d+)<([^>]*)>")


class Call(NamedTuple):
    """One call that changes something: what it does, to which path, with what bytes, and where."""

    does: str
    path: str
    data: bytes = b""
    at: int = 0


class Cut(NamedTuple):
    """What came of the cuts.

    Attributes:
        cuts: how many there were.
        unsynced: after how many something written was not sure to be on the disk.
        told: how many entries had been told, over all cuts.
        lost: how many of those are not in the book as they were told.
        corrupt: after how many a check found something, or nothing more could be written.
    """

    cuts: int = 0
    unsynced: int = 0
    told: int = 0
    lost: int = 0
    corrupt: int = 0


class Disk:
    """A disk that has what was synced, and perhaps some of the rest."""

    def __init__(self, top: str) -> None:
        self.names: dict[str, int] = {}  # as programs see them: path to file, 0 a folder
        self.lasting: dict[str, int] = {top: 0}
        self.pending: list[tuple[str, int | None]] = []  # names made, or unmade (None)
        self.files: list[bytearray] = [bytearray()]
        self.writes: list[list[Call]] = [[]]

    def do(self, call: Call) -> None:
        """Take one call."""
        if call.does in ("create", "mkdir") and call.path not in self.names:
            if call.does == "create":
                self.files.append(bytearray())
                self.writes.append([])
            self.names[call.path] = len(self.files) - 1 if call.does == "create" else 0
            self.pending.append((call.path, self.names[call.path]))
        elif call.does == "unlink":
            del self.names[call.path]
            self.pending.append((call.path, None))
        elif call.does in ("write", "truncate"):
            self.writes[self.names[call.path]].append(call)
        elif call.does == "sync":
            self._sync(call.path)

    @property
    def unsynced(self) -> bool:
        """Whether anything is not sure to last."""
        return bool(self.pending or any(self.writes))

    def cut(self, chance: random.Random, into: Path) -> None:
        """Write down what a cut of the power may leave."""
        names = dict(self.lasting)
        for path, file in self.pending[: chance.randint(0, len(self.pending))]:
            _name(names, path, file)
        for path, file in sorted(names.items()):
            target = into / path.lstrip("/")
            if file == 0:
                target.mkdir(parents=True, exist_ok=True)
            elif str(Path(path).parent) in names:
                target.write_bytes(self._left(file, chance))

    def _sync(self, path: str) -> None:
        file = self.names.get(path, 0)
        if file:
            for call in self.writes[file]:
                _apply(self.files[file], call)
            self.writes[file].clear()
            return
        for name, target in [one for one in self.pending if str(Path(one[0]).parent) == path]:
            _name(self.lasting, name, target)
        self.pending = [one for one in self.pending if str(Path(one[0]).parent) != path]

    def _left(self, file: int, chance: random.Random) -> bytes:
        data = bytearray(self.files[file])
        fate = chance.random()  # all came, none did, or each by itself
        for call in self.writes[file]:
            if fate < 0.15 or (fate > 0.3 and chance.random() < 0.5):
                _apply(data, call)
            elif fate > 0.3 and call.does == "write":
                _torn(data, call, chance)
        return bytes(data)


def power(home: Path, cuts: int, *, entries: int = 20, seed: int = 1) -> Cut:
    """Write entries once, and cut the power at random.

    Args:
        home: an empty folder; ``TAREBOOK_HOME`` points into it, and elsewhere, meanwhile.
        cuts: how often.
        entries: how many are written.
        seed: of the instants, and of what is left.
    """
    chance = random.Random(seed)
    top, played = home / "kitchen", home / "played"
    top.mkdir()
    traced = list(trace(top, entries))
    done = Cut()
    for _ in range(cuts):
        until = chance.randint(1, len(traced))
        disk, told = Disk(str(top)), b""
        for call in traced[:until]:
            if call.does == "told":
                told += call.data
            else:
                disk.do(call)
        shutil.rmtree(played, ignore_errors=True)
        played.mkdir()
        disk.cut(chance, played)
        done = _looked(done, disk, told.decode(), played / str(top).lstrip("/") / "own")
    return done


def trace(top: Path, entries: int) -> Iterator[Call]:
    """Run the writer in a folder below this one, and yield its calls."""
    log = top / "calls.log"
    command = ["strace", "-y", "-xx", "-s", "200000", "-e", f"trace={CALLS}", "-o", str(log)]
    told = subprocess.run(
        [*command, sys.executable, "-c", WRITER, str(entries)],
        env={**os.environ, "TAREBOOK_HOME": str(top / "own")},
        capture_output=True,
        check=True,
    )
    assert entries == told.stdout.count(b"\n")
    for line in log.read_text().splitlines():
        call = _read(line)
        if call is not None and (call.does == "told" or Path(call.path).is_relative_to(top)):
            yield call


def _read(line: str) -> Call | None:
    """Return what a line of the trace does, or None where it changes nothing or failed."""
    match = _CALL.match(line)
    if match is None or int(match[3]) < 0:
        return None
    name, body = match[1], match[2]
    text = _HEX.sub(lambda one: chr(int(one[1], 16)), body)
    quoted = _QUOTED.search(body)
    assert quoted is None or not quoted[2], "a write longer than the trace keeps"
    data = bytes.fromhex(quoted[1].replace("\\x", "")) if quoted else b""
    opened = _OPENED.match(text)
    if name in ("fsync", "fdatasync") and opened:
        return Call("sync", opened[2])
    if name == "write" and opened:
        return Call("told", "", data) if opened[1] == "1" else None
    if name == "pwrite64" and opened:
        return Call("write", opened[2], data, int(body.rpartition(",")[2]))
    if name == "ftruncate" and opened:
        return Call("truncate", opened[2], at=int(body.rpartition(",")[2]))
    if name == "openat":
        return Call("create", data.decode()) if "O_CREAT" in body else None
    return Call(name, data.decode())


def _looked(done: Cut, disk: Disk, told: str, home: Path) -> Cut:
    """Open what the disk has, count what is missing of what was told, and write one entry more."""
    os.environ["TAREBOOK_HOME"] = str(home)
    lines = dict(line.split(" ", 1) for line in told.splitlines() if " " in line)
    kept: dict[str, str] = {}
    try:
        faults = check().faults if (home / "book.sqlite3").exists() else ()
        with reading() as db:
            kept = dict(db.execute("SELECT uid, note FROM entries"))
        _start_one()
    except TarebookError as fault:
        faults = (str(fault),)
    for fault in faults:
        print(fault, file=sys.stderr)
    return Cut(
        cuts=done.cuts + 1,
        unsynced=done.unsynced + disk.unsynced,
        told=done.told + len(lines),
        lost=done.lost + sum(kept.get(uid) != note for uid, note in lines.items()),
        corrupt=done.corrupt + bool(faults),
    )


def _start_one() -> None:
    now = Moment(1_795_000_000, -360)
    draft = Draft(kind=Kind.START, happened=now, recorded=now)
    with writing() as db:
        start_batch(db, recipe="after", title="T", recipe_text="t", draft=draft)


def _name(names: dict[str, int], path: str, file: int | None) -> None:
    if file is None:
        names.pop(path, None)
    else:
        names[path] = file


def _apply(data: bytearray, call: Call) -> None:
    if call.does == "truncate":
        del data[call.at :]
        data.extend(bytes(call.at - len(data)))
        return
    data.extend(bytes(max(call.at - len(data), 0)))
    data[call.at : call.at + len(call.data)] = call.data


def _torn(data: bytearray, call: Call, chance: random.Random) -> None:
    """Apply some sectors of a write; where the file grew, others may hold noise."""
    end = call.at + len(call.data)
    first = call.at // SECTOR * SECTOR
    for begin in range(first, end, SECTOR):
        low, high = max(begin, call.at), min(begin + SECTOR, end)
        grew, kind = begin >= len(data), chance.random()
        if kind < 0.5:
            _apply(data, Call("write", "", call.data[low - call.at : high - call.at], low))
        elif grew and kind < 0.6:
            _apply(data, Call("write", "", chance.randbytes(high - low), low))


def main() -> None:
    """Cut, and print the counts."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--cuts", type=int, default=2000, help="how often to cut the power")
    parser.add_argument("--entries", type=int, default=20, help="how many entries to write")
    parser.add_argument("--seed", type=int, default=1, help="of the instants")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        found = power(Path(folder), asked.cuts, entries=asked.entries, seed=asked.seed)
    print(f"{found.cuts:,} cuts of the power, {found.unsynced:,} of them with writes under way")
    print(f"{found.told:,} entries told as kept before them: {found.lost} lost")
    print(f"{found.corrupt} checks found a fault")
    sys.exit(bool(found.lost or found.corrupt))


if __name__ == "__main__":
    main()
