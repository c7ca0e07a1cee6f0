"""Static checks of the knowledge: what can be wrong in it is found here, never when some job happens to reach it."""

import re
from collections.abc import Iterable, Iterator, Mapping
from itertools import chain

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.knowledge_file import unknown_source
from tailtrue.store.card_checks import card_problems
from tailtrue.store.drawing_checks import drawing_problems
from tailtrue.store.examples import decision_example_problems, example_problems
from tailtrue.store.hazard_checks import NAMED, hazard_problems
from tailtrue.store.hazard_checks import TABLE as HAZARDS
from tailtrue.store.knowledge import Caution, Knowledge, Note, Remark, Say, StepText, Stop
from tailtrue.store.pointer_checks import pointers
from tailtrue.store.printed_checks import printed_problems
from tailtrue.store.reading_ease import (
    MOST_IN_REASON,
    MOST_WORDS,
    VAGUE,
    VERBS,
    long_sentences,
    order_problems,
    second_orders,
    vague_problems,
)
from tailtrue.store.records import record_problems
from tailtrue.store.route_checks import route_problems
from tailtrue.store.safety import safety_problems
from tailtrue.store.scan import unique_problems
from tailtrue.store.settable_checks import settable_problems
from tailtrue.store.sop import belonging, sop_problems
from tailtrue.store.state_checks import TABLE as STATES
from tailtrue.store.state_checks import state_problems
from tailtrue.store.time_checks import time_problems
from tailtrue.store.values import numbers_in
from tailtrue.store.weighing_checks import weighing_problems
from tailtrue.store.word_checks import glossary_problems
from tailtrue.tables import source_keys
from tailtrue.wording import Wording

# Activities that mark a step for the proof and the inspection; they are no hazard of their own.
MARKS = frozenset({"start-check", "measure-bar", "re-clamp", "verify-tailstock", "grip-on-band"})
_COLUMNS_OF_A_SOURCE = "write source [column, column]; source [*], with [*] for every column that is not named"
_QUOTES = 'put a cell that holds a comma between two "'
_DIGIT = re.compile(r"\d")


def check_knowledge(knowledge: Knowledge, of_the_shop: Iterable[Problem]) -> None:
    """Hold the whole knowledge against itself; KnowledgeInvalid with everything that is wrong, in words of a shop too."""
    problems = [
        *of_the_shop,
        *_dependencies(knowledge),
        *_sources(knowledge),
        *_steps(knowledge),
        *_needs(knowledge),
        *route_problems(knowledge),
        *time_problems(knowledge),
        *printed_problems(knowledge),
        *card_problems(knowledge.page.card, knowledge.steps, knowledge.cautions),
        *drawing_problems(knowledge),
        *_ids(knowledge),
        *order_problems(knowledge.steps.values(), knowledge.tables[VERBS]),
        *second_orders(knowledge.steps.values(), knowledge.tables[VERBS]),
        *vague_problems(all_texts(knowledge), knowledge.tables[VAGUE]),
        *long_sentences(all_texts(knowledge), MOST_WORDS),
        *long_sentences(all_reasons(knowledge), MOST_IN_REASON),
        *glossary_problems(knowledge.glossary, knowledge.sources),
        *_cautions(knowledge),
        *_texts(knowledge),
        *pointers(knowledge),
        *safety_problems(knowledge.safety, _activities(knowledge), knowledge.needs),
        *_hazards(knowledge),
        *state_problems(knowledge.tables[STATES], knowledge.steps, _answered(knowledge)),
        *example_problems(knowledge),
        *_sop(knowledge),
        *weighing_problems(knowledge),
        *_records(knowledge),
    ]
    for name, decision in knowledge.decisions.items():
        # Limits drawn tighter and alternatives closed change what examples of the shipped rows say.
        if not knowledge.shop.changes:
            problems += decision_example_problems(knowledge, decision, knowledge.decision_examples[name])
        if decision.hit == "unique":
            problems += unique_problems(decision, knowledge.catalogue)
    if problems:
        raise KnowledgeInvalid(tuple(problems))


