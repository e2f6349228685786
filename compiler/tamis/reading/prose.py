"""Verbs in plain words, read only in the place of an imperative.

A word of the verb list counts where a line starts, after a clause, after a comma, after *and* or *then*; adverbs are
looked through. Every other word is prose: *the dough in a warm place* warms nothing.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from tamis.kitchen.verbs import Verb, Verbs
from tamis.reading.clauses import VerbUse
from tamis.reading.tables import Tables
from tamis.source import Span

if TYPE_CHECKING:
    from collections.abc import Iterator

_TOKEN = re.compile(r"[^\W\d_][\w’'-]*|[^\w\s]")
_OPENS = frozenset((",", ";", ":", ".", "(", "and", "then", "or", "but", "—", "–"))
_THROUGH = frozenset(
    ("then", "now", "just", "first", "next", "again", "carefully", "and", "you", "can", "do", "not", "slowly")
)
_BEFORE_BRACKET = re.compile(r"([^\W\d_][\w-]*)(?:\s+(?:well|lightly|generously|with|in|by))*\s*\Z")


def verbs_in(text: str, span: Span, verbs: Verbs, starts_open: bool, clause_follows: bool) -> Iterator[VerbUse]:
    """The verbs of a stretch of prose. `starts_open`: an imperative may stand at its very start."""
    found = list(_TOKEN.finditer(text))
    words = [token.group().lower() for token in found]
    is_open = starts_open
    at = 0
    while at < len(words):
        word = words[at]
        match = verbs.match(words, at) if is_open else None
        if match and _is_verb(match[0], words, at, match[1], clause_follows):
            verb, length = match
            start, end = found[at].start(), found[at + length - 1].end()
            yield VerbUse(verb, text[start:end], Span(span.start + start, span.start + end))
            at += length
            is_open = False
            continue
        is_open = word in _OPENS or (is_open and (word in _THROUGH or word.endswith("ly")))
        at += 1


def _is_verb(verb: Verb, words: list[str], at: int, length: int, clause_follows: bool) -> bool:
    """Whether a word that is also a noun or adjective (cream, warm, toast) is a command here: something must follow."""
    if not verb.doubtful or (at == 0 and length < len(words)):
        return True
    after = at + length
    if after >= len(words):
        return clause_follows
    return words[after].isalpha() and words[after] not in ("and", "or")


def purpose_before(text: str, verbs: Verbs) -> str:
    """The purpose that a participle right before a bracket gives: `a bench dusted with [rye flour]`."""
    found = _BEFORE_BRACKET.search(text)
    verb = verbs.participle(found[1].lower()) if found else None
    return verb.purpose if verb else ""


def preposition_before(text: str, tables: Tables) -> str:
    """The preposition that stands right before a bracket: `blend with [2 tbsp of the oil]`."""
    words = text.lower().split()
    for length in (3, 2, 1):
        last = tuple(words[-length:])
        if len(last) == length and any(last == phrase for phrase, _ in tables.prepositions.get(last[0], ())):
            return " ".join(last)
    return ""
