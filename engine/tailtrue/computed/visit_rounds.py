"""This visit against the one before: what the last move achieved, and what a bar cannot have done by itself."""

from math import copysign

from tailtrue.calc.budget import standard_uncertainty
from tailtrue.calc.clamping import achieved_share, difference_left
from tailtrue.calc.doubts import both_together, of_one_collar
from tailtrue.calc.lengths import percentage
from tailtrue.calc.thermal import growth
from tailtrue.calc.uncertainty import expanded
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_SIZES = ("visit.head", "visit.tail", "visit.before_head", "visit.before_tail")
# An indicator reads no size: what rests on one, now or at the visit before, is then not known.
_KINDS = ("visit.instrument_kind", "visit.before_instrument_kind?")
_OF_SIZE = (*_KINDS, *_SIZES)
_BOTH = ("visit.difference", "visit.before_difference")


@computed("visit.before_difference", label="difference of the collars at the visit before", unit="mm", rounding="difference",
          needs=("visit.before_head", "visit.before_tail"), how="tailstock collar less headstock collar")  # fmt: skip
def before_difference(at_head: float, at_tail: float) -> float:
    return at_tail - at_head


@computed("visit.before_gap", label="size of the difference at the visit before", unit="mm", rounding="difference",
          needs=("visit.before_difference",), how="its size, whichever was larger")  # fmt: skip
def before_gap(signed: float) -> float:
    return abs(signed)


@computed(
    "visit.before_larger_end",
    label="the larger collar at the visit before",
    kind="choice",
    choices=("tailstock", "headstock", "neither"),
    needs=("visit.before_difference",),
    how="the end whose mean was more",
)
def before_larger_end(signed: float) -> str:
    return "tailstock" if signed > 0 else "headstock" if signed < 0 else "neither"


@computed(
    "visit.after_move",
    label="the tailstock was moved since the visit before",
    kind="yes-no",
    needs=("visit.state?", "visit.moved?"),
    how="as left, or with a move said: yes; as found: no",
)
def after_move(state: str | None, moved: float | None) -> bool | None:
    return None if state is None and moved is None else moved is not None or state == "as-left"


@computed(
    "visit.change_doubt",
    label="doubt of the change of the difference",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("visit.uncertainty", "visit.before_uncertainty"),
    how="root of the sum of the squares of both doubts",
)
def change_doubt(now: float, before: float) -> float:
    return both_together(now, before)


@computed(
    "visit.size_doubt",
    label="doubt of the change of one collar",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("visit.change_doubt", "visit.size", "collar.expansion"),
    tables=("visit/doubts", "alignment/uncertainty"),
    how="half of the squares of that of the difference, with the temperature and the zero of another day",
)
def size_doubt(of_difference: float, diameter: float, expansion: float, doubts: Table, components: Table) -> float:
    def unsure(value: float) -> float:
        return standard_uncertainty(value, "rectangular")

    warmer = growth(diameter, expansion, doubts.value("temperature_of_another_day"))
    zero = doubts.value("zero_of_another_day")
    coverage = components.value("coverage_factor")
    readings = of_one_collar(standard_uncertainty(of_difference, "normal", coverage))
    return expanded(both_together(readings, both_together(unsure(warmer), unsure(zero))), coverage)


@computed("visit.grown_by", label="most that a collar has grown", unit="mm", rounding="difference",
          needs=_OF_SIZE, how="larger growth of the two; less than nought when both came down")  # fmt: skip
def grown_by(
    kind: str, before: str | None, head: float, tail: float, head_before: float, tail_before: float
) -> float | None:
    return None if "indicator" in (kind, before) else max(head - head_before, tail - tail_before)


@computed("visit.grown_end", label="collar that has grown most", kind="choice", choices=("tailstock", "headstock"),
          needs=_SIZES, how="the end of the larger growth")  # fmt: skip
def grown_end(head: float, tail: float, head_before: float, tail_before: float) -> str:
    return "headstock" if head - head_before > tail - tail_before else "tailstock"


