"""A service of our own on this machine: it answers as documented, and misbehaves when told to."""

from __future__ import annotations

import gzip
import json
import socket
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from tarebook.lookup.client import Client
from tarebook.lookup.key import Key
from tarebook.lookup.limits import Limits

SECRET = "k3y-Of-the-lakeside-family-0123456789abcd"
KEY = Key(text=SECRET, place="TAREBOOK_FDC_KEY")
# So short that every way of being slow is over within the second or two that a test may take.
LIMITS = Limits(total_s=1.2, connect_s=0.5, read_s=0.4, most_bytes=60_000, tries=3, pause_s=0.02)

HERE = Path(__file__).parent


def shape(name: str) -> Any:
    """Return an answer as documented: ``search``, ``food`` (by its number) or ``pack``.

    Shapes are those of the service's OpenAPI description (FoodData Central API 1.0) and of the
    answers it shows; figures of soy sauce are USDA SR26, row 16123. Other foods are made up.
    """
    return json.loads((HERE / f"{name}.json").read_text(encoding="utf-8"))


def found(**changed: Any) -> dict[str, Any]:
    """Return the answer to a search, the first food of it changed."""
    answer: dict[str, Any] = shape("search")
    answer["foods"][0] |= changed
    return answer


def detail(*more: dict[str, Any], **changed: Any) -> dict[str, Any]:
    """Return one food by its number; ``more`` are further figures."""
    answer: dict[str, Any] = shape("food")
    answer["foodNutrients"] += more
    return {**answer, **changed}


def entry(number: str, unit: Any, amount: Any) -> dict[str, Any]:
    """Return one figure of a food by its number."""
    return {"type": "FoodNutrient", "nutrient": {"number": number, "unitName": unit},
            "amount": amount}  # fmt: skip


Behaviour = Callable[["Handler"], None]


class Handler(BaseHTTPRequestHandler):
    """Answers each question with the next behaviour of the script; the last one stays."""

    protocol_version = "HTTP/1.1"
    server: Service

    def do_GET(self) -> None:
        """Answer one question."""
        self.close_connection = True
        self.server.asked.append((self.path, dict(self.headers)))
        script = self.server.script
        behaviour = script.pop(0) if len(script) > 1 else script[0]
        with suppress(OSError):  # whoever asked may have gone
            behaviour(self)

    def answer(self, body: bytes, status: int = 200, **headers: str) -> None:
        """Send an answer whole; a header named ``Content_Length`` and so on wins over ours."""
        told = {"Content-Type": "application/json", "Content-Length": str(len(body)),
                "Connection": "close"}  # fmt: skip
        told |= {name.replace("_", "-"): value for name, value in headers.items()}
        self.send_response(status)
        for name, value in told.items():
            if value:
                self.send_header(name, value)
        self.end_headers()
        self.wfile.write(body)

    def say(self, answer: Any, status: int = 200, **headers: str) -> None:
        """Send a JSON value; None is the answer to a search, as documented."""
        answer = found() if answer is None else answer
        self.answer(json.dumps(answer).encode(), status, **headers)

    def say_packed(self, data: bytes, keep: float = 1.0, **headers: str) -> None:
        """Send bytes packed as the service packs them, or only the first part of that."""
        whole = gzip.compress(data)
        part = whole[: int(len(whole) * keep)]
        self.answer(part, Content_Encoding="gzip", **headers)

    def drip(self, data: bytes, pause_s: float) -> None:
        """Send bytes one by one, for as long as anybody waits."""
        for byte in data:
            if self.server.over.wait(pause_s):
                return
            self.wfile.write(bytes([byte]))
            self.wfile.flush()

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing."""


class Service(ThreadingHTTPServer):
    """The service; ``script`` says how it behaves, ``asked`` is what it was asked."""

    daemon_threads = True
    secret, key = SECRET, KEY
    shape, found = staticmethod(shape), staticmethod(found)
    detail, entry = staticmethod(detail), staticmethod(entry)

    def __init__(self) -> None:
        super().__init__(("127.0.0.1", 0), Handler)
        self.script: list[Behaviour] = [lambda handler: handler.say(None)]
        self.asked: list[tuple[str, dict[str, str]]] = []
        self.over = threading.Event()

    @property
    def address(self) -> str:
        """Where it listens."""
        return f"http://127.0.0.1:{self.server_address[1]}"

    def says(self, answer: Any) -> None:
        """Answer every question with a JSON value from now on."""
        self.script = [lambda handler: handler.say(answer)]

    def handle_error(self, *_: Any) -> None:
        """Say nothing of connections that broke: that is what they are for."""


@pytest.fixture
def service() -> Iterator[Service]:
    """A running service, which is gone after the test with all who still waited for it."""
    running = Service()
    thread = threading.Thread(target=running.serve_forever, args=(0.01,), daemon=True)
    thread.start()
    yield running
    running.over.set()
    running.shutdown()
    running.server_close()
    for one in threading.enumerate():
        if one.name == "tarebook-lookup":
            one.join(5)


Open = Callable[..., Client]


@pytest.fixture
def table(service: Service, tmp_path: Path) -> Iterator[Open]:
    """Open clients of the service with short limits; all are closed after the test."""
    opened = []

    def make(*, key: Key | None = KEY, **how: Any) -> Client:
        limits = LIMITS._replace(**how.pop("limits", {}))
        how = {"address": service.address, "file": tmp_path / "kept" / "answers.sqlite3", **how}
        opened.append(Client(key, limits=limits, **how))
        return opened[-1]

    yield make
    for one in opened:
        one.close()


@pytest.fixture
def closed_port() -> int:
    """A port of this machine where nobody listens."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


@pytest.fixture
def stopwatch() -> Callable[[], float]:
    """Seconds since the test began."""
    begun = time.monotonic()
    return lambda: time.monotonic() - begun
