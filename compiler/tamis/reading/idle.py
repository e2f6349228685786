"""Verbs that wait, in lines where they wait for nothing: *leave no lumps*, *rest your hands*, *bring it to the table*.

Loaded only for a line that tells no end of a wait.
"""

from __future__ import annotations

from functools import cache

from tamis.diagnostics import Diagnostic
from tamis.kitchen.verb_words import verb_words
from tamis.reading.clauses import Cue, Target, VerbUse
from tamis.reading.plain import phrases, plain_of
from tamis.reading.plain_amounts import amounts
from tamis.reading.plain_tools import placed_tools
from tamis.reading.prose import STOPS, commands
from tamis.record import NamedTuple
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING
from tamis.words import example, word_lists

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.reading.plain import Phrases, Plain
    from tamis.reading.reading import Event
    from tamis.syntax.document import Part

# *A border of 2 cm*, *about 2 cm of room*: the noun is among so many tokens behind the verb.
_OBJECT = 6
_PLACES = frozenset(("PREP", "INTO", "ONHEAT", "TO", "AT"))
_TO = frozenset(("TO",))
_BESIDE = _PLACES | {"AND", "OR", "FOR", "UNTIL", "WHILE", "BEFORE", "ADVERB", "THE", "ARTICLE"}


class IdleWords(NamedTuple):
    """The words of a language; `grammar/words/<language>/prose.toml` says what each is."""

    nothing: Phrases
    some: Phrases
    how: Phrases
    room: Phrases
    falls: Phrases
    states: Phrases
    own: Phrases
    body: Phrases
    together: Phrases
    carried: tuple[Phrases, Phrases, Phrases]


@cache
def _words(language: str) -> IdleWords:
    lists = word_lists(language, "prose")["idle"]
    said = {key: phrases(words, language) for key, words in lists.items()}
    return IdleWords(
        said["no"],
        said["some"],
        said["how"],
        said["room"],
        said["falls"],
        said["states"],
        said["own"],
        said["body"],
        said["together"],
        (said["to"], said["the"], said["places"]),
    )


def _is_bracketed(parts: Sequence[Part], kitchen: Kitchen) -> bool:
    from tamis.reading.bracketed import bracketed  # few lines ask

    return bool(bracketed(parts, kitchen))


def without_idle(
    parts: Sequence[Part], events: list[Event], kitchen: Kitchen, findings: list[Diagnostic]
) -> list[Event]:
    """The events without the verbs that wait for nothing, in a line that tells no end of a wait. Where nobody can say
    whether they do, the cook is asked."""
    if any(isinstance(event, Cue | Target) for event in events):
        return events
    uses = [event for event in events if isinstance(event, VerbUse) and event.verb.waits]
    idle = [use for use in uses if _waits_for_nothing(use, parts, kitchen)]
    for use in uses:
        if use not in idle and not _surely_waits(use, parts, kitchen) and not _is_bracketed(parts, kitchen):
            idle.append(use)
            findings.append(_unclear(use, kitchen))
    return [event for event in events if event not in idle]


def without_carried(
    parts: Sequence[Part], events: list[Event], kitchen: Kitchen, _findings: list[Diagnostic]
) -> list[Event]:
    """The events without what is only carried, in a line with a time: *rest for 5 min and bring to table*."""
    uses = [event for event in events if isinstance(event, VerbUse) and event.verb.waits and event.verb.carries]
    carried = [use for use in uses if _waits_for_nothing(use, parts, kitchen)]
    return [event for event in events if event not in carried] if carried else events


def _unclear(use: VerbUse, kitchen: Kitchen) -> Diagnostic:
    message = f"“{use.text}” may mean a wait; here it is not treated as one"
    wait = example(kitchen.language, "wait", verb=use.verb.name, time="30 min")
    until, keep = (example(kitchen.language, key) for key in ("until_any", "lid"))
    hint = f"if it waits, say how long: {wait}, or {until}; if not, another verb says so, as in {keep}"
    return Diagnostic("verb-without-time", "warning", use.span, message, hint)


