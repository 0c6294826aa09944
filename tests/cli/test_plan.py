"""tarebook plan."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Tarebook = Callable[..., Any]
Written = Callable[..., str]

CLOCK = ["--zone", "America/Chicago", "--now", "2026-11-25 09:00"]
TRAYS = ["--trays", "5", "--tray", "13 in round"]


def test_ready_by_saturday(tarebook: Tarebook) -> None:
    """The days are printed, and nothing is said on standard error."""
    status, out, err = tarebook(
        "plan", "juniper-venison", "--meat", "4lb", "--ready", "Saturday 18:00", *CLOCK, *TRAYS
    )

    assert (0, "") == (status, err)
    assert "all packed by Saturday 28 November, 18:00" in out
    assert "SATURDAY 28 NOVEMBER 2026" in out
    assert "Not as asked" not in out


def test_begun_now_where_nothing_is_said(tarebook: Tarebook) -> None:
    """Neither ready nor start means: begin now, with the recipe's own meat."""
    data = json.loads(tarebook("plan", "juniper-venison", *CLOCK, *TRAYS, "--json").out)

    assert "2026-11-25T09:00-06:00" == data["begin"]
    assert 1133.98 == data["recipes"][0]["meat_g"]


def test_the_kitchen_is_used(tarebook: Tarebook) -> None:
    """Trays come from the kitchen's file; options stand over it."""
    tarebook("kitchen", "set", "dryer.trays=5", "dryer.tray=13 in round", "dryer.hole=3 in")
    args = ["plan", "juniper-venison", "--meat", "11lb", *CLOCK, "--json"]

    def loads(*more: str) -> list[int]:
        (recipe,) = json.loads(tarebook(*args, *more).out)["recipes"]
        return [load["trays"] for load in recipe["loads"]]

    assert [5, 5, 3] == loads()
    assert [10, 3] == loads("--trays", "10")
    assert [5, 5, 5, 5, 2] == loads("--tray", "8 x 9 in", "--frozen")


def test_an_unknown_kitchen_is_said(tarebook: Tarebook) -> None:
    """Without trays the plan is made for one load, and says how to tell them."""
    status, out, _ = tarebook("plan", "juniper-venison", *CLOCK)

    assert 0 == status
    assert "How much the dryer holds is not known" in out and "Onto the trays" in out


def test_a_broken_kitchen_stops_it(tarebook: Tarebook, own_home: Path) -> None:
    """A plan needs the trays: a fault of the kitchen's file is told with its line."""
    own_home.mkdir()
    (own_home / "kitchen.toml").write_text("[dryer]\ntrays = -1\n", encoding="utf-8")

    status, out, err = tarebook("plan", "juniper-venison", *CLOCK)

    assert (1, "") == (status, out)
    assert err.startswith(f"{own_home / 'kitchen.toml'}:2: error: ")


def test_several_recipes(tarebook: Tarebook) -> None:
    """Each recipe takes its own weight, in order."""
    args = ["plan", "juniper-venison", "cabin-rub-elk", *CLOCK, *TRAYS]
    status, out, _ = tarebook(*args, "--meat", "2lb", "--meat", "3lb")

    assert 0 == status
    assert "A  Juniper venison strips" in out and "3 lb (1,361 g) of elk" in out
    assert 2 == tarebook(*args, "--meat", "2lb").status


def test_a_calendar_file(tarebook: Tarebook, tmp_path: Path) -> None:
    """Written to a file by name, with line ends as the standard asks; the same to a pipe."""
    file = tmp_path / "strips.ics"
    args = ["plan", "juniper-venison", *CLOCK, *TRAYS, "--as", "ics"]

    status, out, err = tarebook(*args, "-o", str(file))
    assert (0, "") == (status, out)
    assert f"{file} is written\n" == err
    assert tarebook(*args, "-o", str(file)).err == f"{file} is written over\n"
    data = file.read_bytes()
    assert data.startswith(b"BEGIN:VCALENDAR\r\n") and data.endswith(b"END:VCALENDAR\r\n")
    assert b"DTSTAMP:20261125T150000Z\r\n" in data
    assert data.decode() == tarebook(*args).out


def test_text_to_a_file(tarebook: Tarebook, tmp_path: Path) -> None:
    """The page can be written too."""
    file = tmp_path / "strips.txt"
    args = ["plan", "juniper-venison", *CLOCK, *TRAYS]

    assert "" == tarebook(*args, "-o", str(file)).out
    assert tarebook(*args).out == file.read_text(encoding="utf-8")


