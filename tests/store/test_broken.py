"""What is wrong in the knowledge is found when it is loaded, with file and line, before any job reaches it."""

import shutil
from pathlib import Path

import pytest

from planted import Planted as Told
from planted import each, is_told, plant, refused_at_load, together
from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.places import knowledge_folder
from tailtrue.store.load import load_knowledge
from tailtrue.store.version import knowledge_version

Planted = tuple[str, str, str, str]
# What is found while the files are read; then nothing is checked yet.
UNREADABLE: list[Planted] = [
    # file, what stands there, what is written instead, what the report must say
    ("steps/rework-mark.md", 'value = "end A", reason = "as the job file says"', 'value = "end A"', "settings.1.reason"),
    ("steps/rework-mark.md", 'value = "end A", reason = "as the job file says"', 'value = "end A", reason = ""', "at least 1 character"),
    ("steps/face-bar.md", 'machine = "turning"', 'machnie = "turning"', "a field named 'machine' exists"),
    ("steps/face-bar.md", "+++\nid", "id", "has no TOML head between two lines of +++"),
    ("steps/mark-seats.md", 'id = "mark-seats"', 'id = "mark-the-seats"', "the id of a step is the name of its file"),
    ("decisions/alignment.toml", "lathe.tool_side is front", "lathe.tool_side is top", "is one of front, rear; 'top' is none"),
    ("stops/sizes.toml", "bar.length > bar.length_limit", "bar.length > lathe.motor_power", "is in mm, 'lathe.motor_power' is not"),
    ("stops/safety.toml", 'if_unknown = "refuse"', 'if_unknown = "ignore"', "should be 'refuse' or 'pass-over'"),
    ("limits.toml", 'value = "500 mm"', 'value = "500 N"', "is a force, and a length is needed"),
    ("steps/measure-seat-again.md", "count = 6", "count = 5", "places abreast fill every row"),
]  # fmt: skip
# A row without a source ends the check: nothing can be said of what stands on it.
UNSOURCED: list[Planted] = [("cutting/boring_stock.csv", "common-practice", "", "the row names no source")]
# What the check of the whole finds.
UNSOUND: list[Planted] = [
    ("steps/face-bar.md", "Lock the saddle.", "Lock the saddel {{ bar.lenght }}.", "no fact is named 'bar.lenght'"),
    ("steps/face-bar.md", "Lock the saddle.", "Lock the saddle for 3 turns.", "a number is typed into a sentence"),
    ("steps/face-bar.md", "Lock the saddle.", "Lock " + "the good " * 10 + "saddle.", "has more than 20 words"),
    ("steps/face-bar.md", '"facing", "turning"', '"facing", "flying"', "no caution answers this activity"),
    ("steps/face-bar.md", '"turning-tool"', '"magic-tool"', "is not in needs.toml"),
    ("steps/face-bar.md", '"common-practice"', '"hearsay"', "source 'hearsay' is not in sources.toml"),
    ("routes/make-and-use-bar.toml", '"face-bar"', '"face-the-bar"', "names a step that is not there"),
    ("decisions/alignment.toml", '"lathe.tool_side is rear"', '"lathe.tool_side is front"', "both hold"),
    ("decisions/alignment.toml", '"lathe.tool_side is front"', '"lathe.tool_side is rear"', "no row holds"),
    ("decisions/sizes.toml", 'gives = "bar.length_by_share"', 'gives = "bar.mass"', "'bar.mass' is no size in mm"),
    ("decisions/sizes.toml", 'gives = "bar.length_by_share"', 'gives = ""', "'' is no size in mm"),
    ("decisions/sizes.toml", 'gives = "limit.bar_longest"', 'settles = true', "settles the question behind rows that are weighed"),
    ("decisions/sizes.toml", 'hit = "least"', 'hit = "greatest"', "came out"),
    ("decisions/bore.toml", 'expect = "bore-gauge"', 'expect = "caliper"', "says caliper, came out bore-gauge"),
    ("decisions/holding.toml", 'beside = ["between-centres"]', "beside = []", "says beside it nothing, came out between-centres"),
    ("stops/sizes.toml", "bar.length > bar.length_limit", "bar.length < bar.length_limit", "says fires, came out silent"),
    ("cautions/holding.toml", 'signal = "warning"', 'signal = "notice"', "signal word notice does not fit severity"),
    ("tools/morse_drills.csv", "morse-taper-tables", "morse-taper-table", "source 'morse-taper-table' is not in sources.toml"),
    ("cutting/speeds.csv", "reamer-maker-tables [high_m_min]", "reamer-maker-tables [high_m]", "no column is named 'high_m'"),
    ("cutting/speeds.csv", "reamer-maker-tables [high_m_min]", "reamer-maker-tables [note]", "no column is named 'note'"),
    ("cutting/speeds.csv", "reamer-maker-tables [high_m_min]", "reamer-maker-tables [low_m_min]", "'low_m_min' is named twice"),
    ("cutting/speeds.csv", "; reamer-maker-tables [high_m_min]", "", "column 'high_m_min' has no source"),
    ("cutting/speeds.csv", "reamer-maker-tables [high_m_min]", "reamer-maker-tables", "'reamer-maker-tables' says no columns"),
    ("cutting/speeds.csv", "drill-guide [low_m_min]", "[low_m_min]", "no source before [low_m_min]"),
    ("cutting/speeds.csv", "drill-guide [low_m_min]", "hearsay + drill-guide [low_m_min]", "source 'hearsay' is not in sources.toml"),
    ("cutting/speeds.csv", "drill-guide [low_m_min]", "drill-guide [low_m_min", "source 'drill-guide [low_m_min' is not in sources.toml"),
    ("cutting/speeds.csv", "drill-guide [low_m_min]", "drill-guide [low_m_min, tool]", "has not as many cells"),
    ("page.toml", "{{ lathe.dial_reads }}", "{{ lathe.dial_raeds }}", "no fact is named 'lathe.dial_raeds'"),
    ("drawings/making.toml", 'step = "drill-blank"', 'step = "drill-blanks"', "stands at a step that is not there"),
    ("drawings/making.toml", 'id = "bar-in-steady"', 'id = "bar-in-collet"', "two drawings have this id"),
    ("drawings/making.toml", '"chuck.jaw_depth"', '"chuck.label"', "no fact that is a number has this name"),
    ("drawings/making.toml", 'field = "size"', 'field = "sise"', "no list of records has this field"),
    ("drawings/making.toml", 'last = "last drill"', 'last = "drill 3"', "a number is typed into a drawing"),
    ("drawings/making.toml", 'title = "The hole grows"', 'title = "2 holes"', "a number is typed into a drawing"),
    ("drawings/making.toml", 'last = "last drill"', 'last = "{{ hole.last_drill }}"', "a label would lose this number"),
    ("drawings/making.toml", 'last = "last drill"', 'last = "{{ hole.last_dril }}"', "no fact is named 'hole.last_dril'"),
    ("steps/decide.md", "{{ opens clean-lathe }}", "{{ opens clean-lathes }}", "no step is named 'clean-lathes'"),
    ("steps/decide.md", "{{ opens clean-lathe }}", "{{ step level-feet }}", "has the step that points there, and none of these"),
    ("steps/go-back.md", 'at = ["mark-seats"]', 'at = ["mark-the-seats"]', "goes on at a step that is not there"),
    ("cutting/speeds.csv", "turn-rough,HSS,24,30", "turn-rough,HSS,24,80", "is faster than every printed speed"),
    ("cutting/printed_speeds.csv", "tool-steel-o1,O1", "tool-steel-o9,O1", "has no advised speeds, so nothing meets it"),
    ("cutting/printed_speeds.csv", "30.4,76.2,0.076,0.254", "30.4,76.2,,0.254", "one of feed_low_mm and feed_high_mm is empty"),
    ("cutting/printed_speeds.csv", "30.4,76.2,0.076", "80.4,76.2,0.076", "low_m_min is not above nothing and up to high_m_min"),
    ("cutting/printed_forces.csv", "stainless-416,group 12", "stainless-419,group 12", "has no cutting force, so nothing meets it"),
    ("materials/materials.csv", "2150,0.2,2600,0.2", "2100,0.2,2100,0.2", "gives 2100 MPa where 2150 are printed"),
    ("routes/rework.toml", '["rework.way"]', '["rework.ways"]', "its back is to tell a decision that is not there"),
]  # fmt: skip


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copy = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), copy)
    return copy


