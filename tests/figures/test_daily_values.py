"""Daily Values of the rule of 2016."""

import pytest

from tarebook.figures.daily_values import daily_values

PUBLISHED = [  # figure, as printed; source id cfr-21-101.9, (c)(8)(iv) and (c)(9)
    ("fat_g", "78 g"),
    ("saturated_g", "20 g"),
    ("cholesterol_mg", "300 mg"),
    ("sodium_mg", "2300 mg"),
    ("carbohydrate_g", "275 g"),
    ("fiber_g", "28 g"),
    ("added_sugars_g", "50 g"),
    ("protein_g", "50 g"),
    ("vitamin_d_ug", "20 µg"),
    ("calcium_mg", "1300 mg"),
    ("iron_mg", "18 mg"),
    ("potassium_mg", "4700 mg"),
]


@pytest.mark.published
@pytest.mark.parametrize(("figure", "amount"), PUBLISHED)
def test_published_daily_value(figure: str, amount: str) -> None:
    """A day's worth is that of the 2016 rule, from a copy of its table."""
    found = daily_values()[figure]
    assert amount == f"{found.amount:g} {found.unit}"
    assert (found.source, found.status) == ("cfr-21-101.9", "S2")


@pytest.mark.parametrize("figure", ["sugars_g", "trans_fat_g"])
def test_no_daily_value(figure: str) -> None:
    """Total sugars and trans fat have no Daily Value, which is not a value of zero."""
    assert None is daily_values()[figure].amount
