"""Each number on the papers has a clause of reason beside it, or an account at the back of the sheet.

Three classes need none: what the user said or measured is his own; the time cut out of the time of a step stands inside
that time; and the record is written on, so that it repeats the plan and the table which its own lines explain.
"""

import re
from collections.abc import Iterator

from tailtrue.parts import Figure, Node, Setting, Text
from tailtrue.render.page import anchor

from .made import Job, said

Found = tuple[Node, str, Figure]
OTHER_PAPERS = frozenset({"card", "safety_review", "record", "sop", "derivations"})
GOES_ON = re.compile(r"#[^.]*?(?:, for |: )\w")
ON_THE_RECORD = frozenset({"TableRow", "Scales", "Place", "RecordSheet"})


def numbers(node: Node, skipped: frozenset[str] = frozenset()) -> Iterator[Found]:
    """Every number under a node, with the node and the field that holds it."""
    for name, value in vars(node).items():
        if name not in skipped:
            yield from _inside(node, name, value)


def _inside(owner: Node, name: str, value: object) -> Iterator[Found]:
    if isinstance(value, Figure):
        yield owner, name, value
    elif isinstance(value, Node):
        yield from numbers(value)
    elif isinstance(value, (tuple, list)):
        for one in value:
            yield from _inside(owner, name, one)
    elif isinstance(value, dict):
        for one in value.values():
            yield from _inside(owner, name, one)


def needs_none(job: Job) -> set[str]:
    """The facts that have an account on the printed sheet, or that the user said."""
    printed = set(re.findall(r'id="number-([^"]+)"', job.html("procedure")))
    return {one.fact for one in job.tree.derivations if one.weakest == "said" or anchor(one.fact) in printed}


def told_beside(owner: Node, name: str) -> bool:
    """Whether a number stands in a row with its reason, in one that says what happens beyond it, or the line goes on why."""
    kind = type(owner).__name__
    if kind in {"Setting", "LimitRow"}:
        return bool(getattr(owner, "reason", ()) or getattr(owner, "beyond", ()))
    text: Text = getattr(owner, name)
    return GOES_ON.search(said(text)) is not None


def test_v24_each_number_of_the_sheet_has_its_account(made: Job) -> None:
    fine = needs_none(made)
    for owner, name, figure in numbers(made.tree, OTHER_PAPERS):
        kind = type(owner).__name__
        left_over = kind == "Alternative" or (kind == "StepTime" and name == "cutting")
        assert figure.fact in fine or left_over, (kind, name, figure.fact)


def test_v24_each_row_of_a_step_says_why(made: Job) -> None:
    for _, step in made.steps:
        for line in step.settings:
            assert said(line.reason).strip(), (step.number, said(line.label))


def test_v24_the_other_papers_say_why_themselves_where_the_sheet_does_not(made: Job) -> None:
    fine = needs_none(made)
    tree = made.tree
    for paper in (tree.safety_review, tree.sop):
        for owner, name, figure in numbers(paper) if paper else ():
            if figure.fact not in fine:
                assert told_beside(owner, name), (type(owner).__name__, name, figure.fact)
    if tree.record:
        for owner, name, figure in numbers(tree.record):
            assert figure.fact in fine or type(owner).__name__ in ON_THE_RECORD, (name, figure.fact)


def test_a_line_that_tells_a_number_and_no_reason_is_noticed() -> None:
    figure = Figure(fact="a.b", value=5.0, unit="s", rounding="time")
    assert not told_beside(Setting(label=("rest",), value=(figure,)), "value")
    assert told_beside(Setting(label=("rest",), value=(figure,), reason=("it coasts",)), "value")
    assert not GOES_ON.search(said(("At rest within ", figure, ".")))
