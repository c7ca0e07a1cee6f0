"""Sheets with cast blanks that leave out what keeps people from molten metal (HSE, safety topics for molten metal)."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from shops import EXAMPLES, shop

from .broken import breaks
from .changed import Job, sheet_of


def _with_founder() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job-cast.toml")


@cache
def _without_founder() -> Job:
    with TemporaryDirectory() as folder:
        path = shop(Path(folder), "fernhill").with_name("job-cast.toml")
        lines = path.read_text(encoding="utf-8").splitlines()
        kept = [line for line in lines if not line.startswith(("cast_collars", "cast_metal", "founder"))]
        path.write_text("\n".join(kept), encoding="utf-8")
        return sheet_of(path)


@breaks("V463", "step 2.2")
def no_word_of_molten_metal_without_a_founder() -> Job:
    tree, givens = _without_founder()
    kept = tuple(one for one in tree.findings if "ingot mould" not in "".join(map(str, one.text)))
    assert len(kept) == len(tree.findings) - 1
    return tree.model_copy(update={"findings": kept}), givens


@breaks("V463", "step 2.2")
def ingot_mould_left_out_for_the_founder() -> Job:
    tree, givens = _with_founder()
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    step.model_copy(update={"text": tuple(line for line in step.text if "ingot mould" not in str(line))})
                    for step in phase.steps
                )
            }
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), givens
