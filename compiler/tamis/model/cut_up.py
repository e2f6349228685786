"""Food called by what it was cut into: *the egg slices*, *the onion rings*, *the slices*.

The text bears that out where it says so of the food: in its clause (`[2 eggs, sliced]`), or in a line of the work on
it, in brackets or in plain words (*cut into slices*). Where two foods of that name are there, the one that was cut so
is meant; where none was, the food is asked about. By the piece alone all that was cut so may be meant: it must be one.
"""

from __future__ import annotations

from itertools import islice

from tamis.model.batch import any_of
from tamis.model.cut_so import LEFT, CutSo
from tamis.model.effects import Closes, Parts, Stands, Takes
from tamis.model.opened import WHOLE
from tamis.model.words import model_words
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.hands import Hands

Words = tuple[str, ...]
_ASKED = 4
"""Of so many at most a cook is asked which is meant."""
_WORD = pattern(r"[^\W\d_]+")


def cut_so(walker: Hands, food: Words, piece: str) -> list[Batch]:
    """The batches with food of this name that the text says to be cut so, of the nearest place where there are any."""
    flow = walker.flow
    keys = any_of(food, flow.kitchen)
    if walker.present is not None and walker.present.keys.has(keys) and _is_cut(flow, walker.present, piece):
        return [walker.present]
    for tier in (walker.open, flow.named, flow.byproducts, flow.made):
        found = [batch for batch in tier.called(keys, flow.index) if _is_cut(flow, batch, piece)]
        if found:
            return found
    return []


def all_cut_so(walker: Hands, piece: str) -> list[Batch]:
    """All that is there and was cut into such pieces: what is in hand, lies open, or was made before; the nearest
    first."""
    flow, present = walker.flow, walker.present
    if piece not in model_words(flow.kitchen.language).pieces:
        return []
    if piece not in flow.cut:
        flow.cut[piece] = CutSo({number for number, line in _all_lines(flow) if _cuts(flow, line, piece)})
    there = [batch for batch in map(flow.begun.__getitem__, flow.cut[piece].numbers(flow.log)) if batch.left > 0]
    here = [batch for batch in there if batch is present]
    here += [batch for batch in there if batch.home is walker.open and batch is not present]
    made = (batch for batch in there if batch.origin in WHOLE and batch.product is not None and batch not in here)
    return [*here, *islice(made, _ASKED)]


def _is_cut(flow: Flow, batch: Batch, piece: str) -> bool:
    """Whether a line of the work on it makes such pieces."""
    return any(_cuts(flow, line, piece) for line in _lines(flow, batch))


def _cuts(flow: Flow, line: str, piece: str) -> bool:
    """Whether a line names such pieces, or a verb that makes them."""
    language, verbs = flow.kitchen.language, flow.kitchen.verbs
    one, cuts = nouns(language).singular, model_words(language).cuts
    for word in _WORD.findall(line.lower()):
        verb = verbs.participle(word) or verbs.of_base(verbs.phrases.get(word) or "")
        if one(word) == piece or (verb is not None and piece in cuts.get(verb.base, ())):
            return True
    return False


def _lines(flow: Flow, batch: Batch) -> Iterator[str]:
    """The lines that worked on it, or on what went into it, or on what it was parted from."""
    numbers, actions = {batch.number}, set[int]()
    for entry in reversed(flow.log):
        effect = entry.effect
        into = effect.into if isinstance(effect, Takes) else effect.batch if isinstance(effect, Parts) else -1
        if isinstance(effect, Takes | Parts) and into in numbers:
            numbers.add(effect.source)
        is_left = isinstance(effect, Closes) and effect.origin in LEFT
        if isinstance(effect, Stands | Closes) and effect.batch in numbers and not is_left:
            actions.add(entry.action)
    for number, line in _all_lines(flow):
        if number in actions:
            yield line


def _all_lines(flow: Flow) -> Iterator[tuple[int, str]]:
    """The lines of the text, each with its number, without what they refer to: who takes slices has cut none."""
    source = flow.reading.document.source
    for number, labour in enumerate(flow.labours):
        line = labour.action.span
        text = source.slice(line)
        for reference in labour.references:
            first, last = reference.clause.span.start - line.start, reference.clause.span.end - line.start
            text = text[:first] + " " * (last - first) + text[last:]
        yield number, text
