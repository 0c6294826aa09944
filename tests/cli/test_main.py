"""What holds for every command: exit statuses, JSON, width, colour, pipes, letters, help."""

from __future__ import annotations

import json
import os
import re
import shlex
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import typer

from tarebook.cards.lines import width
from tarebook.cli.main import program
from tarebook.where import folder

Tarebook = Callable[..., Any]
Process = Callable[..., Any]

LOG = Path(__file__).parents[1] / "probe" / "oven.csv"
PAGE = Path(__file__).parents[1] / "exchange" / "page.json"
# One real call of every command that prints something.
COMMANDS = {
    "scale": ["scale", "juniper-venison", "--meat", "6 lb 4 oz", "--exact"],
    "scale-cure": ["scale", "cranberry-moose", "--factor", "1 1/2", "--drawer", "metric"],
    "card": ["card", "orchard-turkey", "--meat", "2.7kg"],
    "compare": ["compare", "juniper-venison", "--swap", "soy-sauce=low-sodium-soy"],
    "compare-many": ["compare", "juniper-venison", "cabin-rub-elk", "maple-dill-salmon"],
    "soak": ["soak", "juniper-venison", "--meat", "6lb"],
    "kitchen": ["kitchen"],
    "plan": ["plan", "juniper-venison", "--meat", "6lb", "--trays", "5", "--tray", "13 in round"],
    "target": ["target", "juniper-venison", "--sodium", "300 mg/oz"],
    "drying": ["drying", "juniper-venison", "--took", "6"],
    "list": ["list", "--sort", "sodium"],
    "shop": ["shop", "juniper-venison", "--meat", "6lb"],
    "probe": ["probe", str(LOG)],
    "bring": ["bring", str(PAGE)],
    "check": ["check", "juniper-venison"],
    "tidy": ["tidy", "juniper-venison"],
    "convert": ["convert", "3/4 cup packed", "brown-sugar"],
    "foods find": ["foods", "find", "soy"],
    "foods show": ["foods", "show", "soy-sauce"],
    "foods add": ["foods", "add", "lake-soy", "--like", "soy-sauce", "--serving", "17 g"],
    "foods own": ["foods", "own"],
    "foods remove": ["foods", "remove", "cove-soy"],
    "foods lookup": ["foods", "lookup", "soy", "sauce"],
    "foods lookup one": ["foods", "lookup", "--id", "174278"],
    "batch start": ["batch", "start", "juniper-venison", "--meat", "6lb", "--note", "by the lake"],
    "batch weigh": ["batch", "weigh", "soaked", "6", "lb", "9", "oz"],
    "batch temp": ["batch", "temp", "71.5", "C", "--where", "air"],
    "batch note": ["batch", "note", "less pepper " * 20, "--next-time"],
    "batch turn": ["batch", "turn"],
    "batch soak": ["batch", "soak"],
    "batch heat": ["batch", "heat", "in"],
    "batch dry": ["batch", "dry", "in", "--at", "20 min ago"],
    "batch finish": ["batch", "finish"],
    "batch show": ["batch", "show"],
    "batch list": ["batch", "list"],
    "batch undo": ["batch", "undo"],
    "batch edit": ["batch", "edit", "2", "6 lb 8 oz"],
    "batch next": ["batch", "next"],
    "batch take": ["batch", "take", "1.3", "--recipe", "own.toml"],
    "batch drop": ["batch", "drop", "3"],
    "batch wordings": ["batch", "wordings", "juniper-venison"],
    "batch check": ["batch", "check"],
    "batch lessons": ["batch", "lessons"],
    "batch compare": ["batch", "compare", "1", "1"],
    "batch export": ["batch", "export", "--batch", "1"],
    "batch import": ["batch", "import", "book.toml"],
    "batch backup": ["batch", "backup", "again.sqlite3"],
    "batch restore": ["batch", "restore", "kept.sqlite3"],
}
GROUPS = ("foods", "batch")
EVERY_COMMAND = pytest.mark.parametrize("args", COMMANDS.values(), ids=COMMANDS.keys())
ESCAPE = "\x1b"


Road = tuple[str, ...]


