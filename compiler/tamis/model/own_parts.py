"""Parts that a food has by nature: the skin and the bones of a chicken, the yolk of a boiled egg, the fat of a stew.

They need no naming before. What is thrown away or skimmed off is of no batch, and what is worked on where it lies
(*score [the rind]*, *push the butter under [the skin]*) is the food itself. What goes on by itself becomes a batch: the
white and the yolk of an egg, which the goods know, and any part that is named (*chop [the skin] [as crackling]*) or
taken off and named again.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import islice

from tamis.model.batch import Food, answering, part_of_goods
from tamis.model.effects import Discards, Loses, Why
from tamis.model.line import Parting
from tamis.model.lookup import look_up
from tamis.model.mass import NOTHING, Mass, plus, times
from tamis.model.rest_of import LIFTED_OUT
from tamis.model.words import model_words, plain
from tamis.reading.clauses import Ingredient, Naming, Reference, VerbUse
from tamis.reading.plain import plain_of
from tamis.record import NamedTuple
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from tamis.kitchen.goods import Goods
    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.line import Line
    from tamis.reading.reading import Event

Words = tuple[str, ...]

OWN_PART, TAKES_OVER = Why("own-part"), Why("takes-over")
_MOST_BATCHES, _MOST_FOODS = 50, 100
"""Among so many a part is looked for: no recipe has more at hand."""
_LOOSE = ("water", "salt")
"""Food in such a role makes no mixture of what lies in it."""


class OwnPart(NamedTuple):
    """What a name means as a part: of these foods of a batch, by these goods where they are known. It is `gone`, is the
    `food` itself where it lies, a batch by itself (`kept`), or all that is `left` of the food. `here` tells whether the
    batch is in hand or lies open beside it."""

    source: Batch
    foods: tuple[Food, ...]
    goods: Goods | None
    here: bool
    becomes: Literal["gone", "food", "kept", "left"]


def is_of_next(act: Line, reference: Reference) -> bool:
    """*Pull [the skin] and [the bones] from [the chicken]*: whether it is a part of the food that the line names
    next."""
    foods = [event for event in act.labour.behind(reference) if isinstance(event, Ingredient | Reference)]
    events = {event.clause.inner: event for event in foods}
    parts, between = act.read.parts, ""
    at = next((at for at, part in enumerate(parts) if part is reference.clause), len(parts))
    for part in parts[at + 1 :]:
        if isinstance(part, Text):
            between = part.text
            continue
        event = events.get(part.inner)
        if event is None:
            return False
        if _says_off(act, between, event):
            return _is_of(act, reference, event)
        kitchen = act.walker.flow.kitchen
        joints = model_words(kitchen.language).joints
        said = plain_of(between, kitchen).words
        if any(word and word not in joints and kitchen.verbs.get(word) is None for word in said):
            return False
        between = ""
    return False


def _is_of(act: Line, reference: Reference, event: Ingredient | Reference) -> bool:
    """Whether it is a part of that food. What the goods know by itself goes in alone: the juice of an orange."""
    kitchen = act.walker.flow.kitchen
    words = plain(reference.name, kitchen.language)
    if _says_taken_off(act):
        act.walker.flow.taken_off.add((act.walker.component, words[-1]))
    goods = event.goods if isinstance(event, Ingredient) else None
    alone = act.verb is not None and not act.verb.removes and not act.verb.divides
    if goods is not None and alone and part_of_goods(goods, words[-1], kitchen) is not None:
        joint = min(model_words(kitchen.language).joints)
        act.part_of_next = f"{act.part_of_next} {joint} {reference.name}" if act.part_of_next else reference.name
        return True
    return _has_part(act, event, words)


def _says_off(act: Line, between: str, event: Ingredient | Reference) -> bool:
    """Whether a clause, or the words before it, say that something is of it or comes off it."""
    kitchen = act.walker.flow.kitchen
    off, said = model_words(kitchen.language).off, plain_of(between, kitchen)
    if len(said):
        return said.phrase(off, 0) == len(said)
    words = tuple(event.preposition.split())
    return bool(words) and words in off.get(words[0], ())


def _has_part(act: Line, event: Event, words: Words) -> bool:
    """Whether the food of a clause has such a part."""
    walker = act.walker
    if isinstance(event, Ingredient):
        goods = event.goods
        kinds = model_words(walker.flow.kitchen.language).own_parts
        return goods is None or _is_in(goods, words[-1], kinds)
    meaning = look_up(walker, event) if isinstance(event, Reference) else None
    return meaning is not None and meaning.batch is not None and bool(_foods_with(walker.flow, meaning.batch, words))


def own_part(act: Line, reference: Reference) -> OwnPart | None:
    """What a name that nothing is called by means as a part of some food; None where no food there has such a part, or
    several may be meant."""
    flow = act.walker.flow
    words, known = plain(reference.name, flow.kitchen.language), model_words(flow.kitchen.language)
    removes = act.verb is not None and act.verb.removes and not reference.preposition
    if not words or (reference.share is not None and not removes) or words[-1] not in known.part_words:
        return None  # a word that is misspelt is sought in no batch
    rests = words[-1] in known.rests
    waiting = _waiting(act)
    for own in _having(act, words, rests):
        if rests and not removes and own.goods is None:  # what is cooked in the fat has to know how much there is
            continue
        becomes = _becomes(act, reference, own)
        if not becomes or (becomes == "food" and not _may_be_meant(act, reference, own, words)):
            continue
        if own.source is not waiting or becomes == "gone" or (becomes == "kept" and own.goods is None):
            return own._replace(becomes=becomes)
    return None


def _waiting(act: Line) -> Batch | None:
    """What the wait works on beside which a line is done: it stays there, but some of it may be taken off."""
    if act.beside is None:
        return None
    return next((batch for batch in reversed(act.walker.flow.begun) if batch.last == act.beside), None)


def _having(act: Line, words: Words, rests: bool) -> Iterator[OwnPart]:
    """The batches whose food has such a part: what was just lifted out of what is in hand before that itself, as it is
    picked off the bone, but for the fat; then what lies open, the last first; then what was made elsewhere. What nobody
    knows the parts of comes last: the whites are those of the eggs."""
    walker, flow = act.walker, act.walker.flow
    rest = act.parting.rest if act.parting is not None else None
    held = [batch for batch in (walker.present, rest) if batch is not None]
    lifted = [batch for batch in walker.open if batch.lifted_from in held]
    here = [*held, *lifted] if rests else [*lifted, *held]
    here = list(dict.fromkeys([*here, *reversed(list(walker.open))]))
    waiting = _waiting(act)
    made = [batch for shelf in (flow.named, flow.byproducts, flow.made) for batch in reversed(list(shelf))]
    batches = dict.fromkeys((*here, *([] if waiting is None else [waiting]), *made))
    unknown = []
    for batch in islice(batches, _MOST_BATCHES):
        own = part_in(flow, batch, words) if batch.left > 0 and batch.taken_at is None else None
        if own is not None and any(food.goods for food in own.foods):
            yield own._replace(here=batch in here)
        elif own is not None:
            unknown.append(own._replace(here=batch in here))
    yield from unknown


def part_in(flow: Flow, batch: Batch, words: Words) -> OwnPart | None:
    """What a name means as a part of a batch."""
    foods = _foods_with(flow, batch, words)
    return OwnPart(batch, foods, _goods(flow, foods[0], words[-1]), True, "food") if foods else None


def _foods_with(flow: Flow, batch: Batch, words: Words) -> tuple[Food, ...]:
    """The foods of a batch that have such a part; none where the name speaks of a food that is not in it."""
    said = flow.kitchen.larder.find(words[:-1]) if len(words) > 1 else None
    if said is not None and not batch.keys.has(answering(words[:-1], flow.kitchen)):
        return ()
    foods = islice(batch.foods, _MOST_FOODS)
    return tuple([food for food in foods if food.use >= 0 and _has(flow, food, words[-1])])


def _has(flow: Flow, food: Food, part: str) -> bool:
    words = model_words(flow.kitchen.language)
    goods = flow.kitchen.larder.get(food.goods) if food.goods else None
    if goods is not None and (goods.salt or goods.leavener):
        return False
    if goods is None:
        known = flow.uses[food.use].ingredient.goods  # a part of it has no such parts
        return known is None and part in words.part_words
    return _is_in(goods, part, words.own_parts) or _goods(flow, food, part) is not None


def _is_in(goods: Goods, part: str, kinds: Mapping[str, frozenset[str]]) -> bool:
    return any(part in kinds.get(kind, ()) for kind in (goods.show, goods.role))


def _goods(flow: Flow, food: Food, part: str) -> Goods | None:
    """What the goods know such a part of a food as."""
    goods = flow.kitchen.larder.get(food.goods) if food.goods else None
    return part_of_goods(goods, part, flow.kitchen) if goods is not None else None


def went_with_it(act: Line, reference: Reference) -> int:
    """*Discard [the meat], [the bones]*: the number of the batch out of which food with such a part was just thrown
    away, and the part with it; -1 for none."""
    walker, flow = act.walker, act.walker.flow
    words = plain(reference.name, flow.kitchen.language)
    if (
        act.verb is None
        or not act.verb.removes
        or not words
        or words[-1] not in model_words(flow.kitchen.language).part_words
    ):
        return -1
    for entry in reversed(flow.log):
        if entry.component != walker.component:
            break
        effect = entry.effect
        if isinstance(effect, Loses | Discards):
            gone = effect.foods if isinstance(effect, Loses) else flow.begun[effect.batch].foods
            if any(food.use >= 0 and _has(flow, food, words[-1]) for food in islice(gone, _MOST_FOODS)):
                return effect.batch
    return -1


def _becomes(act: Line, reference: Reference, own: OwnPart) -> Literal["", "gone", "food", "kept", "left"]:
    """What becomes of the part; "" where it is nothing by itself, and its food is elsewhere."""
    flow, verb = act.walker.flow, act.verb
    words = plain(reference.name, flow.kitchen.language)
    if own.here and words[-1] in model_words(flow.kitchen.language).itself:
        return "food"
    parts = verb is not None and (verb.removes or verb.lifts) and not reference.preposition
    if own.goods is not None and not parts:
        if not is_alone(flow, own) or (reference.preposition and own.source is act.walker.present):
            return "food" if own.here else ""
        return "left" if own.here and is_last(flow, own.source, own.goods) else "kept"
    off = verb is not None and (verb.lifts or verb.names or (verb.heat and _was_taken_off(act, words)))
    if parts and own.goods is not None and own.here and is_alone(flow, own) and is_last(flow, own.source, own.goods):
        return "left"
    again = off and flow.is_named_after(
        [("name", words), ("word", words[-1])], reference.clause.span.start
    )  # fmt: skip
    if reference.share is not None and reference.share.kind == "but" and own.source is not act.walker.present:
        return "kept"  # *pour off all but 2 tbsp of the fat* while the bird rests on its plate
    if parts:
        return "kept" if again and is_alone(flow, own) else "gone"
    if reference.preposition:
        return "food"
    if _says_taken_off(act):
        flow.taken_off.add((act.walker.component, words[-1]))
    return "kept" if again or _is_named(act, reference) else "food"


def _was_taken_off(act: Line, words: Words) -> bool:
    """Whether a line of the component took such a part off its food, which stays behind where that is cooked."""
    return (act.walker.component, words[-1]) in act.walker.flow.taken_off


def _says_taken_off(act: Line) -> bool:
    """*Pull off [the shells]*, *cut [the crusts] from the bread*."""
    words = model_words(act.walker.flow.kitchen.language)
    off = {first for first in words.off if first not in words.of}
    return any(not off.isdisjoint(plain.said) for _, plain in act.labour.texts(act.walker.flow.kitchen))


def is_alone(flow: Flow, own: OwnPart) -> bool:
    """Whether the batch is nothing but that food, and what makes no mixture of it: the skin of a pie is nobody's."""
    larder = flow.kitchen.larder
    others = (larder.get(food.goods) if food.goods else None for food in own.source.foods if food not in own.foods)
    return own.goods is None or all(goods is not None and goods.role in _LOOSE for goods in others)


