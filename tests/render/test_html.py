"""The HTML page: complete, self-contained, in order, and readable by a machine that reads aloud."""

import itertools
import re

import pytest

from tailtrue.parts import Dials
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.numbers import read, show
from tailtrue.render.templates import css_string
from tailtrue.render.words import HEADINGS, STATES, WEAR, say

from .reading import Element, figures, read_page
from .sample import procedure
from .sample_pieces import LITERAL_LABEL

ORDER = (
    "facts",
    "findings",
    "who_may",
    "do_not_start",
    "stop_at_once",
    "after_a_stop",
    "emergency",
    "job_cautions",
    "needs",
    "conventions",
    "look_up",
    "trouble",
    "care",
    "cut_list",
    "signs",
    "cautions",
    "choices",
    "derivations",
    "sources",
    "control",
)


@pytest.fixture(params=["metric", "inch"])
def dials(request: pytest.FixtureRequest) -> Dials:
    system: Dials = request.param
    return system


@pytest.fixture
def tree(dials: Dials) -> Procedure:
    return procedure(dials)


@pytest.fixture
def page(tree: Procedure) -> Element:
    return read_page(to_html(tree))


def headings(page: Element) -> list[tuple[int, str]]:
    return [(int(one.tag[1]), " ".join(one.words.split())) for one in page.all() if re.fullmatch("h[1-6]", one.tag)]


def test_nothing_is_fetched(tree: Procedure) -> None:
    text = to_html(tree)
    assert not re.search(r"https?:|//[a-z]|@import|url\(|<script\s|<link|<img|<iframe|<object|\bon[a-z]+=", text)
    assert text.count("<script>") == text.count("</script>") == 1
    for attribute in ("src", "href"):
        targets = [one.attributes[attribute] for one in read_page(text).all() if attribute in one.attributes]
        assert all(target.startswith("#") for target in targets)


def test_every_link_leads_to_one_place_on_the_page(page: Element) -> None:
    names = [one.attributes["id"] for one in page.all() if "id" in one.attributes]
    assert len(names) == len(set(names))
    links = {one.attributes["href"] for one in page.all("a")}
    assert len(links) > 10
    assert links <= {f"#{name}" for name in names}
    labels = " ".join(one.attributes.get("aria-labelledby", "") for one in page.all()).split()
    assert set(labels) <= set(names)


def test_every_figure_is_printed_with_its_unit(tree: Procedure, page: Element, dials: Dials) -> None:
    words = "".join(page.words.split())
    all_figures = list(figures(tree.model_copy(update={"derivations": ()})))
    facts = {figure.fact for figure in all_figures}
    told = tuple(one for one in tree.derivations if one.fact in facts and one.weakest != "said")
    assert told
    all_figures += figures(tree.model_copy(update={"derivations": told}).derivations)
    assert len(all_figures) > 80
    for figure in all_figures:
        shown = read(figure, dials)
        pieces = (shown.whole,) if figure.fact != "align.table" else (shown.number, f"by,{shown.unit}")
        for piece in pieces:
            assert "".join(piece.split()) in words or is_in_a_range(page, shown.number, shown.unit), figure


def is_in_a_range(page: Element, number: str, unit: str) -> bool:
    """Whether the number stands in a row of settings that names the unit once for both ends."""
    for row in page.all("tr"):
        cells = [cell.words.split() for cell in row.children if isinstance(cell, Element)]
        if any(number in cell and [unit] == after for cell, after in itertools.pairwise(cells)):
            return True
    return False


def test_the_sections_stand_in_order(tree: Procedure, page: Element) -> None:
    second = [text for level, text in headings(page) if level == 2]
    known = [text for text in second if text in HEADINGS.values()]
    assert known == [HEADINGS[key] for key in ORDER]
    work = [text for text in second if text not in HEADINGS.values()]
    assert len(work) == len(tree.phases)
    for phase, text in zip(tree.phases, work, strict=True):
        assert text.startswith(f"{phase.number} {phase.title}")
    assert second.index(HEADINGS["conventions"]) < second.index(work[0])
    assert second.index(work[-1]) < second.index(HEADINGS["look_up"])


def test_headings_never_jump(page: Element) -> None:
    levels = [level for level, _ in headings(page)]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in itertools.pairwise(levels))


