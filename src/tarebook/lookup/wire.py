"""One question to the service and its answer: within the limits, or a fault in a cook's words.

What is sent and what comes back passes through here only, below the file in which answers are
kept. So the key is put on just before a question leaves, and nothing that is kept ever held it;
and what is kept is the answer's text alone, without any header that came along.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from threading import Event, Thread
from typing import TYPE_CHECKING, Any
from urllib.parse import urljoin, urlsplit

from tarebook.findings import AskedWrongly, LookupFailed
from tarebook.lookup.key import Key
from tarebook.lookup.limits import Limits
from tarebook.lookup.unpack import CUT_SHORT, too_large, unpacked
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from requests import PreparedRequest, Response

_HEADER = "X-Api-Key"
_PIECE = 16_384
_FINE, _MANY = 200, 429
_MOVED = (301, 302, 303, 307, 308)
_PASSING = (500, 502, 503, 504)
_THIS_MACHINE = ("127.0.0.1", "::1", "localhost")
_JSON = ("application/json", "text/json")


class _Got(NamedTuple):
    status: int
    kind: str
    location: str
    wait: str
    body: bytes


class _Trouble(Exception):
    """A fault on its way: what to say, whether to try again, and after how long."""

    def __init__(self, fault: LookupFailed, *, again: bool = False, wait_s: float | None = None):
        super().__init__()
        self.fault, self.again, self.wait_s = fault, again, wait_s


class Wire:
    """Carries questions to one service; a transport for a session of the library.

    Attributes:
        accepts: what an answer must pass before it counts, and is kept.
    """

    def __init__(self, *, key: Key, limits: Limits) -> None:
        from requests.adapters import HTTPAdapter

        self._adapter = HTTPAdapter()
        self._key, self._limits = key, limits
        self.accepts: Callable[[bytes], object] = bytes

    def send(self, request: PreparedRequest, **sent: Any) -> Response:
        """Return the answer to a question: whole, unpacked, and of the documented kind.

        Raises:
            LookupFailed: there is none within the limits.
        """
        refuse_open_ways(str(request.url))
        end = time.monotonic() + self._limits.total_s
        pauses = [self._limits.pause_s * 2**n for n in range(self._limits.tries - 1)]
        for pause in (*pauses, None):
            try:
                return self._answer(request, sent, end)
            except _Trouble as trouble:
                wait_s = max(pause or 0.0, trouble.wait_s or 0.0)
                late = time.monotonic() + wait_s >= end
                if not trouble.again or pause is None or late:
                    raise trouble.fault from None
                time.sleep(wait_s)
        raise AssertionError("the last try neither answers nor fails")

    def close(self) -> None:
        """Let go of connections."""
        self._adapter.close()

    def _answer(self, request: PreparedRequest, sent: dict[str, Any], end: float) -> Response:
        got = self._followed(request, sent, end)
        if got.status != _FINE:
            raise self._refused(got)
        if self._key.own and self._key.text.encode() in got.body:
            raise _Trouble(LookupFailed("the answer repeats the key; it was let go"))
        try:
            self.accepts(got.body)
        except LookupFailed as fault:
            raise _Trouble(fault) from None
        return _clean(request, got.body)

    def _followed(self, request: PreparedRequest, sent: dict[str, Any], end: float) -> _Got:
        """Ask, and ask again where the service points to another place on itself."""
        question = request.copy()
        question.headers.update(
            {_HEADER: self._key.text, "Accept": "application/json", "Accept-Encoding": "gzip"}
        )
        for _ in range(self._limits.most_redirects + 1):
            got = self._in_time(question, sent, end)
            if got.status not in _MOVED:
                return got
            question.url = _pointed(str(question.url), got.location)
        raise _Trouble(LookupFailed("the service sends us round in circles", passing=True))

    def _in_time(self, question: PreparedRequest, sent: dict[str, Any], end: float) -> _Got:
        """Ask beside the main thread, which waits no longer than the limit.

        A name that is looked up for minutes, or headers that come letter by letter, can be
        interrupted in no other way. What is left behind ends with the program.
        """
        left_s = max(end - time.monotonic(), 0.01)
        done: list[_Got | Exception] = []
        stop = Event()

        def ask() -> None:
            try:
                done.append(self._once(question, sent, left_s, stop))
            except Exception as fault:
                done.append(fault)

        asking = Thread(target=ask, daemon=True, name="tarebook-lookup")
        asking.start()
        asking.join(left_s)
        stop.set()
        if not done:
            raise _Trouble(_late())
        if isinstance(done[0], Exception):
            raise _named(done[0]) from None
        return done[0]

    def _once(
        self, question: PreparedRequest, sent: dict[str, Any], left_s: float, stop: Event
    ) -> _Got:
        waits = (min(self._limits.connect_s, left_s), min(self._limits.read_s, left_s))
        answer = self._adapter.send(question, **{**sent, "stream": True, "timeout": waits})
        try:
            body = self._body(answer, stop) if answer.status_code == _FINE else b""
            told = answer.headers
            return _Got(
                status=answer.status_code,
                kind=told.get("Content-Type", ""),
                location=told.get("Location", ""),
                wait=told.get("Retry-After", ""),
                body=body,
            )
        finally:
            with suppress(Exception):  # of a connection that is broken already
                answer.close()

    def _body(self, answer: Response, stop: Event) -> bytes:
        kind = answer.headers.get("Content-Type", "").partition(";")[0].strip().lower()
        if kind not in _JSON:
            raise LookupFailed(
                "the answer is no food table but another kind of page; on a public network, "
                "sign in first",
                passing=True,
            )
        stated = answer.headers.get("Content-Length", "")
        length = int(stated) if stated.isascii() and stated.isdigit() and len(stated) < 20 else None
        if length is not None and length > self._limits.most_bytes:
            raise too_large(self._limits.most_bytes)
        packing = answer.headers.get("Content-Encoding", "").strip().lower()
        pieces = _pieces(answer.raw, stop)
        return unpacked(pieces, packing=packing, most=self._limits.most_bytes)

    def _refused(self, got: _Got) -> _Trouble:
        """Return what is said of a status other than fine; words of the service are not shown."""
        status = got.status
        if status in (401, 403):
            return _Trouble(LookupFailed(self._key_refused(), status=status))
        if status == _MANY:
            return self._too_many(got)
        words = _SAID.get(status) or f"the service answers with fault {status}"
        passing = status in _PASSING
        return _Trouble(LookupFailed(words, passing=passing, status=status), again=passing)

    def _key_refused(self) -> str:
        if self._key.own:
            return f"the service does not take the key in {self._key.place}"
        return f"the service does not take {self._key.place} today; {_OWN_KEY}"

    def _too_many(self, got: _Got) -> _Trouble:
        wait_s = seconds_to_wait(got.wait)
        words = "the service has had enough questions for now"
        if wait_s:
            words += f", and asks to wait {_span(wait_s)}"
        if not self._key.own:
            words += f"; the demonstration key allows 30 an hour and 50 a day, {_OWN_KEY}"
        return _Trouble(LookupFailed(words, passing=True, status=_MANY), again=True, wait_s=wait_s)


_OWN_KEY = "one of your own is free at fdc.nal.usda.gov/api-key-signup"
_SAID = {
    400: "the service does not understand the question; try plainer words",
    404: "the service has nothing under that number",
    **dict.fromkeys(_PASSING, "the service has trouble of its own"),
}


def refuse_open_ways(address: str) -> None:
    """Refuse an address over which a key could be overheard.

    Raises:
        AskedWrongly: it is neither ``https`` nor this machine itself.
    """
    where = urlsplit(address)
    if where.scheme != "https" and (where.scheme, where.hostname) not in _LOCAL:
        raise AskedWrongly("the key goes over https only")


_LOCAL = tuple(("http", name) for name in _THIS_MACHINE)


def seconds_to_wait(told: str) -> float | None:
    """Return how long a ``Retry-After`` asks to wait [s], or None where it cannot be read.

    Source:
        RFC 9110, 10.2.3: seconds, or a date.
    """
    from datetime import UTC, datetime
    from email.utils import parsedate_to_datetime

    told = told.strip()
    if told.isascii() and told.isdigit() and len(told) < 10:
        return float(told)
    try:
        moment = parsedate_to_datetime(told)
    except (ValueError, TypeError, IndexError, OverflowError):
        return None
    if moment.tzinfo is None:
        moment = moment.replace(tzinfo=UTC)
    return max((moment - datetime.now(UTC)).total_seconds(), 0.0)


def _span(seconds: float) -> str:
    if seconds < 90:
        return f"{seconds:.0f} s"
    return f"{seconds / 60:.0f} min" if seconds < 5400 else f"{seconds / 3600:.0f} h"


def _pointed(here: str, there: str) -> str:
    """Return the address that a redirect points to, if it is on the same service."""
    try:
        to = urljoin(here, there)
        same = bool(there) and _place(to) == _place(here)
    except ValueError:
        same = False
    if not same:
        raise _Trouble(LookupFailed("the service points elsewhere; that is refused", passing=True))
    return to


def _place(address: str) -> tuple[str | None, str, int | None]:
    """Return scheme, host and port, on which both readers of addresses must agree."""
    from urllib3.util import parse_url

    seen, used = urlsplit(address), parse_url(address)
    host = (used.host or "").strip("[]")
    if host != (seen.hostname or "") or used.port != seen.port or used.auth:
        raise ValueError("an address that can be read in two ways")
    return used.scheme, host, used.port


def _pieces(raw: Any, stop: Event) -> Iterator[bytes]:
    """Yield bytes as they come, not unpacked."""
    read = getattr(raw, "read1", raw.read)  # what is there, not all that was asked for
    while not stop.is_set() and (piece := read(_PIECE, decode_content=False)):
        yield piece


def _clean(request: PreparedRequest, body: bytes) -> Response:
    """Return an answer of the library's kind that holds the body and nothing else that came."""
    from io import BytesIO

    from requests import Response
    from urllib3 import HTTPResponse

    headers = {"Content-Type": "application/json"}
    answer = Response()
    answer.status_code, answer.reason = _FINE, "OK"
    answer.headers.update(headers)
    answer.url, answer.request, answer.encoding = str(request.url), request, "utf-8"
    answer.raw = HTTPResponse(
        body=BytesIO(body), headers=headers, status=_FINE, preload_content=False
    )
    return answer


