"""The key that the service asks for: the cook's own, or the one it documents for trying."""

from __future__ import annotations

import os
from dataclasses import dataclass, field

from tarebook.files import holds, read_bytes
from tarebook.findings import LookupFailed
from tarebook.where import home

VARIABLE, FILE = "TAREBOOK_FDC_KEY", "fdc-key"
DEMONSTRATION = "DEMO_KEY"
_SHORTEST, _LONGEST = 8, 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """A key, and where it was found. Only the key's place is ever shown.

    Attributes:
        text: the key itself.
        place: words for a message.
    """

    text: str = field(repr=False)
    place: str

    @property
    def own(self) -> bool:
        """Whether it is the cook's own, and so a secret."""
        return self.text != DEMONSTRATION


def find_key() -> Key:
    """Return the cook's own key, from the environment or a file, or the documented one.

    Raises:
        LookupFailed: what is there can be no key.
        FileUnreadable: the file is there, and may not be read.

    Source:
        ``DEMO_KEY``: developer manual of api.data.gov, which hands out the keys.
    """
    told = os.environ.get(VARIABLE, "").strip()
    if told:
        return _key(told, VARIABLE)
    file = home() / FILE
    if holds(file.exists):
        data = read_bytes(file, most=_LONGEST * 4, what="key")
        return _key(data.decode("ascii", "replace").strip(), f"the file {FILE}")
    return Key(text=DEMONSTRATION, place="the demonstration key")


def _key(text: str, place: str) -> Key:
    if text == DEMONSTRATION:
        return Key(text=text, place="the demonstration key")
    plain = text.isascii() and text.replace("-", "").replace("_", "").isalnum()
    # What is wrong is not shown: most of it may well be the key.
    if not plain or not _SHORTEST <= len(text) <= _LONGEST:
        raise LookupFailed(
            f"{place} holds no key of the service: one word of {_SHORTEST} or more letters and "
            "digits (it is not shown here)"
        )
    return Key(text=text, place=place)
