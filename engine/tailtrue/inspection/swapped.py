"""A bar turned end for end: what its change may be before it says something, as it stands beside the doubt of one test."""

from collections.abc import Iterator
from math import sqrt

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_MOST, _DOUBT = "bar.swap_most", "align.uncertainty"
_STEP_MM = {"metric": 0.001, "inch": 0.00254}
_SAME = 1e-5


def no_bar_condemned_within_the_doubt(sheet: Sheet) -> Iterator[Fault]:
    """The change that says nothing is two doubts together, and as it is written no less than one."""
    most, doubt = sheet.first.get(_MOST), sheet.first.get(_DOUBT)
    if most is None or doubt is None:
        return
    where, together = "change end for end", sqrt(2) * doubt
    if most < together - _SAME:
        yield Fault(where, f"{most:.4g} mm says nothing; the doubts of two differences come to {together:.4g} mm")
    if most > together + _STEP_MM[sheet.shop.dials] + _SAME:
        yield Fault(where, f"{most:.4g} mm says nothing; two doubts are no more than {together:.4g} mm and a step")
    for bound in (one.figure.bound for one in sheet.at_steps if one.figure.fact == _MOST):
        if bound != "least":
            yield Fault(where, "it is written down and not up, so that it may read less than the doubt of one difference")
