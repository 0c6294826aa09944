"""Who says so, as numbered notes."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.cards.worksheet import Worksheet
from tarebook.paper.who_says_so import citations_of, who_says_so
from tarebook.recipe.load import shipped_recipes


@pytest.mark.parametrize("name", shipped_recipes())
def test_every_caution_keeps_all_who_say_so(name: str, shipped: Callable[..., Worksheet]) -> None:
    """The notes of a caution, read together, are the citation of the text card."""
    cautions = shipped(name).cautions
    noted, notes = who_says_so(cautions)

    assert cautions == tuple(one.caution for one in noted)
    for one in noted:
        assert one.numbers
        assert one.caution.citation == "; ".join(notes[n - 1] for n in one.numbers)


def test_each_body_has_one_number_in_order_of_first_use(shipped: Callable[..., Worksheet]) -> None:
    """Notes count up from one as they are first met, and none stands twice."""
    noted, notes = who_says_so(shipped().cautions)
    first_met = list(dict.fromkeys(number for one in noted for number in one.numbers))

    assert list(range(1, len(notes) + 1)) == first_met
    assert len(notes) == len(set(notes))
    assert any(len(citations_of(one.caution)) > 1 for one in noted)
