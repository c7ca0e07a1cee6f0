"""One step at a time, in a real browser: holds, and readings held against their limits."""

import re
from decimal import Decimal
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tailtrue.procedure import Procedure
from tailtrue.render import to_html

from .on_screen import TABLET, begin, is_at, opened, press, scroll_down, walk_to


@pytest.fixture
def page(on_tablet: Page) -> Page:
    return on_tablet


def hold_step(fernhill: Procedure) -> str:
    return next(step.number for phase in fernhill.phases for step in phase.steps if step.hold)


def test_a_hold_is_passed_by_a_name_and_its_own_button_alone(page: Page, fernhill: Procedure) -> None:
    begin(page)
    number = hold_step(fernhill)
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


def test_a_hold_taken_back_stops_the_way_there_again(page: Page, fernhill: Procedure) -> None:
    begin(page)
    number = hold_step(fernhill)
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


def test_a_hold_of_a_phase_for_two_pieces_is_released_for_each(page: Page, fernhill: Procedure) -> None:
    phase = next(phase for phase in fernhill.phases if phase.each and any(step.hold for step in phase.steps))
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


def test_a_reading_in_another_unit_than_the_limits_is_not_judged(
    browser: Browser, fernhill: Procedure, tmp_path: Path
) -> None:
    title = fernhill.title.model_copy(update={"dials": "inch"})
    (tmp_path / "inch.html").write_text(to_html(fernhill.model_copy(update={"title": title})), encoding="utf-8")
    with browser.new_context(viewport=TABLET) as context:  # type: ignore[arg-type]
        page = opened(context, tmp_path / "inch.html")
        begin(page)
        walk_to(page, "5.23")
        check = page.locator(".step:visible .check").first
        assert check.locator(".accept").inner_text().endswith("in")
        check.locator("input").first.fill("25.01")
        assert check.locator("output").first.text_content() == ""
