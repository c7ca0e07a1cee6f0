"""What fills the spindle round the far end of a bar: a bush, or tape where a bush would be too thin."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure

SAYS = {"bush": "bush on the far end", "tape": "tape on the far end, up to"}


def filled_by(sheet: Procedure, step: str) -> list[str]:
    held = next(one for phase in sheet.phases for one in phase.steps if one.id == step)
    labels = ["".join(map(str, line.label)) for line in held.settings]
    return [word for word, label in SAYS.items() if label in labels]


@pytest.mark.parametrize(
    ("bore", "filled"),
    # A bar of 25, and 0.2 for the bush to slide in: walls of 1.99, 2.0 and 2.4, where 2 is the thinnest.
    [("29.18 mm", "tape"), ("29.2 mm", "bush"), ("30 mm", "bush")],
)
def test_tape_fills_what_a_bush_of_two_millimetres_would_not(tmp_path: Path, bore: str, filled: str) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", ("lathe", 'spindle_bore = "38 mm"', f'spindle_bore = "{bore}"')))
    assert filled_by(sheet, "hold-bar-bore") == [filled]


@pytest.mark.parametrize(
    ("place", "was", "bore", "step", "filled"),
    # Bars of 25 in the collet and of 22 in the four jaws.
    [
        ("tannery-lane", "38 mm", "29 mm", "hold-bar-collet", "tape"),
        ("tannery-lane", "38 mm", "38 mm", "hold-bar-collet", "bush"),
        ("weir-cottage", "28 mm", "26 mm", "hold-bar-four-jaw", "tape"),
        ("weir-cottage", "28 mm", "28 mm", "hold-bar-four-jaw", "bush"),
    ],
)
def test_in_a_collet_and_in_four_jaws_it_is_the_same(
    tmp_path: Path, place: str, was: str, bore: str, step: str, filled: str
) -> None:
    job = shop(tmp_path, place, ("lathe", f'spindle_bore = "{was}"', f'spindle_bore = "{bore}"'))
    assert filled_by(make_procedure(job), step) == [filled]
