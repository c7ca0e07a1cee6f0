"""Whatever stands in a file of a user is read or refused in words, whatever it is."""

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tailtrue.errors import FactsWrong, Problem
from tailtrue.given.catalogue import Catalogue
from tailtrue.given.read import read_job

from .conftest import GOOD

VALUES = st.one_of(
    st.text(max_size=12).map(repr),
    st.sampled_from(
        ["true", "3", "-1", "1e400", "nan", "[]", "[[]]", "{}", "{ a = 1 }", '"25,4 mm"', '"25 mm"', "1979-05-27"]
    ),
    st.from_regex(r"[\[\]{}=\"',.0-9a-z \n#]{0,20}", fullmatch=True),
)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(kind=st.sampled_from(sorted(GOOD)), number=st.integers(0, 40), value=VALUES)
def test_any_value_is_read_or_refused_in_words(
    tmp_path: Path, catalogue: Catalogue, kind: str, number: int, value: str
) -> None:
    texts = dict(GOOD)
    rows = texts[kind].splitlines()
    keyed = [at for at, row in enumerate(rows) if re.match(r"\w+ = ", row)]
    at = keyed[number % len(keyed)]
    rows[at] = f"{rows[at].split(' = ')[0]} = {value}"
    texts[kind] = "\n".join(rows)
    for name, text in texts.items():
        (tmp_path / f"{name}.toml").write_text(text, encoding="utf-8")
    problems: tuple[Problem, ...] = ()
    try:
        assert read_job(tmp_path / "job.toml", catalogue).values
    except FactsWrong as refused:
        problems = refused.problems
    for problem in problems:
        assert problem.where
        assert problem.wrong
        assert problem.do
        assert problem.said.isprintable()


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(text=st.text(max_size=60) | st.text(alphabet="[]{}=\"'\n.a1# ", max_size=60))
def test_any_text_for_a_file_is_refused_in_words(tmp_path: Path, catalogue: Catalogue, text: str) -> None:
    path = tmp_path / "job.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(FactsWrong):
        read_job(path, catalogue)


@pytest.mark.parametrize(("kind", "text"), list(GOOD.items()))
def test_no_fact_that_must_be_said_is_left_out_in_silence(shop: Path, catalogue: Catalogue, kind: str, text: str) -> None:
    tried = 0
    # Facts of the file, and fields of the entries of its lists.
    asked = [one for fact in catalogue.of_file(kind).values() for one in (fact, *fact.fields.values())]
    for fact in asked:
        rows = [row for row in text.splitlines() if row.startswith(f"{fact.key} = ") and not row.endswith("[")]
        if fact.ask != "must" or not rows:
            continue
        (shop / f"{kind}.toml").write_text(text.replace(f"{rows[0]}\n", "", 1), encoding="utf-8")
        with pytest.raises(FactsWrong) as caught:
            read_job(shop / "job.toml", catalogue)
        (problem,) = caught.value.problems
        assert (problem.said.split(" in entry ")[0], problem.wrong) == (fact.key, "not given")
        tried += 1
    assert tried, kind
