"""The standing procedure on paper: eight pages at most, each with its identity; with others, the roster alone on the last."""

import re
from io import BytesIO

import pytest
from markdown_it import MarkdownIt
from pypdf import PdfReader

from chromium import printed
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render.pdf import to_pdf
from tailtrue.render.sop_page import HEADS, WORDS, sop_of, to_sop_html, to_sop_markdown
from tailtrue.render.words import say, sentence
from tailtrue.shop_sheet import Change

from .reading import read_page
from .test_pdf import EXAMPLES, POINTS, on_paper, squeezed, strokes, words

BODY_POINTS = 10.0
# An owner alone at home trains, supervises and releases nobody; a shop with others must have all of these.
ALONE = "quarry-road"
FOR_OTHERS = ("training", "supervision", "who", "acknowledgement", "roster")


@pytest.fixture(scope="module", params=["fernhill", ALONE])
def name(request: pytest.FixtureRequest) -> str:
    found: str = request.param
    return found


@pytest.fixture(scope="module")
def tree(name: str) -> Procedure:
    return make_procedure(EXAMPLES / name / "job.toml")


@pytest.fixture(scope="module", params=["maker", "browser"])
def sheet(request: pytest.FixtureRequest, tree: Procedure, tmp_path_factory: pytest.TempPathFactory) -> PdfReader:
    page = to_sop_html(tree)
    if request.param == "maker":
        return PdfReader(BytesIO(to_pdf(page, tree.title)))
    folder = tmp_path_factory.mktemp("sop")
    (folder / "sop.html").write_text(page, encoding="utf-8")
    return printed(folder / "sop.html", folder / "sop.pdf")


def with_control(tree: Procedure, **changes: object) -> Procedure:
    sop = sop_of(tree)
    block = sop.control.model_copy(update=changes)
    return tree.model_copy(update={"sop": sop.model_copy(update={"control": block})})


def test_it_fills_six_to_eight_pages_of_the_paper_asked_for(tree: Procedure, sheet: PdfReader) -> None:
    assert 6 <= len(sheet.pages) <= 8
    for page in sheet.pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(POINTS[tree.title.paper], abs=1)


@pytest.mark.parametrize("name", ["fernhill", "quarry-road"])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_either_paper_takes_eight_pages_at_most(name: str, paper: str) -> None:
    tree = on_paper(make_procedure(EXAMPLES / name / "job.toml"), paper)
    assert len(PdfReader(BytesIO(to_pdf(to_sop_html(tree), tree.title))).pages) <= 8


def test_every_page_says_which_machine_paper_revision_status_and_page(tree: Procedure, sheet: PdfReader) -> None:
    title, block = tree.title, sop_of(tree).control
    for number, page in enumerate(sheet.pages, start=1):
        text = words(page)
        assert f"{title.machine}, {title.shop}" in text
        assert f"{block.id} rev {block.revision} DRAFT" in text
        assert f"checksum {title.checksum}, review due {block.review_due}" in text
        assert f"{number} / {len(sheet.pages)}" in text


def test_who_may_use_the_lathe_stands_before_all_else(tree: Procedure) -> None:
    sop, dials = sop_of(tree), tree.title.dials
    first = say(sop.first[0].text, dials)
    page = to_sop_html(tree)
    assert page.index(f'<p class="first">{first}</p>') < page.index('class="banner"') < page.index('id="control"')
    markdown = to_sop_markdown(tree)
    assert markdown.index(first) < markdown.index("DRAFT")


def test_what_is_worn_and_not_worn_has_its_signs(tree: Procedure) -> None:
    rows = next(iter(read_page(to_sop_html(tree)).all("table", "worn"))).all("tr")
    drawn = [[one.attributes["aria-label"] for one in row.all("span", "shape")] for row in rows]
    worn = sop_of(tree).wear
    assert [[label[:4] for label in labels] for labels in drawn[1:]] == [[*row.signs, *row.never_signs] for row in worn]
    assert all(len(label) > 5 for labels in drawn for label in labels)


def test_the_last_page_hangs_at_the_lathe_with_the_roster_and_an_owner_alone_has_none(name: str, sheet: PdfReader) -> None:
    if name == ALONE:
        assert all("roster" not in words(page).lower() for page in sheet.pages)
        assert all(HEADS["roster"] not in words(page) for page in sheet.pages)
        return
    # With it what a signature says, and the comments; nothing else.
    heads = [head for part, head in HEADS.items() if part not in ("roster", "acknowledgement")]
    last = words(sheet.pages[-1])
    assert HEADS["roster"] in last
    assert HEADS["acknowledgement"] in last
    assert "Comments on this paper" in last
    assert not [head for head in heads if re.search(rf"(?<!\w){re.escape(head)}(?!\w)", last)]
    assert all(HEADS["roster"] not in words(page) for page in sheet.pages[:-1])


