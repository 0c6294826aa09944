"""A gram of every food of the tables, parted a second time from its row; and bottles beside it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.figures.foods import Food, food, food_keys
from tarebook.figures.nutrients import values
from tarebook.figures.sugars import split
from tarebook.figures.working import value
from tarebook.nutrition.makeup import Makeup, composed, makeup
from tarebook.nutrition.printed import read_panel, serving_g, span
from tarebook.nutrition.rounding import percent_daily_value, round_label, unrounded
from tarebook.recipe.model import Panel

DISSOLVE = {"sauce", "acid", "liquid", "sweetener", "salt", "dairy"}
PLANTS = {"acid", "spice", "herb", "fresh", "sweetener", "starch", "salt"}
THROUGH = (
    "protein_g", "cholesterol_mg", "calcium_mg", "iron_mg", "vitamin_d_ug", "fat_g", "saturated_g",
    "fiber_g", "potassium_mg",
)  # fmt: skip


def parted(key: str) -> dict[str, float]:
    """Return the classes of 100 g of a food, from its row."""
    row, item = values(key), food(key)
    known = {name: amount or 0.0 for name, amount in row.items()}
    salt = known["sodium_mg"] / 1000 * 58.443 / 22.98977
    salt += known["potassium_mg"] / 1000 * 74.5513 / 39.0983
    sugars = sugars_of(key)
    water, dry = water_of(item, row)
    salt = min(salt, max(dry - known["fat_g"], 0.0))
    rest = max(dry - known["fat_g"] - salt - sugars, 0.0)
    fiber = min(known["fiber_g"], rest)
    share = sucrose_share(key)
    dissolves = item.kind in DISSOLVE
    return {
        "water": water,
        "salt": salt,
        "sucrose": sugars * share,
        "hexose": sugars * (1 - share),
        "other": rest - fiber if dissolves else 0.0,
        "suspended": fiber if dissolves else rest,
        "oil": known["fat_g"],
    }


def sugars_of(key: str) -> float:
    """Return its sugars in 100 g; where nobody states them, half of what they can be."""
    row = values(key)
    if row["sugars_g"] is not None:
        return row["sugars_g"]
    if row["carbohydrate_g"] is None:
        return 0.0
    return max(row["carbohydrate_g"] - (row["fiber_g"] or 0.0), 0.0) / 2


def water_of(item: Food, row: object) -> tuple[float, float]:
    """Return water with what leaves like it, and dry matter, of 100 g."""
    figures = values(item.key)
    water = figures["water_g"]
    if water is None:
        thin = item.kind in ("liquid", "acid")
        wet = "stand-in-water-thin" if thin else "stand-in-water-sauce"
        key = wet if item.kind in DISSOLVE else "stand-in-water-solid"
        water = 0.0 if item.kind == "salt" else 100 * value(key).likely
    dry = 100 - water
    stated = [figures[one] for one in ("protein_g", "fat_g", "carbohydrate_g", "ash_g")]
    if item.kind in DISSOLVE and all(one is not None for one in stated):
        found = sum(one for one in stated if one is not None)
        if found > 0 and dry - found > 1.5:  # the rest is alcohol or acid
            return 100 - found, found
    return water, dry


def sucrose_share(key: str) -> float:
    """Return the part of its sugars that travels as sucrose does; a half where nobody knows."""
    sugars = split(key)
    if sugars.sucrose is None or sugars.hexose is None:
        return 0.5
    double = sugars.sucrose + (sugars.other or 0.0)
    return double / (double + sugars.hexose) if double + sugars.hexose else 0.5


def gaps(key: str) -> set[str]:
    """Return the figures that its row leaves open."""
    row, item, sugars = values(key), food(key), split(key)
    found = {name for name, amount in row.items() if amount is None}
    if item.kind in PLANTS:
        found.discard("cholesterol_mg")
    if item.kind == "salt" and not row["carbohydrate_g"]:
        found -= {"calcium_mg", "iron_mg", "vitamin_d_ug"}
    unsure = sugars.added != "all" and sugars.added_high > sugars.added_low
    if row["sugars_g"] is None or (unsure and row["sugars_g"]):
        found.add("added_sugars_g")
    if row["sugars_g"] is None and row["carbohydrate_g"] is not None:
        found -= {"sugars_g"}
    return found


def test_every_food_is_parted_by_its_row() -> None:
    """The classes of a gram are those that its row gives by hand."""
    for key in food_keys():
        found = makeup(key)

        for name, grams in parted(key).items():
            assert grams / 100 == pytest.approx(getattr(found, name), abs=1e-12), name


def test_every_food_carries_its_other_figures() -> None:
    """What a row states goes through as it is, starch is carbohydrate without sugars."""
    for key in food_keys():
        row, found = values(key), makeup(key)
        expected = {name: (row[name] or 0.0) / 100 for name in THROUGH if row[name]}
        starch = max((row["carbohydrate_g"] or 0.0) - sugars_of(key), 0.0) / 100

        assert (row["sodium_mg"] or 0.0) / 100 == found.sodium_mg
        assert starch == pytest.approx(found.figures.get("starch_g", 0.0))
        assert expected == {name: one for name, one in found.figures.items() if name != "starch_g"}


def test_no_food_is_without_doubt() -> None:
    """A pure salt's sodium is known best; any other's as well as a sauce's."""
    for key in food_keys():
        pure = food(key).kind == "salt" and (values(key)["sodium_mg"] or 0) > 30_000
        usual = value("pure-salt-sodium-cv" if pure else "sauce-sodium-cv").likely

        assert usual == makeup(key).sodium_cv
        assert makeup(key).rough is (values(key)["water_g"] is None and food(key).kind != "salt")
        assert not makeup(key).sodium_borrowed


