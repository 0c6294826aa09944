"""tarebook batch: a day in the kitchen, and what goes wrong in it."""

from __future__ import annotations

import json
import sqlite3
import tracemalloc
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tarebook.cli import batch_asking
from tarebook.cli.batch import COMMANDS, group
from tarebook.cli.batch_look import _packed
from tarebook.findings import AskedWrongly
from tarebook.where import folder

Tarebook = Callable[..., Any]
Batch = Callable[..., Any]
LAKE = ZoneInfo("America/Chicago")
ESCAPE = "\x1b"


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """The clock of a kitchen by a northern lake, held still."""

    def show(at: str) -> None:
        moment = datetime.fromisoformat(at).replace(tzinfo=LAKE)
        monkeypatch.setattr(batch_asking, "clock_now", lambda: moment)

    show("2026-11-25 18:00")
    return show


@pytest.fixture
def batch(tarebook: Tarebook, clock: object) -> Batch:
    """Run a command of the book, by its words in one line or one by one."""

    def ask(line: str, *more: str) -> Any:
        return tarebook("batch", *line.split(), *more)

    return ask


@pytest.fixture
def started(batch: Batch) -> Batch:
    """A batch is in hand."""
    assert 0 == batch("start juniper-venison --meat 6lb").status
    return batch


def told(done: Any) -> str:
    """Return what a command printed; it must have ended well."""
    assert 0 == done.status, done.err
    return str(done.out)


def page(batch: Batch) -> str:
    """Return the page of the batch in hand."""
    return told(batch("show"))


def test_a_day_in_the_kitchen(batch: Batch, clock: Callable[[str], None]) -> None:
    """From start to finish, each command tells what it wrote, and the page has all of it."""
    day = [
        ("2026-11-25 18:00", "start juniper-venison --meat 6lb",
         "1.1  started, meat 6lb (2,722 g), Wed 25 Nov 18:00, Juniper venison strips\n"),
        ("2026-11-25 18:05", "weigh raw 6 lb 1 oz", "1.2  raw 6 lb 1 oz (2,750 g), Wed 25 Nov"),
        ("2026-11-25 18:10", "soak", "1.3  into the soak, Wed 25 Nov 18:10"),
        ("2026-11-25 21:00", "turn", "1.4  turned, Wed 25 Nov 21:00"),
        ("2026-11-26 06:10", "soak out", "1.5  out of the soak, Thu 26 Nov 06:10"),
        ("2026-11-26 06:12", "weigh 6lb9oz soaked", "1.6  soaked 6lb9oz (2,977 g), Thu 26 Nov"),
        ("2026-11-26 06:15", "weigh leftover 510 g less 200 g", "1.7  leftover 510 g less 200 g"),
        ("2026-11-26 06:16", "weigh towels 0 g", "1.8  towels 0 g, Thu 26 Nov 06:16"),
        ("2026-11-26 06:20", "heat", "1.9  into the heat"),
        ("2026-11-26 06:40", "temp 160 F", "1.10  meat at 160 F (71 °C)"),
        ("2026-11-26 06:45", "heat out", "1.11  out of the heat"),
        ("2026-11-26 07:00", "dry in --note", "1.12  into the dryer; five trays"),
        ("2026-11-26 07:30", "temp 68 C --where air", "1.13  air at 68 C (154 °F)"),
        ("2026-11-26 13:20", "dry out", "1.14  out of the dryer"),
        ("2026-11-26 13:30", "weigh finished 2 lb 3 oz", "1.15  finished 2 lb 3 oz (992 g)"),
        ("2026-11-26 13:40", "note less pepper --next-time", "1.16  note for next time: less"),
        ("2026-11-26 13:41", "finish", "1.17  batch finished, Thu 26 Nov 13:41"),
        ("2026-11-26 14:00", "weigh packed 35 oz", "1.18  packed 35 oz (992 g)"),
    ]  # fmt: skip
    for at, line, says in day:
        clock(at)
        done = batch(line, *(["five trays"] if line.endswith("--note") else []))
        assert (0, "") == (done.status, done.err)
        assert done.out.startswith(says), done.out

    assert PAGE == page(batch)


