"""The safety review of a job: a page to fill in at the lathe."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import groupby

from markupsafe import Markup

from tailtrue.papers import Head
from tailtrue.parts import Blank, Text
from tailtrue.places import templates_folder
from tailtrue.procedure import Procedure
from tailtrue.render import safety_words, words
from tailtrue.render.columns import abreast
from tailtrue.render.large import enlarged
from tailtrue.render.marks import legend
from tailtrue.render.numbers import unit_name
from tailtrue.render.paper import page
from tailtrue.render.words import say
from tailtrue.review import Control, Rating, ReviewedHazard, WorkPart

_ALL_BUT_WEAK = frozenset({"eliminate", "substitute", "guard"})


class ReviewPage:
    """One review as templates and Markdown see it."""

    def __init__(self, procedure: Procedure) -> None:
        self._dials = procedure.title.dials
        self._review = procedure.safety_review

    def told(self, text: Text) -> str:
        """A text in words."""
        return say(text, self._dials)

    def unit(self, blank: Blank) -> str:
        """The unit beside a blank; lengths are written in the system of the dials."""
        return unit_name("in" if blank.unit == "mm" and self._dials == "inch" else blank.unit) if blank.unit else ""

    def groups(self) -> Iterator[tuple[WorkPart, tuple[ReviewedHazard, ...]]]:
        """Every activity with the hazards that are listed under it; some have none of their own."""
        for part in self._review.work:
            yield part, tuple(hazard for hazard in self._review.hazards if hazard.parts[0] == part.id)

    def high(self) -> tuple[ReviewedHazard, ...]:
        """The hazards that stay high."""
        return tuple(hazard for hazard in self._review.hazards if hazard.held is not None)

    def also(self, hazard: ReviewedHazard) -> str:
        """The other activities that meet a hazard."""
        return " ".join(hazard.parts[1:])

    def named(self, hazard: ReviewedHazard) -> str:
        """Who is hurt, where it is not the usual person."""
        return "" if hazard.who == self._review.usual_person else hazard.who

    def controls(self, hazard: ReviewedHazard) -> tuple[Control, ...]:
        """The controls to print: what counts, and what else would help unless the hazard is taken away and stays low."""
        gone = any(control.level == "eliminate" and control.state == "counted" for control in hazard.controls)
        return tuple(
            control
            for control in hazard.controls
            if control.state == "counted"
            or (control.state == "to-see" and (not gone or hazard.held is not None))
            or (hazard.held is not None and control.state == "not-here")
        )

    def wanting(self, hazard: ReviewedHazard) -> tuple[Control, ...]:
        """What would bring a high hazard down and is not known to be there."""
        return tuple(one for one in hazard.controls if one.state != "counted" and one.level in _ALL_BUT_WEAK)

    def matrix_rows(self) -> Iterator[tuple[int, str, tuple[tuple[int, str], ...]]]:
        """The likelihoods from the worst down: number, words, and score and class of each cell."""
        matrix = self._review.matrix
        for likelihood in range(len(matrix.likelihoods), 0, -1):
            cells = tuple(
                (likelihood * severity, band) for severity, band in enumerate(matrix.cells[likelihood - 1], start=1)
            )
            yield likelihood, self.told(matrix.likelihoods[likelihood - 1]), cells

    def lowers(self) -> str:
        """How far each kind of control lowers the likelihood."""
        return ", ".join(f"{level} {steps}" for level, steps in self._review.matrix.lowers.items())

    def runs(self, numbers: Iterable[str]) -> str:
        """Numbers of steps, those that follow each other drawn together."""
        return ", ".join(
            first if first == last else f"{first} to {last}" if _next(first) != last else f"{first}, {last}"
            for first, last in _runs(tuple(numbers))
        )

    def machine(self, states: Iterable[str]) -> str:
        """States of the machine in words."""
        return ", ".join(words.STATES[state] for state in states)


def _next(number: str) -> str:
    phase, _, step = number.rpartition(".")
    return f"{phase}.{int(step) + 1}"


def _runs(numbers: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """First and last of each run.

    >>> list(_runs(("1.2", "1.3", "2.1")))
    [('1.2', '1.3'), ('2.1', '2.1')]
    """

    def kept(pair: tuple[int, str]) -> tuple[str, int]:
        place, number = pair
        phase, _, step = number.rpartition(".")
        return phase, int(step) - place

    for _, run in groupby(enumerate(numbers), key=kept):
        found = [number for _, number in run]
        yield found[0], found[-1]


def figures_of(rating: Rating) -> str:
    """A rating as it is reckoned.

    >>> figures_of(Rating(severity=5, likelihood=2, score=10, band="high"))
    '5×2 = 10'
    """
    return f"{rating.severity}×{rating.likelihood} = {rating.score}"


def to_safety_html(procedure: Procedure, *, large: bool = False) -> str:
    """The review as one HTML file that needs nothing beside it; in large print if asked."""
    title = procedure.title
    head = Head(
        machine=title.machine,
        shop=title.shop,
        bar="",
        number=title.number,
        revision=title.revision,
        paper=title.paper,
        dials=title.dials,
        rules=title.knowledge_version,
        checksum=title.checksum,
    )
    return page(
        "safety.html.j2",
        head,
        large=large,
        p=procedure,
        r=procedure.safety_review,
        view=ReviewPage(procedure),
        figures_of=figures_of,
        safety=safety_words,
        abreast=abreast,
        headings=words.HEADINGS,
        review_due=words.REVIEW_DUE,
        overdue=words.OVERDUE,
        shop_rule=words.SHOP_RULE,
        legend=legend_of(procedure),
        safety_css=_style(large),
    )


def legend_of(procedure: Procedure) -> str:
    """What the marks on the review mean; it prints the stops of the sheet too."""
    return legend(procedure.safety_review, procedure.title, procedure.do_not_start, procedure.stop_at_once)


@lru_cache
def _style(large: bool) -> Markup:
    css = (templates_folder() / "safety.css").read_text(encoding="utf-8")
    return Markup(enlarged(css) if large else css)
