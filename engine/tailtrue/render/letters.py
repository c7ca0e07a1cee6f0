"""How wide letters are, in thousandths of their height, as the first letter faces of a sheet share it."""

from collections import defaultdict
from collections.abc import Iterable, Mapping

# A letter that is not named is as wide as a digit.
_DIGIT = 556


def _widths(*named: tuple[int, str]) -> Mapping[str, int]:
    return defaultdict(lambda: _DIGIT, {letter: width for width, letters in named for letter in letters})


PLAIN = _widths(
    (191, "'"),
    (222, "ijl"),
    (278, " \u00a0!,./:;I[]\\ft"),
    (333, "()-r`"),
    (355, '"'),
    (389, "*"),
    (469, "^"),
    (500, "Jckvsxyz"),
    (584, "+<=>"),
    (611, "FTZ"),
    (667, "ABEKPSVXY&"),
    (722, "CDHNRUw"),
    (778, "GOQ"),
    (833, "Mm"),
    (889, "%"),
    (944, "W"),
    (1015, "@"),
)
BOLD = _widths(
    (238, "'"),
    (278, " \u00a0,./I\\ijl"),
    (333, "!()-:;[]`ft"),
    (389, "*r"),
    (474, '"'),
    (500, "z"),
    (584, "+<=>^"),
    (611, "FLTZ?bdghnopqu"),
    (667, "EPSVXY"),
    (722, "ABCDHKNRU&"),
    (778, "GOQw"),
    (833, "M"),
    (889, "%m"),
    (944, "W"),
    (975, "@"),
)


def width(text: str, *, bold: bool = False) -> float:
    """The width of a text on one line, in ems.

    >>> width("mm"), width("mm", bold=True)
    (1.666, 1.778)
    """
    return sum(map((BOLD if bold else PLAIN).__getitem__, text)) / 1000


_SPACE = width(" ")


def lines_filled(words: Iterable[float], room: float) -> int:
    """How many lines words fill, each given by its width; a word that is longer than the room stands alone. All in ems.

    >>> lines_filled([3.0, 2.0, 4.0], 6.0)
    2
    """
    lines, filled = 0, 0.0  # the second is what is filled of the last line, with its last space
    for word in words:
        if word:
            if filled and filled + word > room:
                lines, filled = lines + 1, 0.0
            filled += word + _SPACE
    return lines + (filled > 0)
