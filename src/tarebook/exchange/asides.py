"""What is said beside amount and food: that it is optional, to taste, or a rate.

These are taken out of a line before anything else is read, since they may stand anywhere in it.
"""

from __future__ import annotations

import re

from tarebook.exchange.measure import measure_at
from tarebook.exchange.tokens import tokens_of
from tarebook.tuples import NamedTuple

__all__ = ["Asides", "squeezed", "without_asides"]

_EDGES = " ,;:-–"
_OPTIONAL = (
    r"(?i)\b(?:optional(?:ly)?|(?<=[ ,;(])if (?:you (?:like|wish|want|prefer|desire)|desired|using"
    r"|liked|wanted|preferred|available))\b ?[:–-]?"
)
_TASTE = (
    r"(?i)(?:\b(?:or|and|plus|then|adjust(?:ed)?|season|use|according|more|extra|add)[ ,]+){0,3}"
    r"(?:\bto (?:(?:your|own|suit|suit your) )?(?:taste|liking)\b"
    r"|\bas (?:needed|desired|required|necessary|you like)\b|\bq\. ?s\b\.?|\bqs\b)"
)
_RATE = (
    r"(?i)\b(?:per|for each|for every|to each|to every|to the)\s+(?:\d[\d./, ]*|one |each )?\s?"
    r"(?:kilos?|kilograms?|kg|lbs?|pounds?|g|grams?|oz|ounces?|quarts?|qts?|lit(?:er|re)s?|l|gallons?"
    r"|cups?)\b\.?(?: of)?(?: the)?(?: raw| green)?(?: meat| venison)?(?: weight)?"
    r"|(?<=g)\s?/\s?(?:kg|lb|kilo|pound)\b(?: of)?(?: meat)?"
)
_PERCENT = (
    r"(?i)(?:^|(?<=[,:;(–=] )|(?<=[,:;(–=]))\d[\d.,]{0,12}+(?:\s?[-–]\s?\d[\d.,]{0,12}+)?\s?"
    r"(?:%|percent\b|per cent\b)"
    r"(?!\s(?:lean|fat|milk|pure|cocoa|cacao|acidity|acid|abv|alcohol|vinegar|cream))"
    r"(?: of)?(?: the)?(?: total| green| raw)?(?: meat)?(?:'s)?"
    r"(?: weight)?(?: by weight)?(?: in\b)?(?: of)?"
)
_PARTS = r"(?i)^(?:\d[\d/. ]*|one|two|three|four|five|six|equal) parts?\b(?: of)?"
_SQUEEZED = (
    r"(?i)^(?:the |finely |freshly |grated |fresh |squeezed |strained |fine )*"
    r"(juice|zest|rind|peel)"
    r"(?: (and|&|or|plus) (?:the )?(?:finely )?(?:grated )?(juice|zest|rind|peel))?"
    r" (?:of|from) (.+)$"
)


class Asides(NamedTuple):
    """A line without what was said beside.

    Attributes:
        text: the rest.
        notes: what was taken out and is worth a note.
        optional: whether it may be left out.
        taste: whether it says "to taste" or the like.
        rate: whether an amount is told only as a rate (percent, parts, grams per kilogram).
    """

    text: str
    notes: tuple[str, ...]
    optional: bool
    taste: bool
    rate: bool


def without_asides(text: str) -> Asides:
    """Return a plain line without asides, and what they said.

    Example:
        >>> without_asides("cayenne, to taste (optional)")[:4]
        ('cayenne', (), True, True)
    """
    notes: list[str] = []
    optional = bool(re.search(_OPTIONAL, text))
    if optional:
        text = re.sub(rf"(?i)[(\[]\s*{_OPTIONAL[4:]}\s*[)\]]", " ", text)
        text = re.sub(_OPTIONAL, " ", text).strip(_EDGES)
    taste = re.search(_TASTE, text)
    if taste and (taste.start() or taste.end() < len(text)):
        told = taste.group().strip(" ,")
        notes += [told] * (told.lower() not in ("to taste", "as needed"))
        text = f"{text[: taste.start()]} , {text[taste.end() :]}".strip(_EDGES)
    else:
        taste = None
    text, rates = _without_rates(text)
    return Asides(text, (*notes, *rates), optional, taste is not None, bool(rates))


def squeezed(text: str) -> tuple[tuple[str, ...], str] | None:
    """Return what ``juice and zest of 1 lemon`` takes from a fruit, and the fruit; or None.

    Example:
        >>> squeezed("Juice and zest of 1 lemon")
        (('juice', 'zest'), '1 lemon')
    """
    match = re.match(_SQUEEZED, text)
    if not match:
        return None
    part, joined, other, rest = match.groups()
    both = bool(other) and joined.lower() != "or"
    return ((part.lower(), other.lower()) if both else (part.lower(),)), rest


def _without_rates(text: str) -> tuple[str, list[str]]:
    rates = []
    told = measure_at(tokens_of(text))
    for pattern in (_PERCENT, _RATE, _PARTS):
        if pattern == _PERCENT and told and told.terms:
            continue  # "1 cup vinegar (5 %)"
        match = re.search(pattern, text)
        if match:
            rates.append(match.group().strip(" ,:(=–"))
            text = f"{text[: match.start()]} {text[match.end() :]}".strip(_EDGES)
            text = text.replace("()", "").replace("( )", "")
    return text, rates
