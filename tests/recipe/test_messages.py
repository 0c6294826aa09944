"""The wording of every message of this room, word for word, in one place."""

from __future__ import annotations

from pathlib import Path

import pytest

from tarebook.recipe import read_recipe

BASE = """\
title = "Strips"
[meat]
food = "deer"
amount = "1 kg"
[rub]
salt-table = "1 tsp"
"""

# What is added to or put in place of a line of BASE, and the findings.
MESSAGES = [
    # --- the file
    ("", "", ['r:1: error: the file is empty; "tarebook new" starts a recipe']),
    # --- keys
    (
        'title = "Strips"',
        'titel = "Strips"',
        [
            'r:1: error: "titel" is no key of a recipe (titel); did you mean "title"?',
            'r:1: error: title is missing (title); as in title = "Juniper venison strips"',
        ],
    ),
    (
        'amount = "1 kg"',
        'weight = "1 kg"',
        [
            'r:2: error: amount is missing (meat.amount); as in amount = "2 1/2 lb"',
            'r:4: error: "weight" is no key of [meat] (meat.weight); did you mean "amount"?',
        ],
    ),
    (
        'amount = "1 kg"',
        'amount = "1 kg"\ncup = "us"',
        [
            'r:5: error: "cup" is no key of [meat] (meat.cup); '
            "it belongs at the top of the file, before [meat]"
        ],
    ),
    (
        'title = "Strips"',
        'title = "Strips"\nsalt = "1 tsp"\nsurface = "patted"',
        [
            'r:2: error: "salt" is no key of a recipe (salt); '
            "ingredients go under [marinade], [rub] or [mixed-in]",
            'r:3: error: "surface" is no key of a recipe (surface); it belongs in [soak]',
        ],
    ),
    (
        "[rub]",
        "[rubb]",
        [
            "r:1: warning: nothing is put on the meat: no [marinade], [rub] or [mixed-in]",
            'r:5: error: "rubb" is no key of a recipe (rubb); did you mean "rub"?',
        ],
    ),
    (
        '[meat]\nfood = "deer"\namount = "1 kg"',
        "",
        [
            "r:1: error: [meat] is missing (meat); "
            "it says what is dried and the weight that the amounts are for"
        ],
    ),
    (
        "[rub]",
        "[[rub]]",
        ["r:5: error: rub is a table, not a list (rub); begin it with [rub] on a line of its own"],
    ),
    # --- words
    (
        '"Strips"',
        "3",
        [
            "r:1: error: title takes one line of words, not a number (title); "
            'as in title = "Juniper venison strips"'
        ],
    ),
    ('"Strips"', '" "', ["r:1: error: title is empty (title)"]),
    (
        '"Strips"',
        '"a\\u001b[2J"',
        ["r:1: error: title holds the hidden character \\x1b (title); leave it out"],
    ),
    ('"Strips"', '"a\\nb"', ["r:1: error: title must be one line, without tabs (title)"]),
    (
        '"Strips"',
        f'"{"x" * 201}"',
        ["r:1: error: title has 201 letters, more than 200 (title)"],
    ),
    (
        'amount = "1 kg"',
        'amount = "1 kg"\nform = "strip"\nwild = "yes"',
        [
            'r:5: error: form cannot be "strip" (meat.form); did you mean "strips"?',
            "r:6: error: wild takes true or false, not words (meat.wild); as in wild = true",
        ],
    ),
    (
        "[rub]",
        '[soak]\nsurface = "wiped"\n[rub]',
        [
            'r:6: error: surface cannot be "wiped" (soak.surface); '
            'choose one of "lifted out", "drained", "patted"'
        ],
    ),
    # --- foods
    (
        '"deer"',
        '"dear"',
        ['r:3: error: no food is called "dear" (meat.food); did you mean "deer" or "bear"?'],
    ),
    (
        '"deer"',
        '"soy-sauce"',
        [
            "r:3: error: soy-sauce is no meat, fish or mushroom (meat.food); [meat] says what is "
            "dried; the rest goes under [marinade], [rub] or [mixed-in]"
        ],
    ),
    (
        "salt-table =",
        '"magic xyzzy dust" =',
        [
            'r:6: error: no food is called "magic xyzzy dust" (rub."magic xyzzy dust"); '
            "tarebook foods add magic-xyzzy-dust keeps a bottle of your own; or "
            'say what it is: { food = "...", amount = "..." }'
        ],
    ),
    # --- amounts
    (
        '"1 kg"',
        '"2 cups"',
        ['r:4: error: weight "2 cups" is no weight (meat.amount); write 6 lb, 2.7 kg or 2700 g'],
    ),
    (
        '"1 tsp"',
        "2",
        [
            "r:6: error: amount 2 has no unit (rub.salt-table); "
            'write it in quotes with its unit, as in "3/4 cup"'
        ],
    ),
    (
        '"1 tsp"',
        "true",
        ['r:6: error: true is no amount (rub.salt-table); write it in quotes, as in "3/4 cup"'],
    ),
    (
        '"1 tsp"',
        "nan",
        ['r:6: error: nan is no amount (rub.salt-table); write it in quotes, as in "3/4 cup"'],
    ),
    (
        '"1 tsp"',
        '"1 cpu"',
        ['r:6: error: amount "1 cpu" has no unit I know (rub.salt-table); did you mean "cup"?'],
    ),
    (
        '"1 tsp"',
        '{ food = "salt-table" }',
        ['r:6: error: amount is missing (rub.salt-table.amount); as in amount = "3/4 cup"'],
    ),
    (
        'salt-table = "1 tsp"',
        'water = "2 oz"\nhoney = "1 T"',
        [
            "r:6: note: oz read as weight (rub.water); for a volume write fl oz",
            "r:7: note: T read as tablespoon (rub.honey)",
        ],
    ),
    # --- panels
    (
        '"1 tsp"',
        '{ amount = "1 tsp", panel = { serving = "a spoon", sodium = 55 } }',
        [
            'r:6: error: serving "a spoon" has neither a measure nor a weight '
            '(rub.salt-table.panel.serving); copy it as printed, as in "1 Tbsp (17 g)"',
            "r:6: error: sodium 55 has no unit (rub.salt-table.panel.sodium); "
            'write it in quotes with its unit, as in sodium = "580 mg"',
        ],
    ),
    (
        '"1 tsp"',
        '{ amount = "1 tsp", panel = { serving = "5 g" } }',
        ['r:6: error: the panel has no figures (rub.salt-table.panel); as in sodium = "580 mg"'],
    ),
    (
        '"1 tsp"',
        '{ amount = "1 tsp", panel = { serving = "5 g", sodium = "5 oz", fat = "<1 g" } }',
        [
            'r:6: error: "5 oz" is not in mg (rub.salt-table.panel.sodium); write "5 mg"',
            'r:6: error: "<1 g" stands on no label (rub.salt-table.panel.fat); labels print "less '
            'than 1 g" of carbohydrate, fiber, sugars and protein, and "less than 5 mg" of '
            "cholesterol; else write the figure itself",
        ],
    ),
    # --- curing salts
    (
        'salt-table = "1 tsp"',
        'curing-salt-1 = "1 tsp"',
        [
            "r:6: error: 1 tsp of a curing salt: spoons of it differ too much "
            '(rub.curing-salt-1); weigh it, as in amount = "2.8 g"',
            "r:6: error: the strength of a curing salt is missing; packs differ twelvefold "
            '(rub.curing-salt-1); copy it from the pack: { amount = "2.8 g", '
            'strength = "6.25 %" }',
        ],
    ),
    (
        'salt-table = "1 tsp"',
        'curing-salt-1 = { amount = "2-3 g", strength = "0.5 %", scale = "whole" }',
        [
            "r:6: error: 2-3 g of a curing salt: it takes one weight, not a range "
            '(rub.curing-salt-1); as in amount = "2.8 g"',
            "r:6: error: curing-salt-1 holds 6.25 % sodium nitrite, not 0.5 % "
            "(rub.curing-salt-1.strength); for a cure of another strength write "
            'food = "curing-salt"',
            "r:6: error: a curing salt grows with the meat and in no other way "
            "(rub.curing-salt-1.scale); leave scale out",
        ],
    ),
    (
        'salt-table = "1 tsp"',
        'curing-salt-2 = { amount = "2 g", strength = "6.25 %" }',
        [
            "r:6: error: curing-salt-2 holds nitrate, which is for dry cures of many weeks "
            "(rub.curing-salt-2); for meat dried within days use a cure with nitrite alone, "
            "such as curing-salt-1"
        ],
    ),
    (
        'salt-table = "1 tsp"',
        'curing-salt = { amount = "2 g", strength = "62.5 %" }\n'
        'salt-table = { amount = "1 g", strength = "5-6 %" }\n'
        'honey = { amount = "1 g", strength = "5 %" }',
        [
            "r:6: error: 62.5 % sodium nitrite is no kitchen cure (rub.curing-salt.strength); "
            'read the pack again; the usual ones have "6.25 %" or less',
            "r:7: error: the strength of a curing salt is one percentage, not a range "
            "(rub.salt-table.strength); read it off the pack",
            "r:8: error: honey is no curing salt and has no strength (rub.honey.strength); "
            "leave strength out, or name the curing salt with food = ...",
        ],
    ),
    # --- hours, temperatures, finish
    (
        "[rub]",
        "[soak]\nhours = 0\n[drying]\nhours = true\n[rub]",
        [
            "r:6: error: hours 0 is not above 0 and at most 2,000 hours (soak.hours)",
            "r:8: error: hours takes hours, a number or a range, not true (drying.hours); "
            'as in hours = "5-8"',
        ],
    ),
    (
        "[rub]",
        '[soak]\nhours = "3 days"\n[drying]\nhours = "8-5"\ntemperature = 155\n[rub]',
        [
            'r:6: error: "3 days" is not in hours (soak.hours); write hours, as in "8-12"',
            'r:8: error: range "8-5" runs backwards (drying.hours); write the smaller number first',
            "r:9: error: temperature 155 has no unit (drying.temperature); "
            'write it in quotes with its unit, as in temperature = "155 F"',
        ],
    ),
    (
        "[rub]",
        '[drying]\ntemperature = "155"\nmoisture = "1/4"\nmoisture-to-protein = 9.5\n[rub]',
        [
            'r:6: error: "155" does not say which degrees (drying.temperature); '
            'write "155 F" or "68 C"',
            'r:7: error: "1/4" is no percentage (drying.moisture); write "25 %"',
            "r:8: error: moisture-to-protein 9.5 is not above 0 and at most 5 "
            "(drying.moisture-to-protein)",
        ],
    ),
    (
        "[rub]",
        '[drying]\ntemperature = "1550 F"\nmoisture = "25 %"\nyield = "42 %"\n[rub]',
        [
            "r:6: error: temperature 1550 F is not above 0 and at most 500 °F (drying.temperature)",
            "r:8: error: yield beside moisture: one of them decides when it is done "
            "(drying.yield); keep the one you go by",
        ],
    ),
    (
        "[rub]",
        '[method]\nsteps = ["Slice.", 3]\nnotes = "Dry."\n[rub]',
        [
            "r:6: error: steps takes words, not a number (method.steps[2]); "
            'as in steps = ["Slice across the grain."]',
            "r:7: error: notes takes a list of words, not words (method.notes); "
            'as in notes = ["Freezes well."]',
        ],
    ),
    # --- TOML
    (
        '"1 tsp"',
        "1/2",
        [
            "r:6: error: 1/2 needs quotes; write the amount and its unit in quotes, "
            'salt-table = "1/2 cup"'
        ],
    ),
    (
        '"1 tsp"',
        "½",
        [
            "r:6: error: ½ needs quotes; write the amount and its unit in quotes, "
            'salt-table = "½ cup"'
        ],
    ),
    (
        '"1 tsp"',
        "1 cup # heaped",
        ['r:6: error: 1 cup needs quotes; write salt-table = "1 cup"'],
    ),
    (
        '"1 tsp"',
        "to taste",
        ['r:6: error: to taste needs quotes; write salt-table = "to taste"'],
    ),
    (
        '"1 tsp"',
        "“1 tsp”",
        ['r:6: error: curly quotes; use straight ones: salt-table = "1 tsp"'],
    ),
    ('"1 tsp"', "", ["r:6: error: nothing stands behind salt-table ="]),
    (
        '"1 tsp"',
        "Yes",
        ["r:6: error: Yes is no TOML word; write true or false, in small letters"],
    ),
    (
        '"1 tsp"',
        '"1 tsp" heaped',
        ["r:6: error: something stands behind the closing quotes; put a # before a remark"],
    ),
    ('"1 tsp"', '"1 tsp', ['r:6: error: the quotes are not closed on this line; end it with "']),
    (
        '"1 tsp"',
        "'1 tsp\nhoney = '1 tsp'",
        ["r:6: error: the quotes are not closed on this line; end it with '"],
    ),
    (
        "[rub]",
        "[rub]\nhoney = '1 tsp",
        ["r:6: error: quotes that are opened are never closed; end the text with '"],
    ),
    (
        '"1 tsp"',
        '"1 tsp \\(heaped\\)"',
        ["r:6: error: a backslash in double quotes; write two, or use single quotes"],
    ),
    (
        'salt-table = "1 tsp"',
        'salt-table = "1 tsp"\nsalt-table = "2 tsp"',
        [
            'r:7: error: "salt-table" stands here a second time; one line a food and part; '
            "give the second its own name with food = ..."
        ],
    ),
    (
        'salt-table = "1 tsp"',
        "[meat]\nwild = true",
        ["r:6: error: [meat] stands here a second time; put all of it under the first one"],
    ),
    (
        'salt-table = "1 tsp"',
        'table salt = "1 tsp"',
        [
            "r:6: error: a name of several words or with other letters than a to z needs quotes; "
            'write "table salt" = "1 tsp"'
        ],
    ),
    (
        'salt-table = "1 tsp"',
        "salt-table: 1 tsp\nDry it well.",
        [
            "r:6: error: there is no = on this line; write salt-table = 1 tsp",
            'r:7: error: there is no = on this line; a line is  name = "amount", or a # comment',
        ],
    ),
    (
        'salt-table = "1 tsp"',
        '[method]\nsteps = ["Slice."\n  "Dry."]',
        ["r:8: error: a list is not closed; put commas between its parts, and ] at its end"],
    ),
    (
        'salt-table = "1 tsp"',
        '[method]\nsteps = [\n  "Slice.",\n',
        ["r:7: error: a list is not closed; put ] at its end"],
    ),
    (
        'salt-table = "1 tsp"',
        '[method]\nsteps = [\n  "Slice.",\nnotes = ["Dry."]',
        ["r:7: error: a list is not closed; put ] at its end"],
    ),
    (
        'salt-table = "1 tsp"',
        "[method]\nsteps = [\n  Slice.\n]",
        ['r:8: error: words or an amount in a list or table need quotes; as in ["Slice."]'],
    ),
    (
        '"1 tsp"',
        "'''1 tsp\n[soak]\nhours = 12",
        ["r:6: error: quotes that are opened are never closed; end the text with '''"],
    ),
    (
        '"1 tsp"',
        "1979-02-31",
        ["r:6: error: this date does not exist; put it in quotes"],
    ),
    (
        '"1 tsp"',
        '{ amount = "1 tsp" scale = "fixed" }',
        ["r:6: error: a { table } is not closed; put commas between its parts, } last"],
    ),
    (
        "[rub]",
        "[rub",
        ["r:5: error: a section's name is not closed; write it alone on its line, as in [rub]"],
    ),
    (
        '"1 tsp"',
        '"""1 tsp\n[soak]\nhours = 12',
        ['r:6: error: quotes that are opened are never closed; end the text with "'],
    ),
    (
        '"1 tsp"',
        "9" * 5000,
        ["r:6: error: a number of thousands of digits; is this the right file?"],
    ),
    (
        'salt-table = "1 tsp"',
        f"a{'.b' * 9} = 1",
        ["r:6: error: a key of more than 8 parts; a recipe's keys have at most four"],
    ),
    (
        '"1 tsp"',
        "[" * 5000,
        [
            "r:6: error: brackets inside brackets, far too many; an ingredient is  "
            'name = "amount"  or  name = { amount = "...", ... }'
        ],
    ),
    (
        '"1 tsp"',
        '"1 tsp" # so\rhoney = "1 tsp"',
        ["r:6: error: a lone carriage return; save the file with usual line ends"],
    ),
    # --- far too much
    (
        'salt-table = "1 tsp"',
        "\n".join(f'w{n} = "1 cup"' for n in range(501)),
        ["r:5: error: 501 ingredients, more than 500 (rub); is this the right file?"],
    ),
]


