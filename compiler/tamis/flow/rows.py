"""The rows: one for each action, folded from the log in one pass.

Nothing is resolved here. The log says what goes in, what is taken and what it is taken for; `Replay` says what lies
there by then; the clauses say the rest in the cook's own words.
"""

from __future__ import annotations

from tamis.flow.records import After, Coming, Leaving, Now, Reason, Row
from tamis.flow.sentence import sentence
from tamis.flow.told import NAMED, Told
from tamis.flow.waits import last_waits, waited_for
from tamis.flow.where import Places, time_of
from tamis.flow.why import reason_of
from tamis.kitchen.equipment import HOLDS
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
    Reaches,
    Splits,
    Takes,
    Turns,
)
from tamis.model.mass import Mass, times
from tamis.quantity.display import number, written
from tamis.quantity.measure import kind
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient, Reference
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.flow.records import LeavesKind
    from tamis.kitchen.house import Kitchen
    from tamis.model.effects import Entry
    from tamis.model.recipe import Action, Recipe, Use
    from tamis.source import Source

_GOES_ON = ("meanwhile-over", "apart-over")
"""Where the hand goes back to what it was at before; the line has not worked on that."""
_LITTLE = 50
"""A leaf or a pod that is so many times lighter than the rest changes nothing of its weight."""
ROOM = 74
"""Columns that a line's own words have."""


