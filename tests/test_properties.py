"""What must hold for any recipe, from the bowl to the scale."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tarebook.cards.worksheet import worksheet
from tarebook.figures.foods import food
from tarebook.nutrition import FIGURES, Estimate, assumptions, estimate, facts_of
from tarebook.nutrition.draws import column
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.model import batch
from tarebook.quantities.amount import parse_amount
from tarebook.quantities.drawer import DRAWERS
from tarebook.recipe.load import load_recipe, shipped_recipes
from tarebook.recipe.model import HeatStep, Ingredient, Meat, Part, Recipe, Soak, Surface
from tarebook.scaling import scale_by_factor
from tarebook.uptake.maths import COLUMNS, Column

MEATS = ("deer", "turkey-breast", "bison-top-round", "salmon-coho", "mushroom-portabella")
POOL = {
    "soy-sauce": ("1 Tbsp", "3/4 cup", "2 cups"),
    "worcestershire": ("1 tsp", "1/4 cup"),
    "salt-table": ("1 tsp", "15 g", "60 g"),
    "honey": ("1 Tbsp", "1/2 cup"),
    "brown-sugar": ("2 Tbsp packed", "1 cup packed"),
    "apple-juice": ("1/4 cup", "1 L"),
    "oil-olive": ("1 tsp", "1/2 cup"),
    "black-pepper": ("a pinch", "2 Tbsp ground"),
    "garlic": ("1 clove", "12 cloves"),
    "water": ("1/4 cup", "2 L"),
    "allspice": ("to taste", "1 tsp"),
}
FEW = settings(max_examples=40, deadline=None)


@st.composite
def ingredients(draw: st.DrawFn, parts: tuple[Part, ...]) -> tuple[Ingredient, ...]:
    """Some foods of the pool, each once, each in one of the parts."""
    names = draw(st.lists(st.sampled_from(sorted(POOL)), min_size=1, max_size=6, unique=True))
    return tuple(
        Ingredient(
            name=name,
            food=food(name).key,
            amount=parse_amount(draw(st.sampled_from(POOL[name]))),
            part=draw(st.sampled_from(parts)),
        )
        for name in names
    )


@st.composite
def recipes(
    draw: st.DrawFn,
    parts: tuple[Part, ...] = tuple(Part),
    heat: HeatStep | None = None,
    poured_away: bool | None = None,
) -> Recipe:
    """Any recipe for a kilogram of something."""
    hours = draw(st.sampled_from([1.0, 12.0, 72.0]))
    thick = draw(st.sampled_from([None, 2.0, 6.35, 15.0]))
    return Recipe(
        title="Any",
        meat=Meat(
            food=food(draw(st.sampled_from(MEATS))).key,
            amount=parse_amount("1 kg"),
            mass_g=Fraction(1000),
            thickness_mm=None if thick is None else (thick, thick, thick),
        ),
        ingredients=draw(ingredients(parts)),
        soak=Soak(
            hours=(hours, hours, hours),
            stated=True,
            surface=draw(st.sampled_from(list(Surface))),
            poured_away=draw(st.booleans()) if poured_away is None else poured_away,
        ),
        heat=draw(st.sampled_from(list(HeatStep))) if heat is None else heat,
    )


def facts(recipe: Recipe) -> Facts:
    """Return what is known of a recipe as written."""
    return facts_of(scale_by_factor(recipe, Fraction(1), DRAWERS["full"]))


def inputs(known: Facts, **fixed: float) -> dict[str, Column]:
    """Return 40 draws of every input, some of them held fixed."""
    drawn = {name: column(name, one.distribution, 40) for name, one in assumptions(known).items()}
    return {
        name: Column([fixed[name]] * 40 if name in fixed else values)
        for name, values in drawn.items()
    }


def ends(found: Estimate, figure: str) -> tuple[float, float, float]:
    """Return low, likely and high of an ounce."""
    one = found.per_ounce[figure]
    assert one is not None
    return one.low, one.likely, one.high


@FEW
@given(recipe=recipes(), data=st.data())
def test_the_order_of_ingredients_does_not_matter(recipe: Recipe, data: st.DataObject) -> None:
    """Written in another order, a recipe holds what it held, to the last digit that counts."""
    order = data.draw(st.permutations(recipe.ingredients))
    first = estimate(facts(recipe))
    second = estimate(facts(recipe._replace(ingredients=tuple(order))))

    for figure in FIGURES:
        assert ends(first, figure) == pytest.approx(ends(second, figure), rel=1e-9, abs=1e-9)
    assert first.finished_g.likely == pytest.approx(second.finished_g.likely)


@FEW
@given(recipe=recipes())
def test_no_figure_is_negative(recipe: Recipe) -> None:
    """Nothing holds less than nothing, low is not above likely, nor likely above high."""
    found = estimate(facts(recipe))

    for figure in FIGURES:
        for values in (found.per_ounce, found.per_batch):
            one = values[figure]
            assert one is not None
            assert 0 <= one.low <= one.likely <= one.high
        assert min(found.draws[figure]) >= 0
    assert 0 < found.finished_g.low
    assert 0 <= found.moisture_fraction.low <= found.moisture_fraction.high < 1


@FEW
@given(recipe=recipes())
def test_the_ceiling_is_never_below_high(recipe: Recipe) -> None:
    """Everything counted is never less than the high estimate."""
    found = estimate(facts(recipe))

    if found.ceiling_sodium_mg_per_oz is not None:
        assert found.ceiling_sodium_mg_per_oz >= ends(found, "sodium_mg")[2]


def _kept(recipe: Recipe) -> tuple[list[float], list[float]]:
    """Return the batch's sodium, and what was put in less the drip with the meat's own [mg]."""
    known = facts(recipe)
    x = inputs(known, model=1.0, purge=0.0)
    done = batch(known, x, COLUMNS)
    own = (known.meat["sodium_mg"] or 0.0) / 100 * known.meat_mass_g
    expected = done.sodium_put_in_mg * (1 - x["drip"]) + own * x["own-sodium"]
    return [*_list(done.figures["sodium_mg"])], [*_list(expected)]


def _list(values: object) -> list[float]:
    return list(values) if isinstance(values, Column) else [float(values)] * 40  # type: ignore[arg-type]


@FEW
@given(
    recipe=st.one_of(
        recipes(parts=(Part.RUB,), heat=HeatStep.OVEN_AFTER),
        recipes(parts=(Part.MIXED_IN,), heat=HeatStep.OVEN_AFTER),
        recipes(parts=(Part.MARINADE, Part.RUB), heat=HeatStep.OVEN_AFTER, poured_away=False),
    )
)
def test_drying_keeps_sodium_less_the_drip(recipe: Recipe) -> None:
    """Where nothing is poured away, all sodium that went in is there but for the stated drip."""
    found, expected = _kept(recipe)

    assert expected == pytest.approx(found, rel=1e-9)


@FEW
@given(recipe=recipes())
def test_no_batch_holds_more_sodium_than_went_in(recipe: Recipe) -> None:
    """However it is soaked and heated, sodium is not made: put in and the meat's own are all."""
    known = facts(recipe)
    x = inputs(known)
    done = batch(known, x, COLUMNS)
    own = (known.meat["sodium_mg"] or 0.0) / 100 * known.meat_mass_g
    most = _list(done.sodium_put_in_mg + own * x["own-sodium"])

    for held, limit in zip(_list(done.figures["sodium_mg"]), most, strict=True):
        assert held <= limit * (1 + 1e-9)


