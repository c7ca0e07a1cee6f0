"""A page in a browser: its sizes, contrasts and colours as measured there, and walking through its steps."""

import json
from pathlib import Path

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import BrowserContext, Page

TABLET = {"width": 1024, "height": 1366}
LEAST, LEAST_FOR_NUMBERS = 4.5, 7.0  # WCAG 2.2, 1.4.3 and 1.4.6
NARROW = {"width": 320, "height": 640}  # 1280 points at four times the size

# Text that is seen and is weaker than it may be, with how much is seen. Its colours are its own, and that of the nearest
# ancestor that paints behind it, which is looked for once for each element.
_WEAK = """([least, leastForNumbers]) => {
  const channels = (colour) => colour.match(/[\\d.]+/g).map(Number);
  const light = (c) => { const v = c / 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
  const luminance = ([r, g, b]) => 0.2126 * light(r) + 0.7152 * light(g) + 0.0722 * light(b);
  const ratio = (a, b) => { const [x, y] = [luminance(a), luminance(b)]; return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05); };
  const grey = ([r, g, b]) => { const y = 0.299 * r + 0.587 * g + 0.114 * b; return [y, y, y]; };
  const grounds = new Map();
  const ground = (one) => {
    if (!one) return [255, 255, 255];
    if (!grounds.has(one)) {
      const back = channels(getComputedStyle(one).backgroundColor);
      grounds.set(one, back.length < 4 || back[3] > 0 ? back : ground(one.parentElement));
    }
    return grounds.get(one);
  };
  let seen = 0;
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node; (node = walker.nextNode()); ) {
    const owner = node.parentElement;
    if (!node.data.trim() || !owner.checkVisibility({ visibilityProperty: true }) || owner.closest("[aria-hidden=true], script, style, template, title, desc")) continue;
    const drawn = owner.closest("svg");
    const ink = channels(getComputedStyle(owner)[drawn ? "fill" : "color"]);
    const behind = ground(owner);
    const [colour, shade] = [ratio(ink, behind), ratio(grey(ink), grey(behind))];
    seen += 1;
    if (Math.min(colour, shade) < (/\\d/.test(node.data) ? leastForNumbers : least))
      found.push(`${node.data.trim().slice(0, 40)}: ${colour.toFixed(1)} ${shade.toFixed(1)}`);
  }
  return [seen, found];
}"""

_COLOURED = """() => {
  const names = ["color", "backgroundColor", "borderTopColor", "borderLeftColor", "outlineColor", "fill", "stroke"];
  const found = new Set();
  for (const one of document.querySelectorAll("html, body, body *")) {
    const style = getComputedStyle(one);
    for (const name of names) {
      const parts = (style[name].match(/[\\d.]+/g) ?? []).map(Number);
      if (parts.length >= 3 && (parts[0] !== parts[1] || parts[1] !== parts[2])) found.add(`${one.tagName} ${name} ${style[name]}`);
    }
  }
  return [...found];
}"""

_SMALL_TARGETS = """() => [...document.querySelectorAll("button, input, a[href], .tick")].filter((one) => {
  if (!one.checkVisibility()) return false;
  if (one.matches(".tick input")) return false;
  const box = one.getBoundingClientRect();
  return box.width < 44 || box.height < 44;
}).map((one) => one.outerHTML.slice(0, 100))"""

# Two rules take three quarters of the time on a long page, and say nothing of it that shorter papers in the same styles do
# not: contrast, which `weak` measures more strictly on every page, and whether links are told from the words about them.
CONTRAST, LINKS = "color-contrast", "link-in-text-block"
# What passes is only counted: to hand over each thing that does takes longer than to look at it.
_FAULTS = """(rules) => axe.run(document, { resultTypes: ["violations"], rules })
  .then((found) => JSON.stringify([found.passes.length, found.violations]))"""

