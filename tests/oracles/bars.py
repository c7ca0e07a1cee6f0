"""Bars that bend, whirl and stand on soft centres: virtual work, equations of frequency, finite elements, springs."""

from collections.abc import Callable, Sequence
from itertools import pairwise
from math import cos, cosh, inf, pi, sin, sqrt
from typing import Any

import numpy as np
from scipy.constants import g
from scipy.integrate import quad
from scipy.linalg import eigh
from scipy.optimize import brentq

from oracles.registry import oracle

_WORK = "scipy: virtual work, integral of the moments"
_CUT = "scipy: integral over the section"
_TONNES = 1e-12  # kg/m3 in t/mm3, which goes with N, mm and s


def _section(power: int, diameter: float, hole: float = 0.0) -> float:
    """Integral of y^power over a round section; chords across y."""

    def of_circle(size: float) -> float:
        chord: Callable[[float], float] = lambda y: 2 * sqrt(max(0.0, size**2 / 4 - y**2))  # noqa: E731
        return float(quad(lambda y: y**power * chord(y), -size / 2, size / 2, epsabs=0, epsrel=1e-10, limit=200)[0])

    return of_circle(diameter) - (of_circle(hole) if hole else 0.0)


def _moment(span: float, at: float) -> Callable[[float], float]:
    """Bending moment along a bar on two points under a unit force."""
    return lambda z: z * (span - at) / span if z <= at else at * (span - z) / span


def _work(span: float, first: Callable[[float], float], second: Callable[[float], float], corners: Sequence[float]) -> float:
    edges = sorted({0.0, float(span), *(float(corner) for corner in corners)})
    return sum(quad(lambda z: first(z) * second(z), low, high)[0] for low, high in pairwise(edges))


def _yield(span: float, load: float, look: float, modulus: float, diameter: float) -> float:
    """Deflection for each newton."""
    return _work(span, _moment(span, load), _moment(span, look), (load, look)) / (modulus * _section(2, diameter))


@oracle("beams.second_moment", _CUT)
def second_moment(diameter_mm: float) -> float:
    return _section(2, diameter_mm)


