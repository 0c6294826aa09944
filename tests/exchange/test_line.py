"""The ingredient-line reader against lines of many hands, written by somebody else before it."""

from __future__ import annotations

import csv
import time
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.exchange.line import LONGEST, read_line
from tarebook.exchange.vocabulary import singular
from tarebook.quantities import Dimension, parse_amount, units

HERE = Path(__file__).parent
# Of each file: the share of lines read right that was measured once. It may rise, never fall.
SHARES = {"lines-seen.csv": 1.0, "lines-unseen.csv": 0.983}


def words_of(name: str) -> str:
    """Return a name as the truth compares it: hyphen is blank, plural is singular."""
    plain = name.lower().replace("’", "'").replace("-", " ")
    return " ".join(singular(word) for word in plain.split())


def read_right(row: dict[str, str]) -> bool:
    """Return whether amount and food of a line are read as its truth says."""
    line = read_line(row["line"])
    wanted = parse_amount(row["amount"]) if row["amount"] else None
    ends = (wanted.low, wanted.high, wanted.unit) if wanted else None
    found = (line.amount.low, line.amount.high, line.amount.unit) if line.amount else None
    return ends == found and words_of(row["food"]) == words_of(" + ".join(line.foods))


def rows_of(name: str) -> list[dict[str, str]]:
    """Return the lines of a file of truth."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("name", SHARES)
def test_share_of_lines_read_right(name: str) -> None:
    """At least the pinned share of a file's lines is read with the right amount and food."""
    if not (HERE / name).exists():
        pytest.skip(f"{name} is not here yet")
    rows = rows_of(name)

    wrong = [row["line"] for row in rows if not read_right(row)]

    assert len(rows) > 100
    assert 1 - len(wrong) / len(rows) >= SHARES[name], wrong


def test_optional_is_read() -> None:
    """What the truth calls optional is read as optional, and nothing else."""
    rows = rows_of("lines-seen.csv")

    wanted = [row["line"] for row in rows if row["optional"] == "yes"]

    assert wanted == [row["line"] for row in rows if read_line(row["line"]).optional]


# Families beyond the truth table: our own lines, written with the reader.
@pytest.mark.parametrize(
    ("line", "amount", "food"),
    [row.split(" | ") for row in (HERE / "lines-own.txt").read_text("utf-8").splitlines()],
)
def test_families(line: str, amount: str, food: str) -> None:
    """A line of each family is read as a careful cook would read it."""
    assert read_right({"line": line, "amount": amount.strip("-"), "food": food.strip("-")})


FORMS = ["packed", "minced", "chopped", "grated", "crushed"]
FOODS = ["soy sauce", "brown sugar", "cider vinegar", "juniper", "smoked paprika", "honey"]
NUMBERS = st.one_of(
    st.integers(1, 40).map(Fraction),
    st.builds(Fraction, st.integers(1, 60), st.sampled_from([2, 3, 4, 8])),
)
UNITS = [
    name
    for name, one in units().items()
    if one.dimension in (Dimension.MASS, Dimension.VOLUME) and name != "cubic_inch"
]


@given(NUMBERS, NUMBERS, st.sampled_from(UNITS), st.sampled_from(FORMS), st.sampled_from(FOODS))
def test_amounts_we_print_read_back_equal(
    low: Fraction, more: Fraction, unit: str, form: str, food: str
) -> None:
    """What we print ourselves (3/4 cup packed soy sauce) reads back as the same amount and food."""
    word = units()[unit].one
    one = parse_amount(f"{low} {word}" if low < 1 else f"{low.numerator}/{low.denominator} {word}")
    between = one._replace(high=one.low + more)  # type: ignore[operator]

    for amount in (one, between):
        for text in (f"{amount} {food}", f"{amount} {form} {food}", f"{food}, {amount}"):
            line = read_line(text)
            assert line.amount is not None, text
            assert (amount.low, amount.high, unit) == line.amount.meaning[:3], text
            assert (food,) == line.foods, text


_PIECES = """1 2 1/2 ½ 1,5 0 - – to or and x ( ) [ , : ; = / % ° " # + * a an the of cup Tbsp
T g kg oz can (15_oz) 2-inch salt pepper black garlic cloves juice zest each per pound optional
taste minced ground fresh dozen half quarter about scant pinch for in &frac14; <b> \u00a0 \u200b €
$1.50 . ..."""
PIECES = st.sampled_from(_PIECES.replace("\n", " ").split(" "))


@given(st.one_of(st.text(max_size=600), st.lists(PIECES, max_size=60).map(" ".join)))
def test_any_text_gives_an_answer(text: str) -> None:
    """Any text gives an answer: the text itself, and foods or none."""
    line = read_line(text)

    assert text == line.text
    assert all(food and food == food.strip() for food in line.foods)
    assert line.amount is None or line.foods


_REPEATED = (
    "1 |1/2 |(|((1 cup|) (|a |- |1-|or |salt, |to taste |½|&amp;|<|of |% |1 cup + |fresh |freshly |"
    "per |. |x |$1.00 |\u0301|1,|a-|(1 |1 (2 |for the |juice of |optional |minced "
)


@pytest.mark.parametrize("closed", [True, False])
@pytest.mark.parametrize("piece", ["(4 ", "1 (4 ", "(4 lb (", "[2(", "or (1 cup "])
def test_brackets_within_brackets_take_no_time(piece: str, closed: bool) -> None:
    """However deep they lie, a line of them is answered in 50 ms of work, and names its food."""
    deep = piece * (200 // len(piece))
    ends = "".join({"(": ")", "[": "]"}.get(one, "") for one in reversed(deep))
    text = f"one {deep}lb{ends if closed else ''} goose"
    times = []
    for _ in range(3):
        start = time.process_time()
        read_line(text)
        times.append(time.process_time() - start)

    assert min(times) < 0.05
    assert "2 lb goose" == f"{(line := read_line('1 (2 lb) goose')).amount} {line.foods[0]}"


@pytest.mark.parametrize("piece", _REPEATED.split("|"))
def test_long_lines_take_no_time(piece: str) -> None:
    """Two thousand characters of anything are answered in 50 ms of work."""
    for length in (LONGEST, 2000):
        text = (piece * 2000)[:length]
        times = []
        for _ in range(3):
            start = time.process_time()
            read_line(text)
            times.append(time.process_time() - start)

        assert min(times) < 0.05, (piece, length)


def test_what_is_too_long_is_not_read() -> None:
    """A text longer than a line can be names no food, and is given back whole."""
    text = "1 cup soy sauce, " + "x" * LONGEST

    line = read_line(text)

    assert (text, (), None) == (line.text, line.foods, line.amount)
