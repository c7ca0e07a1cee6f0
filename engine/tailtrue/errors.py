"""What can go wrong, in words for people, and the exit code that goes with it.

::

    TailtrueError              1  nobody foresaw it
    ├── UsageError             2  the command was given something it cannot use
    ├── KnowledgeInvalid       3  a file of the knowledge is wrong
    ├── FactsWrong             4  what the user said cannot be used, or something is missing
    │   ├── QuantityWrong      4  a text is not plainly one quantity (in `quantities`)
    │   └── ReadingsWrong      4  readings at the lathe cannot be used
    ├── LogUnusable            4  the alignment log cannot be read or written (in `log`)
    ├── RecordWrong            4  a record cannot be taken into the log (in `log`)
    ├── TestsWrong             4  a file of tests cannot be used (in `diagnosis`)
    ├── Refused                5  this job must not be done as it stands
    └── InspectionFailed       6  the finished procedure did not pass the independent inspection

Every error carries all its problems at once, so that nobody has to mend one file ten times.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import IntEnum
from typing import ClassVar

MOST_SHOWN = 20


class ExitCode(IntEnum):
    """How the program ends."""

    DONE = 0
    UNEXPECTED = 1
    USAGE = 2
    KNOWLEDGE_INVALID = 3
    FACTS_WRONG = 4
    REFUSED = 5
    FAILED_INSPECTION = 6


@dataclass(frozen=True)
class Said:
    """What a refusal hangs on: the given fact, its place, its key there, its words, and what would do instead."""

    fact: str
    where: str
    key: str
    said: str
    needed: str


@dataclass(frozen=True)
class Problem:
    """One fault: where it stands, what was read there, what is wrong with it, what to do."""

    where: str
    said: str
    wrong: str
    do: str


class TailtrueError(Exception):
    """Something a person can act on; never shown with a traceback."""

    exit_code: ClassVar[ExitCode] = ExitCode.UNEXPECTED
    heading: ClassVar[str] = "this cannot be done"

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(problems)
        super().__init__(self.problems)

    def hangs_on(self, _number: int) -> tuple[Said, ...]:
        """What the user said that one of the problems hangs on, where that is known."""
        return ()

    def __str__(self) -> str:
        """The first problem in one sentence: for errors that become part of another one."""
        if not self.problems:
            return self.heading
        first = self.problems[0]
        more = len(self.problems) - 1
        sentence = "; ".join(part for part in (first.wrong, first.do) if part)
        return f"{sentence} (and {more} more)" if more else sentence


class UsageError(TailtrueError):
    """The command line names something that cannot be used."""

    exit_code = ExitCode.USAGE
    heading = "the command cannot be carried out"


class KnowledgeInvalid(TailtrueError):
    """A file of the knowledge is wrong."""

    exit_code = ExitCode.KNOWLEDGE_INVALID
    heading = "the knowledge is not sound"


class FactsWrong(TailtrueError):
    """What the user said cannot be used, or something that is needed was not said."""

    exit_code = ExitCode.FACTS_WRONG
    heading = "no procedure yet: the facts need mending"


class ReadingsWrong(FactsWrong):
    """Readings that were typed at the lathe cannot be used as they stand."""

    heading = "no move yet: the readings need mending; nothing was recorded"


class Refused(TailtrueError):
    """The job must not be done as it stands."""

    exit_code = ExitCode.REFUSED
    heading = "no procedure is printed for this job"

    def __init__(self, problems: Iterable[Problem], behind: Sequence[Callable[[], tuple[Said, ...]]] = ()) -> None:
        # Finding out takes many trials, so it is done only where it is told.
        self._behind = behind
        super().__init__(problems)

    def hangs_on(self, number: int) -> tuple[Said, ...]:
        """What the user said that one of the reasons hangs on."""
        return self._behind[number]() if number < len(self._behind) else ()


class InspectionFailed(TailtrueError):
    """The finished procedure did not pass inspection."""

    exit_code = ExitCode.FAILED_INSPECTION
    heading = "the procedure did not pass inspection and is not printed"


def report(error: TailtrueError) -> str:
    """All problems of an error for the terminal: at most twenty, then how many more there are.

    >>> print(report(FactsWrong([Problem("job.toml:3", 'bar = "x"', "no such bar", "name one of the stock list")])))
    no procedure yet: the facts need mending
    job.toml:3: bar = "x": no such bar
      name one of the stock list
    """
    lines = [error.heading]
    for number, problem in enumerate(error.problems[:MOST_SHOWN]):
        lines.append(": ".join(part for part in (problem.where, problem.said, problem.wrong) if part))
        if problem.do:
            lines.append(f"  {problem.do}")
        behind = error.hangs_on(number)
        if behind:
            lines.append("  this hangs on:")
        lines += [f"    {one.where} {one.key}: {_with(one.needed, one.said)}" for one in behind]
    more = len(error.problems) - MOST_SHOWN
    if more > 0:
        lines.append(f"and {more} more")
    return "\n".join(lines)


def _with(more: str, said: str) -> str:
    return f"{said}; {more}" if more else said
