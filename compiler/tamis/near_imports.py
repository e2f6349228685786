"""Imports of our own modules in few steps: a command spends half of its time on them.

The import system of Python looks for each of two hundred modules with every finder, in every place, under every ending,
and works out twice where its bytecode lies. Here a module of this package is where its name says, or it is left to the
import system, as is bytecode that is missing, old or of another Python.
"""

from __future__ import annotations

import os
import sys
from importlib.machinery import ModuleSpec, SourceFileLoader
from marshal import loads
from types import ModuleType

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import CodeType

_PACKAGE = f"{__package__}."
_MODULE = "near_imports"
_CACHE = "__pycache__/"
_MAGIC = 4
_HEAD = 16
"""Bytes of bytecode before its code: the magic number of this Python, flags, the time and the size of the source."""
_MOST = 1 << 16
"""Bytes that are read at once; a module with more is left to the import system."""
_FOUR_BYTES = 0xFFFFFFFF
_READ = os.O_RDONLY | getattr(os, "O_BINARY", 0)


class _Loader(SourceFileLoader):
    """A loader of a file that was seen already: `begins` is how its bytecode begins where that is fresh."""

    cached = ""
    begins = b""

    def create_module(self, spec: ModuleSpec) -> ModuleType:
        """The module, which says where it is: a failing question costs the import system as much as a small module."""
        module = ModuleType(spec.name)
        module.__dict__.update(__file__=spec.origin, __cached__=self.cached)
        return module

    def get_code(self, fullname: str) -> CodeType | None:
        """The code of the module, out of its bytecode where that is fresh."""
        try:
            data = _read(self.cached)
        except OSError:
            data = b""
        fresh = data.startswith(self.begins) and len(data) < _MOST
        return loads(memoryview(data)[_HEAD:]) if fresh else super().get_code(fullname)


def _read(file: str) -> bytes:
    """The first bytes of a file, with three calls of the system where a stream has eight."""
    opened = os.open(file, _READ)
    try:
        return os.read(opened, _MOST)
    finally:
        os.close(opened)


class _Finder:
    """Finds the modules of the package whose files begin with `root`, and their bytecode, which begins with `cache`."""

    def __init__(self, root: str, cache: str, ending: str, magic: bytes) -> None:
        self._root, self._cache, self._ending, self._magic = root, cache, ending, magic

    def find_spec(
        self, name: str, path: Sequence[str] | None = None, target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Where a module of this package is; None for all that is not one of its files."""
        if not name.startswith(_PACKAGE):
            return None
        near = name[len(_PACKAGE) :].replace(".", "/")
        try:
            return self._spec(name, near)
        except OSError:
            pass
        try:
            return self._spec(name, f"{near}/__init__", [self._root + near])
        except OSError:
            return None

    def _spec(self, name: str, near: str, folders: list[str] | None = None) -> ModuleSpec:
        """That of a file that is there; `folders` are the places of the modules of a package."""
        file = f"{self._root}{near}.py"
        seen = os.stat(file)
        loader = _Loader(name, file)
        loader.begins = self._begins(int(seen.st_mtime), seen.st_size)
        loader.cached = f"{self._cached(near)}{self._ending}"
        spec = ModuleSpec(name, loader, origin=file)
        spec.cached, spec.has_location, spec.submodule_search_locations = loader.cached, True, folders
        return spec

    def _cached(self, near: str) -> str:
        if not self._cache.endswith(_CACHE):  # a folder of its own for all bytecode
            return self._cache + near
        folder, slash, last = near.rpartition("/")
        return f"{self._root}{folder}{slash}{_CACHE}{last}"

    def _begins(self, time: int, size: int) -> bytes:
        return self._magic + ((time & _FOUR_BYTES) << 32 | (size & _FOUR_BYTES) << 64).to_bytes(12, "little")


def install() -> None:
    """Find modules so from now on, where Python keeps bytecode as we know it."""
    root, found, _ = __file__.rpartition(f"{_MODULE}.py")
    own = (__spec__ and __spec__.cached) or ""
    cache, _, ending = own.rpartition(_MODULE)
    try:
        magic = SourceFileLoader(__name__, __file__).get_data(own)[:_MAGIC]
    except OSError:
        return
    if found:
        sys.meta_path.insert(0, _Finder(root, cache, ending, magic))
