"""What stays behind where food was lifted out (`lifted.py`): how it is called, and what becomes of the two."""

from __future__ import annotations

from tamis.model.batch import answering
from tamis.model.called import all_keys
from tamis.model.effects import Why
from tamis.model.mass import ONE
from tamis.model.recipe import Product
from tamis.model.words import model_words, plain
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.hands import Hands
    from tamis.reading.clauses import Reference
    from tamis.source import Span

Words = tuple[str, ...]

LIFTED_OUT = Why("lifted-out")
_OVER = 3
"""What stays behind weighs a third of what was lifted out, at most: so much is over of the frying oil."""
_FEW = 60
"""g that are over of it, where nobody knows how heavy the food is: four spoons."""


def is_rest_word(words: Words, flow: Flow) -> bool:
    """Whether a cook calls so what is left of a batch: *the syrup*, *the broth*, *the cooking liquid*."""
    return bool(words) and words[-1] in model_words(flow.kitchen.language).rests


def _is_rest(batch: Batch, flow: Flow) -> bool:
    """Whether it is called by such a word itself: on *the pan juices* there is *the fat*."""
    return any(is_rest_word(name, flow) for name in batch.names)


def rest_called(walker: Hands, words: Words) -> Batch | None:
    """What is left where food was lifted out, by a word that nothing else answers to; None if there are several."""
    if not is_rest_word(words, walker.flow):
        return None
    if walker.present is not None and (walker.present.lifted_out or _is_rest(walker.present, walker.flow)):
        return walker.present
    rests = [batch for batch in walker.open if batch.lifted_out and batch.left > 0]
    rests = rests or _left_elsewhere(walker, words[:-1])
    return rests[0] if len(rests) == 1 else None


def _left_elsewhere(walker: Hands, of: Words) -> list[Batch]:
    """What other components have left behind: *the fowl liquor*, *the braising liquor*; else one that is named by such
    a word: *the broth* of a component Stock."""
    flow = walker.flow
    kitchen, made = flow.kitchen, [*flow.byproducts, *flow.component_batches.values()]
    left = [batch for batch in made if batch and batch.lifted_out and batch.left > 0]
    if not left:
        there = flow.component_batches.items()
        named = [batch for at, batch in there if batch and is_rest_word(flow.component_names[at], flow)]
        return [batch for batch in named if batch.left > 0 and (not of or batch.keys.has(answering(of, kitchen)))]
    if not of or (len(of) == 1 and kitchen.verbs.present(of[0])):
        return left
    return [batch for batch in left if batch.lifted_out and batch.lifted_out.keys.has(answering(of, kitchen))]


def own_names(walker: Hands) -> tuple[Words, ...]:
    """What the component that is being made will be called: *serve with the gravy*; the last one is the dish."""
    flow = walker.flow
    name = flow.component_names[walker.component]
    if walker.component + 1 < len(flow.component_names):
        return name, name[-1:]
    return name, name[-1:], *dish_names(flow)


def dish_names(flow: Flow) -> tuple[Words, ...]:
    """What the title and `makes:` call the dish: *peach fritters*, *fritters*."""
    header = flow.reading.header
    title = plain(header.title, flow.kitchen.language)
    made = plain(header.makes.noun, flow.kitchen.language) if header.makes else ()
    return title, title[-1:], made, made[-1:]


def goes_apart(batch: Batch, present: Batch | None) -> bool:
    """Whether one of the two was lifted out of the other: a line that names the other one first goes on with that."""
    return present is not None and (batch.lifted_from is present or present.lifted_from is batch)


def is_picked(walker: Hands, reference: Reference, batch: Batch) -> bool:
    """Whether it is *the meat* of bones that were lifted out: less than the bones, and nobody knows how much less."""
    kitchen = walker.flow.kitchen
    if batch.lifted_from is None or batch.keys.has(answering(plain(reference.name, kitchen.language), kitchen)):
        return False
    thrown = model_words(kitchen.language).thrown
    return bool(batch.foods) and not any(thrown.isdisjoint(food.words) for food in batch.foods)


def close_lifted(walker: Hands) -> None:
    """At the end of a component: what its last line lifted out is in hand again, unless another component takes it, and
    what was left unsaid is asked."""
    present, flow = walker.present, walker.flow
    called = flow.component_names[walker.component]
    own = (called, called[-1:])
    if present is not None and present.lifted_out:
        for batch in list(walker.open):
            just = batch.lifted_from is present and batch.last == present.last and not present.early
            if not just or batch.left < 1:
                continue
            if any(batch.is_named(name) for name in own):
                _leave_behind(walker, batch, present)
            elif not _is_named_elsewhere(walker, batch):
                _rejoin(walker, batch, present)
    for number, reference in walker.kept_together:
        later = [flow.actions[at] for at in range(number + 1, walker.number)]
        if any(action.work.wait and action.number in flow.on_heat and action.beside is None for action in later):
            name, span = reference.name, reference.clause.span
            message = f"“{name}” is taken out here and not named again, while the rest goes on cooking"
            _ask(walker, name, span, message, "where it comes back, name it")


def _is_named_elsewhere(walker: Hands, lifted: Batch) -> bool:
    """Whether a later component names it, and not by the name of this one; by that of another one only where this has
    gone in."""
    flow = walker.flow
    actions = [action for step in walker.read.steps for action in step.actions]
    place = actions[-1].span.end
    if flow.is_named_after(all_keys([lifted.keys]), place, own=True):
        return True
    gone = (flow.component_names[at] for at, batch in flow.component_batches.items() if batch and batch.left == 0)
    return any(
        lifted.keys.has(answering(name, flow.kitchen)) and flow.is_named_after([("name", name)], place) for name in gone
    )


def _leave_behind(walker: Hands, lifted: Batch, rest: Batch) -> None:
    """The component is what it calls so: under *Mutton* the mutton, and its broth stays behind."""
    label = " ".join(rest.label)
    rest.origin, rest.span = "by-product", lifted.span
    walker.close(rest, Product(label, (label,), "by-product", walker.component, rest.last, lifted.span), opened=False)
    walker.turn(lifted, LIFTED_OUT)


def _rejoin(walker: Hands, lifted: Batch, rest: Batch) -> None:
    walker.take(lifted, lifted.span, ONE, ONE, whole=True)
    rest.lifted_out = None
    walker.flow.named.drop(lifted)


def ask_for_rest(walker: Hands, rest: Batch) -> None:
    """Something stayed behind where food was lifted out, and no line takes it up: told if it is more than what is over
    of the frying oil."""
    lifted = rest.lifted_out
    if (
        lifted is None
        or rest.shared
        or (rest.mass.known and (rest.mass.hi * _OVER <= lifted.mass.lo or rest.mass.hi <= _FEW))
    ):
        return
    name = " ".join(rest.label)
    message = f"what is left behind here ({name} …) is not used any more"
    _ask(walker, name, lifted.span, message, "go on with it by its name")


def _ask(walker: Hands, name: str, span: Span, message: str, hint: str) -> None:
    language = walker.flow.kitchen.language
    the, thrown = (example(language, key, name=name) for key in ("the", "thrown"))
    walker.find("lifted-out", "warning", span, message, f"{hint}: {the}; if it is thrown away, say so: {thrown}")