def _dependencies(knowledge: Knowledge) -> Iterator[Problem]:
    reads: dict[str, tuple[str, ...]] = {}
    for name, way in knowledge.computed.items():
        reads[name] = way.needs
        for need in way.needs:
            if need not in knowledge.catalogue:
                yield Problem(f"computed fact {name}", need, "no fact has this name", "mend the name")
        for table in way.tables:
            if table not in knowledge.tables:
                yield Problem(f"computed fact {name}", table, "no table has this name", "add the table")
    for name, decision in knowledge.decisions.items():
        reads[name] = decision.reads
    yield from _cycles(reads)
    yield from settable_problems(knowledge.given.settable.values(), knowledge.catalogue, reads, knowledge.sources)


def _cycles(reads: dict[str, tuple[str, ...]]) -> Iterator[Problem]:
    done: set[str] = set()
    path: list[str] = []

    def visit(name: str) -> Iterator[Problem]:
        if name in path:
            ring = " reads ".join([*path[path.index(name) :], name])
            yield Problem("facts", name, f"reads itself in a circle: {ring}", "break the circle")
            return
        if name in done or name not in reads:
            return
        path.append(name)
        for need in reads[name]:
            yield from visit(need)
        path.pop()
        done.add(name)

    for name in reads:
        yield from visit(name)


def _sources(knowledge: Knowledge) -> Iterator[Problem]:
    def resolve(where: str, said: str, written: Iterable[str]) -> Iterator[Problem]:
        for text in written:
            for key in source_keys(text):
                if key not in knowledge.sources:
                    yield Problem(where, said, *unknown_source(key))

    rules: tuple[Caution | Stop | Note | Remark | Say, ...] = (
        *knowledge.cautions,
        *knowledge.stops,
        *knowledge.notes,
        *knowledge.remarks,
        *knowledge.says,
    )
    for rule in rules:
        yield from resolve(rule.where, rule.file.id, rule.file.sources)
    for decision in knowledge.decisions.values():
        for alternative in decision.rows:
            yield from resolve(decision.where, f"{decision.spec.name}: {alternative.then}", alternative.sources)
    for limit in knowledge.limits.values():
        yield from resolve(limit.spec.where, limit.name, limit.sources)
    for block in knowledge.blocks:
        yield from resolve(block.where, block.file.id, block.file.sources)
    for step in knowledge.steps.values():
        yield from resolve(step.where, step.file.id, step.file.sources)
    for name, way in knowledge.computed.items():
        yield from resolve(f"computed fact {name}", name, way.spec.sources)
    for spec in knowledge.catalogue.values():
        if spec.comes == "given":
            yield from resolve(spec.where, spec.name, spec.sources)
    for machine in knowledge.given.classes.values():
        yield from resolve(machine.file.place("source"), machine.id, machine.sources)
    yield from resolve("knowledge/page.toml", "sources", knowledge.page.sources)
    for where, said, written in knowledge.safety.sourced():
        yield from resolve(where, said, written)
    for table in knowledge.tables.values():
        for row in table.rows:
            where = f"knowledge/{table.name}.csv:{row.line}"
            if None in row.cells or None in row.cells.values():
                yield Problem(where, "", "the row has not as many cells as the table has columns", _QUOTES)
                continue
            if not row.sources:
                yield Problem(where, "", "the row names no source", "name one, or say memory")
            yield from resolve(where, "", row.sources)
            for fault in row.source_cell.faults(numbers_in(row), row.cells):
                yield Problem(where, "", fault, _COLUMNS_OF_A_SOURCE)


