"""Volumes, masses, surfaces, centres and moments of bodies: integrals of their outline."""

from collections.abc import Callable, Sequence
from math import pi, radians, sqrt, tan

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq

from oracles.registry import oracle

_BODY = "scipy: integral of the outline"
_PER_MM3 = 1e-9  # kg/m3 in kg/mm3


def _turned(radius: Callable[[float], float], length: float) -> float:
    """Volume of what is turned, from its radius along the axis."""
    return float(quad(lambda z: pi * radius(z) ** 2, 0, length, epsabs=0)[0])


def _cone(large: float, small: float, length: float) -> Callable[[float], float]:
    return lambda z: float(np.interp(z, (0, length), (large / 2, small / 2)))


@oracle("beams.mass_cylinder", _BODY)
def cylinder(diameter_mm: float, length_mm: float, density_kg_m3: float, bore_mm: float = 0) -> float:
    ring = quad(lambda r: 2 * pi * r * length_mm, bore_mm / 2, diameter_mm / 2)[0]
    return float(ring * density_kg_m3 * _PER_MM3)


@oracle("solids.mass_stepped", _BODY)
def stepped(
    diameters_mm: Sequence[float], lengths_mm: Sequence[float], density_kg_m3: float, bores_mm: Sequence[float] = ()
) -> float:
    bores = bores_mm or [0.0] * len(diameters_mm)
    return sum(
        cylinder(outer, length, density_kg_m3, bore)
        for outer, length, bore in zip(diameters_mm, lengths_mm, bores, strict=True)
    )


@oracle("solids.mass_cone", _BODY)
def mass_of_a_cone(
    large_diameter_mm: float, small_diameter_mm: float, length_mm: float, density_kg_m3: float, bore_mm: float = 0
) -> float:
    body = _turned(_cone(large_diameter_mm, small_diameter_mm, length_mm), length_mm)
    return (body - _turned(lambda _: bore_mm / 2, length_mm)) * density_kg_m3 * _PER_MM3


@oracle("solids.turning_energy", "scipy: integral of the speed of each ring")
def turning_energy(mass_kg: float, diameter_mm: float, spindle_speed_per_min: float, bore_mm: float = 0) -> float:
    inner, outer = bore_mm / 2000, diameter_mm / 2000
    turning = 2 * pi * spindle_speed_per_min / 60
    area = quad(lambda r: 2 * pi * r, inner, outer)[0]
    return float(quad(lambda r: mass_kg * 2 * pi * r / area * (turning * r) ** 2 / 2, inner, outer)[0])


@oracle("casting.blank_volume", _BODY)
def blank_volume(small_diameter_mm: float, large_diameter_mm: float, height_mm: float) -> float:
    return _turned(_cone(large_diameter_mm, small_diameter_mm, height_mm), height_mm)


@oracle("casting.blank_surface", "scipy: integrals over the side and the faces")
def blank_surface(small_diameter_mm: float, large_diameter_mm: float, height_mm: float) -> float:
    outline = _cone(large_diameter_mm, small_diameter_mm, height_mm)
    slope = (large_diameter_mm - small_diameter_mm) / 2 / height_mm
    side = quad(lambda z: 2 * pi * outline(z) * sqrt(1 + slope**2), 0, height_mm)[0]
    faces = sum(quad(lambda r: 2 * pi * r, 0, size / 2)[0] for size in (small_diameter_mm, large_diameter_mm))
    return float(side + faces)


@oracle("casting.draft_taper", "scipy: integral of the slope of both walls")
def draft_taper(height_mm: float, draft_deg: float) -> float:
    return float(quad(lambda _: 2 * tan(radians(draft_deg)), 0, height_mm)[0])


@oracle("casting.top_feeder_diameter", "scipy: root of the balance of moduli", relative=1e-7)
def top_feeder(
    casting_volume_mm3: float, casting_surface_mm2: float, face_diameter_mm: float, factor: float, height_ratio: float
) -> float:
    """The feeder cools by its side and top, the casting by all but the face under the feeder."""

    def lack(diameter: float) -> float:
        height = height_ratio * diameter
        feeder = _turned(lambda _: diameter / 2, height) / (pi * diameter * height + pi * diameter**2 / 4)
        return feeder - factor * casting_volume_mm3 / (casting_surface_mm2 - pi * diameter**2 / 4)

    return float(brentq(lack, 1, face_diameter_mm, xtol=1e-10))


@oracle("casting.feeder_volume_least", "scipy: root of the balance of shrinking metal")
def least_feeder(casting_volume_mm3: float, shrinkage: float, efficiency: float) -> float:
    return float(brentq(lambda v: efficiency * v - shrinkage * (casting_volume_mm3 + v), 0, 1e4 * casting_volume_mm3))


