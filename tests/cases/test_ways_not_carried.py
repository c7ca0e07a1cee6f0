"""Ways to hold bar and blank that no step carries: judged, shown with the reason, and told where nothing else is there."""

from pathlib import Path

from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Alternative

COLLET = 'collet_from = "20 mm"\ncollet_to = "60 mm"\ncollet_hole = "62 mm"\ncollet_speed = "3500 1/min"\n'


def judged(job: Path, choice: str) -> dict[str, Alternative]:
    sheet = make_procedure(job)
    return {one.name: one for asked in sheet.choices if asked.id == choice for one in asked.alternatives}


def test_the_bench_is_judged_for_the_ends_of_the_bar(tmp_path: Path) -> None:
    bench = list(judged(shop(tmp_path, "fernhill"), "bar.hold").values())[-1]
    assert bench.verdict == "no"
    assert "lies beside the axis" in bench.reason


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
