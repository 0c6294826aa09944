"""How tall the parts of a card are reckoned to be, against how tall they are laid out."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
import typst

import tarebook.paper.press as room
from tarebook.cards.content import content
from tarebook.paper.card import card_data
from tarebook.paper.sizes import card_size
from tarebook.recipe.load import shipped_recipes

CARD = "// ---- the card ----"
COMPARED = """
#let parts(known) = (
  front: front(known),
  some-rows: front(known, from: 1, to: measure-count),
  back: back(),
  some-steps: back(from: 1, to: method-count),
  ounce: ounce(known),
  narrow: ounce(known, narrow: true),
  table: table-alone(known),
  said: said-alone,
  recipe: recipe(known),
  whole: whole(known),
)
#context {
  let told = for (name, part) in parts(widths()) {
    for size in (8pt, 9.5pt, 12pt) { for air in (0.6, 1, 1.7) {
      let laid = measure(width: body-width, text(size: size, (part.body)(size, air))).height
      ((name, size.pt(), air, laid.pt(), (part.tall)(size, air).pt()),)
    }}
  }
  [#metadata(told) <told>]
}
"""


def heights(tmp_path: Path, data: dict[str, Any]) -> list[tuple[str, float, float]]:
    """Return what each part is called with its size and air, how tall it is laid, and reckoned."""
    own = Path(room.__file__).parent
    for template in own.glob("*.typ"):
        shutil.copy(template, tmp_path)
    parts, _, rest = (own / "card.typ").read_text("utf-8").partition(CARD)
    builders = rest.rpartition("#context {")[0]
    trial = tmp_path / "trial.typ"
    trial.write_text(parts + builders + COMPARED, "utf-8")
    words = json.dumps(data, ensure_ascii=False)
    found = json.loads(
        typst.query(
            trial,
            "<told>",
            field="value",
            one=True,
            ignore_system_fonts=True,
            sys_inputs={"data": words, "fallbacks": "[]"},
        )
    )
    return [(f"{part}, {size} pt, air {air}", laid, tall) for part, size, air, laid, tall in found]


@pytest.mark.parametrize("name", shipped_recipes())
@pytest.mark.parametrize("size", ["3x5in", "letter"])
def test_parts_are_as_tall_as_they_are_reckoned(
    name: str, size: str, tmp_path: Path, shipped: Any
) -> None:
    """No part is laid out taller than reckoned, so none runs over; nor much less tall."""
    sheet = shipped(name)
    found = heights(tmp_path, card_data(content(sheet), sheet.estimate, card_size(size)))

    assert 10 * 3 * 3 == len(found)
    assert [] == [one for one in found if not one[1] - 0.01 <= one[2] <= 1.02 * one[1] + 10]
