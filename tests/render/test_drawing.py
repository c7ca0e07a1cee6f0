"""The drawings: to scale, legible, and told in words."""

import itertools
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shops import EXAMPLES
from tailtrue.advise import make_procedure
from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.drawing import WIDTH, bar_drawing, described
from tailtrue.render.ink import TEXT_HEIGHT, Ink, text_width, wrap
from tailtrue.render.move import move_drawing, side_of
from tailtrue.render.numbers import read

from .drawn import faults, text_boxes
from .reading import Element, read_page
from .sample import drawing, procedure
from .sample_pieces import mm


def with_sizes(**sizes: float) -> Drawing:
    plain = drawing()
    dimensions = {
        key: figure.model_copy(update={"value": sizes.get(key.replace(".", "_"), figure.value)})
        for key, figure in plain.dimensions.items()
    }
    return plain.model_copy(update={"dimensions": dimensions})


def boxes(svg: str) -> list[tuple[float, float, float, float]]:
    """The rectangles: the bar, then the collars."""
    return [
        tuple(float(one.attributes[name]) for name in ("x", "y", "width", "height"))  # type: ignore[misc]
        for one in read_page(svg).all("rect")
        if one.attributes["class"] != "paper"
    ]


def texts(svg: str) -> list[str]:
    return [one.words for one in read_page(svg).all("text")]


def test_the_length_is_to_scale() -> None:
    bar, first, second = boxes(bar_drawing(drawing(), "metric"))
    scale = bar[2] / 380
    middles = [box[0] + box[2] / 2 - bar[0] for box in (first, second)]
    assert middles == pytest.approx([60 * scale, 320 * scale], abs=0.02)
    assert first[2] == pytest.approx(30 * scale, abs=0.02)
    assert (bar[3], first[3]) == pytest.approx((22 * scale, 60 * scale), abs=0.02)


def test_every_size_is_on_the_drawing_in_the_system_of_the_dials() -> None:
    metric, inch = texts(bar_drawing(drawing(), "metric")), texts(bar_drawing(drawing(), "inch"))
    assert {"380.0", "260.0", "60.0", "30.0", "Ø60.00", "Ø22.00"} <= set(metric)
    assert {"14.96", "10.24", "2.36", "1.18", "Ø2.362", "Ø0.866"} <= set(inch)
    assert "sizes in mm, to scale" in metric
    assert "sizes in inches, to scale" in inch


def test_every_label_is_on_the_drawing() -> None:
    words = " ".join(texts(bar_drawing(drawing(), "metric")))
    for label in drawing().labels.values():
        assert label in words


def test_the_words_hold_every_dimension_in_both_systems() -> None:
    words = described(drawing(), "metric").replace("\u00a0", " ")
    assert "bar length 380.0 mm (14.96 in)" in words
    assert "diameter of the centre hole's cone 6.70 mm (0.264 in)" in words
    assert described(drawing(), "metric") in read_page(bar_drawing(drawing(), "metric")).words


def test_thin_parts_are_thickened_and_the_drawing_says_so() -> None:
    svg = bar_drawing(with_sizes(bar_length=1000, collar_spacing=880, bar_diameter=12, collar_diameter=30), "metric")
    bar, first, _ = boxes(svg)
    assert bar[3] >= 5
    assert first[3] >= bar[3] + 6
    assert first[2] >= 4
    assert "sizes in mm, length alone to scale" in texts(svg)


def test_lettering_is_large_enough() -> None:
    assert TEXT_HEIGHT * 72 / 25.4 >= 9, "in points of 1/72 inch"


def test_a_missing_dimension_is_named() -> None:
    plain = drawing()
    dimensions = {key: figure for key, figure in plain.dimensions.items() if key != "bar.length"}
    with pytest.raises(ValueError, match=r"the drawing of the bar lacks its dimension bar\.length"):
        bar_drawing(plain.model_copy(update={"dimensions": dimensions}), "metric")


def test_labels_are_optional_and_words_are_no_markup() -> None:
    plain = drawing()
    assert described(plain.model_copy(update={"labels": {}}), "metric").endswith(").")
    odd = plain.model_copy(update={"labels": {"bar_note": "<b>&"}, "title": "a < b"})
    page = read_page(bar_drawing(odd, "metric"))
    assert "<b>&" in page.words
    assert not list(page.all("b"))


@settings(max_examples=60)
@given(
    st.floats(100, 2000),
    st.floats(0.01, 0.2),
    st.floats(1.2, 5),
    st.floats(0.03, 0.2),
    st.floats(0.0, 1.0),
    st.sampled_from(["metric", "inch"]),
)
def test_any_bar_fits_on_the_paper(length: float, bar: float, collar: float, width: float, place: float, dials: str) -> None:
    station = length * (width / 2 + place * (0.5 - width))
    svg = bar_drawing(
        with_sizes(
            bar_length=length,
            bar_diameter=bar * length,
            collar_diameter=bar * collar * length,
            collar_width=width * length,
            collar_station=station,
            collar_spacing=length - 2 * station,
        ),
        "inch" if dials == "inch" else "metric",
    )
    frame = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    assert frame
    assert float(frame[1]) == WIDTH
    for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", svg):
        assert 0 <= float(x) <= WIDTH
        assert 0 <= float(y) <= float(frame[2])
    for one in read_page(svg).all("text"):
        left, right = extent(one)
        assert -1 <= left <= right <= WIDTH + 1, one.words
    notes = sorted(extent(one) for one in read_page(svg).all("text") if float(one.attributes["y"]) == 10.2)
    assert all(before[1] <= after[0] + 0.1 for before, after in itertools.pairwise(notes))


