"""What lifting out asks of the line that does it and of the work on its component, which are larger (`act.py`,
`walker.py`): so that it can be read without them."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from fractions import Fraction

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Batch, Food, Origin
    from tamis.model.called import Key
    from tamis.model.effects import Why
    from tamis.model.opened import Opened, Shelf
    from tamis.model.recipe import Action, Product
    from tamis.reading.clauses import Reference
    from tamis.reading.reading import ActionRead, ComponentRead
    from tamis.source import Span


class Whole(Protocol):
    """The flow of the recipe."""

    kitchen: Kitchen
    named: Shelf
    on_heat: set[int]

    @property
    def products(self) -> Sequence[Product]: ...
    @property
    def actions(self) -> Mapping[int, Action]: ...
    @property
    def component_names(self) -> Sequence[tuple[str, ...]]: ...
    def is_named_after(self, keys: Iterable[Key], place: int, own: bool = False) -> bool: ...


class Hands(Protocol):
    """The work on a component: what is in hand, and what lies open."""

    component: int
    kept_together: list[tuple[int, Reference]]
    number: int
    open: Opened
    present: Batch | None

    @property
    def flow(self) -> Whole: ...
    @property
    def read(self) -> ComponentRead: ...
    def find(self, rule: str, severity: str, span: Span, message: str, hint: str = "") -> None: ...
    def let_go(self, batch: Batch, foods: Sequence[Food], words: tuple[str, ...]) -> None: ...
    def lift(self, rest: Batch, foods: Sequence[Food], words: tuple[str, ...]) -> Batch: ...
    def put_aside(self, batch: Batch, origin: Origin, name: str, span: Span, why: Why = ...) -> None: ...
    def take(
        self,
        source: Batch,
        span: Span,
        fraction: Fraction | None,
        scale: Fraction | None,
        whole: bool,
        taking: int = -1,
        use: int = -1,
    ) -> None: ...
    def turn(self, batch: Batch | None, why: Why) -> None: ...


class Line(Protocol):
    """A line while its clauses act."""

    before_time: bool
    fresh: bool
    joined: bool
    number: int
    verb: Verb | None

    @property
    def read(self) -> ActionRead: ...
    @property
    def walker(self) -> Hands: ...
    def link(self, batch: Batch) -> None: ...
