"""Sheets of labels lie on their page, and no label on another."""

from __future__ import annotations

import pytest

from tarebook.findings import AskedWrongly
from tarebook.paper.sheets import Sheet, larger, sheet_named, sheets

EVERY = pytest.mark.parametrize("sheet", sheets().values(), ids=lambda one: one.name)


@EVERY
def test_every_label_lies_on_the_page(sheet: Sheet) -> None:
    """Within half a millimeter, as sheets are cut."""
    for place in range(sheet.places):
        x, y = sheet.corner(place)
        assert -0.01 <= x and x + sheet.width <= sheet.page_width + 0.5
        assert -0.01 <= y and y + sheet.height <= sheet.page_height + 0.5


@EVERY
def test_no_label_lies_on_another(sheet: Sheet) -> None:
    """Beside and below one another."""
    assert sheet.gap_x >= 0 and sheet.gap_y >= 0
    corners = [sheet.corner(place) for place in range(sheet.places)]
    assert len(corners) == len(set(corners))


@EVERY
def test_a_sheet_lies_in_the_middle_of_its_page(sheet: Sheet) -> None:
    """Left and right margins are alike, and so are top and bottom, within 3 mm."""
    x, y = sheet.corner(sheet.places - 1)
    right, bottom = sheet.page_width - x - sheet.width, sheet.page_height - y - sheet.height

    assert sheet.left == pytest.approx(right, abs=3)
    assert sheet.top == pytest.approx(bottom, abs=3)


@EVERY
def test_a_name_tells_the_geometry(sheet: Sheet) -> None:
    """Paper, columns by rows, and nobody's wares."""
    assert sheet.name.endswith(f"-{sheet.columns}x{sheet.rows}"), "name it PAPER-COLUMNSxROWS"


def test_labels_run_along_the_rows() -> None:
    """The second lies to the right of the first."""
    sheet = sheet_named("letter-2x5")

    assert sheet.corner(1)[0] > sheet.corner(0)[0]
    assert sheet.corner(1)[1] == sheet.corner(0)[1]


def test_larger_sheets_are_for_the_same_page() -> None:
    """The smallest that has more room comes first."""
    assert ["letter-2x7", "letter-2x5"] == [one.name for one in larger(sheet_named("letter-3x10"))][
        :2
    ]
    assert all(one.name.startswith("a4") for one in larger(sheet_named("a4-3x8")))


def test_err_an_unknown_sheet_names_what_is_near() -> None:
    """Or all there are."""
    with pytest.raises(AskedWrongly, match="did you mean letter-2x5"):
        sheet_named("leter-2x5")
    with pytest.raises(AskedWrongly, match="there are letter-3x10"):
        sheet_named("round")
