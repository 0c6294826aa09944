"""The position finder: the same paths as the TOML reader of the standard library, and lines."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tarebook.toml.locate import KeyPath, Lines, key_text, lines, path_text, quoted

HAND_MADE = {
    "plain": ('title = "x"\n\n[meat]\nfood = "deer"\n', {("title",): 1, ("meat", "food"): 4}),
    "no line end at the end": ("a = 1\nb = 2", {("b",): 2}),
    "empty": ("", {}),
    "only a comment": ("# a = 1\n", {}),
    "quotes in keys": (
        "[marinade]\n\"dark = \\\"soy\\\" # [x]\" = '1 Tbsp'\n'a.b' = 1\n",
        {("marinade", 'dark = "soy" # [x]'): 2, ("marinade", "a.b"): 3},
    ),
    "escapes in keys": ('"\\u00e9\\t" = 1\nb = 2\n', {("é\t",): 1, ("b",): 2}),
    "long strings that look like tables": (
        'about = """\n[meat]\nfood = "no"\n"""\nb = \'\'\'\n[[x]]\n\'\'\'\n[meat]\nc = 1\n',
        {("about",): 1, ("b",): 5, ("meat",): 8, ("meat", "c"): 9},
    ),
    "long strings that end in quotes": (
        'a = """x"""""\nb = \'\'\'y\'\'\'\'\'\nc = """\\""""""\nd = """"""\ne = 1\n',
        {("b",): 2, ("c",): 3, ("d",): 4, ("e",): 5},
    ),
    "nested lists": (
        "steps = [ # ] one\n  'a', # ]\n  [1,\n   [2, 3]], ]\nlast = 1\n",
        {
            ("steps",): 1,
            ("steps", 0): 2,
            ("steps", 1): 3,
            ("steps", 1, 1): 4,
            ("steps", 1, 1, 1): 4,
            ("last",): 5,
        },
    ),
    "dotted keys": (
        "meat.food = 'deer'\nmeat . 'form' = 'strips'\n[a.b]\nc.d.e = 1\n",
        {
            ("meat",): 1,
            ("meat", "food"): 1,
            ("meat", "form"): 2,
            ("a",): 3,
            ("a", "b", "c", "d", "e"): 4,
        },
    ),
    "inline tables": (
        '[rub]\nsoy = { food = "x", panel = { a = "1 } g", b.c = [1] } } # }\nnext = "1"\n',
        {("rub", "soy", "panel", "b", "c", 0): 2, ("rub", "next"): 3},
    ),
    "lists of tables": (
        "[[a]]\nx = 1\n[a.b]\ny = 2\n[[a]]\nx = 3\n[a.b]\n[[a.c]]\n[[a.c]]\nz = 1\n",
        {
            ("a",): 1,
            ("a", 0, "b", "y"): 4,
            ("a", 1): 5,
            ("a", 1, "b"): 7,
            ("a", 1, "c", 1, "z"): 10,
        },
    ),
    "a table named first by its child": (
        "[marinade.soy]\namount = '1'\n\n[marinade]\nwater = '2'\n",
        {("marinade", "soy"): 1, ("marinade",): 4, ("marinade", "water"): 5},
    ),
    "dates and numbers": (
        "a = 1979-05-27 07:32:00Z\nb = -1_0.5e+3 # x\nc = [nan, +inf,0xAF]\nd = 07:32:00\n",
        {("b",): 2, ("c", 2): 3, ("d",): 4},
    ),
}


@pytest.mark.parametrize("name", HAND_MADE)
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_lines_of_hand_made_texts(name: str, line_end: str) -> None:
    """Each key is found on the line a reader would point to, whatever the line ends."""
    text, expected = HAND_MADE[name]
    text = text.replace("\n", line_end)
    found = lines(text)
    assert expected == {path: found[path] for path in expected}
    assert paths(tomllib.loads(text)) == set(found)


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        (("marinade", "soy-sauce"), "marinade.soy-sauce"),
        (("marinade", "dark soy", "amount"), 'marinade."dark soy".amount'),
        (("method", "steps", 2), "method.steps[3]"),
        (("jalapeño",), '"jalapeño"'),
        (("",), '""'),
        (('a"\\\n\x1b\u202e',), '"a\\"\\\\\\n\\u001B\\u202E"'),
        (("\U000e0001",), '"\\U000E0001"'),
    ],
)
def test_path_text(path: KeyPath, expected: str) -> None:
    """A path reads as it would be written; list places count from one; nothing stays hidden."""
    assert expected == path_text(path)


@given(st.text())
def test_quoted_reads_back(text: str) -> None:
    """Any text in our quotes is read by the standard library as that text."""
    assert text == tomllib.loads(f"a = {quoted(text)}")["a"]
    assert [text] == list(tomllib.loads(f"{key_text(text)} = 1"))


