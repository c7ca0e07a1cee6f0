"""A value that stands without quotes, judged as if it had them: what the fact of its line says of it."""

from collections.abc import Callable
from typing import Any

from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.values import Unfit, of_list, single
from tailtrue.quantities import System

_ONE_VALUE = ("quantity", "choice", "date", "text")


def judge_of(catalogue: Catalogue, system: System) -> Callable[[str, str, str], tuple[str, str] | None]:
    """What is wrong with an unquoted value and what to do; None where quotes alone mend it, or nothing is known of it."""

    def judge(heading: str, key: str, value: str) -> tuple[str, str] | None:
        fact = _fact(catalogue, heading, key)
        if fact is None or fact.spec.kind not in _ONE_VALUE:
            return None
        try:
            _read(catalogue, fact, value, system)
        except Unfit as unfit:
            quotes = ", in quotes" if fact.spec.kind == "quantity" and ", in quotes" not in unfit.do else ""
            return f"{unfit.wrong}, and stands without quotes" if quotes else unfit.wrong, _quoted(unfit.do, quotes)
        return None

    return judge


def _read(catalogue: Catalogue, fact: GivenFact, value: str, system: System) -> Any:
    if fact.reads_as:
        return of_list(fact, value, catalogue.references, system)
    return single(fact, value, catalogue.references, system)


def _quoted(do: str, quotes: str) -> str:
    first, mark, rest = do.partition(";")
    return f"{first}{quotes}{mark}{rest}"


def _fact(catalogue: Catalogue, heading: str, key: str) -> GivenFact | None:
    if heading in catalogue.facts:
        return catalogue.facts[heading].fields.get(key)
    return catalogue.facts.get(f"{heading}.{key}")
