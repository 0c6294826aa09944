"""A whole batch added up a second time, line by line, as one would with pencil and paper.

Only the soak itself and a gram's makeup are taken from the package, each with tests of its own.
"""

from __future__ import annotations

from collections.abc import Callable
from math import exp

import pytest

from tarebook.figures.foods import food
from tarebook.figures.working import value
from tarebook.nutrition import Facts, assumptions
from tarebook.nutrition.draws import column
from tarebook.nutrition.facts import Line
from tarebook.nutrition.model import FIGURES, batch
from tarebook.recipe.model import HeatStep, Part, Surface
from tarebook.uptake import PLAIN
from tarebook.uptake.soak import (
    Bath,
    Kept,
    Lost,
    Soaked,
    Strip,
    heated_in_marinade,
    heated_with_drip_lost,
    rubbed,
    soak,
)

FactsOf = Callable[..., Facts]
X = dict[str, float]

DISSOLVE = {"sauce", "acid", "liquid", "sweetener", "salt", "dairy"}
SWEET = {
    "soy-sauce": "120 g", "honey": "40 g", "brown-sugar": "30 g", "oil-olive": "12 g",
    "black-pepper": "4 g", "garlic": "9 g", "cider-vinegar": "25 g",
}  # fmt: skip
EVERYTHING = {
    "marinade": SWEET,
    "rub": {"smoked-paprika": "6 g", "salt-table": "3 g", "brown-sugar": "5 g"},
    "mixed_in": {"worcestershire": "10 g"},
}


def settings(facts: Facts) -> list[X]:
    """Return three settings of all inputs, each far from the middle in its own way."""
    drawn = {name: column(name, one.distribution, 48) for name, one in assumptions(facts).items()}
    return [{name: values[place] for name, values in drawn.items()} for place in (3, 17, 40)]


def grams(line: Line, x: X) -> float:
    """Return what is in the bowl of a line: weighed, and as far off as the setting says."""
    return line.mass_g * x["measure"] * x[f"mass:{line.name}"]


def sodium_off(line: Line, x: X) -> float:
    """Return how far off the figure of a line's sodium is."""
    return x[f"sodium:{line.figures_of}"] if line.makeup.sodium_mg else 1.0


def sweet_grams(line: Line, x: X) -> float:
    """Return the grams that a line's sugars go by: as far off as its panel, or nobody, says."""
    off = line.makeup.sugars_off
    return grams(line, x) * (1.0 if off is None else x[f"sugars:{line.figures_of}"])


def no_sugar(line: Line, x: X) -> float:
    """Return what was taken for sugars and is other carbohydrate, where nobody states them."""
    if not line.makeup.sugars_bounded:
        return 0.0
    sugars = line.makeup.sucrose + line.makeup.hexose
    return (grams(line, x) - sweet_grams(line, x)) * sugars


def bath_of(lines: list[Line], x: X) -> Bath:
    """Return the dissolved part of a marinade."""
    water = sum(grams(one, x) * one.makeup.water for one in lines)
    salt = sum(grams(one, x) * one.makeup.salt * sodium_off(one, x) for one in lines)
    sucrose = sum(sweet_grams(one, x) * one.makeup.sucrose for one in lines)
    hexose = sum(sweet_grams(one, x) * one.makeup.hexose for one in lines)
    other = sum(grams(one, x) * one.makeup.other for one in lines)
    other += sum(no_sugar(one, x) for one in lines if food(one.food).kind in DISSOLVE)
    return Bath(water, salt, sucrose, hexose, other)


def between(at: float, low: float, high: float) -> float:
    """Return how far a value has come from low to high, none and all at the most."""
    return min(max((at - low) / (high - low), 0.0), 1.0)


def gain_of(bath: Bath, x: X) -> float:
    """Return the water gained: a weak brine's from 2 % salt (in full) to 8 %, none from 12 %."""
    whole = bath.water_g + bath.salt_g + bath.sucrose_g + bath.hexose_g + bath.other_g
    salt, sugar = bath.salt_g / whole, (bath.sucrose_g + bath.hexose_g) / whole
    strong = max(between(salt, 0.08, 0.12), between(sugar, 0.05, 0.10))
    weak = min(salt / 0.02, 1.0) * (1 - strong)
    return weak * x["gain-weak"] + (1 - weak) * x["gain"]


