"""What looks like a slip in a copied panel is asked; what is merely unusual is not."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.figures.foods import food_keys
from tarebook.figures.measures import density
from tarebook.figures.nutrients import values
from tarebook.nutrition.odd_panel import odd_figures, odd_panels, off_label
from tarebook.nutrition.rounding import round_label
from tarebook.recipe import load_recipe
from tarebook.recipe.model import Panel

SPOON = Panel(serving_ml=Fraction(15), serving_g=Fraction(17))


def panel(**figures: float) -> Panel:
    """Return the panel of a spoon of 17 g."""
    return SPOON._replace(**{name: Fraction(str(value)) for name, value in figures.items()})


LIKELY = panel(energy_kcal=10, fat_g=0, sodium_mg=575, carbohydrate_g=1, sugars_g=0, protein_g=2)


def test_a_likely_panel_is_not_asked_about() -> None:
    """A bottle as shops have them."""
    assert () == odd_figures(LIKELY, "soy-sauce")


@pytest.mark.parametrize(
    ("figures", "expected"),
    [
        ({"sodium_mg": 5750}, "sodium 5,750 mg in 17 g; soy-sauce has 934 mg: is it 575 mg?"),
        ({"sodium_mg": 57}, "sodium 57 mg in 17 g; soy-sauce has 934 mg: is it 570 mg?"),
        ({"sodium_mg": 0}, "sodium 0 mg in 17 g; soy-sauce has 934 mg; is it copied right?"),
        (
            {"serving_g": 40},
            "15 mL at 40 g is 2.7 g a mL; soy-sauce would weigh 17.3 g: is the serving copied "
            "right?",
        ),
        ({"serving_g": 1.7}, "15 mL at 1.7 g is 0.11 g a mL; soy-sauce would weigh 17.3 g: is "
         "the serving copied right?"),
        (
            {"sugars_g": 3},
            "sugars 3 g are more than carbohydrate 1 g, which they are part of",
        ),
        ({"fiber_g": 4}, "fiber 4 g are more than carbohydrate 1 g, which they are part of"),
        (
            {"saturated_g": 1},
            "saturated fat 1 g are more than fat 0 g, which they are part of",
        ),
        (
            {"energy_kcal": 100},
            "100 kcal is far from 12: carbohydrate and protein bring 4 a gram, fat 9. Is one of "
            "them copied wrongly?",
        ),
        ({"energy_kcal": 30, "protein_g": 12}, "30 kcal is far from 52: carbohydrate and protein "
         "bring 4 a gram, fat 9. Is one of them copied wrongly?"),
        (
            {"carbohydrate_g": 12, "sugars_g": 12, "energy_kcal": 60},
            "sugars 12 g in 17 g; soy-sauce has 0.068 g: is it like another food?",
        ),
    ],
)  # fmt: skip
def test_a_slip_is_asked(figures: dict[str, float], expected: str) -> None:
    """Each of the slips that cooks make, by itself, with what was likelier."""
    copied = {name: Fraction(str(value)) for name, value in figures.items()}

    assert expected in odd_figures(LIKELY._replace(**copied), "soy-sauce")


def test_a_spoon_that_nobody_can_weigh_is_told() -> None:
    """Plain salt has no density of its own: a serving by measure alone cannot be used."""
    (told,) = odd_figures(Panel(serving_ml=Fraction(5), sodium_mg=Fraction(2000)), "salt")

    assert "no weight is known for a spoon of salt" in told


def test_rounding_is_no_slip() -> None:
    """1 g of sugars in 0 g of carbohydrate, both rounded from 0.5: nothing to ask."""
    close = panel(carbohydrate_g=1, sugars_g=1, fiber_g=1, energy_kcal=5, protein_g=0, fat_g=0)

    assert () == odd_figures(close, "rice-vinegar")


def test_alcohol_and_acid_burn_too() -> None:
    """Wine and vinegar have more calories than carbohydrate, protein and fat bring."""
    wine = panel(energy_kcal=20, fat_g=0, carbohydrate_g=0, protein_g=0)

    assert () == odd_figures(wine, "red-wine")
    assert any("kcal" in one for one in odd_figures(wine, "water"))


def as_label(key: str, grams: Fraction) -> Panel:
    """Return a food's own row as a label would print it."""
    known = density(key)
    figures = {
        name: Fraction(str(round_label(name, value * float(grams) / 100).value))
        for name, value in values(key).items()
        if value is not None and name not in ("water_g", "ash_g")
    }
    volume = None if known is None else grams / known.g_per_ml
    return Panel(serving_ml=volume, serving_g=grams, **figures)


@pytest.mark.parametrize("grams", [5, 17, 100])
def test_the_tables_own_rows_raise_no_question(grams: int) -> None:
    """But two: baking powders bring less than 4 a gram, and that row of maple syrup is odd."""
    asked = {key for key in food_keys() if odd_figures(as_label(key, Fraction(grams)), key)}

    assert asked <= {"maple-syrup", "baking-powder", "baking-powder-phosphate"}


def test_a_recipe_without_a_panel_raises_no_question() -> None:
    """Only panels that stand in the recipe itself are looked through."""
    recipe, _ = load_recipe("juniper-venison")

    assert () == tuple(odd_panels(recipe))


def test_a_figure_that_no_label_prints_is_remarked_on() -> None:
    """575 mg over 140, where labels go by tens: how it is taken is told, and nothing is asked."""
    odd = panel(sodium_mg=575, energy_kcal=10, sugars_g=1.5, iron_mg=0.4, vitamin_d_ug=0.25)

    assert (
        "vitamin d 0.25 mcg is none that US labels round to; taken as 0.2 to 0.3 mcg"
        == off_label(odd)[-1]
    )
    assert {
        "sodium 575 mg is none that US labels round to; taken as 570 to 580 mg",
        "sugars 1.5 g is none that US labels round to; taken as 1 to 2 g",
    } == set(off_label(odd)[:-1])
    assert () == off_label(odd._replace(rounded=False))


def test_a_panel_that_labels_print_is_not_remarked_on() -> None:
    """Every figure by the steps of its rule."""
    assert () == off_label(LIKELY._replace(sodium_mg=Fraction(580)))
