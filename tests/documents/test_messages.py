"""Safety messages on every paper: in time, whole, with the right word, few."""

import re
import tomllib
from functools import cache

from shops import ROOT
from tailtrue.parts import Caution
from tailtrue.truth import Truth

from .made import Job, said, sentences

# ANSI Z535.6, product safety information in manuals: five words by the harm that follows when the hazard is not avoided.
WORDS = {1: {"notice"}, 2: {"caution"}, 3: {"caution"}, 4: {"warning", "danger"}, 5: {"warning", "danger"}}
# ANSI Z535.6 keeps the gravest word for the most extreme: one in ten of unlike messages. A short sheet has few of the lesser
# words, and none of those that kill is left out of it: six of them at most. Ten in all that we know.
MOST_DANGER, MOST_ON_A_SHORT_SHEET, MOST_KNOWN = 1 / 10, 6, 10
# What cuts, joins or finishes the part: left out it spoils the part, so it is a step and never a way to avoid a hazard.
PROCESS = re.compile(r"^(?:Bore|Bond|Centre-drill|Chamfer|Drill|Face|Ream|Skim|Record)\b(?! (?:slowly|in short pecks|only))")


AT_ANY_LATHE = {
    "gloves-at-the-spindle", "loose-clothing", "loose-hair", "rescue-under-power", "cover-off-under-power", "abrasive-cloth-by-hand",
}  # fmt: skip


@cache
def _listed() -> frozenset[str]:
    """The messages that may say DANGER, read straight from their files."""
    files = sorted((ROOT / "knowledge" / "cautions").glob("*.toml"))
    rows = [one for path in files for one in tomllib.loads(path.read_text(encoding="utf-8"))["caution"]]
    return frozenset(one["id"] for one in rows if one["signal"] == "danger")


@cache
def _rows() -> dict[str, int]:
    """Severity of each shipped caution, read straight from its file."""
    rows: dict[str, int] = {}
    for path in sorted((ROOT / "knowledge" / "cautions").glob("*.toml")):
        with path.open("rb") as opened:
            rows |= {one["id"]: one["severity"] for one in tomllib.load(opened)["caution"]}
    return rows


def test_v01_a_message_stands_before_the_step_that_it_protects(made: Job) -> None:
    """DITA 1.3, task and hazard statement; DOE-STD-1029-92 CN1: a warning comes before the action, in its section."""
    page = made.page("procedure")
    for section in page.all("section", "step"):
        seen = [child.attributes.get("class", "") for child in section.children if not isinstance(child, str)]
        body = seen.index("body")
        assert all("message" not in kind.split() for kind in seen[seen.index("head") + 1 :]), section.attributes
        assert body == len(seen) - 1
    printed = {section.attributes["data-step"] for section in page.all("section", "step")}
    for _, step in made.steps:
        assert step.id in printed


def test_v02_a_message_has_word_hazard_consequence_and_avoidance(made: Job) -> None:
    """DITA 1.3 hazard domain: type of hazard, consequence, how to avoid."""
    for caution in made.cautions:
        assert caution.hazard.strip(), caution.id
        assert caution.harm.strip(), caution.id
        assert caution.avoid, caution.id
        assert all(said(line).strip() for line in caution.avoid), caution.id
    for message in made.page("procedure").all("div", "message"):
        assert next(message.all("div", "word")).words.split()[0] in {"DANGER", "WARNING", "CAUTION", "NOTICE"}
    for row in made.tree.safety_review.hazards:
        assert row.hazard.strip(), row.caution
        assert row.harm.strip(), row.caution
        assert row.controls or row.held, row.caution


def test_v03_the_word_is_that_of_the_hazard_row(made: Job) -> None:
    """ANSI Z535.6: the signal word follows the harm."""
    words: dict[str, str] = {}
    for caution in made.cautions:
        if caution.id in _rows():
            assert caution.severity >= _rows()[caution.id], caution.id
        assert caution.signal in WORDS[caution.severity], caution.id
        assert words.setdefault(caution.id, caution.signal) == caution.signal
    for row in made.tree.safety_review.hazards:
        assert words[row.caution] == row.signal
    for line in made.tree.sop.hazards if made.tree.sop else ():
        assert words[line.caution] == line.signal


def _turns(made: Job) -> bool:
    return any(step.machine == "turning" for _, step in made.steps)


def test_v04_danger_is_kept_for_few(made: Job) -> None:
    """ANSI Z535.6: the word for the most extreme situations. Our own measure, one in ten."""
    unlike = {caution.id: caution for caution in made.cautions}
    dangers = [one for one in unlike.values() if one.signal == "danger"]
    # A lathe that is isolated from the first line to the last may have none of them.
    assert dangers or not _turns(made)
    assert {one.id for one in dangers} <= _listed()
    # All of the sheet that is short: those that kill at any lathe, and nothing else.
    if len(dangers) > MOST_DANGER * len(unlike):
        assert {one.id for one in dangers} <= AT_ANY_LATHE
    assert len(dangers) <= max(MOST_DANGER * len(unlike), MOST_ON_A_SHORT_SHEET)


def test_v04_few_shipped_messages_say_danger() -> None:
    """ANSI Z535.6: kept for the most extreme; those that kill or maim for sure, named by hand."""
    shipped = [
        one
        for path in sorted((ROOT / "knowledge" / "cautions").glob("*.toml"))
        for one in tomllib.loads(path.read_text(encoding="utf-8"))["caution"]
        if one["signal"] == "danger"
    ]
    assert 0 < len(shipped) <= MOST_KNOWN
    assert all(one["severity"] == 5 for one in shipped)


def _triangle_is_right(word: str, has: bool) -> None:
    assert has == (word != "NOTICE"), word


