"""A short slice of the fuzzing run; ``python tests/fuzz_recipes.py`` is the long one."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

from tarebook.recipe import read, read_recipe


@pytest.fixture(scope="module")
def fuzzer() -> ModuleType:
    """Give the fuzzing script as a module."""
    path = Path(__file__).parents[1] / "fuzz_recipes.py"
    spec = importlib.util.spec_from_file_location("fuzz_recipes", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


def test_what_is_mutated_is_sound(fuzzer: ModuleType) -> None:
    """The fuzzing starts from recipes, so that its files are nearly ones."""
    for text in fuzzer.texts():
        recipe, findings = read_recipe(text, file="x")
        assert recipe is not None, [str(finding) for finding in findings]


def test_every_mutated_file_is_answered(fuzzer: ModuleType) -> None:
    """No mutated file raises, hangs, or gets an answer that is neither recipe nor error."""
    tally = fuzzer.fuzz(fuzzer.mutated(seed=7, runs=1500))
    assert [] == tally.failures
    assert 1500 == tally.runs
    assert 100 < tally.recipes < 1400
    assert 20 < tally.cards < tally.recipes


def test_the_same_seed_makes_the_same_files(fuzzer: ModuleType) -> None:
    """A failure can be made again from its seed."""
    assert list(fuzzer.mutated(3, 20)) == list(fuzzer.mutated(3, 20))
    assert list(fuzzer.mutated(3, 20)) != list(fuzzer.mutated(4, 20))


def test_a_traceback_would_be_found(fuzzer: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    """A reader that raises fails the run, with the file that did it."""

    def broken(*_: object) -> None:
        raise KeyError("x")

    monkeypatch.setattr(read, "_recipe", broken)
    tally = fuzzer.fuzz([b"a = 1"])
    assert 1 == len(tally.failures)
    assert tally.failures[0].endswith("KeyError: 'x'\n\n  b'a = 1'")
