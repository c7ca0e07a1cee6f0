"""Safety signs in black and white: the shape tells the kind, a figure of our own what it is about. Never without words."""

from collections.abc import Iterable, Mapping

from markupsafe import Markup

from tailtrue.render.symbols import SYMBOLS, Symbol
from tailtrue.shop_sheet import Sign

# Each shape: what is behind the figure, what is before it, where the figure goes, whether it is white on black.
_SHAPES: Mapping[str, tuple[str, str, str, bool]] = {
    "disc": ('<circle class="ground" cx="12" cy="12" r="11.4"/>', "", "", True),
    "square": ('<rect class="ground" x=".6" y=".6" width="22.8" height="22.8"/>', "", "", True),
    "crossed-ring": (
        '<circle class="rim" cx="12" cy="12" r="10.6"/>',
        '<path class="bar" d="M4.5 4.5L19.5 19.5"/>',
        ' transform="translate(1.2 1.2) scale(.9)"',
        False,
    ),
    "triangle": ('<path class="rim" d="M12 1.8L22.9 21.2H1.1Z"/>', "", ' transform="translate(4.7 7.4) scale(.61)"', False),
}


def pictogram(sign: Sign) -> str:
    """A sign as SVG, hidden from those who listen: its code and words stand beside it. ValueError for no known shape."""
    if sign.shape not in _SHAPES:
        raise ValueError(f'the sign {sign.code} has the shape "{sign.shape}"; there are {", ".join(_SHAPES)}')
    behind, before, place, white = _SHAPES[sign.shape]
    symbol = SYMBOLS.get(sign.code, Symbol())
    lines = f'<path class="lines" d="{symbol.lines}"/>' if symbol.lines else ""
    solids = f'<path class="solids" d="{symbol.solids}"/>' if symbol.solids else ""
    figure = f'<g class="{"white" if white else "black"}"{place}>{lines}{solids}</g>' if lines or solids else ""
    return f'<svg class="pictogram" viewBox="0 0 24 24" aria-hidden="true">{behind}{figure}{before}</svg>'


def pictograms(signs: Iterable[Sign]) -> Mapping[str, Markup]:
    """The pictogram of each sign by its code."""
    return {sign.code: Markup(pictogram(sign)) for sign in signs}
