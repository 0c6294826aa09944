"""HTML card and days in a real browser: four widths, light and dark, and out of the printer."""

from __future__ import annotations

import html
import json
import os
import re
import shutil
import subprocess
import tempfile
import unicodedata
from collections.abc import Callable
from datetime import datetime
from fractions import Fraction
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pypdf
import pytest

from tarebook.cards.content import content
from tarebook.cards.plan_content import PlanContent, plan_content
from tarebook.cards.worksheet import Worksheet
from tarebook.clocks.zones import minute_of
from tarebook.kitchen import Kitchen, Tray
from tarebook.paper.html_card import html_card
from tarebook.paper.html_plan import html_plan
from tarebook.paper.spelled import spelled
from tarebook.plan.jobs import job_of
from tarebook.plan.make import Wish, make_plan
from tarebook.plan.trays import dryer_of
from tarebook.recipe import load_recipe

Browser = Callable[..., "subprocess.CompletedProcess[str]"]

NEEDED = "TAREBOOK_NEEDS_BROWSER"
"""Set where a missing browser is a fault, as on the machine that checks every change."""

_NAMES = ("chromium", "chromium-browser", "google-chrome")
_FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--allow-file-access-from-files", "--enable-logging=stderr",
)  # fmt: skip
WIDTHS = (320, 360, 768, 1280)
PAPER = {"light": "rgb(252, 250, 245)", "dark": "rgb(25, 24, 21)"}
CARDS = ("juniper-venison", "bay-brine-bison", "woodland-mushrooms", "hostile")
PLAN = "days"
SHOWN = (*CARDS, PLAN)


@pytest.fixture(scope="module")
def browser() -> Browser:
    """The browser as a function of its options; each run starts from an empty profile."""
    found = next(filter(None, map(shutil.which, _NAMES)), None)
    if found is None:
        missing = "no Chromium on this machine (on Debian: apt-get install chromium)"
        if os.environ.get(NEEDED):
            pytest.fail(f"{missing}, and {NEEDED} is set")
        pytest.skip(missing)

    def run(*options: str) -> subprocess.CompletedProcess[str]:
        with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
            return subprocess.run(
                [found, *_FLAGS, f"--user-data-dir={profile}", *options],
                capture_output=True,
                text=True,
                encoding="utf-8",
                timeout=60,
                check=True,
            )

    return run


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory, sheets: dict[str, Worksheet]) -> Path:
    """A folder of cards."""
    folder = tmp_path_factory.mktemp("cards")
    for name, sheet in sheets.items():
        (folder / f"{name}.html").write_text(html_card(sheet), encoding="utf-8")
    (folder / f"{PLAN}.html").write_text(html_plan(days()), encoding="utf-8")
    return folder


def days() -> PlanContent:
    """Return the words of a plan of two recipes, several loads, and nights."""
    kitchen = Kitchen(trays=5, tray=Tray(330.2))
    dryer, zone = dryer_of(kitchen), ZoneInfo("America/Chicago")
    jobs = [
        job_of(load_recipe(name)[0], meat_g=Fraction(mass_g), kitchen=kitchen, dryer=dryer)
        for name, mass_g in (("juniper-venison", 4000), ("woodland-mushrooms", 900))
    ]
    now = minute_of(datetime(2026, 11, 25, 9, tzinfo=zone))
    wish = Wish(now=now, start=now, nights=((22, 0), (6, 0)))
    return plan_content(make_plan(jobs, dryer, wish, zone), zone_name="America/Chicago")


@pytest.fixture(scope="module", params=["light", "dark"])
def measured(
    request: pytest.FixtureRequest, browser: Browser, pages: Path
) -> tuple[str, list[dict[str, Any]], str]:
    """What the browser measured of every card at every width, in one run a colour scheme."""
    scheme: str = request.param
    page = Path(__file__).with_name("measure.html").read_text(encoding="utf-8")
    for mark, value in {
        '"{cards}"': json.dumps([f"{name}.html" for name in SHOWN]),
        '"{widths}"': json.dumps(WIDTHS),
        "{scheme}": scheme,
    }.items():
        page = page.replace(mark, value)
    asking = pages / f"measure-{scheme}.html"
    asking.write_text(page, encoding="utf-8")
    setting = f"--blink-settings=preferredColorScheme={0 if scheme == 'dark' else 1}"
    done = browser(setting, "--virtual-time-budget=20000", "--dump-dom", asking.as_uri())
    told = re.search(r'<pre id="measured">(.*?)</pre>', done.stdout, re.DOTALL)
    assert told, done.stdout[-2000:]
    return scheme, json.loads(html.unescape(told[1])), done.stderr