@oracle("beams.deflection_between_centres", _WORK)
def at_the_load(force_n: float, span_mm: float, station_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    return force_n * _yield(span_mm, station_mm, station_mm, modulus_mpa, diameter_mm)


@oracle("beams.deflection_midspan", _WORK)
def in_the_middle(force_n: float, span_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    return at_the_load(force_n, span_mm, span_mm / 2, modulus_mpa, diameter_mm)


@oracle("bending.deflection_anywhere", _WORK)
def anywhere(
    force_n: float, span_mm: float, load_station_mm: float, look_station_mm: float, modulus_mpa: float, diameter_mm: float
) -> float:
    return force_n * _yield(span_mm, load_station_mm, look_station_mm, modulus_mpa, diameter_mm)


@oracle("bending.difference_from_bending", _WORK)
def difference(
    force_n: float, span_mm: float, first_station_mm: float, second_station_mm: float, modulus_mpa: float, diameter_mm: float
) -> float:
    near, far = (at_the_load(force_n, span_mm, at, modulus_mpa, diameter_mm) for at in (first_station_mm, second_station_mm))
    return 2 * (far - near)


@oracle("bending.bow_from_bending", "scipy: virtual work; numpy: straight line between the ends")
def bow(
    force_n: float, span_mm: float, first_station_mm: float, middle_station_mm: float, second_station_mm: float,
    modulus_mpa: float, diameter_mm: float,
) -> float:  # fmt: skip
    ends = (first_station_mm, second_station_mm)
    near, far = (at_the_load(force_n, span_mm, at, modulus_mpa, diameter_mm) for at in ends)
    middle = at_the_load(force_n, span_mm, middle_station_mm, modulus_mpa, diameter_mm)
    return float(2 * (middle - np.interp(middle_station_mm, ends, (near, far))))


@oracle("beams.deflection_cantilever", _WORK)
@oracle("boring.boring_bar_deflection", _WORK)
@oracle("boring_passes.bored_bar_deflection", _WORK)
def held_at_one_end(
    force_n: float, modulus_mpa: float, length_mm: float = 0, overhang_mm: float = 0, diameter_mm: float = 0,
    shank_mm: float = 0, hole_mm: float = 0,
) -> float:  # fmt: skip
    length, section = length_mm or overhang_mm, _section(2, diameter_mm or shank_mm, hole_mm)
    return force_n * _work(length, lambda z: length - z, lambda z: length - z, ()) / (modulus_mpa * section)


@oracle("beams.greatest_deflection_cantilever", "scipy: virtual work of moments, and of shear stresses over the section")
def stout_at_its_end(force_n: float, length_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    # The stress at a height in a round section: shear times the first moment of what lies above, over I and the chord.
    radius, inertia = diameter_mm / 2, _section(2, diameter_mm)
    chord: Callable[[float], float] = lambda y: 2 * sqrt(max(0.0, radius**2 - y**2))  # noqa: E731
    above: Callable[[float], float] = lambda y: 2 / 3 * (radius**2 - y**2) ** 1.5  # noqa: E731
    energy = quad(lambda y: above(y) ** 2 / chord(y), -radius, radius)[0] / inertia**2
    rigidity = modulus_mpa / (2 * (1 + 0.5))
    return held_at_one_end(force_n, modulus_mpa, length_mm=length_mm, diameter_mm=diameter_mm) + (
        force_n * length_mm * energy / rigidity
    )


def _load(diameter: float, density: float) -> float:
    return density * _TONNES * g * 1000 * _section(0, diameter)  # N/mm


@oracle("beams.self_weight_sag", _WORK)
def sag(diameter_mm: float, span_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    return sag_anywhere(diameter_mm, span_mm, modulus_mpa, density_kg_m3, (), (), span_mm / 2)


@oracle("bending.sag_with_collars", _WORK)
def sag_anywhere(
    diameter_mm: float, span_mm: float, modulus_mpa: float, density_kg_m3: float, masses_kg: Sequence[float],
    stations_mm: Sequence[float], look_station_mm: float,
) -> float:  # fmt: skip
    load = _load(diameter_mm, density_kg_m3)
    stiff = modulus_mpa * _section(2, diameter_mm)
    own = (
        _work(span_mm, lambda z: load * z * (span_mm - z) / 2, _moment(span_mm, look_station_mm), (look_station_mm,)) / stiff
    )
    carried = (
        anywhere(mass * g, span_mm, at, look_station_mm, modulus_mpa, diameter_mm)
        for mass, at in zip(masses_kg, stations_mm, strict=True)
    )
    return own + sum(carried)


@oracle("beams.self_weight_stress", "scipy: integral of the shear, integral over the section")
def stress(diameter_mm: float, span_mm: float, density_kg_m3: float) -> float:
    load = _load(diameter_mm, density_kg_m3)
    moment = quad(lambda z: load * (span_mm / 2 - z), 0, span_mm / 2)[0]
    return float(moment * diameter_mm / 2 / _section(2, diameter_mm))


def _whirl(root: float, length: float, diameter: float, modulus: float, density: float) -> float:
    stiff, heavy = modulus * _section(2, diameter), density * _TONNES * _section(0, diameter)
    return (root / length) ** 2 * sqrt(stiff / heavy) * 60 / (2 * pi)


@oracle("beams.whirl_speed_cantilever", "scipy: root of cos x cosh x = -1", relative=3e-5)
def whirl_of_a_cantilever(diameter_mm: float, length_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    return _whirl(brentq(lambda x: cos(x) * cosh(x) + 1, 1, 2.5), length_mm, diameter_mm, modulus_mpa, density_kg_m3)


@oracle("beams.whirl_speed_between_centres", "scipy: root of sin x = 0")
def whirl_between_centres(diameter_mm: float, span_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    return _whirl(brentq(sin, 2, 4), span_mm, diameter_mm, modulus_mpa, density_kg_m3)


@oracle("rotors.free_length_limit", "scipy: root of the equation of frequency", relative=3e-5)
def free_length(
    diameter_mm: float, modulus_mpa: float, density_kg_m3: float, spindle_speed_per_min: float, share: float
) -> float:
    return float(
        brentq(
            lambda length: (
                share * whirl_of_a_cantilever(diameter_mm, length, modulus_mpa, density_kg_m3) - spindle_speed_per_min
            ),
            diameter_mm, 1e5,
        )
    )  # fmt: skip


@oracle("rotors.critical_speed", "scipy: eigenvalues of finite elements", relative=1.5e-3)
def critical_speed(
    diameter_mm: float, span_mm: float, modulus_mpa: float, density_kg_m3: float, masses_kg: Sequence[float],
    stations_mm: Sequence[float], headstock_n_per_mm: float = inf, tailstock_n_per_mm: float = inf,
) -> float:  # fmt: skip
    nodes = np.unique([*np.linspace(0, span_mm, 41), *stations_mm])
    size = 2 * len(nodes)
    stiffness, mass = np.zeros((size, size)), np.zeros((size, size))
    stiff, heavy = modulus_mpa * _section(2, diameter_mm), density_kg_m3 * _TONNES * _section(0, diameter_mm)
    for place, length in enumerate(np.diff(nodes)):
        here = slice(2 * place, 2 * place + 4)
        scale = np.outer([1, length, 1, length], [1, length, 1, length])
        bend = np.array([[12, 6, -12, 6], [6, 4, -6, 2], [-12, -6, 12, -6], [6, 2, -6, 4]])
        move = np.array([[156, 22, 54, -13], [22, 4, 13, -3], [54, 13, 156, -22], [-13, -3, -22, 4]])
        stiffness[here, here] += stiff / length**3 * scale * bend
        mass[here, here] += heavy * length / 420 * scale * move
    for kg, at in zip(masses_kg, stations_mm, strict=True):
        place = 2 * int(np.argmin(np.abs(nodes - at)))
        mass[place, place] += kg / 1000
    kept = np.arange(size)
    for place, spring in ((0, headstock_n_per_mm), (size - 2, tailstock_n_per_mm)):
        if spring == inf:
            kept = kept[kept != place]
        else:
            stiffness[place, place] += spring
    if not density_kg_m3:
        mass += np.eye(size) * 1e-12
    squares: Any = eigh(stiffness[np.ix_(kept, kept)], mass[np.ix_(kept, kept)], eigvals_only=True)
    return float(sqrt(squares[0]) * 60 / (2 * pi))


def _springs(force: float, span: float, load: float, headstock: float, tailstock: float) -> tuple[float, float]:
    """Both ends of a stiff bar on two springs, from force and moment in balance."""
    at_head, at_tail = np.linalg.solve([[1, 1], [0, span]], [force, force * load])
    return at_head / headstock, at_tail / tailstock


@oracle("soft_centres.centre_give", "numpy: force and moment in balance on two springs")
def give(
    force_n: float, span_mm: float, load_station_mm: float, look_station_mm: float, headstock_n_per_mm: float,
    tailstock_n_per_mm: float,
) -> float:  # fmt: skip
    ends = _springs(force_n, span_mm, load_station_mm, headstock_n_per_mm, tailstock_n_per_mm)
    return float(np.interp(look_station_mm, (0, span_mm), ends))


@oracle("soft_centres.difference_from_centres", "numpy: force and moment in balance on two springs")
def difference_from_centres(
    force_n: float, span_mm: float, first_station_mm: float, second_station_mm: float, headstock_n_per_mm: float,
    tailstock_n_per_mm: float,
) -> float:  # fmt: skip
    springs = headstock_n_per_mm, tailstock_n_per_mm
    near, far = (give(force_n, span_mm, at, at, *springs) for at in (first_station_mm, second_station_mm))
    return 2 * (far - near)


@oracle("soft_centres.skim_deflection", "scipy: virtual work; numpy: balance on two springs", relative=1e-6)
def skim(
    force_n: float, span_mm: float, first_station_mm: float, second_station_mm: float, modulus_mpa: float, diameter_mm: float,
    headstock_n_per_mm: float = inf, tailstock_n_per_mm: float = inf,
) -> tuple[float, float, float]:  # fmt: skip
    near, far = (
        at_the_load(force_n, span_mm, at, modulus_mpa, diameter_mm)
        + give(force_n, span_mm, at, at, headstock_n_per_mm, tailstock_n_per_mm)
        for at in (first_station_mm, second_station_mm)
    )
    return near, far, 2 * (far - near)
