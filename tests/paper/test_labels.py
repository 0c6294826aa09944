"""Labels say what must be said, on every sheet, and never half of it."""

from __future__ import annotations

import io
from datetime import date
from fractions import Fraction

import pytest
from pypdf import PdfReader

from tarebook.cards.content import content
from tarebook.cards.worksheet import Worksheet, worksheet
from tarebook.findings import AskedWrongly
from tarebook.paper.labels import (
    DROPPED_FIRST,
    LabelWords,
    alignment_page,
    label_sheets,
    label_words,
)
from tarebook.paper.sheets import sheet_named, sheets
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import HeatStep
from tarebook.safety import keep_by

DAY = date(2026, 11, 25)
HELD = "\N{NO-BREAK SPACE}"


def batch(name: str = "juniper-venison") -> Worksheet:
    """Return a shipped recipe at its own size."""
    return worksheet(load_recipe(name)[0], factor=Fraction(1))


def words(recipe: str = "juniper-venison", **more: object) -> LabelWords:
    """Return what the labels of a shipped recipe say."""
    done = batch(recipe)
    return label_words(done, keep_by(done.case, packed_on=DAY), packed=DAY, **more)  # type: ignore[arg-type]


def text_of(pages: tuple[bytes, ...]) -> list[str]:
    """Return the text of each page, blanks made plain."""
    reader = PdfReader(io.BytesIO(pages[0]))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


@pytest.mark.parametrize("name", shipped_recipes())
def test_a_label_says_what_must_be_said(name: str) -> None:
    """Name, day, weight, how to keep it, sodium, allergens, and that it is no retail label."""
    (page,) = text_of(label_sheets(words(name), sheet_named("letter-2x5"), count=1))
    told = words(name)

    assert told.name.upper() in page.upper()
    assert "Packed 25 Nov 2026" in page and "Net weight" in page
    assert "Use by" in page or ("Keep cold" in page and "No date: " in page)
    assert ("Use by" in page) is ("if sealed, dry by the bend test and heated to 16" in page)
    assert "sodium" in page
    assert "Contains:" in page
    assert "Home estimate, not a retail label." in page


def test_a_label_rounds_sodium_as_the_card_does() -> None:
    """One figure in one rounding, on card and label, with its range behind it."""
    (sodium,) = [one for one in content(batch()).figures if one.figure == "sodium_mg"]
    told = words()

    assert f"sodium {sodium.amount}" == told.sodium.replace(HELD, " ")
    assert f"{told.sodium_range.replace('–', '-')} mg" == sodium.span


def test_a_label_has_the_likely_value_and_the_range_of_what_is_at_least() -> None:
    """With liquid smoke in it sodium is at least its likely value, not its low end."""
    recipe, _ = load_recipe("juniper-venison")
    smoked = recipe._replace(
        ingredients=tuple(
            one._replace(food="liquid-smoke") if one.food == "allspice" else one
            for one in recipe.ingredients
        ),
    )
    done = worksheet(smoked, factor=Fraction(1))
    told = label_words(done, keep_by(done.case, packed_on=DAY), packed=DAY)
    found = done.estimate.per_ounce["sodium_mg"]

    assert found is not None and found.low < found.likely
    assert f"sodium at least {found.likely:.0f} mg" == told.sodium.replace(HELD, " ")
    assert f"{found.low:.0f}–{found.high:.0f}" == told.sodium_range


@pytest.mark.published
def test_dates_are_the_shortest_published_ones() -> None:
    """Two weeks on the shelf, three months in the refrigerator, six frozen, from the day packed.

    Source: rule ``storage-cautious``, the lowest of Wyoming, Michigan State, NCHFP, FSIS and
    Minnesota.
    """
    (page,) = text_of(label_sheets(words(), sheet_named("letter-2x5"), count=1))

    told = "Use by 9 Dec 2026 on the shelf, 25 Feb 2027 in the refrigerator, 25 May 2027 frozen"
    assert told in page
    assert "Shortest published times: own working, lowest of Wyoming" in page


def test_without_a_heat_step_there_is_no_date() -> None:
    """It is kept cold until it is heated; no day of the cook's own is printed either."""
    recipe, _ = load_recipe("juniper-venison")

    done = worksheet(recipe._replace(heat=HeatStep.UNSTATED), factor=Fraction(1))
    told = label_words(
        done,
        keep_by(done.case, packed_on=DAY),
        packed=DAY,
        own_dates={"room": "Christmas", "freezer": "May 2027"},
    )
    (page,) = text_of(label_sheets(told, sheet_named("letter-2x5"), count=1))

    assert "No heat step is recorded: not to be eaten unless every piece has been 160" in page
    assert "in wet heat. No date. Keep cold until it has been." in page
    assert "Use by" not in page and "on the shelf" not in page
    assert "Christmas" not in page and "May 2027" not in page


