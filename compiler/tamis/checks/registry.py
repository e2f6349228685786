"""The rules there are, found by looking into the folders.

A list of rules in one place would be edited by everybody and forgotten by somebody. A rule is a file;
its name is the file's, with hyphens. `rules/` holds those that check a compiled recipe, `grammar/rules/` the
documentation of what earlier phases and the library find. A check imports the first only; the names come
from the folders unopened.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from importlib import import_module
from os import scandir
from os.path import dirname

from tamis.assets import asset, asset_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.checks.scaling._scene import Scene
    from tamis.checks.view import View

    Check = Callable[[View], Iterator[Diagnostic]]

_HERE = dirname(__file__)
Files = dict[str, str | bytes]
FAULTS = (
    "hazard-not-cleared",
    "missing-quantity",
    "oven-without-temperature",
    "recipe-without-brackets",
    "tag-contradicted",
    "unit-missing",
)
"""The rules that find errors unless a house says otherwise: a command that prints a recipe asks no others of it."""


class Page(NamedTuple):
    """A rule's documentation.

    In three parts what it finds, why it matters and how to mend it; two examples. `factor` is by how much a rule of
    scaling has its examples scaled.
    """

    name: str
    level: Severity
    parts: tuple[str, ...]
    bad: Files
    good: Files
    factor: Fraction | None = None


@cache
def names() -> tuple[str, ...]:
    """The names of all rules, in the order of the alphabet."""
    return tuple(sorted((*_names("rules"), *_told_names())))


@cache
def checks() -> tuple[Check, ...]:
    """The check of each rule that looks at a compiled recipe."""
    return tuple(map(check_of, _names("rules")))


@cache
def check_of(name: str) -> Check:
    """The check of a rule that looks at a compiled recipe."""
    check: Check = _module("rules", name).check
    return check


@cache
def scaling_names() -> tuple[str, ...]:
    """The names of the rules that look at a recipe together with a factor; `tamis scale` runs them, no check does."""
    return _names("scaling")


@cache
def scaling_checks() -> tuple[Callable[[Scene], Iterator[Diagnostic]], ...]:
    """The check of each rule of scaling."""
    return tuple(_module("scaling", name).check for name in scaling_names())


def page(name: str) -> Page:
    """The documentation of a rule; `name` must be one of `names()` or `scaling_names()`."""
    if name in _told_names():
        return _told(name)
    module = _module("rules" if name in _names("rules") else "scaling", name)
    parts = tuple((module.__doc__ or "").strip().split("\n\n"))
    return Page(name, module.LEVEL, parts, _files(module.BAD), _files(module.GOOD), getattr(module, "FACTOR", None))


def _told(name: str) -> Page:
    """The documentation of what an earlier phase finds. A bad example may be in another encoding than UTF-8."""
    import tomllib

    raw = tomllib.loads(asset_text(f"grammar/rules/{name}.toml"))
    bad = _files(raw["bad"])
    if encoding := raw.get("bad_encoding"):
        bad = {file: str(text).encode(encoding) for file, text in bad.items()}
    return Page(name, raw["level"], (raw["finds"], raw["why"], raw["mend"]), bad, _files(raw["good"]))


@cache
def _told_names() -> tuple[str, ...]:
    return tuple(sorted(_files_in(asset("grammar/rules"), ".toml")))


def _names(folder: str) -> tuple[str, ...]:
    return tuple(sorted(name.replace("_", "-") for name in _files_in(f"{_HERE}/{folder}", ".py")))


def _files_in(folder: str, suffix: str) -> list[str]:
    """The names of the files that end so, without their end."""
    with scandir(folder) as files:
        return [file.name.removesuffix(suffix) for file in files if file.name.endswith(suffix) and file.name[0] != "_"]


def _module(folder: str, name: str) -> Any:
    """A rule's file.

    What it defines is known at run time only, and a test over all rules holds it to the form.
    """
    return import_module(f"tamis.checks.{folder}.{name.replace('-', '_')}")


def _files(example: str | Files) -> Files:
    """An example is the text of one recipe, or several files by name."""
    return {"example.tamis": example} if isinstance(example, str) else example
