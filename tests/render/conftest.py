"""One real browser for all tests of pages."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html

from .on_screen import TABLET, opened
from .test_print import BROWSER

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"

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


@pytest.fixture(scope="session")
def fernhill() -> Procedure:
    """The procedure of one example, made once."""
    return make_procedure(JOB)


@pytest.fixture(scope="session")
def fernhill_sheet(fernhill: Procedure, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its page as a file."""
    path = tmp_path_factory.mktemp("sheet") / "procedure.html"
    path.write_text(to_html(fernhill), encoding="utf-8")
    return path


@pytest.fixture
def device(browser: Browser) -> Iterator[BrowserContext]:
    """A tablet on which nothing is kept yet."""
    with browser.new_context(viewport=TABLET) as context:  # type: ignore[arg-type]
        yield context


@pytest.fixture
def on_tablet(device: BrowserContext, fernhill_sheet: Path) -> Page:
    """That page, opened on it."""
    return opened(device, fernhill_sheet)
