"""How much lies in a vessel that has no said size, and how much such a vessel holds."""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.scaling._medium import use_size
from tamis.kitchen.equipment import HOLDS
from tamis.record import NamedTuple
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action, Use
    from tamis.reading.clauses import Tool


Swells = Literal["", "beaten", "boiling"]
"""What makes food take twice its room: air that is beaten in, or sugar that boils down."""
SWELLS: dict[Swells, str] = {
    "": "",
    "beaten": ", half of that where it is beaten up",
    "boiling": ", half of that where it boils up",
}


class Filled(NamedTuple):
    """A vessel where it is brought out, what it holds by rule of thumb and what lies in it at its fullest, in grams or
    millilitres; `small`: it is called so."""

    tool: Tool
    holds: Fraction
    lies: Fraction
    swells: Swells
    small: bool = False

    @property
    def bulk(self) -> Fraction:
        """The room that it takes."""
        return self.lies * (2 if self.swells else 1)

    def wanted(self, factor: Fraction) -> int:
        """How many of them hold so many times as much, with room to stir: one holds what the recipe puts in, whatever
        its size."""
        from tamis.checks.scaling._scene import practice

        return max(1, int(-(-self.bulk * factor // max(self.holds * practice().amounts["room"], self.bulk))))


def filled(scene: Scene) -> Iterator[Filled]:
    """The vessels of a recipe without a size, those of a name together, each with the most that lies in one."""
    found: dict[str, Filled] = {}
    named: dict[str, set[str]] = {}
    for action in scene.recipe.actions:
        for tool in action.tools:
            alike = named.setdefault(tool.equipment.id, set())
            if not tool.definite:
                alike.add(tool.name)
            name = min(alike) if tool.definite and len(alike) == 1 else tool.name
            holds = _holds(scene, tool)
            if not holds or tool.size or tool.several or tool.number > 1 or (tool.definite and name not in found):
                continue
            lies, swells = fullest(scene, action)
            here = Filled(tool, holds, min(lies, _share(scene, action, tool) or lies), swells, _is_small(scene, tool))
            first = found.setdefault(name, here)
            if here.bulk > first.bulk:
                found[name] = here._replace(tool=first.tool, holds=first.holds) if tool.definite else here
    yield from found.values()


def _holds(scene: Scene, tool: Tool) -> Fraction:
    """What such a vessel holds, a small or a large one less or more; 0 where no rule of thumb tells."""
    from tamis.checks.scaling._scene import practice
    from tamis.checks.words import check_words

    rules, words = practice(), check_words(scene.recipe.language).scaling
    under = tool.preposition in words.above
    holds = Fraction(0) if under else rules.holds.get(tool.equipment.id, Fraction(0))
    if _is_small(scene, tool):
        return holds * rules.amounts["small"]
    return holds if set(words.larges).isdisjoint(_said(tool)) else holds * rules.amounts["large"]


def _is_small(scene: Scene, tool: Tool) -> bool:
    from tamis.checks.words import check_words

    return not set(check_words(scene.recipe.language).scaling.smalls).isdisjoint(_said(tool))


def _said(tool: Tool) -> list[str]:
    return tool.clause.text.lower().replace(",", " ").split()


def fullest(scene: Scene, action: Action) -> tuple[Fraction, Swells]:
    """The most that lies in a vessel from a line on, until its component takes another one or sets it off the hob; and
    whether it swells there. Beside a batch that lies elsewhere it is what the line itself puts in."""
    recipe, places = scene.recipe, scene.recipe.places.lines
    if not _is_its_batch(scene, action):
        own = (recipe.uses[index] for index in action.uses)
        return sum((use_size(use, scene.kitchen) for use in own if use.in_batch), Fraction(0)), _swells(scene, action)
    most = beside = known = Fraction(0)
    swells: Swells = ""
    batch, station = places[action.number].batch, places[action.number].station
    for line in recipe.actions[action.number :]:
        there = places[line.number]
        moved = line is not action and (
            any(tool.equipment.kind in HOLDS for tool in line.tools)
            or there.station not in ("", station)
            or (batch >= 0 and there.batch != batch)
            or (line.takings and there.station != "ring")  # the larger one takes up the smaller
        )
        if line.component != action.component or line.batches > 1 or moved:
            break
        beside += sum((_beside(scene, recipe.uses[index]) for index in line.uses), Fraction(0))
        hand = scene.hands[line.number]
        sizes = (use_size(recipe.uses[at], scene.kitchen) for at in hand.uses)
        known = known + _parted(scene, line) if hand.parted else sum(sizes, Fraction(0))
        most = max(most, known * (2 if _is_covered(scene, line) else 1) + beside)
        swells = swells or _swells(scene, line)
    return most, swells


def _parted(scene: Scene, line: Action) -> Fraction:
    """What a line puts in of food that was parted from other food, in grams or millilitres where its share says so."""
    from tamis.quantity.measure import grams, millilitres
    from tamis.reading.clauses import Reference

    units, own = scene.kitchen.units, (scene.recipe.uses[index] for index in line.uses)
    said = (read.share.measure for read in line.reads if isinstance(read, Reference) and read.share)
    found = (grams(measure, units) or millilitres(measure, units) for measure in said if measure is not None)
    shares = sum((amount.hi for amount in found if amount is not None), Fraction(0))
    return sum((use_size(use, scene.kitchen) for use in own if use.in_batch), shares)


def _share(scene: Scene, action: Action, tool: Tool) -> Fraction:
    """What a vessel holds of a thing that is parted, told right before it, of which another part went elsewhere in the
    line: *the rest of the sauce in a jug*; 0 where nobody knows."""
    recipe, start = scene.recipe, tool.clause.span.start
    before = max((read.clause.span for read in action.reads if read.clause.span.end <= start), default=None)
    takings = [taking for taking in recipe.takings if taking.action == action.number]
    for taking in takings[1:]:
        made, part = recipe.products[taking.product], taking.fraction
        if taking.span == before and part and part < 1 and made.mass.known:
            return made.mass.hi * part
    return Fraction(0)


def _is_its_batch(scene: Scene, action: Action) -> bool:
    """Whether a line's batch lies in its vessel: it begins there, or is put there; not what is beaten or melted beside
    it, or kept under a name of its own."""
    from tamis.checks.scaling._scene import practice
    from tamis.model.effects import Begins
    from tamis.reading.clauses import Naming

    if any(isinstance(read, Naming) for read in action.reads):
        return False
    if scene.recipe.places.lines[action.number].batch < 0 and not scene.hands[action.number].uses:
        return True
    begins = any(entry.action == action.number and isinstance(entry.effect, Begins) for entry in scene.recipe.log)
    adds = any(scene.recipe.uses[index].in_batch for index in action.uses)
    heaped = bool(action.takings) and any(tool.equipment.id in practice().heaped for tool in action.tools)
    machine = any(tool.equipment.kind != "vessel" and tool.equipment.id in practice().holds for tool in action.tools)
    there = machine or any(tool.definite and tool.equipment.kind == "vessel" for tool in action.tools)
    moves = there or any(use.verb.moves for use in action.verbs)
    return begins or (moves and (heaped or not adds or _goes_along(scene, action)))


def _goes_along(scene: Scene, action: Action) -> bool:
    """*Put it [in a pan] with [1 l water]*: whether the words before the vessel name what is in hand."""
    from tamis.checks.words import check_words

    vessel = next((tool.clause.span.start for tool in action.tools if tool.equipment.kind == "vessel"), 0)
    words = set(check_words(scene.recipe.language).vessels.goes_along)
    before = (part for part in action.parts if isinstance(part, Text) and part.span.start < vessel)
    return any(not words.isdisjoint(part.text.lower().split()) for part in before)


def _is_covered(scene: Scene, line: Action) -> bool:
    """Whether a line puts in a liquid that nobody measures: so much covers what lies there, as much again."""
    foods = (scene.recipe.uses[index].ingredient for index in line.uses)
    return any(food.goods and food.goods.liquid and food.goods.role == "water" and not food.measured for food in foods)


def _swells(scene: Scene, line: Action) -> Swells:
    from tamis.checks.scaling._hand import grams
    from tamis.checks.scaling._scene import practice
    from tamis.checks.scaling.scale_reducing import boils_down

    if beats_up(scene, line):
        return "beaten"
    recipe, hand = scene.recipe, scene.hands[line.number]
    foods = ((index, recipe.uses[index].ingredient.goods) for index in hand.uses)
    sugar = grams(recipe, (index for index, goods in foods if goods is not None and goods.role == "sugar"))
    sweet = sugar and sugar >= grams(recipe, hand.uses) * practice().amounts["rises"]
    return "boiling" if sweet and boils_down(scene, line, hand) else ""


def beats_up(scene: Scene, line: Action) -> bool:
    """Whether a line beats air into its food: `whip`, or whisking until it is light."""
    from tamis.checks.scaling._scene import practice
    from tamis.checks.words import check_words
    from tamis.reading.clauses import Cue

    verbs, words = practice().verbs, check_words(scene.recipe.language).scaling.airy
    done = {use.verb.base for use in line.verbs}
    light = any(isinstance(read, Cue) and any(word in read.text for word in words) for read in line.reads)
    return not done.isdisjoint(verbs["whipping"]) or (light and not done.isdisjoint(verbs["whisking"]))


def _beside(scene: Scene, use: Use) -> Fraction:
    """What goes in for a purpose: water to boil or soak in; not what stays as it is when the recipe grows."""
    stays = any(medium.food is use.ingredient for medium in scene.media)
    return Fraction(0) if use.in_batch or not use.ingredient.purpose or stays else use_size(use, scene.kitchen)
