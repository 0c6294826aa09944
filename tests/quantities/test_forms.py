"""Form words."""

from __future__ import annotations

import pytest

from tarebook.findings import AmountError
from tarebook.quantities.forms import FILLERS, FORMS, NUMBERS, VAGUE, parse_form
from tarebook.quantities.units import read_unit


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("packed", ("packed",)),
        ("firmly packed", ("packed",)),
        ("loosely packed", ("unpacked",)),
        ("coarsely ground", ("coarse", "ground")),
        ("minced, large", ("large", "minced")),
        ("Whole leaves", ("whole", "leaves")),
        ("ground ground", ("ground",)),
    ],
)
def test_forms_as_written(written: str, expected: tuple[str, ...]) -> None:
    """Adverbs become the form they mean, sizes come first, nothing stands twice."""
    assert expected == parse_form(written)


def test_err_unknown_form() -> None:
    """A misspelled form says what it looks like."""
    with pytest.raises(AmountError, match='has a word I do not know: "pakced"') as caught:
        parse_form("pakced")

    assert 'did you mean "packed" or "unpacked"?' == caught.value.hint


def test_words_have_one_meaning() -> None:
    """No word is a form and a filler, and only plurals and "half" are also units."""
    assert set() == (FILLERS & FORMS.keys()) | (VAGUE & FILLERS) | (VAGUE & FORMS.keys())
    assert {"leaves", "pieces", "halves", "cubes", "sprigs"} == {w for w in FORMS if read_unit(w)}
    assert ["half"] == [word for word in NUMBERS if read_unit(word)]
