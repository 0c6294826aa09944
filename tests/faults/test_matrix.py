"""Every command under every fault: no traceback, the right exit status, nothing half written.

One cell a command and fault; what a command has no use for is said with a reason. The slowest
cells are tried in part. All of it, some thousand runs:

    python tests/faults/test_matrix.py
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from fault_box import Box, Usual
from fault_calls import ASKING, Road, asks, commands, says_file, slots_of
from fault_kinds import FAULTS, held, tried

pytestmark = [
    pytest.mark.skipif(os.name == "nt", reason="users, pipes and signals of POSIX"),
    # Stopped between a file's opening and its "with", the interpreter closes it and says so.
    pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning"),
]
Look = Callable[[Road], Usual]

EVERY_ROAD = pytest.mark.parametrize("road", commands(), ids=" ".join)
EVERY_FAULT = pytest.mark.parametrize("fault", FAULTS)


@EVERY_FAULT
@EVERY_ROAD
def test_cell(road: Road, fault: str, box: Box, furnished: Path, usual: Look) -> None:
    """The command keeps its promises under the fault, or has no use for what the fault spoils."""
    tries = tried(road, fault, usual(road))
    for count, one in enumerate(tries):
        if count:
            box.restore(furnished)
        held(box, one)

    assert tries or FAULTS[fault].reason


def test_examples_work(usual: Look) -> None:
    """Without a fault the calls that all cells are made of end well."""
    done = {road: usual(road).done for road in commands()}

    assert {} == {road: one for road, one in done.items() if one.status or one.fault}


def test_every_fault_is_tried_or_has_a_reason(usual: Look) -> None:
    """No cell of the matrix is empty without a word."""
    empty = [
        (road, name)
        for road in commands()
        for name, one in FAULTS.items()
        if not (one.tries(road, usual(road)) or one.reason)
    ]

    assert [] == empty


@pytest.mark.parametrize("road", commands(), ids=" ".join)
def test_places_of_files_are_known(road: Road) -> None:
    """What the help of a command calls a file is given to it as one in the cells."""
    assert says_file(road) <= {slot.name for slot in slots_of(road)}


def test_all_that_ask_are_known() -> None:
    """Each command that asks at the terminal is tried without one."""
    assert set(ASKING) == {road for road in commands() if asks(road)}


if __name__ == "__main__":
    os.environ["TAREBOOK_ALL_FAULTS"] = "1"
    sys.exit(pytest.main([__file__, "-q", "--durations=10", *sys.argv[1:]]))
