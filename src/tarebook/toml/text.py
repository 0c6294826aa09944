"""From the bytes of a file to its text; what is not a text is refused with a reason."""

from __future__ import annotations

from tarebook.toml.fault import Faults

MOST_BYTES = 1_000_000
"""What a cook writes is a page or two; a larger file is something else."""

_OTHER_MARKS = (  # the longer marks first: UTF-32's begins with UTF-16's
    (b"\xff\xfe\x00\x00", "UTF-32"),
    (b"\x00\x00\xfe\xff", "UTF-32"),
    (b"\xff\xfe", "UTF-16"),
    (b"\xfe\xff", "UTF-16"),
)

_SAVE_AS = "save it as UTF-8"


def text_of(source: bytes | str, faults: Faults, *, empty_hint: str) -> str | None:
    """Return the text of a file, or None where it has none, with the reason among the faults.

    A UTF-8 byte order mark is taken off and noted; it does no harm.

    Args:
        source: the bytes as they stand in the file, or its text.
        faults: where to add what is wrong.
        empty_hint: what to try where the file is empty.
    """
    data = source if isinstance(source, bytes) else source.encode("utf-8", "surrogatepass")
    if _too_large(data, faults) or _other_encoding(data, faults):
        return None
    if data.startswith(b"\xef\xbb\xbf"):
        data = data[3:]
        faults.note(
            "byte-order-mark", "the file begins with a byte order mark; read without it", line=1
        )
    text = _decoded(data, faults)
    if text is not None and not text.strip():
        faults.error("empty", "the file is empty", hint=empty_hint, line=1)
        return None
    return text


def _too_large(data: bytes, faults: Faults) -> bool:
    if len(data) <= MOST_BYTES:
        return False
    faults.error(
        "too-large",
        f"the file has more than {MOST_BYTES:,} bytes",
        hint="it should be a page or two of text: is this the right file?",
        line=1,
    )
    return True


def _other_encoding(data: bytes, faults: Faults) -> bool:
    for mark, name in _OTHER_MARKS:
        if data.startswith(mark):
            faults.error("encoding", f"the file is {name} text", hint=_SAVE_AS, line=1)
            return True
    at = data.find(b"\x00")
    if at < 0:
        return False
    faults.error(
        "encoding",
        "a NUL byte: the file is not text, or it is UTF-16",
        hint=_SAVE_AS,
        line=data.count(b"\n", 0, at) + 1,
    )
    return True


def _decoded(data: bytes, faults: Faults) -> str | None:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as fault:
        at = fault.start
        faults.error(
            "encoding",
            f"byte {data[at]:#04x} is not UTF-8 text",
            hint=_SAVE_AS,
            line=data.count(b"\n", 0, at) + 1,
        )
        return None
