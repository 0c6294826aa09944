"""tarebook foods lookup: foods of the open table, kept, or one clear message."""

from __future__ import annotations

import json
import socket
import threading
from collections.abc import Callable, Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from tarebook.lookup.limits import Limits
from tarebook.recipe.bottles import own_bottle

Tarebook = Callable[..., Any]
SHAPES = Path(__file__).parents[1] / "lookup"
SECRET = "lakeside-family-key-0123456789"


class Handler(BaseHTTPRequestHandler):
    """Answers as documented, or with the status or the body that the test has set."""

    server: Service

    def do_GET(self) -> None:
        """Answer one question."""
        self.server.asked.append(self.path)
        name = "search" if "search" in self.path else self.server.food
        body = self.server.body or (SHAPES / f"{name}.json").read_bytes()
        self.send_response(self.server.status)
        self.send_header("Content-Type", "application/json")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing."""


class Service(ThreadingHTTPServer):
    """A service on this machine."""

    daemon_threads = True

    def __init__(self) -> None:
        super().__init__(("127.0.0.1", 0), Handler)
        self.asked: list[str] = []
        self.status, self.body, self.food = 200, b"", "food"


@pytest.fixture
def service(monkeypatch: pytest.MonkeyPatch) -> Iterator[Service]:
    """A running service which the command asks, with a key of the cook's own."""
    running = Service()
    threading.Thread(target=running.serve_forever, args=(0.01,), daemon=True).start()
    where = f"http://127.0.0.1:{running.server_address[1]}"
    monkeypatch.setattr("tarebook.lookup.client.ADDRESS", where)
    monkeypatch.setattr("tarebook.lookup.client.Limits", lambda: Limits(total_s=2.0, pause_s=0.01))
    monkeypatch.setenv("TAREBOOK_FDC_KEY", SECRET)
    yield running
    running.shutdown()
    running.server_close()


def test_words_list_foods(service: Service, tarebook: Tarebook) -> None:
    """Each food has its number, name, kind, sodium and sugars; what is not known is said so."""
    status, out, err = tarebook("foods", "lookup", "soy", "sauce")

    assert (0, "") == (status, err)
    first = next(line for line in out.splitlines() if "174278" in line)
    assert ["SR", "Legacy", "5,493", "0.4"] == first.split()[-4:]
    rice = next(line for line in out.splitlines() if "Wild rice" in line)
    assert ["3", "not", "known"] == rice.split()[-3:]
    assert "2900001: figures per 100 mL" in out and "The likeliest 3 of 1,397" in out
    assert "FoodData Central" in out and "public domain" in out


def test_a_number_shows_every_figure(service: Service, tarebook: Tarebook) -> None:
    """Every figure that we read stands on the page, known or not, and every measure."""
    status, out, err = tarebook("foods", "lookup", "--id", "174278")

    assert (0, "") == (status, err)
    for words in ("sodium 5,493 mg", "water 71.15 g", "ash 15.31 g", "vitamin D not known",
                  "added sugars not known", "1 tbsp 16 g"):  # fmt: skip
        assert words in " ".join(out.split())


def test_a_food_is_kept(service: Service, tarebook: Tarebook, own_home: Path) -> None:
    """With --keep it becomes a food of the cook's own, with source, number and day."""
    status, _, err = tarebook(
        "foods", "lookup", "--id", "174278", "--keep", "Lake soy", "--like", "shoyu"
    )

    assert 0 == status
    assert (
        f'"{own_home / "foods" / "lake-soy.toml"}" is written; from shoyu it takes saturated, '
        in err
    )
    bottle = own_bottle("lake-soy")
    assert bottle is not None
    assert ("soy-sauce", "fooddata-central", "174278") == (
        bottle.like, bottle.origin, bottle.origin_id)  # fmt: skip
    again = tarebook("foods", "lookup", "--id", "174278", "--keep", "lake-soy", "--like", "shoyu")
    assert 1 == again.status and "there already; nothing was written over" in again.err
    words = ("foods", "lookup", "--id", "174278", "--keep", "lake-soy", "--like", "tamari")
    assert 0 == tarebook(*words, "--replace").status
    changed = own_bottle("lake-soy")
    assert changed is not None and "soy-sauce-tamari" == changed.like


def test_a_label_is_kept_by_its_serving(service: Service, tarebook: Tarebook) -> None:
    """A pack's figures are kept per serving, and the page shows its list of ingredients."""
    service.food = "pack"

    status, out, _ = tarebook("foods", "lookup", "--id", "2900002", "--keep", "teriyaki",
                              "--like", "soy-sauce")  # fmt: skip

    assert 0 == status
    assert "Ingredients on the label: WATER, SUGAR" in out
    bottle = own_bottle("teriyaki")
    assert bottle is not None and bottle.panel is not None
    assert (15, 17) == (bottle.panel.serving_ml, bottle.panel.serving_g)


def test_json(service: Service, tarebook: Tarebook) -> None:
    """As data, what is not known is null."""
    found = json.loads(tarebook("foods", "lookup", "soy", "--json").out)
    one = json.loads(tarebook("foods", "lookup", "--id", "174278", "--json").out)

    assert 5493 == found["foods"][0]["sodium_mg"]
    assert found["foods"][1]["sugars_g"] is None
    assert (5493, None) == (one["figures"]["sodium_mg"], one["figures"]["fiber_g"])
    assert (False, None) == (one["kept"], one["file"])


