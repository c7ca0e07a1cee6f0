"""The papers as documents: nothing open, whose and which they are, checklists, emergency, sources, the same twice."""

import re
import tomllib
from datetime import date

from shops import EXAMPLES
from tailtrue.advise import make_procedure
from tailtrue.render import to_html

from .made import MAKERS, SHIPPED, Job, job, said

MOST_LINES = 9
OPEN = re.compile(r"\{\{|\}\}|\{%|\bTBD\b|\bTODO\b|\bNaN\b|\bnan\b|\bNone\b(?! of)|\?\?\?|\bundefined\b")


def _shown(made: Job, kind: str) -> str:
    """The words of a paper without its style sheet."""
    words = "".join(one.words for one in made.page(kind).all("body"))
    for script in made.page(kind).all("script"):
        words = words.replace(script.words, "")
    return words


def test_v25_each_limit_says_what_happens_beyond_and_how_to_come_back(made: Job) -> None:
    """29 CFR 1910.119(f)(1)(ii), as a model: limits, consequence, way back."""
    for row in made.tree.sop.limits if made.tree.sop else ():
        assert all(said(text).strip() for text in (row.limit, row.beyond, row.back)), row.label
    told = {row.label: row for row in made.tree.limits}
    if any(step.machine == "turning" for _, step in made.steps):
        assert told
    words = " ".join(_shown(made, "procedure").split())
    for label, row in told.items():
        assert all(said(text).strip() for text in (row.limit, row.beyond, row.back)), label
        assert label in words
        for text in (row.beyond, row.back):
            for piece in text:
                assert not isinstance(piece, str) or " ".join(piece.split()) in words, label
    # A speed or a depth that a step sets "at most" is among them.
    set_at_most = {"chuck.speed_limit", "skim.depth"}
    for _, step in made.steps:
        for line in step.settings:
            facts = {piece.fact for piece in line.value if not isinstance(piece, str)} & set_at_most
            assert facts <= {piece.fact for row in told.values() for piece in row.limit if not isinstance(piece, str)}, (
                step.id
            )
    for seen, do, never in made.tree.if_it_goes_wrong:
        assert seen.strip()
        assert said(do).strip()
        assert said(never).strip()
    assert len(made.tree.if_it_goes_wrong) >= 4


def test_v34_nothing_is_left_open(made: Job) -> None:
    """House rule."""
    for kind in made.kinds:
        for words in (_shown(made, kind), made.markdown(kind)):
            found = OPEN.search(words)
            assert not found, (kind, words[max(0, found.start() - 60) : found.end() + 20])


def test_v35_every_paper_names_machine_number_revision_date_and_status(made: Job) -> None:
    """ISO 9001:2015, 7.5.2: identification. What stands on each page is in the style of the page, see the PDF tests."""
    title = made.tree.title
    for kind in made.kinds:
        html = made.html(kind)
        for part in (title.machine, title.number, title.revision, title.checksum):
            assert part in html, (kind, part)
        assert "counter(page)" in html, kind
    for kind in {"procedure", "card", "safety", "record"} & set(made.kinds):
        assert f"dated {title.date}" in made.html(kind), kind
        assert ("not approved" in made.html(kind)) == (title.status == "draft"), kind


def test_v36_approved_needs_names_and_a_day(made: Job) -> None:
    """ISO 9001:2015, 7.5.2: review and approval."""
    assert "Approved by" in _shown(made, "procedure")
    sop = made.tree.sop
    if sop:
        named = [one for one in sop.control.signatories if one.name]
        assert (sop.control.status == "approved") <= (len(named) >= 2 and any(one.day for one in named))
        assert sop.control.status == "approved" or sop.banners
    assert made.tree.safety_review.signatures
    if made.tree.record:
        labels = [entry.label for block in made.tree.record.blocks if block.id == "signatures" for entry in block.entries]
        assert {"status of this record", "approved by, day", "next review due"} <= set(labels)
        assert "next review due" in _shown(made, "record")


