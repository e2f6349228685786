"""Imports of our own modules in few steps: a command spends half of its time on them.

The import system of Python looks for each of two hundred modules with every finder, in every place, under every ending,
and works out twice where its bytecode lies. Here a module of this package is where its name says, or it is left to the
import system, as is bytecode that is missing, old or of another Python.
"""

from __future__ import annotations

import sys
from importlib.machinery import ModuleSpec, SourceFileLoader
from marshal import loads

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from types import CodeType, ModuleType

_PACKAGE = f"{__package__}."
_MODULE = "near_imports"
_CACHE = "__pycache__/"
_MAGIC = 4
_HEAD = 16
"""Bytes of bytecode before its code: the magic number of this Python, flags, the time and the size of the source."""


class _Loader(SourceFileLoader):
    """A loader of a file that was seen already: `begins` is how its bytecode begins where that is fresh."""

    cached = ""
    begins = b""

    def get_code(self, fullname: str) -> CodeType | None:
        """The code of the module, out of its bytecode where that is fresh."""
        try:
            data = self.get_data(self.cached)
        except OSError:
            data = b""
        return loads(memoryview(data)[_HEAD:]) if data.startswith(self.begins) else super().get_code(fullname)


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
        file = f"{self._root}{near}.py"
        loader = _Loader(name, file)
        try:
            loader.begins = self._begins(loader.path_stats(file))
        except OSError:
            return None
        loader.cached = f"{self._cached(near)}{self._ending}"
        spec = ModuleSpec(name, loader, origin=file)
        spec.cached, spec.has_location = loader.cached, True
        return spec

    def _cached(self, near: str) -> str:
        if not self._cache.endswith(_CACHE):  # a folder of its own for all bytecode
            return self._cache + near
        folder, slash, last = near.rpartition("/")
        return f"{self._root}{folder}{slash}{_CACHE}{last}"

    def _begins(self, seen: Mapping[str, float]) -> bytes:
        parts = (0, int(seen["mtime"]), int(seen["size"]))
        return self._magic + b"".join([(part & 0xFFFFFFFF).to_bytes(4, "little") for part in parts])


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
