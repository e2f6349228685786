"""The nearest known name to an unknown one.

"tabelspoon" should be answered with "tablespoon", but "handful" must not be answered with "half": a wrong
suggestion is worse than none. So a name is near only if at most a third of it differs. The standard
library's matcher costs more to import than this takes to run, and this runs only when something is wrong.
"""

from __future__ import annotations

from collections.abc import Iterable

LONGEST = 60


def nearest(name: str, known: Iterable[str]) -> str | None:
    """The known name with the fewest slips (first of equals); None if more than a third of it, or of one of its words,
    differs: *almond milk* is no misspelt *almond meal*.
    """
    if not 2 < len(name) <= LONGEST:
        return None
    best, limit = None, len(name) // 3
    letters = set(name)
    for candidate in known:
        # A letter that one name lacks costs at least one slip: cheaper to count than the distance.
        if abs(len(candidate) - len(name)) > limit or len(letters.difference(candidate)) > limit:
            continue
        slips = _apart(name, candidate, limit)
        if slips <= limit:
            best, limit = candidate, slips - 1
    return best


def _apart(name: str, candidate: str, limit: int) -> int:
    """The distance of two names, more than `limit` if one of their words is another word."""
    pairs = list(zip(name.split(), candidate.split(), strict=False))
    if len(pairs) < 2 or name.count(" ") != candidate.count(" "):
        return distance(name, candidate, limit)
    total = 0
    for word, other in pairs:
        allowed = len(word) // 3
        far = distance(word, other, allowed)
        if far > allowed:
            return limit + 1
        total += far
    return total


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
