"""Every table of the knowledge: named sources, readable numbers, ordered bands, intervals without overlap, no gaps."""

import csv
import math
import re
import tomllib
from collections.abc import Iterator
from itertools import pairwise, product

import pytest

from knowledge.table_files import KNOWLEDGE, PATHS, read, used

# Columns of words; every other column holds numbers.
COLUMNS_OF_WORDS = """
    source note checked_on material name family roles equivalents condition fluid chip_form chips hazards feed_group
    operation tool situation point unit set label series designation system type taper method
    specification finish class code word component instrument kind dials always machine_class of_a_move
    handling
    target_fit window_fit
    form collar_source chuck_kind uneven_kind
    activity states group about
    section shape
    begins rule fault
    low_of high_of
    stop thing kind reason
    choice spelling uneven_kind
    pieces own_width banded
    part surface
    against
"""
WORDS = set(COLUMNS_OF_WORDS.split())
# In this table `factor` is a name, not a number.
WORDS_IN = {
    "joints/derating": {"factor"},
    "safety/hazards": {"row", "hazard", "cautions"},
    "words/shop_acts": {"act", "verbs", "things", "unless", "write"},
    "words/trade_names": {"choices"},
    "machines/chuck_kinds": {"self_centring"},
    "machines/drives": {"drive", "chuck_stays_on"},
    "machines/holdings": {
        "decision",
        "hold",
        "collet_chuck",
        "own_chuck",
        "inside_spindle",
        "on_pads",
        "grip",
        "spacer",
        "bore_first",
        "marked_out",
    },
    "materials/collar_sources": {"along", "on_faceplate", "corners", "bore_kept", "by_label"},
    "time/sawing": {"saw"},
    "materials/bar_left": {"because", "says"},
    "materials/stock_sizes": {"fact", "system", "sold_as"},
    "materials/collar_left": {"because", "says"},
    "cutting/printed_speeds": {"materials", "printed_for", "operations"},
    "cutting/printed_forces": {"materials", "printed_for"},
}

# Where a table is looked up by an interval: its ends, and the columns that make a series of intervals.
INTERVALS = {
    "cutting/adjustments": ("from_ratio", "to_ratio", ("situation",)),
    "cutting/boring_stock": ("over_mm", "upto_mm", ()),
    "cutting/drill_feeds": ("over_mm", "upto_mm", ()),
    "tools/centre_drill_choice": ("over_mm", "upto_mm", ()),
    "machines/chuck_limits": ("body_over_mm", "body_upto_mm", ()),
    "machines/chuck_masses": ("body_over_mm", "body_upto_mm", ()),
    "fits/attachment_clearance": ("over_mm", "upto_mm", ("method",)),
    "fits/bar_tolerances": ("over_mm", "upto_mm", ("specification", "finish")),
    "joints/derating": ("from_mm", "to_mm", ("factor", "condition")),
    "alignment/repeatability": ("over_mm", "upto_mm", ("instrument",)),
    "measuring/instruments": ("from_mm", "to_mm", ("kind",)),
}
ENDS = ({"over_mm", "upto_mm"}, {"from_mm", "to_mm"}, {"from_ratio", "to_ratio"}, {"body_over_mm", "body_upto_mm"})

BANDS = (("_low", "_high"), ("least", "largest"), ("least", "most"), ("lower", "upper"), ("best", "worst"),
         ("over_", "upto_"), ("from_", "to_"), ("low_", "high_"))  # fmt: skip


def columns(name: str) -> list[str]:
    with PATHS[name].open(encoding="utf-8", newline="") as opened:
        return next(csv.reader(opened))


def number_columns(name: str) -> list[str]:
    words = WORDS | WORDS_IN.get(name, set())
    return [column for column in columns(name) if column not in words]


def bands(name: str) -> list[tuple[str, str]]:
    """Pairs of columns that are the two ends of a band; an exponent such as mc is not a band."""
    found = [column for column in number_columns(name) if not column.startswith("mc_")]
    return [(low, low.replace(a, b)) for low in found for a, b in BANDS if a in low and low.replace(a, b) in found]


def cells(name: str) -> Iterator[tuple[str, str, str]]:
    """Place, column and text of every cell."""
    for line, row in enumerate(read(name), start=2):
        for column, text in row.items():
            yield f"{name}, line {line}", column, text


