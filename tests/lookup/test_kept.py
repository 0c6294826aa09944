"""Answers are kept and found again; a file that is damaged or in the way stops nobody."""

from __future__ import annotations

import os
import shutil
import socket
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from tarebook.findings import AskedWrongly, LookupFailed
from tarebook.lookup.client import Client
from tarebook.lookup.key import FILE, VARIABLE, find_key

Open = Callable[..., Client]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Where the clients of these tests keep answers."""
    return tmp_path / "kept" / "answers.sqlite3"


@pytest.fixture
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """A machine on which no socket can be had."""

    def refuse(*_: Any, **__: Any) -> None:
        raise AssertionError("a socket was opened")

    monkeypatch.setattr(socket, "socket", refuse)


def test_a_question_is_asked_once(service: Any, table: Open) -> None:
    """The second time, the answer is the one that was kept, and the service hears nothing."""
    first = table().search("soy sauce")
    second = table().search("soy   sauce!")

    assert (False, True) == (first.kept, second.kept)
    assert first.found == second.found
    assert first.day == second.day == datetime.now().astimezone().date()
    assert 1 == len(service.asked)


def test_each_question_has_its_own_answer(service: Any, table: Open) -> None:
    """Other words, another kind and another number are other questions."""
    service.script = [lambda h: h.say(None), lambda h: h.say(None), lambda h: h.say(None)]
    for words, labels in (("soy", False), ("soy", True), ("tamari", False), ("soy", False)):
        table().search(words, labels=labels)
    service.says(service.detail())
    table().food(174278)

    assert 4 == len(service.asked)
    assert "dataType=Branded" in service.asked[1][0]
    assert "/v1/food/174278" == service.asked[3][0]


def test_again_asks_and_keeps_anew(service: Any, table: Open) -> None:
    """Asked again, the service answers, and that answer is the one that is kept."""
    table().search("soy")
    service.says(service.found(description="Newer soy sauce"))

    asked = table(again=True).search("soy")

    assert not asked.kept
    assert "Newer soy sauce" == table(key=None).search("soy").found.foods[0].description


def test_offline_makes_nothing_and_opens_nothing(
    table: Open, file: Path, request: pytest.FixtureRequest
) -> None:
    """Offline with nothing kept is one message: no file, no folder, no socket."""
    request.getfixturevalue("no_network")

    with pytest.raises(LookupFailed, match="no answer to that is kept"):
        table(key=None).search("soy")

    assert not file.parent.exists()


def test_offline_reads_what_is_kept(
    service: Any, table: Open, request: pytest.FixtureRequest
) -> None:
    """Offline, what was asked once is answered without a socket, with its day."""
    asked = table().search("soy")
    request.getfixturevalue("no_network")

    kept = table(key=None).search("soy")

    assert kept.kept and asked.found == kept.found
    assert asked.asked - kept.asked < timedelta(seconds=5)
    with pytest.raises(LookupFailed, match="no answer to that is kept"):
        table(key=None).search("tamari")


def aged(file: Path, days: int) -> None:
    """Make every kept answer older."""
    with sqlite3.connect(file) as kept:
        for key, value in kept.execute("SELECT key, value FROM responses").fetchall():
            now = datetime.now(UTC)
            old = value.replace(f'"{now:%Y-%m-%d}T', f'"{now - timedelta(days=days):%Y-%m-%d}T')
            assert old != value
            kept.execute("UPDATE responses SET value = ? WHERE key = ?", (old, key))
    kept.close()


@pytest.mark.parametrize("days", [29, 31])
def test_an_old_answer_is_asked_anew(service: Any, table: Open, file: Path, days: int) -> None:
    """After thirty days the service is asked again."""
    client = table()
    client.search("soy")
    client.close()
    aged(file, days)

    assert (days < 30) == table().search("soy").kept
    assert (1 if days < 30 else 2) == len(service.asked)


FAULTS: dict[str, Any] = {
    "trouble": lambda h: h.say({}, 503),
    "too many": lambda h: h.say({}, 429, Retry_After="3600"),
    "a page": lambda h: h.answer(b"<html>", Content_Type="text/html"),
    "nonsense": lambda h: h.answer(b"}{"),
    "hung up": lambda h: h.connection.shutdown(socket.SHUT_RDWR),
}


@pytest.mark.parametrize("behave", FAULTS.values(), ids=FAULTS.keys())
def test_without_a_service_an_old_answer_stands_in(
    service: Any, table: Open, file: Path, behave: Any
) -> None:
    """Where the service fails, an old answer is given, with why and since when, and stays kept."""
    client = table()
    client.search("soy")
    client.close()
    aged(file, 40)
    service.script = [behave]

    for _ in range(2):
        answer = table().search("soy")
        assert answer.kept and answer.why
        assert 40 == (datetime.now(UTC).date() - answer.asked.date()).days
        assert 3 == len(answer.found.foods)


def test_a_refused_key_is_told_and_not_covered_up(service: Any, table: Open) -> None:
    """What does not pass by itself is said, though an answer be kept."""
    table().search("soy")
    service.script = [lambda h: h.say({}, 403)]

    with pytest.raises(LookupFailed, match="does not take the key"):
        table(again=True).search("soy")


def spoiled(file: Path) -> Iterator[tuple[str, Callable[[], object]]]:
    """Yield ways in which a file can be damaged."""
    whole = file.read_bytes()
    yield "text", lambda: file.write_text("once upon a time", encoding="utf-8")
    yield "empty pages", lambda: file.write_bytes(whole[:4096] + b"\0" * (len(whole) - 4096))
    yield "half", lambda: file.write_bytes(whole[: len(whole) // 2])
    yield "noise", lambda: file.write_bytes(whole[:100] + os.urandom(len(whole) - 100))
    yield "another book", lambda: other_book(file)


def other_book(file: Path) -> None:
    """Put a book of somebody else's in the place of the answers."""
    file.unlink()
    with sqlite3.connect(file) as book:
        book.execute("CREATE TABLE responses (fish TEXT)")
    book.close()