PAGE = """\
Batch 1: Juniper venison strips
juniper-venison; started Wed 25 Nov 2026 18:00; finished Thu 26 Nov 2026 13:41

              Wed 25 Nov 2026
     1  18:00 started, meat 6lb (2,722 g)
     2  18:05 raw 6 lb 1 oz (2,750 g)
     3  18:10 into the soak
     4  21:00 turned
              Thu 26 Nov 2026
     5  06:10 out of the soak
     6  06:12 soaked 6lb9oz (2,977 g)
     7  06:15 leftover 510 g less 200 g (310 g)
     8  06:16 towels 0 g
     9  06:20 into the heat
    10  06:40 meat at 160 F (71 °C)
    11  06:45 out of the heat
    12  07:00 into the dryer; five trays
    13  07:30 air at 68 C (154 °F)
    14  13:20 out of the dryer
    15  13:30 finished 2 lb 3 oz (992 g)
    16  13:40 note for next time: less pepper
    17  13:41 batch finished
    18  14:00 packed 35 oz (992 g)

What was weighed
raw         6 lb 1 oz                      2,750 g
soaked      6lb9oz                         2,977 g    108 % of raw
leftover    510 g less 200 g                 310 g     11 % of raw
towels      0 g                                0 g      0 % of raw
finished    2 lb 3 oz                        992 g     36 % of raw
packed      35 oz                            992 g     36 % of raw
Soaked 12 h; heated 25 min; dried 6 h 20 min.

For next time
1.16    less pepper (Thu 26 Nov 2026)

In one finished ounce, a home estimate (as weighed)
sodium          283 mg (225-355 mg)
total sugars    1.5 g (1.1-1.8 g)
36 % of the raw meat is left.
"""


def test_a_mistake_is_corrected_and_stays(started: Batch) -> None:
    """Struck and replaced entries are on the page, marked; only what stands counts."""
    started("weigh finished 22 lb 3 oz")
    out = told(started("edit 2 2 lb 3 oz"))
    assert out.startswith("1.3  finished 2 lb 3 oz (992 g), in place of 2 (finished 22 lb 3 oz")
    started("note wrong batch")
    out = told(started("undo --note", "meant for the elk"))
    assert out.startswith("1.5  strikes entry 4 (note: wrong batch); meant for the elk, Wed 25 Nov")
    assert "tarebook batch undo 1.5 takes this back" in out

    shown = page(started)
    assert "x    2  18:00 finished 22 lb 3 oz (10,064 g) (replaced by 3)" in shown
    assert "     3  18:00 finished 2 lb 3 oz (992 g) (in place of 2)" in shown
    assert "x    4  18:00 note: wrong batch (struck by 5)" in shown
    assert "finished    2 lb 3 oz                        992 g     36 % of raw" in shown
    data = json.loads(told(started("show --json")))
    assert [None, 3, None, 5, None] == [one["ended_by"] for one in data["entries"]]
    assert 0.365 == round(data["yield_fraction"], 3)


def test_an_undo_is_undone(started: Batch) -> None:
    """By its number an undo is taken back."""
    started("weigh finished 2 lb 3 oz")
    started("undo")
    assert "finished    " not in page(started)
    assert told(started("undo 1.3")).startswith("1.4  strikes entry 3 (strikes entry 2)")
    assert "finished    2 lb 3 oz" in page(started)