def test_what_of_its_sugars_is_added_goes_by_class() -> None:
    """Of what is added for certain, and no more."""
    for key in food_keys():
        assert split(key).added_low == makeup(key).added


def test_gaps_are_named_by_the_row() -> None:
    """What a row does not state is missing, but for what a food of that kind cannot have."""
    for key in food_keys():
        found = makeup(key).missing
        if makeup(key).sugars_bounded:  # sugars with a bound are a doubt, and no gap
            found -= {"sugars_g", "added_sugars_g"}
            assert found == frozenset(gaps(key) - {"sugars_g", "added_sugars_g"}), key
        else:
            assert found == frozenset(gaps(key)), key


def bottle(key: str, **figures: str) -> Makeup:
    """Return a bottle like a food: 100 g a serving, figures as a laboratory gave them."""
    return makeup(key, printed_panel(**figures))


def printed_panel(**figures: str) -> Panel:
    """Return a panel of 100 g whose figures were never rounded."""
    given = {name: Fraction(amount) for name, amount in figures.items()}
    return Panel(serving_g=Fraction(100), rounded=False, **given)


def test_a_bottles_carbohydrate_is_at_least_its_sugars() -> None:
    """Sugars over the row's carbohydrate raise it; sugars under it leave it."""
    row = values("soy-sauce")["carbohydrate_g"]
    assert row is not None
    assert 40.0 == composed("soy-sauce", {"sugars_g": 40.0})["carbohydrate_g"]
    assert row == composed("soy-sauce", {"sugars_g": row - 1})["carbohydrate_g"]


def test_a_bottles_ash_follows_its_salt() -> None:
    """So much more salt is so much more ash; and ash is never less than the salt in it."""
    row = values("soy-sauce")
    own = (row["sodium_mg"] or 0) / 1000 * 58.443 / 22.98977
    for sodium in (1000.0, 5493.0, 8000.0):
        salt = sodium / 1000 * 58.443 / 22.98977
        expected = max((row["ash_g"] or 0) - own + salt, salt)
        assert expected == pytest.approx(composed("soy-sauce", {"sodium_mg": sodium})["ash_g"])
    assert 9.0 == composed("soy-sauce", {"sodium_mg": 8000.0, "ash_g": 9.0})["ash_g"]


