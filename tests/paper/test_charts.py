"""Pictures tell what the pages tell, and nothing by colour."""

from __future__ import annotations

import io
import re
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from tarebook.cards.beside import Variant
from tarebook.cards.worksheet import worksheet
from tarebook.paper.charts import FOOT, Chart, comparison_chart, draw, draw_as, soak_chart
from tarebook.recipe.load import load_recipe, shipped_recipes


def variant(name: str, called: str = "") -> Variant:
    """Return a shipped recipe at its own size as one side."""
    return Variant(called or name, worksheet(load_recipe(name)[0], factor=Fraction(1)))


def text_of(chart: Chart) -> str:
    """Return the words of a picture's document, blanks made plain."""
    reader = PdfReader(io.BytesIO(draw(chart)[0]))
    return " ".join(" ".join(page.extract_text().split()) for page in reader.pages)


def test_a_comparison_is_drawn_as_it_is_told() -> None:
    """Each side by its letter, with its range in figures beside its line."""
    sides = [variant("juniper-venison"), variant("cabin-rub-elk")]
    chart = comparison_chart(sides)
    sodium = sides[1].sheet.estimate.per_ounce["sodium_mg"]
    page = text_of(chart)

    assert sodium is not None
    assert f"{sodium.likely:.0f} mg, {sodium.low:.0f}–{sodium.high:.0f} mg" in page
    assert "A juniper-venison B cabin-rub-elk" in page
    assert " ".join(FOOT.split()) in page


def test_bars_lie_on_one_axis_from_zero() -> None:
    """No end lies outside it."""
    chart = comparison_chart([variant(name) for name in shipped_recipes()[:4]])

    for panel in chart.panels:
        for bar in panel.bars:
            if bar.low is not None and bar.likely is not None and bar.high is not None:
                assert 0 <= bar.low <= bar.likely <= bar.high <= panel.end


def test_what_is_only_at_least_has_no_upper_end() -> None:
    """It is open, and whose share is missing is told beneath."""
    recipe, _ = load_recipe("juniper-venison")
    unknown = recipe._replace(
        ingredients=tuple(
            one._replace(food="gochujang") if one.food == "allspice" else one
            for one in recipe.ingredients
        ),
    )
    first = Variant("gochujang", worksheet(unknown, factor=Fraction(1)))
    chart = comparison_chart([first, variant("cabin-rub-elk")])
    sugars = chart.panels[1].bars

    assert (True, False) == (sugars[0].open, sugars[1].open)
    assert sugars[0].told.startswith("at least ")
    assert any("allspice not known" in one for one in chart.notes)


def test_a_side_without_a_total_is_told_and_not_drawn() -> None:
    """No bar stands in for what is not known."""
    recipe, _ = load_recipe("cabin-rub-elk")

    salt = next(one for one in recipe.ingredients if one.food.startswith("salt"))
    bare = recipe._replace(
        ingredients=tuple(
            one._replace(food="salt") if one is salt else one for one in recipe.ingredients
        ),
    )
    chart = comparison_chart(
        [variant("juniper-venison"), Variant("bare", worksheet(bare, factor=Fraction(1)))]
    )
    bar = chart.panels[0].bars[1]

    assert (None, "no total") == (bar.low, bar.told)
    assert "no total" in text_of(chart)


@pytest.mark.parametrize("name", ["juniper-venison", "orchard-turkey", "woodland-mushrooms"])
def test_a_soak_is_drawn_hour_by_hour(name: str) -> None:
    """Salt and sugar toward balance, and what of the salt stays."""
    chart = soak_chart(variant(name).sheet)

    assert chart is not None
    page = text_of(chart)
    for hours in (2, 4, 8, 12, 24, 48):
        assert f"{hours} h" in page
    assert "in the refrigerator" in page


def test_a_drawn_soak_says_how_cold_it_is() -> None:
    """A warm one is not told as one in the refrigerator."""
    recipe, _ = load_recipe("juniper-venison")
    warm = recipe._replace(soak=recipe.soak._replace(temperature_f=(60.0, 60.0)))
    chart = soak_chart(worksheet(warm, factor=Fraction(1)))

    assert chart is not None
    assert "at 60 °F (16 °C)" in text_of(chart)
    assert "in the refrigerator" not in text_of(chart)


def test_without_a_soak_there_is_nothing_to_draw() -> None:
    """A dry rub has none."""
    assert soak_chart(variant("cabin-rub-elk").sheet) is None


@pytest.mark.parametrize("form", ["svg", "png", "pdf"])
def test_the_same_input_gives_the_same_bytes(form: str) -> None:
    """Whatever the form."""
    chart = comparison_chart([variant("juniper-venison"), variant("cabin-rub-elk")])

    assert draw_as(chart, form) == draw_as(chart, form)


def test_a_drawing_is_in_greys_alone() -> None:
    """Every colour in it is one: black and white print loses nothing."""
    chart = comparison_chart([variant("juniper-venison"), variant("cabin-rub-elk")])
    drawing = draw_as(chart, "svg").decode()
    colours = set(re.findall(r"#([0-9a-f]{6})", drawing))

    assert colours
    assert all(one[:2] == one[2:4] == one[4:] for one in colours)


def test_hostile_names_stay_names() -> None:
    """Markup of the engine and of drawings is text, and the drawing is sound XML."""
    chart = comparison_chart(
        [
            variant("juniper-venison", "#panic() *x* <script>"),
            variant("cabin-rub-elk", "$y$ @b ]]>"),
        ]
    )

    assert "#panic() *x* <script>" in text_of(chart)
    drawing = ElementTree.fromstring(draw_as(chart, "svg"))
    told = {child.tag.rpartition("}")[2]: child.text or "" for child in drawing[:2]}

    assert chart.title == told["title"]
    assert "#panic() *x* <script>" in told["desc"] and chart.foot in told["desc"]
