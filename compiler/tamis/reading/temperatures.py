"""Temperatures from the tree of a clause: `180 °C / 160 °C fan`, `gas mark 4`, `at 28 °C, 75 % humidity`."""

from __future__ import annotations

from itertools import pairwise

from tamis.quantity.amount import Amount
from tamis.quantity.degrees import degree_words
from tamis.quantity.temperature import c_from_f, c_from_gas
from tamis.reading.clause import child, end_of, is_leaf, leaves, start_of
from tamis.reading.quantities import amount
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from tamis.reading.clause import Node, NodeKind, Reading


def scales(reading: Reading, node: Node) -> tuple[Amount, bool]:
    """The temperature in °C, and whether it is a fan oven's. The first scale counts; its neighbours say the same in
    another, and are the cook's own °C beside what would be none on a knob, or give the fan's own figure."""
    children = node[1]
    if children[0][0] == "scales":
        first = scales(reading, children[0])
        others = children[1:]
        fan = any(part[0] == "FAN" for part in others) and child(others, "degrees") is None
        check_neighbours(reading, node, first, others)
        own = None if _is_whole(first[0]) else _own_celsius(reading, first[0], others)
        return own or first[0], first[1] or fan
    heat = child(children, "degrees")
    assert heat is not None
    return degrees(reading, heat), child(children, "FAN") is not None


# Scales are rounded to what an oven's knob shows; a fan's figure lies some 20 °C lower.
_ROUNDED = 12
_FAN_LOWER = (5, 35)


def _own_celsius(reading: Reading, first: Amount, others: Sequence[Node]) -> Amount | None:
    """The whole °C beside a temperature in another scale, no fan's: `350 °F (180 °C)`."""
    for at, part in enumerate(others):
        if part[0] == "degrees" and not any([near[0] == "FAN" for near in others[max(at - 1, 0) : at + 2]]):
            heat = degrees(reading, part)
            if _is_whole(heat) and _same(first.lo, heat.lo, 0):
                return heat
    return None


def _is_whole(heat: Amount) -> bool:
    return heat.lo.denominator == 1 and heat.hi.denominator == 1


def check_neighbours(reading: Reading, whole: Node, first: tuple[Amount, bool], nodes: Sequence[Node]) -> None:
    """Look whether the figures beside a temperature say the same."""
    fan = False
    for at, part in enumerate(nodes):
        if part[0] in ("SLASH", "COMMA", "OR", "OPEN"):
            fan = False
        elif part[0] == "FAN":
            fan = True
        elif part[0] == "degrees":
            here = degrees(reading, part)
            fan = fan or (nodes[at + 1 : at + 2] != [] and nodes[at + 1][0] == "FAN")
            if not (_same(first[0].lo, here.lo, fan - first[1]) and _same(first[0].hi, here.hi, fan - first[1])):
                message = f"“{reading.said([part])}” is not what stands before it in another scale"
                fan_oven = example(reading.kitchen.language, "fan", oven=180, fan=160)
                hint = f"an oven and its fan: {fan_oven}; two scales: `180 °C / 350 °F`; a range: `160–180 °C`"
                raise reading.fail("number-unclear", reading.span([whole]), message, hint)


def damp(reading: Reading, nodes: Sequence[Node]) -> Amount | None:
    """How moist the air is, behind the temperature."""
    said = child(nodes, "HUMIDITY")
    return amount(reading, nodes[nodes.index(said) - 2]) if said else None


def _same(one: Fraction, other: Fraction, fan: int) -> bool:
    """Whether two figures mean one heat; `fan` is 1 where only the other is a fan's, -1 where only the first is."""
    lower = (one - other) * fan
    return abs(one - other) <= _ROUNDED if not fan else _FAN_LOWER[0] <= lower <= _FAN_LOWER[1]


def degrees(reading: Reading, node: Node) -> Amount:
    """One temperature in °C."""
    one, other = node[1]
    if one[0] == "GAS":
        mark = amount(reading, other)
        low, high = c_from_gas(mark.lo), c_from_gas(mark.hi)
        if low is None or high is None:
            message = f"there is no gas mark {other[1][0][1]}"
            raise reading.fail("number-unclear", reading.span([node]), message, "gas marks run from 1/4 to 10")
        return Amount(low, high)
    return in_celsius(amount(reading, one, "degrees", other), other[1], reading.kitchen.language)


def in_celsius(value: Amount, scale: str, language: str) -> Amount:
    """So many degrees of the scale that stands behind the number."""
    if scale.rstrip().lower().endswith((*degree_words(language).fahrenheit, "℉")):
        return Amount(c_from_f(value.lo), c_from_f(value.hi))
    return value


def temperatures(nodes: Sequence[Node]) -> list[Node]:
    """The `scales` among nodes and in their round brackets."""
    found: list[Node] = []
    for node in nodes:
        if node[0] == "scales":
            found.append(node)
        elif node[1].__class__ is list and node[0] in ("sight", "note"):
            found += temperatures(node[1])
    return found


_OVENS: frozenset[NodeKind] = frozenset(("FAN", "GAS"))


def one_of(reading: Reading, found: list[Node], sights: Sequence[Node] = ()) -> Amount:
    """The temperature of a cue or a target; two that do not say the same are asked about, if they are not of two places
    of which each is named: then it is the lower one."""
    first, fan = scales(reading, found[0])
    lowest = first
    for before, node in pairwise(found):
        if any(leaf[0] in _OVENS for leaf in leaves(node[1])):  # `to 220 °C, fan 200 °C, gas 7`
            check_neighbours(reading, node, (first, fan), node[1])
            continue
        other = scales(reading, node)[0]
        if abs(other.lo - first.lo) > 1 or abs(other.hi - first.hi) > 1:
            if not _are_places(reading, sights, before, node):
                message = "two temperatures in one bracket: only one can be reached"
                hint = "give each a bracket of its own, and a line of its own where another food is meant"
                raise reading.fail("clause-role", reading.span([node]), message, hint)
            lowest = min(lowest, other)
    return lowest


def _are_places(reading: Reading, sights: Sequence[Node], one: Node, other: Node) -> bool:
    """Whether two temperatures stand beside the names of two places: `63 °C in the fish and 74 °C in the stuffing`."""
    words = [leaf for leaf in leaves(sights) if is_leaf(leaf)]
    between = [leaf[1].lower() for leaf in words if end_of(one) <= leaf[2] < start_of(other)]
    ands = reading.words.ands
    return not ands.isdisjoint(between) and not (ands | reading.words.joins).issuperset(between)
