"""The days of a batch: from the freezer to the packed bag, with clock times.

Works back from the hour when all must be ready, or forward from a start: the same plan either way.
It says what it counts, what overlaps, and what does not go as asked, with what to do instead. Raw
meat waits in the cold and never lies in its marinade over the cautious limit, whatever the recipe
says. Lengths of work are estimates, and strips are dry enough by the bend test, not by this.

Files of this room, in the order of the road:

- ``words``: clock times in words; ``nights``: when nobody wants to be needed.
- ``trays``: how much tray a batch takes, and how many loads that makes.
- ``hours``: how long a load dries, as far as anybody can tell.
- ``heat``: which heat step may be had, and what each does to the strips.
- ``jobs``: a recipe at today's weight as plain minutes and trays.
- ``shares``: what each of several loads takes of the marinade, and its own curing salt.
- ``parted``: a recipe thawed load by load, or of fewer loads.
- ``tasks``: spans of minutes, tasks, portions, batches.
- ``place``: where in time everything goes; a pure function over plain values.
- ``steps``: the plan in words, with what is done in between; ``step_words``: of each step.
- ``turns``: when a soak is turned, by day.
- ``cold``: how long raw meat is out of the cold, and how long it waits in it.
- ``said``: something to say of a plan. ``conflicts``: what does not go as asked, or is at odds with
  published advice; ``recipe_conflicts``: of that, what the recipe says otherwise; ``notes``: what
  is good to know; ``mind``: what the safety rules say of these days.
- ``make``: ``make_plan``: all of it together.
- ``calendar``: the plan as an iCalendar file.

Loaded only by the command that plans.
"""
