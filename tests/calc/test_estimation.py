"""Causes estimated from readings: what was planted is found, and what no reading can tell is not made up."""

from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import lsq_linear
from scipy.stats import chi2

from simulated_lathe import SimulatedLathe
from tailtrue.calc.causes import (
    HEADSTOCK_YAW,
    PATH_LEAN,
    TAILSTOCK_OFFSET,
    between_centres_row,
    chucked_row,
    level_row,
    sweep_row,
)
from tailtrue.calc.estimation import Fit, Reading
from tailtrue.calc.further_tests import NextTest
from tailtrue.calc.validity import OutOfRange

_CHUCKED = [20.0, 95.0, 170.0]
_CENTRES = [30.0, 150.0, 270.0]
_SURE = 0.0015
_LEVEL_SURE = 0.02


def _readings(lathe: SimulatedLathe, *, chucked: bool = True, centres: bool = True, level: bool = True) -> list[Reading]:
    side = "front" if lathe.tool_in_front else "rear"
    found = []
    if chucked:
        cut = lathe.diameters_chucked(_CHUCKED)
        found += [Reading(chucked_row(z, side), d - 70, _SURE) for z, d in zip(_CHUCKED, cut, strict=True)]
    if centres:
        cut = lathe.diameters_between_centres(300, _CENTRES)
        found += [Reading(between_centres_row(z, 300, side), d - 70, _SURE) for z, d in zip(_CENTRES, cut, strict=True)]
    if level:
        found.append(Reading(level_row(500, 150), lathe.level(600) - lathe.level(100), _LEVEL_SURE))
    return found


def _alone(name: str) -> dict[str, float]:
    return {name: 1.0}


@settings(max_examples=40)
@given(
    yaw=st.floats(-2e-4, 2e-4),
    twist=st.floats(-1e-6, 1e-6),
    offset=st.floats(-0.1, 0.1),
    front=st.booleans(),
)
def test_planted_causes_are_found_on_either_side(yaw: float, twist: float, offset: float, front: bool) -> None:
    lathe = SimulatedLathe(yaw=yaw, twist=twist, offset=offset, tool_in_front=front)
    fit = Fit.of(_readings(lathe))
    assert fit.not_told_apart == 0
    # Without noise only effects of the second order are left, far below a micrometre.
    assert fit.estimate(_alone(HEADSTOCK_YAW)).value == pytest.approx(yaw, abs=3e-7)
    assert fit.estimate(_alone(PATH_LEAN)).value == pytest.approx(150 * twist, abs=3e-7)
    assert fit.estimate(_alone(TAILSTOCK_OFFSET)).value == pytest.approx(offset, abs=1e-4)


def test_planted_causes_lie_within_their_uncertainty_as_often_as_it_says() -> None:
    planted = {HEADSTOCK_YAW: 15e-6, PATH_LEAN: 60e-6, TAILSTOCK_OFFSET: -0.025}
    hand = np.random.default_rng(20240101)
    exact = _readings(SimulatedLathe(yaw=15e-6, twist=0.4e-6, offset=-0.025))
    scaled, squares = [], []
    for _ in range(400):
        noisy = [one._replace(value=one.value + hand.normal(0, one.standard_uncertainty)) for one in exact]
        fit = Fit.of(noisy)
        squares.append(fit.chi_squared)
        for name, value in planted.items():
            found = fit.estimate(_alone(name))
            scaled.append((found.value - value) / found.standard_uncertainty)
    # Standard normal: mean 0 and standard deviation 1 within five of their own standard errors.
    assert abs(np.mean(scaled)) < 5 / sqrt(400)
    assert np.std(scaled) == pytest.approx(1, abs=0.1)
    assert np.mean(np.abs(scaled) < 2) == pytest.approx(0.954, abs=0.03)
    # Two readings more than unknowns: the mean of chi squared is 2.
    assert np.mean(squares) == pytest.approx(2, abs=0.5)


@settings(max_examples=60)
@given(
    stations=st.lists(
        st.floats(0, 1).filter(lambda place: place == 0 or place > 1e-200), min_size=2, max_size=8, unique=True
    ),
    span=st.floats(150, 600),
    side=st.sampled_from(["front", "rear"]),
)
def test_readings_between_centres_alone_never_tell_yaw_or_lean(stations: list[float], span: float, side: str) -> None:
    readings = [Reading(between_centres_row(share * span, span, side), 0.01, _SURE) for share in stations]
    fit = Fit.of(readings, against=[PATH_LEAN])
    assert not fit.sees(_alone(HEADSTOCK_YAW))
    assert not fit.sees(_alone(PATH_LEAN))
    assert not fit.sees(_alone(TAILSTOCK_OFFSET))
    with pytest.raises(OutOfRange, match=r"^no reading sees headstock yaw; the readings see "):
        fit.estimate(_alone(HEADSTOCK_YAW))
    with pytest.raises(OutOfRange, match=r"^the readings do not settle path lean; another kind of test is needed$"):
        fit.estimate(_alone(PATH_LEAN))


