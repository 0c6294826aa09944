"""Spoons, cups and cloves: which weight is taken, for which form, and how sure it is."""

from fractions import Fraction

import pytest

from tarebook.figures.foods import food_keys
from tarebook.figures.measures import count_mass, density, measures
from tarebook.findings import FoodUnknown

TEASPOON_ML = Fraction("4.92892159375")

PUBLISHED = [  # food, measure in the table, grams as printed; source id sr26
    ("soy-sauce", "tablespoon", "16"),
    ("soy-sauce-low-sodium", "tablespoon", "14.2"),
    ("honey", "cup", "339"),
    ("brown-sugar", "cup, packed", "220"),
    ("brown-sugar", "teaspoon, packed", "4.6"),
    ("salt-table", "tablespoon", "18"),
    ("worcestershire-sauce", "tablespoon", "17"),
    ("garlic", "clove", "3.0"),
    ("black-pepper", "tablespoon, ground", "6.9"),
    ("chicken-bouillon-powder", "teaspoon", "2.0"),
    ("vinegar-cider", "cup", "239"),
    ("onion", "medium", "110"),
]

TAKEN = [  # food, form words, grams a teaspoon, spread
    ("soy-sauce", (), Fraction("273") / 48, 0.07),
    ("soy-sauce-low-sodium", (), Fraction("264") / 48, 0.07),
    ("tamari", (), Fraction("17.3") / 3, 0.07),
    ("worcestershire", (), Fraction("5.4"), 0.06),
    ("chicken-bouillon-powder", (), Fraction("3.9"), 0.25),
    ("sriracha", (), Fraction("5.45"), 0.12),
    ("fine sea salt", (), Fraction("5.85"), 0.12),
    ("dried minced onion", (), Fraction("5") / 3, 0.12),
    ("ginger-root", ("grated",), Fraction("4.5"), 0.25),
    ("garlic", ("pressed",), Fraction("4.5"), 0.25),
    ("cumin", (), Fraction("2.35"), 0.12),
    ("granulated garlic", (), Fraction("3.4"), 0.12),
    ("seasoned salt", (), Fraction("5"), 0.12),
    ("brown-sugar", ("packed",), Fraction("220") / 48, 0.03),
    ("brown-sugar", ("unpacked",), Fraction("145") / 48, 0.03),
    ("black-pepper", ("whole",), Fraction("2.9"), 0.03),
    ("black-pepper", ("freshly", "ground"), Fraction("6.9") / 3, 0.03),
    ("salt-table", (), Fraction("292") / 48, 0.03),
    ("honey", (), Fraction("339") / 48, 0.03),
]


@pytest.mark.published
@pytest.mark.parametrize(("key", "measure", "grams"), PUBLISHED)
def test_published_weight(key: str, measure: str, grams: str) -> None:
    """A household weight stands in the table as the release prints it, preferred or not."""
    (found,) = [m for m in measures(key) if m.measure == measure and m.source == "sr26"]
    assert Fraction(grams) == found.grams


@pytest.mark.parametrize(("name", "form", "grams", "spread"), TAKEN)
def test_density_taken(name: str, form: tuple[str, ...], grams: Fraction, spread: float) -> None:
    """A teaspoon weighs what the preferred row says, and carries that row's doubt."""
    found = density(name, form)
    assert found is not None
    assert (grams, spread) == (found.g_per_ml * TEASPOON_ML, found.spread)


def test_form_not_said_is_told() -> None:
    """Brown sugar with no word for its form is taken packed; the note says so, doubt widens."""
    unsaid, packed = density("brown-sugar"), density("brown-sugar", ("packed",))
    assert unsaid is not None and packed is not None
    assert packed.g_per_ml == unsaid.g_per_ml
    assert unsaid.spread > 0.1 > packed.spread
    assert "form not said: taken as packed" in unsaid.note
    assert packed.note == ""


def test_pepper_without_a_form_is_ground() -> None:
    """A spoon of pepper is ground pepper unless it is said to be whole."""
    found = density("pepper")
    assert found is not None
    assert found.form == "ground"


def test_words_that_are_no_form_do_no_harm() -> None:
    """A word that no row knows is passed over."""
    assert density("honey", ("warmed",)) == density("honey")


