"""How finely food is cut: the finer, the longer the knife is at it, and thin straws take longer than chunks.

No bracket need say it (*chop [the veal] very fine*, *cut each piece lengthwise into fine straws*), and it changes
nothing but how long the cook's hands are busy.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import islice, pairwise

from tamis.model.mass import NONE, Mass
from tamis.model.words import model_words
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Division, Ingredient, VerbUse
from tamis.reading.prose import prose_words
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Container, Iterator, Mapping, Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Batch
    from tamis.model.line import Line

FINE, VERY_FINE = Fraction(3, 2), Fraction(2)
"""How much longer it takes to cut finely, and very finely; common practice."""

USUAL: Mapping[int, Fraction] = {}


def fineness(words: Sequence[str], language: str) -> Fraction:
    """How much longer it takes to cut food as these words say: *very finely*, *in the thinnest of slices*."""
    known, articles = model_words(language), nouns(language).articles
    # … but not: a thin slice off each end
    fine = [at for at, word in enumerate(words) if word in known.fine and not (at and words[at - 1] in articles)]
    if not known.finest.isdisjoint(words) or any(at and words[at - 1] in known.very for at in fine):
        return VERY_FINE
    return FINE if fine else Fraction(1)


def is_cut(verb: Verb) -> bool:
    """Whether a verb cuts food with a knife or a grater, the finer the longer."""
    return bool(verb.per_kg) and verb.outside and not verb.waits and (verb.prepares or bool(verb.per_piece))


def fine_cuts(act: Line) -> Mapping[int, Fraction]:
    """How much longer the verbs of a line take by their words, by the verb's place."""
    if "outside" not in act.labour.does or not any([is_cut(use.verb) for use in act.labour.verbs]):
        return USUAL
    language = act.walker.flow.kitchen.language
    return {use.span.start: fineness(words, language) for use, words in _said(act) if is_cut(use.verb)}


def cuts_what_it_names(act: Line) -> frozenset[int]:
    """The places of the verbs that cut a food named right behind them, and not what is in hand."""
    pairs = pairwise(act.labour.events) if "outside" in act.labour.does and act.labour.foods else ()
    uses = [use for use, named in pairs if isinstance(use, VerbUse) and isinstance(named, Ingredient)]
    return frozenset([use.span.start for use in uses if is_cut(use.verb) and not use.verb.divides])


def cut_in_words(act: Line, kitchen: Kitchen) -> dict[int, Verb]:
    """What plain words make of the pieces in hand, by the place of the verb that cuts them: *into fine straws* is
    finer work than its verb alone tells."""
    if "divides" not in act.labour.does or not any([use.verb.divides and use.verb.per_kg for use in act.labour.verbs]):
        return {}
    made, inside = {}, prose_words(kitchen.language).inside
    for use, words in _said(act):
        told = not use.verb.divides or not use.verb.per_kg or _is_divided(act, use)
        into = _behind(words, inside) if not told else []
        tells = (word.isdigit() and kitchen.units.get(unit) is None for word, unit in pairwise(into))
        counted = any(tells)  # ten strips of pastry are no shreds
        found = shape_of(into, kitchen) if not counted else None
        if found is not None and found.per_kg > use.verb.per_kg:
            made[use.span.start] = found
    return made


def shape_of(words: Sequence[str], kitchen: Kitchen) -> Verb | None:
    """The verb that makes pieces so called, where one does: straws are made by cutting julienne."""
    one, cuts = nouns(kitchen.language).singular, model_words(kitchen.language).cuts
    last = (one(word) for word in reversed(words))  # cut each piece into straws
    base = next((base for name in last for base, pieces in cuts.items() if name in pieces), None)
    return kitchen.verbs.of_base(base) if base is not None else None


def _behind(words: list[str], inside: Container[str]) -> list[str]:
    """The words behind the last *into*; none if there is no such word."""
    last = next((at for at in range(len(words) - 1, -1, -1) if words[at] in inside), len(words))
    return words[last + 1 :]


_MOST_FOODS = 100
"""Foods of a batch that are looked at: no recipe has more in one."""


def solid(batch: Batch, act: Line) -> Mass:
    """What of a batch is cut: not the stock that it was cooked in."""
    larder = act.walker.flow.kitchen.larder
    foods = list(islice(batch.foods, _MOST_FOODS + 1))
    if len(foods) > _MOST_FOODS:
        return batch.mass
    known = [(food, larder.get(food.goods) if food.goods else None) for food in foods]
    masses = [food.mass for food, goods in known if goods is None or not goods.liquid]
    if len(masses) == len(known) or not all([mass.known for mass in masses]):
        return batch.mass
    return Mass(sum([mass.lo for mass in masses], NONE), sum([mass.hi for mass in masses], NONE))


def _is_divided(act: Line, use: VerbUse) -> bool:
    """Whether a bracket behind a verb, and before the next, says into what it cuts."""
    return any(isinstance(read, Division) for read in act.labour.clauses_of(use))


def _said(act: Line) -> Iterator[tuple[VerbUse, list[str]]]:
    """Each verb of a line with the plain words behind it, and those in brackets that say what it is cut into."""
    uses = act.labour.verbs
    ends = [after.span.start for _, after in pairwise(uses)]
    for use, end in zip(uses, [*ends, act.read.span.end], strict=True):
        words: list[str] = []
        for part in act.read.parts:
            if isinstance(part, Text) and part.span.start < end and use.span.end < part.span.end:
                start = part.span.start
                words += part.text[max(0, use.span.end - start) : end - start].lower().replace(",", " ").split()
        for division in act.labour.divisions:
            if use.span.end <= division.clause.span.start < end:
                words += division.clause.text.lower().split()
        yield use, [word.strip(".;:") for word in words]
