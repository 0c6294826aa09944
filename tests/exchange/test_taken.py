"""What a Recipe says, whatever types it says it in."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.exchange.taken import Taken, take
from tarebook.findings import FileUnreadable
from tarebook.recipe.fields import LONGEST_TEXT


def taken(**parts: Any) -> Taken:
    """Return what a Recipe of these parts says."""
    return take({"@type": "Recipe", **parts}, "page.json")


@pytest.mark.parametrize(
    ("told", "steps"),
    [
        ("Mix.\nSoak.", ("Mix.", "Soak.")),
        ("<p>Mix <b>all</b>.</p><p>Soak &amp; turn.</p>", ("Mix all.", "Soak & turn.")),
        (["Mix.", {"@type": "HowToStep", "text": "Soak."}], ("Mix.", "Soak.")),
        ([{"@type": "HowToStep", "name": "Mix."}], ("Mix.",)),
        (
            [
                {
                    "@type": "HowToSection",
                    "name": "First",
                    "itemListElement": ["Mix.", {"text": "Soak."}],
                }
            ],
            ("First: Mix.", "Soak."),
        ),
        ({"@type": "ItemList", "itemListElement": [{"text": "Mix."}]}, ("Mix.",)),
        (None, ()),
    ],
)  # fmt: skip
def test_steps_are_taken_from_every_shape(told: Any, steps: tuple[str, ...]) -> None:
    """A text, a list, steps and sections all give the steps in their order."""
    assert steps == taken(recipeInstructions=told).steps


def test_tips_and_yield_become_notes() -> None:
    """A tip is no step, and how much it makes is worth a note."""
    made = taken(
        recipeYield=["8 oz"], recipeInstructions=[{"@type": "HowToTip", "text": "Keeps a week."}]
    )

    assert (("Yield: 8 oz", "Keeps a week."), ()) == (made.notes, made.steps)


def test_lines_come_as_a_list_or_one_text() -> None:
    """Ingredient lines are taken from a list, from one text by its lines, and by the old name."""
    lines = ("1 cup soy sauce", "2 tsp salt")

    assert lines == taken(recipeIngredient=list(lines)).lines
    assert lines == taken(recipeIngredient="\n".join(lines)).lines
    assert lines == taken(ingredients=list(lines)).lines


def test_wrong_types_are_passed_over_and_said() -> None:
    """A line that is a list or a truth value is no line, and that is told."""
    made = taken(name={"@value": "Strips"}, recipeIngredient=["1 cup water", [1], True, {"a": 1}])

    assert ("Strips", ("1 cup water",)) == (made.title, made.lines)
    assert ("recipeIngredient holds what is no text",) == made.passed_over


def test_a_long_step_is_parted_and_too_many_are_refused() -> None:
    """A step of 10,000 characters loses no word; 300 steps are more than a recipe has."""
    words = "Turn the strips. " * 600
    parted = taken(recipeInstructions=words).steps

    assert words.split() == " ".join(parted).split()
    assert max(map(len, parted)) <= LONGEST_TEXT
    with pytest.raises(FileUnreadable, match="300 steps, more than 200"):
        taken(recipeInstructions=["Turn."] * 300)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=20),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.sampled_from(["@type", "text", "name", "itemListElement"]), inner)
    ),
    max_leaves=20,
)


@given(JSON, JSON, JSON, JSON)
def test_any_types_are_taken(name: Any, lines: Any, steps: Any, makes: Any) -> None:
    """Whatever stands behind the keys, what is taken is texts without odd characters."""
    made = taken(name=name, recipeIngredient=lines, recipeInstructions=steps, recipeYield=makes)

    assert all(text.isprintable() for text in (made.title, *made.lines, *made.steps, *made.notes))
