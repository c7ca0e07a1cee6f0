"""What the templates and the style sheet keep to."""

import ast
import re
from pathlib import Path
from typing import get_type_hints

import pytest
from jinja2 import Template, TemplateSyntaxError, UndefinedError, meta
from markupsafe import Markup

import tailtrue.render
from tailtrue.places import templates_folder
from tailtrue.render.page import Page
from tailtrue.render.plain_code import MARKED
from tailtrue.render.templates import template

TEMPLATES = sorted(templates_folder().rglob("*.j2"))
MODULES = sorted(Path(tailtrue.render.__file__).parent.glob("*.py"))
STYLE = (templates_folder() / "sheet.css").read_text(encoding="utf-8")
ALLOWED = {
    "tailtrue.kept",
    "tailtrue.papers",
    "tailtrue.parts",
    "tailtrue.procedure",
    "tailtrue.places",
    "tailtrue.render",
    "tailtrue.record_sheet",
    "tailtrue.review",
    "tailtrue.work_record",
    "tailtrue.shop_sheet",
}


def made(text: str) -> Template:
    """A template of this text, compiled as ours are."""
    return template("procedure.html.j2").environment.from_string(text)


def test_there_are_templates_and_modules() -> None:
    assert len(TEMPLATES) >= 10
    assert len(MODULES) >= 8


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_no_number_is_typed_in_a_template(path: Path) -> None:
    text = re.sub(r"{#.*?#}|{%.*?%}|{{.*?}}|<[^>]*>", " ", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert not re.findall(r"\d+", text)


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_a_template_says_what_it_expects(path: Path) -> None:
    first = path.read_text(encoding="utf-8").split("#}")[0]
    assert first.startswith("{#")
    assert "Expects" in first
    # Every name that is handed over, beside what the template sets for itself.
    text = path.read_text(encoding="utf-8")
    used = meta.find_undeclared_variables(template("card.html.j2").environment.parse(text))
    own = set(re.findall(r"\w+", " ".join(re.findall(r"{% (?:set|for) (.*?)(?: =| in) ", text))))
    told = set(re.findall(r"\w+", first))
    assert used - own - told == set()


def test_a_template_cannot_name_what_is_not_there() -> None:
    with pytest.raises(UndefinedError):
        template("procedure.html.j2").render()


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.name)
def test_the_page_knows_nothing_of_machining(path: Path) -> None:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            names = [node.module]
        for name in names:
            assert not name.startswith("tailtrue") or any(name == one or name.startswith(f"{one}.") for one in ALLOWED)


def test_the_style_is_black_white_and_without_a_grid() -> None:
    colours = set(re.findall(r"#[0-9a-fA-F]{3,6}\b", STYLE))
    assert colours <= {"#000", "#fff", "#666", "#e4e4e4"}
    assert not re.search(r"\b(grid|rgb|hsl|var\(|url\(|@import|@font-face)", STYLE)


def test_nothing_is_set_too_small_to_read() -> None:
    sizes = [float(size) for size in re.findall(r"(?:font-size: |font: (?:\d+ )?)([\d.]+)pt", STYLE)]
    assert len(sizes) > 20
    assert min(sizes) >= 7.5


def rule(selector: str) -> str:
    found = re.search(rf"^{re.escape(selector)} {{([^}}]*)}}", STYLE, flags=re.MULTILINE)
    assert found, selector
    return found[1]


def length(selector: str, name: str, unit: str) -> float:
    found = re.search(rf"(?:^|[ ;]){name}: ([\d.]+){unit}", rule(selector))
    assert found, (selector, name)
    return float(found[1])


def test_hands_find_room_to_write_and_to_tick() -> None:
    assert length(".line", "height", "mm") >= 8
    assert length(".line", "width", "mm") >= 30
    assert length(".box", "height", "mm") >= 5
    assert length(".box", "width", "mm") >= 5
    assert length(".do", "font-size", "pt") >= 10.5
    assert length(".message .says", "font-size", "pt") >= 9.5
    assert length(".cautions", "font-size", "pt") >= 9.5
    assert length(".back", "font-size", "pt") >= 7.5
    assert length(".settings .value", "font-size", "pt") >= 12.5
    assert "tabular-nums" in rule(".settings .value")
    assert "right" in rule(".settings .value")


@pytest.mark.parametrize("selector", [".step", ".message", ".hold", ".look-up .frame", "figure"])
def test_what_belongs_together_stays_on_one_page(selector: str) -> None:
    assert "break-inside: avoid" in rule(selector)


@pytest.mark.parametrize(("paper", "width", "height"), [("a4", 210.0, 297.0), ("letter", 215.9, 279.4)])
def test_both_papers_have_the_same_live_area(paper: str, width: float, height: float) -> None:
    text = (templates_folder() / f"paper_{paper}.css").read_text(encoding="utf-8")
    found = re.search(r"margin: ([\d.]+)mm ([\d.]+)mm ([\d.]+)mm ([\d.]+)mm", text)
    assert found
    top, right, bottom, left = map(float, found.groups())
    assert width - left - right == pytest.approx(186)
    assert height - top - bottom == pytest.approx(257)
    assert 16 <= left <= 20  # room for punched holes
    assert min(top, right, bottom) >= 8  # no printer reaches the very edge


@pytest.mark.parametrize("name", sorted(MARKED))
def test_what_is_not_escaped_again_is_markup_already(name: str) -> None:
    assert get_type_hints(getattr(Page, name))["return"] is Markup


def test_a_thing_said_on_a_condition_is_nothing_without_it() -> None:
    shown = made('<i>{{ "<b>" if said }}</i>')
    assert [shown.render(said=said) for said in (True, False)] == ["<i>&lt;b&gt;</i>", "<i></i>"]


def test_a_macro_takes_its_things_in_order_and_gives_markup() -> None:
    shown = "{% macro told(what, how='plainly') %}<i>{{ what }}, {{ how }}</i>{% endmacro %}"
    assert made(f"{shown}{{{{ told(said) }}}}{{{{ told(said, '&') | trim }}}}").render(said="<b>") == (
        "<i>&lt;b&gt;, plainly</i><i>&lt;b&gt;, &amp;</i>"
    )
    with pytest.raises(UndefinedError, match="what"):
        made(f"{shown}{{{{ told() }}}}").render()


def test_a_loop_tells_where_it_is() -> None:
    told = (
        "{{ loop.index0 }}{{ loop.index }}{{ loop.length }}{{ '(' if loop.first }}{{ ')' if loop.last else loop.nextitem }}"
    )
    assert made(f"{{% for one in things if one %}}{told}.{{% endfor %}}").render(things=iter("a")) == "011()."
    assert made(f"{{% for one in things %}}{told}.{{% endfor %}}").render(things="ab") == "012(b.122)."


def test_what_a_template_is_handed_is_known_in_its_macros_and_only_there() -> None:
    inside = "{% macro told(said) %}{{ said }}{{ more }}{% endmacro %}{{ told(1) }}"
    assert made(inside).render(said=2, more=3) == "13"
    with pytest.raises(UndefinedError, match="more"):
        made(inside).render(said=2)


def test_a_place_is_never_an_attribute_and_a_call_takes_nothing_unfolded() -> None:
    assert made("{{ words['upper'] }}").render(words={"upper": "<"}) == "&lt;"
    with pytest.raises(TypeError):
        made("{{ words['upper'] }}").render(words="text")
    with pytest.raises(TemplateSyntaxError):
        made("{{ words(*things) }}")