def test_the_wrong_recipe(started: Batch) -> None:
    """A batch started by mistake is struck as a whole, can be brought back, and is in no hand."""
    assert told(started("undo")).startswith("1.2  strikes entry 1 (started, meat 6lb")
    assert "tarebook batch start RECIPE" in started("turn").err
    assert "tarebook batch undo 1.2 brings it back" in started("turn --batch 1").err
    assert "    1  struck" in told(started("list"))
    assert "struck as a whole" in told(started("show 1"))
    started("undo 1.2")
    assert "1.4  turned" in told(started("turn"))


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("weigh 6lb", "say what was weighed: raw, soaked, leftover, towels, finished or packed"),
        ("weigh rwa 6lb", 'did you mean "raw"?'),
        ("weigh raw", "say what it weighs, as in  tarebook batch weigh raw 2 lb"),
        ("weigh raw 6", 'raw: weight "6" has no unit; write 6 lb or 6 kg'),
        ("weigh raw 1 cup", "is no weight"),
        ("weigh raw 0 g", "is zero"),
        ("weigh raw 6 lb less 7 lb", "nothing is left without the bowl"),
        ("temp 160", "names no scale; write 155 F or 68 C"),
        ("temp 160 F --where oven", '--where: "oven" is no place; say meat or air'),
        ("soak over", '"over": say in or out'),
        ("turn --at soon", '--at: "soon" does not say the time of day'),
        ("turn --at 3_moons_ago", "--at:"),
        ("turn --batch 7", "there is no batch 7; the last is 1"),
        ("turn --batch 99999999999999999999", "there is no batch"),
        ("edit 1.9 2 lb", "batch 1 has no entry 9; its last is 1"),
        ("edit 1", "say what to change"),
        ("edit 1 --what raw", "is no temperature, nor is it of a thing"),
        ("edit one 2 lb", '"one" names no entry; say its number, as in 7 or 12.7'),
        ("undo 2.1", "there is no batch 2"),
        ("undo 2.1 --batch 1", "2.1 is of batch 2, and --batch says 1"),
        ("drop 1", "entry 1.1 is no note for next time"),
        ("show 1 --batch 2", "1 and --batch 2 are two batches"),
        ("show 5", "there is no batch 5; the last is 1"),
        ("export --as xml", 'is no form of the book; say toml or csv'),
        ("export --json --as csv", "--json goes to standard output alone"),
        ("start juniper-venison --meat much", "--meat:"),
    ],
)  # fmt: skip
def test_slips_of_the_tongue(line: str, says: str, started: Batch) -> None:
    """What cannot be meant is refused, with what to say instead; nothing is written."""
    status, out, err = started(line)

    assert (2, "") == (status, out)
    assert says in err and 1 == len(err.splitlines())
    assert 1 == len(json.loads(told(started("show --json")))["entries"])


def test_an_empty_note(started: Batch) -> None:
    """A note without words is none."""
    assert "the note has no words" in started("note", " ").err


def test_what_looks_like_a_slip_is_kept_and_asked_about(started: Batch) -> None:
    """Nothing is refused that could be, and nothing is changed."""
    status, out, err = started("weigh finished 7 lb")

    assert (0, "note: finished is heavier than raw was\nkept as written; "
            "tarebook batch edit 1.2 ... or batch undo puts it right\n"
    ) == (status, err)  # fmt: skip
    assert out.startswith("1.2  finished 7 lb (3,175 g)")
    data = json.loads(told(started("weigh finished 8 lb --json")))
    assert ["finished is heavier than raw was"] == data["questions"][:1]


