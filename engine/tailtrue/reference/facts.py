"""Reference pages made from the knowledge: what a user may say in the four files."""

from tailtrue.given.catalogue import Catalogue
from tailtrue.given.entries import FILES, GivenFact

_HEAD = """# What goes into the four files

Made from the catalogue of facts with `tailtrue knowledge reference`; do not edit it by hand.

A job is four TOML files: the **job** names a **lathe**, a tool **crib** and a **stock** list. Every size is written as
text with its unit, `"25 mm"`, `"1 1/2 in"`, `"10 thou"`; the decimal mark is a point. What must be said has no default.
"""


def facts_page(catalogue: Catalogue) -> str:
    """The page of given facts, by file."""
    parts = [_HEAD]
    for file in FILES:
        facts = list(catalogue.of_file(file).values())
        plain = [fact for fact in facts if not fact.fields]
        parts.append(f"\n## {file}.toml\n")
        if plain:
            parts.append(f"`[{file}]`\n\n{_rows(plain)}")
        parts += [_table(file, fact) for fact in facts if fact.fields]
    return "\n".join(parts)


def _table(file: str, fact: GivenFact) -> str:
    return f"`[[{file}.{fact.key}]]` - {fact.spec.label}\n\n{_rows(list(fact.fields.values()))}"


def _rows(facts: list[GivenFact]) -> str:
    lines = ["| key | what it is | must | allowed | typical | how to find it |", "| --- | --- | --- | --- | --- | --- |"]
    for fact in facts:
        must = {"must": "yes", "may": "no", "default": f"no, `{_plain(fact.default)}`"}[fact.ask]
        how = fact.spec.how + (f"; without it {fact.if_missing}" if fact.if_missing else "")
        cells = (f"`{fact.key}`", fact.spec.label, must, _allowed(fact), f"`{fact.typical}`" if fact.typical else "", how)
        lines.append("| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |")
    return "\n".join(lines) + "\n"


def _plain(value: object) -> str:
    return {True: "true", False: "false"}.get(value, str(value)) if isinstance(value, bool) else str(value)


def _allowed(fact: GivenFact) -> str:
    if fact.spec.choices:
        return ", ".join(f"`{choice}`" for choice in fact.spec.choices)
    if fact.least_said:
        words = "".join(f", or `{word}`" for word in fact.words)
        return f"{fact.least_said} to {fact.most_said}{words}"
    return {"yes-no": "`true`, `false`", "date": "year-month-day"}.get(fact.spec.kind, "")
