"""What the inspection is told of the shop: read anew from the user's files and the named limits, not from the plan.

Of the plan only names are taken - which chuck, which kind of gauge, which micrometer, how the collars are fixed - never
a figure.
"""

import tomllib
from collections.abc import Iterable, Iterator, Mapping
from math import prod
from pathlib import Path
from types import MappingProxyType
from typing import Any

from tailtrue.facts import SetByHand
from tailtrue.given.read import Given
from tailtrue.inspection import HandSetting, Shop, ShopEntry
from tailtrue.inspection.shop import Bond, Piece, Rework, Taper
from tailtrue.quantities import read_quantity
from tailtrue.shop_caps import chuck_cap, chuck_drives, gripping_bar, in_collet, limit, speed_caps
from tailtrue.store.knowledge import Knowledge
from tailtrue.store.rule_files import rule_files

Record = Mapping[str, Any]
_NAMED = ("caution", "stop", "note", "step", "decision", "limit")
_SAFE = {"most": "lower", "least": "higher"}
_FIXED = "collars-fixed"
_BONDED = "retaining-compound"
_LEARNER = "learner"


def shop_of(
    given: Given, knowledge: Knowledge, chosen: Mapping[str, Any], left: Mapping[str, str] = MappingProxyType({})
) -> Shop:
    """The shop as the files describe it. `chosen` holds the names that the plan settled on, `left` the steps of the
    sheet that was left for this one, by number."""
    entries = tuple(_entries(rule_files(given.files[0], given.value("job.rules", ""))))
    route, on_hand = knowledge.routes[chosen["route"]], _bar_on_hand(given)
    return Shop(
        machine_name=given.value("lathe.name"),
        dials=given.value("lathe.dials"),
        tool_side=given.value("lathe.tool_side"),
        tailstock_height_right=bool(given.value("lathe.tailstock_height_right")),
        height_gauge=bool(given.value("crib.height_gauge")),
        tool_post=given.value("lathe.tool_post", ""),
        dial_reads=given.value("lathe.dial_reads"),
        dial_division_mm=given.value("lathe.dial_division"),
        between_centres_mm=given.value("lathe.between_centres"),
        swing_over_cross_slide_mm=_swing(given, knowledge),
        speed_caps=speed_caps(given, knowledge, route, chosen),
        drills=_drills(given, knowledge),
        tool_ids_in_shop=frozenset(
            name for name, need in knowledge.needs.items() if not need.file.given or given.value(need.file.given)
        ),
        instruments=_instruments(given, chosen),
        feeds=tuple(given.value("lathe.feeds", ())),
        speeds=tuple(given.value("lathe.speeds", ())),
        speed_from=given.value("lathe.speed_from"),
        speed_to=given.value("lathe.speed_to"),
        speed_settings=tuple(given.value("lathe.speed_settings", ())),
        set_over=given.value("lathe.set_over"),
        found_out=frozenset(
            part
            for part, found in (("bed", "twisted"), ("headstock", "out-of-line"))
            if given.value(f"lathe.{part}_tested") == found
        ),
        screws=(given.value("lathe.screw_toward_operator") or "", given.value("lathe.screw_away") or ""),
        labels=_labels(given, entries),
        must_say=_must_say(knowledge),
        states=_states(knowledge),
        messages_at_step=int(limit(knowledge, "messages_at_step")),
        messages_at_phase=int(limit(knowledge, "messages_at_phase")),
        messages_up_front=int(limit(knowledge, "messages_up_front")),
        at_back=frozenset(caution.file.id for caution in knowledge.cautions if caution.file.at_back),
        shop_rules=entries,
        signals=knowledge.shop.signals,
        kept=knowledge.shop.kept,
        limits={name: (limit.value, _SAFE[limit.spec.bound]) for name, limit in knowledge.shop.limits.items()},
        by_hand={fact: _hand_setting(one, knowledge) for fact, one in given.by_hand.items()},
        measured={
            end: tuple(given.value(f"job.measured_{end}"))
            for end in ("head", "tail", "middle")
            if given.value(f"job.measured_{end}")
        },
        fit_mm=_fit(knowledge, chosen) if chosen["joint"] else (0.0, 0.0),
        bond=_bond(given, knowledge, chosen) if chosen["joint"] == _BONDED else None,
        least_depth_mm=knowledge.tables["joints/set_screw_factors"].value("least-depth"),
        guard_switch=given.value("lathe.chuck_guard") == "interlocked",
        parts=frozenset(route.file.parts),
        bar_exists=_FIXED in route.file.starts_with,
        bar_on_hand={} if on_hand is None else {size: on_hand[key] for size, key in _DRAWN.items()},
        fixed_by=(on_hand or {}).get("fixed_by") or "",
        worn_out_mm=(on_hand or {}).get("worn_out_at"),
        taper=_taper(given),
        piece=_piece(given, knowledge, gripping_bar(chosen)),
        rework=_rework(given, knowledge, left),
        takes=dict(_takes(given)),
        top_slide_division_mm=given.value("lathe.top_slide_dial_division"),
        indicator_division_mm=given.value("crib.indicator_division"),
        indicator_turn_mm=given.value("crib.indicator_turn"),
        indicator_travel_mm=given.value("crib.indicator_travel"),
        third_collar=bool(given.value("job.third_collar")),
        centre_drills=_centre_drills(given, knowledge),
        collet_mm=given.value("crib.collet_length") or 0.0,
        spindle_bore_mm=given.value("lathe.spindle_bore"),
        operator=given.value("job.operator"),
        instructed=_instructed(given),
        learner_cut=(limit(knowledge, "learner_depth"), limit(knowledge, "learner_feed")) if _instructed(given) else None,
        shared=given.value("job.place") == "shared",
        supervised=bool(given.value("job.supervised")) and not given.value("job.alone"),
        owner=(given.value("job.place"), given.value("job.operator"), given.value("job.minor"))
        == ("home", "experienced", False),
        bar_metal=_bar_metal(knowledge, chosen["bar_material"]),
        telescoping=chosen["gauge"] == "telescoping",
        belt=given.value("lathe.drive") == "belt",
        chuck_drives=chuck_drives(given, knowledge),
        bush_passes_mm=_hole_before_spindle(given, knowledge, chosen),
        chuck_bodies_mm=tuple(one["body"] for one in given.value("lathe.chucks")),
        independent_chucks={
            one["label"]: chuck_cap(given, knowledge, one["label"])
            for one in given.value("lathe.chucks")
            if not knowledge.tables["machines/chuck_kinds"].one(kind=one["kind"]).yes("self_centring")
        },
    )


