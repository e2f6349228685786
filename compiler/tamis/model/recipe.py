"""A recipe as the rest of the compiler sees it.

Nothing here is half-known: a clause that could not be read is left out (its finding tells), and an ingredient that
the goods do not know stays with no facts made up. Everything is numbered in the order of the text: actions, uses
and products are referred to by their index in the recipe's tuples.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.history import History
from tamis.model.mass import Mass
from tamis.model.pile import Pile
from tamis.model.places import Places
from tamis.quantity.amount import Amount
from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Ingredient, Read, Setting, Target, Tending, Tool, VerbUse
from tamis.reading.header import Header
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Part, Remark
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.kitchen.equipment import Station
    from tamis.model.batch import Food
    from tamis.model.effects import Entry


class Use(NamedTuple):
    """One ingredient going in at one place.

    `times` multiplies the measure as written (a repeated line: measures for each time). `fraction` is the part of the
    written measure used here (`half of 300 g flour`: ½). The use that takes the rest of such a measure is a use of
    its own with `rest_of` set to the first use's index: it adds no new amount to buy beyond the first's measure.
    `in_batch` is false for what is optional, for a purpose or to taste. `mass` is that of this use alone. `computed`
    is what a percentage comes to, once; None for a plain measure, and where its base has no known weight.
    """

    ingredient: Ingredient
    action: int
    component: int
    times: Fraction = Fraction(1)
    fraction: Fraction = Fraction(1)
    rest_of: int | None = None
    in_batch: bool = True
    mass: Mass = Mass()
    computed: Measure | None = None


class Taking(NamedTuple):
    """A product (or a part of it) going into the batch of an action.

    `fraction` is the part of the whole product as it was made, None where it cannot be known (`some of`, a measure of
    unknown mass). `rest` marks the taking of all that was left.
    """

    product: int
    action: int
    span: Span
    fraction: Fraction | None = Fraction(1)
    rest: bool = False
    text: str = ""


ProductKind = Literal["component", "set-aside", "named", "share", "by-product", "meanwhile", "used-recipe"]


class Product(NamedTuple):
    """Something made and called by a name: a component's batch at its end, a batch set aside or named, what a share
    left behind, a by-product, a part of an ingredient (yolks, whites), or the dish of a used recipe.

    `made_by` is the last action that worked on it (None for a used recipe's product), `names` its own names (it
    answers to those of what went into it as well), `foods` what is in it, `from_products` what went into it before,
    `pieces` how many it was divided into. `dish` marks the component that no other uses. `early` says that it is
    there before `made_by`'s wait begins (`[leaving juices]` before the line's time).
    """

    name: str
    names: tuple[str, ...]
    kind: ProductKind
    component: int
    made_by: int | None
    span: Span
    early: bool = False
    mass: Mass = Mass()
    foods: Pile[Food] = Pile()
    from_products: tuple[int, ...] = ()
    pieces: Amount | None = None
    piece_noun: str = ""
    recipe: str = ""
    dish: bool = False

    @property
    def uses(self) -> tuple[int, ...]:
        """The ingredient uses that are in it."""
        return tuple(dict.fromkeys(food.use for food in self.foods if food.use >= 0))


class Work(NamedTuple):
    """What an action costs: `handling` hands-on seconds first, then a `wait` if there is one.

    `wait` is the length of the timed part in seconds (lo, hi; hi None = open end); `window` says that the cook chooses
    within it, else the food decides. `hands` says that the timed part holds the cook; `machine` that a mixer or
    blender works meanwhile. `station` is what it occupies (oven, grill, ring, mixer, fridge, freezer, bath, or "").
    `given` tells whose figure it is: the text's, the verb's data (a target or cue ends it), or the kitchen's default.
    `boils_up` are the seconds in which its liquid comes to the boil before the text's own time begins.
    """

    handling: int = 0
    wait: Duration | None = None
    window: bool = False
    hands: bool = True
    machine: bool = False
    station: Station = ""
    given: Literal["text", "verb", "default"] = "default"
    cue: str = ""
    verb: str = ""
    boils_up: int = 0


class Action(NamedTuple):
    """One line of the method, or the part of it that has one time.

    `parts` print the sentence; `reads` are its clauses as understood, in order. `after` are the actions that must
    have ended before this one starts (the flow's edges: the batch's last action, and those that made what it
    takes). `after_start` are those whose wait must have begun: they part a by-product before it. `beside` is the
    action whose wait a meanwhile runs beside; `before` the action that must not start until a meanwhile has ended.
    `at_once` says that nothing may come between the action before in its batch and this one. `heats` is the station
    that it brings to a temperature. `piece_mass` is what each piece of a division weighs. `continues` is set for
    what follows a `then` in the line of the action before.
    """

    number: int
    component: int
    step: int
    span: Span
    parts: tuple[Part, ...]
    reads: tuple[Read, ...]
    verbs: tuple[VerbUse, ...]
    work: Work
    times: Fraction = Fraction(1)
    batches: Fraction = Fraction(1)
    loads: bool = False
    after: tuple[int, ...] = ()
    after_start: tuple[int, ...] = ()
    beside: int | None = None
    before: int | None = None
    at_once: bool = False
    within: int | None = None
    heats: Station = ""
    continues: bool = False
    settings: tuple[Setting, ...] = ()
    targets: tuple[Target, ...] = ()
    tending: tuple[Tending, ...] = ()
    tools: tuple[Tool, ...] = ()
    uses: tuple[int, ...] = ()
    takings: tuple[int, ...] = ()
    product: int | None = None
    piece_mass: Mass | None = None

    @property
    def time_span(self) -> Span:
        """Where its time stands, or all of it."""
        return next((read.clause.span for read in self.reads if read.role == "time"), self.span)


class StepView(NamedTuple):
    """A paragraph: its actions by index, the remarks that follow it, and whether it is a meanwhile."""

    number: int
    actions: tuple[int, ...]
    remarks: tuple[Remark, ...] = ()
    meanwhile: bool = False


class Waiting(NamedTuple):
    """An `Ahead:` paragraph: its words, and the durations with their verbs that a plan may insert."""

    text: str
    parts: tuple[Part, ...]
    reads: tuple[Read, ...]
    span: Span


class Component(NamedTuple):
    """A line of work that makes one thing; `product` is None where it only prepares equipment."""

    number: int
    name: str
    heading: Span | None
    steps: tuple[StepView, ...]
    remarks: tuple[Remark, ...] = ()
    ahead: tuple[Waiting, ...] = ()
    product: int | None = None
    prepares: tuple[Tool, ...] = ()


class Unread(NamedTuple):
    """What may be food and is in nothing: a clause that could not be read, or a name that nothing answers to; `place`
    is where its words begin in the file."""

    component: int
    action: int
    text: str
    place: int


class Recipe(NamedTuple):
    """The whole dish. `dish` is the index of the component that no other uses; `headnote` is Markdown; `language` names
    the folder of `grammar/words/` whose words it is written in. `log` is all that its clauses do, in the order in which
    they act; `history` is what of it happened to the batches, `places` where they were."""

    stem: str
    header: Header
    headnote: str
    components: tuple[Component, ...]
    actions: tuple[Action, ...]
    uses: tuple[Use, ...]
    products: tuple[Product, ...]
    takings: tuple[Taking, ...]
    language: str
    dish: int | None = None
    history: History = History()
    places: Places = Places()
    log: tuple[Entry, ...] = ()
    unread: tuple[Unread, ...] = ()

    @property
    def title(self) -> str:
        """The dish's name."""
        return self.header.title


class Supply(NamedTuple):
    """What a recipe gives to others that use it: its title, what it makes, and that amount as a measure if stated.

    `spoils` tells that it must not stand about, `takes` works out how long it takes, its own used recipes
    included: seconds at the least and at the most."""

    stem: str
    title: str
    measure: Measure | None
    mass: Mass
    allergens: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    animal: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()
    spoils: bool = False
    takes: Callable[[], tuple[int, int]] | None = None
