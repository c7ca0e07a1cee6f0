"""The centre holes of the bar: which centre drill, how deep, and what they carry."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.centre_hole import bearing_pressure, centre_load, cone_within_drill
from tailtrue.calc.centre_hole import cone_depth as depth_of_cone
from tailtrue.calc.lengths import length_of_diameters, share_of
from tailtrue.calc.steps import step_up
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Row, Table

_HUNDREDTH = 0.01  # of a millimetre: sizes of centre drills are given in these
_FITS = ("limit.cone_share", "limit.cone_depth_share")
_BEARS = ("limit.centre_angle", "limit.centre_pressure")


@computed(
    "bar.centre_drill",
    label="centre drill for the bar ends",
    kind="text",
    needs=("crib.centre_drills", "bar.diameter", *_FITS, "limit.centre_angle", "crib.tailstock_centre?"),
    tables=("tools/centre_drills", "tools/centre_drill_shares", "tools/centre_drill_choice"),
    how="of those in the crib whose hole stays under a share of the bar, the one nearest to the pilot advised for this "
    "diameter; for a dead centre the one whose hole bears most",
)
def centre_drill(
    owned: tuple[str, ...], diameter: float, share: float, deep: float, angle: float, centre: str | None,
    drills: Table, shares: Table, choice: Table,
) -> Limited | None:  # fmt: skip
    advised = choice.within(diameter, "over_mm", "upto_mm")
    rows = [row for name in owned for row in drills.where(designation=name)]
    fitting = [row for row in rows if _drilled_cone(row, deep, shares) <= share_of(diameter, share)]
    if not fitting:
        return Limited(None, "no centre drill of the crib is small enough for this bar")
    # The load itself hangs on the hole by way of the skim, so the hole that bears most is taken and then judged.
    if centre == "dead":
        best = min(fitting, key=lambda row: _pressed(1.0, row, deep, angle, shares))
        return Limited(drills.take(best).text("designation"), "a dead centre rubs: the hole that bears most")
    best = min(fitting, key=lambda row: abs(row.number("pilot_mm") - advised.number("pilot_mm")))
    return Limited(drills.take(best).text("designation"), "advised for this diameter of bar")


@computed(
    "bar.centre_drills_bearing",
    label="centre drills whose hole suits this bar and bears its load",
    kind="text",
    needs=("bar.diameter", *_FITS, "bar.centre_load", *_BEARS),
    tables=("tools/centre_drills", "tools/centre_drill_shares"),
    how="those of the table whose hole stays under a share of the bar, and carries no more than a greased centre bears",
)
def centre_drills_bearing(
    diameter: float, share: float, deep: float, load: float, angle: float, bears: float, drills: Table, shares: Table
) -> Limited:  # fmt: skip
    names = [
        row.text("designation")
        for row in drills.where()
        if _drilled_cone(row, deep, shares) <= share_of(diameter, share)
        and _pressed(load, row, deep, angle, shares) <= bears
    ]
    return Limited(", ".join(names) or None, "every hole that suits the bar is too small for the load")


def _drill(name: str, drills: Table) -> Row:
    return drills.take(drills.where(designation=name)[0])


def _share(part: str, row: Row, shares: Table) -> float:
    return shares.one(part=part, type=row.text("type")).number("share")


def _largest_cone(row: Row, shares: Table) -> float:
    """As its standard gives it; where none does, a share of the body, in hundredths as the standards have it."""
    if row.text("cone_largest_mm"):
        return row.number("cone_largest_mm")
    return round(share_of(row.number("body_mm"), _share("largest cone", row, shares)), 2)


def _drilled_cone(row: Row, deep: float, shares: Table) -> float:
    """What the steps drill, which is not the largest cone of the drill."""
    return cone_within_drill(row.number("pilot_mm"), _largest_cone(row, shares), deep)


def _pressed(load: float, row: Row, deep: float, angle: float, shares: Table) -> float:
    return bearing_pressure(load, _drilled_cone(row, deep, shares), row.number("pilot_mm"), angle)


@computed(
    "bar.centre_load",
    label="load on a dead centre",
    unit="N",
    rounding="force",
    bound="least",
    needs=("crib.tailstock_centre", "bar.assembly_mass", "skim.radial_force", "limit.gravity"),
    how="half the weight and the radial force of the skim; a live centre turns with its hole",
)
def load_on_centre(centre: str, mass: float, force: float, gravity: float) -> float | Limited:
    if centre != "dead":
        return Limited(None, "the centre turns with the bar")
    return centre_load(mass, gravity, force)


@computed("bar.centre_body", label="body diameter of the centre drill", unit="mm", rounding="size",
          needs=("bar.centre_drill",), tables=("tools/centre_drills",), how="from the table of centre drills")  # fmt: skip
def centre_body(designation: str, drills: Table) -> float:
    return _drill(designation, drills).number("body_mm")


@computed("bar.centre_pilot_length", label="pilot length of the centre drill", unit="mm", rounding="size",
          needs=("bar.centre_drill",), tables=("tools/centre_drills", "tools/centre_drill_shares"),
          how="from the table of centre drills")  # fmt: skip
def centre_pilot_length(designation: str, drills: Table, shares: Table) -> float:
    row = _drill(designation, drills)
    length = length_of_diameters(row.number("pilot_mm"), _share("pilot length", row, shares))
    return step_up(length, _HUNDREDTH)


@computed("bar.centre_hole", label="name of the centre holes", kind="text", needs=("bar.on_hand?", "bar.centre_drill?"),
          how="the centre drill; holes that exist are as they measure")  # fmt: skip
def centre_hole(on_hand: Mapping[str, Any] | None, designation: str | None) -> str | None:
    return designation if on_hand is None else "as it measures"


@computed("bar.centre_pilot", label="pilot diameter of the centre hole", unit="mm", rounding="size",
          needs=("bar.on_hand?", "bar.centre_drill?"), tables=("tools/centre_drills",),
          how="as measured on the bar on hand; else from the table of centre drills")  # fmt: skip
def centre_pilot(on_hand: Mapping[str, Any] | None, designation: str | None, drills: Table) -> Limited | None:
    if on_hand is not None:
        return taken(float(on_hand["pilot"]), "as measured on the bar on hand", as_said=True)
    return (
        None
        if designation is None
        else taken(_drill(designation, drills).number("pilot_mm"), "from the table of centre drills")
    )


@computed(
    "bar.centre_cone",
    label="large diameter of the centre hole",
    unit="mm",
    rounding="size",
    needs=("bar.on_hand?", "bar.centre_drill?", "limit.cone_depth_share"),
    tables=("tools/centre_drills", "tools/centre_drill_shares"),
    how="a share of the way from the pilot to the largest cone that this drill cuts",
)
def cone_diameter(
    on_hand: Mapping[str, Any] | None, designation: str | None, share: float, drills: Table, shares: Table
) -> float | None:  # fmt: skip
    if on_hand is not None:
        return float(on_hand["cone"])
    if designation is None:
        return None
    return _drilled_cone(_drill(designation, drills), share, shares)


@computed("bar.centre_angle", label="angle of the cone of a centre hole", unit="deg", rounding="angle",
          needs=("limit.centre_angle",), how="as every centre of a lathe")  # fmt: skip
def centre_angle(angle: float) -> float:
    return angle


@computed(
    "bar.centre_cone_depth",
    label="depth of the cone",
    unit="mm",
    rounding="length",
    needs=("bar.centre_cone", "bar.centre_pilot", "bar.centre_angle"),
    how="(cone diameter - pilot) / (2 tan 30 deg)",
)
def cone_depth(cone: float, pilot: float, angle: float) -> float:
    return depth_of_cone(cone, pilot, angle)


@computed(
    "bar.centre_depth",
    label="deepest the centre drill goes from the faced end",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.centre_cone_depth", "bar.centre_pilot_length"),
    how="length of the longest pilot of this size and depth of the cone",
)
def centre_depth(cone: float, pilot: float) -> float:
    return cone + pilot


@computed(
    "bar.centre_pressure",
    label="pressure on the centre hole",
    unit="MPa",
    rounding="pressure",
    bound="least",
    needs=(
        "bar.assembly_mass",
        "skim.radial_force",
        "bar.centre_cone",
        "bar.centre_pilot",
        "bar.centre_angle",
        "limit.gravity",
    ),
    how="half the weight and the radial force of the skim, over the projected area of the cone: "
    "(D^2 - d^2) / (4 tan 30 deg)",
)  # fmt: skip
def centre_pressure(mass: float, force: float, cone: float, pilot: float, angle: float, gravity: float) -> float:
    return bearing_pressure(centre_load(mass, gravity, force), cone, pilot, angle)
