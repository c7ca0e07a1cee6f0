"""What is wrong in the texts of the standing procedure is found when they are loaded."""

import pytest

from planted import Planted, each, is_told, refused_at_load

# A table that cannot be read ends the reading.
UNREADABLE_TABLE: list[Planted] = [
    # file, what stands there, what is written instead, the place that must be told, what must be said of it
    ("sop/machine.toml", 'machine = "turning"', 'machine = "running"', "sop/machine.toml", "wear.2.machine: input should be 'isolated'"),
    ("sop/page.toml", "roster_rows = 20", "roster_rows = 9", "sop/page.toml", "roster_rows: input should be greater than or equal to 15"),
]  # fmt: skip
# What is found while the entries are read; then nothing is checked yet.
UNREADABLE: list[Planted] = [
    ("sop/lines.toml", 'part = "waste"', 'part = "rubbish"', 'sop/lines.toml: id = "waste-chips"', "waste-chips: part: input should be 'first'"),
    ("sop/lines.toml", "lathe.spindle_nose is threaded", "lathe.spindle_nose is screwed", 'sop/lines.toml: id = "never-reverse"', "'screwed' is none"),
    ("sop/limits.toml", 'beyond = "A thin', 'beyonds = "A thin', 'sop/limits.toml: id = "collar-worn"', "collar-worn: beyond: field 'beyond' is missing"),
    ("sop/limits.toml", 'back = "Do not skim. Make new collars."', 'back = ""', 'sop/limits.toml: id = "collar-worn"', "collar-worn: back: string should have at least 1 character"),
]  # fmt: skip
# What the check of the whole finds.
UNSOUND: list[Planted] = [
    ("sop/lines.toml", "Switch off. Isolate.", "Switch off for 3 turns.", 'sop/lines.toml: id = "after-off"', "after-off: a number is typed into a sentence"),
    ("sop/lines.toml", "{{ lathe.slowest }}", "{{ lathe.slowset }}", 'sop/lines.toml: id = "before-stop"', "before-stop: no fact is named 'lathe.slowset'"),
    ("sop/lines.toml", '"nfpa-660"', '"hearsay"', 'sop/lines.toml: id = "waste-aluminium"', "hearsay: source 'hearsay' is not in sources.toml"),
    ("sop/lines.toml", 'activities = ["free-end"]', 'activities = ["free-ends"]', 'sop/lines.toml: id = "training-chuck"', "training-chuck: belongs on no paper"),
    ("sop/lines.toml", 'id = "waste-rags"', 'id = "waste-chips"', "sop/page.toml", "waste-chips: two entries have this id"),
    ("sop/emergency.toml", 'seen = "Heavy bleeding"', 'seen = "Bleeding"', 'sop/emergency.toml: id = "bleeding"', "Bleeding: the sheet's table has no such line"),
    ("sop/page.toml", 'route = "use-bar"', 'route = "use-bars"', "sop/page.toml", "use-bar: has no [[paper]] with its title"),
    ("sop/page.toml", 'name = "job.author"', 'name = "job.writer"', "sop/page.toml", "Author: no fact is named 'job.writer'"),
    ("sop/page.toml", 'high = ["What happened"', 'high = ["What was it"', "sop/page.toml", "What was it: is no place of the form 'incident'"),
    ("sop/page.toml", 'source = "puwer-1998"', 'source = "hearsay"', "sop/page.toml", "hearsay: is not in sources.toml"),
]  # fmt: skip
# The same sentence again, and what stands in the way of a fault above.
UNSOUND_TOO: list[Planted] = [
    ("sop/lines.toml", "Switch off. Isolate.", "Switch " + "it " * 20 + "off.", 'sop/lines.toml: id = "after-off"', "after-off: Switch it it it it it it it it it it it it it it it it it it it it off.: has more than 20 words"),
    ("sop/lines.toml", 'part = "after"', 'part = "before"', "sop/lines.toml", "before: has 20 lines on chucked-bar-test"),
]  # fmt: skip
UNSOUND_AGAIN: list[Planted] = [
    ("sop/lines.toml", "Switch off. Isolate.", "Gently switch off.", 'sop/lines.toml: id = "after-off"', "after-off: 'Gently' tells nobody what to do"),
]  # fmt: skip


@pytest.mark.parametrize(("fault", "group"), each(UNREADABLE_TABLE, UNREADABLE, UNSOUND, UNSOUND_TOO, UNSOUND_AGAIN))
def test_a_fault_is_told_with_its_place(fault: Planted, group: tuple[Planted, ...]) -> None:
    is_told(refused_at_load, fault, group)
