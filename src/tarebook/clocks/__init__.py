"""Clocks: what the cook means by a day and a time, and how long it is from one to another.

Files of this room:

- ``zones``: the kitchen's time zone, and minutes of elapsed time; right across a change of clocks.
- ``moments``: ``Saturday 18:00``, ``yesterday 6pm`` to a moment.

It knows of no plan and no batch: rooms that do, ask here.
"""
