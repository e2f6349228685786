"""The parser of each kitchen: the parse table of `grammar/clause.lark` with the kitchen's words."""

from __future__ import annotations

from tamis.assets import asset_text
from tamis.lalr.table import load
from tamis.reading.parser import Fault, Parser
from tamis.reading.vocabulary import Vocabulary
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen

# A command reads the recipes of one house, a test of a few: so many readers are kept.
_KEPT = 4
_parsers: list[tuple[Kitchen, Parser]] = []


def parser_of(kitchen: Kitchen) -> Parser:
    """The parser with the words of a kitchen."""
    for known, parser in _parsers:
        if known is kitchen:
            return parser
    parser = Parser(load(asset_text("grammar/saved/clause.txt")), Vocabulary(kitchen))
    _parsers.insert(0, (kitchen, parser))
    del _parsers[_KEPT:]
    return parser


def is_clause(text: str, kitchen: Kitchen) -> bool:
    """Whether words have the form of a clause."""
    return not isinstance(parser_of(kitchen).parse(text), Fault)
