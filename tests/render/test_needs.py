"""What the job uses is told alike in every format, and nothing is said to be there that nobody stated."""

import re
from pathlib import Path

from tailtrue.advise import make_procedure
from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown
from tailtrue.render.words import GET_IT, HERE

from .sample import procedure

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"


def test_no_format_says_that_the_shop_has_what_nobody_stated() -> None:
    tree = make_procedure(JOB)
    assert any(need.id == "face-shield" for need in tree.needs)  # no file of this shop names one
    for page in (to_markdown(tree), to_html(tree)):
        gathering = page.partition(HERE)[2][:6000]
        assert gathering
        assert not re.search(r"in the shop|[Tt]he shop has", gathering)


def test_what_the_shop_does_not_have_is_marked_in_every_format() -> None:
    tree = procedure()
    there, lacking = (
        tree.model_copy(update={"needs": tuple(need.model_copy(update={"in_shop": here}) for need in tree.needs)})
        for here in (True, False)
    )
    for write in (to_markdown, to_html):
        assert write(lacking).count(GET_IT) == len(tree.needs) > 0
        assert GET_IT not in write(there)
