"""The drawings of the making are to scale, and their leaders end on what they name."""

import re
from itertools import pairwise

import pytest

from tailtrue.render.figures import figure_of

from .drawn import text_boxes
from .reading import Element, read_page
from .sample_drawings import drawing
from .sample_pieces import mm
from .sound_drawings import sound


def _boxes(svg: str, kind: str = "") -> list[tuple[float, float, float, float]]:
    found = read_page(svg).all("rect", kind)
    return [tuple(float(one.attributes[name]) for name in ("x", "y", "width", "height")) for one in found]  # type: ignore[misc]


def _ladder_steps(svg: str) -> tuple[list[tuple[float, float, float]], float]:
    """The steps of the hole from the rough bore on, each from and to along the axis and its height; the axis."""
    page = read_page(svg)
    metal = next(page.all("path", "edge")).attributes["d"]
    points = [(float(x), float(y)) for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", metal)][2:]
    chain = re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", next(page.all("path", "chain")).attributes["d"])
    return [(left, right, y) for (right, y), (left, _) in zip(points[::2], points[1::2], strict=True)], float(chain[0][1])


def test_the_ladder_is_to_scale() -> None:
    steps, axis = _ladder_steps(figure_of(sound("drill-ladder"), "metric"))
    radii = [axis - y for _, _, y in steps]
    assert [radius / radii[0] for radius in radii] == pytest.approx([1, 22 / 24, 12 / 24, 4 / 24], abs=0.002)
    assert all(left == after for (left, _, _), (_, after, _) in pairwise(steps))


def _kind(one: Element) -> str:
    return one.attributes.get("class", "")


def test_every_leader_of_the_ladder_ends_on_the_step_it_names() -> None:
    svg = figure_of(sound("drill-ladder"), "metric")
    page = read_page(svg)
    steps, _ = _ladder_steps(svg)
    dots = [one for one in page.all("circle") if "solid" in _kind(one)]
    assert len(dots) == len(steps)
    for (left, right, height), dot in zip(steps, dots, strict=True):
        assert float(dot.attributes["cx"]) == pytest.approx((left + right) / 2, abs=0.02)
        assert float(dot.attributes["cy"]) == pytest.approx(height, abs=0.02)
    assert [box.words.split(" ")[0] for box in text_boxes(page)][:4] == ["Ø24.00", "Ø22.00", "Ø12.00", "Ø4.00"]


def test_the_metal_of_the_ladder_is_hatched_and_its_hole_is_not() -> None:
    svg = figure_of(sound("drill-ladder"), "metric")
    steps, _ = _ladder_steps(svg)
    cuts = [one.attributes["d"] for one in read_page(svg).all("path", "cut")]
    assert cuts
    for cut in cuts:
        for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", cut):
            assert any(
                left - 0.02 <= float(x) <= right + 0.02 and float(y) <= height + 0.02 for left, right, height in steps
            )


def test_the_boring_bar_is_to_scale_along_and_across() -> None:
    svg = figure_of(sound("boring-reach-clear"), "metric")
    chuck, upper, lower, holder = _boxes(svg)
    scale = upper[2] / 25
    assert upper[0] - (chuck[0] + chuck[2]) == pytest.approx(12 * scale, abs=0.02)
    assert holder[0] - upper[0] == pytest.approx(33 * scale, abs=0.03)
    assert lower[1] - (upper[1] + upper[3]) == pytest.approx(23 * scale, abs=0.03)
    bar = next(one for one in read_page(svg).all("path", "steel"))
    heights = [float(y) for _, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", bar.attributes["d"])]
    assert heights[2] - heights[1] == pytest.approx(16 * scale, abs=0.03)


def test_the_hole_in_the_chuck_is_drawn_to_scale_where_it_was_measured() -> None:
    holed = drawing("boring-reach", width=25, room=8, overhang=33, shank=16, hole=23, chuck_hole=26)
    upper, lower, wall, *_ = _boxes(figure_of(holed, "metric"))
    assert lower[1] - (upper[1] + upper[3]) == pytest.approx(26 * wall[2] / 25, abs=0.03)
    wide = holed.model_copy(update={"dimensions": {**holed.dimensions, "chuck_hole": mm("it", 80, "size")}})
    assert len(_boxes(figure_of(wide, "metric"))) == len(_boxes(figure_of(holed, "metric"))) - 2


def test_without_a_spacer_the_blank_lies_on_the_chuck() -> None:
    chuck, upper, *_ = _boxes(figure_of(sound("boring-reach"), "metric"))
    assert chuck[0] + chuck[2] == pytest.approx(upper[0], abs=0.02)


def test_the_held_blank_is_to_scale_along_its_axis() -> None:
    chuck, jaw, _, blank, spacer = _boxes(figure_of(sound("blank-on-spacer"), "metric"))
    scale = blank[2] / 28
    face = chuck[0] + chuck[2]
    assert (jaw[0], spacer[0]) == pytest.approx((face, face), abs=0.02)
    assert (jaw[2], spacer[2]) == pytest.approx((32 * scale, 12 * scale), abs=0.02)
    assert blank[0] - face == pytest.approx(12 * scale, abs=0.02)
    assert blank[0] + blank[2] - (jaw[0] + jaw[2]) == pytest.approx(8 * scale, abs=0.03)


def test_the_collar_lies_inside_its_blank_to_scale() -> None:
    svg = figure_of(sound("collar-blank"), "metric")
    before, upper, lower = _boxes(svg)
    scale = before[3] / 70
    assert before[2] == pytest.approx(28 * scale, abs=0.7)
    assert lower[1] + lower[3] - upper[1] == pytest.approx(64 * scale, abs=0.02)
    assert upper[0] - before[0] == pytest.approx(before[0] + before[2] - upper[0] - upper[2], abs=0.02)
    assert _kind(next(read_page(svg).all("rect"))) == "before"


def test_a_thin_allowance_is_drawn_larger_and_the_drawing_says_so() -> None:
    thin = drawing("collar-blank", sawn_width=25.4, width=25, each_face=0.2, sawn_diameter=70, diameter=69.8, bar=25)
    svg = figure_of(thin, "metric")
    before, upper, _ = _boxes(svg)
    assert upper[0] - before[0] >= 0.89
    assert upper[1] - before[1] >= 0.89
    assert "what comes off is drawn larger" in " ".join(box.words for box in text_boxes(read_page(svg)))
    wide = drawing("collar-blank", sawn_width=31, width=25, each_face=3, sawn_diameter=70, diameter=60, bar=25)
    assert "drawn larger" not in read_page(figure_of(wide, "metric")).words


def test_grip_and_band_are_to_scale_along_the_axis() -> None:
    body, upper, lower, on_band, raw = _boxes(figure_of(sound("blank-on-band"), "metric"))[:5]
    scale = (raw[0] + raw[2] - on_band[0]) / 40
    assert on_band[0] - (body[0] + body[2]) == pytest.approx(14 * scale, abs=0.03)
    assert on_band[2] == pytest.approx(20 * scale, abs=0.03)
    for jaw in (upper, lower):
        assert jaw[0] + jaw[2] - on_band[0] == pytest.approx(16 * scale, abs=0.03)
    assert upper[1] + upper[3] == pytest.approx(on_band[1], abs=0.03)


def test_a_chuck_whose_jaws_were_not_measured_is_not_drawn_behind_the_bore() -> None:
    measured, unmeasured = (
        _boxes(figure_of(sound(f"boring-reach-{name}"), "metric")) for name in ("four-jaws", "unmeasured")
    )
    assert len(unmeasured) == len(measured) - 1


def test_the_centre_hole_is_to_scale_and_its_cone_has_the_angle_of_a_centre() -> None:
    svg = figure_of(sound("centre-hole"), "metric")
    hole = next(read_page(svg).all("path", "hole"))
    points = [(float(x), float(y)) for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", hole.attributes["d"])]
    (face, low), (seat, near), *_, (_, high) = points
    foot = max(x for x, _ in points)
    scale = (low - high) / 6.7
    assert seat - face == pytest.approx(3.074 * scale, abs=0.03)
    assert foot - face == pytest.approx(7 * scale, abs=0.03)
    assert (low - near) / (seat - face) == pytest.approx(0.577, abs=0.01)
    assert {"cone 60°", "pilot Ø3.15", "Ø6.70"} <= {box.words for box in text_boxes(read_page(svg))}
