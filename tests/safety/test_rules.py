"""All rules together: what check and cautions return, in what order, in what words."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from itertools import product

import pytest

from tarebook.findings import Finding, Severity
from tarebook.recipe.model import Finish, FinishBy, HeatStep, MeatForm, Recipe, ScaleBy, Soak
from tarebook.safety import RULES, TO_KNOW, Case, cautions, check
from tarebook.safety.caution import TITLES
from tarebook.safety.rulebook import rule

Batch = Callable[..., Recipe]
Cases = Callable[..., Case]


def test_a_good_recipe_has_no_findings(batch: Batch) -> None:
    """Every rule accepts the good batch."""
    assert check(batch()) == ()


def test_findings_have_places_in_file_order(batch: Batch) -> None:
    """Findings come in file order, each at its key's line or at that of its table."""
    recipe = batch(
        heat=HeatStep.UNSTATED,
        hours=36,
        thickness_mm=9.0,
        temperature_f=130,
        lines={"meat": 3, "meat.thickness": 5, "soak": 9, "soak.hours": 10, "drying": 12},
    )

    found = check(recipe)

    assert [(one.place.line, one.place.path, one.code) for one in found] == [
        (None, "heat.step", "heat-missing"),
        (5, "meat.thickness", "thickness-over"),
        (10, "soak.hours", "soak-over"),
        (12, "drying.temperature", "dryer-cool"),
    ]
    assert str(found[2]) == (
        "strips.toml:10: warning: 36 hours in the marinade is over the cautious 24; the 5 "
        "days of USDA are for roasts of raised meat, not for this (soak.hours); "
        "soak 24 hours at most, and freeze meat that must wait"
    )


def test_only_curing_salt_is_an_error(batch: Batch) -> None:
    """Dangers are warnings; what may not be printed at all is an error."""
    worst = batch("bear", heat=HeatStep.OVEN_AFTER, hours=200, thickness_mm=12, temperature_f=95)
    over = batch(rub={"curing-salt-1": "3 g"})

    assert {one.severity for one in check(worst)} == {Severity.WARNING}
    assert [one.severity for one in check(over)] == [Severity.ERROR]


ALWAYS = {
    "heat",
    "dryer",
    "used-marinade",
    "cold-soak",
    "cure-is-no-heat",
    "storage",
    "allergens",
    "estimate",
    "home-card",
    "higher-risk",
    "raw-splash",
}


@pytest.mark.parametrize("key", ["deer", "bison", "turkey-breast", "pork-loin", "bear"])
def test_what_every_card_of_meat_says(case: Cases, key: str) -> None:
    """A well-made batch of any meat still gets every caution that is always shown."""
    assert {one.code for one in cautions(case(key))} >= ALWAYS


def test_what_a_card_of_mushrooms_says(case: Cases) -> None:
    """Mushrooms get what is about them, and no rule for meat."""
    codes = {one.code for one in cautions(case("mushroom-shiitake"))}

    assert codes == {
        "mushroom-poison",
        "no-rule",
        "cold-soak",
        "used-marinade",
        "storage-cold",
        "allergens",
        "estimate",
        "home-card",
        "higher-risk",
    }


def test_cautions_come_most_grave_first(case: Cases) -> None:
    """Errors before warnings before notes, and each by the order of the titles."""
    found = cautions(case("bear", heat=HeatStep.UNSTATED, rub={"curing-salt-1": "3 g"}, factor="2"))
    severities = [list(Severity).index(one.severity) for one in found]

    assert [one.code for one in found[:3]] == ["cure-refused", "heat-missing", "bear-and-wild-pork"]
    assert severities == sorted(severities)
    order = list(TITLES)
    for severity in Severity:
        codes = [order.index(one.code) for one in found if one.severity is severity]
        assert codes == sorted(codes)


def test_a_caution_reads_as_sentences(case: Cases) -> None:
    """Title, what is so, what to do, and who says so."""
    (found,) = [one for one in cautions(case()) if one.code == "deer-testing"]

    assert found.title == "Deer and kin: chronic wasting disease"
    assert found.text == (
        "Neither cooking nor drying removes the prions of chronic wasting disease. Follow state "
        "advice on testing, and eat no animal that tested positive or looked sick."
    )
    assert found.cites == "cwd; prions-heat"
    assert found.citation == (
        "CDC, Chronic Wasting Disease, 2024; several bodies, pages on prion disease of deer"
    )


def test_potassium_stands_near_the_top(case: Cases) -> None:
    """What can stop a heart is not lost among notes on storage."""
    found = [one.code for one in cautions(case(rub={"potassium-chloride": "1 tsp"}))]

    assert found[0] == "potassium"


def test_a_rub_is_kept_cold_too(case: Cases) -> None:
    """A card with a rub alone says how cold it rests and what becomes of the liquid."""
    found = {one.code: one for one in cautions(case(marinade={}, rub={"salt-table": "10 g"}))}

    assert found["cold-hold"].text == (
        "Thaw and hold the meat in the refrigerator at 40 °F (4 °C) or below, and rest it there "
        "while the rub works; raw, it lies there 3 days at most in all. Throw away "
        "liquid that runs off."
    )


