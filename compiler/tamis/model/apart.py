"""Lines that make something of their own beside what is in hand, and put it by: `sift [200 g flour] [as flour mixture]`
while the butter stands creamed."""

from __future__ import annotations

from itertools import takewhile

from tamis.model.batch import Food, answering, any_of, matches_food
from tamis.model.mass import NOTHING
from tamis.model.words import plain
from tamis.reading.clauses import Ingredient, Naming, Pause, Reference, Time, Tool, VerbUse
from tamis.reading.plain import plain_of
from tamis.reading.prose import prose_words
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.model.hands import Hands
    from tamis.model.labour import Labour
    from tamis.reading.reading import Event
    from tamis.syntax.document import Part


def closes_its_own(events: Sequence[Event], parts: Sequence[Part], kitchen: Kitchen) -> bool:
    """Whether a line, of these parts, begins with food, takes up nothing that was there, and is named or set aside in
    the end: it is a batch of its own, if its verb does not add to what is in hand, or if it is in a vessel that is new.
    Of a verb that nobody knows only such a vessel tells."""
    end = next((at for at, event in enumerate(events) if _closes(event)), 0)
    if end < 1 or any(isinstance(event, Ingredient | Reference) for event in events[end:]):
        return False
    verb = _begun_by(events[:end], parts, kitchen)
    if verb is None:
        return False
    # rice that is cooked may be cooked with the onions
    return _opens(events[:end]) or (isinstance(verb, VerbUse) and not verb.verb.adds and not verb.verb.heat)


_LINES = 60
"""So many lines further on what waits has gone in: no component has more."""


def waits_for_it(hands: Hands, labour: Labour) -> bool:
    """Whether a line begins with food of its own in a new vessel, or with what was put by, and what is in hand is named
    further on: `boil [1 kg sugar] with [300 ml water] [in a pan]`, where the next line adds [the tomatoes] or carves
    [the chicken]. What is then lifted out was in it."""
    flow, present = hands.flow, hands.present
    kitchen = flow.kitchen
    if present is None or not _opens(labour.events):
        return False
    language = kitchen.language
    if any([present.keys.has(any_of(plain(one.name, language), kitchen)) for one in labour.references]):
        return False
    own = [event for event in labour.events if not isinstance(event, Reference)]
    if not _works_first(labour.events) and _begun_by(own, labour.action.parts, kitchen) is None:
        return False
    new = [Food.of(-1, food, plain(food.name, language), NOTHING, kitchen) for food in labour.foods]
    end = flow.last_reference.get(hands.component, -1) + 1
    for line in flow.labours[hands.number : min(hands.number + _LINES, end)]:
        verb: VerbUse | None = None
        for event in line.events:
            if isinstance(event, VerbUse):
                verb = event
            elif isinstance(event, Reference) and event.name and event.share is None:
                words = plain(event.name, language)
                if present.keys.has(any_of(words, kitchen)) and not any(
                    matches_food(words, food, kitchen) for food in new
                ):
                    inside = event.preposition in prose_words(language).inside
                    return verb is not None and (inside or not (verb.verb.removes or verb.verb.lifts))
    return False


def _works_first(events: Sequence[Event]) -> bool:
    """Whether a line begins with work on what was put by: *boil [the spice bag] with [1 l vinegar]*."""
    verb: VerbUse | None = None
    for event in events:
        if isinstance(event, Ingredient | Reference):
            first = isinstance(event, Reference) and not event.preposition
            return first and verb is not None and not verb.verb.adds and not verb.verb.moves
        verb = event if isinstance(event, VerbUse) else verb
    return False


def _opens(events: Sequence[Event]) -> bool:
    return any(isinstance(event, Tool) and _is_new_vessel(event) for event in events)


def _begun_by(events: Sequence[Event], parts: Sequence[Part], kitchen: Kitchen) -> Event | None:
    """The first word of work on food, or that food, where a line begins with food of its own and takes up nothing that
    was there."""
    opened = _opens(events)
    first = next((at for at, event in enumerate(events) if not _leads_in(event, opened)), len(events) - 1)
    verb = events[first]
    food = verb
    if isinstance(verb, VerbUse):  # boil for 9 min, 400 g pasta
        food = next((event for event in events[first + 1 :] if not isinstance(event, Time)), verb)
    if not isinstance(food, Ingredient) or food.purpose or food.preposition:
        return None
    if isinstance(verb, VerbUse) and _goes_to_it(food, parts, kitchen):  # *beat smooth with [3 eggs]*
        return None
    return None if any(isinstance(event, Reference) for event in events) else verb


def _goes_to_it(food: Ingredient, parts: Sequence[Part], kitchen: Kitchen) -> bool:
    """Whether the word before a food says that the work on what is in hand takes it, or goes into it."""
    at = next((at for at, part in enumerate(parts) if part is food.clause), 0)
    before = parts[at - 1] if at > 0 else None
    if not isinstance(before, Text):
        return False
    said = plain_of(before.text, kitchen)
    return len(said) > 0 and said.phrase(prose_words(kitchen.language).puts, len(said) - 1) > 0


def _leads_in(event: Event, opened: bool) -> bool:
    """Whether it says before the work when or in what new vessel that is done: *just before serving, in a bowl*."""
    return isinstance(event, Pause) or (isinstance(event, Tool) and opened)


def parts_off(hands: Hands, labour: Labour) -> bool:
    """Whether a line takes only what a share of the food in hand has left, and names it: `cut rings from [the remaining
    egg] [as egg rings]`."""
    present = hands.present
    if present is None or labour.foods or len(labour.references) != 1:
        return False
    first, before = labour.references[0], list(takewhile(lambda event: not _closes(event), labour.events))
    if len(before) < 2 or first not in before or first.share is None or first.share.kind != "rest":
        return False
    if any(isinstance(event, VerbUse) and event.verb.adds for event in before):
        return False
    keys = answering(plain(first.name, hands.flow.kitchen.language), hands.flow.kitchen)
    return present.keys.has(keys) and bool(hands.open.shared.called(keys, hands.flow.index))


def _closes(event: Event) -> bool:
    return isinstance(event, Naming) and event.kind != "leaving"


def _is_new_vessel(tool: Tool) -> bool:
    return tool.equipment.kind == "vessel" and bool(tool.preposition) and not tool.definite
