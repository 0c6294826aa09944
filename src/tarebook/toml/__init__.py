"""TOML that a person wrote: read with every fault at once, each on its line, in a cook's words.

Files of this room:

- ``document``: a whole file to what it means; the other files are its road.
- ``text``: bytes to text.
- ``syntax``: text to TOML values; a syntax fault is said in a cook's words.
- ``locate``: the line of each key.
- ``pieces``: a text taken apart, remarks and all; ``layout``: set down again, our way.
- ``anew``: a whole file set down, and whether a remark would be lost.
- ``fault``: faults on their way to becoming findings.

Knows nothing of what the keys mean: recipes, kitchens and bottles all come through here.
"""
