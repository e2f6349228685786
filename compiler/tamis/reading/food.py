"""An ingredient clause as a record: measure, name, and all that a comma, `for`, `or` or round brackets add."""

from __future__ import annotations

from tamis.quantity.measure import Measure, convert
from tamis.quantity.nouns import nouns
from tamis.reading.clause import child, end_of, leaves, start_of
from tamis.reading.clauses import Ingredient, Share
from tamis.reading.durations import stretch
from tamis.reading.measured import MEASURES, NAMES, ONE, Measured, bracketed, read_measure, with_unit
from tamis.reading.quantities import measures, one_measure, place
from tamis.reading.soundness import LENGTHS, check_name, check_text
from tamis.reading.temperatures import degrees
from tamis.source import NOWHERE, Span
from tamis.syntax.cutting import HYPHENS
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING, Any
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.goods import Found, Goods
    from tamis.quantity.amount import Amount
    from tamis.quantity.duration import Duration
    from tamis.reading.clause import Node, Reading
    from tamis.reading.food_parts import Parts


class Tail:
    """What follows the name, gathered from left to right."""

    preparation: tuple[Span, ...] = ()
    purpose: tuple[Span, ...] = ()
    optional: bool = False
    at: Amount | None = None
    wait: Duration | None = None
    per: Node | None = None
    each: bool = False
    alternatives: tuple[Ingredient, ...] = ()

    def with_(self, **said: Any) -> Tail:
        """This tail with more said in it."""
        self.__dict__.update(said)
        return self


def read_food(reading: Reading, parts: Parts, role: str, known: Found | None) -> Ingredient:
    """The record of a clause whose role is ingredient, unmeasured or medium. `known` is the food that the whole name
    means, if it means one."""
    measured = read_measure(reading, parts.measure)
    name = list(parts.name)
    if not parts.percent:
        measured, name = _with_unit(reading, measured, name)
    if measured.each and not (measured.weight_first or measured.measures[0].unit):
        _is_of_one(reading, parts.measure)
    measured = _within(reading, measured, name)
    tail = Tail()
    if parts.tail:
        tail, measured = _tail(reading, parts.tail, measured)
    percentage = _percentage(parts)
    if known is None or percentage or len(name) != len(parts.name) or name[0] is not parts.name[0]:
        name = percentage + _names(name)
        known, name = _found(reading, name)
    share = parts.share
    if share is not None and share.measure is not None:
        share = _part_of_measure(reading, share.measure, (*measured.measures, *measured.also))
    found = _by_count_word(reading, measured, known, name)
    if measured.weight_first:
        measured = _by_piece(measured, found)
    text, text_span = _measure_text(reading, measured, parts)
    prepared = (*measured.notes, *tail.preparation)
    measure_list = measured.measures
    if found and found.piece_word and measure_list and not measure_list[0].unit:
        measure_list = (Measure(measure_list[0].amount, found.piece_word), *measure_list[1:])
    if role == "unmeasured" and measure_list:
        role = "ingredient"
    food = Ingredient(  # fields by their places: names cost as much again
        *_of_name(reading, name, found),
        measure_list,
        text,
        measured.about,
        measured.also,
        measured.each,
        measured.prepared,
        measured.prepared_word,
        "" if measured.product and measured.each else measured.size,
        share,
        parts.part,
        parts.preposition,
        _joined(reading, prepared),
        _joined(reading, tail.purpose),
        tail.optional,
        tail.alternatives,
        None,  # percent
        tail.at,
        role,  # type: ignore[arg-type]  # one of three roles
        measured.bound,  # type: ignore[arg-type]  # least, most or nothing
        tail.wait,
        measured.vague,
        parts.definite,
        text_span,
        prepared,
        tail.purpose,
        "" if tail.each else None,
    )
    if parts.percent:
        from tamis.reading.rates import read_percent

        return read_percent(reading, food, parts.percent)
    if tail.per:
        from tamis.reading.rates import read_rate

        return read_rate(reading, food, tail.per)
    return food


def _within(reading: Reading, measured: Measured, name: Sequence[Node]) -> Measured:
    """The measure with what round brackets within the name add to it."""
    for node in name:
        if node[0] == "bracket":
            measured = bracketed(reading, measured, node)
    return measured


