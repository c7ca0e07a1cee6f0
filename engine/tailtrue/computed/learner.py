"""What somebody who learns, or is under age, is given to cut: no deeper and no faster than a hand can still follow."""

from tailtrue.computed.registry import computed

DEPTH, FEED = "learner.depth", "learner.feed"
BY = "cut of a learner"
_LEARNER = "learner"


@computed(
    "learner.cuts", label="whether a learner or a minor cuts", kind="yes-no", needs=("job.operator", "job.minor"),
    how="by what the job says of the operator",
)  # fmt: skip
def _cuts(operator: str, minor: bool) -> bool:
    return operator == _LEARNER or minor


@computed(
    DEPTH, label="deepest cut per side of a learner", unit="mm", rounding="depth", bound="most",
    needs=("learner.cuts", "limit.learner_depth"), how="a limit that the shop may draw tighter; none for other people",
)  # fmt: skip
def _depth(learns: bool, most: float) -> float | None:
    return most if learns else None


@computed(
    FEED, label="fastest feed of a learner", unit="mm/rev", rounding="feed", bound="most",
    needs=("learner.cuts", "limit.learner_feed"), how="a limit that the shop may draw tighter; none for other people",
)  # fmt: skip
def _feed(learns: bool, most: float) -> float | None:
    return most if learns else None
