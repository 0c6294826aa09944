"""The table of keys: what it gives as an example is what the reader takes."""

from __future__ import annotations

import tomllib

import pytest

from tarebook.recipe import keys
from tarebook.recipe.fields import value_of
from tarebook.recipe.keys import Key
from tarebook.toml.syntax import exact

TABLES = {
    "top": keys.TOP,
    "ingredient": keys.INGREDIENT,
    "panel": keys.PANEL,
    **keys.SECTIONS,
}
ALL = [
    pytest.param(known, key, id=f"{name}.{key.name}")
    for name, known in TABLES.items()
    for key in known.values()
]


@pytest.mark.parametrize(("known", "key"), ALL)
def test_every_example_is_taken(known: dict[str, Key], key: Key) -> None:
    """A hint or an editor never offers what the reader would refuse."""
    value = tomllib.loads(f"x = {key.example}", parse_float=exact)["x"]
    assert value_of(value, key) is not None
    assert key is known[key.name]


@pytest.mark.parametrize(("known", "key"), ALL)
def test_other_words_for_a_key_are_no_keys(known: dict[str, Key], key: Key) -> None:
    """A word that is answered with a key is not a key of the same table, nor anyone else's."""
    assert not set(key.also) & set(known)
    others = [word for other in known.values() if other is not key for word in other.also]
    assert not set(key.also) & set(others)
