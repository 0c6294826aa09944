"""The faults, and for each what is tried of a command and what must hold.

A fault gives a list of tries for a command; none means that it has no use for what is spoiled,
and the reason stands beside.
"""

from __future__ import annotations

import io
import os
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from pathlib import Path
from typing import Any, NamedTuple

from fault_box import (
    ASKED_WRONGLY,
    FAULT,
    FINE,
    INTERRUPTED,
    Box,
    Done,
    Usual,
    as_nobody,
    disk_of,
)
from fault_calls import (
    ASKING,
    Road,
    Slot,
    call_of,
    named_in,
    slots_of,
    texts_of,
    times_of,
    typed_for,
)
from fault_interrupt import Watch

WHOLE = bool(os.environ.get("TAREBOOK_ALL_FAULTS"))
SLOW_CALLS = 40_000  # a fifth of a second and more
HUGE = 100_000_000
BINARY = bytes(range(256)) * 40 + b"\xff\xfe\x00\xd8"
MARK = b"\xef\xbb\xbf"
# From right to left, with marks upon marks; then with an override that would turn a line round.
LETTERS = "\u05de\u05dc\u05d7 e\u0301\u0323\u0308 \u0627\u0644\u0645\u0644\u062d"
STRANGE = f"{LETTERS} \u202egnirts\u202c"
STEERS = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
ANY = (FINE, FAULT, ASKED_WRONGLY)
NO_LETTERS = {"LC_ALL": "C", "LANG": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
COPIES = "home/backups"  # of the whole book, made before it is touched; kept whatever comes then
NO_FILE = "it names no file, and opens none of the cook's own"
TOLD = ("unreadable", "100 MB", "binary", "folder")
QUIET = {
    ("list",): "its row says so, or it is counted among those left out",
    ("batch", "take"): "the recipe is kept as it is written, whatever its foods are",
    ("batch", "weigh"): "a weight is kept whatever the bottles are; the page of the batch tells",
    ("batch", "edit"): "as with the weight it mends; the page of the batch tells",
}
NO_TIME = "it takes no time and no day"


def _nothing(_: Box) -> None:
    """Spoil nothing."""


def _plain(_: Box) -> AbstractContextManager[Any]:
    return nullcontext()


def _all_well(_: Box, __: Done) -> None:
    """Ask for nothing beyond what holds of every try."""


class Try(NamedTuple):
    """One run of a command under a fault.

    Attributes:
        words: the call.
        road: the command.
        spoil: what is done to the house before.
        under: what the run stands under, such as a full disk.
        statuses: how it may end.
        names: what must be said where it does not end well.
        holds: what must hold beside.
        how: the streams, as ``Box.run`` takes them.
        run: how it is run, where that is not in this process.
    """

    words: list[str]
    road: Road
    spoil: Callable[[Box], object] = _nothing
    under: Callable[[Box], AbstractContextManager[Any]] = _plain
    statuses: tuple[int, ...] = ANY
    names: str = ""
    holds: Callable[[Box, Done], object] = _all_well
    typed: bytes | None = b""
    run: Callable[[Box, list[str]], Done] | None = None


class Fault(NamedTuple):
    """A fault.

    Attributes:
        tries: what is tried of a command, given what it does without a fault.
        reason: why a command has no try; empty where every one has.
    """

    tries: Callable[[Road, Usual], list[Try]]
    reason: str = ""


def held(box: Box, one: Try) -> Done:
    """Run a try, and see that all promises were kept."""
    one.spoil(box)
    box.settle()
    with one.under(box):
        done = one.run(box, one.words) if one.run else box.run(one.words, typed=one.typed)
    where = f"tarebook {' '.join(one.words)}: {done.status}\n{done.said[-600:]}"
    assert not done.fault, f"{where}\n{done.fault}"
    assert "Traceback" not in done.said, where
    assert done.status in one.statuses, where
    assert [] == box.scraps(), where
    left = {name for name in box.changed() if not name.startswith(COPIES)}
    assert done.status in (FINE, INTERRUPTED) or one.run or not left, where
    assert done.status in (FINE, INTERRUPTED) or one.names.lower() in done.said.lower(), where
    assert not set(STEERS) & set(done.err), where
    one.holds(box, done)
    assert [] == box.book_faults(), where
    return done


# --- files -----------------------------------------------------------------------------------


def _huge(file: Path, _: bytes) -> None:
    with file.open("wb") as opened:
        opened.truncate(HUGE)


def _folder(file: Path, _: bytes) -> None:
    file.unlink(missing_ok=True)
    file.mkdir()


def _unreadable(file: Path, held_before: bytes) -> None:
    file.write_bytes(held_before)
    file.chmod(0)


Spoil = Callable[[Path, bytes], object]
SPOIL: dict[str, Spoil] = {
    "missing file": lambda file, _: file.unlink(missing_ok=True),
    "folder": _folder,
    "unreadable": _unreadable,
    "empty file": lambda file, _: file.write_bytes(b""),
    "100 MB": _huge,
    "binary": lambda file, _: file.write_bytes(BINARY),
}
HARMLESS: dict[str, Spoil] = {
    "Windows line ends": lambda file, had: file.write_bytes(had.replace(b"\n", b"\r\n")),
    "byte order mark": lambda file, had: file.write_bytes(MARK + had),
}


def _files(fault: str, spoil: Spoil) -> Fault:
    """Return the fault of a file that cannot be what it should."""

    def tries(road: Road, usual: Usual) -> list[Try]:
        named = [_named(road, slot, fault, spoil) for slot in slots_of(road)]
        own = [_own(road, name, fault, spoil) for name in _own_of(usual)]
        return [*named, *_part(own, road, fault)]

    return Fault(tries, NO_FILE)


def _named(road: Road, slot: Slot, fault: str, spoil: Spoil) -> Try:
    """Return a try with a spoiled file in one of the places that a call names files in."""
    file = f"lake-{fault.split()[0]}{'.pdf' if slot.writes else '.toml'}"
    if slot.writes or slot.by_name:
        statuses = ANY
    elif slot.folder_too and road == ("list",):
        statuses = (FINE, FAULT)  # a list tells of what it cannot read
    else:
        statuses = (FAULT,)
    return Try(
        named_in(road, slot, file),
        road,
        spoil=lambda box: spoil(box.work / file, sample(box, road, slot).read_bytes()),
        under=as_nobody if fault == "unreadable" else _plain,
        statuses=statuses,
        names=Path(file).stem,
        typed=typed_for(road),
    )


def _own(road: Road, name: str, fault: str, spoil: Spoil) -> Try:
    """Return a try with one of the cook's own files spoiled."""

    def told(_: Box, done: Done) -> None:
        """What cannot be read and is done without is told all the same."""
        said = done.said.lower()
        quiet = fault not in TOLD or road in QUIET
        assert quiet or Path(name).stem in said or "cannot be read" in said, done.said

    return Try(
        call_of(road),
        road,
        spoil=lambda box: spoil(box.top / name, (box.top / name).read_bytes()),
        under=as_nobody if fault == "unreadable" else _plain,
        names="" if fault in ("missing file", "empty file") else Path(name).stem,
        holds=told,
        typed=typed_for(road),
    )


def _texts(fault: str, spoil: Spoil) -> Fault:
    """Return the fault of a text that is written as other systems do; nothing may come of it."""

    def tries(road: Road, usual: Usual) -> list[Try]:
        found = []
        for slot in slots_of(road):
            if not slot.writes and road != ("batch", "restore"):
                one = _named(road, slot, fault, spoil)
                found.append(one._replace(statuses=ANY if slot.by_name else (FINE,)))
        own = [
            _own(road, name, fault, spoil)._replace(statuses=(FINE,))
            for name in _own_of(usual)
            if name.endswith(".toml")
        ]
        return [*found, *_part(own, road, fault)]

    return Fault(tries, "it names no text file, and opens none of the cook's own")


def sample(box: Box, road: Road, slot: Slot) -> Path:
    """Return a file that would do in a place of a call."""
    usual = [box.work / word for word in call_of(road)] + [box.home / f"{slot.name}.toml"]
    found = (one for one in usual if one.is_file())
    return next(found, box.home / "recipes" / "juniper-venison.toml")


def _own_of(usual: Usual) -> list[str]:
    """Return the cook's own files that a command opens, which are there before it does."""
    return [
        name
        for name in usual.opened
        if name.startswith("home/")
        and Path(name).suffix in (".toml", ".sqlite3")
        and not Path(name).name.startswith(".")
    ]


def _part(tries: list[Try], road: Road, fault: str, most: int = 1) -> list[Try]:
    """Return some of the tries, others for other commands and faults; or all where asked."""
    if WHOLE or len(tries) <= most:
        return tries
    first = sum(map(ord, "".join(road) + fault)) % len(tries)
    step = max(1, len(tries) // most)
    return [tries[(first + step * i) % len(tries)] for i in range(most)]


def tried(road: Road, fault: str, usual: Usual) -> list[Try]:
    """Return what is tried of a command under a fault; of slow ones less."""
    tries = FAULTS[fault].tries(road, usual)
    if WHOLE or usual.calls < SLOW_CALLS:
        return tries
    ends_soon = [one for one in tries if one.statuses == (FAULT,)]
    return ends_soon + [one for one in tries if one.statuses != (FAULT,)][:1]


# --- disks, folders and streams ---------------------------------------------------------------


def _full_disk(road: Road, usual: Usual) -> list[Try]:
    sizes = (0, 300, 3_000, 9_000, 20_000) if usual.changed else (0,)
    names = "" if not usual.changed else Path(max(usual.changed)).name
    one = Try(call_of(road), road, typed=typed_for(road))
    if not usual.changed:
        return [one._replace(under=lambda _: disk_of(0), statuses=(FINE,))]
    tries = [
        one._replace(under=lambda _, size=size: disk_of(size), statuses=(FINE, FAULT), names=names)
        for size in sizes
    ]
    return [tries[0], *_part(tries[1:], road, "disk")]


def _read_only_home(road: Road, usual: Usual) -> list[Try]:
    def shut(box: Box) -> None:
        for one in (*box.home.rglob("*"), box.home):
            one.chmod(0o555 if one.is_dir() else 0o444)

    names = "home" if usual.writes_home else ""
    statuses = (FAULT,) if usual.writes_home else (FINE,)
    return [
        Try(
            call_of(road), road, spoil=shut, under=as_nobody, statuses=statuses, names=names,
            typed=typed_for(road),
        )
    ]  # fmt: skip


def _closed_pipe(road: Road, usual: Usual) -> list[Try]:
    calls = [call_of(road)]
    calls += [named_in(road, slot, "-") for slot in slots_of(road) if slot.name == "out"]
    return [
        Try(words, road, statuses=(FINE,), holds=silent, run=_into(make))
        for words in calls
        for make in (_gone_reader, _closed)
        if WHOLE or words == calls[0] or make is _gone_reader
    ] + [
        Try(words, road, statuses=(FINE, FAULT), run=_into(_full), holds=told_of_output)
        for words in calls
    ]


def silent(_: Box, done: Done) -> None:
    """Nothing is said of a reader who has seen enough."""
    assert "output" not in done.err, done.err


def told_of_output(_: Box, done: Done) -> None:
    """What could not be written is told in a sentence."""
    assert done.status == FINE or "the output cannot be written" in done.err, done.err


def _into(make: Callable[[], Any]) -> Callable[[Box, list[str]], Done]:
    def run(box: Box, words: list[str]) -> Done:
        road = next(one for one in _roads() if tuple(words[: len(one)]) == one)
        out = make()
        if out is None:
            return box.run(words, typed=typed_for(road), closed=True)
        try:
            return box.run(words, typed=typed_for(road), out=out)
        finally:
            _let_go(out)

    return run


def _roads() -> list[Road]:
    from fault_calls import commands

    return sorted(commands(), key=len, reverse=True)


def _gone_reader() -> io.BufferedWriter:
    reads, writes = os.pipe()
    os.close(reads)
    return io.BufferedWriter(io.FileIO(writes, "w"))


def _full() -> io.BufferedWriter:
    return io.BufferedWriter(io.FileIO("/dev/full", "w"))


def _closed() -> None:
    return None


def _let_go(out: io.BufferedWriter) -> None:
    os.dup2(os.open(os.devnull, os.O_WRONLY), out.fileno())
    out.close()


def _no_terminal(road: Road, usual: Usual) -> list[Try]:
    """Return tries without anybody to answer."""
    calls = [call_of(road), *([ASKING[road]] if road in ASKING else [])]
    asks = ASKING.get(road)
    tries = [
        Try(
            words, road, typed=typed, names="answer" if asks else "",
            statuses=(ASKED_WRONGLY,) if words == asks or typed_for(road) else (FINE,),
        )
        for words in calls
        for typed in ((None, b"") if WHOLE or asks else (None,))
    ]  # fmt: skip
    piped = [
        Try(named_in(road, slot, "-"), road, typed=typed, statuses=(FAULT, ASKED_WRONGLY))
        for slot in slots_of(road)
        if not slot.writes and not slot.by_name and road != ("list",)
        for typed in (None, b"")
    ]
    return [*tries, *piped]


def _plain_letters(road: Road, usual: Usual) -> list[Try]:
    def run(box: Box, words: list[str]) -> Done:
        env = {k: v for k, v in os.environ.items() if k not in ("PYTHONIOENCODING",)}
        done = box.process(words, input=typed_for(road), env={**env, **NO_LETTERS})
        return Done(done.returncode, done.stdout, done.stderr.decode("utf-8", "replace"))

    def here(box: Box, words: list[str]) -> Done:
        return box.run(words, typed=typed_for(road), encoding="ascii")

    one = Try(call_of(road), road, statuses=(FINE,))
    tries = [one._replace(run=here), one._replace(run=run)]
    return tries if WHOLE else [tries[sum(map(ord, "".join(road))) % 3 == 0]]


def _ctrl_c(road: Road, usual: Usual) -> list[Try]:
    """Return tries that are interrupted: on the way, and beside everything that is written."""
    shares = [i / 20 for i in range(20)] if WHOLE else [0.1, 0.6]
    files = range(120) if WHOLE else range(sum(map(ord, road[-1])) % 4, 60, 9)
    ways = [("call", 2 + int(share * usual.calls)) for share in shares]  # the first is "run"
    ways += [("file", count) for count in files] if usual.changed else []

    def run(box: Box, words: list[str], way: tuple[str, int]) -> Done:
        return box.run(words, typed=typed_for(road), watch=Watch(*way))

    return [
        Try(
            call_of(road), road, statuses=(FINE, INTERRUPTED),
            run=lambda box, words, way=way: run(box, words, way),
            holds=lambda box, done: whole(box, usual),
        )
        for way in ways
    ]  # fmt: skip


def whole(box: Box, usual: Usual) -> None:
    """Each file is as it was, or as it is when nothing is wrong."""
    for name, state in box.changed().items():
        assert name in usual.changed or name.startswith(COPIES), f"{name} is left behind"
        assert name.endswith(".sqlite3") or state in ("folder", "gone", usual.changed[name]), name


# --- letters and clocks -----------------------------------------------------------------------


def _strange_letters(road: Road, usual: Usual) -> list[Try]:
    def house(box: Box) -> None:
        for one in (*box.home.rglob("*.toml"),):
            text = one.read_text(encoding="utf-8")
            for key in ("title = ", "name = "):
                text = text.replace(f'{key}"', f'{key}"{LETTERS} ')
            one.write_text(text, encoding="utf-8")
        box.run(["batch", "note", STRANGE])

    # A note is not taken up into a recipe that goes by another title now.
    statuses = (FINE, ASKED_WRONGLY) if road == ("batch", "take") else (FINE,)
    found = [Try(call_of(road), road, spoil=house, statuses=statuses, typed=typed_for(road))]
    words = [
        Try(named_in(road, slot, STRANGE), road, typed=typed_for(road)) for slot in texts_of(road)
    ]
    files = [
        Try(named_in(road, slot, f"{STRANGE}.toml"), road, typed=typed_for(road))
        for slot in slots_of(road)
    ]
    return [*found, *_part([*words, *files], road, "letters", most=2)]


MOMENTS = {
    "WHEN": (
        "2026-11-01 01:30", "2026-03-08 02:30", "2026-11-24 23:59", "2026-11-25 00:00", "23:59",
        "0:00", "24:00", "midnight", "yesterday 23:59", "2026-11-01T01:30-06:00",
    ),
    "DAY": ("2026-03-08", "2026-11-01", "2026-02-29", "2026-12-31", "today", "tomorrow"),
    "FROM-TO": ("22:00-06:00", "00:00-24:00", "23:59-00:00", "01:30-01:30"),
}  # fmt: skip


def _clocks(road: Road, usual: Usual) -> list[Try]:
    found = []
    for option, kind in times_of(road):
        tries = [Try(_with(road, option, said), road) for said in MOMENTS[kind]]
        found += _part(tries, road, option, most=3)
    return found


def _with(road: Road, option: str, said: str) -> list[str]:
    words = call_of(road)
    if option in words:
        at = words.index(option)
        return [*words[: at + 1], said, *words[at + 2 :]]
    return [*words, option, said]


FAULTS: dict[str, Fault] = {
    **{name: _files(name, spoil) for name, spoil in SPOIL.items()},
    "no space": Fault(_full_disk),
    "read-only home": Fault(_read_only_home),
    "closed pipe": Fault(_closed_pipe),
    "Ctrl-C": Fault(_ctrl_c),
    "no terminal": Fault(_no_terminal),
    "LANG=C": Fault(_plain_letters),
    **{name: _texts(name, spoil) for name, spoil in HARMLESS.items()},
    "strange letters": Fault(_strange_letters),
    "clocks": Fault(_clocks, NO_TIME),
}