def test_a_cooks_own_day_in_the_cold_stands_beside_it() -> None:
    """A day in the cold is the cook's to give where only cold keeps it; one on the shelf is not."""
    recipe, _ = load_recipe("woodland-mushrooms")
    done = worksheet(recipe, factor=Fraction(1))
    told = label_words(
        done,
        keep_by(done.case, packed_on=DAY),
        packed=DAY,
        own_dates={"room": "Christmas", "freezer": "May 2027"},
    )
    (page,) = text_of(label_sheets(told, sheet_named("letter-2x5"), count=1))

    assert "Use by May 2027 frozen (the cook's own)." in page
    assert "Christmas" not in page and "on the shelf" not in page


def test_the_cooks_own_day_wins_and_is_said_to_be_theirs() -> None:
    """In the place it was given for; the others stay."""
    told = words(own_dates={"room": "1 Dec 2026"})
    (page,) = text_of(label_sheets(told, sheet_named("letter-2x5"), count=1))

    assert "1 Dec 2026 (the cook's own) on the shelf, 25 Feb 2027 in the refrigerator" in page


@pytest.mark.parametrize("name", sheets())
def test_no_sheet_loses_what_is_never_left_out(name: str) -> None:
    """On the smallest label too: name, dates, weight, allergens, no retail label."""
    told = words(each_g=85.05, batch="14")
    (page,) = text_of(label_sheets(told, sheet_named(name), count=1))

    for part in (
        "Packed 25 Nov 2026",
        "Net weight 3 oz (85 g)",
        "25 May 2027",
        "fish (anchovy)",
        "Check the bottle: worcestershire.",
        "Home estimate, not a retail label.",
    ):
        assert part in page


def test_what_is_left_out_first_is_stated() -> None:
    """The keeping, the allergens and the foot are not among it."""
    assert {"keep", "allergens", "foot", "name", "net"}.isdisjoint(DROPPED_FIRST)


def test_err_words_that_no_label_holds_name_a_sheet_that_has_room() -> None:
    """Nothing is clipped: it is refused."""
    told = words(name="Grandmother's November strips " * 12)
    with pytest.raises(AskedWrongly, match=r"do not fit a label of letter-3x10; try --sheet"):
        label_sheets(told, sheet_named("letter-3x10"), count=1)


@pytest.mark.parametrize(
    ("count", "start", "pages"), [(1, 1, 1), (10, 1, 1), (11, 1, 2), (10, 2, 2), (500, 10, 51)]
)
def test_labels_run_over_as_many_sheets_as_they_need(count: int, start: int, pages: int) -> None:
    """Starting where a half-used sheet goes on."""
    found = text_of(label_sheets(words(), sheet_named("letter-2x5"), count=count, start=start))

    assert pages == len(found)
    assert count == sum(page.count("Packed") for page in found)


@pytest.mark.parametrize(("count", "start"), [(0, 1), (501, 1), (1, 0), (1, 11)])
def test_err_numbers_outside_their_range(count: int, start: int) -> None:
    """How many, and where to begin."""
    with pytest.raises(AskedWrongly):
        label_sheets(words(), sheet_named("letter-2x5"), count=count, start=start)


def test_the_same_input_gives_the_same_bytes() -> None:
    """Twice, to the last one."""
    first, again = (label_sheets(words(), sheet_named("letter-3x10"), count=40) for _ in range(2))

    assert first == again


def test_hostile_words_stay_words() -> None:
    """Markup of the engine is text on a label."""
    told = words(name="#panic() *x* $y$ <a> @b", batch="`raw` \\")
    (page,) = text_of(label_sheets(told, sheet_named("letter-2x3"), count=1))

    assert "#PANIC() *X* $Y$ <A> @B" in page.upper()


@pytest.mark.parametrize("name", sheets())
def test_the_alignment_page_shows_every_outline(name: str) -> None:
    """One page that says what it is for."""
    (page,) = text_of(alignment_page(sheet_named(name)))

    assert f"Labels, {name}." in page and "hold both to the light" in page


def test_no_claim_is_printed() -> None:
    """No words that a label would need a rule for."""
    (page,) = text_of(label_sheets(words(), sheet_named("letter-2x3"), count=1))

    for claim in ("low sodium", "healthy", "light", "free"):
        assert claim not in page.lower()


@pytest.mark.parametrize("recipe", ["juniper-venison", "orchard-turkey", "maple-dill-salmon"])
def test_a_temperature_stays_on_one_line(recipe: str) -> None:
    """Neither what the days rest on nor how cold it is kept breaks before its degrees."""
    told = words(recipe)
    said = [told.kept, *(one for one in told.keep if isinstance(one, str))]

    assert any("\N{NO-BREAK SPACE}\N{DEGREE SIGN}F" in one for one in said)
    assert not any(" \N{DEGREE SIGN}" in one for one in said)
