"""A whole record from what was typed and from what is known without typing; every fault at once, with its place."""

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import ValidationError

from tailtrue.errors import Problem
from tailtrue.given.relations import file_problems
from tailtrue.log.faults import Fault, Path, RecordWrong, faults_of
from tailtrue.log.fields import record_catalogue
from tailtrue.log.record import MICROMETER, Record
from tailtrue.log.typed import OF_A_MICROMETER, TABLE, Typed, path_of


def whole(typed: Typed, known: Mapping[str, Any]) -> Record:
    """The record of what was typed, with what is `known` beside it, by key.

    Raises RecordWrong with everything that is missing or does not go together.
    """
    met = typed.met | {f"{TABLE}.{key}" for key in known}
    if str({**known, **typed.content}.get("read_by", MICROMETER)) != MICROMETER:
        met |= {f"{TABLE}.{key}" for key in OF_A_MICROMETER}
    problems = [*typed.problems, *file_problems(record_catalogue(), TABLE, met, typed.values, typed.shown)]
    if f"{TABLE}.date" not in met:
        problems.append(Problem(typed.shown, "date", "not given", "add it to the file, or give it with --date"))
    elif "date" in known and typed.says("date"):
        problems.append(typed.places["date"].problem((), "is given in the file and with --date", "keep one of the two"))
    if typed.says("readings") and not typed.in_order:
        do = 'add the order in which they were read, such as order = "HTTH"'
        problems.append(typed.places["readings"].problem((), "stand without their order", do))
    if problems:
        raise RecordWrong(problems)
    content: dict[str, Any] = {}
    for key, value in {**known, **typed.content}.items():
        _put(content, path_of(key), value)
    try:
        return Record.model_validate(content)
    except ValidationError as wrong:
        raise RecordWrong(_placed(faults_of(wrong), typed)) from wrong


def _placed(faults: tuple[Fault, ...], typed: Typed) -> Iterator[Problem]:
    keys: dict[Path, str] = {path_of(key): key for key in typed.content}
    for fault in faults:
        for length in range(len(fault.path), 0, -1):
            if key := keys.get(fault.path[:length]):
                yield typed.places[key].problem(fault.path[length:], fault.wrong, fault.do)
                break
        else:
            yield Problem(typed.shown, str(fault.path[-1] if fault.path else ""), fault.wrong, fault.do)


def _put(content: dict[str, Any], target: Path, value: Any) -> None:
    *above, last = map(str, target)
    for group in above:
        content = content.setdefault(group, {})
    content[last] = value
