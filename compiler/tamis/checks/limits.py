"""The figures of `grammar/limits.toml`, beyond which a slip of digits is likelier than a recipe."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tamis.record import NamedTuple
from tamis.string_tables import exact, saved_tables

SOURCE = "common practice"
"""Whose limits these are."""


class Limits(NamedTuple):
    """The file tells what each is: degrees Celsius, hours, percent."""

    hottest: Fraction
    coolest: Fraction
    cooking: Fraction
    hob: dict[str, Fraction]
    bones: frozenset[str]
    spared: frozenset[str]
    oven_mass: dict[str, Fraction]
    hours: dict[str, Fraction]
    oven_hours: dict[str, Fraction]
    minutes: dict[str, Fraction]
    leaveners: dict[str, Fraction]
    beside_raising: dict[str, Fraction]
    raising_flours: tuple[str, ...]
    meals: tuple[str, ...]
    salt: dict[str, Fraction]
    salt_leaves: frozenset[str]
    heat: dict[str, Fraction]
    dish: dict[str, Fraction]
    head: dict[str, Fraction]
    head_most: dict[str, Fraction]
    piece: dict[str, Fraction]
    vessels: dict[str, Fraction]
    person: dict[str, Fraction]
    spoons: dict[str, Fraction]
    beside_flour: dict[str, Fraction]
    constant: Fraction
    side: Fraction
    least: dict[str, Fraction]
    spice: Fraction
    strong: dict[str, Fraction]
    blend: Fraction
    more_spice: tuple[str, ...]


@cache
def limits() -> Limits:
    """The limits that ship with the compiler."""
    raw = saved_tables("", "limits")
    oven, raising = raw["oven"], raw["self-raising"]
    return Limits(
        hottest=exact(oven["hottest"]),
        coolest=exact(oven["coolest"]),
        cooking=exact(oven["cooking"]),
        hob=_numbers(raw["hob"]),
        bones=frozenset(raw["hob-lists"]["bones"].split(", ")),
        spared=frozenset(raw["hob-lists"]["spared"].split(", ")),
        oven_mass=_numbers(raw["oven-mass"]),
        hours=_numbers(raw["hours"]),
        oven_hours=_numbers(raw["oven-hours"]),
        minutes=_numbers(raw["minutes"]),
        leaveners=_numbers(raw["leaveners"]),
        beside_raising=_numbers({name: text for name, text in raising.items() if name in raw["leaveners"]}),
        raising_flours=tuple(raising["flours"].split(", ")),
        meals=tuple(raw["meals"]["foods"].split(", ")),
        salt=_numbers(raw["salt"]),
        salt_leaves=frozenset(raw["salt-leaves"]["verbs"].split(", ")),
        heat=_numbers(raw["heat"]),
        dish=_numbers(raw["dish"]),
        head=_numbers(raw["head"]),
        head_most=_numbers(raw["head-most"]),
        piece=_numbers(raw["piece"]),
        vessels=_numbers(raw["vessels"]),
        person=_numbers(raw["person"]),
        spoons=_numbers(raw["spoons"]),
        beside_flour=_numbers(raw["beside-flour"]),
        constant=exact(raw["stirring"]["constant"]),
        side=exact(raw["stirring"]["side"]),
        least=_numbers(raw["least"]),
        spice=exact(raw["spice"]["all"]),
        strong=_numbers(dict(one.split(" ") for one in raw["spice"]["strong"].split(", "))),
        blend=exact(raw["spice"]["blend"]),
        more_spice=tuple(raw["spice"]["more"].split(", ")),
    )


def _numbers(rows: dict[str, str]) -> dict[str, Fraction]:
    return {name: exact(text) for name, text in rows.items()}
