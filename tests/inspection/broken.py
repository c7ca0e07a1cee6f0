"""The register of broken sheets: which rule must find each of them."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps

from .changed import Job, reviewed_anew

Make = Callable[[], Job]


@dataclass(frozen=True)
class Broken:
    """A sheet with one fault, the rule that must find it, the place it must name, and rules that see it too."""

    rule: str
    where: str
    make: Make
    also: frozenset[str]

    @property
    def name(self) -> str:
        """How the test is called."""
        return f"{self.rule}-{self.make.__name__}"


BROKEN: list[Broken] = []


def breaks(rule: str, where: str, also: str = "") -> Callable[[Make], Make]:
    """Register a broken sheet; `also` names other rules that this fault cannot help breaking."""

    def register(make: Make) -> Make:
        whole = make if rule.startswith("V9") or where == "safety review" else _reviewed_anew(make)
        BROKEN.append(Broken(rule, where, whole, frozenset(also.split())))
        return make

    return register


def _reviewed_anew(make: Make) -> Make:
    """The same sheet with its safety review made for it: a fault of the sheet is no fault of the review."""

    @wraps(make)
    def whole() -> Job:
        return reviewed_anew(make())

    return whole
