"""Blanks much wider than their collars, and what gauges their bores."""

from pathlib import Path

import pytest

from cases.test_sources import job_of, made, setting, steps
from render.reading import figures
from shops import EXAMPLES
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused, report


def test_a_casting_much_wider_than_its_collar_takes_the_cuts_and_the_time_that_its_width_asks(tmp_path: Path) -> None:
    # 42 mm as cast, 3 mm off the first side for saw marks and skin, 30 mm wanted: 9 mm. All but the last 0.30 mm goes in
    # cuts of 1.1 mm, a quarter up the band from 0.5 to 3 mm, on a dial of 0.05 mm: eight, fed 0.1 mm a turn over half of
    # 78 mm. One that fed 0.05 mm a turn at 0.30 mm would stand there for hours.
    sheet = made(tmp_path, "fernhill", "cast")
    left = advise(job_of(tmp_path / "again", "fernhill", "cast")).case.value("collar.second_stock")
    assert left == pytest.approx(42 - 3 - 30)
    speed = setting(sheet, "face-blank-to-width", "collar.widening.speed").value
    (faced,) = (step for step in steps(sheet) if step.id == "face-blank-to-width")
    assert {one.fact: one.value for one in figures(faced)}["collar.second_rough_cuts"] == 8
    assert faced.time is not None
    assert faced.time.cutting is not None
    bare = (8 * 78 / 2 / 0.1 + 78 / 2 / 0.05) / speed * 60
    assert bare < faced.time.cutting.value < 2 * bare


def test_a_telescoping_gauge_has_what_reads_it_wherever_it_is_used() -> None:
    for name in ("job-tube", "job"):
        sheet = make_procedure(EXAMPLES / "quarry-road" / f"{name}.toml")
        gauged = [step for step in steps(sheet) if "bore-gauge" in step.tools]
        assert gauged, name
        for step in gauged:
            assert {"micrometer-bore", "caliper-work"} & set(step.tools), step.id


def test_a_plate_much_thicker_than_its_collars_is_refused_and_sawn_thinner_first(tmp_path: Path) -> None:
    # 75 mm less 1.5 mm off the first side and 30 mm of width: over forty millimetres, where 15 cuts take some sixteen.
    job = job_of(tmp_path, "fernhill", "plate", ("stock-plate", '"40 mm"', '"75 mm"'))
    with pytest.raises(Refused) as refused:
        make_procedure(job)
    assert "Saw the blank nearer to its width" in report(refused.value)
