"""Formulas of alignment against a lathe simulated in three dimensions."""

from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from simulated_lathe import SimulatedLathe
from tailtrue.calc import alignment, carriage_path, indicator, lathe_geometry, sides
from tailtrue.calc.cut_order import from_both_orders

_SIDES = st.sampled_from(["front", "rear"])
_SPANS = st.floats(200, 600)
_OFFSETS = st.floats(-0.3, 0.3)
_LEANS = st.floats(-2e-4, 2e-4)
_TWISTS = st.floats(-1e-6, 1e-6)


def _lathe(side: str, **faults: float) -> SimulatedLathe:
    return SimulatedLathe(tool_in_front=side == "front", **faults)  # type: ignore[arg-type]


def _difference(lathe: SimulatedLathe, span: float, first: float, second: float) -> float:
    at_headstock, at_tailstock = lathe.diameters_between_centres(span, [first, second])
    return at_tailstock - at_headstock


@pytest.mark.parametrize("side", ["front", "rear"])
@pytest.mark.parametrize("offset", [-0.3, -0.05, 0.05, 0.3])
@pytest.mark.parametrize(("first", "second"), [(0, 300), (30, 270), (30, 200), (120, 280)])
def test_the_advised_move_trues_the_bar(side: str, offset: float, first: float, second: float) -> None:
    lathe = _lathe(side, offset=offset)
    move = alignment.tailstock_move(_difference(lathe, 300, first, second), 300, first, second)
    assert abs(_difference(lathe.moved_toward_tool(move), 300, first, second)) < 1e-5 * abs(offset)
    to_operator = sides.toward_operator(move, side)
    assert to_operator == pytest.approx(-offset, rel=1e-5)
    assert abs(_difference(lathe.moved(to_operator), 300, first, second)) < 1e-5 * abs(offset)


@settings(max_examples=60)
@given(side=_SIDES, offset=_OFFSETS, yaw=_LEANS, twist=_TWISTS, span=_SPANS, share=st.floats(0.02, 0.3))
def test_one_move_trues_a_twisted_lathe_too(
    side: str, offset: float, yaw: float, twist: float, span: float, share: float
) -> None:
    lathe = _lathe(side, offset=offset, yaw=yaw, twist=twist)
    first, second = share * span, (1 - share) * span
    move = alignment.tailstock_move(_difference(lathe, span, first, second), span, first, second)
    assert abs(_difference(lathe.moved_toward_tool(move), span, first, second)) < 2e-5


@settings(max_examples=60)
@given(side=_SIDES, offset=_OFFSETS, twist=_TWISTS, span=_SPANS)
def test_between_centres(side: str, offset: float, twist: float, span: float) -> None:
    lathe = _lathe(side, offset=offset, twist=twist)
    lean = carriage_path.path_lean(lathe.level(250) - lathe.level(50), 200, 150)
    expected = _difference(lathe, span, 0.1 * span, 0.8 * span)
    found = carriage_path.between_centres_difference(lean, offset, span, 0.1 * span, 0.8 * span, side)
    assert found == pytest.approx(expected, rel=1e-3, abs=2e-5)


@settings(max_examples=60)
@given(side=_SIDES, yaw=_LEANS, twist=_TWISTS, length=st.floats(80, 300))
def test_chucked(side: str, yaw: float, twist: float, length: float) -> None:
    lathe = _lathe(side, yaw=yaw, twist=twist)
    at_chuck, free = lathe.diameters_chucked([20, 20 + length])
    lean = carriage_path.path_lean(lathe.level(250) - lathe.level(50), 200, 150)
    found = carriage_path.chucked_difference(lean, yaw, 20, 20 + length, side)
    assert found == pytest.approx(free - at_chuck, rel=1e-3, abs=2e-5)


@settings(max_examples=30)
@given(yaw=_LEANS, side=_SIDES)
def test_yaw_of_the_headstock_does_not_show_between_centres(yaw: float, side: str) -> None:
    straight = _lathe(side, offset=0.02).diameters_between_centres(300, [30, 270])
    assert _lathe(side, offset=0.02, yaw=yaw).diameters_between_centres(300, [30, 270]) == straight


