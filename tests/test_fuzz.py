"""A short slice of the fuzzing of every reader; ``python tests/fuzz`` is the long one."""

from __future__ import annotations

from pathlib import Path
from types import ModuleType

import pytest

HERE = Path(__file__).parent / "fuzz"


@pytest.fixture
def fuzz(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """Give the fuzzing program as a module."""
    monkeypatch.syspath_prepend(str(HERE))
    import runpy

    names = runpy.run_path(str(HERE / "__main__.py"))
    program = ModuleType("fuzz")
    program.__dict__.update(names)
    return program


def test_what_is_spoiled_is_sound(fuzz: ModuleType) -> None:
    """Each reader takes all the files that its fuzzing starts from."""
    for name, reader in fuzz.READERS.items():
        for data in reader.sources():
            assert ("", True) == fuzz.wrong_with(reader, data), (name, data[:200])


def test_every_spoiled_file_is_answered(
    fuzz: ModuleType, capsys: pytest.CaptureFixture[str]
) -> None:
    """No spoiled file raises, hangs, or gets an answer that is neither a value nor a fault."""
    assert 0 == fuzz.main(["--runs", "150", "--seed", "7"]), capsys.readouterr().out
    told = capsys.readouterr().out.splitlines()
    assert len(fuzz.READERS) == len(told)
    assert all("150 executions" in line and " 0 read" not in line for line in told)


def test_the_same_seed_makes_the_same_files(fuzz: ModuleType) -> None:
    """A failure can be made again from its seed."""
    sources = fuzz.READERS["recipe"].sources()
    assert [*fuzz.mutated(sources, "3", 20)] == [*fuzz.mutated(sources, "3", 20)]
    assert [*fuzz.mutated(sources, "3", 20)] != [*fuzz.mutated(sources, "4", 20)]


def test_a_traceback_would_be_found(fuzz: ModuleType, capsys: pytest.CaptureFixture[str]) -> None:
    """A reader that raises fails the run, with the file that did it."""

    def broken(_: bytes) -> str:
        raise KeyError("x")

    reader = fuzz.Reader(lambda: [b"a = 1"], broken)
    assert 5 == fuzz.fuzz("broken", reader, 1, 5)
    assert "KeyError: 'x'" in capsys.readouterr().out


def test_a_slow_answer_would_be_found(
    fuzz: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """An answer that takes longer than a second is a failure, right or not."""
    ticks = iter(range(0, 100, 2))
    monkeypatch.setattr(fuzz.time, "process_time", lambda: next(ticks))
    assert 3 == fuzz.fuzz("slow", fuzz.Reader(lambda: [b"a"], lambda _: ""), 1, 3)
    assert "took 2.00 s" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (b"# overnight", b"#", "remarks were lost, or made"),
        (b'hours = "8-12"', b'hours = "8-13"', "another recipe, or another bottle"),
        (b"Mix # well.", b"Mix # badly.", "another recipe, or another bottle"),
    ],
)
def test_what_tidy_must_not_do_would_be_found(
    old: bytes, new: bytes, says: str, fuzz: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A remark that is lost, an amount or a word that is another: each is noticed."""
    import sources
    import taken_in

    true = taken_in.tidied
    data = sources.REMARKS.encode()
    assert "" == taken_in.tidy_wrong(data)
    monkeypatch.setattr(
        taken_in, "tidied", lambda data, *, file: true(data, file=file).replace(old, new)
    )
    assert old in true(data, file="x.toml")
    assert says == taken_in.tidy_wrong(data)
