"""Something is used that was used up before.

The second time, the bowl is empty.

Take a share the first time (`[half of the cream]`) and `[the rest of the cream]` the second.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Dish
serves: 2

# Cream

Whip [200 ml double cream] [in a bowl] [until thick].

# Oats

Stir [100 g rolled oats] with [200 ml milk].

# Dish

Fold [the cream] into [the oats].
Top with [the cream].
"""
GOOD = """\
title: Dish
serves: 2

# Cream

Whip [200 ml double cream] [in a bowl] [until thick].

# Oats

Stir [100 g rolled oats] with [200 ml milk].

# Dish

Fold [half of the cream] into [the oats].
Top with [the rest of the cream].
"""
