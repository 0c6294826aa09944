"""Files are read with clear words, and written whole or not at all."""

from __future__ import annotations

import io
import os
import stat
import sys
from pathlib import Path

import pytest

from tarebook.files import named, read_bytes, write_whole
from tarebook.findings import FileUnreadable, FileUnwritable


def test_no_more_is_read_than_one_byte_too_many(tmp_path: Path) -> None:
    """A huge file is told from a fitting one without reading it all."""
    (tmp_path / "log.csv").write_bytes(b"x" * 1000)

    assert 11 == len(read_bytes(tmp_path / "log.csv", most=10))


def test_a_dash_is_standard_input(monkeypatch: pytest.MonkeyPatch) -> None:
    """``-`` reads what is piped in."""
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"piped")))

    assert b"piped" == read_bytes("-", most=10)


def test_err_missing_names_what_was_wanted(tmp_path: Path) -> None:
    """A missing log is no missing recipe."""
    with pytest.raises(FileUnreadable, match=r'^there is no log ".*oven.csv"$'):
        read_bytes(tmp_path / "oven.csv", most=10, what="log")


def test_err_folder(tmp_path: Path) -> None:
    """A folder is named as one."""
    with pytest.raises(FileUnreadable, match="is a folder; name one file in it"):
        read_bytes(tmp_path, most=10)


def test_ctrl_c_leaves_the_old_file_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Stopped just before the new file has its name, there is the old one and nothing else."""
    file = tmp_path / "card.pdf"
    file.write_bytes(b"old")

    def stopped(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stopped)
    with pytest.raises(KeyboardInterrupt):
        write_whole(file, b"new")

    assert b"old" == file.read_bytes()
    assert ["card.pdf"] == [one.name for one in tmp_path.iterdir()]


def test_what_is_written_is_read_again(tmp_path: Path) -> None:
    """Folders above are made, and nothing else is left there."""
    write_whole(tmp_path / "deep" / "card.pdf", b"%PDF")

    assert b"%PDF" == (tmp_path / "deep" / "card.pdf").read_bytes()
    assert ["card.pdf"] == [one.name for one in (tmp_path / "deep").iterdir()]


def test_who_may_read_it_stays_as_it_was(tmp_path: Path) -> None:
    """Replacing a private file keeps it private."""
    path = tmp_path / "kitchen.toml"
    path.write_bytes(b"old")
    path.chmod(0o600)
    write_whole(path, b"new")

    assert 0o600 == stat.S_IMODE(path.stat().st_mode)


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """What a link points to is written; the link itself stays."""
    (tmp_path / "real.toml").write_bytes(b"old")
    (tmp_path / "link.toml").symlink_to(tmp_path / "real.toml")
    write_whole(tmp_path / "link.toml", b"new")

    assert (tmp_path / "link.toml").is_symlink()
    assert b"new" == (tmp_path / "real.toml").read_bytes()


def test_err_a_fault_on_the_way_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A disk that fills up loses nothing of what was there, and leaves no scraps."""
    path = tmp_path / "kitchen.toml"
    path.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(FileUnwritable, match="cannot be written: no space left on device"):
        write_whole(path, b"new")
    assert b"old" == path.read_bytes()
    assert ["kitchen.toml"] == [one.name for one in tmp_path.iterdir() if one.is_file()]


def test_err_a_folder_is_not_written_over(tmp_path: Path) -> None:
    """A folder of that name stays."""
    with pytest.raises(FileUnwritable, match="is a folder"):
        write_whole(tmp_path, b"new")


@pytest.mark.parametrize("name", ["a\0b", "x" * 5000])
def test_err_a_name_that_no_file_can_have(name: str, tmp_path: Path) -> None:
    """Impossible names are refused with a reason."""
    with pytest.raises(FileUnwritable, match="cannot be written"):
        write_whole(tmp_path / name, b"new")


def test_a_path_is_shown_printable_and_short() -> None:
    """Nothing in a name steers a terminal."""
    assert '"a\\x1b[31mb"' == named(Path("a\x1b[31mb"))
    assert 162 == len(named(Path("x" * 500)))
