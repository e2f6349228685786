"""`kitchen.toml` has a table, a key or a rule that means nothing.

A misspelt setting quietly does nothing, and plans are made for another kitchen.

Use the name that the message offers.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD: Files = {
    "kitchen.toml": """\
[kitchen]
coks = 2
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
cooks = 2
""",
    "oats.tamis": """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
""",
}
