"""One spelling for one thing: singular forms and near misses of kitchen words.

A cook writes *two loaves*, *6 egg yolks*, *chillies*; the lists of goods and equipment hold one name
each. A general stemmer turns *molasses* into nonsense, so this is a handful of rules for English nouns
and a short list of exceptions.
"""

from __future__ import annotations

from collections.abc import Iterable

from tamis.quantity.near import distance

# Plurals that the rules below would get wrong. "-ves" is "-ve" (cloves, olives) unless it stands here.
_IRREGULAR = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "knives": "knife",
    "shelves": "shelf",
    "chillies": "chilli",
    "chilies": "chili",
    "cookies": "cookie",
    "brownies": "brownie",
    "geese": "goose",
    "quiches": "quiche",
    "brioches": "brioche",
    "feet": "foot",
    "shoes": "shoe",
    "toes": "toe",
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
