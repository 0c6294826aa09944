"""The remarks of a TOML file, found by a way of its own.

``tidy`` promises to keep them, and finds them by the grammar of the package; whether it did is
asked of this walk, which goes letter by letter and knows of TOML only where a text begins and ends.
"""

from __future__ import annotations

_QUOTES = ('"""', "'''", '"', "'")


def remarks(text: str) -> list[str]:
    """Return what stands behind each mark of a remark, in order of letters.

    Args:
        text: a file that is TOML.
    """
    found = []
    at = 0
    while at < len(text):
        quote = next((one for one in _QUOTES if text.startswith(one, at)), "")
        if quote:
            at = _behind(text, at + len(quote), quote)
        elif text[at] == "#":
            end = text.find("\n", at)
            end = len(text) if end < 0 else end
            found.append(text[at + 1 : end].strip())
            at = end
        else:
            at += 1
    return sorted(found)


def _behind(text: str, at: int, quote: str) -> int:
    """Return the place behind the end of a text in quotes."""
    while not text.startswith(quote, at):
        at += 2 if text[at] == "\\" and quote[0] == '"' else 1
    at += len(quote)
    while len(quote) == 3 and text.startswith(quote[0], at):  # two quotes may stand before the end
        at += 1
    return at