def test_between_centres_only_the_offset_from_the_path_is_settled() -> None:
    fit = Fit.of(_readings(SimulatedLathe(offset=0.02), chucked=False, level=False), against=[PATH_LEAN])
    assert fit.combinations == (
        pytest.approx({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300}),
        pytest.approx({"setting between centres": 1}),
    )
    assert fit.blind == (pytest.approx({TAILSTOCK_OFFSET: 1, PATH_LEAN: 1 / 300}),)
    assert fit.estimate(fit.combinations[0]).value == pytest.approx(0.02, rel=1e-4)
    assert fit.estimates()[TAILSTOCK_OFFSET] is None
    assert fit.estimates()["setting between centres"] is not None


def test_without_a_level_yaw_lean_and_offset_may_grow_together_unseen() -> None:
    fit = Fit.of(_readings(SimulatedLathe(), level=False))
    assert fit.blind == (pytest.approx({HEADSTOCK_YAW: 1, PATH_LEAN: 1, TAILSTOCK_OFFSET: 300}),)
    # The same lathe but for that change gives the same readings.
    one = SimulatedLathe(yaw=20e-6, twist=0.1e-6, offset=0.01)
    other = SimulatedLathe(yaw=50e-6, twist=0.3e-6, offset=0.019)
    same = zip(_readings(one, level=False), _readings(other, level=False), strict=True)
    assert all(first.value == pytest.approx(second.value, abs=2e-5) for first, second in same)


def test_a_sweep_adds_nothing_to_chucked_and_between_centres_and_a_level_does() -> None:
    fit = Fit.of(_readings(SimulatedLathe(), level=False))
    found = NextTest.ranked(
        fit,
        {
            "sweep": [Reading(sweep_row(300), 0, 0.003)],
            "more collars": [Reading(between_centres_row(z, 300, "front"), 0, _SURE) for z in _CENTRES],
            "level": [Reading(level_row(500, 150), 0, 0.02)],
            "finer level": [Reading(level_row(500, 150), 0, 0.01)],
        },
        _alone(HEADSTOCK_YAW),
    )
    assert [(test.name, test.not_told_apart) for test in found] == [
        ("finer level", 0), ("level", 0), ("sweep", 1), ("more collars", 1),
    ]  # fmt: skip
    assert [test.standard_uncertainty is None for test in found] == [False, False, True, True]
    chuck = 0.0015 / sqrt(2) / 150
    assert found[0].standard_uncertainty == pytest.approx(sqrt(chuck**2 + (0.01 / 1000 * 150 / 500) ** 2))
    assert found[1].standard_uncertainty == pytest.approx(9.274e-6, rel=1e-4)


def test_the_next_test_is_the_one_that_leaves_the_wanted_surest() -> None:
    fit = Fit.of([Reading({"a": 1, "b": 1}, 1, 0.1)])
    found = NextTest.ranked(
        fit,
        {
            "b well": [Reading({"b": 1}, 0, 0.1)],
            "b poorly": [Reading({"b": 1}, 0, 1)],
            "the sum again": [Reading({"a": 1, "b": 1}, 0, 0.01)],
            "with a new unknown": [Reading({"a": 1, "c": 1}, 0, 0.01)],
        },
        {"a": 1},
    )
    assert found == (
        NextTest("b well", 0, pytest.approx(sqrt(0.02))),
        NextTest("b poorly", 0, pytest.approx(sqrt(1.01))),
        NextTest("the sum again", 1, None),
        NextTest("with a new unknown", 1, None),
    )


def test_a_test_may_bring_in_the_wanted_unknown() -> None:
    fit = Fit.of([Reading({"a": 1}, 1, 0.1)])
    assert not fit.sees({"b": 1})
    (found,) = NextTest.ranked(fit, {"both": [Reading({"a": 1, "b": 1}, 0, 0.1)]}, {"b": 1})
    assert found == NextTest("both", 0, pytest.approx(sqrt(0.02)))


@settings(max_examples=60)
@given(st.data())
def test_a_further_reading_never_makes_an_estimate_less_sure(data: st.DataObject) -> None:
    lathe = SimulatedLathe()
    fit = Fit.of(_readings(lathe))
    station = data.draw(st.floats(0, 300))
    further = Reading(between_centres_row(station, 300, "front"), 0, data.draw(st.floats(1e-4, 1)))
    more = Fit.of([*_readings(lathe), further])
    for name, estimate in fit.estimates().items():
        after = more.estimate(_alone(name)).standard_uncertainty
        assert estimate is not None
        assert after <= estimate.standard_uncertainty * (1 + 1e-9)