def _may_be_meant(act: Line, reference: Reference, own: OwnPart, words: Words) -> bool:
    """Whether a part may be its food: not where it would go in without having been bought, nor where several may be
    meant, unless a part was taken off this one and it is what that left."""
    walker, verb = act.walker, act.verb
    if own.source.lifted_out is not None or own.source.number in walker.flow.own_parts:
        return True
    if verb is not None and verb.adds and not reference.preposition and not _gets_something(act, reference):
        return False
    return own.source is walker.present or len(list(islice(_having(act, words, False), 2))) == 1


def _gets_something(act: Line, reference: Reference) -> bool:
    """*Rub [the skin] with [1 tsp salt]*: it is what other food goes on to."""
    for event in act.labour.behind(reference):
        if isinstance(event, VerbUse):
            return False
        if isinstance(event, Ingredient | Reference):
            return event.clause.span.start - reference.clause.span.end > 1
    return False


def _is_named(act: Line, reference: Reference) -> bool:
    """Whether the line names what it has just worked on: *chop [the skin] [as crackling]*."""
    for event in act.labour.behind(reference):
        if isinstance(event, Naming):
            return event.kind == "as"
        if isinstance(event, Reference | Ingredient) and not event.preposition:
            return False
        if isinstance(event, VerbUse) and event.verb.serves:
            return False
    return False


