"""What holds for every test."""

import gc
import os
import pickle
import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

import chromium
from tailtrue import advise

EXAMPLES = Path(__file__).parents[1] / "docs" / "examples"

_LONGEST_FIRST = ("tests/sweeping/", "tests/render/", "tests/documents/", "tests/log/", "tests/inspection/", "tests/cli/")

# The maker of the letter face is run by hand, with packages that nothing else needs.
collect_ignore = ["sign_letters.py"]

# Trees and tables live as long as the run: to look for dead cycles among them seldom saves a tenth of its time.
gc.set_threshold(100_000, 50, 100)

# One and the same draw on a machine that judges a change; new draws where people work. No test is held against a clock.
settings.register_profile("judging", derandomize=True, deadline=None)
settings.register_profile("working", deadline=None)
settings.load_profile("judging" if os.environ.get("CI") else "working")


def _shipped_once(make: Callable[..., Any]) -> Callable[..., Any]:
    """Sheets of shipped examples are made once: neither the files nor a sheet ever change while tests run."""
    made: dict[Path, Any] = {}

    def procedure(job: Path, known: Any = None) -> Any:
        if known is not None or not job.is_relative_to(EXAMPLES):
            return make(job, known)
        if job not in made:
            made[job] = make(job)
        return made[job]

    return procedure


# Before any test takes its name. What must be made twice, to be held against itself, is made with `procedure_of`.
advise.make_procedure = _shipped_once(advise.make_procedure)


def pytest_addoption(parser: pytest.Parser) -> None:
    """What takes too long for every run."""
    parser.addoption("--whole-sweep", action="store_true", help="hold the invariants of papers on every job of the sweep")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Rooms with the longest files begin, so that no worker waits long for another at the end."""
    items.sort(
        key=lambda item: next((at for at, room in enumerate(_LONGEST_FIRST) if room in item.nodeid), len(_LONGEST_FIRST))
    )


@pytest.fixture(scope="session", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Compiled templates go to a folder of this run, never to the cache of whoever runs the tests."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture(scope="session", autouse=True)
def _browser_closed() -> Iterator[None]:
    """Whichever test started it."""
    yield
    chromium.close()


@pytest.fixture(scope="session", autouse=True)
def _parsed_once() -> Iterator[None]:
    """A text that was parsed before is copied: tests load the rule base some hundred times, with one file changed."""

    @cache
    def parsed(text: str) -> bytes:
        return pickle.dumps(tomllib_loads(text))

    def loads(text: str, /, *, parse_float: Callable[[str], Any] = float) -> dict[str, Any]:
        return pickle.loads(parsed(text)) if parse_float is float else tomllib_loads(text, parse_float=parse_float)

    tomllib_loads = tomllib.loads
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(tomllib, "loads", loads)
        yield
