"""A line cooks, but nothing is there to be cooked.

Food that stands in plain words is in no batch: nothing waits for this line, and the plan may put it anywhere.

Name what it is done to in brackets: a measured food, what was made before, or equipment.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD = """\
title: Leek soup
serves: 4

# Soup

Put it all on the heat and [simmer for 20 min] [until soft].
Stir in [200 ml double cream].
"""
GOOD = """\
title: Leek soup
serves: 4

# Soup

Put [4 leeks, sliced] [into a pan] with [500 ml water] and [simmer for 20 min] [until soft].
Stir in [200 ml double cream].
"""
