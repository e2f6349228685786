"""One action performed: its clauses act on the batches in order, and what it costs and waits for is worked out."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.diagnostics import Diagnostic, Label
from tamis.kitchen.words import singular
from tamis.model.batch import Batch, Food, plain
from tamis.model.heat import Heat, heat_of
from tamis.model.lookup import Meaning, look_up, nearest_name
from tamis.model.mass import NOTHING, mass_of, times
from tamis.model.recipe import Action, Mass, Product, Taking, Use, Work
from tamis.model.shares import part_of
from tamis.model.work import Labour, missing_times, work_of
from tamis.quantity.amount import exactly
from tamis.quantity.measure import grams
from tamis.reading.clauses import (
    Division,
    Ingredient,
    Naming,
    Pause,
    Reference,
    Repeat,
    Share,
    Time,
    Tool,
    VerbUse,
)

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Equipment
    from tamis.kitchen.verbs import Verb
    from tamis.model.walker import Walker
    from tamis.reading.reading import ActionRead


class Act:
    """The work of one line on the batches of its component."""

    __slots__ = (
        "after", "after_start", "carried", "at_once", "batches", "before_time", "beside", "fresh", "joined", "number", "product",
        "read", "repeats", "step", "takings", "tools", "uses", "verb", "walker", "within",
    )  # fmt: skip

    def __init__(self, walker: Walker, read: ActionRead, number: int, step: int, batches: tuple[Fraction, bool]) -> None:
        self.walker = walker
        self.read = read
        self.number = number
        self.step = step
        self.batches = batches
        self.after: set[int] = set()
        self.after_start: set[int] = set()
        self.uses: list[int] = []
        self.takings: list[int] = []
        self.tools: list[Tool] = []
        self.verb: Verb | None = None
        self.product: int | None = None
        self.beside: int | None = None
        self.at_once = False
        self.within: int | None = None
        self.before_time = True
        self.fresh = walker.new_step
        self.joined = False
        self.carried: Batch | None = None
        self.repeats = next((e.number for e in read.events if isinstance(e, Repeat) and e.kind == "times"), Fraction(1))

    def perform(self) -> Action:
        """Let the events act, left to right; then say what the action costs and waits for."""
        labour = Labour(self.read)
        start = self.walker.present
        for event in self.read.events:
            if isinstance(event, VerbUse):
                self.verb = event.verb
            elif isinstance(event, Ingredient):
                self._food(event)
            elif isinstance(event, Reference):
                self._reference(event)
            elif isinstance(event, Tool):
                self._tool(event)
            elif isinstance(event, Naming):
                self._naming(event)
            elif isinstance(event, Division):
                self._division(event)
            elif isinstance(event, Pause):
                self._pause(event)
            elif isinstance(event, Time):
                self.before_time = False
        self.walker.flow.findings.extend(missing_times(labour))
        return self._record(labour, start)

    def _record(self, labour: Labour, start: Batch | None) -> Action:
        walker = self.walker
        batch = walker.present or start
        heat = heat_of(self, labour, batch)
        if heat.heats:
            batch = None
        self._links(start if not heat.heats else None, heat)
        pieces = int(batch.pieces[0].hi) if batch and batch.pieces else 1
        work = work_of(self.read, labour, batch.mass if batch else NOTHING, pieces, walker.flow.kitchen, heat.station)
        if heat.heats and work.wait is None:
            work = work._replace(handling=0)
        at_once = self.at_once or self._follows_at_once(start or self.carried)
        self._touch(batch, start, work, heat)
        numbers, loads = self.batches
        return Action(
            number=self.number,
            component=walker.component,
            step=self.step,
            span=self.read.span,
            parts=self.read.parts,
            reads=tuple(event for event in self.read.events if not isinstance(event, VerbUse)),
            verbs=tuple(labour.verbs),
            work=work,
            times=self.repeats,
            batches=numbers,
            loads=loads,
            after=tuple(sorted(self.after)),
            after_start=tuple(sorted(self.after_start)),
            beside=self.beside,
            at_once=at_once,
            within=self.within,
            heats=heat.heats,
            preheat=heat.preheat,
            continues=self.read.continues,
            on_heat=bool(batch and batch.on_heat),
            settings=tuple(labour.settings),
            targets=tuple(labour.targets),
            tending=tuple(labour.tending),
            tools=tuple(self.tools),
            uses=tuple(self.uses),
            takings=tuple(self.takings),
            product=self.product,
        )

    def _links(self, start: Batch | None, heat: Heat) -> None:
        """What must have ended before: the batch's last action, prepared equipment, a heated station."""
        flow = self.walker.flow
        if start and start.last is not None:
            self.after.add(start.last)
        for tool in self.tools:
            ready = flow.tool_ready.get(tool.equipment.name)
            if ready is not None and ready != self.number:
                self.after.add(ready)
        if heat.station and not heat.heats:
            ready = flow.station_ready.get(heat.station)
            if ready is not None:
                self.after.add(ready)
        self.after.discard(self.number)

    def _follows_at_once(self, start: Batch | None) -> bool:
        """After an estimate, and while the batch is on the heat, the next line follows at once."""
        if start is None or start.last is None:
            return False
        before = self.walker.flow.actions.get(start.last)
        if before is None:
            return False
        verb = self.walker.flow.kitchen.verbs.get(before.work.verb) if before.work.verb else None
        keeps = verb is not None and verb.keeps
        estimate = before.work.wait is not None and not before.work.window and not keeps
        return start.on_heat or estimate

    def _touch(self, batch: Batch | None, start: Batch | None, work: Work, heat: Heat) -> None:
        """The batch has been worked on by this action, and lies where it put it."""
        flow = self.walker.flow
        if heat.heats:
            flow.station_ready[heat.heats] = self.number
            if heat.temperature:
                flow.station_temperature[heat.heats] = heat.temperature
            for tool in self.tools:
                flow.tool_ready[tool.equipment.name] = self.number
        elif heat.station and heat.temperature:
            flow.station_temperature[heat.station] = heat.temperature
        if batch is None:
            return
        batch.last = self.number
        batch.on_heat, batch.station = heat.on_heat, heat.station if heat.on_heat else ""

    def _food(self, food: Ingredient) -> None:
        """An ingredient goes in, unless it is for a purpose; the rest of a shared measure stays open."""
        walker, flow = self.walker, self.walker.flow
        share = food.share if food.share and food.share.kind == "fraction" else None
        fraction = share.fraction if share else Fraction(1)
        self.fresh = False
        whole = mass_of(food, flow.kitchen)
        factor = self.repeats
        mass = times(whole, fraction * factor)
        aside = bool(food.purpose)
        index = len(flow.uses)
        in_batch = not aside and not food.optional
        flow.uses.append(Use(food, self.number, walker.component, factor, fraction, None, in_batch, mass))
        self.uses.append(index)
        if "separated" in food.preparation and food.goods and food.goods.parts:
            self._separate(food, index)
            return
        if aside:
            return
        if walker.present is None:
            walker.present = Batch()
        walker.present.add(Food.of(index, food, mass))
        if fraction < 1:
            rest = Batch("share")
            rest.foods = [Food.of(index, food, times(whole, 1 - fraction))]
            rest.mass = times(whole, 1 - fraction)
            rest.left, rest.shared, rest.rest_of = 1 - fraction, True, index
            rest.last, rest.span = None, food.clause.span
            walker.open.append(rest)

    def _separate(self, food: Ingredient, use: int) -> None:
        """`[4 eggs, separated]` makes the yolks and the whites: two batches, both open."""
        assert food.goods is not None
        count = sum((measure.amount.hi for measure in food.measures), Fraction(0)) or Fraction(1)
        for part in food.goods.parts:
            goods = self.walker.flow.kitchen.larder.get(part.id)
            if goods is None:
                continue
            batch = Batch()
            mass = Mass(part.lo * count, part.hi * count)
            batch.add(Food(use, plain(goods.name), goods.id, mass))
            batch.last = self.number
            self.walker.put_aside(batch, "part", goods.name, food.clause.span)

    def _reference(self, reference: Reference) -> None:
        """Something made, opened or set out before."""
        meaning = look_up(self.walker, reference)
        if meaning is None:
            self._unknown(reference)
            return
        if meaning.equipment:
            self._named_tool(reference, meaning.equipment)
            return
        assert meaning.batch is not None
        if meaning.also:
            self._ambiguous(reference, meaning)
        removes = self.verb is not None and self.verb.removes and not reference.preposition
        if meaning.present:
            self._of_the_present(reference, meaning.batch, removes)
        else:
            self._of_another(reference, meaning.batch, removes)
        self.fresh = False

    def _of_the_present(self, reference: Reference, batch: Batch, removes: bool) -> None:
        words = plain(reference.name)
        if removes:
            if words in batch.names or not batch.remove(words, self.walker.flow.kitchen):
                if reference.share is None and batch.foods:
                    self.walker.present = None
            return
        if reference.share is None or reference.share.kind in ("all", "rest"):
            return
        self._link(batch)
        batch.last = batch.last if batch.last is not None else self.number
        self.walker.put_aside(batch, "share", reference.name, reference.clause.span)
        self.walker.present = None
        self._take(reference, batch, Batch())

    def _of_another(self, reference: Reference, batch: Batch, removes: bool) -> None:
        """Another batch joins the present one, or takes the work over."""
        walker = self.walker
        if removes:
            batch.left, batch.taken_at = Fraction(0), reference.clause.span
            if batch in walker.open:
                walker.open.remove(batch)
            return
        adds = self.verb is not None and self.verb.adds
        takes_over = self.fresh and not self.joined and not reference.preposition and not adds
        if takes_over and walker.present is not None:
            old, walker.present = walker.present, None
            at = walker.flow.actions[old.last].span if old.last is not None else reference.clause.span
            walker.put_aside(old, "left", "", at)
        self._take(reference, batch, walker.present or Batch())
        self.joined = True

    def _take(self, reference: Reference, batch: Batch, into: Batch) -> None:
        """A batch, or a share of it, goes into another, which is the present one from now on."""
        walker, flow = self.walker, self.walker.flow
        if walker.present is None and not self.joined:
            self.carried = batch
        share = reference.share or Share("all")
        self._link(batch)
        if batch.left <= 0 or (batch.taken_at and not batch.shared):
            self._used_up(reference, batch)
        fraction, rest = part_of(batch, share, flow.kitchen)
        if fraction is not None and fraction > batch.left > 0:
            self._too_much(reference, batch)
        whole = fraction is not None and fraction >= batch.left
        if batch.rest_of is not None:
            self._rest_of_measure(batch, fraction if fraction is not None else batch.left)
        elif batch.product is not None:
            taking = Taking(
                batch.product, self.number, reference.clause.span, fraction, rest or whole, reference.clause.text
            )
            self.takings.append(len(flow.takings))
            flow.takings.append(taking)
        scale = fraction / batch.left if batch.rest_of is not None and fraction and batch.left else fraction
        into.take_in(batch, scale)
        into.last = into.last if into.last is not None else None
        if into.pieces is None and batch.pieces and whole:
            into.pieces = batch.pieces
        batch.shared = batch.shared or not whole
        batch.left = Fraction(0) if whole else batch.left - (fraction or 0)
        batch.taken_at = reference.clause.span
        if whole and batch in walker.open:
            walker.open.remove(batch)
        walker.present = into

    def _rest_of_measure(self, batch: Batch, fraction: Fraction) -> None:
        """The rest of a measure written before goes in: a use of its own that buys nothing new."""
        flow = self.walker.flow
        first = flow.uses[batch.rest_of] if batch.rest_of is not None else None
        if first is None:
            return
        mass = times(batch.mass, fraction / batch.left) if batch.left else batch.mass
        use = first._replace(action=self.number, fraction=fraction, rest_of=batch.rest_of, mass=mass)
        self.uses.append(len(flow.uses))
        flow.uses.append(use)

    def _link(self, batch: Batch) -> None:
        if batch.last is None or batch.last == self.number:
            return
        (self.after_start if batch.early else self.after).add(batch.last)

    def _naming(self, naming: Naming) -> None:
        walker = self.walker
        span = naming.clause.span
        if naming.kind == "leaving":
            self._leave(naming)
            return
        if walker.present is None:
            self._say("product-unknown", naming.clause, "there is no batch here that could be named or set aside", "")
            return
        batch, walker.present = walker.present, None
        self._link(batch)
        batch.last = self.number
        if naming.kind == "as":
            batch.names.append(plain(naming.name))
            walker.put_aside(batch, "named", naming.name, span)
        else:
            walker.put_aside(batch, "set-aside", "", span)
        self.product = batch.product

    def _leave(self, naming: Naming) -> None:
        """A by-product parts from the batch as it stands: before the line's time it exists before the wait."""
        walker = self.walker
        batch = Batch("by-product")
        batch.names = [plain(naming.name)]
        batch.last, batch.span = self.number, naming.clause.span
        batch.early = self.before_time and any(isinstance(event, Time) for event in self.read.events)
        if walker.present:
            kitchen = walker.flow.kitchen
            batch.foods = [food for food in walker.present.foods if _same_food(plain(naming.name), food)]
            if batch.foods:
                walker.present.remove(plain(naming.name), kitchen)
        batch.mass = Mass(unknown=(naming.name,))
        if naming.measure:
            batch.measure = naming.measure
            weight = grams(naming.measure, walker.flow.kitchen.units)
            batch.mass = Mass(weight.lo, weight.hi) if weight else batch.mass
        product = Product(
            naming.name, (naming.name,), "by-product", walker.component, self.number, naming.clause.span, batch.early
        )
        walker.flow.register(batch, product)

    def _division(self, division: Division) -> None:
        batch = self.walker.present
        if batch and division.number:
            batch.pieces = (division.number, division.noun)

    def _tool(self, tool: Tool) -> None:
        self.tools.append(tool)
        self.walker.tools.append(tool)
        batch = self.walker.present
        if tool.divides and batch:
            batch.pieces = (exactly(tool.number), singular(tool.name.lower()))

    def _named_tool(self, reference: Reference, equipment: Equipment) -> None:
        """Equipment called by `the`: the piece named before, or one that every kitchen has."""
        tool = Tool(
            reference.clause, reference.name, equipment, preposition=reference.preposition, definite=True
        )
        self._tool(tool)

    def _pause(self, pause: Pause) -> None:
        if pause.kind == "at-once":
            self.at_once = True
        elif pause.kind == "within" and pause.duration and pause.duration.hi is not None:
            self.within = int(pause.duration.hi)

    def _say(self, rule: str, clause: object, message: str, hint: str, labels: tuple[Label, ...] = ()) -> None:
        span = clause.span  # type: ignore[attr-defined]  # always a clause
        self.walker.flow.findings.append(Diagnostic(rule, "error", span, message, hint, labels))

    def _unknown(self, reference: Reference) -> None:
        name = reference.name or "it"
        near = nearest_name(self.walker, reference)
        hint = f"did you mean `[the {near}]`?" if near else "name it before: by a heading, `[as …]`, `[leaving …]` or as an ingredient"
        self._say("product-unknown", reference.clause, f"nothing here is called “{name}”", hint)

    def _ambiguous(self, reference: Reference, meaning: Meaning) -> None:
        batches = [meaning.batch, *meaning.also]
        labels = tuple(Label(batch.span, f"this {' '.join(batch.label)}") for batch in batches if batch)
        names = " and ".join(f"“{' '.join(batch.label)}”" for batch in batches if batch)
        message = f"“{reference.name}” can mean {names}"
        self._say("product-ambiguous", reference.clause, message, "give one of them a name of its own with `[as …]`", labels)

    def _used_up(self, reference: Reference, batch: Batch) -> None:
        labels = (Label(batch.taken_at, "the last of it went in here"),) if batch.taken_at else ()
        message = f"nothing of “{reference.name}” is left"
        hint = "take a share of it there (`[half the …]`) and the rest here, or make more"
        self._say("product-used-up", reference.clause, message, hint, labels)

    def _too_much(self, reference: Reference, batch: Batch) -> None:
        left = batch.left
        message = f"this takes more of “{reference.name}” than is there: {left} of it is left"
        if batch.origin == "used-recipe" and reference.share and reference.share.measure:
            fraction, _ = part_of(batch, reference.share, self.walker.flow.kitchen)
            factor = f"{float(fraction):.2g}" if fraction else "?"
            message = f"this takes {factor} times what the recipe of “{reference.name}” makes"
        self._say("product-used-up", reference.clause, message, "make more of it, or take less")


def _same_food(words: tuple[str, ...], food: Food) -> bool:
    return words == food.words or (len(words) == 1 and food.words[-1:] == words)
