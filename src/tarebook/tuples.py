"""Named tuples that are made without their types being looked at, or any text being compiled.

A command makes a hundred of them while it starts. ``typing.NamedTuple`` compiles the text of every
field's type each time, and ``collections.namedtuple`` that of a constructor; nothing here asks for
the types while it runs, and the constructors of as many fields are one code with other names in it.
A type checker sees the ordinary one, and holds us to its rules.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from typing import NamedTuple as NamedTuple  # noqa: TID251
else:
    from functools import cache
    from types import FunctionType

    try:
        from _collections import _tuplegetter as _field
    except ImportError:  # a Python whose collections are not written in C
        from operator import itemgetter

        def _field(place, says):
            return property(itemgetter(place), doc=says)

    _KNOWN = {"_new": tuple.__new__, "__builtins__": {}}

    @cache
    def _constructor(fields):
        """Return the code of a constructor of as many fields; their names are put in after."""
        names = "".join(f"_{place}, " for place in range(fields))
        made = eval(f"lambda _cls, {names}: _new(_cls, ({names}))", _KNOWN)
        return made.__code__

    class _Named(tuple):
        """What every one of them can do."""

        __slots__ = ()

        @classmethod
        def _make(cls, values):
            return tuple.__new__(cls, values)

        def _replace(self, **changed):
            made = self._make(map(changed.pop, self._fields, self))
            if changed:
                raise ValueError(f"{type(self).__name__} has no field {next(iter(changed))!r}")
            return made

        def _asdict(self):
            return dict(zip(self._fields, self, strict=True))

        def __repr__(self):
            told = ", ".join(f"{name}={value!r}" for name, value in self._asdict().items())
            return f"{type(self).__name__}({told})"

        def __getnewargs__(self):
            return tuple(self)

    class _Maker(type):
        def __new__(cls, name, bases, body):
            if not bases:
                return super().__new__(cls, name, bases, body)
            fields = tuple(body.get("__annotations__", ()))
            defaults = {field: body[field] for field in fields if field in body}
            for place, field in enumerate(fields):
                body[field] = _field(place, field)
            code = _constructor(len(fields)).replace(
                co_varnames=("_cls", *fields), co_name="__new__", co_qualname=f"{name}.__new__"
            )
            made = FunctionType(code, _KNOWN, "__new__", tuple(defaults.values()))
            made.__qualname__ = f"{name}.__new__"
            body |= {
                "__new__": made, "__slots__": (), "__match_args__": fields,
                "_fields": fields, "_field_defaults": defaults,
            }  # fmt: skip
            return type(name, (_Named,), body)

    class NamedTuple(metaclass=_Maker):
        """A tuple whose fields have names; written as with ``typing.NamedTuple``."""
