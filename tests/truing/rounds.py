"""What the tests of rounds share: a case, visits against one before, a set-up for the log."""

from pathlib import Path
from typing import Any

from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.truing.history import Before
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import Visit, judge_visit

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
METRIC: Case = advise(EXAMPLES / "fernhill" / "job.toml").case

# A visit as found: headstock end 69.612, tailstock end 69.654, far out.
FIRST = Before(69.612, 69.654, 0.0042, 0.0284, "outside", "2026-03-02", 1)

SET_UP = """[record]
initials = "AB"
bar_orientation = "A at headstock"
tool_height_error = "0 mm"
tool = "HSS, nose 0.4 mm"
speed = "450 1/min"
feed = "0.1 mm/rev"
depth_per_side = "0.05 mm"
spring_passes = 2
cut_order = "T then H"
feed_direction = "toward headstock"
headstock_centre = "soft turned in place"
tailstock_centre = "live"
tailstock_centre_id = "centre 3"
quill_extension = "40 mm"
quill_clamped = true
tailstock_position = "520 mm"
room = "20 degC"
spindle_warm = "15 min"
instrument = "micrometer 4"
instrument_zero_error = "0 mm"
"""


def next_visit(head: float, tail: float, before: Before = FIRST, **also: Any) -> Visit:
    """A visit of four readings in good order after another one."""
    said = {f"visit.{name}": value for name, value in also.items()}
    readings = read_lists(f"{head:.3f} mm, {head:.3f} mm", f"{tail:.3f} mm, {tail:.3f} mm", "HTTH")
    return judge_visit(
        METRIC, readings, also={**before.facts(said.get("visit.state") == "as-found"), **said}, kind="micrometer"
    )


def barring(found: Visit) -> list[str]:
    return [one.id for one in found.remarks if one.bars_move]


def beside(found: Visit) -> list[str]:
    return [one.id for one in found.remarks if not one.bars_move]
