"""One real browser for all tests of pages."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, sync_playwright

from .test_print import BROWSER

QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The Chromium of the system, without a window and with a profile that is thrown away."""
    assert BROWSER, "pages are tested with the chromium browser: install it to run the tests"
    with sync_playwright() as started:
        running = started.chromium.launch(executable_path=BROWSER, headless=True, args=QUIET)
        yield running
        running.close()
