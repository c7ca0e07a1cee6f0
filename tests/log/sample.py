"""Records of an invented shop."""

from datetime import date, timedelta
from pathlib import Path
from typing import Any

from tailtrue.log.book import Book
from tailtrue.log.record import Record
from tailtrue.log.unread import RowFault, UnreadRow

SPAN_MM, FIRST_MM, SECOND_MM = 300.0, 30.0, 270.0
START = date(2026, 1, 5)
MOVE = {"before": {"said": "0 mm"}, "unclamped": {"said": "0.016 mm"}, "clamped": {"said": "0.015 mm"}}

CONTENT: dict[str, Any] = {
    "date_time": "2026-01-05T09:40",
    "operator": "FB",
    "lathe": "Lathe 2",
    "bar": "FM-1",
    "state": "as found",
    "bar_orientation": "A at headstock",
    "span_mm": SPAN_MM,
    "first_station_mm": FIRST_MM,
    "second_station_mm": SECOND_MM,
    "tool_side": "front",
    "tool_height_error_mm": 0.1,
    "tool": "HSS, nose 0.4 mm",
    "speed_per_min": 450.0,
    "feed_mm_per_rev": 0.1,
    "depth_per_side_mm": 0.05,
    "spring_passes": 2,
    "cut_order": "T then H",
    "feed_direction": "toward headstock",
    "headstock_centre": "soft turned in place",
    "tailstock_centre": "dead",
    "tailstock_centre_id": "centre 3",
    "quill_extension_mm": 40.0,
    "quill_clamped": True,
    "tailstock_position_mm": 520.0,
    "room_degc": 20.0,
    "spindle_warm_s": 900.0,
    "instrument": "micrometer 4",
    "instrument_zero_error_mm": 0.0,
    "instrument_resolution_mm": 0.001,
    "readings": [
        {"collar": "H", "said": "69.842 mm"},
        {"collar": "T", "said": "69.866 mm"},
        {"collar": "T", "said": "70.366 mm", "rejected": "half a millimetre misread"},
        {"collar": "T", "said": "69.866 mm"},
        {"collar": "H", "said": "69.842 mm"},
    ],
    "judgement": {
        "difference_mm": 0.024,
        "move_mm": 0.015,
        "move_uncertainty_mm": 0.0023,
        "limit_mm": 0.016,
        "limit_over_mm": 240.0,
        "verdict": "outside",
        "rule": "difference and its uncertainty within the limit",
    },
    "collar_diameter_after_mm": 69.842,
    "knowledge_version": "1a2b3c4d",
}

EVERYTHING: dict[str, Any] = {
    **CONTENT,
    "state": "as left",
    "mid_station_mm": 150.0,
    "headstock_centre": "hard dead",
    "headstock_centre_runout_mm": 0.003,
    "tailstock_centre_mark": "line up",
    "bar_degc": 21.5,
    "readings": [*CONTENT["readings"], {"collar": "M", "said": "69.854 mm"}],
    "judgement": {**CONTENT["judgement"], "difference_uncertainty_mm": 0.0036},
    "moves": [MOVE, {**MOVE, "before": {"said": "-1/2 thou"}}],
    "chuck_test": {"difference_mm": 0.008, "near_station_mm": 20.0, "far_station_mm": 170.0, "date": "2026-01-04"},
    "level": [{"station_mm": 100.0, "rise_mm": 0.02, "over_mm": 1000.0}],
    "collar_least_diameter_mm": 55.0,
    "remarks": 'chatter on "T",\n=looked again; übergroß',
}


def record(**changes: Any) -> Record:
    """The usual record with other values; a value of the judgement is named as it is there."""
    judged = {key: changes.pop(key) for key in list(changes) if key in CONTENT["judgement"]}
    return Record.model_validate({**CONTENT, **changes, "judgement": {**CONTENT["judgement"], **judged}})


def check(offset_um: float, day: int, diameter_mm: float = 69.842, **changes: Any) -> Record:
    """A test on a day, the tailstock centre so far toward the tool."""
    difference = -2 * offset_um / 1000 * (SECOND_MM - FIRST_MM) / SPAN_MM
    limit = changes.get("limit_mm", 0.016)
    changes = {
        "date_time": (START + timedelta(days=day)).isoformat(),
        "readings": [
            {"collar": "H", "said": f"{diameter_mm:.5f} mm"},
            {"collar": "T", "said": f"{diameter_mm + difference:.5f} mm"},
        ],
        "difference_mm": round(difference, 6),
        "move_mm": -offset_um / 1000,
        "verdict": "inside" if abs(difference) <= limit else "outside",
        "collar_diameter_after_mm": diameter_mm,
        **changes,
    }
    return record(**changes)


def by_indicator(offset_um: float, day: int, **changes: Any) -> Record:
    """A test on a day that an indicator read: from a zero of its own, with a larger doubt, and no diameter."""
    difference = -2 * offset_um / 1000 * (SECOND_MM - FIRST_MM) / SPAN_MM
    read = [{"collar": "H", "said": "0 mm"}, {"collar": "T", "said": f"{difference:.5f} mm"}]
    plain: dict[str, Any] = {
        "read_by": "indicator", "instrument": "indicator 2", "instrument_zero_error_mm": None, "readings": read,
        "collar_diameter_after_mm": None, "move_uncertainty_mm": 0.005,
    }  # fmt: skip
    return check(offset_um, day, **{**plain, **changes})


UNREAD = UnreadRow(
    file="a.csv", line=3, columns="a,b", text="x,y", faults=(RowFault(column="a", said="x", wrong="w", do="d"),)
)


def filled(path: Path, count: int = 3) -> Path:
    """A log with records, one of them struck out, and an unread row."""
    with Book.create(path) as book:
        for day in range(count):
            book.add(check(day, day))
        book.strike(2, "collar not clean", "FB", "2026-02-01")
        book.take_in([], [UNREAD])
    return path
