"""The one browser of this run of tests: the Chromium of the system, without a window and with a profile that is thrown away."""

import shutil
from functools import cache
from pathlib import Path

from playwright.sync_api import Browser, Playwright, sync_playwright
from pypdf import PdfReader

_QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@cache
def _started() -> tuple[Playwright, Browser]:
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    assert path, "pages are tested with the chromium browser: install it to run the tests"
    driver = sync_playwright().start()
    return driver, driver.chromium.launch(executable_path=path, headless=True, args=_QUIET)


def browser() -> Browser:
    """It, started when it is first asked for."""
    return _started()[1]


def close() -> None:
    """End it, if it was started."""
    if _started.cache_info().currsize:
        driver, running = _started()
        running.close()
        driver.stop()
        _started.cache_clear()


def printed(page: Path, paper: Path) -> PdfReader:
    """A page printed to a file, on the paper that it asks for; nothing is kept for the next."""
    with browser().new_context() as context:
        sheet = context.new_page()
        sheet.goto(page.as_uri())
        sheet.pdf(path=paper, prefer_css_page_size=True, tagged=True)
    return PdfReader(paper)
