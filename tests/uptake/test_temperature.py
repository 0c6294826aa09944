"""A colder soak is a slower one."""

from __future__ import annotations

import pytest

from tarebook.figures.working import value
from tarebook.uptake.maths import Column
from tarebook.uptake.soak import temperature_factor


@pytest.mark.published
@pytest.mark.parametrize(
    ("soak_c", "printed"), [(0, 0.833), (2, 0.898), (4, 0.965), (7, 1.071), (10, 1.183)]
)
def test_the_factor_follows_temperature_over_viscosity(soak_c: float, printed: float) -> None:
    """Within 1 % of T/viscosity of water against 5 degC, from handbook viscosities of water.

    Source: computed from the IAPWS viscosity of water; the energy is fitted at 2 to 10 degC.
    """
    energy = value("diffusivity-activation").likely

    assert temperature_factor(soak_c, activation_kj=energy) == pytest.approx(printed, rel=0.01)


def test_the_tables_own_temperature_changes_nothing() -> None:
    """The diffusivities are for 5 degC."""
    assert 1.0 == temperature_factor(5.0, activation_kj=22.4)


def test_a_column_of_temperatures_has_a_factor_each() -> None:
    """As one by one."""
    degrees = [0.0, 4.0, 10.0]
    found = temperature_factor(Column(degrees), activation_kj=22.4)

    assert [temperature_factor(one, activation_kj=22.4) for one in degrees] == list(found)
