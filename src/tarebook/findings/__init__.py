"""What is wrong with a record, said as a value: where, how badly, and what to try.

Files of this room:

- ``finding``: ``Severity``, ``Place``, ``Finding``.
- ``errors``: every exception of the package on one page.
- ``nearest``: the "did you mean" of a misspelled word.

Knows nothing of food and imports only the standard library.
"""

from tarebook.findings.errors import (
    AmountError,
    AskedWrongly,
    CureRefused,
    FileUnreadable,
    FileUnwritable,
    FoodUnknown,
    LookupFailed,
    PlanRefused,
    QuantityError,
    RecipeFaulty,
    RecordFaulty,
    TarebookError,
    UnitError,
)
from tarebook.findings.finding import Finding, Place, Severity
from tarebook.findings.nearest import nearest

__all__ = [
    "AmountError",
    "AskedWrongly",
    "CureRefused",
    "FileUnreadable",
    "FileUnwritable",
    "Finding",
    "FoodUnknown",
    "LookupFailed",
    "Place",
    "PlanRefused",
    "QuantityError",
    "RecipeFaulty",
    "RecordFaulty",
    "Severity",
    "TarebookError",
    "UnitError",
    "nearest",
]
