"""An ingredient clause multiplied, word by word.

`8 chicken thighs (140–180 g each), in 2-cm cubes` has four numbers, and one of them grows. Which one is told by where
it stands, as the reading of a clause tells it: numbers before the name and the other writing of the same measure grow;
the weight of a piece, sizes, shares and whatever follows a comma stay.
"""

from __future__ import annotations

from tamis.model.names import several
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.measure_words import unit_words
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient
from tamis.reading.tables import tables
from tamis.scaling.edits import Edit
from tamis.scaling.fitting import count_text
from tamis.scaling.quantities import SCALED, Scaling, counted, joined, multiplied, scaled_measures, weighed
from tamis.scaling.words import ClauseWords, clause_words
from tamis.source import NOWHERE, Span
from tamis.syntax.items import Bracket, Item, Product, Quantity, Word
from tamis.table.scaled import pinches


def food_edits(food: Ingredient, scaling: Scaling) -> list[Edit]:
    """The changes in an ingredient's clause, counted from the start of its text."""
    if food.percent is not None or food.clause.span in scaling.stay:
        return []
    words, keys = clause_words(scaling.kitchen.language), food.clause.items.keys
    share_ends = (at for at, key in enumerate(keys, 1) if key in words.of)
    start = next(share_ends, 0) if food.share is not None else 0
    more = _more(food, words)
    if more and food.purpose_spans and food.purpose_spans[0].start >= food.clause.inner + more.span.end:
        return [_scaled(more, food.clause.text, scaling)]  # the second use: `plus 2 tbsp to serve`
    edits = _Walk(food, food.clause.text, scaling).measure(start)
    if food.share is not None and food.share.measure is not None:  # 3 tbsp of 375 g: the whole grows, and so the part
        part = next(item for item in food.clause.items.items if isinstance(item, Quantity))
        edits.insert(0, _scaled(part, food.clause.text, scaling))
    for other in food.alternatives:
        walk = _Walk(other, food.clause.text, scaling)
        edits += walk.measure(_after_or(food, walk.name.start, words))
    return edits


def _more(food: Ingredient, words: ClauseWords) -> Quantity | None:
    """What stands behind *plus* behind the name."""
    items, end = food.clause.items, food.name_span.end - food.clause.inner
    for at, item in enumerate(items.items[1:], 1):
        if items.keys[at - 1] in words.plus and item.span.start > end and isinstance(item, Quantity):
            return item
    return None


def _scaled(item: Quantity, text: str, scaling: Scaling) -> Edit:
    if item.kind in SCALED:
        return weighed(item, text, scaling)
    return counted(item.span, item.amount.times(scaling.factor), scaling.kitchen.language)


def _after_or(food: Ingredient, name_at: int, words: ClauseWords) -> int:
    """The index of the first item of an alternative, after the nearest `or` before its name."""
    items = food.clause.items
    before = [
        at for at, item in enumerate(items.items) if items.keys[at] in words.alternative and item.span.start < name_at
    ]
    return before[-1] + 1 if before else 0


