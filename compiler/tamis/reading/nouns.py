"""The name in a clause, and whether it is food or equipment.

The head noun decides: the last noun before `of`, a comma, a round bracket, `for` and the like. A food's name may
itself hold an `of` (*cream of tartar*), so the goods are asked for the whole name, the cupboard for what stands
before the `of` (*a bowl of ice* is a bowl).
"""

from __future__ import annotations

from tamis.kitchen.equipment import FoundEquipment
from tamis.kitchen.goods import Found
from tamis.reading.phrase import Phrase
from tamis.record import NamedTuple
from tamis.syntax.items import Word

_JOINS = ("#percent", "&", "+", "'")
_SIZED = (*_JOINS, "#length", "#volume", "#mass")


class Noun(NamedTuple):
    """A name from `start` up to, not including, `end`, and what the lists say of it (at most one is set)."""

    start: int
    end: int
    goods: Found | None = None
    equipment: FoundEquipment | None = None


def name_end(phrase: Phrase, start: int, sizes: bool = False) -> int:
    """The index after a name that begins at `start`: words, a percentage within (`70 % chocolate`), and with
    `sizes` also those (`heavy 3-litre pan`)."""
    stops = phrase.tables.stops
    within = _SIZED if sizes else _JOINS
    for at in range(start, phrase.end):
        key = phrase.keys[at]
        is_word = isinstance(phrase.items[at], Word) and (key not in stops or at == start)
        if not is_word and key not in within:
            return at
    return max(start, phrase.end)


def read_noun(phrase: Phrase, start: int, equipment_too: bool = True) -> Noun:
    """The name that begins at `start`, looked up."""
    end = name_end(phrase, start)
    if end == start:
        return Noun(start, end)
    words = phrase.keys[start:end]
    if equipment_too:
        sized_end = name_end(phrase, start, sizes=True)
        described = tuple([key for key in phrase.keys[start:sized_end] if key[0] != "#"])
        head = described[: described.index("of")] if "of" in described else described
        found = phrase.kitchen.cupboard.find(head)
        if found and "of" in described:
            whole = phrase.kitchen.cupboard.find([word for word in described if word not in phrase.tables.articles])
            found = whole if whole and whole.item.part_of else found
        if found and not _count_of_food(phrase, found, words):
            return Noun(start, sized_end, equipment=found)
        further = _after_comma(phrase, sized_end) if sized_end == end and phrase.key(end) == "," else None
        if further and not phrase.kitchen.larder.find(words):
            return further
        part = phrase.kitchen.cupboard.find(described[described.index("of") + 1 :]) if "of" in described else None
        if part and described[0] in phrase.tables.ends and not phrase.kitchen.larder.find(words):
            return Noun(start, sized_end, equipment=part)
    named = tuple([key for key in words if key[0] != "#"]) if "#percent" in words else words
    goods = phrase.kitchen.larder.find(named)
    if goods is None and phrase.key(end) == ",":
        return _described(phrase, start, end)
    return Noun(start, end, goods=goods)


def _after_comma(phrase: Phrase, comma: int) -> Noun | None:
    """`a wide, heavy-bottomed pan`: what describes a piece of equipment before its comma, as words do after it."""
    end = name_end(phrase, comma + 1, sizes=True)
    if phrase.key(end) == ",":
        return _after_comma(phrase, end)
    described = tuple([key for key in phrase.keys[comma + 1 : end] if key[0] != "#"])
    found = phrase.kitchen.cupboard.find(described)
    return Noun(comma + 1, end, equipment=found) if found else None


def _described(phrase: Phrase, start: int, comma: int) -> Noun:
    """`skinless, boneless chicken thighs`: states of a food parted by a comma, if the goods know all of them."""
    end = name_end(phrase, comma + 1)
    goods = phrase.kitchen.larder.find((*phrase.keys[start:comma], *phrase.keys[comma + 1 : end]))
    return Noun(start, end, goods=goods) if goods else Noun(start, comma)


def _count_of_food(phrase: Phrase, found: FoundEquipment, words: tuple[str, ...]) -> bool:
    """`a jar of honey`, and foods that end like equipment: the goods know the whole of it."""
    if phrase.kitchen.larder.find(words):
        return True
    if not found.item.count_unit or "of" not in words:
        return False
    return phrase.kitchen.larder.find(words[words.index("of") + 1 :]) is not None
