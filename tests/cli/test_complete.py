"""Shell completion of recipe and food names."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tarebook.cli import complete
from tarebook.recipe.load import shipped_recipes


def test_recipes(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Shipped recipes and the files at hand, by how they begin."""
    (tmp_path / "juicy.toml").touch()
    (tmp_path / "juicy.txt").touch()
    monkeypatch.chdir(tmp_path)

    assert ["juniper-venison", "juicy.toml"] == complete.recipes("ju")
    assert [*shipped_recipes(), "juicy.toml"] == complete.recipes("")
    assert [] == complete.recipes("zzz")


def test_recipes_in_a_folder(tmp_path: Path) -> None:
    """A folder typed is looked into."""
    (tmp_path / "juicy.toml").touch()

    assert [str(tmp_path / "juicy.toml")] == complete.recipes(f"{tmp_path}/")
    assert [str(tmp_path / "juicy.toml")] == complete.recipes(f"{tmp_path}/ju")
    assert [] == complete.recipes(f"{tmp_path}/no")


def test_foods() -> None:
    """Foods by how their key begins, whatever the case."""
    assert {"soy-sauce", "soy-sauce-tamari"} <= set(complete.foods("Soy-s"))
    assert all(key.startswith("soy-s") for key in complete.foods("soy-s"))


def test_drawers() -> None:
    """The measuring sets."""
    assert (["basic", "full", "metric"], ["metric"]) == (
        complete.drawers(""),
        complete.drawers("m"),
    )


@pytest.mark.parametrize(
    ("typed", "offered"),
    [
        ("tarebook scale juni", "juniper-venison"),
        ("tarebook card cab", "cabin-rub-elk"),
        ("tarebook compare orch", "orchard-turkey"),
        ("tarebook check orch", "orchard-turkey"),
        ("tarebook foods show soy-sauce-t", "soy-sauce-tamari"),
        ("tarebook convert 1cup hone", "honey"),
        ("tarebook scale x --drawer m", "metric"),
    ],
)
def test_the_shell_is_offered_names(typed: str, offered: str) -> None:
    """What the shell asks for while a cook types comes back as names."""
    done = subprocess.run(
        [sys.executable, "-m", "tarebook"],
        env={
            **os.environ,
            "_TAREBOOK_COMPLETE": "complete_bash",
            "COMP_WORDS": typed,
            "COMP_CWORD": str(len(typed.split()) - 1),
        },
        capture_output=True,
        text=True,
        timeout=30,
    )

    assert offered in done.stdout.split()
