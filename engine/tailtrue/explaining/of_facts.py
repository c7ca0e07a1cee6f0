"""Why a fact is what it is: how it is made, what it was made from, and why it is not known where it is not."""

from collections.abc import Iterator

from tailtrue.computed.registry import Computed
from tailtrue.decisions import Decision, JudgedRow, Outcome
from tailtrue.explaining.conditions_said import condition_lines
from tailtrue.explaining.formulas import formulas_of
from tailtrue.explaining.said import Explanation, Kind, Line, Side, parts_of
from tailtrue.explaining.sources_said import source_data, source_lines
from tailtrue.explaining.speeds_said import speed_lines
from tailtrue.explaining.standing import done, facts_of_step
from tailtrue.explaining.wording import NOT_KNOWN, dials_of, figure_of, met_of, record_of
from tailtrue.facts import Fact, NotKnown
from tailtrue.parts import Text
from tailtrue.render.words import say, sentence
from tailtrue.truth import Truth

_MOST_LINES = 12


def fact(side: Side, name: str, whole: bool) -> Explanation:
    """A given or computed fact, or a limit."""
    case = side.case
    found = case.get(name)
    way = case.knowledge.computed.get(name)
    keys = tree_sources(side, name) if whole else _own_sources(found)
    return Explanation(
        kind="limit" if found.spec.comes == "limit" else "fact",
        name=name,
        label=found.spec.label,
        rule=_rule(side, found),
        met=_met(side, found),
        parts=parts_of(
            ("What is missing", missing_lines(side, found)),
            ("Line by line", _records(found)),
            ("What was weighed", _weighed(found)),
            ("Made from", _tree(side, name) if whole else _reads(side, found)),
            ("Formula", _formulas(way)),
            ("Surface speeds in books, and the advised one", speed_lines(side, way)),
            ("Printed at", _printed(side, name)),
            ("Sources of all of it" if whole else "Sources", source_lines(case.knowledge, keys)),
        ),
        data={**value_data(side, found), "sources": source_data(case.knowledge, keys)},
    )


def decision(side: Side, name: str, whole: bool) -> Explanation:
    """A choice: the question, the answer, why, and how the other answers fared."""
    case = side.case
    asked = case.knowledge.decisions[name]
    if (told := stated(side, asked, "decision", name, asked.spec.label)) is not None:
        return told
    outcome = case.outcome(name)
    chosen = next((judged.row for judged in outcome.rows if judged.chosen), None)
    keys = tree_sources(side, name) if whole else tuple(chosen.sources if chosen else ())
    others = [
        line
        for judged in outcome.rows
        if not judged.chosen
        for line in (
            Line((f"{judged.row.name} ({judged.row.then}): {_fared(judged, outcome)}", *size_said(judged))),
            *(Line(below.text, below.depth + 1) for below in condition_lines(case, judged.row.when)),
        )
    ]
    return Explanation(
        kind="decision",
        name=name,
        label=asked.spec.label,
        rule=(f"{asked.question} {_POLICIES[asked.hit]}",),
        met=_chosen(outcome) or _met(side, outcome.fact),
        parts=parts_of(
            ("Because", condition_lines(case, chosen.when) if chosen else ()),
            ("What is missing", missing_lines(side, outcome.fact)),
            ("The others", others),
            ("Made from", _tree(side, name) if whole else ()),
            ("Sources of all of it" if whole else "Sources", source_lines(case.knowledge, keys)),
        ),
        data={**value_data(side, outcome.fact), "sources": source_data(case.knowledge, keys)},
    )


def stated(side: Side, asked: Decision, kind: Kind, name: str, label: str) -> Explanation | None:
    """What is said of a choice that this job does not make, because it was made before; nothing where it makes it."""
    case = side.case
    if asked.stated is None or case.judge(asked.stated.when).truth is not Truth.YES:
        return None
    found = case.get(asked.stated.fact)
    keys = _own_sources(found)
    return Explanation(
        kind=kind,
        name=name,
        label=label,
        rule=(asked.stated.says,),
        met=_met(side, found),
        parts=parts_of(
            ("What is missing", missing_lines(side, found)),
            ("Sources", source_lines(case.knowledge, keys)),
        ),
        data={**value_data(side, found), "stated": asked.stated.fact, "sources": source_data(case.knowledge, keys)},
    )


_POLICIES = {
    "priority": "The first answer whose conditions hold is taken.",
    "unique": "One answer at most can hold.",
    "least": "Each answer that holds gives a size, and the least binds.",
    "greatest": "Each answer that holds gives a size, and the greatest binds.",
}


def _chosen(outcome: Outcome) -> Text:
    return (f"Here: {outcome.won.row.name}", *size_said(outcome.won), f". {outcome.won.row.why}") if outcome.won else ()


def size_said(judged: JudgedRow) -> Text:
    """The size that an answer comes to, behind its name."""
    return (", ", figure_of(judged.size.spec, judged.size.value)) if isinstance(judged.size, Fact) else ()


def _fared(judged: JudgedRow, outcome: Outcome) -> str:
    truth = judged.judged.truth
    if truth == "yes" and judged.row.never_taken:
        return f"its conditions hold, but it is never taken: {judged.row.never_taken}"
    if truth == "yes" and outcome.weighed:
        return "weighed, and another binds before it" if isinstance(judged.size, Fact) else NOT_KNOWN
    if truth == "yes":
        return "would do, but another comes first" if outcome.won else "would do"
    return "no" if truth == "no" else NOT_KNOWN


