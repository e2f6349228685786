"""A tin, pan, jar or pudding cloth that no longer holds its food once a recipe is scaled.

Tools and their sizes stay as written, so the food in them gets higher or lower: it runs over, stays raw in the
middle, or bakes through early and dries.

Take more of the same, or one with the area that the message names; `--pan "23 cm round"` scales a recipe to the tin
that you have.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Repeat
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._pans import Pan
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool

RULE = "scale-pan"
LEVEL: Severity = "warning"
ABOUT = ("equipment",)
FACTOR = Fraction(2)
BAD = """\
title: Honey flapjack
makes: 16 squares

# Flapjack

Heat [the oven] [to 160 °C].
Stir [300 g rolled oats] with [200 g melted butter] and [150 g honey] [in a bowl].
Press [into a 20 cm square tin].
[Bake for 20–25 min] [until golden at the edges].
"""
GOOD = """\
title: Honey flapjack
makes: 16 squares

# Flapjack

Heat [the oven] [to 160 °C].
Stir [300 g rolled oats] with [200 g melted butter] and [150 g honey] [in a bowl].
Press out [on a sheet of baking paper].
[Bake for 20–25 min] [until golden at the edges].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Vessels of a size, or several of them, each told once."""
    limits = practice().limits
    if limits["emptier"] <= scene.factor <= limits["fuller"]:
        return
    seen: set[tuple[str, str]] = set()
    for action, tool in scene.tools():
        key = (tool.equipment.name, tool.size)
        cloth = _cloth(scene, action, tool)
        if cloth is not None and key not in seen:
            seen.add(key)
            yield cloth
        if tool.equipment.kind != "vessel" or key in seen or tool.clause.span.start in scene.exchanged:
            continue
        seen.add(key)
        said = None if _fries(scene, action, tool) else _said(scene, tool)
        if said:
            message = f"{times_text(scene.factor)}: {said[0]}"
            yield Diagnostic(RULE, LEVEL, tool.clause.span, message, said[1])


def _cloth(scene: Scene, action: Action, tool: Tool) -> Diagnostic | None:
    """A cloth in which something is tied up: so many puddings, so many cloths. A spice bag only gets fuller."""
    from tamis.quantity.nouns import nouns

    if tool.equipment.id not in practice().cloths or scene.factor < 1:
        return None
    after = (line for line in scene.recipe.actions[action.number :] if line.component == action.component)
    tied = any(use.verb.base in practice().verbs["tying"] for line in after for use in line.verbs)
    wanted = -(-tool.number * scene.factor // 1)
    if not tied or wanted == tool.number or tool.several or _spice_bag(scene, action):
        return None
    known = nouns(scene.recipe.language)
    message = f"{times_text(scene.factor)}: this takes {wanted} {known.plural(known.one(tool.name))}, not {tool.number}"
    hint = "make them ready before you begin; a larger piece in one cloth boils for longer"
    return Diagnostic(RULE, LEVEL, tool.clause.span, message, hint)


def _spice_bag(scene: Scene, action: Action) -> bool:
    """Whether it holds spices and herbs, or so little that one cloth holds it as well."""
    own = [index for index in action.uses if scene.recipe.uses[index].in_batch]
    uses = [scene.recipe.uses[index] for index in own or scene.hands[action.number].uses]
    spices = ("spice", "herb")
    other = [use for use in uses if use.ingredient.goods is None or use.ingredient.goods.show not in spices]
    weight = sum((use.mass.hi for use in other), Fraction(0)) * scene.factor
    known = all(use.mass.known for use in other)
    return bool(uses) and known and weight <= practice().amounts["layer"]


def _is_done_again(scene: Scene, action: Action) -> bool:
    """Whether the step is done again, so that more turns are told there."""
    same = (one for one in scene.recipe.actions if (one.component, one.step) == (action.component, action.step))
    return any(isinstance(read, Repeat) and read.kind == "step-times" for line in same for read in line.reads)


def _fries(scene: Scene, action: Action, tool: Tool) -> bool:
    """Whether a pan of no said size fries or cooks in batches: more batches are told there, or more pans."""
    after = (line for line in scene.recipe.actions[action.number :] if line.component == action.component)
    on_ring = tool.equipment.station == "ring" and not tool.equipment.grows and not tool.size
    if tool.equipment.station == "ring" and _is_done_again(scene, action):
        return True
    return on_ring and any(line.batches > 1 or line.work.verb in practice().verbs["frying"] for line in after)


def _said(scene: Scene, tool: Tool) -> tuple[str, str] | None:
    """What is wrong with a vessel, and what to take instead; None if nothing is known of its size or number."""
    from tamis.checks.scaling._pans import by_the_piece, pan_of, shapes

    if tool.equipment.id in practice().trays and not tool.size:
        return None  # told of as loads of the oven
    pieces = tool.number * scene.factor if tool.number > 1 and by_the_piece(tool, scene.kitchen) else None
    if pieces and tool.size and pieces.denominator == 1:
        return None  # so many more are written, and each holds what it did
    vessel = scene.vessel(tool)
    if vessel is not None and vessel.holds and vessel.fullest and vessel.sure:
        return None  # told by what lies in it
    pan = pan_of(tool, scene.kitchen)
    wanted = -(-tool.number * scene.factor // 1)
    name = tool.equipment.name if wanted == 1 else tool.equipment.plural
    if tool.several:
        if tool.definite or not tool.size:
            return None
        message = f"“{tool.clause.text.strip()}” does not say how many: the scaled recipe needs a different number"
        return message, "count those that the recipe takes now, and write their number"
    if pan is None:
        if not (tool.number > 1 or tool.size) or wanted == tool.number:
            return None
        size = f" of {tool.size}" if tool.size else ""
        return f"this takes {wanted} {name}{size}, not {tool.number}", "make them ready before you begin"
    fuller = "no longer holds it" if scene.factor > 1 else "is too large for it"
    known = shapes(scene.kitchen.language)
    plain = " ".join(word for word in tool.equipment.name.split() if word not in known or known[word] != pan.shape)
    said = f"a {pan.text} {plain} {fuller}: {_measures(scene, tool, pan)}"
    return said, _instead(scene, tool, pan, wanted)


def _measures(scene: Scene, tool: Tool, pan: Pan) -> str:
    """Area or volume, as it is and as it would have to be."""
    from tamis.quantity.display import millilitres
    from tamis.quantity.numerals import rounded

    if pan.volume is not None:
        return f"it holds {millilitres(pan.volume)}, but {millilitres(pan.volume * scene.factor)} are needed"
    area = (pan.area or Fraction(0)) / 100
    if pan.shape == "" and len(pan.sides) == 1:
        return f"at the same depth it needs {float(scene.factor):.2g} times its area"
    wanted = rounded(area * scene.factor, 1)
    each = " each" if tool.number > 1 else ""
    return f"at the same depth it needs {wanted} cm²{each}, but has {rounded(area, 1)} cm²"


def _instead(scene: Scene, tool: Tool, pan: Pan, wanted: int | Fraction) -> str:
    more = f"take {wanted} of this size" if scene.factor > 1 else ""
    one = ""
    if len(pan.sides) == 1:
        from math import sqrt

        across = round(float(pan.sides[0]) * sqrt(float(scene.factor)) / 10)
        if tool.equipment.station == "ring" and across > practice().amounts["widest pan"]:
            return more
        each = "" if tool.number == 1 else f"{tool.number} × "
        one = f"{each}{across} cm {pan.shape}".rstrip()
    words = [word for word in (more, one and (f"or {one}" if more else f"take {one}")) if word]
    return ", ".join(words) or "take a smaller one"
