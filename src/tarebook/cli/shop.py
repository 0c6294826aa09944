"""tarebook shop: what to buy for a batch, and what it costs."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking
from tarebook.cli.several import Meats, RecipeNames, a_weight_each
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.cards.worksheet import Worksheet
    from tarebook.shopping import Pantry

_FILE = "pantry.toml"


def shop(
    recipes: RecipeNames,
    meat: Meats = None,
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

    The house's list and prices are kept as pantry.toml in your own folder: [have] with rows like
    honey = "1 cup", and [packs] with rows like honey = { size = "12 oz", price = 6.50 }.

    Example: tarebook shop juniper-venison --meat 6lb --trim 12%
    """
    from fractions import Fraction

    from tarebook.cards.shopping_page import raw_words, shopping_data, shopping_page
    from tarebook.cli.talk import read_share, show, show_data
    from tarebook.shopping import cost_of, needs_of
    from tarebook.where import home

    part = read_share(trim, "--trim") if trim else Fraction(0)
    if not 0 <= part < 1:
        raise AskedWrongly("--trim: it must be 0 % or more, and under 100 %")
    done = _worked_out(recipes, meat, factor, finished)
    file = pantry or home() / _FILE
    held = _pantry(file, asked_for=pantry is not None)
    needs = needs_of([one.scaled for one in done], held, trim=part)
    each = [
        cost_of(needs_of([one.scaled], held, trim=part), one.estimate.finished_g) for one in done
    ]
    cost = each[0] if len(each) == 1 else cost_of(needs)
    named = [(one.recipe.title, its) for one, its in zip(done, each, strict=True)]
    raw = tuple(dict.fromkeys(words for one in done for words in raw_words(one.case)))
    if as_json:
        show_data(shopping_data(needs, cost, named, currency=held.currency, raw=raw))
        return
    show(shopping_page(needs, cost, named, currency=held.currency, file=str(file), raw=raw))


def _worked_out(
    names: list[str], meat: list[str] | None, factor: str | None, finished: str | None
) -> list[Worksheet]:
    from tarebook.cli.talk import open_recipe
    from tarebook.cli.work import work_out

    if finished is not None and len(names) > 1:
        raise AskedWrongly("--finished: it is the weight of one batch; ask of one recipe")
    return [
        work_out(open_recipe(name), meat=weight, factor=factor, finished=finished)
        for name, weight in zip(names, a_weight_each(names, meat), strict=True)
    ]


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
