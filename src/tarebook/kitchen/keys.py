"""Every key of ``kitchen.toml``: one table that the reader, the writer and the questions follow.

To add a key: a row here, and a field in ``profile`` of the name that the row gives.
"""

from __future__ import annotations

from collections.abc import Mapping

from tarebook.kitchen import values
from tarebook.kitchen.values import Read
from tarebook.tuples import NamedTuple

BOWLS = "bowls"
"""The table whose keys are the cook's own names."""


class Key(NamedTuple):
    """One key of the file.

    Attributes:
        table, name: where it stands.
        field: of ``Kitchen``.
        ask: the question, short.
        says: a remark for the file, and what a question is answered with that is not understood.
        example: an answer, as it would be typed.
        read: turns what stands there into a value.
        bare: whether it is written without quotes.
        words: the words to choose from.
        also: other words people try for it.
    """

    table: str
    name: str
    field: str
    ask: str
    says: str
    example: str
    read: Read
    bare: bool = False
    words: tuple[str, ...] = ()
    also: tuple[str, ...] = ()

    @property
    def path(self) -> str:
        """How a cook names it: ``dryer.trays``."""
        return f"{self.table}.{self.name}"


KEYS = (
    Key(
        table="dryer",
        name="trays",
        field="trays",
        ask="How many trays has the dryer, or 0 if you dry in the oven?",
        says="how many trays it has; 0 where there is no dryer",
        example="5",
        read=values.read_count,
        bare=True,
        also=("tray-count", "number"),
    ),
    Key(
        table="dryer",
        name="tray",
        field="tray",
        ask="How large is one tray, inside its rim?",
        says="one tray, inside its rim: 15 x 13 in, or 13 in round",
        example="15 x 13 in",
        read=values.read_outline,
        also=("tray-size", "size"),
    ),
    Key(
        table="dryer",
        name="hole",
        field="hole",
        ask="How wide is the hole in its middle, if there is one?",
        says="the hole in its middle, if there is one",
        example="3 in",
        read=values.read_hole,
        also=("center-hole", "centre-hole"),
    ),
    Key(
        table="dryer",
        name="temperature",
        field="dryer_f",
        ask="From what to what temperature can it be set?",
        says="from the coolest to the hottest it can be set to; one figure if it has but one",
        example="95-160 F",
        read=values.read_span_f,
        also=("range", "heat"),
    ),
    Key(
        table="dryer",
        name="adjustable",
        field="adjustable",
        ask="Can its heat be set at all?",
        says="whether its heat can be set: true or false",
        example="true",
        read=values.read_flag,
        bare=True,
        words=("yes", "no"),
    ),
    Key(
        table="oven",
        name="lowest",
        field="oven_lowest_f",
        ask="What is the lowest setting of the oven?",
        says="the lowest it can be set to",
        example="170 F",
        read=values.read_degrees_f,
        also=("lowest-setting", "temperature"),
    ),
    Key(
        table="oven",
        name="racks",
        field="oven_racks",
        ask="How many racks has the oven to dry on?",
        says="how many racks there are to dry on",
        example="2",
        read=values.read_count,
        bare=True,
    ),
    Key(
        table="oven",
        name="rack",
        field="oven_rack",
        ask="How large is one rack?",
        says="one rack",
        example="21 x 15 in",
        read=values.read_outline,
    ),
    Key(
        table="measuring",
        name="set",
        field="drawer",
        ask="Which measuring set is in the drawer?",
        says="the set in the drawer: basic, full or metric",
        example="basic",
        read=values.read_drawer,
        words=("basic", "full", "metric"),
        also=("drawer",),
    ),
    Key(
        table="scale",
        name="step",
        field="scale_g",
        ask="In what steps does the scale show a weight?",
        says="the step that it shows",
        example="1 g",
        read=values.read_step_g,
        also=("resolution", "reads-to"),
    ),
    Key(
        table="house",
        name="altitude",
        field="altitude_m",
        ask="How high above the sea is the house?",
        says="height above the sea, in feet or meters",
        example="800 ft",
        read=values.read_height_m,
        also=("height", "elevation"),
    ),
    Key(
        table="house",
        name="units",
        field="units",
        ask="Which units do you prefer?",
        says="us or metric",
        example="us",
        read=values.read_units,
        words=("us", "metric"),
    ),
    Key(
        table="house",
        name="sodium-a-day",
        field="sodium_a_day_mg",
        ask="Is there a figure of sodium for a day that you want an ounce held against?",
        says="an own figure for a day, if there is one; an ounce is held against it",
        example="1500 mg",
        read=values.read_sodium_mg,
        also=("sodium", "sodium-per-day"),
    ),
    Key(
        table="house",
        name="sugars-a-day",
        field="sugars_a_day_g",
        ask="And one of total sugars?",
        says="the same for total sugars",
        example="25 g",
        read=values.read_sugars_g,
        also=("sugar-a-day", "sugars", "sugar", "sugars-per-day"),
    ),
)
"""Every key, in the order of the file and of the questions."""

BY_PATH: Mapping[str, Key] = {key.path: key for key in KEYS}
TABLES: tuple[str, ...] = tuple(dict.fromkeys([*(key.table for key in KEYS), BOWLS]))
