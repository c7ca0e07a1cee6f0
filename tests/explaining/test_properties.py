"""What holds for every shop, of the examples and drawn at random."""

import tempfile
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from random_shops import shops, write
from shops import EXAMPLES
from tailtrue.advise import advise
from tailtrue.cli.explain import side_of
from tailtrue.decisions import WEIGHED
from tailtrue.explaining.compare import compare
from tailtrue.explaining.naming import names
from tailtrue.explaining.near import near_misses
from tailtrue.explaining.said import Side
from tailtrue.explaining.why import why
from tailtrue.explaining.why_not import why_not
from tailtrue.truth import Truth

JOBS = tuple(EXAMPLES / name / "job.toml" for name in ("fernhill", "quarry-road"))


def drawn(one: dict[str, Any]) -> Side:
    with tempfile.TemporaryDirectory() as folder:
        return side_of(advise(write(Path(folder), one)))


def every_row_that_lost_says_why(side: Side) -> None:
    for name, decision in side.case.knowledge.decisions.items():
        rows = side.case.outcome(name).rows
        chosen = {row.row.then for row in rows if row.chosen}
        for answer in {row.then for row in decision.rows} - chosen:
            holding = [row.row for row in rows if row.row.then == answer and row.judged.truth is Truth.YES]
            holds = bool(holding)
            found = why_not(side, f"{name}={answer}").as_data("metric")
            if holds and all(row.never_taken for row in holding):
                assert "never taken" in found["met"], (name, answer)
            elif holds and chosen:
                beaten = "another binds before it" if decision.hit in WEIGHED else "another comes first"
                assert beaten in found["met"], (name, answer)
            elif holds and "cannot be judged yet" in found["met"]:
                assert found["failed"]
            elif holds:
                assert "a size that it is held against is not known" in found["met"], (name, answer)
            else:
                assert found["failed"], (name, answer)
                assert all(one["said"] for one in found["failed"])


@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.parent.name)
def test_everything_of_an_example_can_be_explained_both_ways(job: Path) -> None:
    side = side_of(advise(job))
    for name in names(side.case.knowledge):
        for found in (why(side, name, whole=True), why_not(side, name)):
            data = found.as_data("inch")
            assert data["name"] == name
            assert data["label"]
            assert data["met"]


# Each shop is explained in many hundred ways: a failing one is shown as it was drawn, not made smaller.
@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow], phases=[Phase.generate])
@given(shops())
def test_everything_of_any_shop_can_be_explained(one: dict[str, Any]) -> None:
    side = drawn(one)
    for name in names(side.case.knowledge):
        data = why(side, name).as_data("metric")
        assert data["met"]
        if data.get("known") is False and side.case.get(name).spec.comes != "given":
            assert data["missing"] or data["trouble"], name


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(shops())
def test_every_alternative_that_lost_names_what_failed(one: dict[str, Any]) -> None:
    every_row_that_lost_says_why(drawn(one))


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(shops())
def test_a_job_does_not_differ_from_itself(one: dict[str, Any]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        job = write(Path(folder), one)
        assert compare(side_of(advise(job)), side_of(advise(job, instead={}))).nothing


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(shops())
def test_near_misses_stand_with_the_worst_first_and_none_of_them_holds(one: dict[str, Any]) -> None:
    case = drawn(one).case
    found = near_misses(case)
    assert [miss.severity for miss in found] == sorted((miss.severity for miss in found), reverse=True)
    rules = {rule.file.id: rule.when for rule in (*case.knowledge.cautions, *case.knowledge.stops, *case.knowledge.notes)}
    for miss in found:
        assert miss.short_by
        if miss.kind != "choice":
            assert case.judge(rules[miss.id]).truth is Truth.NO


def test_every_name_means_one_thing() -> None:
    knowledge = advise(JOBS[0]).case.knowledge
    rules = [*knowledge.cautions, *knowledge.stops, *knowledge.notes]
    every = [*knowledge.catalogue, *knowledge.steps, *(rule.file.id for rule in rules)]
    assert len(every) == len(set(every))
    assert set(names(knowledge)) == set(every)


def test_every_setting_has_a_clause_of_reason() -> None:
    knowledge = advise(JOBS[0]).case.knowledge
    for step in knowledge.steps.values():
        for line in (*step.settings, *((step.settings_from,) if step.settings_from else ())):
            assert line.reason.words.strip(), (step.file.id, line.label.words)
