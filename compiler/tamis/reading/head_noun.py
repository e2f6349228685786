"""What the head noun decides once a clause is taken apart.

The grammar cannot tell `into 2 pieces` from `into 2 eggs`, nor `in boiling water` from `in olive oil`: both are a
preposition, perhaps a number, and a name. All such questions are answered here, by the lists of the kitchen.
"""

from __future__ import annotations

from tamis.kitchen.food import FROM_TAP
from tamis.quantity.nouns import nouns
from tamis.reading.clause import child, leaves
from tamis.reading.clauses import Division, Manner
from tamis.reading.food import read_food, stuck_in
from tamis.reading.food_parts import is_manner, parts_of
from tamis.reading.pieces import read_division
from tamis.reading.soundness import check_text
from tamis.reading.surplus import joined_food, second_use, with_work_behind
from tamis.reading.things import read_tool
from tamis.reading.unit_checks import check_units
from tamis.source import NOWHERE
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.goods import Found
    from tamis.reading.clause import Node, Reading
    from tamis.reading.clauses import Ingredient, Read
    from tamis.reading.food_parts import Parts


def read_named(reading: Reading, children: Sequence[Node], role: str) -> tuple[Read, ...] | None:
    """The record of a clause that the grammar takes for food; None where it is no clause at all."""
    parts, more = second_use(reading, parts_of(reading, children))
    stuck = child(parts.tail, "stuck")
    known = reading.kitchen.larder.find(reading.keys(parts.name))
    if _is_pan_of_water(reading, parts):
        return read_tool(reading, children)
    if known is None:
        parts = with_work_behind(reading, parts)
        known = reading.kitchen.larder.find(reading.keys(parts.name))
    several = _by_eye(reading, parts) if known is None or parts.tail else ()
    if several:
        return tuple([_food(reading, each, role, found) for each, found in several])
    if known is None and role == "unmeasured" and leaves(parts.name)[0][0] == "PARTICIPLE":
        from tamis.reading.attending import read_tending

        return read_tending(reading, list(leaves(children)))  # adding water as needed
    if known is None:
        check_units(reading, parts)
    if parts.preposition and _divides(reading, parts):
        check_text(reading, parts.tail)
        found = read_division(reading, children)
        if found and known and len(found) == 1 and isinstance(found[0], Division):
            return (found[0]._replace(food=read_food(reading, parts, role, known)),)
        return found
    food = _food(reading, parts, role, known)
    if food.goods is None and parts.preposition and not parts.tail and is_manner(reading, parts.name):
        return (Manner(reading.clause, food.measures[0] if food.measures else None),)
    if food.goods is None and _is_no_food(reading, parts, food, role):
        return None
    with_it = joined_food(reading, parts)
    if with_it is not None:
        return food, read_food(reading, with_it, "ingredient", None)
    foods = (food,) if stuck is None else (food, stuck_in(reading, stuck))
    return foods if more is None else (_second(reading, more, known), *foods)


def _food(reading: Reading, parts: Parts, role: str, known: Found | None) -> Ingredient:
    food = _as_filled(reading, parts, read_food(reading, parts, role, known))
    role = _role(reading, parts, food, food.role)
    purpose = reading.words.as_needed if role == "medium" and not food.purpose else food.purpose
    if (role, purpose) != (food.role, food.purpose):
        food = food._replace(role=role, purpose=purpose)  # type: ignore[arg-type]  # one of three
    return food


def _by_eye(reading: Reading, parts: Parts) -> list[tuple[Parts, Found]]:
    """`salt and pepper`, `a little salt, pepper and nutmeg`: foods of which none has a measure may stand in one clause.
    A measure may be of each or of all."""
    if any(leaf[0] != "SOME" for leaf in leaves(parts.measure)) or parts.part or parts.share or parts.percent:
        return []
    tail, names = parts.tail, [[*leaves(parts.name)]]
    if len(tail) > 1 and tail[1][0] == "preparation":
        names.append(leaves(tail[1:2]))
        tail = tail[2:]
    several: list[list[Node]] = []
    for name in names:
        several.append([])
        for leaf in name:
            if leaf[0] == "ADJCOMMA" or leaf[1].lower() in reading.words.ands:
                several.append([])
            else:
                several[-1].append(leaf)
    found = [reading.kitchen.larder.find(reading.keys(name)) if name else None for name in several]
    if len(several) < 2 or None in found:
        return []
    each = (parts._replace(name=tuple(name), tail=tail) for name in several)
    return [(one, known) for one, known in zip(each, found, strict=True) if known is not None]


