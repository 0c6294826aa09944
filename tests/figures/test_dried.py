"""Finished dried products: as printed, to hold the reckoning against."""

import pytest

from tarebook.figures.dried import dried_products
from tarebook.figures.foods import food_keys

PUBLISHED = [  # NDB number, our key, water g, protein g, sodium mg per 100 g; source id sr26
    ("19002", "beef-jerky", "23.36", "33.20", "2081"),
    ("13350", "dried-beef", "53.80", "31.10", "2790"),
    ("07921", "bacon-beef-stick", "21.60", "29.10", "1420"),
    ("35161", "caribou-dried", "33.81", "59.38", "950"),
    ("35171", "salmon-chum-dried", "22.79", "62.09", "190"),
]


@pytest.mark.published
@pytest.mark.parametrize(("ndb", "key", "water", "protein", "sodium"), PUBLISHED)
def test_published_dried_product(ndb: str, key: str, water: str, protein: str, sodium: str) -> None:
    """A dried product stands as the release prints it, never mended."""
    (found,) = [product for product in dried_products() if product.key == key]
    names = ("water_g", "protein_g", "sodium_mg")
    assert ndb == found.source_row
    assert [float(water), float(protein), float(sodium)] == [
        found.figures[name].value for name in names
    ]


def test_dried_products_are_no_ingredients() -> None:
    """Ten products, none of which a recipe can name as a food."""
    assert len(dried_products()) == 10
    assert set() == {product.key for product in dried_products()} & set(food_keys())


def test_sugars_not_printed_stay_unknown() -> None:
    """A smoked stick whose sugars are not printed has none to compare with."""
    (stick,) = [product for product in dried_products() if product.key == "beef-stick-smoked"]
    assert None is stick.figures["sugars_g"].value