def strip_of(facts: Facts, bath: Bath, water: float, x: X) -> Strip:
    """Return the meat as it meets the bath, by the formulae of the guide."""
    mm = x["thickness"] * x["thickness-factor"]
    seconds, half_m = x["hours"] * 3600, mm / 2000
    warmth = 1.0
    if facts.soak_c is not None:
        kelvin = x["soak-temperature"] + 273.15
        warmth = exp(22.4 / 8.314462618e-3 * (1 / 278.15 - 1 / kelvin))
    # A strip 30 mm wide: two faces and two edges, against one of a quarter inch.
    area = (2 / mm + 2 / 30) / (2 / 6.35 + 2 / 30)
    return Strip(
        mass_g=facts.meat_mass_g,
        water_g=water,
        salt_reach=x["salt-reach"],
        other_reach=x["other-reach"],
        salt_tau=x["salt-diffusivity"] * warmth * seconds / half_m**2,
        sucrose_tau=x["sucrose-diffusivity"] * warmth * seconds / half_m**2,
        hexose_tau=x["hexose-diffusivity"] * warmth * seconds / half_m**2,
        free_share=x["free-share"],
        gain_g=gain_of(bath, x) * facts.meat_mass_g,
        film_g=x["film"] * area * facts.meat_mass_g,
        other_uptake=x["other-uptake"],
    )


def shares(facts: Facts, part: Part, meat: Soaked, x: X) -> tuple[Kept, float, float]:
    """Return what of a part ends on the tray: of its solutes, of its pulp, of its oil."""
    whole = Kept(1.0, 1.0, 1.0, 1.0)
    soaked = any(one.part is Part.MARINADE for one in facts.lines)
    if part is Part.MARINADE and facts.poured_away and facts.heat is not HeatStep.BOILED_DOWN:
        kept = Kept(*(min(one * x["model"], 1.0) for one in meat.kept))
        return kept, x["suspended-kept"], min(meat.film_share * x["oil-factor"], 1.0)
    if soaked:
        return whole, 1.0, 1.0
    return Kept(*(max(1 - (1 - one) / x["model"], 0.0) for one in meat.kept)), 1.0, 1.0


def by_hand(facts: Facts, x: X) -> dict[str, float]:
    """Return the figures of the finished batch, what it weighs, and its solids."""
    mass, own = facts.meat_mass_g, {k: (v or 0.0) / 100 for k, v in facts.meat.items()}
    wet = 1 - (1 - own["water_g"]) * x["raw-solids"]
    marinade = [one for one in facts.lines if one.part is Part.MARINADE]
    bath = bath_of(marinade, x)
    if marinade:
        strip = strip_of(facts, bath, wet * mass, x)
        raw = soak(bath, strip, PLAIN)
    else:
        strip = Strip(mass, wet * mass, x["salt-reach"], x["other-reach"], 0, 0, 0, 1, 0, 0, 1)
        runs_off = facts.poured_away and any(one.part is Part.RUB for one in facts.lines)
        raw = rubbed(strip, x["purge"] * mass if runs_off else 0.0, PLAIN)
    meat = raw
    if facts.heat is HeatStep.STEAMED or (facts.heat is HeatStep.SIMMERED and not marinade):
        meat = heated_with_drip_lost(raw, x["juice"] * mass, PLAIN)
    elif facts.heat is HeatStep.SIMMERED:
        lost = Lost(x["juice"] * mass, x["boiled-off"] * bath.water_g)
        meat = heated_in_marinade(bath, strip, lost, PLAIN)

    stays = 1 - x["drip"]
    nothing_lost = facts.heat is HeatStep.BOILED_DOWN or (marinade and not facts.poured_away)
    own_kept = 1.0 if nothing_lost else meat.own_kept
    total = dict.fromkeys((*FIGURES, "starch_g"), 0.0)
    for name in ("fiber_g", "cholesterol_mg", "calcium_mg", "iron_mg", "vitamin_d_ug", "sugars_g"):
        total[name] = own[name] * mass
    total["sodium_mg"] = own["sodium_mg"] * mass * x["own-sodium"] * own_kept
    total["potassium_mg"] = own["potassium_mg"] * mass * own_kept
    total["protein_g"] = own["protein_g"] * mass * x["raw-protein"]
    total["starch_g"] = max(own["carbohydrate_g"] - own["sugars_g"], 0.0) * mass
    for name in ("fat_g", "saturated_g"):
        total[name] = own[name] * mass * (1 - x["fat-drip"])

    taken = 0.0
    for line in facts.lines:
        kept, pulp, oil = shares(facts, line.part, meat, x)
        made, here = line.makeup, grams(line, x)
        total["sodium_mg"] += here * made.sodium_mg * sodium_off(line, x) * kept.salt * stays
        sugars = kept.sucrose * made.sucrose + kept.hexose * made.hexose
        sugars *= sweet_grams(line, x)
        total["sugars_g"] += sugars * stays
        total["added_sugars_g"] += sugars * made.added * stays
        salt = made.salt * sodium_off(line, x) * kept.salt
        taken += here * (salt + kept.other * made.other + pulp * made.suspended + oil * made.oil)
        dissolved = food(line.food).kind in DISSOLVE
        taken += sugars + no_sugar(line, x) * (kept.other if dissolved else pulp)
        with_rest = kept.other * stays if dissolved else pulp
        total["starch_g"] += no_sugar(line, x) * with_rest
        for name, each in made.figures.items():
            share = {
                "fat_g": oil,
                "saturated_g": oil,
                "fiber_g": pulp,
                "potassium_mg": kept.salt * stays,
            }.get(name, with_rest)
            total[name] += here * each * share
    total["carbohydrate_g"] = total["sugars_g"] + total.pop("starch_g")
    total["energy_kcal"] = 4 * total["protein_g"] + 4 * total["carbohydrate_g"] + 9 * total["fat_g"]

    leaked = x["solubles"] * mass * (1 - meat.own_solubles_kept) if marinade else 0.0
    solids = mass * (1 - wet) - leaked - own["fat_g"] * mass * x["fat-drip"] + taken * stays
    return {
        **total,
        "solids": solids,
        "finished": solids + x["finish"] * total["protein_g"],
        **_bowls(facts, marinade, raw, x),
    }


