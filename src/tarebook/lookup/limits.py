"""How long a question may take, and how much an answer may be."""

from __future__ import annotations

from tarebook.tuples import NamedTuple


class Limits(NamedTuple):
    """What a question to the service may cost.

    Attributes:
        total_s: all of it, with every try and every wait [s].
        connect_s: until an address answers [s].
        read_s: until the next byte comes [s].
        most_bytes: an answer, unpacked [bytes].
        tries: how often a fault that may pass is tried, the first time counted.
        pause_s: the wait before the second try [s]; each further one is twice as long.
        most_redirects: how often the service may point elsewhere on itself.
    """

    total_s: float = 25.0
    connect_s: float = 6.0
    read_s: float = 12.0
    most_bytes: int = 4_000_000
    tries: int = 4
    pause_s: float = 1.0
    most_redirects: int = 3
