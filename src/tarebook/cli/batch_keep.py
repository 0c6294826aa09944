"""tarebook batch check, export, import, backup, restore: the book as a whole."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.records.entry import Batch

_FAULT = 1
_MOST_BYTES = 1_000_000_000
_FORMS = ("toml", "csv")


def check(
    mend: Annotated[
        bool, typer.Option("--mend", help="Reckon anew what can be, where only that is wrong.")
    ] = False,
    as_json: asking.AsJson = False,
) -> None:
    """Look the whole book through for faults.

    Example: tarebook batch check
    """
    from tarebook.cards.batch_words import counted
    from tarebook.cli.talk import show_data
    from tarebook.records import backup as backups
    from tarebook.records.place import book_file

    found = backups.check(mend=mend)
    if as_json:
        show_data({"file": str(book_file()), **found._asdict(), "faults": list(found.faults)})
    else:
        counts = (
            f"{counted(found.batches, 'batch', 'batches')}, "
            f"{counted(found.entries, 'entry', 'entries')}, "
            f"{counted(found.wordings, 'wording', 'wordings')} of recipes"
        )
        for fault in found.faults:
            _say(f"error: {fault}")
        _say(f"{counts}: {'faulty' if found.faults else 'no faults'}.")
        if found.mendable:
            _say("tarebook batch check --mend reckons it anew; no entry is touched.")
        elif found.faults:
            _say("tarebook batch restore FILE brings back a backup.")
    if found.faults:
        raise typer.Exit(_FAULT)


def export(
    as_: Annotated[
        str, typer.Option("--as", metavar="FORM", help="toml, or csv for a spreadsheet.")
    ] = "",
    out: Annotated[
        str | None,
        typer.Option("-o", "--out", metavar="FILE", help="Write it there; - for standard output."),
    ] = None,
    batch: Annotated[
        list[int] | None,
        typer.Option("--batch", metavar="N", help="Only this batch; may be given again."),
    ] = None,
    as_json: asking.AsJson = False,
) -> None:
    """Write the book out as text.

    Every entry and every recipe of it, so that import makes the same book of it again.

    Example: tarebook batch export -o book.toml
    """
    from tarebook.cards.batch_words import counted
    from tarebook.cli.talk import show_data, write_document
    from tarebook.files import named, write_whole

    if as_json and (as_ or out):
        raise AskedWrongly("--json goes to standard output alone, without --as and -o")
    form = _form(as_, out)
    found, wordings = _all_of(batch)
    if as_json:
        from tarebook.cards.batch_page import batch_data

        show_data([batch_data(one) for one in found])
        return
    if form == "csv":
        from tarebook.records.as_csv import to_csv

        text = "".join(to_csv(found, wordings))
    else:
        from tarebook.records.as_toml import to_toml

        text = "".join(to_toml(found, wordings))
    if out is None or out == "-":
        write_document(text)
        return
    there = Path(out).exists()
    write_whole(Path(out), text.encode("utf-8"))
    _say(
        f"{named(Path(out))} is written{' over' if there else ''}: "
        f"{counted(len(found), 'batch', 'batches')}."
    )


def import_(
    file: Annotated[
        str,
        typer.Argument(metavar="FILE", help="What export wrote; - for standard input."),
    ],
    as_json: asking.AsJson = False,
) -> None:
    """Take in what was exported.

    All or nothing; what the book has already is passed over.

    Example: tarebook batch import book.toml
    """
    from tarebook.cards.batch_words import counted
    from tarebook.cli.talk import complain, show_data
    from tarebook.files import read_bytes
    from tarebook.records.bring import bring, read_file
    from tarebook.records.names import strangers
    from tarebook.records.store import writing

    name = "<standard input>" if file == "-" else file
    carrier = read_file(read_bytes(file, most=_MOST_BYTES, what="exported book"), file=name)
    with writing() as db:
        shared = strangers(db, {(one.recipe, one.title) for one in carrier.bundle.batches})
        done = bring(db, carrier)
    for name, new, old in shared:
        complain(
            f'note: "{new}" goes by {name}, as "{old}" does here: their notes, and what they '
            "teach, are taken together"
        )
    if as_json:
        show_data({**done._asdict(), "renumbered": [list(pair) for pair in done.renumbered]})
        return
    known = done.entries - done.new_entries
    _say(
        f"{counted(done.new_batches, 'new batch', 'new batches')}, "
        f"{counted(done.new_entries, 'new entry', 'new entries')}; "
        f"{counted(known, 'entry', 'entries')} here already."
    )
    for had, got in done.renumbered:
        _say(f"Its batch {had} is batch {got} here.")


def backup(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="Where to; a folder gets book.sqlite3.")
    ],
    as_json: asking.AsJson = False,
) -> None:
    """Copy the book, and read the copy through.

    Example: tarebook batch backup kept.sqlite3
    """
    from tarebook.cli.talk import show_data
    from tarebook.files import named
    from tarebook.records import backup as backups

    written = backups.backup(file)
    if as_json:
        show_data({"file": str(written)})
    else:
        _say(f"{named(written)} is written and read through.")


def restore(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="A backup of the book.")],
    as_json: asking.AsJson = False,
) -> None:
    """Make a backup the book again.

    The book as it was is kept beside it.

    Example: tarebook batch restore kept.sqlite3
    """
    from tarebook.cards.batch_words import counted
    from tarebook.cli.talk import show_data
    from tarebook.files import named
    from tarebook.records import backup as backups

    done = backups.restore(file)
    if as_json:
        kept = None if done.kept is None else str(done.kept)
        show_data({"batches": done.batches, "batches_before": done.before, "kept": kept})
        return
    _say(f"The book has {counted(done.batches, 'batch', 'batches')} now.")
    if done.kept is not None:
        had = "" if done.before is None else f", with {counted(done.before, 'batch', 'batches')},"
        _say(f"The book as it was{had} lies in {named(done.kept)}.")


def _say(text: str) -> None:
    from tarebook.cards.lines import Line, wrap
    from tarebook.cli.talk import show

    show(Line(one) for one in wrap(text, 80))


def _form(said: str, out: str | None) -> str:
    """Return the form that is asked for, or that the file's name tells."""
    if said:
        form = said.strip().lower()
        if form not in _FORMS:
            raise AskedWrongly(f'--as: "{said[:20]}" is no form of the book; say toml or csv')
        return form
    return "csv" if out is not None and out.lower().endswith(".csv") else "toml"


def _all_of(numbers: list[int] | None) -> tuple[tuple[Batch, ...], dict[str, str]]:
    """Return batches, the oldest first, and all the recipes they need."""
    from tarebook.records.find import read_batch, rows, wordings
    from tarebook.records.store import reading

    with reading() as db:
        wanted = sorted({*numbers} if numbers else {row.number for row in rows(db)})
        found = tuple(read_batch(db, number) for number in wanted)
        digests = {one.wording for one in found}
        digests |= {entry.wording for one in found for entry in one.entries if entry.wording}
        return found, wordings(db, sorted(digests))