def _bowls(facts: Facts, marinade: list[Line], raw: Soaked, x: X) -> dict[str, float]:
    """Return the meat after its soak and the marinade left, each as a scale would read it."""
    pulp = sum(grams(one, x) * one.makeup.suspended for one in marinade)
    pulp += sum(no_sugar(one, x) for one in marinade if food(one.food).kind not in DISSOLVE)
    oil = sum(grams(one, x) * one.makeup.oil for one in marinade)
    leaked = 0.0
    if marinade:
        leaked = x["solubles"] * facts.meat_mass_g * (1 - raw.own_solubles_kept)
    oil_on = min(raw.film_share * x.get("oil-factor", 0.0), 1.0) * oil
    clings = x.get("suspended-kept", 0.0) * pulp + oil_on
    return {
        "soaked": raw.meat_g + clings - leaked,
        "leftover": raw.leftover_g + pulp + oil - clings + leaked,
        "put in": sum(
            grams(one, x) * one.makeup.sodium_mg * sodium_off(one, x) for one in facts.lines
        ),
    }


CASES: dict[str, dict[str, object]] = {
    "sweet": {"marinade": SWEET},
    "everything": EVERYTHING,
    "brine": {"marinade": {"water": "500 g", "salt-table": "20 g", "honey": "6 g"}},
    "half a brine": {"marinade": {"water": "500 g", "salt-table": "55 g", "honey": "6 g"}},
    "hardly a brine": {"marinade": {"water": "500 g", "salt-table": "4 g"}},
    "syrup": {"marinade": {"water": "200 g", "honey": "20 g", "salt-table": "8 g"}},
    "milk": {"marinade": {"buttermilk": "200 g", "salt-table": "12 g"}},
    "rub": {"marinade": {}, "rub": {"salt-table": "20 g", "brown-sugar": "30 g"}},
    "rub and mix": {**EVERYTHING, "marinade": {}},
    "mix": {"marinade": {}, "mixed_in": {"soy-sauce": "40 g", "honey": "10 g"}, "form": "ground"},
    "sugars unstated": {
        "marinade": {
            "soy-sauce": "100 g",
            "oyster-sauce": "60 g",
            "plum-sauce": "40 g",
            "allspice": "8 g",
            "mirin": "30 g",
        },
        "rub": {"white-pepper": "9 g"},
    },
    "rub unstated": {
        "marinade": {},
        "rub": {"allspice": "12 g", "salt-table": "15 g", "oyster-sauce": "5 g"},
    },
    "bottle": {
        "marinade": {
            "bottle": '{ food = "soy-sauce", amount = "120 g", panel = '
            '{ serving = "1 Tbsp (17 g)", sodium = "575 mg", sugars = "2 g" } }',
            "water": "40 g",
        },
    },
    "fish": {"meat": "salmon-atlantic-farmed", "marinade": SWEET},
    "cold": {"marinade": SWEET, "soak": 'hours = 12\ntemperature = "34-40 F"'},
    "kept": {"marinade": SWEET, "soak": "hours = 6\npoured-away = false"},
    "kept rub": {
        "marinade": {},
        "rub": {"salt-table": "20 g"},
        "soak": "hours = 6\npoured-away = false",
    },
}
HEATS = [
    HeatStep.OVEN_AFTER, HeatStep.STEAMED, HeatStep.SIMMERED, HeatStep.BOILED_DOWN
]  # fmt: skip


