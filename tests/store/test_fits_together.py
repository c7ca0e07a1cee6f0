"""Names in records, steps, needs and lists that lead nowhere, and entries that say too little, are found at load."""

import pytest

from planted import Planted, each, is_told, refused_at_load

# What is found while the files are read; then nothing is checked yet.
UNREADABLE: list[Planted] = [
    # file, what stands there, what is written instead, the place that must be told, what must be said of it
    ("records/rework.toml", 'route = "rework"', 'route = "make-bar"', "records/rework.toml:1", "make-bar: a record has the name of its route"),
]  # fmt: skip
# What the check of the whole finds.
UNSOUND: list[Planted] = [
    ("records/re-certify.toml", 'shared = ["environment"', 'shared = ["enviroment"', "records/re-certify.toml:1", "enviroment: no block of every record has this id"),
    ("records/re-certify.toml", 'field = "own"', 'field = "owned"', "records/re-certify.toml:1", "bar.swap_table: has no field 'owned'"),
    ("records/chucked-bar-test.toml", 'records = "chucked.bands"', 'records = "chucked.bend"', "records/chucked-bar-test.toml:1", "chucked.bend: is no list of records"),
    ("records/height-and-droop.toml", 'judged_at = "work-out-height"', 'judged_at = "work-out-hight"', "records/height-and-droop.toml:1", "height of the quill over the spindle: no step is named 'work-out-hight'"),
    ("records/height-and-droop.toml", 'judged_at = "quill-upright" }', 'judged_at = "quill-upright", low = "bar.length" }', "records/height-and-droop.toml:1", "rise toward the nose: has a band of its own and that of a step"),
    ("records/make-bar.toml", 'low = "bore.tail_usable"', 'low = "bore.tail_used"', "records/make-bar.toml:1", "bore of collar 2, end B: no fact is named 'bore.tail_used'"),
    ("records/make-bar.toml", 'high = "bore.middle_high", instrument = "bore-gauge"', 'high = "bore.middle_high", instrument = "bore-guage"', "records/make-bar.toml:1", "bore of collar 3, middle: no need is named 'bore-guage'"),
    ("records/make-bar.toml", 'low = "bore.head_low", high = "bore.head_high", instrument = "bore-gauge", uncertainty = "bore.gauge_uncertainty"', 'low = "bore.head_low", high = "bore.head_high", instrument = "bore-gauge"', "records/make-bar.toml:1", "bore of collar 1, end A: is judged without unit, instrument or how well that reads"),
    ("steps/bore-rough.md", 'without = { "cutting-fluid"', 'without = { "grease"', "steps/bore-rough.md:1", "grease: is gone without, and is no tool here"),
    ("steps/decide-fixed.md", '"Write down that this instrument gives no verdict on the limit." =', '"Write down that it gives no verdict." =', "steps/decide-fixed.md:1", "Write down that it gives no verdict.: stands in some jobs only, and is no line here"),
    ("steps/cut-once-more.md", 'instrument = "micrometer-collars"', 'instrument = "bore-gauge"', "steps/cut-once-more.md:1", "bore-gauge: measures here but is not among the tools"),
    ("steps/blue-centres.md", 'go_back_to = "inspect-bar"', 'go_back_to = "inspect-bars"', "steps/blue-centres.md:1", "inspect-bars: the hold goes back to a step that is not there"),
    ("steps/change-one-thing.md", 'low = "skim.worn_out_at"', 'low = "skim.worn_out"', "steps/change-one-thing.md:1", "skim.worn_out: no fact has this name"),
    ("needs.toml", 'amount = "{{ consume.packing }}"', 'amount = "some"', "needs.toml", "packing: is used up, and nothing says how much"),
    ("safety/states.csv", "deburr,isolated stopped,", "deburr,isolated stopped,too,many,", "safety/states.csv: deburr,", "the row has not as many cells as the table has columns"),
    ("overridable.toml", '"chuck.speed_limit", "blank', '"chuck.label", "blank', 'overridable.toml: facts = ["chuck.label"', "chuck.label: is no computed number"),
    ("stops/sizes.toml", 'behind = ["joint.method"]', 'behind = ["joint.methods"]', 'stops/sizes.toml: id = "bar-outside-the-fits"', "is behind 'joint.methods', and no choice has this name"),
    ("stops/safety.toml", 'asked_by = "no-volt"', 'asked_by = "no-volts"', 'stops/safety.toml: id = "starts-again-by-itself"', "no-volts: is no check of the lathe"),
    ("page.toml", 'learner_activities = ["spindle-start"', 'learner_activities = ["spindle-starts"', "page.toml", "spindle-starts: is marked for a learner, and no step does it"),
]  # fmt: skip


@pytest.mark.parametrize(("fault", "group"), each(UNREADABLE, UNSOUND))
def test_a_fault_is_told_with_its_place(fault: Planted, group: tuple[Planted, ...]) -> None:
    is_told(refused_at_load, fault, group)
