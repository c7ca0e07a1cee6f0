"""What an inspection found."""

from typing import NamedTuple


class Failure(NamedTuple):
    """One fault: the rule, the place on the sheet, what is wrong, and what the rule rests on."""

    rule: str
    where: str
    what: str
    source: str


class Report(NamedTuple):
    """Every failure of one sheet, in the order of the rules."""

    failures: tuple[Failure, ...]

    @property
    def ok(self) -> bool:
        """Whether the sheet may be printed."""
        return not self.failures
