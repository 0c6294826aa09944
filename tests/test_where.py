"""The folders of tables and recipes are found wherever the package runs."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import platformdirs
import pytest

import tarebook
from tarebook.where import cache, folder, home

PACKAGE = Path(tarebook.__file__).parent


def asked(source: Path, name: str) -> str:
    """Return what ``folder`` answers in a process that imports the package from ``source``."""
    code = (
        "import sys\n"
        f"sys.path.insert(0, {str(source)!r})\n"
        "from tarebook.where import folder\n"
        f"try:\n    print(folder({name!r}))\n"
        "except FileNotFoundError as error:\n    print(error)\n"
    )
    done = subprocess.run(
        [sys.executable, "-I", "-c", code], capture_output=True, text=True, check=True
    )
    return done.stdout.strip()


def package_in(home: Path) -> Path:
    """Copy what ``folder`` needs of the package into a folder; return the copy."""
    copy = home / "tarebook"
    copy.mkdir(parents=True)
    for name in ("__init__.py", "where.py"):
        shutil.copy(PACKAGE / name, copy / name)
    return copy


def test_a_checkout_finds_the_folder_beside_src(tmp_path: Path) -> None:
    """In a checkout and an editable install the folder lies beside ``src``."""
    package_in(tmp_path / "src")
    (tmp_path / "reference").mkdir()

    assert str(tmp_path / "reference") == asked(tmp_path / "src", "reference")


def test_a_wheel_finds_the_folder_inside_the_package(tmp_path: Path) -> None:
    """In an installed wheel the folder lies inside the package, and that one wins."""
    inside = package_in(tmp_path / "src") / "recipes"
    inside.mkdir()
    (tmp_path / "recipes").mkdir()

    assert str(inside) == asked(tmp_path / "src", "recipes")


def test_an_installed_wheel_never_looks_outside_its_package(tmp_path: Path) -> None:
    """A folder that happens to lie above site-packages is not taken for ours."""
    package_in(tmp_path / "site-packages")
    (tmp_path / "reference").mkdir()

    assert 'the "reference" folder is missing from this installation' == asked(
        tmp_path / "site-packages", "reference"
    )


@pytest.mark.parametrize("name", ["reference", "recipes"])
def test_this_installation_has_both(name: str) -> None:
    """The package under test has its tables and its recipes."""
    assert folder(name).is_dir()


def test_err_unknown_folder() -> None:
    """A folder nobody ships is a missing file, said by name."""
    with pytest.raises(FileNotFoundError, match='the "pantry" folder is missing'):
        folder("pantry")


def test_the_cooks_own_folder_can_be_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """``TAREBOOK_HOME`` wins over the system's convention."""
    monkeypatch.setenv("TAREBOOK_HOME", str(tmp_path))

    assert tmp_path == home()


@pytest.mark.parametrize(
    "variables",
    [
        {},
        {"XDG_DATA_HOME": "/lake/data", "XDG_CACHE_HOME": "/lake/cache"},
        {"XDG_DATA_HOME": "  ", "XDG_CACHE_HOME": ""},
    ],
)
def test_without_a_name_the_systems_own_folder_is_taken(
    variables: dict[str, str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The folders that platformdirs, the usual library for it, gives for this system."""
    monkeypatch.setenv("TAREBOOK_HOME", "")
    for name in ("XDG_DATA_HOME", "XDG_CACHE_HOME"):
        monkeypatch.delenv(name, raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)

    assert platformdirs.user_data_path("tarebook", appauthor=False) == home()
    assert platformdirs.user_cache_path("tarebook", appauthor=False) == cache()


def test_the_cache_lies_in_a_named_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With ``TAREBOOK_HOME`` all of ours is in one place."""
    monkeypatch.setenv("TAREBOOK_HOME", str(tmp_path))

    assert tmp_path / "cache" == cache()
