"""tarebook shop, as it is typed."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
LIST = """
currency = "$"
[have]
brown-sugar = "1 lb"
[packs]
soy-sauce = { size = "15 fl oz", price = 3.49 }
deer = { size = "1 lb", price = 8 }
"""


@pytest.fixture
def home(own_home: Path) -> Path:
    """A house with a list."""
    own_home.mkdir()
    (own_home / "pantry.toml").write_text(LIST, encoding="utf-8")
    return own_home


def test_the_list_of_the_house_is_used(home: Path, tarebook: Tarebook) -> None:
    """What to buy, what is in the house, and what an ounce costs at least."""
    status, out, err = tarebook("shop", "juniper-venison", "--meat", "6lb", "--trim", "12%")

    assert (0, "") == (status, err)
    assert "6 lb 13.1 oz as bought" in " ".join(out.split())
    assert "7 x 1 lb" in out and "1 x 15 fl oz" in out
    assert out.index("In the house") < out.index("brown sugar")
    assert "To pay today: at least $59.49." in out
    assert max(len(line) for line in out.splitlines()) <= 80


def test_without_a_list_all_is_bought_and_nothing_costed(tarebook: Tarebook) -> None:
    """And the page says where prices are written."""
    status, out, _ = tarebook("shop", "juniper-venison")

    assert 0 == status
    assert "In the house" not in out
    assert "No price is known." in out and "pantry.toml" in out.replace("\n", "")


def test_the_data_say_the_same(home: Path, tarebook: Tarebook) -> None:
    """Grams, packs and money as numbers, null where not known."""
    found = json.loads(tarebook("shop", "juniper-venison", "--json").out)
    soy = next(one for one in found["needs"] if one["food"] == "soy-sauce")

    assert (1, "1 x 15 fl oz") == (soy["packs"], soy["buy"])
    assert found["per_finished_ounce"]["low"] < found["per_finished_ounce"]["high"]


def test_err_a_faulty_list_buys_nothing(home: Path, tarebook: Tarebook) -> None:
    """Each fault with its line, exit status 1, nothing on standard output."""
    (home / "pantry.toml").write_text('[have]\ngarlik = "1 head"\n', encoding="utf-8")
    status, out, err = tarebook("shop", "juniper-venison")

    assert (1, "") == (status, out)
    assert "pantry.toml:2: error:" in err and 'did you mean "garlic"' in err


def test_err_a_list_that_is_named_must_be_there(tarebook: Tarebook, tmp_path: Path) -> None:
    """A missing file is not an empty house."""
    done = tarebook("shop", "juniper-venison", "--pantry", str(tmp_path / "none.toml"))

    assert (1, "") == (done.status, done.out)
    assert "there is no list" in done.err


@pytest.mark.parametrize("trim", ["100%", "-5%", "120"])
def test_err_trim(trim: str, tarebook: Tarebook) -> None:
    """All of the meat cannot be cut away."""
    done = tarebook("shop", "juniper-venison", f"--trim={trim}")

    assert 2 == done.status
    assert "--trim" in done.err


def test_how_late_raw_meat_is_bought(tarebook: Tarebook) -> None:
    """Poultry two days, red meat three before it is heated; mushrooms are told of none."""

    def told(name: str) -> str:
        return " ".join(tarebook("shop", name).out.split())

    assert "lies 2 days at most in the refrigerator before it is heated" in told("orchard-turkey")
    assert "lies 3 days at most in the refrigerator" in told("juniper-venison")
    assert "days at most" not in told("woodland-mushrooms")


def test_several_recipes_are_bought_for_in_one_go(home: Path, tarebook: Tarebook) -> None:
    """What two recipes share is bought once; an ounce has its cost in each."""
    together = ["shop", "juniper-venison", "cabin-rub-elk"]
    status, out, err = tarebook(*together, "--meat", "6lb", "--meat", "2lb")
    found = json.loads(tarebook(*together, "--meat", "6lb", "--meat", "2lb", "--json").out)
    alone = [
        json.loads(tarebook("shop", name, "--meat", weight, "--json").out)
        for name, weight in (("juniper-venison", "6lb"), ("cabin-rub-elk", "2lb"))
    ]
    foods = [one["food"] for one in found["needs"]]

    assert (0, "") == (status, err)
    assert ["deer", "elk"] == foods[:2] and len(set(foods)) == len(foods)
    assert "Juniper venison strips: a finished ounce" in " ".join(out.split())
    assert found["per_finished_ounce"] is None
    assert [one["per_finished_ounce"] for one in alone] == [
        one["per_finished_ounce"] for one in found["recipes"]
    ]
    assert pytest.approx(sum(one["used"] for one in alone)) == found["used"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--meat", "6lb"], "2 recipes take as many weights"),
        (["--finished", "1 lb"], "the weight of one batch"),
    ],
)
def test_of_several_recipes_each_has_its_own_weight(
    words: list[str], says: str, tarebook: Tarebook
) -> None:
    """One weight for two recipes is asked back, and so is what two batches weighed."""
    status, out, err = tarebook("shop", "juniper-venison", "cabin-rub-elk", *words)

    assert (2, "") == (status, out)
    assert says in err


def test_a_list_in_another_form_is_told_how_it_is_written(
    own_home: Path, tarebook: Tarebook
) -> None:
    """A key nobody knows, and a table that is none, say what may stand there."""
    own_home.mkdir()
    (own_home / "pantry.toml").write_text('have = ["honey"]\n[shelves]\n', encoding="utf-8")
    status, _, err = tarebook("shop", "juniper-venison")

    assert 1 == status
    assert 'write [have], and under it soy-sauce = "1 cup"' in err
    assert "it may hold [have] and [packs]" in err


@pytest.mark.parametrize(
    ("recipe", "says", "silent"),
    [
        ("juniper-venison", "Raw, venison (deer) lies 3 days at most", "frozen first"),
        (
            "maple-dill-salmon",
            "Chum salmon is frozen first, 7 days at -4 °F (-20 °C) or",
            "that late",
        ),
        (
            "trail-sticks-venison",
            "It is at least 93 % lean [University of Wisconsin",
            "frozen first",
        ),
        ("woodland-mushrooms", "portabella", "Raw, "),
    ],
)
def test_how_raw_meat_is_bought(recipe: str, says: str, silent: str, tarebook: Tarebook) -> None:
    """How late, or so long before that it is frozen first, and how lean ground meat is."""
    page = " ".join(tarebook("shop", recipe).out.split())
    told = " ".join(json.loads(tarebook("shop", recipe, "--json").out)["raw_meat"])

    assert says in page and silent not in page
    assert told in page


def test_pork_is_bought_a_month_before(tarebook: Tarebook, tmp_path: Path) -> None:
    """Pork is frozen for 30 days first; wild pork, which freezing does not help, is not told to."""
    lake = """
title = "Lake pork"
meat = {{ food = "{food}", amount = "1 kg", thickness = "1/4 in" }}
marinade = {{ soy-sauce = "1/2 cup" }}
"""
    for food, frozen in (("pork-loin", True), ("wild-boar", False)):
        recipe = tmp_path / f"{food}.toml"
        recipe.write_text(lake.format(food=food), encoding="utf-8")
        page = " ".join(tarebook("shop", str(recipe)).out.split())

        assert frozen is ("is frozen first, 30 days at 0 °F (-18 °C) or below" in page)
