"""Both faces of a blank are cut alike, so the first, on a raw blank, goes no faster than the second."""

from pathlib import Path

import pytest

from cases.test_sources import setting
from shops import EXAMPLES
from tailtrue.advise import make_procedure

JOBS = ("fernhill/job", "fernhill/job-bored", "quarry-road/job-tube", "cinder-lane/job")


@pytest.mark.parametrize("job", JOBS)
def test_the_first_face_is_cut_no_faster_than_the_second(job: str) -> None:
    sheet = make_procedure(Path(EXAMPLES / f"{job}.toml"))
    first = setting(sheet, "face-blank", "collar.facing.speed").value
    second = setting(sheet, "face-blank-to-width", "collar.widening.speed").value
    assert 0 < first <= second
