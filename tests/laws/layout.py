"""Sizes laid out: lengths and steps."""

import math
from functools import partial

from laws.law import DOWN, FREE, UP, Axis, Law
from tailtrue.calc import lengths, octagon, steps

_ANY = (-500, 500, UP)
_STEP = (0.001, 5, FREE)  # a whole number of coarser steps may come to more or to less
_BAND: dict[str, Axis] = {"width_mm": (0.1, 100, UP)}


def _cut(stock_on_diameter_mm: float, passes: float) -> float:
    return steps.equal_cut(stock_on_diameter_mm, round(passes), 0.02)


LAWS: dict[str, Law] = {
    "steps.step_down": Law(steps.step_down, {"value_mm": _ANY, "step_mm": _STEP}, least=-math.inf),
    "steps.step_up": Law(steps.step_up, {"value_mm": _ANY, "step_mm": _STEP}, least=-math.inf),
    "steps.steps_in": Law(steps.steps_in, {"value_mm": (0, 500, UP), "step_mm": (0.001, 5, DOWN)}),
    "steps.nearest_steps": Law(steps.nearest_steps, {"value_mm": (0, 500, UP), "step_mm": (0.001, 5, DOWN)}),
    "steps.length_of_steps": Law(steps.length_of_steps, {"count": (0, 500, UP), "step_mm": (0.001, 5, UP)}),
    # Where nothing is left in whole steps the bare difference is told, which is more.
    "steps.surely_less": Law(partial(steps.surely_less, step_mm=0.001), {"whole_mm": (0.02, 0.1, UP), "doubt_mm": (0, 0.01, DOWN)}),
    "steps.equal_cut": Law(_cut, {"stock_on_diameter_mm": (0, 10, UP), "passes": (1, 20, DOWN)}, least=0.02),
    "steps.finishing_cut": Law(partial(steps.finishing_cut, step_mm=0.02), {"stock_on_diameter_mm": (0, 1, UP), "passes": (1, 5, DOWN)}),
    "octagon.corner_leg": Law(octagon.corner_leg, {"flats_mm": (0.1, 500, UP)}),
    "octagon.octagon_circle": Law(octagon.octagon_circle, {"flats_mm": (20, 500, UP), "outside_mm": (0, 4, UP)}),
    "octagon.corners_area": Law(octagon.corners_area, {"flats_mm": (0.1, 500, UP), "thickness_mm": (0.1, 200, UP), "pieces": (1, 10, UP)}),
    "octagon.sawing_time": Law(octagon.sawing_time, {"area_mm2": (1, 1e5, UP), "rate_mm2_min": (10, 5000, DOWN), "cuts": (0, 50, UP),
                                                     "clamp_s": (0, 600, UP)}),
    "lengths.share_of": Law(lengths.share_of, {"whole_mm": (0, 1000, UP), "share": (0, 1, UP)}),
    "lengths.length_of_diameters": Law(lengths.length_of_diameters, {"diameter_mm": (0.1, 300, UP), "ratio": (0, 20, UP)}),
    "lengths.length_ratio": Law(lengths.length_ratio, {"length_mm": (0, 1000, UP), "measure_mm": (0.1, 300, DOWN)}),
    "lengths.percentage": Law(lengths.percentage, {"part_mm": (0, 1000, UP), "whole_mm": (0.1, 1000, DOWN)}),
    "lengths.within_both_sides": Law(lengths.within_both_sides, {"outer_mm": (0, 500, UP), "margin_mm": (0, 50, DOWN)}, least=-100),
    "lengths.over_both_sides": Law(lengths.over_both_sides, {"inner_mm": (0, 500, UP), "margin_mm": (0, 50, UP)}),
    "lengths.per_side": Law(lengths.per_side, {"outer_mm": (100, 500, UP), "inner_mm": (0, 100, DOWN)}),
    "lengths.on_diameter": Law(lengths.on_diameter, {"depth_mm": (0, 5, UP), "cuts": (0, 100, UP)}),
    "lengths.near_edge": Law(lengths.near_edge, {"middle_mm": (0, 500, UP), "width_mm": (0.1, 100, DOWN)}, least=-50),
    "lengths.middle_past": Law(lengths.middle_past, _BAND | {"edge_mm": (0, 500, UP)}),
    "lengths.midway": Law(lengths.midway, {"first_mm": _ANY, "second_mm": _ANY}, least=-500, most=500),
    "lengths.length_for_pieces": Law(lambda count, **given: lengths.length_for_pieces(count=round(count), **given),
                                     {"piece_mm": (0.1, 300, UP), "kerf_mm": (0, 10, UP), "count": (1, 10, UP)}),
    "lengths.piece_of_stock": Law(lambda count, **given: lengths.piece_of_stock(count=round(count), **given),
                                  {"stock_mm": (0, 1000, UP), "kerf_mm": (0, 10, DOWN), "count": (1, 10, DOWN)}, least=-10),
}  # fmt: skip
