"""What each of several loads takes of the marinade, and its own weighed curing salt."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from tarebook.cards.plan_keys import plan_data
from tarebook.kitchen import Kitchen, Tray
from tarebook.plan.jobs import Job
from tarebook.plan.make import Plan
from tarebook.plan.mind import plan_cautions

PlanOf = Callable[..., Plan]
JobOf = Callable[..., Job]
CURED = {
    "soy-sauce": "3/4 cup",
    "curing-salt-1": '{ amount = "2.4 g", strength = "6.25 %" }',
}
FIVE_TRAYS = Kitchen(trays=5, tray=Tray(304.8, 304.8), dryer_f=(95.0, 165.0), adjustable=True)


@pytest.mark.parametrize("pounds", [6, 8, 11, "5.1", 20])
def test_no_load_takes_in_more_than_the_batch(pounds: float | str, job: JobOf) -> None:
    """Each load's own salt is in the proportion of its meat, never above that of the recipe."""
    found = job(pounds=pounds, marinade=CURED)
    whole_g = Fraction("2.4") * Fraction(found.meat_g) / 1000

    assert len(found.loads) == len(found.shares) > 1
    for load, share in zip(found.loads, found.shares, strict=True):
        (cure,) = share.cures
        exact = whole_g * Fraction(load.meat_g) / Fraction(found.meat_g)
        assert 0 <= exact - cure.mass_g < Fraction(1, 5)
        assert cure.mass_g * 10 == int(cure.mass_g * 10)
        assert float(cure.mass_g) * 0.0625 / load.meat_g * 1e6 == pytest.approx(share.nitrite_ppm)
        assert share.nitrite_ppm <= 150
    assert pytest.approx(1) == sum(share.part for share in found.shares)


def test_each_load_is_weighed_by_itself(plan: PlanOf) -> None:
    """No curing salt is in the bowl that is parted; each load's own stands where its meat goes."""
    found = plan(pounds=8, marinade=CURED, start="Friday 8:00")
    (mix,) = [one for one in found.steps if one.kind == "mix"]
    steeps = [one for one in found.steps if one.kind == "steep"]

    assert "no curing salt in it yet" in mix.note and "load 1 62 %, load 2 38 %" in mix.note
    assert "curing salt last" not in mix.note
    assert ["5.4 g of curing salt 1 for 5 lb (2,268 g)", "3.2 g of curing salt 1 for 3 lb"] == [
        word for word, one in zip(
            ("5.4 g of curing salt 1 for 5 lb (2,268 g)", "3.2 g of curing salt 1 for 3 lb"),
            steeps, strict=True,
        ) if word in one.note
    ]  # fmt: skip
    assert any("weighed for each" in one.text for one in found.conflicts)
    loads = plan_data(found, zone_name="here")["recipes"][0]["loads"]
    assert [5.4, 3.2] == [load["curing_salts"][0]["mass_g"] for load in loads]


def test_one_load_is_weighed_as_the_card_says(plan: PlanOf, job: JobOf) -> None:
    """Where all dries at once, or all is kneaded at once, the card's one dose stands."""
    (mix,) = [
        one for one in plan(pounds=4, marinade=CURED, start="Friday 8:00").steps
        if one.kind == "mix"
    ]  # fmt: skip

    assert "the curing salt last" in mix.note
    assert () == job(pounds=4, marinade=CURED).shares
    salt = {"curing-salt-1": CURED["curing-salt-1"]}
    assert () == job(pounds=8, form="ground", marinade={}, mixed_in=salt).shares
    assert "weighed for each" not in str(
        plan(pounds=4, marinade=CURED, start="Friday 8:00").conflicts
    )


def test_a_scale_is_held_against_the_smallest_load(plan: PlanOf) -> None:
    """A step that is little of the whole dose may be much of the last load's."""
    coarse = FIVE_TRAYS._replace(scale_g=Fraction(1, 2))

    def told(pounds: float | str) -> list[str]:
        found = plan(pounds=pounds, marinade=CURED, start="Friday 8:00", kitchen=coarse)
        return [
            one.caution.text
            for one in plan_cautions(found)
            if one.caution.code == "cure-scale-step"
        ]

    def left_out(pounds: float | str) -> str:
        found = plan(pounds=pounds, marinade=CURED, start="Friday 8:00", kitchen=coarse)
        return str([one.sentence for one in found.conflicts if "goes without" in one.text])

    assert not told("5") and not told("5.5")
    assert "[]" == left_out("10")
    assert "load 2 goes without: no curing salt 1 in this load: 0.54 g is" in left_out("5.5")


@pytest.mark.parametrize("scale_g", [None, Fraction(1, 10), Fraction(1, 2), Fraction(1)])
@pytest.mark.parametrize("pounds", ["4", "4.5", "5.1", "6", "7", "9", "10.2", "11"])
def test_what_a_scale_cannot_weigh_is_not_told_to_be_weighed(
    pounds: str, scale_g: Fraction | None, plan: PlanOf
) -> None:
    """At each load stands one answer: what is weighed, or that it is too little for the scale."""
    kitchen = FIVE_TRAYS._replace(scale_g=scale_g)
    salt = {**CURED, "curing-salt-1": '{ amount = "0.8 g", strength = "6.25 %" }'}
    found = plan(pounds=pounds, marinade=salt, start="Friday 8:00", kitchen=kitchen)
    (job,), step_g = found.jobs, scale_g or Fraction(1, 10)
    told = {one.load: one.note for one in found.steps if one.kind == "steep"}
    (mix,) = [one.note for one in found.steps if one.kind == "mix"]

    doses_g = [Fraction("0.8") * Fraction(load.meat_g) / 1000 for load in job.loads]
    enough = [step_g <= dose_g / 10 for dose_g in doses_g]
    for load, may in enumerate(enough, start=1):
        at_hand = told[load] if job.shares else mix
        assert may is ("first weigh" in at_hand or "the curing salt last" in at_hand)
        assert may is not ("too little to weigh on a scale that shows" in at_hand)
    assert any(enough) is not ("no curing salt in it: too little" in mix)
    minded = [one.caution.code for one in plan_cautions(found)]
    assert ("cure-scale-step" in minded) is not any(enough)


def test_each_load_cures_as_long_or_it_is_said(plan: PlanOf) -> None:
    """Loads lie in their marinade for the same hours; where one has to differ, it is told."""
    for more in ({"start": "Friday 8:00"}, {"ready": "Sunday 18:00", "nights": "22:00-06:00"}):
        found = plan(pounds=11, marinade=CURED, **more)
        soaks = {one.end - one.start for one in found.steps if one.kind == "soak"}
        told = [one.text for one in found.notes if "with its curing salt" in one.text]
        assert bool(told) == (len(soaks) > 1)
