"""tarebook batch start, weigh, temp, note: what is told with words of its own."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import typer

from tarebook.cli import asking
from tarebook.cli.batch_asking import At, BatchNumber, Note
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from fractions import Fraction


_ALSO = {
    "meat": "raw", "trimmed": "raw", "green": "raw",
    "wet": "soaked", "drained": "soaked", "marinated": "soaked",
    "marinade": "leftover", "leftovers": "leftover", "left": "leftover", "bowl": "leftover",
    "towel": "towels", "paper": "towels",
    "dried": "finished", "dry": "finished", "done": "finished", "finish": "finished",
    "pack": "packed", "bagged": "packed", "bags": "packed",
}  # fmt: skip
"""Other words for what is weighed."""


_OTHER = (
    'it goes by {} in the book, and learns nothing of "{}", whose file has the same name. Is that '
    "the same recipe under a new title? Then tarebook batch undo, and start it with --renamed"
)
_AFTERWARDS = ("finished", "packed")  # often weighed when the batch is called done already


def start(
    recipe: asking.RecipeName,
    meat: Annotated[
        str | None,
        typer.Option(
            "--meat", metavar="WEIGHT", help="Today's trimmed raw meat: 6lb, '6 lb 4 oz', 2.7kg."
        ),
    ] = None,
    renamed: Annotated[
        bool,
        typer.Option("--renamed", help="The recipe of this file name, under a new title."),
    ] = False,
    at: At = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Start a batch; its recipe is kept whole, as it is today.

    Example: tarebook batch start juniper-venison --meat 6lb
    """
    from tarebook.cli.batch_asking import clock_now, read_at, tell
    from tarebook.cli.next_time import tell_next_time
    from tarebook.cli.talk import complain_findings, write
    from tarebook.findings import RecipeFaulty
    from tarebook.recipe.load import recipe_bytes
    from tarebook.recipe.read import read_recipe
    from tarebook.records.entry import MEAT, Draft, Kind
    from tarebook.records.find import in_hand
    from tarebook.records.keep import start_batch
    from tarebook.records.moment import moment_of
    from tarebook.records.names import Named, name_in_book, recipe_key
    from tarebook.records.questions import questions
    from tarebook.records.standing import standing_of
    from tarebook.records.store import writing

    if not recipe.strip():
        raise AskedWrongly("no recipe is named")
    data, file = recipe_bytes(recipe)
    found, findings = read_recipe(data, file=file)
    if found is None:
        raise RecipeFaulty(findings)
    complain_findings(one for one in findings if one.severity.value != "note")
    now = clock_now()
    value = None if meat is None else _weight(meat, "--meat")
    draft = Draft(
        kind=Kind.START,
        happened=read_at(at, now),
        recorded=moment_of(now),
        what=MEAT,
        written="" if meat is None else meat.strip(),
        value=value,
        note=note or "",
    )
    with writing() as db:
        others = in_hand(db)
        named = name_in_book(db, recipe, found.title)
        if renamed:
            named = Named(recipe_key(recipe, found.title))
        entry = start_batch(
            db, recipe=named.name, title=found.title, recipe_text=data.decode("utf-8"), draft=draft
        )
    asked = list(questions(entry, standing_of(()), standing_of((entry,))))
    if named.other:
        asked.append(_OTHER.format(named.name, named.other))
    tell(entry, found.title, as_json=as_json, asked=asked)
    tell_next_time(found, aside=as_json)
    if others and not as_json:
        write(f"Also in hand: batch {_listed(others)}; --batch names it.\n")


def weigh(
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="WHAT WEIGHT",
            help="raw, soaked, leftover, towels, finished or packed; 2 lb 3 oz, 992g, several "
            "bowls as 2 lb + 14 oz, without the bowl as 3 lb less 410 g.",
            show_default=False,
        ),
    ],
    batch: BatchNumber = None,
    at: At = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write down a weight.

    Example: tarebook batch weigh soaked 6 lb 9 oz
    """
    from tarebook.records.entry import MAY_BE_ZERO, Kind

    thing, text = _thing(words)
    value = _weight(text, thing, zero=thing in MAY_BE_ZERO)
    enter(
        batch, at, note, as_json,
        kind=Kind.WEIGH, what=thing, written=text, value=value, or_latest=thing in _AFTERWARDS,
    )  # fmt: skip


def temp(
    words: Annotated[
        list[str],
        typer.Argument(metavar="DEGREES", help="160 F, 71 C.", show_default=False),
    ],
    where: Annotated[
        str, typer.Option("--where", metavar="PLACE", help="meat, or air of the dryer.")
    ] = "meat",
    batch: BatchNumber = None,
    at: At = None,
    note: Note = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write down a temperature.

    Example: tarebook batch temp 160 F
    """
    from tarebook.cli.batch_asking import words_of
    from tarebook.cli.talk import asked
    from tarebook.records.entry import Kind
    from tarebook.records.values import read_temperature

    text = words_of(words)
    value = asked(read_temperature, text, "")
    enter(
        batch, at, note, as_json,
        kind=Kind.TEMP, what=read_where(where), written=text, value=value,
    )  # fmt: skip


