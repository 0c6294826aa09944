"""No pattern of the package takes long over any text, however it was made to."""

from __future__ import annotations

import ast
import importlib
import re
import time
import warnings
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

import pytest

import tarebook

with warnings.catch_warnings():  # the parser of patterns has moved, and goes on working
    warnings.simplefilter("ignore", DeprecationWarning)
    import sre_parse

PACKAGE = Path(tarebook.__file__).parent
ASKING = {"compile", "match", "search", "fullmatch", "sub", "subn", "findall", "finditer", "split"}
MOST = 4_000  # letters; the lines and texts of what others write are cut or refused before that
LENGTHS = (*range(12, 40, 4), 60, 100, 160, 250, 500, 1000, 2000, MOST)
MOST_S = 0.05
GENERAL = [*' \t0a-.,([{<"#/\\é', "ab", "1 ", "a ", "1/", "<a ", "&#", "a-", "--", "1,", "a.", "''"]
# Patterns put together of names within a function: what they come to, in names of the module.
PUT_TOGETHER = {
    ("tarebook.probe.columns", "f'(?:^|[^a-z]){word}'"): "'(?:^|[^a-z])food',",
    ("tarebook.exchange.asides", "pattern"): "_PERCENT, _RATE, _PARTS",
}


class Asked(NamedTuple):
    """A pattern: where it stands, its text and flags, and by which calls texts are met with it."""

    where: str
    pattern: str
    flags: int
    calls: tuple[str, ...]


def patterns() -> Iterator[Asked]:
    """Yield every pattern that the package asks for."""
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
        name = ".".join(parts).removesuffix(".__init__")
        text = path.read_text("utf-8")
        tree = ast.parse(text)
        calls = [one for one in ast.walk(tree) if isinstance(one, ast.Call) and asks(one)]
        called = {
            id(one.value): one.targets[0].id
            for one in ast.walk(tree)
            if isinstance(one, ast.Assign) and isinstance(one.targets[0], ast.Name)
        }
        module = importlib.import_module(name) if calls else None
        for call in calls:
            for pattern, flags in read(call, name, {**texts_in(tree), **vars(module)}):
                yield Asked(
                    f"{name}:{call.lineno}:{call.col_offset}",
                    pattern,
                    flags,
                    met_by(call, called.get(id(call), ""), text),
                )


def texts_in(tree: ast.Module) -> dict[str, str]:
    """Return the plain texts that names are given anywhere in a module."""
    found: dict[str, str] = {}
    for one in ast.walk(tree):
        if not isinstance(one, ast.Assign):
            continue
        (target,), value = one.targets, one.value
        pairs = [(target, value)]
        if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
            pairs = list(zip(target.elts, value.elts, strict=True))
        for name, said in pairs:
            is_text = isinstance(said, ast.Constant) and isinstance(said.value, str)
            if isinstance(name, ast.Name) and is_text:
                found[name.id] = said.value
    return found


def met_by(call: ast.Call, name: str, text: str) -> tuple[str, ...]:
    """Return the calls of a pattern: its own, or of a compiled one those that its name has."""
    assert isinstance(call.func, ast.Attribute)
    if call.func.attr != "compile":
        return (call.func.attr,)
    used = sorted({one for one in ASKING - {"compile"} if f"{name}.{one}(" in text})
    return tuple(used) or ("search",)


def asks(call: ast.Call) -> bool:
    """Return whether a call is one of ``re`` that takes a pattern."""
    of = call.func
    return (
        isinstance(of, ast.Attribute)
        and of.attr in ASKING
        and isinstance(of.value, ast.Name)
        and of.value.id == "re"
    )


def read(call: ast.Call, name: str, names: dict[str, Any]) -> Iterator[tuple[str, int]]:
    """Yield the pattern of a call as it would be when it is made; of a compiled one its text."""
    flags = [word.value for word in call.keywords if word.arg == "flags"]
    flags += call.args[1:2] if isinstance(call.func, ast.Attribute) else []
    given = 0
    for one in flags:
        try:
            given |= int(value_of(one, names))
        except (NameError, TypeError, ValueError):
            continue
    try:
        found: tuple[Any, ...] = (value_of(call.args[0], names),)
    except NameError:
        said = PUT_TOGETHER[name, ast.unparse(call.args[0])]
        found = value_of(ast.parse(said, mode="eval").body, names)
    for one in found:
        if isinstance(one, re.Pattern):
            yield one.pattern, one.flags & ~re.UNICODE
        else:
            yield one, given


def value_of(node: ast.expr, names: dict[str, Any]) -> Any:
    """Return what an expression of a module's own names comes to."""
    return eval(compile(ast.Expression(node), "pattern", "eval"), {"re": re, **names})


