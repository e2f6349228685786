"""Print a recipe's ingredients: one row for each, its uses added up, and the equipment.

Of a faulty file what could be understood is printed, marked as a part.
"""

from __future__ import annotations

import sys

from tamis.cli.common import PART, open_one, print_findings, tell_faults, terminal_width
from tamis.cli.scaling import asked, outcome_of, scaling_arguments
from tamis.kitchen.settings import UNITS
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.cli.common import OutputFormat, Printer
    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis table` takes."""
    parser.add_argument("file", metavar="FILE", help="a recipe file")
    scaling_arguments(parser, required=False)
    parser.add_argument("--format", choices=("text", "markdown", "json"), default="text", help="(default: text)")
    units = "text: show only these measures (default: all); markdown and json: put these first"
    parser.add_argument("--units", choices=UNITS, help=units)


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the recipe is faulty."""
    library, entry = open_one(options.file, "table", "equipment")
    kitchen = library.kitchen
    if options.units:
        publish = kitchen.settings.publish._replace(units=options.units)
        kitchen = kitchen._replace(settings=kitchen.settings._replace(publish=publish))
    partial = tell_faults(library, entry)
    compiled, way = entry.compiled, asked(options)
    if way is not None and not compiled.broken:
        outcome = outcome_of(*way, compiled, kitchen)
        print_findings([(compiled.source, finding) for finding in outcome.misleading], sys.stderr)
        compiled = outcome.scaled.compiled
    if options.format == "text":
        print(_text(compiled, kitchen, partial, options.units or ""))
    else:
        print(_FORMS[options.format](compiled, kitchen, partial))
    return 1 if partial else 0


def _text(compiled: Compiled, kitchen: Kitchen, partial: bool, only: str) -> str:
    from tamis.table.pieces import pieces_text
    from tamis.table.text import equipment_text, table_text

    width = terminal_width()
    blocks = [compiled.recipe.title, table_text(compiled.table, kitchen, width, only).rstrip()]
    divided = pieces_text(compiled.recipe, compiled.source.text, kitchen)
    if divided:
        blocks.append(f"Divided\n{divided}")
    if compiled.equipment:
        blocks.append("Equipment\n" + equipment_text(compiled.equipment, width).rstrip())
    return "\n\n".join(block for block in [*blocks, PART if partial else ""] if block)


def _markdown(compiled: Compiled, kitchen: Kitchen, partial: bool) -> str:
    from tamis.table.markdown import equipment_markdown, table_markdown

    blocks = [f"# {compiled.recipe.title}", table_markdown(compiled.table, kitchen).rstrip()]
    if compiled.equipment:
        blocks.append("Equipment:\n\n" + equipment_markdown(compiled.equipment).rstrip())
    return "\n\n".join(block for block in [*blocks, f"*{PART}*" if partial else ""] if block)


def _json(compiled: Compiled, kitchen: Kitchen, partial: bool) -> str:
    import json

    from tamis.table.data import table_data

    data = table_data(compiled.table, compiled.equipment, kitchen)
    return json.dumps({"partial": partial, **data}, ensure_ascii=False, indent=1)


_FORMS: dict[OutputFormat, Printer] = {"markdown": _markdown, "json": _json}
