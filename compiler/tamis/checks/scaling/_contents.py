"""How much lies in a vessel at its fullest, and how much such a vessel holds.

One fold over the log: where each batch lies, what it is made of, and what is put beside it to boil in. A batch goes
into the vessel that a line puts it into or returns it to, or where another batch lies to which it is put; what was
strained off, lifted out, drained or set to boil down is gone from there. Where nobody tells, it lies nowhere, and what
nobody measures counts for nothing.
"""

from __future__ import annotations

from collections import defaultdict
from fractions import Fraction

from tamis.checks.objects import mixes_what_is_there
from tamis.checks.scaling._hand import grams
from tamis.checks.scaling._medium import use_size
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
from tamis.quantity.measure import base
from tamis.reading.clauses import Cue, Naming, Reference, Tool, VerbUse
from tamis.reading.plain import plain_of
from tamis.reading.plain_names import put_in
from tamis.reading.plain_tools import tools_in
from tamis.record import NamedTuple
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.checks.scaling._scene import Scene, Swells
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Food
    from tamis.model.effects import Entry
    from tamis.model.recipe import Action
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient
    from tamis.source import Span


class Content:
    """What a batch is made of, in grams or millilitres: how much `air` is between raw leaves and pieces, how much of it
    is `gone`, how much lay in a `layer` to fry; the vessel in which it lies, the one before, and the one in which food
    was got ready for it."""

    __slots__ = ("air", "before", "gone", "layer", "liquid", "met", "solid", "sure", "vessel")

    def __init__(self) -> None:
        self.solid = self.liquid = self.gone = self.air = self.layer = 0
        self.sure = True
        self.vessel: Vessel | None = None
        self.before: Vessel | None = None
        self.met: Vessel | None = None

    @property
    def size(self) -> int:
        """What is left of it."""
        return max(0, self.solid + self.liquid - self.gone)

    def add(self, size: int, liquid: bool) -> None:
        """So much comes in; goes out, if it is less than nothing."""
        if liquid:
            self.liquid = max(0, self.liquid + size)
        else:
            self.solid = max(0, self.solid + size)


class Taken(NamedTuple):
    """What a clause of a line took: so much of a batch, when so many vessels had been named."""

    source: int
    clause: Span
    size: int
    vessels: int


