"""Changes one thing at a time in a room's code and sees whether its tests notice.

    python tests/mutants.py drying uptake --most 400

A mutant is one comparison turned, one sum made a difference, one number moved, one condition
denied. Only the tests that run the changed line are asked, quickest first; a mutant that none of
them refuses is a survivor and is listed. With ``--within``, no more tests of a mutant are asked
than take so many seconds together: what survives may yet be noticed by one of the others. The
files themselves are never written to: each mutant lives in the memory of a process of its own. The
same seed draws the same mutants from the same code. Needs a system that can fork, and the ``dev``
extra.
"""

from __future__ import annotations

import argparse
import ast
import contextlib
import importlib.abc
import importlib.machinery
import importlib.util
import io
import json
import os
import random
import resource
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

ROOT = Path(__file__).resolve().parents[1]
SOURCE, TESTS = ROOT / "src" / "tarebook", ROOT / "tests"
SEED, MOST, SECONDS = 20_260_901, 400, 60  # seconds: over four times what the tests take
ALSO = {
    "uptake": ("tests/nutrition/test_model.py", "tests/nutrition/test_soaking.py"),
    "nutrition": ("tests/test_properties.py",),
    "safety": ("tests/plan/test_heat.py",),
}
"""Tests outside a room's own folder that are there for it."""

SWAPS: dict[type[ast.AST], type[ast.AST]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.And: ast.Or, ast.Or: ast.And,
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult, ast.Mod: ast.Mult, ast.Pow: ast.Mult,
    ast.BitOr: ast.BitAnd, ast.BitAnd: ast.BitOr, ast.LShift: ast.RShift, ast.RShift: ast.LShift,
}  # fmt: skip
NAMES = {"min": "max", "max": "min", "floor": "ceil", "ceil": "floor", "any": "all", "all": "any"}
UNCHANGED = -1
UNSEEN = {"lru_cache", "cache"}  # how much is remembered changes no answer


class Mutant(NamedTuple):
    """One change: the file, the place of the node in the walk over its tree, and its words."""

    file: Path
    node: int
    line: int
    says: str


class Made(importlib.abc.SourceLoader):
    """Loads one module from other source than its file's."""

    def __init__(self, name: str, path: Path, code: Any) -> None:
        self.name, self.path, self.code = name, path, code

    def get_filename(self, fullname: str) -> str:
        return str(self.path)

    def get_data(self, path: str | bytes) -> bytes:
        return Path(os.fsdecode(path)).read_bytes()

    def get_code(self, fullname: str) -> Any:
        return self.code


class Finder(importlib.abc.MetaPathFinder):
    """Finds the mutated module before anybody else does."""

    def __init__(self, loader: Made) -> None:
        self.loader = loader

    def find_spec(self, fullname: str, path: object = None, target: object = None) -> Any:
        if fullname != self.loader.name:
            return None
        pages = [str(self.loader.path.parent)] if self.loader.path.name == "__init__.py" else None
        spec = importlib.machinery.ModuleSpec(fullname, self.loader, origin=str(self.loader.path))
        spec.submodule_search_locations = pages
        spec.has_location = True
        return spec


def main() -> None:
    """Draw mutants of each room that is asked for, and tell how many were noticed."""
    asked = _asked()
    for room in asked.rooms:
        run(room, asked.most, asked.seed, asked.within)


def run(room: str, most: int, seed: int, within: float) -> None:
    """Try up to ``most`` mutants of a room, each with tests of up to ``within`` seconds."""
    started = time.monotonic()
    lines, seconds = covered(room)
    every = [one for file in sorted((SOURCE / room).rglob("*.py")) for one in mutants(file)]
    drawn = random.Random(f"{seed}:{room}").sample(every, min(most, len(every)))
    _load_what_tests_need()
    sound: set[tuple[Path, str]] = set()
    survivors, killed = [], 0
    for one in sorted(drawn):
        named, others = lines.get((str(one.file), one.line), (set(), set()))
        tests = sorted(named, key=seconds.__getitem__)
        tests += sorted(others - named, key=lambda t: (one.file.stem not in t, seconds[t]))
        tests = list(_first(tests, seconds, within))
        if tests and (one.file, tests[0]) not in sound:
            sound.add((one.file, tests[0]))
            if noticed(one._replace(node=UNCHANGED), tests, _most_seconds(tests, seconds)):
                raise SystemExit(f"the tests refuse {one.file} as it is: {tests[0]} and others")
        if tests and noticed(one, tests, _most_seconds(tests, seconds)):
            killed += 1
        else:
            survivors.append((one, len(tests)))
    print(f"{room}: {killed} of {len(drawn)} mutants noticed, {killed / len(drawn):.1%}; "
          f"{len(every)} could be made; {time.monotonic() - started:.0f} s")  # fmt: skip
    for one, count in survivors:
        place = f"{one.file.relative_to(ROOT)}:{one.line}"
        print(f"  {place}: {one.says}{'' if count else ' (no test runs this line)'}")
    sys.stdout.flush()


