"""From the text of a bottle's file to a ``Bottle``, with everything wrong said at once.

A bottle is a food of the cook's own: what its pack prints, and the food of the tables that it is
like, from which the rest is taken.
"""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import Any

from tarebook.figures.foods import Food
from tarebook.findings import AmountError, Finding, nearest
from tarebook.recipe import keys
from tarebook.recipe.fields import Reading, named_food, read_panel, read_table
from tarebook.recipe.keys import Key, Takes
from tarebook.recipe.model import Bottle, Pack, Panel
from tarebook.toml.document import read_document
from tarebook.toml.fault import Faults, Refused, TooManyErrors, did_you_mean, shown
from tarebook.toml.locate import Lines
from tarebook.toml.syntax import Parsed

OWN, FOODDATA = "own bottle", "fooddata-central"
_EMPTY = "tarebook foods add NAME asks for what it needs, and writes it"


def _table(*rows: Key) -> Mapping[str, Key]:
    return {key.name: key for key in rows}


TOP = _table(
    Key(
        name="name",
        takes=Takes.LINE,
        says="What a page prints.",
        example='"Lakeside soy sauce"',
        also=("title",),
    ),
    Key(
        name="like",
        takes=Takes.LINE,
        says="The food of the tables that it is a kind of; what the panel does not print is taken "
        "from there.",
        example='"soy-sauce"',
        needed=True,
        also=("food", "kind", "same-as"),
    ),
)
PACK = _table(
    Key(
        name="size",
        takes=Takes.AMOUNT,
        says="What one pack holds.",
        example='"15 fl oz"',
        needed=True,
        also=("amount", "weight", "net"),
    ),
    Key(
        name="price",
        takes=Takes.PRICE,
        says="What it costs, in your own money.",
        example="3.49",
        also=("cost",),
    ),
)
ALLERGENS = _table(
    Key(
        name="contains",
        takes=Takes.TEXTS,
        says="Allergens that the pack lists.",
        example='["soybeans", "wheat"]',
        also=("has", "list"),
    ),
    Key(
        name="check",
        takes=Takes.TEXTS,
        says="Allergens that the pack says it may hold.",
        example='["sesame"]',
        also=("may-contain",),
    ),
)
SOURCE = _table(
    Key(
        name="from",
        takes=Takes.CHOICE,
        says="Where the figures come from.",
        example=f'"{OWN}"',
        words=(OWN, FOODDATA),
    ),
    Key(name="id", takes=Takes.LINE, says="The number it has there.", example='"174278"'),
    Key(name="date", takes=Takes.LINE, says="The day they were taken.", example='"2026-11-25"'),
)
TABLES = {"pack": PACK, "allergens": ALLERGENS, "source": SOURCE}
PANEL = Key(
    name="panel",
    takes=Takes.PANEL,
    says="The panel, copied as printed.",
    example='{ serving = "1 Tbsp (17 g)", sodium = "580 mg" }',
    also=("label", "nutrition"),
)


def read_bottle(
    source: bytes | str, *, key: str, file: str
) -> tuple[Bottle | None, tuple[Finding, ...]]:
    """Return a bottle and everything there is to say about its file, in file order.

    Args:
        source: the bytes of the file, or its text.
        key: what recipes call it: the file's name without its ending.
        file: its name, for the findings.

    Returns:
        The bottle, or None where there is an error; and all findings.

    Example:
        >>> text = 'like = "shoyu"\\n[panel]\\nserving = "1 Tbsp (17 g)"\\nsodium = "580 mg"'
        >>> bottle, _ = read_bottle(text, key="lakeside-soy", file="lakeside-soy.toml")
        >>> bottle.like, bottle.panel.sodium_mg
        ('soy-sauce', Fraction(580, 1))
    """

    def understand(parsed: Parsed, faults: Faults, _lines: Lines) -> Bottle | None:
        return _bottle(parsed.document, key, Reading(faults, whole=parsed.whole))

    return read_document(source, understand, file=file, empty_hint=_EMPTY)


