"""The rules there are, found by looking into the folders.

A list of rules in one place would be edited by everybody and forgotten by somebody. A rule is a file;
its name is the file's, with hyphens. `rules/` holds those that check a compiled recipe, `grammar/rules/` the
documentation of what earlier phases and the library find. A check imports of the first what the recipe calls for; the
names come from the folders unopened.
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
from tamis.saved import Saved
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from fractions import Fraction


_HERE = dirname(__file__)
Files = dict[str, str | bytes]
EVERY = "recipe"
"""The sign that every recipe shows, for rules that say of none what they are about."""
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


class Rule(NamedTuple):
    """A rule that looks at a compiled recipe, and what it is about: `checks/signs.py` tells what that may be. A rule of
    scaling looks at it together with a factor."""

    name: str
    about: frozenset[str]


@cache
def rules() -> tuple[Rule, ...]:
    """All rules of a check. What they are about is saved, so that they need not be loaded; a new one is about all."""
    return _rules("rules")


@cache
def scaling_rules() -> tuple[Rule, ...]:
    """All rules of scaling, likewise; `tamis scale` runs them, no check does."""
    return _rules("scaling")


def _rules(folder: str) -> tuple[Rule, ...]:
    saved = Saved(asset_text("grammar/saved/checks.txt"))
    return tuple([Rule(name, frozenset(saved.row(name, EVERY))) for name in _names(folder)])


def abouts() -> dict[str, tuple[str, ...]]:
    """What the files of all these rules say they are about; for those about every recipe, nothing."""
    said = {name: getattr(_module(name), "ABOUT", ()) for name in (*_names("rules"), *scaling_names())}
    return {name: about for name, about in said.items() if about}


@cache
def check_of(name: str) -> Callable[[Any], Iterator[Diagnostic]]:
    """The check of a rule: of a `View`, or of the `Scene` of a rule of scaling."""
    check: Callable[[Any], Iterator[Diagnostic]] = _module(name).check
    return check


@cache
def scaling_names() -> tuple[str, ...]:
    """The names of the rules of scaling."""
    return _names("scaling")


def page(name: str) -> Page:
    """The documentation of a rule; `name` must be one of `names()` or `scaling_names()`."""
    if name in _told_names():
        return _told(name)
    module = _module(name)
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


def _module(name: str) -> Any:
    """A rule's file.

    What it defines is known at run time only, and a test over all rules holds it to the form.
    """
    folder = "scaling" if name in scaling_names() else "rules"
    return import_module(f"tamis.checks.{folder}.{name.replace('-', '_')}")


def _files(example: str | Files) -> Files:
    """An example is the text of one recipe, or several files by name."""
    return {"example.tamis": example} if isinstance(example, str) else example
