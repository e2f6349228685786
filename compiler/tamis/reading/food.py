"""An ingredient clause as a record: measure, name, and all that a comma, `for`, `or` or round brackets add."""

from __future__ import annotations

from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Ingredient, Percent, Role
from tamis.reading.measured import Measured, read_bracket, read_measure
from tamis.reading.nouns import Noun, read_noun
from tamis.reading.phrase import Phrase, measures_of
from tamis.reading.roles import Decision
from tamis.reading.tables import match
from tamis.record import NamedTuple
from tamis.syntax.items import Word


class _Tail(NamedTuple):
    """What follows the name."""

    preparation: str = ""
    purpose: str = ""
    optional: bool = False
    at: Amount | None = None
    alternative: int = 0


def read_ingredient(phrase: Phrase, decision: Decision) -> Ingredient:
    """The record of a clause whose role is ingredient or unmeasured."""
    start, part = _part(phrase, decision.start)
    if decision.share and decision.share.of == "measure":
        start = decision.share.end
    start = phrase.hedged(start)
    measured = decision.measured if decision.measured and not part else read_measure(phrase, start)
    if measured.percent:
        return _percent(phrase, decision, measured)
    noun = decision.noun if decision.noun and not part and decision.measured else read_noun(phrase, measured.end, False)
    noun, percent = _per_kilo(phrase, measured, noun)
    food = _ingredient(phrase, decision, measured, noun, part)
    if percent is None:
        return food
    said = phrase.text(noun.end, phrase.index(",", noun.end))
    return food._replace(percent=percent, preparation=food.preparation.removeprefix(said).removeprefix(", "))


def _ingredient(phrase: Phrase, decision: Decision, measured: Measured, noun: Noun, part: str) -> Ingredient:
    at = noun.end
    while phrase.key(at) == "()":
        measured = read_bracket(phrase, measured, at)
        at += 1
    following = phrase.quantity(at + 1) if phrase.key(at) == "plus" else None
    if following and following.kind in ("mass", "volume"):
        measured = measured._replace(measures=(*measured.measures, *measures_of(phrase, following)))
        at += 2
    tail = _tail(phrase, at)
    found = noun.goods
    name = phrase.text(noun.start, noun.end) or phrase.text(measured.start, measured.end)
    measures = measured.measures
    if found and found.piece_word and measures and not measures[0].unit:
        measures = (Measure(measures[0].amount, found.piece_word), *measures[1:])
    preparation = (
        f"{measured.note}, {tail.preparation}"
        if measured.note and tail.preparation
        else (measured.note or tail.preparation)
    )
    role: Role = "unmeasured" if decision.role == "unmeasured" else "ingredient"
    return Ingredient(
        clause=phrase.clause,
        name=name,
        name_span=phrase.span(noun.start, noun.end),
        goods=found.goods if found else None,
        states=found.states if found else (),
        piece_word=found.piece_word if found else "",
        measures=measures,
        measure_text=phrase.text(measured.start, measured.end),
        about=_is_about(phrase, measured.start),
        also=measured.also,
        each=measured.each,
        prepared=measured.prepared,
        prepared_word=measured.prepared_word,
        size=measured.size,
        share=decision.share.share if decision.share else None,
        part=part,
        preposition=decision.preposition,
        preparation=preparation,
        purpose=tail.purpose,
        optional=tail.optional,
        alternatives=_alternatives(phrase, tail.alternative) if tail.alternative else (),
        at=tail.at,
        role=role,
    )


def _is_about(phrase: Phrase, start: int) -> bool:
    """Whether a word right before the measure says that it is not exact."""
    return start > 0 and phrase.key(start - 1) in ("about", "around", "roughly", "approximately", "nearly", "almost")


def _part(phrase: Phrase, start: int) -> tuple[int, str]:
    """`juice of`, `zest and juice of` …: what is taken off the food, and where the food begins."""
    found = match(phrase.tables.openers, phrase.keys, start)
    if not found or found[0] != "ingredient":
        return start, ""
    words = [word for word in phrase.keys[start : start + found[1]] if word not in ("the", "of")]
    after = start + found[1]
    return after + (phrase.key(after) == "the"), " ".join(words)


