"""What stands in the book: entries, the batches they belong to, and what may be entered."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction

from tarebook.records.moment import Moment
from tarebook.tuples import NamedTuple

NEXT_TIME = "next-time"
IN, OUT = "in", "out"
MEAT, AIR = "meat", "air"
LONGEST_TEXT = 4_000
"""How many letters a note may have: it is a remark and not a book."""


class Kind(StrEnum):
    """What kind of thing an entry tells."""

    START = "start"
    WEIGH = "weigh"
    TEMP = "temp"
    NOTE = "note"
    TURN = "turn"
    SOAK = "soak"
    HEAT = "heat"
    DRY = "dry"
    FINISH = "finish"
    STRIKE = "strike"
    TAKEN = "taken"
    DROPPED = "dropped"


THINGS = ("raw", "soaked", "leftover", "towels", "finished", "packed")
"""What is weighed of a batch, in the order of the days."""

MAY_BE_ZERO = ("leftover", "towels")
"""What may weigh nothing, and be told so: nothing left in the bowl is not the same as not told."""

WHAT: Mapping[Kind, tuple[str, ...]] = {
    Kind.START: (MEAT,),
    Kind.WEIGH: THINGS,
    Kind.TEMP: (MEAT, AIR),
    Kind.NOTE: ("", NEXT_TIME),
    Kind.SOAK: (IN, OUT),
    Kind.HEAT: (IN, OUT),
    Kind.DRY: (IN, OUT),
}
"""What an entry of each kind may be about; nothing for those not named."""

MEASURED = (Kind.WEIGH, Kind.TEMP)
"""Kinds that always have a value; a start has one where the meat was weighed."""

OF_A_NOTE = (Kind.TAKEN, Kind.DROPPED)
"""Kinds that tell what became of a note for next time; the note itself stands."""


class Entry(NamedTuple):
    """One line of the book. It is never changed: a later one strikes it or stands in its place.

    Attributes:
        uid: its name wherever the book is carried.
        batch: number of its batch.
        number: its own number within the batch, counted from 1.
        kind: what kind of thing it tells.
        what: what was weighed, where the temperature was taken, into or out of.
        written: the value as the cook wrote it.
        value: the same exactly: a weight [g] or a temperature [degF]; None where there is none.
        happened: when it happened.
        recorded: when it was written down.
        note: a remark; of a note, its text.
        about: number of the entry that it strikes, replaces, takes up or drops.
        wording: digest of the recipe's wording that a note was taken up in.
    """

    uid: str
    batch: int
    number: int
    kind: Kind
    happened: Moment
    recorded: Moment
    what: str = ""
    written: str = ""
    value: Fraction | None = None
    note: str = ""
    about: int | None = None
    wording: str | None = None


class Draft(NamedTuple):
    """An entry before it has its number; see :class:`Entry`."""

    kind: Kind
    happened: Moment
    recorded: Moment
    what: str = ""
    written: str = ""
    value: Fraction | None = None
    note: str = ""
    about: int | None = None
    wording: str | None = None


class Batch(NamedTuple):
    """A batch with all its entries, those struck or replaced too.

    Attributes:
        number: the cook's number of it.
        uid: its name wherever the book is carried.
        recipe: the name that its recipe goes by.
        title: the recipe's title.
        wording: digest of the recipe as it was that day.
        recipe_text: the whole recipe as it was that day.
        entries: in the order of their numbers.
    """

    number: int
    uid: str
    recipe: str
    title: str
    wording: str
    recipe_text: str
    entries: tuple[Entry, ...]


class Row(NamedTuple):
    """What a batch came to, in one line: for lists, and for what batches teach.

    Weights are those that stand after all corrections, the later of two; None was not weighed.

    Attributes:
        number, recipe, title, wording: as in :class:`Batch`.
        started: None only where the start was struck.
        finished: None while the batch is in hand.
        struck: whether the batch as a whole was struck.
        raw_g, soaked_g, leftover_g, towels_g, finished_g, packed_g: weights [g]; the raw weight is
            that of the start where none was entered since.
        soak_h, heat_h, dry_h: from in to out [h], where both were entered.
    """

    number: int
    recipe: str
    title: str
    wording: str
    started: Moment | None
    finished: Moment | None
    struck: bool
    raw_g: float | None
    soaked_g: float | None
    leftover_g: float | None
    towels_g: float | None
    finished_g: float | None
    packed_g: float | None
    soak_h: float | None
    heat_h: float | None
    dry_h: float | None

    @property
    def yield_fraction(self) -> float | None:
        """Finished over raw weight [-], where both were weighed."""
        return share(self.finished_g, self.raw_g)

    @property
    def gain_fraction(self) -> float | None:
        """What the soak added, over the raw weight [-]; below zero where it drew water."""
        soaked = share(self.soaked_g, self.raw_g)
        return None if soaked is None else soaked - 1


def share(part_g: float | None, whole_g: float | None) -> float | None:
    """Return one weight over another [-], or None where either is not known.

    Example:
        >>> share(900.0, 2500.0), share(None, 2500.0)
        (0.36, None)
    """
    return part_g / whole_g if part_g is not None and whole_g else None
