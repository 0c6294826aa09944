"""The recipe's own steps: a few dangerous words are noticed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.recipe.model import Recipe
from tarebook.safety.case import Case
from tarebook.safety.steps import check_steps

Batch = Callable[..., Recipe]


def of(batch: Batch, step: str, food: str = "deer") -> list[str]:
    """Return what is said of a step."""
    return [one.message for one in check_steps(Case.of(batch(food)._replace(steps=(step,))))]


@pytest.mark.parametrize(
    ("step", "says"),
    [
        ("Thaw the meat on the counter overnight.", "step 1 speaks of thawing"),
        ("Marinate at room temperature 12 h.", "step 1 speaks of thawing"),
        ("Not in the cold: thaw it on the counter.", "step 1 speaks of thawing"),
        ("Never hurry: on the counter, then never on the counter, overnight.", "step 1 speaks of"),
        ("It is safe to eat raw.", "step 1 promises more than anybody can"),
        ("No need to heat it.", "step 1 promises more than anybody can"),
    ],
)
def test_dangerous_steps(batch: Batch, step: str, says: str) -> None:
    """Thawing or soaking out of the cold, and promises, are warned of."""
    (found,) = of(batch, step)

    assert found.startswith(says)


@pytest.mark.parametrize(
    "step",
    [
        "Soak overnight in the refrigerator, turning the bag at bedtime.",
        "Cool to room temperature, weigh and pack.",
        "Sink the strips under a plate; keep the bowl in the refrigerator.",
        "Wipe the counter.",
        "Raw strips are unsafe on the dried ones' trays.",
        "Thaw in the refrigerator, never on the counter.",
        "Soak it cold; do not leave it at room temperature.",
        "Never eaten raw.",
    ],
)
def test_good_steps(batch: Batch, step: str) -> None:
    """What is no danger is passed over."""
    assert [] == of(batch, step)


def test_mushrooms_may_thaw_as_they_like(batch: Batch) -> None:
    """The rule is one for flesh."""
    assert [] == of(batch, "Thaw them on the counter.", "mushroom-shiitake")
