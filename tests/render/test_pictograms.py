"""Safety signs in black and white: a shape for each kind, a figure of our own inside, words always beside it."""

import re

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
# Signs whose meaning no plain figure tells at this size: an empty shape, with code and words beside it.
EMPTY = {"M016", "W002", "M022", "M027", "P015", "W007", "W011", "W020", "W071", "M058", "P001"}


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


def test_every_figure_belongs_to_a_sign_and_stays_in_its_box() -> None:
    assert SYMBOLS.keys() <= SIGNS.keys()
    for code, symbol in SYMBOLS.items():
        for path in (symbol.lines, symbol.solids):
            for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", path):
                assert 3 <= float(x) <= 21, code
                assert 3 <= float(y) <= 21, code


def test_no_two_signs_of_a_sheet_look_the_same_but_those_without_a_figure(tree: Procedure) -> None:
    drawn = [pictogram(sign) for sign in tree.signs if sign.code not in EMPTY]
    assert len(set(drawn)) == len(drawn)


def test_a_sign_of_the_sheet_has_a_figure_or_is_known_to_have_none(tree: Procedure) -> None:
    without = {sign.code for sign in tree.signs if not any(SYMBOLS.get(sign.code, ("", "")))}
    assert without <= EMPTY


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
