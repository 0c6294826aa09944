"""Options that the commands of the batch book share, and what they mean."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    import sqlite3
    from datetime import datetime

    from tarebook.cards.worksheet import Worksheet
    from tarebook.records.entry import Batch, Entry
    from tarebook.records.moment import Moment

BatchNumber = Annotated[
    int | None,
    typer.Option(
        "--batch", metavar="N", help="Which batch, instead of the one in hand.", show_default=False
    ),
]
At = Annotated[
    str | None,
    typer.Option(
        "--at",
        metavar="WHEN",
        help="When it happened: 18:00, 'yesterday 6pm', '20 min ago'. Else: now.",
    ),
]
Note = Annotated[str | None, typer.Option("--note", metavar="TEXT", help="A remark beside it.")]

_AGO_MIN = {"min": 1, "mins": 1, "minute": 1, "minutes": 1, "h": 60, "hr": 60, "hrs": 60,
            "hour": 60, "hours": 60, "d": 1440, "day": 1440, "days": 1440}  # fmt: skip
_AGO = "ago"
_MOST_AGO_MIN = 400 * 1440


def clock_now() -> datetime:
    """Return what the kitchen's clock shows.

    ``SOURCE_DATE_EPOCH``, which some build shells set, has no say here: it would be written down
    for good as the time when something happened.
    """
    from datetime import UTC, datetime

    from tarebook.clocks.zones import zone_of

    zone, _ = zone_of(None)
    return datetime.now(UTC).astimezone(zone)


def read_at(text: str | None, now: datetime) -> Moment:
    """Return when something happened.

    Args:
        text: as given to ``--at``; None means now.
        now: what the clock shows.
    """
    from tarebook.cli.talk import complain
    from tarebook.clocks.moments import read_moment
    from tarebook.records.moment import moment_of

    if text is None:
        return moment_of(now)
    found = _ago(text, now) or _exact(text, now)
    if found is None:
        try:
            found, said = read_moment(text, now, past=True)
        except AskedWrongly as fault:
            raise AskedWrongly(f"--at: {fault}") from None
        if said:
            complain(f"note: {said}")
    return moment_of(found)


def read_entry(text: str, batch: int | None) -> tuple[int | None, int]:
    """Return batch and entry of ``7``, ``12.7`` or ``#7``; the batch is None where none is said."""
    first, point, last = text.strip().removeprefix("#").partition(".")
    parts = (first, last) if point else (first,)
    if not all(part.isascii() and part.isdigit() and len(part) < 10 for part in parts):
        raise AskedWrongly(f'"{text[:20]}" names no entry; say its number, as in 7 or 12.7')
    if not point:
        return batch, int(first)
    if batch is not None and batch != int(first):
        raise AskedWrongly(f"{text} is of batch {int(first)}, and --batch says {batch}")
    return int(first), int(last)


def batch_in_hand(db: sqlite3.Connection, batch: int | None, *, or_latest: bool = False) -> int:
    """Return the batch that is meant.

    Args:
        db: the book.
        batch: as given to ``--batch``.
        or_latest: whether the latest will do where none is in hand.

    Raises:
        AskedWrongly: none is in hand.
    """
    from tarebook.records.find import in_hand, latest

    if batch is not None:
        return batch
    found = in_hand(db)
    if found:
        return found[0]
    last = latest(db)
    if last is None:
        raise AskedWrongly("no batch is started; tarebook batch start RECIPE --meat 6lb starts one")
    if or_latest:
        return last
    raise AskedWrongly(
        f"no batch is in hand: batch {last} is finished. --batch {last} writes in it all the same; "
        "tarebook batch start RECIPE --meat 6lb starts the next"
    )


def name_asked(db: sqlite3.Connection, which: str | None) -> str | None:
    """Return the name in the book of a recipe that was asked for.

    Args:
        db: the book.
        which: a name as the book shows it, or the path of a recipe; None where none is asked for.
    """
    from tarebook.records.names import name_in_book, recipe_key

    if which is None:
        return None
    if not which.strip():
        raise AskedWrongly("no recipe is named")
    title = _title_of(which) if which.endswith(".toml") else None
    return recipe_key(which) if title is None else name_in_book(db, which, title).name


def weighed_batch(batch: Batch) -> Worksheet:
    """Return a batch as a worksheet, for the scoops and the own figures of this kitchen."""
    from tarebook.cli.work import drawer_name, of_house, own_kitchen
    from tarebook.lessons.weighed import weighed

    house = own_kitchen()
    done = weighed(
        batch,
        drawer=drawer_name(None, house),
        a_day=None if house is None else house.a_day,
    )
    return done._replace(case=done.case._replace(**of_house(house)))


