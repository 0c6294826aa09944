"""tarebook plan: the days of a batch, with clock times."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import typer

from tarebook.cli import asking
from tarebook.cli.several import Meats, RecipeNames, a_weight_each
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from datetime import datetime, tzinfo
    from fractions import Fraction

    from tarebook.plan.make import Plan, Wish
    from tarebook.plan.trays import Dryer
    from tarebook.recipe.model import Recipe

AT_ODDS = 1
"""Exit status of a plan that is printed and yet at odds with published advice."""
_KINDS = ("text", "ics", "html", "pdf")
_BY = ("low", "likely", "high")


def plan(
    recipes: RecipeNames,
    meat: Meats = None,
    ready: Annotated[
        str | None,
        typer.Option("--ready", metavar="WHEN", help="All packed by then: 'Saturday 18:00'."),
    ] = None,
    start: Annotated[
        str | None,
        typer.Option("--start", metavar="WHEN", help="Begin then: 'tomorrow 7am'. Else: now."),
    ] = None,
    frozen: Annotated[
        bool, typer.Option("--frozen", help="The meat comes out of the freezer.")
    ] = False,
    heat: Annotated[
        str | None,
        typer.Option(
            "--heat",
            metavar="STEP",
            help="simmer, steam, boil-down or oven-after, where it may be.",
        ),
    ] = None,
    no_nights: Annotated[
        str | None,
        typer.Option("--no-nights", metavar="FROM-TO", help="Nobody is needed then: 22:00-06:00."),
    ] = None,
    hours: Annotated[
        str | None,
        typer.Option(
            "--hours",
            metavar="HOURS",
            help="What such a batch took in this dryer: 6. Else: as the batch book tells.",
        ),
    ] = None,
    by: Annotated[
        str, typer.Option("--by", metavar="END", help="Plan with low, likely or high drying hours.")
    ] = "high",
    trays: Annotated[
        int | None, typer.Option("--trays", metavar="N", help="Trays, instead of the kitchen's.")
    ] = None,
    tray: Annotated[
        str | None,
        typer.Option("--tray", metavar="SIZE", help="One tray: 15 x 13 in, 13 in round."),
    ] = None,
    zone: Annotated[
        str | None, typer.Option("--zone", metavar="NAME", help="Time zone: America/Chicago.")
    ] = None,
    now: Annotated[
        str | None,
        typer.Option("--now", metavar="WHEN", help="Count from then: 2026-11-25 09:00. Else: now."),
    ] = None,
    short: Annotated[
        bool,
        typer.Option("--short", help="Times, steps, conflicts and grave cautions only."),
    ] = False,
    as_: Annotated[
        str, typer.Option("--as", metavar="KIND", help="text, html or pdf; ics for a calendar.")
    ] = "text",
    out: Annotated[
        str | None,
        typer.Option("-o", "--out", metavar="FILE", help="Write it there; - for standard output."),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Plan the days: thaw, slice, soak, heat, load, dry, pack, with clock times.

    Example: tarebook plan juniper-venison --meat 6lb --ready "Saturday 18:00"
    """
    from functools import partial

    from tarebook.cli.next_time import tell_next_time
    from tarebook.cli.talk import complain_findings
    from tarebook.cli.work import own_hours
    from tarebook.clocks.zones import zone_of
    from tarebook.kitchen import load_kitchen
    from tarebook.plan.jobs import job_of
    from tarebook.plan.make import make_plan

    kind = as_.strip().lower()
    if kind not in _KINDS:
        raise AskedWrongly(f'--as: "{as_[:20]}" is none of {", ".join(_KINDS)}')
    if short and (as_json or kind == "ics"):
        raise AskedWrongly("--short: for text, html and pdf; a calendar or data hold all of it")
    if by not in _BY:
        raise AskedWrongly(f'--by: "{by[:20]}" is none of {", ".join(_BY)}')
    clock, zone_name = zone_of(zone)
    at = _now(now, clock)
    wish = _wish(at, ready, start, no_nights, by)
    kitchen, findings = load_kitchen()
    complain_findings(findings)
    dryer = _dryer(kitchen, trays, tray)
    opened = _open(recipes)
    own = _hours(hours)
    jobs = [
        job_of(
            recipe, meat_g=mass_g, kitchen=kitchen, dryer=dryer, heat=heat, frozen=frozen,
            hours=own, learned=partial(own_hours, recipe), by=by,
        )
        for recipe, mass_g in zip(opened, _meats(opened, meat), strict=True)
    ]  # fmt: skip
    found = make_plan(jobs, dryer, wish, clock)
    _put(found, kind, out, zone_name, at, as_json, kitchen.units, short=short)
    if not as_json:
        aside = kind != "text" or out is not None
        once = {(recipe.file, recipe.title): recipe for recipe in opened}.values()
        for recipe in once:
            tell_next_time(recipe, aside=aside, by_name=len(once) > 1)
    if any(one.grave for one in found.conflicts):
        raise typer.Exit(AT_ODDS)


