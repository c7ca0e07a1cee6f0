"""Reference pages of the rules: decisions, cautions, stops."""

from tailtrue.decisions import Decision, DecisionRow
from tailtrue.reference.writing import bullets, condition, head, sourced, table, text
from tailtrue.store.knowledge import Caution, Knowledge, Stop

_HIT = {"priority": "The first that holds is taken.", "unique": "One holds, whatever is known.",
        "least": "Of those that hold the least binds; what settles it is taken before.",
        "greatest": "Of those that hold the greatest binds; what settles it is taken before."}  # fmt: skip
_UNKNOWN = {"ask": "asks", "pass-over": "is passed over", "refuse": "refuses"}


def decisions_page(knowledge: Knowledge) -> str:
    """Every question with its alternatives in the order they are tried."""
    lead = "What the rules choose, and when. Alternatives stand in the order they are tried."
    return "\n".join([head("Decisions", lead), *(_decision(one) for one in knowledge.decisions.values())])


def _decision(decision: Decision) -> str:
    rows = ((_named(row), condition(row.when), _if_unknown(row), row.why, sourced(row.sources)) for row in decision.rows)
    return f"## {decision.question}\n\n`{decision.spec.name}`, {decision.spec.label}. {_HIT[decision.hit]}\n\n" + table(
        ("alternative", "holds when", "not known", "why", "source"), rows
    )


def _named(row: DecisionRow) -> str:
    gives = f", {'settles it and ' if row.settles else ''}gives `{row.gives}`" if row.gives else ""
    return f"{row.name} (never taken: {row.never_taken})" if row.never_taken else f"{row.name}{gives}"


def _if_unknown(row: DecisionRow) -> str:
    return _UNKNOWN["pass-over" if row.never_taken else row.if_unknown]


def cautions_page(knowledge: Knowledge) -> str:
    """Every caution by file order."""
    lead = "What can hurt, and what is done about it. A caution whose condition is not known is shown."
    return "\n".join([head("Cautions", lead), *(_caution(knowledge, one) for one in knowledge.cautions)])


def _caution(knowledge: Knowledge, caution: Caution) -> str:
    file = caution.file
    lines = [
        f"**Harm:** {file.harm}",
        *(f"**Do:** {text(line, knowledge.catalogue)}" for line in caution.avoid),
        f"**Controls:** {'; '.join(f'{one.level}: {one.text}' for one in file.controls)}",
    ]
    if file.protective_equipment:
        lines.append(f"**Wear:** {', '.join(file.protective_equipment)}")
    lines += [
        f"**At:** {', '.join(f'`{one}`' for one in file.answers)}",
        f"**When:** {condition(caution.when)}",
        f"**Rated:** severity {file.severity}, likelihood {file.likelihood}",
        f"**Source:** {sourced(file.sources)}",
    ]
    return f"## {file.signal.upper()}: {file.hazard}\n\n`{file.id}`\n\n{bullets(lines)}"


def stops_page(knowledge: Knowledge) -> str:
    """Every reason not to print, with the ways out."""
    lead = "When no procedure is printed, why, and the ways out."
    return "\n".join([head("Stops", lead), *(_stop(knowledge, one) for one in knowledge.stops)])


def _stop(knowledge: Knowledge, stop: Stop) -> str:
    file = stop.file
    lines = [
        f"**When:** {condition(stop.when)}",
        f"**Not known:** {_UNKNOWN[file.if_unknown]}",
        f"**On routes that concern:** {', '.join(file.concerns) or 'anything'}",
        f"**Said:** {text(stop.text, knowledge.catalogue)}",
        *(f"**Way out:** {text(way, knowledge.catalogue)}" for way in stop.way_out),
        f"**Source:** {sourced(file.sources)}",
    ]
    return f"## {file.title}\n\n`{file.id}`\n\n{bullets(lines)}"
