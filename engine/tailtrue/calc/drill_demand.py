"""What a drill asks of hand, holder and motor: the larger of two published models, and what a thrust can push."""

from typing import NamedTuple

from tailtrue.calc.drilling import (
    SHAW_OXFORD_DRILLS_MM,
    SHAW_OXFORD_FEEDS_MM,
    TOOL_MAKER_FEEDS_MM,
    thrust_shaw_oxford,
    thrust_tool_maker,
    torque_shaw_oxford,
    torque_tool_maker,
)
from tailtrue.calc.validity import OutOfRange, between, finite, positive

_LEAST_DRILL_MM, _LARGEST_DRILL_MM = SHAW_OXFORD_DRILLS_MM
_LEAST_FEED_MM, _LARGEST_FEED_MM = SHAW_OXFORD_FEEDS_MM


class DrillDemand(NamedTuple):
    """What a drill asks: thrust on the quill, torque on its holder."""

    thrust_n: float
    torque_nmm: float


def drill_demand(
    kd_of_thrust: float,
    kd_of_torque: float,
    material_factor: float,
    feed_mm: float,
    diameter_mm: float,
    pilot_ratio: float,
    wear_factor: float,
    *,
    chisel_ratio: float,
    torque_factor: float,
    thrust_factor: float,
    chisel_thrust_factor: float,
) -> DrillDemand:
    """Thrust and torque to plan for: the larger of two published models, times the wear.

    T = max(thrust_shaw_oxford, W thrust_tool_maker); M = max(torque_shaw_oxford, W torque_tool_maker (1 - (d0 / D)^2))

    Parameters
    ----------
    kd_of_thrust : Drilling constant Kd of the metal for the thrust. [1]
    kd_of_torque : Drilling constant Kd of the metal for the torque, mostly the same. [1]
    material_factor : Factor K of the metal in the tool maker's formulas. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]
    pilot_ratio : Pilot hole d0 as a share of D, 0 for none. [1]
    wear_factor : Factor W, 1 for a sharp drill, 1.3 for one at normal wear. [1]
    chisel_ratio : Chisel edge as a share of D, here of a standard point. [1]
    torque_factor : Factor A of that point. [1]
    thrust_factor : Factor B of that point. [1]
    chisel_thrust_factor : Factor J of that point. [1]

    Returns
    -------
    Thrust T along the axis, torque M on the drill. [N, N mm]

    Valid for
    ---------
    As `thrust_shaw_oxford`. The tool maker's model joins in from the least feed for which it holds; past the coarsest it
    counts as at that one. It knows no pilot, so with one it gives no thrust, and its torque is that of the ring.

    Source
    ------
    Machinery's Handbook, 31st ed., pp. 1152-1153; technical page of a tool maker's general catalogue, 2020-21; to take
    the larger is a rule of design.

    >>> point = {"chisel_ratio": 0.18, "torque_factor": 1.085, "thrust_factor": 1.355, "chisel_thrust_factor": 0.03}
    >>> thrust, torque = drill_demand(24000, 24000, 2.22, 0.3, 10, 0, 1.3, **point)
    >>> round(thrust), round(torque, -1)
    (5912, 20380.0)
    """
    thrust = thrust_shaw_oxford(
        kd_of_thrust,
        feed_mm,
        diameter_mm,
        pilot_ratio,
        wear_factor,
        chisel_ratio=chisel_ratio,
        thrust_factor=thrust_factor,
        chisel_thrust_factor=chisel_thrust_factor,
    )
    torque = torque_shaw_oxford(
        kd_of_torque,
        feed_mm,
        diameter_mm,
        pilot_ratio,
        wear_factor,
        chisel_ratio=chisel_ratio,
        torque_factor=torque_factor,
    )
    positive(material_factor, "material factor K")
    least_feed, most_feed = TOOL_MAKER_FEEDS_MM
    if feed_mm >= least_feed:
        # Past its range the tool maker's model counts with the most it knows: a coarser feed never asks for less.
        known_feed = min(feed_mm, most_feed)
        ring = torque_tool_maker(material_factor, known_feed, diameter_mm) * wear_factor * (1 - pilot_ratio**2)
        torque = max(torque, ring)
        if pilot_ratio == 0:
            thrust = max(thrust, thrust_tool_maker(material_factor, known_feed, diameter_mm) * wear_factor)
    return DrillDemand(thrust, torque)


def chisel_share_of_thrust(feed_mm: float, diameter_mm: float, thrust_factor: float, chisel_thrust_factor: float) -> float:
    """Share of the thrust that the chisel edge causes, and a pilot hole saves.

    share = 1 - T(B = 1, J = 0) / T(B, J) by thrust_shaw_oxford

    Parameters
    ----------
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]
    thrust_factor : Factor B of the point, here of a standard one. [1]
    chisel_thrust_factor : Factor J of that point. [1]

    Returns
    -------
    Share of the thrust, the same for every metal. [1]

    Valid for
    ---------
    As `thrust_shaw_oxford`.

    Source
    ------
    Machinery's Handbook, 31st ed., pp. 1152-1153, derived; tests in print give 50 to 60 %.

    >>> round(chisel_share_of_thrust(0.15, 23, thrust_factor=1.355, chisel_thrust_factor=0.03), 2)
    0.54
    """
    lips = thrust_shaw_oxford(1, feed_mm, diameter_mm, thrust_factor=1, chisel_thrust_factor=0, chisel_ratio=0)
    whole = thrust_shaw_oxford(
        1, feed_mm, diameter_mm, thrust_factor=thrust_factor, chisel_thrust_factor=chisel_thrust_factor, chisel_ratio=0
    )
    return 1 - lips / whole


