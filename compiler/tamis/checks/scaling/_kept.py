"""Divisions whose number stays when a recipe is scaled: the recipe goes by each of the pieces.

*The third piece* is one of three shades, and squares laid one upon another are a paste in layers: three times as many
of them are another recipe. Unless they are what the header makes, there stay as many, and they are larger.
"""

from __future__ import annotations

from functools import cache, lru_cache

from tamis.checks.words import check_words
from tamis.patterns import pattern
from tamis.reading.clauses import Division, Reference
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    import re
    from collections.abc import Iterator

    from tamis.model.recipe import Action, Recipe
    from tamis.quantity.amount import Amount
    from tamis.source import Span


class Kept(NamedTuple):
    """A division, its number, and the words by which its pieces are told apart or put together again."""

    read: Division
    number: Amount
    words: str


def kept(recipe: Recipe) -> tuple[Kept, ...]:
    """The divisions of a recipe whose number stays, in order of the text."""
    return tuple(_kept(recipe))


def taken_by_number(recipe: Recipe) -> set[Span]:
    """The clauses that take so many pieces of what was divided between tins, or into pieces that stay as many as they
    are."""
    from tamis.quantity.nouns import nouns

    singular = nouns(recipe.language).singular
    reads = [read for action in recipe.actions for read in action.reads]
    divided = {singular(read.noun.lower()) for read in reads if isinstance(read, Division)}
    tins = {
        index for index, made in enumerate(recipe.products) if made.pieces and singular(made.piece_noun) not in divided
    }
    larger = {_noun(read, recipe.language) for read in (*_halved(recipe), *(one.read for one in kept(recipe)))}
    taken = [read for read in reads if isinstance(read, Reference) and _takes_pieces(read)]
    by_number = {read.clause.span for read in taken}
    of_tins = {taking.span for taking in recipe.takings if taking.product in tins and taking.span in by_number}
    return of_tins | {read.clause.span for read in taken if singular(read.name.lower().rpartition(" ")[2]) in larger}


def _halved(recipe: Recipe) -> Iterator[Division]:
    """What is cut *in half* as a whole: there are two of them at any factor. *Cut [one of the discs] [in half]* gives
    as many more as it takes discs."""
    for action in recipe.actions:
        before: list[Reference] = []
        for read in action.reads:
            if isinstance(read, Reference):
                before.append(read)
            elif (
                isinstance(read, Division) and read.number is None and read.noun and not any(map(_takes_pieces, before))
            ):
                yield read


def told_apart(recipe: Recipe) -> tuple[Kept, ...]:
    """The divisions into what the header makes, so that their number grows, whose pieces the recipe tells apart."""
    return tuple(_kept(recipe, made=True))


def _takes_pieces(read: Reference) -> bool:
    measure = read.share.measure if read.share else None
    return measure is not None and not measure.unit


def _kept(recipe: Recipe, made: bool = False) -> Iterator[Kept]:
    makes = recipe.header.makes
    for action, read in _divisions(recipe):
        assert read.number is not None
        if made != (makes is not None and makes.measure is None and makes.amount == read.number):
            continue
        noun = _noun(read, recipe.language)
        named = {noun, *check_words(recipe.language).scaling.pieces}  # the other half is that of what is cut in half
        later = recipe.actions[action.number + 1 :]
        again = (
            line
            for line in later
            for other in line.reads
            if isinstance(other, Division) and _noun(other, recipe.language) in named and not other.of_each
        )
        text = _behind(recipe, action, read, next(again, None))
        words = check_words(recipe.language).scaling
        found = None  # a pattern takes longer to make than to find that none of its words is there
        if any(phrase in text[0] for phrase in words.stacked):
            found = _stacked(recipe.language).search(text[0])
        said = set(text[1].split())
        if found is None and any(phrase.split(" ")[0] in said for phrase in words.singled):
            found = _singled(noun, recipe.language).search(text[1])
        if found:
            yield Kept(read, read.number, found[0])


def _divisions(recipe: Recipe) -> Iterator[tuple[Action, Division]]:
    """What a line divides into several pieces, all together."""
    for action in recipe.actions:
        for read in action.reads:
            if isinstance(read, Division) and read.number is not None and read.number.hi > 1 and not read.of_each:
                yield action, read


def _noun(read: Division, language: str) -> str:
    """What one of the pieces is called."""
    from tamis.quantity.nouns import nouns

    return nouns(language).singular(read.noun.lower().rpartition(" ")[2])


def _behind(recipe: Recipe, action: Action, read: Division, until: Action | None) -> tuple[str, str]:
    """The words behind a division to the end of its line, and to the line that divides into such pieces again."""
    start, end = read.clause.span.end, len(recipe.actions) if until is None else until.number
    own = " ".join(part.text for part in action.parts if part.span.start >= start).lower()
    lines = recipe.actions[action.number + 1 : end]
    return own, " ".join([own, *(part.text.lower() for line in lines for part in line.parts)])


@cache
def _stacked(language: str) -> re.Pattern[str]:
    return pattern(rf"\b{one_of(check_words(language).scaling.stacked)}\b")


@lru_cache(64)
def _singled(noun: str, language: str) -> re.Pattern[str]:
    words = check_words(language).scaling
    return pattern(rf"\b{one_of(words.singled)} (?:\w+ )?{one_of((*words.pieces, noun) if noun else words.pieces)}\b")