def test_cautions_stand_above_what_is_done_within_the_step(tree: Procedure, page: Element) -> None:
    sections = list(page.all("section", "step"))
    steps = [step for phase in tree.phases for step in phase.steps]
    assert [one.attributes["data-step"] for one in sections] == [step.id for step in steps]
    for section, step in zip(sections, steps, strict=True):
        words = section.words
        first_action = words.index(step.title)
        for caution in step.cautions:
            assert words.index(caution.signal.upper()) < words.index(caution.hazard) < first_action
            if not caution.again:
                assert words.index(caution.harm) < first_action
        assert len(list(section.all("div", "message"))) == len(step.cautions)


def test_phase_cautions_stand_above_the_first_step(tree: Procedure, page: Element) -> None:
    for section, phase in zip(page.all("section", "phase"), tree.phases, strict=True):
        for caution in phase.cautions:
            assert section.words.index(caution.hazard) < section.words.index(phase.steps[0].title)


def test_the_word_carries_the_level_and_notice_has_no_triangle(page: Element) -> None:
    words = list(page.all("div", "word"))
    assert {one.words.strip() for one in words} == {"DANGER", "WARNING", "CAUTION", "NOTICE"}
    for one in words:
        assert len(list(one.all("svg", "triangle"))) == (0 if one.words.strip() == "NOTICE" else 1)


def test_a_step_says_the_state_of_the_machine_and_has_a_box_per_piece(tree: Procedure, page: Element) -> None:
    steps = [step for phase in tree.phases for step in phase.steps]
    for section, step in zip(page.all("section", "step"), steps, strict=True):
        assert STATES[step.machine] in section.words
        ticks = [one for one in section.all("div", "boxes") for one in one.all("label", "tick")]
        assert [one.words.strip() for one in ticks] == list(step.boxes)
        names = [one.attributes["aria-label"] for one in section.all("input")]
        assert len(set(names)) == len(step.boxes)
        assert all(step.number in name for name in names)


def test_every_blank_is_a_line_to_write_on(tree: Procedure, page: Element) -> None:
    checks = [check for phase in tree.phases for step in phase.steps for check in step.checks]
    wanted = sum(blank.count for check in checks for blank in check.blanks)
    assert len([line for box in page.all("div", "check") for line in box.all("span", "line")]) == wanted


def test_every_caution_finding_and_need_of_the_tree_is_on_the_page(tree: Procedure, page: Element) -> None:
    words = " ".join(page.words.split())
    texts = [need.name for need in tree.needs] + [finding.text for finding in tree.findings] + [*tree.conventions]
    texts += [text for row in tree.if_it_goes_wrong for text in row[1:]] + [
        *tree.do_not_start,
        *tree.stop_at_once,
        *tree.care,
    ]
    for text in texts:
        for piece in text:
            if isinstance(piece, str):
                assert " ".join(piece.split()) in words
    for choice in tree.choices:
        for way in choice.alternatives:
            if way.verdict == "no" and not way.figures:
                continue
            assert way.name in words
            assert way.reason in words
            # What does not fit takes its reason alone; why it would be good stands where it may be taken.
            assert way.verdict in ("no", "unknown") or way.why in words
    chosen = [way for choice in tree.choices for way in choice.alternatives if way.verdict == "chosen"]
    for key in {key for way in chosen for key in way.sources}:
        assert all(source.title in words for source in tree.sources if source.id == key)


def test_what_to_do_is_not_taken_for_what_never_to_do(tree: Procedure, page: Element) -> None:
    table = next(page.all("table", "trouble"))
    heads = [one.words for one in next(table.all("thead")).all("th")]
    assert heads == ["What you see", "Do", "Do not"]
    rows = [[cell.words for cell in row.children if isinstance(cell, Element)] for row in next(table.all("tbody")).all("tr")]
    assert rows[2] == ["The result changes when the clamp is set", *(text[0] for text in tree.if_it_goes_wrong[2][1:])]


def test_what_is_worn_for_the_whole_job_is_said_once(tree: Procedure, page: Element) -> None:
    worn = {piece for caution in tree.job_cautions for piece in caution.protective_equipment}
    assert worn
    said_once = [one.words for one in page.all("p", "also") if one.words.startswith(WEAR)]
    assert len(said_once) == 1
    assert all(piece in said_once[0] for piece in worn)
    cautions = [caution for phase in tree.phases for step in phase.steps for caution in step.cautions]
    messages = [message for step in page.all("section", "step") for message in step.all("div", "message")]
    for message, caution in zip(messages, cautions, strict=True):
        for piece in caution.protective_equipment:
            assert (piece in message.words) is (piece not in worn)


