"""The nearest known name to an unknown one.

"tabelspoon" should be answered with "tablespoon", but "handful" must not be answered with "half": a wrong
suggestion is worse than none. So a name is near only if at most a third of it differs. The standard
library's matcher costs more to import than this takes to run, and this runs only when something is wrong.

Of the thousands of names of a kitchen, `Known` finds the few that are worth a comparison: those with most of the
letters.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

LONGEST = 60
_BYTE = 256


class Known:
    """Names among which near ones are found without a look at each.

    A set of names is an integer with a bit for each name, the first name's bit the highest. There is one for each
    length and, made when first asked for, one for each number of a letter: those with two *t* or more. Some twenty
    operations on these count for all names at once how many letters they have in common with a word.
    """

    __slots__ = ("_by_length", "_by_letter", "_letters", "names")

    def __init__(self, names: Iterable[str]) -> None:
        self.names = tuple(name for name in names if len(name) < _BYTE)
        lengths = bytes(map(len, self.names))
        self._by_length = {length: _set_of(lengths, length, length) for length in set(lengths)}
        self._letters = frozenset("".join(self.names))
        self._by_letter: dict[str, list[int]] = {}

    def within(self, word: str, limit: int) -> Iterator[str]:
        """In their order, the names that so many slips may make of a word: all that they can, and a few more."""
        lengths = range(len(word) - limit, len(word) + limit + 1)
        sized = [(length, names) for length, names in self._by_length.items() if length in lengths]
        common = self._in_common(word) if sized else []
        found = 0
        for length, names in sized:
            # A slip spoils at most one letter of each.
            found |= _counted(common, max(0, len(word) - limit, length - limit), names)
        while found:
            size = found.bit_length()
            yield self.names[-size]
            found ^= 1 << (size - 1)

    def _in_common(self, word: str) -> list[int]:
        """How many letters each name has in common with a word, as binary digits: the ones first, then the twos …"""
        digits: list[int] = []
        for letter, times in Counter(word).items():
            for names in self._with(letter)[:times]:
                for at, digit in enumerate(digits):
                    digits[at] = digit ^ names
                    names &= digit
                if names:
                    digits.append(names)
        return digits

    def _with(self, letter: str) -> list[int]:
        """The names with at least one, two … of a letter."""
        if letter not in self._letters:
            return []
        if letter not in self._by_letter:
            counts = bytes(name.count(letter) for name in self.names)
            self._by_letter[letter] = [_set_of(counts, least, _BYTE - 1) for least in range(1, max(counts) + 1)]
        return self._by_letter[letter]


def _set_of(counts: bytes, least: int, most: int) -> int:
    """The names whose count lies within these bounds."""
    digits = b"0" * least + b"1" * (most + 1 - least) + b"0" * (_BYTE - 1 - most)
    return int(counts.translate(digits), 2)


def _counted(digits: list[int], least: int, names: int) -> int:
    """Those of the names whose number, in binary digits, is no less."""
    more, equal = 0, names
    for at in reversed(range(max(len(digits), least.bit_length()))):
        digit = digits[at] if at < len(digits) else 0
        if least >> at & 1:
            equal &= digit
        else:
            more |= equal & digit
            equal &= ~digit
    return more | equal


def nearest(name: str, known: Iterable[str] | Known) -> str | None:
    """The known name with the fewest slips (first of equals); None if more than a third of it, or of one of its words,
    differs: *almond milk* is no misspelt *almond meal*.
    """
    if not 2 < len(name) <= LONGEST:
        return None
    best, limit = None, len(name) // 3
    letters = set(name)
    for candidate in known.within(name, limit) if isinstance(known, Known) else known:
        # A letter that one name lacks costs at least one slip: cheaper to count than the distance.
        if abs(len(candidate) - len(name)) > limit or len(letters.difference(candidate)) > limit:
            continue
        slips = _apart(name, candidate, limit)
        if slips <= limit:
            best, limit = candidate, slips - 1
    return best


_SHORT = 4
_SPLIT = 2


def is_slip(name: str, near: str) -> bool:
    """Whether a near name is plainly the same one misspelt, and not a neighbour in a long list: no word more or less
    (*blackcurrant jelly*, but *butter milk*), and no other letter in a word of four (*sago* and *sage*)."""
    words, others = name.split(), near.split()
    if len(words) != len(others):
        return distance("".join(words), "".join(others), _SPLIT) <= _SPLIT
    return all(
        len(word) != len(other) or len(word) > _SHORT or sorted(word) == sorted(other)
        for word, other in zip(words, others, strict=True)
    )


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