def note(
    words: Annotated[
        list[str], typer.Argument(metavar="TEXT", help="What to remember.", show_default=False)
    ],
    next_time: Annotated[
        bool,
        typer.Option("--next-time", help="Show it when this recipe is scaled or started again."),
    ] = False,
    batch: BatchNumber = None,
    at: At = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write down a remark.

    Where no batch is in hand it goes to the last one.

    Example: tarebook batch note less pepper --next-time
    """
    from tarebook.cli.batch_asking import words_of
    from tarebook.records.entry import NEXT_TIME, Kind

    text = words_of(words)
    if not text:
        raise AskedWrongly('the note has no words, as in  tarebook batch note "turned the bags"')
    enter(
        batch, at, text, as_json,
        kind=Kind.NOTE, what=NEXT_TIME if next_time else "", or_latest=True,
    )  # fmt: skip


def enter(
    batch: int | None,
    at: str | None,
    note: str | None,
    as_json: bool,
    *,
    or_latest: bool = False,
    **fields: Any,
) -> None:
    """Add an entry, and tell it once it is kept.

    Args:
        batch, at, note, as_json: as asked for.
        or_latest: whether the latest batch will do where none is in hand.
        fields: the other fields of the entry.
    """
    from tarebook.cli.batch_asking import asked_of, batch_in_hand, clock_now, read_at, tell
    from tarebook.records.entry import Draft
    from tarebook.records.find import entries_of, in_hand, read_batch
    from tarebook.records.keep import add_entry
    from tarebook.records.moment import moment_of
    from tarebook.records.store import writing

    now = clock_now()
    draft = Draft(happened=read_at(at, now), recorded=moment_of(now), note=note or "", **fields)
    with writing(begun=True) as db:
        number = batch_in_hand(db, batch, or_latest=or_latest)
        before = entries_of(db, number)
        entry = add_entry(db, number, draft)
        found, others = read_batch(db, number), in_hand(db)
    asked = asked_of(entry, before, found)
    if batch is None and len(others) > 1:
        rest = [one for one in others if one != number]
        asked.append(f"this went to batch {number}; also in hand: batch {_listed(rest)}")
    tell(entry, found.title, as_json=as_json, asked=asked)


def read_where(text: str) -> str:
    """Return where a temperature was taken."""
    from tarebook.records.entry import WHAT, Kind

    place = text.strip().lower()
    if place not in WHAT[Kind.TEMP]:
        raise AskedWrongly(f'--where: "{text[:20]}" is no place; say meat or air')
    return place


def read_thing(text: str) -> str | None:
    """Return what is weighed, by any of its words, or None where it is none."""
    from tarebook.records.entry import THINGS

    word = text.strip().lower().rstrip(":,")
    return word if word in THINGS else _ALSO.get(word)


def read_weighed(text: str, thing: str) -> Fraction:
    """Return a weight that was typed for a thing [g]."""
    from tarebook.records.entry import MAY_BE_ZERO

    return _weight(text, thing, zero=thing in MAY_BE_ZERO)


def _thing(words: list[str]) -> tuple[str, str]:
    """Return what was weighed and its weight, in whichever order they were typed."""
    from tarebook.findings import nearest
    from tarebook.records.entry import THINGS

    split = " ".join(words).split()
    for place in (0, len(split) - 1):
        thing = read_thing(split[place]) if split else None
        if thing is not None:
            rest = split[1:] if place == 0 else split[:-1]
            if not rest:
                raise AskedWrongly(f"say what it weighs, as in  tarebook batch weigh {thing} 2 lb")
            return thing, " ".join(rest)
    first = split[0] if split else ""
    near = nearest(first, [*THINGS, *_ALSO]) if first[:1].isalpha() else ()
    tail = f'; did you mean "{near[0]}"?' if near else ""
    raise AskedWrongly(
        f"say what was weighed: {', '.join(THINGS[:-1])} or {THINGS[-1]}, as in  "
        f"tarebook batch weigh raw 6lb{tail}"
    )


def _weight(text: str, name: str, *, zero: bool = False) -> Fraction:
    from tarebook.cli.talk import asked
    from tarebook.records.values import read_weight

    value: Fraction = asked(lambda one: read_weight(one, zero=zero), text, name)
    return value


def _listed(numbers: Any) -> str:
    return ", ".join(str(one) for one in numbers)
