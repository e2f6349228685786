"""What a production does to the values of its symbols: they become one, a node or, for a hidden rule, a list.

A node is (label, [children]). Rules whose names begin with `_` leave their children to the rule above; tokens with such
a name are dropped.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.lalr.table import Rule, Rules

    Build = Callable[[list[Any]], None]
    Production = tuple[str, int, Build | None]

Node = tuple[str, list[Any]]


def builder(rule: Rule) -> Build | None:
    """What the production does to the values, those of its symbols last; None for nothing. A hidden rule's value is a
    list that nobody else holds: it grows in place."""
    kept = rule.name[0] != "_"
    hidden = [symbol[0] == "_" for symbol in rule.symbols]
    if len(hidden) == 2 and hidden[0] and not kept:
        if not hidden[1]:
            return _more
        if not rule.symbols[1].isupper() and not rule.symbols[0].isupper():
            return _joined
    if any(symbol[0] == "_" and symbol.isupper() for symbol in rule.symbols):
        return _any(rule, kept)
    if len(hidden) == 1:
        return _one(rule.label, kept, hidden[0])
    return _node(rule.label, len(hidden)) if kept and hidden and not any(hidden) else _any(rule, kept)


def in_turn(builds: list[Build]) -> tuple[Build, ...]:
    """What does the same as these one after another: a list made of one value and joined to another at once is one more
    of that."""
    kept: list[Build] = []
    for build in builds:
        if build is _joined and kept and kept[-1] is _first:
            kept[-1] = _more
        else:
            kept.append(build)
    return tuple(kept)


def _more(values: list[Any]) -> None:
    last = values.pop()
    values[-1].append(last)


def _joined(values: list[Any]) -> None:
    last = values.pop()
    values[-1] += last


def _first(values: list[Any]) -> None:
    values[-1] = [values[-1]]


def _one(label: str, kept: bool, hidden: bool) -> Build | None:
    def rename(values: list[Any]) -> None:
        values[-1] = (label, values[-1])

    def wrap(values: list[Any]) -> None:
        values[-1] = (label, [values[-1]])

    if hidden:
        return rename if kept else None
    return wrap if kept else _first


def _node(label: str, size: int) -> Build:
    def node(values: list[Any]) -> None:
        values[-size:] = [(label, values[-size:])]

    return node


def _any(rule: Rule, kept: bool) -> Build:
    label, size = rule.label, len(rule.symbols)
    dropped = [size - at for at, symbol in enumerate(rule.symbols) if symbol[0] == "_" and symbol.isupper()]

    def any_other(values: list[Any]) -> None:
        for behind in dropped:
            values[-behind] = []
        start = len(values) - size
        children = values[start:]
        # A list grows where it is: what repeats may be as long as the text.
        flat: list[Any] = children.pop(0) if children and children[0].__class__ is list else []
        for child in children:
            if child.__class__ is list:
                flat += child
            else:
                flat.append(child)
        values[start:] = [(label, flat) if kept else flat]

    return any_other


class Productions(dict[int, "Production"]):
    """What is done where a production is complete: its name, its length, and what becomes of the values. Most texts are
    made of few: one is made when it is first met."""

    def __init__(self, rules: Rules) -> None:
        self._of = rules

    def __missing__(self, at: int) -> Production:
        rule = self._of[at]
        found = self[at] = (rule.name, len(rule.symbols), builder(rule))
        return found
