"""The figures of the compiler: `python tests/bench/run.py [PART…] [--recipes 200] [--json FILE]`.

Prints what each phase costs in floors (see `floor.py`), how long each command takes from a cold start in starts of a
bare interpreter, what unknown names cost, and how the time grows with nasty input. Each of these parts can run alone:
the growth takes longer than all others. Nothing is asserted: a figure over its target is marked, not a failure.
"""

from __future__ import annotations

import argparse
import json
import platform
import tempfile
from collections.abc import Callable
from pathlib import Path
from shutil import copy
from typing import NamedTuple

from measure import BARE, Command, compiling, exponent, growth, medians, round_of, starts
from nasty import FAMILIES

from corpus import drafts, recipes

_WARM_UP = 4
_LIBRARY = Path(__file__).parents[2] / "recipes"


class Figure(NamedTuple):
    """A line of the report: milliseconds measured and of the floor, their ratio, and the most it should be."""

    what: str
    measured: float
    floor: float
    ratio: float
    target: float | None

    @property
    def verdict(self) -> str:
        """Whether the ratio keeps to its target."""
        if self.target is None:
            return ""
        return "ok" if self.ratio <= self.target else "over"


def phase_figures(number: int, rounds: int) -> list[Figure]:
    """Each phase and the whole build against F, milliseconds a recipe."""
    texts = recipes(_WARM_UP + 2 * number * rounds)
    round_of(texts[:_WARM_UP])
    chunks = [texts[_WARM_UP + at * 2 * number :][: 2 * number] for at in range(rounds)]
    costs = {name: 1000 * cost for name, cost in medians([round_of(chunk) for chunk in chunks]).items()}
    floor = costs["floor parse"] + costs["floor page"]
    lines = [
        ("floor: parse a file", "floor parse", None),
        ("floor: fill a page", "floor page", None),
        ("syntax (lines, brackets)", "syntax", None),
        ("reading (clauses, verbs)", "reading", None),
        ("syntax and reading", "syntax reading", 0.9),
        ("the model", "model", None),
        ("syntax, reading and the model", "syntax reading model", 1.3),
        ("check (safety, the rules)", "check", 0.45),
        ("the table and the equipment", "table", None),
        ("the timeline", "timeline", None),
        ("table and timeline", "table timeline", 0.5),
        ("full build, a recipe", "build", 2.5),
    ]
    sums = {names: sum(costs[name] for name in names.split()) for _, names, _ in lines if names not in costs}
    costs |= sums
    return [Figure(what, costs[name], floor, costs[name] / floor, target) for what, name, target in lines]


def start_figures(runs: int) -> list[Figure]:
    """Each command from a cold start, against a start of the bare interpreter.

    The check is that of a recipe that stands alone; the others take the same recipe in the house of the demo library.
    """
    with tempfile.TemporaryDirectory() as name:
        alone, house = Path(name, "one.tamis"), Path(name, "house")
        house.mkdir()
        dish = str(house / "one.tamis")
        for path in (alone, Path(dish)):
            path.write_text(recipes(1)[0], encoding="utf-8")
        for settings in ("kitchen.toml", "goods.toml"):
            copy(_LIBRARY / settings, house)
        commands: dict[str, Command] = {
            "--version": lambda _: ("--version",),
            "check": lambda _: ("check", str(alone)),
            "scale": lambda _: ("scale", dish, "--makes", "3"),
            "explain": lambda _: ("explain", "missing-cue"),
            "convert": lambda _: ("convert", "2/3 cup bread flour"),
            "water": lambda _: ("water", "--dough", "24", "--room", "20", "--flour", "20"),
            "new": lambda at: ("new", str(Path(name, f"dish-{at}"))),
            **{what: _of(what, dish) for what in ("table", "timeline", "formula", "safety", "market", "cost")},
        }
        costs = starts(commands, runs)
    bare = costs[BARE]
    targets = {"--version": 1.5, "check": 8.0}
    return [
        Figure(f"cold `tamis {what}`", 1000 * costs[what], 1000 * bare, costs[what] / bare, targets.get(what, 9.0))
        for what in commands
    ]


def _of(what: str, dish: str) -> Command:
    return lambda _: (what, dish)


def draft_figure(number: int) -> Figure:
    """What a draft with ten unknown foods costs, against a sound recipe."""
    texts = recipes(_WARM_UP + 2 * number, seed=77)
    compiling(texts[:_WARM_UP], texts[:_WARM_UP])
    sound, draft = compiling(texts[_WARM_UP::2], drafts(texts[_WARM_UP + 1 :: 2]))
    return Figure("a draft with ten unknown foods", 1000 * draft, 1000 * sound, draft / sound, 2.0)


def growth_figures(largest: int) -> list[Figure]:
    """For each family of nasty input: the time for the largest size, and the exponent as its ratio."""
    sizes = [largest >> shift for shift in (4, 3, 2, 1, 0)]
    figures = []
    for family in FAMILIES:
        taken = growth(family, sizes)
        last = max(taken)
        what = f"growth: {family}, {last >> 10} kB"
        figures.append(Figure(what, 1000 * taken[last], 1000 * taken[min(taken)], exponent(taken), 1.1))
    return figures


def report(figures: list[Figure]) -> str:
    """The figures as a table for a person."""
    lines = [f"{'what':40} {'measured':>12} {'floor':>10} {'ratio':>7} {'target':>7}"]
    for figure in figures:
        target = "" if figure.target is None else f"{figure.target:.1f}"
        numbers = f"{figure.measured:9.3f} ms {figure.floor:7.3f} ms {figure.ratio:7.2f} {target:>7}"
        lines.append(f"{figure.what:40} {numbers}  {figure.verdict}".rstrip())
    lines.append("")
    lines.append(
        "floor: F (parse and page) a recipe; B (`python -c pass`) for a cold command; a sound recipe for a draft;"
    )
    lines.append("the smallest text for growth, whose ratio is the exponent")
    return "\n".join(lines)


PARTS: dict[str, Callable[[argparse.Namespace], list[Figure]]] = {
    "phases": lambda options: phase_figures(options.recipes, options.rounds),
    "starts": lambda options: start_figures(options.starts),
    "draft": lambda options: [draft_figure(options.recipes // 4 + 1)],
    "growth": lambda options: growth_figures(options.largest << 10),
}


def main(arguments: list[str] | None = None) -> int:
    """Measure, print, and write the figures to a file if wanted."""
    parser = argparse.ArgumentParser(description="Measure the compiler against floors of the same machine.")
    parser.add_argument("parts", nargs="*", metavar="PART", help=f"{', '.join(PARTS)} (all)")
    parser.add_argument("--recipes", type=int, default=200, help="recipes a round and measurement (200)")
    parser.add_argument("--rounds", type=int, default=3, help="rounds of which the median counts (3)")
    parser.add_argument("--starts", type=int, default=20, help="cold starts of which the median counts (20)")
    parser.add_argument("--largest", type=int, default=256, metavar="KB", help="largest nasty text (256)")
    parser.add_argument("--json", type=Path, metavar="FILE", help="write the figures there too")
    options = parser.parse_args(arguments)
    unknown = set(options.parts) - PARTS.keys()
    if unknown:
        parser.error(f"no such part: {', '.join(sorted(unknown))}")
    figures = [figure for part in options.parts or PARTS for figure in PARTS[part](options)]
    print(report(figures))
    if options.json:
        said = [figure._asdict() | {"verdict": figure.verdict} for figure in figures]
        machine = {"python": platform.python_version(), "machine": platform.machine()}
        options.json.write_text(json.dumps(machine | {"figures": said}, indent=1) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
