"""The kitchen's file set down anew: order and spacing, nothing else."""

from __future__ import annotations

import pytest

from tarebook.findings import RecordFaulty
from tarebook.kitchen.keys import KEYS
from tarebook.kitchen.read import read_kitchen
from tarebook.kitchen.tidy import tidied
from tarebook.kitchen.write import to_toml, with_answer

MESSY = b"""\
# ours
[bowls]
"red bowl"='4 qt'   # chipped
"big bowl" = "6 qt"
[dryer]
# bought used
tray   = "15 x 13 in"
trays=5 # two are lost


[oven]
lowest = "170 F"
"""
TIDY = """\
[dryer]
trays = 5  # two are lost
# bought used
tray = "15 x 13 in"

[oven]
lowest = "170 F"

# ours
[bowls]
"red bowl" = "4 qt"  # chipped
"big bowl" = "6 qt"
"""


def test_keys_come_in_their_order_and_bowls_in_the_cooks() -> None:
    """Every remark stays with its line, and the second time there is nothing to do."""
    found = tidied(MESSY, file="kitchen.toml")

    assert TIDY == found.decode()
    assert found == tidied(found, file="kitchen.toml")
    assert read_kitchen(MESSY, file="k")[0] == read_kitchen(found, file="k")[0]


def test_what_we_write_is_tidy() -> None:
    """A new file, with one key, with every key, and with one set after."""
    answers = {key.path: key.example for key in KEYS}
    text = to_toml({})
    for path, answer in answers.items():
        assert text.encode() == tidied(text.encode(), file="kitchen.toml"), path
        text = with_answer(text, path, answer)
    assert text.encode() == tidied(text.encode(), file="kitchen.toml")


def test_line_ends_stay() -> None:
    """As the first line has it; a byte order mark goes."""
    messy = b"\xef\xbb\xbf" + b"[dryer]\ntrays=5\n".replace(b"\n", b"\r\n")

    assert b"[dryer]\r\ntrays = 5\r\n" == tidied(messy, file="kitchen.toml")


def test_err_a_faulty_file_is_left_alone() -> None:
    """With its findings, each at its line."""
    with pytest.raises(RecordFaulty) as caught:
        tidied(b"[dryer]\ntrays = 'many'\n[kettle]\n", file="kitchen.toml")

    assert [2, 3] == [one.place.line for one in caught.value.findings if one.place is not None]
