"""A line as it would be written with its brackets: `fry for 1 min until fragrant` → `fry [for 1 min] [until fragrant]`.

Loaded only for a line that lacks them. The grammar decides: a stretch of plain words is a clause if it reads as one
without a finding, so what is shown can be copied.
"""

from __future__ import annotations

from functools import cache

from tamis.reading.clause_reader import read_alone
from tamis.reading.clauses import Cue, Ingredient, Setting, Target, Tending, Time, Tool
from tamis.reading.openers import step_openers
from tamis.reading.plain import plain_of
from tamis.reading.prose import commands
from tamis.record import NamedTuple
from tamis.syntax.document import Part, Text
from tamis.syntax.elision import Elision
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Read, VerbUse
    from tamis.reading.plain import Plain

    _Records = tuple[Read | VerbUse, ...]
    _Found = tuple[int, int, _Records]

# A longer line is shown by the sentences that change.
_LINE = 200
# What a stretch ends at, as at a full stop.
_MARKS = frozenset((",", ";", ":", "(", ")", "!", "?", "—"))
_LONGEST = 14
_BOUND = ("AND", "OR", "BEFORE")


class _Openers(NamedTuple):
    """The words that may open a clause; those of a cue and a time; those between two clauses, and in a range."""

    words: frozenset[str]
    cues: frozenset[str]
    times: frozenset[str]
    bound: frozenset[str]
    ranges: frozenset[str]


@cache
def _openers(language: str) -> _Openers:
    lists = word_lists(language, "clause")
    found = {**lists["open"], **lists["closed"]}
    bound = frozenset(word for name in _BOUND for word in found[name])
    ranges = frozenset(lists["between"]["range"])
    parted = Elision(language).parted  # a phrase opens with its first word as that is cut
    words, cues = (frozenset(parted(phrase)[0] for phrase in said) for said in (step_openers(language), found["UNTIL"]))
    return _Openers(words, cues, frozenset(found["FOR"]), bound, ranges)


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
    plain = plain_of(text, kitchen)
    for start, end in _stretches(plain, clause_follows):
        yield from _clauses(plain, start, end)


def _stretches(plain: Plain, clause_follows: bool) -> Iterator[tuple[int, int]]:
    """The tokens between marks and verbs: no clause goes over one of these."""
    ends = {(at, at + 1) for at in range(len(plain)) if _is_mark(plain, at)}
    verbs = {(command.first, command.end) for command in plain.ask(commands) if command.stands(clause_follows)}
    start = 0
    for first, last in sorted(ends | verbs):
        if first > start:
            yield start, first
        start = max(start, last)
    yield start, len(plain)


def _is_mark(plain: Plain, at: int) -> bool:
    """Whether a token ends a stretch: a full stop within an abbreviation does not."""
    return plain.said[at] in _MARKS or (plain.said[at] == "." and not plain.text[plain.ends[at] :][:1].strip())


def _clauses(plain: Plain, start: int, end: int) -> Iterator[_Found]:
    """The clauses of a stretch, from left to right."""
    openers = _openers(plain.kitchen.language)
    at = start
    while at < end:
        last, records = _longest(plain, at, end, openers)
        if records:
            yield plain.starts[at], plain.ends[last - 1], records
        at = last


def _longest(plain: Plain, at: int, end: int, openers: _Openers) -> tuple[int, _Records]:
    """Where the longest clause ends that opens at a token; the next token and no records if none does."""
    if _is_joined(plain, at) or (plain.said[at] not in openers.words and not plain.is_number(at)):
        return at + 1, ()
    last = at + 1
    while last < min(end, at + _LONGEST) and not _is_apart(plain, at, last, openers):
        last += 1
    for behind in range(last, at, -1):
        if plain.said[behind - 1] not in openers.bound and not _is_joined(plain, behind):
            records = _read(plain.slice(at, behind), plain.kitchen)
            if records:
                return behind, records
    return at + 1, ()


def _is_joined(plain: Plain, at: int) -> bool:
    """Whether a token is written on to the one before it, and neither is a mark: *20* in *30–20 min*."""
    if not 0 < at < len(plain) or plain.starts[at] > plain.ends[at - 1]:
        return False
    return not _is_mark(plain, at) and not _is_mark(plain, at - 1)


def _is_apart(plain: Plain, first: int, at: int, openers: _Openers) -> bool:
    """Whether a token opens a clause of its own: a cue goes on to the next time, and between two numbers it is the
    middle of a range."""
    word = plain.said[at]
    if word not in openers.words or at == first + 1:
        return False
    if plain.said[first] in openers.cues:
        return word in openers.times
    return word not in openers.ranges or not plain.is_number(at - 1)


def _read(text: str, kitchen: Kitchen) -> _Records:
    """The records of a clause that tells the compiler something; none where it cannot be read, or says nothing."""
    records, findings = read_alone(text, kitchen)
    return records if not findings and all(_counts(record) for record in records) else ()


def _counts(record: object) -> bool:
    """Whether brackets round it would tell the compiler something: food has to be known and measured."""
    if isinstance(record, Ingredient):
        return record.role == "ingredient" and record.goods is not None and record.measured
    if isinstance(record, Tending):
        return record.every is not None
    return isinstance(record, Time | Cue | Setting | Target | Tool)
