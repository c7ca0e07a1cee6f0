"""Numbers that a job file sets by hand: what is read, and every fault at once with its line."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import knowledge
from tailtrue.errors import FactsWrong, report
from tailtrue.given.read import read_job
from tailtrue.store.knowledge import Knowledge

GOOD = {"fact": '"skim.speed"', "value": '"280 1/min"', "reason": '"the belt slips"', "initials": '"RK"'}


@pytest.fixture(scope="module")
def known() -> Knowledge:
    return knowledge()


def entry(**changes: str | None) -> str:
    rows = {**GOOD, **changes}
    return "\n[[override]]\n" + "".join(f"{key} = {value}\n" for key, value in rows.items() if value is not None)


def job_with(folder: Path, *entries: str) -> Path:
    job = shop(folder, "fernhill")
    job.write_text(job.read_text(encoding="utf-8") + "".join(entries), encoding="utf-8")
    return job


def test_a_number_set_by_hand_is_read_in_its_canonical_unit(tmp_path: Path, known: Knowledge) -> None:
    given = read_job(job_with(tmp_path, entry(fact='"joint.cure_wait"', value='"2 days"')), known.given)
    one = given.by_hand["joint.cure_wait"]
    assert one.value == 2 * 24 * 3600
    assert (one.said, one.reason, one.initials) == ("2 days", "the belt slips", "RK")
    assert one.where == f"job.toml:{len(Path(tmp_path / 'fernhill/job.toml').read_text().splitlines()) - 3}"


WRONG = [
    ({"fact": '"skim.sped"'}, "no fact is named so"),
    ({"fact": '"align.inside"'}, "follows from other numbers and cannot be set by hand"),
    ({"fact": '"lathe.dial_division"'}, "is not worked out: you give it yourself"),
    ({"fact": '"limit.blank_speed"'}, "is a limit, not a number of this job"),
    ({"fact": None}, "names no fact"),
    ({"fact": "3"}, "names no fact"),
    ({"value": '"280 mm"'}, "mm is a length"),
    ({"value": "280"}, "is not a quantity"),
    ({"value": '"280"'}, "has no unit"),
    ({"value": '"28000 1/min"'}, "is not plausible here"),
    ({"value": '"nan 1/min"'}, "is not a number"),
    ({"value": None}, "names no value"),
    ({"reason": None}, "names no reason"),
    ({"reason": '" "'}, "is empty"),
    ({"reason": '"because"'}, "is no reason"),
    ({"reason": '"see {{ bar.length }} here"'}, "holds double braces"),
    ({"initials": None}, "names no initials"),
    ({"initials": '"1234"'}, "is no initials"),
    ({"initials": '"a long full name"'}, "is no initials"),
    ({"why": '"x"'}, "unknown key 'why'"),
]


@pytest.mark.parametrize(("changes", "says"), WRONG, ids=lambda value: str(value)[:40])
def test_a_wrong_override_is_named_with_its_line(
    tmp_path: Path, known: Knowledge, changes: dict[str, str | None], says: str
) -> None:
    with pytest.raises(FactsWrong) as wrong:
        read_job(job_with(tmp_path, entry(**changes)), known.given)
    assert says in report(wrong.value)
    assert all(problem.where.startswith("job.toml:") and problem.do for problem in wrong.value.problems)


def test_every_fault_of_every_override_is_told_at_once(tmp_path: Path, known: Knowledge) -> None:
    job = job_with(tmp_path, entry(fact='"skim.sped"', reason=None), entry(value="3"), entry(initials='"9"'))
    with pytest.raises(FactsWrong) as wrong:
        read_job(job, known.given)
    told = report(wrong.value)
    for says in ("no fact is named so", "names no reason", "is not a quantity", "is no initials", "is set a second time"):
        assert says in told
    lines = [int(problem.where.partition(":")[2]) for problem in wrong.value.problems]
    assert lines == sorted(lines)


def test_one_number_is_not_set_twice(tmp_path: Path, known: Knowledge) -> None:
    with pytest.raises(FactsWrong, match="is set a second time"):
        read_job(job_with(tmp_path, entry(), entry(value='"180 1/min"')), known.given)


def test_an_override_that_is_no_list_of_tables_is_refused(tmp_path: Path, known: Knowledge) -> None:
    with pytest.raises(FactsWrong, match="is not a list of tables"):
        read_job(job_with(tmp_path, '\n[override]\nfact = "skim.speed"\n'), known.given)


def test_overrides_stand_in_the_job_file_alone(tmp_path: Path, known: Knowledge) -> None:
    job = shop(tmp_path, "fernhill")
    lathe = job.parent / "lathe.toml"
    lathe.write_text(lathe.read_text(encoding="utf-8") + entry(), encoding="utf-8")
    with pytest.raises(FactsWrong, match="nothing else"):
        read_job(job, known.given)
