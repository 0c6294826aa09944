"""Figures per 100 g: as printed, mended where they cannot be right, unknown where nobody says."""

import pytest

from tarebook.figures.nutrients import FIGURES, Figure, citation, nutrients, printed, values
from tarebook.figures.table import columns, rows_of
from tarebook.findings import AskedWrongly, FoodUnknown

PUBLISHED = [  # NDB number, our key, figure, value per 100 g as printed; source id sr26
    ("23354", "beef-top-round", "protein_g", "23.59"),
    ("17164", "deer", "water_g", "73.57"),
    ("16123", "soy-sauce", "sodium_mg", "5493"),
    ("16424", "soy-sauce-low-sodium", "sodium_mg", "3598"),
    ("06971", "worcestershire-sauce", "potassium_mg", "800"),
    ("02047", "salt-table", "sodium_mg", "38758"),
    ("19296", "honey", "sugars_g", "82.12"),
    ("02009", "chili-powder", "sodium_mg", "4000"),
    ("15078", "salmon-chinook", "fat_g", "10.43"),
    ("23656", "beef-flank", "fat_g", "5.47"),
    ("17156", "bison", "iron_mg", "2.60"),
    ("17337", "bison-top-round", "protein_g", "23.32"),
    ("17164", "deer", "sodium_mg", "51"),
    ("17166", "elk", "fat_g", "1.45"),
    ("17172", "moose", "water_g", "75.55"),
    ("05710", "turkey-breast", "protein_g", "23.34"),
    ("05708", "turkey-breast-enhanced", "sodium_mg", "124"),
    ("05062", "chicken-breast", "cholesterol_mg", "73"),
    ("10060", "pork-tenderloin", "potassium_mg", "399"),
    ("15085", "salmon-sockeye", "vitamin_d_ug", "11.0"),
    ("15015", "cod-atlantic", "calcium_mg", "16"),
    ("15130", "whitefish", "sodium_mg", "51"),
    ("15270", "shrimp-untreated", "sodium_mg", "119"),
    ("16123", "soy-sauce", "carbohydrate_g", "4.93"),
    ("06179", "fish-sauce", "sodium_mg", "7851"),
    ("06112", "teriyaki-sauce", "sugars_g", "14.10"),
    ("06175", "hoisin-sauce", "ash_g", "4.98"),
    ("11935", "ketchup", "sodium_mg", "907"),
    ("02048", "vinegar-cider", "potassium_mg", "73"),
    ("09152", "lemon-juice", "water_g", "92.31"),
    ("09016", "apple-juice", "sugars_g", "9.62"),
    ("19334", "brown-sugar", "calcium_mg", "83"),
    ("19353", "maple-syrup", "water_g", "32.39"),
    ("19335", "sugar", "carbohydrate_g", "99.98"),
    ("18372", "baking-soda", "sodium_mg", "27360"),
    ("02030", "black-pepper", "fiber_g", "25.3"),
    ("02020", "garlic-powder", "energy_kcal", "331"),
    ("02026", "onion-powder", "sodium_mg", "73"),
    ("02028", "paprika", "sugars_g", "10.34"),
    ("02027", "oregano-dried", "calcium_mg", "1597"),
    ("11215", "garlic", "carbohydrate_g", "33.06"),
    ("11291", "scallion", "potassium_mg", "276"),
    ("11238", "mushroom-shiitake", "protein_g", "2.24"),
    ("09266", "pineapple", "sugars_g", "9.85"),
    ("01001", "butter", "saturated_g", "51.368"),
    ("01077", "milk-whole", "calcium_mg", "113"),
    ("20081", "flour", "iron_mg", "4.64"),
    ("04053", "oil-olive", "energy_kcal", "884"),
    ("12023", "sesame-seed", "calcium_mg", "975"),
    ("09298", "raisins", "fiber_g", "3.7"),
]

