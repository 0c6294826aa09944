"""The exchange with the open vocabulary for recipes (schema.org Recipe as JSON-LD).

Recipes come in with every line that could not be read kept as it was, and nothing invented; ours
go out so that they come back the same.

Files of this room:

- ``page``: finds the Recipe in a JSON-LD file or a saved page; refuses what is hostile.
- ``taken``: what that Recipe says, in plain values.
- ``brought``: those as a TOML file of ours, with places to fill in.
- ``sent``: a recipe of ours as ingredient lines that read back the same.
- ``line``: one ingredient line into amount, foods, note.
- ``plain_line``: what was pasted, in plain characters.
- ``tokens``: numbers, words, marks and brackets.
- ``asides``: optional, to taste, rates; juice of so many fruits.
- ``numbers``: ``one and a half``, ``1,5``, ``three quarters of a``.
- ``unit_words``: the unit at a place, misspelled ones too.
- ``measure``: the amount at a place: containers, sums, second measures.
- ``found``: an amount that was found, and how we write it.
- ``formed``: ``packed`` and ``minced`` from a note to the amount.
- ``names``: the food's name without hands, praise and purpose.
- ``remarks``: headings, yields, steps and tools.
- ``vocabulary``: the words of all that, from ``reference/line-words.txt``.

Imports ``recipe`` and what is below it.
"""
