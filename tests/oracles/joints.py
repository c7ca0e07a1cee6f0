"""Rings under pressure and ends of screws and pins: differential equations and circles."""

from math import radians, tan

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from oracles.registry import oracle

_RING = "scipy: differential equation of a ring under pressure"


def _hoop(pressure: float, inner: float, outer: float, poisson: float = 0.3) -> tuple[float, float]:
    """Hoop stress at bore and rim: u'' + u'/r - u/r^2 = 0, by shooting; both stresses are in proportion to the start."""

    def stresses(state: np.ndarray, radius: float) -> tuple[float, float]:
        moved, slope = state
        radial = (slope + poisson * moved / radius) / (1 - poisson**2)
        return radial, (moved / radius + poisson * slope) / (1 - poisson**2)

    ends = []
    for start in ((1.0, 0.0), (0.0, 1.0)):
        way = solve_ivp(lambda r, u: (u[1], u[0] / r**2 - u[1] / r), (inner, outer), start, rtol=1e-11, atol=1e-13)
        ends.append((np.array(start), way.y[:, -1]))
    equations = [[stresses(state[0], inner)[0] for state in ends], [stresses(state[1], outer)[0] for state in ends]]
    weights = np.linalg.solve(equations, [-pressure, 0])
    at_bore = sum(weight * state[0] for weight, state in zip(weights, ends, strict=True))
    at_rim = sum(weight * state[1] for weight, state in zip(weights, ends, strict=True))
    return stresses(at_bore, inner)[1], stresses(at_rim, outer)[1]


@oracle("interference.collar_stress", _RING, relative=1e-6)
def collar_stress(pressure_mpa: float, joint_diameter_mm: float, collar_diameter_mm: float) -> list[float]:
    hoop, _ = _hoop(pressure_mpa, joint_diameter_mm / 2, collar_diameter_mm / 2)
    both = np.diag([hoop, -pressure_mpa, 0])
    apart = both - np.trace(both) / 3 * np.eye(3)
    return [hoop, -pressure_mpa, float(np.sqrt(1.5 * (apart**2).sum()))]


@oracle("interference.collar_growth", _RING, relative=1e-6)
def collar_growth(
    pressure_mpa: float, joint_diameter_mm: float, collar_diameter_mm: float, collar_modulus_mpa: float
) -> float:
    _, hoop = _hoop(pressure_mpa, joint_diameter_mm / 2, collar_diameter_mm / 2)
    return hoop / collar_modulus_mpa * collar_diameter_mm


@oracle("interference.contact_pressure", _RING, relative=1e-6)
def contact_pressure(
    diametral_interference_mm: float, joint_diameter_mm: float, collar_diameter_mm: float, bar_modulus_mpa: float,
    bar_poisson: float, collar_modulus_mpa: float, collar_poisson: float,
) -> float:  # fmt: skip
    """The pressure under which the bore grows and the bar shrinks by as much as they overlap."""
    hoop, _ = _hoop(1.0, joint_diameter_mm / 2, collar_diameter_mm / 2, collar_poisson)
    grows = (hoop + collar_poisson) / collar_modulus_mpa * joint_diameter_mm
    shrinks = (1 - bar_poisson) / bar_modulus_mpa * joint_diameter_mm
    return float(brentq(lambda p: p * (grows + shrinks) - diametral_interference_mm, 0, 1e5, xtol=1e-12, rtol=1e-12))


def _rim(diameter: float, x: float) -> float:
    """Height on a circle over a place across."""
    return float(brentq(lambda y: x**2 + y**2 - diameter**2 / 4, 0, diameter, xtol=1e-13))


def _inward(diameter: float, x: float, y: float) -> float:
    """How far a point lies within a circle, on the way to its middle."""
    return float(brentq(lambda less: x**2 + y**2 - (diameter / 2 - less) ** 2, -diameter, diameter / 2, xtol=1e-13))


@oracle("screws.screw_depth", "scipy: the rim of the end on a smaller circle", relative=1e-7)
def screw_depth(
    end_diameter_mm: float, joint_diameter_mm: float, thread_diameter_mm: float, screw_length_mm: float, spot_mm: float,
    **_: float,
) -> float:  # fmt: skip
    outer_end = joint_diameter_mm / 2 - spot_mm + screw_length_mm
    return _inward(end_diameter_mm, thread_diameter_mm / 2, outer_end)


@oracle("pins.cross_pin_depth", "scipy: the rim of the end on a smaller circle", relative=1e-7)
def cross_pin_depth(end_diameter_mm: float, pin_length_mm: float, pin_diameter_mm: float, **_: float) -> float:
    return _inward(end_diameter_mm, pin_diameter_mm / 2, pin_length_mm / 2)


@oracle("split_clamp.longest_clamp_screw", "scipy: the rim of the head on the surface", relative=1e-7)
def longest_clamp_screw(
    end_diameter_mm: float, joint_diameter_mm: float, head_diameter_mm: float, least_depth_mm: float
) -> float:
    middle_of_wall = (end_diameter_mm + joint_diameter_mm) / 4
    return 2 * (_rim(end_diameter_mm, middle_of_wall + head_diameter_mm / 2) - least_depth_mm)


@oracle("bore_gauging.chord_error", "scipy: the chord of a circle", relative=1e-6)
def chord_error(diameter_mm: float, offset_mm: float) -> float:
    return 2 * _rim(diameter_mm, offset_mm) - diameter_mm


@oracle("bore_gauging.tilt_error", "scipy: a slanting line across two walls", relative=1e-6)
def tilt_error(diameter_mm: float, tilt_deg: float) -> float:
    along = diameter_mm * tan(radians(tilt_deg))
    length = brentq(lambda size: size**2 - along**2 - diameter_mm**2, 0, 3 * diameter_mm, xtol=1e-13)
    return float(length - diameter_mm)


@oracle("joints.bond_torque", "scipy: integral of the shear round the bar")
def bond_torque(shear_mpa: float, diameter_mm: float, length_mm: float) -> float:
    radius = diameter_mm / 2
    return float(quad(lambda _: shear_mpa * length_mm * radius * radius, 0, 2 * np.pi)[0])


@oracle("joints.bond_length", "scipy: root of the torque")
def bond_length(torque_nmm: float, shear_mpa: float, diameter_mm: float) -> float:
    return float(brentq(lambda length: bond_torque(shear_mpa, diameter_mm, length) - torque_nmm, 0, 1e6, xtol=1e-12))
