"""Clauses as most are: `200 g flour, sifted`, `bake for 20–25 min at 180 °C`, `until golden`, `in a 24 cm round tin`.

Clauses of one shape differ only in their words. So what the readers of each role find out by walking over the tree is
found out once for a shape: which tokens are the number, the unit, the name. With that the record is made in a few steps
and without a tree; a test holds the two to the same record. Of a clause that is no usual one after all none is made.
"""

from __future__ import annotations

from tamis.quantity.measure import Measure
from tamis.reading.clause import clause_words, end_of, keys_of, leaves, start_of
from tamis.reading.clauses import Cue, Ingredient, Reference, Setting, Time, Tool
from tamis.reading.durations import lasting
from tamis.reading.food_parts import PREPOSITIONS
from tamis.reading.measured import NAMES, may_be_unit
from tamis.reading.quantities import plain_amount, unit_called
from tamis.reading.soundness import LENGTHS, NUMBERS
from tamis.reading.temperatures import in_celsius
from tamis.record import made
from tamis.source import NOWHERE, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.quantity.amount import Amount
    from tamis.quantity.duration import Duration
    from tamis.reading.clause import Node, NodeKind
    from tamis.reading.clauses import Read, Role
    from tamis.reading.shapes import Shape, Way
    from tamis.syntax.cutting import Cut
    from tamis.syntax.document import Clause

    Figures = tuple[int, int, int]


def usual(shape: Shape, clause: Clause, kitchen: Kitchen, cut: Cut) -> Read | None:
    """The record of a clause whose shape is a usual one. A shape is looked at when it is met again."""
    way = shape.way
    if way is None:
        if not shape.used:
            return None
        role, children = shape.tree()[1][0]
        find = _WAYS.get(role)
        way = shape.way = (find and find(children)) or _no_way
    return None if cut.timed else way(clause, kitchen, cut)  # who reads a time in letters is asked elsewhere


def _no_way(_clause: Clause, _kitchen: Kitchen, _cut: Cut) -> None:
    """Of a shape that is no usual one."""


# ---- tokens of a shape: a number or a range begins and ends with two of them, and its unit is the third


def _figures(nodes: Sequence[Node]) -> Figures | None:
    """Those of `20 g`, `20–30 min`; None for anything more."""
    if len(nodes) != 2 or nodes[0][0] != "amount" or nodes[0][1][0][0] != "NUMBER":
        return None
    numbers = nodes[0][1]
    return numbers[0][2], numbers[-1][2], nodes[1][2]


def _lengths(node: Node) -> tuple[Figures, ...] | None:
    """Those of a duration that is so much of a unit, or of some: `20–25 min`, `1 h 30 min`."""
    while node[0] in ("duration", "stretch") and len(node[1]) == 1:
        node = node[1][0]
    if node[0] != "exact":
        return None
    earlier, last = node[1][:-2], _figures(node[1][-2:])
    before = () if not earlier else _lengths(earlier[0]) if len(earlier) == 1 else None
    return None if last is None or before is None else (*before, last)


def _is_free(nodes: Sequence[Node]) -> bool:
    """Whether nothing stands there but words, with no number or time among them."""
    return all([_is_free(n[1]) if n[0] in _TEXTS else n[1].__class__ is not list and n[0] not in _READ for n in nodes])


_TEXTS: frozenset[NodeKind] = frozenset(("text", "said"))
_TAILS: frozenset[NodeKind] = frozenset(("preparation", "purpose"))
_READ: frozenset[NodeKind] = NUMBERS | LENGTHS | {"ADJCOMMA"}


def _amount(cut: Cut, figures: Figures) -> Amount | None:
    low, high, _ = figures
    said = _said(cut, low, low)
    return plain_amount(said, said if low == high else _said(cut, high, high))


def _duration(kitchen: Kitchen, cut: Cut, lengths: Sequence[Figures]) -> Duration | None:
    total: Duration | None = None
    for figures in lengths:
        amount, unit = _amount(cut, figures), unit_called(kitchen, _said(cut, figures[2], figures[2]))
        if amount is None or unit is None:
            return None
        here = lasting(amount, unit.factor)
        total = total.plus(here) if total else here
    return total


def _said(cut: Cut, first: int, last: int) -> str:
    return cut.text[cut.starts[first] : cut.ends[last]]


def _span(clause: Clause, cut: Cut, first: int, last: int) -> Span:
    inner = clause.span[0] + 1
    return made(Span, (inner + cut.starts[first], inner + cut.ends[last]))


def _keys(cut: Cut, words: Sequence[Node]) -> tuple[str, ...]:
    """Words as lists know them."""
    if len(words) == 1:
        return keys_of(_said(cut, words[0][2], words[0][3]))
    return tuple([key for _, _, first, last in words for key in keys_of(_said(cut, first, last))])


# ---- the ways of each role


