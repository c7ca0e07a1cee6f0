"""What a diagnosis takes from the job."""

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, knowledge
from tailtrue.case import Case
from tailtrue.diagnosis.setup import setup_of
from tailtrue.errors import FactsWrong
from tailtrue.facts import Fact

CASE = advise(EXAMPLES / "fernhill" / "job.toml").case


def changed(**facts: object) -> Case:
    return CASE.with_said(
        {
            name.replace("__", "."): Fact(CASE.knowledge.catalogue[name.replace("__", ".")], one)
            for name, one in facts.items()
        }
    )


def test_lengths_and_limit_are_those_of_the_bar() -> None:
    found = setup_of(changed(job__bar_between_points=400.0, job__head_from_point=50.0, job__tail_from_point=350.0))
    assert (found.span_mm, found.head_mm, found.tail_mm) == (400.0, 50.0, 350.0)
    # Good work: 0.02 mm over 300 mm.
    assert found.limit_mm == pytest.approx(0.02)


def test_the_lathe_is_that_of_the_job() -> None:
    found = setup_of(CASE)
    assert (found.tool_side, found.dials, found.grade, found.has_screws) == ("front", "metric", "general", True)
    assert found.height_of_centres_mm == 330 / 2
    assert found.most_overhang == CASE.value("limit.overhang_most")
    inch = setup_of(advise(EXAMPLES / "quarry-road" / "job.toml").case)
    assert inch.dials == "inch"


def test_fine_work_has_the_limits_of_a_precise_lathe() -> None:
    assert setup_of(changed(job__accuracy="fine")).grade == "precision"


def test_a_tailstock_that_cannot_be_set_over_is_known_as_such() -> None:
    assert not setup_of(changed(lathe__set_over="none")).has_screws


def test_everything_that_is_not_said_is_named_at_once() -> None:
    with pytest.raises(FactsWrong) as found:
        setup_of(Case(knowledge(), {}))
    (problem,) = found.value.problems
    for label in ("swing over the bed", CASE.knowledge.catalogue["lathe.tool_side"].label):
        assert label in problem.said
    assert problem.wrong == "is not said"
