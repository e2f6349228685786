"""Print a recipe for more or for fewer, or for another tin.

Ingredients and method carry the new measures; times, temperatures, cues, sizes and tools stay. What does not simply
grow with the rest is told at the end. `--format source` prints a recipe file, to be kept or compiled.
"""

from __future__ import annotations

import sys

from tamis.cli.common import PART, open_one, print_findings, tell_faults, terminal_width
from tamis.cli.scaling import Outcome, asked, outcome_of, scaling_arguments
from tamis.kitchen.settings import UNITS
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.cli.common import OutputFormat, Printer
    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen

MIND = "Check these before you cook"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis scale` takes."""
    parser.add_argument("file", metavar="FILE", help="a recipe file")
    scaling_arguments(parser, required=True)
    parser.add_argument("--format", choices=tuple(_FORMS), default="text", help="(default: text)")
    parser.add_argument("--units", choices=UNITS, help="which measures come first (default: your kitchen's)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the recipe, or the scaled recipe, is faulty."""
    library, entry = open_one(options.file)
    kitchen = library.kitchen
    if options.units:
        publish = kitchen.settings.publish._replace(units=options.units)
        kitchen = kitchen._replace(settings=kitchen.settings._replace(publish=publish))
    partial = tell_faults(library, entry)
    if entry.compiled.broken:
        return 1
    way = asked(options)
    assert way is not None, "the parser requires one"
    outcome = outcome_of(*way, entry.compiled, kitchen)
    errors = [] if partial else _errors(outcome)
    print_findings([(outcome.scaled.compiled.source, error) for error in errors], sys.stderr)
    print(_FORMS[options.format](outcome, kitchen, partial or bool(errors)), end="")
    return 1 if partial or errors else 0


def _errors(outcome: Outcome) -> list[Diagnostic]:
    """What is wrong with the scaled recipe only: it wants more of another recipe than that one makes.

    The rules find the same errors for any amount: those of a sound recipe were asked before it was scaled."""
    compiled = outcome.scaled.compiled
    return [finding for finding in compiled.findings if finding.severity == "error"] if compiled.misread else []


def _source(outcome: Outcome, kitchen: Kitchen, partial: bool) -> str:
    original = outcome.scaled.original.source
    print_findings([(original, finding) for finding in outcome.misleading], sys.stderr)
    return outcome.scaled.text


def _text(outcome: Outcome, kitchen: Kitchen, partial: bool) -> str:
    from tamis.cli.findings import as_text, ink_for
    from tamis.publish.scaled import method_lines, sheet_of
    from tamis.quantity.wrapping import wrap
    from tamis.table.text import equipment_text, table_text

    width, scaled = terminal_width(), outcome.scaled
    sheet = sheet_of(scaled, outcome.sentence, kitchen)
    blocks = [f"{sheet.title}\n{'; '.join(sheet.facts)}", table_text(scaled.compiled.table, kitchen, width).rstrip()]
    if scaled.compiled.equipment:
        blocks.append("Equipment\n" + equipment_text(scaled.compiled.equipment, width).rstrip())
    for line in method_lines(sheet):
        indent = " " * (len(line.split(" ")[0]) + 1 if line[:1].isdigit() else 0)
        blocks.append("\n".join(wrap(line.lstrip("#> "), width, indent)))
    blocks.append("\n".join(wrap(sheet.untouched, width)))
    if outcome.misleading:
        ink = ink_for(sys.stdout)
        blocks.append(MIND)
        blocks += [as_text(scaled.original.source, finding, ink) for finding in outcome.misleading]
    return "\n\n".join(block for block in [*blocks, PART if partial else ""] if block) + "\n"


def _markdown(outcome: Outcome, kitchen: Kitchen, partial: bool) -> str:
    from tamis.publish.scaled import method_lines, mind_lines, sheet_of
    from tamis.table.markdown import equipment_markdown, table_markdown

    scaled = outcome.scaled
    sheet = sheet_of(scaled, outcome.sentence, kitchen)
    blocks = [f"# {sheet.title}", "; ".join(sheet.facts), table_markdown(scaled.compiled.table, kitchen).rstrip()]
    if scaled.compiled.equipment:
        blocks.append("Equipment:\n\n" + equipment_markdown(scaled.compiled.equipment).rstrip())
    blocks += ["## Method", "\n".join(method_lines(sheet)).rstrip(), f"*{sheet.untouched}*"]
    if outcome.misleading:
        blocks += [f"## {MIND}", "\n".join(mind_lines(scaled.original.source, outcome.misleading))]
    return "\n\n".join(block for block in [*blocks, f"*{PART}*" if partial else ""] if block) + "\n"


def _json(outcome: Outcome, kitchen: Kitchen, partial: bool) -> str:
    import json

    from tamis.cli.findings import as_data
    from tamis.publish.scaled import scaled_data

    original = outcome.scaled.original.source
    data = {
        "partial": partial,
        **scaled_data(outcome.scaled, outcome.sentence, kitchen),
        "findings": [as_data(original, finding) for finding in outcome.misleading],
    }
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


_FORMS: dict[OutputFormat, Printer] = {"text": _text, "markdown": _markdown, "json": _json, "source": _source}
