"""tarebook tidy: recipes set down as our format has it, with every remark kept."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tarebook.cli import asking, complete
from tarebook.tuples import NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from tarebook.cards.lines import Line
    from tarebook.findings import TarebookError

_PIPE = "-"


class _Done(NamedTuple):
    """What became of one file; ``after`` is nothing where there is a fault."""

    name: str
    before: bytes = b""
    after: bytes = b""
    written: bool = False
    fault: TarebookError | None = None

    @property
    def tidy(self) -> bool:
        return self.fault is None and self.before == self.after


def tidy(
    recipes: Annotated[
        list[str],
        typer.Argument(
            metavar="RECIPE...",
            help="Recipes and own bottles by file, folder or name; kitchen.toml; - for a pipe.",
            autocompletion=complete.recipes,
            show_default=False,
        ),
    ],
    check: Annotated[
        bool, typer.Option("--check", help="Write nothing; exit with 1 if one is not tidy.")
    ] = False,
    show: Annotated[
        bool, typer.Option("--show", help="Write nothing; show what would be changed.")
    ] = False,
    as_json: asking.AsJson = False,
) -> None:
    """Set recipes down in the usual order and spacing; remarks stay with their lines.

    Own bottles and kitchen.toml too. Fractions are written 1/2. Lines end as they did; a byte
    order mark goes. What has errors, or would not read the same, is left as it is.

    Example: tarebook tidy juniper-venison --show
    """
    from tarebook.cli.talk import show_data
    from tarebook.findings import AskedWrongly

    if _PIPE in recipes and len(recipes) > 1:
        raise AskedWrongly("- stands alone: one recipe comes down a pipe")
    found = []
    for done in _every(recipes, keep=check or show):
        found.append(done)
        if not as_json:
            _tell(done, check=check, show=show)
    if as_json:
        show_data([_data(done) for done in found])
    faulty = any(done.fault is not None for done in found)
    untidy = any(not done.tidy for done in found)
    raise typer.Exit(1 if faulty or (check and untidy) else 0)


def _every(recipes: list[str], *, keep: bool) -> Iterator[_Done]:
    """Yield what became of each file; one that cannot be read, or is faulty, stops no other."""
    from tarebook.findings import FileUnreadable
    from tarebook.recipe.load import find_recipes

    for name in recipes:
        try:
            paths = find_recipes(_bottle_named(name) or name)
        except FileUnreadable as fault:
            yield _Done(name, fault=fault)
        else:
            yield from (_one(str(path), keep=keep) for path in paths)


def _bottle_named(name: str) -> Path | None:
    """Return the file of the cook's own bottle of a name that is no recipe's, or None."""
    from pathlib import Path

    from tarebook.files import holds
    from tarebook.recipe.bottles import bottle_file, can_name
    from tarebook.recipe.load import SUFFIX, own_recipes, shipped_recipes

    recipe = Path(name), own_recipes() / f"{name}{SUFFIX}"
    if any(holds(one.exists) for one in recipe) or name in shipped_recipes():
        return None
    found = bottle_file(name)
    return found if can_name(name) and holds(found.is_file) else None


def _tidied(data: bytes, file: str) -> bytes:
    """Return a file as it would be tidy: the kitchen's by its name, others by what is in them."""
    from pathlib import Path

    if Path(file).name == "kitchen.toml":
        from tarebook.kitchen.tidy import tidied as kitchen_tidied

        return kitchen_tidied(data, file=file)
    from tarebook.recipe.tidy import tidied

    return tidied(data, file=file)


def _one(name: str, *, keep: bool) -> _Done:
    from tarebook.files import write_whole
    from tarebook.findings import TarebookError
    from tarebook.recipe.load import recipe_bytes

    before = b""
    try:
        before, file = recipe_bytes(name)
        after = _tidied(before, file)
        if keep or name == _PIPE or after == before:
            return _Done(name, before, after)
        _refuse_changed(name, before)
        write_whole(_file_of(name), after)
    except TarebookError as fault:
        return _Done(name, before, fault=fault)
    return _Done(name, before, after, written=True)


def _refuse_changed(name: str, before: bytes) -> None:
    """Leave alone what was saved from an editor since it was read."""
    from tarebook.findings import FileUnwritable
    from tarebook.recipe.load import recipe_bytes

    if recipe_bytes(name)[0] != before:
        raise FileUnwritable(f"{name} was changed meanwhile and is left as it is")


def _file_of(name: str) -> Path:
    """Return the file to write; a recipe that comes with tarebook is none of the cook's."""
    from pathlib import Path

    from tarebook.files import holds
    from tarebook.findings import FileUnwritable
    from tarebook.recipe.load import SUFFIX, own_recipes

    own = own_recipes() / f"{name}{SUFFIX}"
    if holds(Path(name).exists):
        return Path(name)
    if holds(own.is_file):
        return own
    raise FileUnwritable(f"{name} comes with tarebook and is left as it is")


def _tell(done: _Done, *, check: bool, show: bool) -> None:
    from tarebook.cards.lines import clean
    from tarebook.cli.talk import show as show_lines
    from tarebook.cli.talk import write

    if done.fault is not None:
        _complain_of(done.fault)
    elif show:
        if not done.tidy:
            show_lines(_change(done))
    elif done.name == _PIPE and not check:
        _pass_on(done.after.decode("utf-8"))
    else:
        said = "tidy" if done.tidy else "not tidy" if check else "tidied"
        write(f"{clean(done.name)}: {said}\n")


def _complain_of(fault: TarebookError) -> None:
    from tarebook.cli.talk import complain, complain_findings
    from tarebook.findings import RecordFaulty

    if isinstance(fault, RecordFaulty):
        complain_findings(fault.findings)
    else:
        complain(f"tarebook: {fault}")


def _change(done: _Done) -> Iterator[Line]:
    """Yield what would be changed, line by line."""
    from difflib import unified_diff

    from tarebook.cards.lines import Line, Style, clean

    before, after = (data.decode("utf-8").split("\n") for data in (done.before, done.after))
    styles = {"+": Style.HEAD, "-": Style.WARN}
    found = unified_diff(before, after, done.name, f"{done.name}, tidy", n=2, lineterm="")
    for text in found:
        yield Line(clean(text), styles.get(text[:1], Style.QUIET))


def _pass_on(text: str) -> None:
    """Write a recipe to standard output; on a screen without marks that would steer it."""
    from tarebook.cards.lines import clean
    from tarebook.cli.talk import write_document

    if sys.stdout is not None and sys.stdout.isatty():
        text = "\n".join(clean(line) for line in text.splitlines()) + "\n"
    write_document(text)


def _data(done: _Done) -> dict[str, Any]:
    return {
        "file": done.name,
        "tidy": done.tidy if done.fault is None else None,
        "written": done.written,
        "fault": None if done.fault is None else str(done.fault),
    }
