"""The safety signs: no code at a caution without its words, and every shape of the kind its code says."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

# What a sign of each kind looks like, by the first letter of its code.
_SHAPES = {"M": "disc", "P": "crossed-ring", "W": "triangle", "E": "square", "F": "square"}


def signs_told(sheet: Sheet) -> Iterator[Fault]:
    """Each code at a caution stands in the key with words, and each sign has the shape of its kind, here and in the SOP."""
    sop = sheet.procedure.sop
    told = {sign.code: sign.words.strip() for sign in sheet.procedure.signs}
    for where, caution in sheet.cautions:
        for code in caution.signs:
            if not told.get(code):
                yield Fault(where, f'the sign "{code}" stands without words on this sheet')
    for sign in (*sheet.procedure.signs, *(sop.signs if sop else ())):
        due = _SHAPES.get(sign.code[:1])
        if sign.shape != due:
            yield Fault(f"sign {sign.code}", f"it is drawn as a {sign.shape}, and its kind is a {due or 'thing unknown'}")
