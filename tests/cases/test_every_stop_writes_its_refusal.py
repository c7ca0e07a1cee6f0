"""Each stop is made to fire on a job of each route, and its refusal is written to the end."""

import re
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue
from tailtrue.advise import Advice, advise, knowledge
from tailtrue.errors import report
from tailtrue.facts import Fact
from tailtrue.refusals import Refusal, refusals, refused
from tailtrue.store.examples import example_case
from tailtrue.store.knowledge import Stop
from tailtrue.truth import Truth

# A job of each route, each with as much said as it can have.
JOBS = {
    route: EXAMPLES / "fernhill" / f"{name}.toml"
    for route, name in {"make-and-use-bar": "job"}.items() | {
        (one, one) for one in ("make-bar", "use-bar", "re-certify", "chucked-bar-test", "height-and-droop", "taper-and-return", "rework")
    }
}  # fmt: skip


AT_ONCE = 8


@cache
def job(route: str) -> Advice:
    return advise(JOBS[route])


def stops_of(route: str) -> Iterator[Stop]:
    known = knowledge()
    return (stop for stop in known.stops if known.routes[route].has_to_do_with(stop.file.concerns))


def stops_first_on(route: str) -> list[Stop]:
    """The stops of a route that no route before it has."""
    before = {stop.file.id for one in sorted(JOBS) if one < route for stop in stops_of(one)}
    return [stop for stop in stops_of(route) if stop.file.id not in before]


def said_in_the_example(stop: Stop, number: int) -> dict[str, Fact]:
    """The facts of an example as a user says them: words at a line of his job. Lists stay those of the job."""
    known = knowledge()
    written = stop.file.example[number].facts
    get = example_case(written, known.catalogue, known.limits)
    found = {name: get(name) for name in written}
    return {
        name: Fact(fact.spec, fact.value, said=str(written[name]), where="job.toml:3")
        for name, fact in found.items() if isinstance(fact, Fact) and fact.spec.kind != "records"
    }  # fmt: skip


def test_every_route_has_its_job() -> None:
    assert set(JOBS) == set(knowledge().routes)
    for route, path in JOBS.items():
        assert tomllib.loads(path.read_text(encoding="utf-8"))["job"].get("do", "make-and-use-bar") == route


@pytest.mark.parametrize("route", sorted(JOBS))
def test_every_stop_of_a_route_that_fires_as_in_its_example_writes_its_refusal(route: str) -> None:
    stops, fired = stops_first_on(route), set()
    for stop in stops:
        cases = (job(route).case.with_said(said_in_the_example(stop, number)) for number in range(len(stop.file.example)))
        case = next((case for case in cases if case.judge(stop.when).truth is Truth.YES), None)
        if case is None:
            continue
        fired.add(stop.file.id)
        told = [one for one in refusals(case, knowledge().routes[route]) if one.id == stop.file.id]
        written = report(refused(told, case, [knowledge().routes[route]]))
        assert f"{stop.file.id}: " in written
        assert stop.file.title in written
    # The others ask after lists, or after more than their example says.
    assert len(fired) >= len(stops) / 2


def read_first_on(route: str) -> tuple[str, ...]:
    """What the stops of a route read and those of no route before it."""
    before = {name for one in sorted(JOBS) if one < route for stop in stops_of(one) for name in stop.when.names()}
    return tuple(sorted({name for stop in stops_of(route) for name in stop.when.names()} - before))


@pytest.mark.parametrize("route", sorted(JOBS))
def test_whatever_a_stop_reads_it_can_be_told_what_that_hangs_on(route: str) -> None:
    """Whether it is said in the job, follows from it or is said at the lathe alone."""
    names = read_first_on(route)
    # Some at once: what lies behind them is much the same.
    for start in range(0, len(names), AT_ONCE):
        read = names[start : start + AT_ONCE]
        one = Refusal("a-stop", "Stop", ("Stop.",), (("Look.",),), (), read=read, missing=read)
        written = report(refused([one], job(route).case, [knowledge().routes[route]]))
        assert written.startswith("no procedure is printed for this job\na-stop: ")


def test_every_fact_that_a_stop_reads_is_tried_on_a_route() -> None:
    tried = {name for route in JOBS for name in read_first_on(route)}
    assert tried == {name for stop in knowledge().stops for name in stop.when.names()}


@pytest.mark.parametrize(
    ("changes", "stop", "told"),
    [
        ({"taper_small": "20 mm"}, "setover-beyond-travel", ["12.185 mm", "8.0 mm", "top slide", "taper_large", "taper_length"]),
        ({"taper_length": "250 mm"}, "setover-taper-longer-than-work", ["250.0 mm", "work length", "taper_length", "work_length"]),
        ({"taper_length": "216 mm"}, "setover-taper-under-the-dog", ["216.0 mm", "35.0 mm", "215.0 mm", "214 mm or less would do"]),
        ({"taper_small": "10 mm", "tailstock_travel": "60 mm"}, "setover-too-steep", ["top slide", "taper_length"]),
        ({"work_length": "900 mm"}, "setover-work-too-long", ["900", "longer lathe", "work_length"]),
    ],
)  # fmt: skip
def test_a_taper_that_cannot_be_set_over_is_refused_with_what_was_said(
    tmp_path: Path, changes: dict[str, str], stop: str, told: list[str]
) -> None:
    for path in (EXAMPLES / "fernhill").iterdir():
        (tmp_path / path.name).write_bytes(path.read_bytes())
    file = tmp_path / "taper-and-return.toml"
    text = file.read_text(encoding="utf-8")
    for key, value in changes.items():
        text, count = re.subn(rf"(?m)^{key} = .*$", f'{key} = "{value}"', text)
        assert count == 1
    file.write_text(text, encoding="utf-8")
    for words in (("check", file), ("make", file, "--out", tmp_path / "out")):
        done = tailtrue(*words)
        assert done.returncode == 5, done.stderr
        page = done.stderr.replace("\N{NO-BREAK SPACE}", " ")
        assert f"{stop}: " in page
        for word in told:
            assert word in page, (word, page)
