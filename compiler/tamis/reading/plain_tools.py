"""Equipment that plain words name: *tip into the pot*, *on a baking tray lined with paper*, *grease a 20 cm tin*.

The words are found by the same cutting and the same classes as in clauses. What they name is set out like what stands
in brackets; where the food lies is told by clauses alone.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.number import parse as parse_number
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import Tool
from tamis.reading.plain import plain_of
from tamis.reading.prose import commands, prose_words
from tamis.reading.vocabulary import Choices
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.cutting import COMMA, ONE
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.equipment import FoundEquipment
    from tamis.kitchen.house import Kitchen
    from tamis.reading.plain import Plain
    from tamis.reading.prose import Command, ProseWords
    from tamis.syntax.document import Text

_PLACES = frozenset(("PREP", "INTO", "ONHEAT", "TO"))
_BEGIN = _PLACES | {"OF", "ARTICLE", "ANOTHER"}
_ARTICLES = frozenset(("ARTICLE", "ANOTHER", "THE", "EACH"))
_DEFINITE = frozenset(("THE", "EACH"))
_TOOLS = frozenset(("TOOL", "COUNTTOOL"))
_INDEFINITE = frozenset(("ARTICLE", "ANOTHER"))
_ANOTHER = frozenset(("ANOTHER",))
_TERSE = frozenset(("PREP", "INTO"))
_AND = frozenset(("AND",))
_SOME = frozenset(("SOME",))
_FOOD = frozenset(("FOOD",))
_MEASURES = frozenset(("COUNT", "WEIGHTOF"))
_SIZES = frozenset((ONE["LENGTH"], ONE["MASS"], ONE["VOLUME"], ONE["INCH"]))
# Adjectives before the noun: *a large deep baking tray*.
_MOST_WORDS = 6
_MOST_ALIKE = 3
# Words from a number to where so many go: *2 heaped spoons to a tin*.
_MOST_SHARED = 4


class Placed(NamedTuple):
    """A piece of equipment in plain words; the span begins at its preposition. `indefinite`: with an article that makes
    it another piece than those before."""

    tool: Tool
    span: Span
    indefinite: bool


def tools_in(part: Text, kitchen: Kitchen) -> Iterator[Placed]:
    """The equipment of plain words, where it stands in the file."""
    for placed in plain_of(part.text, kitchen).ask(placed_tools):
        clause, offset = placed.tool.clause, part.span.start
        tool = placed.tool._replace(clause=clause._replace(span=clause.span.shifted(offset)))
        yield placed._replace(tool=tool, span=placed.span.shifted(offset))


def placed_tools(plain: Plain) -> tuple[Placed, ...]:
    """The equipment of a stretch, in order."""
    named = len(plain) > 1 and plain.kitchen.cupboard.may_be_in(plain.text)
    return tuple(_placed(plain)) if named else ()


def _placed(plain: Plain) -> Iterator[Placed]:
    asked = prose_words(plain.kitchen.language)
    work = plain.ask(commands)
    verbs, objects = {command.first for command in work}, {command.end for command in work}
    removed = {command.end for command in work if _takes_off(command, asked)}
    at, end = 0, len(plain)
    while at < end:
        if at not in objects and not (plain.said[at] in asked.places and plain.is_a(at, _BEGIN)):
            at += 1
            continue
        taken = 0 if plain.words[at] in asked.without else plain.is_a(at, _PLACES)
        sheet = at > 0 and plain.said[at] in asked.of  # a sheet of baking paper
        named = None
        if taken or sheet or at in objects or _is_brought(plain, at, asked):
            named = _named(plain, at, at + (taken or sheet), asked)
        if named is None or (sheet and named[0].tool.equipment.kind != "lining"):
            at += taken or 1
        else:
            if not (at in removed and named[0].tool.definite):  # peel off the strings
                yield named[0]
            at = named[1]
            if (joined := at + plain.is_a(at, _AND)) not in verbs:
                objects.add(joined)  # with a plate and two tins


def _takes_off(command: Command, asked: ProseWords) -> bool:
    """Whether work takes something away: what is named behind it was there, or is part of the food."""
    return command.verb.removes or command.said.lower().rpartition(" ")[2] in asked.behind


def _is_brought(plain: Plain, at: int, asked: ProseWords) -> bool:
    """Whether *a wide pan* begins here, behind no preposition: *have ready a wide pan*. What is only compared with one
    (*the size of a plate*) is none."""
    if not plain.is_a(at, _INDEFINITE) or plain.is_a(at, _SOME) > 1:
        return False
    before = range(max(0, at - _MOST_ALIKE), at)
    return not any(plain.phrase(asked.alike, start) == at - start for start in before)


def _named(plain: Plain, start: int, at: int, asked: ProseWords) -> tuple[Placed, int] | None:
    """The piece whose article, number or name stands at a place, and the token behind it; it is placed where a
    preposition starts before it."""
    first = at + plain.is_a(at, _ARTICLES)
    number = None if _end_of_size(plain, first) else _number(plain, first)
    name = first + bool(number)
    last = _end_of_tool(plain, name)
    found = None if last is None else plain.kitchen.cupboard.find([word for word in plain.words[name:last] if word])
    if found is None or last is None:
        return None
    placed = at > start
    shared = _is_one_of_those(plain, start, at, last, asked)
    definite = shared or bool(plain.is_a(at, _DEFINITE))
    stands = placed and found.item.kind == "vessel" and plain.said[start] not in asked.each_with
    stands = stands and not found.item.count_unit
    end = _end_of_contents(plain, last, stands, asked)
    whole = first > at or number is not None or _needs_no_article(plain, start, at, last, found)
    if end == 0 or not whole or _is_half(plain, last, end, found, placed, definite, asked):
        return None
    measure = not (placed and plain.said[start] not in asked.of) and plain.is_a(last - 1, _MEASURES)
    if measure:  # a scant cup, of its weight
        return None
    span = Span(plain.starts[at], plain.ends[end - 1])
    clause = Clause(plain.text[span.start : span.end], span, plain.kitchen.language)
    tool = Tool(clause, plain.slice(name, end), found.item, found.adjectives, number or Fraction(1))
    if end > last or any(map(plain.is_count, range(name, last))):
        tool = _read(clause, plain.kitchen) or tool
    tool = tool._replace(definite=definite, preposition=plain.slice(start, at).lower() if placed else "")
    many = found.several and number is None and not tool.name.endswith(found.item.name)  # *serve in hot bowls*
    tool = tool._replace(several=tool.several or shared or many)
    return Placed(tool, Span(plain.starts[start], span.end), first > at and not definite), end


def _is_one_of_those(plain: Plain, start: int, at: int, last: int, asked: ProseWords) -> bool:
    """Whether *a pan* is each of those that are there, of which it is told how much goes to one (*4 cakes to a pan*,
    *one to a dish*), or where one goes (*a skewer on each plate*)."""
    if not plain.is_a(at, _INDEFINITE) or plain.is_a(at, _ANOTHER):
        return False
    place = plain.is_a(last, _PLACES)
    if place and plain.said[last + place : last + place + 1] and plain.said[last + place] in asked.each:
        return True
    if start == at or plain.said[start] not in asked.to:
        return False
    for number in range(start - 1, max(-1, start - 1 - _MOST_SHARED), -1):
        if plain.is_count(number):  # behind a verb they are moved: *lift 2 cakes to a plate*
            return number == 0 or plain.said[number - 1] in asked.opens
        if not plain.is_word(number):
            return False
    return False


def _needs_no_article(plain: Plain, start: int, at: int, last: int, found: FoundEquipment) -> bool:
    """Whether a bare name is a piece of equipment: several, foil, and *in large bowl*, as terse recipes write it, where
    no other noun follows (*in pan juices*)."""
    if found.several or found.item.kind == "lining":
        return True
    terse = at > start and plain.is_a(start, _TERSE) and found.item.kind != "station"
    return bool(terse) and not _is_open(plain, last) and not plain.is_a(last - 1, _MEASURES)


def _is_half(
    plain: Plain, last: int, end: int, found: FoundEquipment, placed: bool, definite: bool, asked: ProseWords
) -> bool:
    """Whether the words are only half of what is said: a tin of tomatoes, two spoons sugar, the pan juices."""
    if end > last:
        return found.item.count_unit
    if placed:
        return False
    adverb = plain.said[last : last + 1] and plain.said[last].endswith(asked.adverbs)
    return bool(plain.is_a(last, _FOOD)) or (definite and _is_open(plain, last) and not adverb)


def _read(clause: Clause, kitchen: Kitchen) -> Tool | None:
    """The piece as a clause would name it, with its size and what it holds: *a 20 cm tin*, *a bowl of iced water*."""
    findings: list[Diagnostic] = []
    records = read_clause(clause, kitchen, findings)
    tool = records[0] if len(records) == 1 and not findings else None
    return tool if isinstance(tool, Tool) else None


def _end_of_contents(plain: Plain, at: int, stands: bool, asked: ProseWords) -> int:
    """Where ends what a vessel is said to hold (*of iced water*): the same place if nothing is said of it, 0 if that
    makes it a measure of food. In a bowl of it something may be put, whatever it is (`stands`), and though a bracket
    tells it."""
    if at >= len(plain) or plain.said[at] not in asked.of:
        return at
    end = at + 1
    while end < min(len(plain), at + _MOST_WORDS) and _is_open(plain, end):
        end += 1
    if stands:
        return end if end > at + 1 else at
    held = plain.kitchen.larder.find(plain.said[at + 1 : end]) if end > at + 1 else None
    return end if held and held.goods.role == "water" else 0


def _number(plain: Plain, at: int) -> Fraction | None:
    """How many of them: *on two trays*."""
    if at < len(plain) and plain.is_count(at):
        return parse_number(plain.slice(at, at + 1).strip(), plain.kitchen.language)
    return None


def _end_of_size(plain: Plain, at: int) -> int:
    """Where a size ends that begins at a place: *20 cm*, *20 × 30 cm*, *3-litre*; 0 if none does."""
    while at + 1 < len(plain) and plain.is_count(at):
        if plain.fixed[at + 1] in _SIZES:
            return at + 2
        if plain.fixed[at + 1] is not ONE["TIMES"]:
            return 0
        at += 2
    return 0


def _end_of_tool(plain: Plain, first: int) -> int | None:
    """Where a row of open words ends that names a tool with its last words."""
    end, at, comma = None, first, False
    while at < min(len(plain), first + _MOST_WORDS):
        size = plain.is_a(at, _TOOLS)
        if size and comma:
            break  # *into a flat square, wrap*: adjectives are parted by a comma, not the noun from them
        if size:
            at += size
            end = at
        elif end is None and (sized := _end_of_size(plain, at)):
            at = sized
        elif end is not None or not (_is_open(plain, at) or _is_between_adjectives(plain, at)):
            break
        else:
            at, comma = at + 1, plain.fixed[at] is COMMA
    return end


def _is_open(plain: Plain, at: int) -> bool:
    """Whether a token is a word of a name. Of those that are prepositions as well only *round* and its like are: *in*
    stands for inches."""
    kinds = [kind for kind, _ in plain.ways(at)]
    return "WORD" in kinds and ("SIZEWORD" in kinds or _PLACES.isdisjoint(kinds))


def _is_between_adjectives(plain: Plain, at: int) -> bool:
    """Whether a token is the comma of *a wide, shallow pan*."""
    return plain.fixed[at] is COMMA and Choices(plain.cut, plain.vocabulary).at(at) is not COMMA
