"""What goes to a spreadsheet is text there, whatever a recipe is called."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]

ODD = """title = "=HYPERLINK(1)"
[meat]
food = "deer"
amount = "2 lb"
[rub]
"=1+1" = { food = "paprika", amount = "1 tsp", note = "@SUM(A1)" }
"+cmd" = { food = "salt-table", amount = "1 tsp", note = "-2+3" }
[heat]
step = "steamed or roasted first"
"""


@pytest.mark.parametrize(
    ("args", "held"),
    [
        (["scale", "odd"], {"=1+1", "@SUM(A1)", "+cmd", "-2+3"}),
        (["compare", "odd", "--swap", "paprika=smoked-paprika"], {"=HYPERLINK(1)"}),
        (["list"], {"=HYPERLINK(1)"}),
    ],
    ids=["scale", "compare", "list"],
)
def test_no_cell_is_a_formula(
    args: list[str], held: set[str], tarebook: Tarebook, own_home: Path
) -> None:
    """Names and notes that look like formulas stand there with an apostrophe before them."""
    (own_home / "recipes").mkdir(parents=True)
    (own_home / "recipes" / "odd.toml").write_text(ODD, encoding="utf-8")

    done = tarebook(*args, "--as", "csv")
    cells = {cell for row in csv.reader(io.StringIO(done.out)) for cell in row}

    assert {f"'{one}" for one in held} <= cells
    assert not held & cells
