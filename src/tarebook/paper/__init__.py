"""What is printed or kept as a file: cards, bag labels, charts. Words come from ``cards``.

Files of this room:

- ``press``: the typesetting engine: a template and data in, pages out. Templates share
  ``house.typ``, the look, and ``fit.typ``, how large type may be.
- ``sizes``: card sizes (``card-sizes.csv``), and any width by height.
- ``card``: the recipe card on paper; ``card.typ`` puts its parts on sides, ``card-page.typ`` says
  how large sides and type are, and ``card-measures``, ``-method``, ``-ounce`` and ``-mind`` are the
  parts; ``svg_card``: its sides as one picture.
- ``reach``: how far ranges are drawn.
- ``html_card``: the recipe card as one HTML file; its look is ``card.css``.
- ``html_figures``: its table of figures, with ranges drawn.
- ``html_mind``: cautions in HTML, with their notes.
- ``spelled``: signs that a voice stumbles on, as words.
- ``structured_data``: what other programs may read of it.
- ``plan``: the days of a batch on paper, ``plan.typ``; ``html_plan``: as HTML, ``plan.css``.
- ``elements``: HTML from a builder that escapes.
- ``markdown_card``: the recipe card as Markdown.
- ``who_says_so``: citations as numbered notes.
- ``kitchen_fractions``: fractions as single characters.
- ``sheets``: sheets of labels.
- ``labels``: labels for the bags of one batch.
- ``charts``: comparison and soak charts as pictures.

Nothing here is loaded by a command that does not print.
"""