def _percent(phrase: Phrase, decision: Decision, measured: Measured) -> Ingredient:
    """`72 % water` is of the flour; `2 % of its weight in fine salt` of what it names."""
    amount = measured.percent
    assert amount is not None
    weight = phrase.index("weight", measured.end)
    of, start = "flour", measured.end
    if weight < phrase.end:
        of = phrase.text(measured.end, weight).removesuffix("'s").removesuffix("’s")
        of = of.removeprefix("the ")
        start = weight + (2 if phrase.key(weight + 1) == "in" else 1)
    noun = read_noun(phrase, start, False)
    plain = _ingredient(phrase, decision._replace(measured=None), measured._replace(end=start), noun, "")
    return plain._replace(percent=Percent(amount, of), measure_text=phrase.text(measured.start, start))


def _per_kilo(phrase: Phrase, measured: Measured, noun: Noun) -> tuple[Noun, Percent | None]:
    """`18 g salt per kg of the duck`: the name ends before `per`, the weight is that of what follows."""
    per = noun.end
    if phrase.key(per) != "per" or phrase.key(per + 1) != "kg" or not measured.measures:
        return noun, None
    of = phrase.text(per + 3, phrase.index(",", per)) if phrase.key(per + 2) == "of" else "its"
    amount = measured.measures[0].amount
    return noun, Percent(amount, of.removeprefix("the "), measured.measures[0])


def _tail(phrase: Phrase, start: int) -> _Tail:
    """What follows the name: `at` a temperature, `for` a purpose, `or` something else, and the parts after commas."""
    tail = _Tail()
    at = start
    if at >= phrase.end:
        return tail
    key = phrase.key(at)
    if key != ",":
        degrees = phrase.quantity(at + 1)
        if key == "at" and degrees and degrees.kind == "temperature":
            tail = tail._replace(at=degrees.amount)
        elif key == "or":
            tail = tail._replace(alternative=at + 1)
        elif match(phrase.tables.purposes, phrase.keys, at):
            tail = tail._replace(purpose=phrase.text(at, phrase.index(",", at)))
        else:
            tail = tail._replace(preparation=phrase.text(at, phrase.index(",", at)))
    comma = phrase.index(",", at)
    while comma < phrase.end:
        following = phrase.index(",", comma + 1)
        tail = _after_comma(phrase, tail, comma + 1, following)
        comma = following
    return tail


def _after_comma(phrase: Phrase, tail: _Tail, start: int, end: int) -> _Tail:
    """One part after a comma: optional, a purpose, an alternative, or how it is prepared."""
    text = phrase.text(start, end)
    key = phrase.key(start)
    if key in phrase.tables.optional:
        return tail._replace(optional=True)
    if key == "or" and not tail.alternative and not match(phrase.tables.purposes, phrase.keys, start + 1):
        return tail._replace(alternative=start + 1)
    if match(phrase.tables.purposes, phrase.keys, start):
        return tail._replace(purpose=text)
    return tail._replace(preparation=f"{tail.preparation}, {text}" if tail.preparation else text)


def _alternatives(phrase: Phrase, start: int) -> tuple[Ingredient, ...]:
    """What may stand in for it: `or 5 g instant yeast`."""
    if start >= phrase.end:
        return ()
    measured = read_measure(phrase, phrase.hedged(start))
    noun = read_noun(phrase, measured.end, False)
    if noun.end == noun.start or not isinstance(phrase.items[noun.start], Word):
        return ()
    found = noun.goods
    other = Ingredient(
        phrase.clause,
        phrase.text(noun.start, noun.end),
        phrase.span(noun.start, noun.end),
        found.goods if found else None,
        found.states if found else (),
        found.piece_word if found else "",
        measured.measures,
        phrase.text(measured.start, measured.end),
        also=measured.also,
        each=measured.each,
    )
    more = _alternatives(phrase, noun.end + 1) if phrase.key(noun.end) == "or" else ()
    return (other, *more)