@pytest.mark.parametrize(("was", "put", "expected"), MESSAGES)
def test_message(was: str, put: str, expected: list[str], own_home: Path) -> None:
    """Each fault is told at its line, in a cook's words, with what to write instead."""
    text = BASE.replace(was, put) if was else put
    _, findings = read_recipe(text, file="r")
    assert expected == [str(finding).replace(str(own_home), "HOME") for finding in findings]


@pytest.mark.parametrize(
    ("data", "expected"),
    [
        (b"", 'r:1: error: the file is empty; "tarebook new" starts a recipe'),
        (b" \n\t\n", 'r:1: error: the file is empty; "tarebook new" starts a recipe'),
        (b"\xef\xbb\xbf", 'r:1: error: the file is empty; "tarebook new" starts a recipe'),
        (BASE.encode("utf-16"), "r:1: error: the file is UTF-16 text; save it as UTF-8"),
        (BASE.encode("utf-32"), "r:1: error: the file is UTF-32 text; save it as UTF-8"),
        (b"\xfe\xff\x00t", "r:1: error: the file is UTF-16 text; save it as UTF-8"),
        (b"\x00\x00\xfe\xff", "r:1: error: the file is UTF-32 text; save it as UTF-8"),
        (
            b"a = 1\nb = \x00",
            "r:2: error: a NUL byte: the file is not text, or it is UTF-16; save it as UTF-8",
        ),
        (
            b'a = 1\n\nb = "jalape\xf1o"',
            "r:3: error: byte 0xf1 is not UTF-8 text; save it as UTF-8",
        ),
        (
            b"#" * 1_000_001,
            "r:1: error: the file has more than 1,000,000 bytes; "
            "it should be a page or two of text: is this the right file?",
        ),
    ],
)
def test_message_of_a_file_that_is_no_text(data: bytes, expected: str) -> None:
    """What is no UTF-8 text is refused by name, at the line where that shows."""
    recipe, findings = read_recipe(data, file="r")
    assert recipe is None
    assert expected in [str(finding) for finding in findings]


