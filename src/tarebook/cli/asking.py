"""Arguments and options that several commands share."""

from __future__ import annotations

from typing import Annotated

import typer

from tarebook.cli import complete

RecipeName = Annotated[
    str,
    typer.Argument(
        metavar="RECIPE",
        help="A recipe file, the name of your own or a shipped one, or - for standard input.",
        autocompletion=complete.recipes,
        show_default=False,
    ),
]
Meat = Annotated[
    str | None,
    typer.Option(
        "--meat", metavar="WEIGHT", help="Today's trimmed raw meat: 6lb, '6 lb 4 oz', 2.7kg."
    ),
]
Bought = Annotated[
    str | None,
    typer.Option(
        "--bought", metavar="WEIGHT", help="Meat as bought, before trimming; with --trim."
    ),
]
Trim = Annotated[
    str | None,
    typer.Option("--trim", metavar="SHARE", help="Part trimmed away of --bought: 12%."),
]
Factor = Annotated[
    str | None,
    typer.Option("--factor", metavar="NUMBER", help="Times the recipe instead: 2, 1 1/2."),
]
DrawerName = Annotated[
    str | None,
    typer.Option(
        "--drawer",
        metavar="SET",
        help="Measuring set: basic, full or metric; your kitchen's own, or basic, if none.",
        autocompletion=complete.drawers,
    ),
]
Finished = Annotated[
    str | None,
    typer.Option("--finished", metavar="WEIGHT", help="Weight of the finished batch on the scale."),
]
Soaked = Annotated[
    str | None,
    typer.Option("--soaked", metavar="WEIGHT", help="Weight of the meat after its soak, drained."),
]
Leftover = Annotated[
    str | None,
    typer.Option("--leftover", metavar="WEIGHT", help="Weight of the marinade left in the bowl."),
]
Towels = Annotated[
    str | None,
    typer.Option("--towels", metavar="WEIGHT", help="Liquid on the towels; with --leftover."),
]
NothingPoured = Annotated[
    bool,
    typer.Option(
        "--nothing-poured-away", help="All of the marinade stayed with the meat, or boiled down."
    ),
]
LabelOunce = Annotated[
    bool,
    typer.Option("--label-ounce", help="Figures for the 28 g ounce of food labels."),
]
Short = Annotated[bool, typer.Option("--short", help="Of the cautions, only what is grave.")]
Out = Annotated[
    str | None, typer.Option("-o", "--out", metavar="FILE", help="Write it there; - for a pipe.")
]
Heat = Annotated[
    str | None,
    typer.Option(
        "--heat",
        metavar="STEP",
        help="Instead of the recipe's: simmer, steam, boil-down or oven-after, where it may be.",
    ),
]
AsJson = Annotated[bool, typer.Option("--json", help="Print plain data as JSON.")]

# Of labels, for a recipe and for a batch of the book.
LabelCount = Annotated[int, typer.Option("--count", help="How many labels, 1 to 500.")]
EachBag = Annotated[
    str | None,
    typer.Option("--each", metavar="WEIGHT", help="What one bag holds; a line if not told."),
]
LabelSheet = Annotated[
    str, typer.Option("--sheet", metavar="NAME", help="Sheet of labels, as letter-2x5.")
]
FirstLabel = Annotated[
    int, typer.Option("--start", help="First free label of a sheet that is half used.")
]
USUAL_SHEET = "letter-2x5"
