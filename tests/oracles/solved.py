"""Inverses and springs in balance: the root of the forward equation, found without turning it round by hand."""

from collections.abc import Callable, Sequence
from math import atan, degrees, pi, sqrt, tan

import numpy as np
from scipy.constants import g
from scipy.integrate import quad
from scipy.optimize import brentq

from oracles.bars import at_the_load, held_at_one_end
from oracles.registry import oracle
from tailtrue.calc.drilling import thrust_shaw_oxford

_ROOT = "scipy: root of the forward equation"
_SPRINGS = "scipy: springs in balance, pass after pass"


def _root(lack: Callable[[float], float], low: float, high: float) -> float:
    return float(brentq(lack, low, high, xtol=1e-13, rtol=1e-13))


@oracle("bending.largest_force", "scipy: virtual work, root")
def largest_force(
    tolerance_mm: float, share: float, span_mm: float, station_mm: float, modulus_mpa: float, diameter_mm: float
) -> float:
    one = at_the_load(1.0, span_mm, station_mm, modulus_mpa, diameter_mm)
    return _root(lambda force: 2 * force * one - share * tolerance_mm, 0, 1e7)


@oracle("bending.least_diameter", "scipy: virtual work, root")
def least_diameter(
    force_n: float, tolerance_mm: float, share: float, span_mm: float, station_mm: float, modulus_mpa: float
) -> float:
    return float(brentq(
        lambda d: 2 * at_the_load(force_n, span_mm, station_mm, modulus_mpa, d) - share * tolerance_mm, 2, 500, xtol=1e-9
    ))  # fmt: skip


@oracle("boring_passes.equal_stiffness_overhang", "scipy: virtual work, root")
def equal_stiffness(overhang_mm: float, modulus_mpa: float, other_modulus_mpa: float) -> float:
    bends = held_at_one_end(1.0, modulus_mpa, overhang_mm, diameter_mm=10)
    return float(brentq(
        lambda length: held_at_one_end(1.0, other_modulus_mpa, length, diameter_mm=10) - bends,
        overhang_mm / 10, 10 * overhang_mm, xtol=1e-9,
    ))  # fmt: skip


@oracle("boring_passes.share_left", _SPRINGS)
def share_left(cut_stiffness_n_per_mm: float, machine_n_per_mm: float) -> float:
    """The tool gives way until its spring pushes as hard as what it still cuts."""
    return _root(lambda left: cut_stiffness_n_per_mm * (1 - left) - machine_n_per_mm * left, 0, 1)


@oracle("boring_passes.error_after_passes", _SPRINGS)
def error_after_passes(
    set_depth_mm: float, cut_stiffness_n_per_mm: float, tool_stiffness_n_per_mm: float, spring_passes: int,
    least_chip_mm: float = 0.0,
) -> float:  # fmt: skip
    depth = set_depth_mm
    for _ in range(spring_passes + 1):
        if depth <= least_chip_mm:
            break
        depth *= share_left(cut_stiffness_n_per_mm, tool_stiffness_n_per_mm)
    return depth


@oracle("boring_passes.spring_passes_for", _SPRINGS)
def spring_passes_for(
    set_depth_mm: float, cut_stiffness_n_per_mm: float, tool_stiffness_n_per_mm: float, wanted_mm: float,
    **_: float,
) -> int:  # fmt: skip
    stiffness = cut_stiffness_n_per_mm, tool_stiffness_n_per_mm
    return next(n for n in range(60) if error_after_passes(set_depth_mm, *stiffness, n) <= wanted_mm * (1 + 1e-9))


@oracle("boring_passes.copied_taper", _SPRINGS)
def copied_taper(
    depth_mouth_mm: float, depth_bottom_mm: float, cut_stiffness_n_per_mm: float, tool_stiffness_n_per_mm: float,
    spring_passes: int = 0,
) -> float:  # fmt: skip
    mouth, bottom = (
        error_after_passes(depth, cut_stiffness_n_per_mm, tool_stiffness_n_per_mm, spring_passes, -1.0)
        for depth in (depth_mouth_mm, depth_bottom_mm)
    )
    return 2 * (bottom - mouth)


@oracle("run_out.copied_eccentricity", _SPRINGS)
def copied_eccentricity(eccentricity_mm: float, cut_n_per_mm: float, machine_n_per_mm: float, passes: int) -> float:
    return error_after_passes(eccentricity_mm, cut_n_per_mm, machine_n_per_mm, passes - 1, -1.0)


@oracle("drill_demand.largest_solid_drill", "scipy: root of the thrust, which has checks of its own", relative=1e-6)
def largest_solid_drill(
    thrust_n: float, kd: float, feed_mm: float, wear_factor: float = 1.3, thrust_factor: float = 1.355,
    chisel_thrust_factor: float = 0.03,
) -> float:  # fmt: skip
    def lack(diameter: float) -> float:
        return thrust_n - thrust_shaw_oxford(
            kd, feed_mm, diameter, wear_factor=wear_factor, thrust_factor=thrust_factor,
            chisel_thrust_factor=chisel_thrust_factor, chisel_ratio=0.18
        )  # fmt: skip

    return float(brentq(lack, 2, 50, xtol=1e-9))


@oracle("finish.feed_for_peak_height", _ROOT)
def feed_for_peak_height(peak_height_mm: float, nose_radius_mm: float) -> float:
    return _root(lambda feed: feed**2 / (8 * nose_radius_mm) - peak_height_mm, 0, 10)


