"""Cast blanks: sizes that hold the collar, feeders that outlast it, metal that enters slowly, and where each rule ends."""

from collections.abc import Callable
from math import inf, nan, pi
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc import casting, pouring
from tailtrue.calc.validity import OutOfRange

_BLANK = {"small_diameter_mm": 81.0, "large_diameter_mm": 83.86, "height_mm": 41.0}
_CAST = {"finished_diameter_mm": 75.0, "finished_width_mm": 35.0, "allowance_mm": 3.0, "top_extra_mm": 2.0, "draft_deg": 2.0}
_SIDE = {"casting_modulus_mm": 10.27, "factor": 1.2, "height_ratio": 1.2}
_TOP = {
    "casting_volume_mm3": 218_800.0, "casting_surface_mm2": 21_300.0, "face_diameter_mm": 83.86, "factor": 1.2,
    "height_ratio": 1.2,
}  # fmt: skip
_LEAST = {"casting_volume_mm3": 218_800.0, "shrinkage": 0.06, "efficiency": 0.14}
_CHOKE = {"mass_kg": 1.288, "density_kg_m3": 2400.0, "time_s": 6.0, "height_mm": 150.0, "discharge": 0.8}
_GATE = {"mass_kg": 1.288, "density_kg_m3": 2400.0, "time_s": 6.0, "gate_area_mm2": 261.0}
_SPRUE = {"choke_area_mm2": 65.2, "total_height_mm": 150.0, "basin_height_mm": 50.0}
_YIELD = {"casting_volume_mm3": 218_800.0, "other_volume_mm3": 318_000.0}
_MELT = {"volume_mm3": 536_800.0, "density_kg_m3": 2400.0, "surplus_share": 0.1}

