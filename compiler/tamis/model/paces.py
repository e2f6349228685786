"""At which pace a line is worked: each piece by itself, one food after another, or a little at a time.

No bracket says it (*dip each in the egg*, *add the flour gradually*, *one by one*), and it changes nothing but how long
the cook's hands are busy.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.many import Many, many_of, small_things
from tamis.model.words import model_words
from tamis.reading.clauses import Manner, Time
from tamis.reading.plain import plain_of
from tamis.reading.prose import commands, prose_words
from tamis.record import NamedTuple
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.line import Line
    from tamis.model.recipe import Work
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient, Reference, VerbUse
    from tamis.reading.plain import Plain

GRADUAL, ONE_MORE, BRIEF, LONG = 150, 45, 60, 180
"""Seconds at least for what goes in a little at a time and for each egg that is beaten in by itself; at most for what
is done briefly, though it is so long a work else; common practice."""

_BY_TURNS = 3
"""So many shares in one line go in one after another."""

EACH, AND_THEN = 10, 3
"""Seconds at least for what is done to each of many pieces, and for what else is done to it in the same line; common
practice."""


class Pace(NamedTuple):
    """How a line is worked. `whole`: it is done from its first word with one piece after another; `parts` are so many
    additions. `many`: its words tell of things in the plural that are worked, or newly made, be it of each piece: *into
    small petals*."""

    each: bool = False
    singly: bool = False
    gradual: bool = False
    brief: bool = False
    few: bool = False
    whole: bool = False
    parts: int = 0
    many: Many = ""


AT_ONCE = Pace()
_A_LITTLE = Pace(gradual=True)
"""*1 tbsp at a time*."""


def pace_of(act: Line) -> Pace:
    """What the plain words of a line say of it."""
    kitchen = act.walker.flow.kitchen
    pacing = model_words(kitchen.language).pacing
    texts = [plain for _, plain in act.labour.texts(kitchen)]
    manners = act.labour.kinds.get(Manner, ())
    texts += [plain_of(read.clause.text, kitchen) for read in manners]
    said = [plain.ask(_said) for plain in texts if not pacing.isdisjoint(plain.said)]
    said += [_A_LITTLE for read in manners if read.measure and kitchen.units.get(read.measure.unit) is not None]
    parts, many = _additions(act), many_of(act)
    if all([pace is AT_ONCE for pace in said]):
        return Pace(parts=parts, many=many) if parts or many else AT_ONCE
    first = act.read.parts[0]
    opens = isinstance(first, Text) and plain_of(first.text, kitchen).ask(_opens_singly)
    each, singly, gradual, brief, few = (any([bool(pace[at]) for pace in said]) for at in range(5))
    return Pace(each, singly, gradual, brief, few, opens, parts, many)


def _additions(act: Line) -> int:
    """In how many additions a line puts in its food, as it says or as the shares that it names by turns: *a third of
    [the flour], half of [the milk], another third …*."""
    labour = act.labour
    told = sum([int(repeat.number) for repeat in labour.repeats if repeat.kind == "additions"])
    foods: list[Ingredient | Reference] = [*labour.foods, *labour.references]
    shares = len([food for food in foods if food.share is not None])
    return told or (shares if shares >= _BY_TURNS else 0)


def _said(plain: Plain) -> Pace:
    words, prose = model_words(plain.kitchen.language), prose_words(plain.kitchen.language)
    said = plain.said
    verb = plain.kitchen.verbs.get  # *fold each*, but not *with each fold*
    one = any(
        word in prose.each
        and prose.no_piece.isdisjoint(said[at + 1 : at + 2])
        and prose.no_piece.isdisjoint([before for before in said[max(0, at - 1) : at] if verb(before) is None])
        for at, word in enumerate(said)
    )
    singly, gradual, brief, few = (
        any([word in known and plain.phrase(known, at) > 0 for at, word in enumerate(said)])
        for known in (words.singly, words.gradual, words.brief, words.few)
    )
    brief = brief and not gradual  # a little at a time is not a little
    return Pace(one, singly, gradual, brief, few) if one or singly or gradual or brief or few else AT_ONCE


def _opens_singly(plain: Plain) -> bool:
    """Whether *one by one* stands before the first verb, or right behind the only one."""
    verbs = plain.ask(commands)
    singly = model_words(plain.kitchen.language).singly
    before = verbs[0].first if verbs else len(plain)
    return any(plain.phrase(singly, at) for at in range(before))


def in_pieces(act: Line, batch: Batch | None, pace: Pace) -> int:
    """How many pieces a line works by themselves: where its words or the lines before part them; what is counted in the
    line itself goes in one by one, and not the pieces in hand."""
    parted = pace.each or (batch is not None and batch.pieces is not None)
    if not parted and (pace.singly or pace.few or pace.many):
        own = any(_number(food) > 1 for food in act.labour.foods)  # a number told, what a line makes tells no more
        makes = act.walker.flow.reading.header.makes  # … but what the recipe makes in the end does
        known = not act.walker.flow.tells_number or (pace.many in ("made", "small") and makes and makes.noun)
        parted = not own and (pace.singly or pace.few or bool(known))
    return counted(act, batch) if parted else 0


def counted(act: Line, batch: Batch | None) -> int:
    """How many pieces lie in hand: those that it was cut into (before this line, if that cuts each of them), else those
    of the one food in it that was counted, or as many as the recipe makes."""
    if batch is None:
        return 0
    pieces = batch.pieces or act.pieces_before
    if pieces:
        return int(pieces[0].hi)
    makes = act.walker.flow.reading.header.makes
    made = int(makes.amount.hi) if makes is not None and makes.noun else 0
    uses = act.walker.flow.uses
    items = [uses[food.use].ingredient for food in batch.foods if food.use >= 0]
    numbers = [number for item in items if (number := _number(item)) > 1]
    return max(made, *numbers) if len(numbers) == 1 else made


def _number(item: Ingredient) -> int:
    measure: Measure | None = item.measures[0] if item.measures else None
    if measure is None or measure.unit not in ("", item.piece_word) or (item.goods is not None and item.goods.liquid):
        return 0
    return int(measure.amount.hi)


def paced(act: Line, work: Work, pace: Pace, pieces: int) -> Work:
    """The work of a line at its pace: an egg after another, the milk by spoonfuls, a nut by itself."""
    number = max(map(_number, act.labour.foods), default=0)
    if work.wait is not None and number > 1 and _after_each(act):
        return work._replace(wait=work.wait.times(number))
    if pace.brief:
        uses = [use for use in act.labour.verbs if work.wait is None or use is not act.labour.time_verb]
        less = sum(use.verb.takes - BRIEF for use in uses if use.verb.takes >= LONG and not use.verb.per_piece)
        work = work._replace(handling=work.handling - less)
        if work.wait is not None and work.given == "verb" and _is_long(act.labour.time_verb):
            work = work._replace(wait=work.wait._replace(lo=Fraction(BRIEF), hi=Fraction(BRIEF)))
    if pace.many == "small" and work.handling:
        work = work._replace(handling=max(work.handling, small_things(act, pieces)))
    each = pieces * (EACH + AND_THEN * (len(act.labour.verbs) - 1)) if pace.each and work.handling else 0
    adds = [use.verb.takes for use in act.labour.verbs if use.verb.adds]
    if not adds or not (pace.singly or pace.gradual or pace.parts):
        return work._replace(handling=max(work.handling, each))
    least = ONE_MORE * (number if pace.singly and number > 1 else pace.parts) or GRADUAL
    if work.wait is not None and work.given == "verb":
        lo = max(work.wait.lo, Fraction(least - work.handling))
        return work._replace(wait=work.wait._replace(lo=lo, hi=max(work.wait.hi or lo, lo)))
    more = max(0, least - max(adds)) if work.wait is None else 0
    return work._replace(handling=max(work.handling + more, each))


def _is_long(use: VerbUse | None) -> bool:
    """Whether it is long work of the hands, and no cooking."""
    return use is not None and max(use.verb.takes, use.verb.estimate) >= LONG and not use.verb.heat


def _after_each(act: Line) -> bool:
    """`beating for 1 min after each`."""
    time, each = act.labour.time, prose_words(act.walker.flow.kitchen.language).each
    return isinstance(time, Time) and any(
        tending.clause is time.clause and tending.clause.text.lower().split()[-1:] in [[word] for word in each]
        for tending in act.labour.tending
    )


def one_after_another(act: Line, batch: Batch | None, pace: Pace) -> int:
    """How often a line is done that takes one piece after another, and cooks it for so long; 0 where none does."""
    timed = isinstance(act.labour.time, Time) and act.labour.time_verb is not None and act.labour.time_verb.verb.cooks
    return counted(act, batch) if pace.whole and timed else 0


def cooked_at_a_time(act: Line) -> Fraction | None:
    """How many pieces a line cooks for its time: `fry [two at a time] [for 3 min]`, and not what is added so."""
    time, use = act.labour.time, act.labour.time_verb
    if not isinstance(time, Time) or use is None or not use.verb.cooks:
        return None
    verbs = sorted(act.labour.verbs, key=lambda use: use.span.start)
    for event in act.read.events:
        if isinstance(event, Manner) and event.measure is not None and not event.measure.unit:
            before = [one for one in verbs if one.span.start < event.clause.span.start]
            if before and before[-1] is use:
                return event.measure.amount.hi
    return None
