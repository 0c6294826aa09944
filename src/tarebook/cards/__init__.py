"""What leaves the tool on a screen or on paper. Finished values only; no kitchen arithmetic.

Files of this room:

- ``worksheet``: everything about one recipe at one size, gathered from the rooms below.
- ``words``: words that several pages share.
- ``content``: the words of a card in order, before anything decides how they look.
- ``on_paper``: cautions as paper says them, without hints for the recipe's file.
- ``own_steps``: the recipe's steps where nothing is poured away; ``todays_heat``: where the heat
  step is another than theirs.
- ``lines``: styled lines, wrapping and columns that count what a terminal shows.
- ``figures``: how ranges, ounces and "at least" are worded.
- ``bars``: ranges drawn with characters, so that overlapping ones look overlapping.
- ``sheet``: what ``scale`` prints.
- ``a_day_words``: an ounce and the house's own figures for a day.
- ``why``: every assumption behind the figures, and which matters most.
- ``text_card``: the recipe card as text, 60 columns.
- ``soak_page``: what ``soak`` prints.
- ``kitchen_page``: what ``kitchen`` prints.
- ``plan_content``: the words of a plan; ``plan_counted``: what it counts with; ``plan_page``: what
  ``plan`` prints; ``plan_keys``: its data.
- ``drying_page``: what ``drying`` prints; ``probe_page``, ``shopping_page``, ``shelf_page``,
  ``target_page``: what ``probe``, ``shop``, ``list`` and ``target`` print.
- ``lookup_page``: what ``foods lookup`` prints; ``food_page``, ``bottle_page``: what ``foods show``
  prints; ``bottles_page``: what ``foods own`` prints.
- ``batch_words``: what an entry of the batch book says; ``batch_page``: what ``batch show`` and
  ``list`` print; ``batch_wordings``: how a recipe was written; ``next_notes``: notes for next time.
- ``beside``: variants side by side, what ``compare`` prints.
- ``spreadsheet``: what ``scale`` and ``compare`` tell, as rows of cells.
- ``keys``: the same values as plain data with stable keys, what ``--json`` prints.
"""
