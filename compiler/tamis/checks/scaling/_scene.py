"""What a rule of scaling may look at, and the rules of thumb that it goes by.

The findings point into the recipe as it was written: that is the file that the cook has open.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from functools import cache

from tamis.record import NamedTuple
from tamis.string_tables import exact, saved_tables
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Ingredient, Tool


Why = Literal["steam", "deep", "unclear", "batches"]
"""Why it stays: steam comes from one pot, fat is deep or perhaps deep, water serves all batches."""


class Medium(NamedTuple):
    """What stays as it is: a food for a purpose, and why."""

    food: Ingredient
    why: Why


Swells = Literal["", "beaten", "boiling", "rising"]
"""What makes food take twice its room: air that is beaten in, sugar that boils down, or yeast."""
SWELLS: dict[Swells, str] = {
    "": "",
    "beaten": ", half of that where it is beaten up",
    "boiling": ", half of that where it boils up",
    "rising": ", half of that where dough rises",
}


class Vessel:
    """A vessel where it is brought out (`tool`) and what it `holds` (0 where no rule of thumb tells and no size is
    said); what lies in it at its fullest, in grams or millilitres. `beside` is what boils or soaks with its batch,
    `heaped` what raw leaves and pieces in it come to, which matters where it holds all else. `sure`: all that lies in
    it is measured."""

    __slots__ = ("batch", "beside", "fullest", "heaped", "holds", "sure", "swells", "tool")

    def __init__(self, tool: Tool, holds: int) -> None:
        self.tool, self.holds = tool, holds
        self.batch = -1
        self.beside = self.fullest = self.heaped = 0
        self.sure = True
        self.swells: Swells = ""

    @property
    def hot(self) -> bool:
        """Whether it goes on the hob or into the oven."""
        return bool(self.tool.equipment.station)

    @property
    def bulk(self) -> int:
        """The room that it takes."""
        return self.fullest * (2 if self.swells else 1)

    def wanted(self, factor: Fraction) -> int:
        """How many of them hold so many times as much: one holds what the recipe puts in, whatever its size."""
        most = max(self.holds, self.bulk)
        return int(-(-self.bulk * factor // most)) if self.bulk * factor > most * practice().amounts["over"] else 1


class Scene(NamedTuple):
    """A recipe, and by how much; `exchanged` are the clauses (by place) whose tin gives way to another,
    `hands` what each line has in hand, `media` what food is cooked in and stays as it is, `vessels` what lies in each
    at its fullest (nothing where the factor is so small that all still fits)."""

    recipe: Recipe
    kitchen: Kitchen
    factor: Fraction
    exchanged: frozenset[int]
    hands: Hands
    media: tuple[Medium, ...]
    vessels: tuple[Vessel, ...] = ()

    def vessel(self, tool: Tool) -> Vessel | None:
        """What is known of a piece where it is brought out."""
        return next((vessel for vessel in self.vessels if vessel.tool is tool), None)

    def tools(self) -> Iterator[tuple[Action, Tool]]:
        """Every piece of equipment where it is first brought out, with its action."""
        for action in self.recipe.actions:
            for tool in action.tools:
                if not tool.definite:
                    yield action, tool

    @property
    def by_eye(self) -> list[Ingredient]:
        """The foods taken by eye."""
        foods = (use.ingredient for use in self.recipe.uses if use.rest_of is None)
        return [food for food in foods if food.vague and not food.measured and not food.purpose]

    @property
    def mixers(self) -> list[tuple[Action, Tool]]:
        """The mixer bowls, with their actions."""
        actions, bowls = self.recipe.actions, practice().bowls
        return [(action, tool) for action in actions for tool in action.tools if tool.equipment.id in bowls]

    @property
    def spoils(self) -> bool:
        """Whether there is food in it that spoils while it is warm."""
        foods = [goods for use in self.recipe.uses if (goods := use.ingredient.goods) is not None]
        return any([food.hazard in practice().spoiling for food in foods])

    @property
    def parts_taken(self) -> bool:
        """Whether a part of something made is taken, or a part that nobody knows."""
        return any([taking.fraction is None or taking.fraction < 1 for taking in self.recipe.takings])

    @property
    def by_hand(self) -> bool:
        """Whether a line kneads or pulls."""
        verbs = practice().verbs
        return any([line.work.verb in verbs["kneading"] | verbs["pulling"] for line in self.recipe.actions])


class Practice(NamedTuple):
    """The rules of thumb: `grammar/scaling.toml` tells what each is."""

    limits: Mapping[str, Fraction]
    amounts: Mapping[str, Fraction]
    bowls: Mapping[str, Fraction]
    holds: Mapping[str, Fraction]
    verbs: Mapping[str, frozenset[str]]
    thickeners: frozenset[str]
    shallow: frozenset[str]
    layered: frozenset[str]
    cloths: frozenset[str]
    trays: frozenset[str]
    heaped: frozenset[str]
    upright: frozenset[str]
    spoiling: frozenset[str]
    baths: frozenset[str]


@cache
def practice() -> Practice:
    """The rules of thumb that ship with the compiler."""
    raw = saved_tables("", "scaling")
    limits, amounts, bowls, holds = (
        {key: exact(text) for key, text in raw[table].items()} for table in ("limits", "amounts", "bowls", "holds")
    )
    return Practice(
        limits,
        amounts,
        bowls,
        holds,
        {key: frozenset(names.split(", ")) for key, names in raw["verbs"].items()},
        *(frozenset(raw[group]["names"].split(", ")) for group in Practice._fields[5:]),
    )


def times_text(factor: Fraction) -> str:
    """The factor as findings name it: "× 2", "× 0.667"."""
    from tamis.quantity.numerals import decimal

    return f"× {decimal(factor)}"