@oracle("balance.speed_for_force", _ROOT)
def speed_for_force(force_n: float, mass_kg: float, eccentricity_mm: float) -> float:
    return _root(lambda n: mass_kg * eccentricity_mm / 1000 * (2 * pi * n / 60) ** 2 - force_n, 0, 1e7)


@oracle("turning_masses.unbalance_speed_limit", _ROOT, relative=1e-6)
def unbalance_speed_limit(eccentricity_mm: float, force_to_weight: float) -> float:
    return speed_for_force(force_to_weight * g, 1.0, eccentricity_mm)


@oracle("chuck.rim_speed_limit", _ROOT)
def rim_speed_limit(diameter_mm: float, rim_speed_m_s: float) -> float:
    return _root(lambda n: diameter_mm / 2000 * 2 * pi * n / 60 - rim_speed_m_s, 0, 1e8)


@oracle("centre_hole.cone_depth", _ROOT)
def cone_depth(large_mm: float, small_mm: float, cone_deg: float = 60.0) -> float:
    return _root(lambda depth: small_mm + 2 * depth * tan(cone_deg / 360 * pi) - large_mm, 0, 1000)


@oracle("centre_hole.cone_diameter", "numpy: the two walls of the cone")
def cone_diameter(depth_mm: float, small_mm: float, cone_deg: float = 60.0) -> float:
    wall = depth_mm / np.cos(np.radians(cone_deg / 2)) * np.exp(1j * np.radians(cone_deg / 2))
    return float(small_mm + 2 * wall.imag)


@oracle("setover.half_angle_of_taper", _ROOT)
def half_angle_of_taper(taper_mm_per_mm: float) -> float:
    return _root(lambda angle: 2 * tan(angle / 180 * pi) - taper_mm_per_mm, -89, 89)


@oracle("setover.taper_from_half_angle", _ROOT)
def taper_from_half_angle(half_angle_deg: float) -> float:
    return _root(lambda taper: degrees(atan(taper / 2)) - half_angle_deg, -1e3, 1e3)


@oracle("pouring.fall_velocity", "scipy: root of the energy")
def fall_velocity(height_mm: float) -> float:
    return _root(lambda v: v**2 / 2 - g * height_mm / 1000, 0, 1e3)


@oracle("pouring.fall_height", "scipy: root of the energy")
def fall_height(velocity_m_s: float) -> float:
    return _root(lambda height: sqrt(2 * g * height / 1000) - velocity_m_s, 0, 1e7)


@oracle("pouring.sprue_top_area", "scipy: as much metal at the top as at the choke")
def sprue_top_area(choke_area_mm2: float, total_height_mm: float, basin_height_mm: float) -> float:
    flow = choke_area_mm2 * fall_velocity(total_height_mm)
    return _root(lambda area: area * fall_velocity(basin_height_mm) - flow, 0, 1e8)


@oracle("fit_temperature.reading_when_warm", _ROOT)
def reading_when_warm(
    size_at_20_mm: float, work_per_k: float, work_degc: float, gauge_per_k: float, gauge_degc: float
) -> float:
    grown = 1 + gauge_per_k * (gauge_degc - 20) - work_per_k * (work_degc - 20)
    return _root(lambda reading: reading * grown - size_at_20_mm, 0, 1e5)


@oracle("drilled_hole.expected_oversize", "numpy: straight lines between the rows")
def expected_oversize(diameter_mm: float, sizes_mm: Sequence[float], oversizes_mm: Sequence[float]) -> float:
    return float(np.interp(diameter_mm, sizes_mm, oversizes_mm))


@oracle("rotors.bow_growth", "scipy: spring of the shaft against the pull of the bow")
def bow_growth(spindle_speed_per_min: float, critical_per_min: float) -> float:
    """A bow of one; it grows until the spring holds what turns off the axis."""
    pull = (spindle_speed_per_min / critical_per_min) ** 2
    return _root(lambda out: (out - 1) - pull * out, 1, 1e6)


@oracle("centre_points.separating_force", "numpy: forces on the cone in balance")
def separating_force(radial_force_n: float, point_angle_deg: float) -> float:
    half = np.radians(point_angle_deg / 2)
    _, along = np.linalg.solve([[np.cos(half), 0], [np.sin(half), -1]], [radial_force_n, 0])
    return float(along)


@oracle("chuck.grip_for_torque_and_thrust", "numpy: length of the pull at the jaws")
def grip_for_torque_and_thrust(
    torque_nmm: float, axial_force_n: float, grip_diameter_mm: float, friction: float, safety: float
) -> float:
    pull = np.linalg.norm((torque_nmm / (grip_diameter_mm / 2), axial_force_n))
    return _root(lambda grip: friction * grip - safety * float(pull), 0, 1e9)


@oracle("chuck.scroll_grip", "scipy: work of the key against work of the jaws")
@oracle("drilling.hand_thrust", "scipy: work of the hand against work of the screw")
def of_a_screw(
    efficiency: float, key_torque_nmm: float = 0, key_turns: float = 1, scroll_pitch_mm: float = 0,
    handwheel_force_n: float = 0, handwheel_radius_mm: float = 0, screw_pitch_mm: float = 0,
) -> float:  # fmt: skip
    torque = key_torque_nmm or handwheel_force_n * handwheel_radius_mm
    work = quad(lambda _: torque * efficiency, 0, 2 * pi * key_turns)[0]
    return _root(lambda force: force * (scroll_pitch_mm or screw_pitch_mm) - work, 0, 1e9)
