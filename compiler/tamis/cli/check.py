"""Check recipes for mistakes.

Of the files and folders named, or of the kitchen around the working folder.

Every finding of every file is told, the graver ones not before the others but where they stand; the last
line counts them.
"""

from __future__ import annotations

import sys

from tamis.cli.common import open_all, print_findings
from tamis.cli.findings import as_data, closing, counts
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.cli.findings import Finding
    from tamis.diagnostics import Severity


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis check` takes."""
    parser.add_argument("paths", nargs="*", metavar="PATH", help="recipe files or folders")
    parser.add_argument("--strict", action="store_true", help="count warnings like errors")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="how to print (default: text)")


def run(options: argparse.Namespace) -> int:
    """Check and print; 1 if there are errors, or warnings with `--strict`."""
    libraries = open_all(options.paths)
    findings = [finding for library in libraries for finding in library.findings()]
    recipes = sum(len(library.entries) for library in libraries)
    numbers = counts(findings)
    if options.format == "json":
        _print_json(findings, numbers, recipes)
    else:
        print_findings(findings, sys.stdout)
        print(closing(numbers, recipes))
    return 1 if numbers["error"] or (options.strict and numbers["warning"]) else 0


def _print_json(findings: list[Finding], numbers: dict[Severity, int], recipes: int) -> None:
    import json

    said = [as_data(source, finding) for source, finding in findings]
    print(json.dumps({"recipes": recipes, "counts": numbers, "findings": said}, ensure_ascii=False, indent=1))
