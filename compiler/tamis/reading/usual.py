"""Clauses as most are: `200 g flour, sifted`, `bake for 20–25 min at 180 °C`, `until golden`, `in a 24 cm round tin`.

Clauses of one shape differ only in their words. So what the readers of each role find out by walking over the tree is
found out once for a shape: which tokens are the number, the unit, the name. With that the record is made in a few steps
and without a tree; a test holds the two to the same record. Of a clause that is no usual one after all none is made.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.measure import Measure
from tamis.reading.clause import clause_words, end_of, keys_of, leaves, start_of
from tamis.reading.clauses import Cue, Ingredient, Reference, Setting, Time, Tool
from tamis.reading.durations import lasting
from tamis.reading.food_parts import PREPOSITIONS
from tamis.reading.measured import NAMES, may_be_unit
from tamis.reading.quantities import plain_amount, unit_called
from tamis.reading.soundness import LENGTHS, NUMBERS
from tamis.reading.temperatures import in_celsius
from tamis.record import NamedTuple, made
from tamis.source import NOWHERE, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.quantity.amount import Amount
    from tamis.quantity.duration import Duration
    from tamis.reading.clause import Node, NodeKind
    from tamis.reading.clauses import Read, Role
    from tamis.reading.shapes import Shape
    from tamis.syntax.cutting import Cut
    from tamis.syntax.document import Clause

    Way = Callable[[Clause, Kitchen, Cut], Read | None]


def usual(shape: Shape, clause: Clause, kitchen: Kitchen, cut: Cut) -> Read | None:
    """The record of a clause whose shape is a usual one. A shape is looked at when it is met again."""
    way = shape.way
    if way is None:
        if not shape.used:
            return None
        role, children = shape.model()[1][0]
        find = _WAYS.get(role)
        way = shape.way = (find and find(children)) or _no_way
    return None if cut.timed else way(clause, kitchen, cut)  # who reads a time in letters is asked elsewhere


def _no_way(_clause: Clause, _kitchen: Kitchen, _cut: Cut) -> None:
    """Of a shape that is no usual one."""


class _Figures(NamedTuple):
    """The tokens of a number or a range, which begins and ends with the first two, and of its unit."""

    low: int
    high: int
    unit: int


def _figures(nodes: Sequence[Node]) -> _Figures | None:
    """Those of `20 g`, `20–30 min`; None for anything more."""
    if len(nodes) != 2 or nodes[0][0] != "amount" or nodes[0][1][0][0] != "NUMBER":
        return None
    numbers = nodes[0][1]
    return _Figures(numbers[0][2], numbers[-1][2], nodes[1][2])


def _amount(cut: Cut, figures: _Figures) -> Amount | None:
    low, high, _ = figures
    text, starts, ends = cut.text, cut.starts, cut.ends
    said = text[starts[low] : ends[low]]
    return plain_amount(said, said if low == high else text[starts[high] : ends[high]])


def _said(cut: Cut, token: int) -> str:
    return cut.text[cut.starts[token] : cut.ends[token]]


def _keys(cut: Cut, words: Sequence[Node]) -> tuple[str, ...]:
    """Words as lists know them."""
    text, starts, ends = cut.text, cut.starts, cut.ends
    if len(words) == 1:
        return keys_of(text[starts[words[0][2]] : ends[words[0][3]]])
    return tuple([key for _, _, first, last in words for key in keys_of(text[starts[first] : ends[last]])])


def _is_free(nodes: Sequence[Node]) -> bool:
    """Whether nothing stands there but words, with no number or time among them."""
    return all([
        _is_free(node[1]) if node[0] in _TEXTS else node[1].__class__ is not list and node[0] not in _READ
        for node in nodes
    ])  # fmt: skip


_TEXTS: frozenset[NodeKind] = frozenset(("text", "said"))
_READ: frozenset[NodeKind] = NUMBERS | LENGTHS | {"ADJCOMMA"}


# ---- food


class _Food(NamedTuple):
    """A weight, a known name, and perhaps free words or a purpose behind its comma."""

    weight: _Figures
    words: Sequence[Node]
    behind: tuple[int, int] | None
    prepares: bool

    def read(self, clause: Clause, kitchen: Kitchen, cut: Cut) -> Ingredient | None:
        weight, words, behind, prepares = self
        text, starts, ends, inner = cut.text, cut.starts, cut.ends, clause.span[0] + 1
        amount, found, first = _amount(cut, weight), kitchen.larder.find(_keys(cut, words)), words[0]
        start, end = starts[first[2]], ends[words[-1][3]]
        if amount is None or found is None or found.piece_word:
            return None
        if may_be_unit(kitchen, (first[0], text[start : ends[first[3]]]), len(words) == 1):
            return None
        preparation = purpose = ""
        prepared: tuple[Span, ...] = ()
        meant: tuple[Span, ...] = ()
        if behind:
            begin, stop = starts[behind[0]], ends[behind[1]]
            if prepares:
                preparation, prepared = text[begin:stop], (made(Span, (inner + begin, inner + stop)),)
            else:
                purpose, meant = text[begin:stop], (made(Span, (inner + begin, inner + stop)),)
        begin, stop = starts[weight.low], ends[weight.unit]
        said = _said(cut, weight.unit)
        unit = unit_called(kitchen, said)
        return made(
            Ingredient,
            (
                clause, text[start:end], made(Span, (inner + start, inner + end)), found.goods, found.states, "",
                (made(Measure, (amount, unit.id if unit else said)),), text[begin:stop], False, (), None, None, "", "",
                None, "", "", preparation, purpose, False, (), None, None, "ingredient", "", None, "", False,
                made(Span, (inner + begin, inner + stop)), prepared, meant, None,
            ),
        )  # fmt: skip


def _food(children: Sequence[Node]) -> Way | None:
    weighed, name, *tail = children
    if weighed[0] != "weighed" or len(weighed[1]) != 1 or name[0] != "food":
        return None
    weight, words = _figures(weighed[1][0][1]), leaves(name[1])
    if weight is None or not _is_free(words) or (tail and len(tail) != 2):
        return None
    if not tail:
        return _Food(weight, words, None, False).read
    comma, behind = tail
    if comma[0] != "COMMA" or behind[0] not in ("preparation", "purpose") or not _is_free(behind[1]):
        return None
    return _Food(weight, words, (start_of(behind), end_of(behind)), behind[0] == "preparation").read


# ---- time


def _lengths(node: Node) -> tuple[_Figures, ...] | None:
    """The figures of a duration that is so much of a unit, or of some: `20–25 min`, `1 h 30 min`."""
    while node[0] in ("duration", "stretch") and len(node[1]) == 1:
        node = node[1][0]
    if node[0] != "exact":
        return None
    earlier, last = node[1][:-2], _figures(node[1][-2:])
    if not earlier or last is None:
        return last and (last,)
    before = _lengths(earlier[0]) if len(earlier) == 1 else None
    return before and (*before, last)


def _duration(kitchen: Kitchen, cut: Cut, lengths: tuple[_Figures, ...]) -> Duration | None:
    total: Duration | None = None
    for figures in lengths:
        amount, unit = _amount(cut, figures), unit_called(kitchen, _said(cut, figures.unit))
        if amount is None or unit is None:
            return None
        here = lasting(amount, unit.factor)
        total = total.plus(here) if total else here
    return total


class _Time(NamedTuple):
    """A verb of one word, a duration, perhaps a temperature."""

    verb: Node | None
    lengths: tuple[_Figures, ...]
    heat: _Figures | None

    def read(self, clause: Clause, kitchen: Kitchen, cut: Cut) -> Time | None:
        verb, said = None, ""
        if self.verb:
            said = cut.text[cut.starts[self.verb[2]] : cut.ends[self.verb[3]]]
            verb = kitchen.verbs.get(said.lower())
            if verb is None or verb.lets:
                return None
        duration, setting = _duration(kitchen, cut, self.lengths), None
        if duration is None:
            return None
        if self.heat:
            inner, value = clause.span[0] + 1, _amount(cut, self.heat)
            if value is None:
                return None
            celsius = in_celsius(value, _said(cut, self.heat.unit), kitchen.language)
            where = made(Span, (inner + cut.starts[self.heat.low], inner + cut.ends[self.heat.unit]))
            setting = Setting(clause, "temperature", celsius, text=cut.text, degrees_span=where)
        return made(
            Time,
            (clause, duration, verb, said, None, False, False, setting, None, cut.text, False, None, "time", ""),
        )


def _time(children: Sequence[Node]) -> Way | None:
    verb, at = None, 0
    if children[0][0] == "verb":
        if len(children[0][1]) > 1:
            return None
        verb, at = children[0][1][0], 1
    at += children[at][0] == "FOR"
    lengths, rest, heat = _lengths(children[at]), children[at + 1 :], None
    if rest:
        if len(rest) != 2 or rest[0][0] != "AT" or rest[1][0] != "scales" or len(rest[1][1]) != 1:
            return None
        heat = _figures(rest[1][1][0][1])
        if heat is None:
            return None
    return _Time(verb, lengths, heat).read if lengths else None


class _Cue(NamedTuple):
    """*Until* and free words, perhaps a duration behind their comma."""

    end: int
    lengths: tuple[_Figures, ...] | None

    def read(self, clause: Clause, kitchen: Kitchen, cut: Cut) -> Cue | None:
        duration = _duration(kitchen, cut, self.lengths) if self.lengths else None
        if self.lengths and duration is None:
            return None
        return made(Cue, (clause, cut.text[cut.starts[0] : cut.ends[self.end]], None, duration, None, "", None, "cue"))


def _cue(children: Sequence[Node]) -> Way | None:
    if len(children) not in (2, 4) or children[0][0] != "UNTIL" or children[1][0] != "sight":
        return None
    lengths = None
    if len(children) == 4:
        lengths = _lengths(children[3])
        if children[2][0] != "COMMA" or lengths is None:
            return None
    return _Cue(end_of(children[1]), lengths).read if _is_free(children[1][1]) else None


# ---- things


class _Tool(NamedTuple):
    """One piece with its size and adjectives: `in a 24 cm round tin`."""

    opening: int
    size: _Figures | None
    words: Sequence[Node]

    def read(self, clause: Clause, kitchen: Kitchen, cut: Cut) -> Tool | None:
        opening, size, words = self
        text, starts, ends = cut.text, cut.starts, cut.ends
        first = words[0]
        start = starts[first[2]]
        if text[start : ends[first[3]]] in clause_words(kitchen.language).lengths or (size and not _amount(cut, size)):
            return None
        found = kitchen.cupboard.find(_keys(cut, words))
        if found is None:
            return None
        said, sized, where, inner = text[start : ends[words[-1][3]]], "", NOWHERE, clause.span[0] + 1
        if size:
            begin, stop = starts[size.low], ends[size.unit]
            sized, where = text[begin:stop], made(Span, (inner + begin, inner + stop))
        names = said.lower().split() if found.adjectives else ()
        adjectives = tuple([word for word in found.adjectives if word in names])
        preposition = text[starts[0] : ends[opening]].lower()
        return made(
            Tool,
            (
                clause, said, found.item, adjectives, _ONE, sized, preposition, False, False, "", "equipment", "",
                where, False,
            ),
        )  # fmt: skip


_ONE = Fraction(1)


def _tool(children: Sequence[Node]) -> Way | None:
    if len(children) != 3 or children[0][0] != "PREP" or children[1][0] != "sized" or children[2][0] != "tool":
        return None
    (counted, *more), words, size = children[1][1], leaves(children[2][1]), None
    if counted[0] != "counted" or len(counted[1]) != 1 or counted[1][0][0] != "ARTICLE" or not _is_free(words):
        return None
    if more:
        length = more[0][1][0] if more[0][0] == "size" and len(more[0][1]) == 1 else None
        size = _figures(length[1]) if length and length[0] == "length" else None
        if len(more) > 1 or size is None:
            return None
    return _Tool(end_of(children[0]), size, words).read


class _Reference(NamedTuple):
    """`the poolish`, `with the hot milk`."""

    opening: Node | None
    first: int
    last: int

    def read(self, clause: Clause, _kitchen: Kitchen, cut: Cut) -> Reference:
        opening, first, last = self
        text, inner = cut.text, clause.span[0] + 1
        start, end = cut.starts[first], cut.ends[last]
        preposition = text[cut.starts[opening[2]] : cut.ends[opening[3]]].lower() if opening else ""
        where = made(Span, (inner + start, inner + end))
        return made(Reference, (clause, text[start:end], where, None, preposition, "", "reference"))


def _reference(children: Sequence[Node]) -> Way | None:
    opening = children[0] if children[0][0] in PREPOSITIONS else None
    nodes = children[opening is not None :]
    if len(nodes) != 2 or nodes[0][0] != "THE" or nodes[1][0] not in NAMES or not _is_free(nodes[1][1]):
        return None
    return _Reference(opening, start_of(nodes[1]), end_of(nodes[1])).read


_WAYS: Mapping[Role, Callable[[Sequence[Node]], Way | None]] = {
    "ingredient": _food,
    "time": _time,
    "cue": _cue,
    "equipment": _tool,
    "reference": _reference,
}
