"""What a shop says beside the shipped words: those stay, and nothing of the shop sends a hand to turning work."""

import re
from collections.abc import Iterable, Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Text

_SENTENCE = re.compile(r"(?<=[.!?;])\s+")
_BAN = re.compile(r"^(?:never|no|nobody)\b|\b(?:do not|don't|never|nobody|must not|cannot)\b", re.IGNORECASE)
_TURNS = (
    r"(?:turn(?:s|ing)?|run(?:s|ning)?|spin(?:s|ning)?|rotat(?:es|ing)|revolv(?:es|ing)|mov(?:es|ing)|in motion|at speed"
    r"|under power)"
)
_TO_WORK = (
    r"(?:hold|measure|gauge|wipe|clean|touch|feel|file|deburr|grip|pull|push|press|lay|rest|catch|clear|pick|steady|brush"
    r"|polish|tighten|loosen|oil|reach|lean|take|put)"
)
_HAND_AT_TURNING = re.compile(
    rf"\b{_TO_WORK}(?:s|es|ing)?\b[^.;]*\b(?:while|when|as)\b[^.;]*\b{_TURNS}\b"
    rf"|\b(?:while|when|as)\b[^.;]*\b{_TURNS}\b[^.;]*\b{_TO_WORK}\b"
    rf"|\b{_TO_WORK}(?:s|es|ing)?\b[^.;]*\b{_TURNS} (?:work|bar|chuck|spindle|collar|piece|tool)\b",
    re.IGNORECASE,
)
_GUARD_OFF = re.compile(
    r"\b(?:open|remove|lift|swing|take|tie|tape|bypass|bridge|override|defeat|wedge|prop|fold|unscrew)(?:s|ing)?\b"
    r"[^.;]*\b(?:guard|shield|interlock|cover)s?\b(?! (?:from|on|to))|\bwithout (?:the |a )?(?:guard|shield|glasses)\b",
    re.IGNORECASE,
)
_GLOVES_ON = re.compile(r"\b(?:wear|put on|keep on|use|hold|with|in)\b[^.;]*\b(?:gloves?|mitts?|mittens)\b", re.IGNORECASE)
_RAG = re.compile(
    r"\b(?:hold|press|lay|wrap|use|wipe|polish|rub|put)(?:s|ing)?\b[^.;]*\b(?:rags?|cloth|emery|abrasive|waste)\b",
    re.IGNORECASE,
)
_CHIP_BY_HAND = re.compile(r"\b(?:chips?|swarf|curls?)\b[^.;]*\b(?:by hand|hands?|fingers?)\b", re.IGNORECASE)
_BRAKED = re.compile(r"\b(?:stop|slow|brake)\b[^.;]*\b(?:by hand|hands?|palm|rag)\b", re.IGNORECASE)
_LEFT_OUT = re.compile(
    r"\b(?:never|do not|don't|need not|no need to)\b[^.;]*\b(?:stop the|isolate|close the|wear (?:the )?glasses)\b",
    re.IGNORECASE,
)
_STOPPED = re.compile(
    r"\b(?:stop|isolate)\b[^.;]*\b(?:spindle|lathe|machine)\b"
    r"|\b(?:spindle|lathe|machine|work) (?:is )?(?:stopped|still|isolated)"
    r"|\bbench\b|\bbin\b|\bpower off\b",
    re.IGNORECASE,
)
_BY_HAND_ALWAYS = (_HAND_AT_TURNING, _CHIP_BY_HAND, _BRAKED)
_UNLESS_STOPPED = (_GUARD_OFF, _GLOVES_ON, _RAG)


def shipped_words_stay(sheet: Sheet) -> Iterator[Fault]:
    """A caution or step that a shop put words beside says every shipped line, and marks its own as its own."""
    for where, caution in sheet.cautions:
        yield from _kept(sheet, "caution", caution.id, where, caution.avoid, caution.of_shop)
        if caution.of_shop and not caution.shop_rule:
            yield Fault(where, f'lines of the caution "{caution.id}" are said to be of the shop, which has no rule for it')
    for placed in sheet.steps:
        yield from _kept(sheet, "step", placed.step.id, placed.where, placed.step.text, placed.step.of_shop)


def _kept(sheet: Sheet, what: str, name: str, where: str, lines: tuple[Text, ...], ours: int) -> Iterator[Fault]:
    kept = sheet.shop.kept.get((what, name))
    if kept is None:
        if ours:
            yield Fault(where, f'no rule of the shop puts words beside the {what} "{name}"')
        return
    shipped = [words_of(line, "□") for line in lines[: len(lines) - ours]]
    for line in kept:
        if not any(_stands(line, words) for words in shipped):
            yield Fault(where, f'the {what} "{name}" no longer says as shipped: {"...".join(line)}')
    if len(shipped) != len(kept):
        yield Fault(where, f'the {what} "{name}" has {len(shipped)} lines that pass for shipped, it has {len(kept)}')


def _stands(pieces: Iterable[str], words: str) -> bool:
    """Whether the typed pieces of a line stand in it in their order, whatever fills the places between them."""
    return re.fullmatch(".*".join(("", *map(re.escape, pieces), "")), words) is not None


def no_act_that_maims(sheet: Sheet) -> Iterator[Fault]:
    """No line that a shop wrote asks for a hand, rag or glove at turning work, nor takes a guard or a control away."""
    added = {one.name for one in sheet.shop.shop_rules if one.kind == "add"}
    for where, caution in sheet.cautions:
        if caution.shop_rule:
            ours = caution.avoid if caution.id in added else caution.avoid[len(caution.avoid) - caution.of_shop :]
            yield from _acts(where, ours, halted=False)
    for placed in sheet.steps:
        step = placed.step
        if step.of_shop:
            if step.machine == "turning":
                yield Fault(placed.where, "the shop put words into a step in which the spindle turns")
            yield from _acts(placed.where, step.text[len(step.text) - step.of_shop :], halted=step.machine != "turning")
    for finding in sheet.procedure.findings:
        if finding.shop_rule:
            yield from _acts("findings", (finding.text,), halted=False)


def _acts(where: str, lines: Iterable[Text], *, halted: bool) -> Iterator[Fault]:
    for line in lines:
        for sentence in _SENTENCE.split(words_of(line, "□")):
            found = _LEFT_OUT.search(sentence)
            if not _BAN.search(sentence):
                halted = halted or bool(_STOPPED.search(sentence))
                looked = _BY_HAND_ALWAYS if halted else (*_BY_HAND_ALWAYS, *_UNLESS_STOPPED)
                found = found or next(filter(None, (one.search(sentence) for one in looked)), None)
            if found:
                yield Fault(where, f'a line of the shop asks for what maims, or takes a control away: "{found[0]}"')
