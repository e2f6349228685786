"""What could have stood at a place of a clause, in words for cooks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

# One entry for what a cook thinks of as one thing; the first classes are the likeliest.
_WORDS: Mapping[str, str] = {
    "TIME": "a unit of time (`min`, `h`)",
    "MASS": "a unit (`g`, `ml`, `tbsp` …)",
    "VOLUME": "a unit (`g`, `ml`, `tbsp` …)",
    "LENGTH": "a length (`cm`, `inch`)",
    "DEGREE": "a temperature (`°C`, `°F`)",
    "FOOD": "the name of a food",
    "TOOL": "a piece of equipment",
    "NUMBER": "a number",
    "COMMA": "a comma",
    "CLOSE": "`)`",
    "FOR": "`for` and a time",
    "AT": "`at` and a temperature",
    "UNTIL": "`until` and what to look for",
    "TIMESWORD": "`times`",
    "BATCH": "`batches` or `loads`",
    "SIZEWORD": "`thick`, `long`, `wide` …",
    "STATE": "a state such as `boil` or `simmer`",
    "HEATNOUN": "`heat` or `speed`",
    "THE": "`the` and what is meant",
    "ANY": "words",
    "$END": "the end of the clause",
}
_MOST = 4


def expected_words(classes: Iterable[str]) -> str:
    """The few likeliest things, parted by commas and *or*: `a unit, the name of a food or a comma`."""
    known = set(classes)
    said = list(dict.fromkeys(words for kind, words in _WORDS.items() if kind in known))[:_MOST]
    if not said:
        return "the end of the clause"
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} or {said[-1]}"
