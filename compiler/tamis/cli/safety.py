"""Print a recipe's hazards with where each ends, its allergens, and the cautions it calls for.

Of a faulty file what could be understood is printed, marked as a part.
"""

from __future__ import annotations

from tamis.cli.common import open_one, tell_faults
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis safety` takes."""
    parser.add_argument("file", metavar="FILE", help="a recipe file")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the recipe is faulty."""
    library, entry = open_one(options.file)
    partial = tell_faults(library, entry)
    from tamis.safety.report import report_data, report_text

    safety = entry.compiled.safety
    if options.format == "json":
        import json

        data = {"partial": partial, **report_data(safety, entry.compiled.recipe)}
        print(json.dumps(data, ensure_ascii=False, indent=1))
    else:
        print(report_text(safety, entry.compiled.recipe, partial))
    return 1 if partial else 0
