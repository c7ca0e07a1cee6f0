"""A protection that nobody told of is asked of the inspection too, and the sheet of a whole job names it."""

from dataclasses import replace
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, make_procedure, shop_for
from tailtrue.inspection import inspect

RELEASE = r"^no_volt_release = [a-z]+\n"


def test_the_inspection_knows_of_a_release_that_nobody_tried_and_the_sheet_tells_it(tmp_path: Path) -> None:
    path = shop(tmp_path, "fernhill", ("lathe", RELEASE, ""))
    asked, sheet = shop_for(advise(path)), make_procedure(path)
    assert "no-volt release" in asked.unsaid
    silent = sheet.model_copy(update={"findings": tuple(one for one in sheet.findings if one.level != "attention")})
    failed = {failure.rule for failure in inspect(silent, asked).failures}
    assert "V267" in failed
    assert "V267" not in {failure.rule for failure in inspect(silent, replace(asked, unsaid=())).failures}


@pytest.mark.parametrize("job", ["job", "use-bar", "chucked-bar-test"])
def test_nothing_is_open_that_the_sheet_does_not_tell(tmp_path: Path, job: str) -> None:
    path = shop(tmp_path, "fernhill", ("lathe", RELEASE, "")).with_name(f"{job}.toml")
    told = " ".join(str(one.text) for one in make_procedure(path).findings if one.level == "attention")
    unsaid = shop_for(advise(path)).unsaid
    assert unsaid
    assert all(label in told for label in unsaid)


def test_what_was_said_is_not_asked() -> None:
    assert "no-volt release" not in shop_for(advise(EXAMPLES / "fernhill" / "job.toml")).unsaid
