"""The flow of a whole recipe: what its components share, and what each makes, names or leaves behind."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.batch import Batch, Food, any_of
from tamis.model.called import Index
from tamis.model.flour import Flour
from tamis.model.labour import Labour
from tamis.model.opened import WHOLE, Shelf
from tamis.model.pile import Pile
from tamis.model.recipe import Action, Component, Product, Supply, Taking, Use
from tamis.model.words import model_words, piece_called, plain
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient, Naming
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Origin
    from tamis.model.called import Key
    from tamis.model.cut_so import CutSo
    from tamis.model.effects import Entry
    from tamis.reading.clauses import Reference
    from tamis.reading.reading import Reading
    from tamis.source import Span


_OWN = -1  # beside the numbers of components: names that are no component's


class Flow:
    """Everything that components share while they are worked through; `walk` works through one."""

    __slots__ = (
        "_askers", "_last_named", "_told", "actions", "batches", "begun", "byproducts", "component_batches",
        "component_names", "components", "counted", "cut", "doing", "findings", "first_action", "flour", "for_others",
        "gave", "has_oven", "homes", "hot_stations", "index", "kitchen", "labours", "last_reference", "last_waits",
        "log", "lost", "made", "name_homes", "named", "on_heat", "own_parts", "parted", "parts_ahead", "products",
        "reading", "station_ready", "supplies", "taken_off", "takings", "tells_number", "tool_ready", "uncertain",
        "unknown", "unread", "used", "used_by_name", "uses", "uses_in", "uses_of", "vessels", "walk", "warmth",
    )  # fmt: skip

    def __init__(
        self,
        reading: Reading,
        kitchen: Kitchen,
        used: Mapping[str, Supply],
        findings: list[Diagnostic],
        walk: Callable[[Flow, int], Batch | None],
    ) -> None:
        self.last_waits: dict[int, int | None] = {}
        self._last_named: dict[int | None, dict[Key, int]] | None = None  # by component, for its own, and for all
        self.cut: dict[str, CutSo] = {}  # by piece, what was cut so
        self.for_others: dict[int, bool] = {}  # by component, whether it makes what only others ask for
        self.has_oven: bool | None = None  # whether any line names one, once that was asked
        self._askers: dict[tuple[str, ...], set[int]] | None = None
        self.reading = reading
        self.kitchen = kitchen
        self.used = {stem: used[stem] for stem in reading.header.uses if stem in used}
        self.used_by_name: dict[tuple[str, ...], str] = {}
        for stem, supply in self.used.items():
            for name in (supply.title, stem.replace("-", " ")):
                self.used_by_name.setdefault(plain(name, kitchen.language), stem)
        self.findings = findings
        self.walk = walk
        self.unknown = 0
        self.uncertain: set[tuple[int, Span]] = set()  # by line, what was named and may be something else, or nothing
        self.lost: set[tuple[str, ...]] = set()  # the names of what is not there, since what it is made of is not known
        self.unread: dict[int, set[Key]] | None = None  # by component, what its clauses that could not be read may name
        self.flour = Flour(reading, kitchen)
        self.uses: list[Use] = []
        self.uses_of: dict[str, list[int]] = {}  # by the last word of the food
        self.counted: dict[str, list[Ingredient]] | None = None  # the measured foods of the text, by their last word
        self.parts_ahead: list[int] = []  # parts taken off a food that is counted further on
        self.vessels: dict[str, int] = {}  # by noun, how many were brought out together
        self.uses_in: dict[int, set[str]] = {}  # by component, the words of the foods
        self.products: list[Product] = []
        self.takings: list[Taking] = []
        self.actions: dict[int, Action] = {}
        self.components: dict[int, Component] = {}
        self.component_batches: dict[int, Batch | None] = {}
        self.batches: list[Batch] = []
        self.index: Index[Batch] = Index()
        self.named, self.byproducts, self.made, self.parted = (Shelf() for _ in range(4))
        self.begun: list[Batch] = []
        self.taken_off: set[tuple[int, str]] = set()  # by component, the parts that were taken off their food
        self.own_parts: dict[int, set[str]] = {}  # by batch, the goods of the parts that its food was parted into
        self.log: list[Entry] = []
        self.warmth: Any = None  # how hot the batches are (`warming.Warmth`), once a line asks
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
        self.labours: list[Labour] = []  # by line, its events
        self.last_reference: dict[int, int] = {}  # by component, its last line that names something there
        language = self.kitchen.language
        more = model_words(language).more
        for at, component in enumerate(self.reading.components):
            self.first_action.append(len(self.labours))
            name = self.component_names[at]
            head = nouns(language).key(
                name[: next((n for n, word in enumerate(name) if n and word in more), len(name))]
            )
            for called in dict.fromkeys((name, name[-1:], head, head[-1:])):
                self.homes.setdefault(called, []).append(at)
            for step in component.steps:
                for action in step.actions:
                    labour = Labour(action)
                    if labour.references:
                        self.last_reference[at] = len(self.labours)
                    self.labours.append(labour)
                    for naming in labour.kinds.get(Naming, ()):
                        if naming.name:
                            self.name_homes.setdefault(plain(naming.name, self.kitchen.language), at)
        self.first_action.append(len(self.labours))
        self.tells_number = any(one.number is not None for labour in self.labours for one in labour.divisions)

    def lines_of(self, component: int) -> Sequence[Labour]:
        """The lines of a component."""
        return self.labours[self.first_action[component] : self.first_action[component + 1]]

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
        if pieces:
            batch.keys.add([("pieces", piece_called(noun, self.kitchen.language))])
        self.index.enter(batch, batch.keys)
        self.named.drop(batch)
        if batch.origin == "named":
            self.named.put(batch, index)
        elif batch.origin == "by-product":
            self.byproducts.put(batch, index)
        if batch.shared:
            self.part_from(batch)
        return index

    def is_named_after(self, keys: Iterable[Key], place: int, own: bool = False, within: int | None = None) -> bool:
        """Whether a clause behind a place of the text asks for one of these keys; only for its `own`, where the name of
        a component means that; only `within` a component."""
        if self._last_named is None:
            self._last_named = {}
            names = set(self.component_names)
            for at, event in self._references():
                words = plain(event.name, self.kitchen.language)
                asked = any_of(words, self.kitchen)
                for where in (None, at) if words in names else (None, at, _OWN):
                    self._last_named.setdefault(where, {}).update(dict.fromkeys(asked, event.clause.span.start))
        last = self._last_named.get(_OWN if own else within, {})
        return any(last.get(key, 0) > place for key in keys)

    def _references(self) -> Iterator[tuple[int, Reference]]:
        """All that the recipe refers to by a name, each with the component that does."""
        for at in range(len(self.component_names)):
            for labour in self.lines_of(at):
                for reference in labour.references:
                    if reference.name:
                        yield at, reference

    def askers(self) -> Mapping[tuple[str, ...], set[int]]:
        """The components that refer to each name."""
        if self._askers is None:
            self._askers = {}
            for at, reference in self._references():
                self._askers.setdefault(plain(reference.name, self.kitchen.language), set()).add(at)
        return self._askers

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
