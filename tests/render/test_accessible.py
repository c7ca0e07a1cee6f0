"""Every page in a real browser: what axe-core finds, contrast, colour, headings, heads of tables, what a PDF carries."""

import itertools
import re
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from tailtrue.advise import advise, make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.explain_page import explain_html
from tailtrue.render.pdf import to_pdf
from tailtrue.render.record_page import to_record_html
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sop_page import to_sop_html
from tailtrue.render.tag_page import set_over_html, tags_html
from tailtrue.truing.explain import explain
from tailtrue.truing.setover import judge_setover, read_taper
from tailtrue.truing.tag import machine_tag

from .on_screen import CONTRAST, LINKS, NARROW, TABLET, coloured, faults, sideways, walk_to, weak
from .reading import read_page

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
TAPER = {
    "fernhill": {"work_length": "150 mm", "hole_depth": "4 mm", "small_end": "tailstock", "ratio": "1:50"},
    "quarry-road": {"work_length": "6 in", "hole_depth": "0.15 in", "small_end": "tailstock", "ratio": "1:50"},
}


def pages_of(name: str) -> dict[str, str]:
    job = EXAMPLES / name / "job.toml"
    tree, case = make_procedure(job), advise(job).case
    return {
        "procedure": to_html(tree),
        "card": to_card_html(tree),
        "sop": to_sop_html(tree),
        "record": to_record_html(tree),
        "safety": to_safety_html(tree),
        "tags": tags_html([machine_tag(case, None)]),
        "set-over": set_over_html(judge_setover(case, read_taper(TAPER[name], system="", job={})).tag),
        "explain": explain_html(explain(case)),
    }


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def pages(request: pytest.FixtureRequest) -> dict[str, str]:
    return pages_of(request.param)


@pytest.fixture
def shown(browser: Browser, tmp_path: Path) -> Iterator[Callable[..., Page]]:
    contexts = []

    def show(text: str, **settings: Any) -> Page:
        context = browser.new_context(viewport=settings.pop("viewport", TABLET), **settings)
        contexts.append(context)
        page = context.new_page()
        (tmp_path / "page.html").write_text(text, encoding="utf-8")
        page.goto((tmp_path / "page.html").as_uri())
        return page

    yield show
    for context in contexts:
        context.close()


def test_no_page_has_a_serious_fault_weak_letters_or_a_colour(
    request: pytest.FixtureRequest, pages: dict[str, str], shown: Callable[..., Page]
) -> None:
    one_example = request.node.callspec.params["pages"] == "fernhill"
    for name, text in pages.items():
        page = shown(text)
        # The slow rules on one example, whose styles are those of the other; of them contrast not on the longest paper,
        # where it would take as long as all the rest.
        slow = {"procedure": [LINKS]}.get(name, [LINKS, CONTRAST]) if one_example else []
        assert faults(page, *slow) == [], name
        assert weak(page) == [], name
        assert coloured(page) == [], name


@pytest.mark.parametrize("viewport", [TABLET, NARROW], ids=["tablet", "narrow"])
def test_no_step_has_a_serious_fault_or_weak_letters(
    request: pytest.FixtureRequest, pages: dict[str, str], shown: Callable[..., Page], viewport: dict[str, int]
) -> None:
    # Steps are made by the same templates in each example, so the checker goes through those of one.
    checked = request.node.callspec.params["pages"] == "fernhill"
    page = shown(pages["procedure"], viewport=viewport)
    page.click("[data-do=begin]")
    assert not checked or faults(page) == []
    for step in ("1.2", "5.17", "5.18", "5.23", "9.4", "9.8", "10.5"):
        walk_to(page, step)
        if step == "9.8":
            page.click("[data-do=stops]")
            page.click("[data-do=table]")
        assert not checked or faults(page) == [], step
        assert weak(page) == [], step
        assert sideways(page) == 0, step


def test_the_measure_of_contrast_sees_weak_letters(shown: Callable[..., Page]) -> None:
    page = shown(
        '<!doctype html><title>t</title><p style="color:#767676">words 1</p><p style="color:#999">words</p>'
        '<p style="color:#767676">words</p><p style="color:#fff;background:#000">9</p>'
        '<div style="background:#999"><p>dark<p style="color:#fff">light<p style="color:#fff;background:#000">on black</div>'
    )
    assert [one.partition(":")[0] for one in weak(page)] == ["words 1", "words", "light"]