PATTERNS = sorted(set(patterns()))


def hostile(pattern: str, flags: int) -> set[tuple[str, str]]:
    """Return texts to repeat, each with one to stand before: what a pattern's own parts take."""
    parsed = sre_parse.parse(pattern, flags)
    before = {one_of(list(parsed)[:at]) for at in range(len(parsed) + 1)}
    pieces = pieces_of(parsed)
    return {("", one) for one in GENERAL} | {(a, b) for a in before for b in pieces if b}


def pieces_of(parsed: Any) -> set[str]:
    """Return for each repeat in a pattern what it takes."""
    found: set[str] = set()
    todo = [parsed]
    while todo:
        for kind, said in todo.pop():
            inside = list(below(said))
            todo += inside
            if "REPEAT" in str(kind):
                found.add("".join(one_of(part) for part in inside))
                found |= {one_of([step]) for part in inside for step in part}
    return found | {" ", "1"}


def below(said: Any) -> Iterator[Any]:
    """Yield the patterns within a step of a pattern."""
    if isinstance(said, sre_parse.SubPattern):
        yield said
    elif isinstance(said, tuple | list):
        for one in said:
            yield from below(one)


def one_of(steps: Any) -> str:
    """Return a text that steps of a pattern take, as near as is told without looking around."""
    text = ""
    for kind, said in steps:
        match str(kind):
            case "LITERAL":
                text += chr(said)
            case "NOT_LITERAL":
                text += "a" if said != ord("a") else "b"
            case "ANY":
                text += "a"
            case "IN":
                text += letter_in(said)
            case "BRANCH":
                text += one_of(said[1][0])
            case _:
                text += "".join(one_of(part) for part in below(said))
    return text


CLASSES = {"CATEGORY_DIGIT": "1", "CATEGORY_SPACE": " ", "CATEGORY_WORD": "a"}


def letter_in(said: Any) -> str:
    """Return a letter of a class of letters."""
    if str(said[0][0]) == "NEGATE":
        return next(one for one in "a1 .-é" if re.match(rf"{one}", one))
    kind, value = said[0]
    if str(kind) == "LITERAL":
        return chr(value)
    if str(kind) == "RANGE":
        return chr(value[0])
    return CLASSES.get(str(value), "-")


def took_s(asked: Asked, text: str) -> float:
    """Return how much work it is to meet a text with a pattern, the longest way it is met [s]."""
    compiled = re.compile(asked.pattern, asked.flags)
    longest = 0.0
    for call in asked.calls:
        began = time.process_time()
        if call in ("match", "fullmatch", "search"):
            getattr(compiled, call)(text)
        else:
            for _ in compiled.finditer(text):
                pass
        longest = max(longest, time.process_time() - began)
    return longest


def slowest(asked: Asked) -> tuple[float, int, str]:
    """Return the longest time over any hostile text, growing, and its length and what it repeats.

    A text that takes long is not made any longer: one that doubles the work with each letter is
    found while it is short.
    """
    worst = (0.0, 0, "")
    for before, piece in sorted(hostile(asked.pattern, asked.flags)):
        for length in LENGTHS:
            text = f"{before}{(piece * length)[:length]}\x00"
            least = took_s(asked, text)
            if least > MOST_S:  # once more: the machine may have been busy
                least = min(least, took_s(asked, text))
            worst = max(worst, (least, length, before + piece))
            if least > MOST_S:
                return worst
    return worst


def test_every_pattern_is_found() -> None:
    """No call of ``re`` that a plain search of the sources finds is passed over."""
    words = re.compile(rf"\bre\.({'|'.join(sorted(ASKING))})\(")
    texts = (path.read_text("utf-8") for path in PACKAGE.rglob("*.py"))

    calls = sum(len(words.findall(text)) for text in texts)
    assert calls == len({one.where for one in PATTERNS}) > 60


@pytest.mark.parametrize("asked", PATTERNS, ids=[one.where for one in PATTERNS])
def test_no_text_takes_a_pattern_long(asked: Asked) -> None:
    """Four thousand letters made of what its own repeats take are looked through in 50 ms."""
    seconds, length, repeated = slowest(asked)

    assert seconds <= MOST_S, f"{length} letters of {repeated!r} took {seconds:.2f} s"


@pytest.mark.parametrize("pattern", [r"(a+)+$", r"(\d|\d\d)+x", r"(?:\s*-\s*)*$", r"(.*)(.*)(.*)!"])
def test_a_pattern_that_takes_long_would_be_found(pattern: str) -> None:
    """Those that double, or grow with the cube."""
    assert slowest(Asked("", pattern, 0, ("search",)))[0] > MOST_S
