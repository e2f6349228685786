"""A command should feel instant: what it may not do before it knows that it has to."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tamis import __version__


def test_no_pattern_is_compiled_before_it_is_used() -> None:
    program = (
        "import re, sys, tamis.compile, tamis.library.library; from tamis.checks.registry import check_of, rules;"
        "[check_of(rule.name) for rule in rules()];"
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


@pytest.mark.parametrize(
    ("words", "status", "ends"),
    [
        (["--version"], 0, f"tamis {__version__}\n"),
        (["explain"], 0, "\n"),
        (["check", "sound.tamis"], 0, "1 recipe: clean\n"),
        (["check", "faulty.tamis"], 1, "1 error\n"),
        (["check", "nowhere"], 2, ""),
        (["explain", "--help"], 0, "\n"),
        (["check", "--form"], 2, ""),
    ],
)
def test_the_process_ends_with_all_that_was_said(tmp_path: Path, words: list[str], status: int, ends: str) -> None:
    (tmp_path / "sound.tamis").write_text("title: Water\nserves: 1\n\n# Water\n\nPour [1 l water] [into a jug].\n")
    (tmp_path / "faulty.tamis").write_text("title: Water\nserves: 1\n\n# Water\n\nPour [1 l water] [into a jug.\n")
    command = [sys.executable, "-m", "tamis", *words]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout.endswith(ends)) == (status, True), done.stdout + done.stderr
    assert bool(done.stderr) == (status == 2)
    quiet = subprocess.run(["sh", "-c", '"$@" 2>&-', "sh", *command], cwd=tmp_path, capture_output=True, check=False)
    assert quiet.returncode == status


def test_a_full_disk_is_said_in_one_line() -> None:
    if not Path("/dev/full").exists():
        pytest.skip("this system has no /dev/full to stand for a full disk")
    with Path("/dev/full").open("w") as full:
        ended = subprocess.run(
            [sys.executable, "-m", "tamis", "--version"], stdout=full, stderr=subprocess.PIPE, text=True, check=False
        )
    assert ended.returncode == 2
    assert ended.stderr.startswith("tamis: cannot read or write: ") and "Traceback" not in ended.stderr
