"""Water activity of a batch: a band, wider unweighed, and none for what is not meat."""

from __future__ import annotations

from fractions import Fraction

from tarebook.nutrition import Facts, facts_of
from tarebook.nutrition.activity import activity_band
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.scaling import scale_by_factor


def facts(name: str) -> Facts:
    """Return the facts of a shipped recipe at its own size."""
    return facts_of(scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic")))


def test_a_weighed_batch_has_the_narrower_band() -> None:
    """The finish is the widest doubt: weighed, only the model's own is left."""
    guessed = activity_band(facts("juniper-venison"))
    weighed = activity_band(facts("juniper-venison")._replace(finished_g=488.0))

    assert guessed is not None and weighed is not None
    assert weighed.high - weighed.low < guessed.high - guessed.low
    assert guessed.low <= weighed.likely <= guessed.high


def test_a_drier_batch_reads_lower() -> None:
    """Less water left means a lower water activity."""
    ends = [activity_band(facts("juniper-venison")._replace(finished_g=g)) for g in (430.0, 540.0)]

    assert ends[0] is not None and ends[1] is not None
    assert ends[0].likely < ends[1].likely


def test_mushrooms_have_none() -> None:
    """The solids of mushrooms hold water otherwise, and no constants are held for them."""
    assert activity_band(facts("woodland-mushrooms")) is None
