"""The singular forms of kitchen words."""

from __future__ import annotations

from tamis.quantity.nouns import nouns


def singular(word: str, language: str = "en") -> str:
    """The singular of a lower-case noun; a word that is no plural comes back unchanged."""
    return nouns(language).singular(word)