def covered(room: str) -> tuple[dict[tuple[str, int], tuple[set[str], set[str]]], dict[str, float]]:
    """Return which tests run each line of a room, and how long each takes [s].

    Of each line: the tests that run it themselves, and those that may run it while a module loads
    or inside a library's loop.
    """
    with tempfile.TemporaryDirectory() as folder:
        data, report = Path(folder, "lines"), Path(folder, "report.json")
        rc = Path(folder, "rc")
        rc.write_text(f"[run]\nsource = {SOURCE / room}\ndynamic_context = test_function\n")
        plugin = Path(folder, "timed.py")
        plugin.write_text(_TIMED)
        tests = [str(TESTS / room), *(str(ROOT / one) for one in ALSO.get(room, ()))]
        line = [sys.executable, "-m", "coverage", "run", f"--rcfile={rc}", f"--data-file={data}"]
        line += ["-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "timed", *tests]
        roads = os.pathsep.join([folder, os.environ.get("PYTHONPATH", "")])
        env = {**os.environ, "PYTHONPATH": roads, "TIMED": str(report)}
        done = subprocess.run(line, cwd=ROOT, env=env, capture_output=True, text=True)
        if done.returncode:
            raise SystemExit(
                f"the tests of {room} fail as they are:\n{done.stdout[-2000:]}{done.stderr[-2000:]}"
            )
        from coverage import CoverageData

        kept = CoverageData(str(data))
        kept.read()
        timed = json.loads(report.read_text())
        by_function: dict[str, list[str]] = {}
        for test in timed:
            by_function.setdefault(_function(test), []).append(test)
        lines: dict[tuple[str, int], tuple[set[str], set[str]]] = {}
        for file in kept.measured_files():
            for number, contexts in kept.contexts_by_lineno(file).items():
                named, others = lines.setdefault((file, number), (set(), set()))
                for context in contexts:
                    function = context.rpartition(".")[2]
                    named.update(by_function.get(function, ()))
                    others.update(() if function in by_function else timed)
    return lines, timed


def _function(test: str) -> str:
    return test.rpartition("::")[2].partition("[")[0]


_TIMED = """
import json, os, pathlib
TIMES = {}
def pytest_runtest_logreport(report):
    if report.when == "call" and report.passed:
        TIMES[report.nodeid] = report.duration
def pytest_sessionfinish(session):
    pathlib.Path(os.environ["TIMED"]).write_text(json.dumps(TIMES))
"""


def mutants(file: Path) -> Iterator[Mutant]:
    """Yield every mutant that can be made of a file."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    skipped = {id(node) for top in ast.walk(tree) for node in _left_alone(top)}
    for place, node in enumerate(ast.walk(tree)):
        if id(node) not in skipped:
            says = changed(node, apply=False)
            if says:
                yield Mutant(file, place, node.lineno, says)  # type: ignore[attr-defined]


def _left_alone(node: ast.AST) -> Iterator[ast.AST]:
    """Yield what is no arithmetic of ours: types, what is only remembered, words of an error."""
    if isinstance(node, ast.FunctionDef):
        for one in (node.returns, *(a.annotation for a in node.args.args + node.args.kwonlyargs)):
            yield from ast.walk(one) if one else ()
        for one in node.decorator_list:
            if isinstance(one, ast.Call) and getattr(one.func, "id", "") in UNSEEN:
                yield from ast.walk(one)
    elif isinstance(node, ast.AnnAssign):
        yield from ast.walk(node.annotation)
    elif isinstance(node, ast.Raise | ast.FormattedValue) or _is_aside(node):
        yield from ast.walk(node)


def _is_aside(node: ast.AST) -> bool:
    """Return whether a block is for a type checker, or for a module that is run as a script."""
    if not isinstance(node, ast.If):
        return False
    named = getattr(node.test, "left", node.test)
    return getattr(named, "id", "") in ("TYPE_CHECKING", "__name__")


def changed(node: ast.AST, *, apply: bool) -> str:
    """Change a node, or only say how it would be changed; nothing where it cannot be."""
    was = ast.unparse(node) if isinstance(node, ast.expr) else ""
    match node:
        case ast.Compare(ops=[op]) if type(op) in SWAPS:
            new: Any = SWAPS[type(op)]()
            if apply:
                node.ops = [new]
            return f"{was}: {type(op).__name__} becomes {type(new).__name__}"
        case ast.BinOp(op=op) | ast.BoolOp(op=op) | ast.AugAssign(op=op) if type(op) in SWAPS:
            if isinstance(node, ast.BinOp) and _is_words(node):
                return ""
            new = SWAPS[type(op)]()
            if apply:
                node.op = new
            return f"{was or ast.unparse(node)}: {type(op).__name__} becomes {type(new).__name__}"
        case ast.Constant(value=bool() as value):
            if apply:
                node.value = not value
            return f"{value} becomes {not value}"
        case ast.Constant(value=int() | float() as number):
            moved = number + 1 if isinstance(number, int) else number * 1.25 + (number == 0)
            if apply:
                node.value = moved
            return f"{number} becomes {moved}"
        case ast.UnaryOp(op=ast.Not() | ast.USub()):
            if apply:
                node.op = ast.UAdd() if isinstance(node.op, ast.USub) else ast.Not()
                if isinstance(node.op, ast.Not):
                    node.operand = ast.UnaryOp(op=ast.Not(), operand=node.operand)
            return f"{was}: the sign goes"
        case ast.IfExp() | ast.If() | ast.While():
            if isinstance(node.test, ast.Compare | ast.UnaryOp | ast.BoolOp):
                return ""  # turned already, where it stands
            if apply:
                node.test = ast.UnaryOp(op=ast.Not(), operand=node.test)
            return f"{ast.unparse(node.test)}: denied"
        case ast.Call(func=ast.Name(id=name)) if name in NAMES:
            if apply:
                node.func = ast.Name(id=NAMES[name], ctx=ast.Load())
            return f"{was}: {name} becomes {NAMES[name]}"
    return ""


def _is_words(node: ast.BinOp) -> bool:
    return any(
        isinstance(side, ast.JoinedStr)
        or (isinstance(side, ast.Constant) and isinstance(side.value, str))
        for side in (node.left, node.right)
    )


def _first(tests: list[str], seconds: dict[str, float], within: float) -> Iterator[str]:
    """Yield the first of some tests, as many as take so many seconds, and one at the least."""
    for place, test in enumerate(tests):
        within -= seconds[test]
        if place and within < 0:
            return
        yield test


def _most_seconds(tests: list[str], seconds: dict[str, float]) -> int:
    """Return the processor time after which tests are taken to run for ever [s]."""
    return SECONDS + round(4 * sum(seconds[test] for test in tests))


def noticed(one: Mutant, tests: list[str], most: int) -> bool:
    """Return whether a test fails, or takes for ever, with the mutant in place of the module."""
    child = os.fork()
    if child == 0:
        os._exit(_tried(one, tests, most))
    _, status = os.waitpid(child, 0)
    return status != 0


def _tried(one: Mutant, tests: list[str], most: int) -> int:
    resource.setrlimit(resource.RLIMIT_CPU, (most, most))
    resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
    signal.alarm(3 * most)
    os.setpgid(0, 0)
    import pytest

    name = ".".join(one.file.relative_to(SOURCE.parent).with_suffix("").parts)
    code = _code(one)
    if code is None:
        return 1
    sys.meta_path.insert(0, Finder(Made(name.removesuffix(".__init__"), one.file, code)))
    os.chdir(ROOT)
    silence = os.open(os.devnull, os.O_WRONLY)
    os.dup2(silence, 1)
    os.dup2(silence, 2)
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        try:
            return int(
                pytest.main(["-x", "-q", "--assert=plain", "-p", "no:cacheprovider", *tests])
            )
        except BaseException:
            return 1


def _code(one: Mutant) -> Any:
    tree = ast.parse(one.file.read_text(encoding="utf-8"))
    if one.node != UNCHANGED:
        changed(list(ast.walk(tree))[one.node], apply=True)
    ast.fix_missing_locations(tree)
    try:
        return compile(tree, str(one.file), "exec")
    except (SyntaxError, ValueError):
        return None


def _load_what_tests_need() -> None:
    """Load the libraries once, before the forks; nothing of ours."""
    import hypothesis
    import numpy
    import pint
    import pytest
    import scipy.optimize
    import scipy.special
    import scipy.stats
    import typer

    loaded = (hypothesis, numpy, pint, pytest, scipy, typer)
    hypothesis.settings.register_profile("mutants", max_examples=25, database=None, deadline=None)
    hypothesis.settings.load_profile("mutants")
    assert all(loaded) and not [name for name in sys.modules if name.startswith("tarebook")]


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("rooms", nargs="+", help="folders of src/tarebook")
    parser.add_argument("--most", type=int, default=MOST, help="mutants a room")
    parser.add_argument("--seed", type=int, default=SEED)
    parser.add_argument("--within", type=float, default=float("inf"), help="seconds of tests each")
    return parser.parse_args()


if __name__ == "__main__":
    main()
