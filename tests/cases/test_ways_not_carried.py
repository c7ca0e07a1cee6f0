"""Ways to hold blanks that are left: judged beside the choice, and named at a refusal with what they would need."""

from pathlib import Path

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import advise, make_procedure
from tailtrue.procedure import Alternative


def judged(job: Path, choice: str) -> dict[str, Alternative]:
    sheet = make_procedure(job)
    return {one.name: one for asked in sheet.choices if asked.id == choice for one in asked.alternatives}


def test_a_faceplate_is_left_where_a_chuck_holds_and_a_mandrel_is_never_taken() -> None:
    found = judged(EXAMPLES / "fernhill" / "job-plate.toml", "collar.hold")
    assert found["clamped to the faceplate for its bore, then on a stub mandrel"].verdict == "no"
    bored = judged(EXAMPLES / "fernhill" / "job-bored.toml", "collar.hold")
    assert (
        "nothing can bore a collar that sits on a mandrel"
        in bored["between centres, on a mandrel pressed into its bore"].reason
    )


def test_a_refused_blank_hears_why_no_mandrel_is_taken(tmp_path: Path) -> None:
    answer = tailtrue("check", shop(tmp_path, "fernhill", ("crib", r"^spacer = .*?\n", "")))
    assert answer.returncode == 5
    assert "A mandrel between centres is never taken" in " ".join((answer.stdout + answer.stderr).split())


def test_a_refused_slug_hears_what_a_faceplate_would_need(tmp_path: Path) -> None:
    four_jaw = ("lathe", r'\[\[lathe.chucks\]\]\nlabel = "200 mm four-jaw chuck".*?condition = "good"\n', "")
    job = shop(tmp_path, "fernhill", four_jaw).with_name("job-plate.toml")
    answer = tailtrue("check", job)
    assert answer.returncode == 5
    said = " ".join((answer.stdout + answer.stderr).split())
    assert "enter the faceplate with straps and packing, and a stub mandrel" in said


def test_round_bar_that_no_chuck_opens_to_is_not_clamped(tmp_path: Path) -> None:
    small = ("lathe", r'(160 mm three-jaw chuck.*?grips_to = )"100 mm"', r'\1"60 mm"')
    faceplate = ("crib", 'drive = "drive-plate"', 'drive = "faceplate"')
    refused = advise(shop(tmp_path, "fernhill", small, faceplate))
    told = next(str(stop) for stop in refused.refused if stop.id == "collar-does-not-fit-the-chuck")
    assert "A slug of plate or a casting may be clamped to a faceplate" in told
    assert refused.case.value("collar.plated") is False