def test_nothing_is_lost_on_paper(tree: Procedure, sheet: PdfReader) -> None:
    sop, dials = sop_of(tree), tree.title.dials
    text = squeezed("".join(page.extract_text() for page in sheet.pages))
    lines = (*sop.scope, *sop.training, *sop.supervision, *sop.isolation, *sop.waste, *sop.records, *sop.acknowledgement)
    for line in (*lines, *sop.before, *sop.during, *sop.after, *sop.forbidden, *sop.banners):
        assert squeezed(say(line.text, dials)) in text, line.id
    for line in sop.hazard_note:
        assert squeezed(say(line.text, dials)) in text, line.id
    for hazard in sop.hazards:
        assert squeezed(sentence(hazard.hazard)) in text
    for term in sop.glossary:
        assert squeezed(f"{term.term} {say(term.meaning, dials)}") in text
    for form in sop.forms:
        assert squeezed(form.title) in text


def test_sentences_are_printed_at_ten_points_or_more(sheet: PdfReader) -> None:
    for page in sheet.pages:
        top, bottom = float(page.mediabox.height) - 57, 57
        small = {
            (text, size)
            for text, _, y, size in strokes(page)
            if text.strip() and bottom < y < top and size < BODY_POINTS - 0.1
        }
        assert not small


def test_the_mark_of_a_draft_stands_on_every_page_and_on_no_page_of_an_approved_paper(tree: Procedure) -> None:
    mark = '<div class="standing '
    assert mark in to_sop_html(tree)
    assert mark in to_sop_html(with_control(tree, status="superseded"))
    assert mark not in to_sop_html(with_control(tree, status="approved"))


def test_the_mark_is_printed_and_not_only_written_on_the_page(tree: Procedure, sheet: PdfReader) -> None:
    # Once in the running head and once across the page.
    assert all(words(page).count("DRAFT") == 2 for page in sheet.pages)
    approved = PdfReader(BytesIO(to_pdf(to_sop_html(with_control(tree, status="approved")), tree.title)))
    assert all("DRAFT" not in words(page) and "APPROVED" in words(page) for page in approved.pages)


def test_a_sign_never_stands_without_its_words(tree: Procedure) -> None:
    meant = {sign.code: sign.words for sign in sop_of(tree).signs}
    found = [" ".join(element.words.split()) for element in read_page(to_sop_html(tree)).all("span", "sign")]
    assert found == [f"{code} {meant[code]}" for hazard in sop_of(tree).hazards for code in hazard.signs]


def test_every_table_has_a_head_that_repeats_and_rows_that_do_not_split(tree: Procedure) -> None:
    page = read_page(to_sop_html(tree))
    for table in page.all("table", "list"):
        assert len(list(table.all("thead"))) == 1
    css = next(page.all("style")).words
    assert re.search(r"\.list tr[^{]*\{ break-inside: avoid; \}", css)
    assert "display: table-header-group" in css


def test_places_to_write_are_eight_millimetres_high_and_the_roster_of_a_shop_with_others_has_fifteen(
    name: str, tree: Procedure
) -> None:
    page = read_page(to_sop_html(tree))
    rosters = list(page.all("table", "roster"))
    assert len(rosters) == (0 if name == ALONE else 1)
    for roster in rosters:
        assert len(list(roster.all("td"))) >= 15 * len(WORDS["roster"])
    css = next(page.all("style")).words
    heights = re.findall(r"\.(?:grid|roster)[^{}]*tr[^{}]*\{[^}]*?height: ([\d.]+)mm", css)
    assert len(heights) >= 3
    assert all(float(height) >= 8 for height in heights)


def test_what_the_shop_wrote_is_text_and_never_markup(tree: Procedure) -> None:
    said = '<script>alert("x")</script>'
    html = to_sop_html(with_control(tree, changes=(Change(what=said, why=said),), id=said))
    assert "<script" not in html
    assert "&lt;script&gt;" in html


def test_it_claims_no_compliance(tree: Procedure) -> None:
    for text in (to_sop_html(tree), to_sop_markdown(tree)):
        assert "follows the ideas of" in text
        assert not re.search(r"\b(?:complies|compliant|conforms|certified)\b", text)


