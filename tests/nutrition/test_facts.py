"""What is known of a batch, and every gap named."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.nutrition import Facts
from tarebook.recipe.model import FinishBy, HeatStep, Part, Surface

FactsOf = Callable[..., Facts]
US_TABLESPOON_ML = 14.78676478125  # NIST Handbook 44, appendix C


def test_a_bottle_s_own_volume_and_weight_give_its_density(known: FactsOf) -> None:
    """Two US tablespoons of a sauce of 17 g to the label tablespoon of 15 mL, 575 mg in each."""
    panel = '{ serving = "1 Tbsp (17 g)", sodium = "575 mg" }'
    soy = f'{{ food = "soy-sauce", amount = "2 Tbsp", panel = {panel} }}'

    (line,) = known(marinade={"bottle": soy}).lines

    assert line.mass_g == pytest.approx(2 * US_TABLESPOON_ML * 17 / 15)
    assert line.mass_g * line.makeup.sodium_mg == pytest.approx(2 * US_TABLESPOON_ML / 15 * 575)


def test_a_panel_by_volume_alone_keeps_sodium_by_volume(known: FactsOf) -> None:
    """Whatever the density, so many label tablespoons hold so much of the label's sodium."""
    panel = '{ serving = "1 Tbsp", sodium = "900 mg" }'
    soy = f'{{ food = "soy-sauce", amount = "4 Tbsp", panel = {panel} }}'

    (line,) = known(marinade={"bottle": soy}).lines

    assert line.mass_g * line.makeup.sodium_mg == pytest.approx(4 * US_TABLESPOON_ML / 15 * 900)


def test_the_recipe_s_own_words_come_through(known: FactsOf) -> None:
    """Weight, hours, surface, heat and parts are those of the recipe."""
    found = known(
        marinade={"soy-sauce": "100 g"},
        rub={"black-pepper": "5 g"},
        soak='hours = "8-12"\nsurface = "patted"',
        heat="steamed or roasted first",
    )

    assert found.meat_mass_g == 1000.0
    assert (found.hours[0], found.hours[2]) == (8, 12)
    assert found.surface is Surface.PATTED
    assert found.heat is HeatStep.STEAMED
    assert [line.part for line in found.lines] == [Part.MARINADE, Part.RUB]
    assert not found.has(Part.MIXED_IN)


def test_a_written_range_adds_to_the_doubt(known: FactsOf) -> None:
    """Grams written as a range are less sure than grams written once, at the same middle."""
    (once,) = known(marinade={"soy-sauce": "100 g"}).lines
    (between,) = known(marinade={"soy-sauce": "80-120 g"}).lines

    assert once.mass_g == between.mass_g
    spread = 40 / (2 * 1.645 * 100)
    assert between.doubt == pytest.approx((once.doubt**2 + spread**2) ** 0.5)


def test_to_taste_is_a_gap_and_not_nothing(known: FactsOf) -> None:
    """A sauce to taste leaves sodium "at least", and names itself."""
    found = known(marinade={"soy-sauce": "100 g", "hot-sauce": "to taste"})

    assert [line.name for line in found.lines] == ["soy-sauce"]
    assert found.missing["sodium_mg"] == ("hot-sauce",)
    assert found.no_sodium_total == ()


@pytest.mark.parametrize("amount", ["1 Tbsp", "to taste"])
def test_salt_of_no_stated_kind_leaves_no_total(known: FactsOf, amount: str) -> None:
    """Bare salt by the spoon, or to taste, takes away the sodium total, not even "at least"."""
    assert known(rub={"salt": amount}, marinade={}).no_sodium_total == ("salt",)


def test_table_salt_by_the_spoon_has_a_weight(known: FactsOf) -> None:
    """Salt whose crystal is named is weighed by its row."""
    found = known(rub={"salt-table": "1 Tbsp"}, marinade={})

    assert found.no_sodium_total == ()
    assert found.lines[0].mass_g == pytest.approx(18, rel=0.05)


def test_what_the_meat_s_row_lacks_is_named(known: FactsOf) -> None:
    """Nobody measured the vitamin D of deer: the meat itself is the gap."""
    assert known().missing["vitamin_d_ug"] == ("deer",)


def test_mushrooms_are_dry_by_moisture(known: FactsOf) -> None:
    """Water over protein says nothing of a mushroom."""
    mushrooms = known(meat="mushroom-portabella", form="pieces")

    assert mushrooms.finish_by() is FinishBy.MOISTURE
    assert known().finish_by() is FinishBy.MOISTURE_TO_PROTEIN


def test_the_recipe_s_finish_wins(known: FactsOf) -> None:
    """A stated yield decides, for mushrooms as for meat."""
    for meat in ("deer", "mushroom-portabella"):
        found = known(meat=meat, form="pieces", drying='yield = "40 %"')
        assert found.finish_by() is FinishBy.YIELD


def test_weighing_changes_the_weight_alone(known: FactsOf) -> None:
    """A weighed batch is the same batch with one more fact."""
    found = known()

    assert found.weighed(420.0).finished_g == 420.0
    assert found.weighed(420.0)._replace(finished_g=None) == found
