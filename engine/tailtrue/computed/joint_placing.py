"""Where a screw or a pin goes through a collar: near its outer face, clear of what the micrometer touches."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import length_of_diameters, per_side
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

Record = Mapping[str, Any]


def thread_share(material: str, soft: Table) -> float:
    """Share of the full torque that the thread in this metal bears."""
    return next((soft.take(row).number("torque_share") for row in soft.where(material=material)), 1.0)


def lightest_that_holds(fitting: Sequence[dict[str, Any]], wanted: float) -> Limited:
    """Of screws that fit, the fewest and thinnest that hold this torque; the strongest where none does."""
    strong = [one for one in fitting if one["torque"] >= wanted]
    if strong:
        return Limited(
            min(strong, key=lambda one: (one["count"], one["major"])), "the fewest and thinnest that hold a catch"
        )
    return Limited(max(fitting, key=lambda one: one["torque"]), "the strongest that fit")


def track_left(width: float, diameter: float, placing: Table) -> float:
    """Width of whole surface beside a hole near the outer face."""
    taken = placing.value("edge-in-diameters") + placing.value("track-clear-in-diameters")
    return width - length_of_diameters(diameter, taken)


def place(method: str, size: str, words: str) -> None:
    """Register where the hole of a chosen screw or pin lies, and what it leaves of the collar."""

    @computed(f"joint.{method}.from_face", label=f"middle of {words} from the outer face of the collar", unit="mm",
              rounding="length", needs=(f"joint.{method}.found",), tables=("joints/placing",),
              how="a diameter of it, so that the track to be measured stays whole")  # fmt: skip
    def _from_face(found: Record, placing: Table) -> float:
        return length_of_diameters(float(found[size]), placing.value("edge-in-diameters"))

    @computed(f"joint.{method}.track", label=f"whole surface beside {words}", unit="mm", rounding="length", bound="most",
              needs=(f"joint.{method}.found", "collar.width"), tables=("joints/placing",),
              how="width of the collar less the band of the hole")  # fmt: skip
    def _track(found: Record, width: float, placing: Table) -> float:
        return track_left(width, float(found[size]), placing)


def of_record(method: str, name: str, key: str, label: str, **more: Any) -> None:
    """Register a field of what was chosen as a fact."""

    @computed(f"joint.{method}.{name}", label=label, needs=(f"joint.{method}.found",),
              how="of the one that was chosen", **more)  # fmt: skip
    def _said(found: Record) -> Any:
        return found[key]


def depth_now(method: str, words: str) -> None:
    """Register how far below the rim it lies before the collar is turned at all."""

    @computed(f"joint.{method}.depth_now", label=f"{words} below the rim before it is turned", unit="mm", rounding="length",
              bound="least", needs=(f"joint.{method}.depth", "collar.stock_diameter", "skim.worn_out_at"),
              how="depth below the worn rim, and what is turned off until then")  # fmt: skip
    def _now(depth: float, blank: float, worn: float) -> float:
        return depth + per_side(blank, worn)
