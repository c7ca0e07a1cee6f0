"""Nothing in the rule base is dead: what is computed or asked for is read by a rule, a text, another fact or the engine."""

import re
from pathlib import Path

from tailtrue.advise import knowledge
from tailtrue.places import knowledge_folder

ENGINE = Path(__file__).parents[2] / "engine" / "tailtrue"
_NAME = re.compile(r"[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)+")


def written(path: Path) -> str:
    text = path.read_text(encoding="utf-8")
    # Facts in an example are set, not read.
    return re.sub(r"^facts = \{.*$", "", text, flags=re.MULTILINE)


def read_somewhere() -> set[str]:
    rules = [path for path in knowledge_folder().rglob("*") if path.suffix in (".toml", ".md") and path.name != "facts.toml"]
    engine = [
        path for room in ("assemble", "explaining", "given", "truing", "cli") for path in (ENGINE / room).rglob("*.py")
    ]
    engine += [ENGINE / "advise.py", ENGINE / "shop.py"]
    names = {name for path in [*rules, *engine] for name in _NAME.findall(written(path))}
    return names | {need for way in knowledge().computed.values() for need in way.needs}


# Registered as a set for each operation and each metal; not every operation prints every one of them.
SETS = re.compile(
    r"\.(speed|surface_speed|feed|feed_kind|hand_feed|depth|depth_divisions|diameter_step)$"
    r"|^(bar|collar)\.(material_family|modulus|expansion)$"
)


def test_every_computed_fact_is_read() -> None:
    dead = {name for name in set(knowledge().computed) - read_somewhere() if not SETS.search(name)}
    assert not dead, sorted(dead)


def test_every_given_fact_is_read() -> None:
    # These name a crib and the files of a job: words for the reader of the files.
    named = {"crib.name", "job.crib", "job.lathe", "job.stock"}
    read = read_somewhere()
    # A fact that stands for one of the work at the lathe is read under that name.
    read |= {name for name, fact in knowledge().given.facts.items() if fact.stands_for in read}
    dead = set(knowledge().given.specs()) - read - named
    assert not dead, sorted(dead)


def test_every_limit_is_read() -> None:
    # The name stands once where the limit is defined.
    text = "".join(written(path) for path in knowledge_folder().rglob("*") if path.suffix in (".toml", ".md"))
    needs = {need for way in knowledge().computed.values() for need in way.needs}
    shop = "".join(
        (ENGINE / name).read_text(encoding="utf-8") for name in ("shop.py", "explaining/near.py", "assemble/steps.py")
    )
    dead = [
        name for name in knowledge().limits
        if text.count(name) < 2 and name not in needs and name.split(".")[1] not in shop
    ]  # fmt: skip
    assert not dead, dead


def test_every_decision_is_read_by_something_else() -> None:
    # Its own entry does not count: a choice that nothing reads changes nothing on paper or at the lathe.
    folder = knowledge_folder()
    rules = [path for path in folder.rglob("*") if path.suffix in (".toml", ".md") and path.name != "facts.toml"]
    engine = [path for room in ("assemble", "truing", "cli", "log", "diagnosis") for path in (ENGINE / room).rglob("*.py")]
    text = [line for path in (*rules, *engine) for line in written(path).splitlines() if not line.startswith("id = ")]
    read = {name for line in text for name in _NAME.findall(line)}
    read |= {need for way in knowledge().computed.values() for need in way.needs}
    dead = {name for name in knowledge().decisions if name not in read}
    assert not dead, sorted(dead)
