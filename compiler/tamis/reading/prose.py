"""Verbs in plain words, read only in the place of an imperative.

A word of the verb list counts where a line starts, after a clause, after a comma, after *and* or *then*; adverbs are
looked through. Every other word is prose: *the dough in a warm place* warms nothing.
"""

from __future__ import annotations

import re
from functools import cache
from itertools import islice

from tamis.patterns import pattern
from tamis.reading.clauses import Cue, Target, Tool, VerbUse
from tamis.reading.tables import Tables, match
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of, word_lists

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.reading.reading import Event
    from tamis.syntax.document import Part, Text

_TOKEN = pattern(r"[^\W\d_][\w’'-]*|[^\w\s]")
_OPENS = (",", ";", ":", ".", "(", "—", "–")
# The classes of words that stand before a name or part two of them, and never for work.
_SMALL = (
    "ARTICLE",
    "THE",
    "OF",
    "FOR",
    "TO",
    "AT",
    "PREP",
    "INTO",
    "UNTIL",
    "OR",
    "AND",
    "EACH",
    "ALL",
    "WHILE",
    "BEFORE",
)
_LAST_WORD = pattern(r"[^\W\d_][\w-]*\Z")


class ProseWords(NamedTuple):
    """What is asked of plain words in a language; `grammar/words/<language>/prose.toml` says what each is."""

    opens: frozenset[str]
    through: frozenset[str]
    adverbs: tuple[str, ...]
    joints: frozenset[str]
    between: frozenset[str]
    purpose: tuple[str, ...]
    to: tuple[str, ...]
    waited: re.Pattern[str]
    station: re.Pattern[str]
    articles: tuple[str, ...]
    place: re.Pattern[str]
    inside: str
    of_each: re.Pattern[str]
    each_with: re.Pattern[str]
    next: re.Pattern[str]
    alternative: tuple[str, ...]
    small: frozenset[str]
    without: frozenset[str]
    no_object: re.Pattern[str]
    carried: re.Pattern[str]


@cache
def prose_words(language: str) -> ProseWords:
    """The words of a language, read once."""
    lists = word_lists(language, "prose")
    imperative, named, purposes = lists["imperative"], lists["named"], lists["purposes"]
    closed, idle = word_lists(language, "clause")["closed"], lists["idle"]
    to, each = closed["TO"], one_of(lists["each"]["words"])
    return ProseWords(
        opens=frozenset((*_OPENS, *imperative["opens"])),
        through=frozenset(imperative["through"]),
        adverbs=imperative["adverbs"],
        joints=frozenset(imperative["joints"]),
        between=frozenset(purposes["between"]),
        purpose=tuple(f"{word} " for word in purposes["begin"]),
        to=tuple(f"{word} " for word in to),
        waited=pattern(rf"\b{one_of(to)} ([^\W\d_]+(?: [^\W\d_]+){{0,4}}),?\s*\Z"),
        station=pattern(rf"\s+(?:{one_of(named['the'])}\s+)?([^\W\d_]+)\b"),
        articles=tuple(f" {word} " for word in named["in-the"]),
        place=pattern(rf"\b{one_of(named['in'])} {one_of(named['in-the'])} ([^\W\d_]+)"),
        inside=named["in"][0],
        of_each=pattern(rf"[^.;,]*\b{each}\b"),
        each_with=pattern(rf"\b{each}\b[^.;,]*\b{one_of(lists['each']['with'])}\s*\Z"),
        next=pattern(rf"\b({one_of(lists['next']['then'])} )|\.\s+([^\W\d_a-z])|;\s+(\w)|\.\s+()\Z"),
        small=frozenset(word for name in _SMALL for word in closed[name]),
        without=frozenset(lists["tools"]["without"]),
        no_object=pattern(rf"\s+(?:{one_of(idle['no'])}|{one_of(idle['own'])}\s+{one_of(idle['body'])})\b"),
        carried=pattern(rf"\b{one_of(idle['to'])} {one_of(idle['the'])} {one_of(idle['places'])}\b"),
        alternative=tuple(f" {word}" for word in lists["next"]["or"]),
    )


def verbs_in(text: str, span: Span, kitchen: Kitchen, starts_open: bool, clause_follows: bool) -> list[VerbUse]:
    """The verbs of a stretch of prose. `starts_open`: an imperative may stand at its very start."""
    uses: list[VerbUse] = []
    said = text.strip()
    asked, verbs = prose_words(kitchen.language), kitchen.verbs
    if not said or said in asked.opens:  # most of what stands between two clauses
        return uses
    words = [token.lower() for token in _TOKEN.findall(text)]
    is_open = starts_open
    after = 0  # the last verb
    for at, word in enumerate(words):
        if at < after:
            continue
        found = verbs.match(words, at) if is_open else None
        if found and _is_verb(found[0], words, at, found[1], clause_follows, asked):
            after = at + found[1]
            tokens = list(islice(_TOKEN.finditer(text), at, after))
            start, end = tokens[0].start(), tokens[-1].end()
            uses.append(VerbUse(found[0], text[start:end], Span(span.start + start, span.start + end)))
            is_open = False
        else:
            is_open = word in asked.opens or (is_open and (word in asked.through or word.endswith(asked.adverbs)))
    return uses


