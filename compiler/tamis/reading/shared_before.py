"""A share in plain words right before its bracket: `add half [the cabbage]`, `the juice of [1 lemon]`.

It is read as if it stood inside, since the words of a clause may stand before it as well; the text stays as it is.
"""

from __future__ import annotations

from tamis.quantity.nouns import nouns
from tamis.reading.clause import clause_words, leaves, start_of
from tamis.reading.clause_reader import read_alone
from tamis.reading.clauses import Ingredient
from tamis.reading.measured import NAMES
from tamis.reading.parser import Fault
from tamis.reading.parsers import parser_of
from tamis.reading.prose import commands
from tamis.reading.tables import tables
from tamis.source import Span
from tamis.syntax.document import Clause, Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.reading.clause import Node, NodeKind
    from tamis.reading.plain import Plain
    from tamis.syntax.document import Part

_LONGEST = 8  # words: *the finely grated zest and juice of*
_PARTS: frozenset[NodeKind] = frozenset(("PART", "PARTTHE"))
_SHARES: frozenset[NodeKind] = frozenset(("of_it", "share", "PART", "PARTTHE"))
_CALLED = 3  # words of a name that a share may be part of: *the whole top half of*


def with_share(before: Text, words: Plain, clause: Clause, kitchen: Kitchen) -> tuple[Part, ...] | None:
    """The words before a bracket without the share that they end with, and the clause with it; None where they end with
    none. `words` are those of `before`."""
    if not words.said or words.said[-1] not in tables(kitchen.language).shares:
        return None
    for at in range(max(0, len(words) - _LONGEST), len(words)):
        cut = words.starts[at]
        share = before.text[cut:]
        text = f"{share} {clause.text}"
        if _is_share(text, len(share) + 1, kitchen) and not _is_named(words, at):
            start = before.span.start + cut - 1  # where the bracket would open
            joined = Clause(text, Span(start, clause.span.end), clause.language)
            return (Text(before.text[:cut], Span(before.span.start, start + 1)), joined) if cut else (joined,)
    return None


def _is_share(text: str, inner: int, kitchen: Kitchen) -> bool:
    """Whether a text is a clause that opens with a share, which ends where the bracket begins."""
    tree = parser_of(kitchen).parse(text)
    if isinstance(tree, Fault):
        return False
    nodes: Sequence[Node] = tree[1][0][1]
    at = next((n for n, node in enumerate(nodes[:-1]) if node[0] in _SHARES), -1)
    if at < 0 or (at and nodes[0][0] != "THE") or not start_of(nodes[at]) < inner <= start_of(nodes[at + 1]):
        return False
    if nodes[at][0] in _PARTS:
        return _has_part(text, kitchen)
    first = nodes[at][1][0]
    if first[0] == "sized" and [node[0] for node in first[1]] == ["counted"]:  # a band of the white and one of the yolk
        name = next((node for node in nodes[at + 1 :] if node[0] in NAMES), first)
        word: str = leaves([name])[-1][1].lower()
        return nouns(kitchen.language).singular(word) != word
    return bool(first[0] not in ("EACH", "ALL"))


def _has_part(text: str, kitchen: Kitchen) -> bool:
    """Whether it is known what a part of the food weighs: juice, yolks; of chops the rind is only scored."""
    records, _ = read_alone(text, kitchen)
    food = records[0] if records else None
    if not isinstance(food, Ingredient) or food.goods is None:
        return False
    one, ids = nouns(kitchen.language).singular, [part.id.rpartition("-")[2] for part in food.goods.parts]
    return any(one(word) in ids for word in food.part.split())


def _is_named(words: Plain, at: int) -> bool:
    """Whether the words before a share are part of a name (*the top half of*), or what is cut falls into such pieces:
    *cut in half*."""
    said = clause_words(words.kitchen.language)
    names = (said.articles | said.the | said.each) - said.pronouns
    for before in range(at - 1, max(-1, at - 1 - _CALLED), -1):
        if not words.is_word(before):
            break
        if words.said[before] in names:
            return True
    if words.said[at - 1 : at] and words.said[at - 1] in said.into | said.cut_in and words.said[-1] not in said.of:
        work = words.ask(commands)
        return bool(work) and work[-1].verb.divides
    return False
