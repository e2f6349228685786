"""One spelling for one thing: the singular forms of kitchen words.

A cook writes *two loaves*, *6 egg yolks*, *chillies*; the lists of goods and equipment hold one name
each. A general stemmer turns *molasses* into nonsense, so this is a handful of rules for English nouns
and a short list of exceptions.
"""

from __future__ import annotations

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
