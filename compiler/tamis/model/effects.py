"""What the lines of a recipe do, one record a kind, and the log of them.

The log is written while the components are worked through, in the order in which the clauses act; whoever asks later
what happened to a batch, what a name meant or why, reads it there and resolves nothing again. Batches are numbered in
the order in which they begin, actions, uses, takings and products as in the recipe; -1 is none.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.diagnostics import Diagnostic
from tamis.reading.clauses import (
    Cue,
    Division,
    Manner,
    Meanwhile,
    Pause,
    Repeat,
    Setting,
    Target,
    Tending,
    Time,
    Tool,
    VerbUse,
)
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.model.batch import Food, Origin
    from tamis.model.mass import Mass
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure

Rule = Literal[
    "said",
    # whose turn it is
    "hands-empty",
    "takes-over",
    "meanwhile",
    "meanwhile-over",
    "apart",
    "apart-over",
    "lifted-out",
    "lifted-over",
    "goes-back",
    "component-end",
    "only-one-left",
    # what a name means
    "named",
    "holds",
    "pieces",
    "kind",
    "made-of",
    "share-left",
    "in-hand",
    "only-open",
    "left-behind",
    "own-name",
    "own-part",
    "used-recipe",
    "equipment",
    "medium",
    "equipment-here",
    # how something follows from something else
    "part-of-it",
    "as-before",
    "divided-between",
    "same-batch",
    "goes-in",
    "weighed",
    "ready",
    "heated",
    "hot-vessel",
    # where the food is
    "verb",
    "stays",
    "guess",
    "nowhere",
]
"""By which rule a clause was understood so; `said` where it says so itself."""


class Why(NamedTuple):
    """The rule by which something is so, and the entry that said what the rule goes by."""

    rule: Rule
    entry: int = -1


class Begins(NamedTuple):
    """A batch begins in the hand: nothing is in it yet."""

    batch: int


class Turns(NamedTuple):
    """The hand turns to another batch that lies there, or puts the present one by for a while."""

    batch: int


class Gives(NamedTuple):
    """A use goes into a batch as this food; None where it only meets it (for dusting, for boiling)."""

    use: int
    batch: int
    food: Food | None


class Weighs(NamedTuple):
    """What a percentage comes to: so much of the weight of what it names."""

    use: int
    of: str
    measure: Measure


class Refers(NamedTuple):
    """What `[the X]` means: a batch, or a piece of equipment; `also` are batches that it may mean as well."""

    batch: int
    equipment: str = ""
    also: tuple[int, ...] = ()


class Takes(NamedTuple):
    """A batch, or a part of it, goes into another. `fraction` is the part of the whole as it was made, `scale` of what
    it weighs as it is; None where these are not known. `whole`: all that was left. `taking` is set for a product, `use`
    for the rest of a measure that was written before."""

    source: int
    into: int
    fraction: Fraction | None
    scale: Fraction | None
    whole: bool
    taking: int = -1
    use: int = -1


PartKind = Literal["by-product", "lifted", "own-part", "coating", "rest", "separated", "used-recipe", "stand-in"]
"""What the batch in hand leaves behind; what is lifted out of it; what its food has by nature, such as its skin; what
is left of a coating; the rest of a measure; yolks and whites; the dish of another recipe; what stands for a component
that cannot be made."""


class Parts(NamedTuple):
    """A batch comes to be beside the one in hand: parted from `source`, which is so much `less` of known weight."""

    batch: int
    kind: PartKind
    source: int = -1
    foods: tuple[Food, ...] = ()
    mass: Mass | None = None
    left: Fraction = Fraction(1)
    less: bool = False


class Loses(NamedTuple):
    """Food leaves a batch: fished out and gone, or lifted out. The batch is not called by these `names` any more."""

    batch: int
    foods: tuple[Food, ...]
    names: tuple[tuple[str, ...], ...] = ()


class Discards(NamedTuple):
    """All that is left of a batch is thrown away."""

    batch: int


class Names(NamedTuple):
    """A batch is called by these words from now on."""

    batch: int
    words: tuple[str, ...]


class Closes(NamedTuple):
    """A batch is put by as a product: open for later lines of its component, or, at the end of that, for all."""

    batch: int
    origin: Origin
    product: int
    left: Fraction


class Splits(NamedTuple):
    """A batch lies in so many pieces; None where nobody can say."""

    batch: int
    number: Amount | None
    noun: str = ""


class Reaches(NamedTuple):
    """A batch is measured where it has got to, boiled down to this: it weighs that, whatever went in. `measure` is None
    for a part of it: by half."""

    batch: int
    mass: Mass
    measure: Measure | None


class Redoes(NamedTuple):
    """Actions from the first to the last are done so many more times, and this much more goes into the batch."""

    first: int
    last: int
    more: Fraction
    batch: int
    mass: Mass


class Follows(NamedTuple):
    """The action waits for an earlier one: until its wait has begun, or until it has ended."""

    action: int
    from_start: bool = False


class Beside(NamedTuple):
    """The action runs beside the wait of another; -1 where nothing waits."""

    action: int


class Stands(NamedTuple):
    """Where a line's batch is while the line lasts (`""`: at no station), and whether it is still there at its end;
    `heats`: no food is there, and the line heats the station itself or an empty vessel."""

    batch: int
    station: Station
    stays: bool
    heats: Literal["", "station", "vessel"] = ""


class Sets(NamedTuple):
    """The degrees of a clause, the action's `read`, are those of the place where its line works, and not the food's: it
    is set to them, or, where nobody sets a room or a fridge, as warm as that (`set` is false)."""

    read: int
    station: Station
    celsius: Amount
    set: bool = True


Effect = (
    Begins
    | Turns
    | Gives
    | Weighs
    | Refers
    | Takes
    | Parts
    | Loses
    | Discards
    | Names
    | Closes
    | Splits
    | Reaches
    | Redoes
    | Follows
    | Beside
    | Stands
    | Sets
    | VerbUse
    | Tool
    | Setting
    | Target
    | Time
    | Cue
    | Tending
    | Pause
    | Division
    | Repeat
    | Meanwhile
    | Manner
    | Diagnostic
)
"""What an entry tells. Clauses that change no batch stand there as they were read, and so do findings."""


class Entry(NamedTuple):
    """One effect of one clause, verb or line: where it stands (`clause`, and in it the exact `words`), which of the
    action's records it is (`read`), the batch in hand after it, and why."""

    number: int
    action: int
    component: int
    clause: Span
    words: Span
    read: int
    effect: Effect
    batch: int
    why: Why


SAID = Why("said")