def test_a_bottles_water_is_what_is_left() -> None:
    """It takes up what the other parts leave, never less than none; as printed where it is."""
    full = composed("soy-sauce", {"carbohydrate_g": 70.0})
    parts = sum(full[name] or 0 for name in ("protein_g", "fat_g", "carbohydrate_g", "ash_g"))
    assert full["water_g"] == pytest.approx(100 - parts)
    assert 0.0 == composed("soy-sauce", {"carbohydrate_g": 99.0})["water_g"]
    assert 50.0 == composed("soy-sauce", {"carbohydrate_g": 99.0, "water_g": 50.0})["water_g"]
    thin = composed("soy-sauce", {"carbohydrate_g": 1.0})
    row = values("soy-sauce")
    assert thin["water_g"] == pytest.approx(71.15 + 4.93 - 1.0)
    less_salt = composed("soy-sauce", {"sodium_mg": 3382.0})
    assert less_salt["water_g"] == pytest.approx(71.15 + (5493 - 3382) / 393.366, abs=1e-3)
    assert row["water_g"] == composed("soy-sauce", {"calcium_mg": 1.0})["water_g"]


@pytest.mark.parametrize("like", ["soy-sauce", "teriyaki-sauce", "vinegar-cider", "honey"])
@pytest.mark.parametrize("printed", [{"sodium_mg": 50.0}, {"sugars_g": 20.0}, {"protein_g": 3.0}])
def test_the_parts_of_a_bottle_add_up_to_those_of_its_food(
    like: str, printed: dict[str, float]
) -> None:
    """Per 100 g they come to what the row comes to: 100 g, less acid and alcohol."""
    parts = ("water_g", "protein_g", "fat_g", "carbohydrate_g", "ash_g")
    own, row = composed(like, printed), values(like)

    assert sum(own[one] or 0 for one in parts) == pytest.approx(
        sum(row[one] or 0 for one in parts), abs=0.02
    )


def test_added_sugars_of_a_bottle_are_a_part_of_its_sugars() -> None:
    """As printed, over the sugars printed, and at most all of them."""
    assert 0.25 == bottle("soy-sauce", sugars_g="8", added_sugars_g="2").added
    assert 1.0 == bottle("soy-sauce", sugars_g="8", added_sugars_g="8").added


def test_borrowed_sodium_is_told() -> None:
    """A bottle that prints none takes the food's, with a wider doubt; one that prints keeps its."""
    borrowed, own = bottle("soy-sauce", sugars_g="1"), bottle("soy-sauce", sodium_mg="5000")

    assert borrowed.sodium_borrowed and not own.sodium_borrowed
    assert value("borrowed-sodium-cv").likely == borrowed.sodium_cv
    assert value("sauce-sodium-cv").likely == own.sodium_cv
    assert 50.0 == own.sodium_mg
    assert value("pure-salt-sodium-cv").likely == bottle("salt-table", fat_g="0").sodium_cv


def test_a_rounded_sodium_adds_its_rounding_to_the_doubt() -> None:
    """575 mg stands for 570 to 580: an even law's deviation, beside that of a sauce."""
    panel = Panel(serving_g=Fraction(17), sodium_mg=Fraction(575))
    rounding = 10 / 575 / 12**0.5

    expected = (value("sauce-sodium-cv").likely ** 2 + rounding**2) ** 0.5
    assert expected == pytest.approx(makeup("soy-sauce", panel).sodium_cv)


def test_a_serving_weighs_what_is_printed_or_what_its_food_does() -> None:
    """Grams first; else by the density of the food; else nobody knows."""
    from tarebook.figures.measures import density

    known = density("soy-sauce")
    assert known is not None
    assert 17.0 == serving_g(Panel(serving_ml=Fraction(15), serving_g=Fraction(17)), "soy-sauce")
    by_density = serving_g(Panel(serving_ml=Fraction(15)), "soy-sauce")
    assert float(15 * known.g_per_ml) == by_density
    assert serving_g(Panel(), "soy-sauce") is None
    assert serving_g(Panel(serving_ml=Fraction(15)), "salt") is None


def test_a_panel_comes_to_so_much_in_100_g() -> None:
    """A figure of a serving of 20 g is a fifth of that of 100 g."""
    found = read_panel(Panel(serving_g=Fraction(20), sodium_mg=Fraction(580)), "soy-sauce")

    assert {"sodium_mg"} == found.keys()
    assert 2900 == pytest.approx(found["sodium_mg"].amount)
    assert {} == read_panel(Panel(sodium_mg=Fraction(580)), "soy-sauce")


