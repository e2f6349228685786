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
    if hidden == [True, False] and not kept:
        return _more
    passed = hidden == [True] and not kept and not rule.symbols[0].isupper()
    return None if passed else _any(rule, kept)


def _more(values: list[Any]) -> None:
    last = values.pop()
    values[-1].append(last)


def _any(rule: Rule, kept: bool) -> Build:
    label, size = rule.label, len(rule.symbols)
    dropped = [size - at for at, symbol in enumerate(rule.symbols) if symbol[0] == "_" and symbol.isupper()]

    def only_one(values: list[Any]) -> None:
        value = values[-1]
        flat = value if value.__class__ is list else [value]
        values[-1] = (label, flat) if kept else flat

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

    return only_one if size == 1 and not dropped else any_other


class Productions(dict[int, "Production"]):
    """What is done where a production is complete: its name, its length, and what becomes of the values. Most texts are
    made of few: one is made when it is first met."""

    def __init__(self, rules: Rules) -> None:
        self._of = rules

    def __missing__(self, at: int) -> Production:
        rule = self._of[at]
        found = self[at] = (rule.name, len(rule.symbols), builder(rule))
        return found