def _food(children: Sequence[Node]) -> Way | None:
    """A weight, a known name, and perhaps free words or a purpose behind its comma."""
    weighed, name, *tail = children
    if weighed[0] != "weighed" or len(weighed[1]) != 1 or name[0] != "food" or (tail and len(tail) != 2):
        return None
    weight, words, behind = _figures(weighed[1][0][1]), leaves(name[1]), tail[1] if tail else None
    if weight is None or not _is_free(words):
        return None
    if behind and (tail[0][0] != "COMMA" or behind[0] not in _TAILS or not _is_free(behind[1])):
        return None
    (kind, _, first, end), last, alone = words[0], words[-1][3], len(words) == 1
    rest = (start_of(behind), end_of(behind)) if behind else None
    prepares = behind is not None and behind[0] == "preparation"

    def read(clause: Clause, kitchen: Kitchen, cut: Cut) -> Ingredient | None:
        amount, found = _amount(cut, weight), kitchen.larder.find(_keys(cut, words))
        if amount is None or found is None or found.piece_word:
            return None
        if may_be_unit(kitchen, (kind, _said(cut, first, end)), alone):
            return None
        begin, _, stop = weight
        said = _said(cut, stop, stop)
        unit = unit_called(kitchen, said)
        text, spans = (_said(cut, *rest), (_span(clause, cut, *rest),)) if rest else ("", ())
        prepared, meant = ((text, spans), ("", ())) if prepares else (("", ()), (text, spans))
        return made(Ingredient, (
            clause, _said(cut, first, last), _span(clause, cut, first, last), found.goods, found.states, "",
            (made(Measure, (amount, unit.id if unit else said)),), _said(cut, begin, stop), False, (), None, None, "",
            "", None, "", "", prepared[0], meant[0], False, (), None, None, "ingredient", "", None, "", False,
            _span(clause, cut, begin, stop), prepared[1], meant[1], None,
        ))  # fmt: skip

    return read


def _time(children: Sequence[Node]) -> Way | None:
    """A verb of one word, a duration, perhaps a temperature."""
    verb = children[0][1] if children[0][0] == "verb" else ()
    if len(verb) > 1:
        return None
    at = len(verb) + (children[len(verb)][0] == "FOR")
    lengths, rest, heat = _lengths(children[at]), children[at + 1 :], None
    if rest and len(rest) == 2 and rest[0][0] == "AT" and rest[1][0] == "scales" and len(rest[1][1]) == 1:
        heat = _figures(rest[1][1][0][1])
    if lengths is None or (rest and heat is None):
        return None

    def read(clause: Clause, kitchen: Kitchen, cut: Cut) -> Time | None:
        said = _said(cut, verb[0][2], verb[0][3]) if verb else ""
        work, duration, setting = kitchen.verbs.get(said.lower()), _duration(kitchen, cut, lengths), None
        if duration is None or (verb and (work is None or work.lets)):
            return None
        if heat:
            value = _amount(cut, heat)
            if value is None:
                return None
            celsius = in_celsius(value, _said(cut, heat[2], heat[2]), kitchen.language)
            where = _span(clause, cut, heat[0], heat[2])
            setting = Setting(clause, "temperature", celsius, text=cut.text, degrees_span=where)
        return made(
            Time, (clause, duration, work, said, None, False, False, setting, None, cut.text, False, None, "time", "")
        )

    return read


def _cue(children: Sequence[Node]) -> Way | None:
    """*Until* and free words, perhaps a duration behind their comma."""
    if len(children) not in (2, 4) or children[0][0] != "UNTIL" or children[1][0] != "sight":
        return None
    lengths = _lengths(children[3]) if len(children) == 4 and children[2][0] == "COMMA" else None
    if not _is_free(children[1][1]) or (lengths is None) != (len(children) == 2):
        return None
    end = end_of(children[1])

    def read(clause: Clause, kitchen: Kitchen, cut: Cut) -> Cue | None:
        duration = _duration(kitchen, cut, lengths) if lengths else None
        if lengths and duration is None:
            return None
        return made(Cue, (clause, _said(cut, 0, end), None, duration, None, "", None, "cue"))

    return read


def _tool(children: Sequence[Node]) -> Way | None:
    """One piece with its size and adjectives: `in a 24 cm round tin`."""
    if len(children) != 3 or children[0][0] != "PREP" or children[1][0] != "sized" or children[2][0] != "tool":
        return None
    (counted, *more), words, size = children[1][1], leaves(children[2][1]), None
    if counted[0] != "counted" or len(counted[1]) != 1 or counted[1][0][0] != "ARTICLE" or not _is_free(words):
        return None
    if more:
        length = more[0][1][0] if len(more) == 1 and more[0][0] == "size" else None
        size = _figures(length[1]) if length and length[0] == "length" else None
        if size is None or len(more[0][1]) > 1:
            return None
    opening, first, end, last = end_of(children[0]), words[0][2], words[0][3], words[-1][3]

    def read(clause: Clause, kitchen: Kitchen, cut: Cut) -> Tool | None:
        if _said(cut, first, end) in clause_words(kitchen.language).lengths or (size and not _amount(cut, size)):
            return None
        found, said = kitchen.cupboard.find(_keys(cut, words)), _said(cut, first, last)
        if found is None:
            return None
        names = said.lower().split() if found.adjectives else ()
        adjectives = tuple([word for word in found.adjectives if word in names])
        sized, where = (_said(cut, size[0], size[2]), _span(clause, cut, size[0], size[2])) if size else ("", NOWHERE)
        preposition = _said(cut, 0, opening).lower()
        return Tool(clause, said, found.item, adjectives, size=sized, preposition=preposition, size_span=where)

    return read


def _reference(children: Sequence[Node]) -> Way | None:
    """`the poolish`, `with the hot milk`."""
    opening = children[0] if children[0][0] in PREPOSITIONS else None
    nodes = children[opening is not None :]
    if len(nodes) != 2 or nodes[0][0] != "THE" or nodes[1][0] not in NAMES or not _is_free(nodes[1][1]):
        return None
    first, last, before = start_of(nodes[1]), end_of(nodes[1]), opening[3] if opening else -1

    def read(clause: Clause, _kitchen: Kitchen, cut: Cut) -> Reference:
        preposition = _said(cut, 0, before).lower() if opening else ""
        where = _span(clause, cut, first, last)
        return made(Reference, (clause, _said(cut, first, last), where, None, preposition, "", "reference"))

    return read


_WAYS: Mapping[Role, Callable[[Sequence[Node]], Way | None]] = {
    "ingredient": _food,
    "time": _time,
    "cue": _cue,
    "equipment": _tool,
    "reference": _reference,
}
