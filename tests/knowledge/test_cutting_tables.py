"""Speeds, feeds and forces of the tables: none missing, none that errs to the dangerous side."""

import re
from itertools import product

import pytest

from knowledge.table_files import read, used

TURNING = ("facing", "turn-rough", "turn-finish", "boring", "skim")


CUTTERS = ("HSS", "carbide")


@pytest.mark.parametrize("thickness_mm", [0.05, 0.1, 0.2, 0.5, 1.0])
def test_low_cutting_force_is_not_above_the_high_one(thickness_mm: float) -> None:
    for row in used("bar", "collar"):
        low = float(row["kc11_low_mpa"]) * thickness_mm ** -float(row["mc_low"])
        high = float(row["kc11_high_mpa"]) * thickness_mm ** -float(row["mc_high"])
        assert low <= high * 1.0001, row["material"]


def test_collars_can_be_drilled() -> None:
    for row in used("collar"):
        assert float(row["drill_kd"]) > 0, row["material"]
        assert float(row["drill_k"]) > 0, row["material"]


def cut_here() -> set[str]:
    """Every material with speeds: for what is refused there are none, so that nothing can advise to cut it."""
    return {row["material"] for row in used("bar", "collar")}


def bands_of_speed() -> dict[tuple[str, str, str], tuple[float, float]]:
    """Surface speeds by material, operation and tool: of rows of their own, and of operations that are a share of others."""
    speed = {
        (row["material"], row["operation"], row["tool"]): (float(row["low_m_min"]), float(row["high_m_min"]))
        for row in read("cutting/speeds")
    }
    shares = {
        (material, row["operation"], tool): (
            low * float(row["low_ratio"]), speed[material, row["high_of"], tool][1] * float(row["high_ratio"]),
        )
        for row in read("cutting/speed_ratios")
        for (material, operation, tool), (low, _) in speed.items()
        if operation == row["low_of"]
    }  # fmt: skip
    assert not speed.keys() & shares.keys(), "an operation has rows of its own or a share, not both"
    return speed | shares


def test_every_bar_and_collar_has_its_speeds() -> None:
    found = [(row["material"], row["operation"], row["tool"]) for row in read("cutting/speeds")]
    assert len(found) == len(set(found))
    wanted = {
        (row["material"], operation, tool)
        for row in used("bar", "collar")
        for operation, tool in (*product(TURNING, CUTTERS), ("drilling", "HSS"), ("centre-drilling", "HSS"))
    }
    assert wanted == bands_of_speed().keys()
    assert {material for material, _, _ in found} == cut_here()


def test_finishing_is_not_slower_than_roughing() -> None:
    speed = bands_of_speed()
    for material, tool in product(cut_here(), CUTTERS):
        rough, finish, boring = (speed[material, operation, tool] for operation in ("turn-rough", "turn-finish", "boring"))
        assert rough[0] <= finish[0]
        assert boring[1] < finish[1]


def test_a_band_of_speed_has_its_low_end_below() -> None:
    assert all(0 < low < high for low, high in bands_of_speed().values())


def test_unknown_metals_are_never_cut_faster_than_their_known_kin() -> None:
    speed = bands_of_speed()
    kin = {"unknown-steel": "steel-low-carbon-cold-drawn", "unknown-aluminium": "aluminium-a356-t6"}
    for (unknown, known), operation in product(kin.items(), (*TURNING, "drilling", "centre-drilling")):
        for one, other in zip(speed[unknown, operation, "HSS"], speed[known, operation, "HSS"], strict=True):
            assert one <= other


def test_a_speed_from_printed_feet_per_minute_errs_to_the_slow_side() -> None:
    """The printed feet per minute stand in the note; the metres are those times 0.3, where a foot is 0.3048 m."""
    told = 0
    for row in read("cutting/speeds"):
        printed = re.match(r"(\d+)(?: to (\d+))? ft/min printed, times 0\.3", row["note"])
        if printed is None:
            assert "common-practice" in row["source"], row
            continue
        ends = [float(one) * 0.3048 for one in printed.groups() if one]
        # Of one printed number, the end it stands for is the one that a published source is named for.
        open_end = re.search(r"common-practice \[(\w+)\]", row["source"])
        columns = [one for one in ("low_m_min", "high_m_min") if not open_end or one != open_end[1]]
        for column, feet in zip(columns, ends, strict=True):
            assert 0.98 * feet < float(row[column]) <= feet, row
            told += 1
    assert told > 100


def test_every_feed_group_of_bars_and_collars_has_its_feeds() -> None:
    rows = read("cutting/feeds")
    found = [
        held for row in rows for held in product(*(row[name].split("; ") for name in ("operation", "feed_group", "tool")))
    ]
    assert len(found) == len(set(found))
    groups = {row["feed_group"] for row in used("bar", "collar")}
    wanted = {(operation, group, tool) for operation, group, tool in product(TURNING, groups, CUTTERS)}
    wanted |= {("centre-drilling", group, "HSS") for group in groups}
    assert wanted == set(found)
    for row in rows:
        assert row["feed_low_mm"]
        assert row["depth_low_mm"] or row["operation"] == "centre-drilling"
    assert groups <= {row["feed_group"] for row in read("cutting/drill_feed_factors")}


def test_nothing_but_a_sharp_edge_cuts_thin() -> None:
    """A honed edge rubs in a thin cut, and stainless steel hardens under it."""
    for row in read("cutting/feeds"):
        if "carbide" in row["tool"].split("; "):
            assert float(row["depth_low_mm"]) >= 0.1
        if "stainless austenitic" in row["feed_group"].split("; ") and row["operation"] != "centre-drilling":
            assert float(row["feed_low_mm"]) >= 0.08


def test_adjustments_never_speed_up_and_never_relax_further_out() -> None:
    last: dict[str, dict[str, float]] = {}
    for row in sorted(read("cutting/adjustments"), key=lambda row: (row["situation"], float(row["from_ratio"]))):
        before = last.setdefault(row["situation"], {})
        for column in ("speed_factor", "feed_factor", "depth_factor"):
            if row[column]:
                assert 0 < float(row[column]) <= before.get(column, 1.0), f"{row['situation']} from {row['from_ratio']}"
                before[column] = float(row[column])
