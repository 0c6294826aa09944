"""Our exact factors against the units library, pair by pair."""

from __future__ import annotations

import logging
from fractions import Fraction

import pytest

from tarebook.findings import UnitError
from tarebook.quantities.convert import pint_factor, registry
from tarebook.quantities.temperature import to_celsius, to_fahrenheit
from tarebook.quantities.units import Dimension, Unit, factor, units

TURNED_BY_FACTOR = [one for one in units().values() if one.dimension is not Dimension.TEMPERATURE]


@pytest.mark.parametrize("given", TURNED_BY_FACTOR, ids=lambda one: one.name)
def test_every_pair_is_the_same_by_pint(given: Unit) -> None:
    """Where two units convert, both ways agree exactly; where they do not, both refuse."""
    name = given.name
    for other in TURNED_BY_FACTOR:
        try:
            ours: Fraction | None = factor(name, other.name)
        except UnitError:
            ours = None
        try:
            pints: Fraction | None = pint_factor(name, other.name)
        except UnitError:
            pints = None

        assert ours == pints, f"{name} to {other.name}"


@pytest.mark.parametrize("degrees", [-40, 0, 68, 100, Fraction(7111, 100)])
def test_temperatures_are_the_same_by_pint(degrees: Fraction | int) -> None:
    """Scale and zero of both temperature lines mean to pint what they mean here."""
    known = registry()
    value = Fraction(degrees)

    assert known.Quantity(value, "celsius").to("fahrenheit").magnitude == to_fahrenheit(value)
    assert known.Quantity(value, "fahrenheit").to("celsius").magnitude == to_celsius(value)


def test_pint_reads_the_file_without_a_warning(caplog: pytest.LogCaptureFixture) -> None:
    """No name of the file is defined twice, and one registry serves the process."""
    registry.cache_clear()
    with caplog.at_level(logging.DEBUG):
        known = registry()

    assert [] == [line for line in caplog.messages if "edefin" in line]
    assert known is registry()


@pytest.mark.parametrize("name", ["kcup", "mclove", "cpu"])
def test_err_no_prefixes(name: str) -> None:
    """A unit with a prefix is unknown on both roads."""
    with pytest.raises(UnitError, match="no unit is called"):
        pint_factor(name, "cup")
    assert name not in registry()


def test_err_temperature_has_no_factor() -> None:
    """A temperature is turned by scale and zero, never by a factor."""
    with pytest.raises(UnitError, match="not turned by a factor"):
        pint_factor("celsius", "fahrenheit")
