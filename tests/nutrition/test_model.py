"""From bowl to scale: the worked example, the cases of heat, and small bowls."""

from __future__ import annotations

from collections.abc import Callable
from types import MappingProxyType

import pytest

from tarebook.nutrition import Facts, Line
from tarebook.nutrition.makeup import Makeup
from tarebook.nutrition.model import Batch, batch
from tarebook.nutrition.strip import film_area_factor, water_fraction
from tarebook.recipe.model import HeatStep, Part, Surface
from tarebook.uptake.maths import PLAIN

FactsOf = Callable[..., Facts]
Middle = Callable[..., dict[str, float]]

OUNCE_G = 28.349523125
MEAT_G, BOWL_G, SODIUM_MG = 1360.0, 400.0, 13_800.0
OWN_MG = 0.58 * MEAT_G  # 58 mg per 100 g of raw meat


def worked(own_sodium_mg: float = 58.0) -> Facts:
    """Return the worked example: 400 g of a made-up marinade on 1360 g of lean meat."""
    bowl = Makeup(
        water=258 / BOWL_G,
        salt=35.0815 / BOWL_G,
        sucrose=64 / BOWL_G,
        hexose=0.0,
        other=42.9185 / BOWL_G,
        suspended=0.0,
        oil=0.0,
        sodium_mg=SODIUM_MG / BOWL_G,
        added=1.0,
        figures=MappingProxyType({}),
        missing=frozenset(),
        sodium_cv=0.06,
        rough=False,
    )
    line = Line("bowl", "soy-sauce", BOWL_G, 0.03, bowl, Part.MARINADE)
    named = ("fat", "saturated", "carbohydrate", "sugars", "fiber")
    meat: dict[str, float | None] = {f"{name}_g": 0.0 for name in named}
    meat |= {"water_g": 73.0, "protein_g": 22.0, "sodium_mg": own_sodium_mg, "potassium_mg": 0.0}
    meat |= {"cholesterol_mg": 0.0, "calcium_mg": 0.0, "iron_mg": 0.0, "vitamin_d_ug": 0.0}
    return Facts(
        meat_mass_g=MEAT_G,
        meat=meat,
        meat_name="deer",
        moisture_food=False,
        lines=(line,),
        missing={},
        no_sodium_total=(),
        hours=(12.0, 12.0, 12.0),
        thickness_mm=(6.0, 6.0, 6.0),
        surface=Surface.PATTED,
        heat=HeatStep.OVEN_AFTER,
        poured_away=True,
        finish=None,
    )


@pytest.fixture
def settings(middle: Middle) -> Callable[..., dict[str, float]]:
    """Return the sheet's one setting of the inputs; sugar's pace and others may be changed."""

    def make(facts: Facts, sugar_pace: float = 0.646e-10, **changes: float) -> dict[str, float]:
        fixed = {
            "measure": 1.0,
            "raw_solids": 1.0,
            "raw_protein": 1.0,
            "own_sodium": 1.0,
            "salt_reach": 0.92,
            "other_reach": 0.82,
            "thickness_factor": 1.0,
            "salt_diffusivity": 1.9e-10,
            "sucrose_diffusivity": sugar_pace,
            "hexose_diffusivity": sugar_pace,
            "free_share": 1.0,
            "gain": 0.02,
            "film": 0.008 / film_area_factor(0.006),
            "other_uptake": 0.6,
            "solubles": 0.0,
            "drip": 0.01,
            "fat_drip": 0.0,
            "model": 1.0,
        }
        found = middle(facts, **{**fixed, **changes})
        return {**found, "mass:bowl": 1.0, "sodium:soy-sauce": 1.0}

    return make


Settings = Callable[..., dict[str, float]]


def test_worked_example_is_met(settings: Settings) -> None:
    """With the meat's own sodium set aside, the likely setting gives 531.6 mg an ounce."""
    facts = worked(own_sodium_mg=0.0)

    done = batch(facts, settings(facts, sugar_pace=0.62e-10), PLAIN)

    held = done.figures["sodium_mg"] + OWN_MG
    assert held / 632 * OUNCE_G == pytest.approx(531.60, rel=1e-3)
    assert done.figures["sugars_g"] / 632 * OUNCE_G == pytest.approx(2.1047, rel=1e-3)
    assert done.marinade_kept.salt == pytest.approx(0.80970, rel=1e-3)
    assert done.soaked_g == pytest.approx(1491.74, rel=1e-3)


