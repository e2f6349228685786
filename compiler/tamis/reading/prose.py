"""Verbs in plain words, read only in the place of an imperative.

A word of the verb list counts where a line starts, after a clause, after a comma, after *and* or *then*; adverbs are
looked through. Every other word is prose: *the dough in a warm place* warms nothing.
"""

from __future__ import annotations

from itertools import islice

from tamis.kitchen.equipment import Cupboard
from tamis.kitchen.verbs import Verb, Verbs
from tamis.patterns import pattern
from tamis.reading.clauses import Tool, VerbUse
from tamis.reading.tables import Tables, match
from tamis.source import Span
from tamis.syntax.document import Clause

_TOKEN = pattern(r"[^\W\d_][\w’'-]*|[^\w\s]")
_OPENS = frozenset((",", ";", ":", ".", "(", "and", "then", "or", "but", "—", "–"))
_THROUGH = frozenset(
    ("then", "now", "just", "first", "next", "again", "carefully", "and", "you", "can", "do", "not", "slowly")
)
_STATION = pattern(r"\s+(?:(?:the|your)\s+)?([^\W\d_]+)\b")
_TO = pattern(r"\bto ([^\W\d_]+(?: [^\W\d_]+){0,4}),?\s*\Z")
_IN_THE = pattern(r"\bin(?:to)? (?:the|a|your) ([^\W\d_]+)")
_LAST_WORD = pattern(r"[^\W\d_][\w-]*\Z")
_BETWEEN = frozenset(("well", "lightly", "generously", "with", "in", "by"))


def verbs_in(text: str, span: Span, verbs: Verbs, starts_open: bool, clause_follows: bool) -> list[VerbUse]:
    """The verbs of a stretch of prose. `starts_open`: an imperative may stand at its very start."""
    uses: list[VerbUse] = []
    said = text.strip()
    if not said or said in _OPENS:  # most of what stands between two clauses
        return uses
    words = [token.lower() for token in _TOKEN.findall(text)]
    is_open = starts_open
    after = 0  # the last verb
    for at, word in enumerate(words):
        if at < after:
            continue
        found = verbs.match(words, at) if is_open else None
        if found and _is_verb(found[0], words, at, found[1], clause_follows):
            after = at + found[1]
            tokens = list(islice(_TOKEN.finditer(text), at, after))
            start, end = tokens[0].start(), tokens[-1].end()
            uses.append(VerbUse(found[0], text[start:end], Span(span.start + start, span.start + end)))
            is_open = False
        else:
            is_open = word in _OPENS or (is_open and (word in _THROUGH or word.endswith("ly")))
    return uses


def wait_before(text: str, end: int, verbs: Verbs) -> VerbUse | None:
    """What is waited for in *turn out onto a rack to cool completely*, right before the clause that says how long.
    `end` is where the text ends in the file."""
    found = _TO.search(text) if "to " in text else None
    if found is None:
        return None
    words = found[1].lower().split()
    verb = verbs.match(words, 0)
    if verb is None or not verb[0].waits:
        return None
    said = " ".join(found[1].split()[: verb[1]])
    start = end - len(text) + found.start(1)
    return VerbUse(verb[0], said, Span(start, start + len(said)))


def station_after(use: VerbUse, text: str, span: Span, cupboard: Cupboard) -> Tool | None:
    """The oven or grill that a verb sets in plain words, as it would stand in a bracket: *Preheat the oven to*."""
    if not use.verb.sets:
        return None
    named = _STATION.match(text, use.span.end - span.start)
    found = cupboard.find([named[1].lower()]) if named else None
    if named is None or found is None or found.item.kind != "station":
        return None
    place = Span(span.start + named.start(1), span.start + named.end(1))
    return Tool(Clause(named[1], place), named[1], found.item, definite=True)


def cold_place(text: str, start: int, cupboard: Cupboard) -> Tool | None:
    """The fridge or freezer that food stands in, named in plain words or within a time: *in the fridge for 1 h*.
    `start` is where the text begins in the file."""
    if " the " not in text and " a " not in text and " your " not in text:
        return None
    for named in _IN_THE.finditer(text):
        found = cupboard.find([named[1].lower()])
        if found is not None and found.item.kind == "station" and found.item.station in ("fridge", "freezer"):
            place = Span(start + named.start(1), start + named.end(1))
            return Tool(Clause(named[1], place), named[1], found.item, preposition="in", definite=True)
    return None


def _is_verb(verb: Verb, words: list[str], at: int, length: int, clause_follows: bool) -> bool:
    """Whether a word that is also a noun or adjective (cream, warm, toast) is a command here: something must follow."""
    if not verb.doubtful or length > 1 or (at == 0 and length < len(words)):
        return True
    after = at + length
    if after >= len(words):
        return clause_follows
    return words[after].isalpha() and words[after] not in ("and", "or")


def purpose_before(text: str, verbs: Verbs) -> str:
    """The purpose that a participle right before a bracket gives: `a bench dusted with [rye flour]`."""
    words = text.split()
    while len(words) > 1 and words[-1] in _BETWEEN:
        words.pop()
    found = _LAST_WORD.search(words[-1]) if words else None
    verb = verbs.participle(found[0].lower()) if found else None
    return verb.purpose if verb else ""


def preposition_before(text: str, tables: Tables) -> str:
    """The preposition that stands right before a bracket: `blend with [2 tbsp of the oil]`."""
    words = tuple(text.lower().split()[-4:])
    for start in range(len(words)):
        found = match(tables.prepositions, words, start)
        if found and start + found[1] == len(words):
            return found[0]
    return ""
