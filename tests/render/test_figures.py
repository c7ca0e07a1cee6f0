"""The drawings of the making: to scale, legible, told in words, at one with the tree, on any shop's sizes."""

import re
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.parts import Dials
from tailtrue.procedure import Drawing, Procedure
from tailtrue.render.drawing import bar_drawing
from tailtrue.render.figures import KINDS, figure_of
from tailtrue.render.figures.plate import WIDTH
from tailtrue.render.html import to_html
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.markdown import to_markdown
from tailtrue.render.numbers import read, show
from tailtrue.render.templates import style

from .drawn import faults, text_boxes
from .reading import Element, read_page
from .sample import drawing as bar_of_the_sample
from .sample_drawings import PLANS, drawing, drawings
from .sample_pieces import mm

_POINT = 25.4 / 72

# Shops that draw what the examples do not: file, pattern, replacement.
OTHERWISE: dict[str, tuple[str, list[tuple[str, str, str]]]] = {
    "blank on the chuck face": ("fernhill", [("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "18 mm"')]),
    "bar in the steady": (
        "fernhill",
        [("lathe", 'spindle_bore = "38 mm"', 'spindle_bore = "20 mm"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')],
    ),
    "two drills": ("quarry-road", [("crib", 'set = "inch-1/64-1/2"', 'sizes = ["13/64 in", "1/2 in"]')]),
    "deep jaws": (
        "quarry-road",
        [
            ("lathe", 'jaw_depth = "1 in"', 'jaw_depth = "1 3/8 in"'),
            ("crib", 'spacer = "3/8 in"', 'spacer = "13/16 in"'),
        ],
    ),
}


@pytest.fixture(scope="module", params=["fernhill", "quarry-road", *OTHERWISE])
def tree(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Procedure:
    if request.param not in OTHERWISE:
        return make_procedure(EXAMPLES / request.param / "job.toml")
    name, changes = OTHERWISE[request.param]
    return make_procedure(shop(Path(tmp_path_factory.mktemp("shop")), name, *changes))


def drawn(tree: Procedure) -> list[tuple[Drawing, str]]:
    dials = tree.title.dials
    bar = (tree.drawing, bar_drawing(tree.drawing, dials))
    return [bar, *((one, figure_of(one, dials)) for one in tree.drawings)]


def test_a_sheet_draws_blank_bar_hold_ladder_and_reach_at_their_steps(tree: Procedure) -> None:
    steps = {step.number: step.id for phase in tree.phases for step in phase.steps}
    at = {one.kind: steps.get(one.place, one.place) for one in tree.drawings}
    assert at["collar-blank"] == "saw-blanks"
    assert at["blank-held"] in ("hold-blank-jaws", "hold-blank-spacer")
    assert at["drill-ladder"] == "drill-blank"
    assert at["boring-reach"] == "set-boring-bar"
    held = {kind: step for kind, step in at.items() if kind.startswith("bar-in-")}
    assert list(held.values()) in (["hold-bar-bore"], ["hold-bar-steady"])


def test_the_changed_shops_draw_what_the_examples_do_not(tmp_path: Path) -> None:
    kinds = set()
    for place, (name, changes) in enumerate(OTHERWISE.values()):
        folder = tmp_path / str(place)
        folder.mkdir()
        kinds |= {one.id for one in make_procedure(shop(folder, name, *changes)).drawings}
    assert {"blank-in-jaws", "boring-reach", "bar-in-steady"} <= kinds


@pytest.mark.parametrize(
    ("job", "kinds"), [("job", {"bar-in-collet", "jaws-on-plug", "blank-in-soft-jaws"}), ("job-stub", {"collar-on-stub"})]
)
def test_other_ways_to_hold_are_drawn_and_hard_jaws_are_not(job: str, kinds: set[str]) -> None:
    sheet = make_procedure(EXAMPLES / "tannery-lane" / f"{job}.toml")
    held = {one.kind for one in sheet.drawings if one.kind in {*kinds, "bar-in-spindle", "blank-held"}}
    assert held == (kinds if job == "job" else kinds | {"bar-in-spindle", "blank-held"})
    for one, svg in drawn(sheet):
        assert faults(svg) == [], one.id


def test_no_words_touch_and_nothing_leaves_the_drawing_on_a_sheet(tree: Procedure) -> None:
    for one, svg in drawn(tree):
        assert faults(svg) == [], one.id


def test_every_number_drawn_is_a_figure_of_the_drawing(tree: Procedure) -> None:
    dials = tree.title.dials
    for one, svg in drawn(tree):
        numbers = {read(figure, dials).number.replace("\u00a0", " ") for figure in one.dimensions.values()}
        for box in text_boxes(read_page(svg)):
            words = box.words.replace("\u00a0", " ")
            for name in sorted((*numbers, *one.labels.values()), key=len, reverse=True):
                words = words.replace(name, "")
            written = " ".join((*one.labels.values(), *one.said.values()))
            assert not re.search(r"\d", words) or words in written, (one.id, box.words)


def test_every_dimension_stands_on_its_step_on_the_page_and_in_markdown(tree: Procedure) -> None:
    dials = tree.title.dials
    page, text = read_page(to_html(tree)), to_markdown(tree).replace("\\", "")
    sections = {one.attributes["data-step"]: one for one in page.all("section") if "data-step" in one.attributes}
    steps = {step.number: step.id for phase in tree.phases for step in phase.steps}
    for one in tree.drawings:
        inside = page.words if one.place == "front" else sections[steps[one.place]].words
        assert one.caption in inside
        assert one.caption in text
        for figure in one.dimensions.values():
            assert show(figure, dials) in inside
            assert show(figure, dials) in text


def test_a_drawing_has_a_title_and_is_told_in_words(tree: Procedure) -> None:
    for one, svg in drawn(tree):
        image = next(read_page(svg).all("svg"))
        title, told = next(image.all("title")), next(image.all("desc"))
        assert image.attributes["role"] == "img"
        assert image.attributes["aria-labelledby"].split() == [title.attributes["id"], told.attributes["id"]]
        assert title.words == one.title
        for figure in one.dimensions.values():
            assert show(figure, tree.title.dials) in told.words
        for label in one.labels.values():
            assert label in told.words


def test_ids_of_drawings_are_unique_on_a_page(tree: Procedure) -> None:
    ids = re.findall(r'\bid="([^"]+)"', to_html(tree))
    assert len(ids) == len(set(ids))


def test_ink_is_black_white_or_grey() -> None:
    rules = [line for line in style("A4").splitlines() if ".ink" in line]
    assert rules
    colours = re.findall(r"#[0-9a-fA-F]+", " ".join(rules))
    for colour in colours:
        digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
        assert digits[:2] == digits[2:4] == digits[4:], colour
    assert not re.search(r"(?:fill|stroke): *(?!none|#|currentColor)[a-z]", " ".join(rules))
    for name in PLANS:
        assert not re.search(r"(?:style|fill|stroke|opacity)=", figure_of(_any(name), "metric"))


def _any(name: str) -> Drawing:
    return _SOUND[name]


_SOUND = {
    "collar-blank": drawing("collar-blank", sawn_width=28, width=25, each_face=1.5, sawn_diameter=70, diameter=64, bar=25),
    "blank-in-jaws": drawing("blank-in-jaws", sawn_width=30, grip=18, standing_out=12, jaw_depth=18, diameter=70),
    "blank-on-spacer": drawing(
        "blank-on-spacer", spacer=12, sawn_width=28, grip=20, standing_out=8, jaw_depth=32, diameter=70
    ),
    "drill-ladder": drawing("drill-ladder", rough_bore=24, drill__1=4, drill__2=12, drill__3=22),
    "boring-reach": drawing("boring-reach", width=25, room=8, overhang=33, shank=16, hole=23),
    "boring-reach-clear": drawing("boring-reach-clear", width=25, room=8, overhang=33, shank=16, hole=23, behind=12),
    "bar-in-steady": drawing("bar-in-steady", diameter=25, length=378, standing_out=37),
    "bar-in-spindle": drawing("bar-in-spindle", diameter=25, length=378, standing_out=37, spindle_bore=38),
    "bar-in-collet": drawing("bar-in-collet", diameter=25, length=378, standing_out=37, spindle_bore=38),
    "blank-in-collet": drawing("blank-in-collet", sawn_width=28, grip=21, standing_out=7, collet_length=30, diameter=60),
    "boring-reach-collet": drawing("boring-reach-collet", width=25, room=8, overhang=33, shank=16, hole=23, chuck_hole=62),
    "bar-in-four-jaws": drawing("bar-in-four-jaws", diameter=25, length=378, standing_out=37, spindle_bore=38, run_out=0.05),
    "bar-under-press": drawing("bar-under-press", diameter=25, length=378, height=700),
    "round-blank-by-halves": drawing(
        "round-blank-by-halves",
        sawn_width=33,
        first_face=1.5,
        second_face=6.5,
        width=25,
        sawn_diameter=70,
        diameter=64,
        bar=25,
    ),
    "jaws-on-plug": drawing("jaws-on-plug", jaw_depth=40, step=20, plug=62, plug_width=12, diameter=70),
    "blank-in-soft-jaws": drawing(
        "blank-in-soft-jaws", sawn_width=28, grip=20, standing_out=8, jaw_depth=40, room=20, plug=62, diameter=70
    ),
    "boring-reach-soft-jaws": drawing("boring-reach-soft-jaws", width=25, room=8, overhang=33, shank=16, hole=23, behind=20),
    "boring-reach-four-jaws": drawing("boring-reach-four-jaws", width=25, room=8, overhang=33, shank=16, hole=23, behind=14),
    "boring-reach-unmeasured": drawing("boring-reach-unmeasured", width=25, room=8, overhang=33, shank=16, hole=23),
    "centre-hole": drawing("centre-hole", cone=6.7, pilot=3.15, cone_depth=3.074, depth=7, angle=60),
    "slug-blank": drawing(
        "slug-blank",
        first_face=2,
        width=30,
        second_face=8,
        sawn_width=40,
        sawn_diameter=80,
        corners=113,
        diameter=74,
        bar=25,
    ),
    "cast-blank": drawing(
        "cast-blank", first_face=3, width=30, second_face=9, sawn_width=42, sawn_diameter=78, large=82, diameter=72, bar=25
    ),
    "slug-in-jaws": drawing(
        "slug-in-jaws",
        grip=16,
        standing_out=24,
        band=20,
        sawn_width=40,
        room=14,
        diameter=80,
        corners=113,
        band_diameter=79,
    ),
    "casting-in-jaws": drawing(
        "casting-in-jaws",
        grip=17,
        standing_out=25,
        band=21,
        sawn_width=42,
        room=13,
        diameter=78,
        large=82.5,
        band_diameter=73,
    ),
    "uneven-in-jaws": drawing(
        "uneven-in-jaws", grip=10, standing_out=18, band=14, sawn_width=28, diameter=70, band_diameter=68
    ),
    "blank-on-band": drawing(
        "blank-on-band", grip=16, standing_out=24, band=20, sawn_width=40, room=14, diameter=80, band_diameter=79
    ),
    "collar-on-stub": drawing("collar-on-stub", width=25, spigot=23, inside=2, stub_out=27, stub=34, bore=25, diameter=70),
    "between-centres": drawing(
        "between-centres", {"tool_side": "front"}, dog=25, gap=12.5, to_collar=37.5, length=375, quill=30, tool_clear=22
    ),
    "between-centres-three": drawing(
        "between-centres-three",
        {"tool_side": "front"},
        dog=25,
        gap=12.5,
        to_collar=37.5,
        to_middle=187.5,
        length=375,
        quill=30,
        tool_clear=22,
    ),
    "indicator-on-collars": drawing("indicator-on-collars", {"tool_side": "front"}),
    "indicator-reads-collars": drawing("indicator-reads-collars", {"tool_side": "front"}),
    "indicator-on-quill": drawing("indicator-on-quill", {"tool_side": "front"}, quill=30),
    "tailstock-move": drawing("tailstock-move", {"tool_side": "front", "screw_away": "the near screw"}),
    "tailstock-move-one-screw": drawing("tailstock-move-one-screw", {"tool_side": "front"}),
    "tailstock-set-over": drawing("tailstock-set-over", {"tool_side": "front", "screw_toward": "the far screw"}, amount=2.5),
    "tailstock-set-over-one-screw": drawing("tailstock-set-over-one-screw", {"tool_side": "front"}, amount=2.5),
    "tailstock-set-back": drawing("tailstock-set-back", {"tool_side": "rear", "screw_away": "the near screw"}, amount=2.5),
    "tailstock-set-back-one-screw": drawing("tailstock-set-back-one-screw", {"tool_side": "rear"}, amount=2.5),
    "speed-plate": drawing("speed-plate", {"setting.1": "B1"}, speed__1=60, speed__2=100, skim=100),
}


def test_lettering_and_lines_are_large_enough_at_the_printed_width() -> None:
    css = style("A4")
    printed = re.search(r"\.ink\.small \{ width: (\d+)mm", css)
    assert printed
    scale = float(printed[1]) / WIDTH
    size = re.search(r"\.ink text \{ font-size: ([\d.]+)px", css)
    assert size
    assert float(size[1]) == TEXT_HEIGHT
    assert TEXT_HEIGHT * scale / _POINT >= 9
    widths = [float(found) for found in re.findall(r"\.ink [^{]*\{[^}]*stroke-width: ([\d.]+)px", css)]
    assert widths
    assert min(widths) * scale / _POINT >= 0.35
    used = {
        kind
        for name in PLANS
        for kind in re.findall(r'<(?:path|rect|circle) class="([^"]+)"', figure_of(_any(name), "metric"))
    }
    for kind in (kind for kinds in used for kind in kinds.split()):
        assert f".ink .{kind} {{" in css, kind


@settings(max_examples=150, deadline=None)
@given(drawings(), st.sampled_from(["metric", "inch"]))
def test_no_words_touch_and_nothing_leaves_the_drawing_whatever_the_sizes(one: Drawing, dials: Dials) -> None:
    assert faults(figure_of(one, dials)) == []


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
    plain = bar_of_the_sample()
    dimensions = {
        name: figure.model_copy(update={"value": sizes.get(name, figure.value)}) for name, figure in plain.dimensions.items()
    }
    labels = {**plain.labels, "bar_note": f"bar: {material}", "collar_note": f"collars: {material}"}
    one = plain.model_copy(update={"dimensions": dimensions, "labels": labels})
    assert faults(bar_drawing(one, dials)) == []


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
    steps, axis = _ladder_steps(figure_of(_any("drill-ladder"), "metric"))
    radii = [axis - y for _, _, y in steps]
    assert [radius / radii[0] for radius in radii] == pytest.approx([1, 22 / 24, 12 / 24, 4 / 24], abs=0.002)
    assert all(left == after for (left, _, _), (_, after, _) in pairwise(steps))


def _kind(one: Element) -> str:
    return one.attributes.get("class", "")


def test_every_leader_of_the_ladder_ends_on_the_step_it_names() -> None:
    svg = figure_of(_any("drill-ladder"), "metric")
    page = read_page(svg)
    steps, _ = _ladder_steps(svg)
    dots = [one for one in page.all("circle") if "solid" in _kind(one)]
    assert len(dots) == len(steps)
    for (left, right, height), dot in zip(steps, dots, strict=True):
        assert float(dot.attributes["cx"]) == pytest.approx((left + right) / 2, abs=0.02)
        assert float(dot.attributes["cy"]) == pytest.approx(height, abs=0.02)
    assert [box.words.split(" ")[0] for box in text_boxes(page)][:4] == ["Ø24.00", "Ø22.00", "Ø12.00", "Ø4.00"]


def test_the_metal_of_the_ladder_is_hatched_and_its_hole_is_not() -> None:
    svg = figure_of(_any("drill-ladder"), "metric")
    steps, _ = _ladder_steps(svg)
    cuts = [one.attributes["d"] for one in read_page(svg).all("path", "cut")]
    assert cuts
    for cut in cuts:
        for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", cut):
            assert any(
                left - 0.02 <= float(x) <= right + 0.02 and float(y) <= height + 0.02 for left, right, height in steps
            )


def test_the_boring_bar_is_to_scale_along_and_across() -> None:
    svg = figure_of(_any("boring-reach-clear"), "metric")
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
    chuck, upper, *_ = _boxes(figure_of(_any("boring-reach"), "metric"))
    assert chuck[0] + chuck[2] == pytest.approx(upper[0], abs=0.02)


def test_the_held_blank_is_to_scale_along_its_axis() -> None:
    chuck, jaw, _, blank, spacer = _boxes(figure_of(_any("blank-on-spacer"), "metric"))
    scale = blank[2] / 28
    face = chuck[0] + chuck[2]
    assert (jaw[0], spacer[0]) == pytest.approx((face, face), abs=0.02)
    assert (jaw[2], spacer[2]) == pytest.approx((32 * scale, 12 * scale), abs=0.02)
    assert blank[0] - face == pytest.approx(12 * scale, abs=0.02)
    assert blank[0] + blank[2] - (jaw[0] + jaw[2]) == pytest.approx(8 * scale, abs=0.03)


def test_only_a_spacer_is_told_to_come_out() -> None:
    told = "Spacer OUT before the spindle starts"
    assert told in read_page(figure_of(_any("blank-on-spacer"), "metric")).words
    assert told not in read_page(figure_of(_any("blank-in-jaws"), "metric")).words


def test_the_collar_lies_inside_its_blank_to_scale() -> None:
    svg = figure_of(_any("collar-blank"), "metric")
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


@pytest.mark.parametrize("name", ["bar-in-spindle", "bar-in-steady"])
def test_a_bar_that_is_not_to_scale_says_so(name: str) -> None:
    assert "not to scale" in read_page(figure_of(_any(name), "metric")).words


def test_the_view_along_the_axis_is_to_the_scale_of_the_bar(tree: Procedure) -> None:
    page = read_page(bar_drawing(tree.drawing, tree.title.dials))
    collar, bar, cone = [float(one.attributes["r"]) for one in page.all("circle")][:3]
    steel = next(one for one in page.all("rect"))
    assert 2 * bar == pytest.approx(float(steel.attributes["height"]), abs=0.02)
    assert collar > bar > cone


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


@pytest.mark.parametrize(
    ("job", "ids"),
    [
        ("job-plate", {"slug-blank", "slug-in-jaws", "blank-on-band", "boring-reach-four-jaws"}),
        ("job-cast", {"cast-blank", "casting-in-jaws", "blank-on-band", "boring-reach-four-jaws"}),
    ],
)
def test_a_raw_blank_is_drawn_from_stock_to_bore(job: str, ids: set[str]) -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / f"{job}.toml")
    assert ids <= {one.id for one in sheet.drawings}
    for one, svg in drawn(sheet):
        assert faults(svg) == [], one.id


def test_grip_and_band_are_to_scale_along_the_axis() -> None:
    body, upper, lower, on_band, raw = _boxes(figure_of(_any("blank-on-band"), "metric"))[:5]
    scale = (raw[0] + raw[2] - on_band[0]) / 40
    assert on_band[0] - (body[0] + body[2]) == pytest.approx(14 * scale, abs=0.03)
    assert on_band[2] == pytest.approx(20 * scale, abs=0.03)
    for jaw in (upper, lower):
        assert jaw[0] + jaw[2] - on_band[0] == pytest.approx(16 * scale, abs=0.03)
    assert upper[1] + upper[3] == pytest.approx(on_band[1], abs=0.03)


def test_a_chuck_whose_jaws_were_not_measured_is_not_drawn_behind_the_bore() -> None:
    measured, unmeasured = (
        _boxes(figure_of(_any(f"boring-reach-{name}"), "metric")) for name in ("four-jaws", "unmeasured")
    )
    assert len(unmeasured) == len(measured) - 1


def test_a_set_over_and_its_return_are_drawn_each_with_its_own_arrow_and_screw() -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / "taper-and-return.toml")
    steps = {step.number: step.id for phase in sheet.phases for step in phase.steps}
    found = {steps[one.place]: one for one in sheet.drawings if one.kind == "tailstock-set-over"}
    assert set(found) == {"set-over", "set-back"}
    for step, way, screw in (("set-over", "toward you", "screw_toward"), ("set-back", "away from you", "screw_away")):
        one = found[step]
        svg = figure_of(one, "metric")
        words = " ".join(box.words for box in text_boxes(read_page(svg)))
        assert faults(svg) == []
        assert way in words
        assert one.said[screw] in words
        assert read(one.dimensions["amount"], "metric").number in words


def test_a_set_over_without_a_way_is_not_drawn() -> None:
    odd = _any("tailstock-set-over").model_copy(update={"labels": {"way": "over there"}})
    with pytest.raises(ValueError, match="which way the tailstock goes"):
        figure_of(odd, "metric")


def test_the_centre_hole_is_to_scale_and_its_cone_has_the_angle_of_a_centre() -> None:
    svg = figure_of(_any("centre-hole"), "metric")
    hole = next(read_page(svg).all("path", "hole"))
    points = [(float(x), float(y)) for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", hole.attributes["d"])]
    (face, low), (seat, near), *_, (_, high) = points
    foot = max(x for x, _ in points)
    scale = (low - high) / 6.7
    assert seat - face == pytest.approx(3.074 * scale, abs=0.03)
    assert foot - face == pytest.approx(7 * scale, abs=0.03)
    assert (low - near) / (seat - face) == pytest.approx(0.577, abs=0.01)
    assert {"cone 60°", "pilot Ø3.15", "Ø6.70"} <= {box.words for box in text_boxes(read_page(svg))}


@pytest.mark.parametrize(("job", "limits"), [("job", True), ("use-bar", False)])
def test_the_bar_shows_cone_angle_and_the_limits_of_its_stock_where_it_is_made(job: str, limits: bool) -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / f"{job}.toml")
    assert sheet.drawing is not None
    words = {box.words for box in text_boxes(read_page(bar_drawing(sheet.drawing, "metric")))}
    cone = read(sheet.drawing.dimensions["centre_hole.cone_diameter"], "metric").number
    assert f"Ø{cone} × 60°" in words
    assert ("24.870–25.000" in words) is limits
    assert ("bar.least" in sheet.drawing.dimensions) is limits


def test_a_kind_nobody_draws_is_named() -> None:
    odd = _any("boring-reach").model_copy(update={"kind": "boring-rich"})
    with pytest.raises(ValueError, match="nobody draws the kind boring-rich"):
        figure_of(odd, "metric")


@pytest.mark.parametrize("name", sorted(name for name in PLANS if _any(name).dimensions))
def test_a_missing_dimension_is_named_by_every_kind(name: str) -> None:
    bare = _any(name).model_copy(update={"dimensions": {}})
    with pytest.raises(ValueError, match=f"the drawing {name} lacks its"):
        figure_of(bare, "metric")


def test_every_kind_has_a_drawing_in_the_knowledge() -> None:
    assert {plan.file.kind for plan in PLANS.values()} >= set(KINDS) - {"bar"}