BY_DIFFERENCE = [  # food, water as printed, 100 less the other four parts
    ("wild-boar", "72.54", "74.19"),
    ("turkey-breast-enhanced", "75.95", "74.29"),
    ("salmon-atlantic-wild", "68.50", "71.28"),
    ("salmon-chinook", "71.64", "68.31"),
    ("salmon-pink", "75.52", "73.58"),
    ("tuna-skipjack", "70.58", "75.69"),
    ("halibut", "80.34", "78.82"),
    ("mackerel-atlantic", "63.55", "66.16"),
]

NO_CARBOHYDRATE = [
    "bison",
    "elk",
    "antelope",
    "moose",
    "caribou",
    "wild-boar",
    "bear",
    "goat",
    "rabbit-wild",
    "lamb-leg",
    "lamb-leg-imported",
    "pork-shoulder",
    "pork-ground",
    "duck-breast-wild",
    "goose",
    "pheasant-breast",
    "salmon-atlantic-farmed",
    "salmon-atlantic-wild",
    "salmon-chum",
    "tuna-skipjack",
    "cod-pacific-untreated",
    "mahi-mahi",
    "shrimp-untreated",
]


@pytest.mark.published
@pytest.mark.parametrize(("ndb", "key", "figure", "value"), PUBLISHED)
def test_published_value(ndb: str, key: str, figure: str, value: str) -> None:
    """A figure stands in the table exactly as the release prints it, beside its NDB number."""
    (row,) = rows_of("nutrients.csv", key)
    at = columns("nutrients.csv")
    assert (ndb, "sr26", value) == (row[at["source_row"]], row[at["source"]], row[at[figure]])
    assert float(value) == printed(key)[figure].value


@pytest.mark.published
@pytest.mark.parametrize(("key", "as_printed", "mended"), BY_DIFFERENCE)
def test_water_by_difference(key: str, as_printed: str, mended: str) -> None:
    """Where the parts miss 100 by more than 1.5, water is what the others leave, and says so."""
    water = nutrients(key)["water_g"]
    assert (float(as_printed), float(mended)) == (printed(key)["water_g"].value, water.value)
    assert water.source == "own-audit"
    assert f"{float(as_printed):g} printed" in water.note


def test_nothing_but_the_listed_meats_is_mended_in_water() -> None:
    """Drinks, vinegars and peppers keep their printed water: alcohol and oils are no column."""
    kept = ("whiskey", "vinegar-cider", "black-pepper", "baking-soda", "vanilla-extract")
    assert [printed(key)["water_g"] for key in kept] == [nutrients(key)["water_g"] for key in kept]


@pytest.mark.parametrize("key", NO_CARBOHYDRATE)
def test_no_carbohydrate_no_sugars(key: str) -> None:
    """Where carbohydrate is 0.00, sugars are 0 though no table prints them."""
    assert (printed(key)["sugars_g"].value, values(key)["sugars_g"]) == (None, 0.0)
    assert "no carbohydrate" in nutrients(key)["sugars_g"].note


@pytest.mark.parametrize("key", ["oyster-sauce", "chicken-bouillon-cube"])
def test_old_zero_is_unknown(key: str) -> None:
    """A printed zero beside plenty of carbohydrate is an old gap, not a zero."""
    assert (printed(key)["sugars_g"].value, values(key)["sugars_g"]) == (0.0, None)


@pytest.mark.parametrize(("key", "bound"), [("plum-sauce", 42.11), ("coconut-milk", 2.81)])
def test_unknown_sugars_have_an_upper_bound(key: str, bound: float) -> None:
    """Sugars that nobody states are at most the carbohydrate less the fiber."""
    sugars = nutrients(key)["sugars_g"]
    assert (None, 0.0, bound) == (sugars.value, sugars.low, sugars.high)


@pytest.mark.parametrize(
    ("key", "lender", "milligrams"), [("wild-boar", "pork-leg", 55.0), ("bear", "deer", 51.0)]
)
def test_borrowed_sodium_says_so(key: str, lender: str, milligrams: float) -> None:
    """Sodium of two game meats is borrowed from a like meat, and its note tells from which."""
    sodium = nutrients(key)["sodium_mg"]
    assert (None, milligrams) == (printed(key)["sodium_mg"].value, sodium.value)
    assert f"borrowed: figure of {lender}" in sodium.note
    assert sodium.confidence == "common practice"


