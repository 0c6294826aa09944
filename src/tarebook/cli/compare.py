"""tarebook compare: variants side by side, and whether they differ by more than the doubt."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.recipe.model import Recipe
    from tarebook.scaling.swap import Swap

_MOST = 10

_FORMS = ("text", "csv", "pdf", "svg", "png")


def compare(
    recipes: Annotated[
        list[str],
        typer.Argument(
            metavar="RECIPE...",
            help="One recipe with --swap, or several recipes.",
            autocompletion=complete.recipes,
            show_default=False,
        ),
    ],
    swap: Annotated[
        list[str] | None,
        typer.Option(
            "--swap",
            metavar="OLD=NEW[:RATIO]",
            help="Put one food in another's place; may be repeated. OLD may be 'meat'.",
        ),
    ] = None,
    swap_by: Annotated[
        str, typer.Option("--swap-by", metavar="WAY", help="volume (for volume) or mass.")
    ] = "volume",
    each: Annotated[
        bool, typer.Option("--each", help="Every swap a variant of its own, not all in one.")
    ] = False,
    meat: asking.Meat = None,
    bought: asking.Bought = None,
    trim: asking.Trim = None,
    factor: asking.Factor = None,
    drawer: asking.DrawerName = None,
    label_ounce: asking.LabelOunce = False,
    short: asking.Short = False,
    as_: Annotated[
        str | None, typer.Option("--as", metavar="FORM", help="text, csv, pdf, svg or png.")
    ] = None,
    out: asking.Out = None,
    as_json: asking.AsJson = False,
) -> None:
    """Compare variants of a recipe, or several recipes, per finished ounce and per batch.

    Example: tarebook compare juniper-venison --swap soy-sauce=low-sodium-soy
    """
    from tarebook.cards.beside import Variant, beside
    from tarebook.cards.lines import plain_text
    from tarebook.cli.put import form_of, put, put_text
    from tarebook.cli.talk import complain, open_recipe, show, show_data
    from tarebook.cli.work import work_out

    bases = [open_recipe(name) for name in recipes]
    sides = [(one.title, one) for one in bases]
    sides += _swapped(bases[0], [_read_swap(text, swap_by) for text in swap or ()], each=each)
    if len(sides) < 2:
        raise AskedWrongly("nothing to compare: add --swap OLD=NEW, or a second recipe")
    if len(sides) > _MOST:
        raise AskedWrongly(f"at most {_MOST} variants fit side by side")
    variants = [
        Variant(
            name,
            work_out(
                one,
                meat=meat,
                bought=bought,
                trim=trim,
                factor=factor,
                drawer=drawer,
                label_ounce=label_ounce,
            ),
        )
        for name, one in sides
    ]
    if as_json:
        from tarebook.cards.keys import comparison_data

        show_data(comparison_data(variants))
        return
    form = form_of(as_, out, _FORMS)
    if form == "csv":
        from tarebook.cards.spreadsheet import comparison_rows
        from tarebook.cells import csv_text

        put(csv_text(comparison_rows(variants)).encode(), out)
    elif form != "text":
        from tarebook.paper.charts import comparison_chart, draw_as

        put(draw_as(comparison_chart(variants), form, tell=complain), out, binary=True)
    elif out is not None:
        put_text(plain_text(beside(variants, short=short)), out)
    else:
        show(beside(variants, short=short))


def _swapped(base: Recipe, swaps: list[Swap], *, each: bool) -> list[tuple[str, Recipe]]:
    from tarebook.scaling.swap import swap

    groups = [[one] for one in swaps] if each else [swaps] if swaps else []
    sides = []
    for group in groups:
        changed = base
        for one in group:
            changed = swap(changed, one)
        sides.append(("with " + ", ".join(one.words for one in group), changed))
    return sides


def _read_swap(text: str, by: str) -> Swap:
    from fractions import Fraction

    from tarebook.cli.talk import read_number
    from tarebook.scaling.swap import Swap

    if by not in ("volume", "mass"):
        raise AskedWrongly(f"--swap-by {by!r}: volume or mass")
    old, equals, new = text.partition("=")
    new, colon, ratio = new.partition(":")
    if not (old.strip() and equals and new.strip()):
        raise AskedWrongly(f"--swap {text!r}: write OLD=NEW, as in soy-sauce=soy-sauce-low-sodium")
    times = read_number(ratio, "--swap") if colon else Fraction(1)
    if times <= 0:
        raise AskedWrongly(f"--swap {text!r}: the ratio must be above zero")
    return Swap(old=old.strip(), new=new.strip(), ratio=times, by_mass=by == "mass")
