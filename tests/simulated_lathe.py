"""A lathe in three dimensions, for tests: points, lines and rotations only, none of the formulas under test.

Axes: x toward the operator, y up, z from the headstock centre toward the tailstock. The carriage is a rigid body
that rolls on two ways; the point of the tool, or of an indicator, rides on it.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import cos, sin, sqrt
from random import Random

from scipy.optimize import brentq

Vector = tuple[float, float, float]


def _level(_z: float) -> float:
    return 0.0


@dataclass(frozen=True)
class SimulatedLathe:
    """What is wrong with a lathe, all 0 to begin with; lengths in mm, angles in radians."""

    yaw: float = 0.0  # free end of the spindle axis toward the operator
    pitch: float = 0.0  # free end up
    twist: float = 0.0  # roll of the ways for each mm, top toward the operator
    offset: float = 0.0  # tailstock centre toward the operator, before twist carries it
    height: float = 0.0  # tailstock centre over the headstock centre
    rides_the_bed: bool = False  # twist carries the tailstock too
    overhang: float = 80.0  # from the tailstock centre back to the middle of its base
    quill_slope: float = 0.0  # toward the operator, for each mm of extension
    quill_extension: float = 0.0
    centre_height: float = 150.0
    way_spacing: float = 150.0
    front_wear: Callable[[float], float] = _level
    rear_wear: Callable[[float], float] = _level
    tool_in_front: bool = True
    tool_height: float = 0.0
    wear_for_each_collar: float = 0.0  # set-back of the edge on the radius
    noise: float = 0.0  # standard deviation of a reading of a diameter
    seed: int = 1

    def moved(self, toward_operator: float) -> "SimulatedLathe":
        """The same lathe, the tailstock centre moved across."""
        return replace(self, offset=self.offset + toward_operator)

    def moved_toward_tool(self, move: float) -> "SimulatedLathe":
        """The same lathe, the tailstock centre moved toward the tool, wherever that stands."""
        return self.moved(move if self.tool_in_front else -move)

    def tailstock_centre(self, span: float) -> Vector:
        """Where the point of the tailstock centre stands."""
        x = self.offset + self.quill_slope * self.quill_extension
        point: Vector = (x, self.height, span)
        if self.rides_the_bed:
            point = self._rolled(point, self.twist * (span + self.overhang))
        return point

    def diameters_between_centres(
        self, span: float, stations: Sequence[float], radius: float = 35.0, order: Sequence[int] = ()
    ) -> list[float]:
        """Diameters cut at stations along the bar at one setting; `order` tells which collar is cut first."""
        end = self.tailstock_centre(span)
        return self._cut((0.0, 0.0, 0.0), end, stations, radius, order)

    def diameters_chucked(self, stations: Sequence[float], radius: float = 35.0, order: Sequence[int] = ()) -> list[float]:
        """Diameters cut at stations along a bar held by the chuck alone."""
        return self._cut((0.0, 0.0, 0.0), (self.yaw, self.pitch, 1.0), stations, radius, order)

    def level(self, z: float) -> float:
        """A level across the ways, mm/m, more than 0 when the front is low."""
        return 1000 * self._roll(z)

    def sweep(self, span: float, radius: float, sag: float = 0.0, in_bore: bool = False) -> tuple[float, ...]:
        """Front, top, rear and bottom readings of an indicator carried by the spindle round a quill or in its bore."""
        cx, cy, cz = self.tailstock_centre(span)
        # The axis where it passes the place that is swept.
        px, py = self.yaw * cz, self.pitch * cz
        readings = []
        for ux, uy in ((1, 0), (0, 1), (-1, 0), (0, -1)):
            # The holder hangs down by the sag whichever way it points.
            bx, by = px, py - sag
            wx, wy = cx - bx, cy - by
            along = wx * ux + wy * uy
            across = wx * uy - wy * ux
            reach = along + sqrt(radius**2 - across**2)
            readings.append(-reach if in_bore else reach)
        return tuple(reading - readings[0] for reading in readings)

    def traverse(
        self, span: float, stations: Sequence[float], radius: Callable[[float], float], on_far_side: bool = False
    ) -> list[float]:
        """Readings of an indicator on the carriage along a bar between centres, more where the plunger is pushed in."""
        end = self.tailstock_centre(span)
        side = self._side() * (-1 if on_far_side else 1)
        readings = []
        for station in stations:
            axis = tuple(part * station / span for part in end)
            seat = self._carried((side * 100.0, 0.0), station)
            readings.append(side * (axis[0] - seat[0]) + radius(station))
        return readings

    def _cut(
        self, start: Vector, end: Vector, stations: Sequence[float], radius: float, order: Sequence[int]
    ) -> list[float]:
        hand = Random(self.seed)
        turns = order or range(len(stations))
        cross_slide = sqrt(radius**2 - self.tool_height**2)
        found = []
        for station, turn in zip(stations, turns, strict=True):
            x = self._side() * (cross_slide + turn * self.wear_for_each_collar)
            found.append(2 * self._radius(start, end, x, station) + hand.gauss(0, self.noise))
        return found

    def _radius(self, start: Vector, end: Vector, x: float, station: float) -> float:
        length = sqrt(sum((b - a) ** 2 for a, b in zip(start, end, strict=True)))
        unit = [(b - a) / length for a, b in zip(start, end, strict=True)]

        def tip(carriage: float) -> list[float]:
            return [b - a for a, b in zip(start, self._carried((x, self.tool_height), carriage), strict=True)]

        def foot(carriage: float) -> float:
            return sum(u * p for u, p in zip(unit, tip(carriage), strict=True)) - station

        # The carriage stands where the tip meets this station of the bar.
        carriage = brentq(foot, station - 20, station + 20, xtol=1e-10, rtol=1e-14)
        point = tip(carriage)
        along = sum(u * p for u, p in zip(unit, point, strict=True))
        return sqrt(sum((p - along * u) ** 2 for u, p in zip(unit, point, strict=True)))

    def _carried(self, point: tuple[float, float], carriage: float) -> Vector:
        """A point of the carriage, given where the ways are straight, at a place along the bed."""
        front, rear = self.front_wear(carriage), self.rear_wear(carriage)
        x, y, z = self._rolled((*point, carriage), (front - rear) / self.way_spacing)
        # Both ways lower the carriage; the part that is a roll turned it already.
        return self._rolled((x, y - (front + rear) / 2, z), self.twist * carriage)

    def _rolled(self, point: Vector, angle: float) -> Vector:
        """A point turned about the line midway between the ways, top toward the operator."""
        x, y, z = point
        up = y + self.centre_height
        return (x * cos(angle) + up * sin(angle), up * cos(angle) - x * sin(angle) - self.centre_height, z)

    def _roll(self, z: float) -> float:
        return self.twist * z + (self.front_wear(z) - self.rear_wear(z)) / self.way_spacing

    def _side(self) -> int:
        return 1 if self.tool_in_front else -1
