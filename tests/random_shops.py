"""Many unlike shops, drawn at random and written as the files of a job."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from tailtrue.advise import knowledge

BARS = [row.text("material") for row in knowledge().tables["materials/materials"].rows if "bar" in row.text("roles")]
COLLARS = [row.text("material") for row in knowledge().tables["materials/materials"].rows if "collar" in row.text("roles")]
SPEEDS = ([50, 100, 200, 400, 800, 1600], [125, 210, 420, 620, 1000, 2000], [30, 50, 85, 140, 240, 390, 630, 1080])


WISHES = ("retaining-compound", "shrink-fit", "set-screws", "axial-pin", "radial-pin", "press-fit", "split-clamp")
KITS = {
    "press": 'press_force = "60 kN"\npress_opening = "450 mm"\n',
    "oven": 'oven_to = "200 degC"\ncontact_thermometer = true\n',
    "drill press": "drill_press = true\n",
    "taps": 'taps = ["M5", "M6", "M8", "M10"]\n',
    "set screws": "set_screws = ["
    + ", ".join(f'{{ thread = "M{size}", length = "{length} mm" }}' for size in (5, 6, 8, 10) for length in (8, 12, 16, 20))
    + "]\n",
    "clamp screws": 'clamp_screws = [{ thread = "M6", length = "20 mm", head = "10 mm" }, '
    '{ thread = "M10", length = "30 mm", head = "16 mm" }]\n',
    "pins": "pins = ["
    + ", ".join(
        f'{{ type = "{kind}", diameter = "{thick} mm", length = "{long} mm", drill_reach = "110 mm" }}'
        for kind in ("hardened-dowel", "slotted-spring-heavy")
        for thick in (4, 6, 8)
        for long in (16, 24, 36, 48)
    )
    + "]\n",
}


@st.composite
def shops(draw: st.DrawFn) -> dict[str, Any]:
    swing = draw(st.integers(180, 430))
    return {
        "dials": draw(st.sampled_from(["metric", "inch"])),
        "swing_over_bed": swing,
        "swing_over_cross_slide": round(swing * draw(st.floats(0.45, 0.65))),
        "between_centres": draw(st.integers(300, 1500)),
        "spindle_bore": draw(st.sampled_from([20, 26, 38, 52])),
        "spindle_length": draw(st.sampled_from([None, 300, 400, 500])),
        "speeds": draw(st.sampled_from(SPEEDS)),
        "feeds": draw(st.sampled_from([None, [0.05, 0.1, 0.2], [0.08, 0.16], [0.3]])),
        "motor": draw(st.sampled_from([350, 550, 1100, 3000])),
        "taper": draw(st.sampled_from(["MT2", "MT3", "MT4"])),
        "reads": draw(st.sampled_from(["radius", "diameter"])),
        "division": draw(st.sampled_from([0.01, 0.02, 0.0254, 0.05, 0.1])),
        "side": draw(st.sampled_from(["front", "rear"])),
        "steady": draw(st.booleans()),
        "marked": draw(st.sampled_from(["unmarked", 800, 1800, 3000])),
        "body": draw(st.sampled_from([80, 125, 160, 200])),
        "jaws": draw(st.sampled_from([None, 18, 25, 35])),
        "tool": draw(st.sampled_from(["HSS", "carbide"])),
        "centre": draw(st.sampled_from(["live", "dead"])),
        "head": draw(st.sampled_from(["soft", "hard"])),
        "drive": draw(st.sampled_from(["drive-plate", "faceplate", "chuck-jaw"])),
        "spacer": draw(st.sampled_from([None, 6, 10, 14])),
        "drills": draw(st.sampled_from(["set", "inch", "few", "tapers"])),
        "micrometers": draw(st.sampled_from([[(0, 25), (25, 50), (50, 75)], [(0, 25), (25, 50)], [(25, 50)], []])),
        "resolution": draw(st.sampled_from([0.001, 0.00254, 0.01])),
        "gauge": draw(st.sampled_from(["telescoping", "inside-micrometer", "bore-gauge", "caliper"])),
        "bar": draw(st.sampled_from(BARS)),
        "bar_d": draw(st.integers(16, 42)),
        "bar_l": draw(st.integers(150, 800)),
        "collar": draw(st.sampled_from(COLLARS)),
        "collar_d": draw(st.integers(40, 110)),
        "collar_l": draw(st.integers(40, 200)),
        "measured": draw(st.booleans()),
        "accuracy": draw(st.sampled_from(["general", "good", "fine"])),
        "coarse": draw(st.booleans()),
        "set_over": draw(st.sampled_from(["two-screws", "one-screw", "none"])),
        "bottle": draw(st.booleans()),
        "kit": draw(st.lists(st.sampled_from(sorted(KITS)), unique=True)),
        "wish": draw(st.sampled_from([None, None, *WISHES])),
        "doubt": draw(st.sampled_from([None, 0.003, 0.005])),
    }


DRILLS = {
    "set": '[[crib.drills]]\nset = "metric-1-13-by-0.5"\nshank = "straight"\n',
    "inch": '[[crib.drills]]\nset = "inch-1/64-1/2"\nshank = "straight"\n',
    "few": '[[crib.drills]]\nsizes = ["6 mm", "12 mm"]\nshank = "straight"\n',
    "tapers": '[[crib.drills]]\nsizes = ["5 mm", "8 mm", "12 mm"]\nshank = "straight"\n'
    '[[crib.drills]]\nsizes = ["16 mm", "20 mm", "23 mm"]\nshank = "MT2"\n',
}


def maybe(key: str, value: float | None, unit: str) -> str:
    return "" if value is None else f'{key} = "{value} {unit}"\n'


def listed(values: Sequence[float], unit: str) -> str:
    return "[" + ", ".join(f'"{value} {unit}"' for value in values) + "]"


def write(folder: Path, one: dict[str, Any]) -> Path:
    marked = one["marked"] if one["marked"] == "unmarked" else f"{one['marked']} 1/min"
    feeds = f"feeds = {listed(one['feeds'], 'mm/rev')}\n" if one["feeds"] else ""
    (folder / "lathe.toml").write_text(
        f'[lathe]\nname = "Lathe"\ndials = "{one["dials"]}"\nswing_over_bed = "{one["swing_over_bed"]} mm"\n'
        f'swing_over_cross_slide = "{one["swing_over_cross_slide"]} mm"\nbetween_centres = "{one["between_centres"]} mm"\n'
        f'spindle_bore = "{one["spindle_bore"]} mm"\n{maybe("spindle_length", one["spindle_length"], "mm")}'
        f'spindle_nose = "threaded"\nspeeds = {listed(one["speeds"], "1/min")}\n{feeds}motor_power = "{one["motor"]} W"\n'
        f'drive = "belt"\ntailstock_taper = "{one["taper"]}"\nquill_travel = "70 mm"\nset_over = "{one["set_over"]}"\n'
        f'dial_reads = "{one["reads"]}"\ndial_division = "{one["division"]} mm"\ntool_side = "{one["side"]}"\n'
        f'chuck_guard = "hinged"\nstop = "tested"\n'
        + ('steady_from = "8 mm"\nsteady_to = "50 mm"\n' if one["steady"] else "")
        + f'[[lathe.chucks]]\nlabel = "chuck"\njaws = 3\nkind = "scroll"\nbody = "{one["body"]} mm"\n'
        f'marked_speed = "{marked}"\ngrips_to = "{round(one["body"] * 0.65)} mm"\n{maybe("jaw_depth", one["jaws"], "mm")}',
        encoding="utf-8",
    )
    micrometers = "".join(
        f'[[crib.outside_micrometers]]\nfrom = "{low} mm"\nto = "{high} mm"\nresolution = "{one["resolution"]} mm"\n'
        for low, high in one["micrometers"]
    ) or "outside_micrometers = []\n"  # fmt: skip
    empty = micrometers if micrometers.startswith("outside") else ""
    (folder / "crib.toml").write_text(
        f'[crib]\nname = "Crib"\ntool_material = "{one["tool"]}"\ndrill_chuck_to = "13 mm"\n'
        'centre_drills = ["A 2", "A 2.5", "A 3.15"]\ncaliper_resolution = "0.02 mm"\nindicator_division = "0.01 mm"\n'
        f'tailstock_centre = "{one["centre"]}"\nheadstock_centre = "{one["head"]}"\ndog_from = "10 mm"\ndog_to = "40 mm"\n'
        f'dog_kind = "safety"\ndrive = "{one["drive"]}"\nsaw = "hacksaw"\n'
        + ('compound_gap = "0.15 mm"\ncompound_cure = "24 h"\n' if one["bottle"] else "")
        + "".join(KITS[name] for name in one["kit"])
        + f"{maybe('spacer', one['spacer'], 'mm')}{empty}\n{DRILLS[one['drills']]}"
        '[[crib.boring_bars]]\nshank = "8 mm"\nreach = "40 mm"\nleast_bore = "10 mm"\nmaterial = "steel"\ntip = "HSS"\n'
        '[[crib.boring_bars]]\nshank = "16 mm"\nreach = "60 mm"\nleast_bore = "20 mm"\nmaterial = "carbide"\ntip = "carbide"\n'
        f'[[crib.bore_gauges]]\nkind = "{one["gauge"]}"\nfrom = "10 mm"\nto = "50 mm"\n'
        f"{maybe('doubt', one['doubt'], 'mm')}"
        f"{'' if empty else micrometers}",
        encoding="utf-8",
    )
    (folder / "stock.toml").write_text(
        f'[[stock.bars]]\nlabel = "bar"\nmaterial = "{one["bar"]}"\ndiameter = "{one["bar_d"]} mm"\n'
        f'length = "{one["bar_l"]} mm"\nfinish = "cold-drawn"\n'
        f'[[stock.collar_bars]]\nlabel = "collar"\nmaterial = "{one["collar"]}"\ndiameter = "{one["collar_d"]} mm"\n'
        f'length = "{one["collar_l"]} mm"\n',
        encoding="utf-8",
    )
    # To the division of the finest micrometer, a nought at the end too.
    sizes = [f"{one['bar_d'] - 0.02 + step * 0.001:.3f}" for step in range(6)]
    readings = "[" + ", ".join(f'"{size} mm"' for size in sizes) + "]"
    measured = f"measured_head = {readings}\nmeasured_tail = {readings}\n" if one["measured"] else ""
    job = folder / "job.toml"
    job.write_text(
        '[job]\nshop = "Shop"\nnumber = "1"\nrevision = "1"\ndate = 2026-11-24\nlathe = "lathe.toml"\ncrib = "crib.toml"\n'
        'stock = "stock.toml"\nplace = "home"\noperator = "experienced"\nminor = false\nalone = true\n'
        + (f'joint_wish = "{one["wish"]}"\n' if one["wish"] else "")
        + f'accuracy = "{one["accuracy"]}"\ncoarse_use = {str(one["coarse"]).lower()}\n{measured}',
        encoding="utf-8",
    )
    return job
