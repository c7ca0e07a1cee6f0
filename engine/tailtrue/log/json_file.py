"""The log as JSON: one record a line inside a list. What is written here reads back to the very same bytes."""

import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from tailtrue.errors import Problem, UsageError
from tailtrue.given.quoting import harmless
from tailtrue.log.book import Entry, OtherEntry
from tailtrue.log.faults import Path
from tailtrue.log.rows import FileRow, Good, read_row
from tailtrue.log.unread import RowFault, UnreadRow

_VERSION = 3
_TESTS_ALONE = 2  # what every file says that holds no certificate and no height
_READS = (1, _TESTS_ALONE, _VERSION)  # in the first version every test was read with a micrometer, and does not say so
_BLANK = " \t\r\n"


def to_json(entries: Iterable[Entry | OtherEntry]) -> str:
    """Every record with its number, its lasting id, its values, and the strike through it."""
    found = list(entries)
    version = _VERSION if any(isinstance(one, OtherEntry) for one in found) else _TESTS_ALONE
    rows = [json.dumps(entry_content(entry), ensure_ascii=False) for entry in found]
    inside = ",\n".join(rows)
    return f'{{"alignment_log": {version}, "records": [\n{inside}{chr(10) if rows else ""}]}}\n'


def entry_content(entry: Entry | OtherEntry) -> dict[str, Any]:
    """One record as plain content; what was not said is not in it."""
    content: dict[str, Any] = {"number": entry.number, "log_id": entry.record.log_id}
    content["record"] = entry.record.model_dump(mode="json", exclude_none=True)
    if entry.strike is not None:
        content["struck"] = entry.strike.model_dump(mode="json", include={"reason", "initials", "date_time"})
    return content


def from_json(text: str, file: str, now: str | None = None) -> Iterator[Good | UnreadRow]:
    """Each record of such a file: a record, or its text and what is wrong with it.

    Raises UsageError when the file is no JSON, or none of the log.
    """
    text = text.removeprefix("\ufeff")
    try:
        whole = json.loads(text)
    except (ValueError, RecursionError) as wrong:
        line = getattr(wrong, "lineno", 1)
        raise _no_log(file, line, "cannot be read as JSON", "export the log again, or mend this line") from wrong
    version = whole.get("alignment_log") if isinstance(whole, dict) else None
    if not isinstance(whole, dict) or not isinstance(whole.get("records"), list) or version is None:
        raise _no_log(file, 1, "is no exported alignment log", "name a file that was exported from a log")
    if version not in _READS:
        newer = f"is of version {version}, and this tailtrue reads versions up to {_VERSION}"
        raise _no_log(file, 1, newer, "use the newer one")
    for line, piece in _elements(text):
        yield _read(json.loads(piece), line, piece, file, now)


def _read(element: Any, line: int, piece: str, file: str, now: str | None) -> Good | UnreadRow:
    allowed = {"number", "log_id", "record", "struck"}
    if not isinstance(element, Mapping) or not isinstance(element.get("record"), Mapping):
        return _unread(file, line, piece, "record", "not given", 'write {"record": {...}}')
    if unknown := sorted(set(element) - allowed):
        return _unread(file, line, piece, unknown[0], f"there is no '{unknown[0]}' beside a record", "take it out")
    log_id, struck = element.get("log_id"), element.get("struck")
    if not isinstance(log_id, str | None):
        return _unread(file, line, piece, "log_id", "is not text", "take it out to add the record as a new one")
    if not isinstance(struck, Mapping | None):
        return _unread(file, line, piece, "struck", "is not a group of values", "write reason, initials and date_time in it")
    return read_row(FileRow(file, line, "", piece, element["record"], log_id, struck, now), _column)


def _column(path: Path) -> str:
    return ".".join(str(step + 1) if isinstance(step, int) else step for step in path)


def _unread(file: str, line: int, piece: str, column: str, wrong: str, do: str) -> UnreadRow:
    fault = RowFault(column=harmless(column), said=harmless(piece), wrong=wrong, do=do)
    return UnreadRow(file=file, line=line, columns="", text=piece, faults=(fault,))


def _elements(text: str) -> Iterator[tuple[int, str]]:
    """Line and text of each element of the list of records; the whole has been read as JSON before."""
    decoder = json.JSONDecoder()
    at = _after(text, text.index("{") + 1)
    while text[at] != "}":
        key, at = decoder.raw_decode(text, at)
        at = _after(text, _after(text, at) + 1)  # the colon
        if key == "records" and text[at] == "[":
            yield from _listed(text, at, decoder)
        _, at = decoder.raw_decode(text, at)
        at = _after(text, at)
        if text[at] == ",":
            at = _after(text, at + 1)


def _listed(text: str, at: int, decoder: json.JSONDecoder) -> Iterator[tuple[int, str]]:
    at = _after(text, at + 1)
    while text[at] != "]":
        _, end = decoder.raw_decode(text, at)
        yield text.count("\n", 0, at) + 1, text[at:end]
        at = _after(text, end)
        if text[at] == ",":
            at = _after(text, at + 1)


def _after(text: str, at: int) -> int:
    while text[at] in _BLANK:
        at += 1
    return at


def _no_log(file: str, line: int, wrong: str, do: str) -> UsageError:
    return UsageError((Problem(f"{file}:{line}", "", wrong, do),))
