"""tarebook foods add: a bottle of the cook's own, by questions or by options."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from tarebook.cli import asking, complete
from tarebook.findings import AskedWrongly, FileUnwritable, RecordFaulty

if TYPE_CHECKING:
    from tarebook.recipe.model import Bottle

_Said = str | None
_BY_OPTIONS = (
    "nobody answers: run it at a terminal, or say it all by options, as in  tarebook foods add "
    'lakeside-soy --like soy-sauce --serving "1 Tbsp (17 g)" --sodium "580 mg"'
)
_NOTHING = "nothing was written"


def _option(*names: str, says: str, unit: str = "AMOUNT") -> typer.models.OptionInfo:
    """Return an option whose place in the panel its help tells."""
    option: typer.models.OptionInfo = typer.Option(
        *names, metavar=unit, help=says, show_default=False
    )
    return option


def add(
    context: typer.Context,
    bottle: Annotated[
        str, typer.Argument(metavar="NAME", help="What recipes call it, as in lakeside-soy.")
    ],
    like: Annotated[
        str | None,
        typer.Option(
            "--like",
            metavar="FOOD",
            help="The food of the tables that it is a kind of.",
            autocompletion=complete.foods,
        ),
    ] = None,
    name: Annotated[_Said, _option("--called", says="What pages call it.", unit="WORDS")] = None,
    serving: Annotated[_Said, _option("--serving", says="As printed: '1 Tbsp (17 g)'.")] = None,
    energy: Annotated[
        _Said, _option("--calories", "--energy", says="Of one serving, as all of these: 10 kcal.")
    ] = None,
    fat: Annotated[_Said, _option("--fat", says="Total fat: 0 g.")] = None,
    saturated: Annotated[_Said, _option("--saturated", says="Saturated fat: 0 g.")] = None,
    cholesterol: Annotated[_Said, _option("--cholesterol", says="Cholesterol: 0 mg.")] = None,
    sodium: Annotated[_Said, _option("--sodium", says="Sodium: 580 mg.")] = None,
    carbohydrate: Annotated[
        _Said, _option("--carbohydrate", says="Total carbohydrate: 1 g.")
    ] = None,
    fiber: Annotated[_Said, _option("--fiber", says="Dietary fiber: 0 g.")] = None,
    sugars: Annotated[_Said, _option("--sugars", says="Total sugars: 0 g.")] = None,
    added_sugars: Annotated[_Said, _option("--added-sugars", says="Added sugars: 0 g.")] = None,
    protein: Annotated[_Said, _option("--protein", says="Protein: 2 g.")] = None,
    vitamin_d: Annotated[_Said, _option("--vitamin-d", says="Vitamin D: 0 mcg.")] = None,
    calcium: Annotated[_Said, _option("--calcium", says="Calcium: 0 mg.")] = None,
    iron: Annotated[_Said, _option("--iron", says="Iron: 0.4 mg.")] = None,
    potassium: Annotated[_Said, _option("--potassium", says="Potassium: 60 mg.")] = None,
    size: Annotated[_Said, _option("--size", says="What one pack holds: '15 fl oz'.")] = None,
    price: Annotated[_Said, _option("--price", says="What it costs: 3.49.", unit="NUMBER")] = None,
    contains: Annotated[
        _Said,
        _option("--contains", says="Allergens it lists: soybeans,wheat, or none.", unit="WORDS"),
    ] = None,
    check: Annotated[
        _Said, _option("--check", says="Allergens it says it may hold.", unit="WORDS")
    ] = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Write over the one of that name.")
    ] = False,
    yes: Annotated[
        bool, typer.Option("--yes", help="Keep it although something looks like a slip.")
    ] = False,
    as_json: asking.AsJson = False,
) -> None:
    """Keep a bottle of your own from what its pack prints; without options it asks.

    What each figure is taken to mean is shown before it is kept. What the pack does not print is
    taken from the food it is like.

    Example: tarebook foods add lakeside-soy --like soy-sauce --serving 17g --sodium 580mg
    """
    from tarebook.recipe.bottle_questions import BY_NAME

    key = _free(bottle, replace)
    said = {word.replace("_", "-"): value for word, value in context.params.items()}
    given = {word: said[word] for word in BY_NAME if isinstance(said[word], str)}
    found = _by_options(given, key, yes, as_json) if given else _by_questions(key, as_json)
    if found is not None:
        _keep(found, replace, as_json)


def _free(name: str, replace: bool) -> str:
    """Return the key of a new bottle; a name that is taken is told before anything is asked."""
    from tarebook.figures.foods import normalised
    from tarebook.files import holds, named
    from tarebook.recipe.bottles import bottle_file, can_name

    if not can_name(name):
        raise AskedWrongly(f'"{name[:60]}" can be no bottle\'s name: letters, digits and hyphens')
    file = bottle_file(name)
    if not replace and holds(file.exists):
        raise FileUnwritable(f"{named(file)} is there already; --replace writes over it")
    return normalised(name)


def _by_options(given: dict[str, str], key: str, yes: bool, as_json: bool) -> Bottle | None:
    """Return the bottle that the options make; what looks like a slip must be confirmed."""
    from tarebook.cli.interview import at_terminal
    from tarebook.cli.talk import complain
    from tarebook.recipe.bottle_questions import BY_NAME

    if "like" not in given:
        raise AskedWrongly("--like says which food of the tables it is like, as in soy-sauce")
    for word, answer in given.items():
        try:
            BY_NAME[word].check(answer)
        except AskedWrongly as fault:
            raise AskedWrongly(f"--{'called' if word == 'name' else word}: {fault}") from None
    bottle = _made(given, key)
    asked = _ask_back(bottle, given)
    if not asked or yes:
        if not as_json:
            _show(bottle, beside=False)
        return bottle
    if not at_terminal():
        many = "the question" if asked == 1 else f"{asked} questions"
        raise AskedWrongly(f"{_NOTHING}, for {many} above; put it right, or --yes keeps it so")
    complain("Not kept yet. It would be:")
    _show(bottle, beside=as_json)
    return bottle if _agreed() else None


def _agreed() -> bool:
    from tarebook.cli.interview import until_understood
    from tarebook.cli.talk import complain

    if until_understood("Keep it as it is? yes or no", _yes_or_no):
        return True
    complain(_NOTHING)
    return False


def _yes_or_no(answer: str) -> bool:
    words = {"yes": True, "y": True, "no": False, "n": False}
    if answer.lower() not in words:
        raise AskedWrongly("say yes or no")
    return words[answer.lower()]


def _by_questions(key: str, as_json: bool) -> Bottle | None:
    """Ask down the panel, show what it is taken to mean, and let answers be given again."""
    from tarebook.cli.interview import ENDED, at_terminal, until_understood
    from tarebook.cli.talk import complain
    from tarebook.recipe.bottle_questions import BY_NAME, Question, next_question

    answers: dict[str, str] = {}

    def put(question: Question) -> None:
        def take(answer: str) -> str:
            question.check(answer)
            return answer

        ended = ENDED if answers or at_terminal() else _BY_OPTIONS
        ask = f"{question.ask} as in {question.example}"
        answers[question.name] = until_understood(ask, take, ended=ended)

    complain("Copy what the pack prints, for one serving. Enter alone leaves an answer out.")
    while True:
        while (question := next_question(answers)) is not None:
            put(question)
        bottle, odd = _told(answers, key, as_json)
        again = _keep_or_again(bottle, odd)
        if again == "yes":
            return bottle
        if again == "no":
            complain(_NOTHING)
            return None
        put(BY_NAME[again])


def _told(answers: dict[str, str], key: str, as_json: bool) -> tuple[Bottle | None, bool]:
    """Show the bottle that the answers make; return it, and whether something is to be asked."""
    from tarebook.cli.talk import complain_findings

    try:
        bottle = _made(answers, key)
    except RecordFaulty as faulty:
        complain_findings(faulty.findings)
        return None, False
    _show(bottle, beside=as_json)
    return bottle, bool(_ask_back(bottle, answers))


def _keep_or_again(bottle: Bottle | None, odd: bool) -> str:
    """Return yes, no, or the name of the answer that is to be given again."""
    from tarebook.cli.interview import until_understood

    again = "what to say again, as in  sodium"
    ask = f"Keep it? yes, no, or {again}" + ("" if odd else " [yes]")
    if bottle is None:
        ask = f"It cannot be kept like this. Say {again}; or no"
    return until_understood(ask, lambda said: _next(said, bottle, odd))


def _next(said: str, bottle: Bottle | None, odd: bool) -> str:
    from tarebook.recipe.bottle_questions import BY_NAME

    word = "-".join(said.lower().replace("calories", "energy").split())
    word = {"y": "yes", "n": "no", "": "" if odd else "yes"}.get(word, word)
    if word in BY_NAME or word == "no" or (word == "yes" and bottle is not None):
        return word
    raise AskedWrongly(f"say {'' if bottle is None else 'yes, '}no, or one of {', '.join(BY_NAME)}")


def _made(answers: dict[str, str], key: str) -> Bottle:
    from tarebook.cli.today import today
    from tarebook.recipe.bottle_questions import bottle_from

    return bottle_from(answers, key=key, date=today().isoformat())


def _ask_back(bottle: Bottle, answers: dict[str, str]) -> int:
    """Tell how figures are taken, and ask about what looks like a slip; return how many asked.

    A note needs no answer. What is asked keeps the bottle from being written.
    """
    from tarebook.cli.talk import complain
    from tarebook.nutrition.odd_panel import odd_figures, off_label
    from tarebook.recipe.bottle_questions import other_units

    taken = () if bottle.panel is None else off_label(bottle.panel)
    odd = () if bottle.panel is None else odd_figures(bottle.panel, bottle.like)
    for one in (*other_units(answers), *taken):
        complain(f"note: {one}")
    for one in odd:
        complain(f"asked: {one}")
    return len(odd)


def _show(bottle: Bottle, *, beside: bool) -> None:
    """Show what is taken from a bottle; beside the output where that is data."""
    from tarebook.cards.bottle_page import bottle_page
    from tarebook.cli.talk import complain, show

    if beside:
        for line in bottle_page(bottle):
            complain(line.text)
    else:
        show(bottle_page(bottle))


def _keep(bottle: Bottle, replace: bool, as_json: bool) -> None:
    from tarebook.cards.bottle_page import bottle_data
    from tarebook.cards.food_page import file_lines
    from tarebook.cli.talk import show, show_data
    from tarebook.recipe.write_bottle import keep_bottle

    file = keep_bottle(bottle, replace=replace)
    if as_json:
        show_data(bottle_data(bottle) | {"file": str(file)})
    else:
        show(file_lines(f"Recipes name it {bottle.key}. It is kept in", str(file)))
    _note_shadow(bottle.key)


def _note_shadow(key: str) -> None:
    """Say so where a name of the tables will mean the bottle from now on."""
    from tarebook.cli.talk import complain
    from tarebook.figures.foods import food
    from tarebook.findings import FoodUnknown

    try:
        other = food(key).key
    except FoodUnknown:
        return
    complain(f"note: {key} is a name of {other} in the tables; from now on it is your bottle")
