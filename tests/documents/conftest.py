"""Every test here is run for each shipped example and for jobs of the sweep: some of each route, or on request all."""

import pytest

from .made import GENERATED, SHIPPED, SWEEP, Job, job, swept


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """The jobs by name; those of the whole sweep take ten minutes and more, so they are asked for."""
    if "made" in metafunc.fixturenames:
        whole = swept() if metafunc.config.getoption("--whole-sweep") else ()
        metafunc.parametrize("made", [*SHIPPED, *SWEEP, *GENERATED, *whole], indirect=True, scope="session")


@pytest.fixture(scope="session")
def made(request: pytest.FixtureRequest) -> Job:
    """A job with its papers."""
    return job(request.param)
