"""Of several chucks the one that holds the blank best is chosen, and the sheet shows every other with its reason."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, make_procedure

Change = tuple[str, str, str]


def second(jaws: str = "40 mm", hole: str = 'through_bore = "50 mm"', opens: str = "130 mm") -> Change:
    chuck = f"""

[[lathe.chucks]]
label = "200 mm three-jaw chuck"
jaws = 3
kind = "scroll"
body = "200 mm"
marked_speed = "2000 1/min"
grips_to = "{opens}"
{hole}
jaw_depth = "{jaws}"
condition = "good"
"""
    return ("lathe", r"\Z", chuck)


SMALL, LARGE = "160 mm three-jaw chuck", "200 mm three-jaw chuck"
MOVED = ("crib", 'soft_jaws_chuck = "160', 'soft_jaws_chuck = "200')
NO_SOFT = ("crib", r'soft_jaws_chuck.*?soft_jaws_plug_width = "12 mm"\n', 'spacer = "14 mm"\n')
# 41 mm on a bar of 25 mm: a ring whose wall is a fifth of its diameter.
THIN = [("stock", '"70 mm"\n', '"41 mm"\n'), ("crib", '"62 mm"', '"33 mm"'), ("crib", '"45 mm"', '"35 mm"')]


@pytest.mark.parametrize(
    ("changes", "chuck", "hold"),
    [
        ([second()], SMALL, "soft-jaws"),
        ([second(), MOVED], LARGE, "soft-jaws"),
        ([second("18 mm")], LARGE, "jaws"),
        ([second("18 mm", "")], SMALL, "soft-jaws"),
        ([second("18 mm", 'through_bore = "25 mm"')], SMALL, "soft-jaws"),
        ([second(), NO_SOFT], SMALL, "jaws-and-spacer"),
        ([second("18 mm"), *THIN, MOVED], LARGE, "soft-jaws"),
        ([second("18 mm"), *THIN], SMALL, "soft-jaws"),
        ([MOVED, second(opens="69 mm"), ("crib", 'saw = "bandsaw"', 'saw = "bandsaw"\nspacer = "14 mm"')], SMALL, "jaws-and-spacer"),
    ],
    ids=[
        "soft jaws of the small one", "soft jaws of the large one", "shallow jaws of the large one", "hole not said",
        "hole too small", "neither better", "thin ring, soft jaws of the large one", "thin ring, soft jaws of the small one",
        "the large one does not open so far",
    ],
)  # fmt: skip
def test_the_chuck_that_holds_the_blank_best_is_taken_for_blanks_and_bar(
    tmp_path: Path, changes: list[Change], chuck: str, hold: str
) -> None:
    case = advise(shop(tmp_path, "tannery-lane", *changes)).case
    assert case.value("blank.chuck_label") == chuck
    assert case.value("chuck.label") == chuck
    assert case.value("collar.hold") == hold
    verdicts = {one["label"]: one["verdict"] for one in case.value("blank.chuck_offers")}
    assert verdicts == {one: "chosen" if one == chuck else "left" for one in (SMALL, LARGE)}


def test_the_sheet_shows_every_chuck_before_the_machine_is_looked_at(tmp_path: Path) -> None:
    sheet = make_procedure(shop(tmp_path, "tannery-lane", second(), MOVED))
    steps = [step for phase in sheet.phases for step in phase.steps]
    names = [step.id for step in steps]
    assert names.index("pick-chuck") < names.index("check-machine")
    shown = next(step for step in steps if step.id == "pick-chuck").settings
    assert len(shown) == 2
    assert ["".join(str(piece) for piece in line.reason) for line in shown] == [
        "the blank sits behind its jaws", "its soft jaws take the blank",
    ]  # fmt: skip


def test_with_one_chuck_of_the_kind_nothing_is_to_be_chosen() -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    assert "pick-chuck" not in [step.id for phase in sheet.phases for step in phase.steps]


def test_each_chuck_has_its_own_limit_by_name_in_the_table() -> None:
    # As marked in the example files: three-jaw 2500, four-jaw 1500; three-jaw 2800, collet chuck 3500.
    def limits(shop_name: str, job: str) -> list[str]:
        sheet = make_procedure(EXAMPLES / shop_name / f"{job}.toml")
        return ["".join(str(getattr(one, "value", one)) for one in row.limit) for row in sheet.limits]

    cast = limits("fernhill", "job-cast")
    assert "2500.0 at most with 160 mm three-jaw chuck" in cast
    assert "1500.0 at most with 200 mm four-jaw chuck" in cast
    assert "3500.0 at most" in limits("tannery-lane", "job")
    assert not any("four-jaw" in row for row in limits("fernhill", "job"))


@pytest.mark.parametrize("opens", [45, 55])
def test_a_chuck_that_holds_the_blanks_and_not_the_test_piece_is_left(tmp_path: Path, opens: int) -> None:
    """The chucked test uses no blanks: its piece of 50 mm goes into a chuck that opens to it."""
    small = (
        f'\n[[lathe.chucks]]\nlabel = "100 mm three-jaw chuck"\njaws = 3\nkind = "scroll"\nbody = "100 mm"\n'
        f'marked_speed = "2500 1/min"\ngrips_to = "{opens} mm"\njaw_depth = "32 mm"\ncondition = "good"\n'
    )
    changes = (("lathe", r"\Z", small), ("test-pieces", 'diameter = "70 mm"', 'diameter = "42 mm"'))
    case = advise(shop(tmp_path, "fernhill", *changes).with_name("chucked-bar-test.toml")).case
    assert case.value("blank.chuck_label") == "100 mm three-jaw chuck"
    assert case.value("chuck.label") == ("160 mm three-jaw chuck" if opens < 50 else "100 mm three-jaw chuck")
