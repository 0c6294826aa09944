"""Cautions: findings as a card prints them, each with a title and who says so."""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.findings import Finding, Severity
from tarebook.safety.rulebook import citations
from tarebook.tuples import NamedTuple

TITLES: Mapping[str, str] = {
    # The most grave stand first: cautions of one severity are shown in this order.
    "cure-refused": "Curing salt refused",
    "cure-scale": "Curing salt must grow with the meat",
    "cure-unlisted": "Curing salt that is not listed",
    "cure-by-spoon": "Curing salt by the spoon",
    "cure-scale-step": "Scale too coarse for curing salt",
    "heat-missing": "No heat step is stated",
    "oven-after": "Oven after drying is not enough here",
    "bear-and-wild-pork": "Bear and wild pork: only heat helps",
    "potassium": "Potassium salt",
    "mushroom-poison": "Gathered mushrooms",
    "no-rule": "Nothing published to go by",
    "ground-soaked": "Ground meat in a marinade",
    "heat": "Heat the meat",
    "ground": "Ground meat",
    "ground-fat": "Fat in ground meat",
    "dryer-fixed": "This dryer cannot be set",
    "dryer-weak": "This dryer is too cool for meat",
    "dryer-cool": "Dryer is set too cool",
    "oven-after-short": "Dried too short for the oven",
    "dryer": "Heat of the dryer",
    "thickness-over": "Cut is too thick",
    "soak-far-over": "Soaked far too long",
    "soak-warm": "Soak is too warm",
    "marinade-reused": "Marinade used before",
    "step-words": "A step of your own",
    "soak-over": "Soaked too long",
    "weighed-moist": "Finished batch is too moist",
    "finish-moist": "Stops drying too moist",
    "cure-no-meat": "Curing salt is for meat",
    "cure-nitrate": "Nitrate not stated",
    "cure-handling": "Handle curing salt with care",
    "pork-freezing": "Freeze pork first",
    "fish-freezing": "Freeze fish first",
    "deer-testing": "Deer and kin: chronic wasting disease",
    "gloves": "Gloves to cut it raw",
    "heat-first": "Heating first is preferred",
    "cold-soak": "Cold and time of the soak",
    "cold-hold": "Cold while it waits",
    "used-marinade": "Used marinade",
    "storage-cold": "Keeping",
    "vacuum": "Vacuum packs",
    "dryer-mild": "Dryer below the cautious figure",
    "game-parasites": "Parasites of game",
    "gut-shot": "Dirtied game",
    "poultry": "Raw poultry",
    "raw-splash": "Hands and raw juices",
    "thickness-blank": "State the thickness",
    "cure-little": "Little curing salt",
    "cure-is-no-heat": "Curing salt and heat",
    "storage": "Keeping",
    "higher-risk": "Who should take most care",
    "much-sodium": "Much sodium",
    "allergens": "Allergens",
    "alcohol": "Alcohol",
    "enhanced-meat": "Meat with added solution",
    "salt-crystal": "Which salt is not said",
    "salt-by-spoon": "Salt by the spoon",
    "scaling": "What was not scaled",
    "estimate": "Home estimate",
    "home-card": "Not a retail label",
}
"""Title of every code, most grave first."""

_RANK = {code: place for place, code in enumerate(TITLES)}
_SEVERITY = {severity: place for place, severity in enumerate(Severity)}


class Caution(NamedTuple):
    """One caution of a card.

    Attributes:
        code: short and stable.
        severity: error, warning or note.
        title: at most eight words.
        text: at most two short sentences: what is so, and what to do.
        cites: id of the rule it stands on; ids joined by ``; `` where bodies share a sentence.
        citation: who says so: body, document, year; each body of it.
    """

    code: str
    severity: Severity
    title: str
    text: str
    cites: str
    citation: str


def caution_of(found: Finding) -> Caution:
    """Return a finding of a rule as a card prints it."""
    return Caution(
        code=found.code,
        severity=found.severity,
        title=TITLES[found.code],
        text=" ".join(_sentence(part) for part in (found.message, found.hint) if part),
        cites=found.cites,
        citation=citations(found.cites),
    )


def gravity(found: Finding) -> tuple[int, int]:
    """Return where a finding stands among others, the most grave first."""
    return _SEVERITY[found.severity], _RANK[found.code]


def _sentence(clause: str) -> str:
    return f"{clause[0].upper()}{clause[1:]}."
