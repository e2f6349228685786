"""How much of a batch a line brings to its heat: what is hot already, or cooks there, takes no time.

How hot food is has no mark in the text. It follows from what happened to it: what went in hot or cold, what boiled, how
long it stood off the heat since. So this is a fold over the log, taken up where it was left whenever a line asks.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from tamis.kitchen.equipment import COLD
from tamis.model.effects import Closes, Gives, Loses, Parts, Reaches, Redoes, Stands, Takes
from tamis.model.mass import NONE, mass_of
from tamis.model.words import model_words
from tamis.quantity.measure import base
from tamis.reading.clauses import Cue, Ingredient, Reference, Target, Time, Tool, VerbUse
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.kitchen.equipment import Station
    from tamis.model.effects import Entry
    from tamis.model.flow import Flow
    from tamis.model.labour import Labour
    from tamis.model.line import Line
    from tamis.model.recipe import Action

_ROOM, _BOILS = Fraction(20), 1000
"""°C of a room, and how hot food is that boils, in thousandths of the way from there to 100 °C."""
_FRIDGE, _FROZEN = -188, -1000
"""The same of food from a fridge (5 °C), and from a freezer: to melt ice takes what brings it to the boil
(334 kJ/kg)."""
_HOT, _BAKED = 750, 700
"""The same of what was heated, but did not boil, and of what comes out of an oven (80 °C, 75 °C: common practice)."""
_RING, _PAN, _OVEN = 300, 600, 3600
"""Seconds in which a kilo comes from the room's warmth to the boil: in a pot (see `bring` in `grammar/verbs.toml`),
in a frying pan, of whose heat half goes off in steam, and in an oven (common practice)."""
_COOLS, _COOLS_PER_KG = 2700, 1200
"""Seconds in which a pot loses some three fifths of its warmth, and how much longer each kilo takes: a litre comes down
from the boil to 60 °C in three quarters of an hour (common practice)."""
_VESSEL = 300
"""Grams of water that take as much heat as a pan and the air around it (common practice)."""
_FAR = 200
"""So many lines further on everything is as cold as the room."""
_LAST = 86400


class _Pot:
    """A batch as a thing that is warm: its `grams`, how hot it is since its line `last`, whether it is `on` the heat,
    and the `water` that nobody measured and that it comes to the boil in."""

    __slots__ = ("grams", "heat", "last", "on", "water")

    def __init__(self, grams: int = 0, heat: int = 0, last: int = -1) -> None:
        self.grams, self.heat, self.last = grams, heat, last
        self.on = False
        self.water = 0

    def mix(self, grams: int, heat: int) -> None:
        """So much more comes in that is so hot."""
        both = self.grams + grams
        if both:
            self.heat = (self.grams * self.heat + grams * heat) // both
        self.grams = both

    def stand(self, seconds: int, around: int = 0) -> None:
        """It stands so long where it is as warm as `around`; it loses the more the hotter it is."""
        if self.heat != around and seconds:
            slow = _COOLS + _COOLS_PER_KG * self.grams // 1000
            self.heat = around + (self.heat - around) * slow * slow // (slow * slow + slow * seconds + seconds**2 // 2)

    def take_heat(self, seconds: int, per_kg: int, most: int) -> None:
        """It stands so long on a heat that brings a kilo to the boil in so many seconds."""
        if self.heat < most:
            self.heat = min(most, self.heat + _BOILS * 1000 * seconds // (per_kg * (self.grams + _VESSEL)))


class Warmth:
    """How hot the batches are, as far as the log was read."""

    __slots__ = ("_cleans", "_flow", "_pots", "_reached", "_read")

    def __init__(self, flow: Flow) -> None:
        self._flow = flow
        self._pots: dict[int, _Pot] = {}
        self._cleans = False  # what the last verb does: the water that it names is gone after it
        self._read = 0
        self._reached: dict[int, int | None] = {}  # by line, how hot it has made its food; None once that is so

    def missing(self, act: Line, goal: int) -> Fraction:
        """Grams that a line brings from the room's warmth to the boil, or would in the same time; its food gets so
        hot."""
        log, batch = self._flow.log, -1
        while self._read < len(log):
            entry = log[self._read]
            if entry.action == act.number and type(entry.effect) in _ENDS and self._reached.get(act.number):
                break  # what comes now happens to what is hot already
            batch = entry.batch if entry.action == act.number else batch
            self._take(entry)
        pot = self._pot(batch, act.number) if batch >= 0 else _Pot()
        return Fraction(max(0, pot.grams * (goal - pot.heat)) + pot.water * goal, _BOILS)

    def _take(self, entry: Entry) -> None:
        self._read += 1
        does = _DOES.get(type(entry.effect))
        if does is not None:
            does(self, entry, entry.effect)

    def _pot(self, number: int, action: int) -> _Pot:
        """A batch as it is when a line comes to it."""
        pot = self._pots.setdefault(number, _Pot(last=action))
        if pot.last < action:
            if pot.heat and not pot.on:
                pot.stand(self._between(pot.last, action))
            pot.last = action
        return pot

    def _between(self, last: int, action: int) -> int:
        """Seconds of the lines between two; what is done beside another wait takes none of its own."""
        if action - last > _FAR:
            return _LAST
        lines = [self._flow.actions.get(at) for at in range(last + 1, action)]
        return sum([_length(line) for line in lines if line is not None and line.beside is None])

    def gives(self, entry: Entry, effect: Gives) -> None:
        if effect.batch < 0:
            return
        pot, food = self._pot(effect.batch, entry.action), self._flow.uses[effect.use].ingredient
        words = model_words(self._flow.kitchen.language)
        hot = not words.hot.isdisjoint(food.states)
        liquid = food.goods is not None and food.goods.wet
        if effect.food is not None:
            cold = _FROZEN if not words.frozen.isdisjoint(food.states) else 0
            pot.mix(int(effect.food.mass.lo), _BOILS if hot else cold)
        elif liquid and not (hot or food.measures or self._cleans):
            pot.water = pot.grams  # what covers food weighs about as much

    def takes(self, entry: Entry, effect: Takes) -> None:
        source = self._pot(effect.source, entry.action)
        read = self._flow.labours[entry.action].reads[entry.read] if entry.read >= 0 else None
        share = read.share.measure if isinstance(read, Reference) and read.share else None
        said = base(share, self._flow.kitchen.units) if share else None  # a litre of it weighs about a kilo
        scale = NONE if effect.scale is None else effect.scale
        grams = int(source.grams * scale if said is None else said.lo)
        self._pot(effect.into, entry.action).mix(grams, source.heat)

    def parts(self, entry: Entry, effect: Parts) -> None:
        source = self._pot(effect.source, entry.action) if effect.source >= 0 else _Pot()
        mass = effect.mass.lo if effect.mass is not None else sum([food.mass.lo for food in effect.foods])
        self._pots[effect.batch] = _Pot(int(mass), source.heat, entry.action)
        if effect.less:
            source.grams = max(0, source.grams - int(mass))

    def loses(self, entry: Entry, effect: Loses) -> None:
        pot = self._pot(effect.batch, entry.action)
        pot.grams = max(0, pot.grams - int(sum([food.mass.lo for food in effect.foods])))

    def reaches(self, entry: Entry, effect: Reaches) -> None:
        self._pot(effect.batch, entry.action).grams = int(effect.mass.lo)

    def redoes(self, entry: Entry, effect: Redoes) -> None:
        if effect.batch >= 0:
            self._pot(effect.batch, entry.action).mix(int(effect.mass.lo), 0)

    def closes(self, entry: Entry, effect: Closes) -> None:
        """What is put by is on no heat."""
        if entry.action >= 0:
            self._heat(entry.action, effect.batch)
        self._pot(effect.batch, max(0, entry.action)).on = False

    def ends(self, entry: Entry, effect: Target | Cue | Time) -> None:
        """From here on the food of a line is as hot as its verb makes it, once the clauses of that are read."""
        labour = self._flow.labours[entry.action]
        use = labour.time_verb
        if use is None or entry.words.start < use.span.start or _heats_other(labour, use):
            return
        if use.verb.scalds or (use.verb.water_per_kg and (use.verb.waits or type(effect) is Target)):
            self._reached.setdefault(entry.action, _goal(labour, use))

    def begins(self, entry: Entry, effect: VerbUse) -> None:
        self._heat(entry.action, entry.batch)
        self._cleans = effect.verb.prepares
        if effect.verb.drains and entry.batch >= 0:
            self._pot(entry.batch, entry.action).water = 0

    def _heat(self, action: int, batch: int) -> None:
        goal = self._reached.get(action)
        if goal is not None and batch >= 0:
            pot = self._pot(batch, action)
            pot.heat, pot.water = max(goal, pot.heat), 0
            self._reached[action] = None

    def stands(self, entry: Entry, effect: Stands) -> None:
        """The end of a line: what its heat or its wait has done to the food."""
        if effect.batch < 0 or effect.heats:
            return
        self._heat(entry.action, effect.batch)
        pot, labour = self._pot(effect.batch, entry.action), self._flow.labours[entry.action]
        action = self._flow.actions[entry.action]
        if entry.action not in self._reached:
            _work_on(pot, labour, action, effect.station if entry.why.rule != "guess" else "")
        pot.on = bool(labour.warms) or (effect.stays and effect.station not in COLD)


_DOES: dict[type, Callable[[Warmth, Entry, Any], None]] = {
    Gives: Warmth.gives,
    Takes: Warmth.takes,
    Parts: Warmth.parts,
    Loses: Warmth.loses,
    Reaches: Warmth.reaches,
    Redoes: Warmth.redoes,
    Closes: Warmth.closes,
    Target: Warmth.ends,
    Cue: Warmth.ends,
    Time: Warmth.ends,
    VerbUse: Warmth.begins,
    Stands: Warmth.stands,
}
_ENDS = (VerbUse, Closes)


def _work_on(pot: _Pot, labour: Labour, action: Action, station: Station | str) -> None:
    """What a line that brings nothing to the boil does to how hot its food is."""
    seconds = _length(action)
    verb = labour.time_verb.verb if labour.time_verb else None
    if station in ("oven", "grill", "bath"):
        pot.take_heat(seconds, _OVEN, _BAKED)
    elif station == "ring":
        pot.take_heat(seconds, _PAN if verb and verb.cooks else _RING, _BOILS if verb and verb.cooks else _HOT)
    elif any([use.verb.cools for use in labour.verbs]) and (labour.cues or action.work.given != "text"):
        pot.heat = min(0, pot.heat)  # under the tap, or until it is cold
    else:
        pot.water = pot.water if action.work.wait is None else 0  # what was soaked is drained
        pot.stand(seconds, _FRIDGE if station in COLD else 0)


def _heats_other(labour: Labour, use: VerbUse) -> bool:
    """Whether a verb heats an oven, or fat and water for what waits beside it."""
    reads = labour.clauses_of(use)
    if any([isinstance(read, Tool) and read.equipment.kind == "station" and not read.preposition for read in reads]):
        return True
    foods = [read for read in reads if isinstance(read, Ingredient) and not read.preposition]
    return bool(foods) and all([bool(food.purpose) for food in foods])


def _goal(labour: Labour, use: VerbUse) -> int:
    """How hot a verb makes its food: as the degrees right behind it say, else it boils."""
    for event in () if use.verb.cooks else labour.behind(use):
        if isinstance(event, VerbUse):
            break
        if isinstance(event, Target):
            if event.celsius is None:
                break
            return max(0, min(_BOILS, int((event.celsius.lo - _ROOM) * _BOILS / 80)))
    return _BOILS


def _length(action: Action) -> int:
    return action.work.handling + (ceil(action.work.wait.lo) if action.work.wait is not None else 0)


def heated_by(act: Line, use: VerbUse, station: Station) -> Fraction:
    """Grams that a line with such a verb warms at a station: over water that takes as long to fewer degrees."""
    if not act.uses and not act.takings and any(_is_empty_pan(tool) for tool in act.tools):
        return NONE
    own, goal = _own(act, use), _BOILS if station == "bath" else _goal(act.labour, use)
    if own is not None and (not own or not use.verb.waits):
        return own * goal / _BOILS
    flow = act.walker.flow
    warmth: Warmth = flow.warmth or Warmth(flow)
    flow.warmth = warmth
    return warmth.missing(act, goal)


def _is_empty_pan(tool: Tool) -> bool:
    """*Heat [a frying pan]*: nothing lies in it yet."""
    return tool.equipment.kind == "vessel" and bool(tool.equipment.station) and not (tool.preposition or tool.definite)


def _own(act: Line, use: VerbUse) -> Fraction | None:
    """Grams of the foods that alone stand behind a verb: *melt [60 g butter]* warms the butter, whatever lies beside
    it, and *heat [1 l oil, for frying]* nothing of that; None where there are none."""
    reads = act.labour.clauses_of(use)
    foods = [read for read in reads if isinstance(read, Ingredient) and not read.preposition]
    if not foods or any([isinstance(read, Reference) and not read.preposition for read in reads]):
        return None
    return sum((mass_of(food, act.walker.flow.kitchen).lo for food in foods), NONE)
