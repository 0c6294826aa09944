"""From kitchen.toml to a kitchen; every fault at its line."""

from __future__ import annotations

import pytest

from tarebook.kitchen import UNKNOWN, Kitchen, Tray, Vessel, read_kitchen
from tarebook.kitchen.keys import KEYS

WHOLE = """\
# ours
[dryer]
trays = 5
tray = "15 x 13 in"
hole = "3 in"
temperature = "95-160 F"
adjustable = true
[oven]
lowest = "170 F"
racks = 2
rack = "21 x 15 in"
[measuring]
set = "full"
[scale]
step = "1 g"
[house]
altitude = "100 m"
units = "us"
sodium-a-day = "1500 mg"
sugars-a-day = "25 g"
[bowls]
"big bowl" = "4 L"
"""


def said(text: str | bytes) -> list[str]:
    """Return the findings as they are printed."""
    return [str(one) for one in read_kitchen(text, file="k.toml")[1]]


def test_a_whole_kitchen() -> None:
    """Every key there is can be read."""
    kitchen, findings = read_kitchen(WHOLE, file="k.toml")

    assert () == findings
    assert 5 == kitchen.trays and Tray(381.0, 330.2) == kitchen.tray
    assert (95.0, 160.0) == kitchen.dryer_f and kitchen.adjustable is True
    assert (170.0, 2) == (kitchen.oven_lowest_f, kitchen.oven_racks)
    assert ("full", 1, 100.0, "us") == (
        kitchen.drawer,
        kitchen.scale_g,
        kitchen.altitude_m,
        kitchen.units,
    )
    assert {"sodium_mg": 1500.0, "sugars_g": 25.0} == kitchen.a_day
    assert (Vessel("big bowl", 4000),) == kitchen.bowls  # type: ignore[arg-type]


@pytest.mark.parametrize("left_out", [key.path for key in KEYS])
def test_unknown_stays_unknown(left_out: str) -> None:
    """A key that is left out is not known, and nothing usual is put in its place."""
    table, _, name = left_out.partition(".")
    lines, here, kept = WHOLE.splitlines(), "", []
    for line in lines:
        here = line.strip("[]") if line.startswith("[") else here
        if not (here == table and line.startswith(f"{name} =")):
            kept.append(line)
    kitchen, findings = read_kitchen("\n".join(kept), file="k.toml")
    (key,) = (one for one in KEYS if one.path == left_out)

    assert () == findings
    assert len(lines) - 1 == len(kept)
    assert getattr(kitchen, key.field) is None


def test_only_remarks_are_a_kitchen_nobody_told_of() -> None:
    """A file with nothing but remarks and empty tables is no fault."""
    assert (UNKNOWN, ()) == read_kitchen("# nothing yet\n[dryer]\n", file="k.toml")


def test_all_faults_at_once_each_on_its_line() -> None:
    """Every fault is told, with its line and what to write; the sound lines are still read."""
    text = (
        '[dryer]\ntrays = "five"\ntray = "15 in"\nholle = "3 in"\n'
        '[ovn]\nlowest = "170"\n[oven]\nlowest = 170\n[bowls]\nbag = "1 yard"\ncan = "2 L"\n'
    )
    kitchen, _ = read_kitchen(text, file="k.toml")

    assert [
        'k.toml:2: error: number "five" cannot be read (dryer.trays); write a number such as '
        "2, 0.5, 3/4 or 1 1/2",
        'k.toml:3: error: "15 in" is no outline (dryer.tray); write 15 x 13 in, or 13 in round',
        'k.toml:4: error: "holle" is no key of [dryer] (dryer.holle); did you mean "hole"?',
        'k.toml:5: error: "ovn" is no part of a kitchen (ovn); did you mean "oven"?',
        "k.toml:8: error: a temperature stands in quotes (oven.lowest); as in the remark above it",
    ] == said(text)[:5]
    assert said(text)[5].startswith("k.toml:10: error: ")
    assert 6 == len(said(text))
    assert Kitchen(bowls=(Vessel("can", 2000),)) == kitchen  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "source", [b"", b"   ", b"\xff\xfe\x00", b"[dryer", b"dryer = 5", b"[dryer]\ntrays", b"\x00"]
)
def test_what_is_no_kitchen(source: bytes) -> None:
    """An empty file, other encodings, broken TOML and a table that is none are faults in words."""
    kitchen, findings = read_kitchen(source, file="k.toml")

    assert UNKNOWN == kitchen
    assert [1] == [len(findings)] and "k.toml:" in str(findings[0])


def test_a_hole_as_large_as_the_tray() -> None:
    """A tray with nothing left around its hole is a fault, and its area is not known."""
    text = '[dryer]\ntrays = 3\ntray = "8 in round"\nhole = "8 in"\n'

    assert [
        "k.toml:4: error: the hole is as large as the tray (dryer.hole); measure both again"
    ] == (said(text))
    assert read_kitchen(text, file="k.toml")[0].tray_cm2 is None