def _steps(knowledge: Knowledge) -> Iterator[Problem]:
    supervisor = knowledge.page.supervisor.file
    for activity in {*supervisor.learner_activities, *supervisor.adult_activities} - set(_activities(knowledge)):
        yield Problem("knowledge/page.toml", activity, "is marked for a learner, and no step does it", "mend the name")
    for activity in sorted(knowledge.page.activities - set(_activities(knowledge))):
        yield Problem("knowledge/page.toml", activity, "brings a line of a page, and no step does it", "mend the name")
    answered = _answered(knowledge)
    yield from _left_alone(knowledge, answered)
    told = answered | MARKS | knowledge.shop.taken_out.keys()
    for step in knowledge.steps.values():
        file = step.file
        for activity in file.activities:
            if activity not in told:
                yield Problem(step.where, activity, "no caution answers this activity", "add a caution, or mend the name")
        for tool in file.tools:
            if tool not in knowledge.needs:
                yield Problem(step.where, tool, "is not in needs.toml", "add it there")
        for tool in set(file.without) - set(file.tools):
            yield Problem(step.where, tool, "is gone without, and is no tool here", "add it to tools")
        for line in set(file.only) - {sentence.words for sentence in step.sentences}:
            yield Problem(step.where, line, "stands in some jobs only, and is no line here", "write it as in the text")
        for check in step.checks:
            for name in (check.low, check.high, check.resolution, check.uncertainty):
                if name is not None and name not in knowledge.catalogue:
                    yield Problem(step.where, name, "no fact has this name", "mend the check")
            if check.instrument is not None and check.instrument not in file.tools:
                yield Problem(step.where, check.instrument, "measures here but is not among the tools", "add it to tools")
        for name in file.hold.ways_back if file.hold else ():
            if name not in knowledge.steps:
                yield Problem(step.where, name, "the hold goes back to a step that is not there", "mend it")
        for goes_on in file.hold.goes_on if file.hold else ():
            for name in goes_on.at:
                if name not in knowledge.steps:
                    yield Problem(step.where, name, "the hold goes on at a step that is not there", "mend it")
        if step.settings_from and not knowledge.catalogue[step.settings_from.records].fields:
            yield Problem(step.where, step.settings_from.records, "is not a list of records", "mend settings_from")
        yield from _sentences(step)


def _hazards(knowledge: Knowledge) -> Iterator[Problem]:
    # A shop may take cautions out, with a reason on paper, and has hazards of its own.
    if not knowledge.shop.changes:
        groups, not_met = knowledge.tables[HAZARDS], knowledge.safety.not_met
        checks = {check.file.id for check in knowledge.safety.checks}
        named = knowledge.tables[NAMED]
        yield from hazard_problems(groups, knowledge.cautions, knowledge.stops, not_met, checks, named)


def _answered(knowledge: Knowledge) -> set[str]:
    return {activity for caution in knowledge.cautions for activity in caution.file.answers}


def _left_alone(knowledge: Knowledge, answered: set[str]) -> Iterator[Problem]:
    """Activities whose last caution a shop takes out, told at its own line."""
    done = set(_activities(knowledge)) - answered - MARKS
    for activity, (at, caution) in knowledge.shop.taken_out.items():
        if activity in done:
            do = "take the entry out, or add a caution of your own that answers it"
            yield Problem(at, caution, f"is the last caution that answers '{activity}', which steps do", do)


def _sentences(step: StepText) -> Iterator[Problem]:
    for sentence in step.sentences:
        if _DIGIT.search(sentence.words):
            yield Problem(step.where, sentence.words, "a number is typed into a sentence", "make it a fact")


def _activities(knowledge: Knowledge) -> dict[str, str]:
    """Every activity of a step, with the place of one step that has it."""
    return {activity: step.where for step in knowledge.steps.values() for activity in step.file.activities}


def _needs(knowledge: Knowledge) -> Iterator[Problem]:
    for name, need in knowledge.needs.items():
        if need.file.given and need.file.given not in knowledge.given.specs():
            yield Problem("knowledge/needs.toml", name, f"no given fact is named '{need.file.given}'", "mend the name")
        if need.file.kind == "consumable" and not any(need.amount.places()):
            do = 'give it amount = "..." with a fact'
            yield Problem("knowledge/needs.toml", name, "is used up, and nothing says how much", do)
    for cut in knowledge.page.cuts:
        for fact in (cut.file.buy, cut.file.mass_to_buy, cut.file.mass_finished):
            if fact is not None and fact not in knowledge.catalogue:
                yield Problem("knowledge/page.toml", fact, "no fact has this name", "mend the cut list")