def test_v37_a_review_is_due_within_a_year_or_called_overdue(made: Job) -> None:
    """29 CFR 1910.119(f)(3), as a model: certified every year."""
    title, sop = made.tree.title, made.tree.sop
    made_on, again = date.fromisoformat(title.date), date.fromisoformat(title.review_due)
    assert (again - made_on).days <= 366
    for kind in ("procedure", "safety"):
        words = " ".join(_shown(made, kind).split())
        assert re.search(rf"Review due\s*{title.review_due}", words), kind
        assert ("REVIEW OVERDUE" in words) == title.overdue == (again < made_on), kind
        assert title.review_due in made.markdown(kind), kind
    if sop:
        issued, due = date.fromisoformat(sop.control.issued), date.fromisoformat(sop.control.review_due)
        assert (due - issued).days <= 366
        assert sop.control.overdue == (due < issued)
    assert any("until" in said(line.text).lower() for line in made.tree.safety_review.head)


def test_v38_a_sheet_says_what_it_holds_for_and_any_change_gives_another_mark(made: Job) -> None:
    """House rule: validity by machine, stock, tools and rules."""
    title = made.tree.title
    assert title.machine in title.valid_for
    assert re.search(r"stock and tools", title.valid_for)
    assert "Void when any of them changes" in title.valid_for
    assert re.fullmatch(r"[0-9a-f]{4}-[0-9a-f]{4}", title.checksum)
    assert title.knowledge_version


def test_v37_an_overdue_review_is_called_so_on_every_paper_that_has_one() -> None:
    """29 CFR 1910.119(f)(3), as a model."""
    tree = job(SHIPPED[0]).tree
    late = tree.model_copy(update={"title": tree.title.model_copy(update={"review_due": "2020-01-01", "overdue": True})})
    for kind in ("procedure", "safety"):
        for paper in MAKERS[kind]:
            assert "REVIEW OVERDUE" in paper(late), kind


def test_v53_nobody_but_a_walk_through_makes_a_sheet_approved() -> None:
    """HSE (GB), human factors, procedures."""
    tree = job(SHIPPED[0]).tree
    for walked, word in (("", "not approved"), ("second trainer, 2026-11-20", "approved")):
        title = tree.title.model_copy(update={"approver": "shop manager", "walked_through": walked})
        html = to_html(tree.model_copy(update={"title": title}))
        assert re.search(rf"dated {title.date}, {word}\b", html), word


def test_v35_what_is_superseded_says_so_on_every_paper_and_never_that_it_is_a_draft() -> None:
    """ISO 9001:2015, 7.5.3: a document that another replaced is kept from being used by mistake."""
    for name in SHIPPED:
        tree = job(name).tree
        title = tree.title.model_copy(update={"stated": "superseded"})
        old = tree.model_copy(update={"title": title})
        for kind in {"procedure", "card", "safety", "record"} & set(job(name).kinds):
            html, markdown = (paper(old) for paper in MAKERS[kind])
            assert "SUPERSEDED" in html, (name, kind)
            assert f"dated {title.date}, superseded" in html, (name, kind)
            assert "uperseded" in markdown, (name, kind)
            assert not re.search(r"\bDRAFT\b|[Nn]ot approved", html + markdown), (name, kind)


def test_v38_marks_of_unlike_jobs_differ() -> None:
    """House rule: two jobs that differ in one word have two marks."""
    marks = [job(name).tree.title.checksum for name in SHIPPED]
    assert len(set(marks)) == len(marks)


def test_v39_the_emergency_is_prepared_for_and_what_is_missing_is_boxed(made: Job) -> None:
    """IEC/IEEE 82079-1:2019: abnormal and emergency situations."""
    lines = {line.id: line for line in made.tree.safety_review.emergency}
    assert {"phone", "address", "first-aid-kit", "extinguisher", "way-out"} <= set(lines)
    for line in lines.values():
        assert line.answer or (line.blanks and line.must), line.id
    words = " ".join(_shown(made, "procedure").split())
    for line in lines.values():
        assert said(line.text) in words, line.id
    places = next(one for one in made.page("procedure").all("section", "stop") if "In an emergency" in one.words)
    assert len(list(places.all("span", "line"))) == sum(len(line.blanks) for line in lines.values() if line.answer is None)
    assert ("Fill in before work" in places.words) == any(line.answer is None for line in lines.values())
    seen = " ".join(f"{one} {said(do)}" for one, do, _ in made.tree.if_it_goes_wrong)
    assert "Call the emergency number" in seen
    assert "isolate" in seen.lower()
    if made.tree.sop:
        told = " ".join(f"{row.seen} {said(row.do)}" for row in made.tree.sop.emergency).lower()
        for part in ("stop", "isolate", "call", "burn", "bleeding", "extinguisher"):
            assert part in told, part