def _instructed(given: Given) -> bool:
    return given.value("job.operator") == _LEARNER or bool(given.value("job.minor"))


def _hole_before_spindle(given: Given, knowledge: Knowledge, chosen: Mapping[str, Any]) -> float:
    chuck = next(one for one in given.value("lathe.chucks") if one["label"] == gripping_bar(chosen))
    collet = in_collet(knowledge, "bar.hold", chosen["bar_hold"])
    hole = given.value("crib.collet_hole") if collet else chuck.get("through_bore")
    return float(hole or 0.0)


def _hand_setting(one: SetByHand, knowledge: Knowledge) -> HandSetting:
    settable = knowledge.given.settable[one.fact]
    return HandSetting(one.value, one.initials, settable.safe, settable.at_least, settable.at_most)


def _fit(knowledge: Knowledge, chosen: Mapping[str, Any]) -> tuple[float, float]:
    """The widest window of clearance that is known for a way of fixing collars; the bond's by its own row."""
    method, family, bar = chosen["joint"], chosen["collar_family"], chosen["bar"]
    pressed = knowledge.tables["joints/press_fits"].where(method=method, family=family)
    slipped = knowledge.tables["joints/slip_fits"].where(method=method)
    fit = (*pressed, *slipped)[0].text("window_fit") if pressed or slipped else "bonded-usable"
    row = knowledge.tables["fits/attachment_clearance"].within(bar, "over_mm", "upto_mm", method=fit)
    return row.number("least_mm"), row.number("largest_mm")


