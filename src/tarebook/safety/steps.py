"""The recipe's own steps: free words that nobody checks, but for a few that speak of danger."""

from __future__ import annotations

from collections.abc import Iterator

from tarebook.findings import Finding
from tarebook.safety.case import Case

CLAIM = "safe"
"""The word that nothing here is called, whoever wrote it."""
_WARM = ("counter", "room temperature", "warm kitchen", "in the sun")
_COLD_WORK = ("thaw", "defrost", "marinat", "marinad", "soak", "rest ", "overnight")
_NO = frozenset({"not", "never", "don't", "instead"})
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


def steps_warm(case: Case) -> bool:
    """Return whether a step thaws, soaks or rests raw flesh outside the refrigerator."""
    return case.is_flesh and any(_warm(step.lower()) for step in case.recipe.steps)


def steps_raw(case: Case) -> bool:
    """Return whether a step says that flesh needs no heat, whatever heat step stands above it."""
    return case.is_flesh and any(_raw(step.lower()) for step in case.recipe.steps)


def _of_step(case: Case, number: int, words: str) -> Iterator[Finding]:
    if _warm(words):
        yield case.warn(
            "step-words",
            f"step {number} speaks of thawing, soaking or resting outside the refrigerator",
            "thaw, soak and rest in the refrigerator only; steps are the cook's own words, and "
            "only a few of them are looked at",
            cites="thaw-cold; out-of-cold",
            path="method.steps",
        )
    if CLAIM in words.replace("un" + CLAIM, "") or _raw(words):
        yield case.warn(
            "step-words",
            f"step {number} promises more than anybody can: dried meat that missed its heat step "
            "has made people ill",
            "take the promise out, and heat the meat; steps are the cook's own words, and only a "
            "few of them are looked at",
            cites="heat-before; outbreak-venison",
            path="method.steps",
        )


def _warm(words: str) -> bool:
    return any(_asked(place, words) for place in _WARM) and any(one in words for one in _COLD_WORK)


def _raw(words: str) -> bool:
    return any(_asked(one, words) for one in _RAW)


def _asked(what: str, words: str) -> bool:
    """Return whether a step asks for something, and not only says where nobody is to do it."""
    return any(not _forbidden(before) for before in _each_before(what, words))


def _each_before(what: str, words: str) -> Iterator[str]:
    at = words.find(what)
    while at >= 0:
        yield words[:at]
        at = words.find(what, at + 1)


def _forbidden(before: str) -> bool:
    """Return whether the clause that leads up to some words has a no in it."""
    for mark in (*".,;:!?()", " but ", " and "):
        before = before.rpartition(mark)[2]
    return any(word in _NO for word in before.split())
