"""A setting in `kitchen.toml` has a value that cannot be read.

The default holds instead, which may not be this kitchen at all.

Write it in the form that the message shows.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD: Files = {
    "kitchen.toml": """\
[kitchen]
stone = 20
""",
    "oats.tamis": """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
""",
}
GOOD: Files = {
    "kitchen.toml": """\
[kitchen]
stone = "20 min"
""",
    "oats.tamis": """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
""",
}
