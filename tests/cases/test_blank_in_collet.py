"""Blanks held in a collet of their size, from the files to the sheet."""

import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, make_procedure
from tailtrue.procedure import Procedure

CHUCK_JAW = (("crib", 'headstock_centre = "hard"', 'headstock_centre = "soft"'), ("crib", '"drive-plate"', '"chuck-jaw"'))


def job_of(folder: Path, *changes: tuple[str, str, str]) -> Path:
    copy = folder / "shop"
    shutil.copytree(EXAMPLES / "tannery-lane", copy)
    for file, old, new in changes:
        path = copy / f"{file}-large-collet.toml"
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")
    return copy / "job-large-collet.toml"


def names(sheet: Procedure) -> list[str]:
    return [step.id for phase in sheet.phases for step in phase.steps]


def speeds(sheet: Procedure, step: str) -> list[float]:
    return [piece.value for phase in sheet.phases for one in phase.steps if one.id == step for line in one.settings
            for piece in line.value if not isinstance(piece, str) and piece.rounding == "speed"]  # fmt: skip


def test_both_faces_of_a_blank_are_cut_in_a_collet_of_its_size() -> None:
    order = names(make_procedure(EXAMPLES / "tannery-lane" / "job-large-collet.toml"))
    marks = ["hold-bar-bore", "centre-bar", "change-to-blank-collet", "hold-blank-collet", "face-blank", "turn-blank-round",
             "reseat-collet", "face-blank-to-width", "drill-blank", "take-collar-off"]  # fmt: skip
    assert [one for one in order if one in marks] == marks
    assert not {"hold-blank-jaws", "hold-blank-spacer", "hold-blank-soft", "spacer-out"} & set(order)


def test_no_blank_turns_faster_than_the_collet_chuck_is_marked(tmp_path: Path) -> None:
    slow = make_procedure(job_of(tmp_path, ("crib", '"2000 1/min"', '"300 1/min"')))
    for step in ("face-blank", "face-blank-to-width", "spot-blank", "bore-rough", "bore-finish"):
        assert 0 < max(speeds(slow, step)) <= 300


@pytest.mark.parametrize(
    "changes",
    [
        [("crib", 'collet_length = "30 mm"', 'collet_length = "31 mm"')],
        [("crib", 'collet_length = "30 mm"\n', "")],
        [("crib", 'collet_hole = "62 mm"', 'collet_hole = "28 mm"')],
        [("crib", 'collet_from = "59 mm"\ncollet_to = "60 mm"', 'collet_from = "58 mm"\ncollet_to = "59 mm"')],
        [*CHUCK_JAW],
    ],
    ids=["too short for the collet", "length not measured", "hole too small", "another size", "the chuck is to drive"],
)
def test_a_collet_that_does_not_hold_the_blank_is_not_taken(tmp_path: Path, changes: list[tuple[str, str, str]]) -> None:
    case = advise(job_of(tmp_path, *changes)).case
    assert case.value("collar.collet_serves") is False
    assert case.value("collar.hold") != "collet"
