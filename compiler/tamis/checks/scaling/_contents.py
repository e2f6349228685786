"""How much lies in a vessel at its fullest.

One fold over the log: where each batch lies, what it is made of, and what is put beside it to boil in. A batch goes
into the vessel that a line puts it into or returns it to, or where another batch lies to which it is put; what was
strained off, lifted out, drained or set to boil down is gone from there. Where nobody tells, it lies nowhere, and what
nobody measures counts for nothing.
"""

from __future__ import annotations

from collections import defaultdict

from tamis.checks.scaling._batch import Content
from tamis.checks.scaling._hand import whole
from tamis.checks.scaling._line import Line, Taken
from tamis.checks.scaling._medium import use_size
from tamis.checks.scaling._room import air, holds, swells
from tamis.checks.scaling._scene import Vessel, practice
from tamis.checks.words import check_words
from tamis.kitchen.equipment import COLD, HOLDS
from tamis.model.effects import (
    Begins,
    Discards,
    Gives,
    Loses,
    Parts,
    Reaches,
    Redoes,
    Refers,
    Splits,
    Stands,
    Takes,
)
from tamis.reading.clauses import Tool, VerbUse
from tamis.reading.plain_names import put_in
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.checks.scaling._scene import Scene
    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Food
    from tamis.model.effects import Entry


def vessels_of(scene: Scene) -> tuple[Vessel, ...]:
    """The vessels of a recipe, in the order in which they are brought out, each with the most that lies in it."""
    fold = _Fold(scene)
    for entry in scene.recipe.log:
        if entry.action >= 0:
            fold.read(entry)
    for vessel in fold.vessels:
        if vessel.heaped > vessel.bulk and vessel.wanted(scene.factor) == 1:
            vessel.fullest, vessel.swells = vessel.heaped, ""
    return tuple(fold.vessels)


