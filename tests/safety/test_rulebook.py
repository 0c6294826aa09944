"""The rules as data: complete, sourced, in both scales, and in our own words."""

from __future__ import annotations

import csv
import re
import tomllib

import pytest

from tarebook.figures.foods import food_keys
from tarebook.findings import AskedWrongly
from tarebook.safety.rulebook import (
    both_scales,
    citations,
    degrees,
    foods_of,
    limit,
    rule,
    rule_ids,
)
from tarebook.where import folder

REFERENCE = folder("reference")
STATUSES = {"S", "S2", "M", "D"}


def read(name: str) -> list[dict[str, str]]:
    """Return the rows of a table."""
    with (REFERENCE / name).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def source_ids(name: str) -> set[str]:
    """Return the ids of a file of sources."""
    text = (REFERENCE / name).read_text(encoding="utf-8")
    return {entry["id"] for entry in tomllib.loads(text)["source"]}


RULES = read("rules.csv")
FIGURES = read("rule-figures.csv")


def test_ids_are_unique() -> None:
    """No two rules share an id, so that a citation means one of them."""
    assert len(RULES) == len({row["id"] for row in RULES})
    assert rule_ids() == tuple(row["id"] for row in RULES)


@pytest.mark.parametrize("row", RULES, ids=lambda row: row["id"])
def test_every_rule_says_who_says_so(row: dict[str, str]) -> None:
    """Every rule has a topic, a body, a document, a year, a status and a statement."""
    blank = {name for name, cell in row.items() if not cell.strip()}

    assert blank <= {"section"}
    assert row["status"] in STATUSES
    assert row["statement"].endswith(".")


def test_every_source_is_described() -> None:
    """Every source id of a rule is described once, in one of the two files of sources."""
    ours, foods = source_ids("sources-safety.toml"), source_ids("sources.toml")

    assert ours & foods == set()
    assert {row["source"] for row in RULES} - ours <= foods
    assert {row["source"] for row in RULES} >= ours


def test_sources_have_every_field() -> None:
    """A source tells where it is, on what terms, and how it came here."""
    text = (REFERENCE / "sources-safety.toml").read_text(encoding="utf-8")
    fields = {"id", "title", "publisher", "year", "licence", "address", "obtained", "note"}

    for entry in tomllib.loads(text)["source"]:
        assert fields == set(entry)
        assert entry["title"] and entry["year"] and entry["licence"] and entry["obtained"]


def test_year_of_rule_and_source_agree() -> None:
    """A rule bears the year of its source, but for codes that have many editions."""
    text = (REFERENCE / "sources-safety.toml").read_text(encoding="utf-8")
    years = {entry["id"]: entry["year"] for entry in tomllib.loads(text)["source"]}

    odd = {
        row["id"]
        for row in RULES
        if row["source"] in years and row["year"] not in (years[row["source"]], "undated")
    }
    assert odd == set()


def test_figures_belong_to_rules() -> None:
    """Every figure belongs to a rule, every named food to the food table."""
    ids = {row["id"] for row in RULES}

    assert {row["rule"] for row in FIGURES} <= ids
    assert {row["food"] for row in read("rule-foods.csv")} <= set(food_keys())
    assert {row["rule"] for row in read("rule-foods.csv")} - ids == {"fish-freezing-exempt"}


@pytest.mark.parametrize("row", FIGURES, ids=lambda row: f"{row['rule']}-{row['quantity']}")
def test_every_figure_reads(row: dict[str, str]) -> None:
    """A figure has the ends its relation asks for, and reads as a limit."""
    ends = {"at least": (True, False), "equal": (True, False), "between": (True, True)}
    wanted = ends.get(row["relation"], (False, True))
    has_low, has_high = bool(row["low"]), bool(row["high"])

    assert wanted[1] == has_high
    assert has_low or not wanted[0]
    assert row["unit"]
    found = rule(row["rule"]).figures[row["quantity"]]
    assert found.limit == float(row["high"] if row["relation"] == "at most" else row["low"])


@pytest.mark.parametrize(
    "row", [r for r in FIGURES if r["unit"] == "degF"], ids=lambda r: f"{r['rule']}-{r['quantity']}"
)
def test_temperatures_stand_in_both_scales(row: dict[str, str]) -> None:
    """Every temperature is in both scales, and they agree to a tenth of a degree Celsius."""
    for end in ("low", "high"):
        assert bool(row[end]) == bool(row[f"{end}_c"])
        if row[end]:
            assert float(row[f"{end}_c"]) == pytest.approx((float(row[end]) - 32) / 1.8, abs=0.1)


def test_no_temperature_in_words_stands_alone() -> None:
    """In statements too, each temperature is followed by the same in the other scale."""
    pair = re.compile(r"deg([FC]) / -?[\d.]+(?: (?:to|and) -?[\d.]+)? deg([FC])")
    for row in RULES:
        found = pair.findall(row["statement"])
        assert row["statement"].count("degF") == row["statement"].count("degC") == len(found)
        assert all(first != second for first, second in found)


