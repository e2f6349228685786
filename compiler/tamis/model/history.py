"""What happened to every batch, in the order in which it happened.

Products and takings tell who uses what, but not when: whether the marinade was poured off before the chicken was
cooked or after it. What must be traced through the flow (hazards, allergens) needs the order, which the log has: this
is the part of it that happens to batches.
"""

from __future__ import annotations

from tamis.model.effects import Gives, Parts, Takes
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple, made
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from tamis.model.batch import Batch
    from tamis.model.effects import Entry
    from tamis.reading.clauses import Read

Kind = Literal["food", "aside", "batch", "by-product", "lifted", "own-part", "clause"]
_PARTED: tuple[Kind, ...] = ("by-product", "lifted", "own-part")
"""What comes out of another batch."""


class Happening(NamedTuple):
    """One thing that happened to a batch during an action.

    `food`: a use went in (`goods` is the part of it that did: the yolk of an egg). `aside`: a use for a purpose met
    the batch (brushed on, dusted under). `batch`: the batch numbered `other` went in, or a share of it. `by-product`:
    the batch was parted from `other` as that stood then. `lifted`: the foods of the batch were lifted out
    of `other`. `own-part`: it is what foods of `other` have by nature, such as their skin. `clause`: the clause `read`
    of the action acted on it.
    """

    kind: Kind
    action: int
    batch: int
    other: int = -1
    use: int = -1
    goods: str = ""
    read: int = -1


class Hand(NamedTuple):
    """The uses in a line's batch once it is done, by index. `parted`: some of it was parted from another batch, and
    nobody knows how much of each use that was."""

    uses: frozenset[int] = frozenset()
    parted: bool = False


class History(NamedTuple):
    """All happenings in order; `products` gives the product that each batch is or came to be (-1: none), `components`
    the batch that each component ended with (-1: none)."""

    happenings: tuple[Happening, ...] = ()
    products: tuple[int, ...] = ()
    components: tuple[int, ...] = ()

    def hands(self, lines: int) -> Hands:
        """What each of so many lines has in hand."""
        piles: dict[int, _Pile] = {}
        parts: set[int] = set()
        after: dict[int, tuple[_Pile, int, bool]] = {}
        for kind, action, number, other, use, _, _ in self.happenings:
            pile = piles.setdefault(number, [])
            if kind == "food":
                pile.append(use)
            elif kind in ("batch", "by-product", "own-part"):
                whole = piles.get(other, [])
                pile.append((whole, len(whole)))
            if kind in _PARTED or other in parts:
                parts.add(number)
            after[action] = (pile, len(pile), number in parts)
        return Hands(lines, after)


_Pile = list["int | tuple[_Pile, int]"]
"""What came into a batch, in order: a use, or all that was in another batch's pile so far."""


class Hands:
    """What each line has in hand, by its number; worked out where it is asked for, as it grows with every line."""

    __slots__ = ("_after", "_lines", "_told")

    def __init__(self, lines: int = 0, after: Mapping[int, tuple[_Pile, int, bool]] | None = None) -> None:
        self._lines = lines
        self._after = after or {}
        self._told: dict[int, Hand] = {}

    def __len__(self) -> int:
        return self._lines

    def __getitem__(self, line: int) -> Hand:
        hand = self._told.get(line)
        if hand is None:
            pile, so_far, parted = self._after.get(line, ([], 0, False))
            hand = self._told[line] = Hand(frozenset(_uses(pile, so_far, {})), parted)
        return hand

    def newly(self, lines: Iterable[int]) -> Iterator[tuple[int, set[int]]]:
        """The uses in hand at each of some lines that none of those before it in the order asked for had."""
        looked: dict[int, int] = {}
        found: set[int] = set()
        for line in lines:
            pile, so_far, _ = self._after.get(line, ([], 0, False))
            uses = _uses(pile, so_far, looked) - found
            found |= uses
            yield line, uses


def _uses(pile: _Pile, so_far: int, looked: dict[int, int]) -> set[int]:
    """The uses in a pile and in all that came into it; of each pile, by its identity, only what was not looked at
    before."""
    found: set[int] = set()
    left = [(pile, so_far)]
    while left:
        pile, so_far = left.pop()
        for what in pile[looked.get(id(pile), 0) : so_far]:
            if isinstance(what, int):
                found.add(what)
            else:
                left.append(what)
        looked[id(pile)] = max(so_far, looked.get(id(pile), 0))
    return found


def history_of(
    log: Sequence[Entry],
    lines: Sequence[Sequence[Read]],
    batches: Sequence[Batch],
    components: Sequence[Batch | None],
) -> History:
    """The history that a log tells; `lines` are the clauses of each action, `components` the batches that they
    ended with."""
    found: list[Happening] = []
    before = batch = read = -1  # the clause whose entries are being read, and the batch in hand after it
    ahead: list[int] = []  # clauses before the food of their line: *[boil for 10 min] [4 eggs]*
    for _, action, _, _, _, at, effect, after, _ in log:
        if at != read or action != before:
            if read >= 0 and type(lines[before][read]) is not Ingredient:
                if batch >= 0:
                    found.append(made(Happening, ("clause", before, batch, -1, -1, "", read)))
                else:
                    ahead.append(read)
            if ahead and batch >= 0 and (at < 0 or action != before):
                found += [made(Happening, ("clause", before, batch, -1, -1, "", one)) for one in ahead]
            if action != before or (batch >= 0 and at < 0):
                ahead = []
            before, read = action, at
        if type(effect) in _HAPPENS:
            found += _happenings(effect, action)  # type: ignore[arg-type]  # one of these
        batch = after
    products = tuple([-1 if batch.product is None else batch.product for batch in batches])
    return History(tuple(found), products, tuple([-1 if batch is None else batch.number for batch in components]))


_HAPPENS = frozenset((Gives, Takes, Parts))


def _happenings(effect: Gives | Takes | Parts, action: int) -> list[Happening]:
    """What happens to batches by an effect."""
    if isinstance(effect, Gives):
        if effect.food is not None:
            return [made(Happening, ("food", action, effect.batch, -1, effect.use, effect.food.goods, -1))]
        return [made(Happening, ("aside", action, effect.batch, -1, effect.use, "", -1))] if effect.batch >= 0 else []
    if isinstance(effect, Takes):
        return [made(Happening, ("batch", action, effect.into, effect.source, -1, "", -1))]
    if effect.kind in _PARTED and effect.source >= 0:
        return [made(Happening, (effect.kind, action, effect.batch, effect.source, -1, "", -1))]
    if effect.kind == "by-product":
        return []
    return [Happening("food", action, effect.batch, use=food.use, goods=food.goods) for food in effect.foods]
