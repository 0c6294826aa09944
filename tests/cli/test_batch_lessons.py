"""What batches teach, as it is typed: lessons, compare, labels, and the next forecast."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.cards.figures import digits

Tarebook = Callable[..., Any]


@pytest.fixture
def book(tarebook: Tarebook) -> Tarebook:
    """A book of three finished batches of venison."""
    for finished in ("1150g", "1190g", "1120g"):
        for words in (
            ["start", "juniper-venison", "--meat", "6lb"],
            ["weigh", "soaked", "2800g"],
            ["weigh", "finished", finished],
            ["finish"],
        ):
            assert 0 == tarebook("batch", *words).status
    return tarebook


def test_lessons_tell_counts_and_spread(book: Tarebook) -> None:
    """The kitchen's own shrink, by three batches."""
    status, out, err = book("batch", "lessons")

    assert (0, "") == (status, err)
    assert "From your 3 batches: 42 % of the raw meat, " in out


def test_lessons_as_cells_and_as_a_picture(book: Tarebook, tmp_path: Path) -> None:
    """CSV down a pipe; a drawing by the ending of the file."""
    rows = list(csv.reader(io.StringIO(book("batch", "lessons", "--as", "csv").out)))
    file = tmp_path / "years.svg"

    assert "recipe" == rows[0][0]
    assert 0 == book("batch", "lessons", "-o", str(file)).status
    assert b"<title>From batch to batch</title>" in file.read_bytes()


def test_the_next_forecast_says_whence_it_comes(book: Tarebook) -> None:
    """From your 3 batches; and it is narrower than without them."""
    page = " ".join(book("scale", "juniper-venison", "--meat", "6lb").out.split())
    own = json.loads(book("scale", "juniper-venison", "--meat", "6lb", "--json").out)

    assert "From your 3 batches: 42 % of the raw meat, 39-46." in page
    assert own["estimate"]["yield_fraction"]["likely"] == pytest.approx(0.424, abs=0.006)


def test_a_recipe_without_batches_is_told_by_the_model_alone(book: Tarebook) -> None:
    """Another recipe's batches are not taken for its own."""
    assert "From your" not in book("scale", "cabin-rub-elk").out


def test_figures_narrow_as_weights_come_in(tarebook: Tarebook) -> None:
    """Before the scale, after the soak, and finished."""

    def spread() -> float:
        found = json.loads(tarebook("batch", "show", "--json").out)["per_ounce"]["sodium_mg"]
        return float(found["high"] / found["low"])

    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    before = spread()
    tarebook("batch", "weigh", "soaked", "2800g")
    tarebook("batch", "weigh", "finished", "1150g")

    assert spread() < before


def test_a_figure_with_a_gap_is_at_least(
    tarebook: Tarebook, tmp_path: Path, recipe_text: Callable[..., str]
) -> None:
    """The likely value stands beside its ends; what lacks a share is marked, and the gap named."""
    path = tmp_path / "lake.toml"
    marinade = {"soy-sauce": "1/2 cup", "honey": "2 Tbsp", "gochujang": "1 tsp"}
    path.write_text(recipe_text(marinade=marinade), encoding="utf-8")
    tarebook("batch", "start", str(path), "--meat", "6lb")
    tarebook("batch", "weigh", "finished", "1150g")
    out = tarebook("batch", "show").out
    found = json.loads(tarebook("batch", "show", "--json").out)["per_ounce"]
    sodium, sugars = found["sodium_mg"], found["sugars_g"]

    assert ["gochujang"] == sugars["missing"] and [] == sodium["missing"]
    ends = f"({digits(sugars['low'], 'g')}-{digits(sugars['high'], 'g')} g)"
    assert f"total sugars    at least {digits(sugars['likely'], 'g')} g {ends}" in out
    assert f"sodium          {sodium['likely']:.0f} mg ({sodium['low']:.0f}-" in out
    assert "Total sugars of gochujang not known." in out


def test_weights_that_cannot_be_are_told_and_the_book_is_shown(tarebook: Tarebook) -> None:
    """No figures, and why; the entries all the same."""
    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    tarebook("batch", "weigh", "finished", "100g")
    done = tarebook("batch", "show")

    assert 0 == done.status
    assert "no figures: a finished batch of 100 g is below its own dry solids" in done.err
    assert "finished" in done.out and "In one finished ounce" not in done.out


def test_a_batch_too_moist_is_told_with_its_figures(tarebook: Tarebook) -> None:
    """Heavier than it was raw, it is no dried meat, whatever an ounce of it holds."""
    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    tarebook("batch", "weigh", "finished", "7 lb")
    moist = " ".join(tarebook("batch", "show").out.split())
    tarebook("batch", "weigh", "finished", "1150g")

    assert "117 % of the raw meat is left. Finished batch is too moist. By its weight" in moist
    assert "too moist" not in tarebook("batch", "show").out


def test_two_batches_side_by_side(book: Tarebook) -> None:
    """Each by its own weights."""
    out = book("batch", "compare", "1", "3").out

    assert "A  batch 1, Juniper venison strips" in out.replace("A batch", "A  batch")
    assert "B against A" in out


def test_labels_of_a_batch_carry_its_day_and_yield(book: Tarebook, tmp_path: Path) -> None:
    """Measured figures, the number of the batch, and the day it was finished."""
    told = json.loads(book("batch", "labels", "1", "--json").out)
    file = tmp_path / "labels.pdf"

    assert "batch 1" == told["batch"]
    assert told["packed"].startswith("Packed ")
    assert 0 == book("batch", "labels", "1", "--count", "12", "-o", str(file)).status
    piped = book("batch", "labels", "1")
    assert (2, "") == (piped.status, piped.out)
    assert "-o - for the pipe" in " ".join(piped.err.split())
    assert file.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["compare", "1", "9"], "there is no batch 9"),
        (["labels", "9"], "there is no batch 9"),
        (["lessons", "--as", "gif"], "say text, csv, pdf, svg, png"),
    ],
)
def test_err_asked_wrongly(args: list[str], says: str, book: Tarebook) -> None:
    """Which batch, and what there is; exit status 2."""
    done = book("batch", *args)

    assert (2, "") == (done.status, done.out)
    assert says in done.err


def test_err_nothing_to_draw_yet(tarebook: Tarebook, tmp_path: Path) -> None:
    """Without a finished batch no file is made."""
    done = tarebook("batch", "lessons", "-o", str(tmp_path / "x.pdf"))

    assert 2 == done.status and not (tmp_path / "x.pdf").exists()


def test_a_batch_is_reckoned_for_the_scoops_of_this_kitchen(book: Tarebook, own_home: Path) -> None:
    """Another measuring set makes other scoops of the same recipe, and so another sodium."""
    basic = json.loads(book("batch", "show", "1", "--json").out)["per_ounce"]
    (own_home / "kitchen.toml").write_text('[measuring]\nset = "metric"\n', "utf-8")

    assert basic != json.loads(book("batch", "show", "1", "--json").out)["per_ounce"]