def test_a_page_to_print(tarebook: Tarebook, tmp_path: Path) -> None:
    """HTML goes to a file or a pipe, a PDF to a file."""
    args = ["plan", "juniper-venison", *CLOCK, *TRAYS]
    html, pdf = tmp_path / "days.html", tmp_path / "days.pdf"

    assert 0 == tarebook(*args, "--as", "html", "-o", str(html)).status
    assert tarebook(*args, "--as", "html").out == html.read_text(encoding="utf-8")
    assert 0 == tarebook(*args, "--as", "pdf", "-o", str(pdf)).status
    assert pdf.read_bytes().startswith(b"%PDF-")


def test_a_pdf_down_a_pipe(process: Callable[..., Any]) -> None:
    """Down a pipe come the bytes of the document and nothing else."""
    done = process("plan", "juniper-venison", *CLOCK, *TRAYS, "--as", "pdf", "-o", "-")

    assert (0, b"") == (done.returncode, done.stderr)
    assert done.stdout.startswith(b"%PDF-") and done.stdout.rstrip().endswith(b"%%EOF")


def test_a_pdf_goes_down_no_pipe_unasked(tarebook: Tarebook) -> None:
    """Without -o - a pipe gets nothing, and what to say is told."""
    status, out, err = tarebook("plan", "juniper-venison", *CLOCK, *TRAYS, "--as", "pdf")

    assert (2, "") == (status, out)
    assert "-o - for the pipe" in " ".join(err.split())


def test_a_pdf_is_kept_off_the_screen(tarebook: Tarebook, monkeypatch: pytest.MonkeyPatch) -> None:
    """A terminal gets a sentence instead of a document."""
    monkeypatch.setattr("sys.stdout.isatty", lambda: True, raising=False)
    status, _, err = tarebook("plan", "juniper-venison", *CLOCK, *TRAYS, "--as", "pdf")

    assert 2 == status
    assert "name a file with -o" in err


def test_a_folder_that_is_not_to_be_written(tarebook: Tarebook, tmp_path: Path) -> None:
    """A file that cannot be written is a fault with its name."""
    status, out, err = tarebook("plan", "juniper-venison", *CLOCK, "-o", str(tmp_path))

    assert (1, "") == (status, out)
    assert str(tmp_path) in err