class _Line:
    """A line while it is read: the batches that began in it, the vessels that it named, what it put in so far, in
    what it got food ready beside its batch, and the verb by which liquid is to be parted from what it names."""

    __slots__ = (
        "action", "apart", "begun", "beside", "covers", "given", "mixed", "named", "parting", "since_verb", "taken",
        "texts", "vessels", "words",
    )  # fmt: skip

    def __init__(self, action: Action, kitchen: Kitchen) -> None:
        self.action = action
        self.begun: set[int] = set()
        self.vessels: list[Vessel] = []
        self.apart: list[Vessel] = []
        self.taken: list[Taken] = []
        self.given = self.since_verb = self.beside = 0
        self.covers = self.mixed = False
        self.named = -1
        self.parting: Verb | None = None
        self.texts = [part for part in action.parts if isinstance(part, Text)]
        self.words = [one for text in self.texts for one in tools_in(text, kitchen) if one.tool.preposition]

    def says(self, words: tuple[str, ...]) -> bool:
        """Whether its plain words have one of these in them."""
        return any(word in text.text.lower() for text in self.texts for word in words)

    def does(self, what: str) -> bool:
        """Whether one of its verbs is in a list of the rules of thumb."""
        return any(use.verb.base in practice().verbs[what] for use in self.action.verbs)


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
        self.most = _whole(scene.factor)
        self.stays = {id(medium.food) for medium in scene.media}
        self.batches: defaultdict[int, Content] = defaultdict(Content)
        self.vessels: list[Vessel] = []
        self.loose = 0
        self.named: dict[int, Vessel] = {}
        self.on_ring: dict[int, Vessel] = {}
        self.lines: dict[int, _Line] = {}

    def read(self, entry: Entry) -> None:
        """Let an entry happen, after what plain words before it say of vessels."""
        line, effect = self.lines.get(entry.action), entry.effect
        if line is None:
            action = self.scene.recipe.actions[entry.action]
            self.loose = self.loose if action.continues else 0
            line = self.lines[entry.action] = _Line(action, self.scene.kitchen)
        while line.words and (type(effect) is Stands or line.words[0].span.start < entry.clause.start):
            self._tool(line, entry, line.words.pop(0).tool)
        does = _DOES.get(type(effect))
        if does:
            does(self, line, entry, effect)

    def _verb(self, line: _Line, entry: Entry, effect: VerbUse) -> None:
        self._part(line, entry.batch)
        line.since_verb = 0
        line.parting = effect.verb if effect.verb.separates else None
        if effect.verb.serves and entry.batch >= 0:
            self._measure(line, entry.batch)  # what it is served with does not lie there
        content = self.batches[entry.batch]
        if effect.verb.base in practice().verbs["returning"] and self._is_free(content.before, entry.batch):
            self._measure(line, entry.batch)
            self._move(entry.batch, content.before)

    def _refers(self, line: _Line, entry: Entry, effect: Refers) -> None:
        self._part(line, effect.batch)
        content, line.named = self.batches[effect.batch], effect.batch
        if content.met and effect.batch == entry.batch and any(one.verb.adds for one in line.action.verbs):
            self._move(effect.batch, content.met)

    def _part(self, line: _Line, batch: int) -> None:
        """What is drained loses its liquid, and leaves its vessel; what is strained, all but that."""
        verb, content = line.parting, self.batches[batch]
        line.parting = None
        if verb is None:
            return
        self._measure(line, batch)
        if verb.drains:
            content.liquid = 0 if content.solid else content.liquid
            self._move(batch, None)
        elif content.liquid:
            content.solid = 0

    def _begins(self, line: _Line, entry: Entry, effect: Begins) -> None:
        line.begun.add(effect.batch)
        if line.vessels:
            self._move(effect.batch, line.vessels[-1])

    def _gives(self, line: _Line, entry: Entry, effect: Gives) -> None:
        use = self.scene.recipe.uses[effect.use]
        food, goods, content = use.ingredient, use.ingredient.goods, self.batches[effect.batch]
        liquid, water = goods is not None and goods.liquid, goods is not None and goods.role == "water"  # or ice
        line.covers = line.covers or (liquid and water and not food.measured and self._covers(line, food))
        if effect.food is None:
            serves = any(one.verb.serves for one in line.action.verbs)
            if food.purpose and (liquid or water) and not serves and id(food) not in self.stays:
                line.beside += _whole(use_size(use, self.scene.kitchen))
            return
        self._part(line, effect.batch)
        line.mixed = line.mixed or (bool(content.size) and effect.batch not in line.begun and not line.given)
        if content.size and line.does("passing"):
            self._move(effect.batch, None)
        size = _whole(effect.food.mass.hi or use_size(use, self.scene.kitchen))
        content.add(size, liquid and goods is not None and goods.role != "fat")
        content.sure = content.sure and bool(size or not food.measures)
        content.air += self._air(line, food, size)
        line.given += size
        line.since_verb += size

    def _covers(self, line: _Line, food: Ingredient) -> bool:
        """Whether water that nobody measures covers what is there: *cover with [water]*, *[in boiling water]*."""
        boils = line.action.work.station == "ring" or any(one.equipment.kind == "vessel" for one in line.action.tools)
        enters = food.preposition in self.words.vessels.enters
        return boils if enters else line.says(self.words.scaling.covers)

    def _air(self, line: _Line, food: Ingredient, size: int) -> int:
        """The room between pieces of raw vegetables, by their density; not of what goes in by handfuls."""
        if food.goods is None or food.goods.show != "vegetable" or line.says(self.words.scaling.handfuls):
            return 0
        words = [*food.preparation.lower().replace(",", " ").split(), *self._cut_in(line, food.goods)]
        density = self.scene.kitchen.larder.density(food.goods, (*food.states, *words))
        airy = density is not None and density.usual < practice().amounts["airy"]
        return _whole(size / density.usual) - size if density and airy else 0

    def _cut_in(self, line: _Line, goods: Goods) -> list[str]:
        """How a line cuts what it names, in the words that tell of a density: *shred [1 cabbage]*."""
        done, verbs = {use.verb.base for use in line.action.verbs}, self.scene.kitchen.verbs
        states = [(density.state, verbs.participle(density.state)) for density in goods.densities if density.state]
        return [state for state, verb in states if verb is not None and verb.base in done]

    def _takes(self, line: _Line, entry: Entry, effect: Takes) -> None:
        source, into = self.batches[effect.source], self.batches[effect.into]
        self._part(line, effect.source)
        self._measure(line, effect.source)
        whole, empty = source.solid + source.liquid, not into.size
        share = _measured(self.scene, line.action, entry.read) if effect.scale is None else _whole(whole * effect.scale)
        taken = source.size if effect.whole else share
        liquid = source.liquid * taken // whole if whole else taken
        line.mixed = line.mixed or not empty  # only a part of it was beaten
        into.solid += taken - liquid
        into.liquid += liquid
        into.air += source.air if effect.whole else 0
        into.sure = into.sure and source.sure and (effect.whole or bool(taken))
        source.gone += taken
        if effect.into not in line.begun:
            line.given += taken
            line.since_verb += taken
        line.taken.append(Taken(effect.source, entry.clause, taken, len(line.vessels)))
        if effect.whole:
            there = source.vessel
            self._move(effect.source, None)
            puts_to = line.named == effect.source and _is_put_to(self.scene, line.action, entry.read)
            if line.does("passing"):  # crumbs on a plate, through which it goes piece by piece
                self._move(effect.into, None)
            elif puts_to or (into.vessel is None and empty):
                self._move(effect.into, there)

    def _parts(self, line: _Line, entry: Entry, effect: Parts) -> None:
        """What comes out of a batch. Of what a line leaves it is so much as it says; foods of the batch; else all the
        liquid, if that is parted."""
        source, batch = self.batches[effect.source], self.batches[effect.batch]
        if source.vessel not in line.vessels:
            self._measure(line, effect.source)
        if effect.kind != "by-product":
            mass = _whole(effect.mass.hi) if effect.mass is not None else 0
            batch.sure = effect.mass is None or effect.mass.known
            batch.add(mass, any(_is_liquid(food, self.scene.kitchen) for food in effect.foods))
            source.add(-mass if effect.less else 0, liquid=False)
            return
        line.parting = None
        batch.liquid = _measured(self.scene, line.action, entry.read)
        if batch.liquid:
            source.add(-batch.liquid, liquid=True)
        elif not self._leaves_liquid(line):
            batch.solid = sum(_whole(food.mass.hi) for food in effect.foods)
        else:
            batch.liquid, source.liquid, batch.sure = source.liquid, 0, source.sure
            if line.vessels:
                self._move(effect.source, None)
                self._move(effect.batch, line.vessels[-1])
                self._measure(line, effect.batch)

    def _leaves_liquid(self, line: _Line) -> bool:
        """Whether it is the liquid that a line leaves: it is called so, or parted from the rest."""
        left = (read.name for read in line.action.reads if isinstance(read, Naming) and read.kind == "leaving")
        name = next(left, "")
        known = self.scene.kitchen.larder.named(name)
        return known.goods.liquid if known else bool(name) and any(one.verb.separates for one in line.action.verbs)

    def _loses(self, line: _Line, entry: Entry, effect: Loses) -> None:
        self._measure(line, effect.batch)
        for food in effect.foods:
            self.batches[effect.batch].add(-_whole(food.mass.hi), _is_liquid(food, self.scene.kitchen))

    def _reaches(self, line: _Line, entry: Entry, effect: Reaches) -> None:
        content, size = self.batches[effect.batch], _whole(effect.mass.hi) or _amount(self.scene, effect.measure)
        self._measure(line, effect.batch)
        if size:
            content.solid, content.liquid, content.gone = 0, size, 0

    def _redoes(self, line: _Line, entry: Entry, effect: Redoes) -> None:
        self.batches[effect.batch].add(_whole(effect.mass.hi), liquid=False)

    def _leaves(self, line: _Line, entry: Entry, effect: Discards | Splits) -> None:
        """It is thrown away, or out of its bowl to be divided."""
        vessel = self.batches[effect.batch].vessel
        if vessel is not None and not (type(effect) is Splits and vessel.hot):
            self._measure(line, effect.batch)
            self._move(effect.batch, None)

    def _tool(self, line: _Line, entry: Entry, tool: Tool) -> None:
        """A line names a vessel: it puts its batch there, or gets food ready in it that joins the batch."""
        words, first, batch = self.words, tool.preposition.partition(" ")[0], entry.batch
        only_named = first in ("", *words.vessels.of)
        holds = tool.equipment.kind in HOLDS or tool.equipment.id in practice().holds
        inside = only_named or first in words.vessels.puts_in
        if not holds or not inside or tool.preposition in words.scaling.above:
            return
        vessel = self._brought(tool) if tool.equipment.kind != "surface" else None
        content = self.batches[batch]
        if vessel is not None:
            line.vessels.append(vessel)
            self.named[entry.component] = vessel
            if tool.equipment.station == "ring":
                self.on_ring[entry.component] = vessel
        if batch < 0 or (only_named and batch not in line.begun):
            return
        if vessel is not None and line.taken and self._is_share(line, tool):
            self._fill(line, vessel, line.taken[-1].size)
        elif vessel is not content.vessel and not self._is_its_batch(line, tool, batch):
            if vessel is not None:
                line.apart.append(vessel)
                content.met = vessel if tool.equipment.station == "ring" else content.met
        elif line.parting is None or line.parting.drains or not self._leaves_liquid(line):  # else that goes there
            self._part(line, batch)
            if not line.given:
                self._measure(line, batch)
            self._move(batch, vessel)
            line.covers = line.covers or bool(tool.contains)

    def _is_its_batch(self, line: _Line, tool: Tool, batch: int) -> bool:
        """Whether a line's batch is put into a vessel: not what is beaten or melted there before it joins."""
        if batch in line.begun:
            return True
        opens = tool.clause.span.start <= line.action.span.start + 1 and bool(line.action.uses)
        words, start = set(self.words.vessels.goes_along), tool.clause.span.start
        before = [part.text.lower().split() for part in line.texts if part.span.start < start]
        if line.apart or (before and not set(self.words.vessels.some).isdisjoint(before[-1])):
            return False  # what was got ready there goes on, or only some
        if not line.since_verb and not opens:
            return True
        return any(not words.isdisjoint(text) for text in before) or self._mixes(line)

    def _mixes(self, line: _Line) -> bool:
        """*Mix with [1 kg salt] in a bowl*: whether a verb has no object but what is in hand."""
        kitchen, action = self.scene.kitchen, line.action
        return any(mixes_what_is_there(plain_of(text.text, kitchen), text.span.start, action) for text in line.texts)

    def _is_share(self, line: _Line, tool: Tool) -> bool:
        """Whether a vessel stands right behind a thing that the line parts, or that goes there by itself while another
        went into a vessel before: *a third of the sauce round it, and [the rest of the sauce] [in a jug]*."""
        *before, last = line.taken
        between = tool.clause.span.start - last.clause.end
        own = any(one.source == last.source or one.vessels < last.vessels for one in before)
        return own and not tool.definite and 0 <= between <= 1

    def _brought(self, tool: Tool) -> Vessel:
        """The vessel that a line brings out, or the one that it means by *the*."""

        def answers(vessel: Vessel) -> tuple[bool, ...]:
            other, kind = vessel.tool, tool.equipment
            general = kind.general and other.equipment.station == kind.station
            return other.name == tool.name, other.equipment is kind, general, other.name.endswith(tool.name)

        meant = max(reversed(self.vessels), key=answers, default=None) if tool.definite else None
        if meant is None or not any(answers(meant)):
            meant = Vessel(tool, _holds(self.scene, tool))
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

    def _settle(self, line: _Line, batch: int) -> None:
        """What a line puts in to boil or soak in comes into the vessel of its batch; of a liquid that nobody measures
        so much as covers what lies there."""
        content = self.batches[batch]
        vessel = content.vessel if batch >= 0 else self.named.get(line.action.component)
        self.loose += line.beside  # until its vessel is named
        line.beside = 0
        if vessel is not None:
            vessel.beside += self.loose + (_whole(content.size * practice().amounts["covers"]) if line.covers else 0)
            self.loose, line.covers = 0, False

    def _measure(self, line: _Line, batch: int) -> None:
        """How full a vessel is now; not where its food is done in batches, or lies in a layer to fry."""
        content, vessel = self.batches[batch], self.batches[batch].vessel
        self._settle(line, batch)
        if vessel is None or vessel.batch != batch or line.action.batches > 1:
            return
        if line.action.work.verb in practice().verbs["frying"]:
            content.layer = _whole(content.size * practice().limits["fuller"])
        dry = vessel.tool.equipment.id in practice().layered and not content.liquid
        if not dry and content.size > content.layer:
            size = content.size + vessel.beside
            heaped = size + content.air - content.liquid - vessel.beside  # liquid fills the gaps
            vessel.heaped = max(vessel.heaped, heaped)
            vessel.sure = vessel.sure and content.sure
            self._fill(line, vessel, size)

    def _fill(self, line: _Line, vessel: Vessel, size: int) -> None:
        may = size * 2 > vessel.bulk and 0 < vessel.holds < size * 2 * self.most
        swells = _swells(self.scene, line) if may else ""
        if size * (2 if swells else 1) > vessel.bulk:
            vessel.fullest, vessel.swells = size, swells

    def _stands(self, line: _Line, entry: Entry, effect: Stands) -> None:
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
        if effect.station in ("ring", "oven", "grill") and not effect.heats and (there is None or not there.hot):
            ring = self.on_ring.get(entry.component) if there is None else content.before
            free = ring is not content.met and self._is_free(ring, batch)
            self._move(batch, ring if free and on_ring else None)
        if content.met and on_ring and next(put_in(line.action.parts, self.scene.kitchen), None):
            self._move(batch, content.met)  # in plain words: *add the spinach*
        if line.apart:
            self._settle(line, batch)
        else:
            self._measure(line, batch)
        if effect.station and effect.station not in COLD:
            content.air = 0
        if line.action.batches > 1:
            self._move(batch, None)


