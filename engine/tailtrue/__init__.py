"""tailtrue: a rules-based machining procedure advisor."""

__version__ = "0.1.0"
