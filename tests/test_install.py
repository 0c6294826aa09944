"""The tables and recipes travel along: from a checkout, an editable install, and a wheel."""

from __future__ import annotations

import importlib.util
import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

import tarebook
from tarebook.where import folder

ROOT = Path(tarebook.__file__).parents[2]
IS_CHECKOUT = (ROOT / "pyproject.toml").exists()

pytestmark = pytest.mark.skipif(not IS_CHECKOUT, reason="needs the checkout to install from")

# Runs the command with what is on the path first, wherever else the package may be installed.
RUN = """
import site, sys
before = list(sys.path)
for place in sys.argv.pop(1).split(";"):
    site.addsitedir(place)
sys.path[:] = [one for one in sys.path if one not in before] + before
import tarebook
print(tarebook.__file__, file=sys.stderr)
from tarebook.cli.main import run
run(sys.argv[1:])
"""


def run(place: Path, *args: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """Run a command with the package installed in ``place``, from a folder of its own."""
    return subprocess.run(
        [sys.executable, "-c", RUN, str(place), *args],
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=cwd,
        env={name: value for name, value in os.environ.items() if name != "PYTHONPATH"},
        timeout=60,
    )


def works(place: Path, home: Path, tmp_path: Path) -> None:
    """Assert that the package found in ``home`` scales and prints from somewhere else."""
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    done = run(place, "scale", "juniper-venison", "--meat", "6lb", cwd=elsewhere)

    assert 0 == done.returncode, done.stderr
    assert Path(done.stderr.splitlines()[0]).is_relative_to(home)
    assert "For 6 lb (2,722 g) of venison (deer): 2.4 times the recipe." in done.stdout
    assert "1 cup + 3 Tbsp" in done.stdout
    food = run(place, "foods", "show", "soy-sauce", cwd=elsewhere)
    assert "5,493 mg" in food.stdout
    assert [] == list(elsewhere.iterdir())
    card = run(place, "card", "juniper-venison", "-o", "card.pdf", cwd=elsewhere)
    assert 0 == card.returncode, card.stderr
    assert (elsewhere / "card.pdf").read_bytes().startswith(b"%PDF")


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a copy of the checkout, so that nothing is built inside it."""
    home = tmp_path_factory.mktemp("checkout")
    for name in ("src", "recipes", "reference"):
        shutil.copytree(ROOT / name, home / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md"):
        shutil.copy(ROOT / name, home / name)
    return home


def pip(*args: str) -> None:
    """Run pip; where the build tools are at hand nothing is fetched for them."""
    tools = ["hatchling", "editables"] if "-e" in args else ["hatchling"]
    if importlib.util.find_spec("pip") is None:
        pytest.skip("needs pip")
    at_hand = all(importlib.util.find_spec(one) is not None for one in tools)
    alone = ["--no-build-isolation"] if at_hand else []
    done = subprocess.run(
        [sys.executable, "-m", "pip", "-q", "--disable-pip-version-check", *args, *alone],
        capture_output=True,
        text=True,
        timeout=300,
    )
    if not at_hand and "No matching distribution found for hatchling" in done.stderr:
        pytest.skip("needs the build tools, and no registry can be reached")
    assert 0 == done.returncode, done.stderr


@pytest.fixture(scope="module")
def wheel(copy: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a wheel built from the copy."""
    out = tmp_path_factory.mktemp("wheel")
    pip("wheel", "--no-deps", "--wheel-dir", str(out), str(copy))
    (built,) = out.glob("*.whl")
    return built


def test_a_checkout_works(copy: Path, tmp_path: Path) -> None:
    """With ``src`` on the path alone, nothing installed."""
    works(copy / "src", copy, tmp_path)


@pytest.mark.slow
def test_an_editable_install_works(copy: Path, tmp_path: Path) -> None:
    """``pip install -e``: the package stays in the checkout, and finds its tables there."""
    prefix = tmp_path / "prefix"
    pip("install", "--no-deps", "--ignore-installed", "--prefix", str(prefix), "-e", str(copy))
    (place,) = {one.parent for one in prefix.rglob("*.dist-info")}

    works(place, copy, tmp_path)


@pytest.mark.slow
def test_an_installed_wheel_works(wheel: Path, tmp_path: Path) -> None:
    """``pip install`` of the wheel: the tables lie inside the package."""
    place = tmp_path / "site"
    pip("install", "--no-deps", "--no-index", "--target", str(place), str(wheel))

    works(place, place, tmp_path)
    assert (place / "bin" / "tarebook").exists() or (place / "Scripts").exists()


@pytest.mark.slow
def test_a_type_checker_sees_the_types(wheel: Path, tmp_path: Path) -> None:
    """Beside the installed wheel, mypy tells the type of what a function returns."""
    pytest.importorskip("mypy")
    place, file = tmp_path / "site", tmp_path / "own.py"
    pip("install", "--no-deps", "--no-index", "--target", str(place), str(wheel))
    file.write_text("from tarebook.quantities import factor\nreveal_type(factor('cup', 'mL'))\n")
    done = subprocess.run(
        [sys.executable, "-m", "mypy", "--cache-dir", str(tmp_path / "cache"), str(file)],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={**os.environ, "MYPYPATH": "", "PYTHONPATH": str(place)},
        timeout=300,
    )

    assert 'Revealed type is "fractions.Fraction"' in done.stdout, done.stdout + done.stderr


@pytest.mark.slow
def test_the_same_sources_make_the_same_wheel(wheel: Path, copy: Path, tmp_path: Path) -> None:
    """Built again from files copied at another time, the wheel is the same byte for byte."""
    again = shutil.copytree(copy, tmp_path / "again", copy_function=shutil.copyfile)
    pip("wheel", "--no-deps", "--wheel-dir", str(tmp_path), str(again))
    (built,) = tmp_path.glob("*.whl")

    assert wheel.name == built.name
    assert wheel.read_bytes() == built.read_bytes()


@pytest.mark.slow
def test_the_wheel_holds_every_table_and_recipe(wheel: Path) -> None:
    """Each file of ``reference`` and ``recipes`` is in the wheel, and no test or cache."""
    with zipfile.ZipFile(wheel) as opened:
        held = set(opened.namelist())

    assert "tarebook/py.typed" in held
    for name in ("reference", "recipes"):
        files = [one for one in folder(name).iterdir() if one.is_file() and one.suffix]
        assert len(files) > 5
        assert {f"tarebook/{name}/{one.name}" for one in files} <= held
    assert all(one.startswith(("tarebook/", "tarebook-")) for one in held)
    assert not any("__pycache__" in one or "test_" in one for one in held)