def _is_pan_of_water(reading: Reading, parts: Parts) -> bool:
    """`in a large pot of boiling water`: a pot also measures, but what goes on the stove, or *into a tin*, holds its
    water; of `2 tins of water` so much is poured in."""
    if [node[0] for node in parts.name[:2]] != ["jar", "OF"] or not parts.measure:
        return False
    pan = reading.kitchen.cupboard.find(reading.keys(parts.name[:1]))
    held = reading.kitchen.larder.find(reading.keys(parts.name[2:]))
    if pan is None or held is None or held.goods.merchant != FROM_TAP:
        return False
    one = parts.preposition != "" and next(iter(leaves(parts.measure)))[0] == "ARTICLE"
    return pan.item.station == "ring" or (one and pan.item.station != "")


def _second(reading: Reading, parts: Parts, known: Found | None) -> Ingredient:
    """The second use of a food; one lemon besides two lemons is called so."""
    food = read_food(reading, parts, "ingredient", known)
    if food.measures[0].unit or food.measures[0].amount.hi > 1:
        return food
    return food._replace(name=nouns(reading.kitchen.language).one(food.name))


def _divides(reading: Reading, parts: Parts) -> bool:
    """`into 2 pieces`, `between 4`: a number after such a preposition divides, but for a measured food."""
    if parts.part or parts.share or parts.percent or _is_filled(reading, parts):
        return False
    if parts.preposition not in reading.words.into or not parts.measure:
        return parts.preposition in reading.words.into | reading.words.cut_in and _shapes(reading, parts)
    weighed = child(parts.measure, "weighed")
    known = _known(reading, parts)
    if weighed is not None:
        return known is None
    numbered = any(leaf[0] in ("NUMBER", "NUMWORD") for leaf in leaves(parts.measure))
    return numbered or known is None


def _is_filled(reading: Reading, parts: Parts) -> bool:
    """`into 12 vol-au-vent cases`, `into 32 mm hog casings`: food that goes in, however it is counted or sized."""
    noun = reading.keys(leaves(parts.name)[-1:])[-1]
    return noun in reading.words.filled and not (parts.measure and child(parts.measure, "weighed"))


def _as_filled(reading: Reading, parts: Parts, food: Ingredient) -> Ingredient:
    """Cases of a size whose number is not told are as many as it takes."""
    units = [reading.kitchen.units.get(measure.unit) for measure in food.measures]
    long = reading.words.lengths.values()  # so many metres; of centimetres they are wide
    numbered = any(unit is None or unit.kind != "length" or unit.id in long for unit in units)
    if parts.preposition not in reading.words.into or numbered or not _is_filled(reading, parts):
        return food
    return food._replace(
        measures=(),
        measure_text="",
        measure_span=NOWHERE,
        role="unmeasured",
        purpose=food.purpose or reading.words.as_needed,
    )


def _shapes(reading: Reading, parts: Parts) -> bool:
    """`into thin strips`, `in 5-mm slices`: what no food is called, nor a vessel."""
    words = [leaf for leaf in leaves(parts.name) if leaf[0] != "ADJCOMMA"]
    return not parts.tail and words[-1][0] == "COUNT" and _known(reading, parts) is None


def _known(reading: Reading, parts: Parts) -> Found | None:
    words = [leaf for leaf in leaves(parts.name) if leaf[0] not in ("NUMBER", "PERCENT")]
    return reading.kitchen.larder.find(reading.keys(words))


def _is_no_food(reading: Reading, parts: Parts, food: Ingredient, role: str) -> bool:
    """An unknown name is a food only where a number measures it: `in a flurb` is no food, nor are `salt and pepper`."""
    if role == "unmeasured":
        return not food.purpose
    numbered = any(leaf[0] in ("NUMBER", "NUMWORD", "MISWRITTEN") for leaf in leaves(parts.measure))
    return bool(parts.preposition) and not numbered and not parts.part and not parts.percent and not parts.share


def _role(reading: Reading, parts: Parts, food: Ingredient, role: str) -> str:
    if food.measured or food.part:
        return "ingredient"
    vague = next((leaf[1].lower() for leaf in leaves(parts.measure) if leaf[0] == "SOME"), "")
    if food.goods is not None and food.goods.merchant == FROM_TAP:
        return "medium"
    if not (food.measures or parts.measure or parts.percent or parts.share):  # slices of lemon
        return "unmeasured"
    if vague in reading.words.few:
        return "ingredient"
    return "unmeasured" if vague or role == "unmeasured" else "ingredient"