def test_a_body_is_not_made_to_say_what_another_said(case: Cases) -> None:
    """A caution with the figures of two bodies cites both."""
    pork = {one.code: one.citation for one in cautions(case("pork-loin"))}
    bird = {one.code: one.citation for one in cautions(case("turkey-ground-93", hours=None))}
    fish = {one.code: one.citation for one in cautions(case("whitefish"))}
    cured = {one.code: one.citation for one in cautions(case(rub={"curing-salt-1": "2 g"}))}

    assert "USDA FSIS" in pork["heat"] and "Wisconsin" in pork["heat"]
    assert "Wisconsin" in pork["dryer"] and "from memory" in pork["dryer"]
    assert "Iowa" in pork["cold-soak"] and "; USDA," in pork["cold-soak"]
    assert "National Center" in pork["used-marinade"] and "; USDA," in pork["used-marinade"]
    assert "CDC" in pork["pork-freezing"]
    assert "Wyoming" in pork["storage"]
    assert "Wisconsin" in bird["ground"] and "FSIS" in bird["ground"]
    assert "Washington State" in fish["no-rule"]
    assert "common practice, no source" in cured["cure-handling"]


def every_finding(batch: Batch) -> list[Finding]:
    """Return the findings of many batches, so that every code comes up."""
    foods = (
        "deer", "turkey-breast-enhanced", "pork-loin", "bear", "deer-ground", "beef-ground-80",
        "whitefish", "mushroom-shiitake", "apple",
    )  # fmt: skip
    moist = Finish(by=FinishBy.MOISTURE, value=(0.4, 0.5, 0.6))
    good = [
        Case.of(batch(food, heat=heat), vacuum_packed=True, sodium_mg_per_oz=900.0)
        for food, heat in product(foods, HeatStep)
    ]
    odd = [
        Case.of(
            batch(
                food,
                form=form,
                thickness_mm=thickness_mm,
                hours=hours,
                temperature_f=120,
                finish=moist,
                heat=HeatStep.OVEN_AFTER,
                marinade={"beer": "1 cup", "salt-table": "1 cup", "potassium-chloride": "1 tsp"},
                rub={"salt": "1 tsp", "curing-salt": "9 g"},
                scale=ScaleBy.FIXED,
            )
        )
        for food, form, thickness_mm, hours in product(
            foods, MeatForm, (None, 12.0), (12.0, 30.0, 500.0)
        )
    ]
    scaled = [Case.of(batch(), factor=batch().meat.mass_g)]
    last = [
        Case.of(batch(marinade={}, rub={"salt-table": "10 g"}), yield_fraction=0.6),
        Case.of(batch(heat=HeatStep.OVEN_AFTER, drying_hours=(3.0, 6.0))),
        Case.of(batch(temperature_f=135)),
        Case.of(batch(rub={"curing-salt-1": "1 g"})),
        Case.of(batch(rub={"curing-salt-1": "1 g"}))._replace(scale_g=Fraction(1)),
        Case.of(batch()._replace(steps=("Thaw it on the counter.",))),
        Case.of(batch()._replace(steps=("Add a spoon of pink curing salt.",))),
        Case.of(batch(rub={"curing-salt-1": "1 g"})._replace(steps=("A pinch of curing salt.",))),
        Case.of(batch())._replace(dryer_top_f=140.0),
        Case.of(batch())._replace(dryer_settable=False),
        Case.of(batch()._replace(soak=Soak(used_before=True, temperature_f=(50.0, 60.0)))),
    ]
    return [
        one
        for case in (*good, *odd, *scaled, *last)
        for each in (*RULES, *TO_KNOW)
        for one in each(case)
    ]


def test_every_code_comes_up_and_has_a_title(batch: Batch) -> None:
    """The batches of these tests raise every code there is, and no title is left over."""
    codes = {one.code for one in every_finding(batch)}

    assert codes - set(TITLES) == set(), "give each a title in safety/caution.py, by its gravity"
    assert set(TITLES) - codes == set(), "add a batch that raises each to every_finding above"


def test_titles_are_short() -> None:
    """A title has at most eight words and no two codes of one card share it."""
    assert max(len(title.split()) for title in TITLES.values()) <= 8
    shared = {"storage", "storage-cold"}  # never on the same card
    alone = [title for code, title in TITLES.items() if code not in shared]
    assert len(alone) == len(set(alone))


def test_every_finding_is_well_formed(batch: Batch) -> None:
    """Clauses without capital or stop, two at most, short, each citing a rule that exists."""
    for one in every_finding(batch):
        assert all(rule(id).statement for id in one.cites.split("; "))
        clauses = [one.message, one.hint] if one.hint else [one.message]
        for clause in clauses:
            assert clause == clause.strip() and not clause.endswith(".")
            assert clause[0].islower() or clause[0].isdigit()
        if one.severity is not Severity.ERROR:
            assert all(len(clause.split()) <= 40 for clause in clauses)
            assert all(". " not in clause for clause in clauses)


def test_temperatures_always_come_in_both_scales(batch: Batch) -> None:
    """No caution names a temperature in one scale alone."""
    for one in every_finding(batch):
        text = f"{one.message} {one.hint}"
        assert text.count(" °F (") == text.count("°F") == text.count(" °C)") == text.count("°C")
