"""What an inspection found."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Failure:
    """One fault: the rule, the place on the sheet, what is wrong, and what the rule rests on."""

    rule: str
    where: str
    what: str
    source: str


@dataclass(frozen=True)
class Report:
    """Every failure of one sheet, in the order of the rules."""

    failures: tuple[Failure, ...]

    @property
    def ok(self) -> bool:
        """Whether the sheet may be printed."""
        return not self.failures
