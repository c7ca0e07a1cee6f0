"""How near what a record says must be to what its readings give, as the knowledge has it."""

from collections.abc import Mapping
from functools import cache

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.figures_file import figures_in
from tailtrue.given.knowledge_file import knowledge_toml
from tailtrue.given.said_file import completeness_problems
from tailtrue.given.toml_file import TomlFile
from tailtrue.places import knowledge_folder

AGREEMENT_FILE = "alignment/log_agreement.toml"
_FIGURES = ("difference", "move", "diameter_after", "result", "sweep_divisions", "places_read")


@cache
def agreement() -> Mapping[str, float]:
    """The figures that ship with the engine by name; lengths in mm. Raises KnowledgeInvalid."""
    return read_agreement(knowledge_toml(knowledge_folder(), AGREEMENT_FILE))


def read_agreement(file: TomlFile) -> Mapping[str, float]:
    """The figures of their file. Raises KnowledgeInvalid with all that is wrong with them."""
    problems: list[Problem] = []
    found = figures_in(file, problems)
    problems += completeness_problems(file.tables, _FIGURES, file)
    if problems:
        raise KnowledgeInvalid(problems)
    return found
