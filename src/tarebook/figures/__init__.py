"""Facts about foods, each with who says so: the tables of ``reference/`` and nothing else.

Files of this room, each beside the tables it reads:

- ``foods``: ``food``, ``find_foods``, ``food_keys``, ``salt_kinds``, ``Food`` (``foods.csv``).
- ``spoken``: a name of a food as a cook says it.
- ``nutrients``: ``nutrients``, ``values``, ``printed``, ``citation``, ``FIGURES``, ``Figure``:
  what 100 g holds (``nutrients.csv``, ``remedies.csv``, ``ranges.csv``).
- ``dried``: ``dried_products``: finished dried meats to compare with (``dried-products.csv``).
- ``measures``: ``density``, ``count_mass``, ``measures``: what a spoon, a cup or a clove weighs
  (``measures.csv``).
- ``sugars``: ``split``: which sugars, and which of them are added (``sugars.csv``).
- ``lower_sodium``: which food stands for which with less salt in it (``lower-sodium.csv``).
- ``daily_values``: ``daily_values``: a day's worth on a US label (``daily-values.csv``).
- ``drying_times``: ``drying_times``: hours that others printed (``drying-times.csv``).
- ``task_times``: ``minutes``: how long the work takes (``task-times.csv``).
- ``working``: ``value``: the assumptions of the model (``working-values.csv``).
- ``sources``: ``sources``: the publications behind all of them (``sources.toml``).
- ``table``: reads a CSV file; with ``sources`` the only one here that opens files.

Nothing is read before it is asked for, and a name is imported from its own file, so that a command
pays only for the tables it touches. An empty cell means *not known*, never zero.
"""
