"""What is wrong with a reference, and how to say what is meant."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic, Label
from tamis.model.batch import Batch, answering
from tamis.model.called import all_keys
from tamis.model.rest_of import is_rest_word
from tamis.model.unread import may_be_unread
from tamis.model.words import plain
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.model.hands import Hands
    from tamis.model.line import Line
    from tamis.model.meaning import Meaning
    from tamis.reading.clauses import Reference

_MOST_GUESSED = 100
"""Whoever misspells more names than this has misspelt none: each is compared with all the names in reach."""


def unknown(act: Line, reference: Reference, hint: str) -> None:
    """A name that nothing answers to; the hint is what is known to be meant, if anything."""
    name = reference.name or reference.clause.text.strip()
    flow = act.walker.flow
    words = plain(name, flow.kitchen.language)
    if _is_lost(act, words) or may_be_unread(flow, words):
        message = f"“{name}” may be in a bracket that could not be read"
        act.walker.note(Diagnostic("product-unknown", "error", reference.clause.span, message))
        return
    language = flow.kitchen.language
    if not reference.name:
        hint = "a rest is there where a share of something went in before: write both"
    flow.unknown += 1
    hint = hint or _not_kept(act, reference) or _not_left(act, reference)
    if not hint and (made := _made_and_gone(act, reference)):
        hint = f"of “{made}” nothing is left at its end: what was in hand there was thrown away or went into something"
        act.say("product-unknown", reference.clause, f"nothing is left of “{name}”", hint)
        return
    near = None if hint or flow.unknown > _MOST_GUESSED else _nearest_name(act.walker, reference)
    if near:
        hint = f"did you mean {example(language, 'the', name=near)}?"
    elif not hint and act.verb and act.verb.removes and reference.share is None:
        left = example(language, "leaving_any")
        hint = f"what nobody named before needs no brackets to be thrown away; to keep it, {left} names it"
    elif not hint:
        said, left = example(language, "as_any"), example(language, "leaving_any")
        hint = f"name it before: by a heading, {said}, {left} or as an ingredient"
    act.say("product-unknown", reference.clause, f"nothing here is called “{name}”", hint)


def _is_lost(act: Line, words: tuple[str, ...]) -> bool:
    """Whether it was named where there was nothing to name, which is told there."""
    return any(words in (name, name[-1:]) for name in act.walker.flow.lost)


def _made_and_gone(act: Line, reference: Reference) -> str:
    """The component of this name that was worked through and left nothing; "" if there is none."""
    flow = act.walker.flow
    words = plain(reference.name, flow.kitchen.language)
    homes = (at for at in flow.homes.get(words, ()) if at in flow.component_batches)
    return next((flow.reading.components[at].name for at in homes if flow.component_batches[at] is None), "")


def _not_kept(act: Line, reference: Reference) -> str:
    """What to write where *the pasta water* was only there for boiling: such food is no part of any batch. All that
    ask for it are told one name and one amount."""
    from tamis.model.kept import what_is_kept
    from tamis.quantity.display import written

    flow = act.walker.flow
    language = flow.kitchen.language
    words = plain(reference.name, language)
    last = flow.uses[flow.uses_of[words[-1]][-1]] if words and words[-1] in flow.uses_of else None
    if last is None or not last.ingredient.purpose:
        return ""
    item = last.ingredient
    name, measure = what_is_kept(flow, words[-1])
    if measure is None:
        left = example(language, "leaving_named", name=name)
    else:
        left = example(language, "leaving_some", measure=written(measure, language), name=name)
    return f"{item.name} {item.purpose} is not kept: {left}, before it is poured away, keeps some"


def _not_left(act: Line, reference: Reference) -> str:
    """What to write where *the bacon fat* is asked for and bacon is there, of which nobody said that it leaves any."""
    walker, kitchen = act.walker, act.walker.flow.kitchen
    words = plain(reference.name, kitchen.language)
    if len(words) < 2 or not is_rest_word(words, walker.flow):
        return ""
    keys = answering(words[:-1], kitchen)
    present = walker.present
    if not (present and present.keys.has(keys)) and not walker.open.called(keys, walker.flow.index):
        return ""
    left = example(kitchen.language, "leaving_named", name=reference.name)
    return f"nobody said that the {' '.join(words[:-1])} leaves any: end the line where it does with {left}"


def ambiguous(act: Line, reference: Reference, meaning: Meaning) -> None:
    """A name that several batches answer to."""
    batches = [meaning.batch, *meaning.also]
    called = [(batch, act.walker.flow.called(batch)) for batch in batches if batch]
    labels = tuple(Label(batch.span, f"this is “{name}”") for batch, name in called)
    names = " and ".join(f"“{name}”" for _, name in called)
    message = f"“{reference.name or reference.clause.text}” can mean {names}"
    language = act.walker.flow.kitchen.language
    hint = f"give one of them a name of its own with {example(language, 'as_any')}"
    if meaning.rule in ("pieces", "made-of") or not reference.name:
        key = "the" if reference.name else "the_rest"
        hint = "write which is meant: " + " or ".join(example(language, key, name=name.lower()) for _, name in called)
    act.say("product-ambiguous", reference.clause, message, hint, labels)


def guessed(act: Line, reference: Reference, batch: Batch, unborne: tuple[str, ...]) -> None:
    """*The resting juices*, where juices were left that nothing calls so."""
    flow = act.walker.flow
    called, language = flow.called(batch), flow.kitchen.language
    message = f"“{reference.name}” is read as “{called}”, but nothing here calls that “{' '.join(unborne)}”"
    the, left = example(language, "the", name=called.lower()), example(language, "leaving_any")
    hint = f"if that is meant, write {the}; else name what is meant earlier, as with {left}"
    act.walker.find("product-guessed", "warning", reference.clause.span, message, hint)


def used_up(act: Line, reference: Reference, batch: Batch) -> None:
    """What went in whole before."""
    labels = (Label(batch.taken_at, "the last of it went in here"),) if batch.taken_at else ()
    message = f"nothing of “{reference.name}” is left"
    language = act.walker.flow.kitchen.language
    hint = f"take a share of it there ({example(language, 'half_any')}) and the rest here, or make more"
    if called := _also_named(act, reference, batch):
        leaving = example(language, "leaving_named", name=called)
        hint = f"“{called}” is all of it; if that was only a part, write {leaving} where it was named"
    act.say("product-used-up", reference.clause, message, hint, labels)


def _also_named(act: Line, reference: Reference, batch: Batch) -> str:
    """The other name that a component was given while it was made; "" if there is none."""
    flow = act.walker.flow
    asked, own = plain(reference.name, flow.kitchen.language), batch.names.own()
    named = (flow.products[at] for at in reversed(batch.products))
    words = ((one.name, plain(one.name, flow.kitchen.language)) for one in named if one.kind == "named")
    return next((name for name, said in words if said in own and said != asked), "")


def too_much(act: Line, reference: Reference, batch: Batch, fraction: Fraction) -> None:
    """A share that is larger than what is left."""
    left = batch.left
    message = f"this takes more of “{reference.name}” than is there: {left if left < 1 else 'one'} of it is left"
    if (often := act.repeats * act.walker.again) > 1:
        message = f"{often} times this is {float(fraction):.2g} of “{reference.name}”, and there is {left}"
    if batch.origin == "used-recipe" and reference.share and reference.share.measure:
        message = f"this takes {float(fraction):.2g} times what the recipe of “{reference.name}” makes"
    act.say("product-used-up", reference.clause, message, "make more of it, or take less")


def _nearest_name(walker: Hands, reference: Reference) -> str | None:
    """The name in reach whose spelling is nearest to one that nothing answers to."""
    from tamis.quantity.near import nearest

    flow = walker.flow
    batches = [*walker.open, *flow.named, *flow.byproducts, *([walker.present] if walker.present else [])]
    names = {" ".join(words) for kind, words in all_keys(batch.keys for batch in batches) if kind in ("name", "food")}
    names |= {" ".join(name) for at, name in enumerate(flow.component_names) if at != walker.component}
    names |= {" ".join(plain(supply.title, walker.flow.kitchen.language)) for supply in flow.used.values()}
    return nearest(" ".join(plain(reference.name, walker.flow.kitchen.language)), sorted(names))
