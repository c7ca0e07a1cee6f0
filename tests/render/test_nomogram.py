"""The scales of a bar, read off the drawing itself with a straight edge."""

import re
from itertools import pairwise
from math import log10

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.parts import Figure
from tailtrue.record_sheet import Scales
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.nomogram import HEIGHT, WIDTH, height_of_difference, height_of_factor, height_of_move, nomogram

from .reading import Element, read_page

INCH = 25.4


def length(fact: str, value: float) -> Figure:
    return Figure(fact=fact, value=value, unit="mm", rounding="difference")


def scales(factor: float, least: float = 0.002, most: float = 0.2, again: bool = True) -> Scales:
    return Scales(
        least=length("least", least),
        most=length("most", most),
        factor=Figure(fact="factor", value=factor, unit="1", rounding="ratio"),
        leave=length("leave", 0.014),
        again=length("again", 0.022) if again else None,
    )


def upright(svg: Element, kind: str) -> list[float]:
    """Where the long upright lines of a kind stand."""
    found = []
    for one in svg.all("path", kind):
        points = [tuple(map(float, pair)) for pair in re.findall(r"([\d.]+) ([\d.]+)", one.attributes["d"])]
        if len(points) == 2 and points[0][0] == points[1][0] and abs(points[0][1] - points[1][1]) > 100:
            found.append(points[0][0])
    return sorted(found)


def numbers(svg: Element, side: str) -> list[tuple[float, float]]:
    """Value and height of the numbers beside a scale, as they are printed."""
    return sorted(
        (float(one.words), float(one.attributes["y"]) - 1.2)
        for one in svg.all("text", "size")
        if re.fullmatch(r"\d+\.\d+", one.words) and one.attributes["text-anchor"] == side
    )


def height(value: float, marks: list[tuple[float, float]]) -> float:
    """The height of a value between its two neighbours, as the eye finds it on a logarithmic scale."""
    for (low, y1), (high, y2) in pairwise(marks):
        if low <= value <= high:
            return y1 + (y2 - y1) * log10(value / low) / log10(high / low)
    raise AssertionError(f"{value} is not between two numbers of the scale")


def value_at(y: float, marks: list[tuple[float, float]]) -> float:
    for (low, y1), (high, y2) in pairwise(marks):
        if min(y1, y2) <= y <= max(y1, y2):
            return float(low * 10 ** ((y - y1) / (y2 - y1) * log10(high / low)))
    raise AssertionError(f"nothing is printed beside {y}")


def mark_of_the_bar(svg: Element) -> tuple[float, float]:
    """The middle of the closed diamond."""
    (diamond,) = [one for one in svg.all("path", "edge") if one.attributes["d"].endswith("Z")]
    points = [tuple(map(float, pair)) for pair in re.findall(r"([\d.]+) ([\d.]+)", diamond.attributes["d"])]
    return sum(x for x, _ in points) / 4, sum(y for _, y in points) / 4


@pytest.mark.parametrize("dials", ["metric", "inch"])
@pytest.mark.parametrize("factor", [0.5, 0.625, 0.676, 0.767, 1.0])
def test_a_straight_edge_through_the_mark_shows_the_move(factor: float, dials: str) -> None:
    size = INCH if dials == "inch" else 1.0
    svg = read_page(nomogram(scales(factor), "inch" if dials == "inch" else "metric", "scales", can_move=True))
    left, right = upright(svg, "edge")
    x, y = mark_of_the_bar(svg)
    assert x == pytest.approx((left + right) / 2, abs=0.01)
    differences, moves = numbers(svg, "end"), numbers(svg, "start")
    assert len(differences) >= 10
    assert len(moves) >= 10
    tried = 0
    for difference in (value for value, _ in differences[1:-1]):
        foot = height(difference, differences)
        opposite = foot + (y - foot) * (right - left) / (x - left)
        if not min(m[1] for m in moves) <= opposite <= max(m[1] for m in moves):
            continue
        assert value_at(opposite, moves) == pytest.approx(difference * factor, rel=0.01)
        tried += 1
    assert tried >= 6
    assert differences[-1][0] * size <= 0.2001


@settings(max_examples=50, deadline=None)
@given(st.floats(0.4, 2.0), st.floats(0.0021, 0.199))
def test_difference_mark_and_move_stand_on_one_straight_line(factor: float, difference: float) -> None:
    drawn = scales(factor)
    ends = height_of_difference(difference, drawn), height_of_move(difference * factor, drawn)
    assert sum(ends) / 2 == pytest.approx(height_of_factor(factor, drawn), rel=1e-9)


def test_numbers_stay_apart_and_inside_the_drawing() -> None:
    for dials in ("metric", "inch"):
        svg = read_page(nomogram(scales(0.676), "inch" if dials == "inch" else "metric", "scales", can_move=True))
        for side in ("start", "end"):
            places = sorted(y for _, y in numbers(svg, side))
            assert all(after - before >= TEXT_HEIGHT for before, after in pairwise(places))
            assert places[0] > 0
            assert places[-1] < HEIGHT


def test_where_the_tailstock_stays_is_bracketed() -> None:
    with_both = nomogram(scales(0.676), "metric", "scales", can_move=True)
    assert "leave it" in with_both
    assert "read again" in with_both
    assert "read again" not in nomogram(scales(0.676, again=False), "metric", "scales", can_move=True)


def test_it_is_black_on_white_with_large_letters_and_told_in_words() -> None:
    text = nomogram(scales(0.676), "metric", "scales", can_move=True)
    assert not re.search(r"#[0-9a-fA-F]{3}|rgb|fill=|stroke=", text)
    assert WIDTH == 170
    assert TEXT_HEIGHT * 72 / 25.4 >= 9
    svg = read_page(text)
    (told,) = [one.words for one in svg.all("desc")]
    assert "this bar marked at 0.676" in told
    assert "difference times the factor" in told
    assert "0.135\u00a0mm at the top" in told
    assert f'viewBox="0 0 170 {HEIGHT:g}"' in text


def test_the_factors_beside_the_mark_are_those_of_other_bars() -> None:
    svg = read_page(nomogram(scales(1.0), "metric", "scales", can_move=True))
    (tick,) = [float(one.attributes["y"]) - 1.2 for one in svg.all("text") if one.words == "0.5"]
    foot = height(0.05, numbers(svg, "end"))
    assert value_at(2 * tick - foot, numbers(svg, "start")) == pytest.approx(0.025, rel=0.01)
