"""Collars, axes and paths as lines and points in space: distances by vector products, turns by rotations."""

from math import atan, sqrt
from typing import Any

import numpy as np
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

from oracles.registry import oracle

_SPACE = "numpy: distance of a point from a line in space"
_TURN = "scipy: a rotation in space"
_STEADY = {"relative": 1e-3}  # the formulas are of the first order; at the errors of a lathe no more is left out


def _radius(point: Any, centre: Any, along: Any) -> float:
    direction = np.asarray(along, dtype=float)
    return float(np.linalg.norm(np.cross(np.subtract(point, centre), direction)) / np.linalg.norm(direction))


def _apart(first: float, second: float, tip: Any, centre: Any = (0, 0, 0), along: Any = (0, 0, 1)) -> float:
    """Diameter at the second station less that at the first; x toward the tool, y up, z to the tailstock."""
    near, far = (2 * _radius(tip(at), centre, along) for at in (first, second))
    return far - near


def _between_centres(
    offset: float, height: float, tool: tuple[float, float], span: float, first: float, second: float
) -> float:
    return _apart(first, second, lambda z: (*tool, z), along=(offset, height, span))


@oracle("lathe_geometry.radius_cut", _SPACE, relative=1e-6)
def radius_cut(
    cross_slide_mm: float, offset_to_tool_mm: float, tool_height_mm: float, height_error_mm: float, station_mm: float,
    span_mm: float,
) -> float:  # fmt: skip
    """Where the path of the tip meets the plane across the axis at the station."""
    along = np.array([offset_to_tool_mm, height_error_mm, span_mm])
    unit = along / np.linalg.norm(along)
    z = brentq(lambda at: np.dot((cross_slide_mm, tool_height_mm, at), unit) - station_mm, -10 * span_mm, 10 * span_mm)
    return _radius((cross_slide_mm, tool_height_mm, z), (0, 0, 0), along)


@oracle("alignment.tailstock_move", "numpy: distances in space; scipy: root of the exact difference", **_STEADY)
def tailstock_move(difference_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float) -> float:
    """The offset away from the tool that leaves just this difference on collars of 70 mm."""
    left = lambda away: _between_centres(-away, 0, (35, 0), span_mm, first_station_mm, second_station_mm) - difference_mm  # noqa: E731
    return float(brentq(left, -0.05 * span_mm, 0.05 * span_mm, xtol=1e-12))


@oracle("alignment.diameter_difference", _SPACE, **_STEADY)
def diameter_difference(move_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float) -> float:
    return _between_centres(-move_mm, 0, (35, 0), span_mm, first_station_mm, second_station_mm)


@oracle("alignment.height_error_difference", _SPACE, relative=0.01)
def height_error_difference(
    height_error_mm: float, collar_diameter_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float
) -> float:
    tool = (collar_diameter_mm / 2, 0)
    return _between_centres(0, height_error_mm, tool, span_mm, first_station_mm, second_station_mm)


@oracle("alignment.tool_height_difference", _SPACE, relative=0.01)
def tool_height_difference(
    tool_height_mm: float, height_error_mm: float, collar_diameter_mm: float, span_mm: float, first_station_mm: float,
    second_station_mm: float,
) -> float:  # fmt: skip
    """Half the difference between a tool as much too high and too low: only what the two heights make together."""
    across = sqrt((collar_diameter_mm / 2) ** 2 - tool_height_mm**2)
    high, low = (
        _between_centres(0, height_error_mm, (across, at), span_mm, first_station_mm, second_station_mm)
        for at in (tool_height_mm, -tool_height_mm)
    )
    return (high - low) / 2


@oracle("lathe_geometry.height_for_difference", "numpy: distances in space; scipy: root", relative=0.01)
def height_for_difference(
    difference_mm: float, collar_diameter_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float
) -> float:
    stations = span_mm, first_station_mm, second_station_mm
    return float(brentq(
        lambda h: height_error_difference(h, collar_diameter_mm, *stations) - difference_mm, 0, collar_diameter_mm / 4,
        xtol=1e-10,
    ))  # fmt: skip


@oracle("carriage_path.path_lean", _TURN, relative=1e-5)
def path_lean(level_change_mm_per_m: float, distance_mm: float, centre_height_mm: float) -> float:
    """The tip stands at the height of the centres over a carriage that the bed turns along its way."""
    turned = Rotation.from_rotvec([0, 0, -atan(level_change_mm_per_m / 1000)]).apply([0, centre_height_mm, 0])
    return float(turned[0] / distance_mm)


@oracle("carriage_path.wear_shift", _TURN, relative=1e-5)
def wear_shift(front_wear_mm: float, rear_wear_mm: float, centre_height_mm: float, way_spacing_mm: float) -> float:
    turned = Rotation.from_rotvec([0, 0, -atan((front_wear_mm - rear_wear_mm) / way_spacing_mm)])
    return float(turned.apply([0, centre_height_mm, 0])[0])


def _sign(tool_side: str) -> int:
    return {"front": 1, "rear": -1}[tool_side]


