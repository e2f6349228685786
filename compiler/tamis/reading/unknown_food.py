"""A measured food that no list knows: it stays, and what is not known of it is said."""

from __future__ import annotations

from tamis.kitchen.likely import likely
from tamis.quantity.near import Known, nearest
from tamis.quantity.nouns import nouns
from tamis.reading.guesses import apart, several_measured
from tamis.reading.phrase import Phrase
from tamis.reading.unit_checks import misspelt, unit_meant
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example, named, word_lists

if TYPE_CHECKING:
    from tamis.kitchen.goods import Found
    from tamis.reading.clause import Reading
    from tamis.reading.clauses import Ingredient
    from tamis.reading.phrase import Alone


_SHOWN = 4


def is_mark(food: Ingredient, language: str) -> bool:
    """Whether a name is that of what one makes in a food: so many slits, a small hole."""
    lists, words = word_lists(language, "reading")["marks"], nouns(language).key(food.name.lower().split())
    if food.purpose or any(measure.unit for measure in food.measures):
        return False
    return bool(words) and words[-1] in lists["words"] and all(word in lists["how"] for word in words[:-1])


def unknown_food(reading: Reading, food: Ingredient, alone: Alone) -> Ingredient | None:
    """Report a food that no list knows, and return it; None for what cannot be a food at all, which is an error."""
    phrase = Phrase(reading, alone)
    pieces = _unknown_pieces(phrase, food)
    if pieces is not None:
        return _in_unknown_pieces(phrase, food, *pieces)
    variety = _variety(reading, food)
    if variety is not None:
        return variety
    return food if _is_food(reading, phrase, food) else None


def _variety(reading: Reading, food: Ingredient) -> Ingredient | None:
    """`6 Baldwin apples`, `1 Bresse chicken`: a name with capitals before what is the same food wherever it comes from
    is that of a variety, a breed or a place."""
    words = food.name.split()
    named_so = [word.lower() for word in words if word[0].isupper()]
    found = reading.kitchen.larder.find([word for word in words if not word[0].isupper()]) if named_so else None
    if found is None or not reading.kitchen.larder.comes_from_anywhere(found.goods):
        return None
    return food._replace(goods=found.goods, states=(*found.states, *named_so))


def _is_food(reading: Reading, phrase: Phrase, food: Ingredient) -> bool:
    name = food.name.lower()
    words = name.split()
    if _is_part_of_known(phrase, food) or _is_repeat(phrase, words):
        return False
    if all(reading.kitchen.larder.describes(word) or reading.kitchen.larder.is_state(word) for word in words):
        message = f"“{food.name}” says how a food is, but names no food"
        reading.find("clause-role", "error", food.name_span, message, "write the name of the food after it")
        return False
    measured = several_measured(phrase)
    if measured:
        message = f"“{phrase.clause.text.strip()[:60]}” names several foods in one bracket"
        reading.find("clause-role", "error", reading.clause.span, message, measured)
        return False
    several = _several(phrase, food)
    if several:
        message = f"“{food.name}” names two foods in one bracket"
        reading.find("unknown-ingredient", "warning", food.name_span, message, several)
        return True
    if _divides(reading, food):
        message = f"no ingredient data for “{food.name}”"
        language = reading.kitchen.language
        into, said = named(language, "into"), example(language, "pieces", pieces=reading.text)
        hint = f"if the food is divided here, {into} belongs in the bracket: {said}"
        reading.find("unknown-ingredient", "warning", food.name_span, message, hint)
        return True
    counted = not any(measure.unit for measure in food.measures)  # nobody weighs a nozzle
    near = reading.kitchen.larder.near(name) or (reading.kitchen.cupboard.near(name) if counted else None)
    liquid = words[0] in word_lists(reading.kitchen.language, "model")["lifted"]["rests"]  # brine is no slip for brie
    if near and near != name and not liquid:
        message = f"no ingredient data for “{food.name}”"
        hint = f"did you mean “{near}”? Otherwise add it to `goods.toml`"
        reading.find("unknown-ingredient", "warning", food.name_span, message, hint)
        return True
    message = f"no ingredient data for “{food.name}”: its weight, allergens and hazards are unknown"
    hint = "add it to `goods.toml` if its weight, allergens or hazards matter"
    reading.find("unknown-ingredient", "information", food.name_span, message, hint)
    return True


def _several(phrase: Phrase, food: Ingredient) -> str:
    """How to say `1 tsp cumin and coriander`: each food with its measure, if that is what was meant."""
    return apart(phrase, food.name.lower(), "", f", {food.purpose}" if food.purpose else "")


def _divides(reading: Reading, food: Ingredient) -> bool:
    """`Roll into [20 balls]`: pieces that no food is called like, after *into*, were meant as a division."""
    counted = all(reading.kitchen.units.get(measure.unit) is None for measure in food.measures)
    words = reading.before.lower().split()
    return counted and bool(words) and words[-1] in reading.words.into


