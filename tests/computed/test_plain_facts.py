"""Facts that are a sum, a share or a step of others: each against figures worked by hand. They are no proof from outside."""

from typing import Any

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.registry import Limited, register

# Name, what it is made from in the order of its needs, and what comes out; lengths in mm, masses in kg, torques in N mm.
_FIGURES: list[tuple[str, tuple[Any, ...], Any]] = [
    # the bar
    ("bar.length_limit", (500.0, 30.0, 40.0, 20.0), 410),
    ("bar.length_least", (45.0, 30.0, 2.0), 150),
    ("bar.stock_needed", (400.0, 1.5), 403),
    ("bar.goes_through", (25.0, 25.0), True),
    ("bar.goes_through", (25.0, 24.9), False),
    ("bar.short_overhang", (25.4, 1.5, 1.0), 38),
    ("bar.rear_projection", (403.0, 38.0, 330.0), 35),
    ("bar.rear_projection", (300.0, 38.0, 330.0), 0),
    ("bar.overhang_ratio", (100.0, 25.0), 4),
    ("bar.thickest_through", (26.0, 0.5), 25.5),
    ("bar.longest_inside", (38.0, 430.0, 0.0, 1.5), 465),
    ("bar.spindle_least", (403.0, 38.0, 0.0), 365),
    ("bar.centre_depth", (2.4, 3.1), 5.5),
    ("bar.assembly_mass", (1.5, 0.4, 2), 2.3),
    ("bar.assembly_mass", (1.5, 0.4, 3), 2.7),
    ("lathe.quill_out", (100.0, 0.3, 20.0), 30),
    ("lathe.quill_out", (50.0, 0.3, 20.0), 20),
    ("lathe.quill_out", (15.0, 0.3, 20.0), 15),
    ("lathe.radial_division", ("radius", 0.025), 0.025),
    ("lathe.radial_division", ("diameter", 0.05), 0.025),
    ("bore.rough_step", (0.3,), 0.6),
    ("bore.finish_step", (0.05,), 0.1),
    # the collars
    ("collar.turning_step", (0.5,), 1),
    ("skim.truing_step", (0.1,), 0.2),
    ("collar.facing_stock", (1.5, 1.5), 3),
    ("collar.blank_diameter", (78.0, 2.5), 73),
    ("collar.band_grip", (42.0, 4.0, 30.0, 0.5), 17),
    ("collar.band_grip", (42.0, 4.0, 12.0, 0.5), 12),
    ("collar.band_grip", (6.0, 4.0, 30.0, 0.5), 0),
    ("collar.band_out", (42.0, 17.0), 25),
    ("collar.again_out", (25.0, 1.5), 23.5),
    ("collar.band_length", (25.0, 4.0), 21),
    ("collar.run_out", (True, 1.0, 0.1, 2.0), 1),
    ("collar.run_out", (False, 1.0, 0.1, 0.0), 0.1),
    ("collar.run_out", (False, 1.0, 0.1, 0.4), 0.4),
    ("collar.swing_limit", (180.0, 10.0), 160),
    ("collar.least_diameter", (25.0, 8.0, 0.15, 20.0), 44),
    ("collar.largest_from_stock", (70.0, 2.0), 68),
    ("collar.inner_edge", (48.0, 35.0), 30.5),
    ("collar.stop_at", (30.5, 35.0), 65.5),
    ("collar.spacing", (400.0, 48.0), 304),
    ("collar.stands_out", (38.0, 25.0), 13),
    ("collar.spacer_most", (30.0, 12.0), 18),
    ("collar.grip", ("collet", 30.0, 10.0, 38.0, 15.0, 12.0, 22.0), 22),
    ("collar.grip", ("jaws", 30.0, 10.0, 38.0, 15.0, None, 22.0), 30),
    ("collar.grip", ("jaws-and-spacer", 30.0, 10.0, 38.0, 15.0, None, 22.0), 20),
    ("collar.grip", ("jaws-and-spacer", 30.0, None, 38.0, 15.0, None, 22.0), 30),
    ("collar.grip", ("jaws", 45.0, None, 38.0, 15.0, None, 22.0), 38),
    ("collar.grip", ("four-jaw", 45.0, None, 38.0, 15.0, None, 22.0), 15),
    ("collar.grip", ("stub-mandrel", 45.0, None, 38.0, 15.0, None, 22.0), None),
    ("collar.grip", ("soft-jaws", 45.0, 10.0, 38.0, 15.0, 12.0, 22.0), 12),
    ("bore.rough_cut", (24.71, 23.0, 3, 0.025), 0.3),
    ("bore.rough_cut", (24.7, 23.0, 4, 0.025), 0.225),
    ("bore.rough_cut", (23.02, 23.0, 1, 0.025), 0.025),
    ("bore.finish_cuts", (30.03, 29.71, 0.05, 3.0), 4),
    ("bore.finish_cuts", (29.95, 29.71, 0.05, 3.0), 3),
    # Of 0.045 half is left: 0.0225 in the middle, a quarter of the room outside it on either side.
    # 1.5 to face off the first side, 0.3 of it the light cut: 1.2 in one cut, or shared out over two or three.
    ("collar.first_most", (1.5, 1.0, 0.05), 1.5),
    ("collar.first_most", (1.1, 0.75, 0.05), 0.8),
    ("collar.first_most", (0.02, 0.75, 0.05), 0.05),
    ("collar.first_rough_cuts", (1.5, 0.3, 1.5), 1),
    ("collar.first_rough_cuts", (1.5, 0.3, 0.8), 2),
    ("collar.first_rough_cuts", (0.3, 0.3, 0.8), 0),
    ("collar.first_depth", (1.5, 0.3, 1.0, 0.05), 1.2),
    ("collar.first_depth", (1.5, 0.3, 2.0, 0.05), 0.6),
    ("collar.first_divisions", (0.6, 0.05), 12),
    ("bore.bar_slack", (0.045, 0.5, 0.001), 0.011),
    ("bore.bar_slack", (0.045, 0.8, 0.001), 0.004),
    # Two even seats; then one that the bar is 0.02 uneven at; then a collar that slides over a larger seat on its way.
    ("bore.window", ((25.0,), (25.0,), None, 0.1, 0.2, 0.01, 0.001), 0.08),
    ("bore.window", ((25.0, 25.02), (25.0,), None, 0.1, 0.2, 0.01, 0.001), 0.06),
    ("bore.window", ((25.0,), (25.03,), (25.0,), 0.1, 0.2, 0.01, 0.001), 0.05),
    ("bore.window", ((25.0,), (24.97,), (25.0, 25.01), 0.1, 0.2, 0.01, 0.001), 0.07),
    ("bore.aim_most", (30.0, 0.02, 0.06, (29.96, 29.97), None, None), 30.01),
    ("bore.aim_most", (30.0, 0.02, 0.06, None, None, None), 30.04),
    ("bore.proof_least", (0.1, 0.1), 0.09),
    ("bore.proof_most", (0.1, 0.1), 0.11),
    ("bore.rough_divisions", (0.275, 0.025), 11),
    ("collar.turning_cut", (70.0, 65.0, 3, 0.025), 0.825),
    ("collar.turning_cut", (65.01, 65.0, 1, 0.025), 0.025),
    # the bore and its joint
    ("bore.nominal", (24.97, 0.05), 25.02),
    ("bore.overhang", (38.0, 5.0, False, None), 43),
    ("bore.rough_to", (25.02, 0.55, 0.01), 24.47),
    ("bore.finish_depth", (0.5, 2.0, 0.04), 0.16),
    ("bore.finish_stock", (0.125, 2.0), 0.5),
    ("joint.retaining_compound.band", (0.025, 0.075, 0.01, 0.008), 0.022),
    ("joint.shrink_fit.band", (-0.05, -0.02, 0.005, 0.002), 0.018),
    ("bore.spread", ([24.97, 24.972], [24.966, 24.974], None), 0.008),
    # the middle collar slides over the seat at the tailstock end, so both are held against each other
    ("bore.spread", ([24.97, 24.972], [24.966, 24.974], [24.962, 24.964]), 0.012),
    ("bore.spread", (None, None, None), 0),
    ("bore.band_least", (0.01, 0.005), 0.03),
    ("hole.first_peck", (6.0, 3.0, 1.0), 18),
    ("hole.first_peck", (0.2, 3.0, 1.0), 1),
    ("joint.retaining_compound.catch_margin", (33000.0, 11000.0), 3),
    # the skim
    ("skim.bend_most", (0.018, 0.1), 0.0018),
    ("skim.truing_depth", (0.05, 0.025, 2.7), 0.125),
    ("skim.use_per_visit", (0.1, 0.05), 0.3),
    ("rework.collar_most", (69.0, 0.5), 69.5),
    ("collar.before_certificate", (50.0, 0.3, 2.0), 50.6),
    # a taper beside the dog
    ("setover.clear_of_dog", (25.0, 10.0), 35),
    ("setover.room", (250.0, 35.0), 215),
    # the limits and the look-up table
    ("align.station", (48.0, 1.2), 46.8),
    ("align.outside", (0.018, 0.005), 0.023),
    ("clamp.adequate", (0.012, 0.25), 0.003),
    ("clamp.most", (0.012, 0.5), 0.006),
    ("lookup.spacing", (48.0, 323.0), 275),
    ("lookup.inside", (0.018, 0.005, 0.001, True), 0.013),
    ("lookup.inside", (0.018, 0.009, 0.001, True), None),
    ("lookup.inside", (0.018, 0.005, 0.001, False), None),
    # as written: 0.018 less 0.005, and no 0.014
    ("align.inside", (0.0184, 0.0043, 0.001), 0.013),
    ("chucked.inside", (0.0184, 0.0043, 0.001), 0.013),
    ("lookup.inside", (0.0184, 0.0043, 0.001, True), 0.013),
    # 0.0007 in less 0.0002 in
    ("align.inside", (0.0184, 0.0043, 0.00254), 0.0127),
    ("align.inside", (0.0020, 0.0011, 0.001), 0.0009),
    ("align.inside", (0.004, 0.005, 0.001), None),
    ("lookup.again_up_to", (0.018, 0.005, 0.013), 0.023),
    ("lookup.share_percent", (275.0, 371.0), 74),
    ("lookup.left_percent", (74.0,), 26),
    ("lookup.half_move", (0.042,), 0.021),
    ("lookup.half_short", (0.028, 0.021), 0.007),
    # a visit
    ("visit.spread", ([69.612, 69.613], [69.655, 69.651]), 0.004),
    ("visit.adequate", (0.018, 0.25), 0.0045),
    ("visit.divisions", (0.028, 0.002), 14),
    ("visit.divisions", (0.0299, 0.0127), 2.5),
    ("visit.before_difference", (69.612, 69.655), 0.043),
    ("visit.grown_by", ("indicator", "indicator", 0.0, 0.042, 0.0, 0.010), None),
    ("visit.grown_by", ("micrometer", "indicator", 69.62, 69.64, 0.0, 0.042), None),
    ("visit.grown_by", ("micrometer", None, 69.62, 69.64, 69.612, 69.655), 0.008),
    ("visit.grown_by", ("micrometer", "micrometer", 69.6, 69.66, 69.612, 69.655), 0.005),
    ("visit.moved_share", (-0.014, 0.028), 50),
    ("visit.moved_share", (0.014, 0.0), None),
    ("visit.left_after", (0.04, 70.0), 0.012),
    ("visit.left_after", (-0.04, 130.0), 0.012),
    # Midway between the others: 1 + 1/4 + 1/4 times the square of the uncertainty of one collar, which is half of 0.006 squared.
    ("visit.bow_uncertainty", (0.006, 30.0, 150.0, 270.0), 0.006 * 0.75**0.5),
    ("reverse.change", (0.042, 0.03), 0.012),
    ("reverse.mean_difference", (0.042, 0.03), 0.036),
    # a taper
    ("setover.one_in", (0.02,), 50),
    ("setover.span_in_setovers", (3.0, 300.0), 100),
    # 2.94 mm on a needle that shows 0.2 mm a turn in divisions of 0.002 mm: 14 turns are 2.8 mm, and 70 divisions 0.14 mm.
    ("setover.turns", (2.94, 0.002, 0.2), 14),
    ("setover.divisions_over", (2.94, 14.0, 0.002, 0.2), 70),
    ("setover.turns", (1.9995, 0.002, 0.2), 10),
    ("setover.divisions_over", (1.9995, 10.0, 0.002, 0.2), 0),
    ("setover.turns_serve", (2.94, 0.2, 5.0), True),
    ("setover.turns_serve", (2.94, 0.2, 1.0), False),
    ("setover.turns_serve", (2.94, None, 5.0), False),
    ("setover.turns_serve", (2.94, 0.2, None), False),
    ("setover.difference", (0.02, 100.0), 2),
    ("setover.cut_difference", (30.0, 28.0), 2),
    ("setover.cut_wanted", (0.02, 50.0), 1),
]


