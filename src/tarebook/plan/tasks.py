"""The plain values of a plan: spans of minutes, tasks, portions, batches."""

from __future__ import annotations

from tarebook.tuples import NamedTuple

HANDS_ON = 5
"""How long it takes to begin what is then left alone [min]."""
WASHED = frozenset({"wash", "clean"})
"""Work after which nothing is left that raw meat has touched, but what lies in the cold."""


class Span(NamedTuple):
    """From one minute to another; the last is not in it."""

    start: int
    end: int

    def meets(self, other: Span) -> bool:
        """Whether the two have a minute in common."""
        return self.start < other.end and other.start < self.end


class Task(NamedTuple):
    """Something to be done.

    Attributes:
        kind: what, as ``task-times.csv`` calls it.
        minutes: how long [min].
        attended: whether somebody has to be there all the time.
        tied: whether what follows begins the moment it ends.
        raw: whether raw meat, or what it touched, is in hand.
        begun: whether it is begun by hand, though it is left alone after.
    """

    kind: str
    minutes: int
    attended: bool = True
    tied: bool = False
    raw: bool = False
    begun: bool = False

    def by_hand(self, span: Span) -> Span | None:
        """Return when of its span somebody has hands on it, or None where nobody has."""
        if self.attended:
            return span
        return Span(span.start, span.start + HANDS_ON) if self.begun else None


class Portion(NamedTuple):
    """What goes into the dryer together, of one batch.

    Attributes:
        trays: how many trays it takes.
        lead: what is done to it before it goes into its marinade, in order.
        front: what is done to it before, without a pause; drying begins as the last ends.
        dry: drying [min].
        clean: washing up after raw meat, while it dries [min].
        unload: emptying and washing its trays, which are taken for so long [min].
        oven: the step in the oven after drying [min]; 0 where there is none.
        cool, pack: after it [min].
        preheat: how long before drying the dryer is switched on [min].
        in_oven: whether the oven is the dryer, so that its own step leaves room for nothing else.
    """

    trays: int
    lead: tuple[Task, ...]
    front: tuple[Task, ...]
    dry: int
    clean: int
    unload: int
    oven: int
    cool: int
    pack: int
    preheat: int = 0
    in_oven: bool = False


class Batch(NamedTuple):
    """One recipe at one weight.

    Attributes:
        prep: what is done once, in order, before anything else.
        mix: making the marinade or rub [min]; 0 where there is none.
        steep: putting one portion into it [min]; 0 where there is none.
        soak: least, wanted and most time it lies in it [min].
        air: coolest and hottest air it is dried in [degF].
        raw: whether it goes into the dryer unheated.
        portions: what goes into the dryer together; full loads first.
        wash: washing up after a portion went into its marinade, in its first minutes there [min].
        flesh: whether it is raw meat or fish till it is heated.
    """

    prep: tuple[Task, ...]
    mix: int
    steep: int
    soak: tuple[int, int, int]
    air: tuple[float, float]
    raw: bool
    portions: tuple[Portion, ...]
    wash: int = 0
    flesh: bool = False


class Placed(NamedTuple):
    """A task with its time.

    Attributes:
        kind: what.
        batch: which batch, counted from 0.
        load: which of its portions, counted from 1; 0 where it is for the whole batch.
        start, end: when.
        attended: whether somebody has to be there all the time.
    """

    kind: str
    batch: int
    load: int
    start: int
    end: int
    attended: bool

    @property
    def span(self) -> Span:
        """From its start to its end."""
        return Span(self.start, self.end)
