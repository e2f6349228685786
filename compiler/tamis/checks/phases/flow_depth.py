"""Components name others that stand further down, one within another, very deep.

A cook reads from top to bottom; what is made last in the text and wanted first cannot be followed any more.

Write what is made before what uses it.
"""

from __future__ import annotations

from itertools import pairwise

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
_NAMES = [f"Layer {word}" for word in "abcdefghijklmnopqrstuvwxyz"] + [
    f"Floor {word}" for word in "abcdefghijklmnopqrstuv"
]
BAD = (
    "title: Tower\nserves: 2\n"
    + "".join(
        f"\n# {name}\n\nStir [the {below.lower()}] with [10 g rolled oats].\n" for name, below in pairwise(_NAMES)
    )
    + f"\n# {_NAMES[-1]}\n\nStir [10 g rolled oats] with [10 g honey] [in a bowl].\n"
)
GOOD = """\
title: Oats
serves: 2

# Base

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].

# Oats

Stir [the base] with [10 g honey].
"""
