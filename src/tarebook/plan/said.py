"""Something to say of a plan: what is so, what to do instead, and who says so."""

from __future__ import annotations

from tarebook.safety.rulebook import citations
from tarebook.tuples import NamedTuple

AT_ODDS = "At odds with published advice"
"""What is grave: the plan as it stands is not as any body publishes."""


class Said(NamedTuple):
    """Something to say of a plan.

    Attributes:
        text: what is so, a clause without capital or stop.
        do: what to do instead, likewise, or nothing.
        cites: ids of the rules it stands on, joined by ``; ``, or nothing.
        grave: whether the plan as it stands is at odds with published advice.
        kinds: the kinds of step that it is about.
        job: which recipe it is about, or None for all.
    """

    text: str
    do: str = ""
    cites: str = ""
    grave: bool = False
    kinds: tuple[str, ...] = ()
    job: int | None = None

    @property
    def sentence(self) -> str:
        """All of it: what is so, what to do, and who says so."""
        parts = [f"{one[0].upper()}{one[1:]}." for one in (self.text, self.do) if one]
        source = f" [{citations(self.cites)}]" if self.cites else ""
        return " ".join(parts) + source
