"""More in the pan than lies side by side when a recipe is scaled.

Crowded food cools the fat and steams in its own juice instead of browning; fish that is poached in layers breaks, and
dumplings one upon another stay raw.

Cook in more batches, each for the time that is stated, and let the pan get hot again between them.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import grams, in_pieces, liquid, tended
from tamis.checks.scaling._scene import practice, times_text
from tamis.checks.scaling.scale_oven import whisked
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.reading.clauses import Cue, Manner, Reference, Repeat, Time
from tamis.reading.plain import plain_of
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.kitchen.house import Kitchen
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Ingredient, Tool

RULE = "scale-frying"
LEVEL: Severity = "warning"
FACTOR = Fraction(2)
_EACH = "cook each for the time stated; the timeline still counts the recipe's own number of batches"
BAD = """\
title: Fried mushrooms
serves: 2

# Mushrooms

Heat [20 g butter] [in a frying pan] [over high heat] [until it foams].
Add [250 g mushrooms, sliced] and [fry for 5–6 min] [until brown].
"""
GOOD = """\
title: Baked mushrooms
serves: 2

# Mushrooms

Heat [the oven] [to 200 °C].
Spread [250 g mushrooms, sliced] [on a baking tray].
[Bake for 15–20 min] [until brown].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Frying, what is done in a stated number of batches or so many at a time, and what must lie side by side: fish in
    a pan, dumplings on a stew."""
    told, falls = set[int](), False
    crowded: dict[tuple[int, int], list[tuple[Span, int]]] = {}
    for action in scene.recipe.actions:
        repeat = _repeat(action)
        if repeat is not None and repeat.kind == "step-times":
            again = list(_done_again(scene, action, repeat))
            yield from again
            if again:
                crowded.pop((action.component, action.step), None)
        elif repeat is not None:
            yield from _batches(scene, action, repeat)
        elif action.batches == 1 and scene.factor >= practice().limits["frying"]:
            fried = _fried(action, practice().verbs["frying"])
            turn = _turn(scene, action)
            if turn is not None:
                yield _turns(scene, turn)
            elif fried is None:
                if not scene.hands[action.number].uses <= told:
                    yield from _sweated(scene, action, told)
                yield from _side_by_side(scene, action)
                yield from _on_top(scene, action)
            elif _crowds(scene, action, scene.hands, told):
                told |= scene.hands[action.number].uses
                falls |= any(whisked(scene, line) for line in _before(scene, action))
                pan = _vessel(scene.recipe, action)
                crowded.setdefault((action.component, action.step), []).append((fried, int(pan.number) if pan else 1))
    for places in _by_component(crowded):
        yield _crowding(scene, places, falls)


def _by_component(crowded: dict[tuple[int, int], list[tuple[Span, int]]]) -> list[list[tuple[Span, int]]]:
    """What is crowded in each component, whatever its step."""
    found: dict[int, list[tuple[Span, int]]] = {}
    for (component, _), places in crowded.items():
        found.setdefault(component, []).extend(places)
    return list(found.values())


def _repeat(action: Action) -> Repeat | None:
    """What a line says of its batches."""
    repeats = (read for read in action.reads if isinstance(read, Repeat))
    return next((read for read in repeats if read.kind in ("batches", "loads", "batch-size", "step-times")), None)


def _turn(scene: Scene, action: Action) -> Span | None:
    """Where a line that fries or cooks on the hob says how many of its pieces it takes *at a time*."""
    rules, turn = practice(), check_words(scene.recipe.language).scaling.turn
    if _fried(action, rules.verbs["frying"] | rules.verbs["cooking"]) is None:
        return None
    said = [(read.clause.text, read.clause.inner) for read in action.reads if isinstance(read, Manner)]
    said += [(part.text, part.span.start) for part in action.parts if isinstance(part, Text)]
    for text, offset in said:
        plain = plain_of(text, scene.kitchen)
        for at in filter(plain.is_count, range(len(plain) - 3)):
            if " ".join(plain.said[at + 1 : at + 4]) in turn:
                return Span(plain.starts[at], plain.ends[at + 3]).shifted(offset)
    return None


def _turns(scene: Scene, turn: Span) -> Diagnostic:
    from tamis.quantity.numerals import decimal

    message = f"{times_text(scene.factor)} takes {decimal(scene.factor)} times as many turns"
    return Diagnostic(RULE, LEVEL, turn, message, _EACH)


def _batches(scene: Scene, action: Action, repeat: Repeat) -> Iterator[Diagnostic]:
    """More batches than the recipe takes, in its own words: so many, or so many pieces at a time."""
    from tamis.quantity.numerals import decimal

    times, number = times_text(scene.factor), decimal(repeat.number)
    wanted, lots = int(-(-repeat.number * scene.factor // 1)), "loads" if repeat.kind == "loads" else "batches"
    if scene.factor > 1 and repeat.kind == "batch-size":
        message = f"{times} takes {decimal(scene.factor)} times as many batches of {number}"
        yield Diagnostic(RULE, LEVEL, repeat.clause.span, message, _EACH)
    elif scene.factor > 1 and wanted > repeat.number:
        yield Diagnostic(RULE, LEVEL, repeat.clause.span, f"{times} takes about {wanted} {lots}, not {number}", _EACH)


def _before(scene: Scene, action: Action) -> Iterator[Action]:
    """The lines that got ready some of what a line has in hand."""
    uses = scene.hands[action.number].uses
    return (line for line in scene.recipe.actions[: action.number] if scene.hands[line.number].uses <= uses)


def _done_again(scene: Scene, action: Action, repeat: Repeat) -> Iterator[Diagnostic]:
    """A step that is done again because the pan holds no more: it takes so many more turns."""
    turns, lines = repeat.number + 1, scene.recipe.actions
    step = [line for line in lines if (line.component, line.step) == (action.component, action.step)]
    shares = (read.share for line in step for read in line.reads if isinstance(read, Reference))
    parts = any(share is not None and share.kind == "fraction" and share.fraction == 1 / turns for share in shares)
    on_hob = any(scene.recipe.places.lines[line.number].station == "ring" for line in step)
    if repeat.bare or scene.factor < practice().limits["frying"] or not (parts and on_hob):
        return
    wanted = int(-(-turns * scene.factor // 1))
    message = f"{times_text(scene.factor)} takes about {wanted} turns, not {turns}"
    hint = f"each for the time stated, and with {turns / wanted} of what is written for one"
    yield Diagnostic(RULE, LEVEL, repeat.clause.span, message, hint)


def _sweated(scene: Scene, action: Action, told: set[int]) -> Iterator[Diagnostic]:
    """Vegetables that soften in a frying pan, and are more than it holds in so low a heap that all get soft at once."""
    from tamis.quantity.display import grams as shown

    recipe, rules, uses = scene.recipe, practice(), scene.hands[action.number].uses
    pan, times = _vessel(recipe, action), [read.clause.span for read in action.reads if isinstance(read, Time)]
    sweats = action.work.verb in rules.verbs["cooking"] and action.work.station == "ring" and bool(times)
    if not sweats or pan is None or pan.equipment.id not in rules.layered or pan.size or liquid(recipe, uses):
        return
    foods = [(index, recipe.uses[index].ingredient.goods) for index in uses if in_pieces(recipe.uses[index])]
    if not all(goods is not None and goods.show == "vegetable" for _, goods in foods):
        return
    weight = grams(recipe, (index for index, _ in foods))
    room = max(weight, rules.amounts["sweats"])
    if weight * scene.factor > room:
        told |= uses
        wanted = int(-(-weight * scene.factor // room))
        much = f"{times_text(scene.factor)}: {shown(weight * scene.factor)}"
        message = f"{much} do not soften evenly in one {pan.equipment.name}"
        hint = f"take a wide pan or {wanted} of them, and go by the cue"
        yield Diagnostic(RULE, LEVEL, times[0], message, hint)


def _crowding(scene: Scene, places: list[tuple[Span, int]], falls: bool) -> Diagnostic:
    """Where a component fries too much at once, in so many pans; told once."""
    (place, pans), *more = places
    wanted = int(-(-scene.factor // 1))
    message = f"{times_text(scene.factor)} crowds the pan: fry in {wanted} batches, or in {wanted * pans} pans"
    labels = tuple(Label(other, "and here") for other, _ in more)
    hint = "fry each for the time stated"
    if falls:
        hint += "; beat and fold the eggs anew for each batch: what is light falls while it waits"
    return Diagnostic(RULE, LEVEL, place, message, hint, labels)


def _crowds(scene: Scene, action: Action, hands: Hands, told: set[int]) -> bool:
    """Whether the factor makes too much of what is fried: not of a little, and not of the base of a sauce, which is cut
    small or stirred and lies in no layer, unless so much of it is to be browned; nor of what was `told` of before with
    little besides, as a spice that is fried with the meat."""

    recipe = scene.recipe
    fried = hands[action.number].uses - _lifted_out(scene, action)
    pieces = frozenset(index for index in fried if in_pieces(recipe.uses[index]))
    if not hands[action.number].uses or not all(recipe.uses[index].mass.known for index in pieces):
        return True
    weight = grams(recipe, pieces)
    if grams(recipe, pieces - told) * scene.factor <= practice().amounts["layer"]:
        return False
    foods = [recipe.uses[index].ingredient for index in pieces]
    flesh = any(food.goods is not None and food.goods.animal in ("meat", "fish") for food in foods)
    minced = all(_minced(food, scene.kitchen) for food in foods)
    if weight * scene.factor > practice().amounts["browns"] and _browns(scene, action):
        return True
    moved = minced or tended(action, practice().verbs["stirring"], scene.kitchen)
    in_hand = [hands[line].uses for line in range(action.number, len(hands))]
    sauce = any(pieces <= uses and liquid(recipe, uses) >= weight for uses in in_hand)
    return flesh or not (moved and sauce)


def _lifted_out(scene: Scene, action: Action) -> set[int]:
    """What was lifted out of the fat that a line takes up again."""
    lifted: set[int] = set()
    for product in (scene.recipe.products[one.product] for one in scene.recipe.takings if one.action == action.number):
        known = scene.kitchen.larder.named(product.name)
        if product.kind == "by-product" and product.made_by is not None and known and known.goods.role == "fat":
            lifted |= scene.hands[product.made_by].uses
    return lifted


def _browns(scene: Scene, action: Action) -> bool:
    """Whether it fries until it is brown, which it is not in its own juice."""
    words = check_words(scene.recipe.language).scaling.browns
    cues = (read.text for read in action.reads if isinstance(read, Cue))
    return any(word in cue for cue in cues for word in words)


def _minced(food: Ingredient, kitchen: Kitchen) -> bool:
    """Whether it is cut so small that it lies in no layer."""
    words = [*food.preparation.lower().replace(",", " ").split(), *food.states]
    verbs = (kitchen.verbs.participle(word) for word in words)
    return any(verb is not None and verb.base in practice().verbs["mincing"] for verb in verbs)


def _side_by_side(scene: Scene, action: Action) -> Iterator[Diagnostic]:
    """Fish that is poached in a pan, and is more than lies there side by side."""
    from tamis.quantity.display import grams as shown

    recipe, rules = scene.recipe, practice()
    pan = _vessel(recipe, action)
    if action.work.verb not in rules.verbs["poaching"] or pan is None or pan.equipment.id not in rules.shallow:
        return
    for use in (recipe.uses[index] for index in action.uses):
        goods = use.ingredient.goods
        if goods is None or goods.hazard != "fish" or not use.mass.known or not use.in_batch:
            continue
        room, weight = max(rules.amounts["fish"], use.mass.hi), use.mass.hi * scene.factor
        if weight > room:
            wanted = int(-(-weight // room))
            name = use.ingredient.name
            message = f"{times_text(scene.factor)}: {shown(weight)} of {name} do not lie side by side in one pan"
            hint = f"cook them in {wanted} batches, or in {wanted} pans, each for the time stated"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, hint)


def _on_top(scene: Scene, action: Action) -> Iterator[Diagnostic]:
    """Dough that is dropped on to what stands on the hob, and cooks there in one layer: dumplings on a stew."""
    from tamis.quantity.display import grams as shown

    recipe, rules, places = scene.recipe, practice(), scene.recipe.places.lines
    near = (line for line in recipe.actions[action.number : action.number + 2] if line.component == action.component)
    drops = any(use.verb.base in rules.verbs["dropping"] for use in action.verbs)
    if not drops or not any(places[line.number].station == "ring" for line in near):
        return
    taken = [taking for taking in recipe.takings if taking.action == action.number]
    in_hand = scene.hands[action.number - 1].uses if action.number and len(taken) == 1 else frozenset()
    lots = [frozenset(food.use for food in recipe.products[one.product].foods) for one in taken if len(taken) > 1]
    for uses in [*lots, in_hand]:
        weight = grams(recipe, uses)
        room, weight = max(rules.amounts["floats"], weight), weight * scene.factor
        if _is_dough(recipe, uses) and weight > room:
            wanted = int(-(-weight // room))
            message = f"{times_text(scene.factor)}: {shown(weight)} of dough do not swell side by side in one pan"
            hint = f"divide what is under it between {wanted} pans, or cook it in {wanted} batches"
            yield Diagnostic(RULE, LEVEL, taken[0].span, message, hint)


def _is_dough(recipe: Recipe, uses: frozenset[int]) -> bool:
    """Whether a third of it or more is flour."""
    goods = ((index, recipe.uses[index].ingredient.goods) for index in uses)
    flour = grams(recipe, (index for index, food in goods if food is not None and food.role == "flour"))
    return bool(flour) and flour * 3 >= grams(recipe, uses)


def _vessel(recipe: Recipe, action: Action) -> Tool | None:
    """The vessel in which a line's food is: the last one brought out in its component."""
    lines = (line for line in reversed(recipe.actions[: action.number + 1]) if line.component == action.component)
    return next((tool for line in lines for tool in reversed(line.tools) if tool.equipment.kind == "vessel"), None)


def _fried(action: Action, verbs: frozenset[str]) -> Span | None:
    """Where an action fries on the hob: its time's clause, or its first clause."""
    if action.work.verb not in verbs or action.work.station not in ("ring", ""):
        return None
    times = [read.clause.span for read in action.reads if isinstance(read, Time)]
    return (times or [read.clause.span for read in action.reads] or [action.span])[0]
