"""A joint that is the one way makes the collars as wide as it asks for: to hold a catch, or to leave a track beside it."""

from math import pi
from pathlib import Path

import pytest

from cases.test_joints import GAUGE, KIT, made, number, refusal, steps, wished
from tailtrue.advise import knowledge


def test_a_dowel_of_an_inch_size_holds(tmp_path: Path) -> None:
    # 1/4 in: 6.35 mm, and 130 000 lb/in2 over two sections; nobody found the standard to confirm it.
    inch = KIT.replace('"6 mm", length = "40 mm"', '"0.25 in", length = "1.75 in"').replace(
        '"6 mm", length = "20 mm"', '"0.125 in", length = "1.75 in"'
    )
    tree = made(tmp_path, "fernhill", wished("radial-pin", *GAUGE, kit=inch))
    # On a collar of 25 mm so thick a pin leaves no track: 3 diameters and 6 mm, up to a whole millimetre.
    assert number(tree, "collar.width") == 26
    assert number(tree, "joint.radial_pin.diameter") == pytest.approx(6.35)
    assert number(tree, "joint.torque") >= number(tree, "joint.catch_torque")
    known = {row.number("diameter_mm"): row for row in knowledge().tables["joints/pins"].where(type="hardened-dowel")}
    for size, row in known.items():
        if row.text("source") == "memory":
            # Single shear of 130 000 lb/in2 is 896 MPa; what is remembered is rounded down.
            assert row.number("double_shear_n") == pytest.approx(2 * pi * size**2 / 4 * 896.3, rel=0.01)


@pytest.mark.parametrize("wish", [None, "retaining-compound"])
def test_a_bond_that_is_the_one_way_makes_the_collars_wider(tmp_path: Path, wish: str | None) -> None:
    strong = made(tmp_path / "strong", "fernhill", wished(wish, *GAUGE, kit="compressed_air = true\n"))
    weak = ("crib", 'compound_cure = "24 h"', 'compound_cure = "24 h"\ncompound_strength = "14 MPa"')
    tree = made(tmp_path / "weak", "fernhill", wished(wish, weak, *GAUGE, kit="compressed_air = true\n"))
    assert number(strong, "collar.width") == 25 < number(tree, "collar.width")
    assert "bond" in steps(tree)
    assert number(tree, "joint.catch_margin") >= 1


@pytest.mark.parametrize("wish", [None, "set-screws"])
def test_screws_that_are_the_one_way_make_the_collars_wide_enough_for_a_track(tmp_path: Path, wish: str | None) -> None:
    """Three diameters of the screw are taken from the rim, and the faces of a micrometer need 6 mm beside that."""
    kit = 'compressed_air = true\ndrill_press = true\ntaps = ["M8"]\nset_screws = [{ thread = "M8", length = "12 mm" }]\n'
    bare = ("crib", r"compound_gap.*?activator = false\n", "")
    thin = (("stock", '"25 mm"', '"22 mm"'), ("job", r"measured_(head|tail) = [^\n]*\n", ""))
    tree = made(tmp_path, "fernhill", wished(wish, bare, *thin, *GAUGE, kit=kit))
    assert number(tree, "collar.width") == 3 * 8 + 6 > number(tree, "bar.diameter")
    assert number(tree, "joint.set_screws.track") == 6
    assert number(tree, "joint.catch_margin") >= 1


def test_a_bond_beside_another_way_leaves_the_width_alone(tmp_path: Path) -> None:
    weak = ("crib", 'compound_cure = "24 h"', 'compound_cure = "24 h"\ncompound_strength = "14 MPa"')
    assert number(made(tmp_path, "fernhill", wished(None, weak, *GAUGE)), "collar.width") == 25


def test_a_bond_too_weak_at_every_width_is_refused(tmp_path: Path) -> None:
    weak = ("crib", 'compound_cure = "24 h"', 'compound_cure = "24 h"\ncompound_strength = "9 MPa"')
    said = refusal(tmp_path, "fernhill", wished(None, weak, *GAUGE, kit="compressed_air = true\n"))
    assert "bond-too-weak:" in said
    assert "wide: collar_width in the job file" not in said
