"""`[the …]` could be two things.

The reader has two bowls of that name.

Call it by its whole name, or name one of them with `[as …]`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Two onions
serves: 4

# Onions

Fry [2 red onions, sliced] [in a frying pan] [until soft, 8 min] and [set aside].
Boil [2 pickling onions] [in a saucepan] [for 10 min] and [set aside].
Warm [100 g butter] [in a saucepan] [until foaming, 2 min].
Add [the onions] and [the pickling onions].
"""
GOOD = """\
title: Two onions
serves: 4

# Onions

Fry [2 red onions, sliced] [in a frying pan] [until soft, 8 min] [as soft onions].
Boil [2 pickling onions] [in a saucepan] [for 10 min] [as boiled onions].
Warm [100 g butter] [in a saucepan] [until foaming, 2 min].
Add [the soft onions] and [the boiled onions].
"""
