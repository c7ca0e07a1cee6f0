"""An indicator on the saddle on fresh skims: nought on the tool side, the whole difference on the other."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from simulated_lathe import SimulatedLathe
from tailtrue.calc.difference_budget import difference_parts
from tailtrue.calc.fresh_skims import (
    difference_from_readings,
    guidance_parts,
    height_effect,
    reading_difference,
    skims_uncertainty,
)
from tailtrue.calc.indicator import move_factor
from tailtrue.calc.validity import OutOfRange

SPAN, STATIONS = 300.0, (50.0, 250.0)
SMALL = st.floats(-0.2, 0.2)


def carried(lathe: SimulatedLathe, on_far_side: bool) -> tuple[float, float]:
    """What an indicator on the carriage reads at both collars that this lathe has just cut."""
    cut = dict(zip(STATIONS, lathe.diameters_between_centres(SPAN, STATIONS), strict=True))
    head, tail = lathe.traverse(SPAN, STATIONS, lambda station: cut[station] / 2, on_far_side)
    return head, tail


@pytest.mark.parametrize("tool_in_front", [True, False], ids=["tool in front", "tool behind"])
@pytest.mark.parametrize("offset", [0.05, -0.03])
def test_on_a_lathe_in_three_dimensions_the_tool_side_reads_nought_and_the_other_the_difference(
    offset: float, tool_in_front: bool
) -> None:
    # Geometry of a lathe that shares no formula with ours; bends of the path are in it as well.
    lathe = SimulatedLathe(offset=offset, tool_in_front=tool_in_front, front_wear=lambda z: 0.01 * (1 - z / SPAN) ** 2)
    head, tail = lathe.diameters_between_centres(SPAN, STATIONS)
    near, far = carried(lathe, on_far_side=False), carried(lathe, on_far_side=True)
    assert near[1] - near[0] == pytest.approx(reading_difference(tail - head, "tool"), abs=1e-4)
    assert far[1] - far[0] == pytest.approx(reading_difference(tail - head, "away"), abs=1e-4)
    assert difference_from_readings(*far, "away") == pytest.approx(tail - head, abs=1e-4)


@pytest.mark.parametrize("tool_in_front", [True, False], ids=["tool in front", "tool behind"])
def test_the_move_made_by_the_indicator_brings_the_tailstock_into_line(tool_in_front: bool) -> None:
    lathe = SimulatedLathe(offset=0.05, tool_in_front=tool_in_front)
    difference = difference_from_readings(*carried(lathe, on_far_side=True), "away")
    move = difference * move_factor("traverse of fresh skims on the far side", SPAN, *STATIONS)
    head, tail = lathe.moved_toward_tool(move).diameters_between_centres(SPAN, STATIONS)
    assert tail - head == pytest.approx(0, abs=1e-4)


def test_readings_from_the_tool_side_are_refused() -> None:
    with pytest.raises(OutOfRange, match="away from the tool"):
        difference_from_readings(0.0, 0.0, "tool")
    with pytest.raises(OutOfRange, match="must be tool or away"):
        reading_difference(0.01, "front")  # type: ignore[arg-type]


@given(SMALL, SMALL)
def test_the_zero_of_the_indicator_falls_out(head: float, tail: float) -> None:
    as_set = difference_from_readings(head, tail, "away")
    assert difference_from_readings(head + 1, tail + 1, "away") == pytest.approx(as_set, abs=1e-9)
    assert difference_from_readings(tail, head, "away") == pytest.approx(-as_set, abs=1e-12)


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_what_is_no_number_is_refused(value: float) -> None:
    for call in (
        lambda: reading_difference(value, "away"),
        lambda: difference_from_readings(value, 0, "away"),
        lambda: difference_from_readings(0, value, "away"),
        lambda: height_effect(value, 0, 50),
        lambda: height_effect(0, value, 50),
        lambda: guidance_parts(value, 0),
        lambda: guidance_parts(0, value),
    ):
        with pytest.raises(OutOfRange):
            call()


def test_a_plunger_at_the_height_of_the_centres_adds_nothing() -> None:
    assert height_effect(0, 0.05, 70) == 0
    assert height_effect(1, 0, 70) == 0


def test_a_plunger_too_far_off_is_refused() -> None:
    assert height_effect(2.5, 1.0, 10) > 0
    with pytest.raises(OutOfRange, match="of the radius"):
        height_effect(2.51, 1.0, 10)
    with pytest.raises(OutOfRange):
        height_effect(-0.1, 0, 10)
    with pytest.raises(OutOfRange):
        height_effect(0, -0.1, 10)
    with pytest.raises(OutOfRange):
        height_effect(0, 0, 0)


def test_guidance_and_height_add_to_what_one_instrument_leaves() -> None:
    parts = difference_parts(0.0015, 2, 0.002, 0.002, 0.001, 0.0008, 0.001, 0.001)
    alone = skims_uncertainty(parts, 0, 0)
    assert alone == pytest.approx(sqrt(sum(part**2 for part in parts)))
    assert skims_uncertainty(parts, 0.003, 0.006) == pytest.approx(sqrt(alone**2 + 0.003**2 / 3 + 0.006**2 / 3))
    with pytest.raises(OutOfRange):
        guidance_parts(-0.001, 0)
    with pytest.raises(OutOfRange):
        guidance_parts(0, -0.001)


def test_a_plunger_too_far_off_is_told_where_it_touches() -> None:
    with pytest.raises(OutOfRange, match=r"^the plunger touches 22 mm off the middle of a collar of radius 35 mm; "):
        height_effect(21.5, 1, 70)