def test_lines_by_written_path() -> None:
    """The mapping of a recipe answers by the written path and knows no other."""
    found = Lines('[marinade]\n"dark soy" = "1 cup"\n')
    assert 2 == found['marinade."dark soy"']
    assert ["marinade", 'marinade."dark soy"'] == list(found)
    assert 2 == len(found)
    assert "marinade.soy" not in found


def test_lines_of_deepest_nesting() -> None:
    """A list nested as deep as the reader can bear gives lines or none, never an exception."""
    depth = 1
    while depth < 100_000:
        try:
            tomllib.loads(f"a = {'[' * depth}{']' * depth}")
        except RecursionError:
            break
        depth += 10
    text = f"a = {'[' * (depth - 10)}{']' * (depth - 10)}"
    assert Lines(text).get("a") in (1, None)


@settings(deadline=None)
@given(st.data())
def test_same_paths_as_tomllib(data: st.DataObject) -> None:
    """On any document, however it is written, the finder knows exactly the reader's paths."""
    text = data.draw(documents())
    try:
        document = tomllib.loads(text)
    except tomllib.TOMLDecodeError:  # the same name drawn as a value and as a table
        return
    found = lines(text)
    assert paths(document) == set(found)
    rows = text.replace("\r\n", "\n").split("\n")
    for path, line in found.items():
        if isinstance(path[-1], str) and path[-1].isidentifier():
            assert path[-1] in rows[line - 1]


def paths(value: object, above: KeyPath = ()) -> set[KeyPath]:
    """Return every key path of what the standard library read."""
    return set(_paths(value, above))


def _paths(value: object, above: KeyPath) -> Iterator[KeyPath]:
    children: list[tuple[str | int, object]] = []
    if isinstance(value, dict):
        children = list(value.items())
    elif isinstance(value, list):
        children = list(enumerate(value))
    for key, child in children:
        yield (*above, key)
        yield from _paths(child, (*above, key))


KEYS = st.sampled_from(
    ["a", "b", "c-1", "soy_sauce", '"d e"', "'f.g'", '"h\\"]="', '"i#\\u0041"', "''", "12"]
)
BLANKS = st.sampled_from(["", " ", "\t "])
STRINGS = st.sampled_from(
    [
        '"plain"',
        "'literal ]} #'",
        '"esc \\" \\\\"',
        '"""one\ntwo = 3\n[[x]]\n"""',
        "'''\n[y]\nz = \"\n'''",
        '"""q""\\""""',
        "''''x''''",
        '""',
        "''",
    ]
)
ATOMS = st.sampled_from(["1", "-2.5e3", "true", "1979-05-27 07:32:00", "nan", "0x1F", "07:32:00"])
GAPS = st.sampled_from(["", " ", "\n", " # ] } , \n", "\n\n\t"])


@st.composite
def values(draw: st.DrawFn, depth: int = 2) -> str:
    """Draw a TOML value as text."""
    kind = draw(st.integers(0, 3 if depth else 1))
    if kind == 0:
        return draw(STRINGS)
    if kind == 1:
        return draw(ATOMS)
    if kind == 2:
        parts = draw(st.lists(values(depth - 1), max_size=3))
        inside = ",".join(f"{draw(GAPS)}{part}{draw(GAPS)}" for part in parts)
        comma = "," if parts and draw(st.booleans()) else ""
        return f"[{inside}{comma}{draw(GAPS)}]"
    pairs = draw(st.lists(pairs_of(depth - 1), max_size=3))
    return "{" + ",".join(pairs) + draw(BLANKS) + "}"


@st.composite
def dotted(draw: st.DrawFn) -> str:
    """Draw a key of one to three parts as text."""
    parts = draw(st.lists(KEYS, min_size=1, max_size=3))
    return f"{draw(BLANKS)}.{draw(BLANKS)}".join(parts)


@st.composite
def pairs_of(draw: st.DrawFn, depth: int = 2) -> str:
    """Draw ``key = value`` as text."""
    before, after = draw(BLANKS), draw(BLANKS)
    return f"{before}{draw(dotted())}{after}={draw(BLANKS)}{draw(values(depth))}"


@st.composite
def documents(draw: st.DrawFn) -> str:
    """Draw a TOML text, valid but for names that may clash."""
    statements = st.one_of(
        pairs_of(),
        dotted().map(lambda key: f"[{key}]"),
        dotted().map(lambda key: f"[[ {key} ]]"),
        st.sampled_from(["", "  ", "# [c]", "# a = 1"]),
    )
    ends = st.sampled_from(["\n", " \n", " # c = [\n", "\n\n"])
    text = "".join(row + draw(ends) for row in draw(st.lists(statements, max_size=8)))
    return text.replace("\n", "\r\n") if draw(st.booleans()) else text
