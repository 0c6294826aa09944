"""The page of a bottle: what each printed figure is taken to mean, and what is borrowed."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

import pytest

from tarebook.cards.bottle_page import bottle_data, bottle_page, printed_words
from tarebook.cards.bottles_page import bottles_data, bottles_page
from tarebook.cards.food_page import food_data
from tarebook.cards.lines import Line, width
from tarebook.figures.foods import food_keys
from tarebook.nutrition.makeup import makeup
from tarebook.quantities.amount import parse_amount
from tarebook.recipe.bottle import FOODDATA
from tarebook.recipe.model import Bottle, Pack, Panel

Unwrapped = Callable[[Iterable[Line]], str]
SPOON = Panel(serving_ml=Fraction(15), serving_g=Fraction(17), sodium_mg=Fraction(575),
              sugars_g=Fraction(0))  # fmt: skip
LAKESIDE = Bottle(
    key="lakeside-soy",
    name="Lakeside soy sauce",
    like="soy-sauce",
    panel=SPOON,
    pack=Pack(parse_amount("15 fl oz"), Fraction("3.49")),
    contains=("soybeans", "wheat"),
    check=("sesame",),
    origin_date="2026-11-25",
)


@pytest.mark.published
@pytest.mark.parametrize(
    ("figure", "printed", "expected"),
    [
        # 21 CFR 101.9(c)(4): sodium under 5 mg is 0, to 140 mg to the nearest 5, above to 10.
        ("sodium_mg", "0", "printed 0 mg: 0 to under 5"),
        ("sodium_mg", "140", "printed 140 mg: 137.5 to 145"),
        ("sodium_mg", "150", "printed 150 mg: 145 to 155"),
        ("sodium_mg", "570", "printed 570 mg: 565 to 575"),
        # 575 is no multiple of 10: whoever printed it rounds to 5.
        ("sodium_mg", "575", "printed 575 mg: 570 to 580"),
        # (c)(6)(ii): sugars under 0.5 g are 0; otherwise to the nearest gram.
        ("sugars_g", "0", "printed 0 g: 0 to under 0.5"),
        ("sugars_g", "3", "printed 3 g: 2.5 to 3.5"),
        # (c)(1): calories under 5 are 0, to 50 to the nearest 5, above to 10.
        ("energy_kcal", "10", "printed 10 kcal: 7.5 to 12.5"),
        ("energy_kcal", "60", "printed 60 kcal: 55 to 65"),
    ],
)
def test_a_printed_figure_is_an_interval(figure: str, printed: str, expected: str) -> None:
    """The rounding rules of US labels, read backwards."""
    panel = SPOON._replace(**{figure: Fraction(printed)})

    assert expected == printed_words(panel, figure)


def test_the_page(unwrapped: Unwrapped) -> None:
    """Name, density of its panel, figures printed and borrowed, pack, allergens, sources."""
    page = unwrapped(bottle_page(LAKESIDE))

    assert page.startswith("lakeside-soy: Lakeside soy sauce Your own bottle, 2026-11-25, like")
    for words in (
        "Serving 15 mL, 17 g; 1.133 g/mL from its panel (soy-sauce: 1.154).",
        "sodium 3,382 mg printed 575 mg: 570 to 580",
        "printed 0 g: 0 to under 0.5; leans to soy-sauce",
        "water 76.5 g what the rest leaves room for",
        "fat 0.57 g taken from soy-sauce (sr26)",
        "Pack: 15 fl oz, 3.49 a pack",
        "Allergens on the pack: soybeans, wheat May hold: sesame",
        "sr26: USDA National Nutrient Database",
    ):
        assert words in page


def test_a_table_s_figures_stand_as_they_are(unwrapped: Unwrapped) -> None:
    """All digits, the source and its number, no interval."""
    panel = Panel(serving_g=Fraction(100), sodium_mg=Fraction("5493.25"), rounded=False)
    page = unwrapped(
        bottle_page(LAKESIDE._replace(panel=panel, origin=FOODDATA, origin_id="174277"))
    )

    assert "sodium 5,493.25 mg fooddata-central 174277" in page
    assert "printed" not in page


def test_what_the_model_uses_is_what_is_shown(unwrapped: Unwrapped) -> None:
    """Sugars that leave less room for water, and are more than the carbohydrate of its like."""
    syrup = SPOON._replace(sugars_g=Fraction(12))
    page = unwrapped(bottle_page(LAKESIDE._replace(panel=syrup)))
    held = makeup("soy-sauce", syrup)

    assert f"water {100 * held.water:.3g} g what the rest leaves room for" in page
    assert "carbohydrate 70.6 g as much as its sugars" in page


def test_figures_of_a_serving_that_nobody_can_weigh_are_not_used(unwrapped: Unwrapped) -> None:
    """Plain salt by the spoon: said, and nothing is made of the figure."""
    panel = Panel(serving_ml=Fraction(5), sodium_mg=Fraction(2000))
    page = unwrapped(bottle_page(LAKESIDE._replace(like="salt", panel=panel)))

    assert "a spoon of salt has no weight here: weigh it" in page
    assert "Not used: sodium. Its serving has no weight" in page


def test_allergens_that_nobody_copied_are_those_of_its_kind(unwrapped: Unwrapped) -> None:
    """And that is said: the pack was not read."""
    page = unwrapped(bottle_page(LAKESIDE._replace(contains=None, check=())))

    assert "Allergens: soybeans, wheat, as soy-sauce by its kind." in page
    assert "none" in unwrapped(bottle_page(LAKESIDE._replace(contains=(), check=())))


def test_the_data_has_the_keys_of_a_food_s() -> None:
    """Each figure with what it may stand for in 100 g, beside what is borrowed."""
    data = bottle_data(LAKESIDE)
    sodium, water = (data["per_100_g"][name] for name in ("sodium_mg", "water_g"))

    assert {*food_data("soy-sauce"), "bottle"} == set(data)
    assert [570 / 0.17, 575 / 0.17, 580 / 0.17] == pytest.approx(
        [sodium["low"], sodium["value"], sodium["high"]]
    )
    assert ("own bottle", "printed") == (sodium["source"], sodium["confidence"])
    assert "what the rest leaves room for" == water["note"]
    assert 71.15 + (5493 - 575 / 0.17) / 393.366 == pytest.approx(water["value"], abs=1e-3)
    assert "taken from soy-sauce" == data["per_100_g"]["fat_g"]["note"]
    assert (["soybeans", "wheat"], ["sesame"]) == (data["allergens"], data["check_the_pack_for"])
    assert (float(Fraction(17, 15)), 3.49) == (data["density_g_per_ml"], data["bottle"]["price"])


def test_every_food_may_be_what_a_bottle_is_like() -> None:
    """Each page fits 80 columns, with a panel and without."""
    odd = LAKESIDE._replace(key="x" * 60, name="y" * 150, check=("z" * 200,))
    for like in food_keys():
        for panel in (None, SPOON):
            lines = list(bottle_page(odd._replace(like=like, panel=panel)))
            assert [] == [one.text for one in lines if width(one.text) > 80], like


def test_the_list_fits() -> None:
    """Long names wrap in their columns; an empty list says how to fill it."""
    long = LAKESIDE._replace(key="long-" * 11 + "name", like="soy-sauce-hvp-reduced-sodium")
    lines = [one.text for one in bottles_page([LAKESIDE, long])]

    assert max(map(width, lines)) <= 80
    assert "long-" * 11 + "name" == "".join(line.split()[0] for line in lines[2:])
    assert ["No bottles of your own yet: tarebook foods add NAME keeps one."] == [
        one.text for one in bottles_page([])
    ]


def test_the_list_as_data() -> None:
    """A label tablespoon of each, or 100 g; what is not printed is None."""
    half = LAKESIDE._replace(panel=SPOON._replace(serving_ml=Fraction(5), sugars_g=None))
    none = LAKESIDE._replace(panel=None)

    assert [("1 Tbsp", 575, 0), ("1 Tbsp", 1725, None), ("", None, None)] == [
        (one["of"], one["sodium_mg"], one["sugars_g"])
        for one in bottles_data([LAKESIDE, half, none])
    ]


def test_what_no_panel_prints_is_not_known_or_borrowed(unwrapped: Unwrapped) -> None:
    """Sugars without added sugars leave these unknown; sodium that is not printed is borrowed."""
    sweet = Panel(serving_ml=Fraction(15), serving_g=Fraction(17), sugars_g=Fraction(9))
    bottle = LAKESIDE._replace(panel=sweet)

    page, data = unwrapped(bottle_page(bottle)), bottle_data(bottle)["per_100_g"]

    assert "added sugars not known not printed, and not as the food that it is like" in page
    assert "borrowed from soy-sauce (sr26): its own may lie far from it" in page
    assert data["added_sugars_g"]["value"] is None
    assert data["sodium_mg"]["value"] == food_data("soy-sauce")["per_100_g"]["sodium_mg"]["value"]


def test_added_sugars_are_no_more_than_sugars() -> None:
    """Two printed zeros never come to more added sugars than sugars."""
    both = SPOON._replace(added_sugars_g=Fraction(0))

    data = bottle_data(LAKESIDE._replace(panel=both))["per_100_g"]

    assert data["added_sugars_g"]["value"] <= data["sugars_g"]["value"]
