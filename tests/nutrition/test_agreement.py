"""Weights that contradict each other are named, with the amount and the likeliest slip."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest

from tarebook.findings import QuantityError
from tarebook.nutrition import Facts, estimate, facts_of
from tarebook.nutrition.assumptions import assumptions
from tarebook.nutrition.draws import column
from tarebook.nutrition.model import batch
from tarebook.quantities.drawer import choose_drawer
from tarebook.recipe.load import load_recipe
from tarebook.scaling import scale_by_factor
from tarebook.uptake import PLAIN


def facts(name: str = "juniper-venison", **weights: float) -> Facts:
    """Return the facts of a shipped recipe (1,134 g of meat, about 241 g of marinade)."""
    scaled = scale_by_factor(load_recipe(name)[0], Fraction(1), choose_drawer("basic"))
    return facts_of(scaled, **weights)


@pytest.mark.parametrize(
    ("weights", "says"),
    [
        ({"soaked_g": 1420, "leftover_g": 120}, "165 g came from nowhere; was --soaked 1,240 g"),
        ({"soaked_g": 1240, "leftover_g": 700}, "565 g came from nowhere; was a bowl's weight"),
        ({"soaked_g": 1150, "leftover_g": 120}, "105 g went missing"),
        ({"soaked_g": 43.7, "leftover_g": 120}, "was --soaked written in grams for ounces?"),
        ({"soaked_g": 2800}, "2,800 g after soaking cannot come of 1,134 g"),
        ({"leftover_g": 900}, "a leftover of 900 g is more than the 241 g of marinade"),
    ],
)
def test_weights_that_cannot_be_true_are_refused(weights: dict[str, float], says: str) -> None:
    """The amount of the contradiction is told, and what may have slipped."""
    with pytest.raises(QuantityError) as fault:
        estimate(facts(**weights))

    assert says in str(fault.value)


def test_weights_of_a_rub_are_refused() -> None:
    """There is no leftover where nothing was soaked."""
    with pytest.raises(QuantityError, match="this recipe has none"):
        estimate(facts("cabin-rub-elk", leftover_g=20.0))


def test_weights_that_agree_are_used() -> None:
    """Soaked and finished weights together narrow the sodium of an ounce."""
    guessed = estimate(facts()).per_ounce["sodium_mg"]
    weighed = estimate(facts(soaked_g=1240, finished_g=488)).per_ounce["sodium_mg"]

    assert guessed is not None and weighed is not None
    assert weighed.high / weighed.low < guessed.high / guessed.low


def test_true_weights_narrow_on_average() -> None:
    """Over 200 simulated batches, true weights narrow the range and keep the truth inside it.

    Each batch is a draw of the model itself, so this shows that the weights are used rightly, not
    that the model is right.
    """
    known = facts("maple-dill-salmon")
    # The truth is as doubtful as the estimate of a weighed batch says it is.
    inputs = assumptions(known._replace(soaked_g=1.0, finished_g=1.0))
    columns = {name: column(f"truth:{name}", one.distribution, 200) for name, one in inputs.items()}
    usual = estimate(known).per_ounce["sodium_mg"]
    assert usual is not None
    inside, widths, chance = 0, [], Random(3)

    for place in range(200):
        truth = batch(known, {name: values[place] for name, values in columns.items()}, PLAIN)
        scale = [chance.gauss(1, 0.004) for _ in range(2)]
        weighed = known._replace(
            soaked_g=truth.soaked_g * scale[0], finished_g=truth.finished_g * scale[1]
        )
        found = estimate(weighed).per_ounce["sodium_mg"]
        assert found is not None
        sodium = truth.figures["sodium_mg"] / truth.finished_g * 28.349523
        inside += found.low <= sodium <= found.high
        widths.append(found.high / found.low)

    assert sum(widths) / len(widths) < usual.high / usual.low
    assert 0.85 <= inside / 200 <= 0.97