def test_the_same_moment_the_same_page(tarebook: Tarebook, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where SOURCE_DATE_EPOCH says the moment, the machine's clock is not asked."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1764082800")  # 2025-11-25 15:00 UTC
    data = json.loads(tarebook("plan", "juniper-venison", "--zone", "UTC", "--json").out)

    assert "2025-11-25T15:00+00:00" == data["begin"]


def test_heat_step(tarebook: Tarebook) -> None:
    """Another step may be asked for where it may be had."""
    args = ["plan", "juniper-venison", *CLOCK, *TRAYS]

    assert "Oven at 275 °F (135 °C)" in tarebook(*args, "--heat", "oven-after").out
    status, out, err = tarebook("plan", "orchard-turkey", *CLOCK, "--heat", "oven-after")
    assert (2, "") == (status, out)
    assert "not for poultry" in err and "simmer, steam, boil-down" in err


def test_hours(tarebook: Tarebook) -> None:
    """The cook's own hours narrow the range; which end to plan with may be chosen."""
    args = ["plan", "juniper-venison", *CLOCK, *TRAYS, "--hours", "6", "--json"]

    def dry(*more: str) -> int:
        steps = json.loads(tarebook(*args, *more).out)["steps"]
        return next(one["minutes"] for one in steps if one["kind"] == "dry")

    assert [450, 360, 270] == [dry(), dry("--by", "likely"), dry("--by", "low")]


def test_an_hour_that_comes_twice_is_noted(tarebook: Tarebook) -> None:
    """Where clocks go back the first of two hours is taken, and that is told."""
    args = ["--zone", "America/Chicago", "--now", "2026-10-29 09:00", "--ready", "Sunday 01:30"]
    status, _, err = tarebook("plan", "juniper-venison", *args)

    assert 0 == status
    assert "note: 01:30 comes twice that night" in err


@pytest.mark.parametrize(
    "more",
    [
        ["--ready", "Saturday"],
        ["--ready", "Saturday 18:00", "--start", "today 18:00"],
        ["--start", "never 7am"],
        ["--zone", "Lake/Cabin"],
        ["--no-nights", "22:00"],
        ["--by", "luck"],
        ["--hours", "six"],
        ["--hours", "0"],
        ["--hours", "500"],
        ["--heat", "sun"],
        ["--trays", "0"],
        ["--tray", "13"],
        ["--meat", "6"],
        ["--meat", "1lb", "--meat", "2lb"],
        ["--as", "stone"],
        ["--now", "once"],
    ],
    ids=" ".join,
)
def test_asked_wrongly(more: list[str], tarebook: Tarebook) -> None:
    """What cannot be read names its option, prints nothing, and exits with 2."""
    status, out, err = tarebook("plan", "juniper-venison", *more)

    assert (2, "") == (status, out)
    assert err.startswith("tarebook: ") and "Traceback" not in err


def test_a_faulty_recipe(tarebook: Tarebook, written: Written) -> None:
    """A fault of a recipe comes with its file and line."""
    path = written(marinade={"soy-sauce": "1 cpu"})
    status, out, err = tarebook("plan", path, *CLOCK)

    assert (1, "") == (status, out)
    assert err.startswith(f"{path}:")


def test_hours_of_the_batch_book(tarebook: Tarebook) -> None:
    """Where --hours is not given the book tells, and of which batch; --hours goes before it."""
    for words in (
        ("start", "juniper-venison", "--at", "2026-11-12 06:00"),
        ("dry", "in", "--at", "2026-11-12 08:00"),
        ("dry", "out", "--at", "2026-11-12 14:10"),
        ("finish", "--at", "2026-11-12 15:00"),
    ):
        assert 0 == tarebook("batch", *words).status
    page = " ".join(tarebook("plan", "juniper-venison", *CLOCK).out.split())
    (told,) = json.loads(tarebook("plan", "juniper-venison", *CLOCK, "--json").out)["recipes"]
    said = " ".join(tarebook("plan", "juniper-venison", *CLOCK, "--hours", "7").out.split())

    assert "Drying: low 4 h 40, likely 6 h 10, high 7 h 40: your batch of 12 Nov 2026: 6 h" in page
    assert ([1], 6.167) == (told["hours"]["batches"], told["hours"]["likely"])
    assert "likely 7 h," in said and "12 Nov" not in said
    assert "12 Nov" not in tarebook("plan", "cabin-rub-elk", *CLOCK).out


def test_a_plan_at_odds_with_advice_exits_with_1(tarebook: Tarebook, own_home: Path) -> None:
    """It is printed, says so first, and its status tells a script; under 130 degF it is none."""
    own_home.mkdir(exist_ok=True)
    told = own_home / "kitchen.toml"
    told.write_text('[dryer]\ntrays = 5\ntemperature = "95-140 F"\n', encoding="utf-8")
    status, out, _ = tarebook("plan", "juniper-venison", *CLOCK)
    assert 1 == status and "At odds with published advice" in out.splitlines()
    status, out, _ = tarebook("plan", "juniper-venison", *CLOCK, "--as", "ics")
    assert 1 == status and "At odds with published advice" in out

    told.write_text('[dryer]\ntrays = 5\ntemperature = "95-125 F"\n', encoding="utf-8")
    status, out, err = tarebook("plan", "juniper-venison", *CLOCK)
    assert (1, "") == (status, out)
    assert err.startswith("tarebook: no days are planned here") and "11 people fell ill" in err
    assert 0 == tarebook("plan", "woodland-mushrooms", *CLOCK).status


@pytest.mark.parametrize(
    "asked",
    [
        ["--ready", "tomorrow 8am"],  # too soon: the earliest is planned
        ["--meat", "30lb", "--ready", "2026-12-12 18:00"],  # over two hours at the board: in lots
    ],
)
def test_a_plan_not_as_asked_exits_with_0(asked: list[str], tarebook: Tarebook) -> None:
    """What is only planned otherwise than asked is told first, and is no fault."""
    status, out, _ = tarebook("plan", "juniper-venison", *asked, *CLOCK, *TRAYS)

    assert 0 == status
    assert "Not as asked" in out and "At odds with published advice" not in out


def test_short(tarebook: Tarebook, tmp_path: Path) -> None:
    """--short leaves out what is not done with the hands, as text and as a page to print."""
    args = ["plan", "juniper-venison", "--ready", "Saturday 18:00", *CLOCK, *TRAYS]
    whole, short = tarebook(*args).out, tarebook(*args, "--short").out
    page = tmp_path / "days.html"

    assert len(short.splitlines()) < 0.6 * len(whole.splitlines())
    assert short.endswith("The other cautions: the same command without --short.\n")
    assert 0 == tarebook(*args, "--short", "--as", "html", "-o", str(page)).status
    assert "Counted with" not in page.read_text(encoding="utf-8")


@pytest.mark.parametrize("more", [["--json"], ["--as", "ics"]])
def test_data_are_never_short(more: list[str], tarebook: Tarebook) -> None:
    """A calendar and data hold all of it: a short one is refused."""
    status, out, err = tarebook("plan", "juniper-venison", "--short", *more, *CLOCK)

    assert (2, "") == (status, out) and "--short: " in err