def _rule(side: Side, found: Fact | NotKnown) -> Text:
    spec = found.spec
    if spec.comes == "given":
        given = side.case.knowledge.given.facts.get(spec.name)
        where = f"in the {given.file} file" if given else "at the lathe"
        return (sentence(f"You say it {where}: {spec.how}"),)
    if spec.comes == "limit":
        safer = "lower" if spec.bound == "most" else "higher"
        return (f"A limit of the trade. {sentence(spec.how)} A shop may set it {safer}, which is the safe side.",)
    return (sentence(spec.how[:1].upper() + spec.how[1:]),)


def _met(side: Side, found: Fact | NotKnown) -> Text:
    if isinstance(found, NotKnown):
        if found.trouble:
            return (f"Not known here. {sentence(found.trouble[:1].upper() + found.trouble[1:])}",)
        return ("Not known here: something it hangs on was not said.",)
    settled = f" What settled it: {sentence(found.limited_by)}" if found.limited_by else ""
    return ("Here it is ", *met_of(side.case, found.name), f"{_origin(side, found)}.{settled}")


def _origin(side: Side, found: Fact) -> str:
    said = side.given.values.get(found.name)
    if said is None:
        return ""
    if said.origin == "class":
        return f", taken from the class of the lathe ({said.where})"
    if said.origin == "default":
        return ", taken because nothing else was said"
    return f", as you said: {said.said} ({said.where})"


def missing_lines(side: Side, found: Fact | NotKnown) -> tuple[Line, ...]:
    """What was not said, with the way to find it out."""
    if isinstance(found, Fact):
        return ()
    catalogue = side.case.knowledge.catalogue
    lines = [Line((f"{catalogue[name].label} ({name}): {catalogue[name].how or 'not said'}",)) for name in found.missing]
    return tuple(lines)


def _records(found: Fact | NotKnown) -> tuple[Line, ...]:
    if isinstance(found, NotKnown) or found.spec.kind != "records":
        return ()
    lines = [Line(record_of(found.spec, row)) for row in found.value[:_MOST_LINES]]
    more = len(found.value) - _MOST_LINES
    return (*lines, Line((f"and {more} more",))) if more > 0 else tuple(lines)


def _weighed(found: Fact | NotKnown) -> tuple[Line, ...]:
    """The bounds a value was chosen among, the tightest first."""
    if not isinstance(found, Fact) or found.by_hand is not None:
        return ()
    return tuple(Line((f"{name}: ", figure_of(found.spec, bound))) for bound, name in sorted(found.weighed))


def _reads(side: Side, found: Fact | NotKnown) -> tuple[Line, ...]:
    return tuple(_named(side, name) for name in found.read)


def _named(side: Side, name: str, depth: int = 0) -> Line:
    label = side.case.knowledge.catalogue[name].label
    return Line((f"{label}: ", *met_of(side.case, name), f" ({name})"), depth)


def _tree(side: Side, name: str) -> tuple[Line, ...]:
    return tuple(_named(side, below, depth) for below, depth in tree(side, name))


def tree(side: Side, name: str) -> Iterator[tuple[str, int]]:
    """Everything a fact was made from, depth first, each once, with its depth."""
    met = {name}

    def below(of: str, depth: int) -> Iterator[tuple[str, int]]:
        for read in side.case.get(of).read:
            if read not in met:
                met.add(read)
                yield read, depth
                yield from below(read, depth + 1)

    yield from below(name, 0)


def _own_sources(found: Fact | NotKnown) -> tuple[str, ...]:
    if found.spec.comes == "given":
        return ()
    return found.sources if isinstance(found, Fact) and found.sources else found.spec.sources


def tree_sources(side: Side, name: str) -> tuple[str, ...]:
    """The sources of a fact and of all it was made from."""
    every = (name, *(below for below, _ in tree(side, name)))
    return tuple(dict.fromkeys(key for one in every for key in _own_sources(side.case.get(one))))


def _formulas(way: Computed | None) -> tuple[Line, ...]:
    if way is None:
        return ()
    lines = []
    for one in formulas_of(way.function):
        lines.append(Line((f"{one.name}: {one.formula or one.does}",)))
        lines += [Line((f"valid for: {one.valid_for}",), 1)] if one.valid_for else []
        lines += [Line((f"source: {one.source}",), 1)] if one.source else []
    lines += [Line((f"looked up in {', '.join(way.tables)}",))] if way.tables else []
    return tuple(lines)


def _printed(side: Side, name: str) -> tuple[Line, ...]:
    return tuple(
        Line((f"step {one.number}, {one.step.file.title}",)) for one in done(side.places) if name in facts_of_step(one.step)
    )


def value_data(side: Side, found: Fact | NotKnown) -> dict[str, object]:
    """The value for a program, in the unit used inside."""
    known = isinstance(found, Fact)
    return {
        "known": known,
        "value": _jsonable(found.value) if isinstance(found, Fact) else None,
        "unit": found.spec.unit,
        "shown": say(met_of(side.case, found.spec.name), dials_of(side.case)),
        "made_from": list(found.read),
        "missing": [] if isinstance(found, Fact) else list(found.missing),
        "trouble": "" if isinstance(found, Fact) else found.trouble,
    }


def _jsonable(value: object) -> object:
    if isinstance(value, tuple | list):
        return [_jsonable(one) for one in value]
    if hasattr(value, "items"):
        return {str(key): _jsonable(one) for key, one in value.items()}
    return value if value is None or isinstance(value, str | int | float | bool) else str(value)