def _named(fault: Exception) -> Exception:
    """Return a library's fault in a cook's words; its own may hold addresses and worse."""
    from requests import exceptions as asked
    from urllib3 import exceptions as below

    if isinstance(fault, LookupFailed):
        return _Trouble(fault, again=str(fault) == CUT_SHORT)
    if isinstance(fault, (asked.Timeout, below.TimeoutError)):
        return _Trouble(_late())
    if isinstance(fault, asked.SSLError):
        return _trouble(
            "the connection is not private: the service cannot prove who it is; is the clock of "
            "this machine right?"
        )
    if isinstance(fault, asked.ProxyError):
        return _trouble("the proxy that your system names does not let us through")
    if isinstance(fault, (asked.ConnectionError, below.HTTPError)):
        return _unconnected(fault)
    if isinstance(fault, (asked.RequestException, OSError)):
        return _trouble("your system's network settings do not let us ask")
    return _trouble(f"the answer cannot be read ({type(fault).__name__})")


def _trouble(words: str, *, again: bool = False) -> _Trouble:
    return _Trouble(LookupFailed(words, passing=True), again=again)


def _late() -> LookupFailed:
    return LookupFailed("no whole answer came in time", passing=True)


def _unconnected(fault: Exception) -> _Trouble:
    """Tell a line that broke, which is tried again, from one that was never there."""
    from http.client import IncompleteRead

    from urllib3.exceptions import ProtocolError

    # The library wraps one fault in another; each holds the one below it.
    below = [fault, *fault.args, *(inner for one in fault.args for inner in _held_by(one))]
    if any(isinstance(one, IncompleteRead) for one in below):
        return _trouble(CUT_SHORT, again=True)
    if any(isinstance(one, ProtocolError) for one in below):
        return _trouble("the connection broke off", again=True)
    return _trouble("the service cannot be reached: is there a network?")


def _held_by(fault: object) -> tuple[object, ...]:
    return fault.args if isinstance(fault, Exception) else ()
