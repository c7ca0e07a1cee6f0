"""The standing procedure of a shared shop, as HTML and as Markdown."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from types import MappingProxyType
from typing import Final, NamedTuple

from markupsafe import Markup, escape

from tailtrue.parts import Dials, Figure, Text
from tailtrue.procedure import Procedure
from tailtrue.render.glossary import terms
from tailtrue.render.marks import legend
from tailtrue.render.numbers import show
from tailtrue.render.pairs import pieces
from tailtrue.render.pictograms import pictograms
from tailtrue.render.plain import bold, boxes, bullets, heading, literal, table
from tailtrue.render.shop_rules import shop_rule_cells
from tailtrue.render.templates import style, template
from tailtrue.render.words import (
    HEADINGS,
    SHOP_KINDS,
    SHOP_RULE,
    SHOP_RULES,
    SHOP_RULES_MEAN,
    TROUBLE,
    say,
    sentence,
)
from tailtrue.shop_sheet import Change, Entry, Form, FormLine, Line, ShopSheet, WhoRow, WhoStep

HEADS: Final = MappingProxyType(
    {
        "control": "This paper",
        "scope": "What it is for, and who may use it",
        "training": "Training and assessment before first use",
        "supervision": "Supervision, minors, hours, working alone",
        "who": "Who may do which step",
        "hazards": "The worst hazards",
        "wear": "What to wear, by what the machine can do",
        "guards": "What protects at this lathe",
        "isolation": "Isolate and tag",
        "before": "Before",
        "during": "During",
        "after": "After",
        "forbidden": "Never",
        "limits": "Limits of this lathe and job",
        "emergency": "Emergency",
        "upkeep": "Upkeep",
        "waste": "Waste and cleaning",
        "records": "Records and review",
        "references": "References",
        "glossary": HEADINGS["glossary"],
        "acknowledgement": "What a signature on the roster says",
        "roster": "Released to use this lathe for this job",
    }
)
WORDS: Final = MappingProxyType(
    {
        "none": "\u2013",
        "changes": ("Changed since the last revision", "Why"),
        "not_reviewed": "not yet",
        "last_reviewed": "last reviewed",
        "whole_phase": "every step, {} to {}",
        "every_other": "every other step",
        "one_step": "its one step, {}",
        "signatories": ("Role", "Name", "Date", "Signature"),
        "who": ("Phase", "Anybody on the roster", "With a supervisor", "Staff only"),
        "hazards": ("Level", "Hazard, what it does, and what to do", "Signs (ISO 7010)"),
        "hazards_run_in": ("Level", "Hazard, what it does, what to do, and the signs (ISO 7010)"),
        "do": "Do:",
        "wear": ("State", "Wear", "Do not wear or do"),
        "guards": ("What", "State as told", "What that means"),
        "limits": ("Limit", "Here", "What happens beyond it", "The way back"),
        "upkeep": ("Every", "Do", "By"),
        "shop_rule": SHOP_RULE,
        "shop_rules": SHOP_RULES,
        "shop_rules_head": HEADINGS["shop_rules"],
        "shop_rules_mean": SHOP_RULES_MEAN,
        "emergency": TROUBLE,
        "roster": ("Name", "Trained by", "Date", "Refresher due", "Signature"),
        "roster_lead": "Nobody else switches it on. A release ends on the day the refresher is due. Lathe:",
        "follows": "This paper follows the ideas of these. It claims to comply with none of them.",
    }
)
# The word over a paper that is not in force.
MARKS: Final = MappingProxyType({"draft": "DRAFT", "superseded": "SUPERSEDED", "approved": ""})
WRITE: Final = "____________"
NO_CHANGE: Final = (Change(what=WRITE, why=WRITE),)
# Letters that two lines take in half of the width.
_LONG_LABEL, _LONG_VALUE = 42, 60
Pair = tuple[str, str | None]


def to_sop_html(procedure: Procedure, *, large: bool = False) -> str:
    """The whole paper as one HTML file that needs nothing beside it; in large print if asked."""
    sop, dials = sop_of(procedure), procedure.title.dials
    return template("sop.html.j2").render(
        p=procedure,
        s=sop,
        told=lambda text: _told(text, dials),
        words=WORDS,
        shop_kinds=SHOP_KINDS,
        heads=HEADS,
        control=_abreast(tuple(control(sop, dials))),
        legend=legend(sop, procedure.title.machine_detail),
        upkeep=tuple(_upkeep(sop)),
        who=who_rows(sop, owner=procedure.title.owner),
        who_head=WORDS["who"],
        last_reviewed=last_reviewed(sop, dials),
        form_rows=form_rows,
        local=_abreast(tuple(_pairs(sop.local, dials))),
        sign_words={sign.code: sign.words for sign in sop.signs},
        pictograms=pictograms(sop.signs),
        css=Markup(style(procedure.title.paper, "sop.css", large=large)),
        large=large,
    )


def to_sop_markdown(procedure: Procedure) -> str:
    """The same words and numbers in the same order; places to write are lines of dashes."""
    return "\n\n".join(block for block in _markdown(procedure, sop_of(procedure)) if block) + "\n"


def sop_of(procedure: Procedure) -> ShopSheet:
    """The standing procedure of a tree; LookupError when the tree carries none."""
    if procedure.sop is None:
        raise LookupError("this procedure carries no standing procedure")
    return procedure.sop


def control(sop: ShopSheet, dials: Dials) -> Iterator[Pair]:
    """The lines of the control block; None stands for a place to write."""
    block = sop.control
    yield "Number and revision", f"{block.id} rev {block.revision}"
    yield "Type", block.type
    yield "Status", block.status
    yield "Issued", block.issued
    yield "Next review due", f"{block.review_due}{', OVERDUE' if block.overdue else ''} ({block.review_because})"
    yield "Use", block.use_level
    yield from _pairs(block.entries, dials)
    yield "Language", block.language
    yield "Made by", f"{block.generator}, rules {block.rules}"
    yield "Made from files", block.inputs
    yield "Valid", block.valid_for


def form_rows(form: Form) -> Iterator[Sequence[FormLine]]:
    """The places of a form two abreast, a high one alone."""
    for high, places in groupby(form.places, key=lambda place: place.high):
        here = tuple(places)
        yield from (here[start : start + (1 if high else 2)] for start in range(0, len(here), 1 if high else 2))


def last_reviewed(sop: ShopSheet, dials: Dials) -> str:
    """When the paper was last reviewed, for the foot of every page."""
    when = sop.control.last_reviewed
    return f"{WORDS['last_reviewed']} {say(when, dials) if when else WORDS['not_reviewed']}"


class WhoCell(NamedTuple):
    """What stands in a cell of who may do which step: the whole phase in a few words, or its steps."""

    whole: str = ""
    steps: tuple[WhoStep, ...] = ()


def who_rows(sop: ShopSheet, *, owner: bool) -> tuple[tuple[str, str, tuple[WhoCell, ...]], ...]:
    """Number and title of each phase, and a cell for each who may do steps of it; an owner alone does them all untold."""
    return () if owner else tuple((row.phase, row.title, _cells(row)) for row in sop.who)


def _cells(row: WhoRow) -> tuple[WhoCell, ...]:
    parts = (row.any, row.supervised, row.staff)
    if sum(map(bool, parts)) > 1:
        # What not everybody may do stands by name; the rest in two words, so that it stands out.
        others = WhoCell(whole=str(WORDS["every_other"])) if row.any else WhoCell()
        return (others, *(WhoCell(steps=steps) for steps in parts[1:]))
    return tuple(WhoCell(whole=_whole(steps)) for steps in parts)


def _whole(steps: tuple[WhoStep, ...]) -> str:
    if not steps:
        return str(WORDS["none"])
    words = str(WORDS["whole_phase" if len(steps) > 1 else "one_step"])
    return words.format(steps[0].number, steps[-1].number)


def _pairs(entries: Iterable[Entry], dials: Dials) -> Iterator[Pair]:
    for entry in entries:
        yield entry.label, None if entry.value is None else say(entry.value, dials)


def _abreast(pairs: Sequence[Pair]) -> list[Sequence[Pair]]:
    """Short pairs two abreast, then the long ones, each alone."""
    short = [pair for pair in pairs if not _long(pair)]
    return [*(short[start : start + 2] for start in range(0, len(short), 2)), *([pair] for pair in pairs if _long(pair))]


def _long(pair: Pair) -> bool:
    """Whether a pair would take three lines and more in half of the width."""
    return len(pair[0]) > _LONG_LABEL or len(pair[1] or "") > _LONG_VALUE


def _upkeep(sop: ShopSheet) -> Iterator[tuple[str, str, tuple[Text, ...]]]:
    """How often, who, and all that is done then: rows that agree in both run on in one."""
    for (every, who), rows in groupby(sop.upkeep, key=lambda row: (row.every, row.who)):
        yield every, who, tuple(row.task for row in rows)


def _told(text: Text, dials: Dials) -> Markup:
    """A text with its figures in bold."""
    bolded = Markup('<b class="figure">{}</b>')
    told = (
        bolded.format(show(piece, dials, finer)) if isinstance(piece, Figure) else escape(piece)
        for piece, finer in pieces(text)
    )  # fmt: skip
    return Markup("").join(told)


def _markdown(procedure: Procedure, sop: ShopSheet) -> Iterator[str]:
    title, dials, block = procedure.title, procedure.title.dials, sop.control

    def told(text: Text) -> str:
        return literal(say(text, dials))

    def several(texts: Iterable[Text]) -> str:
        return " ".join(map(told, texts))

    def part(name: str, lines: tuple[Line, ...], *, ticks: bool = False) -> Iterator[str]:
        if not lines:
            return
        yield heading(2, HEADS[name])
        yield (boxes if ticks else bullets)(told(line.text) for line in lines)

    def pairs(rows: Iterable[Pair]) -> str:
        cells = ((bold(label), literal(WRITE if value is None else value)) for label, value in rows)
        return table(("What", "Here"), cells)

    def rows(name: str, made: Iterable[Sequence[str]], head: str = "") -> Iterator[str]:
        yield heading(2, HEADS[name])
        yield table(WORDS[head or name], made)

    yield heading(1, block.title)
    yield f"{bold(title.machine)} {told(title.machine_detail)}"
    yield "\n\n".join(bold(say(line.text, dials)) for line in sop.first)
    yield f"[{told(sop.photo)}]"
    if MARKS[block.status]:
        yield bold(MARKS[block.status])
    yield bullets(bold(say(line.text, dials)) for line in sop.banners)
    yield heading(2, HEADS["control"])
    yield pairs(control(sop, dials))
    signatories = ((literal(one.role), literal(one.name or WRITE), literal(one.day or WRITE)) for one in block.signatories)
    yield table(WORDS["signatories"], ((*cells, literal(WRITE)) for cells in signatories))
    yield table(WORDS["changes"], ((literal(one.what), literal(one.why)) for one in block.changes or NO_CHANGE))
    yield from part("scope", sop.scope)
    yield from part("training", sop.training)
    yield from part("supervision", sop.supervision)
    yield pairs(_pairs(sop.local, dials))
    if phases := who_rows(sop, owner=title.owner):
        yield from rows("who", ((literal(f"{number} {name}"), *map(_cell, cells)) for number, name, cells in phases))
    signs = {sign.code: sign.words for sign in sop.signs}

    def signed(codes: Iterable[str]) -> str:
        return literal("; ".join(f"{code} {signs[code]}" for code in codes))

    yield from rows("hazards", (
        (
            bold(row.signal.upper()),
            " ".join((bold(sentence(row.hazard)), literal(sentence(row.harm)), bold(str(WORDS["do"])), told(row.avoid))
            + ((bold(SHOP_RULE), *((told(row.shop_says),) if row.shop_says else ())) if row.shop_rule else ())),
            signed(row.signs),
        )
        for row in sop.hazards
    ))  # fmt: skip
    yield bullets(told(line.text) for line in sop.hazard_note)
    yield from rows("wear", (
        (
            literal(row.state),
            f"{several(row.required)} {signed(row.signs)}".rstrip(),
            f"{several(row.forbidden)} {signed(row.never_signs)}".rstrip(),
        )
        for row in sop.wear
    ))  # fmt: skip
    yield from rows("guards", ((literal(row.name), told(row.state), told(row.means)) for row in sop.guards))
    yield from part("isolation", sop.isolation)
    yield from part("before", sop.before, ticks=True)
    yield from part("during", sop.during)
    yield from part("after", sop.after, ticks=True)
    yield from part("forbidden", sop.forbidden)
    yield from rows("limits", (
        (literal(row.label), told(row.limit), told(row.beyond), told(row.back)) for row in sop.limits
    ))  # fmt: skip
    yield literal(legend(sop, title.machine_detail))
    if sop.shop_rules:
        yield heading(2, HEADINGS["shop_rules"])
        yield literal(SHOP_RULES_MEAN)
        yield table(SHOP_RULES, shop_rule_cells(sop.shop_rules, dials))
    yield from rows("emergency", ((literal(row.seen), told(row.do), told(row.never)) for row in sop.emergency))
    yield from rows("upkeep", ((literal(every), several(tasks), literal(who)) for every, who, tasks in _upkeep(sop)))
    yield from part("waste", sop.waste)
    yield from part("records", sop.records)
    yield heading(2, HEADS["references"])
    yield literal(str(WORDS["follows"]))
    yield bullets(literal(f"{one.title}{f' ({one.edition})' if one.edition else ''}: {one.idea}") for one in sop.references)
    yield from terms(HEADS["glossary"], sop.glossary, dials)

    def forms(*, at_lathe: bool) -> Iterator[str]:
        for form in (one for one in sop.forms if one.at_lathe == at_lathe):
            yield heading(2, form.title)
            yield told(form.lead)
            written = ((place.label, WRITE if place.value is None else say(place.value, dials)) for place in form.places)
            yield table(("What", "Written"), (tuple(map(literal, row)) for row in written))

    yield from forms(at_lathe=False)
    yield from part("acknowledgement", sop.acknowledgement)
    if sop.roster_rows:
        yield heading(2, HEADS["roster"])
        yield literal(f"{WORDS['roster_lead']} {title.machine}, {block.id} rev {block.revision}.")
        yield _empty(WORDS["roster"], sop.roster_rows)
    yield from forms(at_lathe=True)


def _cell(cell: WhoCell) -> str:
    steps = "; ".join(f"{step.number} {step.title}" for step in cell.steps)
    return literal(cell.whole or steps or str(WORDS["none"]))


def _empty(head: Sequence[str], count: int) -> str:
    return table(head, ([literal(WRITE)] * len(head) for _ in range(count)))
