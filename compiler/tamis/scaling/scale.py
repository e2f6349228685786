"""A whole recipe for more or for fewer.

A scaled recipe could be the old one with other numbers in its records; then every phase that comes after would have to
know of it. Here the *text* is scaled, with exact numbers, and compiled like any other: table, timeline, formula and
checks follow without knowing. What a reader sees is the same recipe with its measures said as a kitchen has them.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from tamis.compile import Compiled, compile
from tamis.reading.clauses import Ingredient
from tamis.scaling.clauses import divisions_whole, recipe_edits
from tamis.scaling.edits import Edit, edited, moved
from tamis.scaling.header import header_edits
from tamis.scaling.quantities import Scaling
from tamis.source import Source, Span
from tamis.syntax.clause import parse_clause
from tamis.syntax.document import Clause

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Read
    from tamis.syntax.document import Part
    from tamis.table.rows import Row, Table


class Scaled(NamedTuple):
    """A scaled recipe: `compiled` holds the exact figures, `shown` is the recipe whose sentences are for the reader.

    `edits` are the changes in the text of `original`.
    """

    original: Compiled
    factor: Fraction
    compiled: Compiled
    shown: Recipe
    edits: tuple[Edit, ...]

    @property
    def text(self) -> str:
        """The scaled recipe's file."""
        return self.compiled.source.text


def scaled(original: Compiled, factor: Fraction, kitchen: Kitchen) -> Scaled:
    """A recipe, so many times. The factor is greater than nought; by 1 the text stays as it is."""
    scaling = Scaling(factor, kitchen)
    scaling = scaling._replace(pieces=divisions_whole(original.recipe, scaling))
    if factor == 1:
        return Scaled(original, factor, original, original.recipe, ())
    edits = header_edits(original.document, scaling) + recipe_edits(original.recipe, scaling)
    return with_edits(original, factor, kitchen, edits)


def with_edits(original: Compiled, factor: Fraction, kitchen: Kitchen, edits: list[Edit]) -> Scaled:
    """The recipe with these changes made and compiled."""
    before = original.source
    source = Source(before.name, edited(before.text, edits, "exact"), before.stem)
    after = compile(source, kitchen, original.used)
    after = after._replace(table=_marked(after.table))
    return Scaled(original, factor, after, _shown(original, after, edits), tuple(sorted(edits)))


def _marked(table: Table) -> Table:
    """The table, its rows known as scaled, so that their figures are not taken for a cook's own."""

    def mark(rows: tuple[Row, ...]) -> tuple[Row, ...]:
        return tuple(row._replace(scaled=True) for row in rows)

    return table._replace(rows=mark(table.rows), purposes=mark(table.purposes), optional=mark(table.optional))


def _shown(original: Compiled, after: Compiled, edits: list[Edit]) -> Recipe:
    """The old recipe with the new words in its clauses, places as in the old file."""
    at: dict[int, list[Edit]] = {}
    clauses = {read.clause.inner: read.clause for action in original.recipe.actions for read in action.reads}
    ordered, starts = sorted(edits), sorted(clauses)
    index = 0
    for edit in ordered:
        while index + 1 < len(starts) and starts[index + 1] <= edit.span.start:
            index += 1
        if starts and starts[index] <= edit.span.start < clauses[starts[index]].span.end:
            at.setdefault(starts[index], []).append(edit.shifted(-starts[index]))
    actions = tuple(_action(action, at) for action in original.recipe.actions)
    return original.recipe._replace(actions=actions, header=after.recipe.header)


def _action(action: Action, edits: Mapping[int, list[Edit]]) -> Action:
    parts = tuple(_part(part, edits) for part in action.parts)
    reads = tuple(_read(read, edits.get(read.clause.inner, [])) for read in action.reads)
    return action._replace(parts=parts, reads=reads)


def _part(part: Part, edits: Mapping[int, list[Edit]]) -> Part:
    if not isinstance(part, Clause) or part.inner not in edits:
        return part
    return _clause(part, edits[part.inner])


def _clause(clause: Clause, edits: list[Edit]) -> Clause:
    text = edited(clause.text, edits, "shown")
    return Clause(text, parse_clause(text), clause.span)


def _read(read: Read, edits: list[Edit]) -> Read:
    """A clause as understood, with its new words; where its name and its measure stand is counted anew."""
    if not edits:
        return read
    clause = _clause(read.clause, edits)
    if not isinstance(read, Ingredient):
        return read._replace(clause=clause)
    inner, old = read.clause.inner, read.clause.text
    start, end = (moved(place - inner, edits, "shown") for place in read.name_span)
    said = old.find(read.measure_text)
    measure = clause.text[moved(said, edits, "shown") : moved(said + len(read.measure_text), edits, "shown")]
    return read._replace(clause=clause, name_span=Span(start + inner, end + inner), measure_text=measure.rstrip())
