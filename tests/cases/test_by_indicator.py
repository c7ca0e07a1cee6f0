"""No micrometer covers the collars: the job goes on with an indicator where its doubt allows a verdict, and says so."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import make_procedure
from tailtrue.errors import Refused
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure

JOB = EXAMPLES / "fernhill" / "use-bar-by-indicator.toml"


def steps(sheet: Procedure) -> list[str]:
    return [step.id for phase in sheet.phases for step in phase.steps]


def away(folder: Path, *changes: tuple[str, str, str], job: str = "use-bar.toml") -> Path:
    """Fernhill without its large micrometer."""
    micrometer = ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "50 mm".*?\n\n', "")
    return shop(folder, "fernhill", micrometer, *changes).with_name(job)


def test_the_sheet_reads_by_indicator_and_still_gives_a_verdict() -> None:
    sheet = make_procedure(JOB)
    assert "indicate-collars" in steps(sheet)
    assert "read-collars" not in steps(sheet)
    assert sheet.look_up is not None
    assert sheet.look_up.verdict_possible
    assert sheet.look_up.inside is not None


def test_a_tool_at_the_rear_puts_the_plunger_in_front(tmp_path: Path) -> None:
    sheet = make_procedure(away(tmp_path, ("lathe", 'tool_side = "front"', 'tool_side = "rear"')))
    step = next(step for phase in sheet.phases for step in phase.steps if step.id == "indicate-collars")
    said = " ".join(piece for line in step.settings for piece in line.value if isinstance(piece, str))
    assert "the front, your side, away from the tool" in said
    assert "rear" not in said


@pytest.mark.parametrize("job", ["use-bar.toml", "job.toml", "re-certify.toml"])
def test_with_a_micrometer_nothing_is_read_by_indicator(job: str) -> None:
    assert "indicate-collars" not in steps(make_procedure(EXAMPLES / "fernhill" / job))


@pytest.mark.parametrize("job", ["re-certify.toml", "taper-and-return.toml"])
def test_the_other_routes_go_on_by_indicator(job: str, tmp_path: Path) -> None:
    sheet = make_procedure(away(tmp_path, job=job))
    assert "indicate-collars" in steps(sheet)
    assert "read-collars" not in steps(sheet)


def test_a_coarse_indicator_is_refused_with_figures(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        make_procedure(away(tmp_path, ("crib", 'indicator_division = "0.002 mm"', 'indicator_division = "0.01 mm"')))
    (stop,) = refused.value.problems
    assert stop.where == "indicator-too-coarse-for-the-collars"
    assert "0.010\u00a0mm" in stop.wrong
    assert "coarse use" in stop.do


def test_a_coarse_indicator_gives_no_verdict_and_brings_nearer_than_a_caliper(tmp_path: Path) -> None:
    coarse = ("job", 'accuracy = "good"', 'accuracy = "good"\ncoarse_use = true')
    division = ("crib", 'indicator_division = "0.002 mm"', 'indicator_division = "0.01 mm"')
    use = (coarse[0].replace("job", "use-bar"), *coarse[1:])
    by_indicator = make_procedure(away(tmp_path / "one", use, division))
    by_caliper = make_procedure(away(tmp_path / "two", use, ("crib", 'indicator_division = "0.002 mm"\n', ""),
                                     ("lathe", 'set_over = "two-screws"', 'set_over = "none"')))  # fmt: skip
    doubts = []
    for sheet in (by_indicator, by_caliper):
        assert sheet.look_up is not None
        assert not sheet.look_up.verdict_possible
        assert sheet.look_up.inside is None
        assert isinstance(sheet.look_up.leave, Figure)
        doubts.append(sheet.look_up.leave.value)
    assert doubts[0] < doubts[1]


def test_readings_by_indicator_move_as_diameters_do() -> None:
    # The plunger away from the tool shows the whole difference, so the same numbers ask for the same move.
    one = tailtrue("correct", JOB, "--indicator", "--head", "0 mm, 0 mm", "--tail", "0.042 mm, 0.042 mm", "--order", "HTTH")
    assert one.returncode == 0, one.stderr
    assert "MOVE THE TAILSTOCK toward you by 0.029\u00a0mm" in one.stdout
    assert "It tells no diameter" in one.stdout


def test_readings_that_the_tool_side_would_give_move_nothing_and_pass_nothing() -> None:
    alike = ("--head", "0 mm, 0.002 mm", "--tail", "0.002 mm, 0 mm", "--order", "HTTH")
    found = tailtrue("correct", JOB, "--indicator", *alike)
    assert "DO NOT MOVE" in found.stdout
    assert "IN limits" not in found.stdout
    assert "On the side of the tool" in found.stdout
    stands = tailtrue("correct", JOB, "--indicator", *alike, "--read-twice")
    assert "IN limits" in stands.stdout


def test_two_instruments_are_not_named_at_once() -> None:
    found = tailtrue("correct", JOB, "--indicator", "--caliper", "--head", "0 mm", "--tail", "0.01 mm")
    assert found.returncode == 2
    assert "name the one that read both collars" in found.stderr


def test_readings_of_nought_are_no_diameters_for_a_micrometer() -> None:
    found = tailtrue("correct", JOB, "--head", "0 mm", "--tail", "0.01 mm")
    assert found.returncode != 0
    assert "is no diameter" in found.stderr
