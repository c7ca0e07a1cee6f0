"""Reference pages of the work: steps, routes."""

from collections.abc import Collection

from tailtrue.reference.writing import bullets, condition, head, sourced, table, text
from tailtrue.store.knowledge import Knowledge, Route, StepText


def steps_page(knowledge: Knowledge) -> str:
    """Every step with its sentences and what it needs."""
    on: dict[str, list[str]] = {}
    for route in knowledge.routes.values():
        for step in dict.fromkeys(name for phase in route.phases for name in phase.file.steps):
            on.setdefault(step, []).append(route.file.id)
    lead = "Every step that a procedure may have. What stands in italics is filled in for the job."
    made = (_step(knowledge, step, on.get(name, [])) for name, step in knowledge.steps.items())
    return "\n".join([head("Steps", lead), *made])


def _step(knowledge: Knowledge, step: StepText, routes: Collection[str]) -> str:
    file = step.file
    lines = [f"**Lathe:** {file.machine}. **Who:** {file.who}.", f"**When:** {condition(step.when)}"]
    lists = (
        ("Needs", file.needs), ("Makes", file.makes), ("Ends", file.ends), ("Uses", file.tools),
        ("Activities", file.activities), ("On routes", routes),
    )  # fmt: skip
    lines += [f"**{name}:** {', '.join(f'`{one}`' for one in named)}" for name, named in lists if named]
    if step.hold:
        lines.append(f"**Hold, released by {step.hold.file.releases}:** {text(step.hold.text, knowledge.catalogue)}")
    lines += [f"**Check:** {text(check.text, knowledge.catalogue)}" for check in step.checks]
    lines.append(f"**Source:** {sourced(file.sources)}")
    said = "\n".join(f"{place}. {text(one, knowledge.catalogue)}" for place, one in enumerate(step.sentences, start=1))
    return f"## {file.title}\n\n`{file.id}`\n\n{said}\n\n{bullets(lines)}"


def routes_page(knowledge: Knowledge) -> str:
    """Every route with its phases and steps in order."""
    lead = "The order of a whole job. A step or phase is left out where its condition does not hold."
    return "\n".join([head("Routes", lead), *(_route(knowledge, route) for route in knowledge.routes.values())])


def _route(knowledge: Knowledge, route: Route) -> str:
    rows = (
        (
            phase.file.title,
            condition(phase.when),
            phase.file.held,
            "; ".join(knowledge.steps[name].file.title for name in phase.file.steps),
        )
        for phase in route.phases
    )
    lines = (
        f"**Concerns:** {', '.join(route.file.concerns)}",
        f"**Parts of the sheet:** {', '.join(route.file.parts) or 'none besides the steps'}",
        f"**Starts with:** {', '.join(route.file.starts_with) or 'nothing'}",
        f"**Must reach:** {', '.join(route.file.must_reach)}",
    )
    return (
        f"## {route.file.title}\n\n`{route.file.id}`\n\n{text(route.lead, knowledge.catalogue)}\n\n{bullets(lines)}\n"
        + table(("phase", "when", "held by", "steps"), rows)
    )
