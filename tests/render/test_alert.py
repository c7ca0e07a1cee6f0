"""The safety alert sign stands before each signal word but that of a notice (ANSI Z535.6), on every paper that has one."""

import re
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest

from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.pdf import to_pdf
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sign_letters import TRIANGLE
from tailtrue.render.sop_page import to_sop_html

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"
PAPERS: dict[str, tuple[Callable[[Procedure], str], str]] = {
    "procedure": (to_html, "DANGER WARNING CAUTION NOTICE"),
    "card": (to_card_html, "DANGER"),
    "safety": (to_safety_html, "DANGER WARNING CAUTION NOTICE"),
    "sop": (to_sop_html, "DANGER WARNING"),
}
# A signal word that begins what it stands in, with or without the sign before it.
HEADED = re.compile(r'>\s*(<svg class="triangle" (?:[^>]*>)*?</svg>)?\s*(?:<span>)?(DANGER|WARNING|CAUTION|NOTICE)\s*<')


@pytest.fixture(scope="module")
def tree() -> Procedure:
    return make_procedure(JOB)


@pytest.mark.parametrize("paper", PAPERS)
def test_each_signal_word_has_the_sign_and_a_notice_has_none(tree: Procedure, paper: str) -> None:
    make, due = PAPERS[paper]
    found = HEADED.findall(make(tree))
    assert {word for _, word in found} == set(due.split())
    assert all(bool(sign) is (word != "NOTICE") for sign, word in found)


@pytest.mark.parametrize("paper", PAPERS)
def test_every_one_of_them_is_printed(tree: Procedure, paper: str) -> None:
    page = PAPERS[paper][0](tree)
    printed = pypdfium2.PdfDocument(to_pdf(page, tree.title))
    signs = sum(one.get_textpage().get_text_range().count(TRIANGLE) for one in printed)
    assert signs == sum(word != "NOTICE" for _, word in HEADED.findall(page)) > 0
