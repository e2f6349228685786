"""One oven has one temperature: what wants another one waits until the oven is empty.

The text's order decides who goes first, unless the food itself says otherwise. In a house with several ovens nobody
waits.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.places import Here
    from tamis.model.recipe import Recipe

OVEN = "oven"


def waits_for_oven(recipe: Recipe, before: Sequence[tuple[int, ...]]) -> list[tuple[int, int]]:
    """Pairs of lines of which the first must be out of the oven when the second heats or uses it. `before` are the
    lines that each line follows anyway."""
    pairs: list[tuple[int, int]] = []
    latest = _latest(before)
    there: Fraction | None = None
    inside: list[int] = []
    for here in recipe.places.lines:
        if here.station != OVEN:
            continue
        wanted = set_to(here)
        if wanted is not None and there is not None and wanted != there:
            other = here.action
            pairs += [(line, other) for line in inside if latest[line] < other or not follows(line, other, before)]
            inside = []
        there = there if wanted is None else wanted
        if here.heats != "station":
            inside.append(here.action)
    return pairs


def turned(recipe: Recipe) -> dict[int, Fraction]:
    """By how many °C the lines that set an oven that was on already turn it up, or (below zero) down."""
    found: dict[int, Fraction] = {}
    there: Fraction | None = None
    for here in recipe.places.lines:
        if here.station != OVEN:
            continue
        wanted = set_to(here)
        if wanted is not None and there is not None:
            found[here.action] = wanted - there
        there = there if wanted is None else wanted
    return found


def set_to(here: Here) -> Fraction | None:
    """°C that a line sets its oven to, or uses it at; None if it says none."""
    return here.sets[0].celsius.hi if here.sets else None


def _latest(before: Sequence[tuple[int, ...]]) -> list[int]:
    """For each line the last line of the text that it comes after, by way of the food; more than any line has where one
    follows a line further down, and must be looked at."""
    latest: list[int] = []
    for line, lines in enumerate(before):
        earlier = [max(other, latest[other]) if other < line else len(before) for other in lines]
        latest.append(max(earlier, default=-1))
    return latest


def follows(line: int, other: int, before: Sequence[tuple[int, ...]]) -> bool:
    """Whether a line comes after another one by way of the food."""
    seen: set[int] = set()
    stack = [line]
    while stack:
        for earlier in before[stack.pop()]:
            if earlier == other:
                return True
            if earlier not in seen:
                seen.add(earlier)
                stack.append(earlier)
    return False
