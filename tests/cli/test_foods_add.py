"""tarebook foods add: by questions, by options, and what is asked back before it is kept."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.cli.main import run
from tarebook.recipe.bottles import own_bottle
from tarebook.recipe.model import Bottle

Tarebook = Callable[..., Any]
ADD = ("foods", "add", "lakeside-soy")
OPTIONS = (
    *("--like", "shoyu", "--called", "Lakeside soy sauce", "--serving", "1 Tbsp (17 g)"),
    *("--calories", "10 kcal", "--sodium", "575 mg", "--sugars", "0 g", "--size", "15 fl oz"),
    *("--price", "3.49", "--contains", "soy, wheat"),
)
ANSWERS = {
    "like": "shoyu", "name": "Lakeside soy sauce", "serving": "1 Tbsp (17 g)", "energy": "10",
    "fat": "", "saturated": "", "cholesterol": "", "sodium": "575", "carbohydrate": "",
    "fiber": "", "sugars": "0", "added-sugars": "", "protein": "", "vitamin-d": "", "calcium": "",
    "iron": "", "potassium": "", "size": "15 fl oz", "price": "3.49", "contains": "soy, wheat",
    "check": "",
}  # fmt: skip
"""As typed, question by question."""


def typed(*after: str, **other: str) -> str:
    """Return the answers as they are typed, and what is typed after them."""
    answers = {**ANSWERS, **{name.replace("_", "-"): answer for name, answer in other.items()}}
    return "".join(f"{line}\n" for line in (*answers.values(), *after))


def kept() -> Bottle:
    """Return the bottle that was kept."""
    found = own_bottle("lakeside-soy")
    assert found is not None
    return found


def test_options_and_questions_keep_the_same(tarebook: Tarebook, own_home: Path) -> None:
    """One line of options, or the answers one by one: the same file, to the letter."""
    assert 0 == tarebook(*ADD, *OPTIONS).status
    by_options = (own_home / "foods" / "lakeside-soy.toml").read_text()
    assert 0 == tarebook(*ADD, "--replace", typed=typed("yes")).status

    assert by_options == (own_home / "foods" / "lakeside-soy.toml").read_text()
    assert ("soy-sauce", "Lakeside soy sauce") == (kept().like, kept().name)
    assert ("soybeans", "wheat") == kept().contains


@pytest.mark.parametrize("more", [OPTIONS, ()])
def test_what_a_figure_means_is_shown_before(more: tuple[str, ...], tarebook: Tarebook) -> None:
    """The interval of each printed figure, what is borrowed, and the density of the panel."""
    out = tarebook(*ADD, *more, typed=typed("yes")).out

    assert "printed 575 mg: 570 to 580" in out
    assert "printed 0 g: 0 to under 0.5" in out
    assert "taken from soy-sauce (sr26)" in out
    assert "1.133 g/mL from its panel" in out
    assert out.index("printed 575 mg") < out.index("It is kept in")


def test_as_data(tarebook: Tarebook, own_home: Path) -> None:
    """Standard output is the bottle as data and nothing else, however it was told."""
    for more in (OPTIONS, ()):
        done = tarebook(*ADD, *more, "--json", "--replace", typed=typed("yes"))
        data = json.loads(done.out)
        sodium = data["per_100_g"]["sodium_mg"]

        assert (0, "lakeside-soy", "soy-sauce") == (
            done.status,
            data["food"],
            data["bottle"]["like"],
        )
        assert (575 / 0.17, "printed 575 mg: 570 to 580") == (
            pytest.approx(sodium["value"]),
            sodium["note"],
        )
        assert str(own_home / "foods" / "lakeside-soy.toml") == data["file"]


def test_a_wrong_answer_is_asked_again(tarebook: Tarebook) -> None:
    """At once, with what to write; the right one then stands."""
    wrong = typed("yes", sodium="575 ml\n575 mg", serving="a bit\n1 Tbsp (17 g)")
    done = tarebook(*ADD, typed=wrong)

    assert 0 == done.status
    assert '  "575 ml" is not in mg; write "575 mg"' in done.err
    assert '  serving "a bit" has neither a measure nor a weight' in done.err
    assert 575 == kept().panel.sodium_mg  # type: ignore[union-attr]


def test_an_answer_can_be_given_again(tarebook: Tarebook) -> None:
    """Before it is kept any answer can be named and said anew; the page is shown again."""
    done = tarebook(*ADD, typed=typed("total", "sodium", "600", "calories", "15", "yes"))

    assert 0 == done.status
    assert "say yes, no, or one of like, name, serving" in done.err
    assert "printed 600 mg" in done.out
    panel = kept().panel
    assert panel is not None and (600, 15) == (panel.sodium_mg, panel.energy_kcal)


def test_no_keeps_nothing(tarebook: Tarebook, own_home: Path) -> None:
    """Said in the end: no file, not even a folder."""
    done = tarebook(*ADD, typed=typed("no"))

    assert (0, "> nothing was written") == (done.status, done.err.splitlines()[-1])
    assert not own_home.exists()


@pytest.mark.parametrize(
    ("sodium", "asked"),
    [
        ("5750 mg", "sodium 5,750 mg in 17 g; soy-sauce has 934 mg: is it 575 mg?"),
        ("0 mg", "sodium 0 mg in 17 g; soy-sauce has 934 mg; is it copied right?"),
    ],
)
def test_what_looks_like_a_slip_is_asked_back(
    sodium: str, asked: str, tarebook: Tarebook, own_home: Path
) -> None:
    """By options it needs --yes; at the questions Enter alone is no yes."""
    slip = [sodium if word == "575 mg" else word for word in OPTIONS]
    done = tarebook(*ADD, *slip)

    assert 2 == done.status
    assert f"asked: {asked}" in done.err.splitlines()
    assert "" == done.out  # no page that reads as though it were kept
    assert (
        "nothing was written, for the question above; put it right, or --yes keeps it so"
    ) in done.err
    assert not own_home.exists()

    done = tarebook(*ADD, typed=typed("", "yes", sodium=sodium))
    assert f"> asked: {asked}" in done.err.splitlines()
    assert "say yes, no, or one of" in done.err
    assert 0 == done.status
    assert 0 == tarebook(*ADD, *slip, "--yes", "--replace").status


@pytest.mark.parametrize(
    ("sodium", "told"),
    [
        ("0.58 g", 'sodium "0.58 g" is taken as 580 mg; panels print mg'),
        ("575 mg", "sodium 575 mg is none that US labels round to; taken as 570 to 580 mg"),
    ],
)
def test_how_a_figure_is_taken_is_a_note_and_stops_nothing(
    sodium: str, told: str, tarebook: Tarebook
) -> None:
    """Another unit, or a figure between the steps of labels, is told and kept."""
    done = tarebook(*ADD, *[sodium if word == "575 mg" else word for word in OPTIONS])

    assert 0 == done.status
    assert f"note: {told}" in done.err.splitlines()
    assert "asked: " not in done.err
    assert kept() is not None


@pytest.mark.parametrize("said", ["<1 g", "less than 1 g", "<1", "Less than 1g"])
def test_less_than_a_gram_is_taken_as_printed(
    said: str, tarebook: Tarebook, own_home: Path
) -> None:
    """21 CFR 101.9(c)(6) lets a label say so; it is anything from none to under a gram."""
    done = tarebook(*ADD, *OPTIONS, "--protein", said, "--replace")

    assert 0 == done.status
    assert "printed <1 g: 0 to under 1" in done.out
    assert 'protein = "<1 g"' in (own_home / "foods" / "lakeside-soy.toml").read_text()
    panel = kept().panel
    assert panel is not None and (1, ("protein_g",)) == (panel.protein_g, panel.under)


def test_less_than_what_labels_do_not_say_is_refused(tarebook: Tarebook) -> None:
    """Of fat no label says less than a gram, and of sugars none less than two."""
    for option, said in (("--fat", "<1 g"), ("--protein", "<2 g"), ("--sodium", "<5 mg")):
        done = tarebook(*ADD, "--like", "soy-sauce", "--serving", "17 g", option, said)
        assert 2 == done.status
        assert f'{option}: "{said}" stands on no label; labels print "less than 1 g"' in done.err


def test_at_a_terminal_a_slip_in_the_options_is_asked(
    tarebook: Tarebook, own_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Somebody is there: yes keeps it, no does not."""
    slip = ["5750 mg" if word == "575 mg" else word for word in OPTIONS]
    monkeypatch.setattr("tarebook.cli.interview.at_terminal", lambda: True)

    done = tarebook(*ADD, *slip, typed="perhaps\nno\n")
    assert "Not kept yet. It would be:" in done.err and "nothing was written" in done.err
    assert not own_home.exists()
    assert 0 == tarebook(*ADD, *slip, typed="yes\n").status
    assert 5750 == kept().panel.sodium_mg  # type: ignore[union-attr]