def _sop(knowledge: Knowledge) -> Iterator[Problem]:
    seen = [row.seen for row in knowledge.page.trouble]
    papers = {}
    for name, route in knowledge.routes.items():
        if "sop" in route.file.parts:
            steps = [knowledge.steps[step] for phase in route.phases for step in phase.file.steps if step in knowledge.steps]
            done = {activity for step in steps for activity in step.file.activities}
            papers[name] = belonging(knowledge.sop, route.has_to_do_with, done)
    yield from sop_problems(knowledge.sop, knowledge.catalogue, knowledge.sources, seen, papers)


def _records(knowledge: Knowledge) -> Iterator[Problem]:
    yield from record_problems(
        knowledge.records, knowledge.blocks, knowledge.catalogue, knowledge.routes, knowledge.needs, knowledge.steps,
        knowledge.sources,
    )  # fmt: skip


def _ids(knowledge: Knowledge) -> Iterator[Problem]:
    kinds: Mapping[str, tuple[Caution | Stop | Note | Remark | Say, ...]] = {
        "cautions": knowledge.cautions, "stops": knowledge.stops, "notes": knowledge.notes, "remarks": knowledge.remarks,
        "lines that are said": knowledge.says,
    }  # fmt: skip
    for kind, rules in kinds.items():
        seen: set[tuple[str, str]] = set()
        for rule in rules:
            # Lines that are said are known by their file too; every other rule by its id alone.
            mine = (rule.where.partition(":")[0] if isinstance(rule, Say) else kind, rule.file.id)
            if mine in seen:
                yield Problem(rule.where, rule.file.id, f"two {kind} have this id", "rename one")
            seen.add(mine)


def _cautions(knowledge: Knowledge) -> Iterator[Problem]:
    for caution in knowledge.cautions:
        file = caution.file
        allowed = {1: {"notice"}, 2: {"caution"}, 3: {"caution"}}.get(file.severity, {"warning", "danger"})
        if file.signal not in allowed:
            yield Problem(
                caution.where, file.id, f"signal word {file.signal} does not fit severity {file.severity}",
                f"use {' or '.join(sorted(allowed))}",
            )  # fmt: skip
        if file.held_at and (file.held_at not in knowledge.steps or knowledge.steps[file.held_at].hold is None):
            yield Problem(caution.where, file.held_at, "is no step with a hold", "name a step that has one")
        if file.at_back and (file.scope != "job" or file.signal == "danger"):
            what = "stands at the back, and is a danger or about one step"
            yield Problem(
                caution.where, file.id, what, "take at_back out: only what holds for the whole job may stand there"
            )
        for text in (file.harm, *(wording.words for wording in caution.avoid)):
            if len(text.split()) > MOST_WORDS:
                yield Problem(caution.where, text, f"has more than {MOST_WORDS} words", "say it shorter")


def _texts(knowledge: Knowledge) -> Iterator[Problem]:
    for where, said, wording, records in _all_wordings(knowledge):
        for place in wording.places():
            if place.name.startswith("row.") and records:
                if place.name.removeprefix("row.") not in knowledge.catalogue[records].fields:
                    yield Problem(where, said, f"'{records}' has no field '{place.name[4:]}'", "mend the place")
            elif place.name not in knowledge.catalogue:
                yield Problem(where, said, f"no fact is named '{place.name}'", "mend the place")


def all_texts(knowledge: Knowledge) -> Iterator[tuple[str, str, Wording]]:
    """Every text of the knowledge that comes on paper or screen, with its place and what it belongs to."""
    return ((where, said, text) for where, said, text, _ in _all_wordings(knowledge))


