"""Every part of the rule base is reached by some job of a generated sweep, or the reason stands beside it."""

import json
from dataclasses import replace
from functools import cache
from itertools import combinations, islice

import pytest

from shops import ROOT
from tailtrue.advise import Advice, knowledge
from tailtrue.conditions import read_condition
from tailtrue.errors import InspectionFailed, Problem
from tailtrue.procedure import Procedure
from tailtrue.sweeping.enough import reach_of_enough, read_enough
from tailtrue.sweeping.files import UNREACHED, read_sweep, values
from tailtrue.sweeping.page import reach_page
from tailtrue.sweeping.pairs import pairwise
from tailtrue.sweeping.reach import Reach, everything, reached_by, unreached, wrong_on_paper
from tailtrue.sweeping.run import inspected, jobs_of, sweep_all, visited
from tailtrue.sweeping.seek import as_entry, seek
from tailtrue.tables import Row, Table

# The command of the sweep tries them all, which takes minutes; which are tried here changes with the rule base.
ONE_IN = 16


@cache
def reach() -> Reach:
    """What the jobs that are kept of the sweep reach."""
    return reach_of_enough(knowledge())


@cache
def some() -> Reach:
    """One job in so many of the sweep, each sheet inspected."""
    known = knowledge()
    sweep, found = read_sweep(known), Reach()
    for raw in islice(jobs_of(known, sweep), int(known.version[:8], 16) % ONE_IN, None, ONE_IN):
        things, refused, faults = inspected(known, sweep, raw)
        found.add(things, refused=refused, faults=faults)
    return found


def test_everything_is_reached_or_explained() -> None:
    assert list(unreached(knowledge(), reach())) == []
    assert reach().faults == []


def test_the_jobs_that_reach_it_are_jobs_of_the_sweep() -> None:
    known = knowledge()
    sweep = read_sweep(known)
    swept = {json.dumps(raw, sort_keys=True) for raw in jobs_of(known, sweep)}
    assert {json.dumps(one.raw(sweep), sort_keys=True) for one in read_enough(known, sweep)} <= swept
    assert len(swept) > 500


def test_sheets_of_the_sweep_pass_inspection() -> None:
    assert some().faults == []


def test_the_sweep_makes_sheets_and_refusals_and_next_to_no_jobs_that_cannot_be_read() -> None:
    assert 0.05 * some().jobs < some().refused < some().jobs / 2
    assert some().unread <= 0.03 * some().jobs


def test_the_sweep_adds_up_what_its_jobs_reach(monkeypatch: pytest.MonkeyPatch) -> None:
    known = knowledge()
    monkeypatch.setattr("tailtrue.sweeping.run._pairs", lambda *_: ())
    whole = read_sweep(known)
    starts = {name: whole.starts[name] for name in ("at-hand", "use-bar")}
    small = replace(whole, starts=starts, ways=whole.ways[:3], found=(), visits=whole.visits[:1])
    swept = sweep_all(known, small)
    jobs = list(jobs_of(known, small))
    assert [raw for raw, _ in swept.tried] == jobs
    assert len(jobs) == 5
    assert swept.reach.jobs == len(jobs) + len(small.visits)
    for raw, things in swept.tried:
        assert things == (inspected(known, small, raw)[0] or set())
    met = set().union(*(things for _, things in [*swept.tried, *swept.sheets]), visited(known, small, small.visits[0]))
    assert set(swept.reach.counted) == met
    assert swept.sheets


def test_what_the_inspection_finds_on_a_sheet_is_told_with_its_job(monkeypatch: pytest.MonkeyPatch) -> None:
    known = knowledge()
    sweep = read_sweep(known)
    _, advice, refused = reached_by(sweep.job, known, sweep.starts["at-hand"])
    assert advice is not None
    assert not refused
    assert wrong_on_paper(advice, {"job.title": "bar"}) == ()

    def failing(_: Advice) -> Procedure:
        raise InspectionFailed((Problem("step 3.1", "V34", "is empty", "fill it in"),))

    monkeypatch.setattr("tailtrue.sweeping.reach.procedure_of", failing)
    (found,) = wrong_on_paper(advice, {"job.title": "bar"})
    assert found.where == "step 3.1, sheet of the sweep with job.title = bar"


def test_what_no_job_reaches_is_told() -> None:
    known = knowledge()
    lost = Reach(counted=reach().counted.copy(), jobs=reach().jobs)
    del lost.counted["stop", "dog-does-not-fit"]
    (problem,) = unreached(known, lost)
    assert problem.said == "stop dog-does-not-fit"


