"""The rows: one for each action, folded from the log in one pass.

Nothing is resolved here. The log says what goes in, what is taken and what it is taken for; `Replay` says what lies
there by then; the clauses say the rest in the cook's own words.
"""

from __future__ import annotations

from tamis.flow.records import After, Coming, Leaving, Now, Reason, Row
from tamis.flow.told import Told
from tamis.flow.where import time_of, where_of
from tamis.flow.why import reason_of
from tamis.model.effects import (
    Begins,
    Beside,
    Closes,
    Discards,
    Follows,
    Gives,
    Loses,
    Names,
    Parts,
    Takes,
    Turns,
)
from tamis.model.mass import times
from tamis.quantity.display import number, written
from tamis.quantity.measure import kind
from tamis.reading.clauses import Reference
from tamis.timeline.titles import title
from tamis.timeline.words import row_words
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.flow.records import LeavesKind
    from tamis.kitchen.house import Kitchen
    from tamis.model.effects import Entry
    from tamis.model.recipe import Recipe, Use
    from tamis.source import Source

_GOES_ON = ("meanwhile-over", "apart-over")
"""Where the hand goes back to what it was at before; the line has not worked on that."""
_NAMED = ("component", "named", "by-product", "used-recipe")
"""Products that are called as the cook called them; others are told by what is in them."""


class _Draft:
    """A row while the log is read."""

    __slots__ = ("after", "beside", "goes_in", "leaves", "meanwhile", "now", "reasons")

    def __init__(self) -> None:
        self.goes_in: list[Coming] = []
        self.beside: list[Coming] = []
        self.now: Now | None = None
        self.after: list[After] = []
        self.meanwhile = -1
        self.leaves: list[Leaving] = []
        self.reasons: list[Reason] = []


