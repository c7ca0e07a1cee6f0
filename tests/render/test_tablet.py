"""One step at a time, in a real browser: what is shown, what turns, what is asked of a network, what is printed."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from printed_pages import Box, sheets_of
from tailtrue.places import templates_folder
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.tablet import script

from .on_screen import NARROW, TABLET, begin, is_at, opened, press, scroll_down, sideways, small_targets, walk_to

MOST_BYTES = 12 * 1024


# Next is pressed where a finger meets it. To press it from outside takes ten times as long, at a hundred steps and more.
_TURN = """() => {
  const next = document.querySelector("[data-do=next]");
  if (next.disabled) return "end";
  if ([...document.querySelectorAll(".release [data-do=release]")].some((one) => one.checkVisibility())) return "held";
  const box = next.getBoundingClientRect();
  const met = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
  if (!met || met.closest("[data-do=next]") !== next) return "covered";
  met.click();
  return "turned";
}"""


@pytest.fixture
def page(on_tablet: Page) -> Page:
    return on_tablet


def test_the_script_is_small_and_calls_nothing_that_runs_text() -> None:
    text = (templates_folder() / "tablet.js").read_text(encoding="utf-8")
    assert len(text.encode()) < MOST_BYTES
    assert "</script" not in text
    assert not re.search(
        r"\beval\b|Function\(|innerHTML|insertAdjacentHTML|document\.write|fetch|XMLHttp|sendBeacon|WebSocket|import\(", text
    )


def test_the_policy_comes_before_anything_it_rules(fernhill: Procedure) -> None:
    text = to_html(fernhill)
    assert text.index("Content-Security-Policy") < text.index("<title>") < text.index("<style>") < text.index("<script>")
    assert f"<script>{script().text}</script>" in text


def test_without_script_the_sheet_is_whole_and_shows_no_button(browser: Browser, fernhill_sheet: Path) -> None:
    with browser.new_context(java_script_enabled=False, viewport=TABLET) as context:  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(fernhill_sheet.as_uri())
        assert page.locator("button:visible").count() == 0
        assert page.locator(".step:visible").count() == page.locator(".step").count() > 60


def test_no_request_leaves_and_none_can(device: BrowserContext, fernhill_sheet: Path) -> None:
    asked: list[str] = []
    device.on("request", lambda request: asked.append(request.url))
    page = opened(device, fernhill_sheet)
    begin(page)
    walk_to(page, "5.23")
    scroll_down(page)
    press(page, "PageDown")
    assert asked == [fernhill_sheet.as_uri()]
    refused = page.evaluate(
        """() => new Promise((done) => {
            addEventListener("securitypolicyviolation", (event) => done(event.effectiveDirective));
            fetch("https://localhost:9/").catch(() => setTimeout(() => done("nothing refused it"), 2000));
        })"""
    )
    assert refused == "connect-src"


def test_no_other_script_runs(page: Page) -> None:
    page.evaluate(
        """() => { const other = document.createElement("script"); other.textContent = "window.other = 1"; document.body.append(other); }"""
    )
    assert page.evaluate("window.other") is None


def test_what_holds_for_all_of_the_work_comes_first_then_each_phase_its_cautions_before_its_steps(
    page: Page, fernhill: Procedure
) -> None:
    begin(page)
    assert page.locator("#do-not-start:visible, #stop-at-once:visible, #job-cautions:visible").count() == 3
    order = [is_at(page)]
    while (turned := page.evaluate(_TURN)) != "end":
        # Released as a person does; a button that lies under something else takes no press.
        if turned == "held":
            page.fill(".release input:visible", "J. Doe")
            page.click("[data-do=release]:visible")
            assert page.locator(".release [data-do=release]:visible").count() == 0
            continue
        assert turned == "turned", is_at(page)
        here = is_at(page)
        order.append(here)
        assert small_targets(page) == [], here
        assert sideways(page) == 0, here
    due = []
    for phase in fernhill.phases:
        if phase.cautions:
            due.append(phase.number)
        for piece in phase.each or ("",):
            due += [f"Step {step.number}{', ' + piece if piece else ''}" for step in phase.steps]
    shown = [one if one.startswith("Step") else one.split()[0] for one in order[2:-2]]
    assert shown == due
    assert page.inner_text(".count") == ""
    assert page.locator("#trouble:visible").count() == 1


def test_a_button_that_lies_under_something_else_is_not_pressed(page: Page) -> None:
    begin(page)
    page.evaluate(
        """() => { const over = document.createElement("div"); over.style.position = "fixed"; over.style.inset = 0;
        over.style.zIndex = 99; document.body.append(over); }"""
    )
    before = is_at(page)
    assert page.evaluate(_TURN) == "covered"
    assert is_at(page) == before


def test_a_step_shows_its_cautions_above_it_and_every_danger_of_its_phase(page: Page, fernhill: Procedure) -> None:
    begin(page)
    for phase in fernhill.phases:
        for step in phase.steps[:2]:
            walk_to(page, step.number)
            shown = page.locator(".message:visible")
            texts = [text.replace("\n", " ") for text in shown.all_inner_texts()]
            due = [one.hazard for one in phase.cautions if one.signal == "danger"] + [one.hazard for one in step.cautions]
            assert len(texts) == len(due)
            assert all(hazard in text for hazard, text in zip(due, texts, strict=True))
            head = page.locator(".step:visible h3").bounding_box()
            assert head is not None
            assert all((box := one.bounding_box()) and box["y"] < head["y"] for one in shown.all())
            assert page.locator(".step:visible .tag").first.is_visible()


def test_above_a_step_the_phase_is_named_and_nothing_more(page: Page, fernhill: Procedure) -> None:
    begin(page)
    for phase in (fernhill.phases[0], next(one for one in fernhill.phases if one.each)):
        walk_to(page, phase.steps[0].number)
        assert page.inner_text(".of-phase") == f"{phase.number} {phase.title}"


def test_stops_and_dangers_and_the_table_are_one_press_away_from_any_step(page: Page) -> None:
    begin(page)
    walk_to(page, "9.8")
    assert page.locator("#stop-at-once:visible").count() == 0
    page.click("[data-do=stops]")
    assert page.locator("#stop-at-once:visible, #job-cautions:visible").count() == 2
    page.click("[data-do=table]")
    assert page.locator("#look-up:visible").count() == 1
    page.click("[data-do=back]")
    assert page.locator("#stop-at-once:visible, #look-up:visible").count() == 0


@pytest.mark.parametrize("key", ["Space", "Enter", "PageDown", "ArrowRight", "ArrowDown"])
def test_keys_and_pedals_turn_on_and_back(page: Page, key: str) -> None:
    begin(page)
    walk_to(page, "1.3")
    press(page, key)
    assert is_at(page) == "Step 1.4"
    assert page.evaluate("document.activeElement.className") == "place"
    back = {
        "Space": "Shift+Space",
        "Enter": "PageUp",
        "PageDown": "PageUp",
        "ArrowRight": "ArrowLeft",
        "ArrowDown": "ArrowUp",
    }[key]
    press(page, back)
    assert is_at(page) == "Step 1.3"


def test_a_key_brings_the_rest_of_a_step_into_sight_before_it_turns(page: Page) -> None:
    page.set_viewport_size({"width": 800, "height": 500})
    begin(page)
    walk_to(page, "1.2")
    press(page, "PageDown")
    assert is_at(page) == "Step 1.2"
    assert page.evaluate("scrollY") > 0
    press(page, *["PageDown"] * 5)
    assert is_at(page) != "Step 1.2"


def test_a_key_that_is_held_down_turns_once(page: Page) -> None:
    begin(page)
    walk_to(page, "1.3")
    for _ in range(5):
        page.keyboard.down("PageDown")
    page.keyboard.up("PageDown")
    assert is_at(page) == "Step 1.4"


def test_a_tick_by_finger_is_not_taken_back_by_the_pedal(page: Page) -> None:
    begin(page)
    walk_to(page, "1.3")
    page.click(".step:visible .tick")
    page.wait_for_function("document.activeElement.className === 'place'")
    press(page, "Space")
    assert is_at(page) == "Step 1.4"
    press(page, "PageUp")
    assert page.locator(".step:visible .tick input").is_checked()


def test_the_screen_is_asked_to_stay_on_while_steps_are_shown(device: BrowserContext, fernhill_sheet: Path) -> None:
    device.add_init_script(
        """window.calls = [];
        Object.defineProperty(navigator, "wakeLock", { value: { request: async (kind) => {
          window.calls.push(kind); return { release: () => window.calls.push("released") }; } } });"""
    )
    page = opened(device, fernhill_sheet)
    assert page.evaluate("window.calls") == []
    begin(page)
    page.click("[data-do=leave]")
    assert page.evaluate("window.calls") == ["screen", "released"]


def read_back(page: Page) -> list[tuple[str, int, list[Box]]]:
    """The text of each printed page, how many links stand on it, and where its lines stand."""
    return [(sheet.words, sheet.links, sheet.boxes) for sheet in sheets_of(page.pdf(prefer_css_page_size=True))]


def test_the_sheet_is_printed_as_ever_whatever_was_done_on_the_screen(page: Page) -> None:
    before = read_back(page)
    begin(page)
    walk_to(page, "5.23")
    page.click(".step:visible .tick")
    page.locator(".step:visible input.tool").first.fill("25.01")
    page.click("[data-do=stops]")
    during = read_back(page)
    page.click("[data-do=leave]")
    after = read_back(page)
    assert before == during == after
    assert len(before) > 15
    assert sum(links for _, links, _ in before) > 100


def test_it_can_be_done_by_keyboard_alone(page: Page) -> None:
    press(page, "Tab", "Enter")
    assert is_at(page) == "Before the work"
    release = page.locator("[data-do=release]:visible")
    for _ in range(200):
        if release.count():
            break
        press(page, "PageDown")
    here = is_at(page)
    assert here != "Before the work"
    for _ in range(9):
        press(page, "PageDown")
    assert is_at(page) == here, "a hold was passed by turning on"
    assert release.count() == 1
    page.keyboard.type("J. Doe")
    press(page, "Tab", "Space")
    assert page.inner_text(".released:visible").startswith("Released by J. Doe")
    press(page, "Space")
    assert is_at(page) != here


def test_on_a_narrow_screen_what_never_to_do_still_says_so(page: Page, fernhill: Procedure) -> None:
    page.set_viewport_size(NARROW)  # type: ignore[arg-type]
    begin(page)
    page.evaluate("document.querySelectorAll('.away').forEach((one) => one.classList.remove('away'))")
    heads = page.evaluate(
        "[...document.querySelectorAll('#trouble ~ table td')].map((one) => getComputedStyle(one, '::before').content + one.dataset.head)"
    )
    assert len(heads) == 2 * len(fernhill.if_it_goes_wrong)
    assert {head.partition(": ")[0].strip('"') for head in heads} == {"Do", "Do not"}
    assert all(
        head.endswith(due) for head, due in zip(heads, ["Do", "Do not"] * len(fernhill.if_it_goes_wrong), strict=True)
    )


def test_nothing_moves_by_itself() -> None:
    style = (templates_folder() / "tablet.css").read_text(encoding="utf-8")
    assert not re.search(r"transition|animation|scroll-behavior", style)
