"""The formulas behind a computed fact: what each computes, in symbols, and how far it is valid."""

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import CodeType, FunctionType
from typing import Any

_ROOM = "tailtrue.calc"
_WAYS = "tailtrue.computed"


@dataclass(frozen=True)
class Formula:
    """One formula as its own text tells it; what it does not tell is empty."""

    name: str
    does: str
    formula: str
    valid_for: str
    source: str


def formulas_of(function: Callable[..., Any]) -> tuple[Formula, ...]:
    """The formulas that a way to a fact calls, also through helpers of the same room."""
    return tuple(dict.fromkeys(_formulas(inspect.unwrap(function), set())))


def _formulas(function: Callable[..., Any], met: set[object]) -> Iterator[Formula]:
    if not isinstance(function, FunctionType) or function in met:
        return
    met.add(function)
    cells = [cell.cell_contents for cell in function.__closure__ or ()]
    for one in (*(function.__globals__.get(name) for name in _names(function.__code__)), *cells):
        if not isinstance(one, FunctionType):
            continue
        if one.__module__.startswith(_ROOM) and not one.__module__.endswith(".validity"):
            yield _read(one)
        elif one.__module__.startswith(_WAYS):
            yield from _formulas(one, met)


def _names(code: CodeType) -> Iterator[str]:
    yield from code.co_names
    for inner in code.co_consts:
        if isinstance(inner, CodeType):
            yield from _names(inner)


def _read(function: FunctionType) -> Formula:
    blocks = [" ".join(block.split()) for block in inspect.cleandoc(function.__doc__ or "").split("\n\n")]
    head = [block for block in blocks[: _first_section(blocks)] if block]
    sections = {title: text for title, text in map(_section, blocks) if title}
    return Formula(
        function.__name__.replace("_", " "),
        head[0] if head else "",
        " ".join(head[1:]),
        sections.get("Valid for", ""),
        sections.get("Source", ""),
    )


def _first_section(blocks: list[str]) -> int:
    return next((at for at, block in enumerate(blocks) if _section(block)[0]), len(blocks))


def _section(block: str) -> tuple[str, str]:
    title, rule, text = block.partition(" --")
    if not rule or len(title) > len("Parameters"):
        return "", ""
    return title.strip(), text.lstrip("-").strip()
