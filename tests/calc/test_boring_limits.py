"""Boring and centre holes at the edges of their validity."""

from typing import Any

import pytest

from limits import (
    Formula,
    Limit,
    Table,
    above_zero,
    from_zero,
    holds_at_its_edges,
    is_whole,
    rows,
    within,
)
from tailtrue.calc import boring, boring_passes, centre_hole

_FEED, _DIAMETER, _SPEED = above_zero("feed"), above_zero("diameter"), above_zero("spindle speed")

_TABLE: Table = {
    boring.overhang_ratio: (
        {"overhang_mm": 48, "shank_mm": 12},
        {"overhang_mm": above_zero("overhang"), "shank_mm": above_zero("shank")},
    ),
    boring.boring_bar_deflection: (
        {"force_n": 50, "overhang_mm": 48, "shank_mm": 12, "modulus_mpa": 206000},
        {
            "force_n": from_zero("force"),
            "overhang_mm": Limit("", (0, -1, 29.9), (30,)),
            "shank_mm": above_zero("shank"),
            "modulus_mpa": above_zero("modulus of elasticity"),
        },
    ),
    centre_hole.cone_depth: (
        {"large_mm": 5.3, "small_mm": 2.5, "cone_deg": 60},
        {
            "large_mm": Limit("", (0, -1, 2.5, 2), (2.51,)),
            "small_mm": Limit("", (0, -1, 5.3), (5.29,)),
            "cone_deg": within("angle of the cone", 20, 150),
        },
    ),
    centre_hole.cone_diameter: (
        {"depth_mm": 2.4, "small_mm": 2.5, "cone_deg": 60},
        {
            "depth_mm": above_zero("depth of the cone"),
            "small_mm": above_zero("small diameter of the cone"),
            "cone_deg": within("angle of the cone", 20, 150),
        },
    ),
    centre_hole.cone_within_drill: (
        {"pilot_mm": 2.5, "largest_cone_mm": 5.3, "share": 0.75},
        {
            "pilot_mm": Limit("", (0, -1, 5.3), (5.29,)),
            "largest_cone_mm": Limit("", (0, -1, 2.5), (2.51,)),
            "share": within("share of the cone", 0.05, 1),
        },
    ),
    centre_hole.largest_cone: (
        {"bar_mm": 25, "cone_share": 0.3},
        {"bar_mm": above_zero("diameter of the bar"), "cone_share": within("cone as a share of the bar", 0.1, 0.6)},
    ),
    centre_hole.bearing_area: (
        {"large_mm": 5.3, "small_mm": 2.5, "cone_deg": 60},
        {
            "large_mm": Limit("", (0, -1, 2.5), (2.51,)),
            "small_mm": Limit("", (0, -1, 5.3), (5.29,)),
            "cone_deg": within("angle of the cone", 20, 150),
        },
    ),
    centre_hole.centre_load: (
        {"mass_kg": 2, "gravity_m_s2": 9.81, "radial_force_n": 30},
        {
            "mass_kg": above_zero("mass"),
            "gravity_m_s2": above_zero("gravity"),
            "radial_force_n": from_zero("radial force"),
        },
    ),
    centre_hole.bearing_pressure: (
        {"force_n": 249, "large_mm": 5.3, "small_mm": 2.5, "cone_deg": 60},
        {
            "force_n": above_zero("force on the centre"),
            "large_mm": Limit("", (0, -1, 2.5), (2.51,)),
            "small_mm": Limit("", (0, -1, 5.3), (5.29,)),
            "cone_deg": within("angle of the cone", 20, 150),
        },
    ),
    centre_hole.mean_cutting_diameter: (
        {"pilot_mm": 2.5, "body_mm": 6.3},
        {"pilot_mm": Limit("", (0, -1, 6.3), (6.29,)), "body_mm": Limit("", (0, -1, 2.5), (2.51,))},
    ),
    boring_passes.bored_bar_deflection: (
        {"force_n": 50, "overhang_mm": 48, "shank_mm": 12, "hole_mm": 4, "modulus_mpa": 206000},
        {
            "force_n": from_zero("force"),
            "overhang_mm": Limit("", (0, -1, 29.9), (30,)),
            "shank_mm": Limit("", (0, -1, 19.3), (19.2,)),
            "hole_mm": Limit("hole in the bar as a share of its shank is ", (-0.1, 9.64), (0, 9.6)),
            "modulus_mpa": above_zero("modulus of elasticity"),
        },
    ),
    boring_passes.equal_stiffness_overhang: (
        {"overhang_mm": 48, "modulus_mpa": 206000, "other_modulus_mpa": 620000},
        {
            "overhang_mm": above_zero("overhang"),
            "modulus_mpa": Limit("", (0, -1, 3_112_000, 123_000), (3_100_000, 124_000)),
            "other_modulus_mpa": Limit("", (0, -1, 41_000, 1_034_000), (41_200, 1_030_000)),
        },
    ),
    boring_passes.boring_passes: (
        {"from_mm": 22, "to_mm": 25, "depth_mm": 0.4},
        {
            "from_mm": Limit("", (0, -1, 25.01), (25,)),
            "to_mm": Limit("", (0, 21.99, 823), (22, 822)),
            "depth_mm": Limit("", (0, -1, 0.00149), (0.0015,)),
        },
    ),
    boring_passes.cut_stiffness: (
        {"kc_mpa": 2000, "feed_mm": 0.1, "passive_share": 0.5},
        {
            "kc_mpa": above_zero("specific cutting force"),
            "feed_mm": _FEED,
            "passive_share": within("radial force as a share of the cutting force", 0.05, 1.5),
        },
    ),
    boring_passes.share_left: (
        {"cut_stiffness_n_per_mm": 100, "machine_n_per_mm": 400},
        {
            "cut_stiffness_n_per_mm": Limit("stiffness of the cut", (0, -1, 4020), (4000,)),
            "machine_n_per_mm": Limit("stiffness of the", (0, -1, 9.9), (10,)),
        },
    ),
    boring_passes.error_after_passes: (
        {
            "set_depth_mm": 0.2, "cut_stiffness_n_per_mm": 100, "tool_stiffness_n_per_mm": 400, "spring_passes": 1,
            "least_chip_mm": 0.001,
        },
        {
            "set_depth_mm": above_zero("depth that is set"),
            "cut_stiffness_n_per_mm": Limit("stiffness of the cut", (0, -1, 4020), (4000,)),
            "tool_stiffness_n_per_mm": Limit("stiffness of the", (0, -1, 9.9), (10,)),
            "spring_passes": Limit("number of spring passes is ", (-1, 51), (0, 50)),
            "least_chip_mm": from_zero("depth at which the edge rubs"),
        },
    ),
    boring_passes.spring_passes_for: (
        {
            "set_depth_mm": 0.2, "cut_stiffness_n_per_mm": 100, "tool_stiffness_n_per_mm": 400, "wanted_mm": 0.01,
            "least_chip_mm": 0.001,
        },
        {
            "set_depth_mm": above_zero("depth that is set"),
            "cut_stiffness_n_per_mm": Limit("stiffness of the cut", (0, -1, 4020), (4000,)),
            "tool_stiffness_n_per_mm": Limit("stiffness of the", (0, -1, 9.9), (10,)),
            "wanted_mm": above_zero("depth that may be left standing"),
            "least_chip_mm": from_zero("depth at which the edge rubs"),
        },
    ),
    boring_passes.copied_taper: (
        {
            "depth_mouth_mm": 0.3, "depth_bottom_mm": 0.5, "cut_stiffness_n_per_mm": 100, "tool_stiffness_n_per_mm": 400,
            "spring_passes": 0,
        },
        {
            "depth_mouth_mm": from_zero("depth of cut at the mouth"),
            "depth_bottom_mm": from_zero("depth of cut at the far end"),
            "cut_stiffness_n_per_mm": Limit("stiffness of the cut", (0, -1, 4020), (4000,)),
            "tool_stiffness_n_per_mm": Limit("stiffness of the", (0, -1, 9.9), (10,)),
            "spring_passes": Limit("number of spring passes is ", (-1, 51), (0, 50)),
        },
    ),
    boring_passes.bore_error: (
        {"depth_left_mm": 0.04, "recession_mm": 0.001},
        {"depth_left_mm": from_zero("depth left standing"), "recession_mm": from_zero("wear of the edge")},
    ),
}  # fmt: skip


def test_every_formula_and_every_argument_has_its_limits() -> None:
    is_whole(_TABLE, boring, boring_passes, centre_hole)


@pytest.mark.parametrize(("formula", "sound", "limits"), rows(_TABLE))
def test_a_formula_answers_on_its_edges_and_refuses_past_them(
    formula: Formula, sound: dict[str, Any], limits: dict[str, Limit]
) -> None:
    holds_at_its_edges(formula, sound, limits)