def sources() -> dict[str, dict[str, str]]:
    with (KNOWLEDGE / "sources.toml").open("rb") as opened:
        return tomllib.load(opened)


every_table = pytest.mark.parametrize("name", PATHS)


@every_table
def test_last_columns_say_where_from_and_when(name: str) -> None:
    found = columns(name)
    tail = found[-3:] if found[-1] == "note" else [*found[-2:], "note"]
    assert tail == ["source", "checked_on", "note"]
    assert len(found) == len(set(found))


@every_table
def test_every_row_is_whole_and_dated(name: str) -> None:
    rows = read(name)
    assert rows
    for line, row in enumerate(rows, start=2):
        assert None not in row, f"{name}, line {line} has cells beyond its columns"
        assert all(text is not None for text in row.values()), f"{name}, line {line} is short"
        assert re.fullmatch(r"\d{4}-\d\d-\d\d", row["checked_on"]), f"{name}, line {line}"


@every_table
def test_no_row_stands_twice(name: str) -> None:
    seen = [tuple(text for column, text in row.items() if column not in ("source", "note")) for row in read(name)]
    assert len(seen) == len(set(seen))


@every_table
def test_every_source_resolves(name: str) -> None:
    known = sources()
    for line, row in enumerate(read(name), start=2):
        named = re.split(r"; | \+ ", re.sub(r" \[[^]]*\]", "", row["source"]))
        for source in named:
            assert source.split(":", 1)[0] in known, f"{name}, line {line}: '{source}' is not a source"
        # A source may stand behind some columns alone and behind others with a second one.
        if "[" not in row["source"]:
            assert len(named) == len(set(named)), f"{name}, line {line} names a source twice"


@every_table
def test_numbers_are_plain_decimals(name: str) -> None:
    numeric = set(number_columns(name))
    for place, column, text in cells(name):
        if column in numeric and text != "":
            assert re.fullmatch(r"-?\d+(\.\d+)?(e-\d\d)?", text), f"{place}: {column} '{text}'"


@every_table
def test_cells_have_no_stray_blanks_and_no_addresses(name: str) -> None:
    for place, column, text in cells(name):
        assert text == text.strip(), f"{place}: {column}"
        assert not re.search(r"https?:|www\.|\.com\b|\.csv\b|\.md\b", text), f"{place}: {column}"


@every_table
def test_the_low_end_is_not_above_the_high_end(name: str) -> None:
    pairs = bands(name)
    for line, row in enumerate(read(name), start=2):
        for low, high in pairs:
            if row[low] and row[high]:
                assert float(row[low]) <= float(row[high]), f"{name}, line {line}: {low} above {high}"


def test_bands_are_recognised() -> None:
    """The test above must find the pairs that it is meant to hold."""
    assert {low for low, _ in bands("materials/materials")} == {"hardness_low_hb", "kc11_low_mpa"}
    assert {low for low, _ in bands("fits/attachment_clearance")} == {"over_mm", "least_mm"}
    assert ("lower_mm", "upper_mm") in bands("fits/bar_tolerances")
    assert ("feed_low_mm", "feed_high_mm") in bands("cutting/feeds")


def test_every_table_of_intervals_is_checked() -> None:
    with_ends = {name for name in PATHS if any(ends <= set(columns(name)) for ends in ENDS)}
    assert with_ends <= set(INTERVALS)


@pytest.mark.parametrize("name", INTERVALS)
def test_intervals_neither_overlap_nor_leave_gaps(name: str) -> None:
    low, high, by = INTERVALS[name]
    series: dict[tuple[str, ...], list[tuple[float, float]]] = {}
    for row in read(name):
        if not row[low] and not row[high]:
            continue
        ends = float(row[low] or "-inf"), float(row[high] or "inf")
        assert ends[0] < ends[1], f"{name}: {ends} is empty"
        series.setdefault(tuple(row[column] for column in by), []).append(ends)
    assert series
    for key, found in series.items():
        for (_, before), (after, _) in pairwise(sorted(found)):
            assert before <= after, f"{name} {key}: intervals overlap at {after:g}"
            assert before == after, f"{name} {key}: nothing from {before:g} to {after:g}"


