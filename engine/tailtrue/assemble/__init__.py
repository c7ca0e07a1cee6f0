"""Making the typed tree of a procedure from a case and its plan."""

from tailtrue.assemble.whole import assemble, record_alone

__all__ = ["assemble", "record_alone"]
