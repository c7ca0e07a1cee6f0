"""Dimensions in a row add up to their total as they are printed, on every drawing of the shipped examples."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import product
from pathlib import Path

import pytest

from documents.made import SHIPPED
from tailtrue.advise import make_procedure
from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.chain import reference
from tailtrue.render.drawing import bar_drawing
from tailtrue.render.figures import figure_of
from tailtrue.render.ink import Ink

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
DIALS: tuple[Dials, ...] = ("metric", "inch")
Lines = dict[tuple[float, float, float], str]


@pytest.fixture
def lines(monkeypatch: pytest.MonkeyPatch) -> Lines:
    """The dimension lines along the part as they are drawn: from, to, level; and the number that is set to each."""
    drawn: Lines = {}
    between, words = Ink.between, Ink.words

    def line(ink: Ink, left: float, right: float, y: float) -> None:
        drawn[round(left, 3), round(right, 3), y] = ""
        between(ink, left, right, y)

    def number(ink: Ink, x: float, y: float, said: Sequence[str], anchor: str = "start", kind: str = "") -> None:
        last = next(reversed(drawn), None)
        if kind == "size" and last is not None and not drawn[last]:
            drawn[last] = said[0]
        words(ink, x, y, said, anchor, kind)  # type: ignore[arg-type]

    monkeypatch.setattr(Ink, "between", line)
    monkeypatch.setattr(Ink, "words", number)
    return drawn


def sizes(lines: Lines) -> dict[tuple[float, float], Decimal]:
    return {(left, right): Decimal(number.strip("()")) for (left, right, _), number in lines.items()}


def rows(sizes: dict[tuple[float, float], Decimal], start: float, end: float) -> Iterator[tuple[Decimal, ...]]:
    """Every row of dimensions, one beginning where the other ends, from one place to another."""
    for (left, right), size in sizes.items():
        if left == start and right == end:
            yield (size,)
        elif left == start and right < end:
            yield from ((size, *rest) for rest in rows(sizes, right, end))


def drawings(name: str) -> Iterator[tuple[Drawing, str]]:
    tree = make_procedure(EXAMPLES / f"{name}.toml")
    for dials in DIALS:
        if tree.drawing is not None:
            yield tree.drawing, bar_drawing(tree.drawing, dials)
        for drawing in tree.drawings:
            yield drawing, figure_of(drawing, dials)


def test_parts_that_are_printed_add_up_to_the_total_that_is(lines: Lines) -> None:
    closed = 0
    for name in SHIPPED:
        for drawing, _ in drawings(name):
            found = sizes(lines)
            for (start, end), size in found.items():
                for row in rows(found, start, end):
                    assert sum(row) == size, (name, drawing.id, row, size)
                    closed += len(row) > 1
            lines.clear()
    assert closed > 50


def test_one_of_a_closed_row_stands_in_parentheses(lines: Lines) -> None:
    for name in SHIPPED:
        for drawing, _ in drawings(name):
            found = sizes(lines)
            for start, end in found:
                if any(len(row) > 1 for row in rows(found, start, end)):
                    inside = [text for (left, right, _), text in lines.items() if start <= left and right <= end]
                    assert sum(text.startswith("(") for text in inside) == 1, (name, drawing.id, inside)
            lines.clear()


def test_what_rounding_would_contradict_is_left_off(lines: Lines) -> None:
    """Grip and what stands out make the width in millimetres; in inches, each rounded alone, they do not."""
    written = dict.fromkeys(DIALS, "")
    tree = make_procedure(EXAMPLES / "quarry-road" / "job.toml")
    held = next(one for one in tree.drawings if one.kind == "blank-held")
    for dials in DIALS:
        lines.clear()
        figure_of(held, dials)
        written[dials] = " ".join(lines.values())
    assert written == {"metric": "6.2 9.5 15.9 (22.1)", "inch": "0.24 0.38 0.62"}


@pytest.mark.parametrize(("total", "written"), [("0.86", "(0.86)"), ("0.87", ""), ("0.85", "")])
def test_a_total_that_its_parts_do_not_make_is_not_written(total: str, written: str) -> None:
    assert reference(0, 28, total, [(0, 20, "0.62"), (20, 28, "0.24")]) == written


@pytest.mark.parametrize(("first", "second"), list(product(("0.20", "0.21"), ("0.70", "0.69"))))
def test_a_part_follows_from_the_total_and_the_other_parts(first: str, second: str) -> None:
    others = [(0.0, 10.0, first), (10.0, 40.0, second), (0.0, 50.0, "1.00")]
    assert reference(40, 50, "0.10", others) == ("(0.10)" if Decimal(first) + Decimal(second) == Decimal("0.90") else "")


def test_a_dimension_that_the_others_leave_open_is_one_of_its_own() -> None:
    assert reference(0, 50, "1.25", [(0, 20, "0.50"), (30, 50, "0.50")]) == "1.25"


def test_a_size_that_goes_by_a_name_adds_up_to_nothing() -> None:
    assert reference(0, 50, "1.25", [(0, 20, "3/8"), (20, 50, "0.75")]) == "1.25"
    assert reference(0, 50, "1 1/4", [(0, 20, "0.50"), (20, 50, "0.75")]) == "1 1/4"
