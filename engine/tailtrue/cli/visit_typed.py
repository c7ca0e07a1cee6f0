"""What is typed of a visit: options and a visit file as a record has them, readings in lists, a table or at a prompt."""

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

if TYPE_CHECKING:
    from tailtrue.errors import Problem
    from tailtrue.log.typed import Typed
    from tailtrue.truing.typed import Collar, Reading, Readings

ASKED: "tuple[tuple[Collar, str], ...]" = (("head", "Headstock end, first"), ("tail", "Tailstock end, first"),
         ("tail", "Tailstock end, second"), ("head", "Headstock end, second"))  # fmt: skip

_OF_A_MOVE = ("before", "unclamped", "clamped")


def typed_of(source: Path | None, told: dict[str, str], say: list[str]) -> "Typed":
    """What a visit file and the options say together of a record."""
    from tailtrue.errors import Problem, UsageError
    from tailtrue.log.typed import read_typed, typed_options
    from tailtrue.truing.lacking import DOTS

    said: dict[str, Any] = {}
    names = {"initials": "operator", "moved": "moves", "middle_station": "mid_station"}
    for name, text in told.items():
        if text:
            said[names.get(name, name)] = text
    if "state" in said:
        said["state"] = said["state"].replace("-", " ")
    if "moves" in said:
        said["moves"] = three_readings(said["moves"])
    faults = []
    for name, text in told.items():
        if text.startswith(DOTS):
            faults.append(_still_dots(f"--{name} {text}"))
    for one in say:
        key, sign, value = (part.strip() for part in one.partition("="))
        if not (key and sign and value) or key in said or key in ("readings", "moves", "level"):
            do = 'write a key of a visit file, once, and its value: --say "quill_extension=40 mm"'
            faults.append(Problem("", f"--say {one}", "cannot be used", do))
            continue
        if value.startswith(DOTS):
            faults.append(_still_dots(f"--say {one}"))
            continue
        said[key] = _plain(value)
    if faults:
        raise UsageError(faults)
    options = typed_options(said)
    return options if source is None else read_typed(source).with_more(options)


def _still_dots(said: str) -> "Problem":
    from tailtrue.errors import Problem

    return Problem("", said, "still has its dots", "write in their place what you read, set or saw")


def three_readings(text: str) -> list[dict[str, str]]:
    """What an indicator showed of one move, as a visit file would have it. Raises ReadingsWrong for two, or four."""
    from tailtrue.errors import Problem, ReadingsWrong

    pieces = [piece.strip() for piece in text.split(",")]
    if len(pieces) != len(_OF_A_MOVE) or not all(pieces):
        do = "write three readings on one line, with commas: before, released at the mark, clamped"
        raise ReadingsWrong((Problem("--moved", text, "is not three readings", do),))
    return [dict(zip(_OF_A_MOVE, pieces, strict=True))]


def _plain(value: str) -> Any:
    """A value as a visit file would have it: yes and no, whole numbers, text."""
    words = {"yes": True, "true": True, "no": False, "false": False}
    if value.casefold() in words:
        return words[value.casefold()]
    return int(value) if value.isdecimal() else value


def kind_said(caliper: bool, indicator: bool, typed: "Typed") -> str:
    """What read the collars, by an option or in a visit file. Raises UsageError when two instruments are named."""
    from tailtrue.errors import Problem, UsageError

    if caliper and indicator:
        raise UsageError((Problem("", "--caliper", "stands with --indicator", "name the one that read both collars"),))
    if not (caliper or indicator):
        return typed.read_by
    kind = "caliper" if caliper else "indicator"
    if typed.says("read_by") and typed.read_by != kind:
        do = "name the one that read both collars, once"
        raise UsageError((typed.places["read_by"].problem((), f"stands with --{kind}", do),))
    return kind


def readings_said(head: str, tail: str, order: str, table: Path | None, kind: str = "micrometer") -> "Readings":
    """The readings as they were given: in lists, in a table, or at a prompt."""
    from tailtrue.errors import Problem, UsageError
    from tailtrue.truing.typed import Readings, checked, read_lists, read_table
    from tailtrue.truing.visit import FROM_ZERO

    from_zero = kind == FROM_ZERO
    if table is not None and (head or tail or order):
        raise UsageError((Problem("", "--table", "stands with --head, --tail or --order", "give the table, or the lists"),))
    if table is not None:
        try:
            text = sys.stdin.read() if str(table) == "-" else table.read_text(encoding="utf-8-sig")
        except (OSError, UnicodeDecodeError) as broken:
            why = f"cannot be read: {broken.strerror}" if isinstance(broken, OSError) else "is not text in UTF-8"
            raise UsageError((Problem("", str(table), why, "name a CSV file"),)) from broken
        return read_table(text, "typed" if str(table) == "-" else table.name, from_zero)
    if head or tail:
        return read_lists(head, tail, order, from_zero)
    if not sys.stdin.isatty():
        do = 'give --head "49.612 mm, 49.613 mm" --tail "49.655 mm, 49.654 mm", or --table'
        raise UsageError((Problem("", "", "there are no readings", do),))
    return checked(Readings(tuple(_asked(collar, text, from_zero) for collar, text in ASKED), in_order=True))


def both(check: Callable[[], None], read: "Callable[[], Readings]") -> "Readings":
    """What is read when it and what is checked before it are in order; else every fault of both at once."""
    from tailtrue.errors import TailtrueError

    try:
        check()
    except TailtrueError as wrong:
        try:
            read()
        except TailtrueError as more:
            raise type(wrong)(dict.fromkeys((*wrong.problems, *more.problems))) from more
        raise
    return read()


def _asked(collar: "Collar", text: str, from_zero: bool) -> "Reading":
    """One reading at a prompt; a slip of the keys is told and asked again, so that none before it is lost."""
    from tailtrue.errors import ReadingsWrong, report
    from tailtrue.truing.typed import read_one

    while True:
        try:
            return read_one(collar, typer.prompt(text), from_zero)
        except ReadingsWrong as wrong:
            typer.echo(report(wrong), err=True)
