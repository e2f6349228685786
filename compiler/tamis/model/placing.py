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
from tamis.reading.clauses import Ingredient, Pause, Reference
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
_LET_COLD = 3600
"""Seconds with nothing in it for which nobody keeps an oven hot (common practice)."""


class _Fold:
    """The lines so far, with the degrees that they tell; where each batch was left, by which entry it came there, and
    which are full of hot liquid."""

    __slots__ = ("actions", "celsius", "hot", "kitchen", "knobs", "lies", "lines", "words")

    def __init__(self, actions: Sequence[Action], kitchen: Kitchen) -> None:
        self.actions = actions
        self.kitchen = kitchen
        self.words = model_words(kitchen.language).hot
        self.lines: dict[int, Here] = {}
        self.knobs: dict[int, list[Knob]] = {}
        self.celsius: dict[int, Amount] = {}
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
        if effect.set:
            self.knobs.setdefault(entry.action, []).append(Knob(effect.read, effect.celsius))
        else:
            self.celsius[entry.action] = effect.celsius

    def stands(self, entry: Entry, effect: Stands) -> None:
        """The end of a line: where its batch was, and is from now on."""
        batch, station = effect.batch, effect.station
        left, since = self.lies.get(batch, ("", -1))
        if left != station or not station:
            since = entry.number
        if effect.heats != "vessel":
            self.lies[batch] = (station, since) if effect.stays else ("", -1)
        self.lines[entry.action] = Here(
            entry.action,
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
        worked = action.work.verb
        if worked and any([use.verb.scalds and use.verb.base == worked for use in action.verbs]):
            self.hot.add(batch)
        elif batch in self.hot and (station in COLD or _cools(action, station)):
            self.hot.discard(batch)


def _cools(action: Action, station: Station) -> bool:
    """Whether a line leaves nothing hot: it cools or drains its food, or that waits for so long off the heat."""
    if any(use.verb.cools or use.verb.drains for use in action.verbs):
        return True
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
        effect = entry.effect
        does = _DOES.get(type(effect))
        if does is not None:
            does(fold, entry, effect)
    return Places(tuple(_with_degrees(fold, log)))


def _with_degrees(fold: _Fold, log: Sequence[Entry]) -> list[Here]:
    """The lines with how hot their stations are: what one is set to holds until it is set otherwise."""
    there: dict[Station, Amount] = {}
    found: list[Here] = []
    last = 0  # the line that the oven was last hot for
    for action in fold.actions:
        here, sets = fold.lines.get(action.number) or Here(action.number), fold.knobs.get(action.number, ())
        preheat, oven = None, there.get("oven")
        waits = action.work.given == "text" or any([isinstance(read, Pause) for read in action.reads])
        if here.station == "oven" and (sets or oven) and waits and log[here.since].action == here.action:
            wanted = [knob.celsius for knob in sets] or [there["oven"]]
            preheat = _preheat(here, wanted, None if _stood_cold(fold.actions, action.number, last) else oven)
        last = action.number if here.station == "oven" else last
        if sets and here.station in _KNOBS:
            there[here.station] = sets[0].celsius
        celsius = sets[0].celsius if sets else fold.celsius.get(action.number) or there.get(here.station)
        found.append(here._replace(celsius=celsius, sets=tuple(sets), preheat=preheat) if celsius else here)
    return found


def _stood_cold(actions: Sequence[Action], line: int, last: int) -> bool:
    """Whether food of a line has waited for so long since the oven was last hot that this is cold again."""
    seen, todo = set[int](), [line]
    while todo:
        new = {other for other in actions[todo.pop()].after if last < other < line} - seen
        seen |= new
        todo += new
    waits = [wait for other in seen if (wait := actions[other].work.wait) is not None]
    return any([wait.lo >= _LET_COLD for wait in waits])


def _preheat(here: Here, wanted: Sequence[Amount], before: Amount | None) -> Amount | None:
    """How hot an oven must be for the food of a line that does not heat it, where it was colder before."""
    hot = next((celsius for celsius in wanted if celsius.lo >= _HOT), None)
    if here.heats == "station" or hot is None:
        return None
    return hot if before is None or hot.hi > before.hi else None
