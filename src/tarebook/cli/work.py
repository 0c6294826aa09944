"""From what was asked to a worksheet; shared by scale, card and compare."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from tarebook.cli.talk import asked, read_meat
from tarebook.findings import AskedWrongly

if TYPE_CHECKING:
    from tarebook.cards.worksheet import Worksheet
    from tarebook.drying.time import Conditions
    from tarebook.kitchen import Kitchen
    from tarebook.nutrition.facts import OwnYield
    from tarebook.plan.hours import Hours
    from tarebook.recipe.model import Recipe


def work_out(
    recipe: Recipe,
    *,
    meat: str | None = None,
    bought: str | None = None,
    trim: str | None = None,
    factor: str | None = None,
    drawer: str | None = None,
    finished: str | None = None,
    soaked: str | None = None,
    leftover: str | None = None,
    towels: str | None = None,
    label_ounce: bool = False,
    nothing_poured: bool = False,
    heat: str | None = None,
) -> Worksheet:
    """Return the worksheet of a recipe as the options ask for it.

    Raises:
        AskedWrongly: an option cannot be read, or two contradict each other.
    """
    from tarebook.cards.worksheet import worksheet
    from tarebook.nutrition import Ounce

    mass_g, times = read_meat(recipe, meat=meat, bought=bought, trim=trim, factor=factor)
    if towels is not None and leftover is None:
        raise AskedWrongly("--towels goes with --leftover")
    if nothing_poured:
        recipe = _all_kept(recipe, leftover)
    house = own_kitchen()
    if heat is not None:
        recipe = heated_as(recipe, heat, house)
    left = weighed(leftover, "--leftover")
    if left is not None:
        left += weighed(towels, "--towels") or 0.0
    return worksheet(
        recipe,
        meat_mass_g=mass_g,
        factor=times,
        drawer=drawer_name(drawer, house),
        ounce=Ounce.LABEL if label_ounce else Ounce.AVOIRDUPOIS,
        finished_g=weighed(finished, "--finished"),
        soaked_g=weighed(soaked, "--soaked"),
        leftover_g=left,
        own_yield=_own_yield(recipe),
        **of_house(house),
        a_day=None if house is None else house.a_day,
    )


def heated_as(recipe: Recipe, asked: str, house: Kitchen | None) -> Recipe:
    """Return a recipe with the heat step that was asked for, and notes that say so.

    Raises:
        AskedWrongly: there is no such step, or it may not be had for such food in this house.
    """
    from tarebook.plan.heat import choose
    from tarebook.safety import Case
    from tarebook.safety.heated import as_heated

    case = Case.of(recipe)._replace(**of_house(house))
    return as_heated(case, choose(case, asked).step)


def _own_yield(recipe: Recipe) -> OwnYield | None:
    """Return what the batch book says of this recipe's next batch, or None without a book.

    A book that cannot be read is told of, and stops nothing.
    """
    from tarebook.records.place import is_there

    if not is_there():
        return None
    from tarebook.cli.next_time import complain_of_book
    from tarebook.findings import FileUnreadable, FileUnwritable
    from tarebook.lessons.history import own_yield

    try:
        return own_yield(recipe.file, recipe.title)
    except (FileUnreadable, FileUnwritable) as fault:
        complain_of_book(str(fault))
        return None


def own_hours(recipe: Recipe, planned: Conditions) -> Hours | None:
    """Return how long a recipe will dry by the batches of the book, or None where none tells.

    A book that cannot be read is told of, and stops nothing.

    Args:
        recipe: as written.
        planned: thickness and air of today.
    """
    from tarebook.records.place import is_there

    if not is_there():
        return None
    from tarebook.cli.next_time import complain_of_book
    from tarebook.findings import FileUnreadable, FileUnwritable
    from tarebook.lessons.hours import learned_hours, own_dryings

    try:
        return learned_hours(own_dryings(recipe.file, recipe.title), planned)
    except (FileUnreadable, FileUnwritable) as fault:
        complain_of_book(str(fault))
        return None


def of_house(house: Kitchen | None) -> dict[str, Any]:
    """Return what the rules ask of a house: what it dries in, and how fine its scale shows."""
    if house is None:
        return {}
    if house.trays == 0:
        return {"dryer_low_f": house.oven_lowest_f, "scale_g": house.scale_g}
    low, top = house.dryer_f or (None, None)
    return {
        "dryer_low_f": low,
        "dryer_top_f": top,
        "dryer_settable": house.adjustable,
        "scale_g": house.scale_g,
    }


def own_kitchen() -> Kitchen | None:
    """Return what is known of the cook's kitchen, or None where no file tells of one.

    A faulty file stops nothing: its faults are told with file and line, and what is faulty counts
    as not known.
    """
    from tarebook.where import home

    if not (home() / "kitchen.toml").exists():
        return None
    from tarebook.cli.talk import complain_findings
    from tarebook.kitchen import load_kitchen

    kitchen, findings = load_kitchen(strict=False)
    complain_findings(findings)
    return kitchen


def drawer_name(said: str | None, house: Kitchen | None = None) -> str:
    """Return the measuring set that was asked for, or the kitchen's own, or the basic one."""
    if said is not None:
        return said
    house = house or own_kitchen()
    return (house.drawer if house is not None else None) or "basic"


def weighed(text: str | None, option: str) -> float | None:
    """Return a weight that an option gives [g], or None."""
    from tarebook.quantities.amount import parse_mass

    return None if text is None else float(asked(parse_mass, text, option))


def _all_kept(recipe: Recipe, leftover: str | None) -> Recipe:
    """Return a recipe of whose marinade nothing was poured away."""

    if leftover is not None:
        raise AskedWrongly("--leftover contradicts --nothing-poured-away: give one of them")
    return recipe._replace(soak=recipe.soak._replace(poured_away=False))
