"""Counts, nouns and units of a scaled text in the number that fits."""

from __future__ import annotations

from tamis.quantity.amount import Amount
from tamis.quantity.display import number
from tamis.quantity.measure_words import measure_words, unit_words
from tamis.quantity.nouns import nouns
from tamis.table.scaled import countable


def count_text(value: Amount, language: str, hedged: bool = False) -> str:
    """A number of portions or pieces: "6", "9–13", "about 2¾"; `hedged`: the words before it say *about* already."""
    lo, hi = countable(value.lo), countable(value.hi)
    shown = number(lo) if lo == hi else f"{number(lo)}–{number(hi)}"
    return shown if hedged or (lo, hi) == value else measure_words(language).about.format(measure=shown)


def noun_for(noun: str, value: Amount, language: str) -> str:
    """A yield's noun in the number that fits: "1 loaf", "3 loaves"."""
    rules = nouns(language)
    one = rules.one(noun)
    return rules.plural(one) if value.hi > 1 else one


def unit_for(spelling: str, unit: str, many: bool, language: str) -> str:
    """A unit's spelling in the number that fits; an abbreviation stays as it is."""
    single, several = unit_words(unit, False, language), unit_words(unit, True, language)
    if single != several and spelling.lower() in (single, several):
        return several if many else single
    return spelling
