"""Why collars or bar are not of another material: what the table says of it, and every piece of it on the stock list."""

from collections.abc import Mapping

from tailtrue.explaining.said import Explanation, Line, Side, parts_of
from tailtrue.explaining.sources_said import source_data, source_lines
from tailtrue.facts import Fact
from tailtrue.store.knowledge import Knowledge

_TABLE = "materials/materials"
# The facts that are a material of the stock: the role it must have there, and the list of pieces that were weighed.
ROLES: Mapping[str, tuple[str, str]] = {
    "collar.material": ("collar", "collar.offers"),
    "bar.material": ("bar", "bar.offers"),
}


def materials(knowledge: Knowledge) -> tuple[str, ...]:
    """Every material that can be asked for."""
    return tuple(row.text("material") for row in knowledge.tables[_TABLE].rows)


def material(side: Side, name: str, word: str) -> Explanation:
    """One material in place of the one that was taken."""
    case = side.case
    row = case.knowledge.tables[_TABLE].one(material=word)
    role, weighed = ROLES[name]
    found = case.get(name)
    note = row.text("note") if row.cells.get("note") else row.cells.get("hazards") or ""
    if isinstance(found, Fact) and found.value == word:
        met = "It is what was taken here."
    elif role in row.text("roles"):
        met = "It would serve; another piece of the stock list was taken, or none of it is there."
    else:
        met = f"It does not serve: {note.split(';')[0]}."
    offers = case.value(weighed) or ()
    pieces = [Line((f"{one['label']}: {one['verdict']}; {one['reason']}",)) for one in offers if one.get("material") == word]
    keys = row.sources
    return Explanation(
        kind="material",
        name=f"{name}={word}",
        label=f"{found.spec.label}: {row.text('name')}",
        rule=("The stock list says what there is. Every piece on it is weighed, and the best that serves is taken.",),
        met=(met,),
        parts=parts_of(("On the stock list", pieces), ("Sources", source_lines(case.knowledge, keys))),
        data={"material": word, "sources": source_data(case.knowledge, keys)},
    )
