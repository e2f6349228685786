"""Opening recipes together with those that they use, each so many times."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from fractions import Fraction
from os.path import isdir

from tamis.cli.common import Stop, existing, open_all, print_findings, progress
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.library.library import Entry, Library
    from tamis.market.dishes import Dish
    from tamis.market.market_list import MarketList

PART = "Incomplete: a recipe has errors."


class Wanted(NamedTuple):
    """The list for what the cook named, the library that it comes from, and whether a recipe in it is faulty."""

    found: MarketList
    library: Library
    partial: bool


def dish_arguments(parser: argparse.ArgumentParser) -> None:
    """How much of the dishes, what is made already, and the form of what is printed."""
    group = parser.add_mutually_exclusive_group()
    group.add_argument("--serves", metavar="N", help="number of people to cook each dish for: --serves 12")
    group.add_argument("--by", metavar="N", help="multiply each dish: --by 1.5")
    have = "a recipe named under `uses:` that is already made, so not bought for (may be repeated)"
    parser.add_argument("--have", metavar="NAME", action="append", default=[], help=have)


def wanted(names: Sequence[str], options: argparse.Namespace) -> Wanted:
    """The market list of the files that the cook named; raises Stop where it cannot be made."""
    from tamis.market.market_list import market_list

    libraries = open_all(names)
    if len(libraries) > 1:
        raise Stop("these recipes belong to different kitchens (a `kitchen.toml` each): one list is for one")
    library = libraries[0]
    others = [entry.having("table") for entry in _used_by(library)]
    library = library._replace(entries=tuple(entry.having("table") for entry in library.entries))
    asked = [_dish(entry, options, library) for entry in library.entries if not entry.compiled.broken]
    known = {dish.recipe.stem: dish for dish in (*(_plain(entry) for entry in others), *asked)}
    for stem in options.have:
        if stem not in known:
            raise Stop(f"--have: no recipe here uses “{stem}”; expected the name of a used recipe's file")
    partial = _told(library, [*library.entries, *others])
    return Wanted(market_list(asked, known, library.kitchen, options.have), library, partial)


def _used_by(library: Library) -> list[Entry]:
    """The recipes of the house that these use, or those that they use, and that are not among them."""
    from tamis.library.files import in_order, read_text, recipe_paths, stem_of
    from tamis.library.library import open_library
    from tamis.library.order import uses_of

    have = {entry.stem for entry in library.entries}
    missing = [stem for entry in library.entries for stem in uses_of(entry.compiled.source.text) if stem not in have]
    if not missing:
        return []
    paths = {stem_of(path): path for path in reversed(recipe_paths(library.house.folder))}
    files: dict[str, str] = {}
    while missing:
        stem = missing.pop()
        if stem in paths and stem not in files and stem not in have:
            files[stem] = paths[stem]
            missing.extend(uses_of(read_text(files[stem]).source.text))
    return list(open_library(library.house.folder, in_order(files.values()), progress()).entries) if files else []


def _plain(entry: Entry, factor: Fraction = Fraction(1)) -> Dish:
    from tamis.market.dishes import Dish

    return Dish(entry.compiled.recipe, entry.compiled.table, factor)


def _dish(entry: Entry, options: argparse.Namespace, library: Library) -> Dish:
    """The dish as often as the cook asked for."""
    from tamis.scaling.wanted import factor_for

    way = next((way for way in ("serves", "by") if getattr(options, way) is not None), None)
    if way is None:
        return _plain(entry)
    found = factor_for(way, getattr(options, way), entry.compiled.recipe, library.kitchen)
    if found.problem:
        raise Stop(f"--{way}: {entry.compiled.source.name}: {found.problem}")
    return _plain(entry, found.factor)


def _told(library: Library, entries: Sequence[Entry]) -> bool:
    """Errors in the recipes and in the house's files on standard error; whether a recipe is faulty."""
    faulty = [entry for entry in entries if entry.faulty]
    errors = [found for found in library.house.with_prices() if found[1].severity == "error"]
    told = ((entry.compiled.source, each) for entry in faulty for each in entry.compiled.findings)
    print_findings([*errors, *(found for found in told if found[1].severity == "error")], sys.stderr)
    return bool(faulty)


def one_file(name: str) -> str:
    """The name, if it is that of a file. Raises Stop."""
    if isdir(existing(name)):
        raise Stop(f"{name}: expected a recipe file, this is a folder")
    return name
