"""What was understood, for a terminal: a row a line of the recipe, and under it what goes in, lies there and leaves.

Only what a line says or does has a word; labels stand in one column, so that an eye finds *in* and *now* going down.
"""

from __future__ import annotations

from tamis.quantity.display import amount, grams
from tamis.quantity.nouns import nouns
from tamis.quantity.wrapping import series, wrap
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.flow.records import After, Coming, LeavesKind, Leaving, Now, Row
    from tamis.model.mass import Mass
    from tamis.model.recipe import Recipe

_INDENT = 7
_LABEL = 11
_LEAVES: dict[LeavesKind, str] = {
    "leaves": "kept",
    "out": "lifted out",
    "away": "discarded",
    "kept": "set aside",
    "done": "done",
}


def flow_text(recipe: Recipe, rows: Sequence[Row], width: int = 80, why: bool = False) -> str:
    """All rows under the names of their components; with the reasons, if `why`."""
    lines = [*wrap(recipe.title or recipe.stem, width)]
    component = -1
    for row in rows:
        if row.component != component:
            component = row.component
            lines += ["", *_heading(recipe, component, width)]
        lines += _row(row, recipe.language, width, why)
    return "\n".join(lines) + "\n"


def _heading(recipe: Recipe, component: int, width: int) -> list[str]:
    name = recipe.components[component].name
    return wrap(name, width) if name != recipe.title else []


def _row(row: Row, language: str, width: int, why: bool) -> list[str]:
    """One row, and what it says."""
    place = f"{row.line:>4}"
    lines = wrap(row.title, width, rest=" " * _INDENT, first=f"{place}  ")
    for label, text in (*_said(row, language), *(_reasons(row) if why else ())):
        indent = " " * _INDENT
        lines += wrap(text, width, rest=indent + " " * _LABEL, first=f"{indent}{label:<{_LABEL}}")
    return lines


def _said(row: Row, language: str) -> Iterator[tuple[str, str]]:
    for label, those in (
        ("in", [coming for coming in row.goes_in if not coming.served]),
        ("served", [coming for coming in row.goes_in if coming.served]),
        ("with", row.beside),
    ):
        if those:
            yield label, "; ".join(map(_coming, those))
    if row.now:
        yield "now", _batch(row.now, language)
    if row.where:
        yield "where", ", ".join(row.where)
    if row.time:
        yield "time", "; ".join(row.time)
    after = _after([each for each in row.after if not _goes_without_saying(each, row)])
    if after:
        yield "after", after
    if row.meanwhile >= 0:
        yield "during", f"the wait of line {row.meanwhile_line}"
    out = [leaving for leaving in row.leaves if leaving.kind == "out"]
    if out:
        yield _LEAVES["out"], "; ".join(_batch(leaving, language) for leaving in out)
    for leaving in row.leaves:
        if leaving.kind == "out":
            continue
        yield _LEAVES[leaving.kind], _batch(leaving, language)


def _goes_without_saying(after: After, row: Row) -> bool:
    """Whether it only comes after the line before it."""
    return after.rule == "same-batch" and after.action == row.action - 1


def _coming(coming: Coming) -> str:
    weight = _weight(coming.mass, coming.went_in) if coming.mass and coming.weighed else ""
    return f"{coming.words} ({weight})" if weight else coming.words


def _batch(batch: Now | Leaving, language: str) -> str:
    """Its name, how much it is, and its pieces."""
    known = batch.mass is not None and (not batch.measure or batch.mass.known)
    weight = _weight(batch.mass, batch.went_in) if batch.mass and known else ""
    measure = batch.measure if batch.measure != weight else ""
    said = [batch.name, f"{measure} ({weight})" if measure and weight else measure or weight]
    if batch.pieces:
        number, noun = batch.pieces
        rules = nouns(language)
        one = rules.singular(noun)
        said.append(f"{amount(number)} {rules.plural(one) if number.hi > 1 and noun else one}".rstrip())
    return ", ".join(filter(None, said))


def _after(waits: Sequence[After]) -> str:
    """What is waited for: `chicken, line 16; oven hot, line 12; juices, once line 31 has begun`."""
    said = []
    for after in waits:
        what = f"{after.what}, " if after.what else ""
        said.append(f"{what}once line {after.line} has begun" if after.from_start else f"{what}line {after.line}")
    return "; ".join(said)


def _weight(mass: Mass, went_in: bool) -> str:
    """`480 g`, `90 g–120 g`, and what of it has no known weight; "" where nothing of it is weighed by anybody. Of what
    has been cooked it is what went in."""
    ends = dict.fromkeys((grams(mass.lo), grams(mass.hi))) if mass.hi else ()
    known = "–".join(ends)
    if known and went_in:
        known = f"from {known}"
    if not mass.unknown:
        return known
    return f"{known}, {series(mass.unknown)} not weighed" if known else "not weighed"


def _reasons(row: Row) -> Iterator[tuple[str, str]]:
    """Why a row is so, a line a reason."""
    for at, reason in enumerate(row.reasons):
        yield ("" if at else "why"), f"{reason.words}: {reason.text}" if reason.words else reason.text
