"""tarebook foods own, remove, and bottles in find and show."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
PANEL = '[panel]\nserving = "1 Tbsp (17 g)"\nsodium = "575 mg"\nsugars = "0 g"\n'
SOURCE = '[source]\ndate = "2026-11-25"\n'


@pytest.fixture
def put(own_home: Path) -> Callable[..., Path]:
    """Write a bottle of the cook's own."""

    def write(name: str, text: str) -> Path:
        file = own_home / "foods" / f"{name}.toml"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
        return file

    return write


Put = Callable[..., Path]


def test_without_bottles_it_says_how_to_keep_one(tarebook: Tarebook, own_home: Path) -> None:
    """No fault, and nothing is made."""
    status, out, err = tarebook("foods", "own")

    assert (0, "") == (status, err)
    assert "tarebook foods add NAME keeps one" in out
    assert "[]" == tarebook("foods", "own", "--json").out.strip()
    assert not own_home.exists()


def test_bottles_are_listed(tarebook: Tarebook, put: Put) -> None:
    """By the spoon where a spoon is printed, else by 100 g; what is not printed is no zero."""
    put("lakeside-soy", f'like = "soy-sauce"\n{PANEL}{SOURCE}')
    put("by-weight", 'like = "soy-sauce"\n[panel]\nserving = "10 g"\nsodium = "300 mg"\n')
    put("half", 'like = "honey"\n[panel]\nserving = "1/2 Tbsp"\nsugars = "8 g"\n')
    status, out, err = tarebook("foods", "own")

    assert (0, "") == (status, err)
    rows = [" ".join(line.split()) for line in out.splitlines()]
    assert [
        "bottle like of sodium sugars date",
        "by-weight soy-sauce 100 g 3,000 mg not printed",
        "half honey 1 Tbsp not printed 16 g",
        "lakeside-soy soy-sauce 1 Tbsp 575 mg 0 g 2026-11-25",
    ] == rows
    data = json.loads(tarebook("foods", "own", "--json").out)
    assert [(3000.0, None), (None, 16.0), (575.0, 0.0)] == [
        (one["sodium_mg"], one["sugars_g"]) for one in data
    ]


@pytest.mark.parametrize("more", [(), ("--json",)])
def test_a_broken_file_hides_no_other(more: tuple[str, ...], tarebook: Tarebook, put: Put) -> None:
    """Its faults are said with file and line, and the status is 1; the others are listed."""
    put("lakeside-soy", f'like = "soy-sauce"\n{PANEL}')
    bad = put("bad", "like = 3\n")
    status, out, err = tarebook("foods", "own", *more)

    assert 1 == status
    assert "lakeside-soy" in out
    assert f"{bad}:1: error: like takes one line of words" in err


def test_remove_moves_and_warns(tarebook: Tarebook, put: Put, own_home: Path) -> None:
    """Where the file lies now, and which of the cook's own recipes name it."""
    file = put("lakeside-soy", f'like = "soy-sauce"\n{PANEL}')
    text = file.read_text()
    for name in ("strips", "sticks"):
        recipe = own_home / "recipes" / f"{name}.toml"
        recipe.parent.mkdir(exist_ok=True)
        recipe.write_text('[marinade]\nlakeside-soy = "1 cup"\n')
    status, out, err = tarebook("foods", "remove", "Lakeside soy")
    place = own_home / "foods" / "removed" / "lakeside-soy.toml"

    assert 0 == status
    assert "lakeside-soy is set aside" in out and str(place) in out.replace("\n  ", "")
    assert "warning: sticks, strips of your recipes name it; they cannot be read until" in err
    assert (text, False) == (place.read_text(), file.exists())
    assert 1 == tarebook("foods", "remove", "lakeside-soy").status


def test_remove_as_data(tarebook: Tarebook, put: Put, own_home: Path) -> None:
    """Name, where it lies now, and the recipes; one named as the tables do falls back to them."""
    put("soy-sauce", 'like = "soy-sauce-tamari"\n')
    (own_home / "recipes").mkdir()
    (own_home / "recipes" / "strips.toml").write_text('[marinade]\nsoy-sauce = "1 cup"\n')
    done = tarebook("foods", "remove", "soy-sauce", "--json")

    place = str(own_home / "foods" / "removed" / "soy-sauce.toml")
    data = json.loads(done.out)
    assert ("soy-sauce", place) == (data["food"], data["file"])
    assert (["strips"], []) == (data["recipes"], data["recipes_unread"])
    assert "names it; there it now means soy-sauce of the tables" in done.err


def test_remove_tells_of_recipes_that_cannot_be_read(
    tarebook: Tarebook, put: Put, own_home: Path
) -> None:
    """One that may name the bottle, and that nobody can read, is told of by name."""
    put("cove-soy", 'like = "soy-sauce-tamari"\n')
    (own_home / "recipes" / "strips.toml").mkdir(parents=True)
    done = tarebook("foods", "remove", "cove-soy")

    assert 0 == done.status
    assert "warning: strips of your recipes cannot be read, and may name it\n" == done.err


def test_find_and_show_know_bottles(tarebook: Tarebook, put: Put) -> None:
    """First among what is found; shown with what each figure stands for, and its source."""
    source = SOURCE + 'from = "fooddata-central"\nid = "174277"\n'
    put("lakeside-soy", f'name = "Dark of the lake"\nlike = "soy-sauce"\n{PANEL}{source}')
    found = tarebook("foods", "find", "soy").out.splitlines()
    shown = " ".join(tarebook("foods", "show", "Lakeside soy").out.split())

    assert "lakeside-soy" == found[0].split()[0] and "your own, like soy-sauce" in found[0]
    assert "printed 575 mg: 570 to 580" in shown
    assert "taken from soy-sauce (sr26)" in shown
    assert "fooddata-central 174277, 2026-11-25" in shown
    data, *_ = json.loads(tarebook("foods", "find", "dark of lake", "--json").out)
    assert ["lakeside-soy", "Dark of the lake", "sauce", "soy-sauce"] == list(data.values())


def test_find_tells_of_what_it_passed_over(tarebook: Tarebook, put: Put) -> None:
    """A bottle that cannot be read may be the one that was looked for."""
    put("cove-soy", "like = ")
    status, out, err = tarebook("foods", "find", "soy")

    assert 0 == status and "soy-sauce" in out
    assert "note: one of your own bottles cannot be read; tarebook foods own says why\n" == err


def test_a_faulty_bottle_is_told_when_shown(tarebook: Tarebook, put: Put) -> None:
    """Its own faults, and not that there is no such food."""
    bad = put("bad-soy", 'like = "xyzzy"\n')
    status, out, err = tarebook("foods", "show", "bad-soy")

    assert (1, "") == (status, out)
    assert f'{bad}:1: error: no food is called "xyzzy"' in err


@pytest.mark.slow
def test_a_thousand_are_listed_within_a_second(
    process: Callable[..., Any], put: Put, own_home: Path
) -> None:
    """As a whole process, each file read and checked."""
    for number in range(1000):
        put(f"bottle-{number}", f'like = "soy-sauce"\n{PANEL}{SOURCE}')
    took = []
    while len(took) < 6 and min(took, default=9.0) >= 1.0:  # a busy machine may need another try
        started = time.perf_counter()
        done = process("foods", "own")
        took.append(time.perf_counter() - started)
        assert 1001 == len(done.stdout.splitlines())

    assert min(took) < 1.0
