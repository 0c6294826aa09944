"""tarebook bring: exit statuses, what is told, and what is written."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.recipe.load import shipped_recipes

Tarebook = Callable[..., Any]

PAGE = {
    "@graph": [
        {
            "@type": "Recipe",
            "name": "Cabin strips",
            "recipeIngredient": ["3 lb elk", "1/2 cup soy sauce", "a splash of gin", "1 cup moss"],
            "recipeInstructions": "Soak.\nDry.",
        }
    ]
}


@pytest.fixture
def page(tmp_path: Path) -> Path:
    """Return a saved file of linked data."""
    file = tmp_path / "page.json"
    file.write_text(json.dumps(PAGE), encoding="utf-8")
    return file


def test_a_page_becomes_a_recipe_file(tarebook: Tarebook, page: Path, tmp_path: Path) -> None:
    """The file is written, and what it lacks is told with what check will say."""
    out = tmp_path / "ours.toml"

    done = tarebook("bring", str(page), "-o", str(out))

    assert 0 == done.status
    assert "3 lines read, 1 kept as they stood" in done.err
    assert "not read: a splash of gin" in done.err
    assert 'no food is called "moss"' in done.err
    assert "tarebook check will say" in done.err
    assert "Cabin strips" == tomllib.loads(out.read_text("utf-8"))["title"]
    assert "#:schema" not in out.read_text("utf-8")


def test_json_tells_the_same(tarebook: Tarebook, page: Path, tmp_path: Path) -> None:
    """--json tells what was read and what was not, for scripts."""
    done = tarebook("bring", str(page), "-o", str(tmp_path / "ours.toml"), "--json")

    told = json.loads(done.out)
    assert (3, ["a splash of gin"]) == (told["read"], told["not_read"])
    assert ["moss"] == [one["name"] for one in told["unknown_foods"]]
    assert [] == told["to_fill_in"]


def test_without_a_file_the_recipe_goes_down_the_pipe(tarebook: Tarebook, page: Path) -> None:
    """Without -o the recipe is standard output, and the telling standard error."""
    done = tarebook("bring", str(page))

    assert "elk" == tomllib.loads(done.out)["meat"]["food"]


@pytest.mark.parametrize("text", ["", "[" * 5_000, '{"@type": "Article"}', "<html>", "\x00"])
def test_what_cannot_be_read_ends_with_one_sentence(
    tarebook: Tarebook, tmp_path: Path, text: str
) -> None:
    """A hostile or empty file ends with status 1 and one line, and writes nothing."""
    file = tmp_path / "page.json"
    file.write_text(text, encoding="utf-8")

    done = tarebook("bring", str(file), "-o", str(tmp_path / "ours.toml"))

    assert 1 == done.status
    assert 1 == len(done.err.splitlines())
    assert not (tmp_path / "ours.toml").exists()


def test_a_card_goes_out_as_linked_data_and_comes_back(tarebook: Tarebook, tmp_path: Path) -> None:
    """card --as json-ld is what bring reads."""
    card = tmp_path / "card.jsonld"
    tarebook("card", "cranberry-moose", "-o", str(card))

    done = tarebook("bring", str(card))

    back = tomllib.loads(done.out)
    assert ("Cranberry moose, lightly cured", "moose") == (back["title"], back["meat"]["food"])
    assert "6.25 %" == back["marinade"]["curing-salt-1"]["strength"]


@pytest.mark.parametrize("name", shipped_recipes())
def test_what_comes_back_of_a_card_has_no_errors(
    name: str, tarebook: Tarebook, tmp_path: Path
) -> None:
    """Cautions that went out with a card are no faults of the recipe that comes back."""
    card, back = tmp_path / "card.jsonld", tmp_path / "back.toml"
    tarebook("card", name, "-o", str(card))
    tarebook("bring", str(card), "-o", str(back))

    done = tarebook("check", str(back))

    assert 0 == done.status
    assert done.out.endswith("1 recipe checked, no errors\n")
