"""What is the least that the work can cost? Two stock tools, used as their manuals say, on the same recipes.

A time in milliseconds says as much about the machine as about the compiler. So every figure is told in floors: a
stock LALR parse of the whole file by a grammar that only takes it apart, and a stock template filled to a page of
about 14.5 kB, both run in the same process and the same minute as what they are compared with.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import jinja2
from lark import Lark

_HERE = Path(__file__).parent
_PART = re.compile(r"\[([^\[\]]*)\]|([^\[\]]+)")
_NUMBER = re.compile(r"\d\S* \S+")


class Part(NamedTuple):
    """Words within or outside brackets."""

    text: str
    bracket: bool


class Row(NamedTuple):
    """A clause as a row of the page's tables; `number` is empty where it begins with none."""

    name: str
    number: str
    component: str


class Section(NamedTuple):
    """A heading and its lines."""

    name: str
    lines: list[list[Part]]


def parse(text: str) -> object:
    """The whole file by one grammar."""
    return _lark().parse(text)


def page(data: dict[str, Any]) -> str:
    """The page of a recipe's `page_data`."""
    return _template().render(data)


def page_data(text: str) -> dict[str, Any]:
    """What the template shows of a recipe; making it is no part of the floor."""
    head, *rest = re.split(r"^# ", text, flags=re.MULTILINE)
    title, *headnote = head.partition(": ")[2].split("\n")
    sections = []
    for component in rest:
        name, _, body = component.partition("\n")
        lines = [line for line in body.splitlines() if line]
        sections.append(Section(name, [[_part(found) for found in _PART.finditer(line)] for line in lines]))
    rows = [
        _row(part.text, section.name) for section in sections for line in section.lines for part in line if part.bracket
    ]
    return {"title": title, "headnote": headnote, "components": sections, "clauses": rows}


def _part(found: re.Match[str]) -> Part:
    return Part(found[2] or found[1], found[2] is None)


def _row(text: str, component: str) -> Row:
    found = _NUMBER.match(text)
    return Row(text, found[0] if found else "", component)


@cache
def _lark() -> Lark:
    return Lark((_HERE / "floor.lark").read_text(encoding="utf-8"), parser="lalr", start="document")


@cache
def _template() -> jinja2.Template:
    environment = jinja2.Environment(autoescape=True, trim_blocks=True, loader=jinja2.FileSystemLoader(_HERE))
    return environment.get_template("floor.html")
