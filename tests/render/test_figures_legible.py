"""The drawings of the making can be read: ink, lettering, words clear of each other on any sizes, nothing left unsaid."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures import figure_of
from tailtrue.render.figures.plate import WIDTH
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.templates import style

from .drawn import faults
from .reading import read_page
from .sample_drawings import PLANS, drawings
from .sound_drawings import sound

_POINT = 25.4 / 72


def test_ink_is_black_white_or_grey() -> None:
    rules = [line for line in style("A4").splitlines() if ".ink" in line]
    assert rules
    colours = re.findall(r"#[0-9a-fA-F]+", " ".join(rules))
    for colour in colours:
        digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
        assert digits[:2] == digits[2:4] == digits[4:], colour
    assert not re.search(r"(?:fill|stroke): *(?!none|#|currentColor)[a-z]", " ".join(rules))
    for name in PLANS:
        assert not re.search(r"(?:style|fill|stroke|opacity)=", figure_of(sound(name), "metric"))


def test_lettering_and_lines_are_large_enough_at_the_printed_width() -> None:
    css = style("A4")
    printed = re.search(r"\.ink\.small \{ width: (\d+)mm", css)
    assert printed
    scale = float(printed[1]) / WIDTH
    size = re.search(r"\.ink text \{ font-size: ([\d.]+)px", css)
    assert size
    assert float(size[1]) == TEXT_HEIGHT
    assert TEXT_HEIGHT * scale / _POINT >= 9
    widths = [float(found) for found in re.findall(r"\.ink [^{]*\{[^}]*stroke-width: ([\d.]+)px", css)]
    assert widths
    assert min(widths) * scale / _POINT >= 0.35
    used = {
        kind
        for name in PLANS
        for kind in re.findall(r'<(?:path|rect|circle) class="([^"]+)"', figure_of(sound(name), "metric"))
    }
    for kind in (kind for kinds in used for kind in kinds.split()):
        assert f".ink .{kind} {{" in css, kind


@settings(max_examples=150, deadline=None)
@given(drawings(), st.sampled_from(["metric", "inch"]))
def test_no_words_touch_and_nothing_leaves_the_drawing_whatever_the_sizes(one: Drawing, dials: Dials) -> None:
    assert faults(figure_of(one, dials)) == []


@pytest.mark.parametrize("name", ["bar-in-spindle", "bar-in-steady"])
def test_a_bar_that_is_not_to_scale_says_so(name: str) -> None:
    assert "not to scale" in read_page(figure_of(sound(name), "metric")).words


def test_only_a_spacer_is_told_to_come_out() -> None:
    told = "Spacer OUT before the spindle starts"
    assert told in read_page(figure_of(sound("blank-on-spacer"), "metric")).words
    assert told not in read_page(figure_of(sound("blank-in-jaws"), "metric")).words


def test_a_set_over_without_a_way_is_not_drawn() -> None:
    odd = sound("tailstock-set-over").model_copy(update={"labels": {"way": "over there"}})
    with pytest.raises(ValueError, match="which way the tailstock goes"):
        figure_of(odd, "metric")


def test_a_kind_nobody_draws_is_named() -> None:
    odd = sound("boring-reach").model_copy(update={"kind": "boring-rich"})
    with pytest.raises(ValueError, match="nobody draws the kind boring-rich"):
        figure_of(odd, "metric")


@pytest.mark.parametrize("name", sorted(name for name in PLANS if sound(name).dimensions))
def test_a_missing_dimension_is_named_by_every_kind(name: str) -> None:
    bare = sound(name).model_copy(update={"dimensions": {}})
    with pytest.raises(ValueError, match=f"the drawing {name} lacks its"):
        figure_of(bare, "metric")
