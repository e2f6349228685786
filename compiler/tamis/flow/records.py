"""What was understood of a recipe, line by line."""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.model.effects import Rule
    from tamis.model.mass import Mass
    from tamis.quantity.amount import Amount

LeavesKind = Literal["leaves", "out", "away", "kept", "done"]
"""Left behind under a name; fished out; thrown away; put by for later; the component's end."""


class Coming(NamedTuple):
    """What goes in at a line, in the cook's words; what it weighs; whether that is worth saying, or said already; and
    which use or product of the recipe it is (-1: none). `went_in`: it has been cooked, and the weight is what went
    into it. `served`: it is not put in, but served with the rest."""

    words: str
    mass: Mass | None
    weighed: bool
    use: int = -1
    product: int = -1
    went_in: bool = False
    served: bool = False


class Now(NamedTuple):
    """The batch in hand when a line is done: what it is called or made of, what it weighs, and its pieces. `measure` is
    what it was boiled down to; `went_in`: it has been cooked, and the weight is what went into it."""

    number: int
    name: str
    mass: Mass | None
    pieces: tuple[Amount, str] | None
    measure: str = ""
    went_in: bool = False


class Leaving(NamedTuple):
    """What leaves the hand at a line."""

    kind: LeavesKind
    name: str
    mass: Mass | None
    product: int = -1
    pieces: tuple[Amount, str] | None = None
    measure: str = ""
    went_in: bool = False


class After(NamedTuple):
    """What a line waits for: an earlier action, at a line of the file, and by which rule; `what` is the thing that it
    wants of it. `from_start`: only until that has begun."""

    action: int
    line: int
    rule: Rule
    what: str
    from_start: bool


class Reason(NamedTuple):
    """Why words of a line were understood so, and the line that said what that goes by (0: none)."""

    words: str
    text: str
    rule: Rule
    line: int


class Row(NamedTuple):
    """One action: `where` it lies and how hot, `time` how long and what is looked for, as far as the line says so.
    `meanwhile` is the action whose wait it runs beside, at `meanwhile_line` of the file (-1 and 0: none)."""

    line: int
    action: int
    component: int
    title: str
    goes_in: tuple[Coming, ...]
    beside: tuple[Coming, ...]
    now: Now | None
    where: tuple[str, ...]
    time: tuple[str, ...]
    after: tuple[After, ...]
    meanwhile: int
    meanwhile_line: int
    leaves: tuple[Leaving, ...]
    reasons: tuple[Reason, ...]
