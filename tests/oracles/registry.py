"""Where oracles are kept: by the formula that each is held against."""

from collections.abc import Callable
from typing import Any, NamedTuple


class Oracle(NamedTuple):
    """Another way to an answer: by which program, how, how near it must come, and to which part of the result."""

    program: str
    answer: Callable[..., Any]
    relative: float
    part: Callable[[Any], Any]


ORACLES: dict[str, Oracle] = {}


def oracle(
    formula: str, program: str, *, relative: float = 1e-8, part: Callable[[Any], Any] = lambda result: result
) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Keep the function that follows as the oracle of a formula; one function may serve several."""

    def keep(answer: Callable[..., Any]) -> Callable[..., Any]:
        assert formula not in ORACLES, formula
        ORACLES[formula] = Oracle(program, answer, relative, part)
        return answer

    return keep
