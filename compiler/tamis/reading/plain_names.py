"""What plain words put the food to, by a name: *stir into the butter*, *pour over the crumbs*, *whisk it into the pan*.

Who asks knows what is there, and whether one of these words names it.
"""

from __future__ import annotations

from tamis.quantity.nouns import nouns
from tamis.reading.plain import plain_of
from tamis.reading.prose import prose_words
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

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
    for part in parts:
        if isinstance(part, Text):
            for found in plain_of(part.text, kitchen).ask(_put_to):
                names = ((name, span.shifted(part.span.start)) for name, span in found.names)
                yield PutTo(found.start + part.span.start, tuple(names))


def _put_to(plain: Plain) -> tuple[PutTo, ...]:
    return tuple(_found(plain)) if len(plain) > 2 else ()


def _found(plain: Plain) -> Iterator[PutTo]:
    language = plain.kitchen.language
    rules, puts, said = nouns(language), prose_words(language).puts, plain.said
    for at in range(len(plain)):
        article = at + plain.phrase(puts, at)
        if article == at or said[article : article + 1] == [] or said[article] not in rules.definite:
            continue
        end = article + 1
        while end <= article + _MOST_WORDS and plain.is_word(end):
            end += 1
        names = (
            (rules.key(said[article + 1 : last]), Span(plain.starts[article], plain.ends[last - 1]))
            for last in range(end, article + 1, -1)
        )
        yield PutTo(plain.starts[at], tuple(names))
