"""A command should feel instant: what it may not do before it knows that it has to."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path


def test_no_pattern_is_compiled_before_it_is_used() -> None:
    program = (
        "import re, sys, tamis.compile, tamis.library.library; from tamis.checks.registry import checks; checks();"
        "print(*(f'{name}.{key}' for name, module in sys.modules.items() if name.startswith('tamis.')"
        " for key, value in vars(module).items() if isinstance(value, re.Pattern)))"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.split() == []


def loaded_by(*words: str) -> set[str]:
    program = "import sys; from tamis.cli.main import main; main(sys.argv[1:]); print(); print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", program, *words], capture_output=True, text=True, check=True)
    return set(done.stdout.splitlines()[-1].split())


def test_the_version_needs_nothing_of_the_compiler() -> None:
    own = {name for name in loaded_by("--version") if name.startswith("tamis")}
    assert own == {"tamis", "tamis.cli", "tamis.cli.main"}


def test_a_plain_command_line_needs_no_argparse(tmp_path: Path) -> None:
    path = str(tmp_path / "soup.tamis")
    assert {"argparse", "gettext"}.isdisjoint(loaded_by("new", path) | loaded_by("check", path))