def _put(
    found: Plan,
    kind: str,
    out: str | None,
    zone_name: str,
    at: datetime,
    as_json: bool,
    units: str | None,
    *,
    short: bool,
) -> None:
    from tarebook.cli.put import PIPE, put
    from tarebook.cli.talk import complain, show, show_data

    if as_json:
        from tarebook.cards.plan_keys import plan_data
        from tarebook.cli.next_time import next_time_data

        data = plan_data(found, zone_name=zone_name)
        for told, job in zip(data["recipes"], found.jobs, strict=True):
            told["next_time"] = next_time_data(job.recipe)
        show_data(data)
    elif kind == "ics":
        from tarebook.plan.calendar import calendar

        put(calendar(found, stamp=at).encode("utf-8"), out)
    elif kind == "html":
        from tarebook.cards.plan_content import plan_content
        from tarebook.paper.html_plan import html_plan

        words = plan_content(found, zone_name=zone_name, short=short)
        put(html_plan(words).encode("utf-8"), out)
    elif kind == "pdf":
        from tarebook.cards.plan_content import plan_content
        from tarebook.paper.plan import plan_pdf

        words = plan_content(found, zone_name=zone_name, short=short)
        put(plan_pdf(words, units=units, tell=complain), out, binary=True)
    else:
        from tarebook.cards.lines import plain_text
        from tarebook.cards.plan_page import plan_page

        lines = plan_page(found, zone_name=zone_name, short=short)
        if out is None or out == PIPE:
            show(lines)
        else:
            put(plain_text(lines).encode("utf-8"), out)


def _open(names: list[str]) -> list[Recipe]:
    from tarebook.cli.talk import open_recipe

    return [open_recipe(name) for name in names]


def _meats(recipes: list[Recipe], meat: list[str] | None) -> list[Fraction]:
    """Return today's meat of each recipe [g]; the recipe's own where none is said."""
    from tarebook.cli.talk import asked
    from tarebook.quantities.amount import parse_mass

    return [
        recipe.meat.mass_g if text is None else asked(parse_mass, text, "--meat")
        for recipe, text in zip(recipes, a_weight_each(recipes, meat), strict=True)
    ]


def _now(said: str | None, clock: tzinfo) -> datetime:
    """Return this moment; a moment that is said, or the build's own, instead of the machine's."""
    import os
    from datetime import UTC, datetime

    from tarebook.clocks.moments import read_moment

    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if epoch.isdecimal():
        machine = datetime.fromtimestamp(int(epoch), UTC).astimezone(clock)
    else:
        machine = datetime.now(UTC).astimezone(clock)
    if said is None:
        return machine
    return _named("--now", read_moment, said, machine)


def _wish(
    at: datetime, ready: str | None, start: str | None, no_nights: str | None, by: str
) -> Wish:
    from tarebook.clocks.moments import read_clock_span, read_moment
    from tarebook.clocks.zones import minute_of
    from tarebook.plan.make import Wish

    if ready is not None and start is not None:
        raise AskedWrongly("give one of --ready or --start")
    return Wish(
        now=minute_of(at),
        ready=None if ready is None else minute_of(_named("--ready", read_moment, ready, at)),
        start=None if start is None else minute_of(_named("--start", read_moment, start, at)),
        nights=None if no_nights is None else _option("--no-nights", read_clock_span, no_nights),
        by=by,
    )


def _named(option: str, read: Any, text: str, at: datetime) -> datetime:
    from tarebook.cli.talk import complain

    found, note = _option(option, lambda one: read(one, at), text)
    if note:
        complain(f"note: {note}")
    moment: datetime = found
    return moment


def _option(option: str, read: Any, text: str) -> Any:
    try:
        return read(text)
    except AskedWrongly as fault:
        raise AskedWrongly(f"{option}: {fault}") from None


def _dryer(kitchen: Any, trays: int | None, tray: str | None) -> Dryer:
    from tarebook.findings import AmountError, UnitError
    from tarebook.kitchen.values import read_outline
    from tarebook.plan.trays import dryer_of
    from tarebook.toml.fault import Refused

    if trays is not None and not 1 <= trays <= 100:
        raise AskedWrongly("--trays: from 1 to 100 trays can be planned for")
    try:
        outline = None if tray is None else read_outline(tray)
    except (Refused, AmountError, UnitError) as fault:
        raise AskedWrongly(f"--tray: {fault}; as in 15 x 13 in, 13 in round") from None
    return dryer_of(kitchen, trays=trays, tray=outline)


def _hours(said: str | None) -> tuple[float, float] | None:
    from tarebook.cli.talk import asked
    from tarebook.quantities.number import parse_range

    if said is None:
        return None
    text = said.strip().removesuffix("hours").removesuffix("h").strip()
    low, high = asked(parse_range, text, "--hours")
    if not 0 < low <= high <= 200:
        raise AskedWrongly("--hours: a batch takes more than 0 and at most 200 hours")
    return float(low), float(high)
