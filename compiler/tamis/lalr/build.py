"""Make the parse table of a grammar, by Lark, and write it as data for `tamis.lalr.table`.

States and rules get their numbers by walking the table from its starts, symbols in the order of the alphabet: Lark's
own order changes from run to run.
"""

from __future__ import annotations

from collections.abc import Iterator

from lark import Lark
from lark.grammar import Rule as LarkRule
from lark.grammar import Terminal
from lark.lexer import Lexer
from lark.parsers.lalr_analysis import ParseTable, Shift

from tamis.record import NamedTuple
from tamis.saved import places, written
from tamis.typed import Any


class Tables(NamedTuple):
    """A parse table as plain data: what `Table` holds, all of it unpacked."""

    starts: dict[str, tuple[int, int]]
    rules: list[tuple[str, str, tuple[str, ...]]]
    rows: list[dict[str, int]]


class _NoLexer(Lexer):
    """Stands where Lark wants a lexer: the terminals are declared, and cut by our own code."""

    def __init__(self, _conf: Any) -> None:
        pass

    def lex(self, *_: Any) -> Iterator[Any]:
        raise NotImplementedError


def made(grammar: str, *starts: str) -> str:
    """The saved table of a grammar's text, for the symbols that a text may be."""
    return save(tables_of(lark_of(grammar, *starts)))


def lark_of(grammar: str, *starts: str, lexer: type[Lexer] = _NoLexer) -> Lark:
    """Lark's own parser of a grammar whose terminals are all declared."""
    return Lark(grammar, parser="lalr", lexer=lexer, start=list(starts), maybe_placeholders=False)


def tables_of(lark: Lark) -> Tables:
    """The parse table of a Lark parser. Raises ValueError for what the loops that read by the table don't know."""
    table: ParseTable = lark.parser.parser._parse_table  # shown nowhere else
    states = _in_order(table)
    used: dict[LarkRule, int] = {}
    rows: list[dict[str, int]] = []
    for state in states:
        row = {}
        for symbol, (action, to) in _sorted(table.states[state]):
            row[symbol] = states[to] if action is Shift else ~used.setdefault(to, len(used))
        rows.append(row)
    starts = {start: (states[first], states[table.end_states[start]]) for start, first in table.start_states.items()}
    return Tables(starts, [_plain(rule) for rule in used], rows)


def _in_order(table: ParseTable) -> dict[Any, int]:
    """The number of each state that can be reached."""
    numbers: dict[Any, int] = {state: at for at, (_, state) in enumerate(_sorted(table.start_states))}
    waiting = list(numbers)
    for state in waiting:
        for _, (action, to) in _sorted(table.states[state]):
            if action is Shift and to not in numbers:
                numbers[to] = len(numbers)
                waiting.append(to)
    return numbers


def _sorted(row: dict[Any, Any]) -> list[tuple[str, Any]]:
    return sorted(((str(symbol), value) for symbol, value in row.items()), key=lambda pair: pair[0])


def _plain(rule: LarkRule) -> tuple[str, str, tuple[str, ...]]:
    name = str(rule.origin.name)
    hidden = [symbol for symbol in rule.expansion if isinstance(symbol, Terminal) and symbol.filter_out]
    if rule.options.expand1 or rule.options.keep_all_tokens or any(symbol.name[0] != "_" for symbol in hidden):
        raise ValueError(f"{name}: `?rule`, `!rule` and tokens without a name are not in use here")
    return name, str(rule.alias or name), tuple(str(symbol.name) for symbol in rule.expansion)


def save(tables: Tables) -> str:
    """The text of a saved table. In the row of a state, symbols that lead to the same stand before it: `2 3 =7 4 =-1`
    is 7 after the symbols 2 and 3, and the end of rule 0 before symbol 4."""
    names = [name for rule in tables.rules for name in (rule[0], rule[1], *rule[2])]
    symbols = {name: at for at, name in enumerate(sorted({*names, *(name for row in tables.rows for name in row)}))}
    rules = [" ".join(str(symbols[one]) for one in (name, label, *parts)) for name, label, parts in tables.rules]
    rows = [_packed(row, symbols) for row in tables.rows]
    return written(
        {
            "symbols": list(symbols),
            "starts": [f"{start} {first} {last}" for start, (first, last) in tables.starts.items()],
            "rules": rules,
            "rules begin": [places(rules)],
            "rows": rows,
            "rows begin": [places(rows)],
        }
    )


def _packed(row: dict[str, int], symbols: dict[str, int]) -> str:
    groups: dict[int, list[str]] = {}
    for symbol, target in row.items():
        groups.setdefault(target, []).append(str(symbols[symbol]))
    return " ".join(f"{' '.join(group)} ={target}" for target, group in groups.items())