def test_materials_are_in_closed_lists() -> None:
    families = {"steel", "stainless", "tool-steel", "iron", "aluminium", "brass", "bronze", "plastic", "magnesium"}
    bar = "bar; weighed"  # taken for bars; as stock for collars weighed, and left with its reason
    roles = {"steel": bar, "stainless": bar, "tool-steel": bar, "plastic": "weighed; refused", "magnesium": "refused"}
    groups = {"steels", "stainless austenitic", "grey iron", "aluminium", "brass and bronze", "plastics", "magnesium"}
    rows = read("materials/materials")
    assert len({row["material"] for row in rows}) == len(rows) == len({row["name"] for row in rows})
    for row in rows:
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", row["material"])
        assert row["family"] in families
        told = "bar" if row["material"] == "unknown-steel" else roles.get(row["family"], "collar")
        assert row["roles"] == told
        assert row["chip_form"] in {"stringy", "broken", "powder", "gummy"}
        assert row["feed_group"] in groups
        assert all(row[text] for text in ("name", "fluid", "chips", "hazards"))


def test_properties_are_of_the_right_size() -> None:
    """A slipped decimal point or unit shows here."""
    sizes = {
        "density_kg_m3": (1000, 9000), "modulus_mpa": (2000, 215000), "poisson": (0.25, 0.42),
        "expansion_per_k": (9e-6, 1.3e-4), "kc11_low_mpa": (100, 2600), "mc_low": (0.1, 0.35),
    }  # fmt: skip
    for row, (column, (least, most)) in product(used("bar", "collar"), sizes.items()):
        assert least <= float(row[column]) <= most, f"{row['material']}: {column}"


def test_drill_sets_are_sorted_and_labelled_by_their_size() -> None:
    sets: dict[str, list[float]] = {}
    for row in read("tools/drill_sets"):
        if not row["label"]:
            continue
        size = float(row["size_mm"])
        sets.setdefault(row["set"], []).append(size)
        text, _, unit = row["label"].partition(" ")
        if unit == "mm":
            assert float(text) == size
        else:
            assert row["set"] in ("letters", "numbers")
    assert {"metric-26-50", "letters", "numbers"} == set(sets)
    for name, sizes in sets.items():
        assert all(one < other for one, other in pairwise(sizes)), name


def test_a_drill_set_is_a_list_or_even_steps() -> None:
    for row in read("tools/drill_sets"):
        steps = [row[column] for column in ("begins_mm", "step_mm", "ends_mm")]
        assert all(steps) != all(row[column] for column in ("size_mm", "label")), row["set"]
        assert any(steps) == all(steps), row["set"]
        if all(steps):
            assert [other["set"] for other in read("tools/drill_sets")].count(row["set"]) == 1
        if row["inch_parts"]:
            assert float(row["step_mm"]) * float(row["inch_parts"]) == pytest.approx(25.4)


def test_centre_drills_have_room_for_their_cone() -> None:
    rows = read("tools/centre_drills")
    assert len({row["designation"] for row in rows}) == len(rows)
    shares = {
        (row["part"], kind): float(row["share"])
        for row in read("tools/centre_drill_shares")
        for kind in row["type"].split("; ")
    }
    for row in rows:
        pilot, body = float(row["pilot_mm"]), float(row["body_mm"])
        cone = float(row["cone_largest_mm"] or body * shares["largest cone", row["type"]])
        assert pilot < cone < body, row["designation"]
        # Makers give 1.25 to 1.6 times the diameter; room and sawing are reckoned with the longest.
        assert shares["pilot length", row["type"]] == 1.6


# Where the bell edge begins, in inches (memory: the standard was not seen).
_BELLS = {
    "no. 11": 0.1,
    "no. 12": 0.15,
    "no. 13": 0.2,
    "no. 14": 0.25,
    "no. 15": 0.35,
    "no. 16": 0.4,
    "no. 17": 0.5,
    "no. 18": 0.6,
}


def test_the_share_of_a_bell_is_that_of_every_number() -> None:
    [share] = [float(row["share"]) for row in read("tools/centre_drill_shares") if row["type"] == "bell"]
    bells = {row["designation"]: float(row["body_mm"]) for row in read("tools/centre_drills") if row["type"] == "bell"}
    assert bells.keys() == _BELLS.keys()
    for name, body in bells.items():
        assert share * body == pytest.approx(_BELLS[name] * 25.4, abs=0.002), name


def test_advised_centre_drills_exist() -> None:
    drills = {row["designation"]: row for row in read("tools/centre_drills")}
    for row in read("tools/centre_drill_choice"):
        cone = float(drills[f"A {row['pilot_mm']}"]["cone_largest_mm"])
        assert cone <= 0.34 * (float(row["over_mm"]) + float(row["upto_mm"])) / 2 + 1


