"""The flow walked once more, with the hazards in mind: every batch in the order in which things happened to it."""

from __future__ import annotations

from tamis.reading.clauses import Cue, Ingredient, Pause, Setting, Target, Time, Tool
from tamis.record import NamedTuple
from tamis.safety.clearing import heated
from tamis.safety.contacts import Counter
from tamis.safety.data import rules
from tamis.safety.films import coats, filmed, is_thin
from tamis.safety.hazards import FLESH, cut_in_line, item_of, shaped
from tamis.safety.heatings import Heating, Place, heating
from tamis.safety.records import Item, Wait
from tamis.safety.signs import has_garlic, syrup_heat, with_sugar, words_of
from tamis.safety.spoiling import Cooked, boiled_down, is_cut, mixing_of, mixtures_of, spoils
from tamis.safety.state import State
from tamis.safety.waits import cooled_in_part, long, oil_wait, risky_wait
from tamis.safety.words import safety_words
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, cast

if TYPE_CHECKING:
    from collections.abc import Hashable, Iterable, Mapping, Sequence

    from tamis.kitchen.food import Show
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.history import Hands, Happening
    from tamis.model.recipe import Action, Recipe, Supply, Use
    from tamis.reading.clauses import Read
    from tamis.safety.records import Form, HazardKind
    from tamis.safety.spoiling import Mixing


_ACTING = frozenset((Cue, Pause, Setting, Target, Time))
_AROMATIC: tuple[Show, ...] = ("fruit", "herb", "spice", "vegetable", "liquid")
"""A lemon in a bird's cavity is no stuffing that anybody eats (common practice)."""


class Traced(NamedTuple):
    """The states that the batches ended in, what was heated, and what was seen on the way."""

    states: tuple[State, ...]
    waits: tuple[Wait, ...]
    oil_waits: tuple[Wait, ...]
    halves: tuple[Wait, ...]
    cooked: Cooked
    mixing: Mixing


