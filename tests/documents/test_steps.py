"""The grammar of steps: one command a sentence, conditions first, loops with an end, waits with a clock."""

import re

from .made import Job, said, sentences

MOST_WORDS, MOST_WORDS_OF_A_NOTE, MOST_SENTENCES = 20, 25, 6
# What else may open a sentence of a step: a state that must be found, told as such.
STATE = re.compile(
    r"^(?:(?:It|The|Every|All|Nothing|Front and rear|A|Half|That|Such)\b.*\b(?:must|may|will|needs?|stays|is|tells)\b"
    r"|(?:At|Where|With)\b[^,]*,)"
)
# Told as one with the action before it: both are done at once, or one hand holds while the other works.
TOGETHER = re.compile(r"\bHang it or lay it\b")
COMMANDS = (
    "Back|Bring|Brush|Clamp|Clean|Close|Cut|Drill|Face|Feed|Fit|Grease|Hold|Isolate|Lay|Lift|Lock|Look|Loosen|Mark|Measure"
    "|Mount|Move|Open|Press|Pull|Push|Put|Read|Repeat|Seat|Set|Slacken|Slide|Start|Stop|Take|Tighten|Touch|Tug|Turn|Unlock"
    "|Wait|Wind|Wipe|Withdraw|Write"
)
COMMAND = re.compile(rf"(?:{COMMANDS.lower()}|go|leave|do|try|make|ask|come|follow|print)\b(?!, dry)")
TWO = re.compile(rf"\b(?:and|then) (?:{COMMANDS.lower()}) (?:it|the|them|again|a|both|all|out|up|back|off)\b")
# Words that say nothing that can be done or measured.
VAGUE = re.compile(
    r"\b(?:etc|as required|as needed|as necessary|carefully|appropriate(?:ly)?|slightly|properly|adequate(?:ly)?)\b", re.I
)
ONE_NAME = {
    "gib screw": "gib",
    "tail stock": "tailstock",
    "head stock": "headstock",
    "live center": "live centre",
    "center": "centre",
}


def _lines(made: Job) -> list[tuple[str, str]]:
    """The sentences of the steps, and of the short steps of the card."""
    short = made.tree.card.steps if made.tree.card else ()
    return [
        *((step.number, one) for _, step in made.steps for line in step.text for one in sentences(line)),
        *((f"card {line.step}", one) for line in short for one in sentences((line.text,))),
    ]


def _orders(made: Job) -> list[tuple[str, str]]:
    """What people do by the standing procedure and the safety review, beside the steps: each sentence with its place."""
    review = made.tree.safety_review
    texts = [("isolation", line.text) for line in review.isolation]
    texts += [("emergency", line.text) for line in review.emergency]
    texts += [("check", line.otherwise) for one in review.checks for line in one.lines]
    if sop := made.tree.sop:
        for part in ("before", "during", "after", "forbidden", "isolation"):
            texts += [(part, line.text) for line in getattr(sop, part)]
        texts += [("way back", row.back) for row in sop.limits]
        texts += [("first aid", row.do) for row in sop.emergency]
    return [(place, one) for place, text in texts for one in sentences(text)]


def test_v07_a_sentence_of_a_step_holds_one_command(made: Job) -> None:
    """ASD-STE100 issue 9, procedures: one instruction a sentence unless done at once; DOE-STD-1029-92 CN1."""
    for number, line in [*_lines(made), *_orders(made)]:
        # What goes on behind a colon says what is set or seen.
        if not TOGETHER.search(line):
            assert not TWO.search(line), (number, line)
        if line.startswith("IF "):
            _, *later = re.split(r", and |, | and then | and | then ", line.partition("THEN ")[2])
            assert not [piece for piece in later if COMMAND.match(piece)], (number, line)


def test_v08_a_sentence_of_a_step_begins_with_a_command_or_a_condition(made: Job) -> None:
    """ASD-STE100 issue 9: the imperative; DOE-STD-1029-92 CN1: the condition before the action."""
    for number, line in [*_lines(made), *_orders(made)]:
        first = line.split()[0].strip(",.")
        if first in {"IF", "WHEN"}:
            assert re.match(r"^(?:IF|WHEN) [^,]*(?:, [^,]+)*, (?:THEN )?\w+", line), (number, line)
            assert first != "IF" or ", THEN " in line, (number, line)
        elif not STATE.match(line):
            assert re.fullmatch(r"[A-Z][a-z]+(?:-[a-z]+)?|STOP", first), (number, line)
            assert not re.match(r"^(?:The|It|You|This|There|These|A|An|In|On|Should|Please)\b", line), (number, line)


def test_v09_steps_are_short_and_so_are_notes(made: Job) -> None:
    """ASD-STE100 issue 9: twenty words in a procedure, twenty-five in a description, six sentences a paragraph."""
    for number, line in _lines(made):
        assert len(re.findall(r"\S*\w\S*", line)) <= MOST_WORDS, (number, line)
    for _, step in made.steps:
        notes = sentences(step.why)
        assert len(notes) <= MOST_SENTENCES, step.number
        assert all(len(note.split()) <= MOST_WORDS_OF_A_NOTE for note in notes), step.number


