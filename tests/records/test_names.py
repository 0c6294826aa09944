"""What recipes go by in the book."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tarebook.records.names import Named, name_in_book, recipe_key, strangers
from tarebook.records.store import reading

Start = Callable[..., object]


def named(which: str, title: str) -> Named:
    """Return what a recipe goes by in the book of this test."""
    with reading() as db:
        return name_in_book(db, which, title)


def test_the_first_goes_by_its_file() -> None:
    """Before any batch a recipe goes by the name of its file, in whichever folder."""
    assert Named("lake") == named("ours/lake.toml", "Lake strips")


def test_moved_or_copied_it_stays_the_same(start: Start) -> None:
    """Another folder changes nothing; nor does how the title is spelled."""
    start("lake")

    assert Named("lake") == named("lake", "Lake strips")
    assert Named("lake") == named("/elsewhere/lake.toml", "Lake strips")
    assert Named("lake") == named("lake", "LAKE  strips.")


def test_two_recipes_of_one_file_name_are_two(start: Start) -> None:
    """The later one has its title behind the file's name, and never hears of the first again."""
    start("lake", title="Lake venison")
    new = named("turkey/lake.toml", "Lake turkey")

    assert Named("lake-lake-turkey", other="Lake venison") == new
    start(new.name, title="Lake turkey")
    assert Named("lake-lake-turkey") == named("turkey/lake.toml", "Lake turkey")
    assert Named("lake") == named("venison/lake.toml", "Lake venison")


def test_a_new_title_that_was_told_to_be_the_same(start: Start) -> None:
    """Once a batch of the new title goes by the old name, both titles do."""
    start("lake", title="Lake venison")
    start("lake", title="Lake venison, less salt")

    assert Named("lake") == named("lake", "Lake venison")
    assert Named("lake") == named("lake", "Lake venison, less salt")
    assert "Lake venison, less salt" == named("lake", "Lake turkey").other


def test_what_comes_down_a_pipe_goes_by_its_title(start: Start) -> None:
    """So that it meets its own batches again."""
    start("lake-strips")

    assert Named("lake-strips") == named("<standard input>", "Lake strips")
    assert Named("piped") == named("-", "Piped")


def test_another_books_recipe_of_the_same_name(start: Start) -> None:
    """It is told before it comes; what is known by that title, or by that name alone, is not."""
    start("lake", title="Lake venison")
    with reading() as db:
        found = strangers(
            db, {("lake", "Lake turkey"), ("lake", "lake VENISON"), ("elk", "Lake turkey")}
        )

    assert [("lake", "Lake turkey", "Lake venison")] == found


@pytest.mark.parametrize(
    ("which", "key"),
    [
        ("juniper-venison", "juniper-venison"),
        ("recipes/juniper-venison.toml", "juniper-venison"),
        ("/home/ours/Juniper Venison.toml", "juniper-venison"),
        ("réno.toml", "réno"),
        ("x" * 300, "x" * 100),
        ("...", "recipe"),
    ],
)
def test_one_name_for_a_recipe(which: str, key: str) -> None:
    """By name or by path it is the same recipe."""
    assert key == recipe_key(which)


def test_a_recipe_from_a_pipe_goes_by_its_title() -> None:
    """What has no name goes by its title, whether it is asked for or was opened."""
    assert "lake-strips-no-2" == recipe_key("-", "Lake strips, no. 2")
    assert "lake-strips-no-2" == recipe_key("<standard input>", "Lake strips, no. 2")
