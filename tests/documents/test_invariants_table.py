"""The page of invariants is the one that the table and the tests make, and leaves none out."""

from tailtrue.inspection import RULES

from . import invariants_table


def test_the_page_is_not_stale() -> None:
    made = invariants_table.page()
    told = "run: .venv/bin/python tests/documents/invariants_table.py"
    assert invariants_table.PAGE.read_text(encoding="utf-8") == made, told


def test_every_invariant_has_a_test_and_a_source() -> None:
    rows = invariants_table.rows()
    assert [row["id"] for row in rows] == [f"V{number:02}" for number in range(1, 57)]
    assert set(invariants_table.tests()) == {row["id"] for row in rows}
    assert all(row["holds"] and row["source"] and row["papers"] for row in rows)
    assert all(row["kept"] == "yes" or row["kept"].startswith("yes, ") for row in rows)


def test_every_rule_that_is_named_is_a_rule() -> None:
    known = {rule.id for rule in RULES}
    assert {name for row in invariants_table.rows() for name in row["rules"].split()} <= known