def _is_repeat(phrase: Phrase, words: list[str]) -> bool:
    """`3 time`, `2 batch`: a time or a repeat that was not recognised is no food."""
    units = [phrase.kitchen.units.get(word) for word in words if len(word) > 1]
    timed = any(unit is not None and unit.kind == "time" for unit in units)
    if not timed and phrase.tables.repeat_nouns.isdisjoint(words):
        return False
    message = f"“{phrase.clause.text.strip()[:60]}” is neither an ingredient nor a time or repeat that can be read"
    time, twice, often = (example(phrase.kitchen.language, key) for key in ("for_ten", "twice", "three_times"))
    hint = f"a time is a number with its unit: {time}; a repeat is {twice} or {often}"
    phrase.reading.find("clause-role", "error", phrase.clause.span, message, hint)
    return True


def _unknown_pieces(phrase: Phrase, food: Ingredient) -> tuple[str, str, Found] | None:
    """`2 flurbs of lettuce`, `a finger's depth of oil`: the measure that is none, and the known food behind it."""
    words = food.name.split()
    at = next((at for at, word in enumerate(words) if word.lower() in phrase.tables.of), 0)
    found = phrase.kitchen.larder.find(tuple(word.lower() for word in words[at + 1 :])) if at else None
    if found is None or food.percent or any(one.unit for one in food.measures):
        return None
    return " ".join(words[:at]), " ".join(words[at + 1 :]), found


def _in_unknown_pieces(phrase: Phrase, food: Ingredient, said: str, rest: str, found: Found) -> Ingredient | None:
    """Food that counts as so many of a measure that is none: nobody knows what they weigh. None for a unit misspelt.
    Without a number it has no weight at all: `sippets of toast, to serve`."""
    if not food.measures and not food.vague:
        return food._replace(goods=found.goods, states=found.states)
    units = phrase.kitchen.units
    span = Span(food.name_span.start, food.name_span.start + len(said))
    meant = unit_meant(phrase.reading, said.lower())
    length = units.get(said.lower())  # an inch of oil
    if meant and length is None:
        phrase.reading.findings.append(misspelt(phrase.reading, span, said, meant).finding)
        return None
    if length is None and not _says_weight(phrase, food):
        message = f"“{said}” is not a known measure or piece of {rest}: the food is listed without a weight"
        phrase.reading.find("measure-unknown", "warning", span, message, _better(phrase, found, said.split()[-1], rest))
    whole = Span(food.measure_span.start if food.measure_text else span.start, span.end)
    unit = length.id if length else nouns(phrase.kitchen.language).singular(said.lower())
    return food._replace(
        name=rest,
        name_span=Span(food.name_span.end - len(rest), food.name_span.end),
        goods=found.goods,
        states=(*food.states, *found.states),
        measures=tuple(measure._replace(unit=unit) for measure in food.measures),
        measure_text=phrase.reading.text[whole.start - phrase.reading.inner : whole.end - phrase.reading.inner],
        measure_span=whole,
        vague=f"{food.vague} {said}" if food.vague else "",
    )


def _says_weight(phrase: Phrase, food: Ingredient) -> bool:
    """`2 pairs of roes (250 g each)`, `1 pair of sweetbreads (500 g)`: it is written what they weigh; but of one pair
    that is so much each, nobody knows whether that is the pair."""
    if food.each is not None:
        return bool(food.measures) and food.measures[0].amount.lo > 1
    weights = [phrase.kitchen.units.get(one.unit) for one in food.also if one.unit]
    return any(unit is not None and unit.kind in ("mass", "volume") for unit in weights)


def _better(phrase: Phrase, found: Found, word: str, rest: str) -> str:
    """How to say how much, where a word before *of* is no measure."""
    kitchen = phrase.kitchen
    near = kitchen.units.near(word) or nearest(word, Known(kitchen.cupboard.counts))
    if near:
        return f"did you mean `{near}`?"
    pieces = [piece.word for piece in found.goods.pieces if piece.word and not kitchen.larder.is_state(piece.word)]
    known = f", or a piece that is known ({', '.join(pieces[:_SHOWN])})" if pieces else ""
    measure = likely(found.goods, rest, kitchen.language)
    return f"write how much, such as `[{'100 g' if measure.isdecimal() else measure} {rest}]`{known}"


def _is_part_of_known(phrase: Phrase, food: Ingredient) -> bool:
    """`juice of half the orange`: a share of something there cannot be juiced, a piece can."""
    words = food.name.lower().split()
    if not food.part or len(words) < len(("half", "the", "orange")) or words[0] not in phrase.tables.fractions:
        return False
    rest = " ".join(words[2:])
    said = example(phrase.kitchen.language, "part_of_a", part=food.part, share=words[0], food=rest)
    hint = f"count it here too: {said}; the table takes both parts from one"
    message = f"a part of “the {rest}” cannot be measured"
    phrase.reading.find("clause-role", "error", food.name_span, message, hint)
    return True
