"""``python -m tailtrue``."""

from tailtrue.cli import run

run()
