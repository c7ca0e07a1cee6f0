"""Height of the tailstock and lie of its quill: what is allowed, scaled to the quill that stands out."""

from tailtrue.calc.alignment import scaled_tolerance
from tailtrue.calc.lengths import midway, share_of
from tailtrue.calc.steps import step_down
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_TABLES = ("alignment/accuracy", "alignment/height")


def _over(name: str, check: str, side: str, label: str, bound: str) -> None:
    @computed(name, label=label, unit="mm", rounding="difference", bound=bound, needs=("job.accuracy",), tables=_TABLES,
              how="from the table, for the class of the chosen accuracy")  # fmt: skip
    def _limit(word: str, accuracy: Table, heights: Table) -> float:
        machines = accuracy.one(word=word).text("machine_class")
        return heights.one(kind=check, machine_class=machines).number(f"{side}_mm")


_over("height.least", "centre-height", "lower", "least height of the tailstock over the spindle", "least")
_over("height.most", "centre-height", "upper", "most height of the tailstock over the spindle", "most")


@computed("height.quill_out", label="quill standing out for its own test", unit="mm", rounding="length",
          needs=("lathe.quill_travel", "limit.quill_test_share", "lathe.size_step"),
          how="a share of its travel, down to a whole step of the rule")  # fmt: skip
def quill_out(travel: float, share: float, step: float) -> float:
    return step_down(share_of(travel, share), step)


def _along_quill(name: str, check: str, side: str, label: str, bound: str) -> None:
    @computed(name, label=label, unit="mm", rounding="difference", bound=bound, needs=("job.accuracy", "height.quill_out"),
              tables=_TABLES, how="from the table, scaled to the length that stands out")  # fmt: skip
    def _limit(word: str, out: float, accuracy: Table, heights: Table) -> float:
        row = heights.one(kind=check, machine_class=accuracy.one(word=word).text("machine_class"))
        return (
            scaled_tolerance(row.number(f"{side}_mm"), row.number("over_length_mm"), out)
            if row.number(f"{side}_mm")
            else 0.0
        )


_along_quill("height.rise_least", "quill-upright", "lower", "least rise of the quill toward its nose", "least")
_along_quill("height.rise_most", "quill-upright", "upper", "most rise of the quill toward its nose", "most")
_along_quill("height.lean_least", "quill-level", "lower", "least lean of the quill toward the tool", "least")
_along_quill("height.lean_most", "quill-level", "upper", "most lean of the quill toward the tool", "most")


@computed("height.coarsest", label="coarsest division that judges the quill", unit="mm", rounding="difference", bound="most",
          needs=("height.rise_least", "height.rise_most", "height.lean_least", "height.lean_most"),
          tables=("measuring/indicator_divisions",),
          how="half of the narrower band, down to a division that indicators are sold with")  # fmt: skip
def coarsest(rise_low: float, rise_high: float, lean_low: float, lean_high: float, sold: Table) -> float | None:
    most = midway(0.0, min(rise_high - rise_low, lean_high - lean_low))
    serving = [row for row in sold.rows if row.number("division_mm") <= most]
    return max((sold.take(row).number("division_mm") for row in serving), default=None)
