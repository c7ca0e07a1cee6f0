"""What is wrong with the log or with a record for it, in words; a fault knows the place of the value it speaks of."""

from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

from pydantic import ValidationError
from pydantic_core import ErrorDetails, PydanticCustomError

from tailtrue.errors import ExitCode, TailtrueError
from tailtrue.given.suggest import one_of

Path = tuple[str | int, ...]

_SAID = "said"
_CONTRADICTIONS = "contradictions"


class LogUnusable(TailtrueError):
    """The alignment log cannot be read or written, or does not hold what was asked for."""

    exit_code = ExitCode.FACTS_WRONG
    heading = "the alignment log cannot be used for this"


class RecordWrong(TailtrueError):
    """A record cannot be taken into the log as it stands."""

    exit_code = ExitCode.FACTS_WRONG
    heading = "nothing was added to the alignment log: the record needs mending"


class Fault(NamedTuple):
    """One thing that is wrong with a record: of which value, what, and what to do."""

    path: Path
    wrong: str
    do: str


def unfit(wrong: str, do: str) -> PydanticCustomError:
    """The error of one value, for a validator to raise."""
    return PydanticCustomError(_SAID, "{wrong}; {do}", {"wrong": wrong, "do": do})


def contradiction(faults: Iterable[Fault]) -> PydanticCustomError:
    """The error of values that do not go together, all at once."""
    found = tuple(faults)
    words = "; ".join(f"{'.'.join(map(str, one.path))} {one.wrong}" for one in found)
    return PydanticCustomError(_CONTRADICTIONS, "{words}", {"words": words, "faults": found})


def faults_of(error: ValidationError) -> tuple[Fault, ...]:
    """Everything that is wrong with a record, in the order of its fields."""
    return tuple(fault for one in error.errors() for fault in _faults(one))


def _faults(error: ErrorDetails) -> Iterator[Fault]:
    path: Path = error["loc"]
    context: dict[str, Any] = error.get("ctx", {})
    kind = error["type"]
    if kind == _CONTRADICTIONS:
        for fault in context["faults"]:
            yield fault._replace(path=(*path, *fault.path))
    elif kind == _SAID:
        yield Fault(path, context["wrong"], context["do"])
    elif kind == "missing":
        yield Fault(path, "not given", "add it")
    elif kind == "extra_forbidden":
        yield Fault(path, f"there is no '{path[-1]}' in a record", "take it out, or mend the name")
    elif kind == "literal_error":
        choices = [word.strip("'") for word in context["expected"].replace(" or ", ", ").split(", ")]
        yield Fault(path, "is not one of the choices", f"write {one_of(choices)}")
    else:
        yield Fault(path, *_OF_A_KIND.get(kind.split("_")[0], ("cannot be used", str(error["msg"]).lower())))


_OF_A_KIND = {
    "float": ("is not a number", "write a plain number with a decimal point, in the unit that the name ends with"),
    "finite": ("is not a finite number", "write a plain number, in the unit that the name ends with"),
    "int": ("is not a whole number", "write a whole number"),
    "bool": ("is neither yes nor no", "write yes or no"),
    "string": ("is not text, or is empty or too long", "write it in a few words"),
    "greater": ("is too small", "it must be more than nought, or nought where nothing was taken"),
    "tuple": ("is not a list", "write a list"),
    "model": ("is not a group of values", "write its values by name"),
}
