"""What a recipe is, once read: frozen values, every amount already understood."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from tarebook.findings import Place
from tarebook.quantities.amount import Amount
from tarebook.tuples import NamedTuple


class Part(StrEnum):
    """Where an ingredient goes. A marinade is soaked in and partly poured away."""

    MARINADE = "marinade"
    RUB = "rub"
    MIXED_IN = "mixed-in"


class ScaleBy(StrEnum):
    """How an ingredient grows: with the meat, not at all, or with it to whole numbers."""

    MEAT = "with meat"
    FIXED = "fixed"
    WHOLE = "whole"


class MeatForm(StrEnum):
    """How the meat is cut. Ground meat is mixed and formed, never soaked."""

    STRIPS = "strips"
    GROUND = "ground"
    PIECES = "pieces"


class Surface(StrEnum):
    """What happens to the wet surface before drying."""

    LIFTED = "lifted out"
    DRAINED = "drained"
    PATTED = "patted"


class HeatStep(StrEnum):
    """When and how the meat is brought to 160 degF (165 degF poultry).

    ``UNSTATED`` is what a recipe has that does not say: the estimate then spans the cases.
    """

    SIMMERED = "simmered in its marinade"
    STEAMED = "steamed or roasted first"
    BOILED_DOWN = "marinade boiled down onto the meat"
    OVEN_AFTER = "oven after drying"
    UNSTATED = "not stated"


class FinishBy(StrEnum):
    """What decides when the batch is dry enough."""

    MOISTURE_TO_PROTEIN = "moisture-to-protein"
    MOISTURE = "moisture"
    YIELD = "yield"
    WATER_ACTIVITY = "water-activity"


class Panel(NamedTuple):
    """The panel printed on an ingredient's own bottle; it wins over the generic row.

    Attributes:
        serving_ml: serving size by volume, label measure [mL], or None if printed by weight only.
        serving_g: serving size by weight [g], or None.
        sodium_mg: sodium in one serving [mg], or None if not printed.
        sugars_g: total sugars in one serving [g], or None.
        added_sugars_g: added sugars in one serving [g], or None.
        energy_kcal, fat_g, saturated_g, cholesterol_mg, carbohydrate_g, fiber_g, protein_g,
        vitamin_d_ug, calcium_mg, iron_mg, potassium_mg: as printed, or None.
        water_g, ash_g: no pack prints them; a table of foods does. Or None.
        rounded: whether the figures were rounded as labels round them. A laboratory's figures per
            100 g were not, and are taken as they stand.
        under: names of those printed as "less than" what stands here.
    """

    serving_ml: Fraction | None = None
    serving_g: Fraction | None = None
    sodium_mg: Fraction | None = None
    sugars_g: Fraction | None = None
    added_sugars_g: Fraction | None = None
    energy_kcal: Fraction | None = None
    fat_g: Fraction | None = None
    carbohydrate_g: Fraction | None = None
    protein_g: Fraction | None = None
    potassium_mg: Fraction | None = None
    saturated_g: Fraction | None = None
    cholesterol_mg: Fraction | None = None
    fiber_g: Fraction | None = None
    vitamin_d_ug: Fraction | None = None
    calcium_mg: Fraction | None = None
    iron_mg: Fraction | None = None
    water_g: Fraction | None = None
    ash_g: Fraction | None = None
    rounded: bool = True
    under: tuple[str, ...] = ()

    @property
    def g_per_ml(self) -> Fraction | None:
        """The density that it states by volume and weight [g/mL], or None."""
        if not self.serving_ml or not self.serving_g:
            return None
        return self.serving_g / self.serving_ml


class Pack(NamedTuple):
    """How a food is sold: a pack of so much, for so much money, or at a price not said.

    Attributes:
        size: what one pack holds, a single amount with a unit.
        price: of one pack, in the cook's own money, or None.
    """

    size: Amount
    price: Fraction | None


class Bottle(NamedTuple):
    """A food of the cook's own, copied from its pack.

    Attributes:
        key: what recipes call it: the name of its file.
        name: what a page prints.
        like: key of the food of the tables that it is a kind of; what its panel does not print
            is taken from there.
        panel: the figures printed on it, or None.
        pack: what it holds and costs, or None.
        contains: allergens that the pack lists, or None where nobody copied them.
        check: allergens that the pack says it may hold.
        origin: where the figures come from, in words.
        origin_id: the number it has there, or empty.
        origin_date: the day they were taken, or empty.
    """

    key: str
    name: str
    like: str
    panel: Panel | None = None
    pack: Pack | None = None
    contains: tuple[str, ...] | None = None
    check: tuple[str, ...] = ()
    origin: str = "own bottle"
    origin_id: str = ""
    origin_date: str = ""


class Meat(NamedTuple):
    """What is dried, and how much of it the amounts were written for.

    Attributes:
        food: key of the food in the tables.
        amount: as written (``2 1/2 lb``).
        mass_g: the same weight [g], exact.
        form: strips, ground or pieces.
        thickness_mm: low, likely, high thickness of a piece [mm], or None if not stated; as
            stated, so a single value stands three times: the estimate adds its own doubt.
        thickness_written: the same as written, for the card; it never scales.
        wild: whether it was hunted rather than raised, or None if neither said nor known.
    """

    food: str
    amount: Amount
    mass_g: Fraction
    form: MeatForm = MeatForm.STRIPS
    thickness_mm: tuple[float, float, float] | None = None
    thickness_written: str = ""
    wild: bool | None = None


class Ingredient(NamedTuple):
    """One thing that goes on or into the meat.

    Attributes:
        name: as written in the recipe; what the card prints.
        food: key of the food in the tables; of a bottle, of the food that it is like.
        amount: as written.
        part: marinade, rub or mixed in.
        scale: how it grows.
        form: form words (``packed``, ``ground``), from the amount or stated apart.
        strength_percent: sodium nitrite in a curing salt [g per 100 g], as stated, or None.
        panel: the figures on its own bottle, or None.
        note: a few words for the card.
        path: key path in the file, for findings.
        bottle: which of the cook's own bottles it is, or None.
    """

    name: str
    food: str
    amount: Amount
    part: Part = Part.MARINADE
    scale: ScaleBy = ScaleBy.MEAT
    form: tuple[str, ...] = ()
    strength_percent: Fraction | None = None
    panel: Panel | None = None
    note: str = ""
    path: str = ""
    bottle: Bottle | None = None

    @property
    def known_as(self) -> str:
        """The name its figures go by: of its bottle, or of the food of the tables."""
        return self.food if self.bottle is None else self.bottle.key

    @property
    def own_panel(self) -> Panel | None:
        """The panel that stands in its line of the recipe, or None; not that of its bottle."""
        if self.bottle is not None and self.panel == self.bottle.panel:
            return None
        return self.panel


class Soak(NamedTuple):
    """How long the meat lies in its marinade, and what is done to its surface after.

    Attributes:
        hours: low, likely, high [h]; a single stated value stands three times.
        stated: whether the recipe says the hours; if not, they span what is usual.
        hours_written: the hours as written, for the card; they never scale.
        surface: what happens to the wet surface.
        poured_away: whether what is left of the marinade is poured away.
        temperature_f: low and high temperature of the soak [degF], or None if not stated.
        temperature_written: the same as written.
        used_before: whether raw meat has lain in the marinade before.
    """

    hours: tuple[float, float, float] = (8.0, 12.0, 24.0)
    stated: bool = False
    hours_written: str = ""
    surface: Surface = Surface.DRAINED
    poured_away: bool = True
    temperature_f: tuple[float, float] | None = None
    temperature_written: str = ""
    used_before: bool = False


class Finish(NamedTuple):
    """When it is dry enough: a measure and its low, likely and high value.

    Moisture and yield are fractions (0 to 1); moisture to protein is a ratio by weight. A single
    stated value is the likely one; ``read`` says how far low and high lie from it.
    """

    by: FinishBy
    value: tuple[float, float, float]
    written: str = ""


class Drying(NamedTuple):
    """How it is dried. Temperatures and hours are for the cook to read; they never scale.

    Attributes:
        temperature_f: low and high air temperature [degF], or None if not stated.
        temperature_written: the same as written.
        hours: low and high time [h], or None if not stated.
        hours_written: the hours as written.
        finish: what decides that it is dry enough, or None if not stated.
    """

    temperature_f: tuple[float, float] | None = None
    temperature_written: str = ""
    hours: tuple[float, float] | None = None
    hours_written: str = ""
    finish: Finish | None = None


class Recipe(NamedTuple):
    """A whole recipe as written, for one weight of meat.

    Attributes:
        title: what the family calls it.
        file: name of the file it was read from, for findings.
        cup: which cup the word means: ``us``, ``metric`` or ``label``.
        steps_heat: the heat step that ``steps`` were written for, where it is made with another.
        lines: line of each key path in the file, found only when a finding asks for one.
    """

    title: str
    meat: Meat
    ingredients: tuple[Ingredient, ...]
    about: str = ""
    soak: Soak = Soak()
    heat: HeatStep = HeatStep.UNSTATED
    drying: Drying = Drying()
    steps: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    cup: str = "us"
    file: str = ""
    steps_heat: HeatStep | None = None
    lines: Mapping[str, int] = MappingProxyType({})

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Recipe) and self[:-1] == other[:-1]

    def __ne__(self, other: object) -> bool:
        return not self == other

    def __hash__(self) -> int:
        return hash(self[:-1])

    def place(self, path: str = "") -> Place:
        """Return where a key stands, for a finding; a key not written is at its table's line."""
        above = path
        while above and above not in self.lines:
            above = above.rpartition(".")[0]
        return Place(file=self.file, line=self.lines.get(above), path=path)
