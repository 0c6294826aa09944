"""The making of the orders that draws are dealt in: ``python -m`` of this module.

Run it when ``STANDING`` or the deal of ``draws`` changes. A test makes them anew and meets the file
byte for byte.
"""

from __future__ import annotations

from tarebook.nutrition.draws import KEPT, ORDERS, STANDING, order


def made() -> bytes:
    """Return the order of every standing input, one byte a draw, in their order."""
    return b"".join(bytes(order(name, KEPT)) for name in STANDING)


if __name__ == "__main__":
    ORDERS.write_bytes(made())