def test_a_reason_for_what_is_reached_or_not_there_is_told() -> None:
    known = knowledge()
    rows = [{"kind": "stop", "thing": "dog-does-not-fit"}, {"kind": "stop", "thing": "no-such-stop"}]
    more = tuple(Row(UNREACHED, 90 + place, row) for place, row in enumerate(rows))
    tables = {**known.tables, UNREACHED: Table(UNREACHED, (*known.tables[UNREACHED].rows, *more))}
    found = [problem.where for problem in unreached(replace(known, tables=tables), reach())]
    assert found == [f"knowledge/{UNREACHED}.csv:90", f"knowledge/{UNREACHED}.csv:91"]


def test_a_condition_that_can_never_hold_is_found() -> None:
    known = knowledge()
    (stop,) = [one for one in known.stops if one.file.id == "dog-does-not-fit"]
    never = read_condition(["bar.diameter > crib.dog_to", "bar.diameter < crib.dog_from"], known.catalogue)
    broken = replace(known, stops=(replace(stop, when=never),))
    sweep = read_sweep(known)
    small = {"crib.dog_from": "30 mm", "crib.dog_to": "60 mm"}
    for held, knows in ((True, known), (False, broken)):
        things, _, _ = reached_by(sweep.job, knows, {**sweep.starts["at-hand"], **small})
        assert (("stop", "dog-does-not-fit") in (things or ())) is held


def test_the_page_tells_what_is_reached_by_none_and_why() -> None:
    page = reach_page(knowledge(), reach())
    wanted = page.partition("## Reached by none")[2].partition("## By kind")[0]
    written = (ROOT / "docs" / "reference" / "reach.md").read_text(encoding="utf-8")
    assert written.partition("## Reached by none")[2].partition("## By kind")[0] == wanted
    assert "not explained" not in wanted


def test_every_thing_has_its_line_on_the_page() -> None:
    page = reach_page(knowledge(), reach())
    assert all(f"| {name} | {reach().counted[kind, name]} |" in page for kind, name in everything(knowledge()))


def test_every_pair_of_values_meets_in_some_row() -> None:
    factors = {"a": (1, 2, 3), "b": (True, False), "c": ("x", "y"), "d": (1, 2)}
    rows = list(pairwise(factors))
    assert len(rows) < 12
    for first, second in combinations(factors, 2):
        met = {(row[first], row[second]) for row in rows}
        assert met == {(one, other) for one in factors[first] for other in factors[second]}


def test_the_same_factors_give_the_same_rows() -> None:
    factors = {"a": (1, 2, 3), "b": (True, False), "c": ("x", "y")}
    assert list(pairwise(factors)) == list(pairwise(factors))


def test_every_choice_both_answers_and_both_ends_of_a_size_are_tried() -> None:
    facts = knowledge().given.facts
    assert values(facts["lathe.set_over"]) == ("two-screws", "one-screw", "none")
    assert values(facts["job.minor"]) == (True, False)
    assert values(facts["lathe.between_centres"]) == ("200 mm", "600 mm", "2200 mm")
    tried = {name for raw in jobs_of(knowledge(), read_sweep(knowledge())) for name in raw}
    plain = {name for name, fact in facts.items() if values(fact)}
    assert plain <= tried


@pytest.mark.parametrize(
    "thing", [("stop", "dog-does-not-fit"), ("alternative", "centre.tail: live (row 1)"), ("note", "swing-not-measured")]
)
def test_a_job_that_reaches_a_thing_is_found_and_does_reach_it(thing: tuple[str, str]) -> None:
    known = knowledge()
    sweep = read_sweep(known)
    few = replace(sweep, starts={name: sweep.starts[name] for name in ("at-hand", "least-said")})
    found = seek(known, few, thing)
    assert found is not None
    things, _, _ = reached_by(sweep.job, known, {**sweep.starts[found.start], **found.set})
    assert thing in (things or ())
    assert as_entry(found).startswith("[[job]]\n")


def test_what_is_said_at_the_lathe_reaches_remarks_and_lines() -> None:
    known = knowledge()
    sweep = read_sweep(known)
    (one,) = [visit for visit in sweep.visits if visit.id == "far out"]
    assert {("remark", "far-out"), ("line", "visit: out-of-limits")} <= visited(known, sweep, one)
