"""Print what a recipe costs: what it uses line by line, the batch, a portion, and what must be bought for it.

Prices come from your `goods.toml`; what has none is named and not priced. Each line is rounded to
the cent, half a cent up, so that the column adds up to the sum under it.
"""

from __future__ import annotations

from tamis.cli.common import terminal_width
from tamis.cli.dishes import PART, dish_arguments, one_file, wanted
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis cost` takes."""
    parser.add_argument("file", metavar="FILE", help="a recipe file")
    dish_arguments(parser)
    parser.add_argument("--format", choices=("text", "csv", "json"), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the recipe is faulty."""
    found = wanted([one_file(options.file)], options)
    kitchen = found.library.kitchen
    if options.format == "json":
        import json

        from tamis.market.data import list_data

        print(json.dumps({"partial": found.partial, **list_data(found.found, kitchen)}, ensure_ascii=False, indent=1))
    elif options.format == "csv":
        from tamis.market.data import list_csv

        print(list_csv(found.found, kitchen), end="")
    else:
        from tamis.market.text import cost_text

        print(cost_text(found.found, kitchen, terminal_width()), end=f"\n{PART}\n" if found.partial else "")
    return 1 if found.partial else 0
