"""Rating on the declared matrix, against rows worked by hand."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.advise import knowledge
from tailtrue.assemble.rating import HIERARCHY, band_of, rated_after, rating
from tailtrue.review import Control, Level

MATRIX = knowledge().safety.matrix

# Six hazards of this trade worked by hand on a five by five matrix: severity, likelihood, score, class. The class bounds
# 1-4, 5-9, 10-16, 17-25 and the word "moderate" for a rare death are our convention; the products are arithmetic.
WORKED = [
    (4, 4, 16, "high"), (5, 4, 20, "extreme"), (4, 3, 12, "high"), (5, 3, 15, "high"), (5, 2, 10, "high"),
    (4, 1, 4, "low"), (5, 1, 5, "moderate"), (4, 2, 8, "moderate"), (1, 5, 5, "moderate"), (2, 2, 4, "low"),
    (5, 5, 25, "extreme"), (3, 3, 9, "moderate"), (1, 1, 1, "low"),
]  # fmt: skip

# Likelihood before and after by hand: what counts, and what is left.
LOWERED: list[tuple[int, int, tuple[Level, ...], int]] = [
    (5, 4, ("eliminate", "instruct"), 1),  # bar sawn short: two steps, and one
    (4, 4, ("guard", "instruct"), 2),  # bar in the vice of the saw
    (5, 3, ("instruct",), 2),  # tailstock left loose: an instruction alone
    (5, 3, ("substitute", "instruct"), 1),  # safety dog
    (5, 2, ("instruct", "protect"), 2),  # grave, and nothing but words and glasses: unlikely is the floor
    (3, 3, ("instruct", "protect"), 1),  # not grave: no floor
    (5, 1, ("instruct",), 1),  # rare already: a floor never raises
    (4, 3, (), 3),
    (2, 4, ("guard", "guard"), 3),  # each kind once
]


@pytest.mark.parametrize(("severity", "likelihood", "score", "band"), WORKED)
def test_score_and_class_are_those_worked_by_hand(severity: int, likelihood: int, score: int, band: str) -> None:
    made = rating(MATRIX, severity, likelihood)
    assert (made.score, made.band) == (score, band)


@pytest.mark.parametrize(("severity", "likelihood", "kinds", "left"), LOWERED)
def test_controls_lower_the_likelihood_as_worked_by_hand(
    severity: int, likelihood: int, kinds: tuple[Level, ...], left: int
) -> None:
    controls = [Control(level=kind, text="so", state="counted") for kind in kinds]
    after = rated_after(MATRIX, rating(MATRIX, severity, likelihood), controls)
    assert (after.severity, after.likelihood) == (severity, left)


controls = st.lists(
    st.builds(
        Control,
        level=st.sampled_from(HIERARCHY),
        text=st.just("so"),
        state=st.sampled_from(["counted", "to-see", "not-here"]),
    )
)
scale = st.integers(1, 5)


@given(scale, scale, controls)
def test_no_control_makes_it_worse_or_less_severe(severity: int, likelihood: int, some: list[Control]) -> None:
    before = rating(MATRIX, severity, likelihood)
    after = rated_after(MATRIX, before, some)
    assert after.severity == before.severity
    assert 1 <= after.likelihood <= before.likelihood
    assert after.score <= before.score


@given(scale, scale, controls, controls)
def test_a_further_control_never_raises_what_is_left(
    severity: int, likelihood: int, some: list[Control], more: list[Control]
) -> None:
    before = rating(MATRIX, severity, likelihood)
    assert rated_after(MATRIX, before, [*some, *more]).score <= rated_after(MATRIX, before, some).score


@given(scale, scale, controls)
def test_what_is_not_counted_changes_nothing(severity: int, likelihood: int, some: list[Control]) -> None:
    before = rating(MATRIX, severity, likelihood)
    counted = [one for one in some if one.state == "counted"]
    assert rated_after(MATRIX, before, some) == rated_after(MATRIX, before, counted)


@given(scale, scale)
def test_words_and_glasses_alone_take_off_one_step_each_at_most(severity: int, likelihood: int) -> None:
    before = rating(MATRIX, severity, likelihood)
    instruct = Control(level="instruct", text="so", state="counted")
    protect = Control(level="protect", text="so", state="counted")
    assert rated_after(MATRIX, before, [instruct]).likelihood >= likelihood - 1
    assert rated_after(MATRIX, before, [protect]).likelihood >= likelihood - 1


def test_what_kills_is_never_low_and_a_worse_cell_has_no_milder_class() -> None:
    order = ["low", "moderate", "high", "extreme"]
    assert all(band_of(MATRIX, 5, likelihood) != "low" for likelihood in range(1, 6))
    for severity, likelihood in product(range(1, 6), range(1, 5)):
        here, worse = band_of(MATRIX, severity, likelihood), band_of(MATRIX, severity, likelihood + 1)
        assert order.index(here) <= order.index(worse)
