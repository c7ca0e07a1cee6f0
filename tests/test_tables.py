"""Tables never reach past their ends."""

import pytest

from tailtrue.tables import NoRow, Row, Table

ROWS = [("10", "20", "a"), ("20", "30", "b")]


def table(used: list[Row] | None = None) -> Table:
    rows = tuple(
        Row("demo", line, {"over_mm": low, "upto_mm": high, "value": value, "source": "book:p. 1; memory", "gap": ""})
        for line, (low, high, value) in enumerate(ROWS, start=2)
    )
    made = Table("demo", rows)
    return made.noting(used.append) if used is not None else made


@pytest.mark.parametrize(
    ("value", "ends", "found"), [(20, "(]", "a"), (20, "[)", "b"), (10.1, "(]", "a"), (29.9, "[)", "b")]
)
def test_ends_of_an_interval(value: float, ends: str, found: str) -> None:
    assert table().within(value, "over_mm", "upto_mm", ends=ends).text("value") == found


@pytest.mark.parametrize("value", [10, 9.9, 30.1, -1])
def test_no_row_beyond_the_ends(value: float) -> None:
    with pytest.raises(NoRow) as refused:
        table().within(value, "over_mm", "upto_mm")
    assert "rows are 10 to 20; 20 to 30" in str(refused.value)


def test_an_empty_cell_is_not_nought() -> None:
    with pytest.raises(NoRow, match="gap is not known"):
        table().one(value="a").number("gap")


def test_rows_that_were_used_are_noted_with_their_sources() -> None:
    used: list[Row] = []
    table(used).one(value="b")
    assert [row.line for row in used] == [3]
    assert used[0].sources == ("book", "memory")


def test_one_row_means_one() -> None:
    with pytest.raises(NoRow, match="no row for value c"):
        table().one(value="c")