def _waits_for_nothing(use: VerbUse, parts: Sequence[Part], kitchen: Kitchen) -> bool:
    for number, part in enumerate(parts):
        if isinstance(part, Clause) or part.span.end <= use.span.start:
            continue
        plain, behind = plain_of(part.text, kitchen), use.span.end - part.span.start
        at = plain.after(behind)
        end = next((command.first for command in plain.ask(commands) if command.first >= at), len(plain))
        if any(amount.kind == "time" and at <= amount.first < end for amount in plain.ask(amounts)):
            return False  # how long it waits is told, but in no bracket
        if behind > 0 and _has_idle_object(plain, at, use.verb, kitchen):
            return True
        last = number + 1 == len(parts)
        if any(_goes_on_without(plain, place, use.verb, last, kitchen) for place in range(at, end)):
            return True
        if end < len(plain):
            return False
    return False


def _surely_waits(use: VerbUse, parts: Sequence[Part], kitchen: Kitchen) -> bool:
    """Whether a verb that lets stands alone, or with what is let and how: *leave it well covered in its tin*.

    More words may say what nobody waits for: *let it run down the sides*, *leave one white*."""
    part = next((part for part in parts if part.span.start <= use.span.start < part.span.end), None)
    if not use.verb.lets or part is None or isinstance(part, Clause):
        return True
    plain = plain_of(part.text, kitchen)
    at = plain.after(use.span.end - part.span.start)
    if at < len(plain) and plain.is_count(at):
        return False
    if at >= len(plain) or plain.said[at] not in verb_words(kitchen.language).before:
        return True
    at += 1
    while at < len(plain) and (size := plain.phrase(_words(kitchen.language).how, at)):
        at += size
    return not plain.is_word(at) or bool(plain.is_a(at, _BESIDE)) or _waits(plain, at, kitchen)


def _waits(plain: Plain, at: int, kitchen: Kitchen) -> bool:
    """Whether a word is work that takes its time (*stand*), or how something is left (*covered*)."""
    found = kitchen.verbs.match(plain.said, at)
    return bool(found and found[0].waits) or kitchen.verbs.participle(plain.said[at]) is not None


def _has_idle_object(plain: Plain, at: int, verb: Verb, kitchen: Kitchen) -> bool:
    """Whether right behind the verb stands what nobody waits for: nothing, hands, room, what runs off, a tool."""
    words = _words(kitchen.language)
    own = plain.phrase(words.own, at)
    if plain.phrase(words.nothing, at) or (own and plain.phrase(words.body, at + own)):
        return True
    if not (verb.lets or verb.stands):
        return False
    if plain.phrase(words.some, at):
        return True
    for place in range(at, min(len(plain), at + _OBJECT)):
        if plain.phrase(words.room, place) or (verb.lets and plain.phrase(words.falls, place)):
            return True
        if plain.said[place] in STOPS or plain.is_a(place, _PLACES):
            break
    starts = plain.starts[at : at + 1]
    return any(
        [placed.span.start] == starts and placed.tool.equipment.kind not in ("vessel", "station")
        for placed in plain.ask(placed_tools)
    )


def _goes_on_without(plain: Plain, at: int, verb: Verb, last: bool, kitchen: Kitchen) -> bool:
    """Whether a place behind the verb tells that food is carried (*to the table*), brought *together*, or left as it is
    (*leave the skin on*). What lets or stands has no way to go."""
    words = _words(kitchen.language)
    if verb.lets and (size := plain.phrase(words.states, at)):
        return _ends(plain, at + size, last)
    if verb.carries and (size := plain.phrase(words.together, at)):
        return not plain.is_a(at + size, _TO)
    if verb.lets or verb.stands:
        return False
    for said in words.carried:
        size = plain.phrase(said, at)
        if not size:
            return False
        at += size
    return True


def _ends(plain: Plain, at: int, last: bool) -> bool:
    """Whether nothing more is said of it."""
    return plain.said[at] in STOPS if at < len(plain) else last
