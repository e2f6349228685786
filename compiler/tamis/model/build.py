"""From a reading to a recipe: the flow is run, the dish is found, and everything gets its place."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.flow import Flow
from tamis.model.history import history_of
from tamis.model.left_over import tell_left_over
from tamis.model.mass import NOTHING
from tamis.model.moments import tie_moments
from tamis.model.placing import places_of
from tamis.model.recipe import Recipe, Supply
from tamis.model.unread import unread_of
from tamis.model.walker import walk
from tamis.model.wanted import make_all
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.kitchen.house import Kitchen
    from tamis.reading.reading import Reading


def build(reading: Reading, kitchen: Kitchen, used: Mapping[str, Supply]) -> tuple[Recipe, list[Diagnostic]]:
    """The recipe that a reading means, and what is wrong with its flow."""
    findings: list[Diagnostic] = []
    flow = Flow(reading, kitchen, used, findings, walk)
    make_all(flow)
    tell_left_over(flow)
    tie_moments(flow)
    dish = _dish(flow)
    products = tuple(
        product._replace(dish=True)
        if dish is not None and product.kind == "component" and product.component == dish
        else product
        for product in flow.products
    )
    actions = tuple([flow.actions[at] for at in range(len(flow.actions))])
    ends = [flow.component_batches[at] for at in range(len(reading.components))]
    recipe = Recipe(
        stem=reading.document.source.stem,
        header=reading.header,
        headnote=reading.headnote,
        components=tuple(flow.components[at] for at in range(len(reading.components))),
        actions=actions,
        uses=tuple(flow.uses),
        products=products,
        takings=tuple(flow.takings),
        dish=dish,
        history=history_of(flow.log, [action.reads for action in actions], flow.begun, ends),
        places=places_of(flow.log, actions, kitchen),
        log=tuple(flow.log),
        unread=tuple(unread_of(flow)),
        language=kitchen.language,
    )
    return recipe, findings


def _dish(flow: Flow) -> int | None:
    """The component that no other uses; the last, if there are several."""
    taken = {taking.product for taking in flow.takings}
    inside = {source for product in flow.products for source in product.from_products}
    last: int | None = None
    for index, product in enumerate(flow.products):
        if (
            product.kind == "component"
            and index not in taken
            and index not in inside
            and (last is None or product.component > last)
        ):
            last = product.component
    return last


def supply_of(recipe: Recipe) -> Supply:
    """What the recipe gives to others that use it."""
    made = recipe.header.makes
    dish = next((product for product in recipe.products if product.dish), None)
    return Supply(recipe.stem, recipe.title, made.measure if made else None, dish.mass if dish else NOTHING)
