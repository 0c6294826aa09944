"""The typesetting engine."""

from __future__ import annotations

import io
import subprocess
import sys
import warnings
from pathlib import Path
from xml.etree import ElementTree

import pypdf
import pytest

import tarebook.paper.press as room
from tarebook.paper.press import press

TEMPLATE = """
#import "house.typ": *
#set document(title: "Trial", date: none)
#set page(width: 6in, height: 4in)
#show: in-house-type
#for words in data.pages [= Head
#words #pagebreak(weak: true)]
"""


@pytest.fixture(autouse=True)
def trial(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A room with one small template beside the house's own look."""
    own = Path(room.__file__).parent
    (tmp_path / "house.typ").write_text((own / "house.typ").read_text("utf-8"), "utf-8")
    (tmp_path / "trial.typ").write_text(TEMPLATE, "utf-8")
    monkeypatch.setattr(room, "_HERE", tmp_path)


def text_of(pdf: bytes) -> str:
    """Return what a document says."""
    return "\n".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages)


def test_a_document_is_one_and_pictures_are_one_a_page() -> None:
    """A PDF holds all its pages; pictures come page by page."""
    data = {"pages": ["one", "two", "three"]}
    (document,) = press("trial.typ", data)

    assert 3 == len(pypdf.PdfReader(io.BytesIO(document)).pages)
    assert 3 == len(press("trial.typ", data, form="svg"))
    assert 3 == len(press("trial.typ", data, form="png", ppi=30))
    assert 1 == len(press("trial.typ", {"pages": ["one"]}, form="png"))


def test_pictures_are_what_they_are_called() -> None:
    """An SVG is well-formed; a PNG has as many dots as was asked for."""
    (svg,) = press("trial.typ", {"pages": ["one"]}, form="svg")
    (png,) = press("trial.typ", {"pages": ["one"]}, form="png", ppi=50)

    assert ElementTree.fromstring(svg).tag.endswith("svg")
    assert b"\x89PNG" == png[:4]
    assert (300, 200) == tuple(int.from_bytes(png[at : at + 4]) for at in (16, 20))


def test_a_document_is_tagged_for_those_who_have_it_read_to_them() -> None:
    """It says its language and title, has a tree of tags, and claims PDF/UA-1."""
    reader = pypdf.PdfReader(io.BytesIO(press("trial.typ", {"pages": ["one"]})[0]))
    catalog = reader.trailer["/Root"]

    assert "en" == catalog["/Lang"]
    assert catalog["/MarkInfo"]["/Marked"]
    assert "/StructTreeRoot" in catalog
    assert reader.metadata is not None and "Trial" == reader.metadata.title
    assert b"pdfuaid:part" in reader.trailer["/Root"]["/Metadata"].get_data()


def test_data_is_never_markup() -> None:
    """What means something to the engine is printed as it stands."""
    hostile = (
        '#panic("no") $x^2$ *b* _i_ @ref <here> \\ // no /* no */ `raw` ~ -- [#pagebreak()] "q"'
    )
    (document,) = press("trial.typ", {"pages": [hostile]})

    assert hostile in " ".join(text_of(document).split())
    assert 1 == len(pypdf.PdfReader(io.BytesIO(document)).pages)


def test_the_engine_has_the_letters_of_a_kitchen() -> None:
    """Fractions, degrees, accents, Greek and Cyrillic need no font of the computer."""
    words = "½ ⅓ ⅔ ¼ ¾ ⅛ ⅜ ⅝ ⅞ 160 °F ≥ − µg – “q” crème żółć Ångström phở Ελλάδα борщ"
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        (document,) = press("trial.typ", {"pages": [words]})

    assert words in " ".join(text_of(document).split())


def test_accents_apart_are_joined() -> None:
    """A letter and its accent, written as two, are printed as the one that fonts have."""
    (document,) = press("trial.typ", {"pages": ["cre\u0300me"]})

    assert "crème" in text_of(document)


