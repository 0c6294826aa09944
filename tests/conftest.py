"""A recipe built in one line, and a folder of the cook's own that is nobody's."""

from __future__ import annotations

import signal
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

from tarebook.recipe.model import Recipe
from tarebook.recipe.read import read_recipe

# A shell lets what it runs in the background ignore Ctrl-C, and so would every program tried here.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

# A program of its own, whose modules find one another by its folder.
collect_ignore = ["fuzz"]

# A busy machine is slow to draw and to run: that is no fault of what is tested.
settings.register_profile("house", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("house")

RecipeText = Callable[..., str]
RecipeOf = Callable[..., Recipe]


def text_of(
    *,
    title: str = "Lake strips",
    meat: str = "deer",
    amount: str = "1 kg",
    thickness: str = "1/4 in",
    form: str = "strips",
    marinade: Mapping[str, str] | None = None,
    rub: Mapping[str, str] | None = None,
    mixed_in: Mapping[str, str] | None = None,
    soak: str = 'hours = 12\nsurface = "drained"',
    heat: str = "oven after drying",
    drying: str = 'temperature = "155 F"',
    more: str = "",
) -> str:
    """Return the text of a recipe; each ingredient an amount, or a TOML table in braces."""
    parts = {
        "marinade": {"soy-sauce": "3/4 cup"} if marinade is None else marinade,
        "rub": rub or {},
        "mixed-in": mixed_in or {},
    }
    lines = [
        f'title = "{title}"',
        f'[meat]\nfood = "{meat}"\namount = "{amount}"',
        f'thickness = "{thickness}"\nform = "{form}"',
    ]
    for part, listed in parts.items():
        if listed:
            lines.append(f"[{part}]")
            lines += [f'"{name}" = {_value(value)}' for name, value in listed.items()]
    if parts["marinade"]:
        lines.append(f"[soak]\n{soak}")
    lines += [f'[heat]\nstep = "{heat}"', f"[drying]\n{drying}", more]
    return "\n".join(lines) + "\n"


def _value(value: str) -> str:
    return value if value.startswith("{") else f'"{value}"'


def read_text(**parts: str | Mapping[str, str]) -> Recipe:
    """Return the recipe that such a text makes; it has no errors."""
    recipe, findings = read_recipe(text_of(**parts), file="lake.toml")  # type: ignore[arg-type]
    assert recipe is not None, [str(one) for one in findings]
    return recipe


@pytest.fixture
def recipe_text() -> RecipeText:
    """The builder of recipe texts."""
    return text_of


@pytest.fixture
def recipe_of() -> RecipeOf:
    """The builder of recipes."""
    return read_text


@pytest.fixture(autouse=True)
def own_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of the cook's own for each test: none reads or writes that of who runs it."""
    home = tmp_path / "tarebook-home"
    monkeypatch.setenv("TAREBOOK_HOME", str(home))
    return home


@pytest.fixture(scope="session")
def keep_answers() -> Callable[[], None]:
    """Keep answers of the open table of foods as if it had been asked today; nobody is asked."""
    from tarebook.lookup.client import Client
    from tarebook.lookup.key import Key
    from tarebook.lookup.wire import Wire, _Got

    shapes = Path(__file__).parent / "lookup"

    def answered(_wire: object, request: Any, *_: object) -> _Got:
        name = "search" if "search" in request.url else "food"
        return _Got(200, "application/json", "", "", (shapes / f"{name}.json").read_bytes())

    def keep() -> None:
        with pytest.MonkeyPatch.context() as patched:
            patched.setattr(Wire, "_followed", answered)
            with Client(Key(text="DEMO_KEY", place="the demonstration key")) as table:
                table.search("soy sauce")
                table.food(174278)

    return keep


@pytest.fixture
def kept_answers(own_home: Path, keep_answers: Callable[[], None]) -> None:
    """Answers of the open table of foods in the folder of this test."""
    keep_answers()
