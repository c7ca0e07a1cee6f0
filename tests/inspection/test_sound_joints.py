"""Joints that lie just inside what the rules allow pass."""

import pytest

from tailtrue.inspection import inspect
from tailtrue.parts import Figure

from .changed import reviewed_anew
from .joined import held_by
from .sample_pieces import mm

SOUND: dict[str, tuple[str, tuple[Figure, ...]]] = {
    # 25 - sqrt((11 - 0.5 + 12)^2 + 3^2) = 2.3 mm
    "set screw": (
        "set-screw",
        (mm("joint.set_screws.length", 12.0), mm("joint.set_screws.major", 6.0), mm("joint.set_screws.spot", 0.5)),
    ),
    # (50 - sqrt(47.5^2 + 4^2)) / 2 = 1.2 mm
    "pin across": ("pin", (mm("joint.radial_pin.length", 47.5), mm("joint.radial_pin.diameter", 4.0))),
    # rim of the head 22 mm out: half the chord is sqrt(625 - 484) = 11.9 mm
    "clamp screw": ("set-screw", (mm("joint.split_clamp.length", 20.0), mm("joint.split_clamp.head", 8.0))),
}


@pytest.mark.parametrize("name", SOUND)
def test_a_joint_just_inside_passes(name: str) -> None:
    activity, sizes = SOUND[name]
    assert inspect(*reviewed_anew(held_by(activity, *sizes))).failures == ()
