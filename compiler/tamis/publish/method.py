"""The method as sentences: what page and structured data both print.

The model knows actions and their order; a reader wants numbered steps under the name of what they make. Here the two
are brought together once, so that the page and the data for machines cannot tell two stories.
"""

from __future__ import annotations

from collections.abc import Mapping

from tamis.model.effects import Takes
from tamis.publish.sentence import Piece, pieces_of, plain_text
from tamis.publish.words import page_words
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.table.pieces import piece_weights
from tamis.table.wording import amount_text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Component, Recipe, StepView, Use
    from tamis.syntax.document import Remark
    from tamis.table.rows import Table


class StepText(NamedTuple):
    """A numbered step, line by line, with the remarks on it; `meanwhile` if it runs beside the wait before it."""

    lines: tuple[tuple[Piece, ...], ...]
    remarks: tuple[Remark, ...]
    meanwhile: bool

    @property
    def plain(self) -> str:
        """The step as one paragraph of plain words."""
        return " ".join(plain_text(line) for line in self.lines)


class Section(NamedTuple):
    """A component: its name, what is to be said of all of it, its steps, and how it may wait."""

    name: str
    remarks: tuple[Remark, ...]
    steps: tuple[StepText, ...]
    ahead: tuple[tuple[Piece, ...], ...]


def method_of(recipe: Recipe, table: Table, kitchen: Kitchen) -> tuple[Section, ...]:
    """The recipe's components as sentences, in the order of the text."""
    comes_to = _parts_of_measures(recipe, table, kitchen) | dict(piece_weights(recipe, kitchen))
    return tuple(_section(component, recipe, comes_to) for component in recipe.components)


def _section(component: Component, recipe: Recipe, comes_to: Mapping[Span, str]) -> Section:
    steps = tuple(_step(step, recipe, comes_to) for step in component.steps)
    words = page_words(recipe.language)
    ahead = tuple(tuple(pieces_of(waiting.parts, waiting.reads, comes_to, words)) for waiting in component.ahead)
    return Section(component.name, component.remarks, tuple(step for step in steps if step.lines), ahead)


def _step(step: StepView, recipe: Recipe, comes_to: Mapping[Span, str]) -> StepText:
    """The actions of a step, each a line as the cook wrote it; the halves of a line with two times stay together."""
    lines: list[list[Piece]] = []
    end = -1
    words = page_words(recipe.language)
    for index in step.actions:
        action = recipe.actions[index]
        if not lines or not _goes_on(action, end):
            lines.append([])
        knobs = [action.reads[knob.read].clause.span for knob in recipe.places.lines[index].sets]
        lines[-1] += pieces_of(action.parts, action.reads, comes_to, words, knobs)
        end = action.span.end
    return StepText(tuple(tuple(line) for line in lines if line), step.remarks, step.meanwhile)


def _goes_on(action: Action, end: int) -> bool:
    """Whether an action is the second half of a line with two times, so that its words follow directly."""
    return action.span.start == end


def _says_all(use: Use) -> bool:
    """Whether the clause itself gives the measure of the part: *200 ml of 1.7 l milk*."""
    share = use.ingredient.share
    return share is not None and share.measure is not None and use.times == 1


def _parts_of_measures(recipe: Recipe, table: Table, kitchen: Kitchen) -> dict[Span, str]:
    """What *half of 300 g*, *the rest of the flour* and *72 %* come to, by the clause that says so: of a rest
    the one that takes it."""
    shares = {
        index: use
        for index, use in enumerate(recipe.uses)
        if (use.fraction not in (0, 1) or use.rest_of is not None or use.computed is not None) and not _says_all(use)
    }
    if not shares:
        return {}
    taken = {
        entry.effect.use: entry.clause
        for entry in recipe.log
        if isinstance(entry.effect, Takes) and entry.effect.use >= 0
    }
    said: dict[Span, str] = {}
    for row in (*table.rows, *table.optional, *table.purposes):
        for place in row.uses:
            use = shares.get(place.use)
            if use is None:
                continue
            span = use.ingredient.clause.span if use.rest_of is None else taken.get(place.use)
            if span:
                said[span] = amount_text(place.amount, place.item, kitchen)
    return {span: text for span, text in said.items() if text}