@pytest.mark.parametrize(
    ("name", "made_from", "expected"), _FIGURES, ids=[f"{row[0]}-{n}" for n, row in enumerate(_FIGURES)]
)
def test_a_plain_fact_is_what_is_worked_by_hand(name: str, made_from: tuple[Any, ...], expected: Any) -> None:
    entry = register()[name]
    assert len(made_from) == len(entry.needs)
    made = entry.function(*made_from, *(knowledge().tables[table] for table in entry.tables))
    found = made.value if isinstance(made, Limited) else made
    if expected is None or isinstance(expected, bool):
        assert found is expected
    else:
        assert found == pytest.approx(expected, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(
    ("name", "made_from", "value", "limited_by"),
    [
        ("collar.spacer_least", (2.0, 5.0, None), 3, "the face clear of the jaws"),
        ("collar.spacer_least", (7.0, 5.0, None), 0, "the face clear of the jaws"),
        ("collar.spacer_least", (-4.0, 4.0, 11.0), 11.0, "room for the drill behind the blank"),
        ("collar.spacer_least", (-4.0, 4.0, 7.0), 8.0, "the face clear of the jaws"),
        ("hole.room_behind", (9.9, 1.0, 20.0, 25.0), 10.9, "the drill would strike the chuck"),
        ("hole.room_behind", (9.9, 1.0, 25.0, 25.0), 10.9, "the drill would strike the chuck"),
        ("hole.room_behind", (9.9, 1.0, None, 25.0), 10.9, "the drill would strike the chuck"),
        ("hole.room_behind", (9.9, 1.0, 40.0, 25.0), 0.0, "the hole of the chuck takes the drill"),
        ("lathe.swing_over_slide", (170.0, 280.0, 0.5), 170, "as measured"),
        ("lathe.swing_over_slide", (None, 280.0, 0.5), 140, "not given, so taken small"),
        ("skim.worn_out_at", (25.0, 8.0, None, None), 41, "the wall of the collar"),
        ("skim.worn_out_at", (25.0, 8.0, 50.0, None), 50, "the lower end of the micrometer"),
        ("skim.worn_out_at", (25.0, 8.0, 25.0, None), 41, "the wall of the collar"),
        ("skim.worn_out_at", (25.0, 8.0, 50.0, 54.0), 54, "what is told of this bar"),
        ("skim.worn_out_at", (25.0, 8.0, 50.0, 62.0), 62, "what is told of this bar"),
    ],
)
def test_a_limited_fact_names_its_limit(name: str, made_from: tuple[Any, ...], value: float, limited_by: str) -> None:
    found = register()[name].function(*made_from)
    assert isinstance(found, Limited)
    assert found.value == pytest.approx(value)
    assert found.by.startswith(limited_by)
