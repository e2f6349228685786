"""What a production may begin with, told from a saved table's rules."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.lalr.table import Rule


def first_symbols(rules: Iterable[Rule]) -> dict[str, frozenset[str]]:
    """For each production the tokens that it may begin with (its FIRST set). No production of ours is empty: that would
    ask for the next symbol too, so it raises."""
    begins: dict[str, set[str]] = {}
    for rule in rules:
        if not rule.symbols:
            raise ValueError(f"the production {rule.name} may be empty")
        begins.setdefault(rule.name, set()).add(rule.symbols[0])
    found: dict[str, frozenset[str]] = {}
    for name in begins:
        seen, waiting = {name}, [name]
        while waiting:
            new = begins[waiting.pop()] - seen
            seen |= new
            waiting += [symbol for symbol in new if symbol in begins]
        found[name] = frozenset(symbol for symbol in seen if symbol not in begins)
    return found
