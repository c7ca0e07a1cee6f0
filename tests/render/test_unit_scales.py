"""Every unit in which a figure may be printed has the size that the units library gives it."""

from decimal import Decimal
from fractions import Fraction
from typing import Any, get_args

import pint
import pytest

from tailtrue.parts import Dials, Rounding
from tailtrue.render import numbers

_REGISTRY: Any = pint.UnitRegistry(non_int_type=Fraction)
# How the library spells what stands on paper. A turn is a count here and an angle there.
_SPELT = {
    "rev/min": "1/min", "mm/rev": "mm", "in/rev": "inch", "in": "inch", "N m": "N*m", "N mm": "N*mm", "lbf in": "lbf*inch",
    "°C": "degC", "°F": "degF",
}  # fmt: skip
_SCALES = [
    pytest.param(style.canonical, style.scale(dials), id=f"{rounding}-{dials}")
    for rounding, style in numbers._STYLES.items()
    for dials in get_args(Dials)
]


def _unit(spelling: str) -> Any:
    plain = spelling.replace(numbers.NBSP, " ")
    return _REGISTRY.parse_units(_SPELT.get(plain, plain))


@pytest.mark.parametrize(("canonical", "scale"), _SCALES)
@pytest.mark.parametrize("printed", [0, 1, 212])
def test_a_printed_unit_is_as_large_as_the_library_says(canonical: str, scale: Any, printed: int) -> None:
    # What is printed as so many units is (so many - zero) sizes of the canonical unit.
    inside = _REGISTRY.Quantity(Fraction(printed), _unit(scale.unit)).to(_unit(canonical)).magnitude
    assert float((Decimal(printed) - scale.zero_at) * scale.size) == pytest.approx(float(inside), rel=1e-12)


def test_no_way_of_printing_is_left_out() -> None:
    # The ways that have no unit of their own print the canonical one.
    assert set(get_args(Rounding)) - set(numbers._STYLES) == {"time", "angle", "count", "ratio"}
