"""Ways to hold bar and blank that no step carries: judged, shown with the reason, and told where nothing else is there."""

import re
from pathlib import Path

import pytest

from shops import shop, tailtrue
from tailtrue.advise import advise, make_procedure
from tailtrue.procedure import Alternative

THREE_JAW = r'\[\[lathe.chucks\]\]\nlabel = "160 mm three-jaw chuck".*?\n\n'
HOLE = ("lathe", 'jaw_depth = "30 mm"', 'jaw_depth = "30 mm"\nthrough_bore = "45 mm"')
COLLET = 'collet_from = "20 mm"\ncollet_to = "60 mm"\ncollet_hole = "62 mm"\ncollet_speed = "3500 1/min"\n'


def judged(job: Path, choice: str) -> dict[str, Alternative]:
    sheet = make_procedure(job)
    return {one.name: one for asked in sheet.choices if asked.id == choice for one in asked.alternatives}


def test_a_four_jaw_and_the_bench_are_judged_for_the_ends_of_the_bar(tmp_path: Path) -> None:
    found = judged(shop(tmp_path, "fernhill", HOLE), "bar.hold")
    four, bench = found["in four independent jaws, set true by the indicator"], list(found.values())[-1]
    assert (four.verdict, bench.verdict) == ("no", "no")
    assert "no step of this sheet does that for a bar" in four.reason
    assert "lies beside the axis" in bench.reason


@pytest.mark.parametrize(
    ("change", "takes"),
    [(HOLE, True), (("lathe", 'jaw_depth = "30 mm"', 'jaw_depth = "30 mm"\nthrough_bore = "25 mm"'), False), (None, False)],
)
def test_a_four_jaw_takes_the_bar_only_through_a_hole_that_was_measured(
    tmp_path: Path, change: tuple[str, str, str] | None, takes: bool
) -> None:
    assert advise(shop(tmp_path, "fernhill", *([change] if change else []))).case.value("bar.four_jaw_takes") is takes


def test_a_collet_is_judged_for_the_blanks(tmp_path: Path) -> None:
    thin = ("stock", 'diameter = "70 mm"', 'diameter = "58 mm"')
    measured = ("job", r"^measured_\w+ = .*?\n", "")
    for wide, said in (("60 mm", "a blank is short"), ("40 mm", "not so here: the collet closes on this blank")):
        crib = ("crib", r"^indicator_division", COLLET.replace("60 mm", wide) + "indicator_division")
        found = judged(shop(tmp_path / wide[:2], "fernhill", thin, measured, crib), "collar.hold")
        assert found["in a collet"].verdict == "no"
        assert found["in a collet"].reason.startswith(said)
    assert (
        "closes to a cone"
        in judged(
            shop(
                tmp_path / "again",
                "fernhill",
                thin,
                measured,
                ("crib", r"^indicator_division", COLLET + "indicator_division"),
            ),
            "collar.hold",
        )["in a collet"].reason
    )


def test_a_lathe_with_a_four_jaw_alone_hears_of_the_chuck_and_of_nothing_else(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", HOLE)
    lathe = job.with_name("lathe.toml")
    lathe.write_text(re.sub(THREE_JAW, "", lathe.read_text(encoding="utf-8"), flags=re.DOTALL), encoding="utf-8")
    assert [one.id for one in advise(job).refused] == ["no-three-jaw-chuck"]
    answer = tailtrue("check", job)
    assert answer.returncode == 5
    said = answer.stdout + answer.stderr
    assert "Four independent jaws hold both, but each grip must be set true anew." in said
    assert "drive" not in said
    assert "indicator_division" not in said
    asked = tailtrue("why-not", job, "bar.hold=four-jaw")
    assert "never taken" in asked.stdout
