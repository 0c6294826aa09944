"""What the guide says to touch is enough: each thing is added to a copy, and then it is there."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from pypdf import PdfReader

import tarebook

SOURCE = Path(tarebook.__file__).parent
ROOT = SOURCE.parents[1]
POINTS_PER_INCH = 72

INGREDIENT = {
    "foods.csv": "birch-syrup,birch syrup,sweetener,syrup of birch sap,,,,,,,,,,,,",
    "nutrients.csv": "birch-syrup,100 g edible part,from-memory,,birch syrup,"
    "32,264,0,0,0,66,0,65,1,0,,,,15,,0,from memory,,",
    "measures.csv": "birch-syrup,cup,1,cup,,236.5882365,320,1.353,from-memory,from memory,yes,yes,"
    "0.05,",
    "sugars.csv": "birch-syrup,0,1,0,all,1,1,from-memory,from memory,",
}
RECIPE = """
title = "Birch strips"
[meat]
food = "deer"
amount = "1 kg"
thickness = "6 mm"
[marinade]
birch-syrup = "1/4 cup"
[soak]
hours = 12
[drying]
temperature = "155 F"
"""
CARD_SIZE = "lakeside,wide,7,4,in,card,common-practice,our own wide card"
RULE = (
    "shot,game,hunted game,nobody,common practice,,undated,common-practice,M,Cut wide round a shot."
)
RULE_FUNCTION = '''

def shot(case: Case) -> tuple[Finding, ...]:
    """Say that meat round a shot is cut away."""
    if not case.maybe_game:
        return ()
    return (case.note("shot", "a shot leaves splinters", "cut wide round it", cites="shot"),)
'''
COMMAND = '''"""tarebook yields: what a finished batch weighs."""

from tarebook.cli import asking


def yields(recipe: asking.RecipeName, as_json: asking.AsJson = False) -> None:
    """Say what a finished batch weighs."""
    from tarebook.cli.talk import open_recipe, show_data
    from tarebook.cli.work import work_out

    show_data({"finished_g": work_out(open_recipe(recipe)).estimate.finished_g.likely})
'''

pytestmark = pytest.mark.skipif(not (ROOT / "reference").exists(), reason="needs the checkout")
Run = Callable[..., str]


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the checkout with an ingredient, a card size, a rule and a command added."""
    copy = tmp_path_factory.mktemp("house")
    for part in ("src/tarebook", "reference", "recipes", "tests/figures"):
        shutil.copytree(ROOT / part, copy / part, ignore=shutil.ignore_patterns("__pycache__"))
    for name, row in {**INGREDIENT, "card-sizes.csv": CARD_SIZE, "rules.csv": RULE}.items():
        with (copy / "reference" / name).open("a", encoding="utf-8") as table:
            table.write(f"{row}\n")
    code = copy / "src" / "tarebook"
    with (code / "safety" / "game.py").open("a", encoding="utf-8") as kin:
        kin.write(RULE_FUNCTION)
    put(code / "safety" / "rules.py", "    gut_shot,\n", "    gut_shot,\n    shot,\n")
    gut = '    "gut-shot": "Dirtied game",\n'
    put(code / "safety" / "caution.py", gut, f'{gut}    "shot": "What a shot leaves",\n')
    (code / "cli" / "yields.py").write_text(COMMAND, encoding="utf-8")
    first = "COMMANDS = {\n"
    put(code / "cli" / "main.py", first, f'{first}    "yields": "Say what a batch weighs.",\n')
    return copy


def put(path: Path, at: str, instead: str) -> None:
    """Write a line into a file, wherever its neighbour stands."""
    text = path.read_text(encoding="utf-8")
    assert at in text
    path.write_text(text.replace(at, instead), encoding="utf-8")


@pytest.fixture
def run(house: Path) -> Run:
    """Run Python within the copy, and return what it prints."""

    def ran(*args: str) -> str:
        done = subprocess.run(
            [sys.executable, *args],
            cwd=house,
            env={**os.environ, "PYTHONPATH": str(house / "src")},
            capture_output=True,
            encoding="utf-8",
            timeout=60,
        )
        assert (0, "") == (done.returncode, done.stderr), args
        return done.stdout

    return ran


def test_an_ingredient_is_four_rows(house: Path, run: Run) -> None:
    """A food of four rows is scaled, weighed and reckoned; editors and the pins can follow."""
    (house / "own.toml").write_text(RECIPE, encoding="utf-8")

    sheet = json.loads(run("-m", "tarebook", "scale", "own.toml", "--json"))
    run("-m", "tarebook.recipe.schema")
    run("tests/figures/test_table.py")

    (syrup,) = (one for one in sheet["ingredients"] if one["food"] == "birch-syrup")
    assert 80 == pytest.approx(syrup["mass_g"])  # a quarter of a cup of 320 g
    assert "birch-syrup" in (house / "reference" / "recipe.schema.json").read_text("utf-8")
    before, after = (
        json.loads((at / "tests" / "figures" / "pins.json").read_text("utf-8"))
        for at in (ROOT, house)
    )
    assert {name: 1 + before[name]["rows"] for name in INGREDIENT} == {
        name: after[name]["rows"] for name in INGREDIENT
    }


@pytest.mark.parametrize("name", ["lakeside", "wide upright"])
def test_a_card_size_is_one_row(name: str, house: Path, run: Run) -> None:
    """A card of a size of one row comes out in that size, by either name and turned."""
    file = f"{name}.pdf"
    out = subprocess.run(
        [sys.executable, "-m", "tarebook", "card", "juniper-venison", "--size", name, "-o", file],
        cwd=house,
        env={**os.environ, "PYTHONPATH": str(house / "src")},
        check=True,
        capture_output=True,
    )
    box = PdfReader(house / file).pages[0].mediabox
    sides = (7, 4) if name == "lakeside" else (4, 7)

    assert b"is written" in out.stderr
    assert sides == pytest.approx(
        (float(box.width) / POINTS_PER_INCH, float(box.height) / POINTS_PER_INCH), abs=0.01
    )


def test_a_rule_is_a_line_a_function_its_name_and_a_title(run: Run) -> None:
    """What the rule says is on the card of game, with who says so, and not on that of salmon."""
    game, fish = (
        " ".join(run("-m", "tarebook", "card", one).split())
        for one in ("juniper-venison", "maple-dill-salmon")
    )

    assert "What a shot leaves" in game and "Cut wide round it. [nobody, common practice" in game
    assert "What a shot leaves" not in fish


def test_a_command_is_a_file_and_a_line(run: Run) -> None:
    """The command runs, and the page of help names it."""
    assert 300 < json.loads(run("-m", "tarebook", "yields", "juniper-venison"))["finished_g"] < 700
    assert "Say what a batch weighs." in run("-m", "tarebook", "--help")
