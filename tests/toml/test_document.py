"""A whole file read, whatever it is about."""

from __future__ import annotations

from tarebook.toml.document import read_document
from tarebook.toml.fault import Faults
from tarebook.toml.locate import Lines
from tarebook.toml.syntax import Parsed


def slices(parsed: Parsed, faults: Faults, lines: Lines) -> int:
    """Return what is under slices, told where it stands; nothing but a whole number will do."""
    found = parsed.document.get("slices")
    assert lines["slices"] == 2
    if not isinstance(found, int):
        faults.error("number", "not a number", path=("slices",))
        return 0
    return found


def read(text: str, *, strict: bool = True) -> tuple[int | None, list[str]]:
    """Return what a text means, and what is said of it."""
    found, findings = read_document(
        text, slices, file="lake.toml", empty_hint="write some", strict=strict
    )
    return found, [str(one) for one in findings]


def test_a_file_comes_to_what_it_means() -> None:
    """Nothing wrong, nothing said."""
    assert (5, []) == read("\nslices = 5\n")


def test_one_error_is_enough_for_nothing() -> None:
    """A value made in spite of an error is not handed on, but to whom asks for what there is."""
    said = ["lake.toml:2: error: not a number (slices)"]

    assert (None, said) == read('\nslices = "five"\n')
    assert (0, said) == read('\nslices = "five"\n', strict=False)


def test_an_empty_file_is_told_what_to_hold() -> None:
    """Nothing is made of a file that never came to values."""
    assert (None, ["lake.toml:1: error: the file is empty; write some"]) == read(" \n")


def test_a_file_of_nothing_but_faults_ends() -> None:
    """Reading stops after so many errors, and says them."""

    def faulty(_parsed: Parsed, faults: Faults, _lines: Lines) -> None:
        while True:
            faults.error("many", "once more", line=1)

    found, findings = read_document("a = 1", faulty, file="lake.toml", empty_hint="")

    assert found is None and len(findings) > 90
