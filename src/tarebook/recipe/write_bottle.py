"""Writes a bottle as TOML that reads back as the same bottle, and keeps it in its folder."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from tarebook.figures.foods import normalised
from tarebook.files import holds, named, write_whole
from tarebook.findings import AskedWrongly, FileUnwritable, RecordFaulty
from tarebook.recipe.bottle import OWN, PACK, read_bottle
from tarebook.recipe.bottles import bottle_file, can_name
from tarebook.recipe.model import Bottle, Pack
from tarebook.recipe.write import Row, panel_rows, plain_number
from tarebook.toml.locate import quoted

_HEAD = "# {key}: a food of our own. What its panel does not print is taken from {like}."


def bottle_toml(bottle: Bottle) -> str:
    """Return the text of a bottle's file; reading it gives the same bottle.

    Args:
        bottle: what to write. Figures and sizes are written exactly.

    Raises:
        AskedWrongly: its price is no number of digits (a third, say).
    """
    tables = (
        ("panel", () if bottle.panel is None else panel_rows(bottle.panel)),
        ("pack", () if bottle.pack is None else _pack(bottle.pack)),
        ("allergens", _allergens(bottle)),
        ("source", _source(bottle)),
    )
    blocks = [_HEAD.format(key=bottle.key, like=bottle.like) + "\n" + _rows(_top(bottle))]
    blocks += [f"[{name}]\n{body}" for name, rows in tables if (body := _rows(rows))]
    return "\n".join(blocks)


def keep_bottle(bottle: Bottle, *, replace: bool = False) -> Path:
    """Write a bottle to the cook's folder, whole or not at all.

    Args:
        bottle: what to keep; its key becomes the name of the file.
        replace: whether one that is there already may be written over.

    Returns:
        The file.

    Raises:
        AskedWrongly: no file can go by its key.
        RecordFaulty: what would be written could not be read back as this bottle.
        FileUnwritable: there is one of that name, or the folder cannot be written to.
    """
    if not can_name(bottle.key) or bottle.key != normalised(bottle.key):
        raise AskedWrongly(
            f'"{bottle.key[:60]}" can be no bottle\'s name: letters, digits and hyphens'
        )
    file = bottle_file(bottle.key)
    text = bottle_toml(bottle)
    _refuse_unreadable(text, bottle, file)
    if not replace and holds(file.exists):
        raise FileUnwritable(f"{named(file)} is there already; nothing was written over")
    write_whole(file, text.encode("utf-8"))
    return file


def _refuse_unreadable(text: str, bottle: Bottle, file: Path) -> None:
    """Read what is about to be written: a figure that cannot be is told before, and not after."""
    again, findings = read_bottle(text, key=bottle.key, file=str(file))
    if again is None:
        raise RecordFaulty(findings)
    if again != bottle:
        raise AskedWrongly(f'"{bottle.key}" cannot be written so that it reads back the same')


def _rows(rows: Iterable[Row]) -> str:
    return "".join(f"{name} = {value}\n" for name, value in rows)


def _top(bottle: Bottle) -> Iterable[Row]:
    if bottle.name != bottle.key.replace("-", " "):
        yield "name", quoted(bottle.name)
    yield "like", quoted(bottle.like)


def _pack(pack: Pack) -> Iterable[Row]:
    yield "size", quoted(pack.size.text.strip() or str(pack.size))
    if pack.price is not None:
        price = plain_number(pack.price)
        if "/" in price:
            raise AskedWrongly(
                f"a price of {price} has no end of digits; as in {PACK['price'].example}"
            )
        yield "price", price


def _allergens(bottle: Bottle) -> Iterable[Row]:
    """Yield both lists; an empty one is written where it says that the pack was read."""
    if bottle.contains is not None:
        yield "contains", _list(bottle.contains)
    if bottle.check:
        yield "check", _list(bottle.check)


def _source(bottle: Bottle) -> Iterable[Row]:
    if bottle.origin != OWN:
        yield "from", quoted(bottle.origin)
    if bottle.origin_id:
        yield "id", quoted(bottle.origin_id)
    if bottle.origin_date:
        yield "date", quoted(bottle.origin_date)


def _list(texts: Iterable[str]) -> str:
    return "[" + ", ".join(quoted(text) for text in texts) + "]"
