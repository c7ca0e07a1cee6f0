"""The chart on paper and in the terminal: right places, shapes that differ, words for those who cannot see it."""

import re
import xml.etree.ElementTree as ElementTree
from itertools import pairwise

import pytest

from tailtrue.log.chart_drawing import WIDTH, chart_svg
from tailtrue.log.chart_text import chart_lines, wear_line
from tailtrue.log.recheck import next_check
from tailtrue.log.record import Record
from tailtrue.log.rules import log_rules
from tailtrue.log.wear import Wear
from tailtrue.log.wording import offset, size
from tailtrue.parts import Dials

from .sample import MOVE, check
from .test_series import one, settled

RULES = log_rules()
SVG = "{http://www.w3.org/2000/svg}"

# Twelve quiet checks, one far out and outside its limit, a move, then ten that wander.
LONG = [
    *settled(12),
    check(40, 400),
    check(0, 401, state="as left", moves=[MOVE]),
    *[check(um, 430 + 30 * n) for n, um in enumerate([1, 2, 2, 3, 4, 4, 5, 7, 8, 9])],
]


def drawn(records: list[Record], dials: Dials = "metric") -> ElementTree.Element:
    series = one(records)
    return ElementTree.fromstring(chart_svg(series, dials, RULES, next_check(series, RULES.recheck)))


def of_kind(root: ElementTree.Element, kind: str) -> list[ElementTree.Element]:
    return [part for part in root if part.get("class") == kind]


def texts(root: ElementTree.Element) -> list[str]:
    return [part.text or "" for part in root if part.tag == f"{SVG}text"]


def numbers(part: ElementTree.Element) -> list[float]:
    return [float(one) for one in re.findall(r"-?[0-9.]+", part.get("d", ""))]


def in_panels(parts: list[ElementTree.Element]) -> int:
    """How many shapes stand above the key."""
    return sum(1 for part in parts if (float(part.get("cy", 0)) or numbers(part)[1]) < 128)


def test_it_prints_as_wide_as_a_page() -> None:
    root = drawn(LONG)
    assert root.get("width") == "170mm"
    left, top, width, height = map(float, (root.get("viewBox") or "").split())
    assert (left, top, width) == (0, 0, WIDTH)
    assert root.get("height") == f"{height:g}mm"
    for part in root:
        if part.get("x"):
            assert 0 <= float(part.get("x", 0)) <= WIDTH
            assert 0 <= float(part.get("y", 0)) <= height
    assert "font:3.4px" in (root.find(f"{SVG}style").text or "")  # type: ignore[union-attr]


def test_shapes_differ_and_nothing_hangs_on_colour() -> None:
    svg = chart_svg(one(LONG), "metric", RULES, None)
    assert set(re.findall(r"#[0-9a-f]{3,6}", svg)) <= {"#000", "#fff", "#bbb"}
    root = drawn(LONG)
    dots, crosses, diamonds = (in_panels(of_kind(root, kind)) for kind in ("dot", "cross", "open"))
    # 23 checks, one outside its limit: two strokes of a cross; 21 steps, none across the move.
    assert (dots, crosses) == (22 + 21, 2)
    assert diamonds >= 2
    dashes = re.findall(r"\.(scatter|limit|cut)\{[^}]*stroke-dasharray:([^}]*)\}", svg)
    assert len({pattern for _, pattern in dashes}) == 3


def test_points_stand_where_their_values_are() -> None:
    root = drawn(settled(12))
    dots = [part for part in of_kind(root, "dot") if float(part.get("cy", 0)) < 90]
    heights = [float(part.get("cy", 0)) for part in dots]
    values = [check.offset_mm for check in one(settled(12)).checks]
    level = [ends for part in of_kind(root, "edge") if len(ends := numbers(part)) == 4 and ends[1] == ends[3]]
    ((_, zero, _, _),) = level
    scale = (zero - heights[0]) / values[0]
    assert scale > 0  # toward the tool is up
    for height, value in zip(heights, values, strict=True):
        assert (zero - height) / scale == pytest.approx(value, abs=5e-5)
    steps = [b - a for a, b in pairwise(float(part.get("cx", 0)) for part in dots)]
    assert max(steps) - min(steps) < 0.02
    limits = sorted({numbers(part)[1] for part in of_kind(root, "scatter")})[:2]
    assert [(zero - limit) / scale for limit in limits] == pytest.approx([0.01673, -0.01373], abs=1e-4)