@oracle("joints.bond_area", "scipy: integral round the bar")
def bond_area(diameter_mm: float, length_mm: float) -> float:
    return float(quad(lambda _: diameter_mm / 2 * length_mm, 0, 2 * pi)[0])


@oracle("joints.bond_volume", "scipy: integral over the ring of the gap")
def bond_volume(diameter_mm: float, length_mm: float, diametral_clearance_mm: float) -> float:
    inner = diameter_mm / 2
    return float(quad(lambda r: 2 * pi * r * length_mm, inner, inner + diametral_clearance_mm / 2)[0])


@oracle("balance.centre_of_mass", "numpy: weighed average")
def centre_of_mass(masses_kg: Sequence[float], offsets_mm: Sequence[float]) -> float:
    return float(abs(np.average(offsets_mm, weights=masses_kg)))


@oracle("balance.bored_disc_offset", "scipy: integral of the chords", relative=1e-6)
def bored_disc(diameter_mm: float, bore_mm: float, bore_offset_mm: float) -> tuple[float, float]:
    def moment(size: float, middle: float, power: int) -> float:
        chord: Callable[[float], float] = lambda x: 2 * sqrt(max(0.0, size**2 / 4 - (x - middle) ** 2))  # noqa: E731
        return float(quad(lambda x: x**power * chord(x), middle - size / 2, middle + size / 2, limit=200)[0])

    area = moment(diameter_mm, 0, 0) - moment(bore_mm, bore_offset_mm, 0)
    offset = abs(moment(diameter_mm, 0, 1) - moment(bore_mm, bore_offset_mm, 1)) / area
    return offset, offset + bore_offset_mm


@oracle("centre_hole.bearing_area", "scipy: integral over the section through the axis")
@oracle("centre_points.seat_area", "scipy: integral over the section through the axis")
def seat(
    large_mm: float = 0, small_mm: float = 0, cone_deg: float = 60, seat_diameter_mm: float = 0, pilot_diameter_mm: float = 0,
    point_angle_deg: float = 0,
) -> float:  # fmt: skip
    wide, narrow = large_mm or seat_diameter_mm, small_mm or pilot_diameter_mm
    half = radians(point_angle_deg or cone_deg) / 2
    return float(quad(lambda width: width / (2 * tan(half)), narrow, wide)[0])


@oracle("pins.bar_section_left", "scipy: integral over the section less a strip as tall as the bar")
def section_left(pin_diameter_mm: float, joint_diameter_mm: float) -> float:
    """The strip reaches a little past the round, so a little too much is taken away."""
    radius = joint_diameter_mm / 2
    chord: Callable[[float], float] = lambda y: 2 * sqrt(max(0.0, radius**2 - y**2))  # noqa: E731
    whole = quad(lambda y: y**2 * chord(y), -radius, radius, epsrel=1e-11, limit=200)[0]
    left = quad(lambda y: y**2 * (chord(y) - pin_diameter_mm), -radius, radius, epsrel=1e-11, limit=200)[0]
    return float(left / whole)


@oracle("finish.roughness_average", "scipy: mean distance from the mean line", relative=0.05)
def roughness_average(feed_mm: float, nose_radius_mm: float) -> float:
    """The arc itself; the formula is that of the trade, 1/4 of the peak where a parabola has 0.257."""
    height: Callable[[float], float] = lambda x: nose_radius_mm - sqrt(nose_radius_mm**2 - x**2)  # noqa: E731
    mean = quad(height, 0, feed_mm / 2)[0] * 2 / feed_mm
    return float(quad(lambda x: abs(height(x) - mean), 0, feed_mm / 2, limit=200)[0] * 2 / feed_mm)


@oracle("cutting.theoretical_peak_height", "numpy: height of the arc itself", relative=0.02)
def peak_height(feed_mm: float, nose_radius_mm: float) -> float:
    return float(nose_radius_mm - np.sqrt(nose_radius_mm**2 - feed_mm**2 / 4))


@oracle("tool_wear.cutting_path", "scipy: length of the helix", relative=1e-4)
def cutting_path(diameter_mm: float, length_mm: float, feed_mm: float) -> float:
    one_turn = quad(lambda _: np.hypot(diameter_mm / 2, feed_mm / (2 * pi)), 0, 2 * pi)[0]
    return float(one_turn * length_mm / feed_mm / 1e6)


@oracle("tool_wear.taper_from_wear", "scipy: length of the helix", relative=1e-4)
def taper_from_wear(diameter_mm: float, length_mm: float, feed_mm: float, wear_um_per_km: float) -> float:
    return 2 * cutting_path(diameter_mm, length_mm, feed_mm) * wear_um_per_km / 1000
