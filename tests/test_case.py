"""A case makes each fact once, when it is asked for, and remembers what it was made from."""

from dataclasses import replace

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, knowledge
from tailtrue.case import Case
from tailtrue.computed.registry import Computed
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.store.knowledge import Knowledge
from tailtrue.tables import Table

JOB = EXAMPLES / "fernhill" / "job.toml"


def with_fact(known: Knowledge, name: str, way: Computed) -> Knowledge:
    return replace(known, computed={**known.computed, name: way}, catalogue={**known.catalogue, name: way.spec})


def test_a_fact_is_made_once_and_only_when_asked_for() -> None:
    calls: list[float] = []

    def double(diameter: float) -> float:
        calls.append(diameter)
        return 2 * diameter

    spec = FactSpec("demo.double", "quantity", "double", "computed", "mm")
    known = with_fact(knowledge(), "demo.double", Computed(spec, double, ("bar.diameter",), frozenset(), ()))
    said = advise(JOB).case
    case = Case(known, {name: fact for name, fact in said.known().items() if fact.spec.comes == "given"})
    assert not calls
    assert [case.value("demo.double") for _ in range(3)] == [50.0] * 3
    assert calls == [25.0]


def test_a_fact_keeps_what_it_was_made_from_and_its_sources() -> None:
    found = advise(JOB).case.get("joint.retaining_compound.least")
    assert isinstance(found, Fact)
    assert found.read == ("bar.diameter", "crib.compound_gap")
    assert "iso-10123" in found.sources


def test_what_limits_a_length_is_said() -> None:
    found = advise(JOB).case.get("bar.length")
    assert isinstance(found, Fact)
    assert found.limited_by.startswith("stiffness")


def test_a_missing_fact_is_named_through_all_that_needs_it() -> None:
    case = advise(EXAMPLES / "quarry-road" / "job.toml").case
    found = case.get("bore.head_low")
    assert isinstance(found, NotKnown)
    assert found.missing == ("job.measured_head",)


@pytest.mark.parametrize("diameter", [15.0, 41.0])
def test_beyond_a_table_there_is_trouble_and_no_value(diameter: float) -> None:
    said = advise(JOB).case
    given = {name: fact for name, fact in said.known().items() if fact.spec.comes == "given"}
    bars = tuple({**bar, "diameter": diameter} for bar in given["stock.bars"].value)
    case = Case(knowledge(), given | {"stock.bars": replace(given["stock.bars"], value=bars)})
    found = case.get("joint.retaining_compound.least")
    assert isinstance(found, NotKnown)
    assert f"nothing for {diameter:g}" in found.trouble
    assert found.unlisted.startswith(f"nothing for {diameter:g}")


def test_what_follows_from_a_row_that_is_not_there_tells_it_without_the_table() -> None:
    def beyond(table: Table) -> float:
        return table.one(material="unobtainium").number("density_kg_m3")

    def behind(value: float) -> float:
        return value

    first, second = (FactSpec(name, "quantity", name, "computed", "1") for name in ("demo.first", "demo.second"))
    known = with_fact(knowledge(), "demo.first", Computed(first, beyond, (), frozenset(), ("materials/materials",)))
    known = with_fact(known, "demo.second", Computed(second, behind, ("demo.first",), frozenset(), ()))
    found = Case(known, {}).get("demo.second")
    assert isinstance(found, NotKnown)
    assert found.unlisted == "no row for material unobtainium"
    assert found.trouble == "demo.first: materials/materials: no row for material unobtainium"


def test_a_fact_from_a_table_has_the_sources_of_the_cells_it_read() -> None:
    """The density of 6061 is printed, its drilling constant is from memory: the row is both, and a weight is the first."""
    case = advise(JOB).case
    row = case.knowledge.tables["materials/materials"].one(material="aluminium-6061-t6")
    assert "memory" in row.sources
    assert row.source_cell.keys_of("density_kg_m3") == ("materials-science-textbook",)
    table = case.knowledge.tables["materials/materials"]
    spec = FactSpec("demo.weight", "quantity", "weight", "computed", "kg/m3")

    def read(column: str) -> Fact | NotKnown:
        def weight(materials: Table) -> float:
            return materials.one(material="aluminium-6061-t6").number(column)

        known = with_fact(case.knowledge, "demo.weight", Computed(spec, weight, (), frozenset(), (table.name,)))
        return Case(known, {}).get("demo.weight")

    density, drilling = read("density_kg_m3"), read("drill_kd")
    assert isinstance(density, Fact)
    assert isinstance(drilling, Fact)
    assert density.sources == ("materials-science-textbook",)
    assert drilling.sources == ("memory",)


def test_a_speed_from_a_share_of_another_operation_rests_on_both() -> None:
    found = advise(JOB).case.get("skim.speed")
    assert isinstance(found, Fact)
    assert "common-practice" in found.sources
