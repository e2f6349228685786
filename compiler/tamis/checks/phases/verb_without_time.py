"""A verb that waits has no time, nothing to look for, and nothing to reach.

Simmer for how long? A stranger cannot know, and the plan cannot either.

Add a time, a sign or a target: `[for 20 min]`, `[until tender]`, `[to the boil]`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Carrots
serves: 2

# Carrots

Simmer [500 g carrots] [in 500 ml water] [in a saucepan].
"""
GOOD = """\
title: Carrots
serves: 2

# Carrots

Simmer [500 g carrots] [in 500 ml water] [in a saucepan] [until tender, 20–25 min].
"""
