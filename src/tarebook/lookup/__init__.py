"""The US government's open table of foods, asked over the net, and only where a cook asks it.

Everything else works without it. The service is FoodData Central of the US Department of
Agriculture; what it holds is in the public domain.

Files of this room:

- ``limits``: how long it may take, and how much it may send.
- ``key``: the key that the service asks for; nothing ever prints it.
- ``wire``: one question and its answer, within the limits. The only place that talks to a network.
- ``unpack``: an answer's bytes counted, unpacked, and read as JSON.
- ``kept``: the file in which answers are kept.
- ``client``: a question answered from the net, or from what is kept.
- ``answers``: the documented answers, read into values.
- ``amounts``: their figures, each checked for its unit; what is missing stays unknown.
- ``taken``: a food of the table as a bottle of the cook's own.

Nothing here is loaded by any other command.
"""