def test_offline_and_without_a_service(service: Service, tarebook: Tarebook) -> None:
    """What was asked once is told offline, and where the service fails, with its day."""
    tarebook("foods", "lookup", "soy")
    service.status = 503

    offline = tarebook("foods", "lookup", "soy", "--offline")
    failed = tarebook("foods", "lookup", "soy", "--again")
    other = tarebook("foods", "lookup", "tamari", "--offline")

    assert (0, "") == (offline.status, offline.err)
    assert "Kept since " in offline.out and "174278" in offline.out
    assert 0 == failed.status and failed.out == offline.out
    assert "note: the service has trouble of its own; this is the answer of 20" in failed.err
    assert (1, "") == (other.status, other.out)
    assert "tarebook: no answer to that is kept; ask once without --offline\n" == other.err


@pytest.mark.parametrize("status", [400, 401, 403, 404, 418, 429, 500, 503, 302])
@pytest.mark.parametrize("words", [["soy"], ["--id", "174278"]], ids=["words", "number"])
def test_a_fault_is_one_line_and_1(
    service: Service, tarebook: Tarebook, status: int, words: list[str]
) -> None:
    """Whatever the service answers, one line on standard error, exit 1, and no key in it."""
    service.status, service.body = status, f'{{"error": "{SECRET}"}}'.encode()

    done = tarebook("foods", "lookup", *words)

    assert (1, "") == (done.status, done.out)
    assert 1 == len(done.err.splitlines()) and done.err.startswith("tarebook: ")
    assert SECRET not in done.err and "Traceback" not in done.err


def test_nothing_found(service: Service, tarebook: Tarebook) -> None:
    """Where the table has nothing, that is said with what to try."""
    service.body = b'{"totalHits": 0, "foods": []}'

    done = tarebook("foods", "lookup", "lake", "monster")

    assert (1, "") == (done.status, done.out)
    assert "the table has nothing for that; try fewer words" in done.err


def test_the_key_is_nowhere(
    service: Service, tarebook: Tarebook, own_home: Path, tmp_path: Path
) -> None:
    """After asking, keeping and failing, the key is in no file and no output."""
    told = [
        tarebook("foods", "lookup", "soy"),
        tarebook("foods", "lookup", "--id", "174278", "--keep", "s", "--like", "soy-sauce"),
        tarebook("foods", "lookup", "--id", "174278", "--json"),
    ]
    service.status = 403
    told.append(tarebook("foods", "lookup", "tamari"))

    assert [0, 0, 0, 1] == [one.status for one in told]
    assert not any(SECRET in one.out + one.err for one in told)
    files = [path for path in tmp_path.rglob("*") if path.is_file()]
    assert {"s.toml", "fooddata.sqlite3"} <= {path.name for path in files}
    assert [] == [path for path in files if SECRET.encode() in path.read_bytes()]


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ([], "name the food"),
        ([" "], "name the food"),
        (["soy", "--id", "5"], "name the food"),
        (["--id", "5", "--keep", "x"], "--keep NAME goes with"),
        (["--id", "5", "--like", "soy-sauce"], "--keep NAME goes with"),
        (["soy", "--keep", "x", "--like", "soy-sauce"], "--keep NAME goes with"),
        (["soy", "--replace"], "--replace goes with --keep"),
        (["--id", "5", "--labels"], "--labels goes with words"),
        (["soy", "--offline", "--again"], "one of --offline and --again"),
        (["--id", "0"], "no number of the table"),
        (["--id", "5", "--keep", "../x", "--like", "soy-sauce"], "can name no bottle"),
    ],
)
def test_asked_wrongly(service: Service, tarebook: Tarebook, words: list[str], why: str) -> None:
    """What cannot be asked is said, with exit 2, and nobody is asked."""
    done = tarebook("foods", "lookup", *words)

    assert (2, "") == (done.status, done.out)
    assert why in done.err and [] == service.asked


def test_a_food_it_cannot_be_like(service: Service, tarebook: Tarebook) -> None:
    """A name that no food has is said before anybody is asked."""
    done = tarebook("foods", "lookup", "--id", "5", "--keep", "x", "--like", "lake water")

    assert 1 == done.status and "no food is called" in done.err
    assert [] == service.asked


def test_everything_else_works_with_nothing_of_it(
    tarebook: Tarebook, own_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A spoiled file of answers, a bad key and no network touch no other command."""
    (own_home / "cache").mkdir(parents=True)
    (own_home / "cache" / "fooddata.sqlite3").write_text("spoiled", encoding="utf-8")
    monkeypatch.setenv("TAREBOOK_FDC_KEY", "!")

    def refuse(*_: Any, **__: Any) -> None:
        raise AssertionError("somebody was asked")

    monkeypatch.setattr(socket, "getaddrinfo", refuse)

    for words in (["scale", "juniper-venison"], ["foods", "show", "soy-sauce"], ["list"]):
        assert 0 == tarebook(*words).status
    assert 1 == tarebook("foods", "lookup", "soy").status