def test_below_eight_checks_no_limits_are_drawn() -> None:
    assert in_panels(of_kind(drawn(settled(7)), "scatter")) == 0
    assert in_panels(of_kind(drawn(settled(8)), "scatter")) == 3
    assert any("no limits of scatter yet" in text for text in texts(drawn(settled(7))))


def test_units_are_those_of_the_dials() -> None:
    assert "mm; up: toward the tool, down: away from the tool" in texts(drawn(LONG))
    inch = texts(drawn(LONG, "inch"))
    assert "in; up: toward the tool, down: away from the tool" in inch
    assert "0.0005" in inch


def test_a_scale_says_nothing_with_a_bare_sign() -> None:
    assert not [text for text in texts(drawn(LONG)) if text.startswith("-")]


def test_it_is_told_in_words_too() -> None:
    root = drawn(LONG)
    title, description = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None
    assert description is not None
    assert title.text == "Lathe 2, bar FM-1: tailstock centre as found"
    assert root.get("role") == "img"
    assert "2026-01-05 0.004 mm toward the tool" in (description.text or "")
    assert "tailstock moved" in (description.text or "")
    assert "this is drift, not noise" in (description.text or "")


def test_names_of_a_user_cannot_break_the_drawing() -> None:
    root = drawn([check(0, 0, lathe='<script>"&', bar="]]>")])
    assert texts(root)[0].startswith('<script>"&')


def test_a_long_history_is_cut_and_said() -> None:
    root = drawn([check(n % 5, n) for n in range(60)])
    assert in_panels([part for part in of_kind(root, "dot") if float(part.get("cy", 0)) < 90]) == 40
    assert any("The last 40 checks are drawn; 20 earlier ones are in the log." in text for text in texts(root))


def test_one_check_and_none_are_drawn() -> None:
    assert in_panels(of_kind(drawn([check(0, 0)]), "dot")) == 1
    none = drawn([check(0, 0, state="as left")])
    assert "No test as found can be charted yet." in texts(none)


def test_the_same_log_draws_the_same_bytes() -> None:
    assert chart_svg(one(LONG), "metric", RULES, None) == chart_svg(one(LONG), "metric", RULES, None)


def lines(records: list[Record], dials: Dials = "metric") -> list[str]:
    series = one(records)
    return list(chart_lines(series, dials, RULES, next_check(series, RULES.recheck)))


def test_the_terminal_shows_each_check_on_its_side() -> None:
    found = lines(LONG)
    row = next(line for line in found if "2026-01-05" in line)
    assert "left of |: away from the tool; right: toward the tool" in "\n".join(found)
    assert row.index("|") < row.index("o") < row.index("]")
    assert "0.004 mm toward the tool" in row
    out = next(line for line in found if line.split()[:1] == ["13"])
    assert "X" in out
    assert "!" in out
    assert "tailstock moved" in "\n".join(found)


def steps(records: list[Record], dials: Dials = "metric") -> list[str]:
    found = lines(records, dials)
    return found[found.index("step from the check before, either way") :]


