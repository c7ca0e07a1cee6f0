"""Which way the tailstock goes; where nothing can be moved, on which side of the line its centre stands."""

from tailtrue.case import Case


def can_move(case: Case) -> bool:
    """Whether the tailstock of this lathe can be set over."""
    return bool(case.value("lathe.set_over") != "none")


def ways(case: Case) -> tuple[str, str]:
    """The words for a larger and for a smaller tailstock end."""

    def chosen(name: str) -> str:
        return next(row.row.name for row in case.outcome(name).rows if row.chosen)

    # A way to go is no help, and a danger, where nothing can be moved.
    if can_move(case):
        return chosen("align.when_tailstock_larger"), chosen("align.when_tailstock_smaller")
    return chosen("lookup.stands_when_larger"), chosen("lookup.stands_when_smaller")