def bottle_of(
    document: Mapping[str, object], *, key: str, file: str = ""
) -> tuple[Bottle | None, tuple[Finding, ...]]:
    """Return a bottle from the values of its file, as :func:`read_bottle` does from its text."""
    faults = Faults()
    bottle: Bottle | None = None
    with suppress(TooManyErrors):
        bottle = _bottle(document, key, Reading(faults))
    return (None if faults.errors else bottle), faults.findings(file, None)


def _bottle(document: Mapping[str, object], key: str, reading: Reading) -> Bottle | None:
    _refuse_unknown(document, reading.faults)
    own = {name: value for name, value in document.items() if name in TOP}
    top = read_table(own, TOP, (), reading)
    like = _like(top.get("like"), reading.faults)
    found = {
        name: read_table(document[name], known, (name,), reading) if name in document else {}
        for name, known in TABLES.items()
    }
    origin = found["source"].get("from", OWN)
    panel = _panel(document, reading)
    if like is None or reading.faults.errors:
        return None
    return Bottle(
        key=key,
        name=top.get("name", key.replace("-", " ")),
        like=like,
        panel=None if panel is None else as_taken(panel, origin),
        pack=_pack(found["pack"], reading.faults),
        contains=_contains(found["allergens"]),
        check=found["allergens"].get("check", ()),
        origin=origin,
        origin_id=found["source"].get("id", ""),
        origin_date=found["source"].get("date", ""),
    )


def as_taken(panel: Panel, origin: str) -> Panel:
    """Return a panel that tells whether its figures were rounded as labels round them.

    FoodData Central states figures per 100 g with all their digits; where a bottle has them by
    another serving, they were copied there from a label.
    """
    return panel._replace(rounded=origin != FOODDATA or panel.serving_g != 100)


def _refuse_unknown(document: Mapping[str, object], faults: Faults) -> None:
    known = (*TOP, PANEL.name, *TABLES)
    for name in document:
        if name in known:
            continue
        folded = name.strip().lower().replace("_", "-").replace(" ", "-")
        also = [key.name for key in (*TOP.values(), PANEL) if folded in key.also]
        hint = did_you_mean(tuple(also) or nearest(name, known)) or _elsewhere(folded)
        faults.error(
            "unknown-key", f'"{shown(name)}" is no key of a bottle', hint=hint, path=(name,)
        )


def _elsewhere(name: str) -> str:
    homes = {PANEL.name: keys.PANEL, **TABLES}
    found = [home for home, known in homes.items() if name in known]
    return f"it belongs in [{found[0]}]" if found else ""


def _like(name: str | None, faults: Faults) -> str | None:
    """Return the key of the food of the tables."""
    if name is None:
        return None
    try:
        return like_food(name).key
    except Refused as refused:
        faults.refuse(refused, ("like",))
        return None


def like_food(name: str) -> Food:
    """Return the food of the tables that a bottle may be like.

    Raises:
        Refused: no food goes by that name, or it is a curing salt.
    """
    item = named_food(name, otherwise='as in like = "soy-sauce"')
    if item.curing:
        raise Refused(
            "cure",
            "a curing salt is no bottle of your own",
            hint="name it in the recipe, with its strength from the pack",
        )
    return item


def _panel(document: Mapping[str, object], reading: Reading) -> Panel | None:
    if PANEL.name not in document:
        return None
    path = (PANEL.name,)
    try:
        return read_panel(document[PANEL.name], PANEL, path, reading, bare=True)
    except (Refused, AmountError) as refused:
        reading.faults.refuse(refused, path)
        return None


def _pack(values: Mapping[str, Any], faults: Faults) -> Pack | None:
    if "size" not in values:
        return None
    size = values["size"]
    if size.low is None or size.is_range or not size.middle or not size.unit:
        faults.error(
            "amount",
            "a pack holds one amount with a unit",
            hint=f"as in size = {PACK['size'].example}",
            path=("pack", "size"),
        )
        return None
    return Pack(size, values.get("price"))


def _contains(values: Mapping[str, Any]) -> tuple[str, ...] | None:
    """Return what the pack lists; a list of what it may hold tells that the rest was read too."""
    contains: tuple[str, ...] | None = values.get("contains")
    return () if contains is None and "check" in values else contains
