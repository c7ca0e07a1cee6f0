"""The command line. Each command imports what it needs only when it runs."""

from tailtrue.cli.main import app, run

__all__ = ["app", "run"]
