"""The command line: one file a command, each around one public function.

Files of this room:

- ``main``: the program, its commands, its exit statuses.
- ``talk``: printing, painting, reading what was asked; the only place that writes to a screen.
- ``interview``: questions at the terminal, asked until an answer will do.
- ``docstrings``: help of commands where Python dropped it (``-OO``).
- ``complete``: shell completion of recipe and food names.
- ``asking``: options that several commands share; ``batch_asking``: those of the batch book;
  ``several``: several recipes at once, each with its meat.
- ``work``: from what was asked to a worksheet.
- ``put``: a page to a file, a pipe or the screen.
- ``today``: the day that a page carries.
- ``next_time``: notes for next time, shown by every command that brings a recipe up again.
- Every other file is a command, or those of a group: ``batch_steps``, ``foods_look``.

Only this room prints or exits: 0 fine; 1 a fault in the record or the work; 2 asked wrongly;
130 interrupted. Commands import what they need inside, so that each starts fast.
"""
