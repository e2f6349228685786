"""How much the tests notice: small faults are put into a copy of the compiler, one at a time, and tests run on each.

    python tests/mutation/run.py             # 200 faults; what was run before is not run again
    python tests/mutation/run.py --only 40   # the first of them, spread like the whole
    python tests/mutation/run.py --list      # what they are

First the suite runs once, slower, to see which test calls which function; that is kept. All is done by several workers
(`--workers`), each in a copy of its own. For a fault the tests that call
its function run, those of the package's own folder and the quick ones first, until one fails; not for ever, so of a
survivor that many tests call the whole suite may know more. What is said of survivors stands in `survivors.md`.
"""

from __future__ import annotations

import argparse
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from itertools import accumulate
from pathlib import Path
from queue import SimpleQueue
from typing import Any, Literal, NamedTuple

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
sys.path.insert(0, str(HERE))

from mutants import Mutant, chosen, mutated  # noqa: E402  # beside this file

SEED, MANY = 20, 200
STATE = HERE / ".state"
COPIED = ("compiler", "grammar", "recipes", "site", "tests", "pyproject.toml", "README.md", "DEVELOPERS.md", ".ci")
# The folders whose tests are meant for a package; the others are asked after them.
FOLDERS: Mapping[str, tuple[str, ...]] = {
    "reading": ("language",),
    "model": ("golden", "language", "timeline", "properties"),
    "table": ("table",),
    "timeline": ("timeline",),
    "safety": ("safety",),
}
LEFT_OUT = ("browser", "bench", "mutation")
FIRST, ALL = 12.0, 120.0
"""Seconds of tests, as they took when they were recorded: those asked first, and those asked after them."""
LONGEST = 15.0
"""A test that takes longer is not asked."""
ENDLESS, UNREADABLE = "it does not come to an end", "the tests cannot be read"
"""How a run can fail without a test that does."""
Verdict = Literal["killed", "survived", "not called"]


class Calls(NamedTuple):
    """What a test calls (`file function`, functions by their qualified name), and how long it takes."""

    functions: frozenset[str]
    seconds: float


def main() -> int:
    options = _options()
    mutants = chosen(ROOT / "compiler" / "tamis", options.seed, MANY)[: options.only]
    if options.list:
        print(*mutants, sep="\n")
        return 0
    STATE.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="tamis-mutation-") as scratch:
        trees = [Path(scratch, str(at)) for at in range(options.workers)]
        for tree in trees:
            _copy(tree)
        calls = _calls(trees, options.fresh)
        verdicts = _run(mutants, calls, trees, options.fresh)
    survivors = [mutant for mutant in mutants if verdicts[mutant.key] != "killed"]
    print(f"\n{len(mutants)} faults: {len(mutants) - len(survivors)} killed, {len(survivors)} survived")
    for mutant in survivors:
        print(f"  {mutant}  ({mutant.function}; {verdicts[mutant.key]}; {mutant.key})")
    return 0


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n\n")[0])
    parser.add_argument("--only", type=int, default=MANY, metavar="N", help="the first N faults")
    parser.add_argument("--seed", type=int, default=SEED, help=f"which faults are drawn ({SEED})")
    parser.add_argument("--fresh", action="store_true", help="forget what was run and recorded before")
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1, metavar="N", help="how many at a time")
    parser.add_argument("--list", action="store_true", help="print the faults and run nothing")
    return parser.parse_args()


def _copy(tree: Path) -> None:
    tree.mkdir()
    for name in COPIED:
        if (ROOT / name).is_dir():
            shutil.copytree(ROOT / name, tree / name, ignore=shutil.ignore_patterns("__pycache__", ".state"))
        else:
            shutil.copy(ROOT / name, tree / name)
    subprocess.run([sys.executable, "-m", "compileall", "-q", str(tree / "compiler")], check=True)


def _environment(tree: Path, **more: str) -> dict[str, str]:
    """The environment of the copy's tests. Laws of many random cases try few of them."""
    path = f"{tree / 'compiler'}{os.pathsep}{HERE}"
    return {**os.environ, "PYTHONPATH": path, "PYTHONDONTWRITEBYTECODE": "1", "TAMIS_EDITS": "100", **more}


def _pytest(tree: Path, words: Sequence[str], seconds: float | None, **more: str) -> int | None:
    """The status of a run of the copy's tests; None if it took too long."""
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "plugin", *words]
    try:
        done = subprocess.run(
            command, cwd=tree, env=_environment(tree, **more), capture_output=True, check=False, timeout=seconds
        )
    except subprocess.TimeoutExpired:
        return None
    return done.returncode


# ---- which test calls what


def _calls(trees: Sequence[Path], fresh: bool) -> dict[str, Calls]:
    """By test what it calls, recorded once; tests that fail on the sound compiler are left out."""
    kept = STATE / "calls.json"
    if fresh or not kept.exists():
        print("recording which test calls what …", flush=True)
        with ThreadPoolExecutor(len(trees)) as workers:
            parts = list(workers.map(_recorded, trees, range(len(trees)), [len(trees)] * len(trees)))
        kept.write_text(json.dumps({test: row for part in parts for test, row in part.items()}), encoding="utf-8")
    data: dict[str, Any] = json.loads(kept.read_text("utf-8"))
    return {test: Calls(frozenset(row["calls"]), row["seconds"]) for test, row in data.items()}


