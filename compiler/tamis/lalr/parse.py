"""The tree of a row of tokens, by a saved table."""

from __future__ import annotations

from tamis.lalr.table import END, Rule, Table
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable


class Node(NamedTuple):
    """A rule of the grammar, and what stands under it: tokens and nodes."""

    label: str
    children: list[Any]


class Unexpected(Exception):
    """A token that cannot stand where it stands; None for the end."""

    def __init__(self, token: object, expected: list[str]) -> None:
        super().__init__(f"{token!r} where one of {', '.join(expected)} may stand")
        self.token = token
        self.expected = expected


def parse_tokens(table: Table, start: str, tokens: Iterable[tuple[str, Any]]) -> Node:
    """The node of the start symbol; a token is its kind and what stands for it in the tree. Raises Unexpected where the
    tokens don't fit the grammar."""
    rows, rules = table.rows, table.rules
    first, last = table.starts[start]
    states: list[int] = [first]
    values: list[Any] = []
    for kind, token in tokens:
        step = rows[states[-1]].get(kind)
        while step is None or step < 0:
            if step is None:
                raise _unexpected(rows[states[-1]], token)
            rule = rules[~step]
            _reduce(rule, states, values)
            state = rows[states[-1]][rule.name]
            states.append(state)
            step = rows[state].get(kind)
        states.append(step)
        values.append(token)
    while states[-1] != last:
        step = rows[states[-1]].get(END)
        if step is None:
            raise _unexpected(rows[states[-1]], None)
        rule = rules[~step]
        _reduce(rule, states, values)
        states.append(rows[states[-1]][rule.name])
    node: Node = values[0]
    return node


def _unexpected(row: dict[str, int], token: object) -> Unexpected:
    return Unexpected(token, sorted(symbol for symbol in row if symbol.isupper()))


def _reduce(rule: Rule, states: list[int], values: list[Any]) -> None:
    """Put the values of a rule's symbols together as its own; the value of a hidden rule is a list."""
    size = len(rule.symbols)
    if size == 2 and rule.name[0] == rule.symbols[0][0] == "_" and isinstance(values[-2], list):
        last = values.pop()  # the usual list: one more of what repeats
        if rule.symbols[1][0] != "_":
            values[-1].append(last)
            del states[-2:]
            return
        values.append(last)
    children: list[Any] = []
    if size:
        for symbol, value in zip(rule.symbols, values[-size:], strict=True):
            if symbol[0] != "_":
                children.append(value)
            elif isinstance(value, list):
                # What repeats grows at its end: the list before belongs to nobody else.
                children = value if not children else children + value
        del values[-size:], states[-size:]
    values.append(children if rule.name[0] == "_" else Node(rule.label, children))
