"""A number set by hand is marked, and every paper on which the mark stands says what it means."""

from collections.abc import Callable

import pytest

from tailtrue.advise import make_procedure
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure
from tailtrue.render.numbers import BY_HAND
from tailtrue.render.record_page import to_record_html, to_record_markdown
from tailtrue.render.safety_markdown import to_safety_markdown
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sop_page import to_sop_html, to_sop_markdown
from tailtrue.render.words import BY_HAND_MEANS

from .test_pdf import EXAMPLES

PAPERS: dict[str, tuple[Callable[[Procedure], str], ...]] = {
    "safety": (to_safety_html, to_safety_markdown),
    "sop": (to_sop_html, to_sop_markdown),
    "record": (to_record_html, to_record_markdown),
}


def by_hand(tree: Procedure) -> Procedure:
    """The same with one number of each paper set by hand."""
    number = Figure(fact="align.limit", value=0.02, unit="mm", rounding="difference", set_by="KM")
    line = ("Not beyond ", number, ".")
    assert tree.record is not None
    assert tree.sop is not None
    waste = tree.sop.waste[0].model_copy(update={"text": line})
    return tree.model_copy(
        update={
            "stop_at_once": (line,),
            "record": tree.record.model_copy(update={"read": (line,)}),
            "sop": tree.sop.model_copy(update={"waste": (waste,)}),
        }
    )


@pytest.mark.parametrize("name", PAPERS)
def test_the_mark_is_explained_where_it_stands_and_nowhere_else(name: str) -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    for make in PAPERS[name]:
        marked, plain = make(by_hand(tree)), make(tree)
        assert BY_HAND in marked.replace(BY_HAND_MEANS, "")
        assert marked.count(BY_HAND_MEANS) == 1
        assert BY_HAND not in plain
