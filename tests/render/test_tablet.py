"""One step at a time, in a real browser: what is shown, what turns, what holds, what is kept, what is asked of a network."""

import re
from collections.abc import Iterator
from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page
from pypdf import PdfReader

from tailtrue.advise import make_procedure
from tailtrue.places import templates_folder
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.tablet import script

from .on_screen import NARROW, TABLET, is_at, sideways, small_targets, walk_to

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
MOST_BYTES = 12 * 1024


@pytest.fixture(scope="module")
def tree() -> Procedure:
    return make_procedure(EXAMPLES / "fernhill" / "job.toml")


@pytest.fixture(scope="module")
def sheet(tree: Procedure, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sheet") / "procedure.html"
    path.write_text(to_html(tree), encoding="utf-8")
    return path


@pytest.fixture
def device(browser: Browser) -> Iterator[BrowserContext]:
    with browser.new_context(viewport=TABLET) as context:  # type: ignore[arg-type]
        yield context


@pytest.fixture
def page(device: BrowserContext, sheet: Path) -> Page:
    return opened(device, sheet)


def opened(device: BrowserContext, sheet: Path) -> Page:
    page = device.new_page()
    page.on("pageerror", lambda wrong: pytest.fail(f"the script stopped: {wrong}"))
    page.goto(sheet.as_uri())
    return page


def begin(page: Page) -> None:
    page.click("[data-do=begin]")


def press(page: Page, *keys: str) -> None:
    for key in keys:
        page.keyboard.press(key)


def scroll_down(page: Page) -> None:
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")


def hold_step(tree: Procedure) -> str:
    return next(step.number for phase in tree.phases for step in phase.steps if step.hold)


def test_the_script_is_small_and_calls_nothing_that_runs_text() -> None:
    text = (templates_folder() / "tablet.js").read_text(encoding="utf-8")
    assert len(text.encode()) < MOST_BYTES
    assert "</script" not in text
    assert not re.search(
        r"\beval\b|Function\(|innerHTML|insertAdjacentHTML|document\.write|fetch|XMLHttp|sendBeacon|WebSocket|import\(", text
    )


def test_the_policy_comes_before_anything_it_rules(tree: Procedure) -> None:
    text = to_html(tree)
    assert text.index("Content-Security-Policy") < text.index("<title>") < text.index("<style>") < text.index("<script>")
    assert f"<script>{script().text}</script>" in text


def test_without_script_the_sheet_is_whole_and_shows_no_button(browser: Browser, sheet: Path) -> None:
    with browser.new_context(java_script_enabled=False, viewport=TABLET) as context:  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(sheet.as_uri())
        assert page.locator("button:visible").count() == 0
        assert page.locator(".step:visible").count() == page.locator(".step").count() > 60


def test_no_request_leaves_and_none_can(device: BrowserContext, sheet: Path) -> None:
    asked: list[str] = []
    device.on("request", lambda request: asked.append(request.url))
    page = opened(device, sheet)
    begin(page)
    walk_to(page, "5.23")
    scroll_down(page)
    press(page, "PageDown")
    assert asked == [sheet.as_uri()]
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
    page: Page, tree: Procedure
) -> None:
    begin(page)
    assert page.locator("#do-not-start:visible, #stop-at-once:visible, #job-cautions:visible").count() == 3
    order = [is_at(page)]
    while not page.evaluate("document.querySelector('[data-do=next]').disabled"):
        if page.locator(".release [data-do=release]:visible").count():
            page.fill(".release input:visible", "J. Doe")
            page.click("[data-do=release]:visible")
        page.click("[data-do=next]")
        order.append(is_at(page))
        assert small_targets(page) == [], is_at(page)
        assert sideways(page) == 0, is_at(page)
    due = []
    for phase in tree.phases:
        if phase.cautions:
            due.append(phase.number)
        for piece in phase.each or ("",):
            due += [f"Step {step.number}{', ' + piece if piece else ''}" for step in phase.steps]
    shown = [one if one.startswith("Step") else one.split()[0] for one in order[2:-2]]
    assert shown == due
    assert page.inner_text(".count") == ""
    assert page.locator("#trouble:visible").count() == 1


def test_a_step_shows_its_cautions_above_it_and_every_danger_of_its_phase(page: Page, tree: Procedure) -> None:
    begin(page)
    for phase in tree.phases:
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