@oracle("carriage_path.chucked_difference", _SPACE, **_STEADY)
def chucked_difference(
    path_lean_mm_per_mm: float, headstock_yaw_mm_per_mm: float, first_station_mm: float, second_station_mm: float,
    tool_side: str,
) -> float:  # fmt: skip
    side = _sign(tool_side)
    return _apart(
        first_station_mm, second_station_mm, lambda z: (side * 16 + path_lean_mm_per_mm * z, 0, z),
        along=(headstock_yaw_mm_per_mm, 0, 1),
    )  # fmt: skip


@oracle("carriage_path.between_centres_difference", _SPACE, **_STEADY)
def between_centres_difference(
    path_lean_mm_per_mm: float, tailstock_offset_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float,
    tool_side: str,
) -> float:  # fmt: skip
    side = _sign(tool_side)
    return _apart(
        first_station_mm, second_station_mm, lambda z: (side * 35 + path_lean_mm_per_mm * z, 0, z),
        along=(tailstock_offset_mm, 0, span_mm),
    )  # fmt: skip


@oracle("carriage_path.diameter_change", _SPACE)
def diameter_change(shift_mm: float, tool_side: str) -> float:
    side = _sign(tool_side)
    return 2 * (_radius((side * 35 + shift_mm, 0, 0), (0, 0, 0), (0, 0, 1)) - 35)


@oracle("alignment.tailstock_move_exact", "scipy: root of the slope of a turned bar")
@oracle("setover.setover_exact", "scipy: root of the slope of a turned bar")
def tailstock_move_exact(
    bar_span_mm: float, difference_mm: float = 0, first_station_mm: float = 0, second_station_mm: float = 1,
    taper_mm_per_mm: float = 0,
) -> float:  # fmt: skip
    """The bar turned about its headstock centre until its surface leaves the wanted slope along the path of the tool."""
    slope = (taper_mm_per_mm or difference_mm / (second_station_mm - first_station_mm)) / 2

    def lack(turn: float) -> float:
        end = Rotation.from_rotvec([0, turn, 0]).apply([0, 0, 1])
        return float(end[0] / end[2] - slope)

    return float(Rotation.from_rotvec([0, brentq(lack, -1, 1, xtol=1e-15), 0]).apply([0, 0, bar_span_mm])[0])


@oracle("lathe_geometry.third_collar_bow", "numpy: straight line between the outer collars", relative=1e-6)
def third_collar_bow(
    headstock_diameter_mm: float, middle_diameter_mm: float, tailstock_diameter_mm: float, first_station_mm: float,
    middle_station_mm: float, second_station_mm: float,
) -> float:  # fmt: skip
    ends = (first_station_mm, second_station_mm), (headstock_diameter_mm, tailstock_diameter_mm)
    return float(middle_diameter_mm - np.interp(middle_station_mm, *ends))


@oracle("third_collar.middle_from_mean", "numpy: straight line between the outer collars", relative=1e-6)
def middle_from_mean(headstock_diameter_mm: float, middle_diameter_mm: float, tailstock_diameter_mm: float) -> float:
    return third_collar_bow(headstock_diameter_mm, middle_diameter_mm, tailstock_diameter_mm, -1, 0, 1)


@oracle("fine_feed.slide_angle", "scipy: root of what a turned slide feeds across", relative=1e-7)
def slide_angle(ratio: float) -> float:
    def lack(angle: float) -> float:
        return float(Rotation.from_euler("y", angle, degrees=True).apply([0, 0, 1])[0] * ratio - 1)

    return float(brentq(lack, 0, 90, xtol=1e-12)) if ratio > 1 else 90.0


@oracle("fine_feed.slide_step", "numpy: a slanting step across the axis")
def slide_step(division_mm: float, ratio: float) -> float:
    across = np.array([division_mm / ratio, 0, np.sqrt(division_mm**2 - (division_mm / ratio) ** 2)])
    return 2 * _radius(across, (0, 0, 0), (0, 0, 1))


@oracle("indicator.swap_parts", "numpy: two equations")
def swap_parts(as_it_is_mm: float, swapped_mm: float) -> list[float]:
    return [float(part) for part in np.linalg.solve([[1, 1], [1, -1]], [as_it_is_mm, swapped_mm])]


@oracle("cut_order.from_both_orders", "numpy: two equations")
def from_both_orders(headstock_first_mm: float, tailstock_first_mm: float) -> list[float]:
    return [float(part) for part in np.linalg.solve([[1, 1], [1, -1]], [headstock_first_mm, tailstock_first_mm])]


@oracle("indicator.sweep", "numpy: circle fitted to four readings", part=lambda found: list(found)[:3])
def sweep(
    front_mm: float, top_mm: float, rear_mm: float, bottom_mm: float, sag_mm: float = 0.0, in_bore: bool = False
) -> list[float]:
    """Readings fitted with a mean and two waves of one turn; in a bore the plunger points the other way."""
    turns = np.array([0, np.pi / 2, np.pi, 3 * np.pi / 2])
    waves = np.column_stack([np.ones(4), np.cos(turns), np.sin(turns)])
    _, across, up = np.linalg.lstsq(waves, np.array([front_mm, top_mm, rear_mm, bottom_mm]), rcond=None)[0]
    side = -1 if in_bore else 1
    return [float(side * across), float(side * up), float(side * up - sag_mm)]
