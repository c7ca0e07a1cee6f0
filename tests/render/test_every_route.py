"""A sheet of each route and each of its papers in a browser: serious faults, sizes for a finger.

WCAG 2.2: 2.5.5 (targets of 44 px; links in running text are left out there).
"""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.record_page import to_record_html
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sop_page import to_sop_html

from .on_screen import TABLET, faults, small_targets, weak

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
ROUTES = {
    "use-bar": "fernhill/use-bar.toml",
    "taper": "quarry-road/taper-and-return.toml",
    "rework": "fernhill/rework.toml",
    "height": "fernhill/height-and-droop.toml",
    "chucked": "fernhill/chucked-bar-test.toml",
    "re-certify": "fernhill/re-certify.toml",
}
_PRESSED = ('class="tick"', "<button", "<input", 'href="#phase', 'href="#step')


def papers(tree: Procedure) -> dict[str, str]:
    """Each paper that a sheet has."""
    made = {"procedure": to_html(tree), "safety": to_safety_html(tree)}
    if tree.record is not None:
        made["record"] = to_record_html(tree)
    if tree.sop is not None:
        made["sop"] = to_sop_html(tree)
    if tree.card is not None:
        made["card"] = to_card_html(tree)
    return made


def at(browser: Browser, folder: Path, text: str) -> Page:
    page = browser.new_context(viewport=TABLET).new_page()  # type: ignore[arg-type]
    (folder / "page.html").write_text(text, encoding="utf-8")
    page.goto((folder / "page.html").as_uri())
    return page


def empty_heads(page: Page) -> int:
    """Heads of tables that say nothing."""
    return int(page.evaluate("[...document.querySelectorAll('th')].filter((one) => !one.textContent.trim()).length"))


@pytest.mark.parametrize("route", ROUTES)
def test_each_route_is_read_by_anybody(browser: Browser, tmp_path: Path, route: str) -> None:
    tree = make_procedure(EXAMPLES / ROUTES[route])
    for name, text in papers(tree).items():
        page = at(browser, tmp_path, text)
        assert faults(page) == [], name
        assert weak(page) == [], name
        assert empty_heads(page) == 0, name
        pressed = [one for one in small_targets(page) if any(what in one for what in _PRESSED)]
        assert pressed == [], name
        page.context.close()