class _Walk:
    """One measure and its name, from left to right."""

    __slots__ = ("at", "count", "edits", "food", "items", "keys", "name", "scaling", "sum", "tables", "text", "words")

    def __init__(self, food: Ingredient, text: str, scaling: Scaling) -> None:
        self.food = food
        self.text = text
        self.scaling = scaling
        self.words = clause_words(scaling.kitchen.language)
        self.tables = tables(scaling.kitchen.language)
        self.items = food.clause.items.items
        self.keys = food.clause.items.keys
        self.name: Span = food.name_span.shifted(-food.clause.inner)
        self.edits: list[Edit] = []
        self.count: Amount | None = None
        self.sum: tuple[Measure, ...] = ()
        self.at = 0

    def measure(self, start: int) -> list[Edit]:
        """The changes from an item on: measure, name, and what belongs to the measure after the name."""
        self.at = start
        if self._length_only():
            return self.edits
        self._skip_hedge()
        while self.at < len(self.items) and self.items[self.at].span.start < self.name.start:
            self._item(self.items[self.at])
            self.at += 1
        if self.count is not None:
            self._name(self.count)
        self._after_name()
        return self.edits

    def _skip_hedge(self) -> None:
        """*A little under* is no number, though it begins with an article."""
        if not self.food.about or self.food.measure_span == NOWHERE:
            return
        begins = self.food.measure_span.start - self.food.clause.inner
        while self.at < len(self.items) and self.items[self.at].span.start < begins:
            self.at += 1

    def _length_only(self) -> bool:
        """`2 cm ginger`: the length is the only measure there is; nor does food without a measure grow."""
        if not self.food.measures:
            return True
        first = self.items[self.at] if self.at < len(self.items) else None
        unit = self.scaling.kitchen.units.get(self.food.measures[0].unit)
        if unit is None or unit.kind != "length" or not isinstance(first, Quantity) or first.kind != "length":
            return False
        self.edits.append(weighed(first, self.text, self.scaling))
        return True

    def _item(self, item: Item) -> None:
        if isinstance(item, Quantity) and item.kind == "pieces":
            self._counted(item.span, item.amount)
        elif isinstance(item, Quantity) and item.kind in SCALED:
            if self._is_of_the_piece():
                self._counted(Span(item.span.start, item.span.start), self.food.measures[0].amount, " × ")
            elif not self._follows_count():
                self._weighed(item)
        elif isinstance(item, Quantity) and item.kind == "length":
            self._sized(item)
        elif isinstance(item, Product) and item.kind in SCALED:
            self.edits.append(multiplied(item, self.text, self.scaling))
            self.count = item.factors[0].times(self.scaling.factor)
        elif isinstance(item, Bracket):
            if not self._follows_count():
                self._bracket(item)
        elif isinstance(item, Word):
            self._word(item)

    def _weighed(self, item: Quantity) -> None:
        """A weight or volume; after `plus` it is part of the one before."""
        edit = weighed(item, self.text, self.scaling)
        measures = scaled_measures(item, self.scaling)
        if self.edits and self.sum and self.keys[self.at - 1] in self.words.plus:
            measures = (*self.sum, *measures)
            edit = joined(self.edits.pop(), edit, measures, self.text, self.scaling)
        self.sum = measures
        self.edits.append(edit)

    def _sized(self, item: Quantity) -> None:
        """`2 cm piece of ginger` is one piece, though no number says so."""
        if self.count is None and self.scaling.kitchen.cupboard.count_word(self._key(1)) and self._unsaid():
            at = item.span.start
            self._counted(Span(at, at), self.food.measures[0].amount, " ")

    def _unsaid(self) -> bool:
        """Whether the one measure is a single piece that no article and no number stands for."""
        one = self.food.measures[0].amount
        return one.lo == one.hi == 1 and self._key(-1) not in self.tables.articles

    def _is_of_the_piece(self) -> bool:
        """`400 g can tomatoes`: the weight of the one can, whose number nobody wrote."""
        before = (*self.tables.articles, "#pieces")
        return self.count is None and self.food.each is not None and self._key(-1) not in before

    def _follows_count(self) -> bool:
        """Whether the item before is a count, so that this one is the weight of a piece: `2 (400 g) cans`."""
        before = self.keys[self.at - 1]
        return self.count is not None and (before == "#pieces" or before in self.tables.articles)

    def _counted(self, span: Span, amount: Amount, join: str = "") -> None:
        self.count = amount.times(self.scaling.factor)
        edit = counted(span, self.count, self.scaling.kitchen.language, self.food.about)
        unit = self.scaling.kitchen.units.get(self.food.measures[0].unit)
        if unit is not None and unit.kind == "nominal":
            edit = edit._replace(shown=count_text(pinches(self.count), self.scaling.kitchen.language))
        # `2 2-cm pieces` compiles, and is hard to read.
        sized = "#length" in (self._key(0), self._key(1)) or self._key(1) in ("#mass", "#volume")
        sign = " ×" if sized and "×" not in join else ""
        self.edits.append(edit._replace(exact=edit.exact + join, shown=edit.shown + sign + join))

    def _word(self, word: Word) -> None:
        """An article that stands for one, a fraction of one piece, or a count noun that follows its number."""
        if self.count is not None:
            self._count_noun(word)
        elif last := self._part_of_one():
            sign = " ×" if self._unit_of_number(last + 1) else ""
            said = Span(word.span.start, self.items[self.at + last].span.end)
            self._counted(said, self.food.measures[0].amount, sign)
            self.at += last
        elif word.lower in self.tables.articles:
            self._article(word)

    def _article(self, word: Word) -> None:
        one = self.food.measures[0].amount
        if self._key(1) in ("#mass", "#volume"):
            # `a 400 g can of tomatoes`; without a count noun the article is part of the phrase and no number.
            count_word = self.scaling.kitchen.cupboard.count_word(self._key(2))
            if self.food.measures[0].unit == (count_word or "") and self.food.each:
                self._counted(word.span, one, " ×")
        elif one.single and self._key(1) != "#pieces":
            self._counted(word.span, one)

    def _part_of_one(self) -> int:
        """How far ahead the article stands where a part of one is the count (`half an onion`, `a quarter of a 400 g
        can of tomatoes`); 0 where it is not."""
        at = int(self._key(0) in self.tables.articles)
        if self._key(at) not in self.tables.fractions:
            return 0
        at += 1
        at += self._key(at) in self.words.of
        if self._key(at) not in self.tables.articles or self.food.share is not None:
            return 0
        return at if not self._unit_of_number(at + 1) or self.food.each is not None else 0

    def _unit_of_number(self, ahead: int) -> bool:
        return self._key(ahead) in ("#pieces", "#mass", "#volume")

    def _key(self, ahead: int) -> str:
        return self.keys[self.at + ahead] if 0 <= self.at + ahead < len(self.keys) else ""

    def _count_noun(self, word: Word) -> None:
        """`2 cans`, `3 pinches`: the unit in the number that fits."""
        unit, kitchen = self.food.measures[0].unit, self.scaling.kitchen
        known = kitchen.units.get(word.lower) if len(word.lower) > 1 else None
        if not unit or unit not in (kitchen.cupboard.count_word(word.lower), known.id if known else ""):
            return
        assert self.count is not None
        fitting = unit_words(unit, self.count.hi > 1, kitchen.language)
        if word.lower in _spellings(unit, kitchen.language) and fitting != word.lower:
            self.edits.append(Edit(word.span, fitting, fitting))

    def _name(self, count: Amount) -> None:
        """The name of pieces in the number that fits: `1 egg`, `2 eggs`."""
        food = self.food
        if len(food.measures) != 1 or food.measures[0].unit not in ("", food.piece_word):
            return
        name = self.text[self.name.start : self.name.end]
        rules = nouns(self.scaling.kitchen.language)
        one, many = rules.one(name.lower()), count.hi > 1
        before = food.measures[0].amount.hi > 1
        # What the cook keeps in the singular (2 star anise) stays so.
        if many == before or before == (one == name.lower()) or not name.rpartition(" ")[2].islower():
            return
        changed = self._plural(name) if many else rules.one(name)
        self.edits.append(Edit(Span(self.name.start, self.name.start + len(name)), changed, changed))

    def _plural(self, name: str) -> str:
        """The plural by which the goods still know the food; as it is, if they know none."""
        for many in (several(name, self.food, self.scaling.kitchen.language), f"{name}es"):
            found = self.scaling.kitchen.larder.named(many)
            if (found.goods if found else None) == self.food.goods:
                return many
        return name

    def _after_name(self) -> None:
        """Round brackets after the name, and `plus` more of it."""
        while self.at < len(self.items) and self.items[self.at].span.start < self.name.end:
            self.at += 1
        for item in self.items[self.at :]:
            if isinstance(item, Bracket):
                self._bracket(item)
            elif isinstance(item, Quantity) and self._grows(item):
                self.edits.append(_scaled(item, self.text, self.scaling))
        more = _more(self.food, self.words) if len(self.food.measures) > 1 else None
        if more:
            self.edits.append(_scaled(more, self.text, self.scaling))

    def _grows(self, number: Quantity) -> bool:
        """Whether words behind the name make it so much of all: `to make 240 ml`, `from 8 ears`, `and 2 more`."""
        if number.kind not in (*SCALED, "pieces"):
            return False
        behind = self.text[number.span.end :].split(maxsplit=1)
        return bool(behind and behind[0] in self.words.more) or bool(
            self.words.grows.search(self.text[self.name.end : number.span.start])
        )

    def _bracket(self, bracket: Bracket) -> None:
        """Another writing of the measure, or the weight once prepared; not the weight of each."""
        items = bracket.items
        last = items[-1] if items else None
        if any(isinstance(item, Word) and item.lower in self.words.each for item in items):
            return
        first = next((item for item in items if not isinstance(item, Word)), None)
        if isinstance(first, Quantity) and first.kind in SCALED and self._is_one_piece():
            end, each = bracket.span.end - 1, f" {min(self.words.each)}"  # the weight of one is now that of each
            self.edits.append(Edit(Span(end, end), each, each))
        elif isinstance(first, Quantity) and first.kind in SCALED:
            self.edits.append(weighed(first, self.text, self.scaling))
        elif isinstance(first, Quantity) and first.kind == "pieces" and self.food.also:
            self._counted_also(first, last, self.food.also[0].unit)

    def _is_one_piece(self) -> bool:
        """`1 goose (8–10 lb)`, `1 can (400 g)`: what stands in round brackets is the weight of a single piece."""
        if self.count is None or self.count.hi == 1 or self.food.prepared is not None:
            return False
        one, unit = self.food.measures[0].amount, self.scaling.kitchen.units.get(self.food.measures[0].unit)
        return one.lo == one.hi == 1 and unit is None

    def _counted_also(self, number: Quantity, word: Item | None, unit: str) -> None:
        """`1 cup (2 sticks)`: the other writing is a count."""
        many = number.amount.times(self.scaling.factor)
        language = self.scaling.kitchen.language
        self.edits.append(counted(number.span, many, language))
        fitting = unit_words(unit, many.hi > 1, language)
        if isinstance(word, Word) and word.lower in _spellings(unit, language):
            self.edits.append(Edit(word.span, fitting, fitting))


def _spellings(unit: str, language: str) -> tuple[str, str]:
    """A unit as it stands after one, and after several."""
    return unit_words(unit, False, language), unit_words(unit, True, language)
