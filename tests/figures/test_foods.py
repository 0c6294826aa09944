"""Foods: every name leads to one food; what each is, and what to watch for."""

from collections import Counter
from fractions import Fraction

import pytest

from tarebook.figures.foods import find_foods, food, food_keys, normalised, salt_kinds
from tarebook.findings import FoodUnknown

NAMES = [  # as a cook types it, the food meant
    ("shoyu", "soy-sauce"),
    ("Soy Sauce", "soy-sauce"),
    ("soy_sauce", "soy-sauce"),
    ("low-sodium soy sauce", "soy-sauce-low-sodium"),
    ("Low sodium soy sauce", "soy-sauce-low-sodium"),
    ("less-salt soy", "soy-sauce-low-sodium"),
    ("green onions", "scallion"),
    ("spring onion", "scallion"),
    ("cilantro", "cilantro-fresh"),
    ("venison", "deer"),
    ("buffalo", "bison"),
    ("Worcestershire", "worcestershire-sauce"),
    ("pepper", "black-pepper"),
    ("cracked pepper", "black-pepper"),
    ("peppercorns", "black-pepper"),
    ("table salt", "salt-table"),
    ("salt", "salt"),
    ("brown sugar", "brown-sugar"),
    ("maple syrup", "maple-syrup"),
    ("cumin", "cumin-ground"),
    ("granulated garlic", "garlic-granulated"),
    ("dried minced onion", "onion-minced-dried"),
    ("cooking wine", "wine-cooking-salted"),
    ("jalapeños", "jalapeno"),
    ("curing salt no. 1", "curing-salt-1"),
    ("confectioners' sugar", "powdered-sugar"),
    ("chum salmon", "salmon-chum"),
    ("Pacific cod", "cod-pacific-untreated"),
]

ALLERGENS = [  # food, major allergens, other countries' allergens, to look for on the pack
    ("soy-sauce", {"soybeans", "wheat"}, set(), set()),
    ("tamari", {"soybeans"}, set(), {"wheat"}),
    ("teriyaki", {"soybeans", "wheat"}, set(), {"sesame", "fish"}),
    (
        "worcestershire-sauce",
        {"fish (anchovy)"},
        set(),
        {"soybeans", "wheat", "barley (gluten)"},
    ),
    ("fish-sauce", {"fish"}, set(), {"crustacean shellfish"}),
    (
        "oyster-sauce",
        set(),
        {"mollusc (oyster)"},
        {"soybeans", "wheat", "crustacean shellfish"},
    ),
    ("miso", {"soybeans"}, set(), {"wheat", "barley (gluten)"}),
    ("sesame-oil", {"sesame"}, set(), set()),
    ("peanut butter", {"peanuts"}, set(), {"tree nuts", "soybeans"}),
    ("sockeye", {"fish (sockeye salmon)"}, set(), set()),
    ("buttermilk", {"milk"}, set(), set()),
    ("egg white", {"egg"}, set(), set()),
    ("beer", set(), {"barley (gluten)"}, {"wheat"}),
    ("coconut aminos", set(), {"coconut"}, set()),
    ("deer", set(), set(), set()),
    ("black-pepper", set(), set(), set()),
]

NINE = {
    "milk",
    "egg",
    "fish",
    "crustacean shellfish",
    "tree nuts",
    "peanuts",
    "wheat",
    "soybeans",
    "sesame",
}


@pytest.mark.parametrize(("typed", "key"), NAMES)
def test_name_leads_to_its_food(typed: str, key: str) -> None:
    """Whatever a cook calls it, in any case and with blanks or hyphens, it is the same food."""
    assert key == food(typed).key


def test_every_name_belongs_to_one_food() -> None:
    """No key or alias is used twice, so that a name never means two foods."""
    spoken = [normalised(name) for key in food_keys() for name in (key, *food(key).aliases)]
    assert [name for name, times in Counter(spoken).items() if times > 1] == []


def test_every_alias_leads_back() -> None:
    """Each alias of each food is found, and finds that food."""
    foods = [food(key) for key in food_keys()]
    assert [(f.key, a) for f in foods for a in f.aliases if food(a) is not f] == []


@pytest.mark.parametrize("name", ["kosher salt", "sea salt", "salmon", "mushrooms"])
def test_name_of_several_foods_is_not_guessed(name: str) -> None:
    """A name that could mean several foods is refused, and the foods it could mean are named."""
    with pytest.raises(FoodUnknown) as refused:
        food(name)
    first = name.split()[0].rstrip("s")
    assert len(refused.value.near) >= 2
    assert all(first in key for key in refused.value.near)


def test_misspelled_name_offers_the_right_one() -> None:
    """A slip of the finger is answered with the food that was meant."""
    with pytest.raises(FoodUnknown, match="did you mean soy-sauce"):
        food("soy sacue")


