"""Who says so: the publications, rules and kinds of knowledge behind every figure."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from tarebook.tuples import NamedTuple
from tarebook.where import folder


class Source(NamedTuple):
    """One source, as ``reference/sources.toml`` or one of its kin describes it.

    Attributes:
        id: what the tables write in their column ``source``.
        title: of the publication, or what kind of knowledge it is.
        publisher: who issued it, or an empty string.
        year: year or edition, as text.
        licence: on what terms its figures may be carried.
        address: where it can be found, or an empty string.
        obtained: how its figures came here.
        note: what to keep in mind.
    """

    id: str
    title: str
    publisher: str
    year: str
    licence: str
    address: str
    obtained: str
    note: str

    def __str__(self) -> str:
        """Return title, publisher and year on one line."""
        return ", ".join(part for part in (self.title, self.publisher, self.year) if part)


@cache
def sources() -> Mapping[str, Source]:
    """Return every source by its id: those of the figures first, then those of the rules."""
    import tomllib  # only when somebody asks who says so

    texts = [path.read_text(encoding="utf-8") for path in files()]
    listed = [Source(**entry) for text in texts for entry in tomllib.loads(text)["source"]]
    return MappingProxyType({source.id: source for source in listed})


def files() -> tuple[Path, ...]:
    """Return the files that describe sources: ``sources.toml`` and its kin, in order of name."""
    found = folder("reference").glob("sources*.toml")
    return tuple(sorted(found, key=_stem))


def _stem(path: Path) -> str:
    return path.stem
