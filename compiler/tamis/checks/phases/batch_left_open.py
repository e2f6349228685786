"""A component ends while something set aside in it has not come back.

The fried onions stand beside the stove when the dish is served.

Use it by its name before the component ends, or give it a component of its own.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Toast [100 g rolled oats] [in a frying pan] [until golden, 4 min] and [set aside].
Warm [200 ml milk] [in the pan] [until steaming, 3 min].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Toast [100 g rolled oats] [in a frying pan] [until golden, 4 min] and [set aside].
Warm [200 ml milk] [in the pan] [until steaming, 3 min].
Add [the oats].
"""