# formula, sound input, what is changed in it, the last value that is taken and the first that is not, what the refusal names
_BOUNDS = [
    (casting.draft_taper, {"height_mm": 41.0, "draft_deg": 2.0}, "height_mm", 1e-9, 0, "height"),
    (casting.draft_taper, {"height_mm": 41.0, "draft_deg": 2.0}, "draft_deg", 0, -1e-9, "draft"),
    (casting.draft_taper, {"height_mm": 41.0, "draft_deg": 2.0}, "draft_deg", 5, 5.01, "draft"),
    (casting.cast_blank, _CAST, "finished_diameter_mm", 1e-9, 0, "finished diameter"),
    (casting.cast_blank, _CAST, "finished_width_mm", 1e-9, 0, "finished width"),
    (casting.cast_blank, _CAST, "allowance_mm", 1e-9, 0, "allowance for machining"),
    (casting.cast_blank, _CAST, "top_extra_mm", 0, -1e-9, "extra metal on the top face"),
    (casting.cast_blank, _CAST, "draft_deg", 5, 5.01, "draft"),
    (casting.pattern_size, {"casting_mm": 81.0, "contraction": 0.013}, "casting_mm", 1e-9, 0, "size of the casting"),
    (casting.pattern_size, {"casting_mm": 81.0, "contraction": 0.013}, "contraction", 0, -1e-9, "contraction"),
    (casting.pattern_size, {"casting_mm": 81.0, "contraction": 0.013}, "contraction", 0.03, 0.0301, "contraction"),
    *(
        row
        for formula in (casting.blank_volume, casting.blank_surface)
        for row in (
            (formula, _BLANK, "small_diameter_mm", 1e-9, 0, "small diameter"),
            (formula, _BLANK, "large_diameter_mm", 81, 80.99, "large diameter"),
            (formula, _BLANK, "height_mm", 1e-9, 0, "height"),
        )
    ),
    (casting.modulus, {"volume_mm3": 1000.0, "cooling_surface_mm2": 600.0}, "volume_mm3", 1e-9, 0, "volume"),
    (casting.modulus, {"volume_mm3": 1000.0, "cooling_surface_mm2": 600.0}, "cooling_surface_mm2", 1e-9, 0, "cooling surface"),
    (casting.modulus_factor, {"time_ratio": 1.44}, "time_ratio", 1, 0.999, "ratio of the times"),
    (casting.modulus_factor, {"time_ratio": 1.44}, "time_ratio", 2, 2.001, "ratio of the times"),
    (casting.side_feeder_diameter, _SIDE, "casting_modulus_mm", 1e-9, 0, "modulus of the casting"),
    (casting.side_feeder_diameter, _SIDE, "factor", 1, 0.999, "factor of the moduli"),
    (casting.side_feeder_diameter, _SIDE, "height_ratio", 1, 0.999, "height of the feeder in diameters"),
    (casting.side_feeder_diameter, _SIDE, "height_ratio", 1.5, 1.501, "height of the feeder in diameters"),
    (casting.top_feeder_diameter, _TOP, "casting_volume_mm3", 1e-6, 0, "volume of the casting"),
    (casting.top_feeder_diameter, _TOP, "casting_surface_mm2", 21_000, 0, "surface of the casting"),
    (casting.top_feeder_diameter, _TOP, "face_diameter_mm", 83, 0, "diameter of the face"),
    (casting.top_feeder_diameter, _TOP, "factor", 1, 0.999, "factor of the moduli"),
    (casting.top_feeder_diameter, _TOP, "height_ratio", 1, 0.999, "height of the feeder in diameters"),
    (casting.top_feeder_diameter, _TOP, "height_ratio", 1.5, 1.501, "height of the feeder in diameters"),
    (casting.feeder_volume_least, _LEAST, "casting_volume_mm3", 1e-9, 0, "volume of the casting"),
    (casting.feeder_volume_least, _LEAST, "shrinkage", 1e-9, 0, "shrinkage"),
    (casting.feeder_volume_least, _LEAST, "efficiency", 1, 1.001, "efficiency of the feeder"),
    (casting.feeder_volume_least, _LEAST, "efficiency", 0.061, -0.001, "efficiency of the feeder"),
    (casting.stick_height, {"blank_height_mm": 41.0, "top_share": 0.45}, "blank_height_mm", 1e-9, 0, "height of the blank"),
    (casting.stick_height, {"blank_height_mm": 41.0, "top_share": 0.45}, "top_share", 0.4, 0.399, "share sawn off at the top"),
    (casting.stick_height, {"blank_height_mm": 41.0, "top_share": 0.45}, "top_share", 0.5, 0.501, "share sawn off at the top"),
    (pouring.casting_yield, _YIELD, "casting_volume_mm3", 1e-9, 0, "volume of the casting"),
    (pouring.casting_yield, _YIELD, "other_volume_mm3", 0, -1e-9, "volume of feeder, runner and sprue"),
    (pouring.melt_mass, _MELT, "volume_mm3", 1e-9, 0, "volume"),
    (pouring.melt_mass, _MELT, "density_kg_m3", 1e-9, 0, "density"),
    (pouring.melt_mass, _MELT, "surplus_share", 0, -1e-9, "surplus"),
    (pouring.melt_mass, _MELT, "surplus_share", 1, 1.001, "surplus"),
    (pouring.fall_velocity, {"height_mm": 150.0}, "height_mm", 0, -1e-9, "height of the fall"),
    (pouring.fall_height, {"velocity_m_s": 0.5}, "velocity_m_s", 0, -1e-9, "velocity"),
    *((pouring.choke_area, _CHOKE, name, 1e-9, 0, said) for name, said in (
        ("mass_kg", "mass"), ("density_kg_m3", "density"), ("time_s", "time of filling"), ("height_mm", "height"),
        ("discharge", "share of the free fall"),
    )),
    (pouring.choke_area, _CHOKE, "discharge", 1, 1.001, "share of the free fall"),
    (pouring.sprue_top_area, _SPRUE, "choke_area_mm2", 1e-9, 0, "area of the choke"),
    (pouring.sprue_top_area, _SPRUE, "basin_height_mm", 1e-9, 0, "depth of metal in the basin"),
    (pouring.sprue_top_area, _SPRUE, "total_height_mm", 50, 49.99, "whole height"),
    *((pouring.gate_velocity, _GATE, name, 1e-9, 0, said) for name, said in (
        ("mass_kg", "mass"), ("density_kg_m3", "density"), ("time_s", "time of filling"), ("gate_area_mm2", "area of the gates"),
    )),
]  # fmt: skip
_IDS = [f"{formula.__name__}-{name}-{first}" for formula, _, name, _, first, _ in _BOUNDS]


