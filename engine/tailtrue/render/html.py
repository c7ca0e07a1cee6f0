"""A procedure as one HTML file that needs nothing beside it: no network, font or picture; a script of its own."""

from markupsafe import Markup

from tailtrue.procedure import Drawing, LookUp, Procedure
from tailtrue.render import words
from tailtrue.render.columns import abreast
from tailtrue.render.drawing import bar_drawing
from tailtrue.render.figures import figure_of
from tailtrue.render.move import move_drawing
from tailtrue.render.page import Page
from tailtrue.render.pictograms import pictograms
from tailtrue.render.tablet import script, tablet_style
from tailtrue.render.templates import style, template


def _move(look_up: LookUp | None) -> Markup:
    # The arrows of the drawing tell a move: none is drawn where nothing can be moved.
    return Markup(move_drawing(look_up) if look_up and look_up.can_move else "")


def to_html(procedure: Procedure, *, large: bool = False) -> str:
    """The whole page, ready to be read on a screen or printed; in large print if asked."""
    title = procedure.title
    drawn: dict[str, list[tuple[Drawing, Markup]]] = {}
    for drawing in procedure.drawings:
        drawn.setdefault(drawing.place, []).append((drawing, Markup(figure_of(drawing, title.dials))))
    return template("procedure.html.j2").render(
        p=procedure,
        page=Page(procedure),
        words=words,
        abreast=abreast,
        bar=Markup(bar_drawing(procedure.drawing, title.dials)) if procedure.drawing else "",
        drawn=drawn,
        pictograms=pictograms(procedure.signs),
        move=_move(procedure.look_up),
        css=Markup(style(title.paper, large=large)),
        tablet_css=Markup(tablet_style()),
        large=large,
        script=script(),
    )
