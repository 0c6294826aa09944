"""How long the kitchen's own batches dried, and what that says of the next one.

A dryer is told by nothing but batches that were dried in it. Each is carried over to the cut and
heat that are planned, by the thickness its recipe had that day and the air that was noted, or else
that its recipe asks for; the more there are, the better the next is told.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from math import exp, log

from tarebook.cards.batch_words import date_words, hours_words
from tarebook.cards.words import temperature_words
from tarebook.drying.time import CarriedOver, Conditions, carried_over, promise
from tarebook.figures.working import value
from tarebook.lessons.learn import spread_of, student_95
from tarebook.plan.hours import Hours
from tarebook.plan.jobs import USUAL_AIR_F, thickness_of
from tarebook.recipe.model import Recipe
from tarebook.recipe.read import read_recipe
from tarebook.records.entry import AIR, IN, Batch, Entry, Kind
from tarebook.records.moment import Moment, hours_between
from tarebook.records.place import is_there
from tarebook.records.standing import ended_by, standing_of
from tarebook.tuples import NamedTuple

_MOST = 10
"""How many batches back: dryers age, and cooks learn."""
_LOOKED_THROUGH = 200
_ALIKE = 0.6
"""Times in the dryer that differ by less [-] are those of two loads; else one was interrupted."""
_LISTED = 4
_SHORTEST_H, _LONGEST_H = 1, 500  # in less nothing is dry; after more, an entry was forgotten
_MOST_DOUBT = 0.9
_SAME_CUT, _SAME_AIR_C = 0.02, 1.5


class Dried(NamedTuple):
    """A finished batch of the book, as it dried.

    Attributes:
        batch: its number.
        day: when it went into the dryer.
        hours: how long a load was in it [h].
        loads: how many loads there were.
        conditions: thickness and air.
        how: the same in words, and who tells them.
    """

    batch: int
    day: Moment
    hours: float
    loads: int
    conditions: Conditions
    how: str


def own_dryings(which: str, title: str) -> tuple[Dried, ...]:
    """Return how the last finished batches of a recipe dried, the newest first.

    Args:
        which: a path, a name, or ``-``, as the recipe was opened.
        title: the recipe's title.

    Returns:
        Those that tell when they went into the dryer and came out; none without a book.
    """
    if not is_there():
        return ()
    from tarebook.records.find import read_batch, rows
    from tarebook.records.names import name_in_book
    from tarebook.records.store import reading

    with reading() as db:
        found = rows(db, recipe=name_in_book(db, which, title).name, most=_LOOKED_THROUGH)
        told = [one.number for one in found if one.finished and not one.struck and one.dry_h]
        batches = [read_batch(db, number) for number in told[:_MOST]]
    dried = (dried_of(batch) for batch in batches)
    return tuple(one for one in dried if one is not None)


def dried_of(batch: Batch) -> Dried | None:
    """Return how a batch dried, or None where its entries or its recipe do not tell."""
    ended = ended_by(batch.entries)
    standing = [one for one in batch.entries if one.number not in ended]
    inside = times_inside(standing)
    recipe = _recipe(batch.recipe_text)
    span = standing_of(batch.entries).dry
    if inside is None or recipe is None or span.start is None:
        return None
    air_f, said = _air(recipe, standing)
    try:
        how = Conditions(thickness_mm=thickness_of(recipe), air_c=(sum(air_f) / 2 - 32) / 1.8)
    except ValueError:
        return None
    cut = recipe.meat.thickness_written or "1/4 in taken for the cut"
    hours, loads = inside
    if not _SHORTEST_H <= hours <= _LONGEST_H:
        return None
    return Dried(batch.number, span.start, hours, loads, how, f"{said}, {cut}")


def times_inside(standing: Iterable[Entry]) -> tuple[float, int] | None:
    """Return how long a load was in the dryer [h], and how many loads there were.

    Args:
        standing: entries of a batch that stand.

    Returns:
        Of several times in and out, their mean where they are alike: loads follow each other.
        Where one is much shorter, the load was taken out in between, and they are added up. None
        where ins and outs do not follow each other.
    """
    moves = sorted((one for one in standing if one.kind is Kind.DRY), key=lambda one: one.happened)
    ins = [one.happened for one in moves if one.what == IN]
    outs = [one.happened for one in moves if one.what != IN]
    if not ins or not outs:
        return None
    if 1 in (len(ins), len(outs)):  # one of them was entered again, and the widest span is meant
        ins, outs = [min(ins)], [max(outs)]
    if len(ins) != len(outs):
        return None
    pairs = [hours_between(start, end) for start, end in zip(ins, outs, strict=True)]
    apart = all(end <= start for end, start in zip(outs, ins[1:], strict=False))
    if min(pairs) <= 0 or not apart:
        return None
    if min(pairs) < _ALIKE * max(pairs):
        return sum(pairs), 1
    return sum(pairs) / len(pairs), len(pairs)


def learned_hours(dried: Sequence[Dried], planned: Conditions) -> Hours | None:
    """Return how long a batch will dry by the kitchen's own; None where there are none.

    Args:
        dried: batches of the book, the newest first.
        planned: thickness and air of the batch to come, in the same dryer, as full.

    Returns:
        The mean of the batches, each carried over. Of one, the doubt is that of any batch carried
        over; of more, it shrinks with their count and follows their own spread. Batches that are
        alike go before those that are not.

    Source:
        ``drying.time``; the spread shrunk toward a prior one as in ``lessons.learn``: working
        values ``drying-rescale-error``, ``drying-first-batch-factor``, ``own-batch-spread-weight``.
    """
    carried = [(one, _carried(one, planned)) for one in dried]
    used = [pair for pair in carried if pair[1].near] or carried
    if not used:
        return None
    batches, found = [one for one, _ in used], [one for _, one in used]
    mean = _mean_of(found)
    doubt, far = _doubt(found), value("drying-first-batch-factor").likely
    told = promise(mean, doubt=doubt, far_factor=far)
    moved = not all(_as_good_as(one.conditions, planned) for one in batches)
    why = [_said(batches, of=len(dried))]
    if moved:
        why.append("carried over to this cut and heat")
    if mean.near:
        why.append(f"at least {doubt:.0%} either way from one batch to the next")
    else:
        why.append(f"so unlike this one that a factor of {far:g} either way stays")
    return Hours(
        told.low_h,
        told.likely_h,
        told.high_h,
        "; ".join(why),
        corners_h=mean.corners_h if moved else None,
        batches=tuple(one.batch for one in batches),
    )


def _as_good_as(one: Conditions, other: Conditions) -> bool:
    """Whether two are the same for a knife and a thermometer of a kitchen."""
    cut = abs(one.thickness_mm / other.thickness_mm - 1)
    return cut < _SAME_CUT and abs(one.air_c - other.air_c) < _SAME_AIR_C


def _mean_of(found: Sequence[CarriedOver]) -> CarriedOver:
    """Return the mean of batches carried over to one cut and heat: all alike it, or none."""
    first, second, third, fourth = (
        _mean([one.corners_h[corner] for one in found]) for corner in range(4)
    )
    return CarriedOver(
        low_h=_mean([one.low_h for one in found]),
        likely_h=_mean([one.likely_h for one in found]),
        high_h=_mean([one.high_h for one in found]),
        corners_h=(first, second, third, fourth),
        near=found[0].near,
    )


@cache
def _recipe(text: str) -> Recipe | None:
    """Return a recipe as it was; most batches of one have the same."""
    return read_recipe(text, file="the batch book")[0]


def _carried(one: Dried, planned: Conditions) -> CarriedOver:
    return carried_over(
        one.hours,
        one.conditions,
        planned,
        exponent=value("drying-thickness-exponent").range,
        activation_kj_per_mol=value("drying-activation").range,
    )


def _doubt(found: Sequence[CarriedOver]) -> float:
    """Return the doubt of the next batch [-]: after one, that of any; then by count and spread."""
    weight, count = value("own-batch-spread-weight").likely, len(found)
    # After one batch, chance has struck twice: in that one, and in the one to come.
    usual = value("drying-rescale-error").likely / (student_95(weight) * 2**0.5)
    spread = spread_of([log(one.likely_h) for one in found], usual)
    half = student_95(weight + count - 1) * spread * (1 + 1 / count) ** 0.5
    return float(min(half, _MOST_DOUBT))


def _air(recipe: Recipe, standing: Iterable[Entry]) -> tuple[tuple[float, float], str]:
    """Return the air that a batch dried in [degF], and the same in words with who tells it."""
    noted = sorted(
        float(one.value)
        for one in standing
        if one.kind is Kind.TEMP and one.what == AIR and one.value is not None
    )
    if noted:
        middle = (noted[(len(noted) - 1) // 2] + noted[len(noted) // 2]) / 2
        return (middle, middle), f"at {temperature_words((middle, middle))} as noted"
    stated = recipe.drying.temperature_f
    if stated is not None:
        return stated, f"at the recipe's {temperature_words(stated)}"
    return USUAL_AIR_F, f"at {temperature_words(USUAL_AIR_F)}, taken since none is told"


def _said(batches: Sequence[Dried], of: int) -> str:
    """Return which batches these were, how long they dried, and how."""
    if len(batches) == 1:
        one = batches[0]
        which = f"your batch of {date_words(one.day)}"
        return f"{which}: {_length(one)} {one.how}"
    first, last = batches[-1].day, batches[0].day
    count = f"{len(batches)} batches" if len(batches) == of else f"{len(batches)} of {of} batches"
    days = f"{date_words(first, year=first.local.year != last.local.year)} to {date_words(last)}"
    ways = list(dict.fromkeys(one.how for one in batches))
    how = f" {ways[0]}" if len(ways) == 1 else ", each by its own cut and heat"
    return f"your last {count}, {days}: {_lengths(batches)}{how}"


def _lengths(batches: Sequence[Dried]) -> str:
    if len(batches) <= _LISTED:
        return ", ".join(_length(one) for one in reversed(batches))
    hours = sorted(one.hours for one in batches)
    return f"{hours_words(hours[0])} to {hours_words(hours[-1])}, mean {hours_words(_mean(hours))}"


def _length(one: Dried) -> str:
    return hours_words(one.hours) + (f" a load of {one.loads}" if one.loads > 1 else "")


def _mean(hours: Sequence[float]) -> float:
    """Return the mean of lengths of time, by their logarithms."""
    return exp(sum(log(one) for one in hours) / len(hours))
