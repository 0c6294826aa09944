"""The recipe's own steps: free words that nobody checks, but for a few that speak of danger."""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.findings import Finding
from tarebook.safety.case import Case

CLAIM = "safe"
"""The word that nothing here is called, whoever wrote it."""
_WARM = ("counter", "room temperature", "warm kitchen", "in the sun")
_COLD_WORK = ("thaw", "defrost", "marinat", "marinad", "soak", "rest ", "overnight")
_RAW = ("eat raw", "eaten raw", "eat it raw", "without cooking", "no need to heat")


def check_steps(case: Case) -> tuple[Finding, ...]:
    """Warn of steps that thaw or soak raw flesh warm, or promise what nobody can."""
    if not case.is_flesh:
        return ()
    return tuple(
        found
        for number, step in enumerate(case.recipe.steps, start=1)
        for found in _of_step(case, number, step.lower())
    )


def _of_step(case: Case, number: int, words: str) -> Iterator[Finding]:
    if any(one in words for one in _WARM) and any(one in words for one in _COLD_WORK):
        yield case.warn(
            "step-words",
            f"step {number} speaks of thawing, soaking or resting outside the refrigerator",
            "thaw, soak and rest in the refrigerator only; steps are the cook's own words, and "
            "only a few of them are looked at",
            cites="thaw-cold; out-of-cold",
            path="method.steps",
        )
    if CLAIM in words.replace("un" + CLAIM, "") or any(one in words for one in _RAW):
        yield case.warn(
            "step-words",
            f"step {number} promises more than anybody can: dried meat that missed its heat step "
            "has made people ill",
            "take the promise out, and heat the meat; steps are the cook's own words, and only a "
            "few of them are looked at",
            cites="heat-before; outbreak-venison",
            path="method.steps",
        )
