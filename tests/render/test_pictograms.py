"""Safety signs in black and white: a shape for each kind, a figure of our own inside, words always beside it."""

import re
from math import hypot

import pytest

from shops import EXAMPLES
from tailtrue.advise import knowledge, make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render.html import to_html
from tailtrue.render.pictograms import pictogram
from tailtrue.render.symbols import SYMBOLS
from tailtrue.render.templates import style
from tailtrue.shop_sheet import Sign

from .reading import read_page

SIGNS = {
    row.text("code"): Sign.model_validate({"code": row.text("code"), "words": row.text("name"), "shape": row.text("shape")})
    for row in knowledge().tables["safety/signs"]
}
# The bare prohibition is a ring and a bar, with nothing behind the bar.
EMPTY = {"P001"}
_ARGUMENTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "A": 7}
# Where a figure may be: inside the rim of its shape, in the box of 24 by 24.
_DISC, _RING, _SQUARE = 10.6, 10.6, (1.2, 22.8)


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def tree(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


def test_a_kind_of_sign_is_told_by_its_shape() -> None:
    ground = {code[0]: re.sub(r"<g.*?</g>", "", pictogram(sign)) for code, sign in SIGNS.items()}
    assert "<circle" in ground["M"]
    assert "bar" not in ground["M"]
    assert "<circle" in ground["P"]
    assert 'class="bar"' in ground["P"]
    assert "Z" in ground["W"]
    assert "<rect" in ground["E"]
    assert ground["E"] == ground["F"]
    for code, sign in SIGNS.items():
        assert re.sub(r"<g.*?</g>", "", pictogram(sign)) == ground[code[0]], code


def test_an_unknown_shape_is_refused() -> None:
    sign = Sign.model_construct(code="W001", words="warning", shape="star")
    with pytest.raises(ValueError, match="star"):
        pictogram(sign)


def _corners(path: str) -> list[tuple[float, float]]:
    """The points that a path goes through, and what draws its curves."""
    x = y = 0.0
    found: list[tuple[float, float]] = []
    for command, written in re.findall(r"([A-Za-z])([^A-Za-z]*)", path):
        numbers = [float(one) for one in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", written)]
        if command in "Zz":
            continue
        wide = _ARGUMENTS[command.upper()]
        assert numbers, path
        assert len(numbers) % wide == 0, path
        for start in range(0, len(numbers), wide):
            one = numbers[start : start + wide]
            moved = (x, y) if command.islower() else (0.0, 0.0)
            if command in "Hh":
                points = [(moved[0] + one[0], y)]
            elif command in "Vv":
                points = [(x, moved[1] + one[0])]
            elif command in "Aa":
                points = [(moved[0] + one[5], moved[1] + one[6])]
            else:
                points = [(moved[0] + one[at], moved[1] + one[at + 1]) for at in range(0, wide, 2)]
            found += points
            x, y = points[-1]
    return found


def _inside(shape: str, x: float, y: float) -> bool:
    if shape == "disc":
        return hypot(x - 12, y - 12) <= _DISC
    if shape == "crossed-ring":
        return hypot(x - 12, y - 12) * 0.9 <= _RING
    if shape == "square":
        return all(_SQUARE[0] <= one <= _SQUARE[1] for one in (x, y))
    across, down = 4.7 + 0.61 * x, 7.4 + 0.61 * y
    return down <= 21.2 and abs(across - 12) <= 10.9 * (down - 1.8) / 19.4


def test_every_code_has_a_figure_and_every_figure_a_code() -> None:
    assert {code for code in SIGNS if not any(SYMBOLS.get(code, ("", "")))} == EMPTY
    assert SYMBOLS.keys() <= SIGNS.keys()


def test_the_walk_of_a_path_sees_a_figure_that_leaves_its_shape() -> None:
    assert _corners("M4 5h2v-3L1 2Z") == [(4, 5), (6, 5), (6, 2), (1, 2)]
    assert not _inside("disc", 2, 2)
    assert not _inside("triangle", 2, 4)
    assert not _inside("square", 0, 12)
    assert not _inside("crossed-ring", 1, 3)


@pytest.mark.parametrize("code", sorted(SYMBOLS))
def test_a_figure_stays_inside_its_shape(code: str) -> None:
    for path in SYMBOLS[code]:
        for x, y in _corners(path):
            assert _inside(SIGNS[code].shape, x, y), (code, x, y)


def test_no_two_figures_of_a_shape_are_alike() -> None:
    drawn = [pictogram(sign) for sign in SIGNS.values()]
    assert len(set(drawn)) == len(drawn)
    for shape in {sign.shape for sign in SIGNS.values()}:
        solids = [SYMBOLS[code] for code, sign in SIGNS.items() if sign.shape == shape and code not in EMPTY]
        outlines = [tuple(sorted((round(x), round(y)) for path in one for x, y in _corners(path))) for one in solids]
        assert len(set(outlines)) == len(outlines), shape


def test_no_two_signs_of_a_sheet_look_the_same(tree: Procedure) -> None:
    drawn = [pictogram(sign) for sign in tree.signs]
    assert len(set(drawn)) == len(drawn)


def test_the_key_has_every_sign_with_its_words(tree: Procedure) -> None:
    found = next(read_page(to_html(tree)).all("ul", "signs-key"))
    key = [" ".join(one.words.split()) for one in found.all("li", "means")]
    cautions = [*tree.job_cautions]
    for phase in tree.phases:
        cautions += [*phase.cautions, *(one for step in phase.steps for one in step.cautions)]
    assert key == [f"{code} {SIGNS[code].words}" for code in sorted({code for one in cautions for code in one.signs})]


def test_a_caution_shows_the_shapes_of_its_signs_and_the_codes_of_those_without_a_figure(tree: Procedure) -> None:
    cautions = []
    for phase in tree.phases:
        cautions += [*phase.cautions, *(one for step in phase.steps for one in step.cautions)]
    drawn = 0
    found = read_page(to_html(tree)).all("div", "message")
    shown = {" ".join(message.words.split()): message for message in found if "again" not in message.attributes["class"]}
    for caution in (one for one in cautions if not one.again):
        words, message = next((words, one) for words, one in shown.items() if f"{caution.hazard}. {caution.harm}" in words)
        named = re.search(r"Signs ([A-Z0-9, ]+)\.", words)
        codes = named[1].split(", ") if named else []
        assert codes == [code for code in caution.signs if not any(SYMBOLS.get(code, ("", "")))]
        shapes = len([one for one in message.all("svg") if "pictogram" in one.attributes["class"]])
        assert shapes == len(caution.signs)
        drawn += shapes
    assert drawn > 20


def test_pictograms_are_black_and_white() -> None:
    rules = [line for line in style("A4").splitlines() if line.startswith(".pictogram")]
    colours = re.findall(r"(?:fill|stroke): *([^;} ]+)", " ".join(rules))
    assert set(colours) == {"#000", "#fff", "none"}
