"""The questions that start a new recipe, without a terminal: what to ask, and what is an answer.

Whoever asks goes on like this::

    answers = {}
    while (question := next_question(answers)) is not None:
        answers[question.name] = ...   # ask; question.check says what is wrong with an answer
    recipe = recipe_from(answers, file="new.toml")
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from tarebook.findings import AmountError, AskedWrongly, FoodUnknown, RecipeFaulty
from tarebook.quantities.amount import parse_amount, parse_length_mm, parse_mass
from tarebook.quantities.units import Dimension, dimension, read_unit
from tarebook.recipe import keys
from tarebook.recipe.bottles import known_food
from tarebook.recipe.fields import Reading, value_of
from tarebook.recipe.ingredients import read_part
from tarebook.recipe.keys import Key, Takes
from tarebook.recipe.model import MeatForm, Part, Recipe
from tarebook.recipe.read import recipe_of
from tarebook.recipe.spans import read_hours, read_temperature_f
from tarebook.toml.fault import Faults, Refused, shown
from tarebook.tuples import NamedTuple

Answers = Mapping[str, str | Sequence[str]]
"""What was answered, by the name of the question; an empty answer passes a question over."""

_LONG_DRYING_H = 48


class Question(NamedTuple):
    """One thing to ask.

    Attributes:
        name: section and key it answers, such as ``meat.amount``.
        ask: the question itself.
        example: an answer, as it would be typed.
        choices: the words to choose from, or none for a free answer.
        needed: whether an empty answer will not do.
        many: whether it is asked again until an empty answer.
    """

    name: str
    ask: str
    example: str
    choices: tuple[str, ...] = ()
    needed: bool = False
    many: bool = False

    def check(self, answer: str) -> None:
        """Do nothing if an answer will do.

        Raises:
            AskedWrongly: it will not; the message says why and what to try.
        """
        if not answer.strip():
            if self.needed:
                raise AskedWrongly(f"this one is needed, as in {self.example}")
            return
        _CHECKS[_section(self.name) in keys.PARTS](self.name, answer)


def next_question(answers: Answers) -> Question | None:
    """Return the next question to ask, or None when all have been.

    What the answers so far make idle is not asked: ground meat is never soaked.
    """
    return next(
        (
            question
            for question in QUESTIONS
            if question.name not in answers and _applies(question.name, answers)
        ),
        None,
    )


def recipe_from(answers: Answers, *, file: str = "") -> Recipe:
    """Return the recipe that the answers make.

    Args:
        answers: checked answers.
        file: name of the file it is going to be, for findings.

    Raises:
        RecipeFaulty: together they make no recipe.
    """
    recipe, findings = recipe_of(_document(answers), file=file)
    if recipe is None:
        raise RecipeFaulty(findings)
    return recipe


def read_line(text: str) -> tuple[str, dict[str, str]]:
    """Return an ingredient typed on one line as its name and the values of its table.

    Args:
        text: ``"soy-sauce = 3/4 cup"``, ``"3/4 cup soy sauce"``, ``"3 cloves garlic, minced"``,
            and for a curing salt ``"2.8 g curing-salt-1 at 6.25 %"``.

    Raises:
        AskedWrongly: no amount and food can be told apart in it.

    Example:
        >>> read_line("3 cloves garlic, minced")
        ('garlic', {'amount': '3 cloves, minced'})
    """
    line, at, strength = text.strip().rpartition(" at ")
    if not at:
        line, strength = text.strip(), ""
    name, amount = _split_named(line) if "=" in line else _split_spoken(line)
    return name, {"amount": amount, **({"strength": strength.strip()} if strength else {})}


def _question(
    name: str, ask: str, *, needed: bool = False, many: bool = False, example: str = ""
) -> Question:
    key = _key(name)
    shown_example = example or (key.example.strip('"') if key else "")
    words = key.words if key else ()
    return Question(
        name=name, ask=ask, example=shown_example, choices=words, needed=needed, many=many
    )


def _section(name: str) -> str:
    return name.partition(".")[0]


def _key(name: str) -> Key | None:
    section, _, key = name.partition(".")
    return keys.SECTIONS[section].get(key) if section in keys.SECTIONS else keys.TOP.get(name)


QUESTIONS = (
    _question("title", "What do you call it?", needed=True),
    _question("about", "A sentence about it?"),
    _question("meat.food", "What is dried?", needed=True),
    _question("meat.amount", "For how much raw meat are your amounts?", needed=True),
    _question("meat.form", "How is it cut?"),
    _question("meat.thickness", "How thick is a piece?"),
    _question("marinade", "What goes into the marinade?", many=True, example="3/4 cup soy-sauce"),
    _question("rub", "What is rubbed on?", many=True, example="1 1/2 tsp black-pepper"),
    _question("mixed-in", "What is mixed in?", many=True, example="2 tsp garlic-powder"),
    _question("soak.hours", "How many hours does it soak?"),
    _question("soak.surface", "And then?"),
    _question("heat.step", "When is the meat heated through?"),
    _question("drying.temperature", "At what temperature is it dried?"),
    _question("drying.hours", "For how many hours?"),
    _question("method.steps", "What are the steps?", many=True, example="Slice across the grain."),
    _question("method.notes", "What else to know?", many=True, example="Freezes well."),
)


def _applies(name: str, answers: Answers) -> bool:
    ground = answers.get("meat.form") == MeatForm.GROUND
    section = _section(name)
    if section in ("marinade", "rub"):
        return not ground
    if section == "soak":
        return bool(answers.get("marinade"))
    return ground if section == "mixed-in" else True


def _check_value(name: str, answer: str) -> None:
    key = _key(name)
    assert key is not None, "every question of a section stands on a row of keys"
    one = key._replace(takes=Takes.TEXT) if key.takes is Takes.TEXTS else key
    try:
        value_of(answer.strip(), one)
    except (Refused, AmountError) as refused:
        raise AskedWrongly(_meant_elsewhere(answer, key) or _sentence(refused)) from None
    if name == "drying.hours":
        _ask_back_long_drying(answer.strip())


def _ask_back_long_drying(answer: str) -> None:
    """Ask back at a bare number of hours that may be a temperature."""
    if read_hours(answer)[1] > _LONG_DRYING_H and not answer[-1].isalpha():
        raise AskedWrongly(
            f"{shown(answer)} hours would be more than {_LONG_DRYING_H // 24} days of drying; "
            f"is it a temperature? If hours are meant, write {shown(answer)} h"
        )


def _meant_elsewhere(answer: str, key: Key) -> str:
    """Return what an answer is, where it would do at another question; else nothing."""
    found = next((kind for kind in _KINDS if _reads(kind.reads, answer)), None)
    if found is None or found.takes in (key.takes, _NEAR.get(key.takes)):
        return ""
    return f'"{shown(answer)}" is {found.words}, and not what is asked here'


def _reads(reads: Callable[[str], object], answer: str) -> bool:
    try:
        return bool(reads(answer.strip()))
    except (AmountError, AskedWrongly):
        return False


def _has_measure(text: str) -> bool:
    """Whether it begins with a number and names a spoon, a cup or the like."""
    first, *words = text.split()
    found = [read_unit(word) for word in words] if first[0].isdigit() else []
    return any(one is not None and dimension(one) is Dimension.VOLUME for one in found)


class _Kind(NamedTuple):
    """What an answer can be taken for: in words, the key it would do for, and who reads it."""

    words: str
    takes: Takes
    reads: Callable[[str], object]


_KINDS = (
    _Kind("an ingredient", Takes.FOOD, lambda text: text[0].isdigit() and read_line(text)),
    _Kind("a weight", Takes.WEIGHT, parse_mass),
    _Kind("a length", Takes.LENGTH, parse_length_mm),
    _Kind("a temperature", Takes.TEMPERATURE, read_temperature_f),
    _Kind("a measure", Takes.AMOUNT, _has_measure),
)


_NEAR = {Takes.WEIGHT: Takes.AMOUNT}
"""Who writes cups for a weight is at the right question, and is told what to write."""


def _check_line(name: str, answer: str) -> None:
    own, values = read_line(answer)
    reading = Reading(Faults())
    read_part({own: values}, Part(name), reading)
    for fault in reading.faults.found:
        if fault.severity == "error":
            raise AskedWrongly("; ".join(part for part in (fault.message, fault.hint) if part))


_CHECKS: Mapping[bool, Callable[[str, str], None]] = {True: _check_line, False: _check_value}


def _sentence(refused: Refused | AmountError) -> str:
    return "; ".join(part for part in (str(refused), refused.hint) if part)


def _document(answers: Answers) -> dict[str, object]:
    document: dict[str, object] = {}
    for name, answer in answers.items():
        section, dot, key = name.partition(".")
        if not answer:
            continue
        if section in keys.PARTS:
            document[section] = _table(_several(answer))
        elif dot:
            table = document.setdefault(section, {})
            assert isinstance(table, dict)
            table[key] = list(_several(answer)) if not isinstance(answer, str) else answer.strip()
        elif isinstance(answer, str):
            document[name] = answer.strip()
    return document


def _table(lines: Sequence[str]) -> dict[str, dict[str, str]]:
    """Return ingredients by name; a second one of a name is numbered, so that none is lost."""
    found: dict[str, dict[str, str]] = {}
    for line in lines:
        name, values = read_line(line)
        count = sum(one == name or one.startswith(f"{name} (") for one in found) + 1
        if count > 1:
            found[f"{name} ({count})"] = {"food": name, **values}
        else:
            found[name] = values
    return found


def _several(answer: str | Sequence[str]) -> Sequence[str]:
    return [answer] if isinstance(answer, str) else answer


def _split_named(line: str) -> tuple[str, str]:
    name, _, amount = line.partition("=")
    return name.strip().strip('"'), amount.strip().strip('"')


def _split_spoken(line: str) -> tuple[str, str]:
    """Return food and amount of ``3/4 cup soy sauce``: the longest food that leaves an amount."""
    spoken, comma, form = line.partition(",")
    words = spoken.split()
    for place in range(1, len(words)):
        amount, name = " ".join(words[:place]), " ".join(words[place:])
        if _is_food(name) and _is_amount(amount):
            return name, amount + comma + form
    raise AskedWrongly(
        f'"{shown(line)}" is not an amount and a food I know; '
        "write it as in  3/4 cup soy-sauce  or  soy-sauce = 3/4 cup"
    )


def _is_food(name: str) -> bool:
    try:
        known_food(name)
    except FoodUnknown:
        return False
    return True


def _is_amount(text: str) -> bool:
    try:
        parse_amount(text)
    except AmountError:
        return False
    return True
