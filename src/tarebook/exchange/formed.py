"""Forms that a note tells (``packed``, ``minced``), put where a recipe of ours has them."""

from __future__ import annotations

from tarebook.findings import TarebookError
from tarebook.quantities import Amount, parse_amount, parse_form

__all__ = ["formed"]


def formed(amount: Amount, note: str) -> tuple[Amount, list[str]]:
    """Return an amount with the forms that a note tells, and the rest of the note.

    Only a piece of the note that says nothing but forms is taken: ``packed``, ``grated, fresh``.

    Args:
        amount: as read from the line.
        note: its pieces parted by ``; ``.

    Example:
        >>> amount, rest = formed(parse_amount("1/4 cup"), "packed; for the glaze")
        >>> str(amount), rest
        ('1/4 cup packed', ['for the glaze'])
    """
    rest = []
    for told in note.split("; "):
        try:
            forms = parse_form(told) if told else ()
            with_forms = parse_amount(f"{amount}, {' '.join(forms)}") if forms else None
        except TarebookError:
            with_forms = None
        if with_forms is not None and with_forms.meaning[:3] == amount.meaning[:3]:
            amount = with_forms
        elif told:
            rest.append(told)
    return amount, rest