def test_v05_a_notice_has_no_triangle_and_the_others_have(made: Job) -> None:
    """ANSI Z535.6: the safety alert symbol belongs to injury, a notice to property."""
    checked = 0
    for kind in made.kinds:
        for word in made.page(kind).all("", "word"):
            if (name := word.words.split()[0]) in {"DANGER", "WARNING", "CAUTION", "NOTICE"} and kind == "procedure":
                _triangle_is_right(name, any(True for _ in word.all("svg", "triangle")))
                checked += 1
    assert checked == sum(1 for _ in made.cautions)


def test_v06_what_avoids_a_hazard_is_no_step_of_the_work(made: Job) -> None:
    """DOE-STD-1029-92 CN1: precautions hold no actions of the procedure."""
    for caution in made.cautions:
        for line in caution.avoid:
            for sentence in sentences(line):
                assert not PROCESS.match(sentence), (caution.id, sentence)


def _steps_with(made: Job) -> list[tuple[str, tuple[Caution, ...]]]:
    return [(step.number, step.cautions) for _, step in made.steps]


MOST_AT_A_STEP, MOST_BEFORE_A_PHASE, MOST_UP_FRONT = 3, 5, 10


def test_v54_few_messages_stand_before_one_step(made: Job) -> None:
    """House rule after what is known of warning fatigue: three of any kind, told in full or as a line; five before a phase."""
    for number, cautions in _steps_with(made):
        assert len(cautions) <= MOST_AT_A_STEP, number
    for phase in made.tree.phases:
        assert len(phase.cautions) <= MOST_BEFORE_A_PHASE, phase.number
    for section in made.page("procedure").all("section", "step"):
        assert sum(1 for _ in section.all("div", "message")) <= MOST_AT_A_STEP, section.attributes


def test_v54_few_messages_stand_in_full_up_front_the_dangers_first(made: Job) -> None:
    """House rule after what is known of warning fatigue: a page of warnings is not read."""
    front = [one for one in made.tree.job_cautions if not one.at_back]
    assert len(front) <= MOST_UP_FRONT or all(one.signal in ("danger", "warning") for one in front)
    dangers = [one.signal == "danger" for one in front]
    assert dangers == sorted(dangers, reverse=True)
    table = [row.words for one in made.page("procedure").all("table", "cautions") for row in one.all("tr")]
    for caution in made.tree.job_cautions:
        assert any(caution.hazard in row for row in table) is (caution in front and caution.signal != "danger"), caution.id


def test_v54_every_message_that_holds_is_printed_in_full_before_its_first_step(made: Job) -> None:
    """DITA 1.3 and ASD-STE100 issue 9: few boxes, but none that is left out.

    What holds at any lathe is named up front and stands in full in the safety review, which is accepted before the first step; its
    way out stands at the back of the sheet as well.
    """
    full: list[str] = []
    page = made.page("procedure")
    named = " ".join(" ".join(one.words.split()) for one in page.all("p", "also"))
    back = [" ".join(one.words.split()) for part in page.all("section", "also-read") for one in part.all("li")]
    reviewed = {row.caution: (row.hazard, row.harm) for row in made.tree.safety_review.hazards}
    # What stands above each step, read from the page in its order: the front first.
    above: dict[str, int] = {}
    for element in page.all():
        kinds = element.attributes.get("class", "").split()
        if "says" in kinds or element.tag == "td":
            full.append(" ".join(element.words.split()))
        elif element.tag == "section" and "step" in kinds:
            number = element.attributes["aria-labelledby"].removeprefix("step-").replace("-", ".")
            above[number] = len(full) + sum(1 for _ in element.all("div", "message"))
    case = made.advice.case
    checked = 0
    for caution in case.knowledge.cautions:
        answers = set(caution.file.answers)
        first = next((step for _, step in made.steps if answers & set(step.activities)), None)
        if first is None or case.judge(caution.when).truth is Truth.NO:
            continue
        node = next(one for one in made.cautions if one.id == caution.file.id and not one.again)
        avoid = [piece for line in node.avoid for piece in line if isinstance(piece, str)]
        parts = [node.hazard, *avoid] if node.at_back else [node.hazard, node.harm, *avoid]
        pieces = [" ".join(piece.split()).rstrip(".") for piece in parts]
        told = [
            text for text in (back if node.at_back else full[: above[first.number]]) if all(one in text for one in pieces)
        ]
        assert told, (node.id, first.number)
        if node.at_back:
            assert node.signal != "danger", node.id
            assert node.hazard in named, node.id
            assert reviewed[node.id] == (node.hazard, node.harm)
        checked += 1
    assert checked > MOST_BEFORE_A_PHASE


def test_v01_the_messages_of_the_card_stand_before_its_first_line(made: Job) -> None:
    """DITA 1.3 and flight-deck checklist studies: few messages, before what they protect."""
    if made.tree.card:
        words = made.page("card").words
        assert made.tree.card.messages or not _turns(made)
        assert len(made.tree.card.messages) <= 3
        if made.tree.card.messages:
            assert words.index("DANGER") < words.index(made.tree.card.steps_title)


def test_v17_the_list_stands_before_the_lines_of_the_card_that_start_the_spindle(made: Job) -> None:
    """Shop safety practice: each start has its check; on the card a mark sends back to the list."""
    if made.tree.card:
        words, card = made.page("card").words, made.tree.card
        assert words.index(card.start.title) < words.index(card.steps_title)
        turning = {step.number for _, step in made.steps if step.machine == "turning"}
        numbers = [step.number for _, step in made.steps]
        for line in card.steps:
            stretch = numbers[numbers.index(line.step) : numbers.index(line.last) + 1]
            assert line.starts == bool(turning & set(stretch)), line.text
        assert any(line.starts for line in card.steps) == (card.list_first in words)