@settings(max_examples=60)
@given(
    values=st.lists(st.floats(-0.1, 0.1), min_size=7, max_size=7),
    sure=st.lists(st.floats(5e-4, 5e-3), min_size=7, max_size=7),
)
def test_agrees_with_another_least_squares_routine(values: list[float], sure: list[float]) -> None:
    readings = [
        one._replace(value=value, standard_uncertainty=u)
        for one, value, u in zip(_readings(SimulatedLathe()), values, sure, strict=True)
    ]
    fit = Fit.of(readings)
    # Slopes in micrometres for each millimetre, so that the other routine meets columns of like size.
    size = [1e3 if name in (HEADSTOCK_YAW, PATH_LEAN) else 1.0 for name in fit.unknowns]
    rows = np.array([[one.row.get(name, 0) for name in fit.unknowns] for one in readings]) / size
    weight = 1 / np.array(sure)
    other = lsq_linear(rows * weight[:, None], np.array(values) * weight, method="bvls")
    covariance = np.linalg.inv((rows * weight[:, None] ** 2).T @ rows)
    for index, name in enumerate(fit.unknowns):
        found = fit.estimate(_alone(name))
        assert found.value * size[index] == pytest.approx(other.x[index], rel=1e-6, abs=1e-9)
        assert found.standard_uncertainty * size[index] == pytest.approx(sqrt(covariance[index, index]), rel=1e-6)
        both = fit.covariance(_alone(name), _alone(PATH_LEAN)) * size[index] * 1e3
        assert both == pytest.approx(covariance[index, fit.unknowns.index(PATH_LEAN)], rel=1e-6, abs=1e-15)
    assert fit.chi_squared == pytest.approx(2 * other.cost, rel=1e-6, abs=1e-9)
    assert sum(part**2 for part in fit.residuals) == pytest.approx(fit.chi_squared)


@settings(max_examples=30)
@given(offset=st.floats(-0.1, 0.1), yaw=st.floats(-1e-4, 1e-4))
def test_inches_and_millimetres_give_the_same_lathe(offset: float, yaw: float) -> None:
    metric = _readings(SimulatedLathe(offset=offset, yaw=yaw), level=False)
    inch = [
        Reading(row, one.value / 25.4, one.standard_uncertainty / 25.4)
        for row, one in zip(
            [chucked_row(z / 25.4, "front") for z in _CHUCKED]
            + [between_centres_row(z / 25.4, 300 / 25.4, "front") for z in _CENTRES],
            metric,
            strict=True,
        )
    ]
    one, other = Fit.of(metric, against=[PATH_LEAN]), Fit.of(inch, against=[PATH_LEAN])
    assert (one.rank, one.unknowns) == (other.rank, other.unknowns)
    assert one.singular_values == pytest.approx(other.singular_values, rel=1e-9, abs=1e-12)
    assert one.chi_squared == pytest.approx(other.chi_squared, rel=1e-6, abs=1e-12)
    slope = {HEADSTOCK_YAW: 1, PATH_LEAN: -1}
    assert one.estimate(slope) == pytest.approx(other.estimate(slope), rel=1e-6, abs=1e-12)
    found = other.estimate({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300 / 25.4})
    assert one.estimate({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300}).value == pytest.approx(25.4 * found.value, abs=1e-9)


def test_chance_of_worse_is_that_of_chi_squared() -> None:
    fit = Fit.of([Reading({"a": 1}, value, 0.1) for value in (1.0, 1.2, 0.7)])
    assert fit.degrees_of_freedom == 2
    assert fit.chi_squared == pytest.approx(12.6666667)
    assert fit.chance_of_worse() == pytest.approx(chi2.sf(12.6666667, 2))
    assert fit.residuals == pytest.approx([1 / 3, 7 / 3, -8 / 3])
    assert Fit.of([Reading({"a": 1}, 1, 0.1)]).chance_of_worse() is None


def test_the_surer_reading_weighs_more() -> None:
    fit = Fit.of([Reading({"a": 1}, 0, 1), Reading({"a": 1}, 5, 0.5)])
    assert fit.estimate({"a": 1}) == pytest.approx((4, sqrt(0.2)))


def test_condition_tells_how_well_causes_are_told_apart() -> None:
    assert Fit.of([Reading({"a": 1}, 0, 1), Reading({"b": 1}, 0, 1)]).condition == pytest.approx(1)
    near = Fit.of([Reading({"a": 1, "b": 1}, 0, 1), Reading({"a": 1, "b": 1.01}, 0, 1)])
    assert near.rank == 2
    assert near.condition > 100
    # A direction that is not seen does not count: the sum alone is told as well as can be.
    assert Fit.of([Reading({"a": 1, "b": 1}, 0, 1)]).condition == pytest.approx(1)


