"""Large print: the style of a sheet with its letters enlarged, nothing smaller than the least."""

import re

# Customary sizes of large print begin at 16 points; what was the size of the body becomes the least.
LEAST = 16.0
_BODY = 10.5
# A mark that already crosses the whole page stays as it is.
_LARGE_ENOUGH = 40.0
_SIZE = re.compile(r"(?P<before>\bfont(?:-size)?:\s*(?:\d+ )?)(?P<points>\d*\.?\d+)pt")


def enlarged(css: str) -> str:
    """A style sheet with every size of letters enlarged.

    >>> enlarged(".do { font-size: 10.5pt; } .value { font-size: 12.5pt; } .trace { font-size: 7.5pt; border: 1pt solid }")
    '.do { font-size: 16pt; } .value { font-size: 19pt; } .trace { font-size: 16pt; border: 1pt solid }'
    """
    return _SIZE.sub(_enlarge, css)


def _enlarge(found: re.Match[str]) -> str:
    points = float(found["points"])
    if points < _LARGE_ENOUGH:
        points = max(LEAST, round(points * LEAST / _BODY, 1))
    return f"{found['before']}{points:g}pt"