def test_v40_after_a_stop_nobody_resumes_in_the_middle_of_a_cut(made: Job) -> None:
    """29 CFR 1910.119(f)(1)(i)(G), as a model, and IEC/IEEE 82079-1:2019: start-up after an emergency stop."""
    words = made.page("procedure").words
    assert words.index("Stop at once if") < words.index("After a stop") < words.index("Cautions for the whole job")
    restart = " ".join(said(line) for line in made.tree.after_a_stop)
    turns = any(step.machine == "turning" for _, step in made.steps)
    # Where nothing turns, power stays off and no cut is begun anew.
    order = (
        ("stands still", "Isolate", "tool clear", "in neutral", "Bring power back", "start check", "one line earlier")
        if turns
        else ("Clear hands", "Isolate", "Mark the line", "what stopped the work", "one line earlier", "Power stays off")
    )
    places = [restart.index(part) for part in order]
    assert places == sorted(places)
    assert ("begin that cut from its start" in restart) == turns
    told = " ".join(said(line) for line in made.tree.conventions)
    assert re.search(r"IF you are called away, THEN stop the spindle, mark the line, and begin again one line earlier", told)
    for _, do, never in made.tree.if_it_goes_wrong:
        assert not re.search(r"\b[Cc]arry on\b|\b[Cc]ontinue the cut\b", said(do)), do
        assert said(never).strip()


def test_v41_what_is_needed_stands_before_the_first_step_and_making_safe_at_the_end(made: Job) -> None:
    """DITA 1.3 task: prerequisites, steps, result, what comes after."""
    words = _shown(made, "procedure")
    first = words.index(next(made.page("procedure").all("section", "step")).words)
    for need in made.tree.needs[:5]:
        name = max((piece for piece in need.name if isinstance(piece, str)), key=len)
        assert words.index(name) < first
    assert made.tree.phases[0].steps[0].machine == "isolated"
    last = list(made.steps)[-1][1]
    assert last.machine != "turning"


def test_v43_a_checklist_wants_values_is_short_and_ends_in_words(made: Job) -> None:
    """Degani and Wiener, NASA CR-177549, 1990; nine lines from memory."""
    if made.tree.card:
        start = made.tree.card.start
        assert 1 <= len(start.lines) <= MOST_LINES
        assert start.ends_with.lower() == "list complete"
        shown = " ".join(_shown(made, "card").split())
        places = [shown.find(f"{line.item} {line.state}") for line in start.lines]
        assert -1 not in places
        assert places == sorted(places)
        assert shown.find(start.ends_with) > places[-1]
        assert made.tree.card.ends_with.lower() == "list complete"
        assert not {line.state.lower() for line in start.lines} & {"", "ok", "set", "checked", "done", "yes"}
    for block in made.tree.safety_review.checks:
        assert 1 <= len(block.lines) <= MOST_LINES, block.title
        assert block.ends_with.strip().lower() == "list complete"
        assert block.ends_with in _shown(made, "safety")
        for line in block.lines:
            assert line.blanks, line.id
            assert not re.fullmatch(r"(?:ok|set|checked|done|yes)", line.blanks[0].label.lower()), line.id


def test_v44_the_gravest_lines_have_no_way_round(made: Job) -> None:
    """Degani and Wiener, NASA CR-177549, 1990: critical items."""
    lines = [line for block in made.tree.safety_review.checks for line in block.lines]
    assert any(line.killer for line in lines)
    assert not any(line.killer and line.not_applicable for line in lines)


def test_v48_every_drawing_sign_and_place_has_words(made: Job) -> None:
    """WCAG 2.2, 1.1.1: text for what is not text."""
    for kind in made.kinds:
        for svg in made.page(kind).all("svg"):
            known = (
                svg.attributes.get("aria-hidden") == "true"
                or svg.attributes.get("aria-label")
                or svg.attributes.get("aria-labelledby")
            )
            assert known or any(True for _ in svg.all("title")), (kind, svg.attributes)
        for image in made.page(kind).all("img"):
            assert image.attributes.get("alt"), kind
        for line in made.page(kind).all("span", "line"):
            assert line.attributes.get("aria-label") or kind != "procedure", kind
    codes = {sign.code: sign.words for sign in made.tree.signs}
    for caution in made.cautions:
        assert set(caution.signs) <= set(codes)
    assert all(words.strip() for words in codes.values())