def test_the_clock_is_the_machines(tarebook: Tarebook, monkeypatch: pytest.MonkeyPatch) -> None:
    """What a build shell says of the time is not written down as when something happened."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "315532800")
    before = datetime.now(LAKE).replace(microsecond=0)
    data = json.loads(told(tarebook("batch", "start", "juniper-venison", "--json")))

    assert before <= datetime.fromisoformat(data["happened"]) <= datetime.now(LAKE)


@pytest.mark.parametrize(
    ("at", "happened"),
    [
        ("17:30", "2026-11-25T17:30:00-06:00"),
        ("18:10", "2026-11-25T18:10:00-06:00"),
        ("19:00", "2026-11-24T19:00:00-06:00"),
        ("yesterday 6pm", "2026-11-24T18:00:00-06:00"),
        ("Saturday 7am", "2026-11-21T07:00:00-06:00"),
        ("20 min ago", "2026-11-25T17:40:00-06:00"),
        ("1 1/2 hours ago", "2026-11-25T16:30:00-06:00"),
        ("2 days ago", "2026-11-23T18:00:00-06:00"),
        ("2026-07-04 12:00", "2026-07-04T12:00:00-05:00"),
        ("2026-11-25T18:00:00+01:00", "2026-11-25T18:00:00+01:00"),
    ],
)
def test_when_it_happened(at: str, happened: str, started: Batch) -> None:
    """Of what happened the last time is meant; summer time is summer time."""
    data = json.loads(told(started("turn --json --at", at)))

    assert happened == data["happened"]
    assert "2026-11-25T18:00:00-06:00" == data["recorded"]


def test_a_night_when_the_clocks_go_back(batch: Batch, clock: Callable[[str], None]) -> None:
    """A soak over that night is an hour longer than the clock says."""
    clock("2026-11-01 07:00")
    batch("start juniper-venison --meat 6lb --at", "yesterday 6pm")
    batch("soak --at", "yesterday 6pm")
    batch("soak out --at 6:00")

    assert "Soaked 13 h." in page(batch)
    assert "comes twice that night" in batch("turn --at 1:30").err
    assert "the clocks go forward" in batch("turn --at", "2026-03-08 02:30").err


def test_the_batch_in_hand(started: Batch) -> None:
    """An entry goes to the latest that is not finished; the others are told of."""
    out = told(started("start cabin-rub-elk --meat 4lb"))
    assert "Also in hand: batch 1; --batch names it." in out
    done = started("turn")
    assert done.out.startswith("2.2  turned")
    assert "this went to batch 2; also in hand: batch 1" in done.err
    assert "" == started("turn --batch 1").err
    started("finish --batch 2")
    assert told(started("turn")).startswith("1.3  turned")


def test_no_batch_in_hand(started: Batch) -> None:
    """After the finish only what comes afterwards goes to the last batch unasked."""
    started("weigh finished 2 lb 3 oz")
    started("finish")
    status, out, err = started("weigh soaked 7 lb")
    assert (2, "") == (status, out)
    assert "no batch is in hand: batch 1 is finished. --batch 1 writes in it all the same" in err
    assert told(started("note good ones")).startswith("1.4  note: good ones")
    assert told(started("weigh packed 2 lb")).startswith("1.5  packed 2 lb")
    assert told(started("turn --batch 1")).startswith("1.6  turned")
    assert "finished already" in started("finish --batch 1").err


def test_without_a_weight(batch: Batch) -> None:
    """A batch may start unweighed; that is told, and is not taken for any weight."""
    done = batch("start juniper-venison")
    assert done.out.startswith("1.1  started, meat not weighed")
    assert "its meat was not weighed: tarebook batch weigh raw 6lb tells it" in done.err
    assert "?" in told(batch("list"))
    assert json.loads(told(batch("list --json")))[0]["raw_g"] is None


def test_finished_and_not_weighed(started: Batch) -> None:
    """A batch that is done is asked for its weight, and takes it afterwards."""
    assert "tarebook batch weigh finished WEIGHT --batch 1" in started("finish").err
    assert told(started("weigh finished 2 lb")).startswith("1.3  finished 2 lb")


@pytest.fixture
def ours(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A recipe of the cook's own, in the folder where the cook is."""
    monkeypatch.chdir(tmp_path)
    file = tmp_path / "ours.toml"
    text = (folder("recipes") / "juniper-venison.toml").read_text(encoding="utf-8")
    file.write_text(text, encoding="utf-8")
    return file


def test_the_recipe_as_it_was(ours: Path, batch: Batch, tarebook: Tarebook) -> None:
    """Each batch keeps its recipe to the letter, by file or from a pipe, whatever becomes of it."""
    before = ours.read_text(encoding="utf-8")
    batch("start ours.toml --meat 6lb")
    ours.write_text("title = 'gone'", encoding="utf-8")

    assert before == told(batch("show 1 --recipe"))
    done = tarebook("batch", "start", "-", "--meat", "6lb", typed=before)
    assert done.out.startswith("2.1  started")
    assert "juniper-venison-strips; started" in told(batch("show 2"))


def test_a_faulty_recipe_starts_no_batch(ours: Path, batch: Batch, own_home: Path) -> None:
    """Faults of the recipe are told with their lines; nothing is written."""
    ours.write_text("title = 'x'\n[meat]\nfood = 'unicorn'\n", encoding="utf-8")
    status, out, err = batch("start ours.toml --meat 6lb")

    assert (1, "") == (status, out)
    assert "ours.toml:3: error: " in err
    assert 1 == batch("start nowhere.toml").status
    assert not own_home.exists()


