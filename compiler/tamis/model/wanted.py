"""Components made in the order in which they are wanted, each only once.

A component may be named before it stands in the text; it is then made first. One that needs itself is a circle.
"""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.recipe import Product
from tamis.model.words import plain
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.recipe import Supply
    from tamis.model.state import State
    from tamis.reading.reading import ComponentRead
    from tamis.source import Span

# Components that name others further down, one within another: no recipe is so deep, and the stack is not endless.
_DEEPEST = 40


def make_all(flow: Flow) -> None:
    """Make every component."""
    for at in range(len(flow.reading.components)):
        make(flow, at, None)


def make(flow: Flow, at: int, wanted_by: State | None) -> Batch | None:
    """The batch of a component, made now if it is not yet; None for one without food."""
    if at in flow.component_batches:
        return flow.component_batches[at]
    if wanted_by and at in flow.doing:
        _tell_circle(flow, at, wanted_by)
        return _stand_in(flow, at, wanted_by)
    if wanted_by and len(flow.doing) >= _DEEPEST:
        _tell_depth(flow, at, wanted_by)
        return _stand_in(flow, at, wanted_by)
    flow.doing.append(at)
    batch = flow.walk(flow, at)
    flow.doing.pop()
    flow.component_batches[at] = batch
    if batch:
        flow.made.put(batch, len(flow.made))
    return batch


def make_named(words: tuple[str, ...], wanted_by: State) -> None:
    """Make the component that names or leaves something so called, if it stands further down."""
    flow = wanted_by.flow
    home = flow.name_homes.get(words)
    if home is not None and home != wanted_by.component and home not in flow.doing:
        make(flow, home, wanted_by)


def supply_batch(stem: str, supply: Supply, wanted_by: State) -> Batch:
    """The dish of a used recipe, as a batch to take from."""
    flow = wanted_by.flow
    if stem not in flow.supplies:
        batch = wanted_by.part("used-recipe", "used-recipe", mass=supply.mass)
        for name in (supply.title, stem.replace("-", " ")):
            wanted_by.name(batch, plain(name, flow.kitchen.language))
        batch.measure = supply.measure
        span = flow.reading.header.span("uses")
        product = Product(supply.title, (supply.title,), "used-recipe", -1, None, span, recipe=stem)
        wanted_by.close(batch, product, opened=False)
        flow.supplies[stem] = batch
    return flow.supplies[stem]


def _tell_depth(flow: Flow, at: int, wanted_by: State) -> None:
    component = flow.reading.components[at]
    if not any(finding.rule == "flow-depth" for finding in flow.findings):
        message = f"“{component.name}” is used {_DEEPEST} components before it is made, too many to follow"
        hint = "write what is made before what uses it"
        wanted_by.tell(Diagnostic("flow-depth", "error", _heading(component), message, hint))


def _tell_circle(flow: Flow, at: int, wanted_by: State) -> None:
    component = flow.reading.components[at]
    ring = [flow.reading.components[n].name for n in flow.doing[flow.doing.index(at) :]]
    path = " → ".join(f"“{name}”" for name in (*ring, component.name))
    message = f"these components depend on each other in a circle: {path}"
    if not any(finding.rule == "flow-circle" for finding in flow.findings):
        hint = "one of them must be made without the other"
        wanted_by.tell(Diagnostic("flow-circle", "error", _heading(component), message, hint))


def _heading(component: ComponentRead) -> Span:
    assert component.heading is not None, "what others ask for is called by its heading"
    return component.heading


def _stand_in(flow: Flow, at: int, wanted_by: State) -> Batch:
    """Something that answers to the name of a component that cannot be made: the circle is told once."""
    batch = wanted_by.part("stand-in", "component")
    wanted_by.name(batch, flow.component_names[at])
    return batch
