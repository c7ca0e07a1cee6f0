"""Why not: each comparison that failed, what it met, and the fewest that would have to be otherwise."""

from collections.abc import Iterable

from tailtrue.conditions import Condition, Judged, Leaf
from tailtrue.decisions import JudgedRow, Outcome
from tailtrue.explaining import of_facts
from tailtrue.explaining.conditions_said import failed, leaf_data, to_change
from tailtrue.explaining.materials import material
from tailtrue.explaining.naming import Named
from tailtrue.explaining.on_paper import meant
from tailtrue.explaining.said import Explanation, Kind, Line, Side, parts_of
from tailtrue.explaining.sources_said import source_data, source_lines
from tailtrue.explaining.standing import answering
from tailtrue.explaining.wording import leaf_said
from tailtrue.facts import Fact, NotKnown
from tailtrue.parts import Text
from tailtrue.render.words import listed, sentence
from tailtrue.truth import Truth


def why_not(side: Side, asked: str) -> Explanation:
    """Explain what keeps `asked` from being so; where it is so, that is said.

    Raises UsageError when nothing has this name.
    """
    named = meant(side, asked)
    if isinstance(named, Explanation):
        return named
    match named.kind:
        case "choice":
            return alternative(side, named)
        case "material":
            return material(side, named.name, named.word)
        case "decision":
            return _others(side, named)
        case "step":
            return _step(side, named)
        case "caution":
            return _caution(side, named)
        case "stop":
            return _stop(side, named)
        case "note":
            note = next(one for one in side.case.knowledge.notes if one.file.id == named.name)
            met = {Truth.YES: "It is said here.", Truth.NO: "It is not said here."}
            said = met.get(side.case.judge(note.when).truth, "It is not said here: not everything it asks is known.")
            return _answer(side, named.kind, named.name, named.name.replace("-", " "), said, (note.when,), note.file.sources)
        case _:
            return _fact(side, named)


def _fact(side: Side, named: Named) -> Explanation:
    """A fact that is known has nothing against it; of one that is not, what is missing comes first."""
    return of_facts.fact(side, named.name, whole=False)


def alternative(side: Side, named: Named) -> Explanation:
    """One answer of a decision; where several rows give it, all of them."""
    decision = side.case.knowledge.decisions[named.name]
    rows = side.case.outcome(named.name).rows
    asked = [row for row in rows if row.row.then == named.word]
    outcome = side.case.outcome(named.name)
    met, against = _weighed(asked, outcome) or _fared(asked, rows)
    sources = [key for row in asked for key in row.row.sources]
    label = f"{decision.spec.label}: {' or '.join(dict.fromkeys(row.row.name for row in asked))}"
    if (told := of_facts.stated(side, decision, "choice", f"{named.name}={named.word}", label)) is not None:
        return told
    return _answer(
        side, "choice", f"{named.name}={named.word}", label, met, against, sources,
        rule=f"{decision.question} The case for this answer: {' '.join(dict.fromkeys(row.row.why for row in asked))}",
    )  # fmt: skip


def _weighed(asked: list[JudgedRow], outcome: Outcome) -> tuple[Text, tuple[Condition, ...]] | None:
    """How an answer fared whose size was held against others: its size, and that of the one that binds."""
    won, sized = outcome.won, next((row for row in asked if isinstance(row.size, Fact) and not row.chosen), None)
    if won is None or sized is None or not outcome.weighed:
        return None
    if sized.row.never_taken:
        return ("It was weighed", *of_facts.size_said(sized), f", but it is never taken: {sized.row.never_taken}."), ()
    lost = ("It was weighed", *of_facts.size_said(sized), f", and another binds before it: {won.row.name}")
    return (*lost, *of_facts.size_said(won), f". {won.row.why}"), ()


def _fared(asked: list[JudgedRow], rows: tuple[JudgedRow, ...]) -> tuple[str, tuple[Condition, ...]]:
    chosen = next((row.row for row in rows if row.chosen), None)
    if any(row.chosen for row in asked):
        return "It is what was chosen here.", ()
    holding = [row.row for row in asked if row.judged.truth is Truth.YES]
    if holding and all(row.never_taken for row in holding):
        return f"Its conditions hold, but it is never taken: {holding[0].never_taken}.", ()
    if holding:
        if chosen:
            return f"It would do, but another comes first: {chosen.name}. {chosen.why}", ()
        # One earlier that nobody can judge yet might be the right one; a size that nobody knows might be the one that binds.
        unjudged = next((row.row for row in rows if row.judged.truth is Truth.UNKNOWN), None)
        if unjudged:
            return f"It would do, but one that comes first cannot be judged yet: {unjudged.name}.", (unjudged.when,)
        return f"It would do, but a size that it is held against is not known: {_unsized(rows)}", ()
    taken = f" What was chosen is: {chosen.name}. {chosen.why}" if chosen else ""
    before = [row.row for row in rows].index(chosen) if chosen else len(rows)
    late = bool(chosen) and all([row.row for row in rows].index(one.row) > before for one in asked)
    then = " Even if its conditions held, that one would come first." if late else ""
    if all(row.row.never_taken for row in asked):
        then = f" Even if its conditions held, it would not be taken: {asked[0].row.never_taken}."
    return f"It was not chosen.{taken}{then}", tuple(row.row.when for row in asked)


