"""Kept knowledge is the knowledge that loading makes, and is used only where nothing has changed."""

import os
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tailtrue import advise
from tailtrue.conditions import Atom, Block
from tailtrue.documents import write_documents
from tailtrue.facts import Fact, FactSpec
from tailtrue.log.fields import load_record_catalogue
from tailtrue.places import knowledge_folder
from tailtrue.store import keeping, version
from tailtrue.store.keeping import kept, packed, unpacked
from tailtrue.store.load import load_knowledge
from tailtrue.store.models import BlankFile
from tailtrue.store.packing import Unpackable
from tailtrue.wording import Place, Wording

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    version.made_from.cache_clear()
    yield tmp_path / "cache" / "tailtrue"
    version.made_from.cache_clear()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small folder in place of the knowledge."""
    made = tmp_path / "small"
    (made / "steps").mkdir(parents=True)
    (made / "limits.toml").write_text("a = 1\n", encoding="utf-8")
    (made / "speeds.csv").write_text("a,b\n1,2\n", encoding="utf-8")
    (made / "steps" / "bore.md").write_text("Bore it.\n", encoding="utf-8")
    return made


class Loading:
    """Loads what stands in the small folder, and counts how often it was asked."""

    def __init__(self) -> None:
        self.times = 0

    def __call__(self, folder: Path) -> dict[str, Wording]:
        self.times += 1
        found = sorted(path for path in folder.rglob("*") if path.is_file())
        return {path.name: Wording((path.read_text(encoding="utf-8"), Place("bar.length", "value"))) for path in found}


def taken(load: Loading, folder: Path) -> dict[str, Wording]:
    """What is kept or loaded, as a new process has it."""
    version.made_from.cache_clear()
    return kept("small", folder, load)


def test_the_whole_knowledge_comes_back_as_it_was_loaded() -> None:
    folder = knowledge_folder()
    known, record = load_knowledge(folder), load_record_catalogue(folder)
    assert unpacked(packed(known, folder), folder) == known
    assert unpacked(packed(record, folder), folder) == record


@pytest.mark.usefixtures("cache")
def test_every_document_is_the_same_from_kept_knowledge(tmp_path: Path) -> None:
    loaded = load_knowledge(knowledge_folder())
    kept("knowledge", knowledge_folder(), load_knowledge)
    again: Any = kept("knowledge", knowledge_folder(), lambda _: pytest.fail("it was kept"))
    assert again is not loaded
    made = [
        write_documents(advise.make_procedure(JOB, known), tmp_path / name)
        for name, known in (("loaded", loaded), ("kept", again))
    ]
    assert len(made[0]) > 5
    assert [path.read_bytes() for path in made[0]] == [path.read_bytes() for path in made[1]]


def test_what_did_not_change_is_loaded_once(cache: Path, folder: Path) -> None:
    load = Loading()
    first = taken(load, folder)
    assert taken(load, folder) == first == taken(load, folder)
    assert load.times == 1
    assert {path.stat().st_mode & 0o077 for path in (cache, *cache.iterdir())} == {0}


@pytest.mark.usefixtures("cache")
@pytest.mark.parametrize("name", ["limits.toml", "speeds.csv", "steps/bore.md"])
def test_a_changed_file_is_loaded_anew_even_with_its_size_and_time(name: str, folder: Path) -> None:
    load = Loading()
    before = taken(load, folder)
    file = folder / name
    times = file.stat().st_atime_ns, file.stat().st_mtime_ns
    file.write_text(file.read_text(encoding="utf-8").swapcase().replace("1", "7"), encoding="utf-8")
    os.utime(file, ns=times)
    after = taken(load, folder)
    assert load.times == 2
    assert after != before
    assert after == Loading()(folder)


@pytest.mark.usefixtures("cache")
def test_a_new_a_lost_and_a_renamed_file_are_noticed(folder: Path) -> None:
    load = Loading()
    taken(load, folder)
    (folder / "more.csv").write_text("", encoding="utf-8")
    assert "more.csv" in taken(load, folder)
    (folder / "more.csv").unlink()
    assert "more.csv" not in taken(load, folder)
    (folder / "limits.toml").rename(folder / "bounds.toml")
    assert "bounds.toml" in taken(load, folder)
    assert load.times == 4


@pytest.mark.usefixtures("cache")
def test_words_that_move_from_one_file_to_the_next_are_noticed(folder: Path) -> None:
    """The names and contents of all files on end would be the same before and after."""
    for old in list(folder.rglob("*.*")):
        old.unlink()
    load = Loading()
    (folder / "a").write_text("xby", encoding="utf-8")
    taken(load, folder)
    (folder / "a").write_text("x", encoding="utf-8")
    (folder / "b").write_text("y", encoding="utf-8")
    assert set(taken(load, folder)) == {"a", "b"}


@pytest.mark.usefixtures("cache")
def test_another_engine_loads_anew(folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    engine = tmp_path / "engine"
    engine.mkdir()
    (engine / "checks.py").write_text("a = 1\n", encoding="utf-8")
    monkeypatch.setattr(version, "_PACKAGE", engine)
    load = Loading()
    taken(load, folder)
    taken(load, folder)
    assert load.times == 1
    (engine / "checks.py").write_text("a = 11\n", encoding="utf-8")
    taken(load, folder)
    assert load.times == 2
    later = time.time_ns() + 1
    os.utime(engine / "checks.py", ns=(later, later))
    taken(load, folder)
    assert load.times == 3
    (engine / "more.py").write_text("", encoding="utf-8")
    taken(load, folder)
    assert load.times == 4


@pytest.mark.usefixtures("cache")
@pytest.mark.parametrize("what", ["sys.version", "pydantic.VERSION"])
def test_another_python_or_pydantic_loads_anew(what: str, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    load = Loading()
    taken(load, folder)
    monkeypatch.setattr(f"tailtrue.store.version.{what}", "another")
    taken(load, folder)
    assert load.times == 2


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_a_damaged_file_is_never_used(cache: Path, folder: Path, data: st.DataObject) -> None:
    load = Loading()
    right = taken(load, folder)
    load.times = 0
    (file,) = cache.iterdir()
    whole = file.read_bytes()
    place = data.draw(st.integers(0, len(whole) - 1))
    if data.draw(st.booleans(), label="cut off"):
        file.write_bytes(whole[:place])
    else:
        file.write_bytes(whole[:place] + bytes([whole[place] ^ data.draw(st.integers(1, 255))]) + whole[place + 1 :])
    assert taken(load, folder) == right
    assert load.times == 1
    assert taken(load, folder) == right
    assert load.times == 1


def test_a_kept_file_of_another_name_is_not_used(cache: Path, folder: Path) -> None:
    """What one catalogue is kept as must not be taken for another."""
    load = Loading()
    taken(load, folder)
    (file,) = cache.iterdir()
    file.rename(file.with_name(file.name.replace("small", "other")))
    kept("other", folder, load)
    assert load.times == 2


def unwritable(_cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(30, "read-only file system")

    monkeypatch.setattr("tailtrue.kept.tempfile.mkstemp", full)


def somebody_elses(_cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    other = os.getuid() + 1
    monkeypatch.setattr(os, "getuid", lambda: other)


def open_to_all(cache: Path, _monkeypatch: pytest.MonkeyPatch) -> None:
    cache.mkdir(parents=True, exist_ok=True)
    cache.chmod(0o777)


def a_link(cache: Path, _monkeypatch: pytest.MonkeyPatch) -> None:
    cache.parent.mkdir(exist_ok=True)
    elsewhere = cache.parent / "elsewhere"
    elsewhere.mkdir(mode=0o700)
    cache.symlink_to(elsewhere)


def nowhere(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(cache / "not" / "there"))


@pytest.mark.parametrize("spoil", [unwritable, somebody_elses, open_to_all, a_link, nowhere])
def test_without_a_safe_place_everything_is_loaded_each_time(
    spoil: Any, cache: Path, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoil(cache, monkeypatch)
    load = Loading()
    assert taken(load, folder) == taken(load, folder) == Loading()(folder)
    assert load.times == 2
    assert not [path for path in cache.parent.rglob("*") if path.is_file()]


def test_what_nobody_can_pack_is_not_kept(cache: Path, folder: Path) -> None:
    for value in (object(), {"a": lambda: 1}, Path("/elsewhere"), {("a",): {1: 2}}, frozenset({(1, 2)}), b"code"):
        assert kept("odd", folder, lambda _, value=value: value) is value  # type: ignore[misc]
        with pytest.raises(Unpackable):
            packed(value, folder)
    assert not cache.exists() or not list(cache.iterdir())


PLAIN = st.one_of(st.text(max_size=3), st.integers(), st.floats(allow_nan=False), st.booleans(), st.none())
ENTRIES = st.one_of(
    st.builds(Wording, st.tuples(st.text(max_size=2) | st.builds(Place, st.just("a.b"), st.just("why")))),
    st.builds(BlankFile, label=st.text(max_size=2), count=st.integers(1, 3)),
    st.builds(lambda said: BlankFile.model_validate({"label": said}), st.text(max_size=2)),
)
VALUES = st.recursive(
    PLAIN | ENTRIES | st.frozensets(st.text(max_size=2)),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.lists(inner, max_size=3).map(tuple),
        st.dictionaries(st.text(max_size=2), inner, max_size=3),
        st.builds(lambda value: Fact(FactSpec("a.b", "text", "x", "given"), value), inner),
        st.builds(lambda a: Block("all", (Atom("a", "a.b", "is", (a,)),)), inner),
    ),
    max_leaves=8,
)


def same(one: Any, other: Any) -> bool:
    """Equal, and of the same kinds all through: a list is no tuple, one is not true and not 1.0."""
    if type(one) is not type(other):
        return False
    if isinstance(one, list | tuple):
        return len(one) == len(other) and all(map(same, one, other))
    if isinstance(one, dict):
        return list(one) == list(other) and all(same(one[key], other[key]) for key in one)
    if hasattr(one, "__dict__"):
        fields = getattr(one, "__pydantic_fields_set__", None) == getattr(other, "__pydantic_fields_set__", None)
        return fields and same(vars(one), vars(other))
    return bool(one == other)


@settings(max_examples=200, deadline=None)
@given(VALUES)
def test_whatever_is_packed_comes_back_the_same(value: Any) -> None:
    folder = Path("/knowledge")
    assert same(unpacked(packed(value, folder), folder), value)


def test_what_comes_back_may_be_used_as_a_model() -> None:
    folder = Path("/knowledge")
    (blank,) = unpacked(packed([BlankFile(label="size", count=2)], folder), folder)
    assert blank.model_copy(update={"count": 3}).model_dump() == {"label": "size", "unit": "", "count": 3, "abreast": 1}
    assert blank.model_fields_set == {"label", "count"}
    with pytest.raises(ValueError, match="frozen"):
        blank.label = "other"


def test_only_classes_of_the_knowledge_are_made() -> None:
    """Data that names a class by a number beyond the table makes nothing."""
    import marshal

    beyond = len(keeping._classes())
    with pytest.raises(IndexError):
        unpacked(marshal.dumps((((beyond, {}, (), None),), 0)), Path("/knowledge"))