def extent(text: Element) -> tuple[float, float]:
    x, wide = float(text.attributes["x"]), text_width(text.words)
    start = {"start": x, "middle": x - wide / 2, "end": x - wide}[text.attributes["text-anchor"]]
    return start, start + wide


def test_a_narrow_dimension_keeps_its_number() -> None:
    ink = Ink()
    ink.across(10, 13, 20, "3.00")
    assert [one.words for one in read_page("".join(ink.parts)).all("text")] == ["3.00"]


def test_a_long_word_keeps_its_line() -> None:
    assert wrap("a verylongwordindeed b", 5) == ("a", "verylongwordindeed", "b")
    assert wrap("", 5) == ()


@pytest.mark.parametrize(
    ("larger", "smaller", "larger_below"),
    [
        ("toward you, the tool side", "away from you", True),
        ("away from you, the tool side", "towards you", False),
    ],
)
def test_the_arrow_points_where_the_words_say(larger: str, smaller: str, larger_below: bool) -> None:
    look_up = procedure().look_up.model_copy(update={"larger_at_tailstock": larger, "smaller_at_tailstock": smaller})
    page = read_page(move_drawing(look_up))
    at = {one.words: float(one.attributes["y"]) for one in page.all("text")}
    assert (at["LARGER:"] > at["SMALLER:"]) is larger_below
    assert (at["tool"] > at["tail-"]) is larger_below
    assert at["YOU STAND HERE"] > at["far side"]
    assert larger in page.words
    assert smaller in page.words


def test_no_arrow_is_drawn_for_words_that_name_no_side() -> None:
    look_up = procedure().look_up.model_copy(update={"larger_at_tailstock": "left", "smaller_at_tailstock": "right"})
    words = [one.words for one in read_page(move_drawing(look_up)).all("text")]
    assert "LARGER:" not in words
    assert "tool" not in words
    assert side_of("toward you or away from you") is None


@pytest.mark.parametrize(
    ("dials", "name", "seen", "cone_first"),
    # ISO 5456-2: the symbol of each method; what is seen from the left stands at the right in the first angle.
    [
        ("metric", "first-angle projection", "seen from end A", True),
        ("inch", "third-angle projection", "seen from end B", False),
    ],
)
def test_the_method_of_projection_is_told_in_sign_and_words(dials: Dials, name: str, seen: str, cone_first: bool) -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    page = read_page(bar_drawing(tree.drawing, dials))
    words = [box.words for box in text_boxes(page)]
    assert name in words
    assert seen in words
    cone = list(page.all("path", "hole"))[-1]
    at = [float(x) for x, _ in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", cone.attributes["d"])]
    rings = float(list(page.all("circle"))[-1].attributes["cx"])
    assert (max(at) < rings) is cone_first
    ends: dict[float, list[float]] = {}
    for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", cone.attributes["d"]):
        ends.setdefault(float(x), []).append(float(y))
    halves = {x: max(heights) - min(heights) for x, heights in ends.items()}
    assert halves[min(halves)] < halves[max(halves)]


@pytest.mark.parametrize(("job", "limits"), [("job", True), ("use-bar", False)])
def test_the_bar_shows_cone_angle_and_the_limits_of_its_stock_where_it_is_made(job: str, limits: bool) -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / f"{job}.toml")
    assert sheet.drawing is not None
    words = {box.words for box in text_boxes(read_page(bar_drawing(sheet.drawing, "metric")))}
    cone = read(sheet.drawing.dimensions["centre_hole.cone_diameter"], "metric").number
    assert f"Ø{cone} × 60°" in words
    assert ("24.870–25.000" in words) is limits
    assert ("bar.least" in sheet.drawing.dimensions) is limits
    assert ({"bore A 25.000–25.050", "bore B 25.005–25.055"} <= words) is limits
    assert {"alike within", read(sheet.drawing.dimensions["rims.alike"], "metric").number} <= words


def test_the_bore_of_a_bar_that_is_measured_later_is_given_over_its_seat() -> None:
    sheet = make_procedure(EXAMPLES / "quarry-road" / "job.toml")
    assert sheet.drawing is not None
    words = [box.words for box in text_boxes(read_page(bar_drawing(sheet.drawing, "inch")))]
    assert words[words.index("bore over its seat") + 1] == "0.0016–0.0034"


@settings(max_examples=100, deadline=None)
@given(
    st.floats(200, 600),
    st.floats(16, 42),
    st.floats(12, 100),
    st.floats(12, 30),
    st.floats(0, 20),
    st.sampled_from(["cold-drawn low-carbon steel", "continuous-cast grey iron of no known grade"]),
    st.sampled_from(["metric", "inch"]),
)
def test_no_words_touch_on_the_drawing_of_any_bar(
    length: float, bar: float, wall: float, width: float, further: float, material: str, dials: Dials
) -> None:
    station = 35 + width / 2 + further
    sizes = {"bar.length": length, "bar.diameter": bar, "collar.diameter": bar + wall, "collar.width": width}
    sizes |= {"collar.station": station, "collar.spacing": length - 2 * station}
    plain = drawing()
    dimensions = {
        name: figure.model_copy(update={"value": sizes.get(name, figure.value)}) for name, figure in plain.dimensions.items()
    }
    told = ("rims.alike", "bore_a.least", "bore_a.largest", "bore_b.least", "bore_b.largest")
    dimensions |= {name: mm(name, bar, "fit") for name in told}
    labels = {**plain.labels, "bar_note": f"bar: {material}", "collar_note": f"collars: {material}"}
    one = plain.model_copy(update={"dimensions": dimensions, "labels": labels})
    assert faults(bar_drawing(one, dials)) == []
