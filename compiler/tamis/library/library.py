"""A library: recipes compiled together, in the order in which they need each other.

A cook may ask for one file, for a folder, or for all the house has. What is asked for may use a recipe
that is not, and that one is compiled too, for what it gives; its own faults are told when it is asked
for itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from os.path import isdir

from tamis.compile import Compiled, compile
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import Kitchen
from tamis.library.between import about_broken, about_bytes, about_circle, about_uses, same_stems, same_titles
from tamis.library.files import AnyPath, Text, absolute, house_folder, read_text, recipe_paths, stem_of
from tamis.library.house import House, open_house
from tamis.library.order import Order, order_of, uses_of
from tamis.model.recipe import Supply
from tamis.record import NamedTuple
from tamis.source import Source
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from pathlib import Path

Progress = Callable[[int, int], None]
PartName = Literal["table", "equipment", "timeline"]


class Entry(NamedTuple):
    """One recipe file of the library.

    `compiled.findings` holds all that is said about it, the library's own too. `picture` is the file to be shown on
    its page.
    """

    path: str
    compiled: Compiled
    picture: Path | None = None

    @property
    def stem(self) -> str:
        """The name by which other recipes use it, and by which its page is called."""
        return self.compiled.source.stem

    @property
    def faulty(self) -> bool:
        """Whether there is an error in it, so that what was made of it is only a part."""
        return self.compiled.faulty

    def having(self, *parts: PartName) -> Entry:
        """The recipe with these parts made of it; if the compiler fails on one, with nothing but findings."""
        try:
            for part in parts:
                getattr(self.compiled, part)
        except Exception as error:
            return self._replace(compiled=self.compiled.broken_off(error))
        return self


class Library(NamedTuple):
    """The recipes that were asked for, sorted by path, and the house they belong to."""

    house: House
    entries: tuple[Entry, ...]

    @property
    def kitchen(self) -> Kitchen:
        """The house's kitchen."""
        return self.house.kitchen

    def findings(self) -> list[tuple[Source, Diagnostic]]:
        """Everything there is to say, file by file."""
        recipes = ((entry.compiled.source, finding) for entry in self.entries for finding in entry.compiled.findings)
        return [*self.house.with_prices(), *recipes]


def open_library(path: AnyPath, files: Sequence[AnyPath] | None = None, progress: Progress | None = None) -> Library:
    """The library of a folder or file; of a folder, only `files` if given. Raises Unreadable."""
    house = open_house(house_folder(path))
    wanted = list(files) if files is not None else recipe_paths(path) if isdir(path) else [path]
    texts = {absolute(file): read_text(file) for file in wanted}
    others, stems = _used_elsewhere(texts.values(), house)
    compiled = _compile_all([*texts.values(), *others], stems, house.kitchen, progress)
    entries = [_entry(file, compiled[id(text)], house.folder) for file, text in texts.items()]
    return Library(house, tuple(_among_each_other(entries)))


def _used_elsewhere(texts: Iterable[Text], house: House) -> tuple[list[Text], set[str]]:
    """The recipes that these use, or those that they use, and that were not asked for; and all stems there are."""
    have = {text.source.stem: text for text in texts}
    missing = [stem for text in have.values() for stem in uses_of(text.source.text) if stem not in have]
    if not missing:
        return [], set(have)
    paths = {stem_of(path): path for path in reversed(recipe_paths(house.folder))}
    found: dict[str, Text] = {}
    while missing:
        stem = missing.pop()
        if stem in paths and stem not in found and stem not in have:
            found[stem] = read_text(paths[stem])
            missing.extend(uses_of(found[stem].source.text))
    return [found[stem] for stem in sorted(found)], {*have, *paths}


def _compile_all(
    texts: list[Text], stems: set[str], kitchen: Kitchen, progress: Progress | None
) -> dict[int, Compiled]:
    """Each text compiled, by its identity; of two with one stem, the first is what others use."""
    first: dict[str, Text] = {}
    for text in texts:
        first.setdefault(text.source.stem, text)
    uses = {stem: uses_of(text.source.text) for stem, text in first.items()}
    order = order_of(uses)
    compiled: dict[int, Compiled] = {}
    supplies: dict[str, Supply] = {}
    broken: dict[str, None] = {}  # those of which the compiler failed to make all there is: they are used by none
    twins = [text for text in texts if first[text.source.stem] is not text]
    for done, text in enumerate([*(first[stem] for stem in order.stems), *twins], 1):
        needed = {stem: supplies[stem] for stem in uses_of(text.source.text) if stem in supplies}
        result = compile(text.source, kitchen, needed)
        lacking = [stem for stem in uses_of(text.source.text) if stem in broken] if broken else []
        result = _lacking(result, lacking) if lacking else _supplying(result, supplies)
        if result.broken or lacking:
            broken[text.source.stem] = None
        compiled[id(text)] = _with_own(result, text, order, stems)
        if progress:
            progress(done, len(texts))
    return compiled


def _supplying(compiled: Compiled, supplies: dict[str, Supply]) -> Compiled:
    """A recipe whose dish has been put among those that others may use."""
    if not compiled.broken:
        try:
            supplies.setdefault(compiled.source.stem, compiled.supply)
        except Exception as error:
            return compiled.broken_off(error)
    return compiled


def _lacking(compiled: Compiled, stems: list[str]) -> Compiled:
    """A recipe that uses others on which the compiler failed: that is told, and what only follows from it is not."""
    findings = [found for found in compiled.findings if found.rule not in ("product-unknown", "uses-not-taken")]
    return compiled.with_findings(findings).with_more([about_broken(compiled.document, stems)])


def _with_own(compiled: Compiled, text: Text, order: Order, stems: set[str]) -> Compiled:
    """What only the library knows about one file: bytes that are no text, recipes it uses that are not there or in turn
    use it."""
    own: list[Diagnostic] = []
    if text.bad_byte is not None:
        own.append(about_bytes(text.bad_byte))
    circle = order.circles.get(text.source.stem, ())
    if circle:
        # Of two that use each other only one could be compiled with the other: what it takes tells nothing.
        findings = [finding for finding in compiled.findings if finding.rule != "uses-not-taken"]
        compiled = compiled.with_findings(findings)
        own.append(about_circle(compiled.document, circle))
    missing = [stem for stem in uses_of(text.source.text) if stem not in stems]
    own += about_uses(compiled.document, missing, stems)
    return compiled.with_more(own)


def _entry(path: str, compiled: Compiled, house: str) -> Entry:
    """A recipe with its picture, or with what is wrong with that. The disk is asked only where the header names one."""
    if not compiled.recipe.header.image:
        return Entry(path, compiled)
    from tamis.library.pictures import picture_of

    try:
        picture, finding = picture_of(compiled.recipe.header, path, house)
    except Exception as error:
        return Entry(path, compiled.broken_off(error))
    if finding:
        compiled = compiled.with_more([finding])
    return Entry(path, compiled, picture)


def _among_each_other(entries: list[Entry]) -> list[Entry]:
    """The entries with what is wrong between them: two of one title, two of one stem."""
    more: dict[int, list[Diagnostic]] = {}
    headed = [(entry.compiled.source, entry.compiled.recipe.header) for entry in entries]
    for index, finding in (*same_titles(headed), *same_stems([source for source, _ in headed])):
        more.setdefault(index, []).append(finding)
    return [
        entry._replace(compiled=entry.compiled.with_more(more[index])) if index in more else entry
        for index, entry in enumerate(entries)
    ]
