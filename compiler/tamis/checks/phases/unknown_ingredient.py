"""A measured food that the list of goods does not know.

It is on the table as written, but with no weight, no conversion and no allergens: none are made up.

Check the spelling, use a name that is known, or add the food to the house's `goods.toml`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "information"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g quandong flakes] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
