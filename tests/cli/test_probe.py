"""tarebook probe, as it is typed."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]

ROWS = "time,Core (F),Oven (F)\n" + "".join(
    f"2026-11-21 {18 + m // 60}:{m % 60:02d},{min(60 + m, 163)},275\n" for m in range(200)
)


@pytest.fixture
def log(tmp_path: Path) -> str:
    """A log of the meat and of the oven."""
    path = tmp_path / "oven.csv"
    path.write_text(ROWS, encoding="utf-8")
    return str(path)


def test_a_column_is_drawn_and_told(log: str, tarebook: Tarebook) -> None:
    """The page of one column; nothing odd, nothing on standard error."""
    status, out, err = tarebook("probe", log, "--column", "core")

    assert (0, "") == (status, err)
    assert "The probe was in the meat." in out
    assert "160 °F (71 °C)      1 h 40 min in (19:40)" in out


def test_the_data_come_as_json(log: str, tarebook: Tarebook) -> None:
    """The same as plain data."""
    found = json.loads(tarebook("probe", log, "--column", "oven", "--json").out)

    assert ("air", 275.0, 0.0) == (
        found["place"], found["highest_f"], found["reached"][0]["first_s"],
    )  # fmt: skip


def test_a_log_may_be_piped(tarebook: Tarebook) -> None:
    """``-`` reads standard input, and asks nothing."""
    status, out, _ = tarebook("probe", "-", typed="18:00,150 F\n18:01,151 F\n")

    assert 0 == status
    assert "--in meat or --in air" in " ".join(out.split())


@pytest.mark.parametrize(
    ("args", "says", "status"),
    [
        ((), "several columns of temperature: choose one", 2),
        (("--column", "fridge"), 'no one column is called "fridge"', 2),
        (("--column", "core", "--in", "soup"), '--in: "soup" is no place', 2),
        (("--column", "core", "--scale", "K"), '--scale: "K" is no scale', 2),
    ],
)
def test_err_asked_wrongly(
    args: tuple[str, ...], says: str, status: int, log: str, tarebook: Tarebook
) -> None:
    """What is wrong and what to try, exit status 2."""
    done = tarebook("probe", log, *args)

    assert (status, "") == (done.status, done.out)
    assert says in done.err


def test_err_no_such_log(tarebook: Tarebook, tmp_path: Path) -> None:
    """A file that is not there, and a folder: exit status 1."""
    assert (1, True) == _ends(tarebook("probe", str(tmp_path / "none.csv")), "there is no log")
    assert (1, True) == _ends(tarebook("probe", str(tmp_path)), "is a folder")


def _ends(done: Any, says: str) -> tuple[int, bool]:
    return done.status, says in done.err


def test_fifty_thousand_rows_take_no_age(tmp_path: Path, tarebook: Tarebook) -> None:
    """A reading a second for fourteen hours is read in seconds, not minutes."""
    rows = "".join(f"{s},{60 + s / 500:.2f}\n" for s in range(50_000))
    (tmp_path / "long.csv").write_text("seconds,Core F\n" + rows, encoding="utf-8")
    began = time.perf_counter()
    status = tarebook("probe", str(tmp_path / "long.csv")).status

    assert 0 == status
    assert time.perf_counter() - began < 10
