"""A recipe for another tin: the factor follows from the two tins, and the tin's words change with the food's.

What a recipe makes stays one cake; it is a larger one.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.scaling._pans import Pan, pan_factor, pan_of, read_pan
from tamis.quantity.numerals import decimal
from tamis.record import NamedTuple
from tamis.scaling.clauses import divisions_whole, recipe_edits
from tamis.scaling.edits import Edit
from tamis.scaling.header import MAKES, header_edits
from tamis.scaling.quantities import Scaling
from tamis.scaling.scale import Scaled, with_edits
from tamis.scaling.words import exchange_words
from tamis.source import NOWHERE, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe
    from tamis.reading.clauses import Tool


class Exchange(NamedTuple):
    """A tin for another: the clauses that name it, by `factor` more or less. `problem` tells why there is none."""

    factor: Fraction = Fraction(1)
    tools: tuple[Tool, ...] = ()
    old: Pan | None = None
    new: Pan | None = None
    by_volume: bool = False
    problem: str = ""


def exchange_for(text: str, recipe: Recipe, kitchen: Kitchen) -> Exchange:
    """What a wish such as `23 cm round` means; `23 cm round for 20 cm square` says which tin of several gives way."""
    wish, *more = exchange_words(kitchen.language).instead.split(text, maxsplit=1)
    which = "".join(more)
    new = read_pan(wish, kitchen)
    if new is None:
        return Exchange(problem=f"“{wish}” is not a tin: expected a size, as “23 cm round”, “20 × 30 cm” or “2 litre”")
    sized = _sized(recipe, kitchen)
    if not sized:
        return Exchange(problem="no tin or pan in the recipe has a size, so there is nothing to exchange")
    chosen = _chosen(sized, which, kitchen)
    if len({pan.text for _, pan in chosen}) != 1:
        names = ", ".join(f"“{wish} for {pan}”" for pan in dict.fromkeys(pan.text for _, pan in sized))
        said = f"no tin of the recipe is “{which}”" if which and not chosen else "the recipe has tins of several sizes"
        return Exchange(problem=f"{said}: say which, as {names}")
    old = chosen[0][1]
    factor = pan_factor(old, new)
    if factor is None:
        return Exchange(problem=_why(old, new))
    by_volume = old.volume is not None and new.volume is not None
    return Exchange(factor, tuple(tool for tool, _ in chosen), old, new, by_volume)


def _sized(recipe: Recipe, kitchen: Kitchen) -> list[tuple[Tool, Pan]]:
    pans = ((tool, pan_of(tool, kitchen)) for action in recipe.actions for tool in action.tools)
    return [(tool, pan) for tool, pan in pans if pan is not None]


def _chosen(sized: list[tuple[Tool, Pan]], which: str, kitchen: Kitchen) -> list[tuple[Tool, Pan]]:
    """The tins that are meant: all, or those of the size (and shape, if said) after `for`."""
    if not which:
        return sized
    wanted = read_pan(which, kitchen)
    if wanted is None:
        return []
    return [
        (tool, pan)
        for tool, pan in sized
        if (pan.sides, pan.holds) == (wanted.sides, wanted.holds) and wanted.shape in ("", pan.shape)
    ]


def _why(old: Pan, new: Pan) -> str:
    if old.area is None or new.area is None:
        return f"the recipe's tin is {old.text} and yours {new.text}: give both by sides, or both by volume"
    return f"round or square? Say it: “{new.size} round”, “{new.size} square” (the recipe's tin is {old.text})"


def exchanged(original: Compiled, exchange: Exchange, kitchen: Kitchen) -> Scaled:
    """The recipe for the other tin."""
    scaling = Scaling(exchange.factor, kitchen)
    scaling = scaling._replace(pieces=divisions_whole(original.recipe, scaling))
    recipe = original.recipe
    keeps = _keeps_yield(exchange, recipe)
    document = original.document
    if keeps:
        document = document._replace(fields=tuple(field for field in document.fields if field.key != MAKES))
    edits = header_edits(document, scaling) + recipe_edits(recipe, scaling) if exchange.factor != 1 else []
    for tool in exchange.tools:
        edits += _tool_edits(tool, exchange, recipe.language)
    edits += _size_made(original, exchange) if keeps else []
    return with_edits(original, exchange.factor, kitchen, edits)


def _keeps_yield(exchange: Exchange, recipe: Recipe) -> bool:
    """Whether the recipe makes as many as before, larger ones: one cake, or one for each tin."""
    made = recipe.header.makes
    if made is None or made.measure is not None:
        return False
    return bool(made.size) or made.amount.lo in (1, exchange.tools[0].number)


def _tool_edits(tool: Tool, exchange: Exchange, language: str) -> list[Edit]:
    """The tin's size and shape in its clause."""
    old, new, text = exchange.old, exchange.new, tool.clause.text
    assert old is not None and new is not None
    if tool.size_span == NOWHERE:
        return []
    start, end = (place - tool.clause.inner for place in tool.size_span)
    edits = [_edit(start, end, new.size)]
    shape = new.shape or old.shape
    words = exchange_words(language)
    word = words.shape.search(text, start)
    if word and shape != old.shape:
        edits.append(_edit(word.start(), word.end(), words.called.get(shape, shape)))
    elif shape and shape != old.shape and shape != "rectangular":
        edits[0] = _edit(start, end, f"{new.size} {words.called[shape]}")
    return [edit.shifted(tool.clause.inner) for edit in edits]


def _edit(start: int, end: int, text: str) -> Edit:
    return Edit(Span(start, end), text, text)


def _size_made(original: Compiled, exchange: Exchange) -> list[Edit]:
    """`makes: 1 cake (20 cm)`, where the size is that of the tin."""
    made = original.recipe.header.makes
    old, new = exchange.old, exchange.new
    if made is None or not made.size or old is None or new is None or old.size not in made.size:
        return []
    at = made.text.find(old.size, made.text.find("("))
    start = original.recipe.header.span(MAKES).start + at
    return [_edit(start, start + len(old.size), new.size)] if at >= 0 else []


def exchange_text(exchange: Exchange) -> str:
    """What was done, in a sentence."""
    old, new = exchange.old, exchange.new
    assert old is not None and new is not None
    shape = f" {old.shape}" if not new.shape and old.shape else ""
    how = "volume" if exchange.by_volume else "area; at the same depth it bakes for the same time"
    return f"{new.text}{shape} for {old.text}: × {decimal(exchange.factor)} by {how}"