def test_the_terminal_draws_the_step_from_check_to_check_with_its_limit() -> None:
    found = steps(settled(12))
    rows = [line for line in found if line[:5].strip().isdigit()]
    # Twelve checks 4, -2, 6, 1, -5, 3, 8, 0, -3, 5, 2, -1; limit by hand 3.267 * 63 / 11 = 18.71, at character 47.
    assert [row.split()[-2] for row in rows] == [f"0.{um:03d}" for um in (6, 8, 5, 6, 8, 5, 8, 3, 8, 3, 3)]
    assert [row.split()[0] for row in rows] == [str(number) for number in range(2, 13)]
    for row, um in zip(rows, (6, 8, 5, 6, 8, 5, 8, 3, 8, 3, 3), strict=True):
        assert row.index("o") - row.index("|") == round(um / 18.71 * 47)
        assert row.index("]") - row.index("|") == 47
        assert row.count("-") - "2026-01-05".count("-") == round(um / 18.71 * 47) - 1
        assert "!" not in row
    assert "  upper limit of the step 0.019 mm" in found


def test_the_terminal_marks_a_jump_and_draws_no_step_across_a_move() -> None:
    found = steps(LONG)
    numbers_ = [int(line[:5]) for line in found if line[:5].strip().isdigit()]
    # Check 1 is the first of all; record 14 is the move; check 15 is the first after it.
    assert numbers_ == [*range(2, 14), *range(16, 25)]
    (jump,) = (line for line in found if line[:5].strip().isdigit() and "!" in line)
    assert jump.split()[0] == "13"
    assert jump.index("]") < jump.index("o")
    assert found.index("  tailstock moved") > found.index(jump)


@pytest.mark.parametrize(("count", "says"), [
    (1, "  one check: no step yet"), (2, "  no limit of the step yet: 2 checks, 8 are needed"),
    (7, "  no limit of the step yet: 7 checks, 8 are needed"), (8, "  upper limit of the step 0.0"),
])  # fmt: skip
def test_the_terminal_says_when_a_step_has_no_limit_yet(count: int, says: str) -> None:
    found = steps(settled(count))
    assert next(line for line in found if line.startswith(("  one", "  no limit", "  upper"))).startswith(says)
    drawn_limits = [line for line in found if line[:5].strip().isdigit() and "]" in line]
    assert len(drawn_limits) == (7 if count == 8 else 0)


def test_checks_that_never_change_have_a_step_of_nought() -> None:
    (row, *_) = (line for line in steps([check(0, n) for n in range(9)]) if line[:5].strip().isdigit())
    assert row.endswith(" 0.000 mm")
    assert "|" not in row
    assert "o" in row


@pytest.mark.parametrize("dials", ["metric", "inch"])
def test_what_is_drawn_fits_78_columns(dials: Dials) -> None:
    found = lines(LONG, dials)
    drawing = found[1 : found.index("  o step   ! more than scatter   ] upper limit of the step   | no step") + 1]
    assert len(drawing) > 50
    assert max(map(len, drawing)) <= 78


def test_the_terminal_says_when_to_check_again_and_what_else_asks_for_it() -> None:
    found = "\n".join(lines(settled(12)))
    assert "Check again within 60 days, by" in found
    assert "after a crash, a heavy stall or a dropped chuck" in found
    assert "record 2 is not charted: the quill was not clamped" in "\n".join(
        lines([check(0, 0), check(0, 1, quill_clamped=False)])
    )


@pytest.mark.parametrize(
    ("wear", "says"),
    [
        (Wear("B", 4, 70.0, 55.0, 0.15, 100), "least 55.000 mm, 0.150 mm off a test on the average so far: at that rate good for about 100 more"),
        (Wear("B", 4, 70.0, None, 0.15, None), "Its least diameter is not known"),
        (Wear("B", 1, 70.0, 55.0, None, None), "What a test takes off is not known yet"),
        (Wear("B", 9, 55.0, 55.0, 0.15, 0), "worn out. Fit new collars"),
    ],
)
def test_the_life_of_a_bar_is_a_sentence(wear: Wear, says: str) -> None:
    assert says in wear_line(wear, "metric")


def test_sizes_and_sides() -> None:
    assert size(0.0254, "inch") == "0.0010 in"
    assert offset(0.004, "metric") == "0.004 mm toward the tool"
    assert offset(-0.004, "metric") == "0.004 mm away from the tool"
    assert offset(0.0, "inch") == "0.0000 in, in line"
