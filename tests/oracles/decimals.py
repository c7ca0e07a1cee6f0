"""Whole steps and whole numbers of cuts: decimal numbers, which have no binary dust to allow for."""

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_DOWN, Decimal

from oracles.registry import oracle

_PROGRAM = "decimal: exact arithmetic"


def _exact(value: float) -> Decimal:
    return Decimal(repr(value))


def _steps(value: Decimal, step: float, rounding: str) -> Decimal:
    return (value / _exact(step)).to_integral_value(rounding=rounding)


def _down(value: Decimal, step: float) -> Decimal:
    return _steps(value, step, ROUND_FLOOR) * _exact(step)


def _up(value: Decimal, step: float) -> Decimal:
    return _steps(value, step, ROUND_CEILING) * _exact(step)


@oracle("steps.step_down", _PROGRAM)
def step_down(value_mm: float, step_mm: float) -> float:
    return float(_down(_exact(value_mm), step_mm))


@oracle("steps.step_up", _PROGRAM)
def step_up(value_mm: float, step_mm: float) -> float:
    return float(_up(_exact(value_mm), step_mm))


@oracle("steps.steps_in", _PROGRAM)
def steps_in(value_mm: float, step_mm: float) -> int:
    return int(_steps(_exact(value_mm), step_mm, ROUND_FLOOR))


@oracle("steps.surely_less", _PROGRAM)
def surely_less(whole_mm: float, doubt_mm: float, step_mm: float) -> float:
    left = _down(_exact(whole_mm), step_mm) - _up(_exact(doubt_mm), step_mm)
    return float(left if left > 0 else _exact(whole_mm) - _exact(doubt_mm))


@oracle("steps.equal_cut", _PROGRAM)
def equal_cut(stock_on_diameter_mm: float, passes: int, step_mm: float) -> float:
    return float(max(_exact(step_mm), _down(_exact(stock_on_diameter_mm) / 2 / passes, step_mm)))


@oracle("steps.finishing_cut", _PROGRAM)
def finishing_cut(stock_on_diameter_mm: float, passes: float, step_mm: float) -> float:
    return float(_up(_exact(stock_on_diameter_mm) / 2 / _exact(passes), step_mm))


@oracle("cutting.passes_for_stock", _PROGRAM)
def passes_for_stock(stock_on_diameter_mm: float, depth_mm: float) -> int:
    return max(1, int(_steps(_exact(stock_on_diameter_mm) / 2, depth_mm, ROUND_CEILING)))


@oracle("boring_passes.boring_passes", _PROGRAM)
def boring_passes(from_mm: float, to_mm: float, depth_mm: float) -> int:
    return max(1, int(_steps((_exact(to_mm) - _exact(from_mm)) / 2, depth_mm, ROUND_CEILING)))


@oracle("alignment.uses_left", _PROGRAM)
def uses_left(diameter_mm: float, least_diameter_mm: float, diameter_per_use_mm: float) -> int:
    return max(0, int(_steps(_exact(diameter_mm) - _exact(least_diameter_mm), diameter_per_use_mm, ROUND_FLOOR)))


@oracle("rework.light_cuts", _PROGRAM)
def light_cuts(least_mm: float, low_mm: float, high_mm: float, depth_mm: float) -> int:
    short = ((_exact(low_mm) + _exact(high_mm)) / 2 - _exact(least_mm)) / 2
    return max(0, int(_steps(short, depth_mm, ROUND_CEILING)))


@oracle("fits.bore_window", _PROGRAM)
def bore_window(
    measured_least_mm: float, measured_largest_mm: float, least_gap_mm: float, largest_gap_mm: float,
    gauge_uncertainty_mm: float, step_mm: float,
) -> tuple[float, float]:  # fmt: skip
    low = _exact(measured_largest_mm) + _exact(least_gap_mm) + _exact(gauge_uncertainty_mm)
    high = _exact(measured_least_mm) + _exact(largest_gap_mm) - _exact(gauge_uncertainty_mm)
    return float(_up(low, step_mm)), float(_down(high, step_mm))


@oracle("fits.bore_target", _PROGRAM)
def bore_target(low_mm: float, high_mm: float, step_mm: float) -> float:
    return float(_steps((_exact(low_mm) + _exact(high_mm)) / 2, step_mm, ROUND_HALF_DOWN) * _exact(step_mm))


@oracle("spindle.choose_from_range", _PROGRAM)
def choose_from_range(
    low_per_min: float, high_per_min: float, step_per_min: float, wanted_per_min: float, cap_per_min: float
) -> float:
    most = min(map(_exact, (wanted_per_min, cap_per_min, high_per_min)))
    return float(max(_exact(low_per_min), _down(most, step_per_min)))
