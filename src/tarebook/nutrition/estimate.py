"""Figures per finished ounce and per batch, low / likely / high, and the ceiling over them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from enum import Enum
from operator import mul

from tarebook.drying import moisture
from tarebook.findings import QuantityError
from tarebook.nutrition.agreement import check_soak_weights, marinade_g
from tarebook.nutrition.assumptions import Assumption, assumptions
from tarebook.nutrition.ceiling import Ceiling, ceiling_of
from tarebook.nutrition.draws import Fixed, column, percentile
from tarebook.nutrition.facts import Facts
from tarebook.nutrition.model import Batch
from tarebook.nutrition.range import LIKELY, Range, Ways, range_of_ways
from tarebook.nutrition.ranges import Draws, Ranges
from tarebook.nutrition.ways import Picker, picker, values, ways_of
from tarebook.nutrition.weighings import Weighing, told
from tarebook.recipe.model import FinishBy, Part
from tarebook.tuples import NamedTuple
from tarebook.uptake.maths import COLUMNS, Column, Maths, Number

DRAWS = 256
"""How many draws the range shown by default rests on; a power of two, for their design."""

MANY = 2000
"""From this many draws on they are made in arrays; fewer are quicker without loading numpy."""

_NOTHING: Mapping[str, float] = {}
_SOLIDS, _FINISHED, _SALT_KEPT = "solids_g", "finished_g", "salt_kept"
_DRIEST_ERROR = 0.97


class Ounce(Enum):
    """The two ounces. Each output names the one it used."""

    AVOIRDUPOIS = ("ounce of 28.35 g", 28.349523125)
    LABEL = ("label ounce of 28 g", 28.0)

    @property
    def words(self) -> str:
        """How the output names it."""
        return str(self.value[0])

    @property
    def grams(self) -> float:
        """Its mass [g]."""
        return float(self.value[1])


class Estimate(NamedTuple):
    """What a finished batch holds, as far as can be told.

    Attributes:
        per_ounce: figure -> range in one finished ounce; None where there is no total.
        per_batch: the same for the whole batch.
        finished_g: finished weight [g].
        yield_fraction: finished over raw meat [-].
        moisture_fraction: water in the finished batch [-].
        salt_kept_fraction: share of the marinade's salt kept [-], or None without a marinade.
        ceiling: sodium per ounce if everything measured were kept, or None where it would say
            nothing.
        ounce: which ounce.
        weighed: whether the finished weight is the cook's own.
        no_sodium_total: bare salts that leave sodium without any total.
        assumptions: every uncertain input, by name.
        draws: per-ounce draws by figure, for paired differences.
        batch_draws: whole-batch draws by figure.
        facts: what the estimate started from.
    """

    per_ounce: Mapping[str, Range | None]
    per_batch: Mapping[str, Range | None]
    finished_g: Range
    yield_fraction: Range
    moisture_fraction: Range
    salt_kept_fraction: Range | None
    ceiling: Ceiling | None
    ounce: Ounce
    weighed: bool
    no_sodium_total: tuple[str, ...]
    assumptions: Mapping[str, Assumption]
    draws: Mapping[str, list[float]]
    batch_draws: Mapping[str, list[float]]
    facts: Facts

    @property
    def ceiling_sodium_mg_per_oz(self) -> float | None:
        """The ceiling itself [mg]."""
        return None if self.ceiling is None else self.ceiling.per_ounce_mg


def estimate(
    facts: Facts,
    *,
    ounce: Ounce = Ounce.AVOIRDUPOIS,
    draws: int = DRAWS,
    pinned: Mapping[str, float] = _NOTHING,
    in_arrays: bool = False,
) -> Estimate:
    """Return the figures of a finished batch with their doubt.

    Args:
        facts: what is known of the batch.
        ounce: which ounce the figures are for.
        draws: how many draws, 20 or more; thousands are made in arrays.
        pinned: inputs by name that are to have one value, as if they were known exactly.
        in_arrays: make the very same draws in arrays, and come to the very same figures: thrice as
            quick once numpy is loaded, which pays for hundreds of recipes.

    Returns:
        Ranges at 5, 50 and 95 % of the draws.

    Raises:
        QuantityError: the finished weight lies below the batch's dry solids, or above what went
            into it.
    """
    inputs = assumptions(facts)
    used = {name: pinned_or(one, pinned) for name, one in inputs.items()}
    x, maths = _drawn(used, draws, in_arrays=in_arrays)
    ways = ways_of(facts, used, x, maths)
    picked = picker(ways, x)
    _check(facts, ways, picked, draws)
    ends = [_end(facts, ounce, done, x, draws) for _, done in ways]
    smooth = draws < MANY

    def together(read: Callable[[_End], list[float]]) -> Ways:
        return [(share, read(end)) for (share, _), end in zip(ways, ends, strict=True)]

    def told_of(read: Callable[[_End], list[float]], unit: str) -> Range:
        return range_of_ways(together(read), unit, by_moments=smooth)

    per_ounce = Ranges(facts, lambda name: together(lambda one: one.each[name]), smooth=smooth)
    return Estimate(
        per_ounce=per_ounce,
        per_batch=Ranges(facts, lambda name: together(lambda one: one.whole[name]), smooth=smooth),
        finished_g=told_of(lambda one: one.finished, "g"),
        yield_fraction=told_of(lambda one: [g / facts.meat_mass_g for g in one.finished], ""),
        moisture_fraction=told_of(_End.moisture, ""),
        salt_kept_fraction=(
            told_of(lambda one: one.salt_kept, "") if facts.has(Part.MARINADE) else None
        ),
        ceiling=ceiling_of(
            facts,
            per_ounce["sodium_mg"],
            ounce_g=ounce.grams,
            own_factor=max(x["own-sodium"]),
            protein_g=percentile(sorted(picked([one.protein for one in ends])), LIKELY),
        ),
        ounce=ounce,
        weighed=facts.finished_g is not None,
        no_sodium_total=facts.no_sodium_total,
        assumptions=inputs,
        draws=Draws(lambda name: picked([one.each[name] for one in ends])),
        batch_draws=Draws(lambda name: picked([one.whole[name] for one in ends])),
        facts=facts,
    )


def _check(facts: Facts, ways: Sequence[tuple[float, Batch]], picked: Picker, draws: int) -> None:
    """Refuse weights, and aims, that cannot be this batch's."""
    added_g = sum(line.mass_g for line in facts.lines)
    solids = picked([values(done.solids_g, draws) for _, done in ways])
    _check_weighed(facts, min(solids), added_g)
    _check_aim(facts, picked([values(done.finished_g, draws) for _, done in ways]), added_g)
    check_soak_weights(facts)


