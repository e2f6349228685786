"""What could have stood at a place of a clause, in words for cooks; those of a clause are the language's own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from tamis.words import word_lists

# One entry for what a cook thinks of as one thing; the first classes are the likeliest. {} stands for so many words of
# the class, or units.
_WORDS: Mapping[str, str] = {
    "TIME": "a unit of time ({min}, {h})",
    "MASS": "a unit ({g}, {ml}, {tbsp} …)",
    "VOLUME": "a unit ({g}, {ml}, {tbsp} …)",
    "LENGTH": "a length ({cm}, {inch})",
    "DEGREE": "a temperature (`°C`, `°F`)",
    "FOOD": "the name of a food",
    "TOOL": "a piece of equipment",
    "NUMBER": "a number",
    "COMMA": "a comma",
    "CLOSE": "`)`",
    "FOR": "{} and a time",
    "AT": "{} and a temperature",
    "UNTIL": "{} and what to look for",
    "TIMESWORD": "{}",
    "BATCH": "{} or {}",
    "SIZEWORD": "{}, {}, {} …",
    "STATE": "a state such as {} or {}",
    "HEATNOUN": "{} or {}",
    "THE": "{} and what is meant",
    "ANY": "words",
    "$END": "the end of the bracket",
}
_UNITS = ("min", "h", "g", "ml", "tbsp", "cm", "inch")
_MOST = 4


def expected_words(classes: Iterable[str], language: str) -> str:
    """The few likeliest things, parted by commas and *or*: `a unit, the name of a food or a comma`."""
    known = set(classes)
    said = list(dict.fromkeys(_said(kind, words, language) for kind, words in _WORDS.items() if kind in known))[:_MOST]
    if not said:
        return "the end of the bracket"
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} or {said[-1]}"


def _said(kind: str, words: str, language: str) -> str:
    if "{" not in words:
        return words
    from tamis.quantity.measure_words import unit_words

    lists = word_lists(language, "clause")
    own = lists["closed"].get(kind) or lists["open"].get(kind) or ()
    units = {unit: f"`{unit_words(unit, False, language)}`" for unit in _UNITS}
    return words.format(*(f"`{word}`" for word in (*own, "…", "…", "…")), **units)  # a class may have a word only
