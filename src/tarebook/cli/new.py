"""tarebook new: a recipe by questions, written as clean TOML."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking
from tarebook.files import holds, named, write_whole
from tarebook.findings import AskedWrongly, FileUnwritable

if TYPE_CHECKING:
    from tarebook.recipe.questions import Question


def new(
    file: Annotated[
        Path, typer.Argument(help="File to write; it must not exist yet.", show_default=False)
    ],
    as_json: asking.AsJson = False,
) -> None:
    """Start a recipe by answering questions; an empty answer skips one.

    Example: tarebook new our-strips.toml
    """
    from tarebook.cli.talk import complain, show_data, write
    from tarebook.recipe.questions import next_question, recipe_from
    from tarebook.recipe.write import to_toml
    from tarebook.where import folder

    if file.suffix != ".toml":
        file = file.with_name(f"{file.name}.toml")
    _refuse_taken(file)
    if not holds(file.parent.is_dir):
        raise FileUnwritable(f"there is no folder {named(file.parent)} to write it to")
    complain("Press Enter to leave an answer out.")
    answers: dict[str, str | list[str]] = {}
    while (question := next_question(answers)) is not None:
        answers[question.name] = _ask_many(question) if question.many else _ask(question)
    recipe = recipe_from(answers, file=str(file))
    schema = folder("reference") / "recipe.schema.json"
    _refuse_taken(file)  # the questions took a while
    write_whole(file, to_toml(recipe, schema=schema.as_posix(), hints=True).encode("utf-8"))
    if as_json:
        show_data({"file": str(file), "title": recipe.title})
    else:
        write(f"{file} is written. Next: tarebook check {file}\n")


def _ask(question: Question) -> str:
    from tarebook.cli.interview import until_understood

    def take(answer: str) -> str:
        try:
            question.check(answer)
        except AskedWrongly as fault:
            told = str(fault)
            if "strength" not in told:
                raise
            told = f"{told.partition('; ')[0]}; here as in 2.8 g curing-salt-1 at 6.25 %"
            raise AskedWrongly(told) from None
        return answer

    return until_understood(_words(question), take)


def _ask_many(question: Question) -> list[str]:
    given: list[str] = []
    while answer := _ask(question):
        given.append(answer)
    return given


def _words(question: Question) -> str:
    choices = f" ({', '.join(question.choices)})" if question.choices else ""
    example = f" as in {question.example}" if question.example and not choices else ""
    many = "; one a line, Enter alone to go on" if question.many else ""
    return f"{question.ask}{choices}{example}{many}"


def _refuse_taken(file: Path) -> None:
    if holds(file.exists):
        raise FileUnwritable(f"{named(file)} is there already; nothing was written over")
