"""A writing process is killed at any moment, thousands of times: what was acknowledged is there and whole."""

import json
import os
import subprocess
import sys

from shops import ROOT

KILLS = 2000


def test_no_acknowledged_record_is_lost_and_none_is_torn() -> None:
    rooms = os.pathsep.join(str(ROOT / name) for name in ("engine", "tests"))
    done = subprocess.run(
        [sys.executable, "-m", "log.under_fire", str(KILLS)], capture_output=True, text=True, check=False,
        env=os.environ | {"PYTHONPATH": rooms},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    met = json.loads(done.stdout)
    # The kills must have met writing at work: records before them, and transactions cut in the middle.
    assert met["acknowledged"] > KILLS / 2
    assert met["hot"] > KILLS / 100
    assert met["survived unheard"] < KILLS
