"""The measure before a name: of an ingredient, of a piece of equipment, of what is kept back.

Cooks write it in many ways (`420 g (3 cups)`, `1 cup plus 2 tbsp`, `2 × 400 g cans`, `a heaped tbsp`, `half an`), and
only the name tells what a count word is: `2 cloves garlic` are cloves, `2 cloves` is a spice.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, base, kind
from tamis.reading.clause import child, clause_words, end_of, is_leaf, leaves, only_leaf, start_of
from tamis.reading.quantities import amount, as_one, check_size, factors, length, measures, one_measure, place, unit_of
from tamis.reading.soundness import check_number
from tamis.typed import TYPE_CHECKING, Any
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.reading.clause import ClauseWords, Node, NodeKind, Reading
    from tamis.source import Span

ONE = Amount(Fraction(1), Fraction(1))
MEASURES: frozenset[NodeKind] = frozenset(("weighed", "sized", "product", "MASS", "VOLUME", "SOME"))
NAMES: frozenset[NodeKind] = frozenset(("food", "strange", "tool", "jar"))


class Measured:
    """What stands before a name, from `start` to `end` in the clause's text; the other fields as in `Ingredient`.

    `pieces` is set where pieces are counted; `product` keeps the numbers of `3 × 20 cm`, whose meaning the noun
    decides; `vague` are words such as *a little*; `bound` says that the measure is the least or the most.
    """

    start: int = -1
    end: int = -1
    measures: tuple[Measure, ...] = ()
    also: tuple[Measure, ...] = ()
    each: Measure | None = None
    prepared: Measure | None = None
    prepared_word: str = ""
    notes: tuple[Span, ...] = ()
    size: str = ""
    pieces: Amount | None = None
    product: tuple[Amount, ...] = ()
    percent: Amount | None = None
    vague: str = ""
    about: bool = False
    bound: str = ""
    article: bool = False
    weight_first: bool = False

    def __init__(self, start: int = -1, end: int = -1, **said: Any) -> None:
        self.start, self.end = start, end
        self.__dict__.update(said)

    def with_(self, **said: Any) -> Measured:
        """This measure with more said of it: it grows while the clause is read."""
        self.__dict__.update(said)
        return self


def read_measure(reading: Reading, nodes: Sequence[Node]) -> Measured:
    """The measure that these nodes are: those of `MEASURES` before a name."""
    read = Measured()
    for node in nodes:
        kind = node[0]
        if kind == "weighed":
            read = _weighed(reading, node)
        elif kind == "sized":
            read = _sized(reading, node)
        elif kind == "size":  # 2 cm of the ginger
            read = _size_first(reading, Measured(start_of(node), end_of(node)), node)
        elif kind == "SOME":
            read = Measured(node[2], node[3], vague=node[1].lower())
        elif kind == "OF" and read.start >= 0:
            read = read.with_(end=node[3])
        elif kind == "counted":
            read = _counted(reading, node)
    return read


def _hedged(read: Measured, hedges: Node) -> Measured:
    kinds = {leaf[0] for leaf in hedges[1]}
    bound = "least" if "ATLEAST" in kinds else "most" if "UPTO" in kinds else ""
    return read.with_(about=read.about or "HEDGE" in kinds, bound=bound)


def _weighed(reading: Reading, node: Node) -> Measured:
    """A weight or volume first: `420 g (3 cups)`, `500 g / 1 lb 2 oz`, `1 cup plus 2 tbsp`."""
    children = node[1]
    read = Measured(end=end_of(node))
    after, after_end = "", -1
    for part in children:
        if part[0] == "hedges":
            read = _hedged(read, part)
            continue
        if read.start < 0:
            read = read.with_(start=start_of(part))
        if part[0] == "weight":
            found = measures(reading, part)
            more = after == "SLASH"
            read = read.with_(also=found) if more else read.with_(measures=(*read.measures, *found))
        elif part[0] == "bracket":
            read = bracketed(reading, read, part)
        elif part[0] == "amount":  # `200 ml 35 % cream`: the percentage belongs to the name
            read = read.with_(end=after_end, percent=amount(reading, part))
            break
        after, after_end = part[0], end_of(part)
    return read


def _sized(reading: Reading, node: Node) -> Measured:
    """Pieces counted, perhaps with the size or the weight of each; a bare size; `2 × 400 g`."""
    children = node[1]
    first = children[0]
    if first[0] == "hedges":
        read = _hedged(_size_first(reading, Measured(end=end_of(node)), children[1]), first)
        return read.with_(start=start_of(children[1]))
    if first[0] == "SOME":
        return Measured(first[2], first[3], vague=first[1].lower())
    if first[0] == "product":
        return _product(reading, node)
    if first[0] == "size":
        return _size_first(reading, Measured(start_of(node), end_of(node)), first)
    read = _counted(reading, first).with_(end=end_of(node))  # also what is `parted`
    for part in children[1:]:
        if part[0] == "weight":
            if read.vague:
                message = f"“{reading.said([node])}”: an amount, and a word for one"
                raise reading.fail("measures-unclear", reading.span([node]), message, "write one of them")
            found = one_measure(reading, part)
            read = read.with_(each=found, weight_first=True)
        elif part[0] == "size":
            read = read.with_(size=reading.said([part]))
            check_size(reading, part)
        elif part[0] == "bracket":
            read = bracketed(reading, read, part, each=True)
    return read


def _size_first(reading: Reading, read: Measured, size: Node) -> Measured:
    """`5 cm ginger` measures by length; `20 × 30 cm` is a size, `3 × 20 cm` waits for its noun."""
    text = reading.said([size])
    inside = size[1][0]
    if inside[0] == "length":
        return read.with_(measures=(length(reading, inside),), size=text)
    check_size(reading, size)
    return read.with_(size=text, product=factors(reading, inside))


def _product(reading: Reading, node: Node) -> Measured:
    """`2 × 400 g cans`: so many, and the weight of each."""
    product, unit = node[1]
    numbers = factors(reading, product)
    if len(numbers) > 2:
        message = f"“{reading.said([node])}” multiplies more than two numbers"
        hint = "write how many there are in all, and the weight of each: `6 × 400 g`"
        raise reading.fail("number-unclear", reading.span([node]), message, hint)
    found = unit_of(reading, unit)
    each = Measure(numbers[-1], found.id if found else unit[1])
    size = reading.text[start_of(product[1][-1]) : end_of(node)]
    count = numbers[0]
    return Measured(
        start_of(node),
        end_of(node),
        measures=(Measure(count, ""),),
        each=each,
        size=size,
        pieces=count,
        product=numbers,
    )


def _counted(reading: Reading, node: Node) -> Measured:
    """A number of pieces: `2`, `a`, `half an`, `a quarter of a`."""
    children = list(node[1]) if not is_leaf(node) else [node]
    read = Measured(end=end_of(node))
    if children[0][0] == "hedges":
        read = _hedged(read, children.pop(0))
    read.start = start_of(children[0])
    if children[0][0] == "SOME":
        return read.with_(vague=children[0][1].lower())
    number, part = child(children, "count"), child(children, "FRACTION")
    value = amount(reading, number) if number else ONE
    if children[0][0] == "COUPLE":
        read, value = read.with_(about=True), ONE.times(2)
    if part:
        value = value.times(reading.words.fractions[part[1].lower()])
    read.pieces, read.measures = value, (Measure(value, ""),)
    read.article = number is None and part is None
    return read


def check_held(reading: Reading, read: Measured, held: frozenset[str] = frozenset()) -> None:
    """Raise for what a measure says beside itself and a record has no place for: `held` are those that it has."""
    for name in ("also", "each", "prepared", "percent", "notes", "size"):
        if name not in held and getattr(read, name):
            said = reading.text[read.start : read.end].strip()
            message = f"“{said}” says more of this measure than can be read here"
            span = place(reading, read.start, read.end)
            raise reading.fail("clause-role", span, message, "write one measure")


def with_unit(reading: Reading, read: Measured, name: Sequence[Node]) -> tuple[Measured, list[Node]]:
    """The measure with the count word that opens the name, and what is left of the name: `2 heaped tbsp | flour`,
    `a few sprigs of | thyme`, `125 g ball | mozzarella`, `1 can (400 g) | tomatoes`."""
    only = only_leaf(name)
    if only and not (only[0] == "FOOD" and " " in only[1]):
        return read, list(name)
    parts = _words_and_brackets(reading, name)
    if len(parts) == 1:
        return read, list(name)
    cut = _cut(reading, parts) if read.pieces and not read.size else ""
    if cut:
        of = next(at for at, part in enumerate(parts) if part[0] == "OF")
        return read.with_(measures=(Measure(read.measures[0].amount, cut),), end=parts[of][3]), parts[of + 1 :]
    skip = _before_of(reading, parts) or int(is_how(reading.words, parts[0]) and bool(_unit(reading.kitchen, parts[1])))
    unit = _unit(reading.kitchen, parts[skip]) if len(parts) > skip + 1 else ""
    counted = _counted_in(reading, read, unit, parts[skip:]) if unit else None
    if counted is None:
        return read, list(name)
    end, rest = parts[skip][3], parts[skip + 1 :]
    if rest[0][0] == "bracket" and len(rest) > 1:
        counted, end, rest = bracketed(reading, counted, rest[0]), end_of(rest[0]), rest[1:]
    if rest[0][0] == "OF" and len(rest) > 1:
        end, rest = rest[0][3], rest[1:]
    start = read.start if read.start >= 0 else start_of(parts[0])
    return counted.with_(start=start, end=end), rest


def _before_of(reading: Reading, parts: Sequence[Node]) -> int:
    """Where the count word stands that *of* follows, with words before it that describe: `3 outer leaves of cabbage`,
    `6 small heart leaves of lettuce`, but `1 tin fillets of anchovy`."""
    at = next((at for at, part in enumerate(parts) if part[0] == "OF"), 0) - 1
    if at < 1 or len(parts) == at + 2 or not _unit(reading.kitchen, parts[at]):
        return 0
    return 0 if _is_vessel(reading, parts[0]) or any(part[0] in ("FOOD", "bracket") for part in parts[:at]) else at


def _is_vessel(reading: Reading, leaf: Node) -> bool:
    """Whether a word is what food is sold in or as, which may hold pieces of it."""
    word, cupboard = leaf[1].lower(), reading.kitchen.cupboard
    counted = cupboard.count_word(word) or ""
    return cupboard.is_tin(counted) or cupboard.holds(counted) or cupboard.get(word) is not None


def _cut(reading: Reading, parts: Sequence[Node]) -> str:
    """`middle cut of halibut`, `thick tail ends of cod`: what the list of foods knows as a piece of one; else ""."""
    of = next((at for at, part in enumerate(parts) if part[0] == "OF"), 0)
    if not of or parts[-1][0] in ("OF", "bracket") or _is_vessel(reading, parts[0]):
        return ""
    if any(part[0] == "bracket" for part in parts[:of]) or _unit(reading.kitchen, parts[of - 1]):
        return ""
    found = reading.kitchen.larder.find(reading.keys([part for part in parts if part[0] != "bracket"]))
    return found.piece_word if found else ""


def may_be_unit(kitchen: Kitchen, first: Node, alone: bool) -> bool:
    """Whether the first word of a name may be a unit, or say of what size one is; `alone`: it is all of the name."""
    if kitchen.cupboard.count_word(first[1].partition(" ")[0].lower()):
        return True
    return not alone and (is_how(clause_words(kitchen.language), first) or bool(_unit(kitchen, first)))


def _words_and_brackets(reading: Reading, name: Sequence[Node]) -> list[Node]:
    """The words of a name one by one, a round bracket as one."""
    parts: list[Node] = []
    for node in name:
        parts += [node] if node[0] == "bracket" else leaves([node])
    if parts and parts[0][0] == "FOOD" and " " in parts[0][1]:
        parts[:1] = _count_apart(reading, parts[0])
    return parts


def _count_apart(reading: Reading, food: Node) -> list[Node]:
    """`1 can tomatoes`: the count word of a food whose name begins with it; a bouquet garni is one word."""
    first, _, rest = food[1].partition(" ")
    if not reading.kitchen.cupboard.count_word(first.lower()) or rest.partition(" ")[0].lower() in reading.words.of:
        return [food]
    whole = reading.keys([food])
    if reading.kitchen.larder.find(whole) and not reading.kitchen.larder.find(whole[1:]):
        return [food]
    middle = food[2] + len(food[1]) - len(rest)
    return [("COUNT", first, food[2], food[2] + len(first)), ("FOOD", rest, middle, food[3])]


def _counted_in(reading: Reading, read: Measured, unit: str, words: Sequence[Node]) -> Measured | None:
    """The measure if a count word is its unit; None where it is part of the name."""
    if words[1][0] == "bracket" and len(words) < _AFTER_BRACKET:
        return None
    if read.size and read.measures and not read.pieces:  # `2 cm piece of ginger`
        return read.with_(measures=(Measure(ONE, unit),), pieces=ONE)
    if read.measures and not read.pieces:
        if not _holds(reading, [word for word in words if word[0] != "bracket"]):
            return None
        return read.with_(each=as_one(reading, read.measures), measures=(Measure(ONE, unit),), pieces=ONE)
    if read.vague:
        return read.with_(vague=f"{read.vague} {words[0][1]}")
    if read.measures:
        return read.with_(measures=(Measure(read.measures[0].amount, unit),))
    return None


# A count word, its bracket, and a name after them.
_AFTER_BRACKET = 3


def is_how(words: ClauseWords, leaf: Node) -> bool:
    """Whether a word says how a measure is heaped, or of what size a piece is."""
    if leaf[0] == "bracket":
        return False
    said = leaf[1].lower()
    return said in words.how or said.endswith(words.sized)


def _unit(kitchen: Kitchen, leaf: Node) -> str:
    """The unit that a word is between a number and a name: tbsp, pinch, clove, can; else ""."""
    if leaf[0] in ("FOOD", "TOOL", "bracket"):
        return ""
    word = leaf[1].lower()
    lengths = clause_words(kitchen.language).lengths
    if leaf[1] in lengths:  # `2 m of hog casings`
        return lengths[leaf[1]]
    count = kitchen.cupboard.count_word(word)
    if count:
        return count
    unit = kitchen.units.get(word) if len(word) > 1 else None
    return unit.id if unit and unit.kind in ("mass", "volume", "nominal") else ""


def _holds(reading: Reading, words: Sequence[Node]) -> bool:
    """Whether a count word after a weight is what holds the food: `400 g tin tomatoes`, but `200 g leaf spinach`."""
    kitchen = reading.kitchen
    word = words[0][1].lower()
    found = kitchen.cupboard.get(word)
    of = words[1][0] == "OF"
    rest = reading.keys(words[1 + of :])
    known = kitchen.larder.find(rest)
    holder = kitchen.cupboard.holds(kitchen.cupboard.count_word(word) or "") and known
    vessel = found is not None and found.kind == "vessel"
    return bool(vessel or holder) and kitchen.larder.find(reading.keys(words)) is None


# The signs of a round bracket, and one note in it.
_ONE_NOTE = 3


def bracketed(reading: Reading, read: Measured, bracket: Node, each: bool = False, notes: bool = True) -> Measured:
    """What round brackets say, things between commas: `(3 cups)`, `(140–200 g each)`, `(neck, heart)`."""
    also: tuple[Measure, ...] = ()
    kept = read.notes
    parts = bracket[1]
    each = each or any(note[0] == "note" and reading.said([note]) in reading.words.each for note in parts)
    each = each or (parts[-2][0] == "EACH" and any(part[0] == "SLASH" for part in parts))
    for at, note in enumerate(parts):
        if note[0] != "note" or (len(parts) > _ONE_NOTE and reading.said([note]) in reading.words.each):
            continue
        if at and parts[at - 1][0] == "SLASH":
            _check_same(reading, parts[at - 2], note)
            continue
        read = _noted(reading, read.with_(also=()) if also else read, note, each or parts[at + 1][0] == "EACH")
        if also and read.also:
            message = f"“{reading.said([bracket])}”: two more measures of the same"
            raise reading.fail("measures-unclear", reading.span([note]), message, "write one of them")
        also = also or read.also
    if not notes:
        read.notes = kept
    _ask_of_packs(reading, read, bracket)
    return read.with_(also=also) if also else read


_NEAR = Fraction(5, 100)
"""So far apart are two weights of one thing that were both rounded: 1.1 kg, 2 1/2 lb."""


def _check_same(reading: Reading, first: Node, second: Node) -> None:
    """`(1.1 kg / 2 1/2 lb)`: the same in units of two systems. Raises where it is not."""
    weights = [child(note[1], "weight") for note in (first, second)]
    found = [as_one(reading, measures(reading, weight)) for weight in weights if weight is not None]
    units = reading.kitchen.units
    amounts = [amount for said in found if (amount := base(said, units)) is not None]
    if len(amounts) == len({kind(said, units) for said in found}) + 1:
        one, other = amounts
        if all(abs(end - same) <= _NEAR * same for end, same in zip(one, other, strict=True)):
            return
    message = f"“{reading.said([first, second])}”: two more measures of the same"
    raise reading.fail("measures-unclear", reading.span([second]), message, "write one of them")


def _ask_of_packs(reading: Reading, read: Measured, bracket: Node) -> None:
    """`3 tins (400 g) tomatoes`: a label tells what one of them holds, and a cook what all of them come to."""
    cupboard, count = reading.kitchen.cupboard, read.measures[0] if len(read.measures) == 1 else None
    if count is None or count.amount.hi <= 1 or not (cupboard.is_tin(count.unit) or cupboard.holds(count.unit)):
        return
    notes = [note for note in bracket[1] if note[0] == "note"]
    weighed = next((part for note in notes for part in note[1] if part[0] == "weight"), None)
    if read.each or weighed is None or any(word in reading.said(notes).lower() for word in reading.words.in_all):
        return
    weight, language = reading.said([weighed]), reading.kitchen.language
    each, all_of_it = (example(language, key, measure=weight) for key in ("each", "in_all"))
    message = f"“{weight}”: of each, or of all together? It is counted for all together"
    reading.find("number-unclear", "information", reading.span([weighed]), message, f"write {each} or {all_of_it}")


def _noted(reading: Reading, read: Measured, note: Node, each: bool) -> Measured:
    """`3 cups`, `a scant cup`, `140–200 g`, `1 kg stoned`, `20 cm`, `3 sprigs`, or a note."""
    parts, words = list(note[1]), reading.words
    before = words.about | words.each
    if any(part[0] == "weight" for part in parts):
        before |= words.articles
    while len(parts) > 1 and parts[0][0] == "ANY" and (parts[0][1].lower() in before or is_how(words, parts[0])):
        each = parts.pop(0)[1].lower() in words.each or each
    if not parts:
        return read.with_(notes=(*read.notes, reading.span([note])))
    first, others = parts[0], parts[1:]
    for part in others:
        check_number(reading, part)
    if first[0] == "weight":
        found = measures(reading, first)
        if each:
            if read.each:
                message = "the weight of each is told twice"
                raise reading.fail("measures-unclear", reading.span([note]), message, "write it once")
            word = reading.said(others) if others and read.prepared is None else read.prepared_word
            return read.with_(each=as_one(reading, found), prepared_word=word)
        if others:
            return read.with_(prepared=as_one(reading, found), prepared_word=reading.said(others))
        return read.with_(also=found)
    check_number(reading, first)
    if first[0] == "size":
        return read.with_(size=reading.said([note]))
    unit = _unit_alone(reading, others) if first[0] == "count" else ""
    if unit:
        return read.with_(also=(Measure(amount(reading, first), unit),))
    return read.with_(notes=(*read.notes, reading.span([note])))


def _unit_alone(reading: Reading, words: Sequence[Node]) -> str:
    """The unit that these words are, maybe with how full it is: *level tbsp*; else ""."""
    if not all(map(is_leaf, words)):
        return ""
    said = words[1:] if len(words) > 1 and is_how(reading.words, words[0]) else words
    return _unit(reading.kitchen, said[0]) if len(said) == 1 else ""
