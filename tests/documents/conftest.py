"""Every test here is run for each shipped example and for each job of the sweep."""

import pytest

from .made import GENERATED, SHIPPED, SWEEP, Job, job


@pytest.fixture(params=[*SHIPPED, *SWEEP, *GENERATED], scope="session")
def made(request: pytest.FixtureRequest) -> Job:
    """A job with its papers."""
    return job(request.param)