def test_what_cannot_be_is_not_kept(tarebook: Tarebook) -> None:
    """Parts that outweigh the serving: no is told, and only another answer helps."""
    done = tarebook(*ADD, typed=typed("yes", "sugars", "0", "", sugars="40"))

    assert "its parts weigh 41 g, more than the serving" in done.err
    assert "It cannot be kept like this." in done.err and "say no, or one of" in done.err
    assert 0 == done.status
    assert 0 == kept().panel.sugars_g  # type: ignore[union-attr]


@pytest.mark.parametrize("lines", [0, 1, 8, 21])
def test_answers_that_end_early_keep_nothing(
    lines: int, tarebook: Tarebook, own_home: Path
) -> None:
    """The end of the input is no yes: nothing is written, and that is said."""
    answers = "".join(typed().splitlines(keepends=True)[:lines])
    done = tarebook(*ADD, typed=answers)

    assert 2 == done.status
    assert ("nobody answers" if not lines else "nothing was written") in done.err
    assert not own_home.exists()


def test_nobody_there_and_nothing_said(tarebook: Tarebook) -> None:
    """Without a terminal and without options it says how to say it."""
    err = tarebook(*ADD).err.splitlines()[-1]

    assert "run it at a terminal, or say it all by options" in err
    assert '--serving "1 Tbsp (17 g)" --sodium "580 mg"' in err


