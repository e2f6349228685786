"""One action performed: its clauses act on the batches in order, and what it costs and waits for is worked out."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from tamis.model.batch import Batch
from tamis.model.cold import take_cold, take_rinsed, take_sieved
from tamis.model.dividing import divide
from tamis.model.effects import Why
from tamis.model.fineness import cuts_what_it_names, fine_cuts, solid
from tamis.model.foods import put_in
from tamis.model.heat import Heat, heat_of, only_sets, tell
from tamis.model.line import Line
from tamis.model.mass import NOTHING, ONE
from tamis.model.one_of import as_piece
from tamis.model.paces import AT_ONCE, cooked_at_a_time, in_pieces, one_after_another, pace_of, paced
from tamis.model.pieces import batches_of, before_it_is_cut, heaviest_piece, worked_one_by_one
from tamis.model.reached import reached
from tamis.model.recipe import Action, Work
from tamis.model.references import hold_again, refer
from tamis.model.words import plain
from tamis.model.work import missing_times, work_of
from tamis.model.worked_mass import masses_before, weigh_so_far
from tamis.reading.clauses import (
    Cue,
    Division,
    Ingredient,
    Manner,
    Naming,
    Pause,
    Read,
    Reference,
    Target,
    Time,
    Tool,
    VerbUse,
)
from tamis.reading.exact import EXACT
from tamis.typed import TYPE_CHECKING, Any, get_args
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.kitchen.equipment import Station
    from tamis.model.paces import Pace


SAME_BATCH, READY, HEATED = Why("same-batch"), Why("ready"), Why("heated")
GOES_BACK = Why("goes-back")


_TURN, _LAID, _SEEN = 10, 30, 120
"""Seconds to turn a knob, to lay food in water, and from which on a cook asks how long it takes to boil; common
practice."""


class Act(Line):
    """Performs a line."""

    __slots__ = ()

    def perform(self) -> Action:
        """Let the events act, left to right; then say what the action costs and waits for."""
        walker = self.walker
        start = walker.present
        self.mass_before, self.pieces_before = (start.mass, start.pieces) if start else (NOTHING, None)
        reads, labour = self.reads, self.labour
        weighs = len(labour.verbs) > 1 and ("per_kg" in labour.does or "per_piece" in labour.does)
        for at, event in enumerate(self.read.events):
            if isinstance(event, VerbUse):
                if weighs and reads:
                    weigh_so_far(self, at)
                self._begin(event, at)
                continue
            span, kind = event.clause.span, type(event)
            if self.joins is not None:
                self._join(span.start)
            exact, act = _DOES[kind]
            walker.clause, walker.words, walker.read_at = span, exact(event) if exact else span, len(reads)
            if self.parting is not None:
                self._turn_back(at)
            if act is not None:
                act(self, event)
            else:
                walker.emit(event)  # type: ignore[arg-type]  # what a batch is changed by has a function
            reads.append(event)
        if self.joins is not None:
            self._join(self.read.span.end)
        walker.at(self.number, self.read.span, self.read.span, -1)
        take_rinsed(self)
        take_sieved(self)
        if "waits" in self.labour.does:
            for finding in missing_times(self.read, self.labour, walker.flow.kitchen):
                walker.tell(finding)
        action = self._record(tuple(reads), start)
        if self.parting is not None:
            from tamis.model.lifted import settle

            settle(self, action.work.wait is not None)
        return action

    def _begin(self, use: VerbUse, at: int) -> None:
        """A verb, the event at a place, from which on it is that which is done."""
        walker, span = self.walker, use.span
        if self.joins is not None:
            self._join(span.start)
        self.verb, self.worked = use.verb, len(self.uses)
        walker.clause, walker.words, walker.read_at = span, span, -1
        if self.parting is not None:
            self._turn_back(at)
        walker.emit(use)

    def _turn_back(self, at: int) -> None:
        """Where food was lifted out: whether the event at this place belongs to what it was lifted out of."""
        from tamis.model.lifted import turn_back

        turn_back(self, at)

    def _join(self, place: int) -> None:
        """What a meanwhile has made goes into the work before it, if the line says so before this place."""
        joins = self.joins
        if joins is None or joins.place > place:
            return
        walker, before = self.walker, joins.before
        made, self.joins = joins.made or walker.present, None
        self.tools_before, self.tools = self.tools, []
        walker.at(self.number, joins.said, joins.said, -1)
        if joins.made is None:
            walker.turn(before, GOES_BACK)
            self.link(before)
        if made is not None and made is not before:
            self.link(made)
            walker.take(made, joins.said, ONE, ONE, whole=True)
        self.joined = True

    def _record(self, reads: tuple[Read, ...], start: Batch | None) -> Action:
        walker, labour = self.walker, self.labour
        batch = walker.present or (self.parting.lifted if self.parting and self.parting.out else start)
        take_cold(self)
        heat = heat_of(self, labour, batch)
        worked = batch or self.named  # what went aside under its name was worked on here
        if heat.heats:
            batch = worked = None
        elif batch is None:
            self._needs_food(heat)
        other = self._heats_other()
        # … a sauce is warmed beside what is in hand, but what is left of a syrup is that, when some was poured off
        beside = other and labour.references[0].share is None
        self._links(None if beside or heat.heats else start, heat)
        pace = pace_of(self)
        numbers, loads = self._batches(batch, pace, other)
        work = self._work(reads, worked, heat, pace, numbers)
        at_once = self.at_once or (not beside and self._follows_at_once(start or self.carried))
        tell(self, heat, batch)
        self._touch(batch, start, work, heat)
        return Action(
            number=self.number,
            component=walker.component,
            step=self.step,
            span=self.read.span,
            parts=self.read.parts,
            reads=reads,
            verbs=tuple(labour.verbs),
            work=work,
            times=self.times,
            batches=numbers,
            loads=loads,
            after=tuple(sorted(self.after)),
            after_start=tuple(sorted(self.after_start)),
            beside=self.beside,
            at_once=at_once,
            within=self.within,
            heats=heat.heats,
            continues=self.read.continues,
            settings=tuple(labour.settings),
            targets=tuple(labour.targets),
            tending=tuple(labour.tending),
            tools=(*self.tools_before, *self.tools),
            uses=tuple(self.uses),
            takings=tuple(self.takings),
            product=self.product,
            piece_mass=self.piece_mass,
        )

    def _batches(self, batch: Batch | None, pace: Pace, other: bool) -> tuple[Fraction, bool]:
        """How many batches the line is done in; what is served is served once, and so is a sauce warmed for it, which
        is `other` food."""
        labour = self.labour
        sizes = [repeat.number for repeat in labour.repeats if repeat.kind == "batch-size"]
        size = (sizes and sizes[0]) or (Manner in labour.kinds and cooked_at_a_time(self))
        if size:
            self.batches = batches_of(self, batch, size), False
        if other or "serves" in labour.does:
            return ONE, False
        alone = one_after_another(self, batch, pace) if pace.whole and self.batches[0] == ONE else 0
        return (Fraction(alone), False) if alone else self.batches

    def _heats_other(self) -> bool:
        """Whether a line of a step in batches heats what was made elsewhere, for all of them: `warm [the sauce]`."""
        if not self.takings or self.uses or self.labour.repeats:
            return False
        use, named = (*self.read.events, None, None)[:2]
        return isinstance(use, VerbUse) and use.verb.heat and isinstance(named, Reference) and not named.preposition

    def _warmed(self, batch: Batch | None, station: Station) -> Fraction | None:
        """Grams that the line warms, or that cool by themselves, if that is not all of the batch."""
        use = self.labour.time_verb
        if use is None or batch is None or not use.verb.estimate_per_kg:
            return None
        if not use.verb.water_per_kg:  # what lies in twenty glasses is cold as soon as one of them
            return batch.mass.lo / batch.pieces[0].lo if batch.pieces and not use.verb.heat else None
        from tamis.model.warming import heated_by

        return heated_by(self, use, station)

    def _work(self, reads: tuple[Read, ...], batch: Batch | None, heat: Heat, pace: Pace, batches: Fraction) -> Work:
        """How long the line takes and who is busy with it."""
        labour, masses = self.labour, masses_before(self, batch)
        pieces = in_pieces(self, batch, pace)
        if batches is not ONE:
            pieces = ceil(pieces / batches)  # of which each batch has its share
        work = work_of(
            labour,
            batch.mass if batch else NOTHING,
            pieces,
            self.walker.flow.kitchen,
            heat.station,
            self.cold_water,
            heaviest_piece(self, labour.time, batch),
            worked_one_by_one(self, batch, masses),
            self._warmed(batch, heat.station),
            masses,
            batches,
            before_it_is_cut(self) | cuts_what_it_names(self),
            fine_cuts(self),
            self._vessels(batch),
        )
        work = paced(self, work, pace, pieces) if pace is not AT_ONCE else work
        if work.given == "text":
            work = work._replace(boils_up=self._boils_up(batch, heat.station))
        if work.wait is not None and not work.handling and not work.hands and self._is_laid():
            work = work._replace(handling=_LAID)
        if heat.heats and work.wait is None:
            work = work._replace(handling=0)
        if work.given == "verb" and not heat.heats and only_sets(heat, labour):
            work = work._replace(wait=None, given="default", handling=work.handling or _TURN)
        return Work() if reads and self._is_no_work(len(reads)) else work

    def _vessels(self, batch: Batch | None) -> int:
        """How many vessels the line fills, lays on or labels, where its verbs ask for it."""
        if "per_vessel" not in self.labour.does:
            return 0
        from tamis.model.vessels import vessels_of

        return vessels_of(self, batch)

    def _boils_up(self, batch: Batch | None, station: Station) -> int:
        """Seconds in which a liquid in hand comes to the boil, where the line only says how long it boils."""
        use = self.labour.time_verb
        if use is None or batch is None or station != "ring" or not (use.verb.scalds and use.verb.water_per_kg):
            return 0
        if batch.mass.known and use.verb.water_per_kg * batch.mass.hi / 1000 < _SEEN:
            return 0
        put_on = any([food.preposition and food.goods and food.goods.liquid for food in self.labour.foods])
        if self.cold_water or put_on or solid(batch, self).hi * 3 > batch.mass.hi * 2:
            return 0  # water that was put on before, and food that goes into what boils already
        from tamis.model.warming import heated_by

        seconds = ceil(use.verb.water_per_kg * heated_by(self, use, station) / 1000)
        return seconds if seconds >= _SEEN else 0

    def _is_laid(self) -> bool:
        """Whether a wait without heat begins with food that the cook lays there: *soak [3 sheets gelatine]*."""
        use, uses = self.labour.time_verb, self.walker.flow.uses
        keeps = use is not None and use.verb.keeps and not (use.verb.heat or use.verb.off)
        return keeps and any([uses[number].in_batch for number in self.uses])

    def _is_no_work(self, reads: int) -> bool:
        """Whether all that a line has to read is what it repeats, and with which of what was made before, whose work is
        that of other lines; the name under which something is *set aside*; or that it is kept warm."""
        labour = self.labour
        if labour.repeats and len(labour.repeats) + len(labour.references) == reads and not labour.verbs:
            return all([repeat.kind == "step-times" for repeat in labour.repeats])
        if len(labour.pauses) == reads:
            return not labour.time and all([use.verb is labour.warms for use in labour.verbs])
        return not labour.verbs and len(labour.kinds.get(Naming, ())) == reads

    def _needs_food(self, heat: Heat) -> None:
        """Food is cooked, or stands in the oven, but none is there: it was named in plain words, or not at all."""
        use = self.labour.time_verb or next(iter(self.labour.verbs), None)
        in_oven = heat.station in ("oven", "grill") and self.labour.time is not None
        if use is None or not (use.verb.cooks or in_oven) or self.uses or self.takings or self.walker.has_unread():
            return
        tools = [tool for tool in self.tools if not tool.preposition] if use.verb.cooks else self.walker.tools
        if any(tool.equipment.kind not in ("station", "lining") for tool in tools):
            return
        message = f"“{use.text}” has nothing to work on: no food is in the batch here, and no equipment is named"
        the, jars = (example(self.walker.flow.kitchen.language, key) for key in ("the_any", "jars"))
        hint = f"name in brackets what this is done to: {the}, a measured food, or equipment as in {jars}"
        if self.beside is not None:
            hint = (
                "name in brackets what this is done to; "
                f"{example(self.walker.flow.kitchen.language, 'meanwhile')} at the start of a step lasts to its end: "
                "begin a new step, after a blank line, where the earlier work goes on"
            )
        self.walker.find("nothing-there", "warning", use.span, message, hint)

    def _links(self, start: Batch | None, heat: Heat) -> None:
        """What must have ended before: the batch's last action, prepared equipment, a heated station."""
        flow = self.walker.flow
        if start and start.last is not None:
            self.wait_for(start.last, SAME_BATCH, start.early)
        for tool in self.tools:
            ready = flow.ready(tool.equipment.name)
            if ready is not None:
                self.wait_for(ready, READY)
        if heat.station and not heat.heats:
            ready = flow.station_ready.get(heat.station)
            if ready is not None:
                self.wait_for(ready, HEATED)

    def _follows_at_once(self, start: Batch | None) -> bool:
        """After an estimate, and while the batch is on the heat, the next line follows at once."""
        if start is None or start.last is None:
            return False
        if start.early:
            return start.on_heat
        before = self.walker.flow.actions.get(start.last)
        if before is None:
            return False
        verb = self.walker.flow.kitchen.verbs.of_base(before.work.verb) if before.work.verb else None
        keeps = verb is not None and verb.keeps
        estimate = before.work.wait is not None and not before.work.window and not keeps
        return start.on_heat or estimate

    def _touch(self, batch: Batch | None, start: Batch | None, work: Work, heat: Heat) -> None:
        """The batch has been worked on by this action, and lies where it put it."""
        flow = self.walker.flow
        if heat.heats:
            flow.station_ready[heat.heats] = self.number
            self.walker.heated = heat.heats
            for tool in self.tools:
                flow.tool_ready[tool.equipment.name] = self.number
        if heat.station and heat.hot:
            flow.hot_stations.add(heat.station)
        if heat.vessel:
            self.walker.hot_vessel = (heat.vessel.equipment, heat.station)
        elif heat.on_heat:
            self.walker.hot_vessel = None
        if batch is None:
            if not heat.heats:
                self._ready_tools(work)
            return
        batch.last, batch.early = self.number, False
        batch.vessel = batch.vessel or self.vessel
        if heat.vessel:
            return
        batch.sure = heat.rule != "guess"
        batch.on_heat, batch.station = heat.on_heat, heat.station if heat.on_heat else ""
        if batch.on_heat:
            flow.on_heat.add(self.number)

    def _ready_tools(self, work: Work) -> None:
        """*Sterilise [6 jars] [for 20 min]*: what is filled into the jars comes after it, and after what the next lines
        do to them: *leave them upside down [until dry]*."""
        ready, actions = self.walker.flow.tool_ready, self.walker.flow.actions
        before = actions.get(self.number - 1)
        if before is not None and before.component == self.walker.component and not self.uses and not self.takings:
            for name in [name for name, line in ready.items() if line == before.number]:
                ready[name] = self.number
        for tool in self.tools if work.wait else ():
            if tool.equipment.kind == "vessel" and not tool.preposition and not tool.equipment.station:
                ready[tool.equipment.name] = self.number

    def begin_time(self, time: Time) -> None:
        """What comes after this in the line comes after the wait."""
        self.before_time = False
        self.walker.emit(time)

    def reach(self, read: Target | Cue) -> None:
        """What is to be reached may be a measure: so much is left from here on."""
        walker = self.walker
        walker.emit(read)
        if walker.present is None:
            return
        found = reached(read, walker.present, self.verb, self._names, walker.flow.kitchen)
        if found:
            walker.reach(walker.present, *found)

    def _names(self) -> list[tuple[str, ...]]:
        """How the batch in hand is called in this line, and what it is to become."""
        flow, language = self.walker.flow, self.walker.flow.kitchen.language
        names = [plain(event.name, language) for event in self.read.events if isinstance(event, Reference)]
        return [*names, flow.component_names[self.walker.component], plain(flow.reading.header.title, language)]

    def pause(self, pause: Pause) -> None:
        """How the next thing follows."""
        self.walker.emit(pause)
        if pause.kind == "at-once":
            self.at_once = True
        elif pause.kind == "within" and pause.duration and pause.duration.hi is not None:
            self.within = int(pause.duration.hi)


def _enter(act: Act, food: Ingredient) -> None:
    """Food goes in, or one more of what was made before."""
    piece = as_piece(act.walker, food)
    if piece is None:
        put_in(act, food)
    else:
        refer(act, piece)


def _hold(act: Act, tool: Tool) -> None:
    """A piece of equipment is used; what lies in it may be what the food in hand was taken from."""
    act.hold(tool)
    hold_again(act, tool)


def _name(act: Act, naming: Naming) -> None:
    """A batch gets a name, is set aside or leaves something."""
    from tamis.model.namings import name_batch

    name_batch(act, naming)


_ACTS: dict[type, Callable[[Act, Any], None]] = {
    Ingredient: _enter,
    Reference: refer,
    Tool: _hold,
    Naming: _name,
    Division: divide,
    Pause: Act.pause,
    Time: Act.begin_time,
    Target: Act.reach,
    Cue: Act.reach,
}
_DOES = {kind: (EXACT.get(kind), _ACTS.get(kind)) for kind in get_args(Read)}
"""The exact words of each kind of clause, and what it does; where that is nothing to a batch, it is written down."""
