"""Every page at the widths of its screens: nothing beyond its room, signs off the words, cells that say what they are."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from .on_screen import NARROW, begin, opened, sideways, walk_to
from .test_accessible import pages_of

DESK, TABLET, SMALL, PHONE = 1280, 820, 600, 390

# Text, tables, places to write and buttons that stand beyond the room of the page, or text beyond its cell.
_BEYOND = """() => {
  const room = getComputedStyle(document.body);
  const edge = document.body.getBoundingClientRect().right - parseFloat(room.paddingRight);
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node; (node = walker.nextNode()); ) {
    const owner = node.parentElement;
    if (!node.data.trim() || !owner.checkVisibility() || owner.closest("svg, .mark, script, style, template, .paged .phase h2")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const right = Math.max(...[...range.getClientRects()].map((one) => one.right));
    const cell = owner.closest("td, th, .word, .stop, .check");
    const end = cell && getComputedStyle(cell).display !== "inline" ? cell.getBoundingClientRect().right : edge;
    if (right > Math.min(edge, end) + 1) found.push(node.data.trim().slice(0, 40));
  }
  for (const one of document.body.querySelectorAll("table, .line, input:not(.tick input), button, .stop, .check"))
    if (one.checkVisibility() && one.getBoundingClientRect().right > edge + 1) found.push(one.outerHTML.slice(0, 60));
  return found;
}"""

# Signs that lie on words of their own message.
_ON_WORDS = """() => [...document.querySelectorAll(".message .pictogram, .cautions .pictogram")].filter((sign) => {
  if (!sign.checkVisibility()) return false;
  const a = sign.getBoundingClientRect();
  const walker = document.createTreeWalker(sign.closest(".message, tr"), NodeFilter.SHOW_TEXT);
  for (let node; (node = walker.nextNode()); ) {
    if (!node.data.trim() || node.parentElement.closest("svg")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    if ([...range.getClientRects()].some((b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3)) return true;
  }
  const frame = sign.closest(".message, tr").getBoundingClientRect();
  return a.bottom > frame.bottom + 1;
}).length"""

# Boxes to choose by that stand on another line than the first of their words.
_PARTED = """() => [...document.querySelectorAll(".choice")].filter((one) => {
  const range = document.createRange();
  range.selectNodeContents(one.lastChild);
  const [box, word] = [one.querySelector(".box").getBoundingClientRect(), range.getClientRects()[0]];
  return word.top > box.bottom || word.left < box.right - 1;
}).map((one) => one.textContent)"""


def beyond(page: Page) -> list[str]:
    found: list[str] = page.evaluate(_BEYOND)
    return found


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def pages(request: pytest.FixtureRequest) -> dict[str, str]:
    return pages_of(request.param)


@pytest.fixture
def shown(browser: Browser, tmp_path: Path) -> Iterator[Callable[[str, int], Page]]:
    contexts = []

    def show(text: str, width: int) -> Page:
        context = browser.new_context(viewport={"width": width, "height": 900})
        contexts.append(context)
        (tmp_path / "page.html").write_text(text, encoding="utf-8")
        return opened(context, tmp_path / "page.html")

    yield show
    for context in contexts:
        context.close()


def test_nothing_stands_beyond_its_room(pages: dict[str, str], shown: Callable[[str, int], Page]) -> None:
    for name, text in pages.items():
        page = shown(text, DESK)
        for width in (DESK, TABLET, SMALL, PHONE):
            page.set_viewport_size({"width": width, "height": 900})
            assert beyond(page) == [], (name, width)
            assert sideways(page) == 0, (name, width)
        # WCAG 2.2, 1.4.10: reflow at 320 px.
        page.set_viewport_size(NARROW)  # type: ignore[arg-type]
        assert sideways(page) == 0, (name, "narrow")


def test_the_measure_sees_what_is_too_wide(shown: Callable[[str, int], Page]) -> None:
    text = "<!doctype html><body style='padding:20px'><table style='width:400px'><tr><td>a</table><p style='white-space:nowrap'>{}"
    assert len(beyond(shown(text.format("word " * 30), PHONE))) == 2


def test_no_sign_lies_on_words_and_a_step_has_its_room(pages: dict[str, str], shown: Callable[[str, int], Page]) -> None:
    page = shown(pages["procedure"], TABLET)
    for width in (TABLET, PHONE):
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate(_ON_WORDS) == 0, width
    begin(page)
    assert page.evaluate(_ON_WORDS) == 0
    for step in ("2.2", "4.1", "5.16", "5.17", "7.1", "9.3"):
        walk_to(page, step)
        for width in (TABLET, PHONE):
            page.set_viewport_size({"width": width, "height": 900})
            assert page.evaluate(_ON_WORDS) == 0, (step, width)
            assert beyond(page) == [], (step, width)


def test_at_a_step_its_phase_is_named_alone(pages: dict[str, str], shown: Callable[[str, int], Page]) -> None:
    page = shown(pages["procedure"], PHONE)
    heads = page.locator("main > .phase > .opening h2").all_inner_texts()
    assert any("Takes about" in head for head in heads)
    begin(page)
    for step in ("4.2", "7.1"):
        walk_to(page, step)
        named = page.inner_text(".of-phase")
        assert not {"Takes", "caution", "after the other"} & set(named.split()), named
        # Number and title stand in columns, with no letter between them.
        assert any("".join(head.split()).startswith("".join(named.split())) for head in heads), named


def test_a_collar_is_read_on_its_own_screen(pages: dict[str, str], shown: Callable[[str, int], Page]) -> None:
    page = shown(pages["procedure"], TABLET)
    begin(page)
    read = page.locator(".readings").first.locator("xpath=ancestor::section[contains(@class, 'step')]")
    number = read.locator("h3 .no").text_content()
    assert number
    walk_to(page, f"{number}, collar 1")
    assert page.locator(".readings th[scope=colgroup]:visible").all_inner_texts()[0].startswith("collar 1")
    assert page.locator(".readings input:visible").count() == 6
    page.locator(".readings input:visible").first.fill("1.0")
    walk_to(page, f"{number}, collar 2")
    assert [one[:8] for one in page.locator(".readings th[scope=colgroup]:visible").all_inner_texts()] == ["collar 2"]
    assert [one.input_value() for one in page.locator(".readings input:visible").all()] == [""] * 6
    page.emulate_media(media="print")
    assert page.locator(".readings .line:visible").count() == 12


def test_on_a_phone_cells_say_what_they_are(pages: dict[str, str], shown: Callable[[str, int], Page]) -> None:
    page = shown(pages["safety"], PHONE)
    before = "(one) => getComputedStyle(one, '::before').content"
    assert page.locator(".hazards .before").first.evaluate(before) == '"Before: "'
    assert page.locator(".hazards .after").first.evaluate(before) == '"After: "'
    assert {one.evaluate(before) for one in page.locator(".wear td").all()} == {'"Wear: "', '"Never: "'}
    # How a rating is read stays a table: a score without its severity says nothing.
    assert page.locator(".matrix td").first.evaluate("(one) => getComputedStyle(one).display") == "table-cell"


def test_a_box_stands_beside_its_word(pages: dict[str, str], shown: Callable[[str, int], Page]) -> None:
    for width in (SMALL, PHONE):
        page = shown(pages["record"], width)
        assert page.locator(".choice").count() > 10
        assert page.evaluate(_PARTED) == []


@pytest.mark.parametrize("paper", ["procedure", "card", "safety", "record"])
def test_no_word_stands_at_the_edge_of_a_phone(pages: dict[str, str], shown: Callable[[str, int], Page], paper: str) -> None:
    page = shown(pages[paper], PHONE)
    left, right = page.evaluate(
        "() => { const room = getComputedStyle(document.body); return [room.paddingLeft, room.paddingRight].map(parseFloat); }"
    )
    assert min(left, right) >= 10
    assert beyond(page) == []


@pytest.mark.parametrize("width", [TABLET, PHONE])
def test_the_frame_round_the_name_of_a_release_leaves_its_words_free(
    pages: dict[str, str], shown: Callable[[str, int], Page], width: int
) -> None:
    page = shown(pages["procedure"], width)
    begin(page)
    for _ in range(60):
        if page.locator(".release input:visible").count():
            break
        page.click("[data-do=next]")
    page.focus(".release input:visible")
    frame, words = page.evaluate(
        """() => {
  const input = document.activeElement;
  const style = getComputedStyle(input);
  const wide = parseFloat(style.outlineWidth) + parseFloat(style.outlineOffset);
  const [a, range] = [input.getBoundingClientRect(), document.createRange()];
  range.selectNodeContents(input.previousSibling);
  const b = range.getBoundingClientRect();
  return [[a.left - wide, a.top - wide], [b.right, b.bottom]];
}"""
    )
    assert words[0] <= frame[0] or words[1] <= frame[1] + 1
