"""One record of the alignment log: the state of lathe and bar, the readings as they were typed, what was judged.

What was not said is None, never a guess. Lengths are in mm. A difference is that of diameters, tailstock collar less
headstock collar; a move is that of the tailstock centre, more than 0 toward the tool.
"""

import hashlib
import json
import unicodedata
from collections.abc import Iterator
from datetime import date, datetime
from statistics import fmean
from typing import Annotated, Any, Literal, Self

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from tailtrue.calc.alignment import tailstock_move
from tailtrue.calc.validity import OutOfRange
from tailtrue.errors import FactsWrong
from tailtrue.given.day import instead
from tailtrue.log.agreement import agreement
from tailtrue.log.faults import Fault, contradiction, unfit
from tailtrue.quantities import read_quantity

Collar = Literal["H", "M", "T"]
State = Literal["as found", "as left"]
Verdict = Literal["inside", "outside", "too close to say"]
ReadBy = Literal["micrometer", "indicator"]
MICROMETER: ReadBy = "micrometer"

_SAME_MM = 1e-9
_LONGEST_LINE = 120
_LONGEST_REMARK = 2000

# A test read with an indicator was no record before the second version of a log, and what wrote the first cannot read it.
VERSION_OF: dict[ReadBy, int] = {"micrometer": 1, "indicator": 2}
_WITH_NEAREST_STEP = 2


def moment(text: str) -> str:
    """A day, or a day and a time of the shop's clock, as ISO 8601 has it.

    >>> moment("2026-11-24 09:40")
    '2026-11-24T09:40'
    """
    tidy = text.strip().replace(" ", "T", 1)
    try:
        if "T" not in tidy:
            return date.fromisoformat(tidy).isoformat() if len(tidy) == 10 else _no_moment(text)
        read = datetime.fromisoformat(tidy)
    except ValueError:
        return _no_moment(text)
    if read.tzinfo is not None:
        raise unfit("names a time zone", "write the time of the shop's own clock, such as 2026-03-31T09:40")
    if read.microsecond or tidy[10] != "T":
        return _no_moment(text)
    return read.isoformat(timespec="seconds" if read.second else "minutes")


def _no_moment(text: str) -> str:
    raise unfit("is no date with or without a time", instead(text) or "write 2026-03-31 or 2026-03-31T09:40")


def _plain(text: str, allowed: str = "") -> str:
    # Text of a log goes to terminals, spreadsheets and paper: no characters that steer them.
    if any(unicodedata.category(one) in ("Cc", "Cs") and one not in allowed for one in text):
        raise unfit("holds a character that cannot be printed", "take it out")
    if not text.strip():
        raise unfit("is empty", "write something, or leave it out altogether")
    return text


def _line(text: str) -> str:
    tidy = _plain(text.strip())
    if len(tidy) > _LONGEST_LINE:
        raise unfit(f"is longer than {_LONGEST_LINE} characters", "say it shorter")
    return tidy


def _remark(text: str) -> str:
    if len(text) > _LONGEST_REMARK:
        raise unfit(f"is longer than {_LONGEST_REMARK} characters", "say it shorter")
    return _plain(text, allowed="\n\t")


def _whole(value: Any) -> Any:
    # A yes is not a one.
    if isinstance(value, bool):
        raise unfit("is not a number", "write a number")
    return value


Moment = Annotated[str, AfterValidator(moment)]
Line = Annotated[str, AfterValidator(_line)]
Remark = Annotated[str, AfterValidator(_remark)]
Number = Annotated[float, BeforeValidator(_whole), Field(allow_inf_nan=False)]
Positive = Annotated[float, BeforeValidator(_whole), Field(gt=0, allow_inf_nan=False)]
NotNegative = Annotated[float, BeforeValidator(_whole), Field(ge=0, allow_inf_nan=False)]
Count = Annotated[int, BeforeValidator(_whole), Field(ge=0)]


