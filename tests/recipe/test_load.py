"""Finding a recipe: by path, by name, on standard input; and what is said where there is none."""

from __future__ import annotations

import io
import os
import sys
from pathlib import Path

import pytest

from tarebook.findings import FileUnreadable, RecipeFaulty, Severity
from tarebook.recipe import find_recipes, load_recipe, recipe_bytes, shipped_recipes
from tarebook.recipe.load import own_names
from tarebook.where import folder

GOOD = 'title = "x"\n[meat]\nfood = "elk"\namount = "1 lb"\n[rub]\nhoney = "1 T"\n'


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give a folder of three recipes as the current one."""
    for name in ("autumn-elk.toml", "spring-elk.toml", "below/winter-elk.toml"):
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(GOOD, encoding="utf-8")
    (tmp_path / "notes.txt").write_text("no recipe", encoding="utf-8")
    (tmp_path / ".hidden.toml").write_text("", encoding="utf-8")
    (tmp_path / ".kept").mkdir()
    (tmp_path / ".kept" / "x.toml").write_text("", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_by_path(kitchen: Path) -> None:
    """A path is read as it stands, and its findings come along and name it as it was given."""
    recipe, findings = load_recipe("below/winter-elk.toml")
    assert "below/winter-elk.toml" == recipe.file
    assert ["below/winter-elk.toml:6: note: T read as tablespoon (rub.honey)"] == [
        str(finding) for finding in findings
    ]
    assert recipe == load_recipe(Path("below/winter-elk.toml"))[0]


def test_shipped_by_name(kitchen: Path) -> None:
    """A shipped recipe is found by its bare name from any folder."""
    names = shipped_recipes()
    assert 8 <= len(names)
    assert list(names) == sorted(names)
    for name in names:
        recipe, findings = load_recipe(name)
        assert f"{name}.toml" == recipe.file
        assert Severity.ERROR not in {finding.severity for finding in findings}


def test_own_file_before_a_shipped_one(kitchen: Path) -> None:
    """A file of the cook's own wins over a shipped recipe of the same name."""
    name = shipped_recipes()[0]
    (kitchen / name).write_text(GOOD, encoding="utf-8")
    assert "x" == load_recipe(name)[0].title


def test_standard_input(monkeypatch: pytest.MonkeyPatch) -> None:
    """A dash reads what is piped in, whatever its encoding marks."""
    piped = io.TextIOWrapper(io.BytesIO(b"\xef\xbb\xbf" + GOOD.encode()))
    monkeypatch.setattr(sys, "stdin", piped)
    recipe, findings = load_recipe("-")
    assert ("x", "<standard input>") == (recipe.title, recipe.file)
    assert {"byte-order-mark", "reading"} == {finding.code for finding in findings}


