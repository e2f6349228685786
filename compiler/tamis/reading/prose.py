"""Verbs in plain words, read only in the place of an imperative, and what the words round a bracket say of it.

A word of the verb list counts where a line starts, after a clause, after a comma, after *and* or *then*; adverbs are
looked through. Every other word is prose: *the dough in a warm place* warms nothing.
"""

from __future__ import annotations

from functools import cache

from tamis.kitchen.equipment import COLD
from tamis.reading.clauses import Tool, VerbUse
from tamis.reading.plain import phrases
from tamis.reading.tables import match, tables
from tamis.record import NamedTuple, made
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Equipment
    from tamis.kitchen.verbs import Verb, Verbs
    from tamis.reading.plain import Phrases, Plain

_OPENS = (",", ";", ":", ".", "(", "—", "–")
STOPS = frozenset((".", ";", ","))
_BEFORE_EACH = frozenset(("PREP", "INTO", "TO", "AT", "FOR", "OF"))
_NO_NOUN = frozenset(("AND", "OR", "PREP", "INTO", "TO", "AT", "FOR", "UNTIL", "BEFORE", "ARTICLE"))
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
# *To rest and cool completely*: so many words at most stand between *to* and the clause that says how long.
_WAITED = 5
# The classes of words with which a piece of equipment may begin.
_PLACES = ("PREP", "INTO", "TO", "OF", "ARTICLE", "ANOTHER")
_PREPOSITION = 4


class ProseWords(NamedTuple):
    """What is asked of plain words in a language; `grammar/words/<language>/prose.toml` says what each is."""

    opens: frozenset[str]
    through: frozenset[str]
    denies: frozenset[str]
    adverbs: tuple[str, ...]
    joints: frozenset[str]
    aside: Phrases
    particles: Phrases
    things: frozenset[str]
    lies: Phrases
    between: frozenset[str]
    purpose: tuple[str, ...]
    to: frozenset[str]
    the: frozenset[str]
    inside: frozenset[str]
    within: str
    in_the: frozenset[str]
    each: frozenset[str]
    each_with: frozenset[str]
    joined: frozenset[str]
    """What stands between two foods of one place: a comma, *and*."""
    no_piece: frozenset[str]
    """After these, and before these, *each* is no piece of food: after each, each side."""
    then: frozenset[str]
    alternative: tuple[str, ...]
    or_else: frozenset[str]
    small: frozenset[str]
    places: frozenset[str]
    """With these begins what may be a piece of equipment: *in*, *a*, *another*, *of*."""
    of: frozenset[str]
    without: frozenset[str]
    alike: Phrases
    behind: frozenset[str]
    puts: Phrases
    over: Phrases


@cache
def prose_words(language: str) -> ProseWords:
    """The words of a language, read once."""
    lists, closed = word_lists(language, "prose"), word_lists(language, "clause")["closed"]
    imperative, named, purposes = lists["imperative"], lists["named"], lists["purposes"]
    return ProseWords(
        opens=frozenset((*_OPENS, *imperative["opens"])),
        through=frozenset((*imperative["through"], *imperative["denies"])),
        denies=frozenset(imperative["denies"]),
        adverbs=imperative["adverbs"],
        joints=frozenset(imperative["joints"]),
        aside=phrases(imperative["aside"], language),
        particles=phrases(imperative["particles"], language),
        things=frozenset(imperative["things"]),
        lies=phrases(imperative["lies"], language),
        between=frozenset(purposes["between"]),
        purpose=tuple(f"{word} " for word in purposes["begin"]),
        to=frozenset(closed["TO"]),
        the=frozenset(named["the"]),
        inside=frozenset(named["in"]),
        within=named["in"][0],
        in_the=frozenset(named["in-the"]),
        each=frozenset(lists["each"]["words"]),
        each_with=frozenset(lists["each"]["with"]),
        joined=frozenset((*closed["AND"], ",")),
        no_piece=frozenset(lists["each"]["no_piece"]),
        then=frozenset(lists["next"]["then"]),
        alternative=tuple(f" {word}" for word in lists["next"]["or"]),
        or_else=frozenset(closed["OR"]),
        small=frozenset(word for name in _SMALL for word in closed[name]),
        places=frozenset(phrases([phrase for name in _PLACES for phrase in closed[name]], language)),
        of=frozenset(closed["OF"]),
        without=frozenset(lists["tools"]["without"]),
        alike=phrases((*lists["tools"]["without"], *lists["tools"]["alike"]), language),
        behind=frozenset(imperative["behind"]),
        puts=phrases(lists["puts"]["to"], language),
        over=phrases(lists["puts"]["over"], language),
    )  # fmt: skip


