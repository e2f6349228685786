"""The places of the food put together from the log: one fold over it.

What a line says of its place stands there already, with the rank of the evidence (`heat.py` decides it once). Batches
go in the order of the log, in which a component is made when it is wanted; the degrees of a station go in the order of
the text, in which a cook turns its knob.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.equipment import COLD
from tamis.model.effects import Gives, Parts, Sets, Stands, Takes
from tamis.model.places import Here, Knob, Places, Rank
from tamis.model.words import model_words
from tamis.quantity.amount import Amount
from tamis.quantity.measure import base
from tamis.reading.clauses import Ingredient, Reference
from tamis.typed import TYPE_CHECKING, Any, cast

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.model.effects import Entry
    from tamis.model.recipe import Action

_KNOBS: tuple[Station, ...] = ("oven", "grill", "bath")
"""Stations that keep the degrees that they were set to."""


_LITTLE = 60
"""Grams or millilitres of something hot that leave what they go into cold (common practice)."""
_LONG = 1800
"""Seconds off the heat after which a bowl of something hot bursts out of no blender (common practice)."""
_HOT = Fraction(60)
"""°C above which an oven is hot, and not a warm place for dough (common practice)."""


class _Fold:
    """The lines so far; where each batch was left, by which entry it came there, and which are full of hot liquid."""

    __slots__ = ("actions", "hot", "kitchen", "lies", "lines", "words")

    def __init__(self, actions: Sequence[Action], kitchen: Kitchen) -> None:
        self.actions = actions
        self.kitchen = kitchen
        self.words = model_words(kitchen.language).hot
        self.lines = [Here(action.number) for action in actions]
        self.lies: dict[int, tuple[Station, int]] = {}
        self.hot: set[int] = set()

    def takes(self, entry: Entry, effect: Takes) -> None:
        """What is hot makes hot what it goes into, unless it is little."""
        if effect.source in self.hot and not self._is_little(entry):
            self.hot.add(effect.into)

    def _is_little(self, entry: Entry) -> bool:
        read = self.actions[entry.action].reads[entry.read] if entry.read >= 0 else None
        measure = read.share.measure if isinstance(read, Reference) and read.share else None
        amount = base(measure, self.kitchen.units) if measure else None
        return amount is not None and amount.hi <= _LITTLE

    def gives(self, entry: Entry, effect: Gives) -> None:
        """So does a liquid that is hot when it goes in."""
        food = self.actions[entry.action].reads[entry.read] if entry.read >= 0 else None
        if effect.food is None or not isinstance(food, Ingredient) or food.goods is None or not food.goods.liquid:
            return
        if effect.food.mass.hi > _LITTLE and not self.words.isdisjoint(food.states):
            self.hot.add(effect.batch)

    def parts(self, entry: Entry, effect: Parts) -> None:
        """What comes out of something hot is hot."""
        if effect.source in self.hot:
            self.hot.add(effect.batch)

    def sets(self, entry: Entry, effect: Sets) -> None:
        """A line says how hot it is where it works."""
        here = self.lines[entry.action]
        if effect.set:
            here = here._replace(sets=(*here.sets, Knob(effect.read, effect.celsius)))
        else:
            here = here._replace(celsius=effect.celsius)
        self.lines[entry.action] = here

    def stands(self, entry: Entry, effect: Stands) -> None:
        """The end of a line: where its batch was, and is from now on."""
        batch, station = effect.batch, effect.station
        left, since = self.lies.get(batch, ("", -1))
        if left != station or not station:
            since = entry.number
        if effect.heats != "vessel":
            self.lies[batch] = (station, since) if effect.stays else ("", -1)
        self.lines[entry.action] = self.lines[entry.action]._replace(
            batch=-1 if effect.heats else batch,
            station=station,
            came_from=left,
            rank=cast("Rank", entry.why.rule),
            since=since,
            stays=effect.stays,
            heats=effect.heats,
            hot=batch in self.hot,
        )
        if batch >= 0:
            self._heat(self.actions[entry.action], batch, station)

    def _heat(self, action: Action, batch: int, station: Station) -> None:
        """Whether the line leaves its batch hot."""
        verbs = [use.verb for use in action.verbs]
        if any(verb.scalds and verb.base == action.work.verb for verb in verbs):
            self.hot.add(batch)
        elif station in COLD or any(verb.cools or verb.drains for verb in verbs) or _stands_long(action, station):
            self.hot.discard(batch)


def _stands_long(action: Action, station: Station) -> bool:
    """Whether food waits for so long off the heat that it is hot no more."""
    return not station and action.work.wait is not None and action.work.wait.lo >= _LONG


_DOES: dict[type, Callable[[_Fold, Entry, Any], None]] = {
    Gives: _Fold.gives,
    Takes: _Fold.takes,
    Parts: _Fold.parts,
    Sets: _Fold.sets,
    Stands: _Fold.stands,
}


def places_of(log: Sequence[Entry], actions: Sequence[Action], kitchen: Kitchen) -> Places:
    """Where the food of the lines is, by what the log says."""
    fold = _Fold(actions, kitchen)
    for entry in log:
        does = _DOES.get(type(entry.effect))
        if does:
            does(fold, entry, entry.effect)
    return Places(tuple(_with_degrees(fold.lines, log, actions)))


def _with_degrees(lines: Sequence[Here], log: Sequence[Entry], actions: Sequence[Action]) -> list[Here]:
    """The lines with how hot their stations are: what one is set to holds until it is set otherwise."""
    there: dict[Station, Amount] = {}
    found: list[Here] = []
    for here in lines:
        comes = log[here.since].action == here.action
        timed = actions[here.action].work.given == "text"
        preheat = _preheat(here, there.get("oven")) if here.station == "oven" and comes and timed else None
        if here.sets and here.station in _KNOBS:
            there[here.station] = here.sets[0].celsius
        celsius = here.sets[0].celsius if here.sets else here.celsius or there.get(here.station)
        found.append(here._replace(celsius=celsius, preheat=preheat) if celsius else here)
    return found


def _preheat(here: Here, before: Amount | None) -> Amount | None:
    """How hot an oven must be for the food of a line that does not heat it, where it was colder before."""
    hot = next((knob.celsius for knob in here.sets if knob.celsius.lo >= _HOT), None)
    if here.heats == "station" or hot is None:
        return None
    return hot if before is None or hot.hi > before.hi else None
