"""What of a line becomes a task, and what must follow what."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from tamis.model.recipe import Recipe, Work
from tamis.quantity.amount import exactly
from tamis.quantity.duration import exactly as lasting
from tamis.reading.clauses import Pause, Tending
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.timeline.lower import lower
from tamis.timeline.network import Link, Network
from tamis.timeline.plan import forward
from tamis.timeline.preparation import in_words, preparations
from tamis.timeline.verify import faults

from .making import HOUR, KITCHEN, MIN, Making, food, wait, work

CLAUSE = Clause("tending", Span(0, 1), "en")


def one_line(labour: Work, **more: Any) -> Network:
    making = Making()
    making.component("Trial")
    making.line("Fry", labour, **more)
    return lower(making.recipe(), KITCHEN)


def shape(network: Network) -> list[str]:
    """Each task as `hands 60` or `by itself 600–900`, with its kind if it is no fixed length."""
    said = []
    for task in network.tasks:
        length = str(task.lo) if task.lo == task.hi else f"{task.lo}–{'…' if task.hi is None else task.hi}"
        kind = "" if task.kind == "fixed" else f" {task.kind}"
        said.append(f"{'hands' if task.hands else 'by itself'} {length}{kind}")
    return said


@pytest.mark.parametrize(
    ("labour", "more", "expected"),
    [
        (work(60), {}, ["hands 60"]),
        (work(0, wait(600)), {}, ["by itself 600"]),
        (work(20, wait(600, 900)), {}, ["hands 20", "by itself 600–900 estimate"]),
        (work(0, wait(600, 900), hands=True), {}, ["hands 600–900 estimate"]),
        (work(20, wait(8 * HOUR, 16 * HOUR, True)), {}, ["hands 20", "by itself 28800–57600 window"]),
        (work(0, wait(2 * HOUR, None, True)), {}, ["by itself 7200–… window"]),
        (work(60), {"times": Fraction(3)}, ["hands 180"]),
        (work(60, wait(600)), {"times": Fraction(2)}, ["hands 60", "by itself 600"] * 2),
        (work(60, wait(120), hands=True), {"batches": Fraction(4)}, ["hands 240", "hands 480"]),
        (work(60, wait(600)), {"times": Fraction(40)}, ["hands 2400", "by itself 24000"]),
    ],
)
def test_a_line_becomes_tasks(labour: Work, more: dict[str, Any], expected: list[str]) -> None:
    assert shape(one_line(labour, **more)) == expected


def test_basting_calls_the_cook_back() -> None:
    """45–50 min, basting every 15 min: after 15 and after 30 min; the end is the cook's anyway."""
    basting = Tending(CLAUSE, "basting every 15 min", every=lasting(15 * MIN))
    network = one_line(work(0, wait(45 * MIN, 50 * MIN)), tending=(basting,))
    assert shape(network) == [
        "by itself 900",
        "hands 30",
        "by itself 870",
        "hands 30",
        "by itself 870–1170 estimate",
    ]
    assert sum(task.lo for task in network.tasks) == 45 * MIN
    assert all(link.joins for link in network.links)


def test_turning_once_comes_half_way() -> None:
    network = one_line(work(0, wait(20 * MIN)), tending=(Tending(CLAUSE, "turning once", once=True),))
    assert shape(network) == ["by itself 600", "hands 30", "by itself 570"]


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("chopped", [("before", "chop onion", 90)]),
        ("peeled and finely chopped", [("before", "peel onion", 90), ("before", "chop onion", 135)]),
        ("cut into wedges", [("before", "cut onion", 20)]),
        ("toasted", [("just-before", "toast onion", 240)]),
        ("soaked overnight", [("waits", "soak onion overnight", 8 * HOUR)]),
        ("soaked", [("waits", "soak onion", 30 * MIN)]),
        ("at room temperature", [("waits", "leave onion at room temperature", 30 * MIN)]),
        ("cooked", []),
        ("for dusting", []),
        ("for drizzling", []),
        ("chilled, for slicing", []),
        ("the best you can get", []),
    ],
)
def test_preparation_after_the_comma(words: str, expected: list[tuple[str, str, int]]) -> None:
    """Two onions, weight unknown: by the piece."""
    found = preparations(food("2 onions", "onion", words, pieces=2), KITCHEN)
    assert [(one.when, in_words([one]), one.seconds) for one in found] == expected


def test_a_bird_is_spatchcocked_before_its_line() -> None:
    found = preparations(food("2 chickens", "chicken", "spatchcocked", pieces=2), KITCHEN)
    assert [(one.when, in_words([one]), one.seconds) for one in found] == [("before", "spatchcock chicken", 8 * 60)]


@pytest.mark.parametrize(
    ("name", "state", "expected"),
    [
        ("soft butter", "soft", ["leave butter out in small pieces to soften"]),
        ("soft brown sugar", "soft", []),
        ("melted butter", "melted", ["melt butter"]),
        ("toasted sesame oil", "toasted", []),
        ("boiling water", "boiling", ["boil water"]),
    ],
)
def test_states_before_the_name(name: str, state: str, expected: list[str]) -> None:
    found = preparations(food(f"40 g {name}", name, states=(state,)), KITCHEN)
    assert [in_words([one]) for one in found] == expected