def test_own_exchange_is_all_that_differs(settings: Settings) -> None:
    """The meat's own sodium exchanges too, and that alone takes 7.8 mg off the 531.6."""
    done = batch(worked(), settings(worked(), sugar_pace=0.62e-10), PLAIN)

    # kept = 1 - F alpha/(1 + alpha), with the sheet's F and alpha for salt
    own_kept = 1 - 0.998778 * 0.282469 / 1.282469
    expected = 531.60 - (1 - own_kept) * OWN_MG / 632 * OUNCE_G
    assert expected == pytest.approx(523.8, abs=0.05)
    assert done.figures["sodium_mg"] / 632 * OUNCE_G == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize(
    ("finish", "finished", "sodium", "sugar"),
    [
        (0.50, 608.060, 552.53, 2.1991),
        (0.58, 631.996, 531.61, 2.1158),
        (0.75, 682.860, 492.01, 1.9582),
    ],
)
def test_worked_example_dries_on(
    settings: Settings, finish: float, finished: float, sodium: float, sugar: float
) -> None:
    """Dried to three water over protein, weight, sodium and sugar are met within 0.1 %."""
    facts = worked(own_sodium_mg=0.0)
    hexose_kept = 1 - 0.935450 * 0.316916 / 1.316916
    leak = 0.01 * 0.27 / (1 - hexose_kept)  # 1 % of the solids, as the sheet has it

    done = batch(facts, settings(facts, finish=finish, solubles=leak), PLAIN)

    held = done.figures["sodium_mg"] + OWN_MG
    assert done.finished_g == pytest.approx(finished, rel=1e-3)
    assert held / done.finished_g * OUNCE_G == pytest.approx(sodium, rel=1e-3)
    assert done.figures["sugars_g"] / done.finished_g * OUNCE_G == pytest.approx(sugar, rel=1e-3)


@pytest.mark.parametrize(("juice", "about"), [(0.20, 430), (0.30, 352), (0.38, 290)])
def test_juice_lost_in_the_marinade_costs_sodium(
    settings: Settings, juice: float, about: float
) -> None:
    """Simmered and poured away: within 10 % of an independent "about", and falling with juice."""
    facts = worked()._replace(heat=HeatStep.SIMMERED)

    done = batch(facts, settings(facts, juice=juice, boiled_off=0.0), PLAIN)

    assert done.figures["sodium_mg"] / done.finished_g * OUNCE_G == pytest.approx(about, rel=0.10)


def heated(settings: Settings, heat: HeatStep) -> Batch:
    """Return the worked example with one heat step, a quarter of the meat lost as juice."""
    facts = worked()._replace(heat=heat)
    loss = {"juice": 0.25} if heat not in (HeatStep.OVEN_AFTER, HeatStep.BOILED_DOWN) else {}
    return batch(facts, settings(facts, **loss), PLAIN)


@pytest.mark.parametrize("heat", [HeatStep.STEAMED, HeatStep.SIMMERED])
@pytest.mark.parametrize("figure", ["sodium_mg", "sugars_g"])
def test_heat_before_drying_costs_no_less_than_after(
    settings: Settings, heat: HeatStep, figure: str
) -> None:
    """Meat heated after drying keeps at least what steamed or simmered meat keeps."""
    after = heated(settings, HeatStep.OVEN_AFTER).figures[figure]

    assert heated(settings, heat).figures[figure] < after


def test_steamed_meat_keeps_what_it_keeps_of_its_water(settings: Settings) -> None:
    """The drip takes its share: kept times one less juice over water with the gain."""
    water = (0.73 + 0.02) * MEAT_G
    expected = heated(settings, HeatStep.OVEN_AFTER).marinade_kept.salt * (
        1 - 0.25 * MEAT_G / water
    )

    assert heated(settings, HeatStep.STEAMED).marinade_kept.salt == pytest.approx(expected)


def test_boiled_down_keeps_all(settings: Settings) -> None:
    """A marinade boiled down onto the meat leaves all its sodium there, but for the drip."""
    done = heated(settings, HeatStep.BOILED_DOWN)

    assert set(done.marinade_kept) == {1.0}
    assert done.figures["sodium_mg"] == pytest.approx(0.99 * SODIUM_MG + OWN_MG)


def test_an_unstated_step_is_one_of_three(settings: Settings) -> None:
    """Where no heat is stated, each draw is simmered, steamed or heated after."""
    facts = worked()._replace(heat=HeatStep.UNSTATED)
    steps = (HeatStep.SIMMERED, HeatStep.STEAMED, HeatStep.OVEN_AFTER)

    for case, step in zip((0.1, 0.5, 0.9), steps, strict=True):
        found = batch(facts, settings(facts, heat_case=case, juice=0.25), PLAIN)
        expected = heated(settings, step)
        assert expected.figures["sodium_mg"] == pytest.approx(found.figures["sodium_mg"])