def test_bed_twist_hides_between_centres_when_the_tailstock_rides_on_it() -> None:
    twist = 4e-7
    lean = twist * 150
    riding = SimulatedLathe(twist=twist, offset=0.02, rides_the_bed=True, overhang=80)
    straight = SimulatedLathe(offset=0.02)
    # As built the tailstock stands at 0.02 on its bed; the twist carries it over.
    standing = riding.tailstock_centre(300)[0]
    assert carriage_path.offset_after_untwisting(standing, lean, 300, 80) == pytest.approx(0.02, rel=1e-4)
    seen = _difference(riding, 300, 30, 270) - _difference(straight, 300, 30, 270)
    assert seen == pytest.approx(-2 * lean * 80 * 240 / 300, rel=2e-2)
    chucked = riding.diameters_chucked([30, 270])
    assert chucked[1] - chucked[0] == pytest.approx(2 * lean * 240, rel=2e-2)


@settings(max_examples=40)
@given(offset=_OFFSETS, height=st.floats(-0.2, 0.2), yaw=_LEANS, sag=st.floats(0, 0.02), in_bore=st.booleans())
def test_sweep_finds_offset_and_height_from_the_spindle_axis(
    offset: float, height: float, yaw: float, sag: float, in_bore: bool
) -> None:
    lathe = SimulatedLathe(offset=offset, height=height, yaw=yaw)
    found = indicator.sweep(*lathe.sweep(300, 20, sag, in_bore), sag_mm=sag, in_bore=in_bore)
    assert found.offset_to_operator_mm == pytest.approx(carriage_path.offset_from_spindle_axis(offset, yaw, 300), abs=1e-9)
    assert found.height_mm == pytest.approx(height, abs=1e-9)
    assert found.apparent_height_mm == pytest.approx(height + sag, abs=1e-9)
    assert abs(found.closure_mm) < 0.02  # of the second order in offset over radius


@settings(max_examples=40)
@given(offset=_OFFSETS, yaw=_LEANS, twist=_TWISTS, side=_SIDES)
def test_collars_and_sweep_disagree_by_what_the_chucked_bar_shows(
    offset: float, yaw: float, twist: float, side: str
) -> None:
    lathe = _lathe(side, offset=offset, yaw=yaw, twist=twist)
    swept = indicator.sweep(*lathe.sweep(300, 20)).offset_to_operator_mm
    move = alignment.tailstock_move(_difference(lathe, 300, 30, 270), 300, 30, 270)
    by_collars = -sides.toward_operator(move, side)
    at_chuck, free = lathe.diameters_chucked([20, 170])
    expected = carriage_path.collars_less_sweep(free - at_chuck, 20, 170, 300, side)
    assert by_collars - swept == pytest.approx(expected, abs=3e-5)


@pytest.mark.parametrize("side", ["front", "rear"])
def test_traverse_of_a_true_bar_and_of_fresh_skims(side: str) -> None:
    lathe = _lathe(side, offset=0.05)
    needed = sides.toward_tool(-0.05, side)
    head, tail = lathe.traverse(300, [30, 270], lambda _: 12.5)
    factor = indicator.move_factor("traverse on the tool side", 300, 30, 270)
    assert factor * (tail - head) == pytest.approx(needed, rel=1e-6)
    # A fresh skim reads nothing on the side of the tool and the whole difference on the other.
    cut = dict(zip([30, 270], lathe.diameters_between_centres(300, [30, 270]), strict=True))
    head, tail = lathe.traverse(300, [30, 270], lambda z: cut[int(z)] / 2)
    assert tail - head == pytest.approx(0, abs=1e-6)
    head, tail = lathe.traverse(300, [30, 270], lambda z: cut[int(z)] / 2, on_far_side=True)
    assert tail - head == pytest.approx(cut[270] - cut[30], abs=1e-6)
    factor = indicator.move_factor("traverse of fresh skims on the far side", 300, 30, 270)
    assert factor * (tail - head) == pytest.approx(needed, rel=1e-4)


def test_swapping_the_bar_parts_lathe_and_bar() -> None:
    lathe = SimulatedLathe(offset=0.015)

    def change(radius_at_second_end: float, radius_at_first_end: float) -> float:
        slope = (radius_at_second_end - radius_at_first_end) / 300
        head, tail = lathe.traverse(300, [30, 270], lambda z: radius_at_first_end + slope * z)
        return tail - head

    parts = indicator.swap_parts(change(12.5075, 12.5), change(12.5, 12.5075))
    assert parts == pytest.approx((0.012, 0.006), abs=1e-9)
    factor = indicator.move_factor("traverse on the tool side", 300, 30, 270)
    assert factor * parts.lathe_mm == pytest.approx(-0.015, abs=1e-9)


