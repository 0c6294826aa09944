"""A book carried from one folder to another: exactly, all or nothing, and nothing twice."""

from __future__ import annotations

import random
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tarebook.findings import AskedWrongly, RecordFaulty
from tarebook.records.as_csv import to_csv
from tarebook.records.as_toml import to_toml
from tarebook.records.backup import check
from tarebook.records.bring import Brought, bring, read_file
from tarebook.records.entry import (
    MAY_BE_ZERO,
    MEASURED,
    NEXT_TIME,
    OF_A_NOTE,
    WHAT,
    Batch,
    Draft,
    Entry,
    Kind,
)
from tarebook.records.find import open_notes, read_batch, rows, wordings
from tarebook.records.keep import add_entry, digest_of, keep_wording, start_batch
from tarebook.records.moment import Moment
from tarebook.records.store import reading, writing
from tarebook.records.values import read_temperature, read_weight

Start = Callable[..., Entry]
Add = Callable[..., Entry]
FORMS = {"toml": to_toml, "csv": to_csv}
EVERY_FORM = pytest.mark.parametrize("form", FORMS)

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=30) | st.sampled_from(
    ["=1+1", "+1", "-1", "@x", "\t=1", "\r", "\n=1", "'=1", "''", "'", '"""', 'a"', "\\", "＝1",
     "\x1b[2J", "\x00", "\u202e", "a\r\nb", ",;\t", "\ufeff", 'x""""""', '\\"', " "]
)  # fmt: skip
MOMENTS = st.builds(Moment, st.integers(0, 4_000_000_000), st.integers(-840, 840))
WEIGHTS = st.sampled_from(
    ["2 lb 3 oz", "992 g", "1/3 lb", "3 lb less 410 g", "2 lb + 14 oz", "2½ lb", "0.1 oz"]
)
DEGREES = st.sampled_from(["160 F", "71.3 C", "155°F", "68.33 C"])


@st.composite
def drafts(draw: st.DrawFn, before: list[Draft]) -> Draft:
    """Return any entry that may follow these."""
    notes = [n for n, one in enumerate(before, 1) if one.what == NEXT_TIME]
    kinds = [kind for kind in Kind if kind is not Kind.START and (notes or kind not in OF_A_NOTE)]
    kind = draw(st.sampled_from(kinds if before else [Kind.START]))
    what = draw(st.sampled_from(WHAT.get(kind, ("",))))
    same = [n for n, one in enumerate(before, 1) if one.kind is kind]
    about = None
    if kind is Kind.STRIKE:
        about = draw(st.integers(1, len(before)))
    elif kind in OF_A_NOTE:
        about = draw(st.sampled_from(notes))
    elif same and draw(st.booleans()):
        about = draw(st.sampled_from(same))
    written, value = "", None
    if kind in MEASURED or (kind is Kind.START and draw(st.booleans())):
        zero = what in MAY_BE_ZERO and draw(st.booleans())
        written = draw(DEGREES if kind is Kind.TEMP else st.just("0 g") if zero else WEIGHTS)
        value = read_temperature(written) if kind is Kind.TEMP else read_weight(written, zero=zero)
    note = draw(TEXTS)
    return Draft(
        kind=kind,
        happened=draw(MOMENTS),
        recorded=draw(MOMENTS),
        what=what,
        written=written,
        value=value,
        note=note if note.strip() or kind is not Kind.NOTE else "less pepper",
        about=about,
        wording=digest_of("") if kind is Kind.TAKEN and draw(st.booleans()) else None,
    )


@st.composite
def told(draw: st.DrawFn) -> list[tuple[str, list[Draft]]]:
    """Return batches as they might be told: the recipe's text, and the entries."""
    batches = []
    for _ in range(draw(st.integers(0, 3))):
        entries: list[Draft] = []
        for _ in range(draw(st.integers(1, 6))):
            entries.append(draw(drafts(entries)))
        batches.append((draw(TEXTS), entries))
    return batches


def fill(file: Path, batches: list[tuple[str, list[Draft]]]) -> None:
    """Write batches in a book; entries that the book itself would refuse are passed over."""
    for text, entries in batches:
        with writing(file) as db:
            keep_wording(db, "")
            entry = start_batch(db, recipe="réno", title=text, recipe_text=text, draft=entries[0])
        for draft in entries[1:]:
            try:
                with writing(file) as db:
                    add_entry(db, entry.batch, draft)
            except AskedWrongly:
                return


def exported(file: Path, form: str) -> str:
    """Return a book as text."""
    with reading(file) as db:
        found = [read_batch(db, row.number) for row in reversed(rows(db))]
        digests = {one.wording for one in found}
        digests |= {entry.wording for one in found for entry in one.entries if entry.wording}
        return "".join(FORMS[form](found, wordings(db, sorted(digests))))


def brought(file: Path, text: str, name: str) -> Brought:
    """Take a text into a book."""
    carrier = read_file(text.encode("utf-8"), file=name)
    with writing(file) as db:
        return bring(db, carrier)


