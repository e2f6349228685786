"""What stands in for what: dried herbs for fresh, yeast of another kind, a lemon for its juice.

Such rules are not facts of physics: tables that cooks trust differ by a quarter and more. So a rule keeps every
figure with its source and leaves it to the reader of the answer; nothing is averaged, and nothing here is used to
convert a recipe on its own.

All data is in grammar/equivalents.toml, whose head tells the form. Only `tamis convert` reads it.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import cache

from tamis.assets import asset_text
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.number import figures
from tamis.record import NamedTuple
from tamis.typed import Any

# The sources are American, so their cups and spoons are, whatever the house's hold.
US = {"cup": "us_cup", "tbsp": "us_tbsp", "tsp": "us_tsp"}


class Figure(NamedTuple):
    """What one source says: so much of the other food. The unit is a US one, a count word, or "" for pieces."""

    measure: Measure
    source: str


class Equivalent(NamedTuple):
    """`of` the food `left` does the work of any of the `figures` of the food `right`; names as in a recipe."""

    left: str
    right: str
    of: Measure
    figures: tuple[Figure, ...]
    note: str = ""


class Portion(NamedTuple):
    """So much of a food in a mixture."""

    measure: Measure
    food: str


class Mixture(NamedTuple):
    """`of` a `food` is replaced by all the `parts` together."""

    food: str
    of: Measure
    parts: tuple[Portion, ...]
    source: str
    note: str = ""


class Equivalents(NamedTuple):
    """All the rules, in the order of the file."""

    pairs: tuple[Equivalent, ...]
    mixtures: tuple[Mixture, ...]


@cache
def shipped_equivalents() -> Equivalents:
    """The rules that ship with the compiler."""
    return read_equivalents(asset_text("grammar/equivalents.toml"))


def read_equivalents(text: str) -> Equivalents:
    """The rules of a TOML text. Raises ValueError for a line that has not the form that the file's head tells."""
    import tomllib

    said = tomllib.loads(text)
    pairs = [pair for row in said.get("equivalent", ()) for pair in _pairs(row)]
    return Equivalents(tuple(pairs), tuple(_mixture(row) for row in said.get("mixture", ())))


def _pairs(row: Mapping[str, Any]) -> list[Equivalent]:
    of, figures = _measure(row["of"]), tuple(_figure(line) for line in row["figures"])
    sides = [line.partition(" = ") for line in row["pairs"]]
    return [Equivalent(left, right, of, figures, row.get("note", "")) for left, _, right in sides]


def _figure(line: str) -> Figure:
    measure, colon, source = line.partition(": ")
    if not colon:
        raise ValueError(f"{line}: a figure without its source")
    return Figure(_measure(measure), source)


def _mixture(row: Mapping[str, Any]) -> Mixture:
    parts = tuple(_portion(line) for line in row["parts"])
    return Mixture(row["food"], _measure(row["of"]), parts, row["source"], row.get("note", ""))


def _portion(line: str) -> Portion:
    number, unit, food = line.split(" ", 2)
    return Portion(_measure(f"{number} {unit}"), food)


def _measure(text: str) -> Measure:
    number, _, unit = text.partition(" ")
    low, _, high = number.partition("–")
    return Measure(Amount(_number(low), _number(high or low)), US.get(unit, unit))


def _number(text: str) -> Fraction:
    value = figures(text)
    if value is None:
        raise ValueError(f"{text}: no number")
    return value