def test_every_card_is_shown_in_its_own_style(
    measured: tuple[str, list[dict[str, Any]], str],
) -> None:
    """Its policy lets its style sheet through, in the colours that were asked for."""
    scheme, cards, log = measured

    assert len(SHOWN) * len(WIDTHS) == len(cards)
    assert sorted(WIDTHS * len(SHOWN)) == sorted(one["width"] for one in cards)
    assert {"fixed"} == {one["styled"] for one in cards}
    assert {scheme == "dark"} == {one["dark"] for one in cards}
    # The sheet's colour lies on the whole window, not only behind the text.
    assert {PAPER[scheme]} == {one["paper"] for one in cards}
    assert "Content Security Policy" not in log


def test_nothing_leaves_the_page_sideways(
    measured: tuple[str, list[dict[str, Any]], str],
) -> None:
    """From a small phone to a desk nobody scrolls sideways, and no text leaves its own cell."""
    _, cards, _ = measured

    for one in cards:
        where = (one["card"], one["width"])
        assert one["texts"] > 100, where
        assert one["scrolls"] <= 0, where
        assert [] == one["outside"], where
        assert [] == one["crossing"], where


def test_columns_of_the_days_stand_apart(
    measured: tuple[str, list[dict[str, Any]], str],
) -> None:
    """Between what stands side by side in a row there is room, on the smallest phone too."""
    _, cards, _ = measured
    gaps = {one["width"]: one["gap"] for one in cards if one["card"] == f"{PLAN}.html"}

    assert set(WIDTHS) == set(gaps)
    assert 6 <= min(gaps.values()) <= max(gaps.values()) < 200


def test_every_text_can_be_read(measured: tuple[str, list[dict[str, Any]], str]) -> None:
    """Each text stands out from its paper by 4.5 to 1 or more, each drawing by 3 to 1."""
    _, cards, _ = measured

    assert [] == [faint for one in cards for faint in one["faint"]]
    assert 4.5 <= min(one["least"] for one in cards) <= 21
    assert 3 <= min(one["leastDrawn"] for one in cards) <= 21


def test_the_order_for_the_eye_is_the_order_for_the_ear(
    measured: tuple[str, list[dict[str, Any]], str],
) -> None:
    """What is read later stands further down, or in a column further right."""
    _, cards, _ = measured

    assert [] == [one for card in cards for one in card["backwards"]]


def test_nothing_runs(measured: tuple[str, list[dict[str, Any]], str]) -> None:
    """A recipe full of scripts runs none of them."""
    _, cards, _ = measured

    assert {False} == {one["ran"] for one in cards}
    scripts = {one["card"]: one["scripts"] for one in cards}
    assert scripts.pop(f"{PLAN}.html") == []
    assert [["application/ld+json"]] * len(CARDS) == list(scripts.values())


def test_the_policy_stops_what_is_slipped_in(browser: Browser, pages: Path) -> None:
    """Should a tag ever get through, the page's own policy refuses it, and the log says so."""
    slipped = pages / "slipped.html"
    card = (pages / "juniper-venison.html").read_text(encoding="utf-8")
    bad = '<script>document.title = "ran"</script><p style="color: red">x</p>'
    slipped.write_text(card.replace("<main>", f"<main>{bad}"), encoding="utf-8")
    done = browser("--dump-dom", slipped.as_uri())

    assert bad in done.stdout
    assert "<title>Juniper venison strips</title>" in done.stdout
    assert 2 <= done.stderr.count("Content Security Policy")


@pytest.mark.parametrize("name", CARDS)
def test_the_printed_page_holds_every_word(
    name: str, browser: Browser, pages: Path, sheets: dict[str, Worksheet]
) -> None:
    """The browser's own print holds each piece of the card's text."""
    pdf = pages / f"{name}.pdf"
    browser("--no-pdf-header-footer", f"--print-to-pdf={pdf}", (pages / f"{name}.html").as_uri())
    reader = pypdf.PdfReader(pdf)
    printed = _letters("".join(page.extract_text() for page in reader.pages))
    card = content(sheets[name])
    pieces = [card.title, card.size, card.about, *card.steps, *card.notes]
    pieces += map(spelled, card.conditions)
    pieces += [spelled(text) for group in card.groups for item in group.items for text in item]
    pieces += [spelled(text) for row in card.figures for text in row[1:]]
    pieces += [text for one in card.cautions for text in (one.title, one.text)]
    pieces += [*card.beneath, *card.allergens, card.foot]

    assert 2 <= len(reader.pages) <= 3 or name == "hostile"
    # The page may turn in the middle of a piece, never in the middle of a word.
    lost = [word for one in pieces for word in one.split() if _letters(word) not in printed]
    assert [] == lost


def _letters(text: str) -> str:
    """Return text without spaces, capitals and ligatures: what a line break cannot change."""
    text = re.sub("[\N{REPLACEMENT CHARACTER}\ufffe]", "", text)
    text = unicodedata.normalize("NFKC", text).replace("\N{FRACTION SLASH}", "/")
    return "".join(text.split()).casefold()