def _part_of_measure(reading: Reading, part: Measure, whole: Sequence[Measure]) -> Share:
    """`3 tbsp of 375 g (3 cups) icing sugar`: what part that is, by a measure of its kind."""
    units = reading.kitchen.units
    for measure in whole:
        same = convert(part, measure.unit, units) if measure.unit else None
        if same is not None and same.amount.single and measure.amount.single and same.amount.lo < measure.amount.lo:
            return Share("fraction", same.amount.lo / measure.amount.lo, part)
    message = f"“{reading.text.strip()}”: how much of the whole is that?"
    hint = "write both in grams, or both in spoons and cups, and less of the two first"
    raise reading.fail("clause-role", reading.clause.span, message, hint)


def _with_unit(reading: Reading, measured: Measured, name: list[Node]) -> tuple[Measured, list[Node]]:
    """The count word that opens a name, its number before it or, as in `pinch of saffron`, left out."""
    if measured.start >= 0:
        return with_unit(reading, measured, name)
    words = list(leaves(name))
    if len(words) < 2:
        return measured, name
    whole = reading.kitchen.larder.find(reading.keys([leaf for leaf in words if leaf[0] != "OF"]))
    if whole and not any(leaf[0] == "OF" for leaf in words):
        return measured, name
    one = Measured(words[0][2], words[0][2], measures=(Measure(ONE, ""),), pieces=ONE)
    read, rest = with_unit(reading, one, name)
    if len(rest) == len(name) and rest == name:
        return measured, name
    if nouns(reading.kitchen.language).singular(words[0][1].lower()) != words[0][1].lower():
        read = read.with_(measures=(), pieces=None, vague=words[0][1])  # slices of lemon: nobody says how many
    of = any(leaf[0] == "OF" for leaf in words)
    return (read, rest) if of or reading.kitchen.larder.find(reading.keys(rest)) else (measured, name)


def _percentage(parts: Parts) -> list[Node]:
    """`200 ml 35 % cream`: the percentage stands after the measure and belongs to the name."""
    weighed = child(parts.measure, "weighed")
    inside = weighed[1] if weighed else []
    return inside[-2:] if inside and inside[-1][0] == "PERCENT" else []


def _names(name: list[Node]) -> list[Node]:
    return [node for node in name if node[0] != "bracket"]


def _found(reading: Reading, name: list[Node]) -> tuple[Found | None, list[Node]]:
    """The food that a name means. A percentage or a size within it describes, as a comma between two adjectives
    does."""
    if not name:
        return None, name
    keep = [leaf for leaf in leaves(name) if leaf[0] not in _DESCRIBES]
    check_name(reading, name)
    return reading.kitchen.larder.find(reading.keys(keep)), name


def _by_count_word(reading: Reading, measured: Measured, found: Found | None, name: list[Node]) -> Found | None:
    """`2 cakes of yeast` are of the yeast that is sold in cakes, whatever *yeast* alone means."""
    word = measured.measures[0].unit if measured.measures else ""
    if found is None or not word or reading.kitchen.units.get(word) or any(p.word == word for p in found.goods.pieces):
        return found
    other = reading.kitchen.larder.find((word, *reading.keys(name)))
    return other if other and any(piece.word == word for piece in other.goods.pieces) else found


_DESCRIBES = frozenset(("NUMBER", "PERCENT", "RANGE", "MASS", "VOLUME", "LENGTH", "TIMES", "ADJCOMMA"))


def _of_name(
    reading: Reading, name: Sequence[Node], found: Found | None
) -> tuple[Clause, str, Span, Goods | None, tuple[str, ...], str]:
    """The fields of a record that its name gives, which are the first."""
    said, span = reading.said(name), reading.span(name)
    if found is None:
        return reading.clause, said, span, None, (), ""
    return reading.clause, said, span, found.goods, found.states, found.piece_word


def _by_piece(measured: Measured, found: Found | None) -> Measured:
    """`a 1.6 kg chicken` is one of that weight; `a 400 g flour` is a weight with an article too many."""
    if not (measured.weight_first and measured.article and measured.each and measured.measures[0].unit == ""):
        return measured
    if found and any(not piece.word for piece in found.goods.pieces):
        return measured
    return measured.with_(measures=(measured.each,), each=None, pieces=None)


def _measure_text(reading: Reading, measured: Measured, parts: Parts) -> tuple[str, Span]:
    """The measure as written, and where it stands."""
    if parts.percent:
        return reading.said([parts.percent]), reading.span([parts.percent])
    if measured.start < 0:
        return "", NOWHERE
    return reading.text[measured.start : measured.end], place(reading, measured.start, measured.end)


