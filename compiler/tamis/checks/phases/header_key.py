"""The header has a key that means nothing.

A misspelt `serves` is a recipe that serves nobody knows how many.

Use the name that the message offers, or take the line out.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD = """\
title: Oats
serves: 2
cusine: Nordic

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2
cuisine: Nordic

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
