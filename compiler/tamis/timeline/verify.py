"""Proof that a plan can be cooked: every bound kept, never more hands than cooks.

A planner's own belief in its result is worth little. This checker knows nothing of planning: it takes the
finished times and looks, task by task and moment by moment.
"""

from __future__ import annotations

from tamis.timeline.network import Network, Plan


def faults(network: Network, plan: Plan) -> list[str]:
    """What is wrong with a plan, in words; empty if it can be cooked as it stands."""
    return [*_task_faults(network, plan), *_link_faults(network, plan), *_cook_faults(network, plan)]


def _task_faults(network: Network, plan: Plan) -> list[str]:
    found = []
    for index, task in enumerate(network.tasks):
        if plan.lengths[index] != task.length(plan.mode):
            found.append(f"{task.id} lasts {plan.lengths[index]} s")
        if plan.starts[index] < 0 or plan.end(index) > plan.total:
            found.append(f"{task.id} lies outside the plan")
    return found


def _link_faults(network: Network, plan: Plan) -> list[str]:
    found = []
    for index, link in enumerate(network.links):
        first, second = network.tasks[link.a].id, network.tasks[link.b].id
        gap = plan.starts[link.b] - (plan.starts[link.a] if link.from_start else plan.end(link.a))
        if gap < link.lo:
            found.append(f"{second} starts {link.lo - gap} s too soon after {first}")
        if link.hi is not None and gap > link.hi and index not in plan.stretched:
            found.append(f"{second} starts {gap - link.hi} s too late after {first}")
    return found


def _cook_faults(network: Network, plan: Plan) -> list[str]:
    moments = []
    for index, task in enumerate(network.tasks):
        if task.hands and plan.lengths[index]:
            moments += [(plan.starts[index], 1, task.id), (plan.end(index), -1, task.id)]
    busy, found = 0, []
    for at, change, name in sorted(moments, key=lambda m: (m[0], m[1])):
        busy += change
        if busy > network.cooks:
            found.append(f"at {at} s {name} needs a cook more than there are")
    return found
