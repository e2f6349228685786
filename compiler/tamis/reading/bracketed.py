"""A line as it would be written with its brackets: `fry for 1 min until fragrant` → `fry [for 1 min] [until fragrant]`.

Loaded only for a line that lacks them. The grammar decides: a stretch of plain words is a clause if it reads as one
without a finding, so what is shown can be copied.
"""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import Cue, Ingredient, Setting, Target, Tending, Time, Tool
from tamis.reading.openers import step_openers
from tamis.reading.plain import plain_of
from tamis.reading.prose import commands
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Clause, Part, Text
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Read, VerbUse

    _Word = tuple[int, int, str]
    _Records = tuple[Read | VerbUse, ...]
    _Found = tuple[int, int, _Records]

# A longer line is shown by the sentences that change.
_LINE = 200
_SPACED = pattern(r"[^\s,;:()!?—]+")
# What a stretch ends at: a mark that is no part of a number or of an abbreviation, and the words between two of them.
_MARK = pattern(r"[,;:()!?—]|\.(?=\s|\Z)")
_LONGEST = 12
_BOUND = ("AND", "OR", "BEFORE")
_NUMBER = pattern(r"\d|[½¼¾⅓⅔⅛⅜⅝⅞]")


class _Openers(NamedTuple):
    """The words that may open a clause; those of a cue and a time; those between two clauses, and in a range."""

    words: frozenset[str]
    cues: frozenset[str]
    times: frozenset[str]
    bound: frozenset[str]
    ranges: frozenset[str]


def _openers(language: str) -> _Openers:
    lists = word_lists(language, "clause")
    found = {**lists["open"], **lists["closed"]}
    bound = frozenset(word for name in _BOUND for word in found[name])
    ranges = frozenset(lists["between"]["range"])
    return _Openers(step_openers(language), frozenset(found["UNTIL"]), frozenset(found["FOR"]), bound, ranges)


def bracketed(parts: Sequence[Part], kitchen: Kitchen) -> str:
    """The line with brackets round what would be clauses, if one of these says how long or until when; else ""."""
    written, said, ends = [], [], False
    for at, part in enumerate(parts):
        if isinstance(part, Text):
            found = list(_found(part.text, kitchen, at + 1 < len(parts)))
            ends = ends or any(isinstance(record, Time | Cue | Target) for _, _, records in found for record in records)
            written.append(part.text)
            said.append(_with_brackets(part.text, found))
        else:
            written.append(f"[{part.text}]")
            said.append(written[-1])
    return _changed("".join(written).strip(), "".join(said).strip()) if ends else ""


def bracketed_text(text: str, kitchen: Kitchen) -> str:
    """A line of plain words with brackets round what would be clauses."""
    return _with_brackets(text, _found(text, kitchen, clause_follows=False))


def _with_brackets(text: str, found: Iterable[_Found]) -> str:
    said, after = "", 0
    for first, last, _ in found:
        said += f"{text[after:first]}[{text[first:last]}]"
        after = last
    return said + text[after:]


def _changed(written: str, said: str) -> str:
    """The line, or of a long one the sentences that get brackets."""
    said = " ".join(said.split())
    if len(said) <= _LINE:
        return said
    pairs = zip(" ".join(written.split()).split(". "), said.split(". "), strict=True)
    return ". ".join(new for old, new in pairs if new != old)


def _found(text: str, kitchen: Kitchen, clause_follows: bool) -> Iterator[_Found]:
    """The clauses that plain words would make, and where they stand."""
    for start, end in _stretches(text, kitchen, clause_follows):
        yield from _clauses(text, start, end, kitchen)


def _stretches(text: str, kitchen: Kitchen, clause_follows: bool) -> Iterator[tuple[int, int]]:
    """The text between marks and verbs: no clause goes over one of these."""
    found = plain_of(text, kitchen).ask(commands)
    verbs = {command.use(0).span for command in found if clause_follows or not command.asks}
    ends = sorted({(mark.start(), mark.end()) for mark in _MARK.finditer(text)} | verbs)
    start = 0
    for first, last in ends:
        if first > start:
            yield start, first
        start = max(start, last)
    yield start, len(text)


def _clauses(text: str, start: int, end: int, kitchen: Kitchen) -> Iterator[_Found]:
    """The clauses of a stretch, from left to right."""
    openers = _openers(kitchen.language)
    words = [(word.start(), word.end(), word[0].lower()) for word in _SPACED.finditer(text, start, end)]
    at = 0
    while at < len(words):
        size, records = _longest(text, words, at, openers, kitchen)
        if records:
            yield words[at][0], words[at + size - 1][1], records
        at += size


def _longest(text: str, words: Sequence[_Word], at: int, openers: _Openers, kitchen: Kitchen) -> tuple[int, _Records]:
    """The longest clause that opens at a word, and of how many words it is; one word and no records if none does."""
    first = words[at][2]
    if first not in openers.words and not _NUMBER.match(first):
        return 1, ()
    last = at + 1
    while last < len(words) and last < at + _LONGEST and not _is_apart(words, at, last, openers):
        last += 1
    for end in range(last, at, -1):
        if words[end - 1][2] not in openers.bound:
            records = _read(text[words[at][0] : words[end - 1][1]], kitchen)
            if records:
                return end - at, records
    return 1, ()


def _is_apart(words: Sequence[_Word], first: int, at: int, openers: _Openers) -> bool:
    """Whether a word opens a clause of its own: a cue goes on to the next time, and between two numbers it is the
    middle of a range."""
    word = words[at][2]
    if word not in openers.words or at == first + 1:
        return False
    if words[first][2] in openers.cues:
        return word in openers.times
    return word not in openers.ranges or not _NUMBER.match(words[at - 1][2])


def _read(text: str, kitchen: Kitchen) -> _Records:
    """The records of a clause that tells the compiler something; none where it cannot be read, or says nothing."""
    findings: list[Diagnostic] = []
    records = read_clause(Clause(text, Span(0, len(text) + 2), kitchen.language), kitchen, findings)
    return records if not findings and all(_counts(record) for record in records) else ()


def _counts(record: object) -> bool:
    """Whether brackets round it would tell the compiler something: food has to be known and measured."""
    if isinstance(record, Ingredient):
        return record.role == "ingredient" and record.goods is not None and record.measured
    if isinstance(record, Tending):
        return record.every is not None
    return isinstance(record, Time | Cue | Setting | Target | Tool)
