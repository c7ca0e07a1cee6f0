"""A name that stands in many sentences is refused where it is read when it would make them too long."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.errors import FactsWrong

NAMED = 'name = "Lathe 2"'


def test_a_name_of_too_many_words_is_refused_with_its_key_and_the_limit(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", NAMED, 'name = "the old bench lathe in the shed by the door"'))
    with pytest.raises(FactsWrong, match="has more than 8 words") as wrong:
        make_procedure(job)
    (problem,) = wrong.value.problems
    assert problem.where == "lathe.toml:3"
    assert problem.said.startswith("name = ")


def test_a_name_of_as_many_words_as_may_be_makes_every_paper(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", NAMED, 'name = "the old bench lathe in the back shed"'))
    assert make_procedure(job).sop is not None