def test_a_hold_is_passed_by_a_name_and_its_own_button_alone(page: Page, tree: Procedure) -> None:
    begin(page)
    number = hold_step(tree)
    walk_to(page, number)
    here = is_at(page)
    for key in ("Space", "Enter", "PageDown", "ArrowRight"):
        page.focus(".place")
        scroll_down(page)
        press(page, key)
        assert is_at(page) == here
        assert page.inner_text(".answer") == "HOLD. Type a name and press its button."
    page.click("[data-do=next]", force=True)
    assert is_at(page) == here
    page.click("[data-do=release]:visible")
    assert page.inner_text(".answer") == "HOLD. The name is missing."
    page.fill(".release input:visible", "   ")
    page.click("[data-do=release]:visible")
    page.click("[data-do=next]", force=True)
    assert is_at(page) == here
    page.fill(".release input:visible", "J. Doe")
    press(page, "Enter")
    assert page.locator("[data-do=release]:visible").count() == 1
    page.click("[data-do=release]:visible")
    assert "Released by J. Doe, " in page.inner_text(".released:visible")
    page.click("[data-do=next]")
    assert is_at(page) != here


def test_a_hold_taken_back_stops_the_way_there_again(page: Page, tree: Procedure) -> None:
    begin(page)
    number = hold_step(tree)
    walk_to(page, number)
    here = is_at(page)
    page.fill(".release input:visible", "J. Doe")
    page.click("[data-do=release]:visible")
    page.click("[data-do=next]")
    page.click("[data-do=back]")
    page.click("[data-do=take-back]:visible")
    page.evaluate(
        'localStorage.setItem(Object.keys(localStorage)[0], localStorage.getItem(Object.keys(localStorage)[0]).replace(/"place":\\d+/, \'"place":110\'))'
    )
    page.reload()
    begin(page)
    assert is_at(page) == here


def test_a_hold_of_a_phase_for_two_pieces_is_released_for_each(page: Page, tree: Procedure) -> None:
    phase = next(phase for phase in tree.phases if phase.each and any(step.hold for step in phase.steps))
    step = next(step for step in phase.steps if step.hold)
    begin(page)
    for piece in phase.each:
        walk_to(page, f"{step.number}, {piece}")
        assert page.locator("[data-do=release]:visible").count() == 1
        assert page.locator(".step:visible .tick:visible").all_inner_texts() == [piece]


def test_a_reading_is_called_inside_or_outside_by_the_printed_limits_and_nothing_more(page: Page) -> None:
    begin(page)
    walk_to(page, "5.23")
    check = page.locator(".step:visible .check").first
    low, high = (Decimal(one) for one in re.findall(r"\d+\.\d+", check.locator(".accept").inner_text()))
    digit = Decimal(1).scaleb(low.as_tuple().exponent)  # type: ignore[arg-type]
    field, verdict = check.locator("input").first, check.locator("output").first
    cases = {
        str(low): "inside the limits", str(high): "inside the limits", str(high).replace(".", ","): "inside the limits",
        str(low - digit): "OUTSIDE the limits", str(high + digit): "OUTSIDE the limits",
        str(high + digit).replace(".", ","): "OUTSIDE the limits", f"{high}1": "OUTSIDE the limits",
        "2,5.0": "not a number", "25 mm": "not a number", "1e3": "not a number", "": "",
    }  # fmt: skip
    for typed, due in cases.items():
        field.fill(typed)
        assert verdict.inner_text() == due, typed
    field.fill("99")
    assert page.locator("[data-do=next]").is_enabled(), "a verdict is a word, not a hold"


def test_a_reading_in_another_unit_than_the_limits_is_not_judged(browser: Browser, tree: Procedure, tmp_path: Path) -> None:
    title = tree.title.model_copy(update={"dials": "inch"})
    (tmp_path / "inch.html").write_text(to_html(tree.model_copy(update={"title": title})), encoding="utf-8")
    with browser.new_context(viewport=TABLET) as context:  # type: ignore[arg-type]
        page = opened(context, tmp_path / "inch.html")
        begin(page)
        walk_to(page, "5.23")
        check = page.locator(".step:visible .check").first
        assert check.locator(".accept").inner_text().endswith("in")
        check.locator("input").first.fill("25.01")
        assert check.locator("output").first.text_content() == ""


def test_boxes_readings_and_the_place_survive_a_reload(page: Page) -> None:
    begin(page)
    walk_to(page, "2.1")
    page.click(".step:visible .tick")
    page.fill(".step:visible input.tool", "380,5")
    page.reload()
    begin(page)
    assert is_at(page) == "Step 2.1"
    assert page.locator(".step:visible .tick input").is_checked()
    assert page.input_value(".step:visible input.tool") == "380,5"


@pytest.mark.parametrize("change", [{"checksum": "0000-0000"}, {"revision": "9"}, {"number": "other"}])
def test_another_checksum_revision_or_number_starts_empty(
    page: Page, device: BrowserContext, tree: Procedure, sheet: Path, change: dict[str, str]
) -> None:
    begin(page)
    walk_to(page, "2.1")
    page.click(".step:visible .tick")
    page.fill(".step:visible input.tool", "380.5")
    other = sheet.with_name("other.html")
    other.write_text(to_html(tree.model_copy(update={"title": tree.title.model_copy(update=change)})), encoding="utf-8")
    again = opened(device, other)
    begin(again)
    assert is_at(again) == "Before the work"
    walk_to(again, "2.1")
    assert not again.locator(".step:visible .tick input").is_checked()
    assert again.input_value(".step:visible input.tool") == ""
    same = opened(device, sheet)
    begin(same)
    assert same.input_value(".step:visible input.tool") == "380.5"