def _recorded(tree: Path, part: int, parts: int) -> dict[str, Any]:
    """What the tests of one worker call."""
    record = tree / "calls.json"
    ignored = [f"--ignore=tests/{name}" for name in LEFT_OUT]
    status = _pytest(tree, ["tests", *ignored], None, MUTATION_RECORD=str(record), MUTATION_PART=f"{part} {parts}")
    if status not in (0, 1):  # 1: a few tests fail, and are left out
        sys.exit("the suite itself does not run here: see what `pytest` says")
    data: dict[str, Any] = json.loads(record.read_text("utf-8"))
    return data


def _asked(mutant: Mutant, calls: Mapping[str, Calls]) -> list[str]:
    """The tests to ask, in turn; what stands outside of functions is asked of all that call one of the file."""
    if mutant.function:
        wanted = f"{mutant.file} {mutant.function}"
        found = [test for test, called in calls.items() if wanted in called.functions]
    else:
        known = {name for called in calls.values() for name in called.functions if name.startswith(f"{mutant.file} ")}
        found = [test for test, called in calls.items() if not called.functions.isdisjoint(known)]
    return _spread([test for test in found if calls[test].seconds < LONGEST], calls)


def _spread(tests: Sequence[str], calls: Mapping[str, Calls]) -> list[str]:
    """The quickest test of each file, then the next of each: tests of one file mostly ask the same."""
    ranks: dict[str, int] = {}
    ranked = []
    for test in sorted(tests, key=lambda test: (calls[test].seconds, test)):
        file = test.partition("::")[0]
        ranks[file] = ranks.get(file, 0) + 1
        ranked.append((ranks[file], test))
    return [test for _, test in sorted(ranked)]


def _parts(mutant: Mutant, asked: Sequence[str], calls: Mapping[str, Calls]) -> tuple[list[str], list[str]]:
    """The tests that are asked first, those of the package's own folders, and those that are asked after them."""
    own = tuple(f"tests/{folder}/" for folder in FOLDERS[mutant.file.partition("/")[0]])
    first = _within([test for test in asked if test.startswith(own)], FIRST, calls)
    return first, _within([test for test in asked if test not in first], ALL, calls)


def _within(tests: Sequence[str], seconds: float, calls: Mapping[str, Calls]) -> list[str]:
    """As many of the tests, from the first on, as such a time is enough for."""
    ends = accumulate(calls[test].seconds for test in tests)
    return [test for test, end in zip(tests, ends, strict=True) if end < seconds]


# ---- the faults, one by one


def _run(
    mutants: Sequence[Mutant], calls: Mapping[str, Calls], trees: Sequence[Path], fresh: bool
) -> dict[str, Verdict]:
    kept = STATE / "verdicts.json"
    verdicts: dict[str, Verdict] = json.loads(kept.read_text("utf-8")) if kept.exists() and not fresh else {}
    free: SimpleQueue[Path] = SimpleQueue()
    for tree in trees:
        free.put(tree)

    def judged(mutant: Mutant) -> tuple[Verdict, float]:
        tree, begun = free.get(), time.monotonic()
        try:
            return _verdict(mutant, calls, tree), time.monotonic() - begun
        finally:
            free.put(tree)

    wanted = [mutant for mutant in mutants if mutant.key not in verdicts]
    with ThreadPoolExecutor(len(trees)) as workers:
        for at, (mutant, (verdict, took)) in enumerate(zip(wanted, workers.map(judged, wanted), strict=True), 1):
            verdicts[mutant.key] = verdict
            kept.write_text(json.dumps(verdicts, indent=1), encoding="utf-8")
            print(f"{at:>3} {verdict:<10} {f'{took:.0f} s':>5}  {mutant}", flush=True)
    return verdicts


def _verdict(mutant: Mutant, calls: Mapping[str, Calls], tree: Path) -> Verdict:
    file = tree / "compiler" / "tamis" / mutant.file
    asked = _asked(mutant, calls)
    if not asked:
        return "not called"
    sound = file.read_text("utf-8")
    file.write_text(mutated(sound, mutant), encoding="utf-8")
    for compiled in (file.parent / "__pycache__").glob(f"{file.stem}.*.pyc"):
        compiled.unlink()
    failed = None
    try:
        for part in filter(None, _parts(mutant, asked, calls)):
            failed = failed or _first_failed(part, calls, tree)
    finally:
        file.write_text(sound, encoding="utf-8")
    if failed in calls and _first_failed([failed], calls, tree):
        print(f"left out, for it fails by itself on the sound compiler: {failed}", flush=True)
        return _verdict(mutant, {test: called for test, called in calls.items() if test != failed}, tree)
    return "killed" if failed else "survived"


def _first_failed(tests: Sequence[str], calls: Mapping[str, Calls], tree: Path) -> str | None:
    """The first of these tests that fails, or in which other way they do; None if all pass."""
    asked, noted = tree / "asked.txt", tree / "failed.txt"
    asked.write_text("\n".join(tests), encoding="utf-8")
    noted.write_text(UNREADABLE, encoding="utf-8")
    files = dict.fromkeys(test.partition("::")[0] for test in tests)
    limit = 60 + 5 * sum(calls[test].seconds for test in tests)
    status = _pytest(tree, ["-x", *files], limit, MUTATION_ASKED=str(asked), MUTATION_FAILED=str(noted))
    if status is None:
        return ENDLESS
    return noted.read_text("utf-8") if status else None


if __name__ == "__main__":
    sys.exit(main())
