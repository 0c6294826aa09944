"""The batch book: what really happened, weighed and written down, kept without loss.

One SQLite file in the cook's own folder. What is written in it is never changed: a mistake is
struck or replaced by a later entry, and both stay to be seen. The recipe of each batch is kept
whole, as it was that day. Exact numbers and the cook's own writing of them stand side by side.

Files of this room, from the ground up:

- ``moment``: when something happened, and what the kitchen's clock showed.
- ``entry``: ``Entry``, ``Batch``, ``Row``; the kinds of entries and what each may be about.
- ``values``: weights and temperatures as they are entered; exact numbers as they are kept.
- ``standing``: which entries still stand, and what they come to.
- ``schema``: the tables, and the steps from one version of them to the next.
- ``place``: where the book lies.
- ``copies``: whole copies of a book.
- ``store``: opens the book to read or to write; turns its faults into sentences.
- ``names``: what a recipe goes by in the book.
- ``find``: batches, entries and lists out of it.
- ``wordings``: how a recipe was written, one batch after the other.
- ``keep``: batches and entries into it.
- ``questions``: what looks like a slip, asked and never changed.
- ``next_time``: notes for next time, for every command that shows a recipe.
- ``carry``: what an exported book holds, checked line by line.
- ``as_toml``, ``as_csv``: the two forms of it, there and back.
- ``bring``: what was carried here, into the book, all or nothing.
- ``backup``: ``backup``, ``restore``, ``check``.

Only ``next_time`` is loaded by commands that do not keep the book.
"""

from tarebook.records.next_time import Known, NextTime, next_time

__all__ = ["Known", "NextTime", "next_time"]