def test_each_piece_has_its_own_readings(page: Page) -> None:
    begin(page)
    walk_to(page, "5.21, collar 1")
    page.fill(".step:visible input.tool", "24.5")
    walk_to(page, "5.21, collar 2")
    assert page.input_value(".step:visible input.tool") == ""
    assert page.locator(".step:visible .tick:visible").all_inner_texts() == ["collar 2"]


def test_clearing_asks_first_and_then_forgets_everything(page: Page) -> None:
    begin(page)
    walk_to(page, "2.1")
    page.click(".step:visible .tick")
    page.fill(".step:visible input.tool", "380.5")
    page.click("[data-do=leave]")
    page.click("[data-do=ask]")
    page.click("[data-do=stay]")
    assert page.locator("main .tick input:checked").count() == 1
    page.click("[data-do=ask]")
    page.click("[data-do=clear]")
    assert page.locator("main .tick input:checked").count() == 0
    page.reload()
    begin(page)
    assert is_at(page) == "Before the work"
    walk_to(page, "2.1")
    assert page.input_value(".step:visible input.tool") == ""


def test_it_says_so_when_nothing_may_be_kept_and_works_all_the_same(device: BrowserContext, sheet: Path) -> None:
    device.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } })"
    )
    page = opened(device, sheet)
    assert page.inner_text(".not-keeping").startswith("Nothing is kept")
    assert page.locator(".keeping:visible").count() == 0
    begin(page)
    press(page, "ArrowRight", "ArrowRight", "ArrowRight", "ArrowRight")
    assert page.inner_text(".answer").startswith("Nothing is kept")
    walk_to(page, "2.1")


def test_what_was_kept_and_cannot_be_read_is_passed_over(page: Page) -> None:
    begin(page)
    for spoilt in ("{", "null", "5", '{"boxes":null,"written":7,"place":"x"}'):
        page.evaluate("(text) => localStorage.setItem(Object.keys(localStorage)[0], text)", spoilt)
        page.reload()
        begin(page)
        assert is_at(page) == "Before the work"


def test_the_screen_is_asked_to_stay_on_while_steps_are_shown(device: BrowserContext, sheet: Path) -> None:
    device.add_init_script(
        """window.calls = [];
        Object.defineProperty(navigator, "wakeLock", { value: { request: async (kind) => {
          window.calls.push(kind); return { release: () => window.calls.push("released") }; } } });"""
    )
    page = opened(device, sheet)
    assert page.evaluate("window.calls") == []
    begin(page)
    page.click("[data-do=leave]")
    assert page.evaluate("window.calls") == ["screen", "released"]


def text_of(pdf: bytes) -> list[str]:
    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def test_the_sheet_is_printed_as_ever_whatever_was_done_on_the_screen(page: Page) -> None:
    before = page.pdf(prefer_css_page_size=True)
    begin(page)
    walk_to(page, "5.23")
    page.click(".step:visible .tick")
    page.locator(".step:visible input.tool").first.fill("25.01")
    page.click("[data-do=stops]")
    during = page.pdf(prefer_css_page_size=True)
    page.click("[data-do=leave]")
    after = page.pdf(prefer_css_page_size=True)
    assert text_of(before) == text_of(during) == text_of(after)
    assert len(text_of(before)) > 15
    links = [sum(len(one.get("/Annots", ())) for one in PdfReader(BytesIO(pdf)).pages) for pdf in (before, during)]
    assert links[0] == links[1] > 100


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


def test_on_a_narrow_screen_what_never_to_do_still_says_so(page: Page, tree: Procedure) -> None:
    page.set_viewport_size(NARROW)  # type: ignore[arg-type]
    begin(page)
    page.evaluate("document.querySelectorAll('.away').forEach((one) => one.classList.remove('away'))")
    heads = page.evaluate(
        "[...document.querySelectorAll('#trouble ~ table td')].map((one) => getComputedStyle(one, '::before').content + one.dataset.head)"
    )
    assert len(heads) == 2 * len(tree.if_it_goes_wrong)
    assert {head.partition(": ")[0].strip('"') for head in heads} == {"Do", "Do not"}
    assert all(head.endswith(due) for head, due in zip(heads, ["Do", "Do not"] * len(tree.if_it_goes_wrong), strict=True))


def test_nothing_moves_by_itself() -> None:
    style = (templates_folder() / "tablet.css").read_text(encoding="utf-8")
    assert not re.search(r"transition|animation|scroll-behavior", style)
