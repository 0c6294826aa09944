"""tarebook scale."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tarebook.where import folder

Tarebook = Callable[..., Any]
Written = Callable[..., str]

SODIUM = re.compile(r"^sodium +(?:≥ )?([\d,.]+) +(?:≥ )?([\d,.]+) +(?:≥ )?([\d,.]+) +mg$", re.M)


def sodium(out: str) -> tuple[float, float, float]:
    """Return low, likely and high sodium per ounce as printed [mg]."""
    found = SODIUM.search(out)
    assert found, out
    low, likely, high = (float(number.replace(",", "")) for number in found.groups())
    return low, likely, high


@pytest.mark.parametrize(
    ("options", "size"),
    [
        (["--meat", "6lb"], "6 lb (2,722 g)"),
        (["--meat", "6 lb 4 oz"], "6 lb 4 oz (2,835 g)"),
        (["--meat", "6lb4oz"], "6 lb 4 oz (2,835 g)"),
        (["--meat", "96 oz"], "6 lb (2,722 g)"),
        (["--meat", "2.7kg"], "5 lb 15.2 oz (2,700 g)"),
        (["--meat", "2700 g"], "5 lb 15.2 oz (2,700 g)"),
        (["--bought", "8lb", "--trim", "25%"], "6 lb (2,722 g)"),
        (["--bought", "8lb", "--trim", "25 %"], "6 lb (2,722 g)"),
        (["--bought", "8lb", "--trim", "0.25"], "6 lb (2,722 g)"),
        (["--factor", "2 2/5"], "6 lb (2,722 g)"),
        (["--factor", "2.4"], "6 lb (2,722 g)"),
        ([], "2 lb 8 oz (1,134 g)"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else "",
)
def test_todays_meat(options: list[str], size: str, tarebook: Tarebook) -> None:
    """Pounds, ounces, kilograms, grams, as bought with trim, or so many times the recipe."""
    status, out, err = tarebook("scale", "juniper-venison", *options)

    assert (0, "") == (status, err)
    assert f"For {size} of venison (deer): " in out


def test_meat_as_bought_says_that_nothing_is_trimmed(tarebook: Tarebook) -> None:
    """Without a trim all of it is taken, and it says so."""
    status, out, err = tarebook("scale", "juniper-venison", "--bought", "6lb")

    assert (0, "note: nothing is trimmed off; add --trim, as in --trim 12%\n") == (status, err)
    assert "For 6 lb (2,722 g) of venison (deer): " in out


def test_no_name_is_asked_wrongly(tarebook: Tarebook) -> None:
    """An empty name is no recipe, and not the folder one stands in."""
    status, _, err = tarebook("scale", "")

    assert 2 == status
    assert "no recipe is named" in err


def test_a_yield_below_the_solids_is_told(tmp_path: Path, tarebook: Tarebook) -> None:
    """A stated yield that even a bone-dry batch is above is not followed silently."""
    text = (folder("recipes") / "juniper-venison.toml").read_text(encoding="utf-8")
    wrong = tmp_path / "wrong.toml"
    wrong.write_text(text.replace("[drying]", '[drying]\nyield = "20 %"'), encoding="utf-8")

    out = tarebook("scale", str(wrong)).out

    assert "below the batch's own dry solids" in " ".join(out.split())


def test_six_pounds(tarebook: Tarebook) -> None:
    """Six pounds of a recipe for two and a half: 2.4 times everything, in scoops and grams."""
    out = tarebook("scale", "juniper-venison", "--meat", "6lb").out

    assert "2.4 times the recipe" in out
    assert re.search(r"^soy sauce +1 cup \+ 3 Tbsp +324 g$", out, re.M)
    assert re.search(r"^garlic, minced +7 cloves +21 g$", out, re.M)


@pytest.mark.parametrize(
    ("drawer", "taken"),
    [
        ("basic", "3/4 cup"),
        ("full", "3/4 cup"),
        ("metric", "125 mL + 3 x 15 mL + 5 mL"),
    ],
)
def test_the_drawer_decides_the_scoops(drawer: str, taken: str, tarebook: Tarebook) -> None:
    """Each measuring set has its own way to 3/4 cup."""
    args = ("scale", "juniper-venison", "--factor", "1 1/2", "--drawer", drawer)
    out = tarebook(*args).out
    spoons = {"basic": "1/2 cup + 1/4 cup"}.get(drawer, taken)
    data = json.loads(tarebook(*args, "--json").out)

    assert drawer == data["drawer"]
    assert data["ingredients"][0]["measure"] in out
    assert abs(data["ingredients"][0]["measure_error_fraction"]) <= 0.02
    if drawer != "metric":
        assert spoons == data["ingredients"][0]["measure"]
    else:
        assert "cup" not in data["ingredients"][0]["measure"].replace("(1/3 cup)", "").replace(
            "(1/4 cup)", ""
        )


def test_weighing_narrows(written: Written, tarebook: Tarebook) -> None:
    """With the weight on the scale the range of sodium is narrower, and it says so."""
    path = written(marinade={}, mixed_in={"salt-table": "15 g"})
    guessed = tarebook("scale", path).out
    weighed = tarebook("scale", path, "--finished", "410 g").out
    (low, _, high), (low_after, _, high_after) = sodium(guessed), sodium(weighed)

    assert high_after - low_after < high - low
    assert "as weighed: 410 g" in weighed and "Weigh it, and give --finished" in guessed


@pytest.mark.parametrize(
    ("options", "named"), [([], "ounce of 28.35 g"), (["--label-ounce"], "label ounce of 28 g")]
)
def test_the_ounce_is_named(options: list[str], named: str, tarebook: Tarebook) -> None:
    """Each output names its ounce, as text and as data."""
    for command in ("scale", "card"):
        assert named in tarebook(command, "juniper-venison", *options).out
        data = json.loads(tarebook(command, "juniper-venison", *options, "--json").out)
        assert named == data["estimate"]["ounce"]
    compared = tarebook("compare", "juniper-venison", "--swap", "soy-sauce=tamari", *options).out
    assert f"in one finished {named}" in compared


def test_exact_amounts(tarebook: Tarebook) -> None:
    """--exact shows the fraction that the scoops stand for."""
    args = ("scale", "juniper-venison", "--meat", "6lb")

    assert "exactly 1 1/5 cups" in tarebook(*args, "--exact").out
    assert "exactly" not in tarebook(*args).out


def test_plain_salt_by_the_spoon(written: Written, tarebook: Tarebook) -> None:
    """Measures print, no sodium total of any kind, the kinds are named, and it exits with 0."""
    path = written(marinade={"soy-sauce": "1 cup", "salt": "1 Tbsp"})
    status, out, _ = tarebook("scale", path, "--factor", "2")
    data = json.loads(tarebook("scale", path, "--json").out)

    assert 0 == status
    assert re.search(r"^salt +2 Tbsp +not known$", out, re.M)
    assert re.search(r"^sodium +no total$", out, re.M)
    assert all(kind in out for kind in ("salt-table", "salt-kosher-fine-flake", "salt-sea-fine"))
    assert not re.search(r"at least: [^.]*sodium", out)
    assert data["estimate"]["per_ounce"]["sodium_mg"] is None


def test_at_least_names_names(written: Written, tarebook: Tarebook) -> None:
    """To taste has no weight: the figure is at least, and whose share is missing is told."""
    out = tarebook("scale", written(marinade={"salt-table": "20 g", "soy-sauce": "to taste"})).out

    assert re.search(r"^sodium +≥ \d", out, re.M)
    assert re.search(r"at least: [^.]*sodium[^.]* of soy sauce not known", " ".join(out.split()))


CURE = '{{ amount = "{grams} g", strength = "6.25 %"{more} }}'


@pytest.mark.parametrize("command", ["scale", "card"])
@pytest.mark.parametrize("options", [[], ["--json"], ["--factor", "3"], ["--meat", "200 g"]])
def test_too_much_nitrite_prints_nothing(
    command: str, options: list[str], written: Written, tarebook: Tarebook
) -> None:
    """Over 156 ppm nothing of the recipe is printed at any size, and it exits with 1."""
    path = written(rub={"curing-salt-1": CURE.format(grams="2.5", more="")})
    status, out, err = tarebook(command, path, *options)

    assert (1, "") == (status, out)
    assert "156.25 ppm" in err and "take at most" in err


def test_curing_salt_just_under_the_limit(written: Written, tarebook: Tarebook) -> None:
    """At 150 ppm it prints, in grams only, rounded down after scaling."""
    path = written(rub={"curing-salt-1": CURE.format(grams="2.4", more="")})
    out = tarebook("scale", path, "--factor", "1.11").out  # 2.664 g

    assert re.search(r"^curing salt 1 +2\.6 g, weighed +2\.6 g$", out, re.M)
    assert "147 ppm of the raw meat" in " ".join(out.split())  # 146.4, never understated


@pytest.mark.parametrize("scale", ["fixed", "whole"])
def test_curing_salt_grows_with_the_meat_only(
    scale: str, written: Written, tarebook: Tarebook
) -> None:
    """Fixed or in whole numbers is refused, and nothing is printed."""
    more = f', scale = "{scale}"'
    path = written(rub={"curing-salt-1": CURE.format(grams="2.0", more=more)})
    status, out, err = tarebook("scale", path)

    assert (1, "") == (status, out)
    assert "grows with the meat" in err


@pytest.mark.parametrize(
    ("cure", "says"),
    [
        ('{ amount = "2 g" }', "strength"),
        ('{ amount = "1/2 tsp", strength = "6.25 %" }', "weigh"),
        ('{ amount = "2 g", strength = "50 %" }', "strength"),
        ('{ food = "curing-salt-2", amount = "1 g", strength = "6.25 %" }', "nitrate"),
    ],
)
def test_curing_salt_that_is_refused(
    cure: str, says: str, written: Written, tarebook: Tarebook
) -> None:
    """Without strength, by the spoon, absurdly strong, or with nitrate: refused."""
    name = "pink salt" if "food" in cure else "curing-salt-1"
    status, out, err = tarebook("scale", written(rub={name: cure}))

    assert (1, "") == (status, out)
    assert says in err or "no food" not in err


def test_a_faulty_recipe_tells_everything_and_prints_nothing(
    written: Written, tarebook: Tarebook
) -> None:
    """All faults of the file at once, with lines, and nothing on standard output."""
    path = written(meat="venisn", marinade={"soy-sauce": "1 cpu", "hunney": "1 cup"})
    status, out, err = tarebook("scale", path)

    assert (1, "") == (status, out)
    assert 3 == len([line for line in err.splitlines() if ": error: " in line])
    assert all(line.startswith(f"{path}:") for line in err.splitlines())


def test_warnings_go_to_standard_error(written: Written, tarebook: Tarebook) -> None:
    """A recipe that prints may still have warnings; they do not mix with what is piped on."""
    path = written(soak="hours = 200")
    status, out, err = tarebook("scale", path, "--json")

    assert 0 == status
    assert isinstance(json.loads(out), dict)
    assert "Soaked far too long" in tarebook("scale", path).out or "200 hours" in err


def test_nothing_poured_away_keeps_all_of_the_marinade(tarebook: Tarebook) -> None:
    """More sodium than when the rest is poured off, and a narrower range."""
    poured, kept = (
        json.loads(tarebook("scale", "juniper-venison", *more, "--json").out)["estimate"]
        for more in ([], ["--nothing-poured-away"])
    )
    one, all_of_it = (each["per_ounce"]["sodium_mg"] for each in (poured, kept))

    assert all_of_it["low"] > one["high"]
    assert all_of_it["high"] / all_of_it["low"] < one["high"] / one["low"]


def test_err_a_leftover_that_was_not_poured_away(tarebook: Tarebook) -> None:
    """Both cannot be true: exit status 2."""
    done = tarebook("scale", "juniper-venison", "--nothing-poured-away", "--leftover", "100 g")

    assert (2, "") == (done.status, done.out)
    assert "contradicts --nothing-poured-away" in done.err


def kitchen(home: Path, text: str) -> None:
    """Write a kitchen's file."""
    home.mkdir(parents=True, exist_ok=True)
    (home / "kitchen.toml").write_text(text, encoding="utf-8")