def _joined(reading: Reading, spans: Sequence[Span]) -> str:
    """The words at some places of the clause, with commas between them."""
    if not spans:
        return ""
    inner = reading.inner
    return ", ".join([reading.text[start - inner : end - inner] for start, end in spans])


# ---- what follows the name


def _tail(reading: Reading, nodes: Sequence[Node], measured: Measured) -> tuple[Tail, Measured]:
    """What stands behind the name, and the measure with what it adds to that."""
    tail = Tail()
    for at, node in enumerate(nodes):
        kind = node[0]
        if kind == "COMMA":
            continue
        if kind == "bracket":
            measured = bracketed(reading, measured, node)
        elif kind == "surplus":
            tail, measured = _surplus(reading, tail, node, measured)
        elif kind in ("preparation", "place", "likened"):  # `a knob of butter the size of a walnut`
            tail, measured = _prepared(reading, tail, node), _weighed_behind(reading, node, measured)
        elif kind == "purpose":
            tail, measured = _purpose(reading, tail, node, measured)
        elif kind == "stuck":  # peeled, stuck with 2 cloves; peeled and stuck with 2 cloves
            said = reading.span([node])
            tail = _with_words(tail, said) if nodes[at - 1][0] == "COMMA" else _or_so(tail, said)
        elif kind == "content":  # vinegar of 5 % acidity
            check_text(reading, [node])
            tail = _with_words(tail, reading.span([node]))
        elif kind == "leeway":
            tail = _leeway(reading, tail, node)
        elif kind == "each":
            weight = child(node[1], "weight")
            assert weight is not None
            _is_of_each(reading, measured, node, weight)
            measured = measured.with_(each=one_measure(reading, weight))
        elif kind == "FOR":  # `oil for frying`, where oil is a verb as well
            check_text(reading, nodes[at + 1][1])
            tail = _for(tail, reading.span(nodes[at : at + 2]))
        else:
            tail = _after_name(reading, tail, node)
    return tail, measured


def _surplus(reading: Reading, tail: Tail, node: Node, measured: Measured) -> tuple[Tail, Measured]:
    """`1 cup milk plus 2 tbsp`, `plus extra for the tin`."""
    weight = child(node[1], "weight")
    if weight is None:
        return _prepared(reading, tail, node), measured
    return tail, measured.with_(measures=(*measured.measures, *measures(reading, weight)))


def _is_of_each(reading: Reading, measured: Measured, node: Node, weight: Node) -> None:
    """`4 duck legs, 1 kg` may be a kilo each or a kilo in all: that is asked."""
    if child(node[1], "EACH") is None and any(part.amount.hi > 1 for part in measured.measures):
        said = reading.said([weight])
        hint = f"write {example(reading.kitchen.language, 'each', measure=said)}"
        raise reading.fail("number-unclear", reading.span([weight]), f"“{said}”: of each, or of all together?", hint)


def _is_of_one(reading: Reading, nodes: Sequence[Node]) -> None:
    """`6 (about 1 kg) potatoes` may be a kilo each or a kilo in all. What holds a weight is of it (`2 (400 g) cans`),
    and a hyphen makes it a kind (`2 (6-ounce) chops`)."""
    bracket = next((part for node in nodes if node[0] == "sized" for part in node[1] if part[0] == "bracket"), None)
    if bracket is None:
        return
    notes = [part for note in bracket[1] if note[0] == "note" for part in note[1]]
    weight = next((part for part in notes if part[0] == "weight"), None)
    if weight is not None and HYPHENS.isdisjoint(reading.said([weight])):
        _is_of_each(reading, read_measure(reading, nodes), bracket, weight)


def _after_name(reading: Reading, tail: Tail, node: Node) -> Tail:
    kind = node[0]
    if kind == "optional":
        return tail.with_(optional=True)
    if kind == "other":
        larder = reading.kitchen.larder
        if all([larder.describes(word) or larder.is_state(word) for word in reading.keys(node[1][1:])]):
            return _or_so(tail, reading.span([node]))
        return tail.with_(alternatives=(*tail.alternatives, _other(reading, node[1])))
    if kind == "per":
        return tail.with_(per=node)
    if kind == "EACH":
        return tail.with_(each=" " not in node[1])  # each batch gets its share of what is written
    if kind == "at":
        heat = child(node[1], "degrees")
        if heat:
            return tail.with_(at=degrees(reading, heat))
        return _with_words(tail, reading.span([node]))
    return tail


