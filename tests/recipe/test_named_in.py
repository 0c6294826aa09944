"""Which of the cook's own recipes name a food, without reading them whole."""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.recipe.named_in import recipes_naming
from tarebook.toml.text import MOST_BYTES


def put(home: Path, name: str, text: str) -> None:
    """Write a recipe of the cook's own."""
    file = home / "recipes" / f"{name}.toml"
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, encoding="utf-8")


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ('[marinade]\nlakeside-soy = "1 cup"', True),
        ('[marinade]\n"Lakeside Soy" = { amount = "1 cup" }', True),
        ('[rub]\ndark = { food = "LAKESIDE_SOY", amount = "1 cup" }', True),
        ('[mixed-in]\r\nlakeside-soy = "1 cup"\r\n', True),
        ('[marinade]\nlakeside-soy = { food = "soy-sauce", amount = "1 cup" }', False),
        ('title = "lakeside soy"\n[marinade]\nsoy-sauce = "1 cup"', False),
        ('[marinade]\n# lakeside-soy = "1 cup"', False),
        ('[marinade]\nlakeside-soy-2 = "1 cup"', False),
        ("marinade = 3\nrub = ['lakeside-soy']", False),
        ('[marinade]\nlakeside-soy = "1 cup', True),
        ('[marinade]\nsoy = "1 cup', False),
        ("", False),
    ],
)
def test_who_names_it(text: str, names: bool, own_home: Path) -> None:
    """By its own name or as the food of a line; a broken file if the name stands in it at all."""
    put(own_home, "ours", text)

    assert (("ours",) if names else (), ()) == recipes_naming("lakeside-soy")


def test_all_that_name_it_are_told_in_order(own_home: Path) -> None:
    """Those and no others; without a folder none."""
    assert ((), ()) == recipes_naming("lakeside-soy")
    for name, food in (("b", "lakeside-soy"), ("a", "lakeside-soy"), ("c", "soy-sauce")):
        put(own_home, name, f'[marinade]\n{food} = "1 cup"')

    assert (("a", "b"), ()) == recipes_naming("Lakeside soy")


@pytest.mark.parametrize("data", [b"\xff\xfe\x00", b"# " + b"x" * MOST_BYTES])
def test_what_cannot_be_read_is_told_apart(data: bytes, own_home: Path) -> None:
    """No text, too long, or a folder: nobody knows whether it names the food."""
    put(own_home, "a", '[marinade]\nlakeside-soy = "1 cup"')
    put(own_home, "b", "")
    (own_home / "recipes" / "b.toml").write_bytes(data)
    (own_home / "recipes" / "c.toml").mkdir()

    assert (("a",), ("b", "c")) == recipes_naming("lakeside-soy")
