"""The measurements: what each phase costs beside the floors, and how time grows with nasty input.

Everything is CPU time of this process, floor and phase in turn for each recipe, so that a busy neighbour or a slow
minute falls on both. The collector is off, as it is in the command. No recipe is measured twice, as a compiler may
remember what it has read. A round is one number a name; of several rounds the median counts.
"""

from __future__ import annotations

import gc
import math
import os
import subprocess
import sys
import tempfile
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from resource import RUSAGE_CHILDREN, getrusage
from statistics import median
from time import process_time

import floor
from nasty import FAMILIES

from tamis.checks.run import run_checks
from tamis.checks.view import View
from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.library.library import open_library
from tamis.model.build import build
from tamis.publish.site import build_site
from tamis.reading.reader import read
from tamis.source import Source
from tamis.syntax.outline import parse

Costs = dict[str, float]
Growth = dict[int, float]
Command = Callable[[int], Sequence[str]]
BARE = "python -c pass"
_ENOUGH = 20.0
_TURNS = 3


class Watch:
    """CPU seconds by name, added up."""

    __slots__ = ("costs",)

    def __init__(self) -> None:
        self.costs: defaultdict[str, float] = defaultdict(float)

    @contextmanager
    def on(self, name: str) -> Iterator[None]:
        """Add the time of the block to that of the name."""
        begin = process_time()
        try:
            yield
        finally:
            self.costs[name] += process_time() - begin


def round_of(texts: list[str]) -> Costs:
    """Seconds a recipe, by name, over recipes that have not been seen before."""
    _swept()
    watch = Watch()
    half = len(texts) // 2
    for text in texts[:half]:
        _floors(text, watch)
        _phases(text, watch)
    costs = {name: cost / half for name, cost in watch.costs.items()}
    return costs | {"build": _site(texts[half:]) / (len(texts) - half)}


def _swept() -> None:
    """Rubbish out, and the collector off: the command works so (`tamis.__main__`). What stays is not swept again."""
    gc.collect()
    gc.freeze()
    gc.disable()


def _floors(text: str, watch: Watch) -> None:
    with watch.on("floor parse"):
        floor.parse(text)
    data = floor.page_data(text)
    with watch.on("floor page"):
        floor.page(data)


def _phases(text: str, watch: Watch) -> None:
    """What `tamis.compile` does, phase by phase."""
    source, kitchen = Source("bench.tamis", text), default_kitchen("en")
    with watch.on("syntax"):
        document, syntax = parse(source, "en")
    with watch.on("reading"):
        reading, misread = read(document, kitchen)
    with watch.on("model"):
        recipe, unsound = build(reading, kitchen, {})
    with watch.on("check"):
        view = View(source, document, recipe, kitchen, {})
        assert view.safety
        run_checks(view, (*syntax, *misread, *unsound))
    with watch.on("table"):
        assert view.table and view.equipment is not None
    with watch.on("timeline"):
        assert view.timeline.most  # it is planned when somebody asks


def _site(texts: list[str]) -> float:
    """Seconds for a whole site, from the files to the files."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name, "recipes")
        folder.mkdir()
        for at, text in enumerate(texts):
            Path(folder, f"recipe-{at}.tamis").write_text(text, encoding="utf-8")
        begin = process_time()
        report = build_site(open_library(folder), Path(name, "site"))
        taken = process_time() - begin
    if report.pages < len(texts):
        raise RuntimeError(f"the site has {report.pages} pages for {len(texts)} recipes: {report}")
    return taken


def starts(commands: Mapping[str, Command], runs: int) -> Costs:
    """CPU seconds of cold commands by name, of each the median of so many starts, and of a bare interpreter.

    A command is told the number of the start. The modules are compiled to bytecode, as they are from the second start
    on wherever tamis is installed. All take turns and the median counts: the least of a few would be that of whoever
    met a lucky moment of the machine.
    """
    with tempfile.TemporaryDirectory() as name:
        environment = os.environ | {"PYTHONPYCACHEPREFIX": name}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        turns: list[Costs] = []
        for at in range(runs + 1):  # the first writes the bytecode and does not count
            bare = _start(("-c", "pass"), environment)
            taken = {what: _start(("-m", "tamis", *command(at)), environment) for what, command in commands.items()}
            turns.append(taken | {BARE: bare})
    return medians(turns[1:])


def _start(arguments: Sequence[str], environment: Mapping[str, str]) -> float:
    """CPU seconds of an interpreter from its start to its end."""
    before = _children()
    subprocess.run([sys.executable, *arguments], stdout=subprocess.DEVNULL, check=True, env=environment)
    return _children() - before


def _children() -> float:
    spent = getrusage(RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime


def compiling(sound: list[str], drafts: list[str]) -> tuple[float, float]:
    """Seconds to compile a sound recipe and a draft, by turns; the median of all."""
    _swept()
    pairs = [(_compiling(one)[0], _compiling(other)[0]) for one, other in zip(sound, drafts, strict=True)]
    first, second = zip(*pairs, strict=True)
    return median(first), median(second)


def growth(family: str, sizes: list[int]) -> Growth:
    """Seconds to compile texts of a family, by size; it stops early where it has become clear that it will not end.

    The sizes take turns and the least of each counts: a slow minute of the machine falls on all of them."""
    taken: Growth = {}
    for _ in range(_TURNS):
        for size in sizes:
            _swept()
            cost = sum(_compiling(FAMILIES[family](size)))
            taken[size] = min(cost, taken.get(size, cost))
            if cost > _ENOUGH:
                return taken
    return taken


def _compiling(text: str) -> tuple[float, float]:
    """Seconds to compile and check a text, and to plan it."""
    begin = process_time()
    result = compile(Source("bench.tamis", text), default_kitchen("en"), {})
    assert result.findings is not None  # they are worked out when somebody asks
    compiled = process_time()
    assert result.timeline.most >= 0
    return compiled - begin, process_time() - compiled


def exponent(taken: Growth) -> float:
    """The slope of the last two doublings on a double logarithmic scale: 1 is linear, 2 is quadratic."""
    (size, time), *_, (last_size, last_time) = list(taken.items())[-3:]
    return math.log(last_time / time) / math.log(last_size / size)


def medians(rounds: list[Costs]) -> Costs:
    """Name by name, the median of the rounds."""
    return {name: median(costs[name] for costs in rounds) for name in rounds[0]}
