"""Why: the rule, what it met, what it was made from, where it comes from."""

from tailtrue.explaining import of_facts, of_rules
from tailtrue.explaining.materials import material
from tailtrue.explaining.on_paper import meant
from tailtrue.explaining.said import Explanation, Side
from tailtrue.explaining.why_not import alternative


def why(side: Side, asked: str, whole: bool = False) -> Explanation:
    """Explain what `asked` names or what is printed so; `whole` adds everything it was made from.

    Raises UsageError when nothing has this name.
    """
    knowledge = side.case.knowledge
    named = meant(side, asked)
    if isinstance(named, Explanation):
        return named
    match named.kind:
        case "choice":
            return alternative(side, named)
        case "material":
            return material(side, named.name, named.word)
        case "decision":
            return of_facts.decision(side, named.name, whole)
        case "step":
            return of_rules.step(side, named.name)
        case "caution":
            return of_rules.caution(side, next(one for one in knowledge.cautions if one.file.id == named.name))
        case "stop":
            return of_rules.stop(side, next(one for one in knowledge.stops if one.file.id == named.name))
        case "note":
            return of_rules.note(side, next(one for one in knowledge.notes if one.file.id == named.name))
        case _:
            return of_facts.fact(side, named.name, whole)
