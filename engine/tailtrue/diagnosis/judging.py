"""Estimates held against limits, some of which lie on one side only."""

from dataclasses import dataclass
from typing import Literal

from tailtrue.calc.estimation import Estimate
from tailtrue.diagnosis.setup import Setup
from tailtrue.tables import Row

Verdict = Literal["good", "bad", "close"]
_K = 2.0


@dataclass(frozen=True)
class Judged:
    """An estimate with its doubt (k = 2), and what the limit says of it."""

    value: float
    doubt: float
    verdict: Verdict
    limit: float
    row: Row | None = None


def within(value: float, doubt: float, lower: float, upper: float) -> Verdict:
    """What a limit says of a value in doubt.

    A limit on one side begins at nought; a value is on its wrong side only where the doubt does not reach back.

    >>> [within(v, 0.005, 0.0, 0.04) for v in (0.02, -0.02, -0.003, 0.038, 0.06)]
    ['good', 'bad', 'good', 'close', 'bad']
    >>> [within(v, 0.005, -0.02, 0.02) for v in (0.0, -0.018, -0.03)]
    ['good', 'close', 'bad']
    """
    if value - doubt > upper or value + doubt < lower:
        return "bad"
    surely_above = value + doubt >= lower if lower == 0 else value - doubt >= lower
    return "good" if surely_above and value + doubt <= upper else "close"


def against_table(setup: Setup, name: str, found: Estimate, times: float, over_mm: float = 0.0) -> Judged:
    """An estimate, `times` a factor, against the customary limit of that name; `over_mm` is the length it is told over."""
    row = setup.tables["diagnosis/limits"].one(**{"name": name, "class": setup.grade})
    scale = over_mm / row.number("over_mm") if over_mm else 1.0
    value, doubt = found.value * times, _K * found.standard_uncertainty * abs(times)
    verdict = within(value, doubt, row.number("lower") * scale, row.number("upper") * scale)
    return Judged(value, doubt, verdict, row.number("upper") * scale, row)


def against_bar(setup: Setup, found: Estimate) -> Judged:
    """The tailstock centre against what the limit on the difference of the collars allows it."""
    limit = setup.limit_mm / 2 * setup.span_mm / (setup.tail_mm - setup.head_mm)
    doubt = _K * found.standard_uncertainty
    return Judged(found.value, doubt, within(found.value, doubt, -limit, limit), limit)
