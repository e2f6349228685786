"""What the runs of `run.py` ask of pytest: to record which test calls what, or to run some tests in their order."""

from __future__ import annotations

import json
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, FrameType

import pytest

RECORD, ASKED = os.environ.get("MUTATION_RECORD"), os.environ.get("MUTATION_ASKED")
FAILED, PART = os.environ.get("MUTATION_FAILED"), os.environ.get("MUTATION_PART")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    if PART:
        at, parts = map(int, PART.split())
        items[:] = items[at::parts]
    if ASKED:
        order = {name: at for at, name in enumerate(Path(ASKED).read_text("utf-8").split("\n"))}
        items[:] = sorted((item for item in items if item.nodeid in order), key=lambda item: order[item.nodeid])


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """The test that notices the fault is noted, to be asked once more of the sound compiler."""
    if FAILED and report.failed:
        Path(FAILED).write_text(report.nodeid, encoding="utf-8")


class Recorder:
    """Notes the functions of the compiler that each test calls."""

    def __init__(self, file: str) -> None:
        import tamis

        self.file = file
        self.home = str(Path(tamis.__file__).parent) + os.sep
        self.tests: dict[str, dict[str, object]] = {}
        self.failed: set[str] = set()

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        seen: set[CodeType] = set()

        def note(frame: FrameType, event: str, arg: object) -> None:
            seen.add(frame.f_code)

        begun = time.perf_counter()
        sys.settrace(note)
        try:
            yield
        finally:
            sys.settrace(None)
        calls = sorted({self.name(code) for code in seen if code.co_filename.startswith(self.home)})
        self.tests[item.nodeid] = {"seconds": round(time.perf_counter() - begun, 3), "calls": calls}

    def name(self, code: CodeType) -> str:
        """A function by its file and name; what is made inside it (a lambda, a comprehension) is its."""
        name = code.co_qualname.partition(".<locals>")[0]
        return f"{Path(code.co_filename.removeprefix(self.home)).as_posix()} {name}"

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.outcome != "passed":
            self.failed.add(report.nodeid)

    def pytest_sessionfinish(self) -> None:
        tests = {test: row for test, row in self.tests.items() if test not in self.failed}
        Path(self.file).write_text(json.dumps(tests), encoding="utf-8")


def pytest_configure(config: pytest.Config) -> None:
    if RECORD:
        config.pluginmanager.register(Recorder(RECORD))
