"""What the laws are tried on: all demo recipes and examples, and compiling one of them with a change made to it."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from tamis.kitchen.house import default_kitchen
from tamis.source import Source, decode

if TYPE_CHECKING:
    from tamis.compile import Compiled

_ROOT = Path(__file__).parents[2]
_FOLDERS = (_ROOT / "recipes", _ROOT / "tests" / "golden" / "examples")
_LINE = re.compile(r"[^\n]*\n|[^\n]+\Z")
_USES = re.compile(r"^uses:(.*)$", re.MULTILINE)


class Cut(NamedTuple):
    """A text with one thing taken out of it; `start` and `end` are where that stood."""

    text: str
    start: int
    end: int


@cache
def demo_texts() -> dict[str, str]:
    """The texts of the recipes and examples, by stem, in order of name."""
    paths = sorted(path for folder in _FOLDERS for path in folder.glob("*.tamis"))
    return {path.stem: path.read_text(encoding="utf-8") for path in paths}


@cache
def scraps() -> dict[str, list[str]]:
    """Pieces of the language by kind: lines, starts of a sentence, clauses."""
    kinds: dict[str, list[str]] = {}
    kind: list[str] = []
    for line in (Path(__file__).parent / "scraps.txt").read_text(encoding="utf-8").splitlines():
        heading = re.fullmatch(r"== (\w+) ==", line)
        if heading:
            kind = kinds[heading[1]] = []
        else:
            kind.append("" if line == "(nothing)" else line)
    return kinds


def compiled(stem: str, text: str) -> Compiled:
    """The text as the recipe of that stem, with the demo recipes that the sound one uses at hand."""
    from tamis.compile import compile

    used = {name: _whole(name).supply for name in _used(demo_texts().get(stem, text))}
    return compile(Source(f"{stem}.tamis", text), default_kitchen("en"), used)


def wholly_compiled(stem: str, text: str) -> Compiled:
    """The same, and all that is put off until somebody asks for it: the table, the timeline and the flow as data."""
    from tamis.flow.data import flow_data
    from tamis.flow.rows import rows_of
    from tamis.table.data import table_data
    from tamis.timeline.data import timeline_data

    result = compiled(stem, text)
    table_data(result.table, result.equipment, default_kitchen("en"))
    timeline_data(result.timeline)
    flow_data(result.recipe, rows_of(result.recipe, result.source, result.kitchen))
    return result


def compiled_bytes(stem: str, data: bytes) -> Compiled:
    """The same for the bytes of a file, whatever they are."""
    return wholly_compiled(stem, decode(data)[0])


@cache
def _whole(stem: str) -> Compiled:
    return compiled(stem, demo_texts()[stem])


def _used(text: str) -> list[str]:
    found = _USES.search(text)
    stems = [stem.strip() for stem in found[1].split(",")] if found else []
    return [stem for stem in stems if stem in demo_texts()]


def without_one_line(text: str) -> Iterator[Cut]:
    """The text without each of its lines in turn."""
    for found in _LINE.finditer(text):
        yield Cut(text[: found.start()] + text[found.end() :], found.start(), found.end())


def without_one_clause(text: str) -> Iterator[Cut]:
    """The text without each of its brackets in turn, and what stands in it."""
    for found in re.finditer(r"\[[^\[\]]*\]", text):
        yield Cut(text[: found.start()] + text[found.end() :], found.start(), found.end())


def edited(data: bytes, edits: int, draw: random.Random) -> bytes:
    """The bytes after so many random edits: a byte changed, put in, taken out, or a piece moved."""
    result = bytearray(data)
    for _ in range(edits):
        at = draw.randrange(len(result) + 1)
        kind = draw.randrange(5)
        if kind == 0:
            result[at : at + 1] = bytes([draw.randrange(256)])
        elif kind == 1:
            result[at:at] = bytes([draw.choice(b"[](),.:#%/0123456789 \n\r\t-\\")])
        elif kind == 2:
            del result[at : at + 1]
        elif kind == 3:
            del result[at : at + draw.randrange(1, 40)]
        else:
            piece = result[at : at + draw.randrange(1, 60)]
            to = draw.randrange(len(result) + 1)
            result[to:to] = piece
    return bytes(result)