class _End(NamedTuple):
    """What comes of one way: draws of each figure in the batch and in an ounce, and of weights."""

    whole: Mapping[str, list[float]]
    each: Mapping[str, list[float]]
    solids: list[float]
    finished: list[float]
    protein: list[float]
    salt_kept: list[float]

    def moisture(self) -> list[float]:
        """Return the water in the finished batch [g per g]."""
        pairs = zip(self.finished, self.solids, strict=True)
        return [moisture(finished_g=a, solids_g=b) for a, b in pairs]


def _end(facts: Facts, ounce: Ounce, done: Batch, x: Mapping[str, Number], draws: int) -> _End:
    solids, finished = values(done.solids_g, draws), values(done.finished_g, draws)
    kept = values(done.marinade_kept.salt, draws)
    whole: Mapping[str, list[float]] = Draws(lambda name: values(done.figures[name], draws))
    weighed = list(_weighings(facts, done, x, draws))
    if weighed:
        moved = told({**whole, _SOLIDS: solids, _SALT_KEPT: kept}, weighed)
        solids, kept = moved.pop(_SOLIDS), [min(one, 1.0) for one in moved.pop(_SALT_KEPT)]
        finished = told({_FINISHED: finished}, weighed, beyond=True)[_FINISHED]
        whole = moved
    if facts.finished_g is not None:
        finished = [facts.finished_g * one for one in x["finished"]]
    elif "batch-chance" in x:
        # The draws tell the kitchen's own mean by now; one batch lies beside it.
        finished = [
            max(a * b, c) for a, b, c in zip(finished, x["batch-chance"], solids, strict=True)
        ]
    ounce_g = ounce.grams
    ounces = [ounce_g / one for one in finished]
    return _End(
        whole=whole,
        each=Draws(lambda name: list(map(mul, whole[name], ounces))),
        solids=solids,
        finished=finished,
        protein=values(done.protein_g, draws),
        salt_kept=kept,
    )


