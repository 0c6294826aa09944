"""A whole file set down anew: same meaning, same remarks, our layout."""

from __future__ import annotations

from collections.abc import Callable

from tarebook.toml.layout import text_of_page
from tarebook.toml.pieces import Page, pieces, remarks_of

_MARK = b"\xef\xbb\xbf"


def set_down(
    data: bytes, arranged: Callable[[Page], Page], *, same: Callable[[bytes], bool]
) -> bytes | None:
    """Return a file set down our way, or None where it would not read the same or lose a remark.

    Lines end as the first one of the file does. A byte order mark is left out.

    Args:
        data: the file as it stands; it can be read.
        arranged: puts its pieces in order.
        same: whether bytes mean what the file means, to who knows its keys.
    """
    text = data.removeprefix(_MARK).decode("utf-8")
    ends = "\r\n" if text.partition("\n")[0].endswith("\r") else "\n"
    page = pieces(text.replace("\r\n", "\n"))
    found = text_of_page(arranged(page))
    after = found.replace("\n", ends).encode("utf-8")
    if not same(after) or sorted(remarks_of(pieces(found))) != sorted(remarks_of(page)):
        return None
    return after