def _prepared(reading: Reading, tail: Tail, node: Node) -> Tail:
    """`finely chopped`, `soaked for 2 h`, `in 1-cm slices`; its numbers are read, mostly there are none."""
    tail = _with_words(tail, reading.span([node]))
    check_text(reading, [part for part in node[1] if part[0] == "count"])
    for text in node[1]:
        if text[0] not in ("text", "said"):
            continue
        check_text(reading, [part for part in text[1] if part[0] != "bracket"])
        for part in text[1]:
            if part[0] in LENGTHS and tail.wait is None:
                tail.wait = stretch(reading, ("stretch", [part]))
    return tail


def _weighed_behind(reading: Reading, node: Node, measured: Measured) -> Measured:
    """`8 cm thick (1.2–1.4 kg)`: the measure with what round brackets among these words say of it."""
    for text in node[1]:
        for part in text[1] if text[0] == "said" else ():
            if part[0] == "bracket":
                measured = bracketed(reading, measured, part, notes=False)
    return measured


def _purpose(reading: Reading, tail: Tail, node: Node, measured: Measured) -> tuple[Tail, Measured]:
    """`for frying`, `to serve`; and how much that may come to: `to cover (about 700 ml)`."""
    if child(node[1], "MAKING") and measured.measures:  # so much of it goes in
        check_text(reading, node[1])
        return _with_words(tail, reading.span([node])), measured
    words = [part for text in node[1] for part in (text[1] if text[0] == "said" else [text])]
    bracket = child(words, "bracket")
    if bracket is None:
        check_text(reading, node[1])
        return _for(tail, reading.span([node])), measured
    words.remove(bracket)
    check_text(reading, words)
    measured = bracketed(reading, measured, bracket, notes=False)
    if not measured.measures and measured.also:
        measured = measured.with_(measures=measured.also, also=(), start=start_of(bracket) + 1, end=end_of(bracket) - 1)
    return _for(tail, reading.span(words)), measured


def _leeway(reading: Reading, tail: Tail, node: Node) -> Tail:
    """`or to taste`, `or a little more`; `or more for frying` tells what all of it is for."""
    purpose = child(node[1], "purpose")
    if read_measure(reading, node[1]).measures:
        message = f"“{reading.said([node])}”: a second amount, which is not counted"
        raise reading.fail("measures-unclear", reading.span([node]), message, "give the amount as a range: `2–3`")
    check_text(reading, node[1])
    tail = _with_words(tail, reading.span([node]))
    return _for(tail, reading.span([purpose])) if purpose and child(purpose[1], "FOR") else tail


def _with_words(tail: Tail, said: Span) -> Tail:
    tail.preparation = (*tail.preparation, said)
    return tail


def _or_so(tail: Tail, said: Span) -> Tail:
    """*Fresh or frozen*: another state of the same food, with the words before it."""
    last = tail.preparation[-1] if tail.preparation else said
    tail.preparation = (*tail.preparation[:-1], Span(last.start, said.end))
    return tail


def _for(tail: Tail, said: Span) -> Tail:
    return tail.with_(purpose=(*tail.purpose, said))


def stuck_in(reading: Reading, node: Node) -> Ingredient:
    """The food that another is stuck with; without a number it is as much as is wanted."""
    said = node[1][1:]
    food = _other(reading, said)
    if food.measures:
        return food
    span = reading.span(said)
    clause = Clause(reading.said(said), Span(span.start - 1, span.end + 1), reading.kitchen.language)
    return food._replace(clause=clause, role="unmeasured", purpose=reading.words.as_needed)


def _other(reading: Reading, nodes: Sequence[Node]) -> Ingredient:
    """What may stand in for it: `or 5 g instant yeast`."""
    measure = [node for node in nodes if node[0] in MEASURES or node[0] == "OF"]
    name = [node for node in nodes if node[0] in NAMES]
    measured, name = _with_unit(reading, read_measure(reading, measure), name)
    found, name = _found(reading, name)
    said, span = (
        (reading.text[measured.start : measured.end], place(reading, measured.start, measured.end))
        if measured.start >= 0
        else ("", NOWHERE)
    )
    return Ingredient(
        *_of_name(reading, name, found),
        measured.measures,
        said,
        also=measured.also,
        each=measured.each,
        size="" if measured.product and measured.each else measured.size,
        measure_span=span,
    )