class Part(BaseModel):
    """A part of a record: closed, and not changed once made."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class Measured(Part):
    """A reading as it was typed, with its unit, and the same in mm."""

    said: Line
    mm: Number

    @model_validator(mode="before")
    @classmethod
    def _fill_mm(cls, data: Any) -> Any:
        if isinstance(data, dict) and isinstance(data.get("said"), str) and data.get("mm") is None:
            try:
                return {**data, "mm": read_quantity(data["said"], "mm")}
            except FactsWrong as wrong:
                raise _not_a_length(wrong) from None
        return data

    @model_validator(mode="after")
    def _agrees(self) -> Self:
        try:
            read_mm = read_quantity(self.said, "mm")
        except FactsWrong as wrong:
            raise _not_a_length(wrong) from None
        if abs(read_mm - self.mm) > _SAME_MM:
            raise contradiction(
                [Fault(("mm",), f"does not agree with what was typed, which is {read_mm:g} mm", "leave one of the two out")]
            )
        return self


def _not_a_length(wrong: FactsWrong) -> Exception:
    problem = wrong.problems[0]
    return contradiction([Fault(("said",), problem.wrong, problem.do)])


class Reading(Measured):
    """The diameter of a collar as read; a rejected reading stays in the record with the reason."""

    collar: Collar
    rejected: Line | None = None


class Move(Part):
    """One move of the tailstock as the indicator showed it."""

    before: Measured
    unclamped: Measured
    clamped: Measured


class ChuckTest(Part):
    """The two collars of a bar held in the chuck alone: what bears on headstock and bed."""

    difference_mm: Number
    near_station_mm: NotNegative
    far_station_mm: Positive
    date: Moment


class LevelReading(Part):
    """How much the level rose across the ways at one station."""

    station_mm: Number
    rise_mm: Number
    over_mm: Positive

    @property
    def mm_per_m(self) -> float:
        """The rise over one metre."""
        return self.rise_mm / self.over_mm * 1000


class Judgement(Part):
    """What a calculation said at the time. The limit is one on the difference of diameters."""

    difference_mm: Number
    difference_uncertainty_mm: Positive | None = None
    move_mm: Number
    move_uncertainty_mm: Positive
    limit_mm: Positive
    limit_over_mm: Positive
    verdict: Verdict
    rule: Line


class Record(Part):
    """One test of one lathe with one bar, as found or as left.

    An indicator reads from a zero of its own: its readings are no diameters, and only their difference is one. Every
    record of the first version was read with a micrometer, and does not say so.
    """

    date_time: Moment
    operator: Line
    lathe: Line
    bar: Line
    state: State
    bar_orientation: Literal["A at headstock", "B at headstock"]
    span_mm: Positive
    first_station_mm: NotNegative
    second_station_mm: Positive
    mid_station_mm: Positive | None = None
    tool_side: Literal["front", "rear"]
    tool_height_error_mm: Number
    tool: Line
    speed_per_min: Positive
    feed_mm_per_rev: Positive
    nearest_step: bool | None = None
    depth_per_side_mm: NotNegative
    spring_passes: Count
    cut_order: Literal["T then H", "H then T"]
    feed_direction: Literal["toward headstock", "toward tailstock"]
    headstock_centre: Literal["soft turned in place", "hard dead"]
    headstock_centre_runout_mm: NotNegative | None = None
    tailstock_centre: Literal["dead", "live"]
    tailstock_centre_id: Line
    tailstock_centre_mark: Line | None = None
    quill_extension_mm: NotNegative
    quill_clamped: bool
    tailstock_position_mm: NotNegative
    room_degc: Number
    bar_degc: Number | None = None
    spindle_warm_s: NotNegative
    read_by: ReadBy = MICROMETER
    instrument: Line
    instrument_zero_error_mm: Number | None = None
    instrument_resolution_mm: Positive
    readings: tuple[Reading, ...]
    judgement: Judgement
    moves: tuple[Move, ...] = ()
    chuck_test: ChuckTest | None = None
    level: tuple[LevelReading, ...] = ()
    collar_diameter_after_mm: Positive | None = None
    collar_least_diameter_mm: Positive | None = None
    remarks: Remark | None = None
    knowledge_version: Line

    @property
    def test(self) -> tuple[object, ...]:
        """What makes two records those of one test, whenever it was."""
        return self.lathe, self.bar, self.state, self.read_by, self.readings

    @property
    def offset_mm(self) -> float:
        """Where the tailstock centre stood: more than 0 toward the tool, the opposite of the move it needs."""
        return -self.judgement.move_mm

    @property
    def offset_limit_mm(self) -> float:
        """The limit on the difference of diameters as one on the offset of the centre."""
        return tailstock_move(self.judgement.limit_mm, self.span_mm, self.first_station_mm, self.second_station_mm)

    def kept(self, collar: Collar) -> tuple[float, ...]:
        """The readings of a collar in mm that were not rejected."""
        return tuple(one.mm for one in self.readings if one.collar == collar and one.rejected is None)

    @model_validator(mode="after")
    def _goes_together(self) -> Self:
        if found := [*self._stations(), *self._state(), *self._read(), *self._judged()]:
            raise contradiction(found)
        return self

    def _stations(self) -> Iterator[Fault]:
        if self.first_station_mm >= self.second_station_mm:
            yield Fault(("first_station_mm",), "is not below the station of the tailstock collar", "look at both again")
        if self.second_station_mm > self.span_mm:
            yield Fault(("second_station_mm",), "lies beyond the tailstock centre", "measure from the headstock centre")
        if self.mid_station_mm is not None and not self.first_station_mm < self.mid_station_mm < self.second_station_mm:
            yield Fault(("mid_station_mm",), "does not lie between the two collars", "look at the three stations again")
        if self.mid_station_mm is None and any(one.collar == "M" for one in self.readings):
            yield Fault(("mid_station_mm",), "not given, but a middle collar was read", "add where the middle collar sits")

    def _state(self) -> Iterator[Fault]:
        if self.state == "as found" and self.moves:
            yield Fault(("moves",), "belong to no test as found", "put them in the record as left")
        if self.headstock_centre == "hard dead" and self.headstock_centre_runout_mm is None:
            yield Fault(
                ("headstock_centre_runout_mm",),
                "not given, and a hard centre never runs quite true",
                "indicate it and add it",
            )
        if self.chuck_test is not None and self.chuck_test.near_station_mm >= self.chuck_test.far_station_mm:
            yield Fault(
                ("chuck_test", "near_station_mm"), "is not below the far station", "measure both from the chuck face"
            )

    def _read(self) -> Iterator[Fault]:
        """What a micrometer must say and an indicator cannot."""
        if self.read_by == MICROMETER:
            for name in ("instrument_zero_error_mm", "collar_diameter_after_mm"):
                if getattr(self, name) is None:
                    yield Fault((name,), "not given", "add it")
            return
        if self.instrument_zero_error_mm is not None:
            yield Fault(
                ("instrument_zero_error_mm",),
                "belongs to a micrometer; an indicator reads from a zero of its own",
                "take it out, and look whether the instrument is the right one",
            )
        least_mm = self.collar_least_diameter_mm
        if least_mm is not None and any(one.rejected is None and abs(one.mm) >= least_mm for one in self.readings):
            do = "say what read them, or write what the indicator showed"
            yield Fault(("readings",), "are diameters, which no indicator reads", do)

    def _judged(self) -> Iterator[Fault]:
        judged = self.judgement
        missing = [collar for collar in ("H", "T") if not self.kept(collar)]
        for collar in missing:
            yield Fault(("readings",), f"hold none of collar {collar} that was kept", "add it; a test has both collars")
        inside = abs(judged.difference_mm) <= judged.limit_mm
        if (judged.verdict == "inside" and not inside) or (judged.verdict == "outside" and inside):
            yield Fault(
                ("judgement", "verdict"), "does not agree with the difference and its limit", "look at the three again"
            )
        if missing:
            return
        read_mm = fmean(self.kept("T")) - fmean(self.kept("H"))
        if abs(read_mm - judged.difference_mm) > agreement()["difference"]:
            yield Fault(
                ("judgement", "difference_mm"),
                f"is not what the kept readings give: {read_mm:+.4f} mm, tailstock collar less headstock collar",
                "mend the reading, the sign or the difference",
            )
        smallest_mm = min(fmean(self.kept("T")), fmean(self.kept("H")))
        left_mm = self.collar_diameter_after_mm if self.read_by == MICROMETER else None
        if left_mm is not None and abs(left_mm - smallest_mm) > agreement()["diameter_after"]:
            yield Fault(
                ("collar_diameter_after_mm",), f"is far from the collars as read, {smallest_mm:.3f} mm", "look at it again"
            )
        yield from self._move_agrees()

    def _move_agrees(self) -> Iterator[Fault]:
        judged = self.judgement
        try:
            move_mm = tailstock_move(judged.difference_mm, self.span_mm, self.first_station_mm, self.second_station_mm)
        except OutOfRange as beyond:
            if self.first_station_mm < self.second_station_mm <= self.span_mm:
                yield Fault(("judgement", "move_mm"), f"cannot be judged: {beyond}", "look at the readings again")
            return
        if abs(move_mm - judged.move_mm) > agreement()["move"]:
            yield Fault(
                ("judgement", "move_mm"),
                f"is not what the difference gives: {move_mm:+.4f} mm, more than 0 toward the tool",
                "mend the move, its sign or the stations",
            )

    @property
    def log_id(self) -> str:
        """A name that follows from the whole content: the same record has the same one in every log."""
        return seal(self.body())

    def body(self) -> str:
        """The record as one line of JSON; what was not said is not in it, nor what every record of the first version was.

        So a test has the same name in every version of a log.
        """
        plain = {"read_by"} if self.read_by == MICROMETER else None
        return canonical(self.model_dump(mode="json", exclude_none=True, exclude=plain))

    @property
    def version(self) -> int:
        """The version of a log that this record needs at least."""
        return max(VERSION_OF[self.read_by], _WITH_NEAREST_STEP if self.nearest_step is not None else 1)


class Strike(Part):
    """Why a record or an unread row no longer counts, and who says so."""

    of: Literal["record", "unread"] = "record"
    number: Annotated[int, Field(ge=1)]
    reason: Line
    initials: Line
    date_time: Moment


def canonical(content: Any) -> str:
    """JSON that is the same for the same content."""
    return json.dumps(content, ensure_ascii=False, sort_keys=True, separators=(",", ":"), allow_nan=False)


def seal(body: str) -> str:
    """A short fingerprint; its first letter keeps a spreadsheet from taking it for a number."""
    return "r" + hashlib.sha256(body.encode()).hexdigest()[:16]
