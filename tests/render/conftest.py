"""One real browser for all tests of pages."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

import chromium
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html

from .on_screen import TABLET, opened

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"


@pytest.fixture(scope="session")
def browser() -> Browser:
    """The one of this run."""
    return chromium.browser()


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
