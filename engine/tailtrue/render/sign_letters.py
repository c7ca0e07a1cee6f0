"""Safety signs as letters of a face of our own. The maker of PDF draws a letter in a tenth of the time of its drawing.

The face has each sign for white paper and for a black ground; the style sheet of the PDF tells which stands where.
"""

import re
from base64 import b64encode
from collections.abc import Mapping
from functools import lru_cache

from tailtrue.places import templates_folder
from tailtrue.render.pictograms import pictogram
from tailtrue.render.symbols import SYMBOLS
from tailtrue.shop_sheet import Sign

FACE = "signs"
TRIANGLE = "\ue500"
_FIRST_OF = {"M": 0xE000, "P": 0xE100, "W": 0xE200, "E": 0xE300, "F": 0xE400}  # of the letters left to private use
_SHAPES = {"M": "disc", "P": "crossed-ring", "W": "triangle", "E": "square", "F": "square"}
_REST = r"(?:[^>]*>)*?</svg>"
# A mark, or signs side by side: they become one run of letters.
DRAWN = re.compile(rf'<svg class="(?:triangle" {_REST}|pictogram" {_REST}(?:<svg class="pictogram" {_REST})*)')
_MARK, _END = '<svg class="triangle" ', "</svg>"


def letter(code: str) -> str:
    """The letter that stands for a sign.

    >>> letter("W025") == "\\ue219"
    True
    """
    return chr(_FIRST_OF[code[0]] + int(code[1:]))


def letters(found: re.Match[str]) -> str:
    """Letters in place of drawings; drawings that no letter stands for are left as they are."""
    drawings = found[0]
    if drawings.startswith(_MARK):
        return f'<span class="triangle">{TRIANGLE}</span>'
    known = _letter_of()
    one_by_one = [known.get(drawing) for drawing in drawings.split(_END)[:-1]]
    return drawings if None in one_by_one else f'<i class="as-letters">{"".join(map(str, one_by_one))}</i>'


@lru_cache(maxsize=1)
def _letter_of() -> Mapping[str, str]:
    """The letter of each drawing."""
    signs = (Sign.model_validate({"code": code, "words": code, "shape": _SHAPES[code[0]]}) for code in SYMBOLS)
    return {pictogram(sign).removesuffix(_END): letter(sign.code) for sign in signs}


@lru_cache(maxsize=1)
def letter_face() -> str:
    """The face as part of a style sheet."""
    written = b64encode((templates_folder() / f"{FACE}.ttf").read_bytes()).decode()
    return f'@font-face {{ font-family: {FACE}; src: url("data:font/ttf;base64,{written}"); }}'
