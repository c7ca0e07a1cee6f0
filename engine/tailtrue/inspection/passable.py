"""The limits that the work of one sheet alone can pass."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

# What a step does, and the facts that must then stand among the limits.
_TOLD = {
    "set-over": ("setover.amount", "setover.steepest_half_angle"),
    "free-end": ("chucked.skim.depth",),
    "judge-height": (
        "height.least", "height.most", "height.rise_least", "height.rise_most", "height.lean_least", "height.lean_most",
    ),
    "inspect-bar": ("skim.worn_out_at",),
}  # fmt: skip
_BETWEEN = "mount-between-centres"


def told(sheet: Sheet) -> Iterator[Fault]:
    """What a sheet sets over, skims or judges has its limits on the standing procedure."""
    sop = sheet.procedure.sop
    if sop is None:
        return
    done = {activity for placed in sheet.steps for activity in placed.step.activities}
    facts = {figure.fact for row in sop.limits for figure in figures_in(row.limit)}
    for activity, wanted in _TOLD.items():
        # A free end that is only drilled belongs to the making of a bar, and so do centres.
        if activity not in done or (activity == "free-end" and _BETWEEN in done):
            continue
        for fact in wanted:
            if fact not in facts:
                yield Fault("standing procedure", f'the work can pass "{fact}", and no limit tells it')
