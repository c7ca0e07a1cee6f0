"""From the typed tree to a page. Knows paper and words, nothing of machining.

Many rooms need its words and numbers and make no page, so what makes one is imported when it is asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tailtrue.render.html import to_html
    from tailtrue.render.markdown import to_markdown

__all__ = ["to_html", "to_markdown"]

_STANDS_IN = {"to_html": "html", "to_markdown": "markdown"}


def __getattr__(name: str) -> Any:
    if name not in _STANDS_IN:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_STANDS_IN[name]}"), name)
