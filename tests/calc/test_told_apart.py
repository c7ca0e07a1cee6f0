"""Which causes which tests tell apart, and which no number of readings can."""

import pytest

from simulated_lathe import SimulatedLathe
from tailtrue.calc.causes import (
    BAR_TAPER,
    HEADSTOCK_PITCH,
    HEADSTOCK_YAW,
    LOCAL_WEAR,
    PATH_LEAN,
    TAILSTOCK_HEIGHT,
    TAILSTOCK_OFFSET,
    TAILSTOCK_ON_BED,
    TOOL_WEAR,
    bed_bow_term,
    between_centres_row,
    chucked_row,
    chucked_traverse_row,
    level_row,
    riding_the_bed,
    sweep_height_row,
    tool_height_term,
    traverse_row,
    wear_term,
)
from tailtrue.calc.estimation import Fit, Reading

_SURE = 0.0015


def test_wear_is_told_from_taper_only_when_the_order_is_reversed() -> None:
    lathe = SimulatedLathe(offset=0.02, wear_for_each_collar=0.0005)

    def skim(order: list[int], setting: str) -> list[Reading]:
        cut = lathe.diameters_between_centres(300, [30, 270], order=order)
        return [
            Reading(between_centres_row(z, 300, "front", setting) | wear_term(turn), d - 70, _SURE)
            for z, d, turn in zip([30, 270], cut, order, strict=True)
        ]

    once = Fit.of(skim([0, 1], "first"))
    assert not once.sees({TOOL_WEAR: 1})
    assert not once.sees({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300})
    both = Fit.of([*skim([0, 1], "first"), *skim([1, 0], "second")])
    assert both.estimate({TOOL_WEAR: 1}).value == pytest.approx(0.0005, rel=1e-4)
    assert both.estimate({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300}).value == pytest.approx(0.02, rel=1e-4)


def test_worn_ways_are_told_from_taper_with_a_third_collar() -> None:
    def hollow(z: float) -> float:
        return 0.02 * max(0.0, 4 * z * (300 - z) / 300**2)

    lathe = SimulatedLathe(offset=0.02, front_wear=hollow)
    cut = lathe.diameters_between_centres(300, [30, 150, 270])
    readings = [
        Reading(between_centres_row(z, 300, "front") | bed_bow_term(z, 0, 300, "front"), d - 70, _SURE)
        for z, d in zip([30, 150, 270], cut, strict=True)
    ]
    assert not Fit.of(readings[::2]).sees({LOCAL_WEAR: 1})
    assert Fit.of(readings).estimate({LOCAL_WEAR: 1}).value == pytest.approx(0.02, rel=5e-3)


def test_swapping_a_bar_tells_its_taper_from_the_lathe() -> None:
    lathe = SimulatedLathe(offset=0.015)
    readings = []
    for swapped in (False, True):
        ends = (12.5, 12.5075) if not swapped else (12.5075, 12.5)
        seen = lathe.traverse(300, [30, 270], lambda z, ends=ends: ends[0] + (ends[1] - ends[0]) * z / 300)
        readings += [
            Reading(traverse_row(z, 300, "front", swapped, f"swapped {swapped}"), value, 0.001)
            for z, value in zip([30, 270], seen, strict=True)
        ]
    assert not Fit.of(readings[:2]).sees({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300})
    fit = Fit.of(readings)
    assert fit.estimate({BAR_TAPER: 1}).value == pytest.approx(0.0075, rel=1e-6)
    assert fit.estimate({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300}).value == pytest.approx(0.015, rel=1e-6)


@pytest.mark.parametrize("side", ["front", "rear"])
def test_a_traverse_in_the_chuck_sees_what_a_chucked_cut_sees(side: str) -> None:
    cut = [Reading(chucked_row(z, side), z, 1) for z in (20, 170)]
    traverse = [Reading(chucked_traverse_row(z, side), z, 1) for z in (20, 170)]
    lean = {PATH_LEAN: 1, HEADSTOCK_YAW: -1}
    # Fat work stands nearer to the tool by half its diameter; along true work the path itself is seen, reversed.
    assert Fit.of(traverse).estimate(lean).value == pytest.approx(-2 * Fit.of(cut).estimate(lean).value)


def test_several_spans_do_not_tell_twist_from_offset_when_the_tailstock_rides_the_bed() -> None:
    lathe = SimulatedLathe(twist=4e-7, offset=0.02, rides_the_bed=True, overhang=80)
    readings = []
    for span in (200.0, 300.0, 500.0):
        cut = lathe.diameters_between_centres(span, [0.1 * span, 0.9 * span])
        readings += [
            Reading(riding_the_bed(between_centres_row(share * span, span, "front", f"{span}"), span, 80), d - 70, _SURE)
            for share, d in zip((0.1, 0.9), cut, strict=True)
        ]
    fit = Fit.of(readings)
    assert not fit.sees({PATH_LEAN: 1})
    assert fit.blind == (pytest.approx({TAILSTOCK_ON_BED: 1, PATH_LEAN: -1 / 80}),)
    told = Fit.of([*readings, Reading(level_row(500, 150), 0.2, 0.02)])
    assert told.estimate({TAILSTOCK_ON_BED: 1}).value == pytest.approx(0.02, abs=1e-4)
    assert told.chi_squared < 0.01


def test_height_is_settled_by_a_sweep_once_the_pitch_is_known_or_by_a_tool_off_height() -> None:
    lathe = SimulatedLathe(height=0.1, pitch=1e-4)
    seen = lathe.sweep(300, 20)
    swept = Reading(sweep_height_row(300), (seen[1] - seen[3]) / 2, 0.002)
    assert not Fit.of([swept]).sees({TAILSTOCK_HEIGHT: 1})
    known = Reading({HEADSTOCK_PITCH: 1}, 1e-4, 1e-5)
    assert Fit.of([swept, known]).estimate({TAILSTOCK_HEIGHT: 1}).value == pytest.approx(0.1, rel=1e-6)
    readings = []
    for high in (-1.0, 1.0):
        cut = SimulatedLathe(height=0.1, tool_height=high).diameters_between_centres(300, [30, 270])
        readings += [
            Reading(between_centres_row(z, 300, "front", f"{high}") | tool_height_term(high, 70, z, 300), d - 70, _SURE)
            for z, d in zip([30, 270], cut, strict=True)
        ]
    assert Fit.of(readings).estimate({TAILSTOCK_HEIGHT: 1}).value == pytest.approx(0.1, rel=2e-3)
