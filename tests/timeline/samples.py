"""A bread and a custard, as the model gives them."""

from __future__ import annotations

from tamis.model.recipe import Recipe

from .making import HOUR, MIN, Making, food, wait, work


def rye_loaves() -> Recipe:
    """A scald, a dough, two loaves in tins; the oven heats beside the last rise and falls in the bake."""
    m = Making("Harbour rye tin loaves")
    m.component("Scald")
    caraway = food("1 tbsp caraway seed, lightly crushed", "caraway seed", "lightly crushed")
    pour = m.line("Pour", work(2 * MIN, None, hands=True), food("140 g rye flour", "rye flour"), caraway)
    leave = m.line("Leave", work(20, wait(4 * HOUR, 18 * HOUR, True)), after=(pour,))
    m.component("Dough")
    whisk = m.line("Whisk", work(2 * MIN, None, hands=True), food("480 g bread flour", "bread flour"))
    knead = m.line("Knead", work(30, wait(8 * MIN), machine=True, station="mixer"), after=(whisk, leave))
    rise = m.line("Rise", work(20, wait(75 * MIN, 90 * MIN)), after=(knead,))
    m.component("Loaves")
    grease = m.line("Grease", work(MIN, None, hands=True), food("sunflower oil", "sunflower oil"))
    divide = m.line("Divide", work(6 * MIN, None, hands=True), after=(rise, grease), at_once=True)
    prove = m.line("Prove", work(20, wait(45 * MIN, 60 * MIN)), after=(divide,))
    m.paragraph()
    m.line("Heat", work(10), heats="oven", sets=240, beside=prove, before=len(m.actions) + 1)
    m.paragraph()
    bake = m.line("Bake", work(0, wait(15 * MIN), station="oven"), after=(prove,), at_once=True)
    lower = m.line("Lower", work(10, wait(25 * MIN, 30 * MIN), station="oven"), after=(bake,), at_once=True)
    m.line("Turn out", work(30, wait(12 * HOUR, 48 * HOUR, True)), after=(lower,), at_once=True)
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
    bring = m.line("Bring", work(20, wait(4 * MIN), station="ring"), after=(infuse,))
    pour = m.line("Pour", work(MIN, None, hands=True), after=(bring, whisk), at_once=True)
    cook = m.line("Cook", work(30, wait(6 * MIN, 9 * MIN), hands=True, station="ring"), after=(pour,))
    m.line("Strain", work(MIN, None, hands=True), after=(cook,), at_once=True)
    return m.recipe()