def test_next_time(ours: Path, batch: Batch) -> None:
    """A note is shown when its recipe is started again, until it is taken up or struck out."""
    batch("start ours.toml --meat 6lb")
    batch("note less pepper --next-time")
    batch("note two hours shorter --next-time")
    batch("finish")
    out = told(batch("start ours.toml --meat 5lb"))
    assert (
        "For next time\n1.2     less pepper (2026-11-25)\n1.3     two hours shorter (2026-11-25)"
        in out
    )
    assert "for next time" not in told(batch("start cabin-rub-elk --meat 5lb")).lower()

    done = batch("take 1.2 --recipe ours.toml")
    assert "the recipe reads as it did in batch 1: has the change been saved?" in done.err
    batch("undo")
    ours.write_text(ours.read_text(encoding="utf-8") + "# less pepper\n", encoding="utf-8")
    done = batch("take 1.2 --recipe ours.toml")
    assert done.out.startswith("1.7  takes up note 2 (note for next time: less pepper), Wed 25 Nov")
    assert "" == done.err
    assert "     7  18:00 takes up note 2 (the recipe was changed)" in told(batch("show 1"))
    told(batch("drop 1.3"))
    assert "No notes for next time." in told(batch("next"))
    assert "less pepper" not in told(batch("start ours.toml --meat 5lb"))

    text = told(batch("export"))
    assert 2 == text.count("Our November strips") and 1 == text.count("# less pepper")
    assert "settled already" in batch("drop 1.2").err
    assert "settled already" in batch("drop 1.3").err


def test_a_start_to_come(batch: Batch) -> None:
    """A batch that is started tomorrow is asked about."""
    assert "note: that time is still to come" in batch("start juniper-venison --meat 6lb --at",
                                                       "2026-11-26 18:00").err  # fmt: skip


def test_the_recipe_must_be_found_to_be_taken_up(ours: Path, batch: Batch) -> None:
    """Where the recipe goes by no name it is asked for."""
    batch("start ours.toml --meat 6lb")
    batch("note less pepper --next-time")
    status, out, err = batch("take 1.2")

    assert (1, "") == (status, out)
    assert "--recipe FILE names the recipe as it is now" in err


@pytest.mark.parametrize("text", [f"a{ESCAPE}[2Jb", "a\u202eb", "a\nb", "a\rb", "a\x07b"])
def test_marks_that_steer_a_terminal(text: str, started: Batch) -> None:
    """They are kept in the book and never reach a terminal."""
    done = started("note --next-time", text)
    shown = done.out + page(started) + told(started("next")) + told(started("undo"))

    assert [] == [c for c in shown if not c.isprintable() and c != "\n"]
    assert text in [one["note"] for one in json.loads(told(started("show --json")))["entries"]]


def test_bytes_that_are_no_letters(started: Batch) -> None:
    """They are refused in a sentence."""
    status, _, err = started("note", "a\udcffb")

    assert 2 == status and "no letters of any kind" in err


def test_list(batch: Batch) -> None:
    """The newest first, twenty of them; of one recipe by any of its names; all on demand."""
    assert "No batches yet.\ntarebook batch start RECIPE" in told(batch("list"))
    for _ in range(21):
        batch("start juniper-venison --meat 6lb")
    batch("start cabin-rub-elk --meat 4lb")
    lines = told(batch("list")).splitlines()
    assert "batch  started          recipe" in lines[0]
    assert "     22  Wed 25 Nov 2026  Cabin pepper elk" in lines[1]
    assert "20 of 22 batches, the newest first; --all lists every one." == lines[-1]
    assert "22 batches." == told(batch("list --all")).splitlines()[-1]
    assert "1 batch." == told(batch("list --recipe cabin-rub-elk.toml")).splitlines()[-1]
    assert "No batches of elk yet." in told(batch("list --recipe elk"))


