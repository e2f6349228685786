"""Begin a recipe file: a small sound recipe with a comment on each kind of line, to be written over.

An empty file teaches nothing. This one compiles clean, shows the header, a component, and most kinds of
bracket, and never takes the place of a file that is there.
"""

from __future__ import annotations

import re
from pathlib import Path

from tamis.cli.common import Stop
from tamis.library.files import SUFFIX, write_atomic
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse


TEMPLATE = """\
% A line that begins with a percent sign is a remark to yourself and is never published.
title: {title}
serves: 4
tags: soup, vegetarian
keeps: 3 days in the fridge

% Above: the header, up to the first empty line. Here: a few words before the recipe begins.
What is this dish, and when does one want it? This one is carrots and butter, blended smooth.

% A heading opens a component: a line of work that makes one thing, called by that name.
# Soup

% One line is one action. A bracket holds an ingredient, a tool, a setting, a time, or what to look for.
Melt [30 g butter] [in a large saucepan] [over medium heat].
Add [150 g onions, sliced] and [500 g carrots, sliced], cover and [sweat for 8–10 min] [until soft but pale].
Add [900 ml water] and [1 tsp fine salt] and bring [to the boil].
[Simmer for 15–20 min] [until a knife goes through the carrots without force].
[Off the heat], blend it [with a stick blender] [until smooth].

Note: what a cook should know besides stands in a paragraph like this one.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis new` takes."""
    parser.add_argument("name", metavar="NAME", help="the dish, or the file to write")


def run(options: argparse.Namespace) -> int:
    """Write the file and say so."""
    path, title = _named(options.name)
    if path.exists():
        raise Stop(f"{path}: is there already, and stays as it is")
    if not path.parent.is_dir():
        raise Stop(f"{path.parent}: there is no such folder")
    try:
        write_atomic(path, TEMPLATE.format(title=title).encode())
    except OSError as error:
        raise Stop(f"{path}: cannot be written: {error.strerror or error}") from error
    print(f"wrote {path}; `tamis check {path}` reads it")
    return 0


def _named(name: str) -> tuple[Path, str]:
    """The file and the title of a dish: `Harbour soup` is `harbour-soup.tamis`, and the other way round."""
    given = Path(name)
    words = given.name.removesuffix(SUFFIX)
    stem = re.sub(r"[^\w]+", "-", words).strip("-").lower()
    if not stem:
        raise Stop(f"“{name}” is no name for a recipe: expected letters, as in `tamis new harbour-soup`")
    title = re.sub(r"[-_\s]+", " ", words).strip()
    return given.with_name(stem + SUFFIX), title[0].upper() + title[1:]