def _bond(given: Given, knowledge: Knowledge, chosen: Mapping[str, Any]) -> Bond | None:
    """A bond between the two metals of this job, each of which may weaken and slow it."""
    if (full := given.value("crib.compound_cure")) is None:
        return None
    derating, curing = knowledge.tables["joints/derating"], knowledge.tables["joints/curing"]
    families, primed = (chosen["bar_family"], chosen["collar_family"]), bool(given.value("crib.activator"))
    metals = [curing.one(family=family) for family in families]
    shares = [
        min(derating.one(factor="substrate", condition=family).number("value") for family in families),
        derating.one(factor="activator", condition="used" if primed else "not-used").number("value"),
        derating.within(chosen["bar"], "from_mm", "to_mm", factor="size").number("value"),
        *(derating.take(row).number("value") for row in derating.where(always="yes")),
    ]
    strength = given.value("crib.compound_strength") or limit(knowledge, "compound_strength")
    slower = 1.0 if primed else max(metal.number("full_cures") for metal in metals)
    return Bond(
        mpa=strength * prod(shares) / limit(knowledge, "bond_safety"),
        gaps=tuple((row.number("to_mm"), row.number("value")) for row in map(derating.take, derating.where(factor="gap"))),
        wait_s=max(full * slower, limit(knowledge, "cure_least")),
        starts=primed or any(metal.text("surface") == "active" for metal in metals),
    )


def _swing(given: Given, knowledge: Knowledge) -> float:
    said = given.value("lathe.swing_over_cross_slide")
    return float(said) if said is not None else given.value("lathe.swing_over_bed") * limit(knowledge, "cross_slide_share")


def _drills(given: Given, knowledge: Knowledge) -> frozenset[float]:
    sizes: set[float] = set()
    for entry in given.value("crib.drills", ()):
        if entry.get("set"):
            sizes |= set(_sizes_of(knowledge, entry["set"]))
        sizes |= {read_quantity(written, "mm") for written in entry.get("sizes") or ()}
    return frozenset(sizes)


def _sizes_of(knowledge: Knowledge, name: str) -> Iterator[float]:
    """Sizes in a set: those that are listed, or all from first to last."""
    for row in knowledge.tables["tools/drill_sets"].where(set=name):
        if row.text("size_mm"):
            yield row.number("size_mm")
        else:
            first, step, last = (row.number(column) for column in ("begins_mm", "step_mm", "ends_mm"))
            yield from (round(first + more * step, 4) for more in range(round((last - first) / step) + 1))


def _centre_drills(given: Given, knowledge: Knowledge) -> tuple[tuple[float, float], ...]:
    """Pilot and body of each centre drill of the crib."""
    table, owned = knowledge.tables["tools/centre_drills"], given.value("crib.centre_drills", ())
    rows = [row for name in owned for row in table.where(designation=name)]
    return tuple((row.number("pilot_mm"), row.number("body_mm")) for row in rows)


def _bar_metal(knowledge: Knowledge, material: str | None) -> tuple[float, float] | None:
    if material is None:
        return None
    row = knowledge.tables["materials/materials"].one(material=material)
    return row.number("modulus_mpa"), row.number("density_kg_m3")


def _instruments(given: Given, chosen: Mapping[str, Any]) -> dict[str, tuple[float, float, float]]:
    """Range and step of each instrument: the first gauge of the kind that holds the bore, the finest micrometer."""
    found: dict[str, tuple[float, float, float]] = {}
    for gauge in given.value("crib.bore_gauges", ()):
        if gauge["kind"] == chosen["gauge"] and gauge["from"] <= chosen["bar"] < gauge["to"]:
            found.setdefault("bore-gauge", (gauge["from"], gauge["to"], gauge.get("resolution") or 0.0))
    for name, size in (("micrometer-bar", chosen["bar"]), ("micrometer-collars", chosen["collar"])):
        for instrument in sorted(given.value("crib.outside_micrometers", ()), key=lambda one: float(one["resolution"])):
            # A job without a bar measures none.
            if size is not None and instrument["from"] <= size <= instrument["to"]:
                found.setdefault(name, (instrument["from"], instrument["to"], instrument["resolution"]))
    if given.value("crib.caliper_resolution") is not None:
        found["caliper"] = (0.0, float("inf"), given.value("crib.caliper_resolution"))
        found.setdefault("micrometer-collars", found["caliper"])
    if given.value("crib.indicator_division") is not None:
        found["indicator"] = (0.0, float("inf"), given.value("crib.indicator_division"))
    return found


_DRAWN = {
    "bar.length": "length", "bar.diameter": "diameter", "collar.diameter": "collar_diameter",
    "collar.width": "collar_width", "collar.station": "station",
}  # fmt: skip


