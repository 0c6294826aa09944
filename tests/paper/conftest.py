"""Worksheets of shipped recipes, and one of a recipe written to do harm."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import cache

import pytest

from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.read import read_recipe

LONG_WORD = "Loch" + "o" * 140

_HOSTILE = f"""
title = "</title><script>parent.ran = 1</script> <img src=x onerror='parent.ran = 1'> \\uFFFE"
about = "<!-- <script> & &amp; ]]> https://example.org www.example.org me@example.org [a](b) **b**"
[meat]
food = "deer"
amount = "2 lb"
thickness = "1/4 in"
[marinade]
soy-sauce = "1 1/2 cup"
"{LONG_WORD}" = {{ food = "honey", amount = "1/3 cup", note = "{LONG_WORD} </td></table> a|\\\\" }}
"<b>bold</b>|pipe|`tick`" = {{ food = "salt", amount = "1 Tbsp", note = "[x]: https://a.b" }}
"![img](https://a.b|c)" = {{ food = "maple-syrup", amount = "2/3 cup" }}
'"><svg onload="parent.ran = 1">' = {{ food = "garlic", amount = "3 cloves" }}
{{many}}
[drying]
temperature = "150 F"
[method]
steps = [
  "{LONG_WORD}", "# no heading", "1. one", "- [ ] no task", "```no code", "    four spaces",
  "<a href='javascript:parent.ran = 1'>x</a>", "שלום 12 cups", "> no quote", "=====", "a\\\\",
  "*stars* _lines_ ~~gone~~ $x^2$ ==mark== [^1] &copy; \\\\* <https://a.b> http://c.d",
]
notes = ["-->", "---", "| a | b |", "</script><script>parent.ran = 1</script>"]
"""


@cache
def shipped_sheet(name: str = "juniper-venison", factor: str = "1") -> Worksheet:
    """Return a shipped recipe at so many times its size."""
    recipe, _ = load_recipe(name)
    return worksheet(recipe, factor=Fraction(factor))


@cache
def hostile_sheet() -> Worksheet:
    """Return a recipe of forty ingredients whose every text tries to become something else."""
    many = "\n".join(f'"jar {n}" = {{ food = "honey", amount = "{n} tsp" }}' for n in range(1, 36))
    recipe, findings = read_recipe(_HOSTILE.replace("{many}", many), file="hostile.toml")
    assert recipe is not None, [str(one) for one in findings]
    return worksheet(recipe)


@pytest.fixture
def shipped() -> Callable[..., Worksheet]:
    """The worksheets of the shipped recipes."""
    return shipped_sheet


@pytest.fixture
def hostile() -> Worksheet:
    """The worksheet of the recipe written to do harm."""
    return hostile_sheet()


@pytest.fixture(scope="session")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Worksheet]:
    """Worksheets by name: every shipped recipe, and the hostile one."""
    with pytest.MonkeyPatch.context() as alone:
        # Made before any single test has a folder of the cook's own that is nobody's.
        alone.setenv("TAREBOOK_HOME", str(tmp_path_factory.mktemp("home") / "none"))
        found = {name: shipped_sheet(name) for name in shipped_recipes()}
        return found | {"hostile": hostile_sheet()}
