"""What a gram of an ingredient brings, by hand from its row, and a bottle's own panel."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tarebook.figures.measures import density
from tarebook.figures.nutrients import values
from tarebook.nutrition.draws import Even
from tarebook.nutrition.makeup import Makeup, composed, dissolves, makeup
from tarebook.recipe.model import Panel

CLASSES = ("water", "salt", "sucrose", "hexose", "other", "suspended", "oil")


def classes(one: Makeup) -> dict[str, float]:
    """Return the parts of a gram by class."""
    return {name: getattr(one, name) for name in CLASSES}


def salts(sodium_mg: float, potassium_mg: float) -> float:
    """Return sodium and potassium as their chlorides [g]; atomic weights from memory."""
    return sodium_mg / 1000 * 58.443 / 22.98977 + potassium_mg / 1000 * 74.5513 / 39.0983


@pytest.mark.published
@pytest.mark.parametrize(
    ("key", "expected"),
    [
        # USDA SR26 rows, per 100 g: water; Na and K; sugars; fat; fiber; "other" is what is left.
        # 16123
        ("soy-sauce", {"water": 71.15, "salt": salts(5493, 435), "hexose": 0.4, "oil": 0.57,
                       "suspended": 0.8}),
        # 19296; its sucrose and hexoses 5.43 and 76.69 of 82.12
        ("honey", {"water": 17.1, "salt": salts(4, 52), "sucrose": 5.43, "hexose": 76.69,
                   "suspended": 0.2}),
        ("salt-table", {"water": 0.2, "salt": salts(38758, 8)}),  # 02047
        # 02048: 93.81 water; of 6.19 dry, carbohydrate and ash are 1.10: the rest is acid.
        ("vinegar-cider", {"water": 98.90, "salt": salts(5, 73), "hexose": 0.40}),
        ("oil-olive", {"oil": 100.0}),  # 04053
    ],
)  # fmt: skip
def test_a_gram_is_parted_by_what_becomes_of_it(key: str, expected: dict[str, float]) -> None:
    """Each class is what the row states; other dissolved matter is what is left of the gram."""
    whole = {name: expected.get(name, 0.0) for name in CLASSES}
    whole["other"] = 100 - sum(whole.values())

    found = {name: 100 * part for name, part in classes(makeup(key)).items()}

    assert whole == pytest.approx(found, abs=1e-3)


def test_acid_counts_as_water() -> None:
    """Acetic acid dissolves and leaves in drying: cider vinegar is wetter than its water alone."""
    assert makeup("vinegar-cider").water == pytest.approx(1 - 0.0093 - 0.0017)


def test_pepper_hangs_in_the_marinade() -> None:
    """Of pepper, only its salts and sugars dissolve; its grains are suspended, its fat is oil."""
    found = makeup("black-pepper")

    assert not dissolves("black-pepper")
    assert found.other == 0.0
    assert found.suspended > 0.75
    assert sum(classes(found).values()) == pytest.approx(1.0)


@pytest.mark.parametrize(
    "key",
    ["soy-sauce", "honey", "salt-table", "vinegar-cider", "oil-olive", "black-pepper", "wine-red"],
)
def test_a_gram_is_a_gram(key: str) -> None:
    """The classes of a gram add up to it, and none is negative."""
    found = classes(makeup(key))

    assert sum(found.values()) == pytest.approx(1.0, abs=2e-3)
    assert min(found.values()) >= 0


def test_a_panel_wins_over_the_table() -> None:
    """Sodium and sugars of the bottle stand in place of the row's; the rest stays."""
    panel = Panel(
        serving_ml=Fraction(15),
        serving_g=Fraction(17),
        sodium_mg=Fraction(575),
        sugars_g=Fraction(1),
        added_sugars_g=Fraction(1, 2),
    )
    found = makeup("soy-sauce", panel)

    assert found.sodium_mg == pytest.approx(575 / 17)
    assert found.sucrose + found.hexose == pytest.approx(1 / 17)
    assert found.added == pytest.approx(0.5)
    # Its salt is 8.60 g of ash where the row has 13.96; what that leaves counts as water.
    ash = 15.21 - 13.964 + 8.598
    assert found.water == pytest.approx(1 - (8.14 + 0.57 + 100 / 17 + ash) / 100, abs=1e-4)


def test_a_panel_by_volume_takes_the_density_of_the_table() -> None:
    """A label tablespoon is 15 mL; without a weight of its own the sauce's density turns it."""
    known = density("soy-sauce")
    assert known is not None

    found = makeup("soy-sauce", Panel(serving_ml=Fraction(15), sodium_mg=Fraction(900)))

    assert found.sodium_mg == pytest.approx(900 / float(15 * known.g_per_ml))


def test_a_panel_with_no_serving_says_nothing() -> None:
    """Sodium "per serving" of unknown size cannot be used: the row stands."""
    assert makeup("soy-sauce", Panel(sodium_mg=Fraction(900))).sodium_mg == pytest.approx(54.93)


