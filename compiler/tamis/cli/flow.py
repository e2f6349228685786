"""Print how each line was read: what goes in, what is in the batch, where it is, what it waits for, what comes out.

Of a faulty file what could be understood is printed, marked as a part. `--why 12` tells why line 12 was understood so.
"""

from __future__ import annotations

from tamis.cli.common import PART, Stop, open_one, tell_faults, terminal_width
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.flow.records import Row
    from tamis.library.library import Entry


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis flow` takes."""
    parser.add_argument("files", metavar="FILE", nargs="+", help="recipe files")
    parser.add_argument("--why", metavar="LINE", help="only this line of the file, and the reasons for how it was read")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if a recipe is faulty."""
    if options.why and len(options.files) > 1:
        raise Stop("--why explains one line of one file: expected one file")
    opened = [open_one(name) for name in options.files]
    faulty = [tell_faults(library, entry) for library, entry in opened]
    told = [(entry, _rows(entry, options.why), partial) for (_, entry), partial in zip(opened, faulty, strict=True)]
    if options.format == "json":
        import json

        from tamis.flow.data import flow_data

        recipes = [{"partial": partial, **flow_data(entry.compiled.recipe, rows)} for entry, rows, partial in told]
        print(json.dumps({"recipes": recipes}, ensure_ascii=False, indent=1))
    else:
        print("\n\n".join(_text(entry, rows, partial, bool(options.why)) for entry, rows, partial in told))
    return 1 if any(faulty) else 0


def _rows(entry: Entry, why: str | None) -> tuple[Row, ...]:
    """The rows of a recipe: all, or those of the one line that is asked for."""
    from tamis.flow.rows import rows_of

    compiled = entry.compiled
    rows = rows_of(compiled.recipe, compiled.source, compiled.kitchen)
    if not why:
        return rows
    lines = sorted({row.line for row in rows})
    asked = tuple(row for row in rows if str(row.line) == why)
    if not asked:
        expected = f"one of {', '.join(map(str, lines))}" if lines else "a recipe with a method"
        raise Stop(f"--why: nothing is done in line {why}; expected {expected}")
    return asked


def _text(entry: Entry, rows: tuple[Row, ...], partial: bool, why: bool) -> str:
    from tamis.flow.text import flow_text

    text = flow_text(entry.compiled.recipe, rows, terminal_width(), why).rstrip()
    return f"{text}\n\n{PART}" if partial else text