@given(told())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_there_and_back(batches: list[tuple[str, list[Draft]]]) -> None:
    """Either form, taken into an empty book, exports the same to the letter; a second time too."""
    with tempfile.TemporaryDirectory() as folder:
        here = Path(folder) / "here.sqlite3"
        fill(here, batches)
        texts = {form: exported(here, form) for form in FORMS}
        for form, text in texts.items():
            there = Path(folder) / f"{form}.sqlite3"
            first = brought(there, text, f"book.{form}")
            second = brought(there, text, f"book.{form}")
            assert texts == {one: exported(there, one) for one in FORMS}
            assert (first.entries, first.entries, 0) == (
                first.new_entries, second.entries, second.new_entries
            )  # fmt: skip


@pytest.fixture
def away(tmp_path: Path) -> Path:
    """Another book."""
    return tmp_path / "away.sqlite3"


@EVERY_FORM
def test_sums_and_notes_come_along(
    form: str, start: Start, add: Add, away: Path, own_home: Path
) -> None:
    """What is reckoned of a batch is there in the other book as well."""
    start()
    add("weigh", what="finished", value=900)
    add("note", what="next-time", note="less pepper")
    done = brought(away, exported(own_home / "book.sqlite3", form), f"book.{form}")

    assert Brought(1, 1, 3, 3) == done
    with reading(away) as db:
        assert 0.36 == rows(db)[0].yield_fraction
        assert ["less pepper"] == [note.note for note, _ in open_notes(db, "lake")]


@EVERY_FORM
def test_two_books_become_one(
    form: str, start: Start, add: Add, away: Path, own_home: Path
) -> None:
    """Entries made in two kitchens stand together; each keeps what it corrects."""
    start()
    add("weigh", what="finished", value=9000)
    home = own_home / "book.sqlite3"
    brought(away, exported(home, form), f"book.{form}")
    at = Moment(1_795_800_000, 0)
    with writing(away) as db:
        add_entry(db, 1, Draft(kind=Kind.NOTE, happened=at, recorded=at, note="from the cabin"))
        add_entry(db, 1, Draft(kind=Kind.STRIKE, happened=at, recorded=at, about=2))
    add("turn")
    done = brought(home, exported(away, form), f"book.{form}")

    assert Brought(1, 0, 4, 2) == done
    with reading() as db:
        batch = read_batch(db, 1)
        assert rows(db)[0].finished_g is None
    assert ["start", "weigh", "turn", "note", "strike"] == [one.kind for one in batch.entries]
    assert 2 == batch.entries[-1].about
    assert () == check().faults


@EVERY_FORM
def test_a_number_that_is_taken(form: str, start: Start, away: Path, own_home: Path) -> None:
    """A batch whose number is taken gets the next that neither book has; the others keep theirs."""
    start("lake")
    start("bison")
    text = exported(own_home / "book.sqlite3", form)
    at = Moment(1_795_800_000, 0)
    with writing(away) as db:
        draft = Draft(kind=Kind.START, happened=at, recorded=at, what="meat")
        start_batch(db, recipe="elk", title="Elk", recipe_text="", draft=draft)
    done = brought(away, text, f"book.{form}")

    assert ((1, 3),) == done.renumbered
    with reading(away) as db:
        assert [(3, "lake"), (2, "bison"), (1, "elk")] == [
            (row.number, row.recipe) for row in rows(db)
        ]
    assert () == brought(away, text, f"book.{form}").renumbered


def test_what_stands_otherwise_here(start: Start, add: Add, own_home: Path) -> None:
    """An entry that somebody changed in the file is refused with its line; nothing is taken in."""
    start()
    add("note", note="less pepper")
    home = own_home / "book.sqlite3"
    text = exported(home, "toml")
    extra = text.replace("less pepper", "more pepper").replace('"lake"', '"sea"')
    with pytest.raises(RecordFaulty) as caught:
        brought(home, extra, "book.toml")

    said = [str(one) for one in caught.value.findings]
    assert 2 == len(said)
    assert said[0].startswith("book.toml:") and "batch 1 of the book has another recipe" in said[0]
    assert "stands in the book otherwise, as 1.2" in said[1]
    line = int(said[1].split(":")[1])
    assert "[[batch.entry]]" == extra.splitlines()[line - 1]
    assert text == exported(home, "toml")


def test_all_or_nothing(start: Start, away: Path, own_home: Path) -> None:
    """One fault anywhere, and not even what is right is taken in."""
    for _ in range(3):
        start()
    text = exported(own_home / "book.sqlite3", "csv").replace("2500 g", "2501 g", 1)
    with pytest.raises(RecordFaulty) as caught:
        brought(away, text, "book.csv")

    assert ["book.csv:2: error: \"2501 g\" is 2501, and the value says 2500 (value); put right "
            "whichever was changed"] == [str(one) for one in caught.value.findings]  # fmt: skip
    assert not away.exists()


def test_an_entry_of_two_batches(start: Start, away: Path, own_home: Path) -> None:
    """An entry that the book has in another batch is refused; nothing is taken in."""
    first = start()
    text = exported(own_home / "book.sqlite3", "toml")
    with reading() as db:
        uid = read_batch(db, 1).uid
    brought(away, text, "book.toml")
    with pytest.raises(RecordFaulty, match="is that of another batch's entry"):
        brought(away, text.replace(uid, "0" * 16), "book.toml")
    with reading(away) as db:
        assert [1] == [row.number for row in rows(db)]
        assert first.uid == read_batch(db, 1).entries[0].uid


