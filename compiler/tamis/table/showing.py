"""How a row's amount reads: as written, metric, and US.

A reader wants the units of the own kitchen, and the cook's own figure wherever it is in them: `480 g
(3 1/2 cups)` is 480 g here and 3½ cups there, whatever a density table says. Only what was not written is
converted. What rests on a figure lent by a neighbour is marked ≈, a sum that rests on the usual weight of
a piece says *about*.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, plus
from tamis.quantity.measure_words import measure_words
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.table.adding import is_mass, scale, scaled
from tamis.table.rows import Row, RowUse
from tamis.table.scaled import countable, scaled_text
from tamis.table.wording import amount_text, measure_text, percent_text, together, written_all
from tamis.table.words import amount_words
from tamis.table.worth import MOST_SPOONS, SMALL_SPOONS, Worth, to_metric, to_us

Turn = Callable[[Measure, Ingredient, Kitchen], Worth]


class Shown(NamedTuple):
    """A row's amount in three ways. All are empty where the cook gave no measure; a percentage is only written."""

    written: str
    metric: str
    us: str


def shown(row: Row, kitchen: Kitchen) -> Shown:
    """How a row's amount reads as written, in metric and in US units."""
    own = as_written(row, kitchen)
    if not row.total:
        return Shown(own, "", "")
    if _only_percent(row):
        weight = _joined(row.total, row, kitchen)
        return Shown(own, weight, _turned(row, to_us, weight, kitchen))
    if (
        _also_percent(row)
        or _of_all_kinds(row)
        or (row.once is not None and not row.also and _is_uneven(row.first, kitchen))
    ):
        return Shown(own, own, own)
    return Shown(own, _turned(row, to_metric, own, kitchen), _turned(row, to_us, own, kitchen))


def as_written(row: Row, kitchen: Kitchen) -> str:
    """How a row's amount reads as written."""
    if not row.total:
        by_eye = dict.fromkeys(use.item.vague for use in row.uses if use.item.vague)
        percents = {percent_text(use.item, kitchen.language) for use in row.uses if not use.item.vague}
        if by_eye and percents <= {""}:
            return " and ".join(by_eye)
        return percents.pop() if len(percents) == 1 else "by percent"
    if _only_percent(row):
        return percent_text(row.first, kitchen.language)
    own = _own_figures(row, kitchen)
    return f"{own}, and by percent" if _also_percent(row) else own


def _only_percent(row: Row) -> bool:
    """Whether a single percentage makes up the row."""
    return row.once is not None and row.first.percent is not None


def _of_all_kinds(row: Row) -> bool:
    """Whether a food is told partly in pieces and partly in measures: no unit says both, and each part is known best
    as it is written."""
    if all(measure.unit for measure in row.total):
        return False
    return any(measure.unit for use in row.uses for measure in use.amount)


def _also_percent(row: Row) -> bool:
    """Whether a percentage comes to the measures."""
    return any([use.item.percent and not use.item.measures for use in row.uses])


def metric_alone(row: Row, amounts: Shown) -> str:
    """The metric amount where no other stands beside it: a metric kitchen has spoons too, "1 tsp (2.3 g)"."""
    few = all(_a_few_spoons(measure) for measure in row.total)
    if not row.total or not few or amounts.written != amounts.us or amounts.metric == amounts.written:
        return amounts.metric
    return amounts.written + _bracket([amounts.metric])


def _a_few_spoons(measure: Measure) -> bool:
    """Whether a cook would count them out, whatever else is on the scale."""
    most = {"tsp": 3 * MOST_SPOONS, "tbsp": MOST_SPOONS}.get(measure.unit)
    return most is not None and measure.amount.hi <= most


def _own_figures(row: Row, kitchen: Kitchen) -> str:
    """The cook's own figures where one measure makes up the row; else the sum."""
    if row.once is None:
        text = _joined(row.total, row, kitchen) + _bracket([_joined(row.also, row, kitchen)] if row.also else [])
        return _hedged(text, row, row.by_analogy, kitchen)
    say = _say_scaled if row.scaled else _say_written
    amount, beside = scaled(row.first, row.once), scale(row.first.also, row.once)
    full, full_beside = _full(row.first, kitchen), _full_beside(row.first, kitchen)
    text = _with_word(_plain_numbers(amount, row, kitchen), full) if full else say(amount, row.name, kitchen)
    also = _with_word(_plain_numbers(beside, row, kitchen), full_beside) if full_beside else say(beside, "", kitchen)
    told = [(measure, word, _say_written if measure is row.first.each else say) for measure, word in _weights(row)]
    asides = [f"{says((measure,), '', kitchen)} {word}".rstrip() for measure, word, says in told]
    size = "" if _by_length(row.first, kitchen) else row.first.size.replace("-", " ")
    hedged = text if full and not row.first.about else _hedged(text, row, False, kitchen)
    return hedged + _bracket([size, also, *asides])


