"""What comes along with an install may be passed on, and the guide says under which licence."""

from __future__ import annotations

import re
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

import pytest

import tarebook

GUIDE = Path(tarebook.__file__).parents[2] / "DEVELOPERS.md"

# Families of licences that let anybody use and pass on a library, as their packages write them.
FREE = ("MIT", "BSD", "Apache", "MPL-2.0", "ISC", "PSF-2.0", "Python Software Foundation")


def name_of(requirement: str) -> str:
    """Return the name of a package in a requirement, as registries compare it."""
    return re.split(r"[\s\[<>=!~;(]", requirement)[0].lower().replace("_", "-")


def installed(name: str, found: dict[str, str]) -> dict[str, str]:
    """Return the licence of a package, and of all that it needs on this machine."""
    try:
        known = distribution(name)
    except PackageNotFoundError:  # needed on another system or an older Python only
        return found
    told = known.metadata.get("License-Expression") or known.metadata.get("License") or ""
    kinds = known.metadata.get_all("Classifier") or []
    named = "; ".join(kind for kind in kinds if kind.startswith("License"))
    found[name] = told if told and len(told) < 100 else named
    for one in known.requires or ():
        if "extra ==" not in one and name_of(one) not in found:
            installed(name_of(one), found)
    return found


LICENCES = {
    name: licence for name, licence in installed("tarebook", {}).items() if name != "tarebook"
}


@pytest.mark.parametrize("name", sorted(LICENCES))
def test_a_library_may_be_passed_on(name: str) -> None:
    """Every library that an install brings along is under a free licence."""
    assert any(one in LICENCES[name] for one in FREE), LICENCES[name]


def test_the_guide_lists_them() -> None:
    """The contributor's guide has a line for each of them."""
    if not GUIDE.exists():
        pytest.skip("needs the checkout")
    text = GUIDE.read_text(encoding="utf-8")
    listed = set(re.findall(r"`([\w.-]+)`", text.partition("## What it stands on")[2]))

    assert set() == {*LICENCES} - listed