def test_v10_a_note_commands_nothing(made: Job) -> None:
    """ASD-STE100 issue 9: a note gives information only. An exclamation of what to set is a step of its own."""
    for _, step in made.steps:
        for note in sentences(step.why):
            command = re.match(
                rf"(?:{COMMANDS}|Keep|Use|Do|Never|Go)\b(?!-|[^.]*:| (?:in this order|or|of|to the eye))", note
            )
            assert not command, (step.id, note)
    told = [(row.label, row.beyond) for row in (*made.tree.limits, *(made.tree.sop.limits if made.tree.sop else ()))]
    told += [(row.caution, (row.harm,)) for row in made.tree.safety_review.hazards]
    told += [(near.id, (near.what_happens,)) for near in made.tree.safety_review.near_misses]
    for place, text in told:
        for note in sentences(text):
            assert not re.match(rf"(?:{COMMANDS}|Keep|Use|Do|Never|Go)\b(?!-|,)", note), (place, note)


def test_before_during_and_after_have_twelve_lines_at_most(made: Job) -> None:
    """House rule: what is read before a start is short enough to be read."""
    if sop := made.tree.sop:
        for part in (sop.before, sop.during, sop.after):
            assert 0 < len(part) <= 12


def test_v11_no_condition_mixes_and_with_or(made: Job) -> None:
    """DOE-STD-1029-92 CN1: AND and OR never stand in one condition; from three conditions on there is a table."""
    for number, line in _lines(made):
        for condition in re.findall(r"\b(?:IF|WHEN) (.*?), (?:THEN )?", line):
            words = condition.lower().split()
            assert not {"and", "or"} <= set(words), (number, line)
            assert words.count("and") + words.count("or") < 2, (number, line)


def test_v12_whoever_does_not_meet_a_condition_goes_on_down_the_page(made: Job) -> None:
    """House rule: an IF without an otherwise leads to the next line, and the sheet says so once, before its first step."""
    told = " ".join(said(line) for line in made.tree.conventions)
    assert "IF a condition is not met, THEN go on with the next line." in told
    words = made.page("procedure").words
    first = next(made.page("procedure").all("section", "step")).words
    assert words.index("IF a condition is not met") < words.index(first)


def test_v13_every_way_leads_somewhere_and_every_way_back_is_counted(made: Job) -> None:
    """DOE-STD-1029-92 CN1: a branch names where to go; the cap on loops is a house rule."""
    for phase in made.tree.phases:
        words = " ".join(said(line) for step in phase.steps for line in step.text)
        if re.search(r"\b[Rr]epeat\b|move again", words):
            assert re.search(
                r"(?:twice|three times|four times|two|three|four) (?:rounds )?(?:at most|do not)|at most|, once", words
            ), words
        assert set(re.findall(r"\bstep (\d+\.\d+)", words)) <= {step.number for _, step in made.steps}
    numbers = {step.id for _, step in made.steps}
    for _, step in made.steps:
        if step.hold and step.hold.go_back_to:
            assert step.hold.go_back_to in numbers


def test_v14_numbers_go_on_without_a_gap_and_come_back_the_same(made: Job) -> None:
    """DOE-STD-1029-92 CN1: decimal numbering, each number once."""
    for count, phase in enumerate(made.tree.phases, start=1):
        assert phase.number == str(count)
        assert [step.number for step in phase.steps] == [f"{count}.{place}" for place in range(1, len(phase.steps) + 1)]
    shown = [next(one.all("span", "no")).words for one in made.page("procedure").all("section", "step")]
    assert shown == [step.number for _, step in made.steps]
    for group in made.tree.card.groups if made.tree.card else ():
        assert {line.step for line in group.lines} <= set(shown)


def test_v33_no_vague_word_and_one_name_for_one_thing(made: Job) -> None:
    """DOE-STD-1029-92 CN1: a vague verb is a defect; ASD-STE100 issue 9: one word, one meaning."""
    for kind in made.kinds:
        words = made.page(kind).words
        found = VAGUE.findall(words)
        assert not found, (kind, found)
        for wrong in ONE_NAME:
            if wrong != "center":
                assert wrong not in words.lower(), (kind, wrong)


def test_v55_a_repeat_says_until_what_and_how_often_at_most(made: Job) -> None:
    """DOE-STD-1029-92 CN1: a step that is repeated says until when; the cap is a house rule."""
    for number, line in _lines(made):
        if line.startswith("Repeat"):
            assert "at most" in line, (number, line)
            assert " until " in line or "without touching" in line or "as often as the line says" in line, (number, line)


def test_v56_a_long_wait_has_start_end_and_what_if_nobody_wrote_them(made: Job) -> None:
    """DOE-STD-1029-92 CN1: a timed step has its clock written down and says what to do when the time was missed."""
    for _, step in made.steps:
        if "cure-wait" not in step.activities:
            continue
        assert sum(blank.count for check in step.checks for blank in check.blanks) >= 2, step.id
        assert step.hold is not None
        assert re.search(r"IF the time was not written down, THEN ", said(step.hold.text)), step.id