@pytest.mark.parametrize("pair", ["q\u0303", "h\u030b", "m\u0304", "b\u030a"])
def test_a_letter_and_an_accent_of_no_single_sign_are_printed(pair: str) -> None:
    """Where no font has a letter with that accent as one sign, both stand on the page."""
    told: list[str] = []
    (document,) = press("trial.typ", {"pages": [f"a{pair}a"]}, tell=told.append)
    fonts = {
        font.get_object()["/BaseFont"]
        for page in pypdf.PdfReader(io.BytesIO(document)).pages
        for font in page["/Resources"]["/Font"].values()
    }

    assert [] == told
    assert pair in text_of(document)
    assert all("Libertinus" in one or "NewCM" in one for one in fonts)


def test_an_accent_that_no_font_has_leaves_its_letter() -> None:
    """The mark is named and left out; the letter beneath it is printed, and is not called lost."""
    told: list[str] = []
    (document,) = press("trial.typ", {"pages": ["bac\u1aceon"]}, tell=told.append)

    assert "bacon" in text_of(document).replace("\u1ace", "")
    assert 1 == len(told) and "U+1ACE" in told[0] and "U+0063" not in told[0]


@pytest.mark.parametrize(("title", "own"), [("肉の燻製", False), ("🍖", False), ("لحم مجفف", True)])
def test_a_title_in_another_script_is_never_silently_blank(title: str, own: bool) -> None:
    """It is printed in the engine's fonts, or told of where it is borrowed or a box."""
    told: list[str] = []
    (svg,) = press("trial.typ", {"pages": [title]}, form="svg", tell=told.append)
    bare, *_ = press("trial.typ", {"pages": ["\u2003"]}, form="svg", tell=told.append)

    assert svg.count(b"<use") > bare.count(b"<use") or svg.count(b"<image") > bare.count(b"<image")
    assert own is not any("in a font of this computer" in one or "empty box" in one for one in told)


@pytest.mark.parametrize("form", ["pdf", "svg", "png"])
def test_a_letter_that_no_font_of_the_engine_has_is_told(form: room.Form) -> None:
    """Whether a font of the computer has it or none, the letter is named; the page is printed."""
    told: list[str] = []
    pages = press("trial.typ", {"pages": ["dried 肉 \ufffe"]}, form=form, tell=told.append)

    assert pages[0]
    assert "U+8089" in "".join(told)
    assert "no font here has" in told[-1] and "U+FFFE" in told[-1]
    assert all(one.startswith("note: ") for one in told)


def test_who_does_not_listen_is_warned() -> None:
    """From Python, a letter that is lacking comes as a warning."""
    with pytest.warns(UserWarning, match=r"U\+FFFE"):
        press("trial.typ", {"pages": ["\ufffe"]})


def test_a_fault_of_a_template_is_no_lack_of_letters() -> None:
    """What else goes wrong in the engine is not hushed up."""
    import typst

    (room._HERE / "broken.typ").write_text("#nothing-of-that-name", "utf-8")
    with pytest.raises(typst.TypstError, match="unknown variable"):
        press("broken.typ", {})


def test_the_same_data_makes_the_same_bytes_whenever_and_wherever() -> None:
    """No clock, time zone or hash seed shows in a document or a picture."""
    code = (
        "import hashlib, sys, pathlib, tarebook.paper.press as room\n"
        "room._HERE = pathlib.Path(sys.argv[1])\n"
        "for form in ('pdf', 'svg', 'png'):\n"
        "    pages = room.press('trial.typ', {'pages': ['one', 'two ½']}, form=form)\n"
        "    print(hashlib.sha256(b''.join(pages)).hexdigest())\n"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", code, str(room._HERE)],
            env={"PYTHONHASHSEED": seed, "TZ": zone},
            capture_output=True,
            check=True,
        ).stdout
        for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo"))
    }

    assert 1 == len(runs) and 3 == len(runs.pop().split())


def test_templates_are_found_as_files_of_the_package() -> None:
    """Every template lies beside the module that presses it."""
    own = Path(room.__file__).parent

    assert {"house.typ", "fit.typ", "card.typ"} <= {path.name for path in own.glob("*.typ")}
