"""Recipes made by hand, as the model gives them, so that the timeline is tested without the phases before it."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from tamis.kitchen.house import default_kitchen
from tamis.model.places import Here, Knob, Places
from tamis.model.recipe import Action, Component, Recipe, StepView, Use, Work
from tamis.quantity.amount import Amount, exactly
from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Ingredient, VerbUse
from tamis.reading.header import Header
from tamis.source import Span
from tamis.syntax.document import Clause, Text

MIN, HOUR = 60, 3600
KITCHEN = default_kitchen("en")


def wait(lo: int, hi: int | None = -1, window: bool = False) -> Duration:
    """Seconds; one figure for a fixed length."""
    return Duration(Fraction(lo), Fraction(lo) if hi == -1 else None if hi is None else Fraction(hi), window)


def work(handling: int = 0, length: Duration | None = None, **more: Any) -> Work:
    more.setdefault("hands", False)
    given = "text" if length else "default"
    return Work(handling, length, bool(length and length.window), **{"given": given, **more})


def food(words: str, name: str, preparation: str = "", states: tuple[str, ...] = (), pieces: int = 0) -> Use:
    clause = Clause(words, Span(0, len(words)), "en")
    measures = (Measure(exactly(pieces), ""),) if pieces else ()
    goods = KITCHEN.larder.find(name.split())
    return Use(
        Ingredient(
            clause,
            name,
            clause.span,
            goods.goods if goods else None,
            states,
            measures=measures,
            preparation=preparation,
        ),
        0,
        0,
    )


class Making:
    """A recipe line by line: `line(words, work, …)` gives the number of the action."""

    def __init__(self, title: str = "Trial", keeps: str = "") -> None:
        self.header = Header(title=title, keeps=keeps)
        self.actions: list[Action] = []
        self.places: list[Here] = []
        self.uses: list[Use] = []
        self.components: list[str] = []
        self.step = -1

    def component(self, name: str) -> None:
        self.components.append(name)
        self.paragraph()

    def paragraph(self) -> None:
        self.step += 1

    def line(
        self, words: str, work: Work, *foods: Use, sets: int = 0, preheat: Amount | None = None, **more: Any
    ) -> int:
        number = len(self.actions)
        heats = more.get("heats", "")
        knobs = (Knob(0, exactly(sets)),) if sets else ()
        self.places.append(
            Here(number, station=heats or work.station, sets=knobs, preheat=preheat, heats="station" if heats else "")
        )
        uses = tuple(range(len(self.uses), len(self.uses) + len(foods)))
        self.uses += [use._replace(action=number) for use in foods]
        verb = KITCHEN.verbs.get(words.split(maxsplit=1)[0].lower())
        span = Span(100 * number, 100 * number + len(words))
        verbs = (VerbUse(verb, verb.base, span),) if verb else ()
        place = Span(span.end, span.end + 1)
        reads = tuple(use.ingredient._replace(clause=use.ingredient.clause._replace(span=place)) for use in foods)
        self.actions.append(
            Action(
                number,
                len(self.components) - 1,
                self.step,
                span,
                (Text(words, span),),
                reads,
                verbs,
                work,
                uses=uses,
                **more,
            )
        )
        return number

    def recipe(self) -> Recipe:
        components = tuple(
            Component(index, name, None, (StepView(0, ()),)) for index, name in enumerate(self.components)
        )
        places = Places(tuple(self.places))
        return Recipe(
            "trial", self.header, "", components, tuple(self.actions), tuple(self.uses), (), (), "en", places=places
        )
