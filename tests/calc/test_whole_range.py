"""Over the whole range in which a formula holds it gives a finite number of the right sign that goes the right way."""

import importlib
import inspect
import math
import pkgutil
from collections.abc import Mapping
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import tailtrue.calc
from laws import LAWS, WITHOUT_A_LAW
from laws.law import DOWN, FREE, UP, Law
from tailtrue.calc import drill_demand
from tailtrue.calc.validity import OutOfRange

_SLACK = 1e-9


def _value(law: Law, here: Mapping[str, float]) -> float:
    found = law.formula(**here)
    assert math.isfinite(found)
    assert law.least - _SLACK <= found <= law.most + _SLACK
    return found


def test_every_formula_has_a_law_or_a_reason_why_not() -> None:
    formulas = {
        f"{module.name}.{name}"
        for module in pkgutil.iter_modules(tailtrue.calc.__path__)
        if module.name != "validity"
        for name, member in vars(importlib.import_module(f"tailtrue.calc.{module.name}")).items()
        if inspect.isfunction(member) and not name.startswith("_") and member.__module__ == f"tailtrue.calc.{module.name}"
    }
    under_law = {name.split(":")[0] for name in LAWS}
    assert formulas == under_law | set(WITHOUT_A_LAW)
    assert not under_law & set(WITHOUT_A_LAW)


def test_every_argument_is_bounded_and_has_a_way_to_go() -> None:
    for name, law in LAWS.items():
        assert law.axes, name
        for low, high, goes in law.axes.values():
            assert math.isfinite(low), name
            assert math.isfinite(high), name
            assert low < high, name
            assert goes in (UP, DOWN, FREE), name


@pytest.mark.parametrize("law", LAWS.values(), ids=LAWS)
def test_every_corner_of_the_range_gives_a_number_and_a_hair_past_it_a_number_or_a_refusal(law: Law) -> None:
    every_corner_gives_a_number(law)
    a_hair_past_its_range_it_gives_a_number_or_refuses(law)


def every_corner_gives_a_number(law: Law) -> None:
    tried = 0
    for corner in product(*((low, high) for low, high, _ in law.axes.values())):
        here = dict(zip(law.axes, corner, strict=True))
        if law.together(here):
            _value(law, here)
            tried += 1
    assert tried


def a_hair_past_its_range_it_gives_a_number_or_refuses(law: Law) -> None:
    for corner in product(*((low, high) for low, high, _ in law.axes.values())):
        here = dict(zip(law.axes, corner, strict=True))
        for name, (low, high, _) in law.axes.items():
            away = -math.inf if here[name] == low else math.inf
            past = here | {name: math.nextafter(math.nextafter(here[name], away), away)}
            if low < high and law.together(past):
                try:
                    assert math.isfinite(law.formula(**past))
                except OutOfRange:
                    continue


@pytest.mark.parametrize("law", LAWS.values(), ids=LAWS)
@settings(max_examples=20)
@given(data=st.data())
def test_a_result_goes_the_right_way(law: Law, data: st.DataObject) -> None:
    here = {name: data.draw(st.floats(low, high), label=name) for name, (low, high, _) in law.axes.items()}
    if not law.together(here):
        return
    found = _value(law, here)
    for name, (_, high, goes) in law.axes.items():
        more = here | {name: data.draw(st.floats(here[name], high), label=f"more {name}")}
        if not law.together(more):
            continue
        change = _value(law, more) - found
        assert goes == FREE or goes * change >= -_SLACK * max(1, abs(found)), name


def test_a_law_that_is_wrong_is_noticed() -> None:
    wrong = Law(lambda size: 1 - size, {"size": (0, 1, UP)})
    with pytest.raises(AssertionError):
        test_a_result_goes_the_right_way.hypothesis.inner_test(wrong, _Halves())
    below = Law(lambda size: 0.5 - size, {"size": (0, 1, DOWN)})
    with pytest.raises(AssertionError):
        every_corner_gives_a_number(below)


def test_what_lies_past_a_range_is_refused_not_reckoned() -> None:
    with pytest.raises(OutOfRange):
        drill_demand.drill_demand(
            24000,
            24000,
            material_factor=2,
            feed_mm=1.26,
            diameter_mm=10,
            pilot_ratio=0,
            wear_factor=1.3,
            chisel_ratio=0.18,
            torque_factor=1.085,
            thrust_factor=1.355,
            chisel_thrust_factor=0.03,
        )


class _Halves:
    """Draws a quarter, then three quarters."""

    def __init__(self) -> None:
        self._next = iter((0.25, 0.75))

    def draw(self, _strategy: object, label: str = "") -> float:
        assert label
        return next(self._next)