class _Draft:
    """A row while the log is read."""

    __slots__ = ("after", "back", "batch", "beside", "goes_in", "leaves", "meanwhile", "now", "reasons")

    def __init__(self) -> None:
        self.goes_in: list[Coming] = []
        self.beside: list[Coming] = []
        self.now: Now | None = None
        self.batch = -1
        self.after: list[After] = []
        self.meanwhile = -1
        self.back = -1  # where in the file the line goes back to what it left standing
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
        self._cooks(draft, entry)
        tells = _TELLS.get(type(entry.effect))
        if tells:
            tells(self, draft, entry, entry.effect)
        if isinstance(entry.effect, Turns) and entry.why.rule == "goes-back":
            draft.back = entry.clause.start
        if entry.batch >= 0 and not (isinstance(entry.effect, Turns) and entry.why.rule in _GOES_ON):
            draft.now, draft.batch = self._now(entry.batch), entry.batch
        elif isinstance(entry.effect, Closes | Discards) and draft.now and draft.now.number == entry.effect.batch:
            draft.now = None
        reason = reason_of(self.told, entry)
        if reason and reason not in draft.reasons:
            draft.reasons.append(reason)

    def _cooks(self, draft: _Draft, entry: Entry) -> None:
        """What is cooked for a while weighs no more what went in, and what is moved on is no longer in its tins."""
        action, batch, told = self.recipe.actions[entry.action], entry.batch, self.told
        if batch < 0 or draft.batch == batch:
            return
        work = action.work
        verb = self.kitchen.verbs.of_base(work.verb) if work.wait else None
        if verb and verb.cooks and not action.heats:
            told.cooked.add(batch)
        one, vessel = nouns(self.recipe.language).singular, told.vessels.get(batch)
        places = [tool.name for tool in action.tools if tool.equipment.kind in HOLDS]
        if vessel and any(one(name.lower().rpartition(" ")[2]) != vessel for name in places):
            told.turned_out.add(batch)

    def _now(self, batch: int) -> Now:
        there, told = self.told.replay.batches[batch], self.told
        measure = written(there.measure, self.recipe.language) if there.measure else ""
        mass = None if batch in told.unweighed else there.mass
        return Now(batch, told.name(batch), mass, told.pieces(batch), measure, batch in told.cooked)

    def _gives(self, draft: _Draft, entry: Entry, effect: Gives) -> None:
        use = self.recipe.uses[effect.use]
        coming = Coming(self._said(use), use.mass, not self._tells_weight(use), effect.use)
        if effect.food is None:
            purpose = use.ingredient.purpose  # of a bench that is dusted only the line tells it
            words = coming.words if purpose in coming.words else f"{coming.words} {purpose}"
            draft.beside.append(coming._replace(words=words))
            return
        draft.goes_in.append(coming)
        self.told.put(effect.batch, self.told.food(use), use.mass)

    def _said(self, use: Use) -> str:
        """The clause of a food, as written."""
        item = use.ingredient
        text = item.clause.text
        here = [read for read in self.recipe.actions[use.action].reads if read.clause is item.clause]
        if any(isinstance(read, Ingredient) and read.name != item.name for read in here):  # salt and pepper
            text = f"{item.measure_text} {item.name}".strip()
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
        here = self.told.began[effect.source] == entry.action
        if entry.why.rule == "component-end":  # no line put it there
            self._joins(effect, name, mass)
            return
        if not here or (effect.source not in self.lifted and (source.product >= 0 or effect.use >= 0)):
            words, served = self._part(entry, effect) + name, self._is_served(entry)
            cooked = effect.source in self.told.cooked
            draft.goes_in.append(Coming(words, mass, True, effect.use, source.product, cooked, served))
            if served:
                self.told.unweighed.add(effect.into)
        self._joins(effect, name, mass)

    def _joins(self, effect: Takes, name: str, mass: Mass | None) -> None:
        """What was put in before is in there now, under its name if it has one."""
        told = self.told
        if effect.source in told.cooked:
            told.cooked.add(effect.into)
        if effect.source in told.turned_out:
            told.turned_out.add(effect.into)
        if effect.source in told.unweighed:
            told.unweighed.add(effect.into)
        if effect.source in told.names:
            told.put(effect.into, name, mass)
            return
        for food, weight in told.contents.get(effect.source, {}).items():
            told.put(effect.into, food, Mass(hi=weight))

    def _is_served(self, entry: Entry) -> bool:
        """Whether the last verb before a clause puts on the table: *serve with [the rice]*."""
        verbs = [use for use in self.recipe.actions[entry.action].verbs if use.span.start < entry.clause.start]
        return bool(verbs) and verbs[-1].verb.serves

    def _part(self, entry: Entry, effect: Takes) -> str:
        """How much of something is taken; of all of it nothing is said."""
        read = self.recipe.actions[entry.action].reads[entry.read] if entry.read >= 0 else None
        share = read.share if isinstance(read, Reference) else None
        if effect.whole:
            return "" if effect.fraction == 1 else "the rest of "
        if share and share.measure and share.kind == "measure":
            return f"{written(share.measure, self.recipe.language)} of "
        return "some of " if effect.fraction is None else f"{number(effect.fraction)} of "

    def _parts(self, draft: _Draft, entry: Entry, effect: Parts) -> None:
        if effect.kind == "lifted":
            self.lifted.add(effect.batch)
            if effect.source in self.told.cooked:
                self.told.cooked.add(effect.batch)
        elif effect.kind == "by-product" and effect.source in self.told.cooked:
            self.told.unweighed.add(effect.source)
        for food in effect.foods:
            use = self.recipe.uses[food.use]
            name = self.told.food(use) if effect.kind in ("rest", "lifted") else " ".join(food.words)
            self.told.put(effect.batch, name, food.mass)

    def _closes(self, draft: _Draft, entry: Entry, effect: Closes) -> None:
        product, there = self.recipe.products[effect.product], self.told.replay.batches[effect.batch]
        draft.batch = effect.batch if draft.batch < 0 else draft.batch
        if product.kind in NAMED:
            self.told.names[effect.batch] = product.name
        if product.kind == "by-product":
            draft.leaves.append(Leaving("leaves", product.name, there.mass, effect.product))
        elif product.kind != "used-recipe":
            end: LeavesKind = "done" if product.kind == "component" else "kept"
            _, name, mass, pieces, measure, went_in = self._now(effect.batch)
            draft.leaves.append(Leaving(end, name, mass, effect.product, pieces, measure, went_in))

    def _loses(self, draft: _Draft, entry: Entry, effect: Loses) -> None:
        lifted = isinstance(self.recipe.log[entry.number - 1].effect, Names)  # those are a batch by themselves
        cooked = effect.batch in self.told.cooked
        there = self.told.replay.batches[effect.batch].mass.hi
        if cooked and sum(food.mass.hi for food in effect.foods) * _LITTLE > there:
            self.told.unweighed.add(effect.batch)
        for food in effect.foods:
            part = " ".join(food.words)  # of a food, such as its shell
            there_so = part in self.told.contents.get(effect.batch, {})
            name = part if there_so else self.told.food(self.recipe.uses[food.use])
            if not lifted:
                draft.leaves.append(Leaving("out", name, None if cooked else food.mass))
            self.told.contents.get(effect.batch, {}).pop(name, None)

    def _splits(self, draft: _Draft, entry: Entry, effect: Splits) -> None:
        """Divided between tins, it lies in these until it is turned out."""
        if entry.why.rule == "divided-between":
            self.told.vessels[effect.batch] = effect.noun.rpartition(" ")[2]
            self.told.turned_out.discard(effect.batch)

    def _reaches(self, draft: _Draft, entry: Entry, effect: Reaches) -> None:
        self.told.cooked.discard(effect.batch)
        self.told.unweighed.discard(effect.batch)

    def _discards(self, draft: _Draft, entry: Entry, effect: Discards) -> None:
        batch = self.told.replay.batches[effect.batch]
        draft.leaves.append(Leaving("away", self.told.name(effect.batch), None, batch.product))

    def _follows(self, draft: _Draft, entry: Entry, effect: Follows) -> None:
        what = self.told.said(entry.words) if entry.why.rule == "goes-in" else ""
        if entry.why.rule == "same-batch" and effect.action != entry.action - 1 and entry.batch >= 0:
            what = self.told.name(entry.batch)
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
    Splits: Reader._splits,
    Reaches: Reader._reaches,
    Discards: Reader._discards,
    Follows: Reader._follows,
    Beside: Reader._beside,
}


