"""What a name means where it only tells at what the work is done: *one of the tins*, *in the hot oil*.

Equipment made ready is never used up, nor is what is set out for a purpose: oil for frying, water for boiling. Work
that goes into that lies in its vessel.
"""

from __future__ import annotations

from itertools import islice

from tamis.kitchen.equipment import MADE_READY
from tamis.model.effects import Refers, Why
from tamis.model.meaning import Meaning
from tamis.model.words import model_words, plain
from tamis.reading.clauses import Tool
from tamis.reading.prose import prose_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.line import Line
    from tamis.model.recipe import Use
    from tamis.reading.clauses import Ingredient, Reference

MEDIUM = Why("medium")
_MOST_ALIKE = 50
"""Foods among which the one set out is looked for: no recipe has so many of one name."""


def lies_in_medium(act: Line, reference: Reference, anywhere: bool = False) -> bool:
    """Whether the work lies in what this component (or any one, if `anywhere`) has set out for a purpose; its vessel
    is held."""
    if reference.share is not None or not _is_place(act, reference):
        return False
    use = _set_out(act, plain(reference.name, act.walker.flow.kitchen.language), anywhere)
    if use is None:
        return False
    vessel = _vessel(act, use)
    act.walker.emit(Refers(-1, vessel.equipment.name if vessel else ""), MEDIUM)
    if vessel is not None and reference.preposition in prose_words(act.walker.flow.kitchen.language).inside:
        act.hold(vessel._replace(clause=reference.clause, preposition=reference.preposition, definite=True))
    act.fresh = False
    return True


def _is_place(act: Line, reference: Reference) -> bool:
    """Whether the words say that work goes into it, or that it is heated again or poured away."""
    if reference.preposition:
        return reference.preposition not in model_words(act.walker.flow.kitchen.language).takes
    return act.verb is not None and (act.verb.removes or act.verb.heat)


def _set_out(act: Line, words: tuple[str, ...], anywhere: bool) -> Use | None:
    """The last food so called that is there for a purpose."""
    flow = act.walker.flow
    if not words:
        return None
    role = model_words(flow.kitchen.language).roles.get(words[-1])
    alike = range(len(flow.uses)) if role else flow.uses_of.get(words[-1], ())
    for at in islice(reversed(alike), _MOST_ALIKE):
        use = flow.uses[at]
        item = use.ingredient
        own = anywhere or use.component == act.walker.component
        called = item.goods is not None and item.goods.role == role if role else True
        if own and called and not use.in_batch and _is_medium(flow, item):
            said = {*plain(item.name, flow.kitchen.language), *(item.goods.states if item.goods else ())}
            if all(word in said or _tells_state(flow, word) for word in words[:-1]):
                return use
    return None


def _is_medium(flow: Flow, item: Ingredient) -> bool:
    """Whether it is there to be worked in: not what is *for the tin*, but what is *for the pan*."""
    tool = flow.kitchen.cupboard.find(item.purpose.split()[-1:]) if item.purpose else None
    return bool(item.purpose) and (tool is None or tool.item.station == "ring")


def _tells_state(flow: Flow, word: str) -> bool:
    """Hot, clean, foaming: how it is just now."""
    words = model_words(flow.kitchen.language)
    known = word in words.hot or word in words.cold or word in words.describing
    return known or flow.kitchen.larder.describes(word) or flow.kitchen.verbs.present(word) is not None


def _vessel(act: Line, use: Use) -> Tool | None:
    """What it was put into."""
    tools = act.tools if use.action == act.number else act.walker.flow.actions[use.action].tools
    return next((tool for tool in tools if tool.equipment.kind == "vessel"), None)


def in_hand(act: Line, reference: Reference) -> Meaning | None:
    """*In the hot fat*, where lard is in hand, and *into the simmering sauce*, where something liquid is: neither is
    called so."""
    flow, present = act.walker.flow, act.walker.present
    words = plain(reference.name, flow.kitchen.language)
    if present is None or not words or reference.share or not reference.preposition or not _is_place(act, reference):
        return None
    if (act.verb is not None and act.verb.serves) or not all(_tells_state(flow, word) for word in words[:-1]):
        return None
    asked = model_words(flow.kitchen.language)
    role, liquid = asked.roles.get(words[-1]), words[-1] in asked.liquids
    foods = (flow.kitchen.larder.get(food.goods) for food in present.foods if food.goods) if role or liquid else ()
    known = (goods for goods in foods if goods is not None)
    there = any(goods.role == role if role else goods.show == "liquid" and goods.role != "fat" for goods in known)
    return Meaning(present, present=True, rule="kind", words=words) if there else None


def is_tool(act: Line, reference: Reference, meaning: Meaning) -> bool:
    """Whether it is equipment, be it called by what it was greased with: then it is held, as many as are said."""
    flow, share = act.walker.flow, reference.share
    equipment = meaning.equipment
    if equipment is None and share is not None and share.kind in ("measure", "all", "rest"):
        found = flow.kitchen.cupboard.find(plain(reference.name, flow.kitchen.language))
        counted = share.measure is None or not share.measure.unit
        batch = meaning.batch
        if found and counted and batch is not None and found.item.kind in MADE_READY and _is_made_ready(flow, batch):
            equipment = found.item
    if equipment is None:
        return False
    act.name_tool(reference, equipment)
    return True


def _is_made_ready(flow: Flow, batch: Batch) -> bool:
    """Whether all in it is what equipment was made ready with: *butter, for the tins*."""
    items = [flow.uses[food.use].ingredient for food in batch.foods if food.use >= 0]
    return all(item.purpose or not item.measures for item in items)
