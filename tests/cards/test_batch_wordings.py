"""The wordings of a recipe as they are printed."""

from __future__ import annotations

from tarebook.cards.batch_wordings import wordings_page
from tarebook.cards.lines import plain_text
from tarebook.records.moment import Moment
from tarebook.records.wordings import Wording

DAY = Moment(1_794_500_000, -360)


def page(*wordings: Wording) -> str:
    """Return the page."""
    text = plain_text(wordings_page(wordings, "lake"))
    assert all(len(line) <= 80 for line in text.splitlines())
    return text


def wording(text: str, *batches: int) -> Wording:
    """Return a wording with its batches."""
    return Wording("", text, DAY, batches, ())


def test_batches_by_their_numbers_while_there_are_few() -> None:
    """Runs are drawn together; of many, the first and the last are told."""
    assert "1   since Thu 12 Nov 2026; batch 3\n" in page(wording("a", 3))
    assert "; batches 1-3, 7\n" in page(wording("a", 1, 2, 3, 7))
    assert "; 50 batches, 1 to 99\n" in page(wording("a", *range(1, 100, 2)))
    assert "; no batch yet\n" in page(wording("a"))


def test_what_changed_stands_under_the_later_one() -> None:
    """Lines that went and lines that came; empty ones are passed over, marks made harmless."""
    before = 'title = "x"\nsalt = "1 tsp"\n\nsugar = "1 cup"\n'
    after = 'title = "x"\nsalt = "2 tsp"\nsugar = "1 cup"\n# \x1b[31mred\n'
    text = page(wording(before, 1), wording(after, 2))

    assert '    - salt = "1 tsp"\n    + salt = "2 tsp"\n' in text
    assert "sugar" not in text and "\x1b" not in text


def test_a_recipe_written_anew_is_cut_short() -> None:
    """Forty lines of change are enough to see; the rest is counted."""
    before = "\n".join(f"a{n}" for n in range(100))
    after = "\n".join(f"b{n}" for n in range(100))

    assert "    and 160 lines more\n" in page(wording(before, 1), wording(after, 2))
