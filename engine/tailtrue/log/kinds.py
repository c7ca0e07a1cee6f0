"""What the log keeps beside tests of the tailstock: a certificate of a bar, and a reading of the height of the quill.

Both stand in the book among the tests, with a number of the same row, and name their kind. What was read stands as it
was typed. What was not said is None, never a guess.
"""

from collections.abc import Iterator, Mapping
from datetime import date
from statistics import fmean
from typing import Annotated, Any, Literal, Self

from pydantic import Field, model_validator

from tailtrue.log.agreement import agreement
from tailtrue.log.faults import Fault, contradiction
from tailtrue.log.record import (
    Line,
    Measured,
    Moment,
    Number,
    Part,
    Positive,
    Record,
    Remark,
    State,
    Verdict,
    canonical,
    seal,
)

_NEAR = 1e-9

Readings = Annotated[tuple[Measured, ...], Field(min_length=1)]


class Other(Part):
    """A line of the log that is no test of the tailstock."""

    date_time: Moment
    operator: Line
    lathe: Line
    next_look: Moment | None = None
    remarks: Remark | None = None
    knowledge_version: Line

    @property
    def log_id(self) -> str:
        """A name that follows from the whole content: the same line has the same one in every log."""
        return seal(self.body())

    def body(self) -> str:
        """The line as one line of JSON; what was not said is not in it."""
        return canonical(self.model_dump(mode="json", exclude_none=True))

    @property
    def test(self) -> tuple[object, ...]:
        """What makes two lines those of one piece of work, whenever it was."""
        return type(self), canonical(self.model_dump(mode="json", exclude={"date_time", "next_look", "remarks"}))

    @property
    def version(self) -> int:
        """The version of a log that this line needs at least."""
        return 3

    def _in_time(self) -> Iterator[Fault]:
        if self.next_look is not None and _day(self.next_look) <= _day(self.date_time):
            yield Fault(("next_look",), "is not after the day of the work", "look at both dates again")


class Certificate(Other):
    """A bar looked over and measured for its certificate."""

    kind: Literal["certificate"] = "certificate"
    bar: Line
    length_mm: Positive
    station_a_mm: Positive
    station_b_mm: Positive
    end_a: Readings
    end_b: Readings
    middle: Readings | None = None
    instrument: Line
    instrument_resolution_mm: Positive
    as_it_lies_mm: Number | None = None
    end_for_end_mm: Number | None = None
    change_most_mm: Positive | None = None
    collar_least_diameter_mm: Positive
    centre_holes: Literal["full ring", "broken ring"]
    witness_lines: Literal["whole", "broken", "none"]
    verdict: Literal["fit for use", "out of use"]

    @property
    def smallest_mm(self) -> float:
        """The mean diameter of the smallest collar."""
        return min(fmean(one.mm for one in read) for read in (self.end_a, self.end_b, self.middle) if read)

    @model_validator(mode="after")
    def _goes_together(self) -> Self:
        if found := [*self._in_time(), *self._measured(), *self._judged()]:
            raise contradiction(found)
        return self

    def _measured(self) -> Iterator[Fault]:
        if self.station_a_mm + self.station_b_mm >= self.length_mm:
            yield Fault(("length_mm",), "is no more than both stations together", "measure each station from its own end")
        places = agreement()["places_read"]
        for name in ("end_a", "end_b", "middle"):
            read = getattr(self, name)
            if read is not None and len(read) < places:
                do = f"read the collar at {places:g} places round it"
                yield Fault((name,), f"has fewer than {places:g} readings", do)
        told = [getattr(self, name) is None for name in ("as_it_lies_mm", "end_for_end_mm", "change_most_mm")]
        if any(told) and not all(told):
            yield Fault(
                ("end_for_end_mm",), "does not stand without the other two", "write both differences and their limit"
            )

    def _judged(self) -> Iterator[Fault]:
        if self.verdict != "fit for use":
            return
        do = "write out of use, or look at the readings again"
        if self.smallest_mm < self.collar_least_diameter_mm:
            yield Fault(("verdict",), f"cannot be: a collar is worn to {self.smallest_mm:.3f} mm", do)
        if self.centre_holes == "broken ring":
            yield Fault(("verdict",), "cannot be: the ring of a centre hole is broken", do)
        if self.witness_lines == "broken":
            yield Fault(("verdict",), "cannot be: a collar has moved on the bar", do)
        one, other, most = self.as_it_lies_mm, self.end_for_end_mm, self.change_most_mm
        if one is not None and other is not None and most is not None and abs(one - other) > most + _NEAR:
            yield Fault(("verdict",), f"cannot be: the difference changes by {abs(one - other):.4f} mm with the ends", do)


