"""The nearest known word to an unknown one.

"tabelspoon" should be answered with "tablespoon", but "handful" must not be answered with "half": a wrong
suggestion is worse than none. So a word is near only if at most a third of it differs. The standard
library's matcher costs more to import than this takes to run, and this runs only when something is wrong.
"""

from __future__ import annotations

from collections.abc import Iterable

LONGEST = 40


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word with the fewest slips (first of equals); None if more than a third of it differs."""
    if not 2 < len(word) <= LONGEST:
        return None
    best, least = None, len(word) // 3 + 1
    for candidate in known:
        if abs(len(candidate) - len(word)) < least:
            slips = distance(word, candidate)
            if slips < least:
                best, least = candidate, slips
    return best


def distance(one: str, other: str, limit: int | None = None) -> int:
    """How many letters must be put in, left out, changed or swapped to make one word the other.

    With a `limit`, `limit + 1` is the answer as soon as it must be more.
    """
    if limit is not None and abs(len(one) - len(other)) > limit:
        return limit + 1
    before: list[int] = []
    row = list(range(len(other) + 1))
    for i, letter in enumerate(one):
        earlier, before, row = before, row, [i + 1]
        for j, wanted in enumerate(other):
            cost = min(before[j + 1] + 1, row[j] + 1, before[j] + (letter != wanted))
            if i and j and letter == other[j - 1] and one[i - 1] == wanted:
                cost = min(cost, earlier[j - 1] + 1)
            row.append(cost)
        if limit is not None and min(row) > limit:
            return limit + 1
    return row[-1] if limit is None else min(row[-1], limit + 1)
