"""Several components are used by no other, so that it is not clear which of them is the dish.

The last is taken; if that is wrong, so are the weights, the timeline and the page.

Use the other components by name in the one that is the dish, or give each dish a file.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD = """\
title: Dish
serves: 2

# Cream

Whip [200 ml double cream] [in a bowl] [until thick].

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Dish
serves: 2

# Cream

Whip [200 ml double cream] [in a bowl] [until thick].

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
Fold in [the cream].
"""