@FEW
@given(recipe=recipes(), more=st.sampled_from(["5 g", "50 g"]))
def test_more_salt_is_more_sodium(recipe: Recipe, more: str) -> None:
    """Salt added in a rub of its own never lowers the sodium of an ounce."""
    salted = Ingredient(
        name="more", food="salt-table", amount=parse_amount(more), part=Part.MIXED_IN
    )
    plain = estimate(facts(recipe))
    salty = estimate(facts(recipe._replace(ingredients=(*recipe.ingredients, salted))))

    assert ends(salty, "sodium_mg")[1] > ends(plain, "sodium_mg")[1]


def _ratios(recipe: Recipe) -> Mapping[str, tuple[float, float]]:
    """Return high over low of an ounce, guessed and with the likely weight on the scale."""
    guessed = worksheet(recipe).estimate
    weighed = worksheet(recipe, finished_g=guessed.finished_g.likely).estimate
    return {
        figure: tuple(ends(one, figure)[2] / ends(one, figure)[0] for one in (guessed, weighed))
        for figure in ("sodium_mg", "protein_g")
    }


@pytest.mark.parametrize("name", [name for name in shipped_recipes() if "mushroom" not in name])
def test_a_weighed_batch_narrows_the_protein(name: str) -> None:
    """With the finished weight known, the protein of an ounce is known more closely."""
    guessed, weighed = _ratios(load_recipe(name)[0])["protein_g"]

    assert weighed < guessed


@FEW
@given(
    grams=st.integers(5, 40),
    part=st.sampled_from([Part.MIXED_IN, Part.RUB]),
    meat=st.sampled_from(["deer", "turkey-breast", "bison-top-round"]),
)
def test_a_weighed_batch_narrows_the_sodium(grams: int, part: Part, meat: str) -> None:
    """Where nothing is poured away, weighing the batch narrows the sodium of an ounce."""
    salt = Ingredient(name="salt", food="salt-table", amount=parse_amount(f"{grams} g"), part=part)
    recipe = Recipe(
        title="Any",
        meat=Meat(food=food(meat).key, amount=parse_amount("1 kg"), mass_g=Fraction(1000)),
        ingredients=(salt,),
        heat=HeatStep.OVEN_AFTER,
    )
    guessed, weighed = _ratios(recipe)["sodium_mg"]

    assert weighed < guessed


def test_weighing_never_makes_less_sure() -> None:
    """With the likely weight on the scale no recipe of ours is less sure than it was."""
    for name in shipped_recipes():
        guessed, weighed = _ratios(load_recipe(name)[0])["sodium_mg"]
        assert weighed < 1.03 * guessed, name