@pytest.mark.parametrize("way", ["text", "empty pages", "half", "noise", "another book"])
def test_a_damaged_file_is_set_aside_and_said(
    service: Any, table: Open, file: Path, way: str
) -> None:
    """Kept answers that are damaged are moved out of the way, told, and started anew."""
    client = table()
    client.search("soy")
    client.close()
    dict(spoiled(file))[way]()
    damaged = file.read_bytes()

    client = table()
    answer = client.search("soy")

    assert not answer.kept and answer.found.foods
    (said,) = client.said
    assert "damaged; they were set aside" in said
    assert damaged == file.with_name("answers.damaged.sqlite3").read_bytes()
    assert table(key=None).search("soy").kept


def test_an_answer_spoiled_inside_a_sound_file_is_asked_anew(
    service: Any, table: Open, file: Path, caplog: pytest.LogCaptureFixture
) -> None:
    """What a file holds of one answer can be nonsense; then the service is asked, in silence."""
    client = table()
    client.search("soy")
    client.close()
    for value in ("{", "[]", '{"_content": 5}', '{"_content": "e30=", "status_code": 200}', "\x00"):
        with sqlite3.connect(file) as kept:
            kept.execute("UPDATE responses SET value = ?", (value,))
        kept.close()
        assert table().search("soy").found.foods, value
    assert [] == caplog.records


def test_a_file_left_by_a_crash_is_whole_again(
    service: Any, table: Open, file: Path, tmp_path: Path
) -> None:
    """A program that was killed while it wrote leaves a journal: what was kept before is there."""
    client = table()
    client.search("soy")
    client.close()
    other = tmp_path / "crashed.sqlite3"
    with closing(sqlite3.connect(file, isolation_level=None)) as killed:
        killed.execute("PRAGMA cache_size = 1")
        killed.execute("BEGIN IMMEDIATE")
        killed.execute("UPDATE responses SET value = 'half'")
        for n in range(300):
            killed.execute("INSERT INTO responses VALUES (?, ?, 0)", (f"{n}", "x" * 4000))
        shutil.copy(file, other)
        shutil.copy(f"{file}-journal", f"{other}-journal")
    assert other.stat().st_size > 500_000  # the unfinished work is in it

    client = table(key=None, file=other)

    assert 3 == len(client.search("soy").found.foods)
    assert [] == client.said


