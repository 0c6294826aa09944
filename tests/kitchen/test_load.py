"""Where the kitchen lies, and the drawer it names."""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.findings import RecordFaulty
from tarebook.kitchen import UNKNOWN, drawer_of, kitchen_file, load_kitchen


def write(home: Path, text: str) -> None:
    """Write a kitchen's file."""
    home.mkdir(parents=True)
    (home / "kitchen.toml").write_text(text, encoding="utf-8")


def test_no_file_is_no_fault(own_home: Path) -> None:
    """A cook who told nothing has an unknown kitchen and the basic drawer."""
    assert own_home / "kitchen.toml" == kitchen_file()
    assert (UNKNOWN, ()) == load_kitchen()
    assert ("basic", ()) == drawer_of(None)


def test_the_drawer_of_the_kitchen(own_home: Path) -> None:
    """The profile's set is used unless another was asked for."""
    write(own_home, '[measuring]\nset = "metric"\n')

    assert ("metric", ()) == drawer_of(None)
    assert ("full", ()) == drawer_of("full")


def test_a_broken_profile_names_its_file(own_home: Path) -> None:
    """A fault stops who needs the profile, and only warns who wants the drawer; both with place."""
    write(own_home, '[measuring]\nset = "full"\n[dryer]\ntrays = "many"\n')
    place = f"{own_home / 'kitchen.toml'}:4: error: "

    with pytest.raises(RecordFaulty) as caught:
        load_kitchen()
    drawer, findings = drawer_of(None)

    assert str(caught.value).startswith(place)
    assert "full" == drawer and str(findings[0]).startswith(place)


def test_a_file_that_is_no_toml(own_home: Path) -> None:
    """Even then the basic drawer serves, and the file is named."""
    write(own_home, "[measuring\n")

    drawer, findings = drawer_of(None)

    assert "basic" == drawer and str(own_home) in str(findings[0])
