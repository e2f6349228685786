"""The words that open a clause, as `grammar/clause.lark` has them: a new class is here by itself.

Loaded only where something is to be suggested.
"""

from __future__ import annotations

from functools import cache

from tamis.assets import asset_text
from tamis.lalr.first import first_symbols
from tamis.lalr.table import load
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from tamis.reading.clause import NodeKind

# What a clause may say of a step: how long, until when, how hot, how often.
_OF_A_STEP: tuple[NodeKind, ...] = ("time", "cue", "target", "setting", "tending")
# What a measure begins with (about, at least, an) may also stand within a clause: it opens none by itself.
_MEASURES: tuple[NodeKind, ...] = ("hedges", "stretch", "counted", "sized")
_START: NodeKind = "clause"
_NIGHT: NodeKind = "OVERNIGHT"


@cache
def _roles() -> dict[str, frozenset[str]]:
    """The classes that each role may begin with; and each measure."""
    rules = load(asset_text("grammar/saved/clause.txt")).rules.all()
    first = first_symbols(rules)
    roles = [rule.symbols[0] for rule in rules if rule.name == _START]
    return {name: first[name] for name in (*roles, *_MEASURES)}


@cache
def sole_openers(language: str) -> tuple[str, ...]:
    """The phrases that open a clause of one role whatever follows: those that only one role begins with."""
    closed = word_lists(language, "clause")["closed"]
    roles = [first for name, first in _roles().items() if name not in _MEASURES]
    names = (name for name in closed if sum(name in first for first in roles) == 1)
    return tuple(phrase for name in names for phrase in closed[name])


@cache
def step_openers(language: str) -> frozenset[str]:
    """The words with which something is said of a step: *for*, *until*, *at*, *every*; also *overnight*."""
    lists, roles = word_lists(language, "clause"), _roles()
    within = frozenset().union(*(roles[name] for name in _MEASURES))
    names = frozenset().union(*(roles[name] for name in _OF_A_STEP)) - within
    phrases = [phrase for name, phrases in lists["closed"].items() if name in names for phrase in phrases]
    return frozenset(phrase.split(" ")[0] for phrase in (*phrases, *lists["open"][_NIGHT]))
