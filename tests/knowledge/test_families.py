"""Families of metals: the table of materials and the facts that tell a family agree."""

import pytest

from tailtrue.advise import knowledge
from tailtrue.tables import Row

MATERIALS = knowledge().tables["materials/materials"]


def families(role: str) -> set[str]:
    def serves(row: Row) -> bool:
        return not role or role in row.text("roles").split("; ")

    return {row.text("family") for row in MATERIALS if serves(row)}


@pytest.mark.parametrize(("fact", "role"), [("bar", "bar"), ("collar", "collar"), ("setover", "")])
def test_a_fact_offers_the_families_that_the_table_has_for_it_and_no_others(fact: str, role: str) -> None:
    assert set(knowledge().catalogue[f"{fact}.material_family"].choices) == families(role)