class Height(Other):
    """Height and lie of the tailstock: the quill swept by an indicator, then run along."""

    kind: Literal["height"] = "height"
    state: State
    indicator: Line
    division_mm: Positive
    quill_out_mm: Positive
    droop_top: Measured
    droop_bottom: Measured
    front: Measured
    top: Measured
    rear: Measured
    bottom: Measured
    front_again: Measured
    height_mm: Number
    side_mm: Number
    rise: Measured
    lean: Measured
    height_least_mm: Number
    height_most_mm: Number
    rise_least_mm: Number
    rise_most_mm: Number
    lean_least_mm: Number
    lean_most_mm: Number
    verdict: Verdict
    shims: Line | None = None

    @model_validator(mode="after")
    def _goes_together(self) -> Self:
        if found := [*self._in_time(), *self._limits(), *self._swept(), *self._reckoned(), *self._judged()]:
            raise contradiction(found)
        return self

    def _limits(self) -> Iterator[Fault]:
        for name in ("height", "rise", "lean"):
            if getattr(self, f"{name}_least_mm") >= getattr(self, f"{name}_most_mm"):
                yield Fault((f"{name}_least_mm",), "is not below the other limit", "look at both again")

    def _swept(self) -> Iterator[Fault]:
        room_mm = agreement()["sweep_divisions"] * self.division_mm + _NEAR
        open_mm = self.front.mm + self.rear.mm - self.top.mm - self.bottom.mm
        do = "sweep again: the arm or the tailstock moved"
        if abs(open_mm) > room_mm:
            yield Fault(("front",), f"and rear together miss top and bottom together by {abs(open_mm):.4f} mm", do)
        if abs(self.front_again.mm - self.front.mm) > room_mm:
            yield Fault(("front_again",), "does not come back to the first reading", do)

    def _reckoned(self) -> Iterator[Fault]:
        droop_mm = (self.droop_top.mm - self.droop_bottom.mm) / 2
        height_mm = (self.top.mm - self.bottom.mm) / 2 - droop_mm
        side_mm = (self.front.mm - self.rear.mm) / 2
        slack_mm = max(agreement()["result"], self.division_mm) + _NEAR
        for name, said_mm, read_mm, way in (
            ("height_mm", self.height_mm, height_mm, "half of top less bottom, less the droop"),
            ("side_mm", self.side_mm, side_mm, "half of front less rear"),
        ):
            if abs(said_mm - read_mm) > slack_mm:
                yield Fault(
                    (name,), f"is not what the readings give: {read_mm:+.4f} mm, {way}", "mend the reading or the sign"
                )

    def _judged(self) -> Iterator[Fault]:
        sizes = {"height": self.height_mm, "rise": self.rise.mm, "lean": self.lean.mm}
        limits = {name: (getattr(self, f"{name}_least_mm"), getattr(self, f"{name}_most_mm")) for name in sizes}
        beyond = [name for name, size in sizes.items() if not limits[name][0] <= size <= limits[name][1]]
        near = min(abs(self.height_mm - limit) for limit in limits["height"]) < self.division_mm - _NEAR
        if self.verdict == "inside" and beyond:
            yield Fault(("verdict",), f"does not agree with {beyond[0]} and its limits", "look at them again")
        elif self.verdict == "inside" and near:
            yield Fault(("verdict",), "cannot be told within a division of a limit", "write too close to say, or read again")
        if self.verdict == "outside" and not beyond:
            yield Fault(("verdict",), "does not agree: height, rise and lean are inside", "look at them again")


KINDS: Mapping[str, type[Certificate] | type[Height]] = {"certificate": Certificate, "height": Height}


def kind_in(content: Any) -> str | None:
    """The kind that the content of a line names; None for a test."""
    kind = content.get("kind") if isinstance(content, Mapping) else None
    return kind if isinstance(kind, str) else None


def validated(content: Any) -> Record | Certificate | Height:
    """The test, or the line of another kind, with this content. Raises ValidationError."""
    return KINDS.get(kind_in(content) or "", Record).model_validate(content)


def _day(moment: str) -> date:
    return date.fromisoformat(moment[:10])