def asked_of(entry: Entry, before: Sequence[Entry], found: Batch) -> list[str]:
    """Return what to ask of an entry, and whether the weights of its batch can all be true.

    Args:
        entry: as it was just written.
        before: the entries of its batch without it.
        found: its batch with it.
    """
    from tarebook.records.entry import Kind
    from tarebook.records.questions import questions
    from tarebook.records.standing import standing_of

    asked = list(questions(entry, standing_of(before), standing_of(found.entries)))
    if entry.kind is Kind.WEIGH:
        asked += _new_fault(found, found._replace(entries=tuple(before)))
    return asked


def _new_fault(found: Batch, before: Batch) -> Iterator[str]:
    """Yield why the weights of a batch cannot all be true, unless that was so before."""
    from tarebook.lessons.weighed import ENTRIES

    fault = _weights_fault(found)
    if fault and fault.partition(ENTRIES)[0] != _weights_fault(before).partition(ENTRIES)[0]:
        yield fault


def _weights_fault(batch: Batch) -> str:
    """Return why the weights of a batch cannot all be true, or nothing; its page tells the rest."""
    from tarebook.findings import QuantityError, TarebookError
    from tarebook.records.standing import standing_of

    if not {"soaked", "leftover", "finished"}.intersection(standing_of(batch.entries).weights):
        return ""
    try:
        weighed_batch(batch)
    except QuantityError as fault:
        return str(fault)
    except TarebookError:
        return ""
    return ""


def tell(
    entry: Entry,
    title: str,
    *,
    as_json: bool,
    about: Entry | None = None,
    asked: Sequence[str] = (),
) -> None:
    """Tell that an entry is kept, and ask what looks like a slip.

    Args:
        entry: as it stands in the book.
        title: what its batch is called.
        as_json: whether to print data.
        about: the entry that it strikes, replaces or settles.
        asked: questions on it.
    """
    from tarebook.cards.batch_page import entry_data
    from tarebook.cards.batch_words import entry_line
    from tarebook.cli.talk import complain, show, show_data
    from tarebook.records.entry import OF_A_NOTE

    if as_json:
        show_data({"title": title, **entry_data(entry), "questions": list(asked)})
        return
    show(entry_line(entry, title, about))
    name = f"{entry.batch}.{entry.number}"
    for question in asked:
        complain(f"note: {question}")
    if asked and entry.kind in OF_A_NOTE:
        complain(f"kept as written; tarebook batch undo {name} takes it back")
    elif asked:
        complain(f"kept as written; tarebook batch edit {name} ... or batch undo puts it right")


def print_recipe(text: str) -> None:
    """Print a recipe as it was; to the letter, but for marks that would steer a terminal."""
    import sys

    from tarebook.cards.lines import clean
    from tarebook.cli.talk import write

    if sys.stdout is not None and sys.stdout.isatty():
        text = "\n".join(clean(line) for line in text.splitlines()) + "\n"
    write(text)


def words_of(words: Sequence[str]) -> str:
    """Return what was typed as one text."""
    return " ".join(words).strip()


def _title_of(path: str) -> str | None:
    """Return the title of a recipe file, or None where there is none, or no recipe in it."""
    from tarebook.findings import TarebookError
    from tarebook.recipe.load import load_recipe

    try:
        return load_recipe(path)[0].title
    except TarebookError:
        return None


def _ago(text: str, now: datetime) -> datetime | None:
    from datetime import UTC, timedelta

    from tarebook.cli.talk import read_number

    body = text.strip().lower()
    if not body.endswith(_AGO) or len(body) > 40:
        return None
    number = body.removesuffix(_AGO).strip()
    unit = number.lstrip("0123456789./ ½¼¾⅓⅔").strip()
    if unit not in _AGO_MIN:
        raise AskedWrongly(f'--at: "{body}" is no time ago; write 20 min ago or 2 hours ago')
    minutes = read_number(number.removesuffix(unit), "--at") * _AGO_MIN[unit]
    if not 0 <= minutes <= _MOST_AGO_MIN:
        raise AskedWrongly(f'--at: "{body}" is too long ago; write the date')
    back = now.astimezone(UTC) - timedelta(minutes=float(minutes))
    return back.astimezone(now.tzinfo)


def _exact(text: str, now: datetime) -> datetime | None:
    """Return a moment that is written with its own offset from UTC."""
    from datetime import datetime

    try:
        found = datetime.fromisoformat(text.strip())
    except ValueError:
        return None
    return found if found.tzinfo is not None else None
