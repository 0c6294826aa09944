"""An answer's bytes: counted while they come, unpacked, and read as JSON within bounds."""

from __future__ import annotations

import json
import zlib
from collections.abc import Iterable, Iterator
from decimal import Decimal
from typing import Any

from tarebook.findings import LookupFailed

_DEEPEST, _MOST_VALUES = 12, 300_000
_GZIP = 16 + zlib.MAX_WBITS
_PLAIN, _PACKED = ("", "identity"), ("gzip", "x-gzip")

CUT_SHORT = "the answer was cut short"


def unpacked(pieces: Iterator[bytes], *, packing: str, most: int) -> bytes:
    """Return the bytes of an answer, unpacked; it stops where there are too many.

    Args:
        pieces: the bytes as they come.
        packing: the answer's ``Content-Encoding``.
        most: how many bytes there may be, before and after unpacking.

    Raises:
        LookupFailed: too many, packed in a way that was not asked for, damaged, or cut short.
    """
    if packing in _PLAIN:
        return _gathered(pieces, most)
    if packing in _PACKED:
        return _gathered(_inflated(_counted(pieces, most), most), most)
    raise LookupFailed("the answer is packed in a way that was not asked for", passing=True)


def _gathered(pieces: Iterator[bytes], most: int) -> bytes:
    return b"".join(_counted(pieces, most))


def _counted(pieces: Iterator[bytes], most: int) -> Iterator[bytes]:
    count = 0
    for piece in pieces:
        count += len(piece)
        if count > most:
            raise too_large(most)
        yield piece


def too_large(most: int) -> LookupFailed:
    """Return what is said of an answer that is too large."""
    return LookupFailed(f"the answer is larger than {most / 1e6:g} MB; it was let go", passing=True)


def _inflated(pieces: Iterator[bytes], most: int) -> Iterator[bytes]:
    """Unpack without ever holding more than is allowed: a few bytes can hold a thousandfold."""
    gzip = zlib.decompressobj(_GZIP)
    for packed in pieces:
        while packed:
            if gzip.eof:
                raise LookupFailed("the answer goes on after its end", passing=True)
            try:
                yield gzip.decompress(packed, most + 1)
            except zlib.error:
                raise LookupFailed("the answer cannot be unpacked", passing=True) from None
            packed = gzip.unconsumed_tail or gzip.unused_data
    if not gzip.eof:
        raise LookupFailed(CUT_SHORT, passing=True)


def read_json(data: bytes) -> Any:
    """Return the values of a JSON text, its numbers exact.

    NaN and infinity are no JSON; they come as floats, and nothing else does.

    Args:
        data: the bytes, in UTF-8.

    Raises:
        LookupFailed: it is no JSON, or nested or long beyond anything that is documented.
    """
    try:
        found = json.loads(data.decode("utf-8"), parse_float=Decimal)
    except (ValueError, RecursionError, ArithmeticError):
        raise _no_json() from None
    if not _within_bounds(found):
        raise _no_json()
    return found


def _no_json() -> LookupFailed:
    return LookupFailed("the answer is not the JSON that the service documents", passing=True)


def _within_bounds(found: Any) -> bool:
    level, count = [found], 0
    for _ in range(_DEEPEST):
        count += len(level)
        if count > _MOST_VALUES:
            return False
        level = [inner for value in level for inner in _inside(value)]
        if not level:
            return True
    return False


def _inside(value: Any) -> Iterable[Any]:
    if isinstance(value, dict):
        return value.values()
    return value if isinstance(value, list) else ()
