"""Files of named figures of the knowledge: each with its unit, its reason and its sources."""

from pydantic import Field

from tailtrue.errors import FactsWrong, Problem
from tailtrue.given.knowledge_file import shaped
from tailtrue.given.shapes import Shape
from tailtrue.given.toml_file import TomlFile
from tailtrue.quantities import read_quantity


class _Figure(Shape):
    value: str
    unit: str
    why: str
    sources: list[str] = Field(min_length=1)


def figures_in(file: TomlFile, problems: list[Problem]) -> dict[str, float]:
    """The figures of a file by name, without their units."""
    found = {}
    for name in file.tables:
        one = shaped(_Figure, file, problems, (name,))
        if one is None:
            continue
        try:
            found[name] = float(one.value) if one.unit == "1" else read_quantity(one.value, one.unit)
        except (FactsWrong, ValueError, KeyError) as wrong:
            problems.append(Problem(file.place(name), one.value, str(wrong), f"give a quantity in {one.unit}"))
    return found
