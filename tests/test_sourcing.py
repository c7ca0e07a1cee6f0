"""A source cell says what stands behind which column, and whoever writes it wrong is told."""

import pytest

from tailtrue.sourcing import source_cell

COLUMNS = ("name", "low", "high", "source", "checked_on", "note")
NUMBERS = ("low", "high")


def test_without_columns_every_source_stands_behind_the_whole_row() -> None:
    cell = source_cell("handbook:p. 12; common-practice")
    assert cell.keys == cell.keys_of("low") == cell.keys_of("name") == ("handbook", "common-practice")
    assert not cell.by_column


def test_a_column_has_the_sources_that_are_named_for_it() -> None:
    cell = source_cell("handbook:table 3, p. 12 [low]; maker + course:sheet 2 [high]; memory [*]")
    assert cell.keys_of("low") == ("handbook",)
    assert cell.keys_of("high") == ("maker", "course")
    assert cell.keys_of("name") == ("memory",)
    assert cell.keys == ("handbook", "maker", "course", "memory")


def test_what_no_source_is_named_for_hangs_on_all_of_them() -> None:
    assert source_cell("handbook [low]; memory [high]").keys_of("name") == ("handbook", "memory")


def test_one_source_may_stand_behind_two_columns_from_two_places() -> None:
    cell = source_cell("handbook:p. 12 [low]; handbook:p. 13 [high]")
    assert cell.keys == ("handbook",)
    assert not list(cell.faults(NUMBERS, COLUMNS))


@pytest.mark.parametrize(
    "written",
    [
        "handbook",
        "handbook; memory",
        "handbook [low, high]",
        "handbook [low]; memory [high]",
        "handbook [low]; memory [*]",
        "handbook [low]; handbook + memory [high]",
        "handbook [low, high]; memory [name]",
    ],
)
def test_a_cell_that_is_whole_has_no_fault(written: str) -> None:
    assert not list(source_cell(written).faults(NUMBERS, COLUMNS))


@pytest.mark.parametrize(
    ("written", "wrong"),
    [
        ("handbook [low]; memory [low, high]", "column 'low' is named twice"),
        ("handbook [low, low, high]", "column 'low' is named twice"),
        ("handbook [*]; memory [*]", "column '*' is named twice"),
        ("handbook [low]; handbook [high]", "source 'handbook' is named twice: write its columns together"),
        ("handbook [lwo]; memory [*]", "no column is named 'lwo'"),
        ("handbook [low, high, source]", "no column is named 'source'"),
        ("handbook [low, high, note]", "no column is named 'note'"),
        ("handbook []; memory [*]", "no column is named ''"),
        ("handbook [low]", "column 'high' has no source"),
        ("handbook [name]; memory [low]", "column 'high' has no source"),
        ("handbook; memory [*]", "source 'handbook' says no columns, and others do"),
        ("[low]; memory [*]", "no source before [low]"),
        ("handbook [low, high, name]; memory [*]", "[*] stands for no column: every one is named"),
    ],
)
def test_a_fault_of_a_cell_is_told(written: str, wrong: str) -> None:
    assert wrong in list(source_cell(written).faults(NUMBERS, COLUMNS))


@pytest.mark.parametrize("written", ["handbook [low", "handbook low]", "handbook [low] [high]", "handbook [lo[w]"])
def test_a_bracket_that_does_not_close_makes_no_source(written: str) -> None:
    """It stays part of the key, and no source has such a key."""
    assert any("[" in key or "]" in key for key in source_cell(written).keys)