Asks = Literal["", "clause", "time"]


class Station(NamedTuple):
    """An oven, a grill, a fridge in plain words, and where it stands in them."""

    item: Equipment
    said: str
    start: int


class Command(NamedTuple):
    """A verb in the place of an imperative, and the tokens that it has. `asks`: it is one only if a clause follows, or
    only right behind a time. `station` is what it sets: *Preheat the oven to*."""

    verb: Verb
    said: str
    start: int
    first: int
    end: int
    asks: Asks = ""
    station: Station | None = None

    def stands(self, clause_follows: bool, timed: bool = False) -> bool:
        """Whether it has what it asks for."""
        return not self.asks or timed or (clause_follows and self.asks == "clause")

    def use(self, offset: int) -> VerbUse:
        """The verb where it stands in the file; `offset` is where the plain words begin."""
        start = self.start + offset
        return made(VerbUse, (self.verb, self.said, made(Span, (start, start + len(self.said)))))


def placed_station(station: Station, offset: int, language: str, preposition: str = "") -> Tool:
    """A station as it would stand in a bracket; `offset` is where the plain words begin in the file."""
    start = station.start + offset
    clause = Clause(station.said, Span(start, start + len(station.said)), language)
    return Tool(clause, station.said, station.item, preposition=preposition, definite=True)


def work_and_place(plain: Plain) -> tuple[tuple[Command, ...], Station | None] | None:
    """The verbs of a stretch and where it puts the food in the cold; None for what says neither, as most stretches."""
    found = plain.ask(commands), plain.ask(cold_place)
    return found if any(found) else None


def commands(plain: Plain) -> tuple[Command, ...]:
    """The verbs of a stretch, in order, but for what is not to be done: *do not beat or knead*."""
    asked, verbs = prose_words(plain.kitchen.language), plain.kitchen.verbs
    goes_on = asked.opens - asked.or_else
    opens, through, adverbs, first_words = asked.opens, asked.through, asked.adverbs, verbs.first_words
    said, places = _without_numbers(plain)
    found: list[Command] = []
    is_open, denied, after = True, False, 0
    for at, word in enumerate(said):
        if at < after:
            continue
        denied = word not in goes_on and (denied or (is_open and word in asked.denies))
        if is_open:
            match = verbs.match(said, at) if word in first_words else None
            needs = _needs(match[0], said, at, match[1], verbs) if match else None
            lies = match and plain.phrase(asked.lies, places[at + match[1] - 1] + 1)  # skin side up
            if match and needs is not None and not lies:
                if needs == "time" and found and all([one in STOPS or one in asked.joints for one in said[after:at]]):
                    needs = ""  # as in *drain, peel and slice*: what is between two verbs is one
                after = at + match[1]
                if not denied:
                    found.append(_command(plain, match[0], places[at], places[after - 1] + 1, needs))
                is_open = False
                continue
            is_open = word in opens or word in through or word.endswith(adverbs) or word[-1] == "."
        else:
            is_open = word in opens or word[-1] == "."  # as behind `500 g.`, which is one token
    return tuple(found)


def _without_numbers(plain: Plain) -> tuple[list[str], Sequence[int]]:
    """The tokens among which verbs are sought, and their places: *let 4 pieces rest*."""
    if not plain.has_numbers:
        return plain.said, range(len(plain))
    places = [at for at in range(len(plain)) if not plain.is_number(at)]
    return [plain.said[at] for at in places], places


def _needs(verb: Verb, words: Sequence[str], at: int, length: int, verbs: Verbs) -> Asks | None:
    """What a word that is also a noun or adjective (cream, warm, toast) needs beside it to be a command; None where it
    is none. Something follows what is done to food, or it was said what that is: *cool for 10 min, peel and slice*."""
    if not verb.doubtful or length > 1 or (at == 0 and length < len(words)):
        return ""
    after = at + length
    if after >= len(words):
        return "clause"
    asked = prose_words(verbs.language)
    if words[after].isalpha() and words[after] not in asked.joints:
        return ""
    if verb.waits:
        return None
    end = len(words) - (words[-1] in STOPS)
    while after < end and (words[after] in STOPS or words[after] in asked.joints or words[after] in asked.then):
        after += 1
    return "time" if after == end or verbs.match(words, after) else None


def _command(plain: Plain, verb: Verb, first: int, end: int, asks: Asks = "") -> Command:
    station = _station_after(plain, end) if verb.sets else None
    return Command(verb, plain.slice(first, end), plain.starts[first], first, end, asks, station)


def _station_after(plain: Plain, at: int) -> Station | None:
    """The oven or grill that stands right behind a verb."""
    at += at < len(plain) and plain.said[at] in prose_words(plain.kitchen.language).the
    return _station(plain, at)


