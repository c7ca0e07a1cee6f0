"""Tags to hang on a lathe: how the tailstock was last found, and that it is set over. Cut along the broken lines."""

from collections.abc import Sequence

from tailtrue.papers import MachineTag, SetOverTag
from tailtrue.render.paper import page

ACROSS, DOWN = 2, 3
CHECKED = "Tailstock last checked"
SET_OVER = "TAILSTOCK SET OVER"
BACK = "Back to nought"
BLANKS = ("set over by, on", "corrections, each with its way", "returned, bar read, by")


def tags_html(tags: Sequence[MachineTag]) -> str:
    """Tags, six on a page, on the paper of the first one."""
    per_page = ACROSS * DOWN
    pages = []
    for start in range(0, len(tags), per_page):
        here: list[MachineTag | None] = list(tags[start : start + per_page])
        here += [None] * (-len(here) % ACROSS)
        pages.append([here[row : row + ACROSS] for row in range(0, len(here), ACROSS)])
    return page("tags.html.j2", tags[0].head, pages=pages, checked=CHECKED)


def set_over_html(tag: SetOverTag) -> str:
    """The tag that hangs on the start lever while the tailstock is set over."""
    return page("set-over-tag.html.j2", tag.head, tag=tag, title=SET_OVER, back=BACK, blanks=BLANKS)