@pytest.fixture(autouse=True)
def book(
    request: pytest.FixtureRequest,
    tarebook: Tarebook,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A batch in the book, for every command that keeps it; a copy of it, and a recipe changed."""
    asked = getattr(request.node, "callspec", None)
    words = [word for value in (asked.params.values() if asked else ()) for word in value]
    if words[:2] == ["foods", "remove"]:
        assert 0 == tarebook("foods", "add", "cove-soy", "--like", "soy-sauce").status
    if words[:2] == ["foods", "lookup"]:
        request.getfixturevalue("kept_answers")
    if words[:1] != ["batch"]:
        return
    monkeypatch.chdir(tmp_path)
    recipe = (folder("recipes") / "juniper-venison.toml").read_text(encoding="utf-8")
    Path("own.toml").write_text(f"{recipe}# less pepper\n", encoding="utf-8")
    for line in (
        "start juniper-venison --meat 6lb",
        "weigh raw 6 lb 1 oz",
        "note less pepper --next-time",
        "weigh finished 2 lb 3 oz",
        "export -o book.toml",
        "backup kept.sqlite3",
    ):
        assert 0 == tarebook("batch", *line.split()).status


def commands(group: Any = None, road: Road = ()) -> Iterator[tuple[Road, Any]]:
    """Yield every command of the program with the words that lead to it."""
    group = typer.main.get_command(program([], whole=True)) if group is None else group
    for name, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from commands(command, (*road, name))
        else:
            yield (*road, name), command


EVERY_ROAD = pytest.mark.parametrize("road", [road for road, _ in commands()], ids=" ".join)


def test_all_commands_are_tried_here() -> None:
    """No command is left out of what is promised of every one; three are tried on their own."""
    tried = {" ".join(args[: 2 if args[0] in GROUPS else 1]) for args in COMMANDS.values()}

    ours = {" ".join(road) for road, _ in commands()}
    assert ours == tried | {"new", "labels", "batch labels"}, "each has a call in COMMANDS above"


@EVERY_COMMAND
def test_a_command_ends_well(args: list[str], tarebook: Tarebook) -> None:
    """Asked rightly it prints, says nothing on standard error, and exits with 0."""
    status, out, err = tarebook(*args)

    assert (0, "") == (status, err)
    assert len(out.splitlines()) > 0


@EVERY_COMMAND
def test_json_is_json_and_nothing_else(args: list[str], tarebook: Tarebook) -> None:
    """With --json standard output is one JSON value, without NaN or infinity."""
    args = [word for word in args if word != "--exact"]
    status, out, _ = tarebook(*args, "--json")

    def refuse(name: str) -> None:
        raise AssertionError(name)

    assert 0 == status
    assert json.loads(out, parse_constant=refuse) is not None


@EVERY_COMMAND
def test_lines_fit_80_columns(args: list[str], tarebook: Tarebook) -> None:
    """No line is broader than 80 columns; of a card, than 60. What is exported is no page."""
    most = 60 if args[0] == "card" else 80
    if args[:2] == ["batch", "export"] or args[0] == "bring":  # the text of a file
        return

    assert [] == [line for line in tarebook(*args).out.splitlines() if width(line) > most]


@EVERY_COMMAND
def test_no_colour_down_a_pipe(args: list[str], tarebook: Tarebook) -> None:
    """What is not a terminal gets no escape codes and no spaces at the ends of lines."""
    out = tarebook(*args).out

    assert ESCAPE not in out
    assert [] == [line for line in out.splitlines() if line != line.rstrip()]


def on_a_terminal(args: list[str], **env: str) -> str:
    """Return what a command prints on a terminal."""
    pty = pytest.importorskip("pty")
    ours, theirs = pty.openpty()
    environment = {**os.environ, "TERM": "xterm", **env}
    if "NO_COLOR" not in env:
        environment.pop("NO_COLOR", None)
    with subprocess.Popen(
        [sys.executable, "-m", "tarebook", *args],
        stdin=subprocess.DEVNULL,
        stdout=theirs,
        stderr=theirs,
        env=environment,
    ) as child:
        os.close(theirs)
        shown = b""
        while True:
            try:
                part = os.read(ours, 65536)
            except OSError:  # the other end is closed
                break
            if not part:
                break
            shown += part
        os.close(ours)
        assert 0 == child.wait(timeout=30)
    return shown.decode()


def test_colour_on_a_terminal_only() -> None:
    """A terminal is painted, and the words are the same as without paint."""
    args = ["scale", "juniper-venison"]
    painted = on_a_terminal(args)
    plain = on_a_terminal(args, NO_COLOR="1")

    assert ESCAPE in painted
    assert ESCAPE not in plain
    assert re.sub(r"\x1b\[\d*m", "", painted) == plain


def test_json_is_never_painted() -> None:
    """Not even on a terminal."""
    assert ESCAPE not in on_a_terminal(["foods", "show", "honey", "--json"])


def test_a_dumb_terminal_is_not_painted() -> None:
    """One that says it cannot do colour gets none."""
    assert ESCAPE not in on_a_terminal(["foods", "show", "honey"], TERM="dumb")


@EVERY_ROAD
def test_help_has_an_example_that_works(
    road: tuple[str, ...], tarebook: Tarebook, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """Every command's help shows one real call, and that call works."""
    status, out, _ = tarebook(*road, "--help")
    words = " ".join(out.split())
    found = re.search(r"Example: tarebook (.*?) (?:Arguments|Options):", words)

    assert 0 == status
    assert found, "no example"
    args = shlex.split(found[1])
    assert list(road) == args[: len(road)]
    assert [] == [line for line in out.splitlines() if width(line) > 80]
    if road == ("new",):
        return
    shutil.copytree(folder("recipes"), tmp_path / "recipes")
    shutil.copy(LOG, tmp_path)
    shutil.copy(PAGE, tmp_path)
    monkeypatch.chdir(tmp_path)
    assert 0 == tarebook(*args).status


@EVERY_ROAD
def test_every_command_has_json_and_help(road: tuple[str, ...]) -> None:
    """Each command takes --json; each option and argument says what it is for."""
    command = dict(commands())[road]
    options = {name for one in command.params for name in one.opts}

    assert "--json" in options, "take as_json: asking.AsJson, and print data by talk.show_data"
    for one in command.params:
        assert getattr(one, "help", None), f"{one.name} says nothing"


def test_no_words_show_the_way(tarebook: Tarebook) -> None:
    """Without a command the help is shown; the commands are all in it."""
    status, out, err = tarebook()

    assert 2 == status
    assert all(road[0] in out + err for road, _ in commands())


def test_version(tarebook: Tarebook) -> None:
    """The version is told, and nothing else."""
    from importlib.metadata import version

    assert (0, f"tarebook {version('tarebook')}\n", "") == tarebook("--version")


@pytest.mark.parametrize(
    "args",
    [
        ["scale"],
        ["scale", "juniper-venison", "--meet", "6lb"],
        ["scale", "juniper-venison", "--meat", "6"],
        ["scale", "juniper-venison", "--meat", "6 cups"],
        ["scale", "juniper-venison", "--meat", "1,5kg"],
        ["scale", "juniper-venison", "--meat", "-3lb"],
        ["scale", "juniper-venison", "--meat", "0 g"],
        ["scale", "juniper-venison", "--meat", "4-6 lb"],
        ["scale", "juniper-venison", "--meat", "2000 kg"],
        ["scale", "juniper-venison", "--meat", "6lb", "--factor", "2"],
        ["scale", "juniper-venison", "--meat", "6lb", "--bought", "7lb"],
        ["scale", "juniper-venison", "--trim", "12%"],
        ["scale", "juniper-venison", "--meat", "6lb", "--trim", "12%"],
        ["scale", "juniper-venison", "--bought", "7lb", "--trim", "100%"],
        ["scale", "juniper-venison", "--bought", "7lb", "--trim", "-3%"],
        ["scale", "juniper-venison", "--factor", "0"],
        ["scale", "juniper-venison", "--factor", "two"],
        ["scale", "juniper-venison", "--factor", "1e99999"],
        ["scale", "juniper-venison", "--drawer", "metrik"],
        ["scale", "juniper-venison", "--finished", "20 g"],
        ["scale", "juniper-venison", "--finished", "9 lb"],
        ["scale", "juniper-venison", "--finished", "1 cup"],
        ["card", "juniper-venison", "--exact"],
        ["compare", "juniper-venison"],
        ["compare", "juniper-venison", "--swap", "soy-sauce"],
        ["compare", "juniper-venison", "--swap", "=tamari"],
        ["compare", "juniper-venison", "--swap", "honey=maple-syrup"],
        ["compare", "juniper-venison", "--swap", "soy-sauce=tamari:0"],
        ["compare", "juniper-venison", "--swap", "soy-sauce=tamari:x"],
        ["compare", "juniper-venison", "--swap", "soy-sauce=tamari", "--swap-by", "weight"],
        ["compare", "cranberry-moose", "--swap", "curing-salt-1=salt-table"],
        ["compare", "cranberry-moose", "--swap", "salt-table=curing-salt-1"],
        ["convert", "3", "honey"],
        ["convert", "1 cpu", "honey"],
        ["convert", "1 cup", "honey", "--to", "furlong"],
        ["convert", "1 cup"],
        ["check"],
        ["foods"],
        ["foods", "find"],
        ["foods", "eat", "honey"],
        ["nonsense"],
    ],
    ids=" ".join,
)
def test_asked_wrongly_is_2(args: list[str], tarebook: Tarebook) -> None:
    """A question that cannot be answered as asked exits with 2, says why, and prints no result."""
    status, out, err = tarebook(*args)

    assert 2 == status
    assert "Traceback" not in err and len(out + err) > 20
    assert args == ["foods"] or "" == out


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["scale", "junper-venison"], 'did you mean "juniper-venison"?'),
        (["scale", "no-such-thing-at-all"], "juniper-venison"),
        (["scale", "."], "folder"),
        (["card", "nowhere/none.toml"], "there is no recipe"),
        (["compare", "juniper-venison", "--swap", "soy-sauce=tamarri"], "soy-sauce-tamari"),
        (["check", "nowhere.toml"], "there is no recipe"),
        (["convert", "1 cup", "hunney"], "did you mean honey"),
        (["convert", "1 tsp", "salt"], "say which salt it is"),
        (["convert", "1 tsp", "curing-salt-1"], "never measured by the spoon"),
        (["foods", "show", "slat"], "did you mean salt"),
        (["foods", "find", "xyzzy"], "no food"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_a_fault_is_1(args: list[str], says: str, tarebook: Tarebook) -> None:
    """What is missing, unreadable or not known exits with 1, and says what to try."""
    status, out, err = tarebook(*args)

    assert 1 == status
    assert says in (out if args[0] == "check" else err)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root may read everything")
def test_an_unreadable_file_is_1(written: Callable[..., str], tarebook: Tarebook) -> None:
    """A file of somebody else's is told as such."""
    path = written()
    Path(path).chmod(0)

    status, out, err = tarebook("scale", path)

    assert (1, "") == (status, out)
    assert "may not be read" in err


def test_standard_input(tarebook: Tarebook, recipe_text: Callable[..., str]) -> None:
    """A recipe may come down a pipe, for each command that takes one."""
    text = recipe_text(title="Piped strips")

    assert "Piped strips" in tarebook("scale", "-", typed=text).out
    assert "PIPED STRIPS" in tarebook("card", "-", typed=text).out
    assert 0 == tarebook("check", "-", typed=text).status
    assert "Piped strips" in tarebook("compare", "-", "cabin-rub-elk", typed=text).out


@pytest.mark.parametrize(
    "typed", [b"", b"\xff\xfe\x00t", b"\x00\x00", b"not toml", b"[" * 100_000, b"a = 1\n" * 50_000]
)
def test_whatever_comes_down_the_pipe(typed: bytes, tarebook: Tarebook) -> None:
    """Nothing, another encoding, noise and absurd nesting are faults with a place."""
    for command in ("scale", "card", "check"):
        status, out, err = tarebook(command, "-", typed=typed)
        assert 1 == status
        said = out if command == "check" else err
        assert re.match(r"<standard input>:\d+: error: ", said)


def test_a_closed_pipe_is_silent() -> None:
    """``| head -1`` ends the command without a word."""
    command = f"{shlex.quote(sys.executable)} -m tarebook foods show soy-sauce"
    for tail in ("head -1", "true", "head -c 1"):
        done = subprocess.run(
            f"{command} | {tail}; exit ${{PIPESTATUS[0]}}",
            shell=True,
            executable="/bin/bash",
            capture_output=True,
            text=True,
            timeout=30,
        )
        assert ("", 0) == (done.stderr, done.returncode)


@pytest.mark.parametrize("args", [["scale", "juniper-venison"], ["--help"]], ids=" ".join)
def test_a_full_disk_is_told(args: list[str]) -> None:
    """Output that cannot be written is a fault with a sentence, not a traceback."""
    full = Path("/dev/full")
    if not full.exists():
        pytest.skip("no /dev/full here")
    with full.open("w") as nowhere:
        done = subprocess.run(
            [sys.executable, "-m", "tarebook", *args],
            stdout=nowhere,
            stderr=subprocess.PIPE,
            text=True,
            timeout=30,
        )

    assert 1 == done.returncode
    assert done.stderr.startswith("tarebook: the output cannot be written")
    assert 1 == len(done.stderr.splitlines())


def test_closed_output_is_no_traceback() -> None:
    """Started with its output closed, a command has nowhere to say anything, and ends."""
    command = f"{shlex.quote(sys.executable)} -m tarebook card juniper-venison"
    done = subprocess.run(
        f"{command} >&-", shell=True, executable="/bin/bash", capture_output=True, timeout=30
    )

    assert b"" == done.stderr


@pytest.mark.skipif(os.name == "nt", reason="signals")
def test_interrupted_is_130(tmp_path: Path) -> None:
    """Ctrl-C ends a command with 130, without a traceback, and nothing is left behind."""
    file = tmp_path / "ours.toml"
    with subprocess.Popen(
        [sys.executable, "-m", "tarebook", "new", str(file)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as child:
        assert child.stderr is not None
        while "call it" not in child.stderr.readline():
            pass
        child.send_signal(signal.SIGINT)
        out, err = child.communicate(timeout=30)

    assert 130 == child.returncode
    assert "Traceback" not in out + err
    assert not file.exists()


PLANNED = ["plan", "bay-brine-bison", "--start", "2026-11-27 08:00", "--now", "2026-11-27 07:00"]
PLAIN = {"LC_ALL": "C", "LANG": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}


@pytest.mark.parametrize(
    "env", [{"PYTHONIOENCODING": "ascii"}, {"PYTHONIOENCODING": "latin-1"}, PLAIN]
)
def test_a_terminal_without_the_letters_gets_others(env: dict[str, str], process: Process) -> None:
    """Where ½, ° or ─ cannot be written, something readable stands there, and no traceback."""
    for args in (["scale", "juniper-venison"], ["compare", *COMMANDS["compare"][1:]]):
        done = process(*args, **env)
        assert (0, b"") == (done.returncode, done.stderr)
        text = done.stdout.decode("latin-1")
        assert "o---" in text and "[---" in text
        assert ">= at least" in text
        assert "?" not in text


def test_errors_in_plain_letters(process: Process) -> None:
    """Complaints too: a name with other letters is told as well as can be."""
    done = process("scale", "réno-½", **PLAIN)

    assert 1 == done.returncode
    assert b"Traceback" not in done.stderr and b"there is no recipe" in done.stderr


def test_json_in_plain_letters_is_still_json(process: Process) -> None:
    """Letters that cannot be written do not break the JSON."""
    done = process("foods", "show", "jalapeno", "--json", PYTHONIOENCODING="ascii")

    assert "jalapeno" == json.loads(done.stdout)["food"]


DOCUMENTS = {
    "html": ["card", "bay-brine-bison", "--as", "html", "-o", "-"],
    "markdown": ["card", "bay-brine-bison", "--as", "markdown"],
    "linked data": ["card", "bay-brine-bison", "--as", "json-ld", "-o", "-"],
    "html of a plan": [*PLANNED, "--as", "html", "-o", "-"],
    "calendar": [*PLANNED, "--as", "ics"],
    "spreadsheet": ["scale", "bay-brine-bison", "--as", "csv", "-o", "-"],
    "list": ["list", "--as", "csv"],
    "json": ["card", "bay-brine-bison", "--json"],
    "picture": ["soak", "bay-brine-bison", "--as", "svg", "-o", "-"],
}


@pytest.mark.parametrize("args", DOCUMENTS.values(), ids=DOCUMENTS)
def test_a_document_down_a_pipe_is_utf8(args: list[str], process: Process) -> None:
    """What programs read has the same bytes whatever letters the terminal has; no stand-ins."""
    as_it_is, *others = (
        process(*args, **env).stdout
        for env in ({"PYTHONIOENCODING": "utf-8"}, {"PYTHONIOENCODING": "cp1252"}, PLAIN)
    )

    assert as_it_is.decode("utf-8")
    assert [as_it_is, as_it_is] == others
