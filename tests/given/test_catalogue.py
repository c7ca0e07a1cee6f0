"""The catalogue of given facts: sound as it ships, and every fault in it found when it is loaded."""

import shutil
import tomllib
from pathlib import Path
from typing import get_args

import pytest

from tailtrue.errors import KnowledgeInvalid
from tailtrue.given.catalogue import Catalogue, load_catalogue
from tailtrue.parts import Bound, Rounding
from tailtrue.places import knowledge_folder
from tailtrue.quantities import read_quantity


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the parts of the knowledge that the catalogue reads."""
    copy = tmp_path / "knowledge"
    for part in ("joints", "machines", "materials", "tools"):
        shutil.copytree(knowledge_folder() / part, copy / part)
    for file in ("facts.toml", "overridable.toml"):
        shutil.copy(knowledge_folder() / file, copy)
    return copy


def faults(folder: Path, name: str, *changes: tuple[str, str]) -> list[str]:
    path = folder / name
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    path.write_text(text, encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as caught:
        load_catalogue(folder)
    return [f"{p.where}: {p.said}: {p.wrong}; {p.do}" for p in caught.value.problems]


def line_of(folder: Path, name: str, text: str) -> int:
    return (folder / name).read_text(encoding="utf-8").split(text)[0].count("\n") + 1


def test_every_fact_has_what_a_page_and_an_error_need(catalogue: Catalogue) -> None:
    for fact in catalogue.facts.values():
        for one in (fact, *fact.fields.values()):
            assert one.spec.label, fact.spec.name
            assert one.spec.how, fact.spec.name
            assert not one.spec.how.endswith("."), one.spec.how
            assert one.spec.rounding in get_args(Rounding)
            assert one.spec.bound in get_args(Bound)
            assert one.spec.comes == "given"
            assert (one.ask == "may") == bool(one.if_missing), f"{fact.spec.name} {one.spec.name}"
            if one.spec.kind in ("quantity", "quantities") or one.reads_as:
                assert one.spec.least is not None
                assert one.spec.most is not None
                assert one.typical


def test_every_source_of_a_fact_is_known(catalogue: Catalogue) -> None:
    known = set(tomllib.loads((knowledge_folder() / "sources.toml").read_text(encoding="utf-8")))
    for fact in catalogue.facts.values():
        for one in (fact, *fact.fields.values()):
            assert one.spec.sources
            assert set(one.spec.sources) <= known | {"common-practice", "memory"}


def test_a_plausible_range_is_kept_in_the_canonical_unit(catalogue: Catalogue) -> None:
    power = catalogue.specs()["lathe.motor_power"]
    assert (power.unit, power.least, power.most) == ("W", 150.0, 11000.0)
    body = catalogue.specs()["lathe.chucks"].fields["body"]
    assert (body.name, body.kind, body.least, body.most) == ("body", "quantity", 60.0, 400.0)
    assert catalogue.specs()["crib.compound_cure"].most == read_quantity("14 day", "s")


def test_facts_that_decide_direction_and_safety_have_no_default(catalogue: Catalogue) -> None:
    for name in ("lathe.dial_reads", "lathe.tool_side", "lathe.chuck_guard", "lathe.stop", "job.minor", "job.alone"):
        assert catalogue.facts[name].ask == "must"
        assert catalogue.facts[name].default is None
    marked = catalogue.facts["lathe.chucks"].fields["marked_speed"]
    assert (marked.ask, marked.default, marked.words) == ("must", None, ("unmarked",))


def test_classes_become_the_choices_of_a_start(catalogue: Catalogue) -> None:
    assert catalogue.specs()["lathe.starts_from"].choices == tuple(sorted(catalogue.classes))


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ('typical = "280 mm"', 'typical = "28 mm"', 'swing_over_bed = "28 mm": is not plausible here: 150 mm to 560 mm is'),
        ('least = "150 mm"', 'least = "150"', "lathe.swing_over_bed: 150: has no unit"),
        ('least = "150 mm"', 'least = "600 mm"', "lathe.swing_over_bed: least is not below most; mend the range"),
        ('unit = "mm"', 'unit = "yards"', "lathe.swing_over_bed: 'yards' is no canonical unit; use one of mm, "),
        ('choices = ["metric", "inch"]', "choices = []", "lathe.dials: a choice without choices; add choices"),
        ('typical = "metric"', 'typical = "mtric"', 'dials = "mtric": is not one of the choices; write metric or inch'),
        ('source = "common-practice"', 'source = ""', "lathe.name: names no source; name one, or say memory"),
        (
            'name = "lathe.dials"',
            'name = "dials"',
            "dials: is no name of a given fact; write job.key, lathe.key, crib.key or stock.key",
        ),
        ('name = "lathe.dials"', 'name = "lathe.name"', "lathe.name: a fact has this name already; rename one"),
        (
            'default = "0.4 mm"\n',
            "",
            "crib.nose_radius: ask and default do not agree; give a default, or do not ask for one",
        ),
        ('default = "0.4 mm"', 'default = "0.4"', 'nose_radius = "0.4": has no unit; write 0.4 mm; typical: 0.4 mm'),
        (
            'default = "good"',
            'default = "superb"',
            'accuracy = "superb": is not one of the choices; write general, good or fine',
        ),
        (
            'refers = "tools/drill_sets:set"',
            'refers = "tools/drill_sets:box"',
            "set: tools/drill_sets:box: there is no such table, or it has no such column; mend refers",
        ),
        (
            'refers = "stock.bars:label"',
            'refers = "stock.rods:label"',
            "stock.rods: no given fact is named so; mend the name",
        ),
        ('low = "crib.dog_from"', 'low = "crib.dog_fro"', "crib.dog_fro: no given fact is named so; mend the name"),
        ('ways = [["sizes"], ["set"]]', 'ways = [["size"], ["set"]]', "size: no given fact is named so; mend the name"),
        ('label = "dials"', 'labl = "dials"', "fact.3.labl: unknown key 'labl'; a key named 'label' exists"),
        ('label = "dials"\n', "", "fact.3.label: not given; add it"),
        ('type = "choice"\nask = "must"', 'type = "choose"\nask = "must"', "fact.3.type: does not fit; "),
        ('type = "records"', 'type = "text"', "lathe.chucks: records have fields, and nothing else has; mend the type"),
    ],
)
def test_a_fault_in_the_catalogue_is_found_when_it_is_loaded(folder: Path, old: str, new: str, fault: str) -> None:
    found = faults(folder, "facts.toml", (old, new))
    assert any(fault in one for one in found), found
    assert all(one.startswith("knowledge/facts.toml") for one in found)


def test_a_fault_has_its_line(folder: Path) -> None:
    line = line_of(folder, "facts.toml", 'label = "dials"')
    first = faults(folder, "facts.toml", ('label = "dials"', 'labl = "dials"'))
    assert f"knowledge/facts.toml:{line}" in {one.split(": ")[0] for one in first}


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        (
            "[lathe]\n",
            '[lathe]\ndial_reads = "radius"\n',
            "knowledge/machines/bench-230.toml:6: dial_reads: must never come from a class; take it out; the user must say it",
        ),
        (
            '"230 mm"',
            '"23 mm"',
            'knowledge/machines/bench-230.toml:6: swing_over_bed = "23 mm": is not plausible here: 150 mm to 560 mm is; ',
        ),
        (
            "swing_over_bed",
            "swing_over_bad",
            "knowledge/machines/bench-230.toml:6: swing_over_bad: unknown key; a key named 'swing_over_bed' exists",
        ),
        ('note = "', 'notes = "', "knowledge/machines/bench-230.toml:1: note: not given; add it"),
    ],
)
def test_a_fault_in_a_class_is_found_when_it_is_loaded(folder: Path, old: str, new: str, fault: str) -> None:
    assert any(one.startswith(fault) for one in faults(folder, "machines/bench-230.toml", (old, new)))


def test_tables_that_are_missing_are_found(folder: Path) -> None:
    shutil.rmtree(folder / "tools")
    found = faults(folder, "facts.toml")
    assert {one.split(": ")[2] for one in found} == {"tools/drill_sets:set", "tools/centre_drills:designation"}


def test_a_catalogue_that_is_no_toml(folder: Path) -> None:
    (fault,) = faults(folder, "facts.toml", ("[[fact]]", "[[fact]"))
    assert "cannot be read as TOML" in fault
