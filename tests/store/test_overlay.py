"""Rules of a shop: what they may change, what is refused with the line of the shop's file, and that nothing gets looser."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from shops import shop, tailtrue
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import KnowledgeInvalid, Problem, Refused, report
from tailtrue.places import knowledge_folder
from tailtrue.procedure import Procedure
from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown
from tailtrue.store.knowledge import Knowledge
from tailtrue.store.layers import read_layers
from tailtrue.store.load import load_knowledge
from tailtrue.store.version import knowledge_version

FOLDER = knowledge_folder()
SHIPPED = load_knowledge(FOLDER)
SIGNED = 'reason = "as agreed"\nby = "RK"\n'

CAUTION = f"""[[add]]
{SIGNED}
[add.caution]
id = "booth-door"
signal = "warning"
severity = 4
likelihood = 2
hazard = "Door opens into your back"
harm = "It pushes you against the work."
avoid = ["Hang the chain across the door first."]
answers = ["turning"]
"""
STOP = f"""[[add]]
{SIGNED}
[add.stop]
id = "no-one-alone"
title = "Nobody else is here"
when = ["job.alone is yes"]
text = "Nobody runs a lathe alone here."
way_out = ["Come when a second member is here."]
"""


def tighten(limit: str, value: str) -> str:
    return f'[[tighten]]\nlimit = "{limit}"\nvalue = "{value}"\n{SIGNED}\n'


def reword(what: str, name: str, *lines: str, more: str = "") -> str:
    written = ", ".join(f'"{line}"' for line in lines)
    return f'[[reword]]\n{what} = "{name}"\ntext = [{written}]\n{more}{SIGNED}\n'


def disable(what: str, name: str, more: str = "") -> str:
    return f'[[disable]]\n{what} = "{name}"\n{more}{SIGNED}\n'


def laid(folder: Path, *files: str) -> Knowledge:
    """The shipped knowledge with these files over it."""
    folder.mkdir(exist_ok=True)
    paths = [folder / f"shop-{number}.toml" for number in range(len(files))]
    for path, text in zip(paths, files, strict=True):
        path.write_text(text, encoding="utf-8")
    return load_knowledge(FOLDER, read_layers(paths, folder))


def procedure(folder: Path, rules: str, name: str = "fernhill", *changes: tuple[str, str, str]) -> Procedure:
    """The sheet of an example shop with rules in the folder beside its job file."""
    job = shop(folder, name, *changes)
    (job.parent / "rules").mkdir()
    (job.parent / "rules" / "ours.toml").write_text(rules, encoding="utf-8")
    return make_procedure(job)


# A note that carries a number.
NOTE = next(note.file.id for note in SHIPPED.notes if list(note.text.places()))

# Rules, the line that must be told (0: none), what must be said of it. Each stands in a file of its own.
Wrong = tuple[str, int, str]
# What is found when the files are read; then they are not laid over anything.
UNREADABLE: list[Wrong] = [
    (disable("stop", "bar-longer-than-the-lathe-takes"), 2, "unknown key 'stop'"),
    (reword("stop", "bar-longer-than-the-lathe-takes", "Go on."), 2, "unknown key 'stop'"),
    (CAUTION.replace('signal = "warning"', 'sgnal = "warning"'), 7, "a key named 'signal' exists"),
    # A key that another kind of entry has is no help here.
    (
        '[[disable]]\nid = "stringy-chips"\nreason = "worn"\nby = "steward"\n',
        2,
        "take it out; keys are alternative, by, caution, ",
    ),
    (STOP.replace('when = ["job.alone is yes"]', "when = []"), 8, "write at least 1 of them"),
    ('[[tighten]]\nlimit = "limit.blank_speed"\nvalue = "700 1/min"\nby = "RK"\n', 1, "reason: not given"),
    ('[[tighten]]\nlimit = "limit.blank_speed"\nvalue = "700 1/min"\nreason = "worn"\n', 1, "by: not given"),
    (tighten("limit.blank_speed", "700 1/min").replace("as agreed", "   "), 1, "is empty, or holds what cannot be printed"),
    ("[[loosen]]\n", 1, "unknown key 'loosen'"),
    ("", 0, "holds no rule"),
]
# What is found when they are laid over the knowledge; then nothing is checked yet.
NOT_LAID: list[Wrong] = [
    (tighten("limit.blank_speed", "1200 1/min"), 1, "is looser than the 1000 1/min of limit.blank_speed"),
    (tighten("limit.cure_least", "12 h"), 1, "is looser than the 24 h of limit.cure_least"),
    (tighten("limit.blank_speed", "1000 1/min"), 1, "changes nothing"),
    (tighten("limit.blank_speed", "-5 1/min"), 1, "leaves nothing of limit.blank_speed"),
    (tighten("limit.blank_speed", "700 mm"), 1, "is no value of limit.blank_speed"),
    (tighten("limit.blank_sped", "700 1/min"), 1, "no limit has this name"),
    (tighten("limit.blank_speed", "700 1/min") * 2, 7, "is changed a second time in this file"),
    (disable("caution", "gloves-at-the-spindle"), 1, "is a DANGER and stands in every shop"),
    (disable("caution", "no-such-caution"), 1, "no caution has this name"),
    (disable("note", "no-such-note"), 1, "no note has this name"),
    (disable("decision", "bore.gauge", 'alternative = "steel-rule"\n'), 1, "is no alternative of bore.gauge"),
    (disable("decision", "bore.gauge"), 1, "is no alternative of bore.gauge"),
    (
        disable("decision", "align.when_tailstock_larger", 'alternative = "toward"\n'),
        1,
        "is no choice that a shop may narrow",
    ),
    (disable("decision", "visit.advice", 'alternative = "leave"\n'), 1, "is no choice that a shop may narrow"),
    (reword("caution", "gloves-at-the-spindle", "Keep warm."), 1, "is a DANGER and keeps its words"),
    (
        reword("caution", "stringy-chips", "Be quick.", more='signal = "caution"\n'),
        1,
        "is less than the WARNING of stringy-chips",
    ),
    (reword("caution", "stringy-chips", *["Stop."] * 4), 1, "has more than 3 lines"),
    (reword("caution", "stringy-chips", "Run at {{ skim.speed }}."), 1, "brings in value skim.speed"),
    (reword("caution", "stringy-chips", "Stand {{ bar.lenght } off."), 1, "holds a brace that is not a place"),
    (reword("caution", "stringy-chips", " "), 1, "has an empty line"),
    (reword("note", NOTE, "It is {{ skim.speed }}."), 1, "brings in value skim.speed"),
    (reword("step", "skim-collars", "Watch the chip."), 1, "is done while the spindle turns: its words stay as they are"),
    (reword("step", "start-check", "Start."), 1, "is a check or a hold: its words stay as they are"),
    (reword("step", "clean-lathe", "Wipe.", more='signal = "danger"\n'), 1, "has no signal word"),
    (STOP.replace("job.alone is yes", "job.alnoe is yes"), 1, "no fact is named 'job.alnoe'"),
    (f"[[add]]\n{SIGNED}", 1, "adds nothing, or more than one thing"),
]
# A caution that is taken out, or has good words, stands in the way of bad words above.
NOT_LAID_TOO: list[Wrong] = [
    (disable("caution", "stringy-chips", 'note = "no-height"\n'), 1, "names nothing to change, or more than one thing"),
    (reword("caution", "stringy-chips", "Stand 300 mm off."), 1, "is a number typed into a text"),
    (reword("caution", "stringy-chips", "Stop.") + disable("caution", "stringy-chips"), 1, "is reworded here and taken out"),
]
# What the check of the whole finds.
UNSOUND: list[Wrong] = [
    (reword("caution", "stringy-chips", "word " * 21), 1, "has more than 20 words"),
    (reword("step", "clean-lathe", "Wipe the ways 3 times."), 1, "a number is typed into a sentence"),
    (CAUTION.replace('"warning"', '"notice"'), 1, "signal word notice does not fit severity 4"),
    (CAUTION.replace("booth-door", "stringy-chips"), 1, "two cautions have this id"),
    (STOP.replace("Nobody runs", "{{ bar.lenght }} runs"), 1, "no fact is named 'bar.lenght'"),
]


@cache
def _refused(group: tuple[Wrong, ...]) -> tuple[Problem, ...]:
    """What is told of rules that are laid over the knowledge together."""
    with TemporaryDirectory() as folder, pytest.raises(KnowledgeInvalid) as wrong:
        laid(Path(folder), *(rules for rules, _, _ in group))
    return wrong.value.problems


@pytest.mark.parametrize(
    ("number", "group"),
    [
        pytest.param(number, tuple(group), id=f"{number}-{says[:30]}")
        for group in (UNREADABLE, NOT_LAID, NOT_LAID_TOO, UNSOUND)
        for number, (_, _, says) in enumerate(group)
    ],
)
def test_a_rule_that_may_not_be_is_refused_with_its_file_and_line(number: int, group: tuple[Wrong, ...]) -> None:
    _, line, says = group[number]
    told = [one for one in _refused(group) if one.where.partition(":")[0] == f"shop-{number}.toml"]
    place = f"shop-{number}.toml:{line}" if line else f"shop-{number}.toml"
    assert any(says in f"{one.said}: {one.wrong}: {one.do}" for one in told if one.where == place), told
    assert all(one.do for one in told)
    assert all(one.where.startswith("shop-") for one in _refused(group))


def test_every_wrong_rule_is_told_at_once(tmp_path: Path) -> None:
    rules = tighten("limit.blank_speed", "1200 1/min") + disable("caution", "gloves-at-the-spindle")
    with pytest.raises(KnowledgeInvalid) as wrong:
        laid(tmp_path, rules)
    assert [problem.where for problem in wrong.value.problems] == ["shop-0.toml:1", "shop-0.toml:7"]


def test_a_warning_that_alone_answers_an_activity_stays(tmp_path: Path) -> None:
    answers: dict[str, list[str]] = {}
    for caution in SHIPPED.cautions:
        for activity in caution.file.answers:
            answers.setdefault(activity, []).append(caution.file.id)
    signals = {caution.file.id: caution.file.signal for caution in SHIPPED.cautions}
    used = {activity for step in SHIPPED.steps.values() for activity in step.file.activities}
    gone = next(
        ids for activity, ids in answers.items() if activity in used and all(signals[one] != "danger" for one in ids)
    )
    with pytest.raises(KnowledgeInvalid) as wrong:
        laid(tmp_path, "".join(disable("caution", one) for one in gone))
    (problem,) = [one for one in wrong.value.problems if "is the last caution that answers" in one.wrong]
    assert problem.where.startswith("shop-0.toml:")
    assert problem.said == gone[-1]


def test_a_limit_drawn_tighter_binds(tmp_path: Path) -> None:
    known = laid(tmp_path, tighten("limit.blank_speed", "700 1/min"))
    limit = known.limits["limit.blank_speed"]
    assert limit.value == 700.0
    assert "shop-rule" in limit.sources
    assert known.shop.limits["limit.blank_speed"].value == SHIPPED.limits["limit.blank_speed"].value == 1000.0


def test_of_two_files_the_stricter_binds_and_both_are_told(tmp_path: Path) -> None:
    loose, strict = tighten("limit.blank_speed", "900 1/min"), tighten("limit.blank_speed", "600 1/min")
    for number, files in enumerate([(loose, strict), (strict, loose)]):
        known = laid(tmp_path / str(number), *files)
        assert known.limits["limit.blank_speed"].value == 600.0
        assert sorted((one.drawn, one.binds) for one in known.shop.changes) == [(600.0, True), (900.0, False)]


def test_of_two_files_the_louder_word_binds(tmp_path: Path) -> None:
    files = [
        reword("caution", "stringy-chips", "Stop first.", more=f'signal = "{word}"\n') for word in ("danger", "warning")
    ]
    for number, both in enumerate([files, files[::-1]]):
        known = laid(tmp_path / str(number), *both)
        assert next(one.file.signal for one in known.cautions if one.file.id == "stringy-chips") == "danger"


def test_the_version_tells_the_shipped_rules_and_those_of_the_shop(tmp_path: Path) -> None:
    one, other = laid(tmp_path / "a", CAUTION), laid(tmp_path / "b", STOP)
    for known in (one, other):
        assert known.version.startswith(f"{knowledge_version(FOLDER)} + shop ")
    assert one.version != other.version
    assert laid(tmp_path / "c", CAUTION).version == one.version


def test_examples_of_an_added_rule_are_judged(tmp_path: Path) -> None:
    example = '\n[[add.stop.example]]\nname = "alone"\nfacts = { "job.alone" = "yes" }\nexpect = "silent"\n'
    with pytest.raises(KnowledgeInvalid, match="says silent, came out fires"):
        laid(tmp_path, STOP + example)


def test_the_sheet_lists_marks_and_signs_what_the_shop_changed(tmp_path: Path) -> None:
    step = "Brush all chips out first."
    rules = (
        CAUTION + tighten("limit.blank_speed", "600 1/min") + reword("caution", "stringy-chips", "Stop, then take the hook.")
    )
    tree = procedure(tmp_path, rules)
    assert {(one.kind, one.name) for one in tree.shop_rules} == {
        ("add", "booth-door"), ("tighten", "limit.blank_speed"), ("reword", "stringy-chips"),
    }  # fmt: skip
    every = [*tree.job_cautions]
    for phase in tree.phases:
        every += [*phase.cautions, *(caution for one in phase.steps for caution in one.cautions)]
    assert {caution.id for caution in every if caution.shop_rule} == {"booth-door", "stringy-chips"}
    assert all(caution.shop_rule == "RK: as agreed" for caution in every if caution.shop_rule)
    assert " + shop " in tree.title.knowledge_version
    for page in (to_html(tree), to_markdown(tree)):
        assert "Rules of this shop" in page
        assert "1000\N{NO-BREAK SPACE}rev/min" in page
        assert "600\N{NO-BREAK SPACE}rev/min" in page
    assert step not in to_markdown(tree)


def test_a_speed_obeys_the_limit_of_the_shop(tmp_path: Path) -> None:
    rules = tighten("limit.blank_speed", "300 1/min")
    tree = procedure(tmp_path, rules)
    speeds = [
        piece.value
        for phase in tree.phases
        if phase.id == "collars"
        for step in phase.steps
        for setting in step.settings
        for piece in setting.value
        if not isinstance(piece, str) and piece.rounding == "speed"
    ]
    assert speeds
    assert max(speeds) <= 300.0


def test_a_stop_of_the_shop_stops_and_says_whose_it_is(tmp_path: Path) -> None:
    with pytest.raises(Refused) as wrong:
        procedure(tmp_path, STOP, "quarry-road")
    assert "no-one-alone: Shop rule: Nobody else is here" in report(wrong.value)


def test_a_note_and_a_caution_taken_out_are_gone_and_told(tmp_path: Path) -> None:
    note = SHIPPED.notes[0].file.id
    tree = procedure(tmp_path, disable("caution", "stringy-chips") + disable("note", note))
    assert '"stringy-chips"' not in tree.model_dump_json().replace('"name":"stringy-chips"', "")
    assert {(one.kind, one.name) for one in tree.shop_rules} == {("disable", "stringy-chips"), ("disable", note)}


def test_a_closed_alternative_is_not_chosen_and_says_why(tmp_path: Path) -> None:
    plain = advise(shop(tmp_path / "plain", "fernhill")).case
    first = plain.value("bore.gauge")
    job = shop(tmp_path, "fernhill")
    (job.parent / "rules").mkdir()
    closed = disable("decision", "bore.gauge", f'alternative = "{first}"\n')
    (job.parent / "rules" / "ours.toml").write_text(closed, encoding="utf-8")
    case = advise(job).case
    assert case.value("bore.gauge") != first
    row = next(one for one in case.knowledge.decisions["bore.gauge"].rows if one.then == first)
    assert row.closed_by == "shop rule, RK: as agreed"


def test_a_reworded_step_keeps_its_numbers_and_says_whose_words_it_has(tmp_path: Path) -> None:
    tree = procedure(tmp_path, reword("step", "clean-lathe", "Brush the ways, never use air.", "Wipe them with a rag."))
    steps = [step for phase in tree.phases for step in phase.steps if step.id == "clean-lathe"]
    assert steps
    assert all(step.shop_rule == "RK: as agreed" for step in steps)
    shipped = SHIPPED.steps["clean-lathe"].sentences
    for step in steps:
        assert step.text[-2:] == (("Brush the ways, never use air.",), ("Wipe them with a rag.",))
        assert step.of_shop == len(step.text) - len(shipped) == 2
    page = to_markdown(tree)
    assert page.count("**Shop rule** Wipe them with a rag.") == len(steps)


def test_rules_that_the_job_names_are_laid_and_a_missing_file_is_told(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("job", 'stock = "stock.toml"', 'stock = "stock.toml"\nrules = "ours.toml"'))
    with pytest.raises(KnowledgeInvalid, match="there is no such file"):
        advise(job)
    (job.parent / "ours.toml").write_text(CAUTION, encoding="utf-8")
    assert " + shop " in advise(job).case.knowledge.version


def test_the_command_checks_rules_of_a_shop(tmp_path: Path) -> None:
    path = tmp_path / "ours.toml"
    path.write_text(CAUTION, encoding="utf-8")
    done = tailtrue("knowledge", "check", "--with", path)
    assert done.returncode == 0
    assert "shop_changes: 1" in done.stdout
    # Examples of shipped rules are not tried with the rules of a shop over them.
    assert "condition_faults" not in done.stdout
    path.write_text(disable("caution", "gloves-at-the-spindle"), encoding="utf-8")
    done = tailtrue("knowledge", "check", "--with", path)
    assert done.returncode == 3
    assert "ours.toml:1: gloves-at-the-spindle: is a DANGER" in done.stderr


def test_the_shipped_example_of_shop_rules_is_sound() -> None:
    example = Path(__file__).parents[2] / "docs" / "examples" / "fernhill"
    tree = make_procedure(example / "job-with-shop-rules.toml")
    assert {one.kind for one in tree.shop_rules} == {"add", "tighten", "reword", "disable"}
    assert [one.value.fact for one in tree.set_by_hand] == ["skim.speed"]


_NUMBERS = st.floats(min_value=-2.0, max_value=3.0, allow_nan=False)


def _times(limit: str, factor: float) -> str:
    fact = SHIPPED.limits[limit]
    unit = "" if fact.spec.unit in ("", "1") else f" {fact.spec.unit}"
    return f"{fact.value * factor:.6f}{unit}"


_ENTRY = st.one_of(
    st.tuples(st.sampled_from(sorted(SHIPPED.limits)), _NUMBERS).map(lambda pair: tighten(pair[0], _times(*pair))),
    st.sampled_from(sorted(caution.file.id for caution in SHIPPED.cautions)).map(lambda name: disable("caution", name)),
    st.tuples(
        st.sampled_from(sorted(caution.file.id for caution in SHIPPED.cautions)),
        st.sampled_from(["notice", "caution", "warning", "danger"]),
    ).map(lambda pair: reword("caution", pair[0], "Stop the spindle first.", more=f'signal = "{pair[1]}"\n')),
    st.just(CAUTION),
)  # fmt: skip


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture])
@given(files=st.lists(st.lists(_ENTRY, min_size=1, max_size=3).map("".join), min_size=1, max_size=2))
def test_no_rules_of_a_shop_loosen_a_limit_or_lose_a_danger(tmp_path: Path, files: list[str]) -> None:
    try:
        known = laid(tmp_path, *files)
    except KnowledgeInvalid:
        return
    for name, shipped in SHIPPED.limits.items():
        now = known.limits[name].value
        assert now <= shipped.value if shipped.spec.bound == "most" else now >= shipped.value
    after = {caution.file.id: caution.file for caution in known.cautions}
    for caution in SHIPPED.cautions:
        if caution.file.signal == "danger":
            assert after[caution.file.id] == caution.file
    assert {stop.file.id for stop in SHIPPED.stops} <= {stop.file.id for stop in known.stops}
