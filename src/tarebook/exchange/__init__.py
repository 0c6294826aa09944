"""The exchange with the open vocabulary for recipes (schema.org Recipe as JSON-LD).

Recipes come in with every line that could not be read kept as it was, and nothing invented; ours
go out so that they come back the same.

Files of this room:

- ``line``: one ingredient line into amount, foods, note.
- ``plain_line``: what was pasted, in plain characters.
- ``tokens``: numbers, words, marks and brackets.
- ``numbers``: ``one and a half``, ``1,5``, ``three quarters of a``.
- ``unit_words``: the unit at a place, misspelled ones too.
- ``measure``: the amount at a place: containers, sums, second measures; ``found``: what it is
  then, and how a recipe of ours writes it.
- ``asides``: what is said beside amount and food: optional, to taste, a rate.
- ``names``: the food's name without hands, praise and purpose.
- ``remarks``: headings, yields, steps and tools.
- ``vocabulary``: the words of all that.
"""