@pytest.mark.parametrize("bowl", [0.5, 5.0, 30.0])
def test_a_small_bowl_is_not_overdrawn(settings: Settings, bowl: float) -> None:
    """A spoonful on a kilo: no share above one, nothing left below nothing, no water made."""
    facts = worked()
    facts = facts._replace(lines=(facts.lines[0]._replace(mass_g=bowl),))

    done = batch(facts, settings(facts, gain=0.07, film=0.2, gain_weak=0.1, model=1.5), PLAIN)

    assert all(0 <= share <= 1 for share in done.marinade_kept)
    assert done.leftover_g >= -1e-9
    assert done.soaked_g <= MEAT_G + bowl + 1e-9
    assert done.figures["sodium_mg"] <= OWN_MG + done.sodium_put_in_mg


def test_the_film_is_no_more_than_the_liquid_left(settings: Settings) -> None:
    """However wet the surface, what clings comes out of the bowl: then nothing is left there."""
    done = batch(worked(), settings(worked(), film=5.0), PLAIN)

    assert done.marinade_kept.salt == pytest.approx(1.0)
    assert done.leftover_g == pytest.approx(0.0, abs=1e-6)
    assert done.soaked_g == pytest.approx(MEAT_G + BOWL_G)


def test_the_weak_brine_gains_more(settings: Settings) -> None:
    """At the gain of a weak brine, more water goes in than at that of a strong one."""
    facts = worked()
    weak = facts.lines[0].makeup._replace(
        water=0.95, salt=0.04, sucrose=0.0, other=0.01, sodium_mg=15.7
    )
    facts = facts._replace(lines=(facts.lines[0]._replace(makeup=weak),))
    x = settings(facts, gain=0.02, gain_weak=0.07)

    salty = batch(facts, {**x, "gain-weak": 0.02}, PLAIN)

    assert batch(facts, x, PLAIN).soaked_g > salty.soaked_g + 0.04 * MEAT_G


def test_a_spoon_that_is_off_is_off_in_every_figure(known: FactsOf, middle: Middle) -> None:
    """A tenth more of a sauce is a tenth more of its protein and potassium, as of its sodium."""
    facts = known(form="ground", marinade={}, mixed_in={"soy-sauce": "100 g"})
    bare = known(form="ground", marinade={}, mixed_in={"water": "100 g"})
    x = middle(facts)
    off = {**x, "mass:soy-sauce": 1.1 * x["mass:soy-sauce"]}
    own = batch(bare, middle(bare), PLAIN).figures

    once, more = (batch(facts, one, PLAIN).figures for one in (x, off))

    for figure in ("protein_g", "potassium_mg"):
        assert more[figure] - own[figure] == pytest.approx(1.1 * (once[figure] - own[figure]))


def test_a_rub_loses_only_what_runs_off(known: FactsOf, middle: Middle) -> None:
    """A rub with no purge keeps all its salt; with a purge it loses it at the meat's strength."""
    facts = known(marinade={}, rub={"salt-table": "20 g"})
    own = 510.0
    dry = batch(facts, middle(facts, purge=0.0, model=1.0, drip=0.0), PLAIN)
    wet = batch(facts, middle(facts, purge=0.03, model=1.0, drip=0.0, salt_reach=0.92), PLAIN)

    share = 1 - 30 / (0.92 * 1000 * water_fraction(facts, middle(facts)))
    assert dry.figures["sodium_mg"] == pytest.approx(7751.6 + own, rel=2e-3)
    assert wet.figures["sodium_mg"] == pytest.approx(share * dry.figures["sodium_mg"], rel=1e-3)


def test_what_is_mixed_in_stays(known: FactsOf, middle: Middle) -> None:
    """All salt mixed into ground meat is there in the end, less the drip of drying."""
    facts = known(form="ground", marinade={}, mixed_in={"salt-table": "20 g"})

    done = batch(facts, middle(facts, model=1.0, drip=0.01), PLAIN)

    assert done.figures["sodium_mg"] == pytest.approx(0.99 * 7751.6 + 510, rel=2e-3)


def test_pepper_and_oil_do_not_thin_the_brine(known: FactsOf, middle: Middle) -> None:
    """Oil and spice grains are outside the liquid: the share of salt kept hardly moves."""
    plain = known(marinade={"soy-sauce": "200 g"})
    rich = known(marinade={"soy-sauce": "200 g", "oil-olive": "100 g"})

    bare = batch(plain, middle(plain), PLAIN).marinade_kept.salt

    assert batch(rich, middle(rich), PLAIN).marinade_kept.salt == pytest.approx(bare, rel=1e-6)


def test_mushrooms_finish_by_moisture(known: FactsOf, middle: Middle) -> None:
    """A mushroom weighs its solids over one less its moisture."""
    facts = known(meat="mushroom-portabella", form="pieces")

    done = batch(facts, middle(facts, finish=0.10), PLAIN)

    assert done.finished_g == pytest.approx(done.solids_g / 0.9)
