"""What becomes of a line in the lists that are printed: a case is a command and a recipe's lines, then those lines of
the output that hold a word (`outcomes/*.case`)."""

from __future__ import annotations

import contextlib
import io
import shlex
import tempfile
from pathlib import Path

import pytest

from tamis.cli.main import main
from tests.cases import Case, find_cases, rewrite

_FOLDER = Path(__file__).with_name("outcomes")


def shown(given: str) -> str:
    """The output's lines that hold the word behind `|`, their spaces drawn together."""
    first, _, body = given.partition("\n")
    command, _, word = first.removeprefix("$ ").partition(" | ")
    name, *options = shlex.split(command)
    head = "" if body.startswith("title: ") else "title: Dish\nserves: 4\n\n"
    out = io.StringIO()
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder, "dish.tamis")
        file.write_text(head + body, encoding="utf-8")
        with contextlib.redirect_stdout(out):
            main([name, str(file), *options])
    said = out.getvalue().replace(f"{folder}/", "")
    return "\n".join(" ".join(line.split()) for line in said.splitlines() if word.strip() in line)


@pytest.mark.parametrize("case", find_cases(_FOLDER), ids=lambda case: f"{case.file.stem}: {case.name}")
def test_case(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, shown)
        return
    assert shown(case.given) == case.expected
