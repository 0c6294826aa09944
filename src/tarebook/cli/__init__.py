"""The command line: one file a command, each around one public function.

Files of this room:

- ``main``: the program, its commands, its exit statuses.
- ``talk``: printing, painting, reading what was asked; the only place that writes to a screen.
- ``ask``: questions at the terminal, asked until an answer will do.
- ``complete``: shell completion of recipe and food names.
- ``put``: a page to a file, a pipe or the screen.
- ``scale``, ``card``, ``compare``, ``soak``, ``check``, ``new``, ``foods``, ``convert``,
  ``kitchen``, ``plan`` and the others: the commands.

Only this room prints or exits: 0 fine; 1 a fault in the record or the work; 2 asked wrongly;
130 interrupted. Commands import what they need inside, so that each starts fast.
"""
