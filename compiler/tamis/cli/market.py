"""Print one market list for recipes: by shop, rounded up to what is sold, with where each thing goes.

A folder stands for all its recipes. Dishes that a recipe uses are shopped for with the share that is taken, unless
`--have brown-stock` says that one is made already. Packs and prices come from your `goods.toml`.
"""

from __future__ import annotations

from tamis.cli.common import terminal_width
from tamis.cli.dishes import PART, Wanted, dish_arguments, wanted
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.cli.common import OutputFormat, Printer


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis market` takes."""
    parser.add_argument("files", metavar="FILE", nargs="+", help="recipe files, or folders of them")
    dish_arguments(parser)
    parser.add_argument("--format", choices=tuple(_FORMS), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if a recipe is faulty."""
    found = wanted(options.files, options)
    print(_FORMS[options.format](found), end="")
    return 1 if found.partial else 0


def _text(wanted: Wanted) -> str:
    from tamis.market.text import list_text

    text = list_text(wanted.found, wanted.library.kitchen, terminal_width())
    return f"{text}\n{PART}\n" if wanted.partial else text


def _markdown(wanted: Wanted) -> str:
    from tamis.market.data import list_markdown

    text = list_markdown(wanted.found, wanted.library.kitchen)
    return f"{text}\n*{PART}*\n" if wanted.partial else text


def _csv(wanted: Wanted) -> str:
    from tamis.market.data import list_csv

    return list_csv(wanted.found, wanted.library.kitchen)


def _json(wanted: Wanted) -> str:
    import json

    from tamis.market.data import list_data

    data = {"partial": wanted.partial, **list_data(wanted.found, wanted.library.kitchen)}
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


_FORMS: dict[OutputFormat, Printer] = {"text": _text, "markdown": _markdown, "csv": _csv, "json": _json}
