"""Tins, basins and moulds that stand in a pot of water: three of them do not stand in one."""

from __future__ import annotations

from tamis.checks.scaling._scene import practice
from tamis.checks.words import check_words
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool


class Standing(NamedTuple):
    """A pot on the hob, and a vessel with food that is put into it, where each is brought out."""

    pot: Tool
    inside: Tool


def standing(scene: Scene) -> Iterator[Standing]:
    """The pots in whose water or steam another vessel stands."""
    for line in scene.recipe.actions:
        if line.work.verb in practice().verbs["poaching"] and line.work.station == "ring":
            pot, inside = _pot(scene, line), _inside(scene, line)
            if pot is not None and inside is not None:
                yield Standing(pot, inside)


def _before(scene: Scene, line: Action) -> list[Action]:
    """The lines of its component up to a line, and those that it waits for, the last one first."""
    actions = scene.recipe.actions
    own = {other.number for other in actions[: line.number + 1] if other.component == line.component}
    return [actions[number] for number in sorted(own | set(line.after), reverse=True)]


def _pot(scene: Scene, line: Action) -> Tool | None:
    """The vessel that holds the water for it: water that is there for a purpose, or what the pot is said to hold."""
    recipe = scene.recipe
    for before in _before(scene, line):
        uses = (recipe.uses[index] for index in before.uses)
        water = any(use.ingredient.purpose and use.ingredient.goods and use.ingredient.goods.liquid for use in uses)
        for tool in before.tools:
            vessel = tool.equipment.kind == "vessel" and tool.equipment.station == "ring" and not tool.equipment.grows
            if vessel and not tool.definite and (water or tool.contains):
                return tool
    return None


def _inside(scene: Scene, line: Action) -> Tool | None:
    """The vessel in which the food of a line lies: the last one that it was put into, if that is one which grows with
    the food and goes on no ring by itself."""
    puts_in, moved = check_words(scene.recipe.language).vessels.puts_in, False
    for before in _before(scene, line):
        moved = moved or any(tool.definite and tool.preposition in puts_in for tool in before.tools)
        vessels = [tool for tool in before.tools if tool.equipment.kind == "vessel" and not tool.definite]
        inside = [tool for tool in vessels if tool.equipment.grows and tool.equipment.id not in practice().upright]
        if inside:
            return inside[-1]
        if any(tool.equipment.station != "ring" for tool in vessels) or not (moved or _is_dry(scene, before)):
            return None
    return None


def _is_dry(scene: Scene, line: Action) -> bool:
    """Whether no food joins what is on the hob: noodles boil in it, whatever tin was greased for them before."""
    on_hob = scene.recipe.places.lines[line.number].station == "ring"
    return not on_hob or not any(scene.recipe.uses[index].in_batch for index in line.uses)
