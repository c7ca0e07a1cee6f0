"""Other ways to hold: a collet for bar or blank, soft jaws for a blank, a stub mandrel for the second face of a collar."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.cutting import passes_for_stock
from tailtrue.calc.lengths import length_ratio, per_side, share_of
from tailtrue.calc.steps import step_down, step_up, steps_in
from tailtrue.computed.operation import SHORT_GRIP, operation
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table

Record = Mapping[str, Any]
_NO_SOFT_JAWS = "the crib lists no soft jaws"
_NO_STUB = "the crib lists no stub mandrel"


@computed(
    "bar.collet_takes",
    label="the collet closes on this bar",
    kind="yes-no",
    needs=(
        "crib.collet_from", "crib.collet_to", "bar.expected_least", "bar.expected_largest", "job.measured_head?",
        "job.measured_tail?",
    ),
    how="the bar as it was measured, or else the least and the largest diameter to expect of this stock, against the range "
    "of the collet",
)  # fmt: skip
def collet_takes(
    low: float, high: float, least: float, largest: float, head: Sequence[float] | None, tail: Sequence[float] | None
) -> bool:
    measured = (*(head or ()), *(tail or ()))
    return low <= min(measured or (least,)) and max(measured or (largest,)) <= high


@computed(
    "bar.through_collet",
    label="the bar goes through the collet chuck into the spindle",
    kind="yes-no",
    needs=("bar.diameter", "lathe.spindle_bore", "crib.collet_hole", "limit.bore_clearance"),
    how="diameter and clearance against the bore of the spindle and the hole of the collet chuck",
)
def through_collet(diameter: float, bore: float, hole: float, clearance: float) -> bool:
    return diameter + clearance <= min(bore, hole)


@computed(
    "collar.wall_share",
    label="wall of a collar as a share of its diameter",
    unit="1",
    needs=("collar.blank_diameter", "bar.diameter"),
    how="half of what the blank is larger than the bar, divided by the blank",
)
def wall_share(blank: float, bar: float) -> float:
    return length_ratio(per_side(blank, bar), blank)


@computed(
    "collar.soft_step",
    label="depth of the step bored in the soft jaws",
    unit="mm",
    rounding="length",
    bound="most",
    needs=(
        "crib.soft_jaws_depth?", "crib.soft_jaws_plug_width?", "limit.plug_clear", "limit.soft_jaw_share",
        "collar.saw_width", "limit.face_clearance", "limit.facing_stock", "lathe.size_step",
    ),
    how="a share of the depth of the jaws, what the plug leaves of it, or what leaves the face clear of them after both "
    "faces are cut; down to a whole step",
)  # fmt: skip
def soft_step(
    depth: float | None, plug: float | None, behind: float, share: float, width: float, clearance: float, facing: float,
    step: float,
) -> Limited:  # fmt: skip
    if depth is None or plug is None:
        return Limited(None, _NO_SOFT_JAWS)
    deepest, by = least_of(
        (share_of(depth, share), "the jaws"),
        (depth - plug - behind, "the plug, which must lie clear of the tool"),
        (width - facing - clearance, "the face, which must stand clear of the jaws"),
    )
    return Limited(max(0.0, step_down(deepest, step)), by)


@computed(
    "collar.room_behind",
    label="room behind the blank in the soft jaws",
    unit="mm",
    rounding="length",
    needs=("crib.soft_jaws_depth", "collar.soft_step"),
    how="depth of the jaws less the step",
)
def room_behind(depth: float, step: float) -> float:
    return depth - step


@computed(
    "softjaw.fits",
    label="soft jaws may be bored to the blank",
    kind="yes-no",
    needs=(
        "crib.soft_jaws_from?", "crib.soft_jaws_to?", "crib.soft_jaws_plug?", "collar.soft_step?", "collar.blank_diameter",
        "bar.diameter", "limit.soft_jaw_shoulder", "limit.soft_jaw_most", "limit.face_clearance", "limit.grip_least",
    ),
    how="they may be bored to this blank, their plug leaves a shoulder to seat on, not too much to bore away and a hole for "
    "the tools, and the step grips deep enough",
)  # fmt: skip
def soft_jaws_fit(
    low: float | None, high: float | None, plug: float | None, step: float | None, blank: float, bar: float,
    shoulder: float, most: float, clearance: float, grip: float,
) -> bool:  # fmt: skip
    if low is None or high is None or plug is None or step is None:
        return False
    seated = shoulder <= (blank - plug) / 2 <= most
    return low <= blank <= high and seated and plug >= bar + clearance and step >= grip


@computed(
    "collar.soft_jaws_serve",
    label="soft jaws serve for the blank",
    kind="yes-no",
    needs=(
        "softjaw.fits", "crib.soft_jaws_chuck?", "crib.soft_jaws_depth?", "collar.soft_step?", "blank.chuck?",
        "hole.comes_out?",
    ),
    how="they may be bored to this blank, belong to the chuck that is used, and the drill finds room behind the blank",
)  # fmt: skip
def soft_jaws_serve(
    fits: bool, belongs: str | None, depth: float | None, step: float | None, chuck: Record | None, comes_out: float | None,
) -> bool:  # fmt: skip
    if not fits or chuck is None or belongs != chuck["label"] or depth is None or step is None:
        return False
    return comes_out is None or room_behind(depth, step) > comes_out


def _of_crib(name: str, fact: str, label: str, none: str, rounding: str = "size") -> None:
    @computed(
        name, label=label, unit="mm", rounding=rounding, needs=(f"{fact}?",), how="as given for the crib", as_said=True
    )
    def _said(size: float | None) -> Limited:
        return Limited(size, "as measured" if size is not None else none)


_of_crib("softjaw.plug", "crib.soft_jaws_plug", "plug that the soft jaws close on", _NO_SOFT_JAWS)
_of_crib("softjaw.plug_width", "crib.soft_jaws_plug_width", "width of that plug", _NO_SOFT_JAWS, "length")
_of_crib("stub.diameter", "crib.stub_diameter", "diameter of the stub mandrel before it is turned", _NO_STUB)


def of_metal(prefix: str, fact: str, what: str, none: str) -> None:
    """Register material and feed group of something of the crib whose metal is said by its family."""

    @computed(f"{prefix}.material", label=f"material that {what} is taken for", kind="text", needs=(f"{fact}?",),
              tables=("machines/holding_metals",), how="from the table of metals that hold work")  # fmt: skip
    def _material(metal: str | None, metals: Table) -> Limited | str:
        return Limited(None, none) if metal is None else metals.one(family=metal).text("material")

    @computed(f"{prefix}.feed_group", label=f"feed group of {what}", kind="text", needs=(f"{prefix}.material",),
              tables=("materials/materials",), how="from the table of materials")  # fmt: skip
    def _group(material: str, materials: Table) -> str:
        return materials.one(material=material).text("feed_group")


of_metal("softjaw", "crib.soft_jaws_metal", "a soft jaw", _NO_SOFT_JAWS)
of_metal("stub", "crib.stub_metal", "the stub mandrel", _NO_STUB)


def _gaps_between_jaws(name: str) -> None:
    @computed(f"softjaw.interrupted_{name}", label=f"share of {name} left by the gaps between the jaws", unit="1",
              needs=("softjaw.material",), tables=("cutting/adjustments",),
              how="from the table of adjustments for interrupted cuts")  # fmt: skip
    def _share(_material: str, adjustments: Table) -> float:
        return adjustments.one(situation="interrupted-cut").number(f"{name}_factor")


for _name in ("speed", "depth"):
    _gaps_between_jaws(_name)

_BLANK_CHUCK = (
    ("blank.chuck_speed_limit", "the chuck"),
    ("limit.blank_speed", SHORT_GRIP),
)
operation(
    "softjaw.boring", "boring the soft jaws", table="boring", work="softjaw", diameter="collar.blank_diameter",
    tool="bore.tip", caps=_BLANK_CHUCK, speed_factor="softjaw.interrupted_speed",
    depth_factor="softjaw.interrupted_depth", depth_by="the gaps between the jaws: the cut is interrupted",
)  # fmt: skip
operation(
    "stub.turning", "turning the stub mandrel", table="turn-rough", work="stub", diameter="stub.diameter",
    tool="tool.material", caps=_BLANK_CHUCK,
)  # fmt: skip
operation(
    "stub.facing", "facing a collar on the stub mandrel", table="facing", work="collar", diameter="collar.blank_diameter",
    tool="tool.material", caps=(*_BLANK_CHUCK, ("limit.stub_speed", "a collar held by its bore")),
)  # fmt: skip


def _passes(name: str, label: str, large: str, small: str, depth: str) -> None:
    @computed(name, label=label, unit="1", rounding="count", needs=(large, small, depth),
              how="half the difference of the diameters divided by the depth per side, up to a whole pass")  # fmt: skip
    def _count(outer: float, inner: float, cut: float) -> float:
        return float(passes_for_stock(max(0.0, outer - inner), cut))


_passes("softjaw.passes", "passes to bore the soft jaws", "collar.blank_diameter", "softjaw.plug", "softjaw.boring.depth")
_passes("stub.passes", "passes to turn the spigot", "stub.diameter", "bore.nominal", "stub.turning.depth")


@computed(
    "stub.spigot",
    label="length of the spigot on the stub mandrel",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.width", "limit.stub_inside"),
    how="width of the finished collar less what the end of the stub stays inside",
)
def spigot(width: float, inside: float) -> float:
    return width - inside


@computed(
    "stub.out",
    label="stub mandrel standing out of the jaws",
    unit="mm",
    rounding="length",
    needs=("stub.spigot", "limit.face_clearance", "lathe.size_step"),
    how="spigot and clearance in front of the jaws, up to a whole step",
)
def stub_out(length: float, clearance: float, step: float) -> float:
    return step_up(length + clearance, step)


@computed(
    "stub.gap_in_smaller",
    label="spigot under the smaller of two kept bores, at most",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("limit.stub_gap", "limit.stub_bores_differ"),
    how="what the larger bore may be looser is kept back",
)
def stub_gap_in_smaller(most: float, differ: float) -> float:
    return most - differ


@computed(
    "stub.cut",
    label="depth of a cut on the stub mandrel",
    unit="mm",
    rounding="depth",
    bound="most",
    needs=("stub.facing.depth", "limit.stub_cut", "lathe.facing_step"),
    how="as for facing in the jaws, and no more than friction holds; in whole steps of facing",
)
def stub_cut(facing: float, most: float, division: float) -> Limited:
    depth, by = least_of((most, "the collar is held by friction alone"), (facing, "as for facing in the jaws"))
    whole = step_down(depth, division)
    return Limited(whole if whole > 0 else None, by)


@computed(
    "stub.cut_divisions",
    label="divisions of the top-slide dial for a cut on the stub mandrel",
    unit="1",
    rounding="count",
    needs=("stub.cut", "lathe.top_slide_dial_division"),
    how="depth of the cut divided by what one division moves the tool",
)
def stub_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


@computed(
    "stub.serves",
    label="a stub mandrel serves for the second face",
    kind="yes-no",
    needs=(
        "crib.stub_diameter?", "crib.stub_least?", "crib.stub_length?", "stub.spigot", "bore.nominal",
        "collar.blank_diameter", "limit.stub_shoulder", "limit.stub_most",
    ),
    how="it is thick enough for a shoulder behind the bore and not much thicker, may be turned down to it, spreads along "
    "the whole spigot, and is thinner than the collar, so that a caliper reaches over",
)  # fmt: skip
def stub_serves(
    size: float | None, least: float | None, spreads: float | None, length: float, bore: float, blank: float,
    shoulder: float, most: float,
) -> bool:  # fmt: skip
    if size is None or least is None or spreads is None:
        return False
    stepped = shoulder <= (size - bore) / 2 <= most
    return stepped and least <= bore and size <= blank - 2 * shoulder and spreads >= length