def part_off(act: Line, reference: Reference, own: OwnPart, source: Batch) -> Batch | None:
    """Make a batch of a part that goes on by itself. Where it is in hand now, there is nothing more to do: None."""
    walker, flow, span = act.walker, act.walker.flow, reference.clause.span
    words = plain(reference.name, flow.kitchen.language)
    foods = foods_of_part(flow, own, words)
    part = walker.part("own-part", "present", foods, weight_of(foods), source, less=own.goods is not None)
    part.last, part.early, part.span = source.last, source.early or source.last == act.beside, span
    if own.goods is not None:
        flow.own_parts.setdefault(source.number, set()).add(own.goods.id)
    if source is walker.present and (own.goods is not None or (act.verb is not None and act.verb.heat)):
        source.last = act.number  # what is left of it was worked on in this line
        walker.put_aside(source, "left", "", span, TAKES_OVER)
    elif source is walker.present:
        part.lifted_from, source.lifted_out = source, part
        act.parting = Parting(part, reference.name, source)
        part.last = act.number
        walker.turn(part, LIFTED_OUT)
        return None
    if walker.present is None:
        walker.turn(part, TAKES_OVER)
        return None
    walker.put_aside(part, "part", reference.name, span)
    return part


def foods_of_part(flow: Flow, own: OwnPart, words: Words) -> list[Food]:
    """What the part is of each food."""
    return [_food(flow, food, own.goods, words) for food in own.foods]


