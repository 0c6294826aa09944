"""Asks the package index what weaknesses it knows of in what is installed here.

    python tests/audit.py

A script, not a test: it needs the net. The index tells of the newest release of each package; of
an older one that is installed nothing is known. Ends with 1 where a weakness is told of.
"""

from __future__ import annotations

import json
import sys
import urllib.request
from importlib.metadata import distributions
from typing import Any

INDEX = "https://pypi.org/pypi/{name}/json"
OWN = "tarebook"
SECONDS = 20


def main() -> None:
    """Print what is told of each installed package, worst first."""
    installed = {one.name: one.version for one in distributions() if one.name != OWN}
    weak, older, silent, clear = [], [], [], []
    for name, version in sorted(installed.items(), key=lambda one: one[0].lower()):
        try:
            found = asked(name)
        except OSError as fault:
            silent.append(f"{name} {version}: {fault}")
            continue
        newest, told = found["info"]["version"], found["vulnerabilities"]
        if version != newest:
            older.append(f"{name} {version}; the newest is {newest}")
        elif told:
            weak.append(f"{name} {version}: {', '.join(one['id'] for one in told)}")
        else:
            clear.append(name)
    for heading, lines in (
        ("Weaknesses known", weak),
        ("No answer", silent),
        ("Not the newest, so nothing is told of them", older),
    ):
        if lines:
            print(f"{heading}:", *lines, sep="\n  ")
    print(f"Newest, and nothing known against them: {len(clear)} of {len(installed)}.")
    sys.exit(1 if weak else 0)


def asked(name: str) -> dict[str, Any]:
    """Return what the index tells of a package.

    Raises:
        OSError: there is no answer.
    """
    with urllib.request.urlopen(INDEX.format(name=name), timeout=SECONDS) as answer:
        found: dict[str, Any] = json.load(answer)
    return found


if __name__ == "__main__":
    main()
