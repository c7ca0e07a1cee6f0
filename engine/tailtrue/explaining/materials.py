"""Why collars or bar are not of another material: what the table says of it, and every piece of it on the stock list."""

from collections.abc import Mapping

from tailtrue.case import Case
from tailtrue.decisions import JudgedRow
from tailtrue.explaining.said import Explanation, Line, Side, parts_of
from tailtrue.explaining.sources_said import source_data, source_lines
from tailtrue.facts import Fact
from tailtrue.store.knowledge import Knowledge

_TABLE = "materials/materials"
_METALS = "materials/collar_metals"
_DECIDED = "collar.metal"
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
    metal = case.knowledge.tables[_METALS].one(material=word) if name == "collar.material" else None
    against = metal.text("against") if metal else note.split(";")[0]
    if isinstance(found, Fact) and found.value == word:
        met = "It is what was taken here."
    elif role in row.text("roles"):
        met = "It would serve; another piece of the stock list was taken, or none of it is there."
    else:
        met = f"It does not serve: {against}."
    offers = case.value(weighed) or ()
    pieces = [Line((f"{one['label']}: {one['verdict']}; {one['reason']}",)) for one in offers if one.get("material") == word]
    judged = _row_of(case, metal.text("group")) if metal else None
    keys = (*row.sources, *(metal.sources if metal else ()), *(judged.row.sources if judged else ()))
    keys = tuple(dict.fromkeys(keys))
    return Explanation(
        kind="material",
        name=f"{name}={word}",
        label=f"{found.spec.label}: {row.text('name')}",
        rule=("The stock list says what there is. Every piece on it is weighed, and the best that serves is taken.",),
        met=(met,),
        parts=parts_of(
            ("Its row in the table of collar.metal", _told(judged)),
            ("On the stock list", pieces),
            ("Sources", source_lines(case.knowledge, keys)),
        ),
        data={"material": word, "sources": source_data(case.knowledge, keys)},
    )


def _row_of(case: Case, group: str) -> JudgedRow:
    """How the row fared that a metal for collars belongs to."""
    return next(row for row in case.outcome(_DECIDED).rows if row.row.then == group)


def _told(judged: JudgedRow | None) -> list[Line]:
    if judged is None:
        return []
    row = judged.row
    fared = "chosen" if judged.chosen else f"never taken: {row.never_taken}" if row.never_taken else "not chosen"
    return [Line((f"{row.name} ({row.then}): {fared}. {row.why}",))]