def _station(plain: Plain, at: int) -> Station | None:
    found = plain.kitchen.cupboard.find([plain.said[at]]) if plain.is_word(at) else None
    if found is None or found.item.kind != "station":
        return None
    return Station(found.item, plain.slice(at, at + 1), plain.starts[at])


def cold_place(plain: Plain) -> Station | None:
    """The fridge or freezer that food stands in: *in the fridge*."""
    asked, said = prose_words(plain.kitchen.language), plain.said
    if asked.inside.isdisjoint(said):
        return None
    for at in range(len(said) - 2):
        if said[at] in asked.inside and said[at + 1] in asked.in_the:
            found = _station(plain, at + 2)
            if found is not None and found.item.station in COLD:
                return found
    return None


def waited(plain: Plain) -> Command | None:
    """What is waited for in *turn out onto a rack to cool completely*, right before the clause that says how long."""
    asked, said = prose_words(plain.kitchen.language), plain.said
    end = len(said) - bool(said and said[-1] == ",")
    for at in range(end - 2, max(0, end - _WAITED - 1) - 1, -1):
        if not plain.is_word(at + 1):
            return None
        if said[at] in asked.to:
            found = plain.kitchen.verbs.match(said, at + 1)
            if found and found[0].waits:
                return _command(plain, found[0], at + 1, at + 1 + found[1])
    return None


def carried_on(plain: Plain) -> Command | None:
    """The work in *continue whisking*, *it needs kneading*, right before the clause that says how long."""
    last = len(plain) - 1
    verb = plain.kitchen.verbs.present(plain.words[last]) if last > 0 and plain.is_word(last - 1) else None
    return _command(plain, verb, last, last + 1) if verb else None


def done_before(plain: Plain) -> Verb | None:
    """The participle right before a bracket: `a bench dusted lightly with [rye flour]`."""
    words, between = plain.words, prose_words(plain.kitchen.language).between
    last = len(words) - 1
    while last > 0 and words[last] in between:
        last -= 1
    return plain.kitchen.verbs.participle(words[last]) if words else None


def preposition_before(plain: Plain) -> str:
    """The preposition that stands right before a bracket: `blend with [2 tbsp of the oil]`."""
    words = tuple(plain.words[-_PREPOSITION:])
    prepositions = tables(plain.kitchen.language).prepositions
    for start in range(len(words)):
        found = match(prepositions, words, start)
        if found and start + found[1] == len(words):
            return found[0]
    return ""


def fills_each(plain: Plain) -> str | None:
    """The noun of plain words that end as in *fill each of the cases with*; "" for *top each with*."""
    asked = prose_words(plain.kitchen.language)
    if not plain.said or plain.said[-1] not in asked.each_with:
        return None
    for at in range(len(plain.said) - 1, -1, -1):
        word = plain.said[at]
        if word in asked.each:
            between = [said for said in plain.said[at + 1 : -1] if not said.endswith(asked.adverbs)]
            noun = between[-1] if between else ""
            return None if noun in asked.no_piece else noun
        if word in STOPS or (at + 1 < len(plain.said) and plain.is_a(at, _NO_NOUN) and word not in asked.each_with):
            break
    return None


def goes_into_each(plain: Plain) -> str | None:
    """The noun of plain words that begin as in *in the middle of each bun*; "" where none stands behind."""
    asked = prose_words(plain.kitchen.language)
    for at, word in enumerate(plain.said):
        if word in asked.each:
            if at and plain.said[at - 1] in asked.no_piece:  # beating well after each
                return None
            if at and not plain.is_a(at - 1, _BEFORE_EACH) and fills_each(plain) is not None:
                return None  # and top each with what comes next
            noun = plain.said[at + 1] if plain.is_word(at + 1) and not plain.is_a(at + 1, _NO_NOUN) else ""
            return None if noun in asked.no_piece else noun
        if word in STOPS:
            break
    return None


def next_work(plain: Plain) -> int | None:
    """Where *then* stands, or where a sentence begins; at the end of the words the clause behind them begins one."""
    then, said, starts, ends = prose_words(plain.kitchen.language).then, plain.said, plain.starts, plain.ends
    for at, word in enumerate(said):
        if word in then:
            return starts[at]
        stops = word[-1] == "." or word == ";"
        start = starts[at + 1] if at + 1 < len(said) else len(plain.text)
        if not stops or start == ends[at]:
            continue
        if at + 1 == len(said):
            return start if word != ";" else None
        letter = plain.text[start]
        if letter.isalnum() if word == ";" else letter.isalpha() and not letter.islower():
            return start
    return None
