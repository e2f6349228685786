"""Build a web site from a folder of recipes, in `public/` in that folder or where `--output` says.

With errors in a recipe the old site stays as it is, unless `--keep-going` leaves the faulty ones out. A folder that
was not made by an earlier build is never written over without `--replace`.
"""

from __future__ import annotations

import sys
from pathlib import Path

from tamis.cli.common import Stop, existing, open_all, print_findings, progress
from tamis.cli.findings import closing, counts
from tamis.library.files import house_folder, shown
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.library.library import Entry, Library
    from tamis.publish.site import Report


_NOTHING = "nothing was built, and an older site was not changed; `--keep-going` builds only the recipes without errors"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis build` takes."""
    parser.add_argument("folder", nargs="?", metavar="DIR", help="folder of recipes (default: the library you are in)")
    parser.add_argument("-o", "--output", metavar="OUT", help="folder to write (default: DIR/public)")
    parser.add_argument("--keep-going", action="store_true", help="leave faulty recipes out, build the rest")
    parser.add_argument("--by", metavar="FACTOR", help="scale every recipe by this factor (needs --output)")
    replace = "build into a folder that tamis did not build; files in the way are overwritten"
    parser.add_argument("--replace", action="store_true", help=replace)


def run(options: argparse.Namespace) -> int:
    """Build and say what was written; 1 if a recipe is faulty, 2 if the folder is not ours to write."""
    folder = Path(existing(options.folder) if options.folder else house_folder(""))
    if not folder.is_dir():
        raise Stop(f"{options.folder}: expected a folder of recipes, this is a file")
    library = open_all([str(folder)])[0]
    faulty = _told(library, options.keep_going)
    if faulty and not options.keep_going:
        return 1
    if options.by:
        library = _scaled(library, options.by, options.output)
        if any(entry.compiled.broken for entry in library.entries):
            faulty = True
            if not options.keep_going:
                print(_NOTHING, file=sys.stderr)
                return 1
    from tamis.publish.site import build_site

    out = Path(options.output) if options.output else folder / "public"
    try:
        report = build_site(library, out, keep_going=options.keep_going, replace=options.replace, progress=progress())
    except OSError as error:
        raise Stop(f"{shown(out)}: cannot be written: {error.strerror or error}") from error
    print_findings(report.failed, sys.stderr)
    if report.failed and not options.keep_going:
        print(_NOTHING, file=sys.stderr)
        return 1
    if report.refused:
        raise Stop(report.refused)
    print("\n".join(_summary(report, shown(out))))
    return 1 if faulty or report.failed else 0


def _scaled(library: Library, by: str, output: str | None) -> Library:
    """The library with every sound recipe so many times."""
    from tamis.scaling.scale import for_page, scaled
    from tamis.scaling.wanted import number_of

    wanted = number_of(by, library.kitchen.language)
    if wanted.problem:
        raise Stop(f"--by: {wanted.problem}")
    if not output:
        raise Stop("--by: say with --output where the scaled site goes; it would take the other's place")

    def made(entry: Entry) -> Entry:
        if entry.faulty:
            return entry
        try:
            compiled = for_page(scaled(entry.compiled, wanted.factor, library.kitchen, used_too=True))
        except Exception as error:
            compiled = entry.compiled.broken_off(error)
            print_findings([(compiled.source, compiled.findings[-1])], sys.stderr)
        return entry._replace(compiled=compiled)

    return library._replace(entries=tuple(map(made, library.entries)))


def _told(library: Library, keep_going: bool) -> bool:
    """Errors on standard error, and whether there are any."""
    findings = library.findings()
    errors = [found for found in findings if found[1].severity == "error"]
    print_findings(errors, sys.stderr)
    if errors:
        print(closing(counts(findings), len(library.entries)), file=sys.stderr)
        if not keep_going:
            print(_NOTHING, file=sys.stderr)
    return bool(errors)


def _summary(report: Report, out: str) -> list[str]:
    """What was done, as a person reads it."""
    pages = "1 recipe page" if report.pages == 1 else f"{report.pages} recipe pages"
    numbers = [
        f"{len(names)} {word}"
        for names, word in (
            (report.changed, "file written" if len(report.changed) == 1 else "files written"),
            (report.removed, "removed"),
            (report.kept, "other file left alone" if len(report.kept) == 1 else "other files left alone"),
        )
        if names
    ]
    lines = [f"{pages} and an index in {out}: {', '.join(numbers) or 'nothing has changed'}"]
    lines += [f"left out because of errors: {name}" for name in report.missing]
    return [*lines, f"open {out}/index.html"]
