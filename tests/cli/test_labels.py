"""tarebook labels, as it is typed."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]


def test_labels_are_written_to_a_file(tarebook: Tarebook, tmp_path: Path) -> None:
    """A document of as many labels as were asked for."""
    file = tmp_path / "labels.pdf"
    status, out, err = tarebook("labels", "juniper-venison", "--count", "3", "-o", str(file))

    assert (0, "") == (status, out)
    assert f"{file} is written" in err
    assert file.read_bytes().startswith(b"%PDF")


def test_several_pictures_are_several_files(tarebook: Tarebook, tmp_path: Path) -> None:
    """Numbered before the ending."""
    file = tmp_path / "l.svg"
    asked = ("--count", "11", "--as", "svg", "-o", str(file))
    status, _, _ = tarebook("labels", "juniper-venison", *asked)

    assert 0 == status
    assert {"l-1.svg", "l-2.svg"} == {one.name for one in tmp_path.glob("*.svg")}


def test_the_day_comes_from_the_build_where_none_is_said(
    tarebook: Tarebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    """SOURCE_DATE_EPOCH; --packed wins."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795651200")
    epoch = json.loads(tarebook("labels", "juniper-venison", "--json").out)
    said = json.loads(tarebook("labels", "juniper-venison", "--packed", "2026-12-01", "--json").out)

    assert "Packed 26\xa0Nov\xa02026" == epoch["packed"]
    assert "Packed 1\xa0Dec\xa02026" == said["packed"]


def test_a_finished_batch_carries_its_measured_figures(tarebook: Tarebook) -> None:
    """The weighed batch narrows the range that a label prints."""

    def width(*more: str) -> float:
        found = json.loads(tarebook("labels", "juniper-venison", *more, "--json").out)
        low, high = found["sodium_range"].split("–")
        return float(high) - float(low)

    assert width("--finished", "480g", "--soaked", "1150g") < width()


@pytest.mark.parametrize("more", [(), ("--alignment",), ("--as", "png")])
def test_labels_go_down_no_pipe_unasked(more: tuple[str, ...], tarebook: Tarebook) -> None:
    """Without a file, nothing but what to say."""
    status, out, err = tarebook("labels", "juniper-venison", *more)

    assert (2, "") == (status, out)
    assert "name a file with -o, or -o - for the pipe" in " ".join(err.split())


def test_labels_go_down_a_pipe_that_is_asked_for(process: Callable[..., Any]) -> None:
    """-o - is the pipe; the bytes are those of the document."""
    done = process("labels", "juniper-venison", "-o", "-")

    assert (0, b"") == (done.returncode, done.stderr)
    assert done.stdout.startswith(b"%PDF-")


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["--count", "501"], "--count: from 1 to 500"),
        (["--start", "11"], "--start: the sheet letter-2x5 has labels 1 to 10"),
        (["--sheet", "letter-2x55"], "did you mean letter-2x5"),
        (["--as", "gif"], "say pdf, svg, png"),
        (["--packed", "yesterday"], "write it year first"),
        (["--each", "much"], "--each"),
        (["--count", "30", "--as", "png"], "name a file with -o"),
    ],
)
def test_err_asked_wrongly(args: list[str], says: str, tarebook: Tarebook) -> None:
    """Which option, and what to write; exit status 2."""
    done = tarebook("labels", "juniper-venison", *args)

    assert 2 == done.status
    assert says in done.err


def test_err_a_folder_that_cannot_be_written(tarebook: Tarebook, tmp_path: Path) -> None:
    """A file stands where a folder should be: exit status 1, nothing half-written."""
    (tmp_path / "here").write_text("x", "utf-8")
    done = tarebook("labels", "juniper-venison", "-o", str(tmp_path / "here" / "l.pdf"))

    assert 1 == done.status and "cannot be written" in done.err
