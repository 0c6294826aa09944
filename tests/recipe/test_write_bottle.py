"""Writing a bottle: TOML that reads back as the same bottle, kept whole or not at all."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tarebook.figures.nutrients import FIGURES
from tarebook.findings import AskedWrongly, FileUnwritable, RecordFaulty
from tarebook.quantities.amount import parse_amount
from tarebook.recipe.bottle import FOODDATA, OWN, as_taken, read_bottle
from tarebook.recipe.bottles import own_bottle, own_foods
from tarebook.recipe.model import Bottle, Pack, Panel
from tarebook.recipe.panel import PANEL_FIELDS
from tarebook.recipe.write_bottle import bottle_toml, keep_bottle

LAKESIDE = Bottle(
    key="lakeside-soy",
    name="Lakeside soy sauce",
    like="soy-sauce",
    panel=Panel(serving_ml=Fraction(15), serving_g=Fraction(17), sodium_mg=Fraction(575)),
    pack=Pack(parse_amount("15 fl oz"), Fraction("3.49")),
    contains=("soybeans", "wheat"),
    origin_date="2026-11-25",
)
PER_100_G = Panel(serving_g=Fraction(100), sodium_mg=Fraction(5493), sugars_g=Fraction(0),
                  water_g=Fraction("71.15"), ash_g=Fraction("15.31"), rounded=False)  # fmt: skip

WORDS = st.text(
    st.characters(exclude_categories=["C", "Z"], include_characters=" \"\\'#="),
    min_size=1,
    max_size=60,
).filter(str.strip)
DECIMALS = st.integers(0, 99_999).map(lambda hundredths: Fraction(hundredths, 100))


@st.composite
def panels(draw: st.DrawFn) -> Panel:
    """Draw a panel with any of the figures that a panel can have, none outweighing it."""
    grams = draw(st.sampled_from([Fraction(100), Fraction(17), Fraction(31, 3)]))
    volume = draw(st.none() | st.fractions(15, 480, max_denominator=12))
    parts = st.fractions(0, grams / 25, max_denominator=1000)
    figures = {field: draw(st.none() | parts) for field in PANEL_FIELDS.values()}
    if figures["sugars_g"] is not None and figures["added_sugars_g"] is not None:
        figures["added_sugars_g"] = min(figures["sugars_g"], figures["added_sugars_g"])
    weighed = draw(st.booleans()) or volume is None
    return Panel(serving_ml=volume, serving_g=grams if weighed else None, **figures)


@st.composite
def bottles(draw: st.DrawFn) -> Bottle:
    """Draw a bottle with anything a bottle can have."""
    origin = draw(st.sampled_from([OWN, FOODDATA]))
    panel = draw(st.none() | panels())
    size = st.sampled_from(["15 fl oz", "5/3 cup", "500 g", "1 lb 4 oz", "1 bottle"])
    packs = st.builds(Pack, size.map(parse_amount), st.none() | DECIMALS)
    check = tuple(draw(st.lists(WORDS, max_size=3)))
    contains = tuple(draw(st.lists(WORDS, max_size=3)))
    return Bottle(
        key="our-own",
        name=draw(WORDS),
        like=draw(st.sampled_from(["soy-sauce", "honey", "salt-table"])),
        panel=None if panel is None else as_taken(panel, origin),
        pack=draw(st.none() | packs),
        contains=contains if check or draw(st.booleans()) else None,
        check=check,
        origin=origin,
        origin_id=draw(st.just("") | WORDS),
        origin_date=draw(st.sampled_from(["", "2026-11-25"])),
    )


@given(bottles())
@settings(max_examples=150, suppress_health_check=[HealthCheck.too_slow], deadline=None)
def test_a_bottle_survives(bottle: Bottle) -> None:
    """Write, read is the same bottle, thirds and all."""
    text = bottle_toml(bottle)
    again, findings = read_bottle(text, key=bottle.key, file="b")

    assert bottle == again, (text, [str(one) for one in findings])


def test_what_it_looks_like() -> None:
    """A remark, then what is known of it; nothing that was not said."""
    expected = """\
# lakeside-soy: a food of our own. What its panel does not print is taken from soy-sauce.
name = "Lakeside soy sauce"
like = "soy-sauce"

[panel]
serving = "1 Tbsp (17 g)"
sodium = "575 mg"

[pack]
size = "15 fl oz"
price = 3.49

[allergens]
contains = ["soybeans", "wheat"]

[source]
date = "2026-11-25"
"""
    assert expected == bottle_toml(LAKESIDE)


def test_every_figure_of_the_model_has_a_key_of_the_panel() -> None:
    """What a table of foods states can be kept in a bottle: no figure is lost on the way."""
    assert {*FIGURES, "added_sugars_g"} == set(PANEL_FIELDS.values())


def test_a_table_s_figures_are_not_a_label_s() -> None:
    """Per 100 g from FoodData Central with all digits; a serving there was copied from a label."""
    spoon = Panel(serving_g=Fraction(17), sodium_mg=Fraction(575))
    whole = LAKESIDE._replace(panel=PER_100_G, origin=FOODDATA, origin_id="174277")

    assert whole == read_bottle(bottle_toml(whole), key="lakeside-soy", file="b")[0]
    assert as_taken(spoon, FOODDATA).rounded
    assert as_taken(PER_100_G, OWN).rounded


def test_a_bottle_is_kept(own_home: Path) -> None:
    """In the cook's own folder, which is made; recipes know it at once."""
    file = keep_bottle(LAKESIDE)

    assert own_home / "foods" / "lakeside-soy.toml" == file
    assert LAKESIDE == own_bottle("Lakeside soy")
    assert [file.name] == [one.name for one in file.parent.iterdir()]


def test_nothing_is_written_over_unasked(own_home: Path) -> None:
    """The second of a name is refused, unless it is to take the place of the first."""
    file = keep_bottle(LAKESIDE)
    dear = LAKESIDE._replace(pack=Pack(parse_amount("15 fl oz"), Fraction(5)))
    with pytest.raises(FileUnwritable, match="is there already; nothing was written over"):
        keep_bottle(dear)

    assert bottle_toml(LAKESIDE) == file.read_text()
    assert file == keep_bottle(dear, replace=True)
    assert dear == own_bottle("lakeside-soy")


@pytest.mark.parametrize(
    ("bottle", "fault", "says"),
    [
        (LAKESIDE._replace(key="../soy"), AskedWrongly, "letters, digits and hyphens"),
        (LAKESIDE._replace(key="Lakeside Soy"), AskedWrongly, "letters, digits and hyphens"),
        (LAKESIDE._replace(like="xyzzy"), RecordFaulty, 'no food is called "xyzzy"'),
        (LAKESIDE._replace(like="curing-salt-1"), RecordFaulty, "no bottle of your own"),
        (LAKESIDE._replace(like="shoyu"), AskedWrongly, "reads back the same"),
        (
            LAKESIDE._replace(pack=Pack(parse_amount("1 L"), Fraction(1, 3))),
            AskedWrongly,
            "no end of digits",
        ),
        (
            LAKESIDE._replace(panel=Panel(serving_g=Fraction(17), sugars_g=Fraction(40))),
            RecordFaulty,
            "parts weigh 40 g, more than the serving",
        ),
    ],
)
def test_what_cannot_be_read_back_is_not_written(
    bottle: Bottle, fault: type[Exception], says: str, own_home: Path
) -> None:
    """A bottle that no recipe could use leaves no file behind."""
    with pytest.raises(fault, match=says):
        keep_bottle(bottle)

    assert () == own_foods()
    assert not (own_home / "foods").exists()