def wait_before(text: str, end: int, kitchen: Kitchen) -> VerbUse | None:
    """What is waited for in *turn out onto a rack to cool completely*, right before the clause that says how long.
    `end` is where the text ends in the file."""
    asked = prose_words(kitchen.language)
    found = asked.waited.search(text) if any(to in text for to in asked.to) else None
    if found is None:
        return None
    words = found[1].lower().split()
    verb = kitchen.verbs.match(words, 0)
    if verb is None or not verb[0].waits:
        return None
    said = " ".join(found[1].split()[: verb[1]])
    start = end - len(text) + found.start(1)
    return VerbUse(verb[0], said, Span(start, start + len(said)))


def station_after(use: VerbUse, text: str, span: Span, kitchen: Kitchen) -> Tool | None:
    """The oven or grill that a verb sets in plain words, as it would stand in a bracket: *Preheat the oven to*."""
    if not use.verb.sets:
        return None
    named = prose_words(kitchen.language).station.match(text, use.span.end - span.start)
    found = kitchen.cupboard.find([named[1].lower()]) if named else None
    if named is None or found is None or found.item.kind != "station":
        return None
    place = Span(span.start + named.start(1), span.start + named.end(1))
    return Tool(Clause(named[1], place, kitchen.language), named[1], found.item, definite=True)


def cold_place(text: str, start: int, kitchen: Kitchen) -> Tool | None:
    """The fridge or freezer that food stands in, named in plain words or within a time: *in the fridge for 1 h*.
    `start` is where the text begins in the file."""
    asked = prose_words(kitchen.language)
    if not any(article in text for article in asked.articles):
        return None
    for named in asked.place.finditer(text):
        found = kitchen.cupboard.find([named[1].lower()])
        if found is not None and found.item.kind == "station" and found.item.station in ("fridge", "freezer"):
            place = Span(start + named.start(1), start + named.end(1))
            return Tool(
                Clause(named[1], place, kitchen.language), named[1], found.item, preposition="in", definite=True
            )
    return None


def _is_verb(verb: Verb, words: list[str], at: int, length: int, clause_follows: bool, asked: ProseWords) -> bool:
    """Whether a word that is also a noun or adjective (cream, warm, toast) is a command here: something must follow."""
    if not verb.doubtful or length > 1 or (at == 0 and length < len(words)):
        return True
    after = at + length
    if after >= len(words):
        return clause_follows
    return words[after].isalpha() and words[after] not in asked.joints


def purpose_before(text: str, kitchen: Kitchen) -> str:
    """The purpose that a participle right before a bracket gives: `a bench dusted with [rye flour]`."""
    words, between = text.split(), prose_words(kitchen.language).between
    while len(words) > 1 and words[-1] in between:
        words.pop()
    found = _LAST_WORD.search(words[-1]) if words else None
    verb = kitchen.verbs.participle(found[0].lower()) if found else None
    return verb.purpose if verb else ""


def preposition_before(text: str, tables: Tables) -> str:
    """The preposition that stands right before a bracket: `blend with [2 tbsp of the oil]`."""
    words = tuple(text.lower().split()[-4:])
    for start in range(len(words)):
        found = match(tables.prepositions, words, start)
        if found and start + found[1] == len(words):
            return found[0]
    return ""


def first_word(text: str, span: Span, kitchen: Kitchen) -> Span | None:
    """The word in the place of an imperative at the start of a line: *faff* in *Then slowly faff with it*. None where a
    small word, a food or a tool stands there."""
    asked = prose_words(kitchen.language)
    for token in _TOKEN.finditer(text):
        word = token[0].lower()
        if word in asked.through or word.endswith(asked.adverbs) or word in asked.opens:
            continue
        is_name = kitchen.cupboard.find([word]) or kitchen.larder.find([word])
        plain = len(word) > 1 and word not in asked.small and not is_name
        return Span(span.start + token.start(), span.start + token.end()) if plain else None
    return None


def _waits_for_nothing(use: VerbUse, texts: Sequence[Text], kitchen: Kitchen) -> bool:
    """Whether a verb that waits does so in none of these plain words: *leave no lumps*, *rest your hands*, *bring … to
    the table*, where food is carried. What lets or stands has no way to go."""
    asked = prose_words(kitchen.language)
    for part in texts:
        after = use.span.end - part.span.start
        if 0 < after <= len(part.text) and asked.no_object.match(part.text, after):
            return True
        carries = not use.verb.lets and not use.verb.stands
        if carries and part.span.end > use.span.start and asked.carried.search(part.text, max(0, after)):
            return True
    return False


def without_idle(parts: Sequence[Part], events: list[Event], kitchen: Kitchen) -> list[Event]:
    """The events without the verbs that wait for nothing, in a line that tells no end of a wait."""
    if any(isinstance(event, Cue | Target) for event in events):
        return events
    texts = [part for part in parts if not isinstance(part, Clause)]
    uses = [event for event in events if isinstance(event, VerbUse) and event.verb.waits]
    idle = [use for use in uses if _waits_for_nothing(use, texts, kitchen)]
    return [event for event in events if event not in idle]
