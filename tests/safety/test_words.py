"""The one word that is never used: nothing here is called safe."""

from __future__ import annotations

import csv
import re
import tomllib
from pathlib import Path

import pytest

import tarebook.safety
from tarebook.where import folder

ROOM = Path(tarebook.safety.__file__).parent
REFERENCE = folder("reference")
WORD = re.compile(r"[\w./-]*safe[\w./-]*", re.IGNORECASE)
# Names of our own files and of this room, and the one place where a cook's own use is looked for.
OWN_NAMES = re.compile(
    r"tarebook\.safety[\w.]*|(?:reference/)?sources-safety\.toml|safety/"
    r"|CLAIM = \"safe\""
)


def official() -> list[str]:
    """Return titles, publishers and addresses of the sources, longest first."""
    text = (REFERENCE / "sources-safety.toml").read_text(encoding="utf-8")
    found = {
        entry[field]
        for entry in tomllib.loads(text)["source"]
        for field in ("title", "publisher", "address")
    }
    # An earlier edition of one of them, named in its note.
    return sorted({*found, "Food Safety of Jerky"} - {""}, key=len, reverse=True)


def words_left(text: str) -> list[str]:
    """Return every form of the word outside official titles and our own file names."""
    for title in official():
        text = text.replace(title, "")
    return WORD.findall(OWN_NAMES.sub("", text))


@pytest.mark.parametrize("path", sorted(ROOM.glob("*.py")), ids=lambda path: path.name)
def test_the_room_never_says_it(path: Path) -> None:
    """No module of the room uses the word in any form."""
    assert words_left(path.read_text(encoding="utf-8")) == []


def test_the_tables_never_say_it() -> None:
    """No rule and no source uses the word outside the titles that bodies gave their papers."""
    with (REFERENCE / "rules.csv").open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))

    assert words_left("\n".join(" | ".join(row.values()) for row in rows)) == []
    assert words_left((REFERENCE / "sources-safety.toml").read_text(encoding="utf-8")) == []
    assert words_left((REFERENCE / "rule-figures.csv").read_text(encoding="utf-8")) == []


def test_the_test_would_notice() -> None:
    """The word is found where it is used and passed over where a body used it."""
    assert words_left("This keeps it safe, or safely so; unsafe, too.") == [
        "safe",
        "safely",
        "unsafe",
    ]
    assert words_left("Jerky and Food Safety, in tarebook.safety.rules") == []
