"""How each thing of a kitchen is written."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import pi

import pytest

from tarebook.findings import AmountError
from tarebook.kitchen import values
from tarebook.kitchen.profile import Kitchen, Tray
from tarebook.toml.fault import Refused


@pytest.mark.parametrize(
    ("text", "long_mm", "short_mm"),
    [
        ("15 x 13 in", 381.0, 330.2),
        ("13 x 15 in", 381.0, 330.2),
        ("15in x 13in", 381.0, 330.2),
        ("15 by 13 inches", 381.0, 330.2),
        ('15" × 13"', 381.0, 330.2),
        ("38 x 32 cm", 380.0, 320.0),
        ("38 cm x 32 cm", 380.0, 320.0),
        ("13 1/2 in round", 342.9, None),
        ("13½ in across", 342.9, None),
        ("33 cm diameter", 330.0, None),
        ("330mm round", 330.0, None),
    ],
)
def test_outlines(text: str, long_mm: float, short_mm: float | None) -> None:
    """A tray is written as its sides or as its width, in inches or centimeters."""
    assert Tray(long_mm, short_mm) == values.read_outline(text)


@pytest.mark.parametrize(
    "text",
    [
        "15 in",
        "15 x 13",
        "15 x 13 lb",
        "x",
        "",
        "15 x 13 x 2 in",
        "0 x 3 in",
        "90 x 90 in",
        "round",
    ],
)
def test_what_is_no_outline(text: str) -> None:
    """One side alone, no unit, another unit, nothing or too much is refused with words."""
    with pytest.raises((Refused, AmountError)) as caught:
        values.read_outline(text)

    assert len(str(caught.value)) > 10


def test_a_hole_is_round_where_only_a_width_is_told() -> None:
    """The hole of most round trays is round, and one figure says it."""
    assert Tray(76.2) == values.read_hole("3 in")
    assert Tray(76.2, 50.8) == values.read_hole("3 x 2 in")
    assert Tray(76.2) == values.read_hole("3 in round")


def test_the_hole_is_taken_off() -> None:
    """A round tray of 13 in with a hole of 3 in offers the ring between them."""
    kitchen = Kitchen(tray=Tray(330.2), hole=Tray(76.2))

    assert pi / 400 * (330.2**2 - 76.2**2) == pytest.approx(kitchen.tray_cm2)
    assert Kitchen(hole=Tray(76.2)).tray_cm2 is None


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (values.read_count, 5, 5),
        (values.read_count, "5", 5),
        (values.read_count, 0, 0),
        (values.read_flag, True, True),
        (values.read_flag, "no", False),
        (values.read_span_f, "95-160 F", (95.0, 160.0)),
        (values.read_span_f, "70 C", (158.0, 158.0)),
        (values.read_degrees_f, "170 °F", 170.0),
        (values.read_volume_ml, "2 L", Fraction(2000)),
        (values.read_volume_ml, "1 gal", Fraction("3785.411784")),
        (values.read_step_g, "1 g", Fraction(1)),
        (values.read_step_g, "0.1 oz", Fraction("2.8349523125")),
        (values.read_height_m, "1,200 m", 1200.0),
        (values.read_height_m, "800 feet", pytest.approx(243.84)),
        (values.read_drawer, "Metric", "metric"),
        (values.read_units, "grams", "metric"),
    ],
)
def test_values(read: Callable[[object], object], text: object, value: object) -> None:
    """Numbers may stand bare or in quotes; every measure has its unit."""
    assert value == read(text)


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (values.read_count, 2.5),
        (values.read_count, True),
        (values.read_count, 1000),
        (values.read_count, [5]),
        (values.read_flag, "perhaps"),
        (values.read_flag, 1),
        (values.read_span_f, "95-160"),
        (values.read_degrees_f, "170-180 F"),
        (values.read_degrees_f, 170),
        (values.read_volume_ml, "3-4 qt"),
        (values.read_volume_ml, "9999 L"),
        (values.read_step_g, "3 kg"),
        (values.read_height_m, "800"),
        (values.read_height_m, "29000 m"),
        (values.read_drawer, "metrik"),
        (values.read_units, "cubits"),
    ],
)
def test_what_is_refused(read: Callable[[object], object], text: object) -> None:
    """What cannot be meant is refused with a message and a hint."""
    with pytest.raises((Refused, AmountError)) as caught:
        read(text)

    assert str(caught.value) and caught.value.hint


def test_a_figure_for_a_day() -> None:
    """It is a weight, in any unit of weight."""
    assert (1500.0, 1500.0) == (values.read_sodium_mg("1500 mg"), values.read_sodium_mg("1.5 g"))
    assert 25.0 == values.read_sugars_g("25 g")


@pytest.mark.parametrize("text", ["1500", "1500 g", "0 mg", "1-2 g", "1 cup", "much", ""])
def test_what_is_no_figure_for_a_day(text: str) -> None:
    """No unit, none at all, a range or more than anybody eats: refused, with an example in mg."""
    with pytest.raises(Refused) as caught:
        values.read_sodium_mg(text)

    assert "as in 1500 mg" == caught.value.hint


def test_a_hole_is_told_by_itself() -> None:
    """An outline with a hole in it says where the hole goes."""
    with pytest.raises(Refused) as caught:
        values.read_outline("13 in round, 3 in hole")

    assert "the hole is told by itself" == caught.value.hint