@pytest.mark.parametrize("faults", [*together(UNREADABLE), UNSOURCED, *together(UNSOUND)])
def test_a_fault_is_reported_with_its_file(folder: Path, faults: list[Planted]) -> None:
    for file, old, new, _ in faults:
        plant(folder, file, old, new)
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    for file, _, _, says in faults:
        told = [problem for problem in refused.value.problems if file in problem.where]
        assert any(says in f"{problem.said} {problem.wrong} {problem.do}" for problem in told), (file, says)


def test_a_rule_fault_names_its_line(folder: Path) -> None:
    path = folder / "stops" / "sizes.toml"
    lines = path.read_text(encoding="utf-8").splitlines()
    line = next(number for number, text in enumerate(lines, 1) if text == 'id = "bar-longer-than-the-lathe-takes"')
    path.write_text(
        "\n".join(lines).replace("bar.length > bar.length_limit", "bar.size > bar.length_limit"), encoding="utf-8"
    )
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    assert refused.value.problems[0].where == f"knowledge/stops/sizes.toml:{line}"


def test_two_faults_are_reported_at_once(folder: Path) -> None:
    for file, old, new, _ in (UNSOUND[0], UNSOUND[-1]):
        plant(folder, file, old, new)
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    assert len(refused.value.problems) >= 2


