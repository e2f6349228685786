"""The two samples of the language's own page, as the model is to give them."""

from __future__ import annotations

from tamis.model.recipe import Recipe
from tamis.quantity.amount import exactly
from tamis.reading.clauses import Target, Tool
from tamis.source import Span
from tamis.syntax.document import Clause

from .making import HOUR, KITCHEN, MIN, Making, food, wait, work


def hot(celsius: int) -> Target:
    clause = Clause("to the heat", (), Span(0, 1))
    return Target(clause, "temperature", exactly(celsius), text=f"to {celsius} °C")


def rye_batons() -> Recipe:
    """Poolish overnight, dough with folds, loaves on a stone; the oven heats beside the last rise."""
    m = Making("Harbour rye batons")
    m.component("Poolish")
    stir = m.line("Stir smooth", work(MIN, None, hands=True), food("80 g rye flour", "rye flour"))
    leave = m.line("Leave", work(20, wait(8 * HOUR, 16 * HOUR, True)), after=(stir,))
    m.component("Dough")
    whisk = m.line("Whisk", work(2 * MIN, None, hands=True), food("420 g bread flour", "bread flour"))
    mix = m.line("Mix", work(30, wait(2 * MIN), machine=True, station="mixer"), after=(whisk, leave))
    rest = m.line("Rest", work(20, wait(20 * MIN)), after=(mix,))
    m.paragraph()
    caraway = food("1 tbsp caraway seed, lightly crushed", "caraway seed", "lightly crushed")
    add = m.line("Add", work(30, None, hands=True), caraway, after=(rest,))
    knead = m.line("Knead", work(0, wait(5 * MIN), machine=True, station="mixer"), after=(add,))
    m.paragraph()
    fold = m.line("Fold", work(2 * MIN, wait(30 * MIN)), after=(knead,), times=2, at_once=False)
    rise = m.line("Rise", work(20, wait(60 * MIN, 90 * MIN)), after=(fold,))
    m.component("Loaves")
    divide = m.line("Divide", work(3 * MIN, None, hands=True), after=(rise,), at_once=True)
    prove = m.line("Prove", work(MIN, wait(30 * MIN, 60 * MIN)), after=(divide,))
    m.paragraph()
    stone = KITCHEN.cupboard.find(["baking", "stone"])
    assert stone is not None
    tool = Tool(Clause("with a baking stone", (), Span(0, 1)), "baking stone", stone.item)
    m.line(
        "Heat",
        work(10),
        heats="oven",
        targets=(hot(230),),
        tools=(tool,),
        beside=prove,
        before=len(m.actions) + 1,
    )
    m.paragraph()
    slide = m.line("Slide", work(MIN, None, hands=True), after=(prove,), at_once=True)
    bake = m.line("Bake", work(0, wait(22 * MIN, 26 * MIN), station="oven"), after=(slide,), at_once=True)
    m.line("Cool", work(30, wait(2 * HOUR, None, True)), after=(bake,), at_once=True)
    return m.recipe()


def custard() -> Recipe:
    """The hob: yolks whisked while the milk infuses; two ordinary lines after a window."""
    m = Making("Poured custard")
    m.component("Custard")
    warm = m.line("Warm", work(30, wait(5 * MIN), station="ring"))
    infuse = m.line("Infuse", work(0, wait(10 * MIN, 30 * MIN, True)), after=(warm,), at_once=True)
    m.paragraph()
    yolks = food("6 egg yolks", "egg yolk", pieces=6)
    whisk = m.line("Whisk", work(0, wait(4 * MIN), hands=True), yolks, beside=infuse, before=3)
    m.paragraph()
    bring = m.line("Bring", work(20, wait(4 * MIN), station="ring"), after=(infuse,), on_heat=True)
    pour = m.line("Pour", work(MIN, None, hands=True), after=(bring, whisk), at_once=True)
    cook = m.line("Cook", work(30, wait(6 * MIN, 9 * MIN), hands=True, station="ring"), after=(pour,))
    m.line("Strain", work(MIN, None, hands=True), after=(cook,), at_once=True)
    return m.recipe()