def all_reasons(knowledge: Knowledge) -> Iterator[tuple[str, str, Wording]]:
    """Every reason and hint, with its place and what it belongs to."""
    for decision in knowledge.decisions.values():
        for row in decision.rows:
            said = (row.why, row.never_taken, *(text for _, text in row.says))
            yield from ((decision.where, f"{decision.spec.name}: {row.then}", Wording((text,))) for text in said)
    for caution in knowledge.cautions:
        controls = (control.text for control in caution.file.controls)
        yield from ((caution.where, caution.file.id, Wording((text,))) for text in (caution.file.hazard, *controls))
    yield from ((term.where, term.file.id, Wording((term.file.meaning,))) for term in knowledge.glossary)
    yield from ((limit.spec.where, limit.name, Wording((limit.spec.how,))) for limit in knowledge.limits.values())
    for name, fact in knowledge.given.facts.items():
        for one in (fact, *fact.fields.values()):
            yield from ((fact.spec.where, name, Wording((text,))) for text in (one.spec.how, one.if_missing))


def _all_wordings(knowledge: Knowledge) -> Iterator[tuple[str, str, Wording, str]]:
    for caution in knowledge.cautions:
        yield from ((caution.where, caution.file.id, text, "") for text in caution.avoid)
    for stop in knowledge.stops:
        yield from ((stop.where, stop.file.id, text, "") for text in (stop.text, *stop.way_out))
    for decision in knowledge.decisions.values():
        yield from ((decision.where, f"{decision.spec.name}: {row.then}", row.figures, "") for row in decision.rows)
    for note in knowledge.notes:
        yield note.where, note.file.id, note.text, ""
    lines: tuple[Remark | Say, ...] = (*knowledge.remarks, *knowledge.says)
    yield from ((line.where, line.file.id, line.text, "") for line in lines)
    for block in knowledge.blocks:
        yield from ((block.where, entry.file.label, entry.planned, "") for entry in block.entries)
    for record in knowledge.records.values():
        yield from ((where, said, text, "") for where, said, text in record.wordings())
    for name, need in knowledge.needs.items():
        yield from (("knowledge/needs.toml", name, text, "") for text in (need.name, need.detail))
    for name, step in knowledge.steps.items():
        texts = [*step.sentences, step.why, *(check.text for check in step.checks)]
        texts += [text for row in step.settings for text in (row.label, row.value, row.reason)]
        if step.hold:
            texts += step.hold.wordings()
        yield from ((step.where, name, text, "") for text in texts)
        if step.settings_from:
            rows = step.settings_from
            yield from ((step.where, name, text, rows.records) for text in (rows.label, rows.value, rows.reason))
    for route in knowledge.routes.values():
        yield from ((route.where, route.file.id, text, "") for text in (route.lead, *(p.purpose for p in route.phases)))
        also = (one.purpose for phase in route.phases for one in phase.also)
        yield from ((route.where, route.file.id, text, "") for text in also)
    for where, said, text in chain(knowledge.safety.wordings(), knowledge.sop.wordings()):
        yield where, said, text, ""
    page = knowledge.page
    where = "knowledge/page.toml"
    standing = (
        *(one.text for one in page.conventions),
        *(one.text for one in (*page.stop_at_once, *page.do_not_start, *page.after_a_stop)),
        *page.who_may, *page.who_may_owner, *page.supervised, *page.supervisor.learner_may,
        *page.care, *(one.text for one in page.care_besides),
    )  # fmt: skip
    for text in (*standing, *page.in_emergency, *(one.text for one in page.time_notes)):
        yield where, "", text, ""
    for trouble in page.trouble:
        yield from ((where, trouble.seen, text, "") for text in (trouble.do, trouble.never))
    for row in (*page.control, *page.facts):
        yield from ((where, row.label.words, text, "") for text in (row.label, row.value, row.reason))
    for note_line in page.card.notes:
        yield from ((where, note_line.label.words, text, "") for text in (note_line.label, note_line.value))
    for group in page.card.groups:
        yield from ((where, group.title, line.label, "") for line in group.lines)
    for cut in page.cuts:
        yield from ((where, cut.file.piece, text, "") for text in (cut.material, cut.size, cut.saw_to))