def _by_length(item: Ingredient, kitchen: Kitchen) -> bool:
    """Whether its measure is its length, and no size beside: 30 cm of cinnamon stick."""
    unit = kitchen.units.get(item.measures[0].unit) if item.measures else None
    return unit is not None and unit.kind == "length"


def taken_at(use: RowUse, row: Row, kitchen: Kitchen) -> str:
    """What of a row goes in at one place."""
    full = _full(use.item, kitchen)
    if full and use.amount:
        return _with_word(_plain_numbers(use.amount, row, kitchen), full)
    if row.scaled and use.amount:
        return scaled_text(_on_the_scale(use, row, kitchen), use.item.name, kitchen.units)
    return amount_text(use.amount, use.item, kitchen)


def _on_the_scale(use: RowUse, row: Row, kitchen: Kitchen) -> tuple[Measure, ...]:
    """What goes in at one place; more spoons than a cook counts out are in grams or millilitres where the row is."""
    metric = all(
        [(unit := kitchen.units.get(measure.unit)) is not None and unit.system == "metric" for measure in row.total]
    )
    many = [measure.unit in SMALL_SPOONS and not _a_few_spoons(measure) for measure in use.amount]
    if not metric or not any(many) or any([measure.unit in SMALL_SPOONS for measure in row.total]):
        return use.amount
    pairs = zip(use.amount, many, strict=True)
    return tuple([to_metric(measure, use.item, kitchen).measure if more else measure for measure, more in pairs])


def _full(item: Ingredient, kitchen: Kitchen) -> str:
    """How full a measure is, as the cook said it: `1 heaped tbsp`, `1 small bunch`; "" where nobody said."""
    return _heaped(item.measure_text.partition("(")[0], kitchen)


def _full_beside(item: Ingredient, kitchen: Kitchen) -> str:
    """The same of the measure beside it: `500 g (3 heaped cups)`."""
    return _heaped(item.measure_text.partition("(")[2].replace("(", " "), kitchen)


def _heaped(text: str, kitchen: Kitchen) -> str:
    heaped = amount_words(kitchen.language).heaped
    return next((word for word in text.lower().split() if word in heaped), "")


def _is_uneven(item: Ingredient, kitchen: Kitchen) -> bool:
    return _full(item, kitchen) in amount_words(kitchen.language).uneven


def _plain_numbers(amount: tuple[Measure, ...], row: Row, kitchen: Kitchen) -> str:
    """So many of the cook's own measure: twelve heaped spoons are no quarter of a cup."""
    if row.scaled:
        amount = tuple([measure._replace(amount=Amount(*map(countable, measure.amount))) for measure in amount])
    return _say_written(amount, row.name, kitchen)


def _with_word(text: str, full: str) -> str:
    number, space, unit = text.partition(" ")
    return f"{number} {full} {unit}" if space and full not in text else text


def _say_written(measures: tuple[Measure, ...], name: str, kitchen: Kitchen) -> str:
    return written_all(measures, name, kitchen.language)


def _say_scaled(measures: tuple[Measure, ...], name: str, kitchen: Kitchen) -> str:
    return scaled_text(measures, name, kitchen.units)


def _turned(row: Row, turn: Turn, own: str, kitchen: Kitchen) -> str:
    """The row's amount in other units: pieces stay, with their weight turned where the cook gave one."""
    worths = _worths(row, turn, kitchen)
    measures = [worth.measure for worth in worths]
    changed = measures != list(row.total)
    if row.also and changed and _better(row, turn, kitchen):
        text = _joined([turn(m, row.first, kitchen).measure for m in row.also], row, kitchen)
        return _hedged(text, row, False, kitchen)
    counted = kitchen.units.get(row.total[0].unit) is None
    asides = [(measure, "") for measure in row.also if counted] + (_weights(row) if counted or changed else [])
    alike = all([turn(measure, row.first, kitchen).measure == measure for measure, _ in asides])
    if not changed and alike and (asides or not row.also):
        return own
    text = _joined(measures, row, kitchen)
    # The weight of a piece or of what is in a can stays a weight, whatever cup its goods are sold by.
    plain = row.first._replace(goods=None) if asides else row.first
    said = [_joined([turn(measure, plain, kitchen).measure], row, kitchen) for measure, _ in asides]
    words = [f"{aside} {word}".rstrip() for aside, (_, word) in zip(said, asides, strict=True)]
    return _hedged(text, row, any([worth.by_analogy for worth in worths]), kitchen) + _bracket(words)


