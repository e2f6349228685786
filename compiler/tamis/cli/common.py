"""What the commands share: opening what the cook named, printing findings, and why a command stops."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable, Sequence

from tamis.typed import TYPE_CHECKING, Literal, TextIO

if TYPE_CHECKING:
    from tamis.cli.findings import Finding
    from tamis.library.library import Entry, Library, PartName, Progress

OutputFormat = Literal["text", "markdown", "json", "csv", "source"]
Printer = Callable[..., str]
"""What makes the text of a form."""

LONG_WORK = 40
"""From so many recipes on, progress is worth showing."""
PART = "Incomplete: the recipe has errors."


class Stop(Exception):
    """The command cannot run; the text tells the cook why."""


def existing(name: str) -> str:
    """The path of a file or folder that must be there."""
    if not os.path.exists(name):
        raise Stop(f"{name}: there is no such file or folder")
    return name


def open_all(names: Sequence[str]) -> list[Library]:
    """The libraries of these files and folders, one for each house.

    Without a name, of the house around us.
    """
    from tamis.library.files import absolute, house_folder, recipe_paths
    from tamis.library.library import open_library

    paths = [existing(name) for name in names] or [house_folder("")]
    by_house: dict[str, dict[str, None]] = {}
    for path in paths:
        files = recipe_paths(path) if os.path.isdir(path) else [path]
        if not files:
            raise Stop(f"{path}: there are no recipe files (*.tamis) in this folder")
        by_house.setdefault(house_folder(path), {}).update({absolute(file): None for file in files})
    return [open_library(house, list(files), progress()) for house, files in by_house.items()]


def open_one(name: str, *parts: PartName) -> tuple[Library, Entry]:
    """The one recipe of a file with these parts made of it, and the library it belongs to."""
    if os.path.isdir(existing(name)):
        raise Stop(f"{name}: expected a recipe file, this is a folder")
    library = open_all([name])[0]
    entry = library.entries[0].having(*parts)
    return library._replace(entries=(entry,)), entry


def progress() -> Progress | None:
    """Something that counts recipes on a terminal while work is long; None where nobody watches."""
    if sys.stderr is None or not sys.stderr.isatty():
        return None

    def show(done: int, of: int) -> None:
        if of >= LONG_WORK:
            end = "\r\x1b[K" if done == of else ""
            print(f"\r{done} of {of} recipes{end}", end="", file=sys.stderr, flush=True)

    return show


def terminal_width() -> int:
    """Columns to print for: the terminal's within reason; 80 where nobody watches."""
    if not sys.stdout.isatty():
        return 80
    from shutil import get_terminal_size

    return max(40, min(get_terminal_size((80, 24)).columns, 110))


def print_findings(findings: Iterable[Finding], stream: TextIO) -> None:
    """All the findings, each followed by an empty line."""
    from tamis.cli.findings import as_text, ink_for

    ink = ink_for(stream)
    for source, finding in findings:
        print(as_text(source, finding, ink), file=stream, end="\n\n")


def tell_failure(command: str, name: str | None, error: Exception) -> int:
    """An exception that nobody foresaw ends the command: told like a finding of the one file that it was asked for (1),
    or of none (2)."""
    from tamis.internal import internal_error

    finding = internal_error(error)
    if name is None:
        print(f"tamis {command}: {finding.message}\n  > {finding.hint}", file=sys.stderr)
        return 2
    from tamis.library.files import read_text

    print_findings([(read_text(name).source, finding)], sys.stderr)
    return 1


def tell_faults(library: Library, entry: Entry) -> bool:
    """Findings of a faulty recipe on standard error; whether what was made of it is only a part."""
    if entry.faulty or any(finding.severity == "error" for _, finding in library.house.findings):
        print_findings(library.findings(), sys.stderr)
    return entry.faulty
