"""A plain command line means without argparse what it means with it."""

from __future__ import annotations

from argparse import ArgumentParser
from contextlib import redirect_stderr, redirect_stdout
from importlib import import_module
from io import StringIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.cli.main import COMMANDS
from tamis.cli.plain import Plain


def by_argparse(name: str, words: list[str]) -> dict[str, object] | None:
    parser = ArgumentParser()
    import_module(f"tamis.cli.{name}").arguments(parser)
    try:
        with redirect_stderr(StringIO()), redirect_stdout(StringIO()):
            return vars(parser.parse_args(words))
    except SystemExit:
        return None


def plainly(name: str, words: list[str]) -> dict[str, object] | None:
    plain = Plain()
    import_module(f"tamis.cli.{name}").arguments(plain)
    said = plain.read(words)
    return None if said is None else vars(said)


WORDS = (
    *("-", "--", "-h", "--help", "-5", "", "a.tamis", "b.tamis", "2/3 cup flour", "json", "text", "us", "final", "3"),
    *("--format", "--format=json", "--form", "--strict", "-o", "--output", "--by", "--serves", "--makes", "--have"),
    *("--units", "--ready", "--to", "--cup", "--base", "--dough", "--mixed", "--flour", "--room", "--keep-going"),
)


@pytest.mark.parametrize("name", COMMANDS)
@settings(deadline=None, max_examples=200)
@given(words=st.lists(st.sampled_from(WORDS), max_size=6))
def test_what_is_read_plainly_is_what_argparse_reads(name: str, words: list[str]) -> None:
    said = plainly(name, words)
    assert said is None or said == by_argparse(name, words)


@pytest.mark.parametrize(
    "line",
    [
        "check",
        "check a.tamis b",
        "check --strict a.tamis",
        "check a.tamis --format json",
        "build recipes -o site --keep-going",
        "build -o site",
        "table a.tamis --serves 6 --units us",
        "timeline a.tamis --ready 19:00",
        "flow a.tamis b.tamis --why 12",
        "scale a.tamis --makes 3 --format source",
        "convert 2/3 cup flour --to g",
        "convert --to g 2/3 cup flour",
        "market a.tamis b.tamis --have stock --have sauce --by 2",
        "water --dough 24 --flour 20 --room 20",
        "explain",
        "explain missing-cue",
        "new soup",
    ],
)
def test_a_line_as_the_help_shows_it_is_read_plainly(line: str) -> None:
    name, *words = line.split()
    said = plainly(name, words)
    assert said is not None and said == by_argparse(name, words)


@pytest.mark.parametrize(
    "line",
    [
        "check --help",
        "check --stri a.tamis",
        "check --format=json",
        "check --format yaml",
        "check --format",
        "check a --strict b",
        "build one two",
        "scale a.tamis",
        "scale a.tamis --by 2 --serves 3",
        "table",
        "table a.tamis b.tamis",
        "market",
        "water --dough 24 --flour 20",
        "timeline a.tamis --ready -5",
        "new -- -x",
    ],
)
def test_any_other_line_is_left_to_argparse(line: str) -> None:
    name, *words = line.split()
    assert plainly(name, words) is None
