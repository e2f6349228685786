"""Convert a measure to other units: `tamis convert "2/3 cup bread flour"`.

It takes a food with its measure, a bare measure, a length or the sides of a tin, or a temperature (`180 C`, `350 °F`,
`gas mark 4`, `160 fan`). Weights name their sources; where these disagree the range is shown.
"""

from __future__ import annotations

import sys

from tamis.cli.common import Stop, print_findings, terminal_width
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from tamis.cli.common import OutputFormat
    from tamis.convert.asked import Asked
    from tamis.kitchen.house import Kitchen
    from tamis.quantity.units import Cup


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis convert` takes."""
    from tamis.quantity.units import CUPS

    parser.add_argument("measure", metavar="MEASURE", nargs="+", help="as in a recipe: 2/3 cup bread flour, 180 °C")
    parser.add_argument("--to", metavar="UNIT", help="only this: g, ml, cup, clove, cm, C, F, fan, gas …")
    parser.add_argument("--cup", choices=tuple(CUPS), help="which cup and spoons are meant (default: your kitchen's)")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the food is not known, so that only a part can be told."""
    from tamis.convert.asked import read_asked

    kitchen = _kitchen(options.cup)
    asked = read_asked(" ".join(options.measure), kitchen)
    if options.to:
        print(_in_unit(asked, options.to, kitchen))
        return 0
    return _everything(asked, kitchen, options.format)


def _kitchen(cup: Cup | None) -> Kitchen:
    """The kitchen of the house around us; what is wrong with its files is told, since it may change the answer."""
    from tamis.library.files import house_folder
    from tamis.library.house import open_house
    from tamis.quantity.units import shipped

    house = open_house(house_folder(""))
    print_findings(house.findings, sys.stderr)
    kitchen = house.kitchen
    return kitchen._replace(units=shipped(kitchen.language, cup)) if cup else kitchen


def _everything(asked: Asked, kitchen: Kitchen, form: OutputFormat) -> int:
    from tamis.convert.answer import answer
    from tamis.convert.printing import answer_data, answer_text

    found = answer(asked, kitchen)
    if found.problem and not found.sections:
        raise Stop(_told(found.problem, found.hint))
    if form == "json":
        import json

        print(json.dumps(answer_data(found), ensure_ascii=False, indent=1))
    else:
        print(answer_text(found, terminal_width()), end="")
    if found.problem:
        print(f"tamis convert: {_told(found.problem, found.hint)}", file=sys.stderr)
    return 1 if found.problem else 0


def _told(problem: str, hint: str) -> str:
    return f"{problem}\n  > {hint}" if hint else problem


def _in_unit(asked: Asked, wanted: str, kitchen: Kitchen) -> str:
    from tamis.convert.unit import said_in

    said = said_in(asked, wanted, kitchen)
    if said.problem:
        raise Stop(_told(said.problem, said.hint))
    return said.text
