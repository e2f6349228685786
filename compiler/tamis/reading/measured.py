"""The measure at the head of an ingredient or of a piece of equipment.

Cooks write it in many ways (`420 g (3 cups)`, `1 cup plus 2 tbsp`, `2 × 400 g cans`, `a heaped tbsp`, `half an`),
and only after it comes the name that tells ingredient from equipment; so it is read first, for both.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.reading.phrase import Phrase, inside, measures_of
from tamis.reading.tables import match
from tamis.record import NamedTuple
from tamis.syntax.items import Bracket, Product, Quantity, Word

ONE = Amount(Fraction(1), Fraction(1))


class Measured(NamedTuple):
    """What stands before a name. `end` is the index of the first item after it; the other fields as in `Ingredient`.

    `pieces` is set where pieces are counted; `product` keeps `3 × 20 cm`, whose meaning the noun decides.
    """

    start: int
    end: int
    measures: tuple[Measure, ...] = ()
    also: tuple[Measure, ...] = ()
    each: Measure | None = None
    prepared: Measure | None = None
    prepared_word: str = ""
    note: str = ""
    size: str = ""
    pieces: Amount | None = None
    product: Product | None = None
    percent: Amount | None = None
    vague: bool = False

    @property
    def counted_or_weighed(self) -> bool:
        """Whether a number, an article or a unit stood there at all."""
        return bool(self.measures) or self.percent is not None or self.product is not None


def read_measure(phrase: Phrase, start: int) -> Measured:
    """The measure that begins at an index (hedges already passed)."""
    key = phrase.key(start)
    if key in phrase.tables.fractions and phrase.key(start + 1) in phrase.tables.articles:
        return _piece_of_one(phrase, start)
    vague = match(phrase.tables.vague, phrase.keys, start)
    if vague:
        return _vague(phrase, start, start + vague[1])
    article = key in phrase.tables.articles
    at = start + article
    if key[:1] != "#":
        if phrase.key(at) in phrase.tables.fractions and phrase.key(at + 1) == "of":
            if phrase.key(at + 2) in phrase.tables.articles:  # a quarter of a cabbage
                fraction = phrase.tables.fractions[phrase.key(at)]
                return _counted(phrase, start, at + 3, Amount(fraction, fraction))
        elif _is_one(phrase, start):
            return _counted(phrase, start, start, ONE)
    item = phrase.items[at] if at < phrase.end else None
    if isinstance(item, Quantity):
        return _quantified(phrase, start, at, item, article)
    if isinstance(item, Product):
        return _product(phrase, start, at, item)
    return _counted(phrase, start, at, ONE) if article else Measured(start, at)


def _is_one(phrase: Phrase, start: int) -> bool:
    """`pinch of saffron`, `handful mint`: a count word without its article, before a food that is not called so."""
    described = phrase.key(start) in phrase.tables.how or phrase.key(start).endswith(("-size", "-sized"))
    at = start + described
    if not phrase.key(at).isalpha() or not _unit_word(phrase, at):
        return False
    if phrase.key(at + 1) == "of":
        return True
    end = at
    while end < phrase.end and isinstance(phrase.items[end], Word) and phrase.key(end) not in phrase.tables.stops:
        end += 1
    larder = phrase.kitchen.larder
    return larder.find(phrase.keys[start:end]) is None and larder.find(phrase.keys[at + 1 : end]) is not None


def _quantified(phrase: Phrase, start: int, at: int, item: Quantity, article: bool) -> Measured:
    """A number first, perhaps with its unit, perhaps after an article."""
    if item.kind in ("mass", "volume"):
        return _weighed(phrase, start, at, item, article)
    if item.kind == "pieces":
        after = at + 1
        if item.amount.hi < 1 and phrase.key(after) in phrase.tables.articles:
            after += 1  # `½ a lemon`
        return _counted(phrase, start, after, item.amount)
    if item.kind == "length":
        return _sized(phrase, start, at, article)
    if item.kind == "percent":
        return Measured(start, _after_of(phrase, at + 1), percent=item.amount)
    return _counted(phrase, start, at, ONE) if article else Measured(start, at)


def _after_of(phrase: Phrase, at: int) -> int:
    return at + 1 if phrase.key(at) == "of" else at


def _piece_of_one(phrase: Phrase, start: int) -> Measured:
    """`half an onion`, `a quarter of a cabbage` once its share is read: a fraction of one piece."""
    fraction = phrase.tables.fractions[phrase.key(start)]
    return _counted(phrase, start, start + 2, Amount(fraction, fraction))


def _vague(phrase: Phrase, start: int, at: int) -> Measured:
    at = _after_of(phrase, at + 1 if _unit_word(phrase, at) else at)
    return Measured(start, at, vague=True)


def _weighed(phrase: Phrase, start: int, at: int, item: Quantity, article: bool) -> Measured:
    """A weight or volume first: `420 g (3 cups)`, `500 g / 1 lb 2 oz`, `a 400 g can of`."""
    count_word = phrase.kitchen.cupboard.count_word(phrase.key(at + 1))
    tool = phrase.kitchen.cupboard.get(f"{phrase.key(at + 1)} {phrase.key(at + 2)}")  # a 900 g loaf tin
    if count_word and not tool and _name_follows(phrase, at + 2) and (article or _holds(phrase, at + 1)):
        each = measures_of(phrase, item)[0]
        return Measured(start, _after_of(phrase, at + 2), (Measure(ONE, count_word),), each=each, pieces=ONE)
    if article and item.kind == "mass" and _is_one_piece(phrase, at + 1):  # a 1.6 kg chicken
        return Measured(start, at + 1, (Measure(ONE, ""),), each=measures_of(phrase, item)[0], pieces=ONE)
    read = Measured(start, at + 1, measures_of(phrase, item))
    return _extras(phrase, read)


def _is_one_piece(phrase: Phrase, at: int) -> bool:
    """Whether a food is named there that comes in pieces."""
    end = at
    while end < phrase.end and isinstance(phrase.items[end], Word) and phrase.key(end) not in phrase.tables.stops:
        end += 1
    found = phrase.kitchen.larder.find(phrase.keys[at:end]) if end > at else None
    return found is not None and any(not piece.word for piece in found.goods.pieces)


def _holds(phrase: Phrase, at: int) -> bool:
    """Whether a count word after a weight is what holds the food: `400 g tin tomatoes`, but `200 g leaf spinach`."""
    cupboard, larder = phrase.kitchen.cupboard, phrase.kitchen.larder
    found = cupboard.get(phrase.key(at))
    end = at + 1
    while end < phrase.end and isinstance(phrase.items[end], Word) and phrase.key(end) not in phrase.tables.stops:
        end += 1
    holder = cupboard.holds(cupboard.count_word(phrase.key(at)) or "") and larder.find(phrase.keys[at + 1 : end])
    vessel = found is not None and found.kind == "vessel"
    return bool(vessel or holder) and larder.find(phrase.keys[at:end]) is None


def _sized(phrase: Phrase, start: int, at: int, article: bool) -> Measured:
    """A length first: `a 3-cm piece of ginger`, `a 28 cm tin`."""
    size = phrase.text(at, at + 1)
    count_word = phrase.kitchen.cupboard.count_word(phrase.key(at + 1))
    if count_word and _name_follows(phrase, at + 2):
        return Measured(start, _after_of(phrase, at + 2), (Measure(ONE, count_word),), size=size, pieces=ONE)
    measures = (Measure(ONE, ""),) if article else ()
    return Measured(start, at + 1, measures, size=size, pieces=ONE if article else None)


def _product(phrase: Phrase, start: int, at: int, item: Product) -> Measured:
    """`2 × 400 g cans` counts; `30 × 40 cm` is a size; `3 × 20 cm` waits for its noun."""
    if item.kind == "length" or item.kind == "pieces":
        return Measured(start, at + 1, size=phrase.text(at, at + 1), product=item)
    unit = phrase.kitchen.units.get(item.unit)
    each = Measure(item.factors[1], unit.id if unit else item.unit)
    count_word = phrase.kitchen.cupboard.count_word(phrase.key(at + 1)) or ""
    if not _name_follows(phrase, at + 2) and not phrase.kitchen.larder.find(phrase.keys[at + 1 : at + 2]):
        size = phrase.text(at, at + 1).replace("x", "×").partition("×")[2].strip()
        return Measured(start, at + 1, (Measure(item.factors[0], ""),), each=each, size=size, pieces=item.factors[0])
    end = _after_of(phrase, at + 2) if count_word else at + 1
    return Measured(start, end, (Measure(item.factors[0], count_word),), each=each, pieces=item.factors[0])


def _counted(phrase: Phrase, start: int, at: int, count: Amount) -> Measured:
    """A number of pieces, perhaps of a size, perhaps of a unit: `2 (400 g) cans`, `1 28 cm tin`, `2 heaped tbsp`."""
    read = _with_size(phrase, Measured(start, at, pieces=count))
    at = read.end
    described = phrase.key(at) in phrase.tables.how or phrase.key(at).endswith(("-size", "-sized"))
    if described and _unit_word(phrase, at + 1):
        at += 1
    unit = _unit_word(phrase, at)
    if not unit:
        return read._replace(measures=(Measure(count, ""),))
    return _extras(phrase, read._replace(end=_after_of(phrase, at + 1), measures=(Measure(count, unit),)))


def _with_size(phrase: Phrase, read: Measured) -> Measured:
    """A number of pieces with the size or the weight of each that stands after it."""
    at = read.end
    item = phrase.items[at] if at < phrase.end else None
    if isinstance(item, Word):
        return read
    if isinstance(item, Quantity) and item.kind in ("mass", "volume"):
        return read._replace(end=at + 1, each=measures_of(phrase, item)[0])
    if isinstance(item, Quantity | Product) and item.kind == "length":
        return read._replace(end=at + 1, size=phrase.text(at, at + 1))
    return _bracketed(phrase, read, item, each=True) if isinstance(item, Bracket) else read


def _unit_word(phrase: Phrase, at: int) -> str:
    """The unit that a word is when it stands between a number and a name: tbsp, pinch, clove, can; else ""."""
    word = phrase.key(at)
    if not word or not _name_follows(phrase, at + 1):
        return ""
    count_word = phrase.kitchen.cupboard.count_word(word)
    if count_word:
        # A stick blender is no stick of blender.
        return "" if phrase.kitchen.cupboard.get(f"{word} {phrase.key(at + 1)}") else count_word
    unit = phrase.kitchen.units.get(word) if isinstance(phrase.items[at], Word) else None
    return unit.id if unit and len(word) > 1 and unit.kind in ("mass", "volume", "nominal") else ""


def _name_follows(phrase: Phrase, at: int) -> bool:
    """Whether a name comes next: a word that does not end one, perhaps after `of` or a round bracket."""
    if phrase.key(at) == "()":
        at += 1
    at = _after_of(phrase, at)
    if at >= phrase.end:
        return False
    return isinstance(phrase.items[at], Word) and phrase.key(at) not in phrase.tables.stops


def _extras(phrase: Phrase, read: Measured) -> Measured:
    """What may follow a measure before the name: another writing of it, and more of it."""
    while (key := phrase.key(read.end)) in ("()", "/", "plus", "+"):
        at = read.end
        item = phrase.items[at]
        following = phrase.quantity(at + 1)
        if isinstance(item, Bracket):
            read = _bracketed(phrase, read, item)
        elif not following or following.kind not in ("mass", "volume"):
            break
        elif key == "/":
            read = read._replace(end=at + 2, also=measures_of(phrase, following))
        else:
            read = read._replace(end=at + 2, measures=(*read.measures, *measures_of(phrase, following)))
    return read._replace(end=read.end + 1) if key == "of" else read


def _bracketed(phrase: Phrase, read: Measured, bracket: Bracket, each: bool = False) -> Measured:
    """What round brackets say: `(3 cups)`, `(140–200 g each)`, `(1 kg stoned)`, `(20 cm)`, or a note."""
    inner = inside(phrase, bracket)
    read = read._replace(end=read.end + 1)
    start = inner.hedged(0)
    quantity = inner.quantity(start)
    if quantity is None or quantity.kind not in ("mass", "volume"):
        text = inner.text(0, inner.end)
        if quantity and quantity.kind == "length":
            return read._replace(size=text)
        count_word = phrase.kitchen.cupboard.count_word(inner.key(start + 1)) if quantity else None
        if quantity and count_word and inner.end == start + 2:
            return read._replace(also=(Measure(quantity.amount, count_word),))
        return read._replace(note=text)
    measures = measures_of(phrase, quantity)
    words = inner.text(start + 1, inner.end)
    if each or inner.key(inner.end - 1) == "each":
        return read._replace(each=measures[0])
    if words:
        return read._replace(prepared=measures[0], prepared_word=words)
    return read._replace(also=measures)


def read_bracket(phrase: Phrase, read: Measured, at: int) -> Measured:
    """The same for round brackets that come after the name."""
    item = phrase.items[at]
    return _bracketed(phrase, read, item)._replace(end=at + 1) if isinstance(item, Bracket) else read