def test_the_kitchens_own_spoons_are_taken(tarebook: Tarebook, own_home: Path) -> None:
    """Unless another set is asked for."""
    kitchen(own_home, '[measuring]\nset = "metric"\n')
    own = json.loads(tarebook("scale", "juniper-venison", "--json").out)["drawer"]
    said = json.loads(tarebook("scale", "juniper-venison", "--drawer", "full", "--json").out)

    assert ("metric", "full") == (own, said["drawer"])


def test_a_dryer_of_the_house_that_will_not_do_is_told(tarebook: Tarebook, own_home: Path) -> None:
    """Whatever the recipe says of its temperature."""
    kitchen(own_home, '[dryer]\nadjustable = "no"\n')

    assert "This dryer cannot be set." in " ".join(tarebook("scale", "juniper-venison").out.split())


def test_err_a_faulty_kitchen_stops_no_recipe(tarebook: Tarebook, own_home: Path) -> None:
    """Its fault is told with file and line, and the sheet is printed."""
    kitchen(own_home, '[dryer]\nadjustible = "no"\n')
    status, out, err = tarebook("scale", "juniper-venison")

    assert 0 == status and out.startswith("Juniper venison strips")
    assert "kitchen.toml:2: error:" in err


def test_a_sheet_as_cells_or_in_a_file(tarebook: Tarebook, tmp_path: Path) -> None:
    """CSV down a pipe, and the page itself in a file."""
    cells = tarebook("scale", "juniper-venison", "--as", "csv")
    file = tmp_path / "sheet.txt"
    page = tarebook("scale", "juniper-venison", "-o", str(file))

    assert cells.out.startswith("row,part,name")
    assert (0, "") == (page.status, page.out)
    assert file.read_text("utf-8").startswith("Juniper venison strips")


