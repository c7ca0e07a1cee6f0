"""Tables never reach past their ends."""

import pytest

from tailtrue.tables import NoRow, Row, Table, Uses

ROWS = [("10", "20", "a"), ("20", "30", "b")]


def table(uses: Uses | None = None, source: str = "book:p. 1; memory") -> Table:
    rows = tuple(
        Row("demo", line, {"over_mm": low, "upto_mm": high, "value": value, "source": source, "gap": ""})
        for line, (low, high, value) in enumerate(ROWS, start=2)
    )
    made = Table("demo", rows)
    return made.noting(uses) if uses is not None else made


@pytest.mark.parametrize(
    ("value", "ends", "found"), [(20, "(]", "a"), (20, "[)", "b"), (10.1, "(]", "a"), (29.9, "[)", "b")]
)
def test_ends_of_an_interval(value: float, ends: str, found: str) -> None:
    assert table().within(value, "over_mm", "upto_mm", ends=ends).text("value") == found


@pytest.mark.parametrize("value", [10, 9.9, 30.1, -1])
def test_no_row_beyond_the_ends(value: float) -> None:
    with pytest.raises(NoRow) as refused:
        table().within(value, "over_mm", "upto_mm")
    assert "rows are 10 to 20; 20 to 30" in refused.value.told
    assert str(refused.value) == f"{refused.value.table}: {refused.value.told}"


def test_a_cell_that_lists_names_is_found_by_each_of_them_and_by_no_part_of_one() -> None:
    listing = Table("demo", (Row("demo", 2, {"tool": "HSS; coated carbide", "feed": "0.1"}),))
    assert listing.one(tool="HSS").number("feed") == listing.one(tool="coated carbide").number("feed") == 0.1
    assert listing.rows[0].listed("tool") == ("HSS", "coated carbide")
    for other in ("carbide", "HS", "; ", ""):
        assert not listing.where(tool=other)


def test_names_that_two_rows_list_are_not_chosen_between() -> None:
    rows = tuple(Row("demo", line, {"tool": tool}) for line, tool in ((2, "HSS; carbide"), (3, "carbide")))
    with pytest.raises(NoRow, match="more than one row for tool carbide"):
        Table("demo", rows).one(tool="carbide")


def test_an_empty_cell_is_not_nought() -> None:
    with pytest.raises(NoRow, match="gap is not known"):
        table().one(value="a").number("gap")


def test_a_row_that_was_taken_gives_its_sources_and_a_row_that_was_looked_at_does_not() -> None:
    uses = Uses()
    noted = table(uses)
    assert [row.text("value") for row in noted] == ["a", "b"]
    assert uses.sources() == ()
    noted.one(value="b")
    assert uses.sources() == ("book", "memory")


BY_COLUMN = "book [value]; chart + common-practice [upto_mm]; memory [*]"


def test_only_the_cells_that_were_read_give_their_sources() -> None:
    uses = Uses()
    table(uses, BY_COLUMN).one(over_mm="10").text("value")
    assert uses.sources() == ("book",)


def test_the_ends_of_an_interval_are_read_with_the_row_that_they_choose() -> None:
    uses = Uses()
    table(uses, BY_COLUMN).within(15, "over_mm", "upto_mm").text("value")
    assert set(uses.sources()) == {"book", "chart", "common-practice", "memory"}


def test_a_row_that_was_taken_and_never_read_gives_all_its_sources() -> None:
    uses = Uses()
    table(uses, BY_COLUMN).one(over_mm="10")
    assert uses.sources() == ("book", "chart", "common-practice", "memory")


def test_a_cell_may_be_read_before_its_row_is_taken() -> None:
    uses = Uses()
    noted = table(uses, BY_COLUMN)
    best = max(noted, key=lambda row: row.text("value"))
    noted.take(best)
    assert uses.sources() == ("book",)


def test_one_row_means_one() -> None:
    with pytest.raises(NoRow, match="no row for value c"):
        table().one(value="c")
