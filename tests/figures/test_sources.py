"""Sources: each described once, with its terms and how its figures came here."""

import tomllib

import pytest

from tarebook.figures.sources import files, sources


def test_every_id_is_used_once() -> None:
    """No two sources share an id, not even across files."""
    texts = [path.read_text(encoding="utf-8") for path in files()]
    assert sum(len(tomllib.loads(text)["source"]) for text in texts) == len(sources())


def test_sources_of_the_figures_come_first() -> None:
    """The food tables' own sources are listed before those of the rules."""
    assert files()[0].name == "sources.toml"
    assert next(iter(sources())) == "sr26"


@pytest.mark.parametrize("name", sources())
def test_source_is_described(name: str) -> None:
    """Every source has a title, terms, and a word on how its figures were obtained."""
    found = sources()[name]
    assert name == found.id
    assert found.title and found.licence and found.obtained


def test_source_prints_as_a_citation() -> None:
    """A source prints title, publisher and year, and leaves out what it does not have."""
    assert str(sources()["sr26"]).endswith("Nutrient Data Laboratory, 2013")
    assert str(sources()["from-memory"]) == "From memory, no source held"