def test_salted_cooking_wine_has_no_tiny_sodium() -> None:
    """The 5 mg printed for cooking wine is not used, and the salted kind has its legal least."""
    assert (printed("wine-cooking")["sodium_mg"].value, _sodium("wine-cooking")) == (5.0, None)
    assert _sodium("cooking wine") == 600.0
    assert values("wine-cooking")["sugars_g"] == values("wine-cooking-salted")["sugars_g"]


def test_only_the_sodium_of_sazon_is_used() -> None:
    """Where the other columns repeat table salt, only the sodium is taken."""
    assert {"sodium_mg"} == {name for name, value in values("sazon").items() if value is not None}


def test_stand_in_figures_are_followed_and_named() -> None:
    """A food without figures of its own uses another's, and every note tells whose."""
    smoked, plain = nutrients("smoked-paprika"), nutrients("paprika")
    assert {n: f.value for n, f in plain.items()} == {n: f.value for n, f in smoked.items()}
    assert all(figure.note.startswith("figure of paprika") for figure in smoked.values())


def test_missing_is_not_zero() -> None:
    """What no source gives stays unknown: a bear's potassium, a liquid smoke's everything."""
    assert None is values("bear")["potassium_mg"]
    assert {None} == set(values("liquid-smoke").values())


def test_range_of_a_blend_travels_with_it() -> None:
    """Where makers differ widely the figure carries their range."""
    sodium = nutrients("seasoned-salt")["sodium_mg"]
    assert (sodium.value, sodium.low, sodium.high) == (30000.0, 20000.0, 39340.0)
    assert "read the bottle" in sodium.note


@pytest.mark.parametrize("key", ["gochujang", "chili-powder", "seasoned-salt", "curing-salt"])
def test_range_holds_its_figure(key: str) -> None:
    """A range is never the wrong way round and never leaves out its own figure."""
    sodium = nutrients(key)["sodium_mg"]
    assert sodium.value is not None and sodium.low is not None and sodium.high is not None
    assert sodium.low < sodium.value < sodium.high


def test_salt_of_unknown_crystal_is_sodium_chloride() -> None:
    """A weight of plain salt has a sodium figure, by the formula 22.98977 / 58.443."""
    assert round(22.98977 / 58.443 * 1e5, -1) == _sodium("salt")
    assert _sodium("table salt") == 38758.0


def test_every_figure_has_a_unit_and_a_basis() -> None:
    """Each figure knows what it is measured in and what it is per."""
    figures = nutrients("soy-sauce")
    assert tuple(figures) == FIGURES
    assert {"g", "mg", "µg", "kcal"} == {figure.unit for figure in figures.values()}
    assert {"100 g edible part"} == {figure.basis for figure in figures.values()}


def test_figure_without_a_source_cannot_be_built() -> None:
    """Leave the source out, or blank, and there is no figure."""
    with pytest.raises(TypeError):
        Figure(value=1.0, unit="g", basis="100 g")  # type: ignore[call-arg]
    with pytest.raises(AskedWrongly):
        Figure(value=1.0, unit="g", basis="100 g", source=" ")


def test_printing_a_figure_prints_its_source() -> None:
    """A figure shown is a figure cited; an unknown one says that it is not known."""
    assert str(nutrients("shoyu")["sodium_mg"]) == "5493 mg (sr26)"
    assert str(nutrients("bear")["potassium_mg"]) == "not known (sr26)"


def test_citation_is_the_row_in_the_source() -> None:
    """A food's row can be looked up: leading zeros of its number are kept."""
    assert citation("worcestershire") == ("sr26", "06971", "SAUCE,WORCESTERSHIRE")


def test_unknown_food_is_refused() -> None:
    """Asking for a food that is not in the tables says so instead of guessing."""
    with pytest.raises(FoodUnknown):
        nutrients("moon cheese")


def _sodium(key: str) -> float | None:
    return values(key)["sodium_mg"]