class Trace:
    """The walk."""

    __slots__ = (
        "authority", "candied", "counter", "dry", "garlic", "halves", "kitchen", "mixing", "oil_waits", "place",
        "recipe", "states", "sweet", "used", "verbs", "waits", "wet", "words",
    )  # fmt: skip

    def __init__(
        self,
        recipe: Recipe,
        kitchen: Kitchen,
        used: Mapping[str, Supply],
        verbs: Sequence[frozenset[str]],
        hands: Hands,
    ) -> None:
        self.recipe = recipe
        self.kitchen = kitchen
        self.used = used
        self.authority = kitchen.settings.safety.authority
        self.garlic = has_garlic(recipe)
        self.sweet = bool(with_sugar(recipe))
        self.states: list[State] = []
        self.verbs = verbs
        self.mixing = mixing_of(recipe, verbs, hands)
        self.words = safety_words(kitchen.language)
        self.place = Place(recipe)
        self.counter = Counter(recipe.actions, verbs, kitchen)
        self.waits: list[Wait] = []
        self.oil_waits: list[Wait] = []
        self.halves: list[Wait] = []
        self.wet: set[int] = set()
        self.dry: set[int] = set()
        self.candied: set[int] = set()

    def walk(self) -> Traced:
        """Everything in order."""
        history = self.recipe.history
        self.states = [self._begin(product) for product in history.products]
        for event in history.happenings:
            action = self.recipe.actions[event.action]
            self._happen(event, action, self.states[event.batch])
            if action.tools and (self.counter.dirty or not self.states[event.batch].kinds.isdisjoint(FLESH)):
                self.counter.work(action, self._place(event, action), self.states[event.batch])
        return Traced(
            tuple(self.states), tuple(self.waits), tuple(self.oil_waits), tuple(self.halves), self._cooked, self.mixing
        )

    @property
    def _cooked(self) -> Cooked:
        """What was heated so far."""
        return Cooked(self.wet, self.dry, self.candied)

    def _place(self, event: Happening, action: Action) -> int:
        """Where in the text it happens."""
        if event.read >= 0:
            return action.reads[event.read].clause.span.start
        return self.recipe.uses[event.use].ingredient.clause.span.start if event.use >= 0 else action.span.start

    def _begin(self, product: int) -> State:
        """A batch as it begins: empty, or the dish of a used recipe with what that brings."""
        state = State()
        if product < 0:
            return state
        made = self.recipe.products[product]
        state.name = made.name
        supply = self.used.get(made.recipe) if made.kind == "used-recipe" else None
        if supply:
            state.recipes[made.recipe] = None
            for hazard in supply.hazards:
                state.put(self._supplied(hazard, product, made.name))
        return state

    def _supplied(self, hazard: str, product: int, name: str) -> Item:
        span = next((t.span for t in self.recipe.takings if t.product == product), Span(0, 0))
        kind, _, form = hazard.partition(":")
        return Item(cast("HazardKind", kind), name, -1 - product, span, cast("Form", form or "piece"))

    def _happen(self, event: Happening, action: Action, state: State) -> None:
        if not state.kinds.isdisjoint(FLESH) and not self.verbs[action.number].isdisjoint(rules().verbs["shapes"]):
            state.change(shaped)
        if event.kind == "clause":
            read = action.reads[event.read]
            if "egg" in state.kinds and type(read) is not Ingredient:
                self._bind(state)
            if type(read) is Tool and read.contains:
                self._pour(read.preposition, read.contains.split(), event.batch, action)
            if type(read) in _ACTING:
                self._clause(read, event.batch, action, state)
        elif event.kind in ("food", "aside"):
            self._food(event, action, state)
        elif event.kind == "batch":
            other = self.states[event.other]
            self._stuffing(action, state, other.name, action.span.end)
            state.take_in(other, other.name, filmed if self._is_film(event, action, state, other) else None)
            self._boil(event, action, state)
        elif event.kind == "lifted":
            state.lift_out(self.states[event.other], self._uses(event.batch))
        elif event.kind == "own-part":
            state.part_of(self.states[event.other], self._uses(event.batch))
        else:
            state.part_from(self.states[event.other], self.words.language)
        if state.syrup and event.kind in ("food", "batch") and "egg" in state.kinds:
            from tamis.safety.syrups import scald

            scald(self.recipe, state, self.candied, action.number, self.authority)

    def _boil(self, event: Happening, action: Action, state: State) -> None:
        """A batch that a line boils though it names no time: *boil [the marinade] down [to 60 ml]*."""
        verbs = [use for use in action.verbs if use.verb.base in rules().verbs["boils"]]
        if not verbs or not state.items:
            return
        at = self._taken_at(event)
        boils = [use for use in verbs if use.span.start < at]
        if boils and self.place.boils(action):
            named = next((read.clause.text for read in action.reads if read.clause.span.start == at), "")
            words = f"{boils[-1].verb.name} {named}"
            self._heat(action, action.reads[0], Heating(words, boils=True, hot=True), state)
            self.place.boiling[event.batch] = True

    def _taken_at(self, event: Happening) -> int:
        """Where the text takes up the batch that goes in; -1 where it does not."""
        product = self.recipe.history.products[event.other]
        takings = self.recipe.takings
        return next((t.span.start for t in takings if t.action == event.action and t.product == product), -1)

    def _is_film(self, event: Happening, action: Action, state: State, egg: State) -> bool:
        """Whether a batch goes into another one as a film of egg on it."""
        if "egg" not in egg.kinds:
            return False
        return coats(self.recipe, action, self._taken_at(event)) and is_thin(self.recipe, egg.uses, state.uses)

    def _uses(self, batch: int) -> frozenset[int]:
        """The uses that are in a batch when it is put by."""
        product = self.recipe.history.products[batch]
        return frozenset(self.recipe.products[product].uses) if product >= 0 else frozenset()

    def _food(self, event: Happening, action: Action, state: State) -> None:
        use = self.recipe.uses[event.use]
        self._pour(use.ingredient.preposition, use.ingredient.states, event.batch, action)
        goods = self._goods(use, event.goods)
        coats_it = "egg" in state.kinds and coats(self.recipe, action, use.ingredient.clause.span.start)
        if coats_it and is_thin(self.recipe, state.uses, (event.use,)):
            state.change(filmed)
        state.add(event.use, _same(use, event))
        if goods is None:
            return
        if goods.show not in _AROMATIC:
            self._stuffing(action, state, use.ingredient.name, use.ingredient.clause.span.start)
        item = item_of(use, event.use, goods, self.words.states)
        if (
            item is None
            and goods.id in rules().goods["cut"]
            and is_cut(use, self.verbs[action.number], self.words.states)
        ):
            state.put(Item("cut", use.ingredient.name, event.use, use.ingredient.name_span))
        if goods.hazard == "raw-flour":
            state.dough += use.mass.hi
            state.own_dough += use.mass.hi
        if goods.hazard == "egg":
            state.eggs += use.mass.hi
            state.own_eggs += use.mass.hi
        if item and (
            event.kind == "food" or item.hazard != "raw-flour" or use.ingredient.purpose in self.words.purposes.dusting
        ):
            egg = item.hazard == "egg"
            if egg and item.form == "whole" and not self.verbs[action.number].isdisjoint(rules().verbs["mixes"]):
                item = item._replace(form="piece")  # a bird stays whole, however it is stirred
            if egg and coats(self.recipe, action, item.span.start):
                item = filmed(item) if is_thin(self.recipe, (event.use,), state.uses) else item
            state.put(self._cut(item, action))

    def _pour(self, preposition: str, words: Iterable[str], batch: int, action: Action) -> None:
        """Food goes into water that boils, and not over it, and is cooked in it."""
        states = self.words.states
        inside = not preposition or preposition in states.lies_in
        if inside and not states.at_the_boil.isdisjoint(words) and any([use.verb.cooks for use in action.verbs]):
            self.place.boiling[batch] = True

    def _cut(self, item: Item, action: Action) -> Item:
        """The item as its line leaves it, if the line does nothing but cut this one food."""
        if len(action.uses) != 1 or item.hazard not in FLESH or not self.verbs[action.number] <= rules().verbs["chops"]:
            return item
        said = {word.strip(".,;:") for word in words_of(action).split()}
        return cut_in_line(item, said - {"cut"}, self.words.states)

    def _goods(self, use: Use, id: str) -> Goods | None:
        if id:
            return self.kitchen.larder.get(id)
        return use.ingredient.goods if not use.ingredient.part else None

    def _stuffing(self, action: Action, state: State, name: str, at: int) -> None:
        """What raw meat is stuffed with has to be done in the middle, whatever it is made of. What stands before the
        verb (at an offset) goes elsewhere: *rub [butter] under the skin and stuff with [1 lemon]*."""
        fillers = rules().verbs["fillers"]
        if state.kinds.isdisjoint(FLESH) or self.verbs[action.number].isdisjoint(fillers):
            return
        if not any([use.verb.base in fillers and use.span.start < at for use in action.verbs]):
            return
        host = state.raw_flesh()
        if host and host.hazard != "minced-meat":
            path = (*host.path, name or "stuffing")
            state.put(Item("stuffing", host.food, host.use, host.span, "stuffing", path))

    def _clause(self, read: Read, batch: int, action: Action, state: State) -> None:
        done = heating(action, read, batch, self.place)
        if done and done.acts:
            if done.hot:
                dry = bool(done.baked or done.fried)
                (self.dry if dry else self.wet).update(state.cook(dry))
                if dry and not state.kinds.isdisjoint(FLESH):
                    from tamis.safety.pots import in_pot

                    done = in_pot(self.recipe, action, done, state)
            if state.items:
                self._heat(action, read, done, state)
        if self.sweet and syrup_heat(action, read, self.words.language) and boiled_down(self.recipe, state.uses):
            self.candied.update(state.uses)
            state.syrup = read.clause.text
        elif isinstance(read, Time | Pause) and not _heats(action, read):
            state.syrup = ""  # it stands, and cools
        if isinstance(read, Time) or (isinstance(read, Pause) and read.waits):
            self._wait(read, action, state)

    def _wait(self, read: Time | Pause, action: Action, state: State) -> None:
        here = self.recipe.places.lines[action.number]
        half = cooled_in_part(action, here, read, state, self.authority) if not state.kinds.isdisjoint(FLESH) else None
        if half:
            self.halves.append(half)
        if not long(action, here, self.authority):
            return
        wait = risky_wait(self.recipe, action, here, read, state, self.authority)
        if wait and self._spoils(state):
            self.waits.append(wait)
        wait = oil_wait(self.recipe, here, read, state, self.authority) if self.garlic else None
        if wait:
            self.oil_waits.append(wait)

    def _spoils(self, state: State) -> bool:
        """Whether a batch is neither too dry nor too sweet to spoil by now."""
        mixtures = mixtures_of(self.mixing, state, self._cooked)
        return spoils(self.recipe, state, self.used, mixtures, self.candied)

    def _heat(self, action: Action, read: Read, done: Heating, state: State) -> None:
        """What a clause does to each hazard in the batch."""
        only = self._only(action, read) if done.core is not None else None
        cooler = done if only is None else done._replace(core=None, places=())

        def after(item: Item) -> Item:
            meant = only is None or item.use in only
            return heated(item, done if meant else cooler, action.number, self.authority, self.words.cues)

        state.change(after)

    def _only(self, action: Action, read: Read) -> set[int] | None:
        """The uses that a temperature is asked of, where a verb of heating has an ingredient of its own for an
        object: `heat [1 l oil] [to 180 °C]` says nothing of the chicken that waits in the bowl. None: the batch."""
        before = [use for use in action.verbs if use.span.start < read.clause.span.start]
        heats = next((use for use in reversed(before) if use.verb.heat), None)
        if heats is None or heats.verb.cooks:
            return None
        foods = [self.recipe.uses[use].ingredient.clause.span.start for use in action.uses]
        after = [r.clause.span.start for r in action.reads if r.clause.span.start > heats.span.start]
        if not after or after[0] not in foods:
            return None
        return set(action.uses)

    def _bind(self, state: State) -> None:
        """Egg in enough flour is dough, batter or a glaze: its baking cooks it, and no thermometer is asked for.

        In one mixture half the egg's weight is the leanest sponge; where flour and egg meet as two batches, twice
        (a muffin, a glaze), so that a custard in a pastry case stays a custard. Common practice.
        """
        if not state.eggs or not any([_loose(item) for item in state.items.values()]):
            return
        if state.own_dough * 2 >= state.own_eggs > 0 or state.dough >= state.eggs * 2:
            state.change(lambda item: item._replace(bound=True, form=_in_dough(item)) if _loose(item) else item)


def _heats(action: Action, read: Time | Pause) -> bool:
    """Whether the verb of a wait keeps its food on the heat."""
    before = [use.verb for use in action.verbs if use.span.start <= read.clause.span.end]
    return bool(before) and before[-1].heat


def _same(use: Use, event: Happening) -> Hashable:
    """What tells a food from another one, as far as anything must be declared of it."""
    food = use.ingredient
    if food.alternatives:
        return event.use
    return food.name, food.goods and food.goods.id, food.optional, food.purpose


def _in_dough(item: Item) -> Form:
    """An egg that was dropped whole into flour is no whole egg in the dough: dumplings boil for minutes."""
    return "piece" if item.form == "whole" else item.form


def _loose(item: Item) -> bool:
    return item.hazard == "egg" and not item.bound
