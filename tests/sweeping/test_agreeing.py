"""A job that is drawn agrees with itself: what goes together stands together, sizes in their order, one thing said one way."""

from typing import Any

import pytest

from tailtrue.advise import advise, knowledge
from tailtrue.given.read import read_job
from tailtrue.sweeping.agreeing import agreeing
from tailtrue.sweeping.files import read_sweep, values


def drawn(start: str = "at-hand", **said: Any) -> dict[str, Any] | None:
    """The job of a start with values drawn for facts, the first stroke of a name read as the dot."""
    known = knowledge()
    sweep = read_sweep(known)
    facts = {name.replace("_", ".", 1): raw for name, raw in said.items()}
    return agreeing(known.given, sweep.shop, sweep.starts[start], facts)


def readable(job: dict[str, Any] | None) -> bool:
    assert job is not None
    read_job(read_sweep(knowledge()).job, knowledge().given, job)
    return True


# Lists of readings are not drawn: jobs that aim at one thing say them whole.
DRAWN = [group for group in knowledge().given.together if any(values(knowledge().given.facts[name]) for name in group)]


@pytest.mark.parametrize("group", DRAWN, ids=lambda group: group[0])
def test_one_of_a_group_brings_the_others_with_it(group: tuple[str, ...]) -> None:
    known = knowledge()
    sweep = read_sweep(known)
    tried = [(name, raw) for name in group for raw in values(known.given.facts[name])]
    agreed = [(name, raw, agreeing(known.given, sweep.shop, sweep.starts["at-hand"], {name: raw})) for name, raw in tried]
    assert any(job is not None for _, _, job in agreed)
    for name, raw, job in agreed:
        if job is not None:
            assert set(group) <= {*job, *sweep.shop}
            assert job[name] == raw
            assert readable(job)


def test_speeds_said_as_a_range_take_the_list_out() -> None:
    job = drawn(lathe_speed_from="100 1/min")
    assert job is not None
    assert job["lathe.speeds"] is None
    assert "lathe.speed_to" in job
    assert readable(job)


def test_a_size_that_was_not_drawn_makes_room_for_one_that_was() -> None:
    job = drawn(lathe_swing_over_bed="150 mm")
    assert job is not None
    assert job["lathe.swing_over_bed"] == "150 mm"
    assert job["lathe.swing_over_cross_slide"] != "195 mm"
    assert readable(job)


def test_a_value_with_which_nothing_agrees_makes_no_job() -> None:
    most = knowledge().given.facts["crib.dog_to"].most_said
    assert drawn(crib_dog_from=most) is None


def test_what_agrees_stays_as_it_was_drawn() -> None:
    known = knowledge()
    start = read_sweep(known).starts["at-hand"]
    assert drawn(job_minor=True) == {**start, "job.minor": True}


def test_none_takes_what_the_files_say_out_of_them() -> None:
    sweep = read_sweep(knowledge())
    assert "job.place" in read_job(sweep.job, knowledge().given).values
    without = {**sweep.starts["at-hand"], "stock.test_bars": None}
    assert advise(sweep.job, knowledge(), without).given.value("stock.test_bars") is None
