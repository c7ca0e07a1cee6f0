"""Words of a shop: the shipped ones stay, and no text of a shop turns a caution into its opposite."""

from itertools import accumulate
from pathlib import Path

import pytest

from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown

from .test_overlay import CAUTION, NOTE, SHIPPED, SIGNED, STOP, laid, procedure, reword

# The rules that are broken are those of OSHA 3170 and of the house: hands, cloth, gloves and gauges away from turning work,
# guards in place, chips cleared with the spindle stopped.
OPPOSITES = [
    "Pull the chip away by hand while the spindle turns.",
    "Pull the chip away by hand.",
    "Pick the swarf out with two fingers.",
    "Measure the work while it turns slowly.",
    "Measure the collar.",
    "Gauge the bore without stopping.",
    "Swing the guard away.",
    "Stop the spindle. Tie the interlock down.",
    "Work without the guard.",
    "Hold a rag to the turning work.",
    "Hold a rag to the work.",
    "Wipe the bar with a cloth.",
    "Hold the brush to the work.",
    "Brush the chuck.",
    "Use a file on the edge.",
    "Wear gloves.",
    "Keep the gloves on at the chuck.",
    "Reach over the chuck.",
    "Lean across the bed.",
    "Slow the chuck with the palm.",
    "Stop the spindle by hand.",
    "Leave the key in the chuck.",
    "Start the spindle, then touch the collar.",
    "Stop the spindle. Start the spindle. Measure the collar.",
    "Never stop the spindle for a chip.",
    "Do not isolate the lathe.",
    "Never hesitate to hold a rag to the work.",
    "Say that it is safe.",
    "Run it faster.",
    "Keep your hand on the turning work.",
]
VAGUE = [
    ("Be careful.", "'be' is not the beginning of an order"),
    ("Pull gently.", "'gently' tells nobody what to do"),
    ("Stand " + "far " * 20 + "back.", "has more than 20 words"),
]
SOUND = [
    "Stop the spindle, then take the hook with the guard from the board.",
    "Never reach over the turning chuck.",
    "Do not hold a rag to turning work.",
    "No rag comes near the spindle.",
    "Keep hands away from the turning work.",
    "Hang the chain across the door before you start the spindle.",
    "Wear the glasses from the board.",
    "Isolate the lathe. Measure the collar.",
    "WHEN it begins to shake, stop the spindle.",
]


def _refusal(folder: Path, rules: str) -> str:
    with pytest.raises(KnowledgeInvalid) as wrong:
        laid(folder, rules)
    assert all(problem.where.startswith("shop-0.toml:") and problem.do for problem in wrong.value.problems)
    return report(wrong.value)


# Each line is laid beside a warning of its own.
WARNINGS = [one.file.id for one in SHIPPED.cautions if one.file.signal == "warning"]


def test_words_beside_a_warning_ask_for_nothing_that_maims(tmp_path: Path) -> None:
    rules = [reword("caution", warning, line) for warning, line in zip(WARNINGS, OPPOSITES, strict=False)]
    assert len(rules) == len(OPPOSITES)
    with pytest.raises(KnowledgeInvalid) as wrong:
        laid(tmp_path, "".join(rules))
    begins = accumulate((rule.count("\n") for rule in rules), initial=1)
    told = {problem.where for problem in wrong.value.problems if "asks for what maims" in problem.wrong}
    kept = [line for line, begin in zip(OPPOSITES, begins, strict=False) if f"shop-0.toml:{begin}" not in told]
    assert kept == []


def test_every_text_of_an_added_rule_is_held_to_it(tmp_path: Path) -> None:
    wrong = "Hold a rag to the turning work."
    texts = [
        CAUTION.replace("Hang the chain across the door first.", wrong),
        CAUTION.replace("It pushes you against the work.", wrong),
        CAUTION.replace("Door opens into your back", wrong),
        CAUTION.replace("as agreed", wrong),
        STOP.replace("Come when a second member is here.", wrong),
        STOP.replace("Nobody runs a lathe alone here.", wrong),
        f'[[add]]\n{SIGNED}\n[add.note]\nid = "rags"\nlevel = "note"\ntext = "{wrong}"\n',
        reword("note", NOTE, wrong),
        reword("step", "clean-lathe", wrong),
    ]
    for number, rules in enumerate(texts):
        assert "asks for what maims" in _refusal(tmp_path / str(number), rules)


@pytest.mark.parametrize(("line", "says"), VAGUE)
def test_words_of_a_shop_are_orders_that_can_be_followed(tmp_path: Path, line: str, says: str) -> None:
    for number, rules in enumerate(
        (reword("caution", "stringy-chips", line), CAUTION.replace("Hang the chain across the door first.", line))
    ):
        assert says in _refusal(tmp_path / str(number), rules)


def test_words_that_make_the_work_safer_are_taken(tmp_path: Path) -> None:
    laid(tmp_path, "".join(reword("caution", warning, line) for warning, line in zip(WARNINGS, SOUND, strict=False)))


def test_the_shipped_lines_of_a_reworded_caution_stay_and_those_of_the_shop_stand_beside_them(tmp_path: Path) -> None:
    ours = "Stop the spindle, then take the hook from the board."
    tree = procedure(tmp_path, reword("caution", "stringy-chips", ours))
    shipped = next(one for one in SHIPPED.cautions if one.file.id == "stringy-chips")
    stand = [one for phase in tree.phases for step in phase.steps for one in step.cautions if one.id == "stringy-chips"]
    stand += [one for phase in tree.phases for one in phase.cautions if one.id == "stringy-chips"]
    assert stand
    for caution in stand:
        assert caution.avoid == (*((line,) for line in shipped.file.avoid), (ours,))
        assert caution.of_shop == 1
    for page in (to_html(tree), to_markdown(tree)):
        plain = page.replace("**", "").replace('<b class="shop-rule">', "").replace("</b>", "")
        assert f"Shop rule {ours} RK: as agreed." in plain
        assert all(line in page for line in shipped.file.avoid)


def test_a_reworded_note_stays_and_the_words_of_the_shop_are_marked_behind_it(tmp_path: Path) -> None:
    name = "height-is-not-tested"
    shipped = next(note.file.text for note in SHIPPED.notes if note.file.id == name)
    tree = procedure(tmp_path, reword("note", name, "The lathe steward has the height gauge."))
    said = [("".join(map(str, one.text)), one.shop_rule) for one in tree.findings]
    assert (shipped, "") in said
    assert ("The lathe steward has the height gauge.", "RK: as agreed") in said