# Turning as a person does: holds are released by a name, then Next is pressed.
_WALK = """(wanted) => {
  const [next, step] = ["[data-do=next]", ".of-step"].map((what) => document.querySelector(what));
  while (!step.textContent.startsWith(wanted)) {
    if (next.disabled) return false;
    const hold = [...document.querySelectorAll(".release")].find((one) => one.checkVisibility());
    if (hold && !hold.querySelector("[data-do=release]").hidden) {
      hold.querySelector("input").value = "J. Doe";
      hold.querySelector("[data-do=release]").click();
    }
    next.click();
  }
  return true;
}"""


def opened(device: BrowserContext, sheet: Path) -> Page:
    """A page opened on a device; a script that stops fails the test."""
    page = device.new_page()
    page.on("pageerror", lambda wrong: pytest.fail(f"the script stopped: {wrong}"))
    page.goto(sheet.as_uri())
    return page


def begin(page: Page) -> None:
    """Show one step at a time."""
    page.click("[data-do=begin]")


def press(page: Page, *keys: str) -> None:
    """Press keys one after the other."""
    for key in keys:
        page.keyboard.press(key)


def scroll_down(page: Page) -> None:
    """Bring the end of the page into sight."""
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")


def coloured(page: Page) -> list[str]:
    """Whatever is painted in a colour."""
    found: list[str] = page.evaluate(_COLOURED)
    return found


def small_targets(page: Page) -> list[str]:
    """What is pressed and is less than 44 px wide or high."""
    found: list[str] = page.evaluate(_SMALL_TARGETS)
    return found


def walk_to(page: Page, step: str) -> None:
    """Turn on to a step, releasing the holds on the way."""
    assert page.evaluate(_WALK, f"Step {step}"), f"there is no step {step}"


def is_at(page: Page) -> str:
    """The step that is shown, or the title of what stands before and after the steps."""
    return page.inner_text(".of-step") or page.inner_text(".of-phase")


def faults(page: Page, *slow: str) -> list[str]:
    """What axe-core finds serious or critical on the page as it stands; of the two slow rules, by those that are named."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE_SCRIPT)
    passes, violations = json.loads(page.evaluate(_FAULTS, {rule: {"enabled": rule in slow} for rule in (CONTRAST, LINKS)}))
    assert passes > 10, "the checks did not run"
    return [
        f"{one['id']}: {node['html'][:120]}"
        for one in violations
        if one["impact"] in ("serious", "critical")
        for node in one["nodes"]
    ]


def weak(page: Page) -> list[str]:
    """What is not dark enough on its ground, in colour or in grey."""
    seen, found = page.evaluate(_WEAK, [LEAST, LEAST_FOR_NUMBERS])
    assert seen > 5, "nothing was measured"
    return list(found)


def sideways(page: Page) -> int:
    """By how much the page is wider than the screen."""
    return int(page.evaluate("Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"))


# Text that stands beyond the paper, or beyond the cell that it is in.
_OVER = """() => {
  const edge = document.body.getBoundingClientRect().right;
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node; (node = walker.nextNode()); ) {
    const owner = node.parentElement;
    if (!node.data.trim() || !owner.checkVisibility() || owner.closest("svg, .standing, script, style, template")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const right = Math.max(...[...range.getClientRects()].map((one) => one.right));
    const cell = owner.closest("td, th, .word, .stop");
    const end = cell && getComputedStyle(cell).display !== "inline" ? cell.getBoundingClientRect().right : edge;
    if (right > Math.min(edge, end) + 1) found.push(`${node.data.trim().slice(0, 40)} ${Math.round(right - Math.min(edge, end))} px`);
  }
  return found;
}"""

_POINTS = """() => {
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node; (node = walker.nextNode()); ) {
    const owner = node.parentElement;
    if (!node.data.trim() || !owner.checkVisibility() || owner.closest("svg, script, style, template")) continue;
    found.push([node.data.trim(), parseFloat(getComputedStyle(owner).fontSize) * 0.75]);
  }
  return found;
}"""


def over_the_edge(page: Page) -> list[str]:
    """Text that sticks out of the paper or out of its cell."""
    found: list[str] = page.evaluate(_OVER)
    return found


def points(page: Page) -> list[tuple[str, float]]:
    """Each text outside drawings with the size of its letters."""
    return [(text, float(size)) for text, size in page.evaluate(_POINTS)]