@pytest.mark.parametrize("heat", HEATS)
@pytest.mark.parametrize("name", CASES)
def test_a_batch_adds_up_by_hand(known: FactsOf, name: str, heat: HeatStep) -> None:
    """Every figure of the label, the weights and the solids are met at three settings far apart."""
    facts = known(**CASES[name])._replace(heat=heat)
    for x in settings(facts):
        expected = by_hand(facts, x)
        done = batch(facts, x, PLAIN)

        found = {**done.figures, "solids": done.solids_g, "finished": done.finished_g}
        found |= {"soaked": done.soaked_g, "leftover": done.leftover_g}
        found |= {"put in": done.sodium_put_in_mg}
        assert expected.keys() == found.keys()
        for figure, amount in expected.items():
            assert amount == pytest.approx(found[figure], rel=1e-9, abs=1e-9), figure
        assert done.protein_g == done.figures["protein_g"]


@pytest.mark.parametrize(
    "name", ["sweet", "everything", "brine", "fish", "kept", "sugars unstated"]
)
@pytest.mark.parametrize("heat", HEATS)
def test_nothing_weighs_less_or_more_than_was_there(
    known: FactsOf, name: str, heat: HeatStep
) -> None:
    """Meat and marinade weigh after the soak what they weighed before, at any setting."""
    facts = known(**CASES[name])._replace(heat=heat)
    for x in settings(facts):
        done = batch(facts, x, PLAIN)
        made = sum(
            grams(one, x) * (one.makeup.water + one.makeup.salt * sodium_off(one, x))
            + grams(one, x) * (one.makeup.sucrose + one.makeup.hexose + one.makeup.other)
            + grams(one, x) * (one.makeup.suspended + one.makeup.oil)
            for one in facts.lines
            if one.part is Part.MARINADE
        )
        assert facts.meat_mass_g + made == pytest.approx(done.soaked_g + done.leftover_g)


def test_the_working_values_by_hand_are_those_of_the_table() -> None:
    """The figures written out above stand in the table, so that a change there is seen here."""
    assert 22.4 == value("diffusivity-activation").likely
    assert 30 == value("strip-width-mm").likely
    assert (0.08, 0.12) == (value("strong-brine-salt").low, value("strong-brine-salt").high)
    assert (0.05, 0.10) == (value("strong-brine-sugar").low, value("strong-brine-sugar").high)
    assert 0.02 == value("weak-brine-salt").low


@pytest.mark.parametrize(
    ("case", "step"),
    [
        (0.0, HeatStep.SIMMERED), (0.399, HeatStep.SIMMERED),
        (0.401, HeatStep.STEAMED), (0.599, HeatStep.STEAMED),
        (0.601, HeatStep.OVEN_AFTER), (0.999, HeatStep.OVEN_AFTER),
    ],
)  # fmt: skip
def test_unstated_heat_parts_its_draws(known: FactsOf, case: float, step: HeatStep) -> None:
    """Four draws in ten are simmered, two steamed, four heated in the oven after drying."""
    facts = known(marinade=SWEET)._replace(heat=HeatStep.UNSTATED)
    x = {**settings(facts)[0], "heat-case": case}

    expected = by_hand(facts._replace(heat=step), x)
    assert expected["sodium_mg"] == pytest.approx(batch(facts, x, PLAIN).figures["sodium_mg"])
    assert expected["soaked"] == pytest.approx(batch(facts, x, PLAIN).soaked_g)


def test_surfaces_of_every_kind_have_their_film(known: FactsOf) -> None:
    """A batch lifted out, drained or patted adds up with its own film."""
    for surface in Surface:
        facts = known(marinade=SWEET)._replace(surface=surface, heat=HeatStep.OVEN_AFTER)
        x = settings(facts)[1]
        assert by_hand(facts, x)["soaked"] == pytest.approx(batch(facts, x, PLAIN).soaked_g)


def test_starch_of_the_meat_is_carbohydrate_without_its_sugars(known: FactsOf) -> None:
    """A meat of 5 g of carbohydrate, 2 of them sugars, adds up like any other."""
    bare = known(marinade=SWEET)
    facts = bare._replace(
        heat=HeatStep.STEAMED,
        meat={**bare.meat, "carbohydrate_g": 5.0, "sugars_g": 2.0, "fiber_g": 0.5},
    )
    for x in settings(facts):
        expected, done = by_hand(facts, x), batch(facts, x, PLAIN)
        for figure in ("carbohydrate_g", "sugars_g", "fiber_g", "energy_kcal"):
            assert expected[figure] == pytest.approx(done.figures[figure])
        assert expected["carbohydrate_g"] - expected["sugars_g"] >= 30