def test_v50_the_risk_table_rates_before_and_after_and_holds_what_stays_high(made: Job) -> None:
    """ISO 12100:2010 and MIL-STD-882E: design before instruction; instruction lowers no severity."""
    for row in made.tree.safety_review.hazards:
        for rated in (row.before, row.after):
            assert rated.score == rated.severity * rated.likelihood
            assert 1 <= rated.severity <= 5
            assert 1 <= rated.likelihood <= 5
        assert row.after.severity == row.before.severity
        assert row.after.likelihood <= row.before.likelihood
        if row.after.band in {"high", "extreme"}:
            assert row.held is not None, row.caution


def test_v51_every_source_is_listed_and_no_paper_claims_to_comply(made: Job) -> None:
    """House rule; terms of use of ASD-STE100."""
    listed = {source.id for source in made.tree.sources}
    for caution in made.cautions:
        assert {key.partition(":")[0] for key in caution.sources} <= listed, caution.id
    for kind in made.kinds:
        assert not re.search(
            r"(?<!not )\b(?:complies|compliant|in compliance|certified to|conforms to)\b", _shown(made, kind)
        ), kind


def test_v52_the_same_job_gives_the_same_bytes() -> None:
    """House rule: no clock is read."""
    for name in SHIPPED[:3]:
        again = make_procedure(EXAMPLES / f"{name}.toml")
        assert again == job(name).tree
        assert to_html(again) == job(name).html("procedure")


def test_v53_there_is_a_place_to_record_that_somebody_walked_it_through(made: Job) -> None:
    """HSE (GB), human factors, procedures: involve the users. The walk itself is for people; here is where they write it."""
    sop = made.tree.sop
    if sop:
        roles = [one.role for one in sop.control.signatories]
        if made.tree.title.owner:
            # An owner alone has nobody else to review: one line says that the same person walked it through.
            (role,) = roles
            assert "Owner" in role
            assert "walked it through" in role
        else:
            assert {"Author", "Technical review", "Safety review", "Approval"} == set(roles)
        assert "alked through" in _shown(made, "sop")
        assert (sop.control.status == "approved") <= bool(made.tree.title.walked_through)
    words = _shown(made, "procedure")
    walked = next(row for row in made.page("procedure").all("tr", "by-hand") if "Walked through" in row.words)
    assert "the usual way and one fault, before approval" in walked.words
    assert any(True for _ in walked.all("span", "line")) or made.tree.title.walked_through in walked.words
    assert words.index("Walked through") < words.index("Approved by")


def test_v53_only_a_job_of_an_owner_alone_at_home_does_without_other_reviewers() -> None:
    """Read from the files of the jobs: at home, experienced, of age. Everybody else has others to answer to."""
    found = {}
    for name in SHIPPED:
        said_so = tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))["job"]
        alone = (said_so["place"], said_so["operator"], said_so["minor"]) == ("home", "experienced", False)
        assert job(name).tree.title.owner == alone, name
        found[name] = alone
    assert set(found.values()) == {True, False}


def test_the_title_block_tells_of_its_making_or_leaves_a_place(made: Job) -> None:
    """ISO 9001:2015, 7.5.2 and 7.5.3: format, change control, distribution; a place to write where nobody said."""
    title = made.tree.title
    block = next(made.page("procedure").all("table", "control"))
    front = " ".join(next(made.page("procedure").all("table", "identity")).words.split())
    words = " ".join(block.words.split())
    for needed in (title.number, title.revision, title.status, title.date, title.checksum, title.operator, title.valid_for):
        assert needed in front
    assert not list(next(made.page("procedure").all("table", "identity")).all("span", "line"))
    stock = [need for need in made.tree.needs if need.kind == "stock"]
    assert all(" ".join(piece.split()) in front for need in stock for piece in need.name if isinstance(piece, str))
    for said_there in (
        title.generator,
        title.inputs,
        title.knowledge_version,
        title.use_level,
    ):
        assert said_there
        assert said_there in words
    labels = {entry.label for entry in title.control}
    assert {"Lathe number", "Takes the place of", "Kept at", "Micrometers due"} <= labels
    assert ("Retaining compound, use by" in labels) <= ("compound" in made.page("procedure").words)
    for one in title.changes:
        assert one.what in words
        assert one.why in words
    places = len(list(block.all("span", "line")))
    open_lines = sum(1 for entry in title.control if entry.value is None) + (not title.changes)
    assert places >= open_lines + 2  # done by, on
    assert words.count("Changed") == 1
