"""What hands may lift: each factor of the equation alone, and what to say of a mass."""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoilt import each_is_refused, spoilt
from tailtrue.calc.lifting import lift_verdict, lifting_index, recommended_weight, reduced_weight
from tailtrue.calc.validity import OutOfRange

_BEST = {
    "load_constant_kg": 23,
    "horizontal_mm": 250,
    "height_mm": 750,
    "travel_mm": 250,
    "twist_deg": 0,
    "coupling": 1,
    "frequency": 1,
}
_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    recommended_weight: _BEST,
    lifting_index: {"mass_kg": 9, "recommended_kg": 8.1},
    reduced_weight: {"weight_kg": 15, "reductions": [0.1, 0.3]},
    lift_verdict: {"mass_kg": 9, "caution_above_kg": 8, "two_above_kg": 16},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("change", "share"),
    [
        ({"horizontal_mm": 0}, 1),
        ({"horizontal_mm": 500}, 0.5),
        ({"horizontal_mm": 630}, 250 / 630),
        ({"height_mm": 0}, 0.775),
        ({"height_mm": 1100}, 0.895),
        ({"height_mm": 1750}, 0.7),
        ({"travel_mm": 0}, 1),
        ({"travel_mm": 300}, 0.97),
        ({"travel_mm": 1750}, 0.82 + 45 / 1750),
        ({"twist_deg": 45}, 0.856),
        ({"twist_deg": 135}, 0.568),
        ({"coupling": 0.95}, 0.95),
        ({"frequency": 0.94}, 0.94),
        ({"load_constant_kg": 46}, 2),
    ],
)
def test_each_factor_alone(change: dict[str, float], share: float) -> None:
    assert recommended_weight(**(_BEST | change)) == pytest.approx(23 * share)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (recommended_weight, {"load_constant_kg": 0}, "load constant is 0 kg"),
        (recommended_weight, {"horizontal_mm": 631}, "distance of the hands is 631 mm"),
        (recommended_weight, {"horizontal_mm": -1}, "distance of the hands is -1 mm"),
        (recommended_weight, {"height_mm": 1751}, "height of the hands is 1751 mm"),
        (recommended_weight, {"height_mm": -1}, "height of the hands is -1 mm"),
        (recommended_weight, {"travel_mm": 1751}, "height of the lift is 1751 mm"),
        (recommended_weight, {"travel_mm": -1}, "height of the lift is -1 mm"),
        (recommended_weight, {"twist_deg": 135.5}, "turn of the trunk is 135.5 degrees"),
        (recommended_weight, {"twist_deg": -1}, "turn of the trunk is -1 degrees"),
        (recommended_weight, {"coupling": 0}, "factor of the hold is 0"),
        (recommended_weight, {"coupling": 1.004}, "factor of the hold is 1.004"),
        (recommended_weight, {"frequency": 0}, "factor of how often is 0"),
        (recommended_weight, {"frequency": 1.004}, "factor of how often is 1.004"),
        (lifting_index, {"mass_kg": 0}, "mass is 0 kg"),
        (lifting_index, {"recommended_kg": 0}, "recommended weight is 0 kg"),
        (reduced_weight, {"weight_kg": 0}, "guide weight is 0 kg"),
        (reduced_weight, {"reductions": [-0.01]}, "reduction is -0.01"),
        (reduced_weight, {"reductions": [1]}, "what a reduction leaves is 0"),
        (lift_verdict, {"mass_kg": 0}, "mass is 0 kg"),
        (lift_verdict, {"caution_above_kg": 0}, "mass for a caution is 0 kg"),
        (lift_verdict, {"two_above_kg": 7.9}, "mass for a second person is 7.9 kg"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


@pytest.mark.parametrize(
    ("mass", "verdict"), [(0.1, "alone"), (8, "alone"), (8.1, "caution"), (16, "caution"), (16.1, "help"), (90, "help")]
)
def test_verdict_on_a_mass(mass: float, verdict: str) -> None:
    assert lift_verdict(mass, 8, 16) == verdict


def test_nothing_against_a_lift_leaves_the_weight() -> None:
    assert reduced_weight(15, []) == reduced_weight(15, [0]) == 15
    assert lift_verdict(8, 8, 8) == "alone"
    assert lift_verdict(8.1, 8, 8) == "help"


@given(reach=st.floats(250, 600), more=st.floats(1.01, 1.05), mass=st.floats(0.5, 50))
def test_farther_reach_leaves_less_and_index_counts_the_mass(reach: float, more: float, mass: float) -> None:
    near, far = (recommended_weight(**(_BEST | {"horizontal_mm": at})) for at in (reach, reach * more))
    assert far < near
    assert lifting_index(mass, near) * near == pytest.approx(mass)
