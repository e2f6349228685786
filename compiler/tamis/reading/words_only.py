"""Brackets round plain words: where they hold nothing that the kitchen knows, nothing is lost but what they say.

`[over a slow fire]`, `[for the last time]`: such words are printed, and a warning says that nothing is taken from
them. It stays an error where they may be meant for more: a number, a measure, a heat, a food, a tool, a wait, what to
look for, what the recipe makes, or a slip of one of these.

Loaded only where a clause was refused.
"""

from __future__ import annotations

from functools import cache

from tamis.quantity.near import distance
from tamis.quantity.nouns import nouns
from tamis.quantity.number import parse as parse_number
from tamis.reading.clause import WORDS_ONLY
from tamis.reading.clauses import Naming
from tamis.reading.tables import match
from tamis.typed import TYPE_CHECKING
from tamis.words import example, word_lists

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clause import NodeKind
    from tamis.reading.phrase import Phrase
    from tamis.reading.reading import ComponentRead
    from tamis.syntax.document import Document

_LONGEST = 4
"""Words in the name of a food or a tool."""
_LEAST_SLIP = 5
"""Letters of a word that is worth a look for a slip."""
# Classes whose words tell a time, a heat, a share, a repeat or what to look for, wherever they stand.
_TELLING: frozenset[NodeKind] = frozenset((
    "UNTIL", "ORUNTIL", "FRACTION", "SETWORD", "HEATNOUN", "ROOM", "OFFHEAT", "BELOWBOIL", "OVERNIGHT", "SPAN",
    "COUPLE", "EVERY", "EVERYOTHER", "REPEAT", "TWICE", "TIMESWORD", "WITHIN", "KEEPWARM", "MEANWHILE",
))  # fmt: skip


def is_words_only(phrase: Phrase) -> bool:
    """Whether a clause holds words that name nothing, and none that is nearly such a name."""
    keys = phrase.keys
    if not keys or keys[0] in phrase.tables.the or not all(key[:1].isalpha() or key == "," for key in keys):
        return False
    if match(phrase.tables.hints, keys, 0):
        return False
    if any(f" {said} " in f" {' '.join(keys)} " for said in _telling(phrase.kitchen.language)):
        return False
    if any(_waits(phrase.kitchen, keys[at:]) for at in _beginnings(phrase)):
        return False
    return not any(_is_known(phrase.kitchen, words) for words in _stretches(keys)) and not _is_slip(phrase)


@cache
def _telling(language: str) -> tuple[str, ...]:
    lists = word_lists(language, "clause")
    named = {**lists["closed"], **lists["open"]}
    return tuple(phrase for name in sorted(_TELLING) for phrase in named.get(name, ()))


@cache
def _of_clauses(language: str) -> frozenset[str]:
    """The single words of all classes: *often* is no slip for *soften*."""
    lists = word_lists(language, "clause")
    phrases = (phrase for table in (lists["closed"], lists["open"]) for named in table.values() for phrase in named)
    return frozenset(word for phrase in phrases for word in phrase.split(" "))


def _beginnings(phrase: Phrase) -> list[int]:
    """Where work may be told: at the first word, and behind a comma or *and*."""
    joined = phrase.tables.ands | set(phrase.tables.then) | {","}
    return [0, *(at + 1 for at, key in enumerate(phrase.keys) if key in joined)]


def _waits(kitchen: Kitchen, keys: Sequence[str]) -> bool:
    found = kitchen.verbs.match(keys, 0)
    return found is not None and found[0].waits


def _stretches(keys: Sequence[str]) -> Iterator[tuple[str, ...]]:
    for at in range(len(keys)):
        for size in range(1, min(_LONGEST, len(keys) - at) + 1):
            yield tuple(keys[at : at + size])


def _is_known(kitchen: Kitchen, words: tuple[str, ...]) -> bool:
    """Whether words are a number, a unit, a piece, a food or a tool."""
    if len(words) == 1 and (
        parse_number(words[0], kitchen.language) is not None
        or (len(words[0]) > 1 and kitchen.units.get(words[0]) is not None)
        or kitchen.cupboard.count_word(words[0])
    ):
        return True
    return kitchen.cupboard.find(words) is not None or kitchen.larder.find(words) is not None


def _is_slip(phrase: Phrase) -> bool:
    """Whether one letter makes the first word work, or the last one a food, a tool or a unit: *often* is no slip for
    *soften*."""
    kitchen, own = phrase.kitchen, _of_clauses(phrase.kitchen.language)
    asked = [(phrase.keys[0], (kitchen.verbs,)), (phrase.keys[-1], (kitchen.larder, kitchen.cupboard, kitchen.units))]
    for word, lists in asked:
        if len(word) >= _LEAST_SLIP and word not in own:
            near = (known.near(word) for known in lists)
            if any(name and distance(word, name, 1) <= 1 for name in near):
                return True
    return False


def with_made(
    findings: list[Diagnostic], document: Document, components: Sequence[ComponentRead], language: str
) -> None:
    """Plain words that name what the recipe makes are an error after all: `Cover [with ragout]`, where that is a
    heading."""
    one = nouns(language).singular
    made = {one(name.lower().split()[-1]): name for name in _names(components) if name.split()}
    for at, finding in enumerate(findings):
        if finding.rule == WORDS_ONLY:
            said = document.source.slice(finding.span).strip("[] ")
            name = next((made[one(word)] for word in said.lower().split() if one(word) in made), "")
            if name:
                hint = f"if what is made here is meant, write {example(language, 'the', name=name.lower())}"
                message = f"“{said}” is not recognised"
                findings[at] = finding._replace(rule="clause-role", severity="error", message=message, hint=hint)


def _names(components: Sequence[ComponentRead]) -> Iterator[str]:
    """What the recipe calls its components, and what it names on the way."""
    for component in components:
        yield component.name
        for step in component.steps:
            for line in step.actions:
                yield from (event.name for event in line.events if isinstance(event, Naming))