def _drawn(
    inputs: Mapping[str, Assumption], draws: int, *, in_arrays: bool
) -> tuple[dict[str, Number], Maths]:
    """Return draws of every input, and the operations for their kind of number."""
    if draws >= MANY:
        from tarebook.nutrition.many import array_columns, arrays

        return array_columns(inputs, draws), arrays()
    if in_arrays:
        from tarebook.nutrition.many import arrays_like_columns, same_columns

        return same_columns(inputs, draws), arrays_like_columns()
    columns = {n: Column(column(n, one.distribution, draws)) for n, one in inputs.items()}
    return columns, COLUMNS


def pinned_or(one: Assumption, pinned: Mapping[str, float]) -> Assumption:
    """Return an input as it is, or with the one value that it is pinned to."""
    if one.name not in pinned:
        return one
    return one._replace(distribution=Fixed(pinned[one.name]))


def _weighings(
    facts: Facts, done: Batch, x: Mapping[str, Column], draws: int
) -> Iterator[Weighing]:
    """Yield each weight from the scale beside what the draws foretold of it."""
    stuck = x["bowl-film"] * marinade_g(facts) if facts.leftover_g is not None else 0.0
    for name, read, foretold in (
        ("soaked", facts.soaked_g, done.soaked_g),
        ("leftover", facts.leftover_g, done.leftover_g - stuck),
        ("finished", facts.finished_g, done.finished_g),
    ):
        if read is not None:
            ours = [max(one, 1e-6) for one in values(foretold, draws)]
            yield Weighing(name, [max(read, 1e-6) * one for one in x[name]], ours)
    if "own-batches" in x:
        ours = [max(one, 1e-6) for one in values(done.finished_g, draws)]
        own = [facts.meat_mass_g * one for one in x["own-batches"]]
        yield Weighing("own-batches", own, ours)


def _check_weighed(facts: Facts, least_solids_g: float, added_g: float) -> None:
    """Refuse a finished weight that cannot be this batch's."""
    if facts.finished_g is None:
        return
    if facts.finished_g < least_solids_g * _DRIEST_ERROR:
        raise QuantityError(
            f"a finished batch of {facts.finished_g:,.0f} g is below its own dry solids "
            f"(about {least_solids_g:,.0f} g even at the least); "
            "was the bowl's weight taken off twice, or another batch weighed?"
        )
    if facts.finished_g > facts.meat_mass_g + added_g:
        raise QuantityError(
            f"a finished batch of {facts.finished_g:,.0f} g is more than went into it "
            f"({facts.meat_mass_g + added_g:,.0f} g); was the bowl's weight left in?"
        )


def _check_aim(facts: Facts, finished: Sequence[float], added_g: float) -> None:
    """Refuse a water activity that this batch has before it is dried at all."""
    if facts.finished_g is not None or facts.finish_by() is not FinishBy.WATER_ACTIVITY:
        return
    finished_g, wet_g = percentile(sorted(finished), LIKELY), facts.meat_mass_g + added_g
    if finished_g > wet_g:
        raise QuantityError(
            f"at the water activity that the recipe ends at, this batch would weigh about "
            f"{finished_g:,.0f} g, more than all that goes into it ({wet_g:,.0f} g): with so much "
            "salt and sugar it is there before it is dried; aim lower"
        )
