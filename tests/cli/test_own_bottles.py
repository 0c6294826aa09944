"""A bottle of the cook's own from the shelf to the card: every command takes it as it is."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

Tarebook = Callable[..., Any]
RECIPE = """\
title = "Lakeside strips"
[meat]
food = "deer"
amount = "2 lb"
thickness = "1/4 in"
[marinade]
lakeside-soy = "3/4 cup"
water = "1/2 cup"
brown-sugar = "2 Tbsp packed"
[soak]
hours = 10
[heat]
step = "steamed or roasted first"
[drying]
temperature = "155 F"
"""
ADD = (
    *("foods", "add", "lakeside-soy", "--like", "soy-sauce", "--serving", "1 Tbsp (17 g)"),
    *("--sodium", "575 mg", "--sugars", "0 g", "--size", "15 fl oz", "--price", "3.49"),
    *("--contains", "soybeans", "--check", "sesame,milk"),
)


@pytest.fixture(autouse=True)
def house(tarebook: Tarebook, own_home: Path) -> None:
    """The bottle on the shelf, and a recipe of the house that names it."""
    assert 0 == tarebook(*ADD).status
    file = own_home / "recipes" / "lakeside.toml"
    file.parent.mkdir()
    file.write_text(RECIPE, encoding="utf-8")


def plain(text: str) -> str:
    """Return a text on one line."""
    return " ".join(text.split())


def test_its_allergens_are_on_the_card(tarebook: Tarebook) -> None:
    """What its pack lists, not the wheat of its kind; and what the pack says it may hold."""
    card = plain(tarebook("card", "lakeside").out)
    page = plain(tarebook("card", "lakeside", "--as", "html").out)

    for text in (card, page):
        assert "soybeans" in text and "sesame" in text and "milk" in text
        assert "wheat" not in text


def test_its_allergens_are_on_the_label(tarebook: Tarebook, tmp_path: Path) -> None:
    """As data, and on the printed sheet."""
    file = tmp_path / "labels.pdf"
    data = json.loads(tarebook("labels", "lakeside", "--json").out)
    assert 0 == tarebook("labels", "lakeside", "--count", "1", "-o", str(file)).status
    (page,) = PdfReader(io.BytesIO(file.read_bytes())).pages
    printed = plain(page.extract_text())

    assert "Contains: soybeans." in data["allergens"]
    assert "Contains: soybeans." in printed and "Check the bottle: lakeside soy." in printed
    assert "wheat" not in printed


def test_it_weighs_and_salts_as_its_panel_says(tarebook: Tarebook, own_home: Path) -> None:
    """Its spoon has six tenths of the sodium of the table's sauce: so has the ounce, nearly."""
    own = json.loads(tarebook("scale", "lakeside", "--json").out)
    other = own_home / "recipes" / "plain.toml"
    other.write_text(RECIPE.replace("lakeside-soy", "soy-sauce"), encoding="utf-8")
    table = json.loads(tarebook("scale", "plain", "--json").out)
    ounce = [one["estimate"]["per_ounce"]["sodium_mg"]["likely"] for one in (own, table)]

    assert 0.55 < ounce[0] / ounce[1] < 0.75


def test_it_is_swapped_in(tarebook: Tarebook) -> None:
    """A shipped recipe with the cook's own sauce beside itself: less sodium, by its panel."""
    done = tarebook("compare", "juniper-venison", "--swap", "soy-sauce=lakeside-soy", "--json")
    found = json.loads(done.out)
    plain_one, own = (
        one["estimate"]["per_ounce"]["sodium_mg"]["likely"] for one in found["variants"]
    )

    assert 0 == done.status
    assert own < plain_one


@pytest.mark.parametrize("asked", ["10%", "30%"])
def test_a_target_is_reached_with_it(asked: str, tarebook: Tarebook) -> None:
    """Each way that reaches its goal is at or under it by the high estimate; the bottle stays."""
    found = json.loads(tarebook("target", "lakeside", "--sodium", asked, "--json").out)
    ways = [one for one in found["options"] if one["reaches"]]

    assert ways and found["missing"] == []
    for way in ways:
        assert way["measured"]["high"] <= found["limit"]
        assert way["measured"]["high"] < found["now"]["high"]


def test_its_own_pack_is_bought(tarebook: Tarebook, own_home: Path) -> None:
    """Size and price as it says, at ten times the recipe: more than one bottle."""
    (own_home / "pantry.toml").write_text('currency = "$"\n')
    found = json.loads(tarebook("shop", "lakeside", "--meat", "20lb", "--json").out)
    (soy,) = (one for one in found["needs"] if one["food"] == "lakeside-soy")

    assert (4, "4 x 15 fl oz") == (soy["packs"], soy["buy"])
    assert 4 * 3.49 == pytest.approx(found["to_pay"])


def test_its_spoons_convert(tarebook: Tarebook) -> None:
    """By its own panel, under its own name."""
    out = tarebook("convert", "1 cup", "lakeside-soy").out

    assert "source own-panel (printed on the bottle)" in plain(out)


def test_without_it_the_recipe_says_how_to_keep_one(tarebook: Tarebook) -> None:
    """Once it is set aside, the recipe's line is told with the command that brings it back."""
    assert 0 == tarebook("foods", "remove", "lakeside-soy").status
    done = tarebook("scale", "lakeside")

    assert 1 == done.status
    assert "tarebook foods add lakeside-soy keeps a bottle of your own" in done.err
