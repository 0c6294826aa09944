"""What only a whole process shows: Ctrl-C while loading and midway, closed and full outputs."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from fault_box import FAULT, FINE, INTERRUPTED, Box
from fault_calls import Road, call_of, commands, typed_for

pytestmark = pytest.mark.skipif(os.name == "nt", reason="users, pipes and signals of POSIX")
WHOLE = bool(os.environ.get("TAREBOOK_ALL_FAULTS"))
ROADS = [road for count, road in enumerate(commands()) if WHOLE or count % 12 == 0]
SOME = pytest.mark.parametrize("road", ROADS, ids=" ".join)
# Presses Ctrl-C at the moment when a module is looked for.
STOP_AT = """
import runpy, signal, sys
class Stop:
    def find_spec(self, name, path=None, target=None):
        if name == at:
            signal.raise_signal(signal.SIGINT)
at = sys.argv.pop(1)
sys.meta_path.insert(0, Stop())
runpy.run_module("tarebook", run_name="__main__", alter_sys=True)
"""
MANY = 1600


@pytest.mark.parametrize("at", ["tarebook.cli.main", "typer", "typer.main", "tarebook.cli.{}"])
@SOME
def test_ctrl_c_while_loading(road: Road, at: str, box: Box) -> None:
    """However early Ctrl-C comes, the program ends with 130 and without a word."""
    program = [sys.executable, "-c", STOP_AT, at.format(road[0])]
    box.settle()
    done = box.process(call_of(road), program=program)

    assert (INTERRUPTED, b"", b"") == (done.returncode, done.stdout, done.stderr)
    assert {} == box.changed()


def test_ctrl_c_in_the_middle_of_a_long_one(box: Box) -> None:
    """A list of many recipes is stopped at once, with all that works at it."""
    (box.work / "many").mkdir()
    for count in range(MANY):
        recipe = (box.work / "recipes" / "woodland-mushrooms.toml").read_text(encoding="utf-8")
        text = recipe.replace('title = "', f'title = "{count} ')
        (box.work / "many" / f"{count}.toml").write_text(text, encoding="utf-8")
    kept = box.home / "cache" / "shelf.sqlite3"
    kept.unlink(missing_ok=True)
    box.settle()
    with subprocess.Popen(
        [sys.executable, "-m", "tarebook", "list", "many"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=box.work,
        start_new_session=True,  # Ctrl-C goes to all that a terminal runs just now
    ) as child:
        until = time.monotonic() + 60
        while not kept.exists() and time.monotonic() < until:
            time.sleep(0.02)
        os.killpg(child.pid, signal.SIGINT)
        out, err = child.communicate(timeout=30)

    assert (INTERRUPTED, b"", b"") == (child.returncode, out, err)
    assert ([], {}) == (box.scraps(), box.changed())


@SOME
def test_closed_and_full_outputs(road: Road, box: Box, furnished: Path) -> None:
    """A reader who is gone, no output at all, and a full disk: no traceback at the very end."""
    reads, gone = os.pipe()
    os.close(reads)
    for out in (gone, None, os.open("/dev/full", os.O_WRONLY)):
        words = [sys.executable, "-m", "tarebook", *call_of(road)]
        program = ["/bin/sh", "-c", 'exec "$@" >&-', "sh", *words] if out is None else words
        done = subprocess.run(
            program,
            input=typed_for(road),
            stdout=out,
            stderr=subprocess.PIPE,
            cwd=box.work,
            timeout=60,
        )
        box.restore(furnished)
        if out is not None:
            os.close(out)
        assert b"Traceback" not in done.stderr and b"Exception" not in done.stderr
        assert done.returncode in (FINE, FAULT)
        assert done.returncode == FINE or b"the output cannot be written" in done.stderr


@pytest.mark.parametrize("road", [one for one in ROADS if not typed_for(one)], ids=" ".join)
def test_no_streams_at_all(road: Road, box: Box) -> None:
    """Started without any of the three, a command does its work, and writes over no book."""
    box.settle()
    closed = ["/bin/sh", "-c", 'exec "$@" <&- >&- 2>&-', "sh", sys.executable, "-m", "tarebook"]
    done = box.process(call_of(road), program=closed)

    assert (FINE, b"", b"") == (done.returncode, done.stdout, done.stderr)
    assert ([], []) == (box.scraps(), box.book_faults())


def test_a_fault_of_a_file_names_the_file(box: Box, monkeypatch: pytest.MonkeyPatch) -> None:
    """What fails beneath everything that looks for faults is told with its file, not as output."""

    def failing(_: object) -> None:
        raise OSError(5, "Input/output error", "/disk/lake.toml")

    monkeypatch.setattr("tarebook.recipe.load.recipe_bytes", failing)
    done = box.run(["check", "lake.toml"])

    assert FAULT == done.status
    assert 'tarebook: "/disk/lake.toml" cannot be used: input/output error\n' == done.err


@pytest.mark.parametrize(
    ("began", "ended", "hours"),
    [
        ("2026-10-31 22:00", "2026-11-01 06:00", 9),
        ("2026-03-07 22:00", "2026-03-08 06:00", 7),
        ("2026-11-24 23:59", "2026-11-25 00:01", 2 / 60),
        ("2026-11-01 01:30", "2026-11-01 02:30", 2),
    ],
)
def test_hours_across_clocks(began: str, ended: str, hours: float, box: Box) -> None:
    """Across midnight and changes of the clocks a soak lasts as long as it lasted."""
    import json

    for words in (
        ["start", "juniper-venison", "--meat", "3 lb", "--at", "2026-03-01 12:00"],
        ["soak", "--at", began, "--batch", "2"],
        ["soak", "out", "--at", ended, "--batch", "2"],
    ):
        assert FINE == box.run(["batch", *words]).status
    shown = json.loads(box.run(["batch", "show", "2", "--json"]).out)

    assert pytest.approx(hours) == shown["soak_h"]
