"""Uncertainty of a difference, and the verdict at its bounds."""

from math import inf, nan, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.uncertainty import difference_uncertainty, expanded, verdict
from tailtrue.calc.validity import OutOfRange


def test_every_part_counts_once_by_its_rule() -> None:
    # 2*9/4 + 2*4/12 + (1 + 2*4 + 9 + 16 + 25) / 3 = 4.5 + 0.667 + 19.667
    assert difference_uncertainty(3, 4, 2, 1, 2, 3, 4, 5) == pytest.approx(sqrt(4.5 + 8 / 12 + 59 / 3))


def test_coverage_factor_widens_the_doubt() -> None:
    assert expanded(0.0015, coverage=2) == pytest.approx(0.003)
    assert expanded(0.0015, 2.1) == pytest.approx(0.00315)
    assert expanded(0, coverage=2) == 0
    with pytest.raises(OutOfRange, match=r"^standard uncertainty is -0\.001 mm; the formula holds from 0 mm upward$"):
        expanded(-0.001, coverage=2)
    with pytest.raises(OutOfRange, match=r"^coverage factor is 0; it must be more than 0$"):
        expanded(0.001, 0)


@pytest.mark.parametrize(
    ("difference", "unsure", "said"),
    [
        (0.25, 0.25, "inside"), (0.2501, 0.25, "too close to say"), (0.5, 0, "inside"), (0.5001, 0, "outside"),
        (0.75, 0.25, "too close to say"), (0.7501, 0.25, "outside"), (0, 0.5, "inside"), (0, 0.51, "too close to say"),
        (0.9, 0.6, "too close to say"),
    ],
)  # fmt: skip
def test_verdict_at_its_bounds(difference: float, unsure: float, said: str) -> None:
    assert verdict(difference, unsure, 0.5) == said
    assert verdict(-difference, unsure, 0.5) == said


@given(difference=st.floats(-0.1, 0.1), unsure=st.floats(0, 0.05), limit=st.floats(0.001, 0.05), more=st.floats(0, 0.05))
def test_more_uncertainty_never_turns_too_close_to_say_into_a_verdict(
    difference: float, unsure: float, limit: float, more: float
) -> None:
    before, after = verdict(difference, unsure, limit), verdict(difference, unsure + more, limit)
    assert before == after or after == "too close to say"


def test_what_cannot_be_judged_is_refused() -> None:
    for arguments, said in [
        ((nan, 0.001, 0.01), "difference is nan mm; it must be a finite number"),
        ((inf, 0.001, 0.01), "difference is inf mm; it must be a finite number"),
        ((0, -0.001, 0.01), "expanded uncertainty is -0.001 mm; the formula holds from 0 mm upward"),
        ((0, 0.001, 0), "limit is 0 mm; it must be more than 0 mm"),
    ]:
        with pytest.raises(OutOfRange) as refused:
            verdict(*arguments)
        assert str(refused.value) == said
