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

_BACK = "back"


def new(
    file: Annotated[
        Path, typer.Argument(help="File to write; it must not exist yet.", show_default=False)
    ],
    as_json: asking.AsJson = False,
) -> None:
    """Start a recipe by answering questions; Enter skips one, "back" returns to the one before.

    Example: tarebook new our-strips.toml
    """
    from tarebook.cli.talk import complain, show_data, write
    from tarebook.recipe.questions import next_question, recipe_from
    from tarebook.recipe.write import schema_beside, to_toml

    if file.suffix != ".toml":
        file = file.with_name(f"{file.name}.toml")
    _refuse_taken(file)
    if not holds(file.parent.is_dir):
        raise FileUnwritable(f"there is no folder {named(file.parent)} to write it to")
    complain(f'Press Enter to leave an answer out; "{_BACK}" returns to the question before.')
    answers: dict[str, str | list[str]] = {}
    lines: dict[str, list[str]] = {}
    while (question := next_question(answers)) is not None:
        said = (
            _ask_many(question, lines.setdefault(question.name, []))
            if question.many
            else _ask(question)
        )
        if said is None:
            _go_back(answers)
        else:
            answers[question.name] = said
    recipe = recipe_from(answers, file=str(file))
    text = to_toml(recipe, schema=schema_beside(file), hints=True)
    _refuse_taken(file)  # the questions took a while
    write_whole(file, text.encode("utf-8"))
    if as_json:
        show_data({"file": str(file), "title": recipe.title})
    else:
        write(f"{file} is written. Next: tarebook check {file}\n")


def _go_back(answers: dict[str, str | list[str]]) -> None:
    """Take the last answer away, so that its question comes next."""
    from tarebook.cli.talk import complain

    if not answers:
        complain("  this is the first question")
        return
    _, said = answers.popitem()
    if said and isinstance(said, str):
        complain(f"  answered before: {said}")


def _ask(question: Question) -> str | None:
    """Return an answer that will do, or None where the cook wants to go back."""
    from tarebook.cli.interview import until_understood

    def take(answer: str) -> str | None:
        if answer.lower() == _BACK:
            return None
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


def _ask_many(question: Question, given: list[str]) -> list[str] | None:
    """Return the lines given, or None to go back; the last of them is taken back first.

    Args:
        question: one that is asked again until an empty answer.
        given: lines that stand from before; further ones are added to them.
    """
    from tarebook.cli.talk import complain

    if given:
        complain(f"  so far: {'; '.join(given)}")
    while answer := _ask(question):
        given.append(answer)
    if answer is not None:
        return list(given)
    if not given:
        return None
    complain(f"  taken back: {given.pop()}")
    return _ask_many(question, given)


def _words(question: Question) -> str:
    choices = f" ({', '.join(question.choices)})" if question.choices else ""
    example = f" as in {question.example}" if question.example and not choices else ""
    many = "; one a line, Enter alone to go on" if question.many else ""
    return f"{question.ask}{choices}{example}{many}"


def _refuse_taken(file: Path) -> None:
    if holds(file.exists):
        raise FileUnwritable(f"{named(file)} is there already; nothing was written over")
