"""A few jobs of the sweep are kept: the check of the rule base runs them, and they reach all that the sweep reaches."""

import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.advise import knowledge
from tailtrue.errors import KnowledgeInvalid
from tailtrue.places import knowledge_folder
from tailtrue.sweeping.enough import FILE, Enough, as_file, enough, not_enough, read_enough
from tailtrue.sweeping.files import Sweep, read_sweep
from tailtrue.sweeping.run import jobs_of

STARTS = {"bare": {}, "full": {"a": 1, "b": 2}}
SMALL = Sweep(Path("job.toml"), {}, STARTS, (), (), ())
# What a job says, and what it reaches.
TRIED = st.lists(
    st.tuples(
        st.dictionaries(st.sampled_from("abcd"), st.none() | st.integers(0, 3)),
        st.sets(st.tuples(st.just("stop"), st.sampled_from("pqrstuvw"))),
    ),
    max_size=12,
    unique_by=lambda one: json.dumps(one[0], sort_keys=True),
)


def test_the_jobs_that_are_kept_are_few_of_the_sweep() -> None:
    sweep = read_sweep(knowledge())
    kept = read_enough(knowledge(), sweep)
    assert len(kept) < 0.3 * sum(1 for _ in jobs_of(knowledge(), sweep))


@given(TRIED)
def test_what_is_chosen_reaches_what_all_reach(tried: list[tuple[dict[str, int | None], set[tuple[str, str]]]]) -> None:
    chosen = enough(SMALL, tried, tried[:1])
    raws = [one.raw(SMALL) for one in chosen]
    by_raw = {json.dumps(raw, sort_keys=True): things for raw, things in tried}
    got = [by_raw[json.dumps(raw, sort_keys=True)] for raw in raws]
    assert set().union(*got) == set().union(*(things for _, things in tried))
    assert len(raws) <= len(tried)
    if tried:
        assert raws[0] == tried[0][0]


def test_a_job_is_kept_as_what_it_says_beside_the_nearest_start() -> None:
    tried = [({"a": 1, "b": 2, "c": None}, {("stop", "one")}), ({"b": 2}, {("stop", "two")})]
    assert set(map(repr, enough(SMALL, tried, ()))) == {repr(Enough("full", {"c": None})), repr(Enough("bare", {"b": 2}))}


def test_what_is_written_is_read_again(tmp_path: Path) -> None:
    jobs = (Enough("full", {"c": None, "d": "12 mm"}), Enough("bare", {}))
    (tmp_path / FILE).parent.mkdir()
    (tmp_path / FILE).write_text(as_file(jobs), encoding="utf-8")
    assert read_enough(replace(knowledge(), folder=tmp_path), SMALL) == jobs


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (None, "cannot be read"),
        ("[{", "cannot be read"),
        ('{"start": "bare", "set": {}}', "are not a start and what is laid over it"),
        ('[{"start": "bare"}]', "are not a start and what is laid over it"),
        ('[{"start": "empty", "set": {}}]', "which is no start of the sweep"),
    ],
)
def test_a_file_that_cannot_be_used_is_told(tmp_path: Path, written: str | None, said: str) -> None:
    (tmp_path / FILE).parent.mkdir()
    if written is not None:
        (tmp_path / FILE).write_text(written, encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as told:
        read_enough(replace(knowledge(), folder=tmp_path), SMALL)
    (problem,) = told.value.problems
    assert problem.where == f"knowledge/{FILE}"
    assert problem.wrong == said or said == "cannot be read"
    assert "tailtrue knowledge sweep --keep" in problem.do


def test_what_no_kept_job_reaches_is_told(tmp_path: Path) -> None:
    copy = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder() / "sweep", copy / "sweep")
    entries = json.loads((copy / FILE).read_text(encoding="utf-8"))[:20]
    (copy / FILE).write_text(json.dumps(entries), encoding="utf-8")
    (copy / "sweep" / "found.toml").write_text("", encoding="utf-8")
    _, problems = not_enough(replace(knowledge(), folder=copy))
    assert "tailtrue knowledge sweep --keep" in problems[0].do
    assert all(one.wrong == "is reached by no job of the sweep" for one in problems[1:] if "stop" in one.said)
    assert len(problems) > 50
