"""Named tuples that are made without their types being looked at.

A command makes some seventy of them while it starts. ``typing.NamedTuple`` compiles the text of
every field's type each time, which is two thirds of the making; nothing here asks for the types
while it runs. A type checker sees the ordinary one, and holds us to its rules.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from typing import NamedTuple as NamedTuple  # noqa: TID251
else:
    from collections import namedtuple

    class _Maker(type):
        def __new__(cls, name, bases, body):
            if not bases:
                return super().__new__(cls, name, bases, body)
            fields = body.pop("__annotations__", {})
            defaults = [body.pop(field) for field in fields if field in body]
            module = body.pop("__module__")
            made = namedtuple(name, fields, defaults=defaults, module=module)
            made.__annotations__ = fields
            for word, value in body.items():
                setattr(made, word, value)
            return made

    class NamedTuple(metaclass=_Maker):
        """A tuple whose fields have names; written as with ``typing.NamedTuple``."""