class Reader:
    """The log read from its beginning; `told` is what it has told so far."""

    __slots__ = ("drafts", "kitchen", "lifted", "recipe", "told")

    def __init__(self, recipe: Recipe, source: Source, kitchen: Kitchen) -> None:
        self.told = Told(recipe, source)
        self.recipe = recipe
        self.kitchen = kitchen
        self.lifted: set[int] = set()
        self.drafts = [_Draft() for _ in recipe.actions]

    def read(self, entry: Entry) -> None:
        """One entry."""
        self.told.replay.read(entry)
        if entry.action < 0:
            return
        draft = self.drafts[entry.action]
        if isinstance(entry.effect, Begins | Parts):
            self.told.began[entry.effect.batch] = entry.action
        tells = _TELLS.get(type(entry.effect))
        if tells:
            tells(self, draft, entry, entry.effect)
        if entry.batch >= 0 and not (isinstance(entry.effect, Turns) and entry.why.rule in _GOES_ON):
            draft.now = self._now(entry.batch)
        elif isinstance(entry.effect, Closes | Discards) and draft.now and draft.now.number == entry.effect.batch:
            draft.now = None
        reason = reason_of(self.told, entry)
        if reason and reason not in draft.reasons:
            draft.reasons.append(reason)

    def _now(self, batch: int) -> Now:
        there = self.told.replay.batches[batch]
        return Now(batch, self.told.name(batch), there.mass, there.pieces)

    def _gives(self, draft: _Draft, entry: Entry, effect: Gives) -> None:
        use = self.recipe.uses[effect.use]
        coming = Coming(self._said(use), use.mass, not self._tells_weight(use), effect.use)
        if effect.food is None:
            draft.beside.append(coming._replace(words=f"{coming.words} {use.ingredient.purpose}".rstrip()))
            return
        draft.goes_in.append(coming)
        self.told.contents.setdefault(effect.batch, []).append(use.ingredient.name)

    def _said(self, use: Use) -> str:
        """The measure and the name of a food, as written."""
        item = use.ingredient
        text = self.told.source.slice(item.clause.span)[1 : item.name_span.end - item.clause.span.start]
        if item.preposition and text.lower().startswith(f"{item.preposition} "):
            text = text[len(item.preposition) + 1 :]
        words = " ".join(text.split())
        return f"{number(use.times)} × {words}" if use.times != 1 else words

    def _tells_weight(self, use: Use) -> bool:
        """Whether its words say what it weighs."""
        item = use.ingredient
        if item.percent is not None or use.fraction != 1 or use.times != 1:
            return False
        said = item.also or (item.measures if len(item.measures) == 1 else ())
        return any(kind(measure, self.kitchen.units) == "mass" for measure in (*said, *item.measures[:1]))

    def _takes(self, draft: _Draft, entry: Entry, effect: Takes) -> None:
        source, name = self.told.replay.batches[effect.source], self.told.name(effect.source)
        mass = None if effect.scale is None else times(source.mass, effect.scale)
        if effect.source not in self.lifted or self.told.began[effect.source] != entry.action:
            coming = Coming(self._part(entry, effect) + name, mass, True, effect.use, source.product)
            draft.goes_in.append(coming)
        there = [name] if effect.source in self.told.names else self.told.contents.get(effect.source, ())
        self.told.contents.setdefault(effect.into, []).extend(there)

    def _part(self, entry: Entry, effect: Takes) -> str:
        """How much of something is taken; of all of it nothing is said."""
        read = self.recipe.actions[entry.action].reads[entry.read]
        share = read.share if isinstance(read, Reference) else None
        if effect.whole:
            return "" if effect.fraction == 1 else "the rest of "
        if share and share.measure and share.kind == "measure":
            return f"{written(share.measure, self.recipe.language)} of "
        return "some of " if effect.fraction is None else f"{number(effect.fraction)} of "

    def _parts(self, draft: _Draft, entry: Entry, effect: Parts) -> None:
        if effect.kind == "lifted":
            self.lifted.add(effect.batch)
        for food in effect.foods:
            use = self.recipe.uses[food.use]
            self.told.contents.setdefault(effect.batch, []).append(
                use.ingredient.name if effect.kind in ("rest", "lifted") else " ".join(food.words)
            )

    def _closes(self, draft: _Draft, entry: Entry, effect: Closes) -> None:
        product, there = self.recipe.products[effect.product], self.told.replay.batches[effect.batch]
        if product.kind in _NAMED:
            self.told.names[effect.batch] = product.name
        if product.kind == "by-product":
            draft.leaves.append(Leaving("leaves", product.name, there.mass, effect.product))
        elif product.kind != "used-recipe":
            end: LeavesKind = "done" if product.kind == "component" else "kept"
            draft.leaves.append(Leaving(end, self.told.name(effect.batch), there.mass, effect.product, there.pieces))

    def _loses(self, draft: _Draft, entry: Entry, effect: Loses) -> None:
        lifted = isinstance(self.recipe.log[entry.number - 1].effect, Names)  # those are a batch by themselves
        for food in effect.foods:
            name = self.recipe.uses[food.use].ingredient.name
            if not lifted:
                draft.leaves.append(Leaving("out", name, food.mass))
            self.told.contents[effect.batch] = [
                other for other in self.told.contents.get(effect.batch, ()) if other != name
            ]

    def _discards(self, draft: _Draft, entry: Entry, effect: Discards) -> None:
        batch = self.told.replay.batches[effect.batch]
        draft.leaves.append(Leaving("away", self.told.name(effect.batch), None, batch.product))

    def _follows(self, draft: _Draft, entry: Entry, effect: Follows) -> None:
        what = self.told.said(entry.words) if entry.why.rule == "goes-in" else ""
        if entry.why.rule == "heated":
            what = row_words(self.recipe.language).stations[self.recipe.actions[effect.action].heats]
        line = self.told.line(effect.action)
        draft.after.append(After(effect.action, line, entry.why.rule, what, effect.from_start))

    def _beside(self, draft: _Draft, entry: Entry, effect: Beside) -> None:
        draft.meanwhile = effect.action


_TELLS: dict[type, Callable[[Reader, _Draft, Entry, Any], None]] = {
    Gives: Reader._gives,
    Takes: Reader._takes,
    Parts: Reader._parts,
    Closes: Reader._closes,
    Loses: Reader._loses,
    Discards: Reader._discards,
    Follows: Reader._follows,
    Beside: Reader._beside,
}


def rows_of(recipe: Recipe, source: Source, kitchen: Kitchen) -> tuple[Row, ...]:
    """A row for each action, in the order of the text."""
    reader = Reader(recipe, source, kitchen)
    for entry in recipe.log:
        reader.read(entry)
    return tuple(_row(reader, number, draft) for number, draft in enumerate(reader.drafts))


def _row(reader: Reader, number: int, draft: _Draft) -> Row:
    action = reader.recipe.actions[number]
    return Row(
        reader.told.line(number),
        number,
        action.component,
        title(action, reader.recipe.language),
        tuple(draft.goes_in),
        tuple(draft.beside),
        None if action.heats else draft.now,  # what waits beside an oven that is heated is not worked on
        where_of(action, reader.recipe.places.lines[number], reader.recipe.language, reader.told.source),
        time_of(action),
        tuple(draft.after),
        draft.meanwhile,
        reader.told.line(draft.meanwhile) if draft.meanwhile >= 0 else 0,
        tuple(draft.leaves),
        tuple(draft.reasons),
    )
