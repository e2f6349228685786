"""Recipes use each other in a circle.

Neither can be made before the other.

Take one of them out of the other's `uses:`.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD: Files = {
    "one.tamis": """\
title: One
makes: 1 l
uses: two

# One

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
    "two.tamis": """\
title: Two
makes: 1 l
uses: one

# Two

Stir [1 l water] with [20 g fine salt] [in a jug].
""",
}
GOOD: Files = {
    "one.tamis": """\
title: One
makes: 1 l

# One

Stir [1 l water] with [10 g fine salt] [in a jug].
""",
    "two.tamis": """\
title: Two
makes: 1 l

# Two

Stir [1 l water] with [20 g fine salt] [in a jug].
""",
}