def test_an_indicator_on_the_bar_moves_less_than_the_centre() -> None:
    before = SimulatedLathe().tailstock_centre(300)
    after = SimulatedLathe().moved(0.015).tailstock_centre(300)
    on_bar = (after[0] - before[0]) * 270 / 300
    assert on_bar * indicator.move_factor("bar at the tailstock collar", 300, 30, 270) == pytest.approx(0.015)


@pytest.mark.parametrize("side", ["front", "rear"])
def test_worn_ways_fatten_the_work_of_a_front_tool(side: str) -> None:
    worn = SimulatedLathe(
        tool_in_front=side == "front",
        centre_height=130,
        front_wear=lambda z: 0.02 if z < 60 else 0.0,
        rear_wear=lambda z: 0.005 if z < 60 else 0.0,
    )
    at_headstock, at_tailstock = worn.diameters_between_centres(300, [30, 270])
    shift = carriage_path.wear_shift(0.02, 0.005, 130, 150)
    assert at_headstock - at_tailstock == pytest.approx(carriage_path.diameter_change(shift, side), rel=5e-3)


@pytest.mark.parametrize("side", ["front", "rear"])
def test_both_orders_take_the_wear_of_the_tool_out(side: str) -> None:
    lathe = SimulatedLathe(offset=0.02, wear_for_each_collar=0.0005, tool_in_front=side == "front")

    def cut(order: list[int]) -> float:
        head, tail = lathe.diameters_between_centres(300, [30, 270], order=order)
        return tail - head

    clean = SimulatedLathe(offset=0.02, tool_in_front=side == "front").diameters_between_centres(300, [30, 270])
    found = from_both_orders(cut([0, 1]), cut([1, 0]))
    assert found.difference_mm == pytest.approx(clean[1] - clean[0], abs=1e-8)
    assert found.wear_on_diameter_mm == pytest.approx(0.001, rel=1e-5)


def test_quill_that_points_off_moves_the_centre_with_its_extension() -> None:
    near, far = (SimulatedLathe(quill_slope=0.00015, quill_extension=out).tailstock_centre(300)[0] for out in (40, 90))
    assert far - near == pytest.approx(lathe_geometry.quill_shift(0.00015, 50))


def test_bow_shows_worn_ways_and_not_a_plain_taper() -> None:
    stations = [30, 150, 270]
    straight = SimulatedLathe(offset=0.1).diameters_between_centres(300, stations)
    assert lathe_geometry.third_collar_bow(*straight, *stations) == pytest.approx(0, abs=1e-9)
    worn = SimulatedLathe(front_wear=lambda z: 0.02 if 100 < z < 200 else 0.0).diameters_between_centres(300, stations)
    assert lathe_geometry.third_collar_bow(*worn, *stations) == pytest.approx(2 * 0.02, rel=5e-3)


@settings(max_examples=80)
@given(
    side=_SIDES,
    offset=st.floats(-8, 8),
    height=st.floats(-0.5, 0.5),
    tool=st.floats(-1, 1),
    share=st.floats(0, 1),
    radius=st.floats(12, 40),
)
def test_radius_cut_is_exact(side: str, offset: float, height: float, tool: float, share: float, radius: float) -> None:
    lathe = _lathe(side, offset=offset, height=height, tool_height=tool)
    station = share * hypot(300, offset, height)
    cross_slide = (radius**2 - tool**2) ** 0.5
    (expected,) = lathe.diameters_between_centres(300, [station], radius=radius)
    toward = sides.toward_tool(offset, side)
    found = lathe_geometry.radius_cut(cross_slide, toward, tool, height, station, 300)
    assert 2 * found == pytest.approx(expected, abs=1e-8)


@given(height=st.floats(0.001, 1.5), diameter=st.floats(40, 100), share=st.floats(0, 0.4))
def test_height_and_difference_are_each_others_way_back(height: float, diameter: float, share: float) -> None:
    layout = (diameter, 300, share * 300, 270)
    difference = alignment.height_error_difference(height, *layout)
    assert lathe_geometry.height_for_difference(difference, *layout) == pytest.approx(height)


@given(tolerance=st.floats(0.002, 0.1), length=st.floats(100, 500), span=_SPANS, share=st.floats(0, 0.4))
def test_offset_at_its_tolerance_makes_a_difference_at_its_tolerance(
    tolerance: float, length: float, span: float, share: float
) -> None:
    offset = lathe_geometry.offset_tolerance(tolerance, length, span)
    first, second = share * span, (1 - share) * span
    limit = alignment.scaled_tolerance(tolerance, length, second - first)
    assert alignment.diameter_difference(offset, span, first, second) == pytest.approx(limit)
