"""Compiled templates are kept only where it is safe, and never change a page."""

import os
from pathlib import Path

import pytest
from jinja2 import DictLoader, Environment

from tailtrue.render.compiled import Compiled


def page(text: str, *, trim_blocks: bool = False) -> tuple[str, Compiled]:
    """A template of this text filled in by an environment of its own, and what it keeps."""
    kept = Compiled()
    loader = DictLoader({"parts/page.j2": text})
    environment = Environment(loader=loader, bytecode_cache=kept, autoescape=True, trim_blocks=trim_blocks)
    return environment.get_template("parts/page.j2").render(who="<a>"), kept


def only_file(folder: Path | None) -> Path:
    assert folder is not None
    (file,) = folder.iterdir()
    return file


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache" / "tailtrue"


def test_a_template_is_kept_and_taken_again(cache: Path) -> None:
    first, kept = page("for {{ who }}")
    written = only_file(kept.folder)
    before = written.stat().st_mtime_ns, written.stat().st_ino
    second, _ = page("for {{ who }}")
    assert first == second == "for &lt;a&gt;"
    assert written.parent == cache
    assert (written.stat().st_mtime_ns, written.stat().st_ino) == before


def test_another_text_or_other_settings_are_compiled_anew(cache: Path) -> None:
    assert page("{% if who %}\none{% endif %}")[0] == "\none"
    assert page("{% if who %}\ntwo{% endif %}")[0] == "\ntwo"
    assert page("{% if who %}\ntwo{% endif %}", trim_blocks=True)[0] == "two"
    assert len(list(cache.iterdir())) == 1


@pytest.mark.parametrize("place", [0, 31, 32, -1])
def test_what_is_damaged_is_not_used(cache: Path, place: int) -> None:
    written = only_file(page("for {{ who }}")[1].folder)
    whole = bytearray(written.read_bytes())
    whole[place] ^= 0xFF
    written.write_bytes(whole)
    assert page("for {{ who }}")[0] == "for &lt;a&gt;"
    assert written.read_bytes() != bytes(whole)
    written.write_bytes(b"")
    assert page("for {{ who }}")[0] == "for &lt;a&gt;"
    assert cache.is_dir()


def test_the_folder_is_for_its_owner_alone(cache: Path) -> None:
    page("for {{ who }}")
    assert cache.stat().st_mode & 0o077 == 0


def test_a_folder_that_others_can_write_to_is_not_used(cache: Path) -> None:
    cache.mkdir(parents=True)
    cache.chmod(0o777)
    shown, kept = page("for {{ who }}")
    assert shown == "for &lt;a&gt;"
    assert kept.folder is None
    assert not list(cache.iterdir())


def test_a_folder_of_somebody_else_is_not_used(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page("for {{ who }}")
    other = os.getuid() + 1
    monkeypatch.setattr(os, "getuid", lambda: other)
    assert page("for {{ who }}")[1].folder is None
    assert cache.is_dir()


def test_a_link_to_a_folder_is_not_used(cache: Path, tmp_path: Path) -> None:
    cache.parent.mkdir()
    (tmp_path / "elsewhere").mkdir(mode=0o700)
    cache.symlink_to(tmp_path / "elsewhere")
    assert page("for {{ who }}")[1].folder is None


@pytest.mark.parametrize("home", ["nowhere/at/all", "file"])
def test_without_a_place_the_page_is_made_all_the_same(home: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("not a folder", encoding="utf-8")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / home))
    shown, kept = page("for {{ who }}")
    assert shown == "for &lt;a&gt;"
    assert kept.folder is None


def test_a_relative_cache_folder_is_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", "cache")
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    assert page("for {{ who }}")[1].folder == tmp_path / ".cache" / "tailtrue"
    assert not (tmp_path / "cache").exists()


def test_a_full_disk_keeps_nothing_and_stops_nothing(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "no space left")

    monkeypatch.setattr(os, "replace", full)
    assert page("for {{ who }}")[0] == "for &lt;a&gt;"
    assert not list(cache.iterdir())