def lips_left_by_pilot(pilot_ratio: float, chisel_ratio: float) -> float:
    """Most that is left of the thrust of the lips where a drill widens a hole: its share of their length.

    share = (1 - r) / (1 - c)

    Parameters
    ----------
    pilot_ratio : Hole that is there, r, as a share of the drill. [1]
    chisel_ratio : Chisel edge c as a share of the drill, here of a standard point. [1]

    Returns
    -------
    Share of the thrust of the whole lips, an upper bound. [1]

    Valid for
    ---------
    Twist drills, whose rake grows from the chisel edge outward, so that a piece of lip near the rim asks for no more
    thrust than one as long near the middle; chisel edge 0 to 0.5; r from c to 1.

    Source
    ------
    Derived from the shape of the lips: straight, of one length, cutting least freely next to the chisel edge.

    >>> round(lips_left_by_pilot(20 / 28, chisel_ratio=0.18), 3)
    0.348
    """
    between(chisel_ratio, 0, 0.5, "chisel edge as a share of the drill")
    between(pilot_ratio, chisel_ratio, 1, "pilot as a share of the drill")
    return (1 - pilot_ratio) / (1 - chisel_ratio)


def feed_for_thrust(
    thrust_n: float,
    kd: float,
    diameter_mm: float,
    wear_factor: float,
    thrust_factor: float,
    chisel_thrust_factor: float,
) -> float:
    """Largest feed at which a thrust still pushes a drill through solid metal.

    f = ((T / (Kd W) - 0.007 D^2 J) / (0.05 B))^1.25 / D

    Parameters
    ----------
    thrust_n : Thrust T that the hand can give at the quill. [N]
    kd : Drilling constant Kd of the metal for the thrust. [1]
    diameter_mm : Diameter D of the drill. [mm]
    wear_factor : Factor W, 1 for a sharp drill, 1.3 for one at normal wear. [1]
    thrust_factor : Factor B of the point, here of a standard one. [1]
    chisel_thrust_factor : Factor J of that point; with a pilot put B = 1 and J = 0. [1]

    Returns
    -------
    Feed f per turn. [mm/rev]

    Valid for
    ---------
    As `thrust_shaw_oxford`, which alone is asked here; refused where the feed would lie outside 0.01 to 1.25 mm/rev.

    Source
    ------
    `thrust_shaw_oxford` turned round.

    >>> round(feed_for_thrust(5413, 24000, 16, wear_factor=1, thrust_factor=1.355, chisel_thrust_factor=0.03), 3)
    0.2
    """

    def asked(feed: float) -> float:
        return thrust_shaw_oxford(
            kd,
            feed,
            diameter_mm,
            wear_factor=wear_factor,
            thrust_factor=thrust_factor,
            chisel_thrust_factor=chisel_thrust_factor,
            chisel_ratio=0,
        )

    least, most = asked(_LEAST_FEED_MM), asked(_LARGEST_FEED_MM)
    if not least <= thrust_n <= most:
        raise OutOfRange(
            f"the thrust is {thrust_n:g} N; a drill of {diameter_mm:g} mm asks for {least:.0f} N at a feed of "
            f"{_LEAST_FEED_MM:g} mm/rev and {most:.0f} N at {_LARGEST_FEED_MM:g} mm/rev"
        )
    chisel = 0.007 * diameter_mm**2 * chisel_thrust_factor
    lips = (thrust_n / (kd * wear_factor) - chisel) / (0.05 * thrust_factor)
    return float(lips**1.25 / diameter_mm)


def largest_solid_drill(
    thrust_n: float,
    kd: float,
    feed_mm: float,
    wear_factor: float,
    thrust_factor: float,
    chisel_thrust_factor: float,
) -> float:
    """Largest drill that a thrust still pushes into solid metal at a feed.

    D : thrust_shaw_oxford(Kd, f, D) = T

    Parameters
    ----------
    thrust_n : Thrust T that the hand can give at the quill. [N]
    kd : Drilling constant Kd of the metal for the thrust. [1]
    feed_mm : Feed f per turn. [mm/rev]
    wear_factor : Factor W, 1 for a sharp drill, 1.3 for one at normal wear. [1]
    thrust_factor : Factor B of the point, here of a standard one. [1]
    chisel_thrust_factor : Factor J of that point. [1]

    Returns
    -------
    Diameter D, at most the 50 mm to which the model reaches. [mm]

    Valid for
    ---------
    As `thrust_shaw_oxford`, which alone is asked here; refused where even a drill of 1.6 mm asks for more.

    Source
    ------
    `thrust_shaw_oxford` turned round by halving the interval.

    >>> round(largest_solid_drill(2400, 24000, 0.1, wear_factor=1, thrust_factor=1.355, chisel_thrust_factor=0.03), 1)
    11.1
    """
    finite(thrust_n, "thrust", "N")

    def asked(diameter: float) -> float:
        return thrust_shaw_oxford(
            kd,
            feed_mm,
            diameter,
            wear_factor=wear_factor,
            thrust_factor=thrust_factor,
            chisel_thrust_factor=chisel_thrust_factor,
            chisel_ratio=0,
        )

    low, high = _LEAST_DRILL_MM, _LARGEST_DRILL_MM
    least = asked(low)
    if thrust_n < least:
        raise OutOfRange(f"the thrust is {thrust_n:g} N; a drill of {low:g} mm already asks for {least:.0f} N at this feed")
    if thrust_n >= asked(high):
        return high
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if asked(middle) <= thrust_n else (low, middle)
    return low
