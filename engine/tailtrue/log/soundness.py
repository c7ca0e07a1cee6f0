"""The knowledge of the alignment log held against itself: its rules, its words, and what a record file may say."""

from collections.abc import Collection
from pathlib import Path

from tailtrue.errors import KnowledgeInvalid
from tailtrue.given.entries import Catalogue
from tailtrue.given.knowledge_file import knowledge_toml, source_problems
from tailtrue.given.said_file import said_problems
from tailtrue.log.agreement import AGREEMENT_FILE, read_agreement
from tailtrue.log.fields import RECORD_FILE, load_record_catalogue
from tailtrue.log.other_file import OTHERS_FILE, load_others_catalogue
from tailtrue.log.rules import RULES_FILE, read_rules
from tailtrue.log.says import FILLED_WITH, SAYS_FILE, read_says


def check_log(folder: Path, sources: Collection[str]) -> Catalogue:
    """The catalogue of a record of a folder, its rules and words being sound too. Raises KnowledgeInvalid."""
    catalogue = load_record_catalogue(folder)
    load_others_catalogue(folder)
    files = [knowledge_toml(folder, name) for name in (RULES_FILE, SAYS_FILE, RECORD_FILE, OTHERS_FILE, AGREEMENT_FILE)]
    read_rules(files[0])
    read_agreement(files[4])
    problems = [*said_problems(read_says(files[1]), FILLED_WITH, files[1])]
    problems += (problem for file in files for problem in source_problems(file, sources))
    if problems:
        raise KnowledgeInvalid(problems)
    return catalogue