class _Fold:
    """The log so far: the batches, the vessels, and of each component the last one named, and that on the hob."""

    __slots__ = ("batches", "lines", "loose", "most", "named", "on_ring", "scene", "stays", "vessels", "words")

    def __init__(self, scene: Scene) -> None:
        self.scene = scene
        self.words = check_words(scene.recipe.language)
        self.most = whole(scene.factor)
        self.stays = {id(medium.food) for medium in scene.media}
        self.batches: defaultdict[int, Content] = defaultdict(Content)
        self.vessels: list[Vessel] = []
        self.loose = 0
        self.named: dict[int, Vessel] = {}
        self.on_ring: dict[int, Vessel] = {}
        self.lines: dict[int, Line] = {}

    def read(self, entry: Entry) -> None:
        """Let an entry happen, after what plain words before it say of vessels."""
        line, effect = self.lines.get(entry.action), entry.effect
        if line is None:
            action = self.scene.recipe.actions[entry.action]
            self.loose = self.loose if action.continues else 0
            line = self.lines[entry.action] = Line(self.scene, action)
        while line.placed and (type(effect) is Stands or line.placed[0].span.start < entry.clause.start):
            self._tool(line, entry, line.placed.pop(0).tool)
        does = _DOES.get(type(effect))
        if does:
            does(self, line, entry, effect)

    def _verb(self, line: Line, entry: Entry, effect: VerbUse) -> None:
        self._part(line, entry.batch)
        line.since_verb = 0
        line.parting = effect.verb if effect.verb.separates else None
        if effect.verb.serves and entry.batch >= 0:
            self._measure(line, entry.batch)  # what it is served with does not lie there
        content = self.batches[entry.batch]
        if effect.verb.base in practice().verbs["returning"] and self._is_free(content.before, entry.batch):
            self._measure(line, entry.batch)
            self._move(entry.batch, content.before)

    def _refers(self, line: Line, entry: Entry, effect: Refers) -> None:
        self._part(line, effect.batch)
        content, line.named = self.batches[effect.batch], effect.batch
        if content.met and effect.batch == entry.batch and any(one.verb.adds for one in line.action.verbs):
            self._move(effect.batch, content.met)

    def _part(self, line: Line, batch: int) -> None:
        """What is drained loses its liquid, and leaves its vessel; what is strained, all but that."""
        verb, content = line.parting, self.batches[batch]
        line.parting = None
        if verb is None:
            return
        self._measure(line, batch)
        if verb.drains:
            content.liquid = 0 if content.solid else content.liquid
            self.on_ring.pop(line.action.component, None)
            self._move(batch, None)
        elif content.liquid:
            content.solid = 0

    def _begins(self, line: Line, entry: Entry, effect: Begins) -> None:
        line.begun.add(effect.batch)
        if line.vessels:
            self._move(effect.batch, line.vessels[-1])

    def _gives(self, line: Line, entry: Entry, effect: Gives) -> None:
        use = self.scene.recipe.uses[effect.use]
        food, goods, content = use.ingredient, use.ingredient.goods, self.batches[effect.batch]
        liquid, water = goods is not None and goods.liquid, goods is not None and goods.role == "water"  # or ice
        line.covers = line.covers or (liquid and water and not food.measured and line.drowns(food))
        if effect.food is None:
            serves = any(one.verb.serves for one in line.action.verbs)
            if food.purpose and (liquid or water) and not serves and id(food) not in self.stays:
                line.beside += whole(use_size(use, self.scene.kitchen))
            return
        self._part(line, effect.batch)
        line.mixed = line.mixed or (bool(content.size) and effect.batch not in line.begun and not line.given)
        if content.size and line.does("passing"):
            self._move(effect.batch, None)
        size = whole(effect.food.mass.hi or use_size(use, self.scene.kitchen))
        content.add(size, goods is not None and goods.wet)
        content.sure = content.sure and bool(size or not food.measures)
        content.air += air(line, food, size)
        line.food = entry.clause
        line.given += size
        line.since_verb += size

    def _takes(self, line: Line, entry: Entry, effect: Takes) -> None:
        source, into = self.batches[effect.source], self.batches[effect.into]
        self._part(line, effect.source)
        self._measure(line, effect.source)
        was, empty = source.solid + source.liquid, not into.size
        share = line.measured(entry.read) if effect.scale is None else whole(was * effect.scale)
        taken = source.size if effect.whole else share
        liquid = source.liquid * taken // was if was else taken
        line.mixed = line.mixed or not empty  # only a part of it was beaten
        into.solid += taken - liquid
        into.liquid += liquid
        into.air += source.air if effect.whole else 0
        into.sure = into.sure and source.sure and (effect.whole or bool(taken))
        source.gone += taken
        if effect.into not in line.begun:
            line.give(taken, entry.read)
        line.taken.append(Taken(effect.source, entry.clause, taken, len(line.vessels)))
        if effect.whole:
            there = source.vessel
            self._move(effect.source, None)
            puts_to = line.named == effect.source and line.is_put_to(entry.read)
            if line.does("passing"):  # crumbs on a plate, through which it goes piece by piece
                self._move(effect.into, None)
            elif puts_to or (into.vessel is None and empty):
                self._move(effect.into, there)

    def _parts(self, line: Line, entry: Entry, effect: Parts) -> None:
        """What comes out of a batch. Of what a line leaves it is so much as it says; foods of the batch; else all the
        liquid, if that is parted."""
        source, batch = self.batches[effect.source], self.batches[effect.batch]
        if source.vessel not in line.vessels:
            self._measure(line, effect.source)
        if effect.kind != "by-product":
            mass = whole(effect.mass.hi) if effect.mass is not None else 0
            batch.sure = effect.mass is None or effect.mass.known
            batch.add(mass, any(_is_liquid(food, self.scene.kitchen) for food in effect.foods))
            source.add(-mass if effect.less else 0, liquid=False)
            return
        line.parting = None
        batch.liquid = line.measured(entry.read) or line.stays
        if line.aside is not None or line.stays:
            self._move(effect.batch, line.aside or source.before)
        elif batch.liquid:
            source.add(-batch.liquid, liquid=True)
        elif not line.leaves_liquid():
            batch.solid = sum(whole(food.mass.hi) for food in effect.foods)
        else:
            batch.liquid, source.liquid, batch.sure = source.liquid, 0, source.sure
            if line.vessels:
                self._move(effect.source, None)
                self._move(effect.batch, line.vessels[-1])
                self._measure(line, effect.batch)

    def _loses(self, line: Line, entry: Entry, effect: Loses) -> None:
        self._measure(line, effect.batch)
        for food in effect.foods:
            self.batches[effect.batch].add(-whole(food.mass.hi), _is_liquid(food, self.scene.kitchen))

    def _reaches(self, line: Line, entry: Entry, effect: Reaches) -> None:
        content, size = self.batches[effect.batch], whole(effect.mass.hi) or line.amount(effect.measure)
        self._measure(line, effect.batch)
        if size:
            content.solid, content.liquid, content.gone = 0, size, 0

    def _redoes(self, line: Line, entry: Entry, effect: Redoes) -> None:
        self.batches[effect.batch].add(whole(effect.mass.hi), liquid=False)

    def _leaves(self, line: Line, entry: Entry, effect: Discards | Splits) -> None:
        """It is thrown away, or out of its bowl to be divided."""
        vessel = self.batches[effect.batch].vessel
        if vessel is not None and not (type(effect) is Splits and vessel.hot):
            self._measure(line, effect.batch)
            self._move(effect.batch, None)

    def _tool(self, line: Line, entry: Entry, tool: Tool) -> None:
        """A line names a vessel: it puts its batch there, or gets food ready in it that joins the batch."""
        words, first, batch = self.words, tool.preposition.partition(" ")[0], entry.batch
        only_named = first in ("", *words.vessels.of)
        holds = tool.equipment.kind in HOLDS or tool.equipment.id in practice().holds
        inside = only_named or first in words.vessels.puts_in
        if not holds or not inside or tool.preposition in words.scaling.above:
            return
        content = self.batches[batch]
        vessel = self._brought(tool, content.vessel) if tool.equipment.kind != "surface" else None
        if vessel is not None:
            line.vessels.append(vessel)
            self.named[entry.component] = vessel
            if tool.equipment.station == "ring":
                self.on_ring[entry.component] = vessel
        if batch < 0 or (only_named and batch not in line.begun):
            return
        if vessel is not None and line.puts_aside(tool.clause.span.start):
            line.aside = vessel
            return
        if vessel is not None and line.taken and line.is_share(tool):
            self._fill(line, vessel, line.taken[-1].size)
        elif vessel is not content.vessel and not line.is_its_batch(tool, batch):
            if vessel is not None:
                line.apart.append(vessel)
                content.met = vessel if tool.equipment.station == "ring" else content.met
        elif line.parting is None or line.parting.drains or not line.leaves_liquid():  # else that goes there
            self._part(line, batch)
            if not line.given:
                self._measure(line, batch)
            if vessel is not None and not vessel.hot and line.lifts_out():
                line.stays, content.liquid = content.liquid, 0
            self._move(batch, vessel)
            line.covers = line.covers or bool(tool.contains)

    def _brought(self, tool: Tool, there: Vessel | None) -> Vessel:
        """The vessel that a line brings out, or the one that it means by *the*: of two alike that in which its batch
        lies."""

        def answers(vessel: Vessel) -> tuple[bool, ...]:
            other, kind = vessel.tool, tool.equipment
            general = kind.general and other.equipment.station == kind.station
            return other.name == tool.name, other.equipment is kind, general, other.name.endswith(tool.name)

        meant = (
            max(reversed(self.vessels), key=lambda one: (*answers(one), one is there), default=None)
            if tool.definite
            else None
        )
        if meant is None or not any(answers(meant)):
            meant = Vessel(tool, holds(self.scene, tool))
            self.vessels.append(meant)
        return meant

    def _is_free(self, vessel: Vessel | None, batch: int) -> bool:
        """Whether a batch that lies in a cold vessel, or in none, may go on in another."""
        there = self.batches[batch].vessel
        cold = there is None or not there.hot
        return cold and vessel is not None and vessel.hot and vessel.batch in (-1, batch)

    def _move(self, batch: int, vessel: Vessel | None) -> None:
        """A batch goes into a vessel, or out of all; what it boiled in stays behind."""
        content = self.batches[batch]
        old = content.vessel
        if old is vessel:
            return
        if old is not None and old.batch == batch:
            old.batch, old.beside = -1, 0
        content.before, content.vessel, content.layer = old or content.before, vessel, 0
        if vessel is not None:
            vessel.batch, content.met = batch, None

    def _settle(self, line: Line, batch: int) -> None:
        """What a line puts in to boil or soak in comes into the vessel of its batch; of a liquid that nobody measures
        so much as covers what lies there."""
        content = self.batches[batch]
        vessel = content.vessel if batch >= 0 else self.named.get(line.action.component)
        self.loose += line.beside  # until its vessel is named
        line.beside = 0
        if vessel is not None:
            vessel.beside += self.loose + (whole(content.size * practice().amounts["covers"]) if line.covers else 0)
            self.loose, line.covers = 0, False

    def _measure(self, line: Line, batch: int) -> None:
        """How full a vessel is now; not where its food is done in batches, or lies in a layer to fry."""
        content, vessel = self.batches[batch], self.batches[batch].vessel
        self._settle(line, batch)
        if vessel is None or vessel.batch != batch or (line.action.batches > 1 and vessel.hot):
            return
        if line.action.work.verb in practice().verbs["frying"]:
            content.layer = whole(content.size * practice().limits["fuller"])
        dry = vessel.tool.equipment.id in practice().layered and not content.liquid
        if not dry and content.size > content.layer:
            size = content.size + vessel.beside
            heaped = size + content.air - content.liquid - vessel.beside  # liquid fills the gaps
            vessel.heaped = max(vessel.heaped, heaped)
            vessel.sure = vessel.sure and content.sure
            self._fill(line, vessel, size)

    def _fill(self, line: Line, vessel: Vessel, size: int) -> None:
        may = size * 2 > vessel.bulk and 0 < vessel.holds < size * 2 * self.most
        doubles = swells(self.scene, line) if may else ""
        if doubles == "rising" and (vessel.hot or (line.vessels and vessel not in line.vessels)):
            doubles = ""  # it rises in another, or in pieces
        if size * (2 if doubles else 1) > vessel.bulk:
            vessel.fullest, vessel.swells = size, doubles

    def _stands(self, line: Line, entry: Entry, effect: Stands) -> None:
        """The end of a line: where its batch is now. Raw leaves fall together on the heat, and what is cooked in
        batches has come out again."""
        batch, content, named = effect.batch, self.batches[effect.batch], self.named.get(line.action.component)
        self._part(line, batch)
        for vessel in line.apart:
            self._fill(line, vessel, line.given)
        if batch < 0:
            self._settle(line, batch)
            if named is not None and named.batch < 0:
                self._fill(line, named, named.beside)
            return
        if not line.vessels and (line.does("passing") or any(one.verb.serves for one in line.action.verbs)):
            self._move(batch, None)
            return
        there, on_ring = content.vessel, effect.station == "ring"
        verb = self.scene.kitchen.verbs.of_base(line.action.work.verb)
        works = there in line.vessels and verb is not None and not verb.cooks  # blends in a food processor
        cold = there is None or not (there.hot or works)
        poured = bool(line.apart) and line.pours_it()
        if poured:  # what was got ready leaves its vessel, and the batch stays where it was
            content.met = None
            self.on_ring.pop(entry.component, None)
        elif effect.station in ("ring", "oven", "grill") and not effect.heats and cold:
            ring = self.on_ring.get(entry.component) if there is None else content.before
            free = ring is not content.met and self._is_free(ring, batch)
            self._move(batch, ring if free and on_ring else None)
        joins = effect.station in ("ring", "oven") and any(put_in(line.action.parts, self.scene.kitchen))
        if content.met and line.apart and line.action.work.verb in practice().verbs["frying"]:
            line.apart.clear()  # *heat [oil] [in a pan] and brown*: what is in hand goes into it
            joins = True
        if content.met and joins:
            self._move(batch, content.met)  # in plain words: *add the spinach*
        if line.apart:
            self._settle(line, batch)
        else:
            self._measure(line, batch)
        if effect.station and effect.station not in COLD:
            content.air = 0
        if line.action.batches > 1 and content.vessel is not None and content.vessel.hot:
            self._move(batch, None)


_DOES: dict[type, Callable[[_Fold, Line, Entry, Any], None]] = {
    VerbUse: _Fold._verb,
    Refers: _Fold._refers,
    Begins: _Fold._begins,
    Gives: _Fold._gives,
    Takes: _Fold._takes,
    Parts: _Fold._parts,
    Loses: _Fold._loses,
    Discards: _Fold._leaves,
    Reaches: _Fold._reaches,
    Redoes: _Fold._redoes,
    Splits: _Fold._leaves,
    Tool: _Fold._tool,
    Stands: _Fold._stands,
}


def _is_liquid(food: Food, kitchen: Kitchen) -> bool:
    goods = kitchen.larder.get(food.goods) if food.goods else None
    return goods is not None and goods.wet
