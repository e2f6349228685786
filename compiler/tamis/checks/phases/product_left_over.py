"""A share of something is used and the rest is not.

The reader stands there with two thirds of the cream.

Use `[the rest of the …]`, or make less of it.
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

Fold [half of the cream] into [the oats].
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