PUBLISHED = [  # rule, quantity, as printed, source id
    ("heat-before", "meat-inside", "160", "fsis-jerky-sheet"),
    ("heat-before", "poultry-inside", "165", "fsis-jerky-sheet"),
    ("dryer-after-heat", "dryer-air", "130", "fsis-jerky-sheet"),
    ("oven-after", "oven-air", "275", "uw-home-jerky"),
    ("oven-after", "oven-time", "10", "uw-home-jerky"),
    ("dryer-145", "dryer-air", "145", "uw-news-2010"),
    ("ground-meat", "lean", "93", "uw-home-jerky"),
    ("cold-store", "refrigerator", "40", "nchfp-handling"),
    ("soak-day", "soak", "24", "iowa-marinade"),
    ("soak-outer", "poultry-or-cubes", "2", "usda-marinade"),
    ("soak-outer", "red-meat", "5", "usda-marinade"),
    ("pork-freezing", "time", "30", "nchfp-handling"),
    ("fish-freezing", "freezer", "-4", "food-code-3-402"),
    ("storage-wyoming", "room", "14", "wyoming-jerky"),
    ("storage-minnesota", "freezer", "6", "umn-column"),
    ("nitrite-ground", "nitrite", "156", "cfr-9-424.21"),
    ("nitrite-dry", "nitrite", "625", "cfr-9-424.21"),
    ("home-cure-nitrate", "nitrate", "500", "cfr-21-172.170"),
    ("name-jerky", "moisture-to-protein", "0.75", "fsis-jerky-2004"),
]


@pytest.mark.published
@pytest.mark.parametrize(("id", "quantity", "printed", "source"), PUBLISHED)
def test_figures_as_printed(id: str, quantity: str, printed: str, source: str) -> None:
    """The figures that checks compare with are those their sources print."""
    assert float(printed) == limit(id, quantity)
    assert source == rule(id).source


def test_the_cautious_times_are_the_lowest_of_the_lists() -> None:
    """The keeping times shown are the lowest figure that any list gives for each place."""
    lists = [rule(id).figures for id in rule_ids() if id.startswith("storage-")]
    days = {"day": 1, "month": 30}

    for place, shown in rule("storage-cautious").figures.items():
        given = [one[place] for one in lists if place in one]
        ends = [(one.low if one.low is not None else one.high, one.unit) for one in given]
        assert shown.limit * days[shown.unit] == min(end * days[unit] for end, unit in ends)


def test_citation_names_body_document_and_year() -> None:
    """A citation fits on a line; a year is left out only where the document bears none."""
    assert rule("cwd").citation == "CDC, Chronic Wasting Disease, 2024"
    assert rule("heat-before").citation == "USDA FSIS, Jerky and Food Safety"
    assert rule("nitrate-dry").citation == "US regulation, 9 CFR 424.21(c), from memory"
    assert rule("potassium-chloride").citation == "from memory, no source held"
    assert rule("scaling").citation == "common practice, no source"


def test_several_rules_are_cited_together() -> None:
    """A sentence of two bodies names both, and a body that gives two rules in one paper once."""
    assert citations("soak-day; soak-outer") == (
        "Iowa State University Extension, page on marinating; USDA, consumer pages on marinating"
    )
    assert citations("soak-outer; marinade-boiled") == "USDA, consumer pages on marinating"
    assert citations("cwd") == rule("cwd").citation


def test_the_hotter_figure_is_for_what_it_was_printed_for() -> None:
    """CDC's figure, from a report on bear meat, is put upon bear and wild pork alone."""
    assert rule("game-165").applies_to == "bear, wild pork"


def test_degrees_in_words() -> None:
    """Temperatures in words always come in both scales."""
    assert degrees("heat-before", "meat-inside") == "160 °F (71 °C)"
    assert degrees("dryer-after-heat", "dryer-air") == "130 to 140 °F (54 to 60 °C)"
    assert degrees("fish-freezing", "freezer") == "-4 °F (-20 °C)"
    assert both_scales(145.4) == "145 °F (63 °C)"


def test_what_is_not_there_is_refused() -> None:
    """An unknown rule, figure or limit is the caller's mistake and says so."""
    with pytest.raises(AskedWrongly, match='no rule has the id "heat-never"'):
        rule("heat-never")
    with pytest.raises(AskedWrongly, match='has no figure "water"'):
        limit("heat-before", "water")


def test_foods_of_a_rule() -> None:
    """Foods named for a rule are looked up by its id; a rule without any has none."""
    assert "sake" in foods_of("alcohol")
    assert foods_of("heat-before") == frozenset()
