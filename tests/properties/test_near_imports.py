"""Our own finder of modules: it gives what the import system gives, and never what the source no longer says."""

from __future__ import annotations

import os
import py_compile
import subprocess
import sys
from importlib.machinery import SourceFileLoader
from importlib.util import MAGIC_NUMBER, cache_from_source
from pathlib import Path

import pytest

from tamis.near_imports import _Finder


def _finder(folder: Path) -> _Finder:
    cache, _, ending = cache_from_source(f"{folder}/*.py").rpartition("*")
    return _Finder(f"{folder}/", cache, ending, MAGIC_NUMBER)


def _value(folder: Path, name: str = "tamis.trial") -> int:
    spec = _finder(folder).find_spec(name)
    assert spec is not None and isinstance(spec.loader, SourceFileLoader)
    code = spec.loader.get_code(name)
    assert code is not None
    said: dict[str, int] = {}
    exec(code, said)
    return said["VALUE"]


def test_bytecode_is_used_where_it_is_fresh(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = tmp_path / "trial.py"
    source.write_text("VALUE = 1\n", encoding="utf-8")
    py_compile.compile(str(source), cache_from_source(str(source)), doraise=True)

    def never(self: SourceFileLoader, name: str) -> None:
        raise AssertionError("the source was asked")

    monkeypatch.setattr(SourceFileLoader, "get_code", never)
    assert _value(tmp_path) == 1


@pytest.mark.parametrize("mode", py_compile.PycInvalidationMode)
def test_what_the_source_says_now(tmp_path: Path, mode: py_compile.PycInvalidationMode) -> None:
    """Bytecode of an older source is left alone, and so is bytecode that goes by something else than the time."""
    source = tmp_path / "trial.py"
    source.write_text("VALUE = 1\n", encoding="utf-8")
    py_compile.compile(str(source), cache_from_source(str(source)), doraise=True, invalidation_mode=mode)
    assert _value(tmp_path) == 1
    if mode != py_compile.PycInvalidationMode.UNCHECKED_HASH:
        source.write_text("VALUE = 2\n", encoding="utf-8")
        os.utime(source, (10**9, 10**9))
        assert _value(tmp_path) == 2


def test_bytecode_that_is_cut_off(tmp_path: Path) -> None:
    source = tmp_path / "trial.py"
    source.write_text("VALUE = 1\n", encoding="utf-8")
    cached = Path(cache_from_source(str(source)))
    cached.parent.mkdir(parents=True, exist_ok=True)
    cached.write_bytes(MAGIC_NUMBER)
    assert _value(tmp_path) == 1


def test_a_module_of_a_folder(tmp_path: Path) -> None:
    (tmp_path / "part").mkdir()
    (tmp_path / "part" / "trial.py").write_text("VALUE = 3\n", encoding="utf-8")
    assert _value(tmp_path, "tamis.part.trial") == 3


def test_a_package(tmp_path: Path) -> None:
    (tmp_path / "part").mkdir()
    (tmp_path / "part" / "__init__.py").write_text("VALUE = 4\n", encoding="utf-8")
    assert _value(tmp_path, "tamis.part") == 4
    spec = _finder(tmp_path).find_spec("tamis.part")
    assert spec is not None and spec.submodule_search_locations == [str(tmp_path / "part")]
    assert spec.parent == "tamis.part"


def test_a_long_module(tmp_path: Path) -> None:
    """More bytecode than is read at once is left to the import system."""
    source = tmp_path / "trial.py"
    source.write_text(f"VALUE = 5\nTEXT = {'x' * 100_000!r}\n", encoding="utf-8")
    py_compile.compile(str(source), cache_from_source(str(source)), doraise=True)
    assert _value(tmp_path) == 5


def test_all_else_is_left_to_the_import_system(tmp_path: Path) -> None:
    (tmp_path / "part").mkdir()
    finder = _finder(tmp_path)
    assert [finder.find_spec(name) for name in ("json", "tamisable", "tamis.part", "tamis.nothing")] == [None] * 4


@pytest.mark.parametrize("prefixed", [True, False])
def test_a_command_finds_its_modules_so(tmp_path: Path, prefixed: bool) -> None:
    """With the bytecode beside the sources, and in a folder of its own."""
    said = (
        "import os, sys; from tamis.__main__ import main\n"
        "os._exit, sys.argv = lambda status: None, ['tamis', '--version']\n"
        "main(); from tamis.cli import main as at; print(type(at.__loader__).__module__)"
    )
    environment = dict(os.environ) | ({"PYTHONPYCACHEPREFIX": str(tmp_path)} if prefixed else {})
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    for _ in range(2):  # the first may write the bytecode by which the second knows this Python
        run = subprocess.run([sys.executable, "-c", said], env=environment, capture_output=True, text=True, check=True)
    assert run.stdout.splitlines()[-1] == "tamis.near_imports"
