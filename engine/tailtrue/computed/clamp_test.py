"""The clamp test: where the quill goes when it is clamped, and how well it comes back."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.clamping import aim_before_clamping, clamping_scatter, mean_shift_doubt, repeat_scatter
from tailtrue.calc.lengths import share_of
from tailtrue.calc.student import two_sided_factor
from tailtrue.calc.uncertainty import expanded
from tailtrue.computed.registry import computed, field
from tailtrue.tables import Table

Record = Mapping[str, Any]
_TABLES = ("alignment/uncertainty",)


def _factor(freedom: float, components: Table) -> float:
    """What few readings are multiplied by to span the range of the probability that the sheet speaks of."""
    return two_sided_factor(components.value("probability"), freedom)


@computed(
    "clamp.cycle",
    label="what the cycles of clamping show",
    kind="record",
    fields=(
        field("shift", "mm", "difference"),
        field("shift_deviation", "mm", "difference"),
        field("deviation", "mm", "difference"),
        field("freedom"),
    ),
    needs=("clamp.released", "clamp.clamped"),
    how="mean shift, its standard deviation, that of the clamped position, degrees of freedom",
)
def cycle(released: Sequence[float], clamped: Sequence[float]) -> dict[str, float]:
    found = clamping_scatter(released, clamped)
    return {
        "shift": found.mean_shift_mm,
        "shift_deviation": found.shift_deviation_mm,
        "deviation": found.clamped_deviation_mm,
        "freedom": found.degrees_of_freedom,
    }


@computed("clamp.cycles", label="cycles of clamping", unit="1", rounding="count", needs=("clamp.clamped",),
          how="readings clamped")  # fmt: skip
def cycles(clamped: Sequence[float]) -> float:
    return float(len(clamped))


@computed("clamp.apart", label="how far the readings of the test lie apart", unit="mm", rounding="difference",
          needs=("clamp.released", "clamp.clamped"), how="the largest less the smallest")  # fmt: skip
def apart(released: Sequence[float], clamped: Sequence[float]) -> float:
    return max(*released, *clamped) - min(*released, *clamped)


@computed("clamp.believed", label="readings of the clamp test that can be believed", kind="yes-no",
          needs=("clamp.apart", "limit.indicator_apart"), how="they lie no farther apart than the limit")  # fmt: skip
def believed(found: float, most: float) -> bool:
    return found <= most


@computed("clamp.shift", label="mean shift on clamping", unit="mm", rounding="difference", needs=("clamp.cycle",),
          how="its size; which way is said in words")  # fmt: skip
def shift(shown: Record) -> float:
    return abs(float(shown["shift"]))


@computed("clamp.shift_way", label="way of the shift on clamping", kind="choice", choices=("into", "away-from"),
          needs=("clamp.cycle",), how="into the indicator where it reads more")  # fmt: skip
def shift_way(shown: Record) -> str:
    return "away-from" if shown["shift"] < 0 else "into"


@computed("clamp.aim_way", label="how the shift is aimed off", kind="choice", choices=("higher", "lower"),
          needs=("clamp.cycle",), how="reading before clamping = reading wanted less the shift")  # fmt: skip
def aim_way(shown: Record) -> str:
    return "higher" if aim_before_clamping(0.0, shown["shift"]) > 0 else "lower"


@computed(
    "clamp.shift_doubt",
    label="doubt of the mean shift",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("clamp.cycle", "clamp.cycles", "clamp.step"),
    tables=_TABLES,
    how="t s / root n, with the step of the indicator in both readings",
)
def shift_doubt(shown: Record, count: float, step: float, components: Table) -> float:
    return mean_shift_doubt(_factor(shown["freedom"], components), shown["shift_deviation"], step, round(count))


@computed(
    "clamp.scatter",
    label="scatter of the centre from one clamping to the next",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("clamp.cycle", "clamp.step"),
    tables=_TABLES,
    how="t s of the clamped position, with the step of the indicator, about 95 %",
)
def scatter(shown: Record, step: float, components: Table) -> float:
    return repeat_scatter(_factor(shown["freedom"], components), shown["deviation"], step)


@computed("clamp.seen", label="scatter of clamping that the readings themselves show", unit="mm", rounding="difference",
          needs=("clamp.cycle",), tables=_TABLES, how="twice the standard deviation of the clamped position")  # fmt: skip
def seen(shown: Record, components: Table) -> float:
    return expanded(shown["deviation"], components.value("coverage_factor"))


@computed("clamp.least_shown", label="least scatter that this test can show", unit="mm", rounding="difference",
          bound="least", needs=("clamp.cycle", "clamp.step"), tables=_TABLES,
          how="t times the step of the indicator, as if every clamping were the same")  # fmt: skip
def least_shown(shown: Record, step: float, components: Table) -> float:
    return repeat_scatter(_factor(shown["freedom"], components), 0.0, step)


@computed("clamp.adequate", label="scatter of clamping that is good enough", unit="mm", rounding="difference", bound="most",
          needs=("lookup.limit_move", "limit.adequate_share"), how="a share of the limit on the centre")  # fmt: skip
def adequate(limit: float, share: float) -> float:
    return share_of(limit, share)


@computed("clamp.most", label="scatter of clamping above which nobody adjusts", unit="mm", rounding="difference",
          bound="most", needs=("lookup.limit_move", "limit.clamp_share"),
          how="a share of what the limit allows the centre")  # fmt: skip
def most(limit: float, share: float) -> float:
    return share_of(limit, share)