@pytest.mark.parametrize(("formula", "sound", "name", "last", "first", "said"), _BOUNDS, ids=_IDS)
def test_each_rule_ends_where_it_says(
    formula: Callable[..., Any], sound: dict[str, float], name: str, last: float, first: float, said: str
) -> None:
    formula(**sound)
    formula(**{**sound, name: last})
    for beyond in (first, nan, inf if first > last else -inf):
        with pytest.raises(OutOfRange, match=rf"^{said} is "):
            formula(**{**sound, name: beyond})


def test_feeder_that_can_give_no_more_than_shrinks_is_refused() -> None:
    assert casting.feeder_volume_least(218_800, 0.139, 0.14) > 100 * 218_800
    with pytest.raises(OutOfRange, match=r"^efficiency of the feeder less the shrinkage is 0; it must be more than 0$"):
        casting.feeder_volume_least(218_800, 0.14, 0.14)


@pytest.mark.parametrize("beyond", [nan, inf])
def test_efficiency_that_is_no_number_is_refused(beyond: float) -> None:
    with pytest.raises(OutOfRange, match=r"^efficiency of the feeder is "):
        casting.feeder_volume_least(218_800, 0.06, beyond)


def test_simple_shapes_have_their_well_known_sizes() -> None:
    assert casting.cast_blank(75, 35, 3, 0, 0) == (81, 81, 41)
    assert casting.blank_volume(50, 50, 30) == pytest.approx(pi / 4 * 50**2 * 30)
    assert casting.blank_surface(20, 80, 40) == pytest.approx(pi * (10**2 + 40**2) + pi * (10 + 40) * 50)  # 30, 40, 50
    assert casting.blank_surface(50, 50, 30) == pytest.approx(2 * pi / 4 * 50**2 + pi * 50 * 30)


def test_contraction_in_dispute_moves_a_blank_by_less_than_its_allowance() -> None:
    most, least = (casting.pattern_size(81, share) for share in (0.0182, 0.0104))
    assert most - least == pytest.approx(0.63, abs=0.005)
    assert most - least < 2 * 3


def test_published_slip_of_digits_is_not_reproduced() -> None:
    found = casting.side_feeder_diameter(158.4 / 340.8 * 25.4, casting.modulus_factor(1.3), 1.5)
    assert found == pytest.approx(2.826 * 25.4, rel=1e-3)
    assert found != pytest.approx(2.711 * 25.4, rel=0.02)


def test_top_feeder_wider_than_its_face_is_refused_with_a_way_out() -> None:
    assert casting.top_feeder_diameter(**_TOP | {"height_ratio": 1.0, "face_diameter_mm": 82.0}) == pytest.approx(
        81.9, abs=0.05
    )
    just_fits = casting.top_feeder_diameter(**_TOP)
    assert casting.top_feeder_diameter(**_TOP | {"face_diameter_mm": just_fits}) == just_fits
    with pytest.raises(OutOfRange, match=r"^no feeder that fits the face of 81\.5 mm .* sawn off helps$"):
        casting.top_feeder_diameter(**_TOP | {"height_ratio": 1.0, "face_diameter_mm": 81.5})


def test_casting_too_heavy_for_any_top_feeder_is_refused() -> None:
    with pytest.raises(OutOfRange, match="no feeder that fits"):
        casting.top_feeder_diameter(300_000, 21_300, 1000, 1.2, 1.0)


def test_choke_as_wide_as_the_sprue_when_the_fall_is_all_in_the_basin() -> None:
    assert pouring.sprue_top_area(65.2, 50, 50) == 65.2