@pytest.mark.parametrize("key", ["soy-sauce-low-sodium", "soy-sauce-hvp"])
def test_an_unknown_split_stays_not_known(key: str) -> None:
    """Where nobody says what part of the sugars is added, none is counted and the gap is named."""
    found = makeup(key)

    assert found.added == 0.0
    assert "added_sugars_g" in found.missing


def test_a_panel_closes_the_gap_of_added_sugars() -> None:
    """The bottle's own added sugars end the doubt, even when they are none."""
    panel = Panel(serving_g=Fraction(16), sugars_g=Fraction(1), added_sugars_g=Fraction(0))

    assert "added_sugars_g" not in makeup("soy-sauce-low-sodium", panel).missing


@pytest.mark.parametrize(
    ("key", "added"),
    [("honey", 1.0), ("brown-sugar", 1.0), ("apple-juice", 0.0), ("soy-sauce", 0.0)],
)
def test_added_sugars_go_by_class(key: str, added: float) -> None:
    """Honey and sugar are added sugars whole; those of plain juice and of brewing are not."""
    assert added == makeup(key).added
    assert "added_sugars_g" not in makeup(key).missing


def test_plain_salt_is_known_better_than_a_sauce() -> None:
    """The sodium of table salt is off by less than that of a sauce."""
    assert makeup("salt-table").sodium_cv < makeup("soy-sauce").sodium_cv


def test_rounding_widens_the_doubt_of_sodium() -> None:
    """A spoon of weak stock printed as 5 mg may hold half as much again; 575 mg is near enough."""
    coarse = makeup("soy-sauce", Panel(serving_g=Fraction(15), sodium_mg=Fraction(5)))
    fine = makeup("soy-sauce", Panel(serving_g=Fraction(17), sodium_mg=Fraction(575)))
    table = makeup("soy-sauce")

    assert 1.2 * table.sodium_cv < coarse.sodium_cv
    assert fine.sodium_cv == pytest.approx(table.sodium_cv, rel=1e-2)


def test_only_a_panel_leaves_sugars_open_by_rounding() -> None:
    """The table's sugars are as the source has them; printed ones were rounded."""
    panel = Panel(serving_g=Fraction(17), sodium_mg=Fraction(575))

    assert makeup("soy-sauce").sugars_off is None
    assert makeup("soy-sauce", panel).sugars_off is None
    assert Even(0.5, 1.5) == makeup("soy-sauce", panel._replace(sugars_g=Fraction(1))).sugars_off


def test_a_printed_zero_is_no_zero() -> None:
    """0 g of sugars on a bottle of teriyaki is some; on salt it is none."""
    panel = Panel(serving_g=Fraction(15), sugars_g=Fraction(0))
    sauce, salt = makeup("teriyaki-sauce", panel), makeup("salt-table", panel)

    assert 0.25 / 15 == pytest.approx(sauce.sucrose + sauce.hexose)
    assert (0.0, None) == (salt.sucrose + salt.hexose, salt.sugars_off)


def test_all_that_a_panel_prints_stands_before_the_row() -> None:
    """Fiber, iron, calcium and the rest as well; what is not printed is the row's."""
    panel = Panel(
        serving_g=Fraction(20),
        carbohydrate_g=Fraction(10),
        fiber_g=Fraction(4),
        iron_mg=Fraction(2),
        calcium_mg=Fraction(40),
        saturated_g=Fraction(2),
        cholesterol_mg=Fraction(10),
        vitamin_d_ug=Fraction(1),
        fat_g=Fraction(3),
    )
    found, row = makeup("soy-sauce", panel), makeup("soy-sauce")
    per_gram = {"fiber_g": 0.2, "iron_mg": 0.1, "calcium_mg": 2.0, "saturated_g": 0.1,
                "cholesterol_mg": 0.5, "vitamin_d_ug": 0.05, "fat_g": 0.15}  # fmt: skip

    assert per_gram == pytest.approx({name: found.figures[name] for name in per_gram})
    assert row.figures["potassium_mg"] == found.figures["potassium_mg"]


@pytest.mark.parametrize("key", ["soy-sauce", "honey", "worcestershire-sauce", "apple-juice"])
def test_a_row_kept_as_a_bottle_is_that_row(key: str) -> None:
    """A table's figures per 100 g, kept with all their digits, come to what the row comes to."""
    row = {name: one for name, one in values(key).items() if one is not None}
    exact = {name: Fraction(repr(one)) for name, one in row.items()}
    panel = Panel(serving_g=Fraction(100), rounded=False, **exact)

    assert makeup(key)._replace(sugars_off=None, figures={}) == makeup(key, panel)._replace(
        figures={}
    )
    assert makeup(key).figures == pytest.approx(makeup(key, panel).figures)


def test_stated_water_stands_before_the_row_s() -> None:
    """Another sauce of its kind holds more water: its own figure decides, and no stand-in is."""
    panel = Panel(serving_g=Fraction(100), water_g=Fraction(85), ash_g=Fraction(3), rounded=False)
    panel = panel._replace(protein_g=Fraction(4), carbohydrate_g=Fraction(8), fat_g=Fraction(0))

    assert makeup("soy-sauce", panel).water == pytest.approx(0.85)
    assert not makeup("soy-sauce", panel).rough