@computed("visit.skimmed", label="the collars have come down since the visit before", kind="yes-no",
          needs=(*_OF_SIZE, "visit.size_doubt"), how="both by more than the doubt")  # fmt: skip
def skimmed(
    kind: str, before: str | None, head: float, tail: float, head_before: float, tail_before: float, unsure: float
) -> bool | None:
    return None if "indicator" in (kind, before) else min(head_before - head, tail_before - tail) > unsure


@computed(
    "visit.swapped",
    label="each collar reads what the other one read before",
    kind="yes-no",
    needs=(*_KINDS, *_BOTH, *_SIZES, "visit.change_doubt", "visit.size_doubt"),
    how="the difference is turned round, its size and the mean of the collars are as they were",
)
def swapped(
    kind: str, kind_before: str | None, now: float, before: float, head: float, tail: float, head_before: float,
    tail_before: float, unsure: float, of_size: float,
) -> bool | None:  # fmt: skip
    if "indicator" in (kind, kind_before):
        return None
    as_before = abs(head + tail - head_before - tail_before) / 2 <= of_size
    return as_before and abs(before) > unsure and abs(now + before) <= unsure


@computed(
    "visit.worse",
    label="the tailstock stands further out on the same side",
    kind="yes-no",
    needs=(*_BOTH, "visit.change_doubt"),
    how="same sign as before, and larger by more than the doubt of the change",
)
def worse(now: float, before: float, unsure: float) -> bool:
    return now * before > 0 and abs(now) - abs(before) > unsure


@computed(
    "visit.turned_round",
    label="the other collar is the larger one now",
    kind="yes-no",
    needs=(*_BOTH, "visit.change_doubt"),
    how="another sign than before, both differences more than the doubt of the change",
)
def turned_round(now: float, before: float, unsure: float) -> bool:
    return now * before < 0 and min(abs(now), abs(before)) > unsure


@computed(
    "visit.share",
    label="share of the last correction that was achieved",
    unit="%",
    rounding="count",
    needs=(*_BOTH, "visit.change_doubt", "visit.after_move"),
    how="1 less difference now over difference before; only where the difference before was more than the doubt",
)
def share(now: float, before: float, unsure: float, moved: bool) -> float | None:
    return percentage(achieved_share(before, now), 1.0) if moved and abs(before) > unsure else None


@computed("visit.share_is", label="what the last move achieved", kind="choice", choices=("little", "most", "past"),
          needs=("visit.share", "limit.share_little", "limit.share_past"),
          how="below the one limit, between both, above the other")  # fmt: skip
def share_is(achieved: float, little: float, past: float) -> str:
    return "little" if achieved < 100 * little else "past" if achieved > 100 * past else "most"


@computed(
    "visit.left_after",
    label="difference to be expected after this move",
    unit="mm",
    rounding="difference",
    needs=("visit.difference", "visit.share"),
    how="what is left of the difference if this move achieves the same share as the last",
)
def left_after(now: float, achieved: float) -> float:
    return abs(difference_left(now, achieved))


@computed("visit.left_end", label="collar that will then be larger", kind="choice",
          choices=("tailstock", "headstock", "neither"), needs=("visit.difference", "visit.share"),
          how="the same one while a move falls short, the other one when it goes past")  # fmt: skip
def left_end(now: float, achieved: float) -> str:
    left = difference_left(now, achieved)
    return "neither" if left == 0 else "tailstock" if copysign(1, left) > 0 else "headstock"


@computed("visit.moved_share", label="move shown by the indicator as a share of the move asked for", unit="%",
          rounding="count", needs=("visit.moved", "visit.before_move"), how="one over the other, as sizes")  # fmt: skip
def moved_share(shown: float, asked: float) -> float | None:
    return percentage(abs(shown), asked) if asked > 0 else None


@computed("visit.round", label="round of this bout", unit="1", rounding="count", needs=("visit.rounds_before",),
          how="tests since the last one as found, with this one")  # fmt: skip
def round_(before: float) -> float:
    return before + 1