_DOES: dict[type, Callable[[_Fold, _Line, Entry, Any], None]] = {
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


def _whole(size: Fraction) -> int:
    """Whole grams or millilitres, of a little one: this is done often, and fractions take their time."""
    return -(-size.numerator // size.denominator)


def _amount(scene: Scene, measure: Measure | None) -> int:
    """Grams or millilitres of a measure; 0 where it is neither."""
    amount = base(measure, scene.kitchen.units) if measure is not None else None
    return _whole(amount.hi) if amount is not None else 0


def _measured(scene: Scene, action: Action, read: int) -> int:
    """Of what a clause takes or leaves, so much as it says: *500 ml of the stock*."""
    found = action.reads[read] if read >= 0 else None
    share = found.share if isinstance(found, Reference) else None
    return _amount(scene, share.measure if share else found.measure if isinstance(found, Naming) else None)


def _is_put_to(scene: Scene, action: Action, read: int) -> bool:
    """Whether the batch in hand goes to what is named, and not that to it: *pour it over [the fish]*, and *into [the
    sauce]*, but not *pour over [the sauce]*."""
    found = action.reads[read] if read >= 0 else None
    words = check_words(scene.recipe.language).vessels
    if not isinstance(found, Reference) or found.preposition not in (*words.puts_in, *words.puts_to):
        return False
    if any(use.verb.base in practice().verbs["dipping"] for use in action.verbs):
        return False
    if found.preposition in words.puts_to:
        return True
    start = found.clause.span.start
    text = next((part.text for part in action.parts if isinstance(part, Text) and part.span.end == start), "")
    before = text.lower().split()[: -len(found.preposition.split())]
    return before[-1] in words.goes_along if before else action.span.start < start - len(text)


def _is_liquid(food: Food, kitchen: Kitchen) -> bool:
    goods = kitchen.larder.get(food.goods) if food.goods else None
    return goods is not None and goods.liquid and goods.role != "fat"


def _holds(scene: Scene, tool: Tool) -> int:
    """What a vessel holds: as its size says, else by the rule of thumb for such a one, a small or a large one less or
    more; 0 where nobody tells, and of several."""
    nobody_says = tool.definite and tool.equipment.general and not tool.size
    if tool.several or tool.number > 1 or nobody_says:
        return 0
    if tool.size:
        from tamis.checks.scaling._pans import pan_of

        if tool.equipment.grows or tool.equipment.station == "oven":
            return 0  # its food has the shape of it

        pan = pan_of(tool, scene.kitchen)
        return _whole((pan.volume if pan is not None else None) or Fraction(0))
    rules, words = practice(), check_words(scene.recipe.language).scaling
    said = set(tool.clause.text.lower().replace(",", " ").split())
    size = "small" if not said.isdisjoint(words.smalls) else "" if said.isdisjoint(words.larges) else "large"
    return _whole(rules.holds.get(tool.equipment.id, Fraction(0)) * rules.amounts.get(size, Fraction(1)))


def _swells(scene: Scene, said: _Line) -> Swells:
    from tamis.checks.scaling.scale_reducing import boils_down

    line = said.action
    if beats_up(scene, line):
        return "" if said.mixed else "beaten"
    recipe, hand = scene.recipe, scene.hands[line.number]
    foods = ((index, recipe.uses[index].ingredient.goods) for index in hand.uses)
    sugar = grams(recipe, (index for index, goods in foods if goods is not None and goods.role == "sugar"))
    sweet = sugar and sugar >= grams(recipe, hand.uses) * practice().amounts["rises"]
    return "boiling" if sweet and boils_down(scene, line, hand) else ""


def beats_up(scene: Scene, line: Action) -> bool:
    """Whether a line beats air into its food: `whip`, or whisking until it is light."""
    verbs, words = practice().verbs, check_words(scene.recipe.language).scaling.airy
    done = {use.verb.base for use in line.verbs}
    light = any(isinstance(read, Cue) and any(word in read.text for word in words) for read in line.reads)
    return not done.isdisjoint(verbs["whipping"]) or (light and not done.isdisjoint(verbs["whisking"]))
