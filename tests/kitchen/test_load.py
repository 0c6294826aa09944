"""Where the kitchen lies, and what is made of a faulty one."""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.findings import RecordFaulty
from tarebook.kitchen import UNKNOWN, kitchen_file, load_kitchen


def write(home: Path, text: str) -> None:
    """Write a kitchen's file."""
    home.mkdir(parents=True)
    (home / "kitchen.toml").write_text(text, encoding="utf-8")


def test_no_file_is_no_fault(own_home: Path) -> None:
    """A cook who told nothing has an unknown kitchen."""
    assert own_home / "kitchen.toml" == kitchen_file()
    assert (UNKNOWN, ()) == load_kitchen()


def test_a_broken_profile_names_its_file(own_home: Path) -> None:
    """A fault stops who needs the profile and warns who can do without; both with its place."""
    write(own_home, '[measuring]\nset = "full"\n[dryer]\ntrays = "many"\n')
    place = f"{own_home / 'kitchen.toml'}:4: error: "

    with pytest.raises(RecordFaulty) as caught:
        load_kitchen()
    kitchen, findings = load_kitchen(strict=False)

    assert str(caught.value).startswith(place)
    assert ("full", None) == (kitchen.drawer, kitchen.trays)
    assert str(findings[0]).startswith(place)


def test_a_file_that_is_no_toml(own_home: Path) -> None:
    """Even then an unknown kitchen serves, and the file is named."""
    write(own_home, "[measuring\n")

    kitchen, findings = load_kitchen(strict=False)

    assert kitchen == UNKNOWN
    assert str(own_home) in str(findings[0])
