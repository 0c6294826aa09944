"""A whole file set down anew."""

from __future__ import annotations

from tarebook.toml.anew import set_down
from tarebook.toml.pieces import Page

TEXT = b"b=1 # one\n# two\na  =  '2'\n"


def as_it_is(page: Page) -> Page:
    """Leave every piece where it stands."""
    return page


def turned(page: Page) -> Page:
    """Turn the rows before the first table around."""
    first = page.tables[0]
    return page._replace(tables=(first._replace(rows=first.rows[::-1]),))


def emptied(page: Page) -> Page:
    """Drop every row, with its remarks."""
    return page._replace(tables=(page.tables[0]._replace(rows=()),))


def test_pieces_are_set_down_as_they_are_arranged() -> None:
    """Our spacing, every remark, in the order that is asked for."""
    assert b'b = 1  # one\n# two\na = "2"\n' == set_down(TEXT, as_it_is, same=lambda _: True)
    assert b'# two\na = "2"\nb = 1  # one\n' == set_down(TEXT, turned, same=lambda _: True)


def test_a_lost_remark_or_another_meaning_is_nothing() -> None:
    """Neither is given out."""
    assert set_down(TEXT, emptied, same=lambda _: True) is None
    assert set_down(TEXT, as_it_is, same=lambda _: False) is None


def test_lines_end_as_the_first_one_does() -> None:
    """And a byte order mark goes."""
    assert b"a = 1\r\n" == set_down(b"\xef\xbb\xbfa=1\r\n", as_it_is, same=lambda _: True)
