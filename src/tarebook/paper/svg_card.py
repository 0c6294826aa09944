"""The sides of a card as one SVG picture: stacked in their order, each in a thin outline.

The engine draws letters as shapes, so that the picture looks the same everywhere; what it says
stands in its title and description, for those who have it read to them.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from html import escape

from tarebook.paper.elements import fit

_GAP = 14.0
"""Between two sides, and around them all [pt]."""
_ROOT = re.compile(r'<svg viewBox="0 0 (?P<width>[\d.]+) (?P<height>[\d.]+)"[^>]*>')
_DEFS = re.compile(r"<defs[^>]*>(.*?)</defs>", re.S)
_SYMBOL = re.compile(r'<symbol id="([^"]+)".*?</symbol>', re.S)


def stacked(sides: Iterable[bytes], *, title: str, text: str) -> str:
    """Return the sides of a card as one picture.

    Args:
        sides: each a picture of the engine's, all of one width.
        title: name of the whole.
        text: all that it says.

    Returns:
        An SVG document in UTF-8.
    """
    shapes: dict[str, str] = {}
    drawn, top, width = "", _GAP, 0.0
    for side in sides:
        root, body = _opened(side.decode("utf-8"), shapes)
        across, down = float(root["width"]), float(root["height"])
        drawn += f'<g transform="translate({_GAP:g} {top:g})">{body}'
        drawn += f'<path fill="none" stroke="#999" stroke-width="0.5" d="M0 0H{across:g}'
        drawn += f'V{down:g}H0Z"/></g>\n'
        top += down + _GAP
        width = max(width, across + 2 * _GAP)
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
        f' viewBox="0 0 {width:g} {top:g}" width="{width:g}pt" height="{top:g}pt" lang="en"'
        ' role="img" aria-labelledby="title description">\n'
        f'<title id="title">{escape(fit(title), quote=False)}</title>\n'
        f'<desc id="description">{_lines(text)}</desc>\n'
        f"<defs>{''.join(shapes.values())}</defs>\n"
        f'<path fill="#fff" d="M0 0H{width:g}V{top:g}H0Z"/>\n{drawn}</svg>\n'
    )


def _opened(side: str, shapes: dict[str, str]) -> tuple[re.Match[str], str]:
    """Return the head of a side and what it draws; its shapes go to those of the others.

    A shape is named for what it looks like, so one name is one shape on every side.
    """
    root = _ROOT.match(side)
    if root is None:
        raise ValueError("the engine writes pictures in a way that is not known here")
    for defs in _DEFS.findall(side):
        shapes.update((one[1], one[0]) for one in _SYMBOL.finditer(defs))
    body = _DEFS.sub("", side[root.end() :]).strip().removesuffix("</svg>")
    return root, body


def _lines(text: str) -> str:
    return "\n".join(escape(fit(line), quote=False) for line in text.splitlines())
