"""A reader of the finished page, for the tests: elements, and their words in order."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

from pydantic import BaseModel

from tailtrue.parts import Figure

_EMPTY = {"meta", "input", "br", "path", "rect", "col"}


@dataclass
class Element:
    """One element of a page."""

    tag: str
    attributes: dict[str, str]
    children: list["Element | str"] = field(default_factory=list)

    @property
    def words(self) -> str:
        """All the text inside, in order."""
        return "".join(child if isinstance(child, str) else child.words for child in self.children)

    def all(self, tag: str = "", kind: str = "") -> Iterator["Element"]:
        """The elements inside with a tag and a class, in order."""
        for child in self.children:
            if isinstance(child, Element):
                if (not tag or child.tag == tag) and (not kind or kind in child.attributes.get("class", "").split()):
                    yield child
                yield from child.all(tag, kind)


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.root = Element("root", {})
        self._open = [self.root]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self._open[-1].children.append(element)
        if tag not in _EMPTY:
            self._open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._open[-1].children.append(Element(tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        assert self._open[-1].tag == tag, f"</{tag}> closes <{self._open[-1].tag}>"
        self._open.pop()

    def handle_data(self, data: str) -> None:
        self._open[-1].children.append(data)


def read_page(text: str) -> Element:
    """The page as a tree; fails when an element is not closed in its turn."""
    reader = _Reader()
    reader.feed(text)
    reader.close()
    assert reader._open == [reader.root], "an element is left open"
    return reader.root


def figures(node: object) -> Iterator[Figure]:
    """Every figure of a tree."""
    if isinstance(node, Figure):
        yield node
    elif isinstance(node, BaseModel):
        for name in type(node).model_fields:
            yield from figures(getattr(node, name))
    elif isinstance(node, dict):
        for value in node.values():
            yield from figures(value)
    elif isinstance(node, tuple):
        for value in node:
            yield from figures(value)