def test_the_houses_own_figure_for_a_day(tarebook: Tarebook) -> None:
    """Set once in the kitchen, scale, card and batch hold an ounce against it; unset, none does."""
    tarebook("batch", "start", "juniper-venison", "--meat", "6lb")
    calls = (["scale", "juniper-venison"], ["card", "juniper-venison"], ["batch", "show"])
    for call in calls:
        assert "a day, an ounce" not in " ".join(tarebook(*call).out.split())
    assert 0 == tarebook("kitchen", "set", "house.sodium-a-day", "1500 mg").status
    for call in calls:
        done = tarebook(*call)
        said = " ".join(done.out.split())
        assert (0, "") == (done.status, done.err)
        assert "Of the house's 1,500 mg of sodium a day, an ounce of 28.35 g is " in said
        assert "whole ounces stay within it." in said and "not medical advice" in said
        limits = json.loads(tarebook(*call, "--json").out)["house_limits"]
        assert 1500 == limits["sodium_mg"]["a_day"]
        assert 2 <= limits["sodium_mg"]["ounces_within"] <= 6


def test_another_heat_step_has_its_own_figures(tarebook: Tarebook) -> None:
    """What is boiled down keeps all of the marinade: figures follow --heat, and it is said."""
    told = json.loads(tarebook("scale", "juniper-venison", "--json").out)
    other = json.loads(tarebook("scale", "juniper-venison", "--heat", "boil-down", "--json").out)
    card = tarebook("card", "juniper-venison", "--heat", "boil-down").out

    def likely(data: dict[str, Any]) -> float:
        return float(data["estimate"]["per_ounce"]["sodium_mg"]["likely"])

    assert likely(other) > 1.2 * likely(told)
    assert "Heat: marinade boiled down onto the meat, to 160 °F" in card
    assert "Heat step asked for: marinade boiled down" in " ".join(card.split())


