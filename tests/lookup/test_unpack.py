"""Bytes are counted while they come, and never is more held than is allowed."""

from __future__ import annotations

import gzip
import tracemalloc
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.findings import LookupFailed
from tarebook.lookup.unpack import read_json, unpacked


@given(st.binary(max_size=5000), st.integers(1, 700), st.sampled_from(["", "identity", "gzip"]))
def test_what_is_packed_comes_out_as_it_was(data: bytes, size: int, packing: str) -> None:
    """However it is cut into pieces, the same bytes come out."""
    sent = gzip.compress(data) if packing == "gzip" else data
    pieces = (sent[start : start + size] for start in range(0, len(sent), size))

    assert data == unpacked(pieces, packing=packing, most=6000)


def test_a_bomb_is_never_unpacked() -> None:
    """Kilobytes that hold a hundred million bytes take no more room than is allowed."""
    bomb = gzip.compress(b" " * 100_000_000)
    tracemalloc.start()
    try:
        with pytest.raises(LookupFailed, match="larger than 1 MB"):
            unpacked(iter([bomb]), packing="gzip", most=1_000_000)
        assert tracemalloc.get_traced_memory()[1] < 4_000_000
    finally:
        tracemalloc.stop()


@pytest.mark.parametrize("packing", ["", "gzip"])
def test_the_last_byte_that_is_allowed(packing: str) -> None:
    """Exactly as many as are allowed pass; one more does not."""
    data = bytes(range(200)) * 5
    sent = gzip.compress(data) if packing else data

    assert data == unpacked(iter([sent]), packing=packing, most=1000)
    with pytest.raises(LookupFailed, match="larger than"):
        unpacked(iter([sent]), packing=packing, most=999)


@pytest.mark.parametrize("pieces", [[b"and more"], [b"", b"and more"], [gzip.compress(b"more")]])
def test_what_follows_the_end(pieces: list[bytes]) -> None:
    """Bytes after the end of what is packed are refused, not guessed at."""
    whole = gzip.compress(b"{}")

    with pytest.raises(LookupFailed, match="goes on after its end"):
        unpacked(iter([whole, *pieces]), packing="gzip", most=1000)
    with pytest.raises(LookupFailed, match="goes on after its end"):
        unpacked(iter([whole + pieces[-1]]), packing="gzip", most=1000)


def test_numbers_are_exact() -> None:
    """A number has the digits it was written with."""
    assert {"a": Decimal("0.10"), "b": 5493} == read_json(b'{"a": 0.10, "b": 5493}')


@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    """No bytes break the reader."""
    try:
        read_json(data)
    except LookupFailed as fault:
        assert fault.passing
