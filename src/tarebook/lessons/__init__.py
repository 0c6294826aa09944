"""What the batch book teaches: a kitchen's own shrink, gain and hours, and the next forecast.

Files of this room:

- ``history``: finished batches of a recipe, or of the kitchen, out of the book.
- ``learn``: what such batches say of the next one, and how sure that is.
- ``hours``: how long such batches dried, and what that says of the next one.
- ``weighed``: a batch of the book as a worksheet: its recipe as it was, its weights as they stand.
- ``tables``: counts and spread by recipe, with pandas.
- ``page``: what ``batch lessons`` prints of them, and what ``batch show`` adds.
"""

from tarebook.lessons.learn import learn

__all__ = ["learn"]
