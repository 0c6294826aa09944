"""The assumptions: in order, coded, reasoned, and found by key. None is claimed to be true."""

import pytest

from tarebook.figures.working import keys, value

NEEDED = [
    "accessible-water-salt",
    "accessible-water-other",
    "diffusivity-salt",
    "diffusivity-sucrose",
    "diffusivity-hexose",
    "uptake-factor-other",
    "water-gain",
    "water-gain-weak-brine",
    "film-lifted",
    "film-drained",
    "film-patted",
    "mixing-weight",
    "thickness-factor",
    "solids-leak",
    "solute-drip",
    "fat-drip-lean",
    "fat-drip-fatty",
    "finish-moisture-to-protein",
    "raw-solids-factor",
    "raw-protein-factor",
    "meat-sodium-factor",
    "sauce-sodium-cv",
    "marinade-measured-cv",
    "spoon-salt-cv",
    "cooking-juice",
    "meat-solubles-leak",
    "rub-purge",
    "spice-kept",
    "oil-film-factor",
    "finish-moisture-mushroom",
    "gab-monolayer",
    "gab-c",
    "gab-k",
    "tray-packing",
    "tray-area",
    "boiling-height",
    "drying-activation",
    "drying-thickness-exponent",
]


@pytest.mark.parametrize("key", NEEDED)
def test_model_assumption_is_in_the_table(key: str) -> None:
    """Every assumption the model needs can be asked for by its key."""
    assert key == value(key).key


@pytest.mark.parametrize("key", keys())
def test_assumption_is_in_order(key: str) -> None:
    """Low, likely and high never fall, the code is one of four, and a reason is given."""
    found = value(key)
    assert sorted(found.range) == list(found.range)
    assert found.code in ("C", "P", "W", "M")
    assert found.reason and found.unit and found.source


def test_working_values_carry_an_honest_code() -> None:
    """A chosen value says that it was chosen; only what was read in a paper says published."""
    codes = {key: value(key).code for key in keys()}
    assert codes["cooking-juice"] == "W"
    assert {"water-gain-turning-point"} == {key for key, code in codes.items() if code == "P"}


def test_unknown_assumption_is_a_fault_of_the_caller() -> None:
    """Asking for an assumption that no table has is an error, not a zero."""
    with pytest.raises(KeyError, match="no-such-key"):
        value("no-such-key")