def test_no_standard_input(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nothing can be piped in, that is said."""
    monkeypatch.setattr(sys, "stdin", None)
    with pytest.raises(FileUnreadable, match=r"^there is no standard input to read a recipe from$"):
        load_recipe("-")


def test_a_faulty_recipe_raises_with_everything(kitchen: Path) -> None:
    """Errors and notes of the file travel together in the exception."""
    (kitchen / "bad.toml").write_text(GOOD.replace('"elk"', "3"), encoding="utf-8")
    with pytest.raises(RecipeFaulty) as caught:
        load_recipe("bad.toml")
    assert ["wrong-type", "reading"] == [finding.code for finding in caught.value.findings]


@pytest.mark.parametrize(
    ("which", "expected"),
    [
        (
            "autumm-elk.toml",
            'there is no recipe "autumm-elk.toml"; did you mean "autumn-elk.toml"?',
        ),
        ("autum-elk", 'there is no recipe "autum-elk"; did you mean "autumn-elk.toml"?'),
        (
            "below/winterelk.toml",
            'there is no recipe "below/winterelk.toml"; did you mean "below/winter-elk.toml"?',
        ),
        (
            "juniper-venision",
            'there is no recipe "juniper-venision"; did you mean "juniper-venison"?',
        ),
        (
            "below",
            '"below" is a folder; name one file in it, or check the whole folder with '
            "tarebook check",
        ),
        ("a\0b", '"a\\x00b" cannot be read: no file can have this name'),
    ],
)
def test_what_is_said_of_a_recipe_that_is_not_there(
    kitchen: Path, which: str, expected: str
) -> None:
    """The message says what to try: names that are near, or what else to type."""
    with pytest.raises(FileUnreadable) as caught:
        load_recipe(which)
    assert expected == str(caught.value)


@pytest.mark.parametrize("which", ["zzzz", "nowhere/at/all/zzzz.toml", "notes.txt/zzzz.toml"])
def test_where_nothing_is_near_the_shipped_ones_are_named(kitchen: Path, which: str) -> None:
    """A cook who guesses wildly learns the names there are."""
    with pytest.raises(FileUnreadable) as caught:
        load_recipe(which)
    for name in shipped_recipes():
        assert name in str(caught.value)


def test_a_name_too_long_for_any_file(kitchen: Path) -> None:
    """Even that is one clear sentence, and short."""
    with pytest.raises(FileUnreadable) as caught:
        load_recipe("x" * 5000)
    assert len(str(caught.value)) < 400


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root reads all")
def test_a_file_that_may_not_be_read(kitchen: Path) -> None:
    """A file of someone else's is named as such."""
    (kitchen / "autumn-elk.toml").chmod(0)
    with pytest.raises(FileUnreadable, match="may not be read"):
        load_recipe("autumn-elk.toml")


def test_no_more_is_read_than_a_recipe_may_have(kitchen: Path) -> None:
    """A huge file is refused without being read to its end."""
    with (kitchen / "huge.toml").open("wb") as file:
        file.truncate(3_000_000_000)
    assert 1_000_001 == len(recipe_bytes("huge.toml")[0])
    with pytest.raises(RecipeFaulty, match="more than 1,000,000 bytes"):
        load_recipe("huge.toml")


def test_find_recipes(kitchen: Path) -> None:
    """A folder gives its recipe files, those below too, hidden ones never; a file gives itself."""
    expected = ["autumn-elk.toml", "spring-elk.toml", "below/winter-elk.toml"]
    assert expected == [path.as_posix() for path in find_recipes(".")]
    assert (Path("autumn-elk.toml"),) == find_recipes("autumn-elk.toml")
    for name in ("-", shipped_recipes()[0]):
        assert (Path(name),) == find_recipes(name)
    assert len(shipped_recipes()) == len(find_recipes(folder("recipes")))


def test_find_recipes_does_not_follow_links(kitchen: Path) -> None:
    """A folder that links to itself is walked once."""
    (kitchen / "loop").symlink_to(kitchen, target_is_directory=True)
    assert 3 == len(find_recipes(kitchen))


def test_find_recipes_in_a_folder_without(kitchen: Path) -> None:
    """An empty folder is an answer a cook must see, not silence."""
    (kitchen / "empty").mkdir()
    with pytest.raises(FileUnreadable, match=r'^there is no \.toml file in the folder "empty"$'):
        find_recipes("empty")


def test_the_cooks_own_recipe_is_found_by_its_name(own_home: Path) -> None:
    """A file in the cook's own folder goes by its name, and wins over a shipped one of it."""
    own = own_home / "recipes"
    own.mkdir(parents=True)
    text = (folder("recipes") / "juniper-venison.toml").read_text(encoding="utf-8")
    for name in ("grandmothers", "juniper-venison"):
        (own / f"{name}.toml").write_text(text.replace("Juniper", "Grandmother's"), "utf-8")

    assert load_recipe("grandmothers")[0].title.startswith("Grandmother's")
    assert load_recipe("juniper-venison")[0].title.startswith("Grandmother's")
    assert ("grandmothers", "juniper-venison") == own_names()


@pytest.mark.parametrize("what", ["folder", "link to nothing"])
def test_err_what_stands_for_an_own_recipe_is_no_file(what: str, own_home: Path) -> None:
    """The shipped recipe of that name is not taken in its place: the cook meant another."""
    own = own_home / "recipes" / "juniper-venison.toml"
    own.parent.mkdir(parents=True)
    if what == "folder":
        own.mkdir()
    else:
        own.symlink_to(own_home / "gone.toml")

    with pytest.raises(FileUnreadable, match="juniper-venison"):
        load_recipe("juniper-venison")


@pytest.mark.parametrize("name", ["../secret", "..", ".", "a/b"])
def test_err_a_name_leads_to_no_other_folder(name: str, own_home: Path) -> None:
    """A name is a name: no path is made of it."""
    (own_home / "recipes").mkdir(parents=True)
    (own_home / "secret.toml").write_text("title = 3", encoding="utf-8")

    with pytest.raises(FileUnreadable):
        load_recipe(name)