def test_unmarked_chucks_slow_down_as_they_grow() -> None:
    for row in read("machines/chuck_limits"):
        rim_m_s = math.pi * float(row["body_upto_mm"]) / 1000 * float(row["unmarked_limit_per_min"]) / 60
        assert rim_m_s <= 12.5
    limits = [float(row["unmarked_limit_per_min"]) for row in read("machines/chuck_limits")]
    assert limits == sorted(limits, reverse=True)


def test_bore_target_lies_inside_its_window() -> None:
    for row in read("fits/attachment_clearance"):
        if row["target_mm"]:
            assert float(row["least_mm"]) < float(row["target_mm"]) < float(row["largest_mm"])


def test_every_finish_of_bar_has_a_tolerance_where_bars_are_bonded() -> None:
    bonded = [row for row in read("fits/attachment_clearance") if row["method"] == "bonded-slip-fit"]
    low, high = (pick(float(row[end]) for row in bonded) for pick, end in ((min, "over_mm"), (max, "upto_mm")))
    for finish in ("cold-drawn", "ground", "turned", "hot-rolled", "unknown"):
        rows = [row for row in read("fits/bar_tolerances") if row["finish"] == finish]
        for diameter in (low + 0.1, (low + high) / 2, high):
            assert any(float(row["over_mm"]) < diameter <= float(row["upto_mm"]) for row in rows), (finish, diameter)


def test_derating_only_takes_away() -> None:
    rows = read("joints/derating")
    assert all(0 < float(row["value"]) <= 1 for row in rows)
    metals = {row["family"] for part in ("bar", "collar") for row in used(part)}
    assert metals <= {row["condition"] for row in rows if row["factor"] == "substrate"}
    assert metals == {row["family"] for row in read("joints/curing")}


def test_derating_that_always_counts_is_said_once_for_each_factor() -> None:
    always = [row["factor"] for row in read("joints/derating") if row["always"] == "yes"]
    assert sorted(always) == ["cleaning", "cure", "temperature"]


def test_named_values_are_unique() -> None:
    for name in ("cutting/force_factors", "joints/catch"):
        names = [row["name"] for row in read(name)]
        assert len(names) == len(set(names))
        assert all(row["unit"] and float(row["value"]) > 0 for row in read(name))


def test_accuracy_words_grow_finer() -> None:
    tolerance = {row["word"]: float(row["tolerance_mm"]) for row in read("alignment/accuracy")}
    assert list(tolerance) == ["general", "good", "fine"]
    assert tolerance["general"] > tolerance["good"] > tolerance["fine"]


def test_sources_are_whole_and_open_ones_say_so() -> None:
    published = {
        "standard",
        "regulation",
        "handbook",
        "textbook",
        "manual",
        "data-sheet",
        "study",
        "course",
        "article",
        "shop",
    }
    found = sources()
    assert {"common-practice", "memory"} <= {key for key, source in found.items() if source["kind"] == "open"}
    for key, source in found.items():
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", key)
        assert {"kind", "title", "status"} <= set(source) <= {"kind", "title", "edition", "status", "note"}, key
        assert source["title"], key
        assert not re.search(r"https?:|www\.", " ".join(source.values())), key
        if source["kind"] == "open":
            assert source["status"] == "open", key
            assert source["note"], f"{key} must say what it means"
        else:
            assert source["kind"] in published, key
            assert source["status"] in {"read", "cited"}, key


def test_printed_speeds_are_whole_feet_a_minute_turned_to_metres_and_rounded_down() -> None:
    """The books print ft/min in steps of five; a foot is 0.3048 m, and a tenth of a metre is never rounded up."""
    for row in read("cutting/printed_speeds"):
        for column in ("low_m_min", "high_m_min"):
            metres = float(row[column])
            assert any(0 <= feet * 0.3048 - metres < 0.1 for feet in range(15, 1505, 5)), row


def test_every_bar_and_collar_of_a_known_metal_has_a_printed_turning_speed() -> None:
    printed = {
        metal
        for row in read("cutting/printed_speeds")
        if "turn-finish" in row["operations"]
        for metal in row["materials"].split("; ")
    }
    assert {row["material"] for row in used("bar", "collar")} - printed == {"unknown-steel", "unknown-aluminium"}
