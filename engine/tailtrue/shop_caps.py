"""Which speeds may not be passed and what grips the work, read anew from the user's files and the named limits."""

from collections.abc import Mapping
from math import pi, sqrt
from typing import Any

from tailtrue.given.read import Given
from tailtrue.inspection import SpeedCap
from tailtrue.store.knowledge import Knowledge, Route

_GRAVITY = 9.80665  # m/s2


def speed_caps(given: Given, knowledge: Knowledge, route: Route, chosen: Mapping[str, Any]) -> tuple[SpeedCap, ...]:
    held: dict[str, list[str]] = {}
    for phase in route.phases:
        held.setdefault(phase.file.held, []).append(phase.file.id)
    in_chuck, bar, on_centres = (tuple(held.get(way, ())) for way in ("chuck", "bar", "centres"))
    # A collar on a stub is gripped by the chuck of the blanks too, with a limit of its own besides.
    stub = tuple(held.get("stub", ()))
    blank = (*held.get("blank", ()), *stub)
    centre = f"{given.value('crib.tailstock_centre')}_centre_speed"
    blanks = (
        (
            SpeedCap("chuck of the blanks", _of_blanks(given, knowledge, chosen), blank),
            SpeedCap("blank in the jaws", limit(knowledge, "blank_speed"), blank),
        )
        if blank and chosen["blank_chuck"]
        else ()
    )
    plated = tuple(held.get("faceplate", ()))
    plate = given.value("crib.faceplate_diameter")
    clamped = (
        (
            SpeedCap("rim of the faceplate", 1000 * limit(knowledge, "faceplate_rim") / (pi * plate), plated),
            SpeedCap("blank clamped out of true", _shakes_from(knowledge), plated),
        )
        if plated and plate is not None
        else ()
    )
    alone = tuple(held.get("independent", ()))
    trued = (
        (
            SpeedCap("chuck of the collar", chuck_cap(given, knowledge, chosen["rework_chuck"]), alone),
            SpeedCap("blank in the jaws", limit(knowledge, "blank_speed"), alone),
        )
        if alone and chosen["rework_chuck"]
        else ()
    )
    chuck = chuck_cap(given, knowledge, chosen["chuck"])
    # Where a soft point is turned, what is to drive the dog turns with it.
    point = tuple(held.get("point", ()))
    driving = (*on_centres, *point)
    return (
        SpeedCap("chuck", chuck, in_chuck),
        SpeedCap("what grips the bar", float(given.value("crib.collet_speed")), bar)
        if in_collet(knowledge, "bar.hold", chosen["bar_hold"])
        else SpeedCap("what grips the bar", chuck_cap(given, knowledge, gripping_bar(chosen)), bar),
        *blanks,
        *clamped,
        *trued,
        SpeedCap("collar held by its bore", limit(knowledge, "stub_speed"), stub),
        SpeedCap("chuck that drives", chuck, driving if chuck_drives(given, knowledge) else ()),
        SpeedCap("work on a dog", limit(knowledge, "between_centres_speed"), driving),
        SpeedCap("tailstock centre", limit(knowledge, centre), on_centres),
    )


def _of_blanks(given: Given, knowledge: Knowledge, chosen: Mapping[str, Any]) -> float:
    if in_collet(knowledge, "collar.hold", chosen["collar_hold"]):
        return float(given.value("crib.collet_speed"))
    return chuck_cap(given, knowledge, chosen["blank_chuck"])


def _shakes_from(knowledge: Knowledge) -> float:
    """The speed at which a blank that runs out as far as it may pulls with the share of its weight that is borne. [1/min]"""
    metres = limit(knowledge, "first_run_out") / 1000
    return 60 / (2 * pi) * sqrt(limit(knowledge, "unbalance_share") * _GRAVITY / metres)


def gripping_bar(chosen: Mapping[str, Any]) -> str:
    """The chuck that grips the bar: the one that is on the spindle, or the four-jaw that was fitted for it."""
    return str(chosen["bar_chuck"] or chosen["chuck"])


def in_collet(knowledge: Knowledge, decision: str, hold: str | None) -> bool:
    """Whether a collet chuck stands on the spindle while something is held so."""
    row = None if hold is None else knowledge.tables["machines/holdings"].one(decision=decision, hold=hold)
    return row is not None and row.yes("collet_chuck")


def chuck_drives(given: Given, knowledge: Knowledge) -> bool:
    drive = given.value("crib.drive")
    return drive is not None and knowledge.tables["machines/drives"].one(drive=drive).yes("chuck_stays_on")


def chuck_cap(given: Given, knowledge: Knowledge, label: str) -> float:
    chuck = next(one for one in given.value("lathe.chucks") if one["label"] == label)
    marked = chuck["marked_speed"]
    if marked == "unmarked":
        rows = knowledge.tables["machines/chuck_limits"]
        marked = rows.within(chuck["body"], "body_over_mm", "body_upto_mm").number("unmarked_limit_per_min")
    return float(marked)


def limit(knowledge: Knowledge, name: str) -> float:
    return float(knowledge.limits[f"limit.{name}"].value)
