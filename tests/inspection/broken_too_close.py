"""Sheets that act on a difference too close to say, or read one again that is not."""

from typing import Any

from .broken import breaks
from .changed import Job, with_look_up, with_sheet
from .sample import procedure
from .sample_pieces import mm
from .sample_record import DOUBT, LIMIT


def _with_record(**changes: Any) -> Job:
    return with_sheet(record=procedure().record.model_copy(update=changes))


@breaks("V116", "look-up table")
def band_ends_before_limit_and_doubt() -> Job:
    return with_look_up(outside=mm("align.outside", LIMIT + DOUBT - 0.001, "difference"))


@breaks("V116", "look-up table")
def band_goes_on_past_limit_and_doubt() -> Job:
    return with_look_up(outside=mm("align.outside", LIMIT + DOUBT + 0.001, "difference"))


@breaks("V116", "look-up table")
def no_band_at_all() -> Job:
    return with_look_up(outside=None)


@breaks("V116", "look-up table", also="V112")
def in_limits_past_limit_less_doubt() -> Job:
    return with_look_up(inside=mm("align.inside", LIMIT - DOUBT + 0.001, "difference"))


@breaks("V116", "record, look-up table")
def record_reads_again_up_to_the_limit_only() -> Job:
    scales = procedure().record.scales.model_copy(update={"again": mm("lookup.again_up_to", LIMIT, "difference")})
    return _with_record(scales=scales)


@breaks("V116", "record, look-up table")
def record_reads_again_what_is_surely_out() -> Job:
    rows = list(procedure().record.rows)
    rows[3] = rows[3].model_copy(update={"do": "again", "move": None})
    return _with_record(rows=tuple(rows))


@breaks("V116", "record, look-up table", also="V112")
def record_moves_for_what_is_too_close() -> Job:
    rows = list(procedure().record.rows)
    rows[2] = rows[2].model_copy(update={"do": "move"})
    return _with_record(rows=tuple(rows))


@breaks("V116", "record, look-up table")
def record_reads_again_and_tells_no_band() -> Job:
    return _with_record(scales=procedure().record.scales.model_copy(update={"again": None}))


@breaks("V116", "record, look-up table")
def limit_of_the_record_not_printed() -> Job:
    return _with_record(read=tuple(line for line in procedure().record.read if line[0] != "The limit of this bar is "))


@breaks("V116", "look-up table")
def limit_of_the_sheet_not_printed() -> Job:
    return _with_record(read=tuple(line for line in procedure().record.read if line[0] != "The limit is "))
