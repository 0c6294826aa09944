"""Card sizes."""

from __future__ import annotations

import pytest

from tarebook.figures.sources import sources
from tarebook.figures.table import cells, table
from tarebook.findings import AskedWrongly
from tarebook.paper.sizes import HIGHEST_MM, LOWEST_MM, card_size, size_names


@pytest.mark.parametrize(
    ("asked", "width_mm", "height_mm", "called"),
    [
        ("3x5in", 127, 76.2, "card"),
        ("4x6in", 152.4, 101.6, "card"),
        ("5x7in", 177.8, 127, "card"),
        ("a6", 148, 105, "card"),
        ("a5", 148, 210, "page"),
        ("letter", 215.9, 279.4, "page"),
        ("a4", 210, 297, "page"),
        ("100x150mm", 100, 150, "card"),
        ("200 x 100 mm", 200, 100, "page"),
        ("10x15cm", 100, 150, "card"),
        ("5 1/2 x 8 1/2 in", 139.7, 215.9, "page"),
        ("3½x5 in", 88.9, 127, "card"),
        ("4in x 150mm", 101.6, 150, "card"),
    ],
)
def test_a_size_is_read(asked: str, width_mm: float, height_mm: float, called: str) -> None:
    """A size by name, or width by height; small ones are cards, large ones pages."""
    found = card_size(asked)

    assert (width_mm, height_mm) == pytest.approx((found.width_mm, found.height_mm))
    assert called == found.called


@pytest.mark.parametrize("asked", ["4x6in", "4X6IN", "4 x 6 in", '4x6"', "4×6 inches", " 4x6inch "])
def test_a_name_may_be_written_in_many_ways(asked: str) -> None:
    """Capitals, spaces and the spelling of inches make no difference."""
    assert "4x6in" == card_size(asked).name


@pytest.mark.parametrize("name", size_names())
def test_a_size_can_be_turned(name: str) -> None:
    """Upright is higher than wide, sideways the other way round; nothing else changes."""
    plain, upright, sideways = (
        card_size(f"{name}{turn}") for turn in ("", " upright", " sideways")
    )

    assert upright.width_mm < upright.height_mm and sideways.width_mm > sideways.height_mm
    assert {plain.width_mm, plain.height_mm} == {upright.width_mm, upright.height_mm}
    assert (upright.width_mm, upright.height_mm) == (sideways.height_mm, sideways.width_mm)
    assert plain.called == upright.called == sideways.called


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ("4x6", "has no unit; write 4x6in"),
        ("100x6 mm in", "is no unit of a size"),
        ("4x6 furlong", '"furlong" is no unit of a size; write in, mm or cm'),
        ("leter", "did you mean letter?"),
        ("", "say one of 3x5in, 4x6in"),
        ("4x6x8in", "is no size"),
        ("4in", "is no size"),
        ("x6in", "is no size"),
        ("4,5x6in", "has a comma"),
        ("1x1in", "each side is 69 mm (2 3/4 in) to 450 mm (17 3/4 in)"),
        ("4x0in", "each side is"),
        ("10x60in", "each side is"),
        ("-4x6in", "--size"),
        ("nanxinfin", "is no size"),
        ("1e3x5mm", "--size: number"),
        ("9" * 5000 + "x5mm", "characters long"),
    ],
)
def test_what_is_no_size_is_refused_in_words(asked: str, words: str) -> None:
    """The message says what is wrong and what to write; it is one short line."""
    with pytest.raises(AskedWrongly) as refused:
        card_size(asked)

    assert words in str(refused.value)
    assert str(refused.value).startswith("--size: ") and len(str(refused.value)) < 200


@pytest.mark.parametrize("row", table("card-sizes.csv"), ids=lambda row: row[0])
def test_each_row_of_the_table_is_whole(row: tuple[str, ...]) -> None:
    """Every size has a source that is held, a kind, and sides within the limits."""
    cell = cells("card-sizes.csv", row)
    size = card_size(cell["name"])

    assert cell["source"] in sources() and cell["note"]
    assert cell["called"] in ("card", "page")
    assert LOWEST_MM <= min(size[1:3]) and max(size[1:3]) <= HIGHEST_MM
    assert size == card_size(cell["also"] or cell["name"])
