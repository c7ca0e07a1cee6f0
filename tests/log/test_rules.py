"""The rules of the log are sound, and faults in them are found when they are read."""

import tomllib
from copy import deepcopy
from typing import Any

import pytest

from tailtrue.errors import KnowledgeInvalid
from tailtrue.given.locate import Lines
from tailtrue.given.toml_file import TomlFile
from tailtrue.log.rules import log_rules, read_rules
from tailtrue.places import knowledge_folder


def tables() -> dict[str, Any]:
    with (knowledge_folder() / "alignment" / "log_rules.toml").open("rb") as opened:
        return tomllib.load(opened)


def test_rules_are_those_of_the_trade() -> None:
    """Eight checks for limits, eight in a row for drift, a month until ten checks, half a year at most (common practice)."""
    rules = log_rules()
    assert (rules.chart.fewest, rules.chart.run) == (8, 8)
    assert (rules.recheck.often_days, rules.recheck.often_until, rules.recheck.longest_days) == (30, 10, 182)
    assert 2 <= rules.recheck.times_quiet <= 3
    assert rules.recheck.shortest_days < rules.recheck.often_days < rules.recheck.longest_days
    assert len(rules.recheck.before) == 6


@pytest.mark.parametrize(
    ("table", "key", "value", "says"),
    [
        ("chart", "fewest", 1, "greater than or equal to 2"),
        ("recheck", "often", "30", "no unit"),
        ("recheck", "often", "30 mm", "is a length"),
        ("recheck", "times_quiet", 1.0, "greater than 1"),
        ("wear", "new_collars_from", "0.2 s", "is a time"),
        ("wear", "sources", [], "at least 1 item"),
        ("chart", "colour", "red", "unknown key 'colour'"),
    ],
)
def test_a_fault_in_the_rules_is_found(table: str, key: str, value: object, says: str) -> None:
    spoilt = deepcopy(tables())
    spoilt[table][key] = value
    with pytest.raises(KnowledgeInvalid) as caught:
        read_rules(TomlFile("knowledge/x.toml", spoilt, Lines({})))
    (problem,) = caught.value.problems
    assert problem.said.startswith(f"{table}.{key}")
    assert says in f"{problem.wrong}: {problem.do}"


def test_a_field_that_no_record_has_is_found() -> None:
    spoilt = deepcopy(tables())
    spoilt["same"][0]["field"] = "colour"
    with pytest.raises(KnowledgeInvalid) as caught:
        read_rules(TomlFile("knowledge/x.toml", spoilt, Lines({})))
    assert "no field 'colour'" in caught.value.problems[0].do