@pytest.mark.parametrize("name", ["", "   ", "?", "x" * 10_000])
def test_nonsense_is_refused(name: str) -> None:
    """Nothing, blanks and noise are no food."""
    with pytest.raises(FoodUnknown):
        food(name)


def test_finding_ranks_the_plainest_first() -> None:
    """Words find the foods that hold them, the plainest name first."""
    assert find_foods("soy")[0].key == "soy-sauce"
    assert find_foods("salt")[0].key == "salt"
    assert tuple(found.key for found in find_foods("venison")) == ("deer", "deer-ground")
    assert find_foods("sodium soy low")[0].key == "soy-sauce-low-sodium"


def test_finding_nothing() -> None:
    """No words find no foods; misspelled words find what looks like them."""
    assert find_foods("  ") == ()
    assert "worcestershire-sauce" in {found.key for found in find_foods("worcestersire")}


def test_a_rare_word_is_enough_where_no_food_has_them_all() -> None:
    """Aminos are those of coconut here, whatever stands before; a common word says little."""
    assert "coconut-seasoning-sauce" == find_foods("liquid aminos")[0].key
    assert "worcestershire-sauce" in {found.key for found in find_foods("worcestersire sauce")}
    assert len(find_foods("xyzzy sauce")) <= 8


@pytest.mark.parametrize(("name", "holds", "others", "check"), ALLERGENS)
def test_allergens_by_kind(name: str, holds: set[str], others: set[str], check: set[str]) -> None:
    """Each kind names the allergens the list of kinds gives it, and no more."""
    found = food(name)
    assert (holds, others, check) == (
        set(found.allergens),
        set(found.other_allergens),
        set(found.check_for),
    )


@pytest.mark.parametrize("name", ["liquid smoke", "barbecue sauce", "curing salt", "taco mix"])
def test_unknown_blend_is_checked_for_all_nine(name: str) -> None:
    """What is unknown until the pack is read is to be checked for all nine."""
    assert set(food(name).check_for) == NINE


def test_major_allergens_are_the_nine() -> None:
    """Nothing is called a major allergen that the law does not list."""
    named = {word.partition(" (")[0] for key in food_keys() for word in food(key).allergens}
    assert named <= NINE
    assert {"milk", "egg", "fish", "wheat", "soybeans", "peanuts", "sesame"} <= named


def test_every_fish_names_its_species() -> None:
    """A fish on the card is named by its kind, as the law asks."""
    fish = [food(key) for key in food_keys() if food(key).species_group == "fish"]
    assert len(fish) == 20
    assert [f.key for f in fish if not f.allergens[0].startswith("fish (")] == []


def test_curing_salts_are_marked() -> None:
    """Three foods hold nitrite; what is not said of them is not known, and never zero."""
    curing = {key: food(key) for key in food_keys() if food(key).curing}
    assert {"curing-salt", "curing-salt-1", "curing-salt-2"} == set(curing)
    strengths = [(f.nitrite_percent, f.nitrate_percent) for f in curing.values()]
    assert {(None, None), (Fraction("6.25"), Fraction(0)), (Fraction("6.25"), Fraction(4))} == set(
        strengths
    )
    assert None is food("sugar").nitrite_percent


def test_plain_salt_has_no_crystal() -> None:
    """Only plain "salt" leaves its crystal open; the kinds to choose from are listed."""
    assert [key for key in food_keys() if food(key).crystal_unknown] == ["salt"]
    assert {
        "salt-table",
        "salt-kosher-fine-flake",
        "salt-kosher-dense-flake",
        "salt-sea-fine",
        "salt-sea-coarse",
        "salt-sea-flakes",
        "salt-pickling",
    } == set(salt_kinds())


@pytest.mark.parametrize(
    ("name", "group", "wild"),
    [
        ("venison", "venison", True),
        ("moose", "venison", True),
        ("bison", "bison", None),
        ("beef-flank", "beef", False),
        ("wild boar", "wild-boar", True),
        ("bear", "bear", True),
        ("pork loin", "pork", False),
        ("turkey breast", "poultry", False),
        ("wild duck", "poultry", True),
        ("sockeye", "fish", None),
        ("pronghorn", "other", True),
        ("shiitake", "mushroom", None),
        ("soy sauce", "", None),
    ],
)
def test_species_and_wildness(name: str, group: str, wild: bool | None) -> None:
    """The rules know each meat's kind, and whether it is usually hunted."""
    assert (group, wild) == (food(name).species_group, food(name).wild)


def test_every_meat_has_a_group() -> None:
    """No meat or fish is without a group for the rules to go by."""
    meats = [food(key) for key in food_keys() if food(key).kind in ("meat", "fish")]
    assert [f.key for f in meats if not f.species_group] == []


def test_advice_where_a_figure_is_doubtful() -> None:
    """Where the spoon or the table misleads, the food says what to do instead."""
    assert "weigh it" in food("chicken bouillon powder").advice
    assert "read the bottle" in food("chili powder").advice
    assert "twelvefold" in food("curing salt").advice
    assert food("honey").advice == ""
