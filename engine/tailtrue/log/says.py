"""What charts of the log say in words: lines of the knowledge, filled."""

from collections.abc import Mapping
from functools import cache

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.knowledge_file import knowledge_toml
from tailtrue.given.said_file import said_in
from tailtrue.given.toml_file import TomlFile
from tailtrue.places import knowledge_folder
from tailtrue.wording import Wording

SAYS_FILE = "alignment/log_says.toml"
_WORN = ("the.wear", "the.least")

# What each line is filled with.
FILLED_WITH: Mapping[str, tuple[str, ...]] = {
    "none": (), "before": ("the.sentence",), "moved": ("the.day",), "outside": ("the.day",),
    "few": ("the.checks", "the.since", "the.fewest"), "since_first": ("the.first",), "since_change": ("the.change",),
    "beyond": ("the.days",), "jump": ("the.day", "the.next_day"), "run": ("the.run", "the.day"), "drift": ("the.way",),
    "doubt": ("the.instrument", "the.doubt"),
    "noise": ("the.count", "the.since"), "again": ("the.days", "the.day", "the.why"), "sooner": ("the.occasions",),
    "wear": ("the.bar", "the.now", "the.tests"), "wear_no_least": ("the.wear",), "wear_worn_out": _WORN,
    "wear_since": ("the.wear", "the.since"), "wear_rate_unknown": _WORN,
    "wear_left": (*_WORN, "the.per_test", "the.left"),
}  # fmt: skip


def said(name: str, **words: object) -> str:
    """A line by its name, with its words.

    >>> said("drift", way="toward the tool")
    'The centre wanders steadily toward the tool: this is drift, not noise.'
    """
    text = _says()[name].fill(lambda place: (str(words[place.name.removeprefix("the.")]),))
    return "".join(map(str, text))


@cache
def _says() -> Mapping[str, Wording]:
    return read_says(knowledge_toml(knowledge_folder(), SAYS_FILE))


def read_says(file: TomlFile) -> Mapping[str, Wording]:
    """The lines of their file. Raises KnowledgeInvalid."""
    problems: list[Problem] = []
    found = said_in(file, problems)
    if problems:
        raise KnowledgeInvalid(problems)
    return found
