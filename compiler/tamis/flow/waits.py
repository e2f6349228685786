"""What a line waits for, in kitchen words: only the last of it, since that has waited for the rest itself."""

from __future__ import annotations

from tamis.timeline.words import row_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.flow.records import After
    from tamis.model.recipe import Action, Recipe

_FAR = 200
"""So many actions back at most is looked for what another wait implies."""


def last_waits(recipe: Recipe, number: int, waits: Sequence[After]) -> tuple[After, ...]:
    """One for each action, without those that another one has waited for."""
    by_action: dict[int, After] = {}
    for after in waits:
        known = by_action.get(after.action)
        if known is None or (after.what and not known.what):
            by_action[after.action] = after
    ends = [action for action, after in by_action.items() if not after.from_start]
    implied: set[int] = set()
    if len(by_action) > 1:
        for action in ends:
            implied |= _before(recipe.actions, action)
    return tuple(after for action, after in by_action.items() if action not in implied)


def _before(actions: Sequence[Action], number: int) -> set[int]:
    """The actions that have ended when this one begins."""
    found: set[int] = set()
    todo = list(actions[number].after)
    while todo and len(found) < _FAR:
        action = todo.pop()
        if action not in found:
            found.add(action)
            todo += actions[action].after
    return found


def waited_for(recipe: Recipe, number: int, after: After, made: str) -> str:
    """What it is that is waited for: `oven hot`, `loaf tins ready`, or what was `made` there."""
    action, rule = recipe.actions[after.action], after.rule
    if action.heats:
        return f"{row_words(recipe.language).stations[action.heats]} hot"
    if rule in ("ready", "hot-vessel"):
        here = {tool.equipment.name for tool in recipe.actions[number].tools}
        names = [tool.name for tool in action.tools if rule == "hot-vessel" or tool.equipment.name in here]
        if rule == "hot-vessel":
            return f"{names[0]} hot" if names else "hot vessel"
        names = names or [tool.name for tool in recipe.actions[number].tools if tool.equipment.kind == "vessel"]
        return f"{', '.join(dict.fromkeys(names))} ready" if names else "equipment ready"
    return after.what or made
