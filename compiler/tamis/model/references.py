"""References: what was made, opened or set out before comes back, whole or in part, and joins or takes over."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.at_work import in_hand, is_tool, lies_in_medium
from tamis.model.batch import Batch, answering
from tamis.model.described import unborne
from tamis.model.effects import Refers, Why
from tamis.model.foods import take_ahead, take_other_part
from tamis.model.line import GOES_IN
from tamis.model.lookup import look_up
from tamis.model.mass import times
from tamis.model.meaning import Meaning
from tamis.model.one_of import one_of_several, one_of_the_whole
from tamis.model.reasons import refers, why_meant
from tamis.model.recipe import Taking
from tamis.model.rest_of import goes_apart, is_picked, rest_called
from tamis.model.shares import back_to_the_rest, part_of, rest_in_vessel
from tamis.model.words import model_words, plain
from tamis.model.worked_mass import take_off
from tamis.reading.clause import clause_words
from tamis.reading.clauses import Manner, Reference, Share
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.line import Line
    from tamis.reading.clauses import Tool


TAKES_OVER, SAME_BATCH = Why("takes-over"), Why("same-batch")


def refer(act: Line, reference: Reference) -> None:
    """Something made, opened or set out before."""
    if _lifted_too(act, reference) or lies_in_medium(act, reference):
        return
    reference = back_to_the_rest(act, one_of_several(act.walker, reference))
    meaning = look_up(act.walker, reference) or in_hand(act, reference)
    meaning = _not_itself(act, reference, meaning)
    measured = reference.share is not None and reference.share.kind == "measure"
    if measured or (meaning is not None and meaning.present and reference.share is None):
        hint = _belongs_inside(act, reference)
        if hint:
            message = "this would go in, where the words before say that it is kept"
            act.say("clause-role", reference.clause, message, hint)
            return
    if _is_part(act, reference, meaning):
        return
    if meaning is None:
        _of_nothing_made(act, reference)
        return
    reference = one_of_the_whole(act.walker, reference, meaning)
    act.walker.emit(refers(meaning), why_meant(act.walker, meaning))
    if is_tool(act, reference, meaning):
        hold_again(act, act.tools[-1])
        return
    assert meaning.batch is not None
    if meaning.also:
        from tamis.model.reference_faults import ambiguous

        ambiguous(act, reference, meaning)
    elif meaning.unborne:
        from tamis.model.reference_faults import guessed

        guessed(act, reference, meaning.batch, meaning.unborne)
    removes = act.verb is not None and act.verb.removes and not reference.preposition
    if meaning.present:
        from tamis.model.lifted import lift_out

        if not lift_out(act, reference, meaning.batch):
            _of_the_present(act, reference, meaning, removes)
    else:
        _of_another(act, reference, meaning.batch, removes)
    act.fresh = False


def _not_itself(act: Line, reference: Reference, meaning: Meaning | None) -> Meaning | None:
    """*Pour in [the broth]*: what is in hand does not go into itself because something in it is of that kind."""
    if meaning is None or not meaning.present or meaning.rule != "kind" or act.verb is None or not act.verb.adds:
        return meaning
    if reference.preposition or reference.share is not None:
        return meaning
    other = rest_called(act.walker, meaning.words)
    if other is None or other is act.walker.present:
        return meaning
    return Meaning(other, rule="left-behind", words=meaning.words)


def hold_again(act: Line, tool: Tool) -> None:
    """Equipment in which the rest of what is in hand lies: it goes back to that."""
    rest = rest_in_vessel(act, tool)
    if rest is not None and rest.product is not None:
        name = act.walker.flow.products[rest.product].name
        _take(act, Reference(tool.clause, name, tool.clause.span, Share("rest"), tool.preposition), rest)
        act.joined = True


def _lifted_too(act: Line, reference: Reference) -> bool:
    """Whether it goes with what the line lifts out."""
    if act.parting is None:
        return False
    from tamis.model.lifted import lift_too

    return lift_too(act, reference)


def _of_nothing_made(act: Line, reference: Reference) -> None:
    """A place in the work, what food lies in, food that is weighed further on; or a name that is not known."""
    if _is_manner(act, reference):
        act.walker.emit(Manner(reference.clause))
    elif not (
        lies_in_medium(act, reference, anywhere=True)
        or take_ahead(act, reference)
        or _of_food(act, reference)
        or take_other_part(act, reference)
    ):
        from tamis.model.reference_faults import unknown

        unknown(act, reference, _belongs_inside(act, reference))


def _is_part(act: Line, reference: Reference, meaning: Meaning | None) -> bool:
    """Whether a name by which nothing here is called is that of a part which the food that comes next has by nature, or
    that in hand, before anything elsewhere."""
    flow = act.walker.flow
    words = plain(reference.name, flow.kitchen.language)
    parts = model_words(flow.kitchen.language).part_words
    if not words or words[-1] not in parts or _is_here(act, reference, words, meaning):
        return False
    from tamis.model.own_parts import is_of_next

    if is_of_next(act, reference):
        take_off(act, reference.clause.span.start, None)
        act.walker.emit(Manner(reference.clause))
        return True
    return meaning is not None and _of_food(act, reference, here=True)


def _is_here(act: Line, reference: Reference, words: tuple[str, ...], meaning: Meaning | None) -> bool:
    """Whether it is in hand or of this component, or has this very name; or equipment that something is put on to: the
    stones of cherries are none."""
    if meaning is None or meaning.batch is None:
        return meaning is not None and bool(reference.preposition)
    if meaning.rule in ("in-hand", "only-open"):  # *the shells* would be any that were made
        return False
    product = meaning.batch.product
    here = product is not None and act.walker.flow.products[product].component == act.walker.component
    return meaning.present or here or meaning.batch.is_named(words)


def _of_food(act: Line, reference: Reference, here: bool = False) -> bool:
    """A part that some food has by nature: it is gone, is the food itself, or a batch by itself; only of food that is
    `here`, if that is asked."""
    from tamis.model.own_parts import OWN_PART, own_part, part_off, went_with_it

    own = own_part(act, reference)
    if own is None and not here:
        gone = went_with_it(act, reference)
        if gone >= 0:
            act.walker.emit(Refers(gone), OWN_PART)
        return gone >= 0
    if own is None or (here and not own.here):
        return False
    walker, source = act.walker, own.source
    if not reference.preposition:
        take_off(act, reference.clause.span.start, own)
    words = plain(reference.name, walker.flow.kitchen.language)
    strange = unborne(walker, words[:-1], source) if own.becomes != "gone" else ()
    if strange:
        from tamis.model.reference_faults import guessed

        guessed(act, reference, source, strange)
    walker.emit(Refers(source.number), OWN_PART)
    if source.last is not None:  # beside the rest of the bird, its fat is there when that begins
        act.wait_for(source.last, GOES_IN, source.early or source.last == act.beside)
    there: Batch | None = source
    if own.becomes == "kept":
        there = part_off(act, reference, own, source if own.here or not own.goods else _bring(act, reference, source))
        act.joined = act.joined and walker.present is not None
    elif own.becomes == "left":
        walker.name(source, words)
    if there is not None and there is not walker.present and own.becomes != "gone":
        _of_another(act, reference, there, reference.share is not None)
    act.fresh = False
    return True


def _bring(act: Line, reference: Reference, source: Batch) -> Batch:
    """What was made elsewhere comes and lies open here, beside what is in hand."""
    walker, before = act.walker, act.walker.present
    walker.turn(None, TAKES_OVER)
    _take(act, reference._replace(share=None, preposition=""), source)
    brought = walker.present
    assert brought is not None
    brought.last = source.last
    walker.put_aside(brought, "left", "", reference.clause.span, TAKES_OVER)
    walker.turn(before, TAKES_OVER)
    return brought


def _is_manner(act: Line, reference: Reference) -> bool:
    """`with your fingers`, `into the middle`: of the cook or the work, where nothing that was made is called so."""
    if reference.share is not None or not reference.preposition:
        return False
    return clause_words(act.walker.flow.kitchen.language).tells_manner(reference.name.lower().rpartition(" ")[2])


def _comes_back(act: Line, reference: Reference) -> bool:
    """*Remove [the chicken] from the marinade*: where it is named again it is not thrown away."""
    flow = act.walker.flow
    keys = answering(plain(reference.name, flow.kitchen.language), flow.kitchen)
    return act.verb is not None and act.verb.lifts and flow.is_named_after(keys, reference.clause.span.start)


def _of_the_present(act: Line, reference: Reference, meaning: Meaning, removes: bool) -> None:
    batch = meaning.batch
    assert batch is not None
    if removes:
        found = _lose_part(act, batch, meaning.words or plain(reference.name, act.walker.flow.kitchen.language))
        if not found and reference.share is None and batch.foods and not _is_only_part(act, reference, batch):
            act.walker.discard(batch, reference.clause.span)
        return
    if reference.share is None or reference.share.kind in ("all", "rest"):
        return
    act.link(batch, SAME_BATCH)
    batch.last = batch.last if batch.last is not None else act.number
    if meaning.rule == "own-name":  # what is left of it is called so, too
        act.walker.name(batch, meaning.words)
    act.walker.put_aside(batch, "share", reference.name, reference.clause.span)
    _take(act, reference, batch)


def _is_only_part(act: Line, reference: Reference, batch: Batch) -> bool:
    """Whether a name by which the whole batch is not called is that of a part of its food: the rest stays."""
    words = plain(reference.name, act.walker.flow.kitchen.language)
    part = bool(words) and words[-1] in model_words(act.walker.flow.kitchen.language).part_words
    return part and words not in batch.names.own()


def _lose_part(act: Line, batch: Batch, words: tuple[str, ...]) -> bool:
    """What is thrown away is a food of the batch, or what went in under that name if something else is there too: the
    bones out of the stock."""
    if words in batch.names.own():
        return False
    if not batch.is_named(words) and act.walker.lose(batch, words):
        return True
    flow = act.walker.flow
    went_in = [(flow.products[at], plain(flow.products[at].name, flow.kitchen.language)) for at in batch.products]
    gone = [(product, name) for product, name in went_in if words in (name, name[-1:])]
    foods = [food for product, _ in gone for food in product.foods]
    if not gone or (foods and all(food in foods for food in batch.foods)):
        return False
    act.walker.let_go(batch, [food for food in batch.foods if food in foods], gone[-1][1])
    return True


def _of_another(act: Line, reference: Reference, batch: Batch, removes: bool) -> None:
    """Another batch joins the present one, or takes the work over."""
    walker = act.walker
    removes = removes and not _comes_back(act, reference)
    if removes and reference.share and reference.share.kind == "but" and reference.share.measure:
        kept = Share("measure", measure=reference.share.measure)  # *pour off all but 1 tbsp*: that stays
        _take(act, reference._replace(share=kept), batch)
        walker.discard(batch, reference.clause.span)
        act.joined = True
        return
    if removes:
        act.link(batch)
        walker.discard(batch, reference.clause.span)
        return
    apart = goes_apart(batch, walker.present)
    adds = act.verb is not None and act.verb.adds and not (act.verb.serves and apart)
    turns = act.fresh or (apart and not act.uses and not act.takings)
    takes_over = turns and not act.joined and not reference.preposition and not adds
    if takes_over and walker.present is not None:
        old = walker.present
        at = walker.flow.actions[old.last].span if old.last is not None else reference.clause.span
        walker.put_aside(old, "left", "", at, TAKES_OVER)
    _take(act, reference, batch)
    act.joined = True


def _take(act: Line, reference: Reference, batch: Batch) -> None:
    """A batch, or a share of it, goes into the present one."""
    walker, flow = act.walker, act.walker.flow
    if walker.present is None and not act.joined:
        act.carried = batch
    share = reference.share or Share("all")
    act.link(batch)
    if batch.left <= 0 or (batch.taken_at and not batch.shared):
        from tamis.model.reference_faults import used_up

        used_up(act, reference, batch)
    fraction, rest = part_of(batch, share, flow.kitchen, flow.uses)
    if fraction is not None and share.kind in ("measure", "fraction"):
        fraction *= act.repeats * walker.again  # each time, as fresh food is
        rest = fraction == batch.left if share.kind == "fraction" else rest
    if fraction is not None and fraction > batch.left > 0:
        from tamis.model.reference_faults import too_much

        too_much(act, reference, batch, fraction)
        fraction = batch.left
    whole = fraction is not None and fraction >= batch.left
    taken = use = -1
    if batch.rest_of is not None:
        use = _rest_of_measure(act, batch, fraction if fraction is not None else batch.left)
    elif batch.product is not None:
        said, at = " ".join(reference.clause.text.split()), reference.clause.span
        taking = Taking(batch.product, act.number, at, fraction, rest or whole, said)
        taken = len(flow.takings)
        act.takings.append(taken)
        flow.takings.append(taking)
    scale = fraction / batch.rest_was if batch.rest_of is not None and fraction else fraction
    if is_picked(walker, reference, batch):
        scale = None
    walker.take(batch, reference.clause.span, fraction, scale, whole, taken, use)


def _rest_of_measure(act: Line, batch: Batch, fraction: Fraction) -> int:
    """The rest of a measure written before goes in: a use of its own that buys nothing new."""
    flow = act.walker.flow
    assert batch.rest_of is not None
    first = flow.uses[batch.rest_of]
    mass = times(batch.mass, fraction / batch.rest_was)
    food = first.ingredient  # what was there for a purpose was so for that share
    food = food._replace(purpose="", purpose_spans=(), role="ingredient") if food.purpose else food
    use = first._replace(
        ingredient=food, action=act.number, fraction=fraction, rest_of=batch.rest_of, mass=mass, in_batch=True
    )
    act.uses.append(len(flow.uses))
    flow.uses.append(use)
    return len(flow.uses) - 1


def _belongs_inside(act: Line, reference: Reference) -> str:
    """How to say `reserving [a cup of the pasta water]`, which names what the batch leaves behind."""
    parts = act.read.parts
    at = next((at for at, part in enumerate(parts) if part is reference.clause), 0)
    before = parts[at - 1] if at else None
    found = model_words(act.walker.flow.kitchen.language).kept.search(before.text) if isinstance(before, Text) else None
    return f"`{found[1]}` belongs inside the brackets: `[{found[1]} {reference.clause.text}]`" if found else ""