def test_a_file_that_others_hold_is_done_without(
    service: Any, table: Open, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Locked by another program, the file is left alone; the answer comes all the same."""
    monkeypatch.setattr("tarebook.lookup.kept._WAIT_MS", 20)
    client = table()
    client.search("soy")
    client.close()
    holder = sqlite3.connect(file, isolation_level=None)
    holder.execute("BEGIN EXCLUSIVE")
    try:
        client = table()
        assert client.search("soy").found.foods
        assert "going on without" in client.said[0]
    finally:
        holder.close()
    assert table().search("soy").kept


@pytest.mark.parametrize("way", ["folder", "a file above", "broken link"])
def test_a_place_that_cannot_be_written(service: Any, table: Open, file: Path, way: str) -> None:
    """Where nothing can be kept, the answer comes all the same, and that is said."""
    if way == "folder":
        file.mkdir(parents=True)
    elif way == "broken link":
        file.parent.mkdir()
        file.symlink_to(file.parent / "nowhere" / "deep")
    else:
        file.parent.write_text("in the way", encoding="utf-8")

    client = table()
    answers = [client.search("soy"), client.search("soy")]

    assert [False, False] == [one.kept for one in answers]
    assert ["going on without" in one for one in client.said] == [True]
    with pytest.raises(LookupFailed, match="no answer to that is kept"):
        table(key=None).search("soy")


def test_a_full_disk_loses_no_answer(
    service: Any, table: Open, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An answer that cannot be kept is still given, and asked for once only."""
    from requests_cache import BaseCache

    def full(*_: Any, **__: Any) -> None:
        raise sqlite3.OperationalError("database or disk is full")

    monkeypatch.setattr(BaseCache, "save_response", full)
    client = table()

    assert client.search("soy").found.foods
    assert 1 == len(service.asked)
    assert "cannot be kept" in client.said[0]


@pytest.mark.parametrize("words", ["", "  ", "!?", "*" * 20, "soy " * 40])
def test_words_that_ask_nothing(service: Any, table: Open, words: str) -> None:
    """Nothing, marks alone, and a whole page are no question; nobody is asked."""
    with pytest.raises(AskedWrongly, match="name the food"):
        table().search(words)

    assert [] == service.asked


def test_marks_do_not_steer_the_search(service: Any, table: Open) -> None:
    """Marks that the service takes for commands are left out of the question."""
    table().search('soy: +sauce* OR (fish)\\ "lake" 4:9 2% m&m crème')

    asked = service.asked[0][0]
    assert "query=soy+sauce+OR+fish+lake+4+9+2%25+m%26m+cr%C3%A8me&" in asked


@pytest.mark.parametrize("number", [0, -5, 10**12])
def test_numbers_that_no_food_has(table: Open, number: int) -> None:
    """What cannot be a number of the table is not asked for."""
    with pytest.raises(AskedWrongly, match="no number of the table"):
        table().food(number)


def test_the_key_is_the_cooks_own_or_the_documented_one(
    own_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The environment wins over the file; without either it is the one for trying."""
    monkeypatch.delenv(VARIABLE, raising=False)
    assert ("DEMO_KEY", False) == (find_key().text, find_key().own)

    own_home.mkdir()
    (own_home / FILE).write_text("  from-the-file-1234\n", encoding="utf-8")
    assert ("from-the-file-1234", True) == (find_key().text, find_key().own)

    monkeypatch.setenv(VARIABLE, "from-the-shell-1234")
    assert ("from-the-shell-1234", VARIABLE) == (find_key().text, find_key().place)

    monkeypatch.setenv(VARIABLE, " ")
    assert "from-the-file-1234" == find_key().text


@pytest.mark.parametrize(
    "text", ["short", "two words 12345", "x" * 300, "lake\nX-Other: 1", "sälz" * 5]
)
def test_what_is_no_key_is_refused_and_not_shown(
    monkeypatch: pytest.MonkeyPatch, text: str
) -> None:
    """A key that cannot be one is said to be none, without a letter of it."""
    monkeypatch.setenv(VARIABLE, text)

    with pytest.raises(LookupFailed, match="holds no key") as raised:
        find_key()

    assert text not in str(raised.value)


def test_a_demonstration_key_that_is_spent(service: Any, table: Open) -> None:
    """With the shared key, the limits of it and where to get one's own are told."""
    service.script = [lambda h: h.say({}, 429, Retry_After="3600")]

    with pytest.raises(LookupFailed, match=r"30 an hour and 50 a day.*api-key-signup"):
        table(key=find_key()).search("soy")


def test_nothing_kept_is_carried_over_by_a_copy(
    service: Any, table: Open, file: Path, tmp_path: Path
) -> None:
    """The file of answers is one file: copied, it answers elsewhere, and holds no key."""
    client = table()
    client.search("soy")
    client.close()
    other = tmp_path / "elsewhere.sqlite3"
    shutil.copy(file, other)

    assert table(key=None, file=other).search("soy").kept
    assert service.secret.encode() not in other.read_bytes()