def test_preparation_of_a_step_is_one_task_before_its_first_line() -> None:
    making = Making()
    making.component("Soup")
    making.line("Sweat", work(0, wait(399)), food("1 onion, chopped", "onion", "chopped", pieces=1))
    making.line("Add", work(30), food("2 carrots, sliced", "carrot", "sliced", pieces=2), after=(0,))
    network = lower(making.recipe(), KITCHEN)
    assert [task.title for task in network.tasks if task.part == "prepare"] == ["chop onion; slice carrot"]
    assert Link(0, 1) in network.links


@pytest.mark.parametrize(
    ("labour", "tasks"),
    [
        (work(0, wait(400)), ["chop onion", "slice carrot"]),
        (work(0, wait(600), hands=True), ["chop onion; slice carrot"]),
    ],
)
def test_what_comes_after_a_long_wait_is_made_ready_beside_it(labour: Work, tasks: list[str]) -> None:
    making = Making()
    making.component("Soup")
    making.line("Boil", labour, food("1 onion, chopped", "onion", "chopped", pieces=1))
    making.line("Add", work(30), food("2 carrots, sliced", "carrot", "sliced", pieces=2), after=(0,), at_once=True)
    network = lower(making.recipe(), KITCHEN)
    assert [task.title for task in network.tasks if task.part == "prepare"] == tasks
    plan, _ = forward(network)
    assert plan.total == sum(task.lo for task in network.tasks) - (60 if len(tasks) == 2 else 0)


def heated() -> Recipe:
    making = Making()
    making.component("Tart")
    making.line("Heat", work(10), heats="oven")
    making.line("Roll", work(5 * MIN))
    making.line("Bake", work(0, wait(20 * MIN), station="oven"), after=(1,))
    return making.recipe()


def test_the_oven_is_hot_when_it_is_wanted_and_not_before() -> None:
    network = lower(heated(), KITCHEN)
    plan, _ = forward(network)
    heat = next(index for index, task in enumerate(network.tasks) if task.part == "heat")
    bake = next(index for index, task in enumerate(network.tasks) if task.station == "oven" and task.part == "wait")
    assert plan.end(heat) == plan.starts[bake]


def test_a_setting_alone_heats_the_oven_too() -> None:
    """(180 − 20) °C at 8 °C a minute."""
    making = Making()
    making.component("Tart")
    making.line("Bake", work(0, wait(20 * MIN), station="oven"), preheat=exactly(180))
    assert shape(lower(making.recipe(), KITCHEN)) == ["by itself 1200", "by itself 1200"]
    assert forward(lower(making.recipe(), KITCHEN))[0].total == 40 * MIN


def test_heating_stands_in_nobodys_way() -> None:
    """`Heat the oven` between two lines: the second follows the first, not the heating."""
    making = Making()
    making.component("Tart")
    making.line("Roll", work(5 * MIN))
    making.line("Heat", work(10, wait(20 * MIN)), heats="oven", after=(0,))
    making.line("Fill", work(5 * MIN), after=(1,))
    making.line("Bake", work(0, wait(20 * MIN), station="oven"), after=(2,))
    network = lower(making.recipe(), KITCHEN)
    assert Link(0, 3) in network.links
    least, most = forward(network)
    assert least.total == 40 * MIN + 10
    assert faults(network, least) == faults(network, most) == []


def test_within_and_at_once() -> None:
    making = Making()
    making.component("Jam")
    making.line("Boil", work(0, wait(600, 900), station="ring"))
    making.line("Pot", work(60), after=(0,), at_once=True)
    making.line("Seal", work(60), after=(1,), within=300)
    links = [link._replace(soon=0) for link in lower(making.recipe(), KITCHEN).links]
    assert links == [Link(0, 1, 0, 0), Link(1, 2, 0, 300)]


def test_a_window_ends_somewhere() -> None:
    making = Making()
    making.component("Bread")
    making.line("Leave", work(0, wait(8 * HOUR, 16 * HOUR, True)))
    making.line("Mix", work(60), after=(0,))
    assert Link(0, 1, 0, 16 * HOUR, from_start=True) in lower(making.recipe(), KITCHEN).links


def test_a_greased_tin_is_ready_before_the_next_line() -> None:
    making = Making()
    making.component("Cake")
    making.line("Grease", work(60))
    making.line("Beat", work(120))
    assert lower(making.recipe(), KITCHEN).links == (Link(0, 1),)


def test_several_meanwhiles_run_one_after_another() -> None:
    making = Making()
    making.component("Roast")
    making.line("Rest", work(0, wait(20 * MIN)))
    making.line("Stir", work(5 * MIN), beside=0, before=3)
    making.line("Chop", work(5 * MIN), beside=0, before=3)
    making.line("Carve", work(5 * MIN), after=(0,))
    network = lower(making.recipe(), KITCHEN)
    plan, _ = forward(network)
    assert plan.starts == (0, 10 * MIN, 15 * MIN, 20 * MIN)


@pytest.mark.parametrize("last", [True, False])
def test_what_is_done_before_serving_stands_so_long(last: bool) -> None:
    """The cheese comes out half an hour before the end, whether anything is left to do or not."""
    making = Making()
    making.component("Board")
    pause = Pause(CLAUSE, "before-serving", lasting(30 * MIN))
    making.line("Slice", work(10 * MIN))
    making.line("Take", work(MIN), after=(0,))
    making.actions[-1] = making.actions[-1]._replace(reads=(pause,))
    if not last:
        making.line("Serve", work(2 * MIN), after=(1,))
    network = lower(making.recipe(), KITCHEN)
    plan, _ = forward(network)
    assert plan.starts[1] == 10 * MIN
    assert plan.total == 10 * MIN + 30 * MIN + (MIN if last else 0)
    assert faults(network, plan) == []
