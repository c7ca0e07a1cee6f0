"""A bar on hand may have one collar larger than the other; a division that is told is one that indicators are sold with."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise
from tailtrue.errors import ReadingsWrong, report
from tailtrue.render.words import say
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import judge_visit


def test_the_larger_collar_of_a_bar_on_hand_is_no_slip_and_a_turn_of_the_thimble_more_is() -> None:
    case = advise(EXAMPLES / "fernhill" / "use-bar.toml").case
    smaller = case.value("collar.diameter")
    larger, slip = f"{smaller + 0.5:.3f} mm", f"{smaller + 1.2:.3f} mm"
    found = judge_visit(case, read_lists(f"{smaller:.3f} mm, {smaller:.3f} mm", f"{larger}, {larger}", ""), "micrometer", {})
    assert found.case.value("visit.difference") == pytest.approx(0.5)
    with pytest.raises(ReadingsWrong) as wrong:
        judge_visit(case, read_lists(f"{smaller:.3f} mm, {smaller:.3f} mm", f"{slip}, {slip}", ""), "micrometer", {})
    said = report(wrong.value)
    assert "is more than a collar of this bar can be" in said
    assert "mend the diameter in the stock file" in said


@pytest.mark.parametrize(
    ("division", "told", "serves"),
    [("0.001 in", "0.005 mm (0.0001 in)", "0.0001 in"), ("0.01 mm", "0.005 mm (0.0001 in)", "0.005 mm")],
)
def test_the_division_that_would_do_is_one_that_is_sold(tmp_path: Path, division: str, told: str, serves: str) -> None:
    job = shop(tmp_path, "fernhill", ("crib", r'indicator_division = "[^"]*"', f'indicator_division = "{division}"'))
    advice = advise(job.with_name("height-and-droop.toml"))
    (refused,) = (one for one in advice.refused if one.id == "indicator-too-coarse-for-the-height")
    assert f"at most {told}" in say(refused.text, advice.dials).replace("\N{NO-BREAK SPACE}", " ")
    crib = job.with_name("crib.toml")
    crib.write_text(
        crib.read_text("utf-8").replace(f'indicator_division = "{division}"', f'indicator_division = "{serves}"'), "utf-8"
    )
    assert not advise(job.with_name("height-and-droop.toml")).refused