@pytest.mark.parametrize("sugars", [0, 3, 9, 12, 15])
def test_what_a_panel_prints_takes_the_place_of_water(sugars: int) -> None:
    """A gram stays a gram: a syrup that is like a thin sauce holds less of that sauce's water."""
    panel = Panel(serving_g=Fraction(17), sodium_mg=Fraction(575), sugars_g=Fraction(sugars))
    found = makeup("soy-sauce", panel)

    assert sum(classes(found).values()) == pytest.approx(1.0, abs=2e-3)
    assert (found.water < makeup("soy-sauce").water) == (sugars > 0)


@pytest.mark.parametrize(
    ("key", "sugars_g", "unknown"),
    [
        ("soy-sauce", 9, True),  # its own sugars are none added; it has 0.07 g in 18 g
        ("soy-sauce", 0, False),
        ("apple-juice", 2, False),  # 1.7 g in 18 g by the table
        ("maple-syrup", 15, False),  # all of a syrup's sugars count as added
        ("teriyaki-sauce", 3, True),  # part of them, nobody says how much
        ("orange-juice-concentrate", 6, True),  # the table's own share is of its own sugars
    ],
)
def test_sugars_printed_without_added(key: str, sugars_g: int, unknown: bool) -> None:
    """Added sugars that a panel leaves out are not known, but where the tables say all or none."""
    panel = Panel(serving_g=Fraction(18), sugars_g=Fraction(sugars_g))

    assert unknown == ("added_sugars_g" in makeup(key, panel).missing)


def test_added_sugars_printed_are_known() -> None:
    """A panel that prints both leaves nothing out."""
    panel = Panel(serving_g=Fraction(18), sugars_g=Fraction(9), added_sugars_g=Fraction(8))

    assert "added_sugars_g" not in makeup("soy-sauce", panel).missing


def test_borrowed_sodium_is_in_wider_doubt() -> None:
    """A bottle without sodium on its panel has that of the food it is like, far less surely."""
    silent = Panel(serving_g=Fraction(17), sugars_g=Fraction(1))
    table, borrowed = makeup("soy-sauce"), makeup("soy-sauce", silent)

    assert table.sodium_mg == borrowed.sodium_mg
    assert (False, True) == (table.sodium_borrowed, borrowed.sodium_borrowed)
    assert borrowed.sodium_cv > 3 * table.sodium_cv


def test_no_sodium_is_not_borrowed() -> None:
    """A panel that prints sodium, and a food without any, borrow none."""
    printed = Panel(serving_g=Fraction(17), sodium_mg=Fraction(580))

    assert not makeup("soy-sauce", printed).sodium_borrowed
    assert not makeup("oil-canola", Panel(serving_g=Fraction(14))).sodium_borrowed


def test_ash_goes_with_its_salt() -> None:
    """A sauce of less sodium has less ash: what it weighs still adds up to what there is."""
    row = values("soy-sauce")
    own = composed("soy-sauce", {"sodium_mg": 3412.0, "protein_g": 11.8, "carbohydrate_g": 5.88})
    parts = ("water_g", "protein_g", "fat_g", "carbohydrate_g", "ash_g")

    # Salt of 5,493 and of 3,412 mg of sodium: 13.96 and 8.67 g; atomic weights from memory.
    assert (row["ash_g"] or 0) - 13.964 + 8.674 == pytest.approx(own["ash_g"], abs=0.01)
    assert sum(own[name] or 0 for name in parts) < 100.5


def test_unknown_sugars_lie_between_none_and_what_is_left_of_the_carbohydrate() -> None:
    """Allspice, SR26 02001: carbohydrate 72.12 g, fiber 21.6 g, so at most 50.52 g of sugars."""
    found = makeup("allspice")

    assert pytest.approx(0.5052 / 2) == found.sucrose + found.hexose
    assert Even(0.0, 2.0) == found.sugars_off
    assert found.sugars_bounded
    assert not {"sugars_g", "added_sugars_g", "carbohydrate_g"} & found.missing


@pytest.mark.parametrize("key", ["liquid-smoke", "gochujang", "garlic-salt"])
def test_without_a_bound_sugars_stay_unknown(key: str) -> None:
    """Missing is not zero: nobody states the carbohydrate either, so nothing bounds its sugars."""
    found = makeup(key)

    assert {"sugars_g", "carbohydrate_g"} <= found.missing
    assert (0.0, None, False) == (found.sucrose, found.sugars_off, found.sugars_bounded)


def test_a_bound_on_sugars_says_nothing_of_added_ones() -> None:
    """What part of the sugars of oyster sauce is added nobody knows, whatever they come to."""
    assert makeup("oyster-sauce").sugars_bounded
    assert "added_sugars_g" in makeup("oyster-sauce").missing


def test_a_panel_that_prints_sugars_ends_the_bound() -> None:
    """A pack of allspice that prints 1 g in 5 g leaves open what rounding does, no more."""
    found = makeup("allspice", Panel(serving_g=Fraction(5), sugars_g=Fraction(1)))

    assert Even(0.5, 1.5) == found.sugars_off
    assert not found.sugars_bounded
