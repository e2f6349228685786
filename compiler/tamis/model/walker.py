"""One component worked through, clause by clause, left to right.

The walker holds the present batch and the other open ones. Food in a clause goes into the present batch; food named
from another batch joins it; only a batch named first in a new step, bare and by a verb that does not add, takes the
work over. A meanwhile has a batch of its own and must be over when the next ordinary step begins, or where a line names
what the work before it holds.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.act import Act
from tamis.model.batch import Batch, Origin
from tamis.model.effects import Beside, Why
from tamis.model.goes_back import Joins, goes_back, joins_at, joins_left
from tamis.model.hands import Hands
from tamis.model.mass import NOTHING, ONE, plus, times
from tamis.model.recipe import Component, Product, StepView, Waiting
from tamis.model.rest_of import ask_for_rest, close_lifted
from tamis.model.words import plain
from tamis.reading.clauses import Meanwhile, Pause, Repeat, VerbUse
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.model.flow import Flow
    from tamis.model.labour import Labour
    from tamis.reading.reading import ActionRead, StepRead

Batches = tuple[Fraction, bool]


MEANWHILE, MEANWHILE_OVER, GOES_BACK = Why("meanwhile"), Why("meanwhile-over"), Why("goes-back")
APART, APART_OVER, ONLY_ONE_LEFT = Why("apart"), Why("apart-over"), Why("only-one-left")
COMPONENT_END, HOT_VESSEL = Why("component-end"), Why("hot-vessel")


class Walker(Hands):
    """Works through one component."""

    __slots__ = ()

    def walk(self) -> Batch | None:
        """Work through the component; returns its batch, or None if it only prepares equipment."""
        steps: list[StepView] = []
        remarks, first = self.read.remarks, len(self.flow.products)
        for at, step in enumerate(self.read.steps):
            steps.append(self._step(at, step))
        batch = self._finish()
        self.flow.last_waits[self.component] = self.last_wait
        product = batch.product if batch else None
        prepares = tuple(self.tools) if batch is None and not self._gave(first) else ()
        ahead = tuple(self._waiting(paragraph.action, paragraph.span) for paragraph in self.read.ahead)
        self.flow.components[self.component] = Component(
            self.component, self.read.name, self.read.heading, tuple(steps), remarks, ahead, product, prepares
        )
        if batch is None and self.number > self.flow.first_action[self.component]:
            for tool in prepares:
                self.flow.tool_ready.setdefault(tool.equipment.name, self.number - 1)
        return batch

    def _gave(self, first: int) -> bool:
        """Whether it made something since so many products: all of that has a name, if nothing is in hand."""
        products = self.flow.products
        return any(products[at].component == self.component for at in range(first, len(products)))

    def _waiting(self, action: ActionRead, span: Span) -> Waiting:
        reads = tuple(event for event in action.events if not isinstance(event, VerbUse))
        return Waiting(self.flow.reading.document.source.slice(span), action.parts, reads, span)

    def _step(self, at: int, step: StepRead) -> StepView:
        """A paragraph; one that begins with a meanwhile has a batch of its own, to its end or to the line that names
        what the work before it holds: there that work goes on."""
        lines = self.flow.labours[self.number : self.number + len(step.actions)]
        beside = meanwhile = bool(lines) and _is_meanwhile(lines[0])
        before: Batch | None = None
        numbers: list[int] = []
        ran: list[int] = []
        waiting = self.last_wait is not None
        repeated = any([labour.repeats for labour in lines])
        self.new_step = True
        self.again = ONE
        if repeated:
            from tamis.reading.repeated import times_of_shares

            self.again = times_of_shares(step)
        if beside:
            before = self.present
            self.at(self.number, step.actions[0].span, step.actions[0].span, -1)
            self.turn(None, MEANWHILE)
        wait: int | None = None
        batches = (ONE, False)
        for action, line in zip(step.actions, lines, strict=True):
            if beside and numbers and before is not None and goes_back(self, action, before):
                self.at(self.number, action.span, action.span, -1)
                self._put_down("meanwhile")
                self.turn(before, GOES_BACK)
                beside = False
            alone = not beside and _is_meanwhile(line)
            joins = joins_at(self, action, before, bool(numbers)) if beside else None
            beside = beside and joins is None
            number, batches = self._action(action, at, beside or alone, alone, batches, joins)
            numbers.append(number)
            if beside:
                ran.append(number)
            if not alone and self._leaves_time(number):
                wait = number
        if ran and not waiting:
            self._ask_for_wait(ran)
        if beside:
            if self.present is not None and len(step.actions) > 1:
                self.long_meanwhiles.add(self.present)
            self._put_down("meanwhile")
            self.turn(before, MEANWHILE_OVER)
        else:
            self.last_wait = wait
            self.keeps_warm = any([pause.kind == "keep-warm" for labour in lines for pause in labour.pauses])
        if repeated:
            self._repeat_step(step, numbers)
        return StepView(at, tuple(numbers), step.remarks, meanwhile)

    def _action(
        self,
        action: ActionRead,
        step: int,
        beside: bool,
        alone: bool,
        batches: Batches,
        joins: Joins | None = None,
    ) -> tuple[int, Batches]:
        number = self.number
        self.number += 1
        self.at(number, action.span, action.span, -1)
        before: Batch | None = None
        labour = self.flow.labours[number]
        apart = alone or (labour.closes and self._closes(action, labour))
        if apart:
            before = self.present
            self.turn(None, MEANWHILE if alone else APART)
        self._let_wait(labour, beside or apart)
        if alone and (joins := joins_at(self, action, before, False)):
            alone = apart = beside = False
        act = Act(self, action, number, step, batches)
        act.joins = joins_left(self, action, joins, beside or apart)
        if beside:
            self.running.append(number)
            act.beside = self.last_wait
            self.emit(Beside(-1 if act.beside is None else act.beside))
        elif self.running:
            for earlier in self.running:
                act.wait_for(earlier, MEANWHILE_OVER)
            for earlier in self.running:
                self.flow.actions[earlier] = self.flow.actions[earlier]._replace(before=number)
            self.running = []
        self.flow.actions[number] = act.perform()
        if not beside and not apart:
            self._keep_vessel(number)
        self.new_step = False
        if alone:
            if self.last_wait is None:
                self._ask_for_wait([number])
            self._put_down("meanwhile")
        if apart:
            self.turn(before, MEANWHILE_OVER if alone else APART_OVER)
        if not alone and not beside and self._leaves_time(number):
            self.last_wait = number
        return number, act.batches

    def _leaves_time(self, number: int) -> bool:
        """Whether something can be done beside a line: it waits, or what it ends with is kept warm."""
        action = self.flow.actions[number]
        last = action.reads[-1] if self.flow.labours[number].pauses else None
        return action.work.wait is not None or (isinstance(last, Pause) and bool(last.verb))

    def _keep_vessel(self, number: int) -> None:
        """A hot vessel stays at hand: what is put into it or heated without another one comes after the line before,
        even where that left nothing in it: the wok is hot, the seared meat on its plate."""
        labour, here = self.flow.labours[number], self.flow.actions[number]
        vessels = [tool.equipment for tool in labour.tools if tool.equipment.kind == "vessel"]
        begins = not here.after and not here.after_start and not here.takings
        goes_on = not vessels and ("adds" in labour.does or "heat" in labour.does)
        if self.at_hand is not None and begins and goes_on:
            self.flow.actions[number] = here._replace(after=(self.at_hand,))
            self.follow(self.at_hand, HOT_VESSEL)
            self.empty = None
        elif self.empty is not None and goes_on:
            if self.empty not in here.after:
                self.flow.actions[number] = here._replace(after=tuple(sorted((*here.after, self.empty))))
                self.follow(self.empty, HOT_VESSEL)
            self.empty = None
        if _heats_empty(labour):
            self.empty = number
        elif vessels:
            self.empty = None
        if vessels and any([vessel.station and vessel.station != "oven" for vessel in vessels]):
            self.at_hand = number
        elif vessels and "lifts" not in labour.does and self.present is not None:
            self.at_hand = None
        elif self.at_hand is not None:
            self.at_hand = number

    def _ask_for_wait(self, numbers: list[int]) -> None:
        """A meanwhile beside nothing that waits is told, unless it does by itself for the most part (a pan of oil comes
        to its heat), or something is kept warm for it."""
        works = [self.flow.actions[number].work for number in numbers]
        hands = sum(work.handling for work in works)
        alone = 0
        for work in works:
            length = int(work.wait.lo) if work.wait else 0
            hands, alone = (hands + length, alone) if work.hands else (hands, alone + length)
        if self.keeps_warm or alone > hands:
            return
        event = next(
            (read for number in numbers for read in self.flow.actions[number].reads if isinstance(read, Meanwhile)),
            None,
        )
        if event:
            message = "nothing waits here for this to run beside"
            beside = example(self.flow.kitchen.language, "meanwhile")
            hint = f"{beside} runs beside the last wait of the step before it; leave it out, or give that wait a time"
            self.find("meanwhile-without-wait", "warning", event.clause.span, message, hint)

    def _closes(self, action: ActionRead, labour: Labour) -> bool:
        """Whether a line closes its own mixture, or parts one off."""
        from tamis.model.apart import closes_its_own, parts_off

        return closes_its_own(action.events, action.parts, self.flow.kitchen) or parts_off(self, labour)

    def _let_wait(self, labour: Labour, beside: bool) -> None:
        """What is in hand waits while a line begins something `beside` it, to which it goes further on."""
        if beside or self.present is None or not labour.foods or not any(not tool.definite for tool in labour.tools):
            return
        from tamis.model.apart import waits_for_it

        if waits_for_it(self, labour):
            self._put_down("set-aside")

    def _repeat_step(self, step: StepRead, numbers: list[int]) -> None:
        """`[Repeat twice]`, last in a step, does the whole step two more times."""
        from tamis.reading.repeated import repeats_of_step, takes_rest

        if not step.actions:
            return
        for before in step.actions[:-1]:
            for repeat in repeats_of_step(before):
                self._repeats_too_early(repeat)
        repeats = repeats_of_step(step.actions[-1])
        if not repeats:
            return
        if repeats[0].bare and not takes_rest(step.actions[-1]):
            self._repeats_unknown(repeats[0])
        more = [repeat.number for repeat in repeats]
        factor = 1 + more[0]
        flow = self.flow
        again = NOTHING
        for number in numbers:
            action = flow.actions[number]
            flow.actions[number] = action._replace(times=action.times * factor)
            for use in action.uses:
                once = flow.uses[use]
                again_of_it = once.fraction * min(factor, self.again)
                shared = once.fraction < again_of_it <= 1  # half of 40 g each time: all of them of one measure
                flow.uses[use] = once._replace(
                    times=once.times if shared else once.times * factor,
                    fraction=again_of_it if shared else once.fraction,
                    mass=times(once.mass, factor),
                )
                if once.in_batch:
                    again = plus(again, times(once.mass, more[0]))
        self.redo(numbers, more[0], again)

    def _repeats_unknown(self, repeat: Repeat) -> None:
        language = self.flow.kitchen.language
        once, rest = (example(language, key) for key in ("repeat_once", "repeat_with"))
        message = f"“{repeat.clause.text}”: how often, or with what?"
        self.find("number-unclear", "error", repeat.clause.span, message, f"write {once}, or say with what: {rest}")

    def _repeats_too_early(self, repeat: Repeat) -> None:
        text = repeat.clause.text
        message = f"“{text}” repeats its whole step, so it must stand at the end; here it has no effect"
        again = example(self.flow.kitchen.language, "times", count=1 + repeat.number)
        hint = f"end the step with it, or, to do only this line again, write {again}"
        self.find("repeat-not-last", "error", repeat.clause.span, message, hint)

    def _put_down(self, origin: Origin) -> None:
        """The batch in hand stays open: what a meanwhile worked on, or what waits beside other work."""
        if self.present is not None:
            batch = self.present
            at = self.flow.actions[batch.last].span if batch.last is not None else Span(0, 0)
            self.put_aside(batch, origin, "", at, MEANWHILE_OVER)

    def _finish(self) -> Batch | None:
        """The component's end: the present batch gets the heading's name; nothing else may be open."""
        where = self.read.heading or self.flow.reading.header.span("title")
        self.at(self.number - 1, where, where, -1)
        close_lifted(self)
        if self.present is None:
            closed = [
                batch for batch in self.open if batch.origin in ("named", "set-aside", "meanwhile") and batch.left == 1
            ]
            if len(closed) == 1:
                self.turn(closed[0], ONLY_ONE_LEFT)
        for left in list(self.open):
            self._still_open(left)
        if self.present is None:
            return None
        batch = self.present
        name = self.read.name
        self.name(batch, plain(name, self.flow.kitchen.language), COMPONENT_END)
        names = tuple(dict.fromkeys((name, *(" ".join(words) for words in batch.names.own()))))
        origin, batch.origin = batch.origin, "component"
        batch.span = where
        if origin == "present" or batch.product is None:
            batch.left, batch.shared = ONE, False
        product = Product(name, names, "component", self.component, batch.last, where)
        self.close(batch, product, opened=False, why=COMPONENT_END)
        return batch

    def _still_open(self, batch: Batch) -> None:
        if batch.left == 0 or batch.origin == "named":
            return
        if batch.lifted_out:
            ask_for_rest(self, batch)
            return
        if batch.number in self.flow.own_parts:
            from tamis.model.kept_parts import rest_told

            told = rest_told(self, batch)
            if told is not None:
                self._never_back(batch, *told)
            return
        name = " ".join(batch.label)
        if batch.origin in ("share", "part"):
            message = f"some of the {name} is left over at the end of “{self.read.name}”"
            hint = f"use {example(self.flow.kitchen.language, 'the_rest', name=name)}, or discard it"
            if batch.origin == "part" and not batch.shared:
                message = f"the {name} is used nowhere in “{self.read.name}”"
                the = example(self.flow.kitchen.language, "the", name=name)
                hint = f"name it where it goes in, {the}, or discard it: what is separated goes in by its parts' names"
            self.find("product-left-over", "error", batch.span, message, hint)
            return
        message = f"nothing uses the {name} again before the end of “{self.read.name}”"
        the = example(self.flow.kitchen.language, "the", name=name)
        left, juices = (example(self.flow.kitchen.language, key) for key in ("leaving_juices", "the_juices"))
        hint = f"bring it back with {the}, or give it a component of its own"
        if batch in self.long_meanwhiles:
            opening = example(self.flow.kitchen.language, "meanwhile")
            hint = (
                f"{opening} at the start of a step lasts to its end: begin a new step, after a blank line, where the "
                f"earlier work goes on, and bring this back with {the}; what the step before leaves is named there "
                f"({left})"
            )
        elif batch.origin == "meanwhile":
            hint = (
                f"bring it back with {the}; if it is made of what the step before leaves, name that there "
                f"({left}) and take it up here ({juices})"
            )
        self._never_back(batch, message, hint)

    def _never_back(self, batch: Batch, message: str, hint: str) -> None:
        self.find("batch-left-open", "error", batch.span, message, hint)
        if self.present is not None:  # what nobody can follow is in the dish, as far as its allergens go
            self.take(batch, batch.span, ONE, ONE, whole=True, why=COMPONENT_END)


def _heats_empty(labour: Labour) -> bool:
    """*Heat [a wok] [until it smokes]*: that is done just before its food, whatever is chopped in between."""
    if labour.foods or labour.references or "heat" not in labour.does:
        return False
    vessels = [tool for tool in labour.tools if tool.equipment.kind == "vessel"]
    return any([not tool.preposition and tool.equipment.station for tool in vessels])


def _is_meanwhile(line: Labour) -> bool:
    return Meanwhile in line.kinds and Meanwhile in map(type, line.events[:3])


def walk(flow: Flow, component: int) -> Batch | None:
    """Work through a component; returns its batch, or None if it only prepares equipment."""
    return Walker(flow, component).walk()