@given(
    diameter=st.floats(20, 150),
    width=st.floats(10, 100),
    allowance=st.floats(1, 6),
    extra=st.floats(0, 5),
    draft=st.floats(0, 5),
)
def test_blank_holds_the_collar_with_its_allowance_everywhere(
    diameter: float, width: float, allowance: float, extra: float, draft: float
) -> None:
    small, large, height = casting.cast_blank(diameter, width, allowance, extra, draft)
    assert large >= small >= diameter + 2 * allowance - 1e-9
    assert height == pytest.approx(width + 2 * allowance + extra)
    assert large - small == pytest.approx(casting.draft_taper(height, draft), abs=1e-9)


@given(small=st.floats(20, 150), more=st.floats(0, 20), height=st.floats(10, 150), scale=st.floats(0.1, 10))
def test_sizes_scale_as_length_area_and_volume(small: float, more: float, height: float, scale: float) -> None:
    volume, surface = (measure(small, small + more, height) for measure in (casting.blank_volume, casting.blank_surface))
    scaled = (small * scale, (small + more) * scale, height * scale)
    assert casting.blank_volume(*scaled) == pytest.approx(volume * scale**3)
    assert casting.blank_surface(*scaled) == pytest.approx(surface * scale**2)
    assert casting.modulus(volume, surface) < small / 4 + more  # never more than that of an endless bar


@given(modulus=st.floats(3, 30), factor=st.floats(1, 1.4), ratio=st.floats(1, 1.5))
def test_side_feeder_has_the_modulus_it_was_sized_for(modulus: float, factor: float, ratio: float) -> None:
    diameter = casting.side_feeder_diameter(modulus, factor, ratio)
    height = ratio * diameter
    volume, surface = casting.blank_volume(diameter, diameter, height), casting.blank_surface(diameter, diameter, height)
    assert casting.modulus(volume, surface) == pytest.approx(factor * modulus)


@given(width=st.floats(20, 45), factor=st.floats(1, 1.2), ratio=st.floats(1, 1.5))
def test_top_feeder_has_the_modulus_it_was_sized_for(width: float, factor: float, ratio: float) -> None:
    volume, surface = casting.blank_volume(81, 83.86, width), casting.blank_surface(81, 83.86, width)
    try:
        diameter = casting.top_feeder_diameter(volume, surface, 83.86, factor, ratio)
    except OutOfRange:
        return
    shared = pi / 4 * diameter**2
    cooling = casting.blank_surface(diameter, diameter, ratio * diameter) - shared
    feeder = casting.modulus(casting.blank_volume(diameter, diameter, ratio * diameter), cooling)
    assert feeder == pytest.approx(factor * casting.modulus(volume, surface - shared))
    assert diameter <= 83.86


@given(volume=st.floats(1e4, 1e6), shrinkage=st.floats(0.035, 0.085))
def test_least_feeder_gives_just_what_shrinks(volume: float, shrinkage: float) -> None:
    feeder = casting.feeder_volume_least(volume, shrinkage, 0.14)
    assert 0.14 * feeder == pytest.approx(shrinkage * (volume + feeder))


@given(height=st.floats(0.1, 1000))
def test_fall_and_velocity_are_each_others_way_back(height: float) -> None:
    assert pouring.fall_height(pouring.fall_velocity(height)) == pytest.approx(height)


@given(mass=st.floats(0.2, 5), time=st.floats(2, 20), height=st.floats(20, 300), discharge=st.floats(0.5, 1))
def test_metal_leaves_the_choke_at_the_share_of_free_fall(mass: float, time: float, height: float, discharge: float) -> None:
    area = pouring.choke_area(mass, 2400, time, height, discharge)
    assert pouring.gate_velocity(mass, 2400, time, area) == pytest.approx(discharge * pouring.fall_velocity(height))


@given(top=st.floats(50, 300), share=st.floats(0.1, 1))
def test_metal_stays_full_in_the_sprue(top: float, share: float) -> None:
    """The same volume passes at the top, fallen through the basin, and at the choke."""
    area = pouring.sprue_top_area(65.2, top, share * top)
    assert area * pouring.fall_velocity(share * top) == pytest.approx(65.2 * pouring.fall_velocity(top))
    assert area >= 65.2 * (1 - 1e-12)


def test_surplus_is_added_to_the_mass() -> None:
    assert pouring.melt_mass(1e6, 2400, 0.25) == pytest.approx(3.0)
