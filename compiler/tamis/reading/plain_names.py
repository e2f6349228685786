"""What plain words put the food to, by a name: *stir into the butter*, *pour over the crumbs*, *whisk it into the pan*;
and what they put in: *add the spinach*.

Who asks knows what is there, and whether one of these words names it.
"""

from __future__ import annotations

from tamis.quantity.nouns import nouns
from tamis.reading.plain import plain_of
from tamis.reading.prose import commands, prose_words
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.reading.plain import Plain
    from tamis.syntax.document import Part

_MOST_WORDS = 3


class PutTo(NamedTuple):
    """Where the preposition stands, and the names that may begin behind its article, as they are looked up, each with
    its place and its article: of most words first."""

    start: int
    names: tuple[tuple[tuple[str, ...], Span], ...]


def put_to(parts: Iterable[Part], kitchen: Kitchen) -> Iterator[PutTo]:
    """Those of a line, where they stand in the file."""
    return _in_file(parts, kitchen, _put_to)


def put_in(parts: Iterable[Part], kitchen: Kitchen) -> Iterator[PutTo]:
    """What plain words of a line put in, right behind their verb: *add the spinach*, *stir the flour into* …; where it
    stands in the file."""
    return _in_file(parts, kitchen, _put_in)


def done_to(parts: Iterable[Part], kitchen: Kitchen) -> Iterator[PutTo]:
    """The same of every verb: *pound the chillies with …*."""
    return _in_file(parts, kitchen, _behind_verbs)


def _in_file(parts: Iterable[Part], kitchen: Kitchen, ask: Callable[[Plain], tuple[PutTo, ...]]) -> Iterator[PutTo]:
    for part in parts:
        if isinstance(part, Text):
            for found in plain_of(part.text, kitchen).ask(ask):
                names = ((name, span.shifted(part.span.start)) for name, span in found.names)
                yield PutTo(found.start + part.span.start, tuple(names))


def _behind_verbs(plain: Plain) -> tuple[PutTo, ...]:
    found = (PutTo(one.start, tuple(_names(plain, one.end))) for one in plain.ask(commands))
    return tuple(one for one in found if one.names)


def _put_in(plain: Plain) -> tuple[PutTo, ...]:
    asked, found = prose_words(plain.kitchen.language), list[PutTo]()
    for command in plain.ask(commands):
        named, end = list[PutTo](), command.end
        while names := tuple(_names(plain, end)):
            end = _name_ends(plain, end)
            ended = tuple((name, span) for name, span in names if span.end <= plain.ends[end - 1])
            named.append(PutTo(command.start, ended))
            if end < len(plain) and plain.said[end] in asked.joints:
                end += 1  # add the rice and the fish
        if command.verb.adds or plain.phrase(asked.puts, end) > 0:
            found += named
    return tuple(found)


def _name_ends(plain: Plain, at: int) -> int:
    """Where the name ends that begins behind an article: at *and*, before *into*, at a mark."""
    asked = prose_words(plain.kitchen.language)
    at += 1
    while plain.is_word(at) and plain.said[at] not in asked.joints and not plain.phrase(asked.puts, at):
        at += 1
    return at


def _put_to(plain: Plain) -> tuple[PutTo, ...]:
    return tuple(_found(plain)) if len(plain) > 2 else ()


def _found(plain: Plain) -> Iterator[PutTo]:
    puts = prose_words(plain.kitchen.language).puts
    for at in range(len(plain)):
        article = at + plain.phrase(puts, at)
        names = tuple(_names(plain, article)) if article > at else ()
        if names:
            yield PutTo(plain.starts[at], names)


def _names(plain: Plain, article: int) -> Iterator[tuple[tuple[str, ...], Span]]:
    """The names that may begin behind an article, with most words first; none where no article stands there."""
    rules, said = nouns(plain.kitchen.language), plain.said
    if said[article : article + 1] == [] or said[article] not in rules.definite:
        return
    end = article + 1
    while end <= article + _MOST_WORDS and plain.is_word(end):
        end += 1
    for last in range(end, article + 1, -1):
        yield rules.key(said[article + 1 : last]), Span(plain.starts[article], plain.ends[last - 1])
