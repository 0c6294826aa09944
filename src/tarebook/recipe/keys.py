"""Every key a recipe may have: one table that both the reader and the JSON Schema follow.

To add a key: a row here, a field in ``model``, and the line in ``read`` or ``ingredients``
that carries it over.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from tarebook.recipe.model import HeatStep, MeatForm, ScaleBy, Surface
from tarebook.tuples import NamedTuple


class Takes(StrEnum):
    """What may stand behind a key. Each has a getter in ``fields`` and a form in ``schema``."""

    LINE = "one line of words"
    TEXT = "words"
    TEXTS = "a list of words"
    CHOICE = "one of a few words"
    FLAG = "true or false"
    FOOD = "a food"
    DRIED = "a meat, a fish or a mushroom"
    WEIGHT = "a weight"
    LENGTH = "a length"
    AMOUNT = "an amount"
    FORM = "form words"
    STRENGTH = "a percentage, never a range"
    PERCENT = "a percentage"
    RATIO = "a number or a range"
    ACTIVITY = "a water activity"
    HOURS = "hours, a number or a range"
    TEMPERATURE = "a temperature"
    COLD = "a temperature of a soak"
    SERVING = "a serving"
    MICROGRAMS = "an amount in mcg"
    MILLIGRAMS = "an amount in mg"
    GRAMS = "an amount in g"
    KILOCALORIES = "an amount in kcal"
    PANEL = "a table"
    PRICE = "a number"


class Key(NamedTuple):
    """One key of a table.

    Attributes:
        name: as written in the file.
        takes: what may stand behind it.
        says: one sentence on what it means, shown by editors.
        example: a value as it would be written, for hints and for the schema.
        needed: whether a recipe without it is faulty.
        words: the words to choose from.
        also: other words people try for it, each answered with this one.
    """

    name: str
    takes: Takes
    says: str
    example: str
    needed: bool = False
    words: tuple[str, ...] = ()
    also: tuple[str, ...] = ()


def _table(*keys: Key) -> Mapping[str, Key]:
    return {key.name: key for key in keys}


TOP = _table(
    Key(
        name="title",
        takes=Takes.LINE,
        says="What the family calls it.",
        example='"Juniper venison strips"',
        needed=True,
        also=("name", "recipe"),
    ),
    Key(
        name="about",
        takes=Takes.TEXT,
        says="A sentence or two on the recipe, for the card.",
        example='"Our autumn strips, dark and a little sweet."',
        also=("description", "summary"),
    ),
    Key(
        name="cup",
        takes=Takes.CHOICE,
        says="Which cup and spoons the amounts mean: us (236.6 mL), metric (250 mL) or label "
        "(240 mL).",
        example='"us"',
        words=("us", "metric", "label"),
        also=("units", "system"),
    ),
)

MEAT = _table(
    Key(
        name="food",
        takes=Takes.DRIED,
        says="What is dried: a meat, a fish or a mushroom of the food table.",
        example='"deer"',
        needed=True,
        also=("kind", "cut", "meat", "name"),
    ),
    Key(
        name="amount",
        takes=Takes.WEIGHT,
        says="The weight of meat that the amounts of this recipe are for.",
        example='"2 1/2 lb"',
        needed=True,
        also=("weight", "mass", "quantity"),
    ),
    Key(
        name="thickness",
        takes=Takes.LENGTH,
        says="How thick a piece is when it goes in; it never scales.",
        example='"1/4 in"',
        also=("thick", "slices"),
    ),
    Key(
        name="form",
        takes=Takes.CHOICE,
        says="How the meat is cut. Ground meat is mixed and formed, never soaked.",
        example='"strips"',
        words=tuple(form.value for form in MeatForm),
        also=("shape",),
    ),
    Key(
        name="wild",
        takes=Takes.FLAG,
        says="Whether it was hunted or caught in the wild rather than raised.",
        example="true",
        also=("game",),
    ),
)

INGREDIENT = _table(
    Key(
        name="food",
        takes=Takes.FOOD,
        says="The food of the table, or the bottle of your own, that this is, where the name in "
        "front is another.",
        example='"soy-sauce"',
    ),
    Key(
        name="amount",
        takes=Takes.AMOUNT,
        says="How much, in kitchen measures or by weight.",
        example='"3/4 cup"',
        needed=True,
        also=("quantity", "measure", "weight", "volume"),
    ),
    Key(
        name="scale",
        takes=Takes.CHOICE,
        says="How it grows: with the meat, not at all, or with the meat to whole numbers.",
        example='"with meat"',
        words=tuple(scale.value for scale in ScaleBy),
        also=("scaling", "scales"),
    ),
    Key(
        name="form",
        takes=Takes.FORM,
        says="How it fills the measure: packed, ground, whole, minced.",
        example='"packed"',
    ),
    Key(
        name="note",
        takes=Takes.LINE,
        says="A few words for the card.",
        example='"for colour"',
        also=("notes", "comment"),
    ),
    Key(
        name="strength",
        takes=Takes.STRENGTH,
        says="Sodium nitrite in a curing salt, as its pack says; every curing salt needs it.",
        example='"6.25 %"',
        also=("nitrite", "percent"),
    ),
    Key(
        name="panel",
        takes=Takes.PANEL,
        says="The figures printed on this bottle; they win over the table's.",
        example='{ serving = "1 Tbsp (17 g)", sodium = "580 mg" }',
        also=("label", "nutrition"),
    ),
)

PANEL = _table(
    Key(
        name="serving",
        takes=Takes.SERVING,
        says="Serving size as printed: by measure, by weight, or both.",
        example='"1 Tbsp (17 g)"',
        needed=True,
        also=("serving-size", "size"),
    ),
    Key(
        name="sodium",
        takes=Takes.MILLIGRAMS,
        says="Sodium in one serving.",
        example='"580 mg"',
        also=("salt",),
    ),
    Key(
        name="sugars",
        takes=Takes.GRAMS,
        says="Total sugars in one serving.",
        example='"1 g"',
        also=("sugar", "total-sugars"),
    ),
    Key(
        name="added-sugars",
        takes=Takes.GRAMS,
        says="Added sugars in one serving.",
        example='"0 g"',
        also=("added-sugar",),
    ),
    Key(
        name="energy",
        takes=Takes.KILOCALORIES,
        says="Energy of one serving; a label's calories are kilocalories.",
        example='"10 kcal"',
        also=("calories",),
    ),
    Key(name="fat", takes=Takes.GRAMS, says="Total fat in one serving.", example='"0 g"'),
    Key(
        name="saturated",
        takes=Takes.GRAMS,
        says="Saturated fat in one serving.",
        example='"0 g"',
        also=("saturated-fat",),
    ),
    Key(
        name="cholesterol",
        takes=Takes.MILLIGRAMS,
        says="Cholesterol in one serving.",
        example='"0 mg"',
    ),
    Key(
        name="carbohydrate",
        takes=Takes.GRAMS,
        says="Total carbohydrate in one serving.",
        example='"1 g"',
        also=("carbohydrates", "carbs"),
    ),
    Key(
        name="fiber",
        takes=Takes.GRAMS,
        says="Dietary fiber in one serving.",
        example='"0 g"',
        also=("fibre", "dietary-fiber"),
    ),
    Key(name="protein", takes=Takes.GRAMS, says="Protein in one serving.", example='"2 g"'),
    Key(
        name="vitamin-d",
        takes=Takes.MICROGRAMS,
        says="Vitamin D in one serving.",
        example='"0 mcg"',
    ),
    Key(name="calcium", takes=Takes.MILLIGRAMS, says="Calcium in one serving.", example='"0 mg"'),
    Key(name="iron", takes=Takes.MILLIGRAMS, says="Iron in one serving.", example='"0.4 mg"'),
    Key(
        name="potassium",
        takes=Takes.MILLIGRAMS,
        says="Potassium in one serving.",
        example='"60 mg"',
    ),
    Key(
        name="water",
        takes=Takes.GRAMS,
        says="Water in one serving; no pack prints it, a table of foods does.",
        example='"11 g"',
    ),
    Key(
        name="ash",
        takes=Takes.GRAMS,
        says="Ash in one serving; no pack prints it, a table of foods does.",
        example='"2.6 g"',
        also=("minerals",),
    ),
)

SOAK = _table(
    Key(
        name="hours",
        takes=Takes.HOURS,
        says="How long the meat lies in the marinade; it never scales.",
        example='"8-12"',
        also=("time", "duration"),
    ),
    Key(
        name="surface",
        takes=Takes.CHOICE,
        says="What happens to the wet surface before heat or drying.",
        example='"drained"',
        words=tuple(surface.value for surface in Surface),
    ),
    Key(
        name="poured-away",
        takes=Takes.FLAG,
        says="Whether what is left of the marinade is poured away.",
        example="true",
        also=("discarded", "drained", "discard"),
    ),
    Key(
        name="temperature",
        takes=Takes.COLD,
        says="How cold the meat lies in the marinade; 38 to 41 °F (4 to 5 °C) if it is not said.",
        example='"38 F"',
        also=("temp",),
    ),
    Key(
        name="used-before",
        takes=Takes.FLAG,
        says="Whether raw meat has lain in this marinade before.",
        example="false",
        also=("reused", "used"),
    ),
)

HEAT = _table(
    Key(
        name="step",
        takes=Takes.CHOICE,
        says="When and how the meat is brought to 160 °F (165 °F for poultry).",
        example='"steamed or roasted first"',
        words=tuple(step.value for step in HeatStep if step is not HeatStep.UNSTATED),
        also=("method", "when", "how"),
    ),
)

DRYING = _table(
    Key(
        name="temperature",
        takes=Takes.TEMPERATURE,
        says="Air temperature of the dryer; it never scales.",
        example='"155 F"',
        also=("temp", "heat"),
    ),
    Key(
        name="hours",
        takes=Takes.HOURS,
        says="How long drying usually takes; it never scales.",
        example='"5-8"',
        also=("time", "duration"),
    ),
    Key(
        name="moisture-to-protein",
        takes=Takes.RATIO,
        says="Finished when this much water is left per weight of protein.",
        example="0.58",
        also=("mpr", "finish"),
    ),
    Key(
        name="moisture",
        takes=Takes.PERCENT,
        says="Finished when this share of the dried meat is water.",
        example='"25 %"',
        also=("water",),
    ),
    Key(
        name="yield",
        takes=Takes.PERCENT,
        says="Finished when the dried meat weighs this share of the raw meat.",
        example='"42 %"',
        also=("finished",),
    ),
    Key(
        name="water-activity",
        takes=Takes.ACTIVITY,
        says="Finished when the water activity is estimated to be this; an estimate tests nothing.",
        example="0.80",
        also=("aw", "activity"),
    ),
)

METHOD = _table(
    Key(
        name="steps",
        takes=Takes.TEXTS,
        says="What to do, one sentence or two a step.",
        example='["Slice across the grain."]',
        also=("instructions", "directions", "step"),
    ),
    Key(
        name="notes",
        takes=Takes.TEXTS,
        says="What else to know.",
        example='["Freezes well."]',
        also=("note", "tips"),
    ),
)

PARTS: Mapping[str, str] = {
    "marinade": "What the meat lies in; part of it is poured away.",
    "rub": "What is rubbed onto the meat and stays on it.",
    "mixed-in": "What is mixed into ground meat and stays in it.",
}
"""The tables whose keys are the cook's own names of ingredients."""

SECTIONS: Mapping[str, Mapping[str, Key]] = {
    "meat": MEAT,
    "soak": SOAK,
    "heat": HEAT,
    "drying": DRYING,
    "method": METHOD,
}
"""The tables whose keys are fixed; only ``meat`` must be there."""

SAYS_OF_SECTION: Mapping[str, str] = {
    "meat": "What is dried, and the weight that the amounts are for.",
    "soak": "How long the meat lies in its marinade, and its surface after.",
    "heat": "When and how the meat is heated.",
    "drying": "How it is dried, and what decides that it is done.",
    "method": "Steps and notes for the card.",
}
