"""One step at a time, in a real browser: what is kept on the device, and for which sheet."""

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page

from tailtrue.procedure import Procedure
from tailtrue.render import to_html

from .on_screen import begin, is_at, opened, press, walk_to


@pytest.fixture
def page(on_tablet: Page) -> Page:
    return on_tablet


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
    page: Page, device: BrowserContext, fernhill: Procedure, fernhill_sheet: Path, change: dict[str, str]
) -> None:
    begin(page)
    walk_to(page, "2.1")
    page.click(".step:visible .tick")
    page.fill(".step:visible input.tool", "380.5")
    other = fernhill_sheet.with_name("other.html")
    other.write_text(
        to_html(fernhill.model_copy(update={"title": fernhill.title.model_copy(update=change)})), encoding="utf-8"
    )
    again = opened(device, other)
    begin(again)
    assert is_at(again) == "Before the work"
    walk_to(again, "2.1")
    assert not again.locator(".step:visible .tick input").is_checked()
    assert again.input_value(".step:visible input.tool") == ""
    same = opened(device, fernhill_sheet)
    begin(same)
    assert same.input_value(".step:visible input.tool") == "380.5"


def test_each_piece_has_its_own_readings(page: Page) -> None:
    begin(page)
    walk_to(page, "5.21, collar 1")
    # The place of the other collar is not shown, and a name in this one is all that is seen of it.
    assert page.locator(".step:visible input.tool:visible").count() == 1
    page.fill(".step:visible input.tool:visible", "24.5")
    walk_to(page, "5.21, collar 2")
    assert page.input_value(".step:visible input.tool:visible") == ""
    assert page.locator(".step:visible .entry:visible").all_inner_texts()[0].split() == ["2"]
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


def test_it_says_so_when_nothing_may_be_kept_and_works_all_the_same(device: BrowserContext, fernhill_sheet: Path) -> None:
    device.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } })"
    )
    page = opened(device, fernhill_sheet)
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
