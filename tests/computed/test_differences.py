"""The differences that look-up tables list: the steps of their dials, without a gap and without one twice."""

from itertools import pairwise

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.differences import in_steps, of_instrument

TABLES = knowledge().tables
_TENTH = 0.00254  # mm in a tenth of a thousandth of an inch

# In thousandths of a millimetre, and in tenths of a thousandth of an inch.
_ON_THE_SHEET = {
    "metric": (0.001, (5, 10, 15, 20, 30, 40, 50, 60, 80, 100, 150, 200)),
    "inch": (_TENTH, (2, 4, 6, 8, 10, 15, 20, 30, 40, 60, 80, 100)),
}


@pytest.mark.parametrize("dials", _ON_THE_SHEET)
def test_the_table_of_the_sheet_lists_what_its_dials_show(dials: str) -> None:
    unit, wanted = _ON_THE_SHEET[dials]
    found = list(in_steps(TABLES["alignment/look_up_steps"].where(dials=dials)))
    assert found == pytest.approx([count * unit for count in wanted])


@pytest.mark.parametrize(
    ("dials", "reads", "first", "last"),
    [("metric", 0.001, 0.002, 0.2), ("metric", 0.003, 0.002, 0.2), ("metric", 0.01, 0.005, 0.2), ("metric", 0.02, 0.02, 0.2),
     ("inch", _TENTH, _TENTH, 0.2032), ("inch", 0.0127, 0.0127, 0.2032), ("inch", 0.0254, 0.0254, 0.2032)],
)  # fmt: skip
def test_the_record_goes_by_what_its_instrument_reads(dials: str, reads: float, first: float, last: float) -> None:
    rows = TABLES["record/look_up_steps"].where(dials=dials)
    found = list(in_steps(of_instrument(rows, reads)))
    assert (found[0], found[-1]) == pytest.approx((first, last))
    assert all(one < other for one, other in pairwise(found))
    steps = [round(other - one, 6) for one, other in pairwise(found)]
    assert steps == sorted(steps), "a coarser step is never followed by a finer one"


def test_an_instrument_that_is_coarser_than_all_has_no_table() -> None:
    assert not of_instrument(TABLES["record/look_up_steps"].where(dials="metric"), 0.06)


def test_rows_go_on_from_each_other() -> None:
    rows = TABLES["record/look_up_steps"].where(dials="metric", instrument_upto_mm="0.003")
    found = list(in_steps(rows))
    assert found[19:22] == [0.04, 0.045, 0.05]
    assert found[31:33] == [0.1, 0.11]