def test_carried_to_another_kitchen(
    started: Batch, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Exported in either form and taken in elsewhere, the book is the same; twice is once."""
    monkeypatch.chdir(tmp_path)
    started("weigh finished 2 lb 3 oz --note", "=1+1")
    started("note -- -2 hours")
    texts = {form: told(started(f"export --as {form}")) for form in ("toml", "csv")}
    assert "'=1+1" in texts["csv"] and "'-2 hours" in texts["csv"]
    for form in texts:
        assert '"book.' in told(started(f"export -o book.{form}"))
        monkeypatch.setenv("TAREBOOK_HOME", str(tmp_path / form))
        assert "1 new batch, 3 new entries; 0 entries here already.\n" == told(
            started(f"import book.{form}")
        )
        assert "0 new batches, 0 new entries; 3 entries here already.\n" == told(
            started(f"import book.{form}")
        )
        assert texts == {one: told(started(f"export --as {one}")) for one in texts}
        monkeypatch.setenv("TAREBOOK_HOME", str(tmp_path / "tarebook-home"))


def test_a_faulty_export_is_not_taken_in(
    started: Batch, tmp_path: Path, tarebook: Tarebook
) -> None:
    """Every fault with its line, exit 1, and the book as it was."""
    text = told(started("export")).replace('kind = "start"', 'kind = "strat"')
    file = tmp_path / "book.toml"
    file.write_text(text, encoding="utf-8")
    status, out, err = started("import", str(file))

    assert (1, "") == (status, out)
    assert f'{file}:15: error: "strat" is no kind of entry' in err
    done = tarebook("batch", "import", "-", typed=text)
    assert done.err.startswith("<standard input>:15: error: ")
    assert 1 == started("import nowhere.csv").status


def test_backup_and_restore(started: Batch, tmp_path: Path, own_home: Path) -> None:
    """What was backed up comes back; what was there meanwhile is named and kept."""
    file = tmp_path / "kept.sqlite3"
    told(started("backup", str(file)))
    started("start cabin-rub-elk --meat 4lb")
    out = " ".join(told(started("restore", str(file))).split())

    assert "The book has 1 batch now." in out and "as it was, with 2 batches, lies in" in out
    assert "1 batch, 1 entry, 1 wording of recipes: no faults.\n" == told(started("check"))
    assert (own_home / "backups" / "book-before-restore.sqlite3").exists()
    assert 2 == started("backup", str(own_home / "book.sqlite3")).status
    assert 1 == started("restore", str(tmp_path / "gone.sqlite3")).status


def test_check(started: Batch, own_home: Path) -> None:
    """What is wrong is told, exit 1; what can be reckoned anew is, when asked."""
    with closing(sqlite3.connect(own_home / "book.sqlite3")) as db:
        db.execute("UPDATE standing SET raw_g = 1")
        db.commit()
    status, out, _ = started("check")
    assert 1 == status
    assert "error: what batch 1 comes to is not what its entries say" in out
    assert "tarebook batch check --mend" in out
    assert "no faults" in told(started("check --mend"))


def test_a_book_that_is_none(batch: Batch, own_home: Path) -> None:
    """Every command that opens it says so, exits with 1, and leaves the file as it is."""
    own_home.mkdir()
    (own_home / "book.sqlite3").write_bytes(b"dear diary")
    lines = [
        "start juniper-venison --meat 6lb", "weigh raw 6lb", "temp 160F", "note x", "turn", "soak",
        "heat", "dry", "finish", "show", "list", "undo", "edit 1 x", "next", "take 1.1", "drop 1.1",
        "check", "export", "backup kept.sqlite3", "lessons", "compare 1 1", "labels 1",
        "wordings x",
    ]  # fmt: skip
    assert {*COMMANDS} - {"import", "restore"} == {line.split()[0] for line in lines}
    for line in lines:
        status, out, err = batch(line)
        assert (1, "") == (status, out)
        assert "is no batch book; nothing was touched" in err
    assert b"dear diary" == (own_home / "book.sqlite3").read_bytes()


def test_only_what_is_asked_for_is_built() -> None:
    """A command does not wait for the others of its group."""
    assert 1 == len(group(["turn", "--json"]).registered_commands)
    assert len(COMMANDS) == len(group(["--help"]).registered_commands)


def ways() -> Iterator[tuple[str, str, str]]:
    """Yield edits: what was entered, the edit, and what stands then."""
    yield "weigh raw 6 lb", "7 lb", "raw 7 lb (3,175 g)"
    yield "weigh raw 6 lb", "soaked 7 lb", "soaked 7 lb (3,175 g)"
    yield "weigh raw 6 lb", "--what soaked", "soaked 6 lb (2,722 g)"
    yield "weigh raw 6 lb", "7 lb --what wet", "soaked 7 lb (3,175 g)"
    yield "weigh raw 6 lb", "--note cold", "raw 6 lb (2,722 g)"
    yield "weigh towels 40 g", "0 g", "towels 0 g"
    yield "temp 160 F", "165 F", "meat at 165 F (74 °C)"
    yield "temp 160 F", "--where air", "air at 160 F (71 °C)"
    yield "note x", "less salt", "note: less salt"
    yield "soak", "--what out", "out of the soak"
    yield "note x", "--what next-time", "note for next time: x"
    yield "turn", "--at 17:00", "turned"


@pytest.mark.parametrize(("entered", "edit", "says"), list(ways()))
def test_edits(entered: str, edit: str, says: str, started: Batch) -> None:
    """A value, what it was of, where, when, and the remark: each can be put right alone."""
    started(entered)
    out = told(started(f"edit 2 {edit}"))

    assert out.startswith(f"1.3  {says}, in place of 2 (")
    if "--at" in edit:
        assert "Wed 25 Nov 17:00" in " ".join(out.split())


@pytest.mark.parametrize(
    ("entered", "edit", "says"),
    [
        ("weigh towels 0 g", "--what raw", "is zero"),
        ("weigh raw 6 lb", "--what cat", '--what: "cat" is none of raw, soaked'),
        ("weigh raw 6 lb", "--where air", "is no temperature"),
        ("turn", "2 lb", "has no value: --at or --note change it"),
        ("note x", "y --note z", "a note has one text"),
        ("note x", "x", "says just that already"),
    ],
)
def test_no_edits(entered: str, edit: str, says: str, started: Batch) -> None:
    """What the entry cannot become is refused."""
    started(entered)
    status, out, err = started(f"edit 2 {edit}")

    assert (2, "") == (status, out)
    assert says in err


def test_entries_are_named_as_they_are_told() -> None:
    """7, 12.7 and #7 name an entry; nothing else does."""
    from tarebook.cli.batch_asking import read_entry

    assert [(None, 7), (12, 7), (3, 7), (12, 7)] == [
        read_entry("7", None), read_entry("12.7", None), read_entry("#7", 3), read_entry("12.7", 12)
    ]  # fmt: skip
    for text in ("", "x", "1.2.3", "-1", "1.", ".1", "٣", "1" * 10):
        with pytest.raises(AskedWrongly, match="names no entry"):
            read_entry(text, None)


def test_a_long_list_is_held_small() -> None:
    """A text of many batches is kept packed until the book is let go, and comes out the same."""
    texts = [f'{{"réno {n % 7}": "½ lb ● {n}"}}\n' for n in range(200_000)]
    whole = "".join(texts)
    tracemalloc.start()
    kept = _packed(iter(texts))
    size, _ = tracemalloc.get_traced_memory()
    tracemalloc.stop()

    assert size < len(whole.encode()) / 4
    assert whole == "".join(kept)


def test_meat_that_was_soaked_is_no_raw_meat(batch: Batch, clock: Callable[[str], None]) -> None:
    """After the soak a second raw weight is refused, with both things that it may mean."""
    batch("start juniper-venison", "--meat", "4 lb 11 oz")
    batch("soak in")
    clock("2026-11-26 07:00")
    batch("soak out")
    status, out, err = batch("weigh meat 4 lb 12 oz")

    assert (2, "") == (status, out)
    assert "batch 1 is out of its soak, and its raw meat was 4 lb 11 oz" in err
    assert "tarebook batch weigh soaked 4 lb 12 oz" in err
    assert 'tarebook batch edit 1.1 "4 lb 12 oz"' in err
    assert 0 == batch("edit 1.1", "4 lb 12 oz").status
    assert 0 == batch("weigh soaked 4 lb 14 oz").status
    assert 0 == batch("weigh raw 4 lb 12 oz", "--at", "2026-11-25 18:05").status


def test_raw_meat_that_was_never_weighed_may_be_told_late(batch: Batch) -> None:
    """Where nothing was said of it, nothing is mistaken for it."""
    batch("start juniper-venison")
    batch("soak out")

    assert 0 == batch("weigh raw 4 lb 12 oz").status


def test_weights_that_cannot_be_true_are_told_when_they_are_weighed(batch: Batch) -> None:
    """At once, with the entries they stand in; once, and on the page of the batch again."""
    batch("start juniper-venison", "--meat", "4 lb 11 oz")
    assert "" == batch("weigh soaked 4 lb 12 oz").err
    said = batch("weigh leftover 300 g").err
    entries = "(entries raw 1.1, soaked 1.2, leftover 1.3; tarebook batch edit ENTRY WEIGHT"

    assert "note: the weights do not agree: " in said and entries in said
    assert "--soaked" not in said and "--leftover" not in said
    assert "do not agree" not in batch("weigh finished 2 lb").err
    assert "no figures: the weights do not agree" in batch("show").err
    assert "finished 1.4; tarebook batch edit" in batch("show").err
    assert "do not agree" in batch("edit 3 310 g").err
    assert "" == batch("edit 5 420 g").err
