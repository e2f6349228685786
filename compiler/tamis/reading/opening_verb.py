"""The verb that a clause opens with: `simmer for 1 h`, `leave to cool until cold`, `chilled overnight`."""

from __future__ import annotations

from tamis.reading.clause import first_leaf, leaves, start_of
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.verbs import Verb
    from tamis.reading.clause import Node, Reading


def verb_of(reading: Reading, node: Node, rest: Sequence[Node]) -> tuple[Verb | None, str]:
    """The verb that a clause opens with, as the list knows it: with what follows, `leave to cool` is to cool."""
    first = first_leaf(node)
    verbs = reading.kitchen.verbs
    alone = verbs.get(first[1].lower()) or verbs.participle(first[1].lower())
    if alone is not None and not alone.lets:
        return alone, first[1]
    words = reading.keys(rest)
    found = verbs.match(words, 0)
    if found is None:
        return alone, first[1]
    end = start_of(node)
    for leaf in _leaves_until(rest, found[1]):
        end = leaf[3]
    return found[0], reading.text[start_of(node) : end]


def _leaves_until(rest: Sequence[Node], words: int) -> list[Node]:
    """The leaves that hold the first so many words."""
    kept, seen = [], 0
    for leaf in leaves(rest):
        if seen >= words:
            break
        kept.append(leaf)
        seen += len(leaf[1].split())
    return kept
