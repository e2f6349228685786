"""The flow of a whole recipe: components made in the order in which they are wanted, each only once.

A component may be named before it stands in the text; it is then made first. A component that needs itself is a
circle. What every component makes, names or leaves behind is registered here.
"""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.batch import Batch, Food, answering, of_kind
from tamis.model.called import Index
from tamis.model.opened import WHOLE, Shelf
from tamis.model.percent import Flour
from tamis.model.pile import Pile
from tamis.model.recipe import Action, Component, Product, Supply, Taking, Use
from tamis.model.state import State
from tamis.model.words import plain
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient, Naming, Reference
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Origin
    from tamis.model.called import Key
    from tamis.model.effects import Entry
    from tamis.reading.reading import Reading


# Components that name others further down, one within another: no recipe is so deep, and the stack is not endless.
_DEEPEST = 40


class Flow:
    """Everything that components share while they are worked through."""

    __slots__ = (
        "_last_named", "_last_own", "_told", "actions", "asked_names", "batches", "begun", "byproducts",
        "component_batches", "component_names", "components", "counted", "doing", "findings", "first_action", "flour",
        "for_others", "gave", "homes", "hot_stations", "index", "kitchen", "last_waits", "log", "made", "name_homes",
        "named", "on_heat", "parted", "parts_ahead", "products", "reading", "station_ready", "supplies", "takings",
        "tool_ready", "unknown", "used", "used_by_name", "uses", "uses_in", "uses_of",
    )  # fmt: skip

    def __init__(
        self, reading: Reading, kitchen: Kitchen, used: Mapping[str, Supply], findings: list[Diagnostic]
    ) -> None:
        self.last_waits: dict[int, int | None] = {}
        self._last_named: dict[Key, int] | None = None
        self._last_own: dict[Key, int] = {}
        self.for_others: dict[int, bool] = {}  # by component, whether it makes what only others ask for
        self.asked_names: frozenset[tuple[str, ...]] | None = None  # of all that is referred to, once somebody asks
        self.reading = reading
        self.kitchen = kitchen
        self.used = {stem: used[stem] for stem in reading.header.uses if stem in used}
        self.used_by_name: dict[tuple[str, ...], str] = {}
        for stem, supply in self.used.items():
            for name in (supply.title, stem.replace("-", " ")):
                self.used_by_name.setdefault(plain(name, kitchen.language), stem)
        self.findings = findings
        self.unknown = 0
        self.flour = Flour(reading, kitchen)
        self.uses: list[Use] = []
        self.uses_of: dict[str, list[int]] = {}  # by the last word of the food
        self.counted: dict[str, list[Ingredient]] | None = None  # the measured foods of the text, by their last word
        self.parts_ahead: list[int] = []  # parts taken off a food that is counted further on
        self.uses_in: dict[int, set[str]] = {}  # by component, the words of the foods
        self.products: list[Product] = []
        self.takings: list[Taking] = []
        self.actions: dict[int, Action] = {}
        self.components: dict[int, Component] = {}
        self.component_batches: dict[int, Batch | None] = {}
        self.batches: list[Batch] = []
        self.index: Index[Batch] = Index()
        self.named = Shelf()
        self.byproducts = Shelf()
        self.made = Shelf()
        self.parted = Shelf()
        self.begun: list[Batch] = []
        self.log: list[Entry] = []
        self.gave: dict[int, int] = {}  # by use, the entry by which it went in
        self._told: dict[tuple[str, ...], list[tuple[Batch, int]]] = {}
        self.supplies: dict[str, Batch] = {}
        self.doing: list[int] = []
        self.tool_ready: dict[str, int] = {}
        self.station_ready: dict[Station, int] = {}
        self.hot_stations: set[Station] = set()
        self.on_heat: set[int] = set()
        self.component_names = [plain(component.name, self.kitchen.language) for component in reading.components]
        self.homes: dict[tuple[str, ...], list[int]] = {}
        self.first_action: list[int] = []
        self.name_homes: dict[tuple[str, ...], int] = {}
        self._number()

    def _number(self) -> None:
        """Give actions their numbers in the order of the text, and note which component is called or names what."""
        number = 0
        for at, component in enumerate(self.reading.components):
            self.first_action.append(number)
            name = self.component_names[at]
            for called in {name, name[-1:]}:
                self.homes.setdefault(called, []).append(at)
            for step in component.steps:
                number += len(step.actions)
                for action in step.actions:
                    for event in action.events:
                        if isinstance(event, Naming) and event.name:
                            self.name_homes.setdefault(plain(event.name, self.kitchen.language), at)

    def run(self) -> None:
        """Make every component."""
        for at in range(len(self.reading.components)):
            self.make(at, None)

    def make(self, at: int, wanted_by: State | None) -> Batch | None:
        """The batch of a component, made now if it is not yet; None for one without food."""
        from tamis.model.walker import Walker

        if at in self.component_batches:
            return self.component_batches[at]
        if wanted_by and at in self.doing:
            self._circle(at, wanted_by)
            return self._stand_in(at, wanted_by)
        if wanted_by and len(self.doing) >= _DEEPEST:
            self._too_deep(at, wanted_by)
            return self._stand_in(at, wanted_by)
        self.doing.append(at)
        batch = Walker(self, at).walk()
        self.doing.pop()
        self.component_batches[at] = batch
        if batch:
            self.made.put(batch, len(self.made))
        return batch

    def make_named(self, words: tuple[str, ...], wanted_by: State) -> None:
        """Make the component that names or leaves something so called, if it stands further down."""
        home = self.name_homes.get(words)
        if home is not None and home != wanted_by.component and home not in self.doing:
            self.make(home, wanted_by)

    def _too_deep(self, at: int, wanted_by: State) -> None:
        component = self.reading.components[at]
        if not any(finding.rule == "flow-depth" for finding in self.findings):
            message = f"“{component.name}” is wanted before it is made, {_DEEPEST} components deep"
            hint = "write what is made before what uses it"
            wanted_by.tell(Diagnostic("flow-depth", "error", component.heading or Span(0, 0), message, hint))

    def _stand_in(self, at: int, wanted_by: State) -> Batch:
        """Something that answers to the name of a component that cannot be made: the circle is told once."""
        batch = wanted_by.part("stand-in", "component")
        wanted_by.name(batch, self.component_names[at])
        return batch

    def _circle(self, at: int, wanted_by: State) -> None:
        component = self.reading.components[at]
        ring = [self.reading.components[n].name for n in self.doing[self.doing.index(at) :]]
        path = " → ".join(f"“{name}”" for name in (*ring, component.name))
        message = f"these components need each other in a circle: {path}"
        span = component.heading or Span(0, 0)
        if not any(finding.rule == "flow-circle" for finding in self.findings):
            hint = "one of them must be made without the other"
            wanted_by.tell(Diagnostic("flow-circle", "error", span, message, hint))

    def ready(self, equipment: str) -> int | None:
        """The action that made a piece of equipment ready: the jars are the jam jars that were sterilised."""
        last = equipment.rpartition(" ")[2]
        return next(
            (at for name, at in self.tool_ready.items() if name == equipment or name.rpartition(" ")[2] == last), None
        )

    def register(self, batch: Batch, product: Product) -> int:
        """Enter a product, made from a batch as it is now; returns its index."""
        index = len(self.products)
        pieces, noun = batch.pieces or (None, "")
        foods: Pile[Food] = Pile()
        foods.join(batch.foods)
        self.products.append(
            product._replace(
                mass=batch.mass, foods=foods, from_products=tuple(batch.products), pieces=pieces, piece_noun=noun
            )
        )
        batch.product = index
        self.batches.append(batch)
        if noun:
            batch.keys.add([("pieces", nouns(self.kitchen.language).singular(noun))])
        self.index.enter(batch, batch.keys)
        self.named.drop(batch)
        if batch.origin == "named":
            self.named.put(batch, index)
        elif batch.origin == "by-product":
            self.byproducts.put(batch, index)
        if batch.shared:
            self.part_from(batch)
        return index

    def is_named_after(self, keys: Iterable[Key], place: int, own: bool = False) -> bool:
        """Whether a clause behind a place of the text asks for one of these keys; only for its `own`, where the name of
        a component means that."""
        if self._last_named is None:
            self._last_named = {}
            names = set(self.component_names)
            for component in self.reading.components:
                for step in component.steps:
                    for action in step.actions:
                        for event in action.events:
                            if isinstance(event, Reference) and event.name:
                                words = plain(event.name, self.kitchen.language)
                                asked = [*answering(words, self.kitchen), *of_kind(words, self.kitchen)]
                                self._last_named.update(dict.fromkeys(asked, event.clause.span.start))
                                if words not in names:
                                    self._last_own.update(dict.fromkeys(asked, event.clause.span.start))
        last = self._last_own if own else self._last_named
        return any(last.get(key, 0) > place for key in keys)

    def called(self, batch: Batch) -> str:
        """What a message calls a batch: by its product's name, as the text writes it, where it is one."""
        return self.products[batch.product].name if batch.product is not None else " ".join(batch.label)

    def part_from(self, batch: Batch) -> None:
        """Remember that a share of this batch was taken."""
        if batch.product is not None and batch.origin in WHOLE:
            self.parted.put(batch, batch.product)

    def shared(self, keys: Sequence[Key]) -> list[Batch]:
        """Whole products with one of these keys of which a share has been taken and something is left."""
        return [batch for batch in self.parted.called(keys, self.index) if batch.shared and batch.left > 0]

    def all_shared(self) -> list[Batch]:
        """All of them."""
        return [batch for batch in self.parted if batch.shared and batch.left > 0]

    def supply_batch(self, stem: str, supply: Supply, wanted_by: State) -> Batch:
        """The dish of a used recipe, as a batch to take from."""
        if stem not in self.supplies:
            batch = wanted_by.part("used-recipe", "used-recipe", mass=supply.mass)
            for name in (supply.title, stem.replace("-", " ")):
                wanted_by.name(batch, plain(name, self.kitchen.language))
            batch.measure = supply.measure
            span = self.reading.header.span("uses")
            product = Product(supply.title, (supply.title,), "used-recipe", -1, None, span, recipe=stem)
            wanted_by.close(batch, product, opened=False)
            self.supplies[stem] = batch
        return self.supplies[stem]

    def new_batch(self, origin: Origin) -> Batch:
        """A batch with the next number."""
        batch = Batch(origin, len(self.begun))
        self.begun.append(batch)
        return batch

    def told(self, words: tuple[str, ...], batch: Batch, entry: int) -> None:
        """Remember where a batch was named."""
        self._told.setdefault(words, []).append((batch, entry))
        if len(words) > 1:
            self._told.setdefault(words[-1:], []).append((batch, entry))

    def named_at(self, words: tuple[str, ...], batch: Batch) -> int:
        """The entry that gave a batch this name, or what went into it; -1 where that cannot be told for certain."""
        found = self._told.get(words, ())
        own = next((entry for other, entry in reversed(found) if other is batch), -1)
        if own >= 0 or not batch.is_named(words):
            return own
        whole = [entry for other, entry in found if words in other.names.own()]
        return whole[0] if len(whole) == 1 else -1

    def close(self) -> None:
        """Say what was named and never used, and what a share left over."""
        for batch in self.batches:
            if batch.product is None or batch.origin in ("by-product", "used-recipe"):
                continue
            product = self.products[batch.product]
            if batch.origin == "named" and batch.left == 1 and batch.taken_at is None:
                made = "lifted out" if batch.lifted_from else "named"
                message = f"“{product.name}” is {made} here and never used"
                the = example(self.kitchen.language, "the", name=product.name.lower())
                hint = f"bring it back by {the}, or discard it" if batch.lifted_from else "use it, or discard it"
                self._say("product-unused", product.span, message, hint)
            elif batch.origin in ("component", "named") and batch.shared and batch.left > 0 and batch.taken_at:
                message = f"some of “{product.name.lower()}” is left over after the last share of it"
                self._say(
                    "product-left-over",
                    batch.taken_at,
                    message,
                    f"use {example(self.kitchen.language, 'the_rest', name=product.name.lower())}, or all of it here",
                )

    def _say(self, rule: str, span: Span, message: str, hint: str) -> None:
        end = State(self, -1)
        end.at(-1, span, span, -1)
        end.tell(Diagnostic(rule, "error", span, message, hint))