@pytest.mark.parametrize(
    ("data", "name", "says"),
    [
        (b"", "x.csv", "x.csv:1: error: the file is empty"),
        (b"", "x.toml", "x.toml:1: error: this is no exported book"),
        (b"\xff\xfe", "x.csv", "x.csv:1: error: that is not UTF-8 text"),
        (b"a\nb\n\xff", "x", "x:3: error: that is not UTF-8 text"),
        (b"SQLite format 3\0abc", "kept.sqlite3", "tarebook batch restore takes it"),
        (b"tarebook-book = 9", "x.toml", "x.toml:1: error: written by a newer tarebook"),
        (b"tarebook-book = 1\n[batch]\n", "x.toml", "x.toml:2: error: that is no list of tables"),
        (b"tarebook-book = 1\nbatch = [1]\n", "x.toml", "x.toml:2: error: that is no table"),
        (b"tarebook-book = 1\n[[song]]\n", "x.toml", "x.toml:2: error: that is no part of a book"),
        (b"tarebook-book = 1\nx = \n", "x.toml", "x.toml:2: error: "),
        (b"tarebook-book = 1\nx = " + b"[" * 5000, "x.toml", "x.toml:2: error: "),
        (b"batch;recipe\n", "x.csv", "x.csv:1: error: the cells are parted by semicolons"),
        (b"batch,song\n", "x.csv", 'x.csv:1: error: "song" is no column of a book'),
    ],
)
def test_files_that_are_something_else(data: bytes, name: str, says: str) -> None:
    """Whatever is handed in: a fault with its line and no traceback."""
    with pytest.raises(RecordFaulty) as caught:
        read_file(data, file=name)

    assert any(says in str(one) for one in caught.value.findings), caught.value.findings


def test_the_form_is_seen(start: Start, own_home: Path) -> None:
    """Without a name that tells, the first line does."""
    start()
    for form in FORMS:
        text = exported(own_home / "book.sqlite3", form)
        assert 1 == len(read_file(text.encode(), file="<standard input>").bundle.batches)


def test_as_spreadsheets_save_it(start: Start, own_home: Path, away: Path) -> None:
    """Columns in another order, a byte order mark and empty lines do no harm."""
    import csv
    import io

    start()
    text = exported(own_home / "book.sqlite3", "csv")
    table = list(csv.reader(io.StringIO(text, newline="")))
    out = io.StringIO()
    csv.writer(out, quoting=csv.QUOTE_ALL).writerows([*([*row[::-1]] for row in table), []])

    done = brought(away, "\ufeff" + out.getvalue(), "book.csv")
    assert Brought(1, 1, 1, 1) == done


@EVERY_FORM
def test_noise_is_told(form: str, start: Start, add: Add, own_home: Path) -> None:
    """However a file was mangled on its way: it is taken or its faults are told, never a crash."""
    start()
    add("weigh", what="finished", value=900)
    add("note", what="next-time", note="=less pepper")
    add("strike", about=2)
    data = exported(own_home / "book.sqlite3", form).encode()
    chance = random.Random(20_261_125)
    taken = 0
    for _ in range(400):
        text = bytearray(data)
        for _ in range(chance.randint(1, 4)):
            here = chance.randrange(len(text))
            there = min(len(text), here + chance.choice((0, 1, 1, 5, 200)))
            text[here:there] = chance.choice(
                (b"", b"0", b'"', b"\n", b",", b"\xff", b"[", b"x" * 9)
            )
        try:
            read_file(bytes(text), file=f"book.{form}")
            taken += 1
        except RecordFaulty as fault:
            assert all(one.place.file == f"book.{form}" for one in fault.findings)
            assert len(fault.findings) > 0
    assert taken < 400


def test_a_batch_with_gaps(start: Start, add: Add, away: Path, own_home: Path) -> None:
    """Entries may be left out of the file; what is left keeps its numbers and stays whole."""
    start()
    add("turn")
    add("note", note="x")
    with reading() as db:
        whole = read_batch(db, 1)
    some = Batch(*whole[:6], entries=(whole.entries[0], whole.entries[2]))
    text = "".join(to_csv([some], {whole.wording: whole.recipe_text}))
    brought(away, text, "book.csv")
    with reading(away) as db:
        assert [1, 3] == [one.number for one in read_batch(db, 1).entries]
    assert Brought(1, 0, 3, 1) == brought(
        away, exported(own_home / "book.sqlite3", "csv"), "book.csv"
    )


def test_what_is_no_toml_is_told_with_its_line() -> None:
    """A book in another encoding, or cut short, gets a fault; its keys are not looked for."""
    for data in (b"tarebook-book = 1\n\0b\0 = 2\n", b"tarebook-book\n[[batch]\nnumber = 1\n"):
        with pytest.raises(RecordFaulty) as caught:
            read_file(data, file="book.toml")
        assert "book.toml:" in str(caught.value)
