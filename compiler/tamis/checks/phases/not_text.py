"""A NUL byte stands in the file.

A recipe is text; a file with NUL bytes was damaged or saved in another encoding.

Take it out, or save the file again as plain UTF-8 text.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD: Files = {
    "example.tamis": "title: Oats\nserves: 2\n\n# Oats\n\nStir \0[100 g rolled oats] with [200 ml milk] [in a bowl].\n",
}
GOOD: Files = {
    "example.tamis": """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
""",
}
