"""A unit that the kitchen does not know stands between a number and a food.

Without its unit an amount cannot be added up, converted or scaled.

Use the unit that the message offers.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [2 tbps milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [2 tbsp milk] [in a bowl].
"""
