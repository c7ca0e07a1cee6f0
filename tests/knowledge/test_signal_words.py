"""The signal word of each caution follows the harm.

ANSI Z535: DANGER and WARNING death or serious injury, CAUTION minor or moderate injury, NOTICE no injury. DANGER is kept
for the most extreme cases: the rows below are set by hand, and no other may call itself so.
"""

import pytest

from tailtrue.advise import knowledge
from tailtrue.store.knowledge import Caution

CERTAIN_HARM = {"EN-01", "EN-02", "EN-03", "EM-01", "ST-01", "ST-02", "PR-04", "CA-01", "EL-02", "FA-02"}


def due(severity: int, *, certain_harm: bool) -> str:
    if severity == 1:
        return "notice"
    if severity in (2, 3):
        return "caution"
    return "danger" if certain_harm else "warning"


@pytest.mark.parametrize("caution", knowledge().cautions, ids=lambda caution: str(caution.file.id))
def test_the_word_is_the_one_its_severity_asks_for(caution: Caution) -> None:
    file = caution.file
    assert file.signal == due(file.severity, certain_harm=file.row in CERTAIN_HARM)


def test_danger_kills_and_is_rare() -> None:
    dangers = [caution.file for caution in knowledge().cautions if caution.file.signal == "danger"]
    assert all(file.severity == 5 for file in dangers)
    assert 0 < len(dangers) <= len(CERTAIN_HARM)
