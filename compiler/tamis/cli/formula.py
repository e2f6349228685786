"""Print the baker's formula of a recipe with flour: weights and percentages, preferments beside the final dough.

100 % is all flour, that in the preferments included, unless `--base final` asks for the flour of the final dough.
"""

from __future__ import annotations

from tamis.cli.common import PART, Stop, open_one, tell_faults, terminal_width
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.cli.common import OutputFormat, Printer
    from tamis.formula.formula import Formula


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis formula` takes."""
    parser.add_argument("file", metavar="FILE", help="a recipe file")
    flour = "which flour is 100 %% (default: total)"
    parser.add_argument("--base", choices=("total", "final"), default="total", help=flour)
    parser.add_argument("--format", choices=tuple(_FORMS), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the recipe is faulty."""
    from tamis.formula.formula import build_formula

    library, entry = open_one(options.file)
    partial = tell_faults(library, entry)
    recipe = entry.compiled.recipe
    formula = build_formula(recipe, library.kitchen, options.base)
    if formula is None:
        raise Stop(f"{options.file}: there is no formula: no dough or batter with weighed flour is made in this recipe")
    print(_FORMS[options.format](recipe.title, formula, partial))
    return 1 if partial else 0


def _text(title: str, formula: Formula, partial: bool) -> str:
    from tamis.formula.printing import formula_text

    blocks = (title, formula_text(formula, terminal_width()).rstrip(), PART if partial else "")
    return "\n\n".join(block for block in blocks if block)


def _markdown(title: str, formula: Formula, partial: bool) -> str:
    from tamis.formula.printing import formula_markdown

    blocks = (f"# {title}", formula_markdown(formula).rstrip(), f"*{PART}*" if partial else "")
    return "\n\n".join(block for block in blocks if block)


def _json(title: str, formula: Formula, partial: bool) -> str:
    import json

    from tamis.formula.printing import formula_data

    return json.dumps({"partial": partial, "title": title, **formula_data(formula)}, ensure_ascii=False, indent=1)


def _csv(title: str, formula: Formula, partial: bool) -> str:
    from tamis.formula.printing import formula_csv

    return formula_csv(formula).rstrip("\n")


_FORMS: dict[OutputFormat, Printer] = {"text": _text, "markdown": _markdown, "json": _json, "csv": _csv}
