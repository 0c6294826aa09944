"""Files to start from, each with as much in it as its reader knows."""

from __future__ import annotations

KITCHEN_SINK = r"""
#:schema ../reference/recipe.schema.json
title = 'All of "it"'
about = '''
Two lines,
# not a comment'''
cup = "metric"
[meat]
food = "Venison" # by another name
amount = "2 kg 300 g"
thickness = "5–7 mm"
form = "ground"
wild = false
[mixed-in]
"dark \"soy\"" = { food = "soy-sauce", amount = "1 cup plus 2 T", scale = "fixed", note = "ö" }
brown-sugar.amount = "¼ cup packed"
bottle.food = "shoyu"
bottle.amount = "2 oz"
bottle.panel = { serving = "1 Tbsp (17 g)", sodium = "575 mg", sugars = "1 g" }
[mixed-in.curing-salt]
amount = "4 g"
strength = "5.9 %"
[rub]
black-pepper = "to taste"
[soak]
hours = 0.5
surface = "lifted out"
poured-away = false
[heat]
step = "simmered in its marinade"
[drying]
temperature = "60-70 °C"
hours = "5 to 8 h"
yield = "1/3-1/2 %"
[method]
steps = ["Mix.", # first
  "Form.", '''Dry.''' ]
notes = []
"""

SMALLEST = 'title="x"\n[meat]\nfood="elk"\namount="1lb"\n[rub]\nsalt="1 tsp"'

REMARKS = r'''# at the head
[soak] # hours first
hours = "8-12" # overnight
# before the surface
surface = "patted" # "dry" # twice
[meat] # the meat
amount = "2 ½ lb" # "raw"
food = 'deer' # it's ours
[marinade]
# of the house
"a # b" = { amount = "1/4 cup packed", food = "brown-sugar", note = "# no remark" } # one
soy-sauce = "3/4 cup"
# behind the last
[method]
steps = [ # first
  "Mix # well.", # "one"
  # between
  """Two \
  lines""", # two
] # last
# at the end'''.replace("[soak]", 'title = "Remarks" # its name\n[soak]')

BOTTLE = """
name = "Lakeside soy sauce" # the tall one
like = "soy-sauce"
[panel]
serving = "1 Tbsp (17 g)"
energy = "10 kcal"
sodium = "575 mg"
sugars = "0 g"
protein = "<1 g"
[pack]
size = "15 fl oz"
price = 3.49
[allergens]
contains = ["soybeans", "wheat"]
check = ["sesame"]
[source]
from = "own bottle"
"""

KITCHEN = """
[dryer]
trays = 5
tray = "15 x 13 in"
hole = "3 in"
temperature = "95-160 F"
adjustable = true
[oven]
lowest = "170 F"
racks = 2
rack = "21 x 15 in"
[measuring]
set = "full"
[scale]
step = "1 g"
[house]
altitude = "100 m"
units = "us"
sodium-a-day = "1500 mg"
sugars-a-day = "25 g"
[bowls]
"big bowl" = "4 L"
"""

PANTRY = """
[have]
honey = "1 cup"
"soy-sauce" = "1/2 cup"
[packs]
honey = { size = "12 oz", price = 6 }
deer = { size = "1 lb", price = 8.5 }
"""

LOG = """Time,Meat temp (F),Air degC
2026-11-21 08:00:00,40.1,68
2026-11-21 08:01:00,52.5,68.5
2026-11-21 08:02:00,,69
2026-11-21T08:03:00,161.0,999
2026-11-21 08:10:00,165.5,70
2026-11-21 08:09:00,166,70
"""

LOG_OF_CLOCKS = "clock;probe\n11:58 pm;40 °C\n11:59 pm;41,5 °C\n12:00 am;71 °C\n0:01;72 °C\n"

LINE = "1 1/2 cups (355 ml) low-sodium soy sauce, or tamari; divided (optional)"

PAGE = """{"@context": "https://schema.org", "@graph": [{"@type": ["Recipe"], "name": "Lake strips",
"recipeYield": "12 oz", "recipeIngredient": ["2 lb venison, sliced", "3/4 cup soy sauce"],
"recipeInstructions": [{"@type": "HowToSection", "itemListElement": [
{"@type": "HowToStep", "text": "Slice."}, "Soak overnight."]}], "keywords": null, "n": 1.5e3}]}"""

AMOUNTS = (
    *("3/4 cup packed", "1-1/2 T", "6 lb 4 oz", "½–1 tsp", "1 cup plus 2 Tbsp", "a pinch"),
    *("to taste", "3 cloves, minced", "2.5 kg", "1 1/2 fl. oz.", "20 g", "12 leaves"),
)

MOMENTS = (
    *("Saturday 18:00", "tomorrow 7am", "2026-11-28 18:00", "yesterday noon", "25 dec 6 pm"),
    *("2026-03-08 02:30", "2026-11-01 01:30", "18:30", "midnight", "2026-11-28 6pm"),
)
