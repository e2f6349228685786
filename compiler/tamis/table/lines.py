"""What each line of the ingredient table says, whoever prints it.

Terminal, Markdown and page set the same words in different ways; the words are made here.
"""

from __future__ import annotations

from tamis.kitchen.house import Kitchen
from tamis.quantity.measure_words import measure_words
from tamis.record import NamedTuple
from tamis.table.rows import Row, RowUse, Supplied, Table
from tamis.table.showing import Shown, as_written, metric_alone, shown, taken_at
from tamis.table.wording import alternative_text, percent_text
from tamis.table.words import amount_words


class Line(NamedTuple):
    """A row in words. `metric` and `us` are empty where they would repeat what `amount` says already;
    `alone` are the metric and the US amount where no other is shown."""

    amount: str
    metric: str
    us: str
    name: str
    where: str
    alone: tuple[str, str] = ("", "")

    @property
    def cells(self) -> tuple[str, str, str, str]:
        """The four columns of a table: as written, metric, US, name."""
        return self.amount, self.metric, self.us, self.name


def lines(rows: tuple[Row, ...], table: Table, kitchen: Kitchen) -> list[Line]:
    """The rows of the sum, or what is optional, in words."""
    return [_line(row, table, kitchen) for row in rows]


def apart(table: Table, kitchen: Kitchen, alone: bool = False) -> list[str]:
    """What counts in no sum, a line each: "plus rye flour for dusting", "salt to taste", "brown stock, …".

    `alone` is without the *plus*, which refers to the table.
    """
    listed = {row.id or row.name: row for row in table.rows}
    said = []
    for row in (*table.purposes, *table.unmeasured):
        same = listed.get(row.id or row.name)
        more = "plus " if same and _alike(row, same) and not alone else ""
        said.append(more + _purpose_line(row, kitchen))
    return [*said, *map(supplied_text, table.supplied), *(f"not understood: {text}" for text in table.unread)]


def _alike(row: Row, listed: Row) -> bool:
    """Whether it is more of what is listed: so many grams of dried breadcrumbs are no more of the fresh ones."""
    own, states = set(row.first.states), {use.item.states for use in listed.uses}
    return not row.total or not own or () in states or any(not own.isdisjoint(said) for said in states)


def supplied_text(dish: Supplied) -> str:
    """What comes from another recipe: "500 ml of the brown stock (a recipe of its own)"."""
    return f"{dish.text or dish.name} (a recipe of its own)"


def _line(row: Row, table: Table, kitchen: Kitchen) -> Line:
    amounts = shown(row, kitchen)
    metric, us = (_unless_said(text, amounts, kitchen.language) for text in (amounts.metric, amounts.us))
    where, alone = where_text(row, table, kitchen), (metric_alone(row, amounts), amounts.us)
    return Line(amounts.written, metric, us, name_text(row, kitchen), where, alone)


def _unless_said(text: str, amounts: Shown, language: str) -> str:
    """Nothing where the cook's own words, in or before the parentheses, say the same."""
    whole, aside, inner = amounts.written.removesuffix(")").partition(" (")
    about = measure_words(language).about.format(measure=whole)
    same = text in (amounts.written, whole, about) or (aside and text in inner.split(", "))
    return "" if same else text


def name_text(row: Row, kitchen: Kitchen) -> str:
    """The food with what holds for all its uses: "water, divided", "soft butter", "lemon, zest and juice"."""
    first = row.first
    words = [row.name]
    words += _instead(row, kitchen)
    if row.parts:
        words.append(" and ".join(row.parts))
    if first.preparation and row.note:
        words.append(first.preparation)
    if row.divided and not row.parts:
        words.append("divided")
    return ", ".join(words)


def _instead(row: Row, kitchen: Kitchen) -> list[str]:
    """What may be taken instead: of all of it, or of the part that the recipe says it of."""
    bought = [use for use in row.uses if use.buys]
    said = []
    for use in bought:
        part = taken_at(use, row, kitchen) if len(bought) > 1 else ""
        for other in use.item.alternatives:
            text = f"or {alternative_text(other, kitchen)}"
            everywhere = all(_offers(place, other.name) for place in bought)
            said.append(f"{text} for {part} of it" if part and (other.measures or not everywhere) else text)
    return list(dict.fromkeys(said))


def _offers(use: RowUse, name: str) -> bool:
    """Whether something may be taken instead at a place."""
    return any(other.name == name for other in use.item.alternatives)


def where_text(row: Row, table: Table, kitchen: Kitchen) -> str:
    """Where a divided food goes: "Scald 300 g; Dough 210 g"; empty for one place and one preparation."""
    if len(row.uses) == 1 or (not row.divided and len({use.note for use in row.uses}) == 1):
        return ""
    same = all(use.item.states == row.first.states for use in row.uses)
    places: dict[int, list[str]] = {}
    for use in row.uses:
        amount = taken_at(use, row, kitchen)
        if use.amount and use.item.percent:
            amount += f" ({percent_text(use.item, kitchen.language, of_flour=False)})"
        words = f"{use.item.part} of {amount}" if use.item.part else amount
        note = "" if row.note else (use.item.preparation if same else use.note)
        places.setdefault(use.component, []).append(f"{words}, {note}" if note else words)
    named = len(table.components) > 1
    said = [(table.components[at] + " " if named else "") + " + ".join(each) for at, each in places.items()]
    return "; ".join(said)


def _purpose_line(row: Row, kitchen: Kitchen) -> str:
    by_eye = not row.total and not amount_words(kitchen.language).needed.isdisjoint(row.purposes)
    amount = "" if by_eye else as_written(row, kitchen)  # no "plenty water as needed"
    line = " ".join(word for word in (amount, row.name, " and ".join(row.purposes)) if word)
    return f"{line}, {row.first.preparation}" if row.first.preparation else line
