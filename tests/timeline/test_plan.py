"""Plans against published tables, against an oracle on random work, and against the checker that knows no planner."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.timeline.network import COOK, Link, Network, Plan, Resource, Task
from tamis.timeline.plan import backward, forward
from tamis.timeline.verify import faults


def network(activities: dict[str, tuple[int, str]]) -> Network:
    """Activities as the textbooks write them: a length, and the letters of those that come before."""
    names = list(activities)
    tasks = tuple(Task(name, length, length) for name, (length, _) in activities.items())
    links = tuple(
        Link(names.index(before), index) for index, (_, befores) in enumerate(activities.values()) for before in befores
    )
    return Network(tasks, links)


def critical(work: Network, plan: Plan) -> str:
    return "".join(task.id for index, task in enumerate(work.tasks) if plan.critical(index))


# Hillier & Lieberman, Introduction to Operations Research, chapter on PERT/CPM, the "Reliable Construction Co."
# example: 44 weeks; critical A-B-C-E-F-J-L-N; slacks D 4, G 4, H 4, I 2, K 1, M 4.
CONSTRUCTION = {
    "A": (2, ""),
    "B": (4, "A"),
    "C": (10, "B"),
    "D": (6, "C"),
    "E": (4, "C"),
    "F": (5, "E"),
    "G": (7, "D"),
    "H": (9, "EG"),
    "I": (7, "C"),
    "J": (8, "FI"),
    "K": (4, "J"),
    "L": (5, "J"),
    "M": (2, "H"),
    "N": (6, "KL"),
}
SLACKS = dict(A=0, B=0, C=0, D=4, E=0, F=0, G=4, H=4, I=2, J=0, K=1, L=0, M=4, N=0)

# The PERT example of the encyclopaedia article "Program evaluation and review technique" (Wikipedia): expected
# times, here in sixths; critical A-C-E-G, 117/6 = 19.5 days.
REVIEW = {
    "A": (24, ""),
    "B": (32, ""),
    "C": (31, "A"),
    "D": (38, "A"),
    "E": (31, "BC"),
    "F": (27, "D"),
    "G": (31, "E"),
}


def test_construction_table() -> None:
    work = network(CONSTRUCTION)
    for plan in forward(work):
        assert plan.total == 44
        assert critical(work, plan) == "ABCEFJLN"
        assert {task.id: plan.slack(index) for index, task in enumerate(work.tasks)} == SLACKS
        assert faults(work, plan) == []


def test_review_table() -> None:
    work = network(REVIEW)
    plan, _ = forward(work)
    assert (plan.total, critical(work, plan)) == (117, "ACEG")


def longest_chain(work: Network) -> int:
    """The longest path by trying every one: slow, and as simple as can be."""

    def from_(task: int) -> int:
        after = [from_(link.b) for link in work.links if link.a == task]
        return work.tasks[task].lo + max(after, default=0)

    return max(from_(task) for task in range(len(work.tasks)))


@st.composite
def random_work(draw: st.DrawFn, hands: bool = True, limits: bool = True) -> Network:
    count = draw(st.integers(1, 9))
    tasks, links = [], []
    for index in range(count):
        lo = draw(st.integers(0, 20))
        kind = draw(st.sampled_from(["fixed", "estimate", "window"]))
        hi = lo if kind == "fixed" else lo + draw(st.integers(0, 10))
        busy = hands and draw(st.booleans())
        tasks.append(Task(str(index), lo, hi, kind, busy))
        for before in range(index):
            if draw(st.integers(0, 3)) == 0:
                hi_gap = draw(st.sampled_from([None, None, 0, 5])) if limits else None
                links.append(Link(before, index, 0, hi_gap, draw(st.booleans()) if hi_gap is None else False))
    cooks = draw(st.integers(1, 2)) if hands else 1
    return Network(tuple(tasks), tuple(links), (Resource(COOK, cooks),))


@given(random_work(hands=False, limits=False))
def test_length_is_that_of_the_longest_chain(work: Network) -> None:
    plain = work._replace(links=tuple(link._replace(from_start=False) for link in work.links))
    assert forward(plain)[0].total == longest_chain(plain)


@settings(max_examples=400)
@given(random_work())
def test_every_plan_can_be_cooked(work: Network) -> None:
    for plan in (*forward(work), backward(work, 68400, (25200, 82800))):
        assert faults(work, plan) == []


@given(random_work())
def test_starts_lie_within_their_bounds(work: Network) -> None:
    for plan in forward(work):
        for at, first, last in zip(plan.starts, plan.earliest, plan.latest, strict=True):
            assert first <= at <= last


@given(random_work(limits=False))
def test_without_limits_nothing_is_stretched(work: Network) -> None:
    assert all(plan.stretched == () for plan in forward(work))


@given(random_work())
def test_the_same_work_gives_the_same_plan(work: Network) -> None:
    assert forward(work) == forward(work)


def test_one_cook_does_one_thing_at_a_time() -> None:
    work = Network(tuple(Task(name, 5, 5, hands=True) for name in "abc"), ())
    plan, _ = forward(work)
    assert plan.total == 15
    assert all(abs(plan.starts[a] - plan.starts[b]) >= 5 for a, b in combinations(range(3), 2))
    two = work._replace(resources=(Resource(COOK, 2),))
    assert forward(two)[0].total == 10


def test_work_fits_into_a_wait() -> None:
    """Peeling goes into the simmer; what that calls for at once finds the cook free, however long it takes."""
    work = Network(
        (
            Task("simmer", 20, 30, "estimate"),
            Task("strain", 2, 2, hands=True),
            Task("peel", 15, 15, hands=True),
            Task("serve", 1, 1, hands=True),
        ),
        (Link(0, 1, hi=0), Link(1, 3), Link(2, 3)),
    )
    least, most = forward(work)
    assert (least.total, most.total) == (23, 33)
    assert most.end(2) <= 20 and least.end(2) <= 20
    assert least.stretched == most.stretched == ()


def test_meanwhile_longer_than_its_wait_is_told() -> None:
    work = Network(
        (
            Task("rest", 10, 10),
            Task("gravy", 15, 15, hands=True),
            Task("carve", 5, 5, hands=True),
        ),
        (Link(0, 2, hi=0), Link(0, 1, from_start=True), Link(1, 2)),
    )
    plan, _ = forward(work)
    assert plan.total == 20
    assert plan.stretched == (0,)


def test_a_window_is_not_overrun_while_there_is_another_way() -> None:
    """The starter may stand 8 to 16: it is begun late rather than left too long."""
    work = Network(
        (Task("starter", 8, 16, "window"), Task("braise", 30, 30), Task("join", 1, 1, hands=True)),
        (Link(0, 2), Link(0, 2, 0, 16, from_start=True), Link(1, 2)),
    )
    plan, _ = forward(work)
    assert plan.stretched == ()
    assert plan.starts == (22, 0, 30)


def test_nobody_works_at_night_if_a_window_allows_it() -> None:
    """Bread for 13:00: its starter would be mixed at 04:24; within its window it is mixed before 23:00."""
    hour = 3600
    work = Network(
        (
            Task("mix", 360, 360, hands=True),
            Task("stand", 8 * hour, 16 * hour, "window"),
            Task("bake", 30 * 60, 30 * 60, hands=True),
        ),
        (Link(0, 1, hi=0), Link(1, 2), Link(1, 2, 0, 16 * hour, from_start=True)),
    )
    plain = backward(work, 13 * hour)
    rested = backward(work, 13 * hour, (7 * hour, 23 * hour))
    assert 13 * hour - plain.total == 4 * hour + 24 * 60
    assert 13 * hour - rested.total == -1 * hour - 360
    assert faults(work, rested) == [] and rested.stretched == ()
