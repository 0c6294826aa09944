"""The file of a kitchen: what is set is read back, and remarks stay."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as some

from tarebook.findings import AskedWrongly
from tarebook.kitchen.keys import BOWLS, KEYS
from tarebook.kitchen.read import read_kitchen
from tarebook.kitchen.write import to_toml, with_answer, with_value

ANSWERS = [(key.path, key.example) for key in KEYS] + [(f"{BOWLS}.big bowl", "4 qt")]


def test_every_example_can_be_set() -> None:
    """Every key takes its own example, in an empty file and one after the other."""
    text = ""
    for path, example in ANSWERS:
        text = with_answer(text, path, example)
    kitchen, findings = read_kitchen(text, file="k.toml")

    assert () == findings
    assert None not in [getattr(kitchen, key.field) for key in KEYS]
    assert ["big bowl"] == [one.name for one in kitchen.bowls]


def test_an_empty_file_has_every_key_as_an_example() -> None:
    """A new file shows in remarks what could be said, and says nothing."""
    text = to_toml({})

    assert ((None,) * len(KEYS), ()) == (
        tuple(getattr(read_kitchen(text, file="k")[0], key.field) for key in KEYS),
        read_kitchen(text, file="k")[1],
    )
    assert all(f"# {key.name} = " in text for key in KEYS)
    assert max(len(line) for line in text.splitlines()) <= 120


@given(some.lists(some.sampled_from(ANSWERS), max_size=12))
def test_setting_and_taking_out(order: list[tuple[str, str]]) -> None:
    """Whatever is set and taken out in whatever order, the file reads without a fault."""
    text = ""
    for path, example in order:
        text = with_answer(text, path, example)
    assert () == read_kitchen(text, file="k")[1] or not order
    for path, _ in order:
        text = with_answer(text, path, "")
    kitchen, _ = read_kitchen(text or "#", file="k")

    assert {None} == {getattr(kitchen, key.field) for key in KEYS}
    assert () == kitchen.bowls


def test_remarks_stay() -> None:
    """The cook's own remarks and order outlive a change."""
    text = "# mine\n[house]\nunits = 'us' # \"sic\"\n\n[dryer]  # the old one\ntrays = 5 # 2 lost\n"

    assert text.replace("= 5", "= 4") == with_answer(text, "dryer.trays", "4")
    changed = with_answer(with_answer(text, "house.units", "metric"), "dryer.hole", "3 in")
    assert [
        "# mine",
        "[house]",
        'units = "metric" # "sic"',
        "",
        "[dryer]  # the old one",
        "trays = 5 # 2 lost",
        'hole = "3 in"',
    ] == changed.splitlines()


def test_a_line_that_cannot_be_changed_alone() -> None:
    """Where a table stands in braces the file is written anew, and nothing of it is lost."""
    changed = with_value('dryer = { trays = 5, hole = "3 in" }\n', "dryer", "trays", 4)

    kitchen, findings = read_kitchen(changed, file="k")
    assert (4, ()) == (kitchen.trays, findings)
    assert kitchen.hole is not None


@pytest.mark.parametrize(
    ("path", "answer", "says"),
    [
        ("dryer.traze", "5", 'did you mean "dryer.tray"'),
        ("trays", "5", 'did you mean "dryer.trays"'),
        ("dryer", "5", "no key of a kitchen"),
        ("dryer.trays", "five", "dryer.trays: "),
        ("bowls.bag", "3", "bowls.bag: "),
        ("bowls.", "3 L", "no key of a kitchen"),
        ("measuring.drawer", "full", 'did you mean "measuring.set"'),
    ],
)
def test_what_cannot_be_set(path: str, answer: str, says: str) -> None:
    """A key nobody knows and an answer that is none are said with what to try."""
    with pytest.raises(AskedWrongly) as caught:
        with_answer("", path, answer)

    assert says in str(caught.value)