def test_actions_given_before_run_on(tree: Procedure) -> None:
    step = next(step for phase in tree.phases for step in phase.steps if len(step.text) > 1)
    again = step.model_copy(update={"id": "again", "number": "1.99"})
    phase = tree.phases[0].model_copy(update={"steps": (step, again)})
    first, second = read_page(to_html(tree.model_copy(update={"phases": (phase,)}))).all("section", "step")
    assert len(list(first.all("p", "do"))) == len(step.text)
    assert len(list(second.all("p", "do"))) == 1
    told = [" ".join(" ".join(line.words for line in one.all("p", "do")).split()) for one in (first, second)]
    assert told[1] == f"As step {step.number}: {told[0]}"


def test_a_caution_that_comes_again_is_a_line_that_leads_to_its_full_text(tree: Procedure) -> None:
    phase = next(phase for phase in tree.phases if phase.steps[0].cautions)
    first, *rest = phase.steps[0].cautions
    line = first.model_copy(update={"again": "9.7", "protective_equipment": ("welding apron",)})
    step = phase.steps[0].model_copy(update={"cautions": (line, *rest)})
    changed = tree.model_copy(update={"phases": (phase.model_copy(update={"cautions": (), "steps": (step,)}),)})
    message = next(read_page(to_html(changed)).all("div", "again"))
    words = " ".join(message.words.split())
    assert words.startswith(f"{first.signal.upper()} {first.hazard}")
    assert words.endswith("Wear: welding apron. In full: 9.7.")
    assert " ".join(say(first.avoid[0], tree.title.dials).split()) in words.replace("\xa0", " ")
    assert first.harm not in words


def test_a_hold_names_who_releases_it_and_where_to_go_back_to(page: Element) -> None:
    holds = [" ".join(one.words.split()) for one in page.all("div", "hold")]
    assert any("Released by lathe keeper" in hold and "go back to step 3.1" in hold for hold in holds)


def test_tables_tell_what_their_cells_belong_to(page: Element) -> None:
    for cell in page.all("th"):
        assert cell.attributes.get("scope") in ("col", "row", "rowgroup")
    assert len(list(page.all("table"))) > 10
    for drawing in page.all("svg", "ink"):
        assert drawing.attributes["role"] == "img"
        assert all(list(drawing.all(tag)) for tag in ("title", "desc"))


def test_landmarks_and_language(page: Element) -> None:
    assert next(page.all("html")).attributes["lang"] == "en"
    for landmark in ("header", "nav", "main", "footer"):
        # Those of the script stand in a template until it runs.
        assert len([one for one in page.all(landmark) if "tool" not in one.attributes.get("class", "").split()]) == 1


def test_words_of_the_user_are_never_markup() -> None:
    name = 'Lathe "2" </style></title><b onclick=x>\\'
    page = read_page(to_html(procedure(machine=name)))
    assert name in page.words
    assert not any("onclick" in one.attributes for one in page.all())
    assert LITERAL_LABEL in page.words
    assert css_string(name) == '"Lathe \\22 2\\22  \\3c /style\\3e \\3c /title\\3e \\3c b onclick\\3d x\\3e \\5c "'


def test_the_look_up_table_says_leave_it_where_there_is_no_move(tree: Procedure, page: Element) -> None:
    table = next(next(page.all("section", "look-up")).all("table"))
    rows = [[cell.words.strip() for cell in row.children if isinstance(cell, Element)] for row in table.all("tr")][1:]
    assert len(rows) == len(tree.look_up.rows)
    assert [row[1] for row in rows if row[1] == "leave it"] == ["leave it"]
    words = next(page.all("section", "look-up")).words
    assert "toward you, the tool side" in words
    assert "away from you, the far side" in words


def test_no_verdict_is_claimed_when_none_is_possible(tree: Procedure) -> None:
    blind = tree.look_up.model_copy(update={"verdict_possible": False, "inside": None})
    words = " ".join(read_page(to_html(tree.model_copy(update={"look_up": blind}))).words.split())
    assert "cannot tell whether the tailstock is within its limit" in words
    assert "In limits at" not in words
    assert "In limits at" in " ".join(read_page(to_html(tree)).words.split())


def test_the_same_procedure_gives_the_same_bytes(tree: Procedure) -> None:
    assert to_html(tree) == to_html(tree.model_copy(deep=True))


def test_the_system_of_the_dials_leads(tree: Procedure, page: Element, dials: Dials) -> None:
    length = next(figure for figure in figures(tree) if figure.fact == "bar.length")
    lead = next(page.all("p", "lead")).words
    assert show(length, dials) in lead
    assert lead.index("mm (") < lead.index("in)") if dials == "metric" else lead.index("in (") < lead.index("mm)")
