"""Clauses about what becomes of a batch: divisions, names and repetitions."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.nouns import nouns
from tamis.reading.clause import child, leaves
from tamis.reading.clauses import Division, Manner, Meanwhile, Naming, Read, Repeat, Target, Time, Tool
from tamis.reading.durations import stretch
from tamis.reading.food_parts import is_manner
from tamis.reading.measured import MEASURES, NAMES, ONE, Measured, bracketed, check_held, read_measure, with_unit
from tamis.reading.quantities import amount, as_one, check_size, one_measure
from tamis.reading.soundness import LENGTHS, check_name, check_text
from tamis.reading.things import measure_of, preposition_of
from tamis.typed import TYPE_CHECKING
from tamis.words import example, named

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def read_division(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...] | None:
    """`into 2 pieces`, `into 40 pieces (11 g each)`, `into 2-cm cubes`, `into quarters`, `at 450 g`; None for `over
    steam`."""
    if children[0][0] == "AT":
        weight = child(children, "weight")
        assert weight is not None
        return (Division(reading.clause, None, "", one_measure(reading, weight), reading.text),)
    preposition, nodes = preposition_of(children)
    measure = [node for node in nodes if node[0] in MEASURES or node[0] == "counted"]
    shared = preposition in reading.words.cut_in and child(nodes, "FRACTION") is not None  # in half, in quarters
    if not measure and not shared and preposition not in reading.words.into and child(nodes, "food") is None:
        return (Manner(reading.clause),) if is_manner(reading, nodes) else None
    measured = read_measure(reading, measure)
    weight = child(nodes, "weight")  # `into 6 balls of 90 g each`
    each = one_measure(reading, weight) if weight else None
    for node in nodes:
        if node[0] == "bracket":
            found = bracketed(reading, Measured(), node)
            each = found.each or (found.also[0] if found.also else None)
        elif node[0] == "size":
            check_size(reading, node)
    words = [node for node in nodes if node[0] in ("adj", "SIZEWORD", "SETWORD", "verb", "noun", "FRACTION")]
    name = [node for node in nodes if node[0] in NAMES or node in words]
    weighed = measured.measures and not measured.pieces and not measured.size
    if weighed:
        each = as_one(reading, measured.measures)
    if measured.each and measured.weight_first:
        each = measured.each
    count = child(nodes, "count")  # into 2 halves
    number = amount(reading, count) if count else measured.pieces if not measured.article else None
    noun = reading.said(name)
    if measured.article and name and not count:
        number = measured.pieces
    check_name(reading, name)
    if name and preposition in reading.words.into and reading.keys(name)[-1] in reading.words.filled:
        message = f"how many “{noun}”? Food that is filled is an ingredient"
        raise reading.fail("clause-role", reading.clause.span, message, f"write {_filled(reading, preposition, noun)}")
    of_each = child(nodes, "EACH") is not None and weight is None
    return (Division(reading.clause, number, noun, each, reading.text, of_each=of_each),)


def as_pieces(tool: Tool) -> Division:
    """Rings and sheets that food is cut into, though a kitchen has such things too."""
    text = tool.clause.text.strip()
    return Division(tool.clause, Amount(tool.number, tool.number), tool.name, None, text)


def _filled(reading: Reading, preposition: str, noun: str) -> str:
    return example(reading.kitchen.language, "filled", into=preposition, food=noun)


def read_naming(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`as garlic paste`, `leaving duck fat`, `reserving 250 ml pasta water`, `set aside`."""
    opener = children[0][0]
    if opener == "SETASIDE":
        return (*_waits(reading, children), Naming(reading.clause, "set-aside"))
    free = next((node for node in children if node[0] != "hedges" and node is not children[0]), None)
    if free is not None and free[0] == "size":
        check_size(reading, free)
        return (Target(reading.clause, "size", text=reading.text),)
    kind = "as" if opener == "AS" else "leaving"
    at = next(n for n, node in enumerate(children) if n and (node[0] in NAMES))
    names = [node for node in children[at:] if node[0] in NAMES]
    measured = read_measure(reading, [node for node in children[1:at] if node[0] in MEASURES])
    if kind == "leaving" and _is_left_free(reading, measured, names):
        check_name(reading, names)
        check_text(reading, children[at + len(names) :])
        return (Target(reading.clause, "size", text=reading.text),)
    apart = child(children, "AT")
    if kind == "leaving" and not child(children, "THE") and reading.keys(names)[-1] in reading.words.left_free:
        check_name(reading, [*names, *(node for node in children if node[0] == "size")])
        return (Target(reading.clause, "size", text=reading.text),)
    if apart is not None:
        hint = f"write {example(reading.kitchen.language, 'leaving_any')}, with a name alone"
        raise reading.fail("clause-role", reading.clause.span, f"“{reading.said(names)}” is not read so", hint)
    check_held(reading, measured, _NAMINGS_HOLD)
    measure = as_one(reading, measured.measures) if measured.measures and not measured.article else None
    name: list[Node] = names[-1:] if len(names) > 1 else names
    if measured.start >= 0 and names:
        read, rest = with_unit(reading, measured, children[at : children.index(names[-1]) + 1])
        if read.measures and read.measures[0].unit and rest:
            measure, name = as_one(reading, read.measures), [node for node in rest if node[0] not in ("OF", "THE")]
    check_name(reading, names)
    said = reading.said(name)
    if kind == "as":
        the = child(children, "THE")
        if the and the[1].lower() in reading.words.pronouns and reading.before.rstrip(" ,"):  # whisk [as it melts]
            return (Manner(reading.clause),)
        _check_names(reading, name, the)
    return (Naming(reading.clause, kind, said, measure, also=measured.also),)  # type: ignore[arg-type]  # one of two


