"""What every plan keeps, whatever is to be dried."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some

from tarebook.plan.place import GRID, OVEN_WAIT, place_back, place_from
from tarebook.plan.tasks import Batch, Placed, Portion, Span, Task

TRAYS = 5
DAY = 24 * 60
HOUR = 60
NIGHTS = [Span(day * DAY + 22 * HOUR, day * DAY + 30 * HOUR) for day in range(-20, 40)]

grid = some.integers(1, 12).map(lambda steps: steps * GRID)
airs = some.sampled_from([(145.0, 155.0), (150.0, 155.0), (160.0, 165.0), (135.0, 135.0)])


@some.composite
def portions(draw: some.DrawFn, most_dry_h: int = 10) -> Portion:
    """A portion of one load."""
    front = tuple(Task(kind, draw(grid)) for kind in draw(some.sampled_from(FRONTS)))
    return Portion(
        trays=draw(some.integers(1, TRAYS)),
        lead=draw(some.sampled_from(LEADS)),
        front=front,
        dry=draw(some.integers(1, most_dry_h * 4)) * 15,
        clean=draw(some.sampled_from([0, 15])),
        unload=15,
        oven=draw(some.sampled_from([0, 0, 25])),
        cool=45,
        pack=draw(grid),
        preheat=draw(some.sampled_from([0, 20])),
        in_oven=draw(some.booleans()),
    )


LEADS = [
    (),
    (Task("slice", 30),),
    (Task("part-freeze", 60, attended=False, tied=True), Task("slice", 35)),
]
FRONTS = [("load",), ("drain", "load"), ("drain", "simmer", "load")]


@some.composite
def batches(draw: some.DrawFn) -> Batch:
    """One recipe at one weight."""
    wanted = draw(some.integers(0, 24)) * HOUR
    listed = draw(some.lists(portions(), min_size=1, max_size=3))
    flesh = draw(some.booleans())
    if flesh:
        listed = [_raw(one) for one in listed]
    return Batch(
        prep=_touched(draw(some.sampled_from(PREPS))) if flesh else draw(some.sampled_from(PREPS)),
        wash=10 if flesh and wanted else 0,
        flesh=flesh,
        mix=draw(some.sampled_from([0, 10])),
        steep=draw(some.sampled_from([0, 10])) if not wanted else 10,
        soak=(max(wanted - 2 * HOUR, 0), wanted, wanted + 2 * HOUR),
        air=draw(airs),
        raw=draw(some.booleans()),
        portions=tuple(sorted(listed, key=lambda one: -one.trays)),
    )


def _raw(portion: Portion) -> Portion:
    """Return a portion that is raw till it is heated."""
    return portion._replace(lead=_touched(portion.lead), front=_touched(portion.front))


def _touched(tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    return tuple(task._replace(raw=task.attended) for task in tasks)


PREPS = [
    (),
    (Task("trim", 25),),
    (Task("thaw", 1440, attended=False), Task("trim", 10)),
]
several = some.lists(batches(), min_size=1, max_size=3)


def check(found: tuple[Placed, ...], listed: list[Batch], ready: int) -> None:
    """Hold a plan against everything that every plan keeps."""
    assert all(one.end <= ready for one in found)
    one_pair_of_hands(found)
    trays_and_air(found, listed)
    oven_alone(found, listed)
    raw_apart(found, listed)
    for at, batch in enumerate(listed):
        own = [one for one in found if one.batch == at]
        nothing_lost(own, batch)
        in_order(own, batch)


def one_pair_of_hands(found: tuple[Placed, ...]) -> None:
    """Nobody is needed in two places at once."""
    spans = sorted(one.span for one in found if one.attended)
    assert not [pair for pair in pairwise(spans) if pair[0].meets(pair[1])]


def trays_and_air(found: tuple[Placed, ...], listed: list[Batch]) -> None:
    """There are trays for all that dries at once, and one air that suits it."""
    drying = [one for one in found if one.kind == "dry"]
    for moment in {one.start for one in drying}:
        now = [one for one in drying if one.start <= moment < one.end]
        taken = sum(listed[one.batch].portions[one.load - 1].trays for one in now)
        assert taken <= TRAYS
        airs = [listed[one.batch].air for one in now]
        assert max(low for low, _ in airs) <= min(high for _, high in airs)
        assert 1 == len({listed[one.batch].raw for one in now})


def oven_alone(found: tuple[Placed, ...], listed: list[Batch]) -> None:
    """Where the oven is the dryer, nothing else is in it during its own step."""
    for one in found:
        if one.kind == "oven" and listed[one.batch].portions[one.load - 1].in_oven:
            others = [other for other in found if other.kind == "dry" and other != one]
            assert not any(other.span.meets(one.span) for other in others)


def raw_apart(found: tuple[Placed, ...], listed: list[Batch]) -> None:
    """No raw meat is in hand, and no board unwashed, from the trays to the pack."""
    flesh = [one for one in found if listed[one.batch].flesh]
    raw = [one.span for one in flesh if one.attended and one.kind in RAW]
    for at, batch in enumerate(listed):
        for load in range(1, len(batch.portions) + 1):
            raw += unwashed([one for one in flesh if (one.batch, one.load) == (at, load)])
    packed = {(one.batch, one.load): one.end for one in flesh if one.kind == "pack"}
    for one in flesh:
        if one.kind == "unload":
            lies_open = Span(one.start, packed[one.batch, one.load])
            assert not any(lies_open.meets(span) for span in raw)


def unwashed(own: list[Placed]) -> list[Span]:
    """Return from when a load is first cut to the next washing up, where there is one."""
    cut = [one.start for one in own if one.kind == "slice"]
    washed = [
        one.end for one in own if one.kind in ("wash", "clean") and cut and one.start >= cut[0]
    ]
    return [Span(cut[0], min(washed))] if cut and washed else []


RAW = ("trim", "slice", "steep", "wash", "drain", "simmer", "load")


def nothing_lost(own: list[Placed], batch: Batch) -> None:
    """Every task of a batch is there once, and as long as it takes."""
    kinds = {(task.kind, task.minutes) for task in batch.prep}
    assert kinds <= {(one.kind, one.end - one.start) for one in own if one.load == 0}
    for load, portion in enumerate(batch.portions, start=1):
        lengths = {one.kind: one.end - one.start for one in own if one.load == load}
        for task in (
            *portion.lead,
            *portion.front,
            Task("dry", portion.dry),
            Task("pack", portion.pack),
        ):
            assert task.minutes == lengths[task.kind]
        assert lengths.get("oven", 0) == portion.oven
        assert ("soak" in lengths) == bool(batch.steep)


def in_order(own: list[Placed], batch: Batch) -> None:
    """Each step follows the one before it, the soak keeps its hours, and nothing hot waits."""
    prep = [next(one for one in own if one.kind == task.kind) for task in batch.prep]
    for before, after in pairwise(prep):
        assert before.end <= after.start
    for load, portion in enumerate(batch.portions, start=1):
        at = {one.kind: one for one in own if one.load == load}
        lead = [at[task.kind] for task in portion.lead]
        road = [*prep[-1:], *lead, at["steep"] if batch.steep else at[portion.front[0].kind]]
        assert all(a.end <= b.start for a, b in pairwise(road))
        for task, before, after in zip(portion.lead, lead, lead[1:], strict=False):
            assert not task.tied or before.end == after.start
        chain = [*(at[task.kind] for task in portion.front), at["dry"], at["unload"]]
        assert all(a.end == b.start for a, b in pairwise(chain))
        if batch.steep:
            least, _, most = batch.soak
            assert at["steep"].end == at["soak"].start and at["soak"].end == chain[0].start
            assert least <= at["soak"].end - at["soak"].start <= most
        out = at["unload"].end
        if portion.oven:
            assert out <= at["oven"].start <= out + OVEN_WAIT
            out = at["oven"].end
        assert out == at["cool"].start and at["cool"].end <= at["pack"].start


@settings(max_examples=150, deadline=None)
@given(several, some.booleans())
def test_a_plan_back_from_its_end(listed: list[Batch], by_night: bool) -> None:
    """Order, trays, air, hands, hours and the end are kept; awake nights are kept where asked."""
    nights = NIGHTS if by_night else []
    found = place_back(listed, ready=9 * DAY + 18 * HOUR, trays=TRAYS, nights=nights)
    assume(found is not None)
    assert found is not None

    check(found, listed, 9 * DAY + 18 * HOUR)
    for one in found:
        if one.attended or one.kind == "dry":
            assert not any(map(one.span.meets, nights))
        if one.kind == "dry":
            on = one.start - listed[one.batch].portions[one.load - 1].preheat
            assert not any(map(Span(on, on + 1).meets, nights))


@settings(max_examples=60, deadline=None)
@given(several, some.integers(-2000, 2000).map(lambda minutes: minutes * GRID))
def test_without_nights_time_is_all_alike(listed: list[Batch], shift: int) -> None:
    """The same plan later is the same plan: it does not matter when it ends."""
    one = place_back(listed, ready=0, trays=TRAYS)
    other = place_back(listed, ready=shift, trays=TRAYS)
    assert one is not None and other is not None

    moved = tuple(task._replace(start=task.start + shift, end=task.end + shift) for task in one)
    assert moved == other


@settings(max_examples=60, deadline=None)
@given(several)
def test_forward_and_backward_agree(listed: list[Batch]) -> None:
    """Begun when the plan for an end says, the end is that one; and the plan is the same."""
    back = place_back(listed, ready=5 * DAY, trays=TRAYS)
    assert back is not None
    found = place_from(listed, start=back[0].start, trays=TRAYS)
    assert found is not None

    assert (back, 5 * DAY) == found


@settings(max_examples=40, deadline=None)
@given(several, some.integers(0, 2 * DAY // GRID).map(lambda steps: steps * GRID))
def test_a_plan_forward_through_nights(listed: list[Batch], start: int) -> None:
    """It begins no sooner than asked, keeps everything a plan keeps, and leaves nights alone."""
    found = place_from(listed, start=start, trays=TRAYS, nights=NIGHTS)
    assume(found is not None)
    assert found is not None
    placed, ready = found

    assert placed[0].start >= start
    check(placed, listed, ready)
    assert not any(one.attended and one.span.meets(night) for one in placed for night in NIGHTS)


def one_load(**changes: object) -> Batch:
    """Return a plain batch of one load."""
    portion = Portion(
        trays=5,
        lead=(Task("part-freeze", 60, attended=False, tied=True), Task("slice", 40)),
        front=(Task("drain", 15), Task("steam", 45), Task("load", 15)), dry=360,
        clean=15, unload=15, oven=0, cool=45, pack=15,
    )  # fmt: skip
    batch = Batch(
        prep=(Task("trim", 30),), mix=15, steep=10, soak=(600, 720, 840), air=(145.0, 155.0),
        raw=False, portions=(portion,),
    )  # fmt: skip
    return batch._replace(**changes)


def spans(found: tuple[Placed, ...] | None, kind: str) -> list[tuple[int, int]]:
    """Return when a kind of task is done."""
    assert found is not None
    return [(one.start, one.end) for one in found if one.kind == kind]


def test_one_load_by_hand() -> None:
    """Back from 0: pack 15, cool 45, unload 15, dry 6 h, load 15, steam 45, drain 15, soak 12 h,
    steep 10, slice 40, part-freeze 60 with the marinade mixed meanwhile, trim 30."""
    found = place_back([one_load()], ready=0, trays=5)

    assert [(-15, 0)] == spans(found, "pack")
    assert [(-60, -15)] == spans(found, "cool")
    assert [(-435, -75)] == spans(found, "dry")
    assert [(-1230, -510)] == spans(found, "soak")
    assert [(-1280, -1240)] == spans(found, "slice")
    assert [(-1340, -1280)] == spans(found, "part-freeze")
    assert [(-1295, -1280)] == spans(found, "mix")
    assert [(-1370, -1340)] == spans(found, "trim")


def test_two_loads_one_after_the_other() -> None:
    """A second full load waits for the trays of the first; each soaks as long as the other."""
    once = one_load()
    twice = once._replace(portions=once.portions * 2)
    found = place_back([twice], ready=0, trays=5)

    (first, second) = spans(found, "dry")
    assert first[1] + 15 <= second[0]
    assert [720, 720] == [end - start for start, end in spans(found, "soak")]


def test_spare_trays_are_shared_where_the_air_agrees() -> None:
    """Two recipes of 2 trays dry side by side on 5; where their air differs, in turn."""
    small = one_load()
    small = small._replace(portions=(small.portions[0]._replace(trays=2),))
    hot = small._replace(air=(160.0, 165.0))
    together, apart, raw = (
        place_back([small, other], ready=0, trays=5)
        for other in (small, hot, small._replace(raw=True))
    )

    meets = [
        Span(*a).meets(Span(*b))
        for found in (together, apart, raw)
        for a, b in [spans(found, "dry")]
    ]
    assert [True, False, False] == meets


def test_a_soak_gives_way_to_the_night_within_its_hours() -> None:
    """Where the wanted hours would wake somebody, the soak is longer or shorter in its range."""
    portion = one_load().portions[0]
    batch = one_load(prep=(), mix=0, soak=(600, 720, 900))
    ready = 20 * HOUR  # dry 11:25 to 17:25 ... drained at 11:30: 12 h before it is 23:30
    found = place_back([batch], ready=ready, trays=5, nights=NIGHTS)

    ((start, end),) = spans(found, "soak")
    assert 600 <= end - start <= 900 and end - start != 720
    assert not any(Span(start - 10, start).meets(night) for night in NIGHTS)
    assert 360 == portion.dry


def test_drying_longer_than_the_day_is_said_by_finding_none() -> None:
    """20 hours of drying fit in no day of 16: none is found, unless the dryer may run by night."""
    batch = one_load()
    long = batch._replace(portions=(batch.portions[0]._replace(dry=20 * HOUR),))

    assert place_back([long], ready=5 * DAY, trays=5, nights=NIGHTS) is None
    found = place_back([long], ready=5 * DAY, trays=5, nights=NIGHTS, dry_by_night=True)
    assert found is not None
    assert not any(one.attended and one.span.meets(night) for one in found for night in NIGHTS)


@pytest.mark.parametrize("trays", [1, 2, 3, 4, 5])
def test_more_trays_than_there_are(trays: int) -> None:
    """A portion that takes more trays than there are has no place."""
    found = place_back([one_load()], ready=0, trays=trays)

    assert (trays < 5) == (found is None)


def test_pairs_of_small_loads() -> None:
    """Portions of 3, 2, 3 and 2 trays make two rounds on a dryer of 5, not four."""
    one = one_load().portions[0]
    listed = [
        one_load(portions=(one._replace(trays=3),)),
        one_load(portions=(one._replace(trays=2),)),
    ]
    found = place_back([*listed, *listed], ready=0, trays=5)
    drying = [Span(*span) for span in spans(found, "dry")]

    assert 2 <= sum(a.meets(b) for a, b in combinations(drying, 2))
    assert max(span.end for span in drying) - min(span.start for span in drying) < 3 * 360 + 60
