"""The timeline of a recipe: what a cook does when, one entry a line, and how long the whole takes.

Nobody writes a total time that stays true. It follows from the lines: the least plan takes every estimate
at its shortest, the most plan at its longest, windows count with their least, and what may wait longer is
told apart.
"""

from __future__ import annotations

from functools import cached_property

from tamis.timeline.lengths import length_between, rough_length
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import datetime

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe, Supply
    from tamis.timeline.draft import Draft
    from tamis.timeline.needs import Need
    from tamis.timeline.network import Network, Plan
    from tamis.timeline.rows import Entry
    from tamis.timeline.standing import Standing


class Timeline:
    """When what is done. Entries in order of time, and the totals in seconds; worked out when first looked
    at, since a mere check of a recipe seldom asks; the planner is imported only then, too.

    `least` and `most` are the length of the whole with every estimate at its shortest and its longest,
    windows at their least; `hands_on` and `hands_on_most` the cook's own work in them; `unattended` is the
    time of the least plan without any. `keeps` says how long the finished dish may wait, in words, and
    `sentence` the whole: `3 h 40 min, then keeps up to 4 weeks`. `stretched` are the actions that cannot
    come as soon as the recipe wants them.

    Counted back, `ready` is the moment when all is done and `zero` that of the first start; both plans are
    then one, with estimates at their longest. `used` are the dishes of the recipes that this one uses, by stem.
    """

    def __init__(
        self, recipe: Recipe, kitchen: Kitchen, used: Mapping[str, Supply], ready: datetime | None = None
    ) -> None:
        self.recipe = recipe
        self.kitchen = kitchen
        self.used = used
        self.ready = ready
        self.components = tuple(component.name for component in recipe.components)

    @cached_property
    def network(self) -> Network:
        """The tasks and their links, free of any plan."""
        from tamis.timeline.lower import lower

        return lower(self.recipe, self.kitchen)

    @cached_property
    def draft(self) -> Draft:
        """The order of work from which both plans are made."""
        from tamis.timeline.draft import drafted

        return drafted(self.network)

    @cached_property
    def longest(self) -> Plan:
        """The plan from zero with every estimate at its longest."""
        from tamis.timeline.plan import longest

        return longest(self.draft)

    @cached_property
    def shortest(self) -> Plan:
        """The plan from zero with every estimate at its shortest."""
        from tamis.timeline.plan import shortest

        return shortest(self.draft, self.longest)

    @property
    def forward(self) -> tuple[Plan, Plan]:
        """The least and the most plan, from zero."""
        return self.shortest, self.longest

    @cached_property
    def plans(self) -> tuple[Plan, Plan]:
        """The plans that the entries show: the least and the most, or twice the one that leads up to
        `ready`."""
        if self.ready is None:
            return self.forward
        from tamis.timeline.plan import backward

        awake = self.kitchen.settings.kitchen.awake
        midnight = self.ready.hour * 3600 + self.ready.minute * 60 + self.ready.second
        plan = backward(self.network, midnight, (awake[0] * 60, awake[1] * 60))
        return plan, plan

    @cached_property
    def entries(self) -> tuple[Entry, ...]:
        """One row a line of the recipe, and those for preparation and heating."""
        from tamis.timeline.entries import entries_of

        critical = [self.shortest.critical(task) for task in range(len(self.network.tasks))]
        return entries_of(self.recipe, self.network, self.plans, critical)

    @cached_property
    def zero(self) -> datetime | None:
        """The moment of the first start, if it is counted back."""
        if self.ready is None:
            return None
        from datetime import timedelta

        return self.ready - timedelta(seconds=self.plans[0].total)

    @property
    def least(self) -> int:
        """Seconds of the whole with every estimate at its shortest."""
        return self.shortest.total

    @property
    def most(self) -> int:
        """Seconds of the whole with every estimate at its longest."""
        return self.longest.total

    @cached_property
    def hands_on(self) -> int:
        """Seconds of the cook's own work at the least."""
        return _hands_on(self.network, self.shortest)

    @cached_property
    def hands_on_most(self) -> int:
        """Seconds of the cook's own work at the most."""
        return _hands_on(self.network, self.longest)

    @property
    def unattended(self) -> int:
        """Seconds of the least plan in which nobody is needed."""
        return max(0, self.least - self.hands_on)

    @cached_property
    def keeps(self) -> str:
        """How long the finished dish may wait, in words; empty where nothing says so."""
        return _keeps(self.recipe, self.network, self.shortest)

    @cached_property
    def sentence(self) -> str:
        """The whole in words: `3 h 40 min, then keeps up to 4 weeks; have ready 500 ml of the brown stock`."""
        whole = length_between(self.least, self.most)
        whole = f"{whole}, then keeps {self.keeps}" if self.keeps else whole
        return f"{whole}; have ready {' and '.join(map(_have_ready, self.needs))}" if self.needs else whole

    @cached_property
    def needs(self) -> tuple[Need, ...]:
        """What other recipes make and this one takes: their time is not in the whole."""
        if all(product.kind != "used-recipe" for product in self.recipe.products):
            return ()
        from tamis.timeline.needs import needs_of

        return needs_of(self.recipe, self.entries, self.used)

    @property
    def lead(self) -> tuple[int, int]:
        """Seconds of the whole with what it takes of other recipes, at the least and at the most."""
        least = [(need.least or 0) - need.start for need in self.needs]
        most = [(need.most or 0) - need.most_start for need in self.needs]
        return self.least + max((0, *least)), self.most + max((0, *most))

    @cached_property
    def stretched(self) -> tuple[int, ...]:
        """Actions that come later than the recipe wants them, by number; that a beaten egg waits is no such thing."""
        tasks = self.network.tasks
        late = {self.network.links[index] for plan in self.plans for index in plan.stretched}
        return tuple(sorted({tasks[link.b].action for link in late if tasks[link.a].part != "prepare"}))

    @cached_property
    def standing(self) -> tuple[Standing, ...]:
        """Where food is left in the room for longer than it may, if it is counted back: over a night, mostly."""
        if self.ready is None:
            return ()
        from tamis.timeline.standing import standings

        return standings(self.recipe, self.network, self.plans[0], self.kitchen)


def _have_ready(need: Need) -> str:
    if need.least is None or need.most is None:
        return need.text
    return f"{need.text} (its own recipe: {rough_length(need.least, need.most)[0]})"


def _hands_on(network: Network, plan: Plan) -> int:
    return sum([length for length, task in zip(plan.lengths, network.tasks, strict=True) if task.hands])


def _keeps(recipe: Recipe, network: Network, least: Plan) -> str:
    """How long the dish may wait at the end: as the header says, else by its last window."""
    if recipe.header.keeps:
        return recipe.header.keeps
    last = [
        task
        for index, task in enumerate(network.tasks)
        if task.kind == "window" and least.end(index) == least.total and task.hi is not None
    ]
    followed = {network.tasks[link.a].id for link in network.links}
    for task in last:
        if task.id not in followed and task.hi is not None and task.hi > task.lo:
            from tamis.quantity.times import duration

            return f"up to {duration(task.hi)}"
    return ""
