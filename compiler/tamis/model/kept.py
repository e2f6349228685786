"""What a recipe asks back of food that was only there for a purpose: *the pasta water*, *the hot lard*."""

from __future__ import annotations

from tamis.model.words import plain
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Reference, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.flow import Flow


def what_is_kept(flow: Flow, noun: str) -> tuple[str, Measure | None]:
    """The fullest name by which it is asked for, and how much: what is lifted out, else all that is asked for; None
    where nobody says."""
    asked = [one for one in _asked(flow) if plain(one[0].name, flow.kitchen.language)[-1:] == (noun,)]
    name = max((reference.name for reference, _ in asked), key=lambda name: len(name.split()))
    measures = [(_measure(reference), lifted) for reference, lifted in asked]
    out = next((measure for measure, lifted in measures if measure and lifted), None)
    return name, out or _sum([measure for measure, _ in measures if measure])


def made_for_others(flow: Flow, at: int) -> bool:
    """Whether a component makes nothing but what is there for a purpose, and another component asks for that by the
    heading's name: `# Hot lard` over `[2 lb lard, for frying]`."""
    known = flow.for_others.get(at)
    if known is None:
        known = flow.for_others[at] = _is_for_others(flow, at)
    return known


def _is_for_others(flow: Flow, at: int) -> bool:
    lines = flow.lines_of(at)
    if not flow.reading.components[at].name or not all(food.purpose for line in lines for food in line.foods):
        return False
    if any(line.references for line in lines):
        return False
    name = flow.component_names[at]
    if flow.kitchen.cupboard.find(name):  # tins are made ready, and no butter
        return False
    return any(words and name[-len(words) :] == words[-len(name) :] for words in flow.askers())


def _measure(reference: Reference) -> Measure | None:
    return reference.share.measure if reference.share and reference.share.kind == "measure" else None


def _sum(measures: list[Measure]) -> Measure | None:
    if not measures or len({measure.unit for measure in measures}) > 1:
        return None
    lo, hi = (sum(getattr(measure.amount, end) for measure in measures) for end in ("lo", "hi"))
    return measures[0]._replace(amount=Amount(lo, hi))


def _asked(flow: Flow) -> Iterator[tuple[Reference, bool]]:
    """Everything that a recipe refers to, and whether its verb has it in hand and puts it into nothing: scooped out."""
    for labour in flow.labours:
        lifts = False
        for event in labour.events if labour.references else ():
            if isinstance(event, VerbUse):
                lifts = not event.verb.adds
            elif isinstance(event, Reference):
                yield event, lifts and not event.preposition
