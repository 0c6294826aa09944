"""tarebook shop: what to buy for a batch, and what it costs."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking

if TYPE_CHECKING:
    from tarebook.shopping import Pantry

_FILE = "pantry.toml"


def shop(
    recipe: asking.RecipeName,
    meat: asking.Meat = None,
    trim: Annotated[
        str | None,
        typer.Option("--trim", metavar="SHARE", help="Part cut away of the meat as bought: 12%."),
    ] = None,
    factor: asking.Factor = None,
    pantry: Annotated[
        Path | None,
        typer.Option(
            "--pantry", metavar="FILE", help="The list of the house, in place of your own."
        ),
    ] = None,
    finished: asking.Finished = None,
    as_json: asking.AsJson = False,
) -> None:
    """Say what to buy, less what is in the house, and what a finished ounce costs.

    Example: tarebook shop juniper-venison --meat 6lb --trim 12%
    """
    from fractions import Fraction

    from tarebook.cards.shopping_page import fresh_words, shopping_data, shopping_page
    from tarebook.cli.talk import open_recipe, read_share, show, show_data
    from tarebook.cli.work import work_out
    from tarebook.findings import AskedWrongly
    from tarebook.shopping import cost_of, needs_of
    from tarebook.where import home

    part = read_share(trim, "--trim") if trim else Fraction(0)
    if not 0 <= part < 1:
        raise AskedWrongly("--trim: it must be 0 % or more, and under 100 %")
    done = work_out(open_recipe(recipe), meat=meat, factor=factor, finished=finished)
    file = pantry or home() / _FILE
    held = _pantry(file, asked_for=pantry is not None)
    needs = needs_of([done.scaled], held, trim=part)
    cost = cost_of(needs, done.estimate.finished_g)
    if as_json:
        show_data(shopping_data(needs, cost, currency=held.currency))
    else:
        title = done.recipe.title
        fresh = fresh_words(done.case)
        show(shopping_page(title, needs, cost, currency=held.currency, file=str(file), fresh=fresh))


def _pantry(file: Path, *, asked_for: bool) -> Pantry:
    """Return the cook's list; a cook who has written none has nothing in the house."""
    from tarebook.cli.talk import complain_findings
    from tarebook.files import holds, read_bytes
    from tarebook.findings import RecordFaulty
    from tarebook.shopping import read_pantry
    from tarebook.shopping.pantry import NOTHING
    from tarebook.toml.text import MOST_BYTES

    if not asked_for and not holds(file.exists):
        return NOTHING
    found, findings = read_pantry(read_bytes(file, most=MOST_BYTES, what="list"), file=str(file))
    if found is None:
        raise RecordFaulty(findings)
    complain_findings(findings)
    return found
