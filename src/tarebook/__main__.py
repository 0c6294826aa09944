"""``python -m tarebook``."""

from tarebook.cli.main import run

run()