def test_the_slow_rules_are_kept_where_they_are_named(shown: Callable[..., Page]) -> None:
    page = shown(
        "<!doctype html><html lang=en><title>t</title><main><h1>t</h1>"
        "<p style='color:#999'>words <a href='#a' style='color:#989898;text-decoration:none'>link</a> words</p><p id=a>end"
        "<ul><li>a</ul><button>go</button><table><tr><th scope=col>h<tr><td>d</table></main>"
    )
    assert faults(page) == []
    assert {one.partition(":")[0] for one in faults(page, LINKS)} == {LINKS}
    assert {one.partition(":")[0] for one in faults(page, CONTRAST, LINKS)} == {CONTRAST, LINKS}


def test_the_measure_of_colours_sees_each_of_them(shown: Callable[..., Page]) -> None:
    page = shown(
        "<!doctype html><p style='color:#a00'>a<p style='border-left:1px solid #00f'>b<svg><path fill='#0a0'/></svg>"
    )
    assert {" ".join(one.split()[:2]) for one in coloured(page)} >= {"P color", "P borderLeftColor", "path fill"}


def test_a_step_looks_the_same_to_who_sees_no_colour(pages: dict[str, str], shown: Callable[..., Page]) -> None:
    page = shown(pages["procedure"])
    page.click("[data-do=begin]")
    walk_to(page, "1.2")
    assert coloured(page) == []
    plain = page.screenshot()
    page.context.new_cdp_session(page).send("Emulation.setEmulatedVisionDeficiency", {"type": "achromatopsia"})
    assert page.screenshot() == plain


def test_headings_make_a_tree_without_jumps(pages: dict[str, str]) -> None:
    for name, text in pages.items():
        levels = [int(one.tag[1]) for one in read_page(text).all() if re.fullmatch("h[1-6]", one.tag)]
        if name == "tags":
            assert levels == []  # each tag is cut out and hangs alone
            continue
        assert levels.count(1) >= 1
        assert levels[0] == 1, name
        assert all(later <= earlier + 1 for earlier, later in itertools.pairwise(levels)), name


def test_language_title_heads_of_tables_and_words_for_drawings(pages: dict[str, str]) -> None:
    for name, text in pages.items():
        page = read_page(text)
        assert next(page.all("html")).attributes["lang"] == "en"
        assert len(next(page.all("title")).words.strip()) > 10, name
        assert all(head.attributes.get("scope") in ("row", "col", "rowgroup", "colgroup") for head in page.all("th")), name
        for drawing in page.all("svg"):
            told = drawing.attributes.get("role") == "img" and (
                any(drawing.all("title")) or drawing.attributes.get("aria-label")
            )
            assert told or drawing.attributes.get("aria-hidden") == "true", name
        assert not list(page.all("img"))


def tree_of_tags(file: PdfReader) -> set[str]:
    """The kinds of element in the structure of a PDF, however deep."""
    root = file.trailer["/Root"].get_object()
    if "/StructTreeRoot" not in root:  # type: ignore[operator]
        return set()
    kinds: set[str] = set()
    waiting: list[Any] = [root["/StructTreeRoot"]]  # type: ignore[index]
    while waiting:
        node = waiting.pop().get_object()
        if isinstance(node, list):
            waiting += node
        elif hasattr(node, "get"):
            kinds.add(str(node.get("/S", "")))
            if "/K" in node:
                waiting.append(node["/K"])
    return kinds


def test_a_browser_prints_a_tagged_file_and_the_extra_does_not(shown: Callable[..., Page]) -> None:
    tree: Procedure = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    text = to_html(tree)
    browsers = PdfReader(BytesIO(shown(text).pdf(prefer_css_page_size=True, tagged=True, outline=True)))
    assert {"/H1", "/H2", "/H3", "/Table", "/TH", "/TD", "/L", "/Figure"} <= tree_of_tags(browsers)
    assert str(browsers.trailer["/Root"]["/Lang"]).startswith("en")  # type: ignore[index]
    assert browsers.metadata is not None
    assert str(browsers.metadata.title).startswith(tree.title.title)
    assert browsers.outline, "a browser that is asked for an outline makes one of the headings"
    extras = PdfReader(BytesIO(to_pdf(text, tree.title)))
    assert tree_of_tags(extras) <= {"", "/Link"}, "it is tagged: say so in docs/documents.md"
    # What the extra can be given, it is given: the language and the bookmarks.
    assert str(extras.trailer["/Root"]["/Lang"]).startswith("en")  # type: ignore[index]
    assert extras.outline
    assert extras.metadata is not None
    assert str(extras.metadata.title).startswith(tree.title.title)
