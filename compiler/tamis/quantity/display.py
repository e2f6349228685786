"""Everything measured, as a cook reads it: the one module to import for printing quantities.

Numbers and ranges, cups and spoons, weights, lengths of time have files of their own beside this one; here
they are gathered, with temperatures and measures as somebody wrote them.
"""

from __future__ import annotations

from tamis.quantity.measure import Measure
from tamis.quantity.measure_words import DECIMAL, unit_words
from tamis.quantity.nouns import nouns
from tamis.quantity.numerals import amount, decimal, decimals, number, rounded
from tamis.quantity.spoons import Spoons, kitchen_volume, quarts, single_spoon, spoons
from tamis.quantity.temperature_text import limit_c, limit_f, oven_c, oven_f, temperature_c, temperature_f
from tamis.quantity.times import duration, duration_range, wait
from tamis.quantity.weights import grams, millilitres, pounds_ounces

__all__ = [
    "Spoons", "amount", "decimal", "decimals", "duration", "duration_range", "grams", "kitchen_volume",
    "limit_c", "limit_f", "millilitres", "number", "oven_c", "oven_f", "plural", "pounds_ounces", "quarts", "rounded",
    "single_spoon", "spoons", "temperature_c", "temperature_f", "unit_words", "wait", "written",
]  # fmt: skip


def written(measure: Measure, language: str) -> str:
    """A measure as a cook writes it: "480 g", "1½ cups", "2–3 cloves", "½ imperial pint", "6" for pieces."""
    if not measure.unit:
        return amount(measure.amount)
    shown = decimals(measure.amount) if measure.unit in DECIMAL else amount(measure.amount)
    return f"{shown} {unit_words(measure.unit, measure.amount.hi > 1, language)}"


def plural(word: str, language: str) -> str:
    """The plural of a count word."""
    return nouns(language).plural(word)
