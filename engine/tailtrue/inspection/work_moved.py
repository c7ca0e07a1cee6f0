"""Work, jaws and chucks are moved only where nothing can start; tools only where the spindle stands."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Text

_MOVE = r"(?:take|lift|draw|pull|push|put|set|slide|load|seat|turn|tap|lay|bring|drop)"
_ONE = r"(?:the|a|an|each|both|every|this|that|your)"
# A boring bar or a drill chuck is a tool: a word before the noun that makes it one keeps it out.
_WORK = r"(?:(?:test |finished |raw |short )?(?:bars?|collars?|blanks?|pieces?|work|slugs?|castings?|stub|plug|spacer))"
_WHERE = r"(?:out|home|off|in|into|between|from|on|onto|up|end for end|round|the other way|over|against)"
_HOLDER = r"(?<!drill )(?:chuck|jaws?|collet|driver|drive plate|face ?plate|dog|steady)"
_LOOSEN = r"(?:open|close|tighten|slacken|loosen|ease|change|reverse|grip|ungrip|unclamp)"

# Read in small letters: that is quicker than to look for both.
_ASKED = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\b{_MOVE} {_ONE} {_WORK} {_WHERE}\b",
        rf"\b{_LOOSEN} [^.]*?{_HOLDER}\b",
        rf"\b{_LOOSEN} {_ONE} {_WORK}\b",
        r"\btighten [^.]*\bkey positions?\b",
        rf"\b(?:take|lift|fit|screw|change|remove) {_ONE} (?:\w+[- ])?{_HOLDER}\b",
        r"\b(?:ease|draw|slacken|loosen|unlock|wind|back) [^.]*\bquill\b",
        r"\b(?:slacken|loosen|undo|unclamp) [^.]*\b(?:tailstock|bed clamp)\b",
        rf"\b(?:mount|remount) {_ONE} {_WORK}\b",
        r"\bwind the jaws\b|\bpush the centre home\b|\bseat the centre\b",
        r"\b(?:set-over|adjusting|side) screws?\b",
        rf"\bopen jaws\b|\binto the {_HOLDER}\b",
    )
)
_TOOL = re.compile(
    rf"\b(?:fit|seat|change|swap|take) {_ONE} (?:[\w-]+ ){{0,2}}(?:tool|drill|boring bar|cutter|chuck)\b(?! post)",
    re.IGNORECASE,
)
_ISOLATED = re.compile(r"\bisolate\b")
_STOPPED = re.compile(r"\bstop the spindle\b|\bspindle stopped\b", re.IGNORECASE)
# Their place is in the jaws: a step that uses one has hands in the chuck.
_KEYS = frozenset({"chuck-key", "collet-key"})


def nothing_can_start(sheet: Sheet) -> Iterator[Fault]:
    """Work goes in or out, and what holds it is worked, with the lathe isolated. Read from the words."""
    live = [(placed, _said(placed.step.text).lower()) for placed in sheet.steps if placed.step.machine != "isolated"]
    # Many steps stand in several phases: their words are read once.
    asked = {words: tuple(_asked(words)) for words in {words for _, words in live}}
    for placed, words in live:
        for tool in placed.step.tools:
            if tool in _KEYS:
                yield Fault(placed.where, f'"{tool}" is used and the machine is not isolated')
        for one in asked[words]:
            yield Fault(placed.where, f'"{one}" is asked for and the machine is not isolated')


def _asked(words: str) -> Iterator[str]:
    """What is asked for before the words have the lathe isolated."""
    for pattern in _ASKED:
        for found in pattern.finditer(words):
            if not _ISOLATED.search(words[: found.start()]):
                yield found[0].strip()


def tools_at_rest(sheet: Sheet) -> Iterator[Fault]:
    """A tool is fitted or taken off only after the spindle was stopped."""
    for placed in sheet.steps:
        if placed.step.machine != "turning":
            continue
        words = _said(placed.step.text)
        for found in _TOOL.finditer(words):
            if not _STOPPED.search(words[: found.start()]):
                yield Fault(placed.where, f'"{found[0].strip()}" is asked for while the spindle turns')


def _said(sentences: tuple[Text, ...]) -> str:
    return " ".join("".join(piece if isinstance(piece, str) else "#" for piece in text) for text in sentences)
