"""The questions that make a bottle, without a terminal: what to ask, and what is an answer.

The figures come in the order in which a pack prints them, so that a cook reads down the panel. A
bare number is taken in the unit that the question names.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tarebook.figures.foods import normalised
from tarebook.findings import AmountError, AskedWrongly, RecordFaulty
from tarebook.quantities.number import parse_number
from tarebook.recipe import keys
from tarebook.recipe.bottle import ALLERGENS, PACK, PANEL, TOP, bottle_of, like_food
from tarebook.recipe.fields import value_of
from tarebook.recipe.keys import Key, Takes
from tarebook.recipe.model import Bottle
from tarebook.recipe.panel import less_than
from tarebook.toml.fault import Refused
from tarebook.tuples import NamedTuple

Answers = Mapping[str, str]
"""What was answered, by the name of the question; an empty answer passes a question over."""

UNITS = {
    Takes.MILLIGRAMS: "mg",
    Takes.GRAMS: "g",
    Takes.MICROGRAMS: "mcg",
    Takes.KILOCALORIES: "kcal",
}
NONE = "none"
"""What is answered where a pack lists no allergens."""


class Question(NamedTuple):
    """One thing to ask of a bottle.

    Attributes:
        name: the key that it answers; of the panel, as on the panel.
        ask: the question itself.
        example: an answer, as it would be typed.
        needed: whether an empty answer will not do.
    """

    name: str
    ask: str
    example: str
    needed: bool = False

    def check(self, answer: str) -> None:
        """Do nothing if an answer will do.

        Raises:
            AskedWrongly: it will not; the message says why and what to try.
        """
        if not answer.strip():
            if self.needed:
                raise AskedWrongly(f"this one is needed, as in {self.example}")
            return
        try:
            if self.name == "like":
                like_food(answer)
            else:
                value_of(_value(self.name, answer), _KEYS[self.name])
        except (Refused, AmountError) as refused:
            hint = refused.hint
            raise AskedWrongly("; ".join(part for part in (str(refused), hint) if part)) from None


_FIGURES = (
    ("energy", "calories"),
    ("fat", "total fat"),
    ("saturated", "saturated fat"),
    ("cholesterol", "cholesterol"),
    ("sodium", "sodium"),
    ("carbohydrate", "total carbohydrate"),
    ("fiber", "dietary fiber"),
    ("sugars", "total sugars"),
    ("added-sugars", "added sugars"),
    ("protein", "protein"),
    ("vitamin-d", "vitamin D"),
    ("calcium", "calcium"),
    ("iron", "iron"),
    ("potassium", "potassium"),
)
"""The figures of a panel in its own order, and what it calls them."""

_KEYS: Mapping[str, Key] = {**TOP, **keys.PANEL, **PACK, **ALLERGENS}
QUESTIONS = (
    Question("like", "Which food of the tables is it like?", "soy-sauce", needed=True),
    Question("name", "What shall pages call it?", "Lakeside soy sauce"),
    Question("serving", "Serving size, as printed?", "1 Tbsp (17 g)"),
    *(
        Question(name, f"{words[0].upper()}{words[1:]}, in {UNITS[keys.PANEL[name].takes]}?",
                 keys.PANEL[name].example.strip('"'))
        for name, words in _FIGURES
    ),
    Question("size", "What does one pack hold?", "15 fl oz"),
    Question("price", "And cost?", "3.49"),
    Question("contains", f"Which allergens does it list? ({NONE} where it lists none)",
             "soybeans, wheat"),
    Question("check", "And which does it say it may hold?", "sesame"),
)  # fmt: skip
BY_NAME: Mapping[str, Question] = {one.name: one for one in QUESTIONS}

_ALSO = {
    "soy": "soybeans", "soya": "soybeans", "soybean": "soybeans", "eggs": "egg", "nuts":
    "tree nuts", "tree nut": "tree nuts", "peanut": "peanuts", "shellfish": "crustacean shellfish",
    "dairy": "milk",
}  # fmt: skip
"""Other words for what the tables call an allergen by: a card names each of them once."""


def next_question(answers: Answers) -> Question | None:
    """Return the next question to ask, or None when all have been.

    Without a serving no figure is asked for: nothing could be made of it.
    """
    figures = {name for name, _ in _FIGURES}
    for question in QUESTIONS:
        idle = question.name in figures and not answers.get("serving", "").strip()
        if question.name not in answers and not idle:
            return question
    return None


def bottle_from(answers: Answers, *, key: str, date: str = "") -> Bottle:
    """Return the bottle that the answers make.

    Args:
        answers: by the names of the questions.
        key: what recipes will call it.
        date: the day it was copied, or empty.

    Raises:
        AskedWrongly: an answer is none.
        RecordFaulty: together they make no bottle; carries all that is wrong.
    """
    document: dict[str, object] = {}
    for name, answer in answers.items():
        if answer.strip():
            home = _HOMES[name]
            table = document.setdefault(home, {}) if home else document
            assert isinstance(table, dict)
            table[name] = _value(name, answer)
    if date:
        document["source"] = {"date": date}
    bottle, findings = bottle_of(document, key=normalised(key), file=normalised(key))
    if bottle is None:
        raise RecordFaulty(findings)
    return bottle


def other_units(answers: Answers) -> Iterator[str]:
    """Yield what is to be asked back: figures in another unit than panels print them in.

    Example:
        >>> list(other_units({"sodium": "0.58 g", "sugars": "1 g"}))
        ['sodium "0.58 g" is taken as 580 mg; panels print mg']
    """
    for name, _ in _FIGURES:
        answer, key = answers.get(name, "").strip(), _KEYS[name]
        unit = UNITS[key.takes]
        answer = less_than(answer) or answer
        if not answer or _bare(answer):
            continue
        word = answer.lstrip("0123456789./ ").lower()
        if word not in (unit, *_SAME_UNIT.get(unit, ())):
            figure = float(value_of(answer, key))
            yield f'{name} "{answer}" is taken as {figure:g} {unit}; panels print {unit}'


_SAME_UNIT = {"mcg": ("ug",), "kcal": ("calories", "cal")}
_HOMES = {
    **dict.fromkeys(TOP, ""),
    **dict.fromkeys(keys.PANEL, PANEL.name),
    **dict.fromkeys(PACK, "pack"),
    **dict.fromkeys(ALLERGENS, "allergens"),
}
"""The table of the file that each answer goes to; empty for the top."""


def _value(name: str, answer: str) -> object:
    """Return an answer as it would stand in the file."""
    key, text = _KEYS[name], answer.strip()
    if key.takes is Takes.TEXTS:
        return _allergens(text)
    if key.takes is Takes.PRICE:
        return _price(text, key)
    if key.takes in UNITS and _bare(less_than(text) or text):
        return f"{text} {UNITS[key.takes]}"
    return text


def _allergens(text: str) -> list[str]:
    if text.lower() == NONE:
        return []
    words = [" ".join(word.lower().split()) for word in text.split(",")]
    for word in words:
        if word and not any(letter.isalpha() for letter in word):
            raise AskedWrongly(f'"{word[:20]}" is no allergen; as in soybeans, wheat')
    return list(dict.fromkeys(_ALSO.get(word, word) for word in words if word))


def _price(text: str, key: Key) -> object:
    """Return a price without the mark of its currency."""
    number = text.strip("$€£ ")
    try:
        return parse_number(number)
    except AmountError:
        raise AskedWrongly(f'"{text[:20]}" is no price; as in {key.example}') from None


def _bare(text: str) -> bool:
    try:
        parse_number(text)
    except AmountError:
        return False
    return True