def test_message_of_a_byte_order_mark() -> None:
    """A UTF-8 mark does no harm: the file is read, and the mark is noted."""
    recipe, findings = read_recipe(b"\xef\xbb\xbf" + BASE.encode(), file="r")
    expected = ["r:1: note: the file begins with a byte order mark; read without it"]
    assert expected == [str(finding) for finding in findings]
    assert recipe is not None


def test_message_of_a_lone_surrogate() -> None:
    """Half a character, which a text in memory may hold, is refused like a bad byte."""
    _, findings = read_recipe(f'{BASE}# \udcff"', file="r")
    assert ["r:7: error: byte 0xed is not UTF-8 text; save it as UTF-8"] == [
        str(finding) for finding in findings
    ]


def test_message_of_too_many_faulty_lines() -> None:
    """Twenty lines that are no TOML are told; then the file is given up, and that is said."""
    _, findings = read_recipe("soy = 1/2\n" * 30, file="r")
    assert 21 == len(findings)
    assert "r: error: 20 lines cannot be read; the rest was not looked at" in map(str, findings)


def test_messages_are_one_line_and_hide_nothing() -> None:
    """However long or strange a name is, its message stays one short line of visible letters."""
    strange = '"\\u001b[31m\\u202e' + "k" * 5000 + '" = 1\n'
    for text in (strange, f"[rub]\n{strange}", f"[rub.{strange[:-5]}]\nx=1", '[rub]\nx = "\x9b"'):
        _, findings = read_recipe(text, file="r")
        for finding in findings:
            assert str(finding).isprintable()
            assert len(str(finding)) < 600