def _unsized(rows: Iterable[JudgedRow]) -> str:
    """The first row that holds and whose size is not known, and what keeps it from being."""
    name, size = next((row.row.name, row.size) for row in rows if isinstance(row.size, NotKnown))
    return sentence(f"{name}; {size.trouble or 'something it hangs on was not said'}")


def _others(side: Side, named: Named) -> Explanation:
    """Every answer that was not chosen."""
    decision = side.case.knowledge.decisions[named.name]
    if (told := of_facts.stated(side, decision, "decision", named.name, decision.spec.label)) is not None:
        return told
    rows = side.case.outcome(named.name).rows
    chosen = next((row.row for row in rows if row.chosen), None)
    met = f"Chosen: {chosen.name}. {chosen.why}" if chosen else "Nothing could be chosen."
    return _answer(
        side, "decision", named.name, decision.spec.label, met,
        tuple(row.row.when for row in rows if not row.chosen),
        [key for row in rows for key in row.row.sources], rule=decision.question,
        titles=tuple(row.row.name for row in rows if not row.chosen),
    )  # fmt: skip


def _step(side: Side, named: Named) -> Explanation:
    about = side.case.knowledge.steps[named.name]
    here = [one for one in side.places if one.step.file.id == named.name]
    numbers = [one.number for one in here if one.number]
    against = () if numbers else (about.when, *(one.phase.when for one in here))
    if numbers:
        met = f"It is in the plan: {listed(numbers)}."
    else:
        met = "It is left out of the plan." if here else "It stands in no phase of this route."
    return _answer(side, "step", named.name, about.file.title, met, against, about.file.sources)


def _caution(side: Side, named: Named) -> Explanation:
    about = next(one for one in side.case.knowledge.cautions if one.file.id == named.name)
    judged = side.case.judge(about.when)
    at = answering(about, side.places)
    against: tuple[Condition, ...] = ()
    if judged.truth is Truth.NO:
        met, against = "It is not printed: its condition does not hold.", (about.when,)
    elif at:
        met = f"It is on the sheet, for {listed(f'step {one.number}' for one in at)}{_unsaid(side, judged)}."
    else:
        works = listed(one.replace("-", " ") for one in about.file.answers)
        met = f"It is not printed: no step of this plan is work of this kind: {works}."
    return _answer(side, "caution", named.name, about.file.hazard, met, against, about.file.sources)


def _unsaid(side: Side, judged: Judged) -> str:
    """Why a rule is in force that nobody could judge."""
    labels = [side.case.knowledge.catalogue[name].label for name in judged.missing]
    return f", because this is not known: {listed(labels)}" if judged.truth is Truth.UNKNOWN else ""


def _stop(side: Side, named: Named) -> Explanation:
    about = next(one for one in side.case.knowledge.stops if one.file.id == named.name)
    judged = side.case.judge(about.when)
    if judged.truth is Truth.YES or (judged.truth is Truth.UNKNOWN and about.file.if_unknown == "refuse"):
        met = f"It holds: this job is refused{_unsaid(side, judged)}."
        return _answer(side, "stop", named.name, about.file.title, met, (), about.file.sources)
    return _answer(side, "stop", named.name, about.file.title, "It does not hold.", (about.when,), about.file.sources)


def _answer(
    side: Side, kind: Kind, name: str, label: str, met: str | Text, against: Iterable[Condition], sources: Iterable[str],
    rule: str = "", titles: tuple[str, ...] = (),
) -> Explanation:  # fmt: skip
    case = side.case
    conditions = tuple(against)
    heads = titles or ("",) * len(conditions)
    failing = [(head, when, failed(case, when)) for head, when in zip(heads, conditions, strict=True)]
    lines, changes = [], []
    for head, when, leaves in failing:
        depth = 1 if head else 0
        if head:
            fared = "" if leaves else ": nothing; it is never taken, or one beside it is taken or is not known"
            lines.append(Line((f"{head}{fared}",)))
        lines += [Line(_failed_said(side, leaf), depth) for leaf in leaves]
        if leaves:
            changes += [Line((head,))] if head else []
            changes += [Line(line.text, line.depth + depth) for line in to_change(case, when)]
    return Explanation(
        kind=kind,
        name=name,
        label=label,
        rule=(rule,) if rule else (),
        met=(met,) if isinstance(met, str) else met,
        parts=parts_of(
            ("What kept it from holding", lines),
            ("What would have to be otherwise", changes),
            ("Sources", source_lines(case.knowledge, sources)),
        ),
        data={
            "failed": [leaf_data(case, leaf) for _, _, leaves in failing for leaf in leaves],
            "sources": source_data(case.knowledge, sources),
        },
    )


def _failed_said(side: Side, leaf: Leaf) -> Text:
    found = side.case.get(leaf.atom.fact)
    if isinstance(found, Fact):
        return ("wants ", *leaf_said(side.case, leaf))
    # What kept it from being known holds the figure that fails; how it is reckoned tells less.
    because = found.trouble.rstrip(".") or found.spec.how
    return ("wants ", *leaf_said(side.case, leaf), f"; {because}" if because else "")