def test_ctrl_c_keeps_nothing(own_home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Broken off at any question, it ends as programs do, and writes nothing."""

    class Broken(io.StringIO):
        def readline(self, *args: Any) -> str:
            line = super().readline(*args)
            if not line:
                raise KeyboardInterrupt
            return line

    monkeypatch.setattr(sys, "stdin", Broken(typed()))
    with pytest.raises(SystemExit) as ended:
        run(list(ADD))

    assert 130 == ended.value.code
    assert not own_home.exists()


@pytest.mark.parametrize(
    ("args", "status", "says"),
    [
        (("../soy", *OPTIONS), 2, "letters, digits and hyphens"),
        (("x", "--sodium", "575 mg"), 2, "--like says which food of the tables it is like"),
        (("x", "--like", "xyzzy"), 2, '--like: no food is called "xyzzy"'),
        (("x", "--like", "honey", "--sodium", "575"), 0, ""),
        (("x", "--like", "honey", "--sodium", "575 ml"), 2, '--sodium: "575 ml" is not in mg'),
        (("x", "--like", "honey", "--called", "a\x1b[2J"), 2, "--called: name holds the hidden"),
        (("x", "--like", "honey", "--price", "dear"), 2, '--price: "dear" is no price'),
        (("x", "--like", "curing-salt-1"), 2, "a curing salt is no bottle of your own"),
        (("x", "--like", "honey", "--sodium", "1 mg"), 1, "serving is missing (panel.serving)"),
    ],
)
def test_a_fault_of_the_options(
    args: tuple[str, ...], status: int, says: str, tarebook: Tarebook, own_home: Path
) -> None:
    """Each is told by its option; nothing is written."""
    if status == 0:
        args = (*args, "--serving", "17 g", "--yes")
    done = tarebook("foods", "add", *args)

    assert status == done.status
    assert says in done.err
    assert own_home.exists() == (status == 0)


def test_one_that_is_there_is_not_written_over(tarebook: Tarebook) -> None:
    """It is told before the first question, with what would write over it."""
    tarebook(*ADD, *OPTIONS)
    before = kept()
    done = tarebook(*ADD, typed=typed("yes", sodium="900"))

    assert 1 == done.status
    assert "is there already; --replace writes over it" in done.err and "> " not in done.err
    assert before == kept()


def test_a_name_of_the_tables_is_told(tarebook: Tarebook) -> None:
    """From then on it means the bottle, and the cook should know."""
    done = tarebook("foods", "add", "shoyu", "--like", "soy-sauce-tamari")

    assert "note: shoyu is a name of soy-sauce in the tables; from now on" in done.err


def test_an_unwritable_folder_is_told(tarebook: Tarebook, own_home: Path) -> None:
    """A file stands where the folder should: status 1, and a sentence."""
    own_home.write_text("no folder")
    done = tarebook(*ADD, *OPTIONS)

    assert 1 == done.status
    assert "cannot be written" in done.err
