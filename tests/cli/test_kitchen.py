"""tarebook kitchen."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

Tarebook = Callable[..., Any]

ANSWERS = [
    "5", "13 in round", "3 in", "95-160 F", "yes", "170 F", "full", "1 g", "800 ft", "us",
    "1500 mg", "",
    "big bowl = 4 qt", "freezer bag = 1 gal", "",
]  # fmt: skip


def test_nothing_told_yet(tarebook: Tarebook, own_home: Path) -> None:
    """Without a profile it says what is not known and how to tell it, and writes nothing."""
    status, out, err = tarebook("kitchen")

    assert (0, "") == (status, err)
    assert "Not known: dryer.trays, dryer.tray," in out
    assert "tarebook kitchen ask" in out
    assert not own_home.exists()


def test_questions(tarebook: Tarebook, own_home: Path) -> None:
    """Answers are kept; what is answered with nothing stays unknown."""
    status, out, err = tarebook("kitchen", "ask", typed="\n".join(ANSWERS) + "\n")

    assert 0 == status
    assert err.count("> ") == len(ANSWERS)
    assert "dryer                   5 trays" in out
    assert "tray                    13 in (33 cm) round" in out
    assert "bowls and bags          big bowl 3.79 L; freezer bag" in out
    assert "sodium a day            1,500 mg" in out and "sugars a day" not in out
    assert "drying surface          4.36 sq ft" in out
    data = json.loads(tarebook("kitchen", "--json").out)
    assert (5, [330.2], [76.2], True) == (
        data["trays"],
        data["tray_mm"],
        data["hole_mm"],
        data["adjustable"],
    )


def test_a_question_is_asked_until_understood(tarebook: Tarebook) -> None:
    """A wrong answer is told why and asked again; Enter keeps, a hyphen forgets."""
    tarebook("kitchen", "set", "dryer.trays=5", "dryer.hole=3in")
    typed = "many\n\n13\n13 in round\n-\n" + "\n" * 20

    status, out, err = tarebook("kitchen", "ask", typed=typed)

    assert 0 == status
    assert 'number "many" cannot be read' in err and '"13" is no outline' in err
    assert "As in 5 [5]" in err and "As in 3 in [3in]" in err
    assert "5 trays" in out and "hole" not in out


def test_who_dries_in_the_oven_is_not_asked_of_trays(tarebook: Tarebook) -> None:
    """No trays: the oven's racks are asked for, and nothing more of a dryer."""
    typed = "0\n170 F\n2\n20 x 14 in\nbasic\n\n\n\n\n\n\n"

    status, out, err = tarebook("kitchen", "ask", typed=typed)

    assert 0 == status
    assert "none: the oven dries" in out and "3.89 sq ft" in out
    assert "one tray" not in err


def test_answers_that_end_too_soon_are_kept(tarebook: Tarebook, own_home: Path) -> None:
    """Nobody answers everything twice: what was answered stays, and it says so."""
    status, out, err = tarebook("kitchen", "ask", typed="5\n13 in round\n")

    assert (2, "") == (status, out)
    assert "those given are kept" in err
    data = json.loads(tarebook("kitchen", "--json").out)
    assert (5, [330.2], None) == (data["trays"], data["tray_mm"], data["hole_mm"])


def test_no_answer_at_all_writes_nothing(tarebook: Tarebook, own_home: Path) -> None:
    """Without a single answer there is no file."""
    for typed in ("", "\n\n"):
        status, out, err = tarebook("kitchen", "ask", typed=typed)

        assert (2, "") == (status, out)
        assert "nothing was written" in err
        assert not own_home.exists()


def test_set(tarebook: Tarebook, own_home: Path) -> None:
    """One key, or several at once; the cook's own remarks in the file stay."""
    own_home.mkdir()
    file = own_home / "kitchen.toml"
    file.write_text("# mine\n[dryer]\ntrays = 4 # of 6\n", encoding="utf-8")

    assert 0 == tarebook("kitchen", "set", "dryer.trays", "5").status
    assert "# mine\n[dryer]\ntrays = 5 # of 6\n" == file.read_text(encoding="utf-8")
    assert 0 == tarebook("kitchen", "set", "bowls.jar=2 L", "oven.lowest=170 F").status
    assert "jar 2 L" in tarebook("kitchen").out


def test_asked_wrongly(tarebook: Tarebook, own_home: Path) -> None:
    """Another word, a key without a value and a key nobody knows are the asker's slips."""
    for args in (
        ["sit"],
        ["set", "dryer.trays"],
        ["set", "a.b", "5"],
        ["ask", "me"],
        ["set", "a=1"],
    ):
        status, out, err = tarebook("kitchen", *args)
        assert (2, "") == (status, out)
        assert err.startswith("tarebook: ")
    assert not own_home.exists()


def test_a_broken_file(tarebook: Tarebook, own_home: Path) -> None:
    """Faults come with file and line; a file that is no TOML is not written over."""
    own_home.mkdir()
    file = own_home / "kitchen.toml"
    file.write_text("[dryer\n", encoding="utf-8")

    for args in ([], ["set", "dryer.trays", "5"], ["ask"]):
        status, out, err = tarebook("kitchen", *args)
        assert (1, "") == (status, out)
        assert err.startswith(f"{file}:1: error: ")
    assert "[dryer\n" == file.read_text(encoding="utf-8")


def test_a_faulty_value_can_be_mended(tarebook: Tarebook, own_home: Path) -> None:
    """A value that cannot be read stops the page, and is put right with set."""
    own_home.mkdir()
    (own_home / "kitchen.toml").write_text("[dryer]\ntrays = -3\n", encoding="utf-8")

    assert 1 == tarebook("kitchen").status
    assert 0 == tarebook("kitchen", "set", "dryer.trays", "3").status
