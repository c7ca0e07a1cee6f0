"""The tables of the records of work, each reckoned again from the limits of the sheet."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from math import isclose
from typing import NamedTuple

from tailtrue.inspection.drawing import size
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.work_record import WORK
from tailtrue.work_record import LookLine, LookTable

_WITHIN = 1e-4
_SLACK = 1e-6


class _Line(NamedTuple):
    """A line of a table: its numbers by field, and what it says."""

    values: Mapping[str, float]
    says: str


Told = Mapping[str, float]
Wanted = Iterator[tuple[str, bool]]


def tables_right(sheet: Sheet) -> Iterator[Fault]:
    """Every line of every table is what the limits of the sheet and the lengths make of its first number."""
    record = sheet.procedure.work_record
    if record is None:
        return
    told: dict[str, float] = {one.figure.fact: one.figure.value for one in sheet.at_steps}
    for figure in figures_in((record.known, record.told)):
        told.setdefault(figure.fact, figure.value)
    drawn = {"span": size(sheet, "centres.span"), "spacing": size(sheet, "collar.spacing")}
    told.update({name: value for name, value in drawn.items() if value is not None})
    for table in record.tables:
        judge = _TABLES.get(table.id)
        where = f"{WORK}, {table.title}"
        if judge is None or not table.lines:
            yield Fault(where, "nobody can reckon this table again")
            continue
        try:
            for line in table.lines:
                yield from (Fault(where, what) for what, holds in judge(_read(line), told) if not holds)
            yield from (Fault(where, what) for what in _in_order(table))
            yield from (Fault(where, what) for what in _ended(table, told))
        except KeyError as lacking:
            yield Fault(where, f"{lacking} is told nowhere, and the table cannot be reckoned again")


def _read(line: LookLine) -> _Line:
    values = {figure.fact.rpartition(".")[2]: figure.value for figure in line.cells if figure is not None}
    return _Line(values, (line.says or "").lower())


def _in_order(table: LookTable) -> Iterator[str]:
    last: float | None = None
    for line in table.lines:
        first = line.cells[0]
        if first is None:
            yield "a line has no first number"
            continue
        if last is not None and not first.value > last:
            yield f"the line for {first.value:g} does not follow that for {last:g}"
        last = first.value


def _ended(table: LookTable, told: Told) -> Iterator[str]:
    if table.id == "chucked.bands":
        yield from _joined([_read(line).values for line in table.lines])
    if table.id != "rework.cuts":
        return
    gone = 0.0
    for line in map(_read, table.lines):
        gone += 2 * line.values["depth"]
        for name in ("least", "largest"):
            if not _near(line.values[f"{name}_after"], told[f"rework.{name}"] + gone):
                yield f"after cut {line.values['cut']:g} the {name} is not {line.values[f'{name}_after']:g} mm"
    if not told["rework.low"] <= line.values["least_after"] <= line.values["largest_after"] <= told["rework.high"]:
        yield "the cuts do not end between the two sizes of the bore"


def _joined(bands: Sequence[Told]) -> Iterator[str]:
    """Bands that leave no difference out: from nought, each from where the one before ends, the last without an end."""
    ends = [0.0, *(band.get("to") for band in bands)]
    for band, end in zip(bands, ends, strict=False):
        if end is None or not _near(band["from"], end):
            yield f"the band from {band['from']:g} mm does not begin where the one before ends"
    if ends[-1] is not None:
        yield "the last band has an end, and nothing is told beyond it"


def _swap(line: _Line, told: Told) -> Wanted:
    change, good = line.values["change"], "good" in line.says
    yield f'{change:g} mm is said "{line.says}"', good == (change <= told["bar.swap_most"] + _SLACK)
    own = line.values.get("own")
    yield f"half of {change:g} mm is of the bar", own is None if good else own is not None and _near(own, change / 2)


def _mean(line: _Line, told: Told) -> Wanted:
    difference, move = line.values["difference"], line.values.get("move")
    away = difference * told["span"] / told["spacing"] / 2
    yield f"{difference:g} mm puts the centre off by {away:g} mm", move is None or isclose(move, away, rel_tol=0.02)
    yield f'{difference:g} mm is said "{line.says}"', ("note" in line.says) == (move is not None)


def _chucked(line: _Line, told: Told) -> Wanted:
    difference = line.values["difference"]
    spacing = told["chucked.far"] - told["chucked.near"]
    inside, outside = told.get("chucked.inside"), told.get("chucked.outside")
    if inside is not None and outside is not None:
        yield f"{difference:g} mm is not surely out, and is acted on", difference >= outside - _SLACK
    else:
        yield f"{difference:g} mm is inside the doubt, and is acted on", difference > told["chucked.uncertainty"] + _SLACK
    leads, taper, wanted = line.values.get("leads"), line.values.get("taper"), difference * told["chucked.over"] / spacing
    if leads is None or taper is None:
        yield f"{difference:g} mm is acted on, and its lead or taper is not told", False
        return
    yield f"{difference:g} mm leads off by its half", _near(leads, difference / 2)
    yield f"{difference:g} mm is a taper of {wanted:g} mm", isclose(taper, wanted, rel_tol=0.02)


def _bands(line: _Line, told: Told) -> Wanted:
    begin, end = line.values["from"], line.values.get("to")
    inside, outside = told.get("chucked.inside"), told.get("chucked.outside")
    if inside is not None and outside is not None:
        due = {"in limits": (0.0, inside), "again": (inside, outside), "level": (outside, None)}
    else:
        due = {"again": (0.0, told["chucked.uncertainty"]), "nearer": (told["chucked.uncertainty"], None)}
    said = next((name for name in due if name in line.says), None)
    yield f'from {begin:g} mm is said "{line.says}"', said is not None
    if said is not None:
        first, last = due[said]
        yield f'"{line.says}" begins at {first:g} mm', _near(begin, first)
        yield f'"{line.says}" ends elsewhere', _near(end, last) if end is not None and last is not None else end == last


def _height(line: _Line, told: Told) -> Wanted:
    side, height = line.says.partition(":")[0], line.values["height"]
    sign = (height > 0) - (height < 0)
    least, most, doubt = told["height.least"], told["height.most"], told["crib.indicator_division"]
    if height < least - doubt - _SLACK:
        due = "low"
    elif height > most + doubt + _SLACK:
        due = "high"
    else:
        due = "in limits" if least + doubt - _SLACK <= height <= most - doubt + _SLACK else "again"
    yield f'a height of {height:g} mm is said "{line.says}"', due in line.says.partition(": ")[2]
    yield f"a height of {height:g} mm stands on the wrong side", side == ("level", "above", "below")[sign]
    shim, lacks = line.values.get("shim"), (least + most) / 2 - height
    yield (
        f"a height of {height:g} mm lacks {lacks:g} mm",
        shim is None if due != "low" else shim is not None and _near(shim, lacks),
    )


def _bore(line: _Line, told: Told) -> Wanted:
    reading, low, high = line.values["reading"], told["rework.low"], told["rework.high"]
    due = "small" if reading < low - _SLACK else "large" if reading > high + _SLACK else "fits"
    yield f'{reading:g} mm is said "{line.says}"', due in line.says
    opens, lacks = line.values.get("opens"), (low + high) / 2 - reading
    yield (
        f"{reading:g} mm lacks {lacks:g} mm",
        opens is None if due != "small" else opens is not None and _near(opens, lacks),
    )


def _cut(line: _Line, _told: Told) -> Wanted:
    yield "a cut is no cut", line.values["depth"] > 0 and line.values["divisions"] >= 1


def _near(first: float, second: float) -> bool:
    return isclose(first, second, rel_tol=_WITHIN, abs_tol=1e-5)


_TABLES: Mapping[str, Callable[[_Line, Told], Wanted]] = {
    "bar.swap_table": _swap, "lookup.table": _mean, "chucked.bands": _bands, "chucked.table": _chucked,
    "height.table": _height, "rework.table": _bore, "rework.cuts": _cut,
}  # fmt: skip
