"""From the typed tree to a page. Knows paper and words, nothing of machining."""

from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown

__all__ = ["to_html", "to_markdown"]