_NAMINGS_HOLD = frozenset(("also",))  # reserving 240 ml (1 cup) coconut cream


def _is_left_free(reading: Reading, measured: Measured, names: Sequence[Node]) -> bool:
    """`1 cm uncut at one end`, `the last 2 cm bare`: a length that is no measure of food."""
    if reading.kitchen.larder.find(reading.keys(names)):
        return False
    long = bool(measured.size) and not measured.pieces
    return long or any(leaf[0] == "LENGTH" for leaf in leaves(names))


def _check_names(reading: Reading, name: Sequence[Node], the: Node | None) -> None:
    """`as needed`, `as it cooks`, `as the meat roasts`: words that name nothing."""
    message = f"“{reading.text.strip()}” is no name"
    said, until = reading.said(name), named(reading.kitchen.language, "until")
    if the and (the[1].lower() in reading.words.pronouns or _does(reading, reading.keys(name))):
        beside = example(reading.kitchen.language, "while", the=the[1], what=said)
        hint = f"for what runs beside it, {beside}; what to look for opens with {until}"
        raise reading.fail("clause-role", reading.clause.span, message, hint)
    if said.lower().split(" ")[0] in reading.words.no_name:
        raise reading.fail("clause-role", reading.clause.span, message, f"what to look for opens with {until}")


def _does(reading: Reading, words: tuple[str, ...]) -> bool:
    """Whether a name ends in what it does: `the meat roasts`, but not `the spring rolls`."""
    kitchen = reading.kitchen
    work = nouns(kitchen.language).singular(words[-1])
    named = kitchen.larder.find(words) or kitchen.larder.find(words[-1:]) or kitchen.cupboard.find(words[-1:])
    counted = kitchen.cupboard.count_word(words[-1])
    return len(words) > 1 and work != words[-1] and kitchen.verbs.get(work) is not None and not named and not counted


def _waits(reading: Reading, children: Sequence[Node]) -> tuple[Time, ...]:
    """`set aside for 20 min` is a wait as well."""
    timed = next((part for text in children if text[0] == "text" for part in text[1] if part[0] in LENGTHS), None)
    if timed is None:
        return ()
    return (Time(reading.clause, stretch(reading, ("stretch", [timed])), text=reading.text),)


def read_repeat(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`twice`, `3 times`, `Repeat twice`, `in 4 batches`, `in 2 loads of 10 kg`, `in three additions`."""
    kinds = {node[0] for node in children}
    holds = None
    counted = child(children, "counted") or child(children, "count")
    number = _times(reading, children, counted, kinds)
    if "REPEAT" in kinds:
        kind = "step-times"
    elif "ADDITION" in kinds:
        kind = "additions"
    elif "BATCH" in kinds:
        batch = child(children, "BATCH")
        assert batch is not None
        kind = "loads" if batch[1].lower() in reading.words.loads else "batches"
        of = children[children.index(batch) + 1 :]
        if counted and of and of[-1][0] == "count" and children.index(counted) > children.index(batch):
            kind = "batch-size"
        if of and of[-1][0] in ("weight", "count") and of[-1] is not counted:
            holds = measure_of(reading, of[-1])
    else:
        kind = "times"
    if number < 1 or number.denominator > 1:
        message = f"“{reading.text.strip()}”: a line is done a whole number of times, at least once"
        keys = ("twice", "three_times", "two_batches")
        twice, often, batches = (example(reading.kitchen.language, key) for key in keys)
        hint = f"write {twice}, {often} or {batches}"
        raise reading.fail("number-unclear", reading.clause.span, message, hint)
    return (Repeat(reading.clause, kind, number, holds),)  # type: ignore[arg-type]  # one of its kinds


def _times(reading: Reading, children: Sequence[Node], counted: Node | None, kinds: set[str]) -> Fraction:
    from tamis.reading.tool_sizes import counted_as

    if counted is None:
        return Fraction(2) if "TWICE" in kinds else Fraction(1)
    times = read_measure(reading, [counted]).pieces or ONE if counted[0] == "counted" else amount(reading, counted)
    counted_as(reading, times)
    return times.hi


def read_meanwhile(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`meanwhile`, `while the bird rests`."""
    return (Meanwhile(reading.clause),)
