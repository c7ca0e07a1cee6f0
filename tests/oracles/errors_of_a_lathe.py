"""What each error of a lathe does to what is seen: the same scene in space with one error at a time put in.

The axis of the work, the path of the tip and the plunger are lines in space; x toward the operator, y up, z to the
tailstock. A factor is the change of what is seen for each unit of the error, the error small and put in both ways.
"""

from collections.abc import Callable
from math import sqrt

import numpy as np
from scipy.interpolate import CubicSpline

from oracles.registry import oracle

_SCENE = "numpy: the scene in space, one error at a time"
_SMALL = 1e-6
_RADIUS = 35.0
_SIDES = {"front": 1, "rear": -1}
_NEAR = {"relative": 1e-6}


def _radius(x: float, y: float, z: float, along: tuple[float, float, float]) -> float:
    direction = np.array(along)
    return float(np.linalg.norm(np.cross((x, y, z), direction)) / np.linalg.norm(direction))


def _factors(seen: Callable[..., float], *errors: str) -> dict[str, float]:
    """Slope of what is seen against each error, all others nought."""
    return {
        error: (seen(**{error.replace(" ", "_"): _SMALL}) - seen(**{error.replace(" ", "_"): -_SMALL})) / (2 * _SMALL)
        for error in errors
    }


@oracle("causes.chucked_row", _SCENE, **_NEAR)
def chucked(station_mm: float, tool_side: str, setting: str = "chucked") -> dict[str, float]:
    side = _SIDES[tool_side]

    def diameter(headstock_yaw: float = 0, path_lean: float = 0) -> float:
        return 2 * _radius(side * _RADIUS + path_lean * station_mm, 0, station_mm, (headstock_yaw, 0, 1))

    return _factors(diameter, "headstock yaw", "path lean") | {f"setting {setting}": 2}


@oracle("causes.between_centres_row", _SCENE, **_NEAR)
def between_centres(station_mm: float, span_mm: float, tool_side: str, setting: str = "between centres") -> dict[str, float]:
    side = _SIDES[tool_side]

    def diameter(path_lean: float = 0, tailstock_offset: float = 0) -> float:
        return 2 * _radius(side * _RADIUS + path_lean * station_mm, 0, station_mm, (tailstock_offset, 0, span_mm))

    return _factors(diameter, "path lean", "tailstock offset") | {f"setting {setting}": 2}


@oracle("causes.sweep_row", _SCENE, **_NEAR)
def sweep(span_mm: float) -> dict[str, float]:
    """The tailstock centre seen from the prolonged axis of the spindle."""

    def offset(headstock_yaw: float = 0, tailstock_offset: float = 0) -> float:
        return tailstock_offset - float(np.polyval((headstock_yaw, 0), span_mm))

    return _factors(offset, "headstock yaw", "tailstock offset")


@oracle("causes.chucked_traverse_row", _SCENE, **_NEAR)
def chucked_traverse(station_mm: float, tool_side: str, setting: str = "chucked traverse") -> dict[str, float]:
    """A true cylinder in the chuck; the plunger goes in by what lies between its path and the surface."""
    side = _SIDES[tool_side]

    def pushed_in(headstock_yaw: float = 0, path_lean: float = 0) -> float:
        plunger = side * _RADIUS + path_lean * station_mm
        return _RADIUS - _radius(plunger, 0, station_mm, (headstock_yaw, 0, 1))

    return _factors(pushed_in, "headstock yaw", "path lean") | {f"setting {setting}": 1}


@oracle("causes.traverse_row", _SCENE, **_NEAR)
def traverse(
    station_mm: float, span_mm: float, tool_side: str, swapped: bool = False, setting: str = "traverse"
) -> dict[str, float]:
    side = _SIDES[tool_side]

    def pushed_in(tailstock_offset: float = 0, path_lean: float = 0, bar_taper: float = 0) -> float:
        ends = (0, bar_taper)[:: -1 if swapped else 1]
        surface = _RADIUS + float(np.interp(station_mm, (0, span_mm), ends))
        plunger = side * _RADIUS + path_lean * station_mm
        return surface - _radius(plunger, 0, station_mm, (tailstock_offset, 0, span_mm))

    found = _factors(pushed_in, "tailstock offset", "path lean", "bar taper")
    if swapped:  # the bar as a whole is thicker at the headstock then; that goes into the setting
        found["bar taper"] -= 1
    return found | {f"setting {setting}": 1}


@oracle("causes.bed_bow_term", "scipy: a spline through the ends and the top of the bow", **_NEAR)
def bed_bow(station_mm: float, from_mm: float, to_mm: float, tool_side: str) -> dict[str, float]:
    shape = CubicSpline((from_mm, (from_mm + to_mm) / 2, to_mm), (0, 1, 0), bc_type="not-a-knot")
    shift = float(shape(station_mm)) if from_mm <= station_mm <= to_mm else 0.0
    return {"local wear": 2 * _SIDES[tool_side] * shift}


@oracle("causes.tool_height_term", _SCENE, relative=0.01)
def tool_height(tool_height_mm: float, collar_diameter_mm: float, station_mm: float, span_mm: float) -> dict[str, float]:
    across = sqrt((collar_diameter_mm / 2) ** 2 - tool_height_mm**2)

    def diameter(tailstock_height: float = 0) -> float:
        return 2 * _radius(across, tool_height_mm, station_mm, (0, tailstock_height, span_mm))

    return _factors(diameter, "tailstock height")
