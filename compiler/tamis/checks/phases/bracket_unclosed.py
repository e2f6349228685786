"""A bracket opens in a line and does not close in it.

What was meant as an ingredient or a time is lost from the table and the plan.

Close it with `]` in the same line. A bracket that is to be printed is written `\\[`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats with milk.
Add [200 ml milk] and stir.
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats].
Add [200 ml milk] and stir.
"""