def weight_of(foods: Sequence[Food]) -> Mass:
    """What foods weigh together."""
    mass = NOTHING
    for food in foods:
        mass = plus(mass, food.mass)
    return mass


def _food(flow: Flow, food: Food, goods: Goods | None, words: Words) -> Food:
    """The part of one food."""
    if goods is None:
        return Food(food.use, words, "", None, Mass(unknown=(" ".join(words),)))
    own = flow.kitchen.larder.get(food.goods)
    part = next((one for one in own.parts if one.id == goods.id), None) if own is not None else None
    whole = own.pieces[0].usual if own is not None and own.pieces else Fraction(0)
    if part is None or not whole or not food.mass.known:
        mass = Mass(unknown=(goods.name,))
    else:
        mass = times(food.mass, (part.lo + part.hi) / 2 / whole)
    return Food.known_as(food.use, plain(goods.name, flow.kitchen.language), goods, mass)


def is_last(flow: Flow, source: Batch, goods: Goods) -> bool:
    """Whether all else that the food of a batch parts into was parted off: an egg is its white and its yolk."""
    return source.number in flow.own_parts and parts_left(flow, source) == {goods.id}


def parts_left(flow: Flow, source: Batch) -> set[str]:
    """The goods that the food of a batch parts into and that were not parted off."""
    wholes = (flow.kitchen.larder.get(food.goods) if food.goods else None for food in source.foods)
    parts = {part.id for whole in wholes if whole is not None for part in whole.parts}
    return parts - flow.own_parts.get(source.number, set())
