"""`[the …]` names something that was not made, opened or set out before.

The reader looks for a bowl that does not exist.

Use the name of a component, of a food in the batch, or of what was set aside; the message offers
the nearest.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
Fold in [the custard].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
Stir [the oats] again.
"""