def test_a_heat_step_that_may_not_be_had(tarebook: Tarebook) -> None:
    """Refused as in the plan, with what there is instead."""
    status, out, err = tarebook("labels", "orchard-turkey", "--heat", "oven-after", "-o", "-")

    assert (2, "") == (status, out)
    assert "not for poultry" in err and "simmer, steam, boil-down" in err


def test_a_scale_too_coarse_for_the_curing_salt(tarebook: Tarebook, own_home: Path) -> None:
    """What the scale in the house cannot weigh is said with the ppm of one step."""
    args = ["scale", "cranberry-moose", "--meat", "3lb"]
    assert "Scale too coarse" not in tarebook(*args).out
    own_home.mkdir(exist_ok=True)
    (own_home / "kitchen.toml").write_text('[scale]\nstep = "5 g"\n', encoding="utf-8")

    assert "a scale that shows 5 g cannot weigh" in " ".join(tarebook(*args).out.split()).lower()


def test_short_is_for_wet_hands(tarebook: Tarebook) -> None:
    """Half the page, with the note for next time; compare has it too."""
    whole, short = (tarebook("scale", "juniper-venison", *more) for more in ([], ["--short"]))
    beside = tarebook("compare", "juniper-venison", "orchard-turkey", "--short")

    assert len(short.out.splitlines()) < 0.6 * len(whole.out.splitlines())
    for done in (short, beside):
        assert (0, "") == (done.status, done.err)
        assert "The other cautions: the same command without --short." in done.out