def test_no_more_sugars_are_added_than_there_are() -> None:
    """Two printed zeros: the sugars lean to the table, the added ones stay within them."""
    panel = Panel(serving_g=Fraction(17), sugars_g=Fraction(0), added_sugars_g=Fraction(0))
    for key in food_keys():
        found = read_panel(panel, key)
        assert found["added_sugars_g"].amount <= found["sugars_g"].amount + 1e-12, key


def test_what_a_figure_may_stand_for() -> None:
    """Rounded, what rounds to it; as measured, itself alone."""
    rounded = Panel(serving_g=Fraction(17), sodium_mg=Fraction(575))

    assert (570, 580) == span(rounded, "sodium_mg")
    assert (575.0, 575.0) == span(rounded._replace(rounded=False), "sodium_mg")
    assert (0.0, 0.5) == span(rounded._replace(sugars_g=Fraction(0)), "sugars_g")


@pytest.mark.parametrize(
    ("figure", "amount", "printed"),
    [
        ("energy_kcal", "4.99", "0"), ("energy_kcal", "5", "5"), ("energy_kcal", "50", "50"),
        ("energy_kcal", "50.1", "50"), ("energy_kcal", "47.5", "50"), ("energy_kcal", "52.5", "50"),
        ("fat_g", "4.99", "5"), ("fat_g", "5", "5"), ("fat_g", "5.49", "5"),
        ("cholesterol_mg", "5.1", "5"), ("sodium_mg", "140.1", "140"),
        ("sodium_mg", "142.6", "140"),
        ("protein_g", "1", "1"), ("trans_g", "0.49", "0"), ("trans_g", "0.5", "0.5"),
        ("calcium_mg", "5", "10"), ("iron_mg", "0.05", "0.1"), ("iron_mg", "0.049", "0"),
        ("vitamin_d_ug", "10", "10"), ("potassium_mg", "4.9", "0"),
    ],
)  # fmt: skip
def test_rounding_turns_where_the_rule_says(figure: str, amount: str, printed: str) -> None:
    """The last amount of one step and the first of the next, written without a needless zero."""
    from decimal import Decimal

    assert printed == round_label(figure, Decimal(amount)).text


@pytest.mark.parametrize(
    ("percent", "printed"),
    [
        ("1.99", 0), ("2", 2), ("2.9", 2), ("3", 4), ("10", 10), ("10.9", 10), ("11", 10),
        ("12.5", 15), ("50", 50), ("52", 50), ("54.9", 50), ("55", 60), ("100", 100),
    ],
)  # fmt: skip
def test_vitamins_and_minerals_step_by_their_share(percent: str, printed: int) -> None:
    """Steps of 2 to 10 %, of 5 to 50 %, of 10 above; under 2 % nothing is claimed."""
    from decimal import Decimal

    assert printed == percent_daily_value("iron_mg", Decimal(percent), 100)
    assert round(float(percent) + 1e-9) == percent_daily_value("sodium_mg", Decimal(percent), 100)


@pytest.mark.parametrize("figure", ["energy_kcal", "fat_g", "cholesterol_mg", "sodium_mg",
                                    "sugars_g", "iron_mg", "calcium_mg"])  # fmt: skip
def test_spans_are_what_a_fine_search_finds(figure: str) -> None:
    """Every hundredth from 0 to 160 is rounded; what prints alike lies in one span.

    But for "less than" figures, which stand for more than one rule prints as numbers.
    """
    from decimal import Decimal

    seen: dict[Fraction, list[Fraction]] = {}
    for hundredths in range(16_001):
        amount = Decimal(hundredths) / 100
        one = round_label(figure, amount)
        if not one.text.startswith("less"):
            seen.setdefault(Fraction(one.value), []).append(Fraction(amount))
    for printed, amounts in list(seen.items())[:-1]:
        low, high = unrounded(figure, printed)
        assert low <= min(amounts) and max(amounts) < high
        if one_rule(figure, printed):
            assert min(amounts) - low < Fraction(1, 100)
            assert high - max(amounts) <= Fraction(1, 100)


def one_rule(figure: str, printed: Fraction) -> bool:
    """Return whether numbers alone stand for a figure, not "less than" too."""
    return not (figure in ("sugars_g",) and printed == 1) and not (
        figure == "cholesterol_mg" and printed == 5
    )
