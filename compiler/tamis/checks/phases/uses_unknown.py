"""`uses:` names a recipe that is not there.

What it should give cannot be taken, weighed or checked for allergens.

Write the recipe's file name without `.tamis`; the message offers the nearest.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD: Files = {
    "braise.tamis": """\
title: Braise
serves: 2
uses: browm-stock

# Braise

Simmer [500 g carrots] [in 500 ml water] [in a saucepan] [for 20 min].
""",
    "brown-stock.tamis": """\
title: Brown stock
makes: 1 l

# Stock

Simmer [1 kg beef bones] [in 2 l water] [in a stockpot] [for 4 h].
Strain.
""",
}
GOOD: Files = {
    "braise.tamis": """\
title: Braise
serves: 2
uses: brown-stock

# Braise

Simmer [500 g carrots] with [500 ml of the brown stock] [in a saucepan] [for 20 min].
""",
    "brown-stock.tamis": """\
title: Brown stock
makes: 1 l

# Stock

Simmer [1 kg beef bones] [in 2 l water] [in a stockpot] [for 4 h].
Strain.
""",
}
