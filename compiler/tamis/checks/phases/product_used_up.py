"""Something is used that was used up before.

The second time, the bowl is empty.

Take a share the first time (`[half of the cream]`) and `[the rest of the cream]` the second.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
_CREAM = "title: Trifle\nserves: 4\n\n# Cream\n\nWhip [300 ml double cream] [in a bowl] [until thick].\n"
BAD = f"""\
{_CREAM}
# Base

Stir [100 g rolled oats] with [the cream].

# Fruit

Toss [300 g strawberries] with [the cream].

# Trifle

Layer [the base] and [the fruit] [in a dish].
"""
GOOD = f"""\
{_CREAM}
# Base

Stir [100 g rolled oats] with [half of the cream].

# Fruit

Toss [300 g strawberries] with [the rest of the cream].

# Trifle

Layer [the base] and [the fruit] [in a dish].
"""