def _better(row: Row, turn: Turn, kitchen: Kitchen) -> bool:
    """Whether the cook's second figure says it better: it stands in these units already, or is a weight, which is
    turned exactly, beside a volume."""
    weighed = all([is_mass(measure, kitchen.units) for measure in row.also])
    if weighed and not any([is_mass(measure, kitchen.units) for measure in row.total]):
        return True
    return all([turn(measure, row.first, kitchen).measure == measure for measure in row.also])


def _hedged(text: str, row: Row, by_analogy: bool, kitchen: Kitchen) -> str:
    if by_analogy or row.by_analogy:
        return f"≈ {text}"
    beyond = _beyond(row.first, kitchen) if row.once is not None else ""
    if beyond:
        return f"{beyond} {text}"
    words = amount_words(kitchen.language)
    unsure = not row.also and any([_full(use.item, kitchen) in words.uneven | words.nearly for use in row.uses])
    about = row.estimated or unsure or any([use.item.about for use in row.uses])
    return measure_words(kitchen.language).about.format(measure=text) if about else text


def _beyond(item: Ingredient, kitchen: Kitchen) -> str:
    """*Rather more than*, as the cook said it before the measure; "" for *about* and the like."""
    if not item.about:
        return ""
    before = item.clause.text[: max(0, item.measure_span.start - item.clause.inner)].strip().lower()
    said = [words for words in amount_words(kitchen.language).beyond if f" {before}".endswith(f" {words}")]
    return max(said, key=len, default="")


def _bracket(words: list[str]) -> str:
    said = [word for word in words if word]
    return f" ({', '.join(said)})" if said else ""


def _weights(row: Row) -> list[tuple[Measure, str]]:
    """What the cook said of the weight beside the measure: of a piece, or of the part of one that is taken, and of what
    is left once prepared."""
    weights = []
    alone = row.first.prepared_word if row.first.prepared is None else ""  # 350 g flesh each
    if row.once is not None and row.first.each is not None:
        part = row.total[0].amount if len(row.total) == 1 else None
        if part is not None and part.single and part.hi < 1:
            weights.append((row.first.each.times(part.hi), alone))
        else:
            weights.append((row.first.each, f"{alone} each".strip() if _several(row) else alone))
    if row.once is not None and row.first.prepared is not None:
        weights.append((row.first.prepared.times(row.once), row.first.prepared_word))
    return weights


def _several(row: Row) -> bool:
    return any([measure.amount.hi > 1 for measure in row.total])


def _joined(measures: Iterable[Measure], row: Row, kitchen: Kitchen) -> str:
    """Sums of several kinds in words, pieces first: "1 cup plus 50 g", "½ plus 2 tbsp" of an onion."""
    counted = sorted((_countable(measure, row, kitchen) for measure in measures), key=lambda one: bool(one.unit))
    if row.scaled:
        said = [_say_scaled((measure,), row.name, kitchen) for measure in counted]
    else:
        said = [measure_text(measure, row.name, kitchen.units) for measure in counted]
    return together(said, kitchen.language)


def _countable(measure: Measure, row: Row, kitchen: Kitchen) -> Measure:
    """Pieces that came out of a weight, to the half: nobody takes 2 10/11 onions."""
    if not row.estimated or kitchen.units.get(measure.unit) is not None:
        return measure
    lo, hi = (max(Fraction(round(end * 2), 2), Fraction(1, 2)) for end in measure.amount)
    return Measure(Amount(lo, hi), measure.unit)


def _worths(row: Row, turn: Turn, kitchen: Kitchen) -> list[Worth]:
    """The sum turned; where the food is in several states, each use by its own density."""
    units = kitchen.units
    pieces = any([units.get(measure.unit) is None for use in row.uses for measure in use.amount])
    one = len(row.total) == 1 and pieces and units.get(row.total[0].unit) is not None
    if one or row.parts or len({use.item.states for use in row.uses if use.buys}) == 1:
        return [turn(measure, row.first, kitchen) for measure in row.total]
    sums: list[Worth] = []
    for use in row.uses:
        for measure in use.amount:
            _put(sums, turn(measure, use.item, kitchen), kitchen)
    return sums


def _put(sums: list[Worth], worth: Worth, kitchen: Kitchen) -> None:
    """Add a measure to those of its kind: six cups and some spoons are no hundred spoons."""
    for at, there in enumerate(sums):
        spoons = there.measure.unit in SMALL_SPOONS and worth.measure.unit not in SMALL_SPOONS
        first, second = (worth, there) if spoons else (there, worth)
        added = plus(first.measure, second.measure, kitchen.units)
        if added is not None:
            sums[at] = Worth(added, False, there.by_analogy or worth.by_analogy)
            return
    sums.append(worth)
