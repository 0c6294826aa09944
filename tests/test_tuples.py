"""Named tuples of our own making do what those of the standard library do."""

from __future__ import annotations

import copy
import pickle
import typing

import pytest

from tarebook.tuples import NamedTuple


class Bowl(NamedTuple):
    """A bowl."""

    name: str
    tare_g: float = 0.0
    lid: Lid | None = None

    @property
    def heavy(self) -> bool:
        return self.tare_g > 500

    def __str__(self) -> str:
        return self.name

    @classmethod
    def blue(cls) -> Bowl:
        return cls("blue", 612.0)


class Lid(typing.NamedTuple):
    """What the standard library makes of the like."""

    name: str
    tare_g: float = 0.0


def test_fields_defaults_and_methods_are_as_written() -> None:
    """Fields, defaults, methods, properties and the docstring are all there."""
    assert ("name", "tare_g", "lid") == Bowl._fields
    assert {"tare_g": 0.0, "lid": None} == Bowl._field_defaults
    assert Bowl.blue().heavy
    assert str(Bowl.blue()) == "blue"
    assert Bowl.__doc__ == "A bowl."
    assert ("blue", 612.0, None) == Bowl.blue()
    assert Bowl("red") == Bowl("blue")._replace(name="red", tare_g=0.0)


def test_its_names_are_those_of_the_standard_librarys() -> None:
    """Module, qualified name and written form are as they would be there."""
    assert Bowl.__module__ == Lid.__module__
    assert "Lid(name='a', tare_g=0.0)" == repr(Lid("a"))
    assert "Bowl(name='a', tare_g=0.0, lid=None)" == repr(Bowl("a"))
    assert tuple(Lid.__annotations__) == tuple(Bowl.__annotations__)[:2]


@pytest.mark.parametrize("copied", [copy.copy, lambda one: pickle.loads(pickle.dumps(one))])
def test_a_copy_is_equal(copied: typing.Callable[[Bowl], Bowl]) -> None:
    """Copying and pickling give an equal value of the same kind."""
    assert Bowl.blue() == copied(Bowl.blue())
    assert type(copied(Bowl.blue())) is Bowl


def test_nothing_can_be_set() -> None:
    """A value cannot be changed, nor get a field it has not."""
    with pytest.raises(AttributeError):
        Bowl.blue().tare_g = 1.0  # type: ignore[misc]
    with pytest.raises(AttributeError):
        Bowl.blue().colour = "blue"  # type: ignore[attr-defined]


class Plate(NamedTuple):
    """A plate: no fields at all."""


def test_one_without_fields_is_an_empty_tuple() -> None:
    """It can be made, and holds nothing."""
    assert () == Plate()
    assert "Plate()" == repr(Plate())


def test_a_wrong_field_is_refused_as_the_standard_librarys_is() -> None:
    """Of what is not a field, making and replacing say so; of what is missing, making does."""
    with pytest.raises(TypeError, match=r"Bowl.__new__\(\) got an unexpected keyword argument 'l'"):
        Bowl("a", l=2)  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="missing 1 required positional argument: 'name'"):
        Bowl()  # type: ignore[call-arg]
    with pytest.raises(ValueError, match="Bowl has no field 'l'"):
        Bowl("a")._replace(l=2)  # type: ignore[call-arg]


def test_two_of_as_many_fields_keep_their_own_names() -> None:
    """The constructors share their code and neither their fields' names nor their defaults."""

    class Cup(NamedTuple):
        volume_ml: float
        label: str = "us"
        full: bool = True

    assert (240.0, "us", True) == Cup(volume_ml=240.0)
    assert ("blue", 0.0, None) == Bowl(name="blue")
    assert {"volume_ml": 1, "label": "us", "full": True} == Cup._make([1, "us", True])._asdict()
