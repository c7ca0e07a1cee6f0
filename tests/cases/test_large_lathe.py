"""A lathe of 500 mm swing, 2 m between centres and Morse 5 is carried, and its chuck is lifted by a hoist."""

from pathlib import Path
from typing import Any

import pytest

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import advise, procedure_of
from tailtrue.procedure import Procedure

CHUCK = {
    "label": "315 mm three-jaw chuck", "jaws": 3, "kind": "scroll", "body": "315 mm", "marked_speed": "1200 1/min",
    "grips_to": "250 mm", "through_bore": "90 mm", "jaw_depth": "60 mm",
}  # fmt: skip
LARGE: dict[str, Any] = {
    "lathe.swing_over_bed": "500 mm", "lathe.swing_over_cross_slide": "310 mm", "lathe.between_centres": "2000 mm",
    "lathe.spindle_bore": "80 mm", "lathe.spindle_length": "900 mm", "lathe.motor_power": "7.5 kW",
    "lathe.tailstock_taper": "MT5", "lathe.quill_travel": "180 mm", "lathe.chucks": [CHUCK],
    "lathe.speeds": ["20 1/min", "32 1/min", "50 1/min", "80 1/min", "125 1/min", "200 1/min", "315 1/min", "500 1/min", "800 1/min"],
    "lathe.speed_settings": None,
}  # fmt: skip
BAR = {
    "stock.bars": [{
        "label": "40 mm bar", "material": "steel-low-carbon-cold-drawn", "diameter": "40 mm", "length": "2000 mm",
        "finish": "cold-drawn",
    }],
    "job.measured_head": None, "job.measured_tail": None, "crib.spacer": "35 mm", "crib.dog_to": "60 mm",
    "crib.boring_bars": [
        {"shank": "16 mm", "reach": "100 mm", "least_bore": "20 mm", "material": "steel", "tip": "carbide"}
    ],
    "crib.bore_gauges": [{"kind": "telescoping", "from": "32 mm", "to": "54 mm"}],
}  # fmt: skip


def made(job: str, **more: Any) -> Procedure:
    return procedure_of(advise(EXAMPLES / "fernhill" / f"{job}.toml", instead={**LARGE, **more}))


@pytest.mark.parametrize("job", ["job", "use-bar"])
def test_the_sheet_is_made_and_tells_that_the_chuck_is_lifted_with_a_hoist(job: str) -> None:
    tree = made(job, **(BAR if job == "job" else {}))
    told = [caution for phase in tree.phases for caution in phase.cautions if caution.id == "chuck-beyond-two-people"]
    (caution,) = told
    masses = [piece.value for line in caution.avoid for piece in line if not isinstance(piece, str)]
    # Catalogues of chucks of this size give 45 kg to 60 kg (memory).
    assert masses == [pytest.approx(52.5, abs=7.5)]


def test_a_longer_bed_makes_no_longer_bar_than_the_bar_bears() -> None:
    tree = made("job", **BAR)
    assert tree.drawing is not None
    sizes = {name: figure.value for name, figure in tree.drawing.dimensions.items()}
    assert sizes["bar.length"] < 16 * sizes["bar.diameter"]


def test_a_lathe_larger_still_is_told_that_the_rules_end_there(tmp_path: Path) -> None:
    done = tailtrue("check", shop(tmp_path, "fernhill", ("lathe", r'swing_over_bed = "[^"]*"', 'swing_over_bed = "800 mm"')))
    assert done.returncode == 4
    assert "a true value beyond that is beyond these rules" in done.stderr
