"""What a record still lacks, as parts of a command to paste and fill in."""

import re
from collections.abc import Collection, Sequence

from tailtrue.errors import Problem
from tailtrue.given.entries import GivenFact
from tailtrue.given.own_units import typical_said
from tailtrue.log.typed import OPTION_OF, Typed
from tailtrue.quantities import NUMBER, System

# Stands where only the user knows the value; what still has it is refused.
DOTS = "..."
_NUMBER = re.compile(rf"^{NUMBER} *")


def missing_said(typed: Typed, missing: Sequence[GivenFact], again: Collection[str], system: System) -> Problem:
    """What is not given, all at once. `again` are keys that --as-before would take over from the last record."""
    names = ", ".join(one.key for one in missing)
    as_before = any(one.key in again for one in missing)
    own = [_part(one, system) for one in missing if one.key not in again]
    parts = " ".join(["--as-before", *own] if as_before else own)
    if as_before:
        do = f"write them into a visit file (--from); or, where the set-up is as in the last record, add {parts}"
    else:
        do = f"add {parts} (or write them into a visit file, --from)"
    if DOTS in parts:
        do = f"{do}; what is true goes where the dots are"
    return Problem(typed.shown, names, "not given, and the log guesses nothing", do)


def _part(fact: GivenFact, system: System) -> str:
    if option := OPTION_OF.get(fact.key):
        return f'{option} "{DOTS}"'
    unit = _NUMBER.sub(" ", typical_said(fact, fact.spec.unit, system)) if fact.spec.kind == "quantity" else ""
    return f'--say "{fact.key}={DOTS}{unit}"'
