"""A question to the table of foods, answered from the net, or from what is kept."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime
from functools import partial
from pathlib import Path
from types import TracebackType
from typing import Any, Generic, TypeVar

from tarebook.findings import AskedWrongly, LookupFailed
from tarebook.lookup.answers import LABEL, Found, TableFood, read_food, read_search
from tarebook.lookup.kept import Unusable, open_session, set_aside_if_damaged
from tarebook.lookup.key import Key
from tarebook.lookup.limits import Limits
from tarebook.lookup.wire import Wire, refuse_open_ways
from tarebook.where import cache

ADDRESS = "https://api.nal.usda.gov/fdc"
FILE = "fooddata.sqlite3"
PLAIN_KINDS = ("Foundation", "SR Legacy")
HITS = 15

_LONGEST_WORDS, _MOST_ID = 100, 10**10
_KEEPS = " %'&-"  # beside letters and digits; other marks steer the service's search

What = TypeVar("What")


class Answer(Generic[What]):
    """What the table says, and since when.

    Attributes:
        found: what it says.
        asked: when the service was asked.
        kept: whether this is an answer kept from before.
        why: why the service could not be asked now; empty where it was, or need not be.
    """

    __slots__ = ("asked", "found", "kept", "why")

    def __init__(self, found: What, asked: datetime, *, kept: bool, why: str = "") -> None:
        self.found, self.asked, self.kept, self.why = found, asked, kept, why

    @property
    def day(self) -> date:
        """The day the service was asked, by the clock of this machine."""
        return self.asked.astimezone().date()


class Client:
    """Asks the service, and keeps what it answers.

    Example::

        with Client(find_key()) as table:
            hits = table.search("soy sauce").found.foods

    Attributes:
        said: what there is to tell the cook about the kept answers.
    """

    def __init__(
        self,
        key: Key | None,
        *,
        again: bool = False,
        address: str | None = None,
        limits: Limits | None = None,
        file: Path | None = None,
    ) -> None:
        """Open the kept answers; nothing is asked yet.

        Args:
            key: what the service asks for; None never asks it, and reads what is kept.
            again: whether to ask even where an answer is kept.
            address: of another service, for tests; never one that a cook could be led to.
            limits: how long it may take, and how much it may send.
            file: where answers are kept; in the folder for such things where not given.

        Raises:
            AskedWrongly: the key would go over an open way.
        """
        self.said: list[str] = []
        self._address, self._again = ADDRESS if address is None else address, again
        refuse_open_ways(self._address)
        self._file = file or cache() / FILE
        self._wire = None if key is None else Wire(key=key, limits=limits or Limits())
        self._keeps = False
        self._session = self._opened()

    def __enter__(self) -> Client:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """Let go of the file and of connections."""
        if self._session is not None:
            self._session.close()

    def search(self, words: str, *, labels: bool = False) -> Answer[Found]:
        """Return the foods that some words could mean.

        Args:
            words: of the food's name, in English.
            labels: whether to look among labels of packs in place of plain foods.

        Raises:
            AskedWrongly: there is no word in it.
            LookupFailed: there is no answer, on the net or kept.
        """
        plain = "".join(c if c.isalnum() or c in _KEEPS else " " for c in words)
        query = " ".join(plain.split())
        if not any(c.isalnum() for c in query):
            raise AskedWrongly("name the food in a word or two")
        if len(query) > _LONGEST_WORDS:
            raise AskedWrongly(f"name the food in fewer than {_LONGEST_WORDS} letters")
        kinds = (LABEL,) if labels else PLAIN_KINDS
        asked = {"query": query, "dataType": ",".join(kinds), "pageSize": str(HITS)}
        return self._ask("/v1/foods/search", asked, read_search)

    def food(self, fdc_id: int) -> Answer[TableFood]:
        """Return one food of the table by its number.

        Raises:
            AskedWrongly: it is no such number.
            LookupFailed: there is no answer, on the net or kept.
        """
        if not 0 < fdc_id < _MOST_ID:
            raise AskedWrongly(f"{fdc_id} is no number of the table")
        return self._ask(f"/v1/food/{fdc_id}", {}, partial(read_food, fdc_id=fdc_id))

    def _ask(self, path: str, asked: dict[str, str], read: Callable[[bytes], What]) -> Answer[What]:
        kept = self._kept(path, asked, read)
        if kept is not None and (self._wire is None or not (self._again or _old(kept.asked))):
            return kept
        if self._wire is None:
            raise LookupFailed("no answer to that is kept; ask once without --offline")
        try:
            return Answer(self._fresh(path, asked, read), datetime.now(UTC), kept=False)
        except LookupFailed as fault:
            if kept is None or not fault.passing:
                raise
            kept.why = str(fault)
            return kept

    def _fresh(self, path: str, asked: dict[str, str], read: Callable[[bytes], What]) -> What:
        assert self._wire is not None and self._session is not None
        got = _Reader(read)
        self._wire.accepts = got
        try:
            self._session.get(
                self._address + path,
                params=asked,
                allow_redirects=False,
                **({"force_refresh": True} if self._keeps else {}),
            )
        except LookupFailed:
            raise
        except Exception as fault:
            if not got.found:
                raise LookupFailed(
                    f"the question cannot be asked ({type(fault).__name__})"
                ) from None
            self._do_without(f"the answer cannot be kept ({type(fault).__name__})")
        return got.found[0]

    def _kept(
        self, path: str, asked: dict[str, str], read: Callable[[bytes], What]
    ) -> Answer[What] | None:
        if self._session is None or not self._keeps:
            return None
        from requests import Request

        try:
            question = self._session.prepare_request(
                Request("GET", self._address + path, params=asked)
            )
            store = self._session.cache
            found = store.get_response(store.create_key(question))
            return None if found is None else _answer(found, read)
        except LookupFailed:
            return None  # of a kind that is read no more
        except Exception as fault:  # of the library, of its file, or of what is in it
            self._do_without(f"the kept answers cannot be read ({type(fault).__name__})")
            return None

    def _opened(self) -> Any:
        """Return a session that keeps answers, or one that does not; None where none is needed."""
        try:
            note = set_aside_if_damaged(self._file)
            self.said += [note] if note else []
            if self._wire is None and not self._file.exists():
                return None
            session = open_session(self._file)
        except Unusable as fault:
            self.said.append(f"{fault}; going on without")
            return self._plain()
        self._keeps = True
        return self._carried(session)

    def _plain(self) -> Any:
        if self._wire is None:
            return None
        from requests import Session

        return self._carried(Session())

    def _carried(self, session: Any) -> Any:
        session.auth = _no_password  # not even where the system keeps one for this service
        session.headers["User-Agent"] = "tarebook"
        if self._wire is not None:
            session.mount("https://", self._wire)
            session.mount("http://", self._wire)
        return session

    def _do_without(self, why: str) -> None:
        self.said.append(f"{why}; going on without")
        self.close()
        self._keeps, self._session = False, self._plain()


class _Reader(Generic[What]):
    """Reads an answer before it counts, and remembers what it read."""

    def __init__(self, read: Callable[[bytes], What]) -> None:
        self._read = read
        self.found: list[What] = []

    def __call__(self, data: bytes) -> None:
        self.found = [self._read(data)]


def _answer(kept: Any, read: Callable[[bytes], What]) -> Answer[What]:
    asked = kept.created_at
    if asked.tzinfo is None:
        asked = asked.replace(tzinfo=UTC)
    return Answer(read(kept.content), asked, kept=True)


def _old(asked: datetime) -> bool:
    from tarebook.lookup.kept import FRESH_DAYS

    return not 0 <= (datetime.now(UTC) - asked).days < FRESH_DAYS


def _no_password(request: Any) -> Any:
    return request