def _bar_on_hand(given: Given) -> Record | None:
    named = given.value("job.bar_on_hand")
    return next((one for one in given.value("stock.test_bars", ()) if one["label"] == named), None)


_TAPER = ("taper_large", "taper_small", "taper_length", "work_length", "head_hole_depth", "tail_hole_depth", "small_end")


def _taper(given: Given) -> Taper | None:
    said = [given.value(f"job.{name}") for name in _TAPER]
    if any(value is None for value in said):
        return None
    large, small, length, work, head, tail, end = said
    return Taper(large, small, length, work, head + tail, end, given.value("crib.dog_room"))


def _piece(given: Given, knowledge: Knowledge, chuck_label: str) -> Piece | None:
    """The stock that the job names, or the thickest there is; none where the job has no stock for a bar."""
    bars = given.value("stock.bars")
    if not bars:
        return None
    bar = next((one for one in bars if one["label"] == given.value("job.bar")), None)
    bar = bar or max(bars, key=lambda one: float(one["diameter"]))
    chuck = next(one for one in given.value("lathe.chucks") if one["label"] == chuck_label)
    grip = chuck.get("jaw_depth") or limit(knowledge, "jaw_depth_assumed")
    return Piece(bar["diameter"], bar["length"], grip, limit(knowledge, "chucked_overhang"))


def _takes(given: Given) -> Iterator[tuple[str, tuple[float, float]]]:
    """What each other way to hold may be used for, of those that the crib has."""
    for what, low, high in (
        ("collet", "collet_from", "collet_to"),
        ("soft jaws", "soft_jaws_from", "soft_jaws_to"),
        ("stub mandrel", "stub_least", "stub_diameter"),
    ):
        if given.value(f"crib.{low}") is not None and given.value(f"crib.{high}") is not None:
            yield what, (float(given.value(f"crib.{low}")), float(given.value(f"crib.{high}")))


def _rework(given: Given, knowledge: Knowledge, left: Mapping[str, str]) -> Rework | None:
    """What was found, for a sheet that another one was left for."""
    if not left:
        return None
    readings = (*given.value("job.found_front", ()), *given.value("job.found_rear", ()))
    titles = {number: knowledge.steps[name].file.title for number, name in left.items()}
    end = {"end-a": "head", "end-b": "tail"}.get(given.value("job.found_at", ""), "")
    tries = int(limit(knowledge, "rework_tries"))
    return Rework(readings, end, left, titles, tries, given.value("job.found", ""), given.value("job.rework_of", ""))


def _must_say(knowledge: Knowledge) -> dict[str, frozenset[str]]:
    """Cautions that know no exception, by the activity they answer."""
    always = [caution.file for caution in knowledge.cautions if not caution.file.when] + list(knowledge.shop.always)
    activities = {activity for file in always for activity in file.answers}
    return {one: frozenset(file.id for file in always if one in file.answers) for one in activities}


def _states(knowledge: Knowledge) -> dict[str, frozenset[str]]:
    """The states of the machine that each activity may be done in."""
    return {row.text("activity"): frozenset(row.text("states").split()) for row in knowledge.tables["safety/states"]}


def _entries(paths: Iterable[Path]) -> Iterator[ShopEntry]:
    """The entries of the rule files, read anew: their order, kinds and names, not what was made of them."""
    for path in paths:
        for kind, rows in tomllib.loads(path.read_text(encoding="utf-8-sig")).items():
            for row in rows:
                named = next(name for name in _NAMED if row.get(name))
                name = row[named]["id"] if isinstance(row[named], Mapping) else row[named]
                also = f": {row['alternative']}" if named == "decision" else ""
                yield ShopEntry(kind, f"{name}{also}", row["reason"], row["by"])


def _labels(given: Given, rules: Iterable[ShopEntry]) -> tuple[str, ...]:
    """Every word the user wrote, alone or in a record: a number in it is theirs."""
    words: list[str] = [word for one in given.by_hand.values() for word in (one.reason, one.initials)]
    words += [word for one in rules for word in (one.reason, one.by)]
    for value in given.values.values():
        for one in value.value if isinstance(value.value, tuple) else (value.value,):
            parts = one.values() if isinstance(one, Mapping) else (one,)
            words += [part for part in parts if isinstance(part, str)]
    return tuple(dict.fromkeys(words))