def test_any_change_of_the_knowledge_changes_its_version(folder: Path) -> None:
    before = knowledge_version(folder)
    assert before == knowledge_version(knowledge_folder())
    path = folder / "cutting" / "speeds.csv"
    path.write_text(path.read_text(encoding="utf-8") + "\n", encoding="utf-8")
    assert knowledge_version(folder) != before


def test_a_step_that_no_route_uses_is_dead(folder: Path) -> None:
    for path in (folder / "routes").glob("*.toml"):
        path.write_text(path.read_text(encoding="utf-8").replace('"mark-seats", ', ""), encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    assert "knowledge/steps/mark-seats.md:1: mark-seats: no route uses this step" in report(refused.value)


def test_an_empty_folder_brings_no_value_of_its_own(tmp_path: Path) -> None:
    with pytest.raises(KnowledgeInvalid):
        load_knowledge(tmp_path)


# Routes and what is said of them that do not fit the rest.
UNFIT: list[Told] = [
    # file, what stands there, what is written instead, the place that must be told, what must be said of it
    ("routes/use-bar.toml", 'id = "use-bar"', 'id = "use-the-bar"', 'facts.toml: [[fact]]\nname = "job.do"', "use-bar: is offered and there is no such route"),
    ("routes/use-bar.toml", 'id = "use-bar"', 'id = "use-the-bar"', 'facts.toml: [[fact]]\nname = "job.do"', "use-the-bar: is a route that nobody can choose"),
    ("stops/routes.toml", 'concerns = ["height"]', 'concerns = ["hight"]', 'stops/routes.toml: id = "indicator-too-coarse-for-the-height"', "concerns 'hight': no route has to do with 'hight'"),
    ("facts.toml", 'stands_for = "setover.travel"', 'stands_for = "setover.travels"', 'facts.toml: [[fact]]\nname = "job.tailstock_travel"', "stands for 'setover.travels', and no fact has this name"),
    ("notes.toml", 'concerns = ["chucked"]', 'concerns = ["chuked"]', 'notes.toml: id = "bands-cannot-be-judged"', "concerns 'chuked': no route has to do with 'chuked'"),
    ("page.toml", 'concerns = ["height"]', 'concerns = ["hight"]', "page.toml", "The tailstock stands below the spindle: concerns 'hight': no route has to do with 'hight'"),
    ("routes/chucked-bar-test.toml", 'held = "chuck"\nsteps', "steps", "routes/chucked-bar-test.toml:1", "relieve: the spindle turns at step 'true-piece' and nothing is said to hold the work"),
]  # fmt: skip
UNFIT_TOO: list[Told] = [
    ("facts.toml", 'stands_for = "setover.travel"', 'stands_for = "setover.ratio"', 'facts.toml: [[fact]]\nname = "job.tailstock_travel"', "stands for 'setover.ratio', which is of another kind"),
]  # fmt: skip


@pytest.mark.parametrize(("fault", "group"), each(UNFIT, UNFIT_TOO))
def test_a_route_that_does_not_fit_the_rest_is_refused(fault: Told, group: tuple[Told, ...]) -> None:
    is_told(refused_at_load, fault, group)
