"""What the files settle stands on the sheet as it is, not as a tree of cases."""

from pathlib import Path

import pytest

from tailtrue.computed.hole import sleeve_for

from .test_choices import Change, made, plain

STRAIGHT, TAPER = 'set = "metric-1-13-by-0.5"', 'sizes = \\["16 mm", "20 mm", "23 mm"\\]'


def lines(sheet: object, step: str) -> str:
    phases = sheet.phases  # type: ignore[attr-defined]
    return " ".join(plain(text) for phase in phases for one in phase.steps if one.id == step for text in one.text)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ((), "Do this for the last drill alone. Stop the spindle."),
        (
            (("crib", STRAIGHT, 'sizes = ["4 mm", "8 mm"]'), ("crib", TAPER, 'sizes = ["16 mm", "23 mm"]')),
            "Do this for the drills with a taper shank, the last of the list. Stop the spindle.",
        ),
    ],
    ids=["one", "several"],
)
def test_the_drills_with_a_taper_shank_are_named_by_their_place(
    changes: tuple[Change, ...], said: str, tmp_path: Path
) -> None:
    sheet = made(tmp_path, "fernhill", *changes)
    words = lines(sheet, "drill-taper-shank")
    assert words.startswith(said)
    assert "straight shank" not in words
    assert "Push its shank into a clean, dry sleeve first." in words


def test_a_sleeve_is_left_open_only_where_some_shanks_are_smaller_than_the_quill() -> None:
    def ladder(*shanks: str) -> list[dict[str, object]]:
        return [{"shank": shank, "taper_shank": shank.startswith("MT")} for shank in shanks]

    assert sleeve_for(ladder("straight", "MT2"), "MT3") == "every"
    assert sleeve_for(ladder("straight", "MT3"), "MT3") == "none"
    assert sleeve_for(ladder("MT2", "MT3"), "MT3") == "some"


def test_fluid_and_strips_and_bush_are_told_as_they_are(tmp_path: Path) -> None:
    oiled, dry = made(tmp_path / "oiled", "fernhill"), made(tmp_path / "dry", "quarry-road")
    assert "Brush on fluid." in lines(oiled, "drill-blank")
    assert "Drill dry." in lines(dry, "drill-blank")
    assert "Fit the bush on the far end." in lines(oiled, "hold-bar-bore")
    collet = made(tmp_path / "collet", "tannery-lane")
    words = lines(collet, "hold-bar-collet")
    assert "list" not in words
    assert "Slide the bar into the spindle from the" in words
