"""Make a site of a folder of recipes, in `public/` beside them or where `--output` says.

With errors in a recipe the old site stays as it is, unless `--keep-going` leaves the faulty ones out. A folder that
was not made by an earlier build is never written over without `--replace`.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from tamis.cli.common import Stop, existing, open_all, print_findings, progress
from tamis.cli.findings import closing, counts


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis build` takes."""
    parser.add_argument("folder", nargs="?", metavar="DIR", help="folder of recipes (the kitchen around us)")
    parser.add_argument("-o", "--output", metavar="OUT", help="folder to write (DIR/public)")
    parser.add_argument("--keep-going", action="store_true", help="leave faulty recipes out, build the rest")
    parser.add_argument("--replace", action="store_true", help="take a folder that tamis did not make")


def run(options: argparse.Namespace) -> int:
    """Build and say what was written; 1 if a recipe is faulty."""
    from tamis.library.files import house_folder, shown
    from tamis.publish.site import Refused, build_site

    folder = existing(options.folder) if options.folder else house_folder(Path.cwd())
    if not folder.is_dir():
        raise Stop(f"{options.folder}: expected a folder of recipes, this is a file")
    library = open_all([str(folder)])[0]
    findings = library.findings()
    numbers = counts(findings)
    errors = [found for found in findings if found[1].severity == "error"]
    print_findings(errors, sys.stderr)
    if errors and not options.keep_going:
        print(closing(numbers, len(library.entries)), file=sys.stderr)
        print("nothing was built; `--keep-going` builds the recipes without errors", file=sys.stderr)
        return 1
    out = Path(options.output) if options.output else folder / "public"
    try:
        report = build_site(library, out, keep_going=options.keep_going, replace=options.replace, progress=progress())
    except Refused as reason:
        raise Stop(str(reason)) from reason
    except OSError as error:
        raise Stop(f"{shown(out)}: cannot be written: {error.strerror or error}") from error
    print(report.summary)
    for name in report.missing:
        print(f"left out: {name}", file=sys.stderr)
    print(f"open {shown(out / 'index.html')}")
    return 1 if errors else 0