def test_an_owner_alone_signs_once_and_a_shop_with_others_in_four_roles(name: str, tree: Procedure) -> None:
    roles = [one.role for one in sop_of(tree).control.signatories]
    if name == ALONE:
        (role,) = roles
        # One line for all that others would sign: who wrote it, who tried it at the lathe, who puts it in force.
        assert all(part in role for part in ("Owner", "wrote", "walked it through", "approves"))
    else:
        assert roles == ["Author", "Technical review", "Safety review", "Approval"]
    rows = [line for line in to_sop_markdown(tree).splitlines() if line.startswith(tuple(f"| {role} |" for role in roles))]
    assert len(rows) == len(roles)
    page = " ".join(read_page(to_sop_html(tree)).words.split())
    assert all(role in page for role in roles)


def test_markdown_says_the_same_in_tables_that_readers_can_read(name: str, tree: Procedure) -> None:
    text = to_sop_markdown(tree)
    sop, dials = sop_of(tree), tree.title.dials
    html = MarkdownIt("commonmark").enable("table").render(text)
    heads = re.findall(r"<h2>(.*?)</h2>", html)
    wanted = {part: head for part, head in HEADS.items() if name != ALONE or part not in FOR_OTHERS}
    at_lathe = [wanted.pop(part) for part in ("acknowledgement", "roster") if part in wanted]
    forms = [[form.title for form in sop.forms if form.at_lathe == here] for here in (False, True)]
    assert heads == [*wanted.values(), *forms[0], *at_lathe, *forms[1]]
    titles = [" ".join(one.words.split()) for one in read_page(to_sop_html(tree)).all("h2")]
    assert {HEADS[part] in titles for part in FOR_OTHERS} == {name != ALONE}
    told = squeezed(re.sub(r"<[^>]+>", "", html).replace("&quot;", '"').replace("&amp;", "&"))
    for row in sop.limits:
        for cell in (row.limit, row.beyond, row.back):
            assert squeezed(say(cell, dials)) in told
    for line in (*sop.before, *sop.during, *sop.after, *sop.forbidden, *sop.banners):
        assert squeezed(say(line.text, dials)) in told
    assert html.count("<table>") == len(re.findall(r"^\| ---", text, re.MULTILINE))


def test_the_same_tree_makes_the_same_pages(tree: Procedure) -> None:
    assert to_sop_html(tree) == to_sop_html(tree)
    assert to_sop_markdown(tree) == to_sop_markdown(tree)


def test_a_tree_without_one_makes_none(tree: Procedure) -> None:
    with pytest.raises(LookupError, match="no standing procedure"):
        to_sop_html(tree.model_copy(update={"sop": None}))


def test_who_may_do_which_step_is_told_where_others_are_and_an_owner_alone_has_no_such_table(
    name: str, tree: Procedure
) -> None:
    tables = list(read_page(to_sop_html(tree)).all("table", "matrix"))
    heads = [" ".join(cell.words.split()) for table in tables for cell in table.all("th")]
    assert bool(tables) == (name != ALONE)
    assert ("Staff only" in heads) == (name != ALONE)


def test_a_step_that_not_everybody_may_do_stands_by_number_and_title(tree: Procedure) -> None:
    rows = [
        " ".join(row.words.split())
        for table in read_page(to_sop_html(tree)).all("table", "matrix")
        for row in table.all("tr")
    ]
    if rows:
        for phase in sop_of(tree).who:
            row = next(words for words in rows if words.startswith(f"{phase.phase} {phase.title}"))
            assert all(f"{step.number} {step.title}" in row for step in (*phase.supervised, *phase.staff))
            assert ("every other step" in row) == bool(phase.any and (phase.supervised or phase.staff))


def test_changes_stand_in_rows_with_their_reason(tree: Procedure) -> None:
    changes = (Change(what="speed lowered", why="new chuck"), Change(what="guard", why="it was cracked"))
    page = read_page(to_sop_html(with_control(tree, changes=changes)))
    rows = [" ".join(row.words.split()) for row in next(iter(page.all("table", "changes"))).all("tr")]
    assert rows[1:] == ["speed lowered.new chuck.", "guard.it was cracked."]


def test_the_foot_of_every_page_says_by_whom_and_when_it_was_last_reviewed(tree: Procedure) -> None:
    assert "last reviewed not yet" in to_sop_html(tree)
    assert "last reviewed second trainer, 2026-03-30" in to_sop_html(
        with_control(tree, last_reviewed=("second trainer, 2026-03-30",))
    )


def test_there_is_a_place_for_a_photo_that_names_the_lathe(tree: Procedure) -> None:
    page = read_page(to_sop_html(tree))
    assert tree.title.machine in next(iter(page.all("div", "photo"))).words