def test_unknowns_stand_in_the_order_met_and_those_told_against_last() -> None:
    readings = [Reading({"a": 1, "b": 2, "c": 0}, 1, 1), Reading({"d": 1}, 1, 1)]
    assert Fit.of(readings).unknowns == ("a", "b", "d")
    assert Fit.of(readings, against=["a", "a", "z"]).unknowns == ("b", "d", "a")
    assert Fit.of(readings, against=["a"]).combinations == (pytest.approx({"b": 1, "a": 0.5}), pytest.approx({"d": 1}))


@pytest.mark.parametrize(
    ("readings", "message"),
    [
        ([], "there are no readings"),
        ([Reading({"a": 1}, float("nan"), 1)], "reading is nan; it must be a finite number"),
        ([Reading({"a": 1}, 1, 0)], "standard uncertainty of a reading is 0; it must be more than 0"),
        ([Reading({"a": 1}, 1, float("inf"))], "standard uncertainty of a reading is inf"),
        ([Reading({"a": float("inf")}, 1, 1)], "factor of a is inf"),
        ([Reading({"a": 0.0}, 1, 1)], "row of a reading is all 0"),
        ([Reading({"a": 5e-324}, 1, 10)], "row of a reading is all 0"),
        ([Reading({"a": 1e308}, 1, 1e-10)], "factor of a is inf"),
        ([Reading({"a": 1}, 1e308, 1e-10)], "reading is inf"),
        ([Reading({}, 1, 1)], "row of a reading is all 0"),
    ],
)
def test_unsound_readings_are_refused(readings: list[Reading], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        Fit.of(readings)


def test_lengths_that_differ_by_rounding_alone_tell_nothing_apart() -> None:
    readings = _readings(SimulatedLathe(), level=False)
    rounded = Fit.of([*readings, Reading(sweep_row(300 * (1 + 1e-8)), 0, 0.003)], against=[PATH_LEAN])
    assert rounded.not_told_apart == 1
    assert rounded.sees({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300})
    assert rounded.sees({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300 * (1 + 1e-8)})
    assert not rounded.sees({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300 * (1 + 1e-3)})
    assert [set(row) for row in rounded.combinations if len(row) > 1] == [
        {HEADSTOCK_YAW, PATH_LEAN},
        {TAILSTOCK_OFFSET, PATH_LEAN},
    ]
    assert Fit.of([*readings, Reading(sweep_row(330), 0, 0.003)]).not_told_apart == 0


def test_a_factor_without_an_inverse_is_not_seen() -> None:
    assert Fit.of([Reading({"a": 1, "b": 9.9e-301}, 1, 1)]).unknowns == ("a",)
    assert Fit.of([Reading({"a": 1, "b": -1e-300}, 1, 1)]).unknowns == ("a", "b")
    assert Fit.of([Reading({"a": 1, "b": 1e-295}, 1, 1e10)]).unknowns == ("a",)
    with pytest.raises(OutOfRange, match=r"^row of a reading is all 0"):
        Fit.of([Reading({"b": 5e-324}, 1, 1)])


def test_each_unknown_by_itself_is_the_combination_of_it_alone() -> None:
    fit = Fit.of([Reading({"a": 2}, 3, 0.5), Reading({"b": 1, "c": 1}, 1, 1)])
    assert fit.estimates() == {"a": fit.estimate({"a": 1}), "b": None, "c": None}
    assert fit.estimates()["a"] == pytest.approx((1.5, 0.25))


def test_a_place_that_hardly_matters_does_no_harm() -> None:
    fit = Fit.of([Reading({"a": 1, "b": 0.0}, 1, 1), Reading({"a": 1, "b": 1e-300}, 1, 1)])
    assert (fit.unknowns, fit.rank) == (("a", "b"), 2)
    assert fit.estimate({"a": 1}) == pytest.approx((1, 1))


def test_an_unsound_combination_is_refused() -> None:
    fit = Fit.of([Reading({"a": 1, "b": 1}, 1, 1)])
    with pytest.raises(OutOfRange, match=r"^combination is empty; it must name an unknown"):
        fit.sees({})
    with pytest.raises(OutOfRange, match=r"^combination is empty"):
        fit.estimate({"a": 0.0})
    with pytest.raises(OutOfRange, match=r"^factor of a is nan"):
        fit.estimate({"a": float("nan")})
    with pytest.raises(OutOfRange, match=r"^no reading sees c, d; the readings see a, b$"):
        fit.covariance({"a": 1, "b": 1}, {"d": 1, "c": 1})
    with pytest.raises(OutOfRange, match=r"^the readings do not settle a; another kind of test is needed$"):
        fit.estimate({"a": 1, "b": 0})
