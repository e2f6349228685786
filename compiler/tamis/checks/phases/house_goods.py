"""The house's `goods.toml` says something that cannot be read.

A misspelt key must not quietly leave an allergen or a weight off.

Write it in the form that the message shows.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD: Files = {
    "goods.toml": """\
[tern-quay-oats]
like = "rolled-oat"
alergens = ["oats"]
""",
    "oats.tamis": """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
""",
}
GOOD: Files = {
    "goods.toml": """\
[tern-quay-oats]
like = "rolled-oat"
allergens = ["oats"]
""",
    "oats.tamis": """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
""",
}
