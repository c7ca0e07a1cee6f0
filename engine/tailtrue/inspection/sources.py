"""Sources: each one named on the sheet stands in its list of sources."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet


def resolved(sheet: Sheet) -> Iterator[Fault]:
    """Every source named is listed, and every way of a choice names one."""
    procedure = sheet.procedure
    listed = {source.id for source in procedure.sources}
    named: list[tuple[str, tuple[str, ...]]] = [(where, caution.sources) for where, caution in sheet.cautions]
    named += [(f"derivation of {made.fact}", made.sources) for made in procedure.derivations]
    named += [(f"choice {choice.id}", choice.sources) for choice in procedure.choices]
    review = procedure.safety_review
    named += [("safety review", review.sources), ("safety review, matrix", review.matrix.sources)]
    named += [(f"safety review, elimination {way.id}", way.sources) for way in review.eliminations]
    named += [(f"safety review, near miss {near.id}", near.sources) for near in review.near_misses]
    named += [("findings", finding.sources) for finding in procedure.findings]
    for where, keys in named:
        for key in keys:
            if key.split(":", 1)[0] not in listed:
                yield Fault(where, f'the source "{key}" is not in the list of sources')
    for choice in procedure.choices:
        for way in choice.alternatives:
            if not way.sources:
                yield Fault(f"choice {choice.id}", f'"{way.name}" names no source')
