"""A whole recipe for more or for fewer.

A scaled recipe could be the old one with other numbers in its records; then every phase that comes after would have to
know of it. Here the *text* is scaled, with exact numbers, and compiled like any other: table, timeline, formula and
checks follow without knowing. What a reader sees is the same recipe with its measures said as a kitchen has them.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.compile import Compiled, compile
from tamis.model.mass import times as mass_times
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.scaling.clauses import divisions_whole, recipe_edits, tools_whole
from tamis.scaling.edits import Edit, edited, moved
from tamis.scaling.header import header_edits
from tamis.scaling.quantities import Scaling
from tamis.source import NOWHERE, Source, Span
from tamis.syntax.document import Clause
from tamis.syntax.items import Product, Quantity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe, Supply
    from tamis.reading.clauses import Read
    from tamis.syntax.document import Part
    from tamis.syntax.items import Item, QuantityKind
    from tamis.table.rows import Row, Table


_GROW: tuple[QuantityKind, ...] = ("pieces", "mass", "volume")
NOT_SCALED = " (not scaled: it could not be read)"


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


def scaled(original: Compiled, factor: Fraction, kitchen: Kitchen, used_too: bool = False) -> Scaled:
    """A recipe, so many times. The factor is greater than nought; by 1 the text stays as it is.

    `used_too` says that the recipes which it uses are scaled with it, and so make more as well.
    """
    scaling = Scaling(factor, kitchen)
    pieces, tools = divisions_whole(original.recipe, scaling), tools_whole(original.recipe, factor, kitchen)
    scaling = scaling._replace(pieces=pieces, tools=pieces and tools)
    if factor == 1:
        return Scaled(original, factor, original, original.recipe, ())
    edits = header_edits(original.document, scaling) + recipe_edits(original.recipe, scaling)
    if used_too:
        original = original.with_used({stem: _more(supply, factor) for stem, supply in original.used.items()})
    return with_edits(original, factor, kitchen, edits)


def _more(supply: Supply, factor: Fraction) -> Supply:
    measure = supply.measure.times(factor) if supply.measure else None
    return supply._replace(measure=measure, mass=mass_times(supply.mass, factor))


def for_page(made: Scaled) -> Compiled:
    """The scaled recipe as a page is made of it: exact figures, and sentences for the reader."""
    return made.compiled.shown_as(made.shown)


def with_edits(original: Compiled, factor: Fraction, kitchen: Kitchen, edits: list[Edit]) -> Scaled:
    """The recipe with these changes made and compiled."""
    before = original.source
    source = Source(before.name, edited(before.text, edits, "exact"), before.stem)
    after = compile(source, kitchen, original.used, assessed=False)
    after = after.with_table(_marked(after.table))
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
    food = {one.place for one in original.recipe.unread}
    actions = tuple(_action(action, at, food) for action in original.recipe.actions)
    return _merged(original.recipe, actions, after.recipe)


def _merged(before: Recipe, actions: tuple[Action, ...], after: Recipe) -> Recipe:
    """The scaled recipe with these sentences; places are those of the old file, by which sentences find their parts."""
    if len(after.uses) != len(before.uses) or len(after.actions) != len(actions):
        return before._replace(actions=actions, header=after.header)
    uses = []
    for old, new in zip(before.uses, after.uses, strict=True):
        clause = new.ingredient.clause._replace(span=old.ingredient.clause.span)
        uses.append(new._replace(ingredient=new.ingredient._replace(clause=clause)))
    spoken = [
        new._replace(parts=old.parts, reads=old.reads, span=old.span)
        for old, new in zip(actions, after.actions, strict=True)
    ]
    log = before.log
    if len(after.log) == len(log):
        places = zip(log, after.log, strict=True)
        log = tuple([new._replace(clause=old.clause, words=old.words) for old, new in places])
    return after._replace(actions=tuple(spoken), uses=tuple(uses), log=log)


def _action(action: Action, edits: Mapping[int, list[Edit]], food: set[int]) -> Action:
    read = {read.clause.inner for read in action.reads}
    parts = tuple(_part(part, edits, read, food) for part in action.parts)
    reads = tuple(_read(read, edits.get(read.clause.inner, [])) for read in action.reads)
    return action._replace(parts=parts, reads=reads)


def _part(part: Part, edits: Mapping[int, list[Edit]], read: set[int], food: set[int]) -> Part:
    """A piece of a sentence; a clause that could not be read keeps its numbers, and says so, and so does one that may
    be food by eye."""
    if not isinstance(part, Clause):
        return part
    amounts = part.inner in food or any(map(_grows, part.items.items))
    if part.inner not in read and amounts:
        return part._replace(text=part.text + NOT_SCALED)
    return _clause(part, edits[part.inner]) if part.inner in edits else part


def _grows(item: Item) -> bool:
    """Whether it would be more in a larger batch: no time and no degrees."""
    return isinstance(item, Product) or (isinstance(item, Quantity) and item.kind in _GROW)


def _clause(clause: Clause, edits: list[Edit]) -> Clause:
    text = edited(clause.text, edits, "shown")
    return clause._replace(text=text, broken=False)


def _read(read: Read, edits: list[Edit]) -> Read:
    """A clause as understood, with its new words; where its name, its measure and its size stand is counted anew."""
    if not edits:
        return read
    clause = _clause(read.clause, edits)
    inner = read.clause.inner

    def now(span: Span) -> Span:
        return Span(*(moved(place - inner, edits, "shown") + inner for place in span))

    if not isinstance(read, Ingredient):
        return read._replace(clause=clause)
    if read.measure_span == NOWHERE:
        return read._replace(clause=clause, name_span=now(read.name_span))
    where = now(read.measure_span)
    text = clause.text[where.start - inner : where.end - inner].rstrip()
    where = Span(where.start, where.start + len(text))
    return read._replace(clause=clause, name_span=now(read.name_span), measure_text=text, measure_span=where)
