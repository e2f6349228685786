"""One spelling for one thing: singular forms and near misses of kitchen words.

A cook writes *two loaves*, *6 egg yolks*, *chillies*; the lists of goods and equipment hold one name
each. A general stemmer turns *molasses* into nonsense, so this is a handful of rules for English nouns
and a short list of exceptions.
"""

from __future__ import annotations

from collections.abc import Iterable

# Plurals that the rules below would get wrong. "-ves" is "-ve" (cloves, olives) unless it stands here.
_IRREGULAR = {
    "leaves": "leaf", "loaves": "loaf", "halves": "half", "knives": "knife", "shelves": "shelf",
    "chillies": "chilli", "chilies": "chili", "cookies": "cookie", "brownies": "brownie", "geese": "goose",
    "quiches": "quiche", "brioches": "brioche", "feet": "foot", "shoes": "shoe", "toes": "toe",
}
# Words that end like a plural and are none.
_UNCHANGED = frozenset({"molasses", "gas", "lens", "series", "gras", "herbes"})


def singular(word: str) -> str:
    """Return the singular of a lower-case noun; a word that is no plural comes back unchanged."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if not word.endswith("s") or len(word) < 4 or word in _UNCHANGED or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("oes", "ches", "shes", "xes", "sses", "zzes")):
        return word[:-2]
    return word[:-1]


def distance(left: str, right: str, limit: int) -> int:
    """Return the edit distance (a swap of neighbours counts one), or ``limit + 1`` once it must be more."""
    if abs(len(left) - len(right)) > limit:
        return limit + 1
    before: list[int] = []
    row = list(range(len(right) + 1))
    for i, a in enumerate(left, 1):
        above, row, oldest = row, [i], before
        for j, b in enumerate(right, 1):
            best = min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (a != b))
            if i > 1 and j > 1 and a == right[j - 2] and b == left[i - 2]:
                best = min(best, oldest[j - 2] + 1)
            row.append(best)
        before = above
        if min(row) > limit:
            return limit + 1
    return min(row[-1], limit + 1)


def nearest(name: str, known: Iterable[str]) -> str | None:
    """Return the known name nearest in spelling, if no word of it is farther off than a third of its length.

    Word by word, because *almond milk* is no misspelt *almond meal*. Of several equally near, the first
    in the order given.
    """
    best, limit = None, len(name) // 3
    letters = set(name)
    for candidate in known:
        # A letter that one name lacks costs at least one edit: cheaper to count than the distance.
        if abs(len(candidate) - len(name)) > limit or len(letters.difference(candidate)) > limit:
            continue
        far = _apart(name, candidate, limit)
        if far <= limit:
            best, limit = candidate, far - 1
            if far == 0:
                break
    return best


def _apart(name: str, candidate: str, limit: int) -> int:
    """Return the distance of two names, more than `limit` if one of their words is another word."""
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
