"""Components use each other in a circle.

Neither can be made before the other.

Make one of them without the other, or share what both need in a component of its own.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Dish
serves: 2

# Oats

Stir [the cream] with [100 g rolled oats].

# Cream

Whip [200 ml double cream] with [the oats] [until thick].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
