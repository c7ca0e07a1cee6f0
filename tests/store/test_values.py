"""Where the values of the knowledge come from: counted number by number, the weakest source deciding."""

from dataclasses import replace

from tailtrue.advise import knowledge
from tailtrue.store.summary import summary, weighing_most
from tailtrue.store.values import Values, by_origin, numbers_in, origin_of, unconfirmed, values
from tailtrue.tables import Row, Table


def test_the_weakest_source_of_a_row_decides() -> None:
    assert origin_of(["handbook:p. 12"]) == "published"
    assert origin_of(["handbook:p. 12; common-practice"]) == "common_practice"
    assert origin_of(["common-practice", "memory", "handbook"]) == "memory"


def test_only_cells_with_a_number_are_values() -> None:
    cells = {
        "name": "H7",
        "low": "-0.5",
        "high": "1e-05",
        "open": "",
        "unit": "1",
        "source": "7",
        "checked_on": "2026-11-25",
        "note": "3",
    }
    assert numbers_in(Row("a/table", 2, cells)) == ("low", "high")


def test_each_number_of_a_row_counts_by_its_own_source() -> None:
    cells = {"low": "1", "high": "2", "step": "3", "source": "handbook [low]; handbook + common-practice [high]; memory [*]"}
    row = Row("some/table", 2, cells)
    whole = knowledge()
    some = (
        Values("some/table", "published", 1),
        Values("some/table", "common_practice", 1),
        Values("some/table", "memory", 1),
    )
    with_it = replace(whole, tables={**whole.tables, "some/table": Table("some/table", (row,))})
    assert tuple(one for one in values(with_it) if one.where == "some/table") == some


def test_every_number_is_counted_once_under_one_origin() -> None:
    counts = summary(knowledge())
    parts = [counts[f"values_{origin}"] for origin in ("published", "common_practice", "memory")]
    assert sum(parts) == counts["values"] == sum(one.count for one in values(knowledge()))
    assert all(part > 0 for part in parts)
    assert counts["table_rows"] == sum(len(table.rows) for table in knowledge().tables.values())


def test_a_limit_and_a_bound_in_a_rule_are_values_too() -> None:
    where = {one.where for one in values(knowledge()) if one.count}
    assert {"limits", "rules", "machines", "cutting/speeds"} <= where


def test_what_is_not_confirmed_is_told_by_weight() -> None:
    told = weighing_most(knowledge())
    assert [count for _, count in told] == sorted((count for _, count in told), reverse=True)
    everything = unconfirmed(values(knowledge()))
    found = by_origin(values(knowledge()))
    assert sum(count for _, count in everything) == found["common_practice"] + found["memory"]