@pytest.mark.parametrize("name", ["salt", "curing-salt", "curing-salt-1", "curing-salt-2"])
def test_no_density_where_only_a_scale_will_do(name: str) -> None:
    """A spoon of plain salt or of curing salt has no weight: it is not guessed."""
    assert None is density(name)
    assert None is count_mass(name, "dash")


def test_plain_salt_has_no_measures_at_all() -> None:
    """Salt of unknown crystal has no row that could be mistaken for its weight."""
    assert measures("salt") == ()


def test_no_density_held() -> None:
    """A food without a volume in any table has no density, rather than that of water."""
    assert None is density("tomato-powder")
    assert None is density("sodium-erythorbate")


def test_one_row_is_taken_when_the_form_is_not_said() -> None:
    """Each food with preferred volumes marks exactly one of them for the cook who names no form."""
    for key in food_keys():
        rows = [m for m in measures(key) if m.preferred and m.volume_ml is not None]
        assert (1 if rows else 0) == sum(m.when_form_not_said for m in measures(key)), key


def test_one_preferred_row_a_form() -> None:
    """No food has two preferred volumes for the same form."""
    for key in food_keys():
        forms = [m.form for m in measures(key) if m.preferred and m.volume_ml is not None]
        assert len(set(forms)) == len(forms), key


def test_printed_density_is_weight_over_volume() -> None:
    """The density printed beside a measure is its weight over its volume, to four digits."""
    for key in food_keys():
        for m in measures(key):
            if m.volume_ml is None:
                assert m.density_g_per_ml == ""
                continue
            ratio = Fraction(m.density_g_per_ml) / (m.grams / m.volume_ml)
            assert abs(ratio - 1) < Fraction(1, 1900), (key, m.measure)


def test_volumes_are_exact() -> None:
    """Spoons and cups are the exact customary ones: a cup is 48 teaspoons."""
    sizes = {
        "teaspoon": TEASPOON_ML,
        "tablespoon": 3 * TEASPOON_ML,
        "fluid_ounce": 6 * TEASPOON_ML,
        "cup": 48 * TEASPOON_ML,
        "quart": 192 * TEASPOON_ML,
        "liter": Fraction(1000),
        "milliliter": Fraction(1),
        "metric_tablespoon": Fraction(15),
        "metric_teaspoon": Fraction(5),
        "cubic_inch": Fraction("16.387064"),
    }
    thirds = (Fraction(1, 3), Fraction(4, 3))
    for key in food_keys():
        for m in measures(key):
            if m.unit in sizes and m.quantity not in thirds:
                assert sizes[m.unit] * m.quantity == m.volume_ml, (key, m.measure)


@pytest.mark.parametrize(
    ("name", "unit", "form", "grams"),
    [
        ("garlic", "clove", (), Fraction(3)),
        ("basil-fresh", "leaf", (), Fraction("0.5")),
        ("salt-table", "dash", (), Fraction("0.4")),
        ("black-pepper", "dash", (), Fraction("0.1")),
        ("onion", "slice", ("thin",), Fraction(9)),
        ("onion", "slice", (), Fraction(14)),
        ("celery", "stalk", ("large",), Fraction(64)),
        ("mushroom-shiitake-dried", "mushroom", (), Fraction("3.75")),
        ("jalapeno", "pepper", (), Fraction(14)),
        ("beef-bouillon-cube", "cube", (), Fraction("3.6")),
    ],
)
def test_weight_of_one(name: str, unit: str, form: tuple[str, ...], grams: Fraction) -> None:
    """One clove, leaf, dash or slice weighs what the table says for its size."""
    found = count_mass(name, unit, form)
    assert found is not None
    assert grams == found.grams


def test_size_not_said_is_told() -> None:
    """Where the size was not said the medium one is taken, and the note says so."""
    found = count_mass("onion", "slice")
    assert found is not None
    assert "size not said: taken as medium" in found.note
    assert found.spread > 0.2


def test_weight_of_one_not_held() -> None:
    """A count that no table weighs has no weight; a food of no table is refused."""
    assert None is count_mass("honey", "clove")
    with pytest.raises(FoodUnknown):
        count_mass("moon cheese", "slice")


def test_density_has_its_source() -> None:
    """The density names who says so, and how sure that is."""
    found = density("soy-sauce")
    assert found is not None
    assert (found.source, found.confidence) == ("sr26-choi-okos", "handbook")