def rows_of(recipe: Recipe, source: Source, kitchen: Kitchen) -> tuple[Row, ...]:
    """A row for each action, in the order of the text."""
    reader = Reader(recipe, source, kitchen)
    for entry in recipe.log:
        reader.read(entry)
    hot = {after.action for draft in reader.drafts for after in draft.after if after.rule == "hot-vessel"}
    places = Places(recipe, source, hot)
    nexts = _next_of_batch(reader)
    return tuple(_row(reader, places, number, draft, nexts[number]) for number, draft in enumerate(reader.drafts))


def _next_of_batch(reader: Reader) -> list[int]:
    """For each action the next one in the text that works on the same batch; -1 for none."""
    found, later = [-1] * len(reader.drafts), dict[int, int]()
    for at in range(len(reader.drafts) - 1, -1, -1):
        batch = reader.drafts[at].batch
        if batch >= 0 and not reader.recipe.actions[at].heats:
            found[at] = later.get(batch, -1)
            later[batch] = at
    return found


def _row(reader: Reader, places: Places, number: int, draft: _Draft, goes_on: int) -> Row:
    recipe, told = reader.recipe, reader.told
    action = recipe.actions[number]
    hot = next((after.action for after in draft.after if after.rule == "hot-vessel"), -1)
    waits = last_waits(recipe, number, draft.after)
    return Row(
        told.line(number),
        number,
        action.component,
        sentence(action, recipe.language, ROOM),
        tuple(draft.goes_in),
        tuple(draft.beside),
        None if action.heats else draft.now,  # what waits beside an oven that is heated is not worked on
        places.of(_from(action, draft.back), draft.batch, hot, recipe.actions[goes_on] if goes_on >= 0 else None),
        time_of(action, recipe.places.lines[number]),
        tuple(after._replace(what=waited_for(recipe, number, after, _made(reader, after))) for after in waits),
        draft.meanwhile,
        told.line(draft.meanwhile) if draft.meanwhile >= 0 else 0,
        tuple(draft.leaves),
        tuple(draft.reasons),
    )


def _from(action: Action, place: int) -> Action:
    """A line with the tools alone that stand behind a place."""
    return action._replace(tools=tuple(tool for tool in action.tools if tool.clause.span.end > place))


def _made(reader: Reader, after: After) -> str:
    """What lay there when a line was done, or was put by."""
    draft = reader.drafts[after.action]
    put_by = [leaving.name for leaving in draft.leaves if leaving.kind in ("kept", "done")]
    return put_by[0] if put_by else draft.now.name if draft.now else ""
