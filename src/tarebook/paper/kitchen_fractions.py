"""Fractions as a cook writes them: ``1 1/2 cups`` with the glyph."""

from __future__ import annotations

_GLYPHS = {
    "1/2": "½", "1/3": "⅓", "2/3": "⅔", "1/4": "¼", "3/4": "¾",
    "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞",
}  # fmt: skip


_KEPT = "\N{NO-BREAK SPACE}"


def kitchen_fractions(text: str) -> str:
    """Return a measure of our own wording with its fractions as single characters.

    Args:
        text: words and numbers apart by single spaces.

    Returns:
        The same; a whole number closes up to the fraction after it, and a number keeps the word
        after it on its line.

    Example:
        >>> kitchen_fractions("1 1/2 cups + 5/16 tsp").replace("\N{NO-BREAK SPACE}", "_")
        '1½_cups + 5/16_tsp'
    """
    shown = before = ""
    for word in text.split(" "):
        glyph = _GLYPHS.get(word, "")
        if glyph and before.isdecimal():
            shown += glyph
        else:
            gap = _KEPT if before[:1].isdigit() else " "
            shown += f"{gap if before else ''}{glyph or word}"
        before = word
    return shown
