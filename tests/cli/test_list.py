"""tarebook list, as it is typed."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.recipe.load import shipped_recipes

Tarebook = Callable[..., Any]
Capture = pytest.CaptureFixture[str]


def test_every_shipped_recipe_is_listed(tarebook: Tarebook) -> None:
    """One line each, nothing on standard error."""
    status, out, err = tarebook("list")

    assert (0, "") == (status, err)
    assert list(shipped_recipes()) == [line.split()[0] for line in out.splitlines()[1:9]]


def test_under_and_sort(tarebook: Tarebook) -> None:
    """Only those whose high estimate is under, by likely sodium."""
    found = json.loads(tarebook("list", "--under", "400mg", "--sort", "sodium", "--json").out)
    likely = [one["sodium_mg_per_oz"]["likely"] for one in found]

    assert 2 < len(found) < 8
    assert all(one["sodium_mg_per_oz"]["high"] <= 400 for one in found)
    assert sorted(likely) == likely


def test_both_limits_may_be_given(
    tarebook: Tarebook, own_home: Path, recipe_text: Callable[..., str]
) -> None:
    """Recipes whose sugars are only "at least" are left out and counted."""
    (own_home / "recipes").mkdir(parents=True)
    smoked = recipe_text(marinade={"water": "1 cup", "liquid-smoke": "1 tsp"})
    (own_home / "recipes" / "smoked.toml").write_text(smoked, encoding="utf-8")
    status, out, _ = tarebook("list", "--under", "1g", "--under-sugars", "1.5g")

    assert 0 == status
    assert "cabin-rub-elk" in out and "juniper-venison" not in out and "smoked" not in out
    assert "more left out" in out


def test_csv_opens_in_a_spreadsheet(tarebook: Tarebook) -> None:
    """A heading and a row a recipe."""
    rows = list(csv.reader(io.StringIO(tarebook("list", "--as", "csv").out)))

    assert "name" == rows[0][0]
    assert list(shipped_recipes()) == [row[0] for row in rows[1:]]


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["--sort", "sodum"], "did you mean sodium?"),
        (["--sort", "x"], "one of name, title"),
        (["--under", "300"], "--under"),
        (["--as", "xls"], "say text or csv"),
    ],
)
def test_err_asked_wrongly(args: list[str], says: str, tarebook: Tarebook) -> None:
    """Which option, and what to write."""
    done = tarebook("list", *args)

    assert (2, "") == (done.status, done.out)
    assert says in done.err


def test_err_no_such_folder(tarebook: Tarebook, tmp_path: Path) -> None:
    """What was named and is not there is a fault, not an empty list."""
    done = tarebook("list", str(tmp_path / "none"))

    assert (1, "") == (done.status, done.out)
    assert "there is no recipe" in done.err


def test_the_list_says_what_scale_says(tarebook: Tarebook) -> None:
    """With the kitchen's own measuring set, and after a batch of the cook's own too."""
    assert 0 == tarebook("kitchen", "set", "measuring.set", "metric").status
    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    assert 0 == tarebook("batch", "weigh", "finished", "2 lb").status

    listed = {one["name"]: one for one in json.loads(tarebook("list", "--json").out)}
    for name in ("juniper-venison", "cabin-rub-elk"):
        scaled = json.loads(tarebook("scale", name, "--json").out)["estimate"]["per_ounce"]
        for figure in ("sodium_mg", "sugars_g"):
            told = listed[name][f"{figure}_per_oz"]
            assert told == {end: scaled[figure][end] for end in ("low", "likely", "high")}


@pytest.mark.parametrize(("is_terminal", "count"), [(True, 2), (False, 0)])
def test_a_long_wait_is_told_on_a_terminal(
    is_terminal: bool, count: int, monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    """After two seconds, then every five, in whole lines; not down a pipe, nor at the end."""
    from tarebook.cli.list import _teller

    now = iter([0.0, 1.0, 2.5, 4.0, 7.6, 99.0])
    monkeypatch.setattr("time.monotonic", lambda: next(now))
    monkeypatch.setattr("sys.stderr.isatty", lambda: is_terminal)
    tell = _teller()
    for done in (400, 800, 1200, 1600, 2000):
        tell(done, 2000)

    lines = capsys.readouterr().err.splitlines()
    assert [
        f"{done} of 2,000 recipes are worked out; they are kept for the next time"
        for done in ("800", "1,600")
    ][:count] == lines


def test_a_book_that_cannot_be_read_stops_nothing(tarebook: Tarebook, own_home: Path) -> None:
    """It is told of, and the recipes are listed without it."""
    own_home.mkdir(exist_ok=True)
    (own_home / "book.sqlite3").write_bytes(b"no book at all " * 100)
    status, out, err = tarebook("list")

    assert 0 == status and err.startswith("note: ")
    assert all(name in out for name in shipped_recipes())
